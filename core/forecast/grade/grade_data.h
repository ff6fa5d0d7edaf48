#pragma once

// The portfolio as the grade model sees it: parts in their sites and zones, each with its segments
// (from one fresh start in grade 1 to the next) and the looks at it. Everything lies in order of
// identifiers, so that sums are the same whatever the order of the rows.

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/forecast/portfolio.h"
#include "core/forecast/start_dates.h"

namespace kneerail::forecast {

inline constexpr int grade_worst = 5;

/// One inspector's grade of a part on one day. Several of one visit count once, as the worst.
struct GradeLook {
  Date day;
  std::int32_t inspector = 0;  ///< place in GradeData::inspectors
  std::int8_t seen = 1;        ///< 1 to 5
  bool fresh = true;           ///< false: said again as last time, or from afar or a picture
  double ln_years = 0;         ///< ln of the years since the look before; -inf on one day
  double unbroken = 1;         ///< chance that nobody replaced the part since without a record
};

/// From a fresh start to the next. `replace` and `regalvanise` start one in grade 1; touching up
/// and re-torquing do not; a part that came back from a strike, not said to be the same, has an
/// unknown start.
struct GradeSegment {
  std::int32_t first = 0;  ///< place in GradeData::looks
  std::int32_t count = 0;
  /// Known start: the one; else equally likely days on which it may have begun.
  std::vector<Date> starts;
  std::vector<double> ln_ages;  ///< ln of the years from each to the first look
  bool start_known = true;
};

struct GradePart {
  std::int32_t place = 0;  ///< in Portfolio::parts
  std::int32_t site = 0;
  std::int32_t zone = 0;  ///< within the site
  PartKind kind = PartKind::fitting;
  Material material = Material::zinc_coated_steel;
  bool painted = false;
  Exposure exposure = Exposure::unknown;
  std::int32_t first_segment = 0;
  std::int32_t segments = 0;         ///< at least one; the last is the current one
  bool graded_before_start = false;  ///< a look before its installation: start taken as unknown
};

struct GradeSite {
  std::string name;
  std::int32_t first_part = 0;
  std::int32_t parts = 0;
  std::vector<std::string> zones;
};

struct GradeData {
  Date as_of;
  std::vector<GradeSite> sites;
  std::vector<GradePart> parts;  ///< by site, then id
  std::vector<GradeSegment> segments;
  std::vector<GradeLook> looks;
  std::vector<std::string> inspectors;  ///< ascending; "" where nobody is named
  std::vector<LeftOut> left_out;        ///< no grade, or after the as-of day
};

/// ln of the years; -inf where they are none.
double ln_years(double years);
/// ln of the years between; -inf where `to` is not later.
double ln_years(Date from, Date to);

/// What counts as seen: the worst grade from the last day with a fresh look on, so that a grade
/// said as last time or from afar may add to it and never takes its place; of the same grades the
/// fresh one, the earlier one. `looks` by day; nothing where there are none.
std::optional<GradeLook> seen_last(std::span<const GradeLook> looks);

/// The portfolio with its own dates of installation, or with those of a larger one it is a part of.
GradeData prepare_grades(const Portfolio& portfolio, const InstalledDates& installed);
/// What was prepared of many portfolios, none with a site of another, as of one. Places of parts in
/// their portfolios stay as they are.
GradeData joined(std::vector<GradeData> pieces);

}  // namespace kneerail::forecast
