#include "mobile/models/forecast_words.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <QStringList>
#include <cmath>

#include "core/forecast/preparation.h"

namespace kneerail {

namespace {

using forecast::Limit;
using forecast::PartStory;
using forecast::StoryLife;
using forecast::StorySession;

constexpr double far_years = 15;
constexpr double months_under_years = 2;

class ForecastWords {
  Q_DECLARE_TR_FUNCTIONS(ForecastWords)
};

QDate calendar_day(Date day) {
  const Civil on = civil(day);
  return {on.year, static_cast<int>(on.month), static_cast<int>(on.day)};
}

QString figure(double value) {
  return QLocale().toString(value, 'f', 1);
}

/// How the rate stands to the usual one: apart only where its 80 % band is.
QString beside_usual(const std::array<double, 3>& rate, const PartStory& story) {
  const QString usual =
      story.usual_of
          ? ForecastWords::tr("class %1").arg(QString::fromStdString(to_text(*story.usual_of)))
          : ForecastWords::tr("what its zone is said to lose");
  const double ratio = rate[1] / story.usual_um_per_year;
  if (rate[0] <= story.usual_um_per_year && story.usual_um_per_year <= rate[2])
    return ForecastWords::tr("about the pace of %1").arg(usual);
  if (ratio > 2.5) return ForecastWords::tr("over twice the pace of %1").arg(usual);
  if (ratio > 1.7) return ForecastWords::tr("twice the pace of %1").arg(usual);
  if (ratio > 1) return ForecastWords::tr("faster than %1").arg(usual);
  if (ratio > 0.6) return ForecastWords::tr("slower than %1").arg(usual);
  return ForecastWords::tr("well under the pace of %1").arg(usual);
}

QString since_words(const StoryLife& life) {
  const QString when = month_and_year(life.start);
  if (life.after_swap) return ForecastWords::tr("since it seems to have been replaced");
  if (life.begun_by == forecast::Action::touch_up)
    return ForecastWords::tr("since the touch-up in %1").arg(when);
  if (life.begun_by == forecast::Action::regalvanise)
    return ForecastWords::tr("since it was re-galvanised in %1").arg(when);
  if (life.begun_by == forecast::Action::replace)
    return ForecastWords::tr("since it was replaced in %1").arg(when);
  if (life.start_kind == forecast::StartKind::known)
    return ForecastWords::tr("since it went into service in %1").arg(when);
  return ForecastWords::tr("and nobody wrote down how old it is");
}

QString visits_words(const PartStory& story,
                     const std::function<QString(const std::string&)>& gauge) {
  const int current = static_cast<int>(story.lives.size()) - 1;
  int visits = 0;
  QStringList gauges;
  for (const StorySession& session : story.sessions) {
    if (session.life != current) continue;
    ++visits;
    const QString name = gauge(session.gauge);
    if (!gauges.contains(name)) gauges << name;
  }
  const StoryLife& life = story.lives.back();
  if (visits == 0) return ForecastWords::tr("No reading %1.").arg(since_words(life));
  const QString said = ForecastWords::tr("%n visit(s) %1", nullptr, visits).arg(since_words(life));
  const QString names = gauges.join(ForecastWords::tr(" and "));
  return gauges.size() > 1 ? ForecastWords::tr("%1, gauges %2.").arg(said, names)
                           : ForecastWords::tr("%1, gauge %2.").arg(said, names);
}

QString corrections_words(const PartStory& story,
                          const std::function<QString(const std::string&)>& gauge) {
  QStringList lines;
  constexpr double shown_from_um = 0.05;
  for (const StorySession& session : story.sessions)
    if (std::abs(session.certificate_um) >= shown_from_um)
      lines << ForecastWords::tr("The calibration of gauge %1 adds %2 µm to the readings of %3.")
                   .arg(gauge(session.gauge), signed_figure(session.certificate_um),
                        month_and_year(session.day));
  for (const StorySession& session : story.sessions)
    if (session.gauge_was_off)
      lines << ForecastWords::tr("Gauge %1 was off in %2: put right by %3 µm.")
                   .arg(gauge(session.gauge), month_and_year(session.day),
                        signed_figure(session.correction_um));
  return lines.join(QLatin1Char(' '));
}

QString doubts_words(const PartStory& story,
                     const std::function<QString(const std::string&)>& gauge) {
  QStringList lines;
  if (story.lives.size() > 1)
    lines << ForecastWords::tr(
        "Readings from before belong to the coating that was there then and are not used for this "
        "rate.");
  if (story.lives.back().after_swap)
    lines << ForecastWords::tr(
        "The coating rose between two visits: replaced without a record? "
        "Ask, and write it down.");
  for (const StorySession& session : story.sessions)
    if (session.not_in_order)
      lines << ForecastWords::tr(
                   "A check of gauge %1 was not in order on %2: measure again what it read then.")
                   .arg(gauge(session.gauge), whole_day(session.day));
  for (const StorySession& session : story.sessions)
    if (!session.fits)
      lines << ForecastWords::tr("The reading of %1 does not fit; check it.")
                   .arg(whole_day(session.day));
  return lines.join(QLatin1Char(' '));
}

}  // namespace

QString month_and_year(Date day) {
  return QLocale().toString(calendar_day(day), QStringLiteral("MMM yyyy"));
}

QString whole_day(Date day) {
  return QLocale().toString(calendar_day(day), QStringLiteral("d MMM yyyy"));
}

QString signed_figure(double value) {
  const QString size = figure(std::abs(value));
  return value < 0 ? QStringLiteral("−") + size : QStringLiteral("+") + size;
}

QString time_words(double years) {
  if (years <= 0) return ForecastWords::tr("reached");
  if (years >= far_years) return ForecastWords::tr("over %1 y").arg(far_years);
  if (years >= months_under_years) return ForecastWords::tr("%1 y").arg(std::floor(years));
  const int months = static_cast<int>(std::floor(years * 12));
  if (months == 0) return ForecastWords::tr("under 1 m");
  if (months < 12) return ForecastWords::tr("%1 m").arg(months);
  if (months == 12) return ForecastWords::tr("%1 y").arg(1);
  return ForecastWords::tr("%1 y %2 m").arg(1).arg(months - 12);
}

QString band_words(const std::array<double, 7>& years) {
  const QString low = time_words(years[1]);
  const QString high = time_words(years[5]);
  return low == high ? low : ForecastWords::tr("%1 to %2").arg(low, high);
}

QString chance_words(double chance) {
  const double hundredths = std::round(chance * 100);
  if (hundredths < 1) return ForecastWords::tr("under %1 %").arg(1);
  if (hundredths > 99) return ForecastWords::tr("over %1 %").arg(99);
  return ForecastWords::tr("%1 %").arg(hundredths);
}

QString limit_name(Limit limit) {
  switch (limit) {
    case Limit::coating_exhausted:
      return ForecastWords::tr("Zinc gone");
    case Limit::coating_first_maintenance:
      return ForecastWords::tr("First maintenance");
    case Limit::wall_limit:
      return ForecastWords::tr("Structural limit");
    case Limit::torque_minimum:
      return ForecastWords::tr("Torque under minimum");
    case Limit::grade_2:
      return ForecastWords::tr("Grade %1").arg(2);
    case Limit::grade_3:
      return ForecastWords::tr("Grade %1").arg(3);
    case Limit::grade_4:
      return ForecastWords::tr("Grade %1").arg(4);
    case Limit::grade_5:
      return ForecastWords::tr("Grade %1").arg(5);
  }
  return {};
}

QString rate_headline(const PartStory& story) {
  const auto& row = story.limits.front().forecast;
  if (!row.answered) return ForecastWords::tr("No rate yet.");
  const auto& rate = row.rate_um_per_year;
  const QString pace = ForecastWords::tr("%1 µm a year (%2 to %3)")
                           .arg(figure(rate[1]), figure(rate[0]), figure(rate[2]));
  if (row.readings_used == 0)
    return ForecastWords::tr("Not measured. Its zone and age say %1.").arg(pace);
  if (row.readings_used == 1)
    return ForecastWords::tr("One visit only. Its zone says %1.").arg(pace);
  return ForecastWords::tr("Losing %1, %2.").arg(pace, beside_usual(rate, story));
}

QString reason_words(const PartStory& story,
                     const std::function<QString(const std::string&)>& gauge) {
  const auto& row = story.limits.front().forecast;
  QStringList lines{visits_words(story, gauge)};
  if (row.answered && row.readings_used > 0)
    lines << ForecastWords::tr(
                 "Its own readings carry %1 of the rate, its run, zone and site the rest.")
                 .arg(chance_words(row.own_share));
  lines << corrections_words(story, gauge) << doubts_words(story, gauge);
  lines.removeAll(QString());
  return lines.join(QLatin1Char(' '));
}

}  // namespace kneerail
