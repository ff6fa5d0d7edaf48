#pragma once

// The words of a prepared day: what, where, why and how long.

#include <QString>

#include "core/base/time_zone.h"
#include "core/forecast/decisions/day_plan.h"
#include "mobile/models/day_found.h"

namespace kneerail::day_words {

/// "5 h 30 min", "45 min"; "0 min".
QString time(std::int64_t seconds);
/// "38 MB", "420 kB".
QString size(std::int64_t bytes);
/// "Tue 13 May 2031".
QString day(Date day);

QString told_by(ToldBy by);
QString told(const OpenTold& told, const TimeZone& zone);
QString event_name(const forecast::OpenEvent& event);
QString event(const forecast::OpenEvent& event, Date today);
QString closure_name();
QString closure(Instant look_again_by, const TimeZone& zone);
/// "F-7 split".
QString finding_name(const KeptFinding& finding);
QString finding(const KeptFinding& finding, Instant now, const TimeZone& zone);
QString look(std::optional<Date> last);
QString past_chance(forecast::Limit limit, double owners_chance, double worst);
/// Why parts of that kind are read; `chance` of a coating limit within two visits is the highest.
QString read(DayLine::Kind kind, int readings, double chance);
QString strike(const SiteStrike& strike);
QString not_reckoned();

/// "26 fittings", "F-7 split".
QString what(const DayLine& line, int count);
/// "Sea wall west · posts 61 to 79"; of a site with one run "posts 61 to 79".
QString where(const DayFound& day, std::size_t line, std::size_t done);
/// The hours of access of that run: " · 06:00 to 10:00"; empty: none are set.
QString hours(const DayFound& day, int run);
/// "Steps: nobody may be there today" of each run without hours on this weekday, and the hours of
/// the others; empty: none are set.
QString access(const DayFound& day);

/// "Coating gauge A2".
QString instrument_name(const DayInstrument& instrument);
/// "in date to 14 Aug 2031 · ±2 µm"; "out of date since 2 May 2031".
QString instrument(const DayInstrument& instrument, Date day);
/// "Take: coating gauge A2 and one check foil for it; torque wrench T3."; nothing to take says so.
QString to_take(const DayAtSite& begins, Date day);

}  // namespace kneerail::day_words
