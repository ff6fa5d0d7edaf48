// What the last visit found at the chosen post as a whole.

#include <QLocale>
#include <algorithm>
#include <numeric>

#include "mobile/elevation/part_place.h"
#include "mobile/models/forecast_words.h"
#include "mobile/models/walk_model.h"
#include "schema/store/organisation_days.h"
#include "schema/store/visit_store.h"

using kneerail::SheetPart;

namespace {

constexpr double tenths = 10;

}  // namespace

/// Of the chosen post; no post, or a part of it is chosen: none.
std::vector<const SheetPart*> WalkModel::parts_of_post_alone() const {
  std::vector<const SheetPart*> parts;
  if (part_chosen() || run_.bay() >= 0) return parts;
  for (const int place : parts_in_order(run_.post()))
    parts.push_back(&sheet().parts[static_cast<std::size_t>(place)]);
  return parts;
}

QList<int> WalkModel::post_last_grades() const {
  QList<int> grades;
  for (const SheetPart* part : parts_of_post_alone())
    if (kneerail::elevation::is_joint(*part) && part->last) grades << part->last->grade;
  return grades;
}

QString WalkModel::post_last_visit() const {
  std::int64_t newest_ms = 0;
  for (const SheetPart* part : parts_of_post_alone())
    if (part->last) newest_ms = std::max(newest_ms, part->last->t_ms);
  if (newest_ms == 0) return {};
  const auto days = kneerail::organisation_days(store_.reader().tables());
  if (!days) return {};
  return tr("last visit, %1").arg(kneerail::whole_day(days->zone.day({newest_ms})));
}

QString WalkModel::post_last_readings() const {
  kneerail::Database& tables = store_.reader().tables();
  std::optional<double> thinnest_um;
  std::optional<std::int64_t> least_tenth_nm;
  for (const SheetPart* part : parts_of_post_alone()) {
    for (int spot = 1; spot <= static_cast<int>(part->spots.size()); ++spot) {
      const kneerail::PartSpot at{part->id, part->life, spot};
      const auto found = last_coating(tables, at, pen_.visit(), pen_.put_right());
      if (!found || !*found || (*found)->replicates_tenth_um.empty()) continue;
      const auto& read = (*found)->replicates_tenth_um;
      const auto sum = std::accumulate(read.begin(), read.end(), std::int64_t{0});
      const double mean_um = static_cast<double>(sum) / tenths / static_cast<double>(read.size());
      thinnest_um = std::min(thinnest_um.value_or(mean_um), mean_um);
    }
    for (int screw = 1; screw <= part->screws; ++screw) {
      const auto found = last_torque(tables, {part->id, screw, std::nullopt, pen_.visit()});
      if (!found || !*found || !(*found)->as_found_tenth_nm) continue;
      const std::int64_t tenth_nm = *(*found)->as_found_tenth_nm;
      least_tenth_nm = std::min(least_tenth_nm.value_or(tenth_nm), tenth_nm);
    }
  }
  QStringList words;
  if (thinnest_um) words << tr("thinnest %1 µm").arg(QLocale().toString(*thinnest_um, 'f', 0));
  if (least_tenth_nm)
    words << tr("%1 N·m").arg(
        QLocale().toString(static_cast<double>(*least_tenth_nm) / tenths, 'f', 0));
  return words.join(QStringLiteral(" · "));
}
