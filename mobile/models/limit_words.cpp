#include "mobile/models/limit_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/forecast/decisions/chances.h"
#include "mobile/models/forecast_words.h"
#include "mobile/models/trend_picture.h"

namespace kneerail {

namespace {

using forecast::Limit;
using forecast::LimitForecast;
using Row = TimeLeftModel::Row;

constexpr double bar_years = 15;  // a full bar
constexpr double soon_years = 5;
constexpr double as_likely_as_not = 0.5;
constexpr std::size_t median = 3;

class LimitWords {
  Q_DECLARE_TR_FUNCTIONS(LimitWords)
};

/// First maintenance comes before the zinc is gone, and steel goes after it.
int place_of(Limit limit) {
  if (limit == Limit::coating_first_maintenance) return -1;
  return static_cast<int>(limit);
}

bool of_coating(Limit limit) {
  return limit == Limit::coating_exhausted || limit == Limit::coating_first_maintenance;
}

/// Of a limit of which the part has no reading.
QString unread_words(Limit limit) {
  switch (limit) {
    case Limit::wall_limit:
      return LimitWords::tr("wall not measured");
    case Limit::torque_minimum:
      return LimitWords::tr("never checked");
    case Limit::grade_2:
    case Limit::grade_3:
    case Limit::grade_4:
    case Limit::grade_5:
      return LimitWords::tr("never graded");
    case Limit::coating_exhausted:
    case Limit::coating_first_maintenance:
      break;  // the headline says it
  }
  return {};
}

void add_times(const LimitForecast& told, Date as_of, Row& row) {
  const double years = told.years[median];
  row.timed = true;
  row.figure = time_words(years);
  row.band = band_words(told.years);
  if (row.band == row.figure && years <= 0)
    row.band = LimitWords::tr("since about %1").arg(std::floor(calendar_year(as_of) + years));
  row.share = std::clamp(years / bar_years, 0.0, 1.0);
  row.soon = years < soon_years;
}

void add_chances(const LimitForecast& told, Date as_of, Row& row) {
  const double ahead = forecast::chance_years.back();
  const Date day{as_of.days + static_cast<std::int32_t>(ahead * days_per_year)};
  const QString now = chance_words(told.p_by.front());
  row.figure = chance_words(told.p_by.back());
  row.band = now == row.figure
                 ? LimitWords::tr("chance today and by %1").arg(month_and_year(day))
                 : LimitWords::tr("chance by %1; %2 today").arg(month_and_year(day), now);
  row.soon = told.p_by.back() >= as_likely_as_not;
}

void add_mark(const PartTold& told, std::size_t place, Row& row) {
  if (!told.outlook) return;
  row.first = told.outlook->governing == place;
  if (row.first)
    row.mark = LimitWords::tr("comes first");
  else if (told.outlook->runner_up == place)
    row.mark = LimitWords::tr("close behind");
}

void speak(Row& row) {
  if (row.figure.isEmpty())
    row.spoken = LimitWords::tr("%1: %2").arg(row.name, row.band);
  else if (row.timed)
    row.spoken = LimitWords::tr("%1: %2, 8 in 10 %3").arg(row.name, row.figure, row.band);
  else
    row.spoken = LimitWords::tr("%1: %2, %3").arg(row.name, row.figure, row.band);
  if (!row.mark.isEmpty()) row.spoken = LimitWords::tr("%1, %2").arg(row.spoken, row.mark);
}

Row row_of(const PartTold& told, std::size_t place, Date as_of) {
  const LimitForecast& limit = told.rows[place];
  Row row;
  row.name = kneerail::limit_name(limit.limit);
  if (!limit.answered) {
    row.band = QString::fromStdString(limit.words);
  } else {
    if (limit.has_years)
      add_times(limit, as_of, row);
    else
      add_chances(limit, as_of, row);
    const QString unread = limit.readings_used == 0 ? unread_words(limit.limit) : QString();
    if (!unread.isEmpty()) row.band = LimitWords::tr("%1; %2").arg(row.band, unread);
  }
  add_mark(told, place, row);
  speak(row);
  return row;
}

QString due_words(const PartTold& told, Date as_of) {
  if (!told.outlook || !told.outlook->due) return {};
  const QString limit = kneerail::limit_name(told.rows[*told.outlook->due_row].limit);
  if (*told.outlook->due <= as_of)
    return LimitWords::tr("Due now by the owner's chance: %1.").arg(limit);
  return LimitWords::tr("Comes due by the owner's chance in %1: %2.")
      .arg(month_and_year(*told.outlook->due), limit);
}

/// What a look at the rail should settle: of screws and walls, for the coating's are told beside
/// its readings.
QString flags_words(const PartTold& told) {
  QStringList lines;
  for (const LimitForecast& row : told.rows)
    if (row.limit == Limit::torque_minimum || row.limit == Limit::wall_limit)
      for (const std::string& flag : row.flags)
        lines << LimitWords::tr("%1: %2.").arg(kneerail::limit_name(row.limit),
                                               QString::fromStdString(flag));
  return lines.join(QLatin1Char(' '));
}

}  // namespace

QList<Row> limit_rows(const PartTold& told, Date as_of) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < told.rows.size(); ++i) order.push_back(i);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return place_of(told.rows[a].limit) < place_of(told.rows[b].limit);
  });
  QList<Row> rows;
  for (const std::size_t place : order) rows << row_of(told, place, as_of);
  return rows;
}

QString limits_reason(const PartTold& told, Date as_of) {
  QStringList lines{due_words(told, as_of), flags_words(told)};
  const bool leans = std::any_of(told.rows.begin(), told.rows.end(), [](const LimitForecast& row) {
    return row.answered && !of_coating(row.limit);
  });
  if (leans)
    lines << LimitWords::tr(
        "What is not coating leans on how such parts usually go: look by interval too.");
  lines << LimitWords::tr("A projection is an estimate. It is not a certificate.");
  lines.removeAll(QString());
  return lines.join(QLatin1Char(' '));
}

}  // namespace kneerail
