// The curves of when the zinc is gone against the chance they are laid through.

#include "core/forecast/wall/zinc_end.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "core/base/world.h"
#include "core/forecast/wall/constants.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

const corrosion::AttackPath zinc_path(0.9);
const PathTable zinc_table(zinc_path);

class Drawn {
 public:
  explicit Drawn(std::uint64_t seed) : random_(seed) {
    coating.spots_excess_um2 = random_.uniform() < 0.5 ? 0 : 40 * random_.uniform();
    start_known = random_.uniform() < 0.7;
    age_now = 60 * random_.uniform();
    for (int i = 0; i < 6; ++i) {
      const double start_um = 20 + 100 * random_.uniform();
      zincs.push_back({.weight = 1,
                       .um_per_year = std::exp(3 * random_.uniform() - 1),
                       .start_um = start_um,
                       .start_variance = std::pow((0.02 + 0.2 * random_.uniform()) * start_um, 2),
                       .ahead = random_.uniform() < 0.3 ? 3.0 : 1.0});
    }
    zincs.push_back({.weight = 1});  // bare
  }

  Posterior coating;
  bool start_known = true;
  double age_now = 0;
  std::vector<ZincWay> zincs;

 private:
  SplitMix64 random_;
};

}  // namespace

TEST_CASE("a curve of the zinc's end follows its chance and rises as it does", "[core][property]") {
  for (const std::uint64_t seed : test::seeds(1, 200)) {
    INFO(test::reproduce(seed));
    const Drawn drawn(seed);
    const ZincEnd end({&zinc_path, drawn.age_now, drawn.start_known}, &zinc_table, &drawn.coating);
    const GoneCurves curves(end, drawn.zincs);
    const double latest = drawn.age_now + wall_constant::longest_years;
    for (std::size_t z = 0; z < drawn.zincs.size(); ++z) {
      double before = 0;
      double exact_before = 0;
      for (double age = -10; age < latest; age += 0.931) {
        const double said = curves.chance(z, age);
        const double exact = end.gone_chance(drawn.zincs[z], age);
        INFO("way " << z << ", age " << age << ", now " << drawn.age_now << ": " << said << ", "
                    << exact);
        REQUIRE(std::abs(said - exact) < 5e-5);
        REQUIRE(said - before >= std::min(0.0, exact - exact_before) - 1e-8);
        if (exact > 1e-6) REQUIRE(curves.may_be_gone(z, age));
        before = said;
        exact_before = exact;
      }
    }
  }
}

TEST_CASE("the slope of the zinc's end is that of its chance", "[core]") {
  const Drawn drawn(7);
  const ZincEnd end({&zinc_path, 20, true}, &zinc_table, &drawn.coating);
  const ZincWay zinc{.weight = 1, .um_per_year = 3, .start_um = 60, .start_variance = 30};
  for (double age = 5.02; age < 60; age += 0.97) {
    const auto side = age > 20 ? ZincEnd::Side::after_now : ZincEnd::Side::before_now;
    const auto at = end.rise(zinc, age, side);
    CHECK(at.chance == Approx(end.gone_chance(zinc, age)).margin(1e-9));
    const double apart = 0.01;
    const double measured =
        (end.gone_chance(zinc, age + apart) - end.gone_chance(zinc, age - apart)) / (2 * apart);
    CHECK(at.slope == Approx(measured).margin(2e-4));
  }
}
