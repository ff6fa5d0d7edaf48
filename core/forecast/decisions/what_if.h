#pragma once

// How long the parts of a site would last in another finish: put up new today where they stand, at
// the rate of their zone and run, from a coating that starts by its kind's ratio to the finish's
// minimum; beside the same in the finish they have. No reading of the parts themselves counts but
// through what they share.
//
// Limits: a finish is zinc of another thickness; paint, aluminium and stainless have no rate here.
// Condition grades do not know the thickness: chances of a grade are those of today's finish.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/forecast/decisions/replacement.h"

namespace kneerail::forecast {

/// The years of a new coating to its limits: 5, 10, 25, 50, 75, 90, 95 %.
struct CoatingLife {
  double nominal_um = 0;
  std::array<double, 7> gone{};
  std::optional<std::array<double, 7>> first_maintenance;  ///< where the owner set a limit
};

/// Parts of one zone, kind, exposure, nominal coating, minimum and limit, alike but for their run.
struct FinishLife {
  std::string zone;
  PartKind kind = PartKind::fitting;
  Exposure exposure = Exposure::unknown;
  std::int32_t example = 0;  ///< of the run in which they go first, by the median as now
  int parts = 0;
  CoatingLife as_now;
  CoatingLife other;
};

/// What people name a finish by: a least mean thickness in um ("85"), or "iso1461", the minimum for
/// the wall of each part (castings taken as under 6 mm). Errors: invalid_input.
class Finish {
 public:
  static Result<Finish> named(std::string_view words);
  /// Least mean coating of that part, um; none where the standard has none for it.
  [[nodiscard]] std::optional<double> minimum_um(const Part& part) const;

 private:
  std::optional<double> given_um_;  ///< none: by the standard
};

/// By zone, kind, exposure and nominal. Parts without a coating the model serves are left out.
std::vector<FinishLife> finish_lives(const Replacements& replacements, const CoatingModel& coating,
                                     const std::string& site, const Finish& finish);

}  // namespace kneerail::forecast
