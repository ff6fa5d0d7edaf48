#pragma once

// What the coating model needs of the readings of some sites: sessions, visit means, segments, and
// the sums of what all sites tell together. The readings themselves are not needed after it, so a
// portfolio can be handed over site by site with no more of them in memory than the largest site
// has. Sums are kept by site and added in the order of sites: whether all sites are gathered at
// once or one by one, and in whatever order, they come out to the last bit the same.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/coating_data.h"
#include "core/forecast/preparation.h"

namespace kneerail::forecast {

/// A sum of so many values.
struct CountedSum {
  double total = 0;
  std::int64_t count = 0;

  void add(double value) {
    total += value;
    ++count;
  }
  void add(const CountedSum& more) {
    total += more.total;
    count += more.count;
  }
};

/// What one site's repeats tell of gauges and areas, and how well its classes are known.
struct SiteSums {
  CountedSum replicate_variances;  ///< um^2
  CountedSum area_variances;       ///< um^2, of a spot's mean
  CountedSum rate_ln_sds;
};

/// What the error variance of a visit mean hangs on.
struct MeanCounts {
  double area_share = 0;  ///< 1 over the areas measured, less 1 over all of the part
  std::int32_t replicates = 0;
};

/// Parts that are odd in one way.
struct OddParts {
  std::int64_t count = 0;
  std::string first;  ///< id of the first by site and id
};

/// Notes and counts of what was gathered, kept apart so that those of many sites can be joined.
struct GatheredNotes {
  std::vector<std::string> coarse_days;
  std::vector<std::string> foils;
  std::vector<std::string> units;
  OddParts odd_nominal;
  OddParts rate_off_class;
  OddParts rate_of_no_class;
  std::int64_t readings = 0;     ///< of coatings, used or not
  std::int64_t millimetres = 0;  ///< of them kept back as a slip of the unit
  std::int64_t too_thick = 0;
};

struct GatheredCoating {
  CoatingData data;                ///< without what is estimated from all sites, and without notes
  std::vector<MeanCounts> counts;  ///< of data.means
  std::vector<SiteSums> sums;      ///< of data.sites
  GatheredNotes notes;
};

/// Of all sites of that portfolio; a part the model does not serve has only its readings left out.
/// Errors: invalid_input for a path exponent outside 0.5 to 1.
Result<GatheredCoating> gather_coating(const Portfolio& portfolio);

/// Of many portfolios none of which has a site of another, as of one. Places of parts in their
/// portfolios (CoatingPart::place) stay as they are.
GatheredCoating joined(std::vector<GatheredCoating> pieces);

/// What a portfolio tells of gauges, areas, classes and grades is estimated unless given. Errors:
/// not_estimable when the model serves no part.
Result<CoatingData> estimate_coating(GatheredCoating gathered,
                                     std::optional<LearntBefore> known = std::nullopt);

}  // namespace kneerail::forecast
