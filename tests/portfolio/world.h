#pragma once

// Invented portfolios with known truth, richer than the model that forecasts them. The tests of
// single functions take made_portfolio (tests/support), a world the model nearly describes; this
// one asks how the forecast stands in a world built from how zinc and steel go instead:
//
//   * zinc is lost patch by patch: each has its own start and face, so that rust comes in spots
//     while the mean is still thick, and one place is not what another is;
//   * loss follows the weather of each year and an exponent of the site's own; some zones are
//     put in the wrong class, some parts stand in water or spray that nobody recorded;
//   * where zinc is gone a gauge shows the rust, which grows; or little, where it was brushed off;
//   * grades come from the share of rusted surface, through inspectors who see more or less;
//   * batches are heavier or lighter than the register says, some far; install dates can be off;
//   * gauges have zeros, gains, read otherwise on tubes, and some drift; inspectors press their
//     way; readings are rounded and at times mistyped;
//   * parts are replaced and touched up, some without a record; paint holds for a while;
//   * tubes rust from outside after the zinc, and hollow posts from inside long before.
//
// Everything comes from the shape and one seed.

#include <array>
#include <cstdint>
#include <string_view>
#include <vector>

#include "core/forecast/portfolio.h"

namespace kneerail::portfolio_test {

/// What kind of owner a portfolio is of.
struct Shape {
  std::string_view name;
  int sites = 6;
  int zones = 2;      ///< per site
  int runs = 4;       ///< per zone
  int parts = 16;     ///< per run
  int class_low = 2;  ///< corrosivity, 2 to 5
  int class_high = 5;
  double wrong_class = 0.12;  ///< of zones
  int age_low = 3;            ///< years since the runs were built
  int age_high = 30;
  double visit_years = 2;     ///< between visits, about
  double visited_years = 12;  ///< how far back visits go
  double measured = 0.6;      ///< of parts at a visit
  double graded = 0.9;        ///< of parts at a visit
  double surface_said = 0.2;  ///< of readings on rust, that they are
  double unknown_start = 0.2;
  double wet = 0.06;         ///< of parts: water or spray nobody recorded
  double face_sd = 0.22;     ///< ln, of patches of one part
  double drifting = 0.15;    ///< of gauges
  double swapped = 0.015;    ///< of parts, without a record
  double renewed = 0.3;      ///< of parts at grade 5 at a visit: replaced, on record
  double touched_up = 0.15;  ///< of parts at grade 4 at a visit
};

inline constexpr double never_years = 1000;

/// Years from the as-of date; negative: past; never_years: not within 150 years.
struct Truth {
  double coating_years = 0;  ///< until the mean of the places where it is read is zero
  double wall_years = 0;     ///< to the wall's limit; never_years where there is none
  double grade_5_years = 0;  ///< to the rust an inspector with middling eyes calls grade 5
  int visits = 0;            ///< that measured the current coating
  bool wet = false;
  bool drifting = false;  ///< last read with a gauge that drifts
  bool swapped = false;
  bool touched_up = false;
  bool unknown_start = false;
};

struct World {
  forecast::Portfolio portfolio;
  std::vector<Truth> truth;  ///< by place in portfolio.parts
};

World made_world(const Shape& shape, std::uint64_t seed);

/// Six kinds of owner.
const std::array<Shape, 6>& shapes();

}  // namespace kneerail::portfolio_test
