#include "mobile/models/site_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>
#include <array>

#include "mobile/models/forecast_words.h"

namespace kneerail {

namespace {

using forecast::RunComing;

constexpr std::int32_t soon_days = 60;
constexpr std::int32_t month_days = 30;
constexpr std::int32_t year_days = 365;

class SiteWords {
  Q_DECLARE_TR_FUNCTIONS(SiteWords)
};

QString exposure_name(Exposure exposure) {
  switch (exposure) {
    case Exposure::open:
      return SiteWords::tr("open");
    case Exposure::sheltered:
      return SiteWords::tr("sheltered");
    case Exposure::spray:
      return SiteWords::tr("spray");
    case Exposure::immersed_at_times:
      return SiteWords::tr("under water at times");
    case Exposure::de_icing_salt:
      return SiteWords::tr("de-icing salt");
    case Exposure::unknown:
      break;
  }
  return {};
}

QString listed(QStringList words) {
  if (words.size() < 2) return words.join(QString());
  const QString last = words.takeLast();
  return SiteWords::tr("%1 and %2").arg(words.join(SiteWords::tr(", ")), last);
}

QString strike_words(const SiteStrike& strike) {
  const QString down = SiteWords::tr("%1 is down since %2")
                           .arg(QString::fromStdString(strike.run_name), whole_day(strike.since));
  QStringList missing;
  if (strike.posts_to_put_back > 0)
    missing << SiteWords::tr("%n post(s) to put back", nullptr,
                             static_cast<int>(strike.posts_to_put_back));
  if (strike.screws_to_sign > 0)
    missing << SiteWords::tr("%n screw(s) to sign", nullptr,
                             static_cast<int>(strike.screws_to_sign));
  QString words = missing.isEmpty() ? SiteWords::tr("%1.").arg(down)
                                    : SiteWords::tr("%1: %2.").arg(down, listed(missing));
  if (strike.gap_open) words += SiteWords::tr(" Nothing closes the gap.");
  return words;
}

QString danger_words(const SiteBand& band) {
  QStringList lines;
  if (band.hazards_open > 0)
    lines << SiteWords::tr("%n finding(s) cannot wait, not made safe.", nullptr,
                           static_cast<int>(band.hazards_open));
  if (band.bays_closed > 0)
    lines << SiteWords::tr("%n bay(s) closed off.", nullptr, static_cast<int>(band.bays_closed));
  return lines.join(QLatin1Char(' '));
}

QString run_name(const SiteBand& band, const std::string& reference) {
  for (const SiteRun& run : band.runs)
    if (run.reference == reference) return QString::fromStdString(run.name);
  return QString::fromStdString(reference);
}

/// "most on Sea wall west"; of a site with one run nothing.
QString where_words(const SiteBand& band, const QString& run, int there, int all) {
  if (band.runs.size() < 2) return {};
  return (there == all ? SiteWords::tr(", on %1") : SiteWords::tr(", most on %1")).arg(run);
}

QString coming_words(const SiteBand& band, const SiteForecast& forecast) {
  if (!forecast.known) return forecast.why_not;
  int likely = 0;
  int may = 0;
  const RunComing* worst = nullptr;
  for (const RunComing& run : forecast.runs) {
    likely += run.likely;
    may += run.may;
    if (worst == nullptr || std::pair(run.likely, run.may) > std::pair(worst->likely, worst->may))
      worst = &run;
  }
  if (worst == nullptr) return SiteWords::tr("No part of it can be reckoned yet.");
  const QString by = forecast.by_now ? SiteWords::tr("By now") : SiteWords::tr("By then");
  const QString run = run_name(band, worst->run);
  if (may == 0) return SiteWords::tr("%1 no part will be without zinc.").arg(by);
  if (likely == 0)
    return SiteWords::tr("%1 %n part(s) may be without zinc%2.", nullptr, may)
        .arg(by, where_words(band, run, worst->may, may));
  const QString first =
      SiteWords::tr("%1 %n part(s) will likely be without zinc%2", nullptr, likely)
          .arg(by, where_words(band, run, worst->likely, likely));
  return may == likely ? SiteWords::tr("%1.").arg(first)
                       : SiteWords::tr("%1; %n more may be.", nullptr, may - likely).arg(first);
}

QString grade_words(const SiteBand& band) {
  std::int64_t graded = 0;
  for (int grade = 5; grade > 0; --grade) {
    const auto place = static_cast<std::size_t>(grade);
    std::int64_t count = 0;
    const SiteRun* worst = nullptr;
    for (const SiteRun& run : band.runs) {
      count += run.grades[place];
      if (worst == nullptr || run.grades[place] > worst->grades[place]) worst = &run;
    }
    graded += count;
    if (count == 0 || grade < 3) continue;
    return SiteWords::tr("%n part(s) at grade %1%2.", nullptr, static_cast<int>(count))
        .arg(grade)
        .arg(where_words(band, QString::fromStdString(worst->name),
                         static_cast<int>(worst->grades[place]), static_cast<int>(count)));
  }
  return graded > 0 ? SiteWords::tr("Nothing above grade 2.")
                    : SiteWords::tr("Nobody has graded a part yet.");
}

/// By the owner's longest interval and by the forecast, from the last visit on.
std::optional<SiteDue> proposed_visit(const SiteBand& band, Pace pace) {
  if (!band.last_visit) return {};
  std::optional<SiteDue> earliest;
  const auto propose = [&](std::int64_t days, SiteDue::Why why) {
    const Date day{band.last_visit->days + static_cast<std::int32_t>(days)};
    if (!earliest || day < earliest->day) earliest = SiteDue{SiteDue::What::visit, day, {}, why};
  };
  for (const SiteRun& run : band.runs)
    if (run.longest_interval_days)
      propose(*run.longest_interval_days, SiteDue::Why::longest_interval);
  if (pace == Pace::faster) propose(year_days, SiteDue::Why::faster_than_class);
  return earliest;
}

QString moved_words(const SiteDue& due) {
  const QString from = month_and_year(*due.moved_from);
  return due.why == SiteDue::Why::faster_than_class
             ? SiteWords::tr("Brought forward from %1: the coating goes faster than its class.")
                   .arg(from)
             : SiteWords::tr("Brought forward from %1: the owner's longest interval ends before.")
                   .arg(from);
}

}  // namespace

SiteDue site_due(const SiteBand& band, Pace pace) {
  SiteDue due;
  std::optional<Date> agreed = band.next_agreed;
  if (agreed && band.last_visit && *agreed <= *band.last_visit) agreed.reset();  // it was kept
  if (agreed) due = {SiteDue::What::visit, *agreed};
  const auto proposed = proposed_visit(band, pace);
  // A day or two under the agreed one is the calendar, not the owner.
  if (proposed && (!agreed || proposed->day.days + month_days <= agreed->days)) {
    due = *proposed;
    due.moved_from = agreed;
  }
  for (const SiteStrike& strike : band.strikes)
    if (strike.re_erect_by && (due.what == SiteDue::What::nothing || *strike.re_erect_by < due.day))
      due = {SiteDue::What::re_erect, *strike.re_erect_by};
  return due;
}

QString air_words(const SiteBand& band) {
  constexpr std::array<const char*, 7> names{"", "C1", "C2", "C3", "C4", "C5", "CX"};
  QStringList classes;
  QStringList exposures;
  for (const SiteZone& zone : band.zones) {
    if (zone.category > 0 && zone.category < static_cast<int>(names.size()))
      classes << QString::fromLatin1(names[static_cast<std::size_t>(zone.category)]);
    const QString name = exposure_name(zone.exposure);
    if (!name.isEmpty() && !exposures.contains(name)) exposures << name;
  }
  classes.sort();
  classes.removeDuplicates();
  QStringList parts{listed(classes), listed(exposures)};
  parts.removeAll(QString());
  return parts.join(SiteWords::tr(", "));
}

QString count_words(std::int64_t posts, std::int64_t fittings) {
  return SiteWords::tr("%1 · %2").arg(
      SiteWords::tr("%Ln post(s)", nullptr, static_cast<int>(posts)),
      SiteWords::tr("%Ln fitting(s)", nullptr, static_cast<int>(fittings)));
}

QString last_visit_words(const SiteBand& band) {
  return band.last_visit ? SiteWords::tr("Last visit %1").arg(whole_day(*band.last_visit))
                         : SiteWords::tr("Nobody has been here yet");
}

TagWords tag_words(const SiteDue& due, Date today) {
  if (due.what == SiteDue::What::nothing)
    return {SiteWords::tr("no day"), SiteWords::tr("agreed yet"), false};
  TagWords words;
  const bool past = due.day < today;
  if (due.what == SiteDue::What::re_erect)
    words.caption = past ? SiteWords::tr("up again by") : SiteWords::tr("re-erect by");
  else
    words.caption = past ? SiteWords::tr("was due") : SiteWords::tr("due");
  words.day = whole_day(due.day);
  words.soon = due.day.days - today.days <= soon_days;
  return words;
}

QString band_sentence(const SiteBand& band, const SiteDue& due, const SiteForecast& forecast) {
  QStringList lines;
  for (const SiteStrike& strike : band.strikes) lines << strike_words(strike);
  lines << danger_words(band);
  if (due.moved_from) lines << moved_words(due);
  lines << coming_words(band, forecast) << grade_words(band);
  lines.removeAll(QString());
  return lines.join(QLatin1Char(' '));
}

}  // namespace kneerail
