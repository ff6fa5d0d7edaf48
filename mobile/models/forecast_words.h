#pragma once

// The words of a forecast on the screen: time left in whole years, the rate beside its class, and
// what the answer rests on. No digit promises more than was reckoned.

#include <QString>
#include <array>
#include <functional>
#include <string>

#include "core/forecast/part_story.h"

namespace kneerail {

/// "May 2027".
QString month_and_year(Date day);
/// "14 May 2031".
QString whole_day(Date day);
/// "+2.1", "−7.0": one decimal.
QString signed_figure(double value);

/// "2 y", "1 y 5 m", "over 15 y", "reached": rounded down; months under two years.
QString time_words(double years);
/// "2 y to 3 y": the 80 % interval of the seven quantiles.
QString band_words(const std::array<double, 7>& years);

/// "18 %"; "under 1 %" and "over 99 %": nothing here is sure.
QString chance_words(double chance);

/// "First maintenance", "Zinc gone".
QString limit_name(forecast::Limit limit);

/// "Losing 9.2 µm a year (7.9 to 10.6), twice the pace of class C5."
QString rate_headline(const forecast::PartStory& story);

/// What it rests on, a few sentences.
QString reason_words(const forecast::PartStory& story,
                     const std::function<QString(const std::string&)>& gauge);

}  // namespace kneerail
