#pragma once

// From a portfolio to what the wall model sees: its tubes, their wall when new, their limit, how
// fast steel goes in their zone, and the wall readings of the tube that stands there now. A reading
// that is not used keeps its reason.

#include <optional>
#include <string>
#include <vector>

#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

/// The mean of a part's wall readings with one gauge on one day.
struct WallMean {
  Date day;
  double wall_mm = 0;
  double variance_mm2 = 0;  ///< 0.06^2 / (places read) + 0.03^2
};

/// A wall that the gauge could not read: under its least, or over its most.
struct WallBound {
  Date day;
  double wall_mm = 0;
  bool at_most = true;  ///< else at least
};

/// A wall reading that no model takes, which a person should look at.
struct OddWall {
  Date day;
  double wall_mm = 0;
  std::optional<WallMean> thinner;  ///< read before it: no wall grows; none: odd by its nominal
};

/// A place that was read at or under the tube's limit; a mean of places would hide it.
struct ThinPlace {
  Date day;
  double wall_mm = 0;     ///< the thinnest of its day
  double chance = 0;      ///< that the wall is at or under its limit there
  bool is_bound = false;  ///< the gauge could not read so little
};

/// Where the ratio of steel's loss to zinc's comes from.
enum class RatioFrom { zone, setting };

struct WallTube {
  std::int32_t place = 0;       ///< in Portfolio::parts
  std::string why_not;          ///< no model serves its wall, in words; empty: served
  bool bare = false;            ///< no zinc: steel from the first day
  double limit_mm = 0;          ///< the larger of the owner's and the least that carries its load
  double owner_limit_mm = 0;    ///< 0: none is set
  bool limit_reckoned = false;  ///< from what the tube has to carry
  double least_wall_mm = 0;     ///< that carries its load; 0: not known
  std::string load_not_known;   ///< why not, in words; empty: nobody asked
  bool yield_assumed = false;   ///< of the least wall
  double start_mm = 0;          ///< mean and sd of the wall when new, before any reading
  double start_sd_mm = 0;
  double steel_over_zinc = 0;
  RatioFrom ratio_from = RatioFrom::setting;
  double class_steel_um_per_year = 0;  ///< 20-year mean, before any reading
  double open_chance = 0;              ///< that its hollow rusts
  std::optional<Date> stands_since;    ///< installed, or replaced, or dipped again
  std::optional<Date> hollow_since;    ///< when the inside began to rust
  std::vector<WallMean> readings;      ///< by day, then gauge
  /// Of the same tube before its zinc was renewed; the last of them says the wall it began with.
  std::vector<WallMean> before_zinc;
  std::vector<WallBound> bounds;  ///< since its zinc is there; by day, one of each side a day
  /// At most, before its zinc was renewed; by day, one a day. New zinc makes no wall thicker.
  std::vector<WallBound> bounds_before_zinc;
  std::vector<ThinPlace> thin;  ///< of this tube, whatever its zinc; by day, one a day
  std::vector<OddWall> odd;     ///< by day, then wall

  /// Of the last reading or bound; none: nobody looked.
  [[nodiscard]] std::optional<Date> last_look() const {
    std::optional<Date> last;
    if (!readings.empty()) last = readings.back().day;
    if (!bounds.empty() && (!last || *last < bounds.back().day)) last = bounds.back().day;
    return last;
  }
};

struct WallData {
  Date as_of;
  std::vector<WallTube> tubes;  ///< of post_tube and rail_tube, by part id
  std::vector<LeftOut> left_out;
};

/// Millimetres at which a tube counts as worn out: the larger of the owner's limit and the least
/// wall with which it carries its load; of one that does not carry it new, at least its nominal
/// wall. Nothing where neither is known.
std::optional<double> governing_wall_mm(const Part& part);

/// Takes every tube of the portfolio; a wall reading of anything else is left out.
/// `swapped`: by place of the part, the day on which another was put up unrecorded; empty: none.
WallData prepare_walls(const Portfolio& portfolio,
                       const std::vector<std::optional<Date>>& swapped = {});

}  // namespace kneerail::forecast
