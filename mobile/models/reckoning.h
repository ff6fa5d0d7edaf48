#pragma once

// One reckoning of the whole register: its readings as they were known on a day, the fitted model,
// and what it says of every part. A cache: it can be thrown away and made again.

#include <atomic>
#include <cstdint>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/base/id.h"
#include "core/forecast/coating_model.h"
#include "core/forecast/part_story.h"
#include "schema/database.h"

namespace kneerail {

struct Reckoning {
  forecast::Portfolio portfolio;
  forecast::CoatingModel model;
  forecast::CoatingForecast forecast;
  std::vector<Uuid> components;                        ///< by place in portfolio.parts
  std::unordered_map<Uuid, std::int32_t> part_places;  ///< the other way round
  std::unordered_map<std::int32_t, std::size_t>
      first_rows;                 ///< by part: place of its first row in forecast.limits
  std::vector<Uuid> worst_first;  ///< components with an answer: the earliest likely limit first
  std::set<std::string> faster_sites;  ///< with a zone that is likely faster than its class

  [[nodiscard]] Date as_of() const { return portfolio.as_of; }
  /// The rows of one part; empty for one that came after.
  [[nodiscard]] std::vector<const forecast::LimitForecast*> rows_of(const Uuid& component) const;
};

/// Reads all readings up to a day and fits, until it is stopped; a null flag never stops it.
/// Errors: not_estimable, with the reason in words; cancelled, io, corrupt.
Result<Reckoning> reckon(Database& tables, Date as_of, const std::atomic<bool>* stop = nullptr);

/// The story of one part with what was entered since the reckoning; shared effects are held.
/// Errors: not_found (no such part yet), not_estimable, io, corrupt.
Result<forecast::PartStory> story_with_latest(Database& tables, const Reckoning& reckoning,
                                              const Uuid& site, const Uuid& component);

}  // namespace kneerail
