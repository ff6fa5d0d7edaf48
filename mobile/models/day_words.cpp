#include "mobile/models/day_words.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "mobile/models/finding_words.h"
#include "mobile/models/forecast_words.h"
#include "mobile/models/site_words.h"

namespace kneerail::day_words {

namespace {

using Kind = DayLine::Kind;
using forecast::Limit;

class DayWords {
  Q_DECLARE_TR_FUNCTIONS(DayWords)
};

QDateTime local(Instant at, const TimeZone& zone) {
  return QDateTime::fromMSecsSinceEpoch(at.ms, Qt::OffsetFromUTC, zone.offset_s(at));
}

QString day_and_time(Instant at, const TimeZone& zone) {
  const QDateTime there = local(at, zone);
  return DayWords::tr("%1 %2").arg(QLocale().toString(there.date(), DayWords::tr("d MMM yyyy")),
                                   there.time().toString(QStringLiteral("HH:mm")));
}

QString clock(int minutes) {
  return QStringLiteral("%1:%2")
      .arg(minutes / 60, 2, 10, QLatin1Char('0'))
      .arg(minutes % 60, 2, 10, QLatin1Char('0'));
}

QString limit_words(Limit limit) {
  switch (limit) {
    case Limit::torque_minimum:
      return DayWords::tr("loose set screws");
    case Limit::wall_limit:
      return DayWords::tr("a thin wall");
    default:
      return DayWords::tr("the grade to replace at");
  }
}

QString run_name(const DayFound& day, int run) {
  return QString::fromStdString(day.runs[static_cast<std::size_t>(run)].name);
}

QString label(const RunSheet& sheet, int post) {
  return QString::fromStdString(sheet.posts[static_cast<std::size_t>(post)].label);
}

QString hours_words(const AccessHours& own) {
  const QString hours = DayWords::tr("%1 from %2 to %3")
                            .arg(QString::fromStdString(own.run_name), clock(own.from_minutes),
                                 clock(own.to_minutes));
  return own.note.empty() ? hours
                          : DayWords::tr("%1 (%2)").arg(hours, QString::fromStdString(own.note));
}

}  // namespace

QString time(std::int64_t seconds) {
  const auto minutes = static_cast<int>((seconds + 59) / 60);
  if (minutes < 60) return DayWords::tr("%1 min").arg(minutes);
  if (minutes % 60 == 0) return DayWords::tr("%1 h").arg(minutes / 60);
  return DayWords::tr("%1 h %2").arg(minutes / 60).arg(minutes % 60, 2, 10, QLatin1Char('0'));
}

QString size(std::int64_t bytes) {
  constexpr double thousand = 1000;
  const auto value = static_cast<double>(bytes);
  if (value < thousand * thousand)
    return DayWords::tr("%L1 kB").arg(static_cast<qlonglong>(std::ceil(value / thousand)));
  return DayWords::tr("%L1 MB").arg(
      static_cast<qlonglong>(std::lround(value / thousand / thousand)));
}

QString day(Date day) {
  const Civil at = civil(day);
  return QLocale().toString(QDate(at.year, static_cast<int>(at.month), static_cast<int>(at.day)),
                            DayWords::tr("ddd d MMM yyyy"));
}

QString told_by(ToldBy by) {
  switch (by) {
    case ToldBy::public_person:
      return DayWords::tr("Told by the public");
    case ToldBy::staff:
      return DayWords::tr("Told by staff");
    case ToldBy::contractor:
      return DayWords::tr("Told by a contractor");
    case ToldBy::police_or_rescue:
      return DayWords::tr("Told by police or rescue");
    case ToldBy::maker:
      return DayWords::tr("Told by the maker");
    case ToldBy::engineer:
      return DayWords::tr("Told by an engineer");
    case ToldBy::other:
      break;
  }
  return DayWords::tr("Told by others");
}

QString told(const OpenTold& told, const TimeZone& zone) {
  QString said = QString::fromStdString(told.said);
  if (!told.place.empty())
    said = DayWords::tr("%1 (%2)").arg(said, QString::fromStdString(told.place));
  return DayWords::tr("%1: %2. Nobody has looked yet.").arg(day_and_time(told.at, zone), said);
}

QString event_name(const forecast::OpenEvent& event) {
  QString name = event_word(event.what);
  return name.replace(0, 1, name.left(1).toUpper());
}

QString event(const forecast::OpenEvent& event, Date today) {
  if (event.day > today)
    return DayWords::tr("Lies ahead, on %1: a look before it, each part by itself.")
        .arg(whole_day(event.day));
  return DayWords::tr("Since %1 nobody has come: each part gets a look of its own.")
      .arg(whole_day(event.day));
}

QString closure_name() {
  return DayWords::tr("Closure");
}

QString closure(Instant look_again_by, const TimeZone& zone) {
  return DayWords::tr("Was to be looked at by %1: in place, put back, gone?")
      .arg(day_and_time(look_again_by, zone));
}

QString finding_name(const KeptFinding& finding) {
  return DayWords::tr("%1 %2").arg(QString::fromStdString(finding.number),
                                   kneerail::finding_name(finding.what));
}

QString finding(const KeptFinding& finding, Instant now, const TimeZone& zone) {
  if (finding.hazard == kneerail::HazardState::open)
    return DayWords::tr("Cannot wait, and is not made safe.");
  if (finding.look_again_by && *finding.look_again_by < now)
    return DayWords::tr("Made safe; was to be looked at by %1.")
        .arg(day_and_time(*finding.look_again_by, zone));
  if (finding.mend_by) {
    return finding.hazard == kneerail::HazardState::made_safe
               ? DayWords::tr("Made safe; to be mended by %1.").arg(whole_day(*finding.mend_by))
               : DayWords::tr("To be mended by %1.").arg(whole_day(*finding.mend_by));
  }
  if (finding.hazard == kneerail::HazardState::made_safe)
    return DayWords::tr("Made safe; no day to mend it is set.");
  if (finding.next) return DayWords::tr("Next: %1.").arg(next_step_name(*finding.next));
  return DayWords::tr("Open, and nothing is said of what is next.");
}

QString look(std::optional<Date> last) {
  return last ? DayWords::tr("Each post looked at and pushed; somebody was here last on %1.")
                    .arg(whole_day(*last))
              : DayWords::tr("Each post looked at and pushed; nobody has been here yet.");
}

QString past_chance(Limit limit, double owners_chance, double worst) {
  return DayWords::tr("Past your chance of %1 for %2; the first of them with %3.")
      .arg(chance_words(owners_chance), limit_words(limit), chance_words(worst));
}

QString read(Kind kind, int readings, double chance) {
  switch (kind) {
    case Kind::never_measured:
      return DayWords::tr("Nobody has measured a part of this run.");
    case Kind::ties_a_gauge:
      return DayWords::tr("A gauge has measured it before: it ties that gauge's days together.");
    case Kind::if_time:
      return DayWords::tr("If there is time: the next by what a reading would tell.");
    case Kind::read_once:
      return readings == 0
                 ? DayWords::tr("Never read, and a coating limit is near: chance %1 in two visits.")
                       .arg(chance_words(chance))
                 : DayWords::tr(
                       "Read once only, so the rate is not known; chance %1 of a coating "
                       "limit in two visits.")
                       .arg(chance_words(chance));
    default:
      return DayWords::tr("Coating limit near (chance %1 in two visits) and the rate still open.")
          .arg(chance_words(chance));
  }
}

QString strike(const SiteStrike& strike) {
  const QString down = DayWords::tr("Down since %1").arg(whole_day(strike.since));
  return strike.re_erect_by ? DayWords::tr("%1; to be re-erected and signed by %2.")
                                  .arg(down, whole_day(*strike.re_erect_by))
                            : DayWords::tr("%1; to be re-erected and signed.").arg(down);
}

QString not_reckoned() {
  return DayWords::tr("What to measure is not reckoned yet; the rest of the day stands.");
}

QString what(const DayLine& line, int count) {
  if (!line.name.isEmpty()) return line.name;
  switch (line.kind) {
    case Kind::look:
      return DayWords::tr("%Ln post(s) to look at", nullptr, count);
    case Kind::loose_screws:
      return DayWords::tr("%Ln fitting(s) to torque", nullptr, count);
    case Kind::thin_wall:
      return DayWords::tr("%Ln wall(s) to read", nullptr, count);
    case Kind::bad_grade:
      return DayWords::tr("%Ln part(s) to grade near", nullptr, count);
    case Kind::past_chance:
      return DayWords::tr("%Ln part(s) to check", nullptr, count);
    case Kind::re_erect:
      return DayWords::tr("%Ln screw(s) to sign", nullptr, count);
    default:
      return DayWords::tr("%Ln coating(s) to read", nullptr, count);
  }
}

QString where(const DayFound& day, std::size_t line, std::size_t done) {
  const DayLine& own = day.lines[line];
  if (own.run < 0) return DayWords::tr("whole site");
  const RunSheet& sheet = day.sheets[static_cast<std::size_t>(own.run)];
  int from = -1;
  int to = -1;
  const auto& tasks = day.plan.tasks();
  for (int pass = 0; pass < 2 && from < 0; ++pass)  // where nothing of it fits: all of it
    for (std::size_t i = 0; i < (pass == 0 ? done : tasks.size()); ++i) {
      if (static_cast<std::size_t>(tasks[i].line) != line || day.at[i].post < 0) continue;
      from = from < 0 ? day.at[i].post : std::min(from, day.at[i].post);
      to = std::max(to, day.at[i].post);
    }
  QStringList words;
  if (day.runs.size() > 1) words << run_name(day, own.run);
  if (from >= 0 && from == to) words << DayWords::tr("post %1").arg(label(sheet, from));
  if (from >= 0 && from < to)
    words << DayWords::tr("posts %1 to %2").arg(label(sheet, from), label(sheet, to));
  return words.join(DayWords::tr(" · "));
}

QString hours(const DayFound& day, int run) {
  if (run < 0) return {};
  const Uuid& id = day.runs[static_cast<std::size_t>(run)].id;
  for (const AccessHours& own : day.begins.access)
    if (own.run == id)
      return DayWords::tr(" · %1 to %2").arg(clock(own.from_minutes), clock(own.to_minutes));
  return {};
}

QString access(const DayFound& day) {
  QStringList words;
  for (const AccessHours& own : day.begins.access) words << hours_words(own);
  for (const AccessHours& own : day.begins.no_access)
    words << DayWords::tr("%1 not today").arg(QString::fromStdString(own.run_name));
  return words.isEmpty() ? QString()
                         : DayWords::tr("Hours of access: %1").arg(words.join(DayWords::tr(", ")));
}

QString instrument_name(const DayInstrument& instrument) {
  const QString serial = QString::fromStdString(instrument.serial);
  switch (instrument.kind) {
    case InstrumentKind::coating_gauge:
      return DayWords::tr("Coating gauge %1").arg(serial);
    case InstrumentKind::torque_wrench:
      return DayWords::tr("Torque wrench %1").arg(serial);
    case InstrumentKind::wall_gauge:
      return DayWords::tr("Wall gauge %1").arg(serial);
    case InstrumentKind::load_gauge:
      return DayWords::tr("Load gauge %1").arg(serial);
    case InstrumentKind::rule:
      break;
  }
  return DayWords::tr("Rule %1").arg(serial);
}

QString instrument(const DayInstrument& instrument, Date day) {
  if (instrument.away_since)
    return DayWords::tr("away since %1").arg(whole_day(*instrument.away_since));
  if (instrument.out_of_date(day))
    return DayWords::tr("out of date since %1").arg(whole_day(*instrument.valid_until));
  if (instrument.in_doubt) return DayWords::tr("in doubt today");
  if (!instrument.valid_until) return DayWords::tr("no certificate is written down");
  return DayWords::tr("in date to %1").arg(whole_day(*instrument.valid_until));
}

QString to_take(const DayAtSite& begins, Date day) {
  QStringList words;
  for (const DayInstrument& own : begins.instruments) {
    if (!own.to_take(day)) continue;
    QString name = instrument_name(own);
    name.replace(0, 1, name.left(1).toLower());
    words << (own.kind == InstrumentKind::coating_gauge
                  ? DayWords::tr("%1 with one check foil").arg(name)
                  : name);
  }
  return words.isEmpty() ? DayWords::tr("No instrument is in date.")
                         : DayWords::tr("Take: %1.").arg(words.join(DayWords::tr(", ")));
}

}  // namespace kneerail::day_words
