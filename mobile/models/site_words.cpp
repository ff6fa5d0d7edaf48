#include "mobile/models/site_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>
#include <array>
#include <map>

#include "mobile/models/forecast_words.h"

namespace kneerail {

namespace {

using forecast::RunComing;
using forecast::VisitDetails;

constexpr std::int32_t soon_days = 60;

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

/// What a part comes up to: "loose set screws".
QString reached_words(const VisitDetails& of) {
  switch (of.limit.value_or(forecast::Limit::grade_5)) {
    case forecast::Limit::wall_limit:
      return SiteWords::tr("its wall");
    case forecast::Limit::torque_minimum:
      return SiteWords::tr("loose set screws");
    case forecast::Limit::coating_exhausted:
    case forecast::Limit::coating_first_maintenance:
      return SiteWords::tr("its coating");
    case forecast::Limit::grade_2:
      return SiteWords::tr("grade %1").arg(2);
    case forecast::Limit::grade_3:
      return SiteWords::tr("grade %1").arg(3);
    case forecast::Limit::grade_4:
      return SiteWords::tr("grade %1").arg(4);
    case forecast::Limit::grade_5:
      break;
  }
  return SiteWords::tr("grade %1").arg(5);
}

QString due_part_words(const SiteDue& due) {
  const VisitDetails& of = due.why->of;
  if (of.comes_up)
    return SiteWords::tr("%1 comes up to your chance of %2 for %3 on %4; half of that time is over")
        .arg(due.part, chance_words(of.owners_chance), reached_words(of), whole_day(*of.comes_up));
  const QString first = SiteWords::tr("%1 is past your chance of %2 for %3 already, with %4")
                            .arg(due.part, chance_words(of.owners_chance), reached_words(of),
                                 chance_words(of.chance_now));
  return of.past < 2
             ? first
             : SiteWords::tr("%1; %n more part(s) as well", nullptr, of.past - 1).arg(first);
}

QString event_reason(const VisitDetails& of, Date day) {
  const QString what = event_word(of.event);
  return day < of.event_day
             ? SiteWords::tr("a look before the %1 of %2").arg(what, whole_day(of.event_day))
             : SiteWords::tr("nobody has come since the %1 of %2")
                   .arg(what, whole_day(of.event_day));
}

QString reason_of(const SiteDue& due) {
  const VisitDetails& of = due.why->of;
  switch (due.why->why) {
    case forecast::VisitReason::longest_interval:
      if (of.never_visited) return SiteWords::tr("nobody has looked at the whole of it yet");
      return SiteWords::tr("the owner's longest interval of %n day(s) ends", nullptr,
                           of.longest_interval_days.value_or(0));
    case forecast::VisitReason::event:
      return event_reason(of, due.day);
    case forecast::VisitReason::due_part:
      return due_part_words(due);
    case forecast::VisitReason::faster_than_class:
      return SiteWords::tr("the coating goes faster than its class");
    case forecast::VisitReason::narrows_a_rate:
      return SiteWords::tr("one more reading of %1 would tell its rate by then").arg(due.part);
  }
  return {};
}

/// Why that day; of a day that was agreed and nothing moves there is nothing to say.
QString day_words(const SiteDue& due) {
  if (due.what != SiteDue::What::visit || !due.why) return {};
  if (!due.moved_from) return SiteWords::tr("Proposed: %1.").arg(reason_of(due));
  const QString from = month_and_year(*due.moved_from);
  return SiteWords::tr("Brought forward from %1: %2.")
      .arg(from == month_and_year(due.day) ? whole_day(*due.moved_from) : from, reason_of(due));
}

}  // namespace

QString event_word(const std::string& what) {
  static const std::map<std::string, const char*> words{
      {"ice", QT_TRANSLATE_NOOP("SiteWords", "ice")},
      {"flood", QT_TRANSLATE_NOOP("SiteWords", "flood")},
      {"impact", QT_TRANSLATE_NOOP("SiteWords", "impact")},
      {"crowd", QT_TRANSLATE_NOOP("SiteWords", "crowd")},
      {"storm", QT_TRANSLATE_NOOP("SiteWords", "storm")},
      {"near miss", QT_TRANSLATE_NOOP("SiteWords", "near miss")},
      {"accident", QT_TRANSLATE_NOOP("SiteWords", "accident")},
      {"damage on purpose", QT_TRANSLATE_NOOP("SiteWords", "damage on purpose")}};
  const auto word = words.find(what);
  return word == words.end() ? SiteWords::tr("event") : SiteWords::tr(word->second);
}

SiteDue site_due(const SiteBand& band, const forecast::NextVisit& visit) {
  SiteDue due;
  if (visit.day) {
    due.what = SiteDue::What::visit;
    due.day = *visit.day;
    if (visit.brought_forward || !visit.agreed) due.why = visit.proposals.front();
    if (visit.brought_forward) due.moved_from = visit.agreed;
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
  lines << day_words(due) << forecast.rest << coming_words(band, forecast) << grade_words(band);
  lines.removeAll(QString());
  return lines.join(QLatin1Char(' '));
}

}  // namespace kneerail
