#include <catch2/catch.hpp>
#include <cmath>

#include "core/forecast/coating_model.h"
#include "core/forecast/gauge_walk_inside.h"
#include "core/forecast/one_part.h"
#include "core/forecast/part_story.h"
#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

/// um a year that the first site's gauge reads more than the year before.
constexpr double drift_um_per_year = 2;

/// The first site's gauge drifts from its first day on; a check foil on its first, fourth and last.
Made drifting_world() {
  Made made = made_portfolio({.seed = 91, .sites = 3, .days = 8, .foils = false});
  const std::string site = made.portfolio.visits[0].site;
  const Date first = made.portfolio.visits[0].day;
  int day = 0;
  for (std::size_t i = 0; i < made.portfolio.visits.size(); ++i) {
    Visit& visit = made.portfolio.visits[i];
    if (visit.site != site) continue;
    const double by_um = drift_um_per_year * years_between(first, visit.day);
    made.offsets_um[i] += by_um;
    for (Reading& reading : made.portfolio.readings)
      if (reading.visit == static_cast<std::int32_t>(i) && reading.quantity == Quantity::coating_um)
        reading.value += by_um;
    if (day == 0 || day == 3 || day == 7) {
      visit.foil_true_um = 50;
      visit.foil_read_um = 50 + made.offsets_um[i];
    }
    ++day;
  }
  REQUIRE(day == 8);
  return made;
}

}  // namespace

TEST_CASE("walk and days' own offsets are told apart as joint normals are", "[core][reference]") {
  const GaugeDays gauge{{0, 1, 2, 3}, {0, 0.5, 2, 5}};
  constexpr double drift_um = 0.8;
  constexpr double own_um = 1.3;
  Vector offsets(4);
  offsets << 0.7, -1.1, 2.5, 6.0;
  // Of (walk, own) given walk + own, from the joint covariance of all eight and their sums.
  const Matrix walk = walk_covariance(gauge.years, drift_um);
  CHECK(walk(3, 2) == Approx(0.64 * 2));
  CHECK(walk(0, 0) == 0);
  Matrix both = Matrix::Zero(8, 8);
  both.topLeftCorner(4, 4) = walk;
  both.bottomRightCorner(4, 4) = own_um * own_um * Matrix::Identity(4, 4);
  Matrix sums(4, 8);
  sums << Matrix::Identity(4, 4), Matrix::Identity(4, 4);
  const Matrix gain = both * sums.transpose() * (sums * both * sums.transpose()).inverse();
  const Vector mean = gain * offsets;
  const Matrix left = both - gain * sums * both;
  const WalkMoments moments = walk_moments(gauge, drift_um, own_um, offsets * offsets.transpose());
  double steps = 0;
  for (int i = 0; i < 4; ++i) {
    CHECK(moments.own_um2[static_cast<std::size_t>(i)] ==
          Approx(mean(4 + i) * mean(4 + i) + left(4 + i, 4 + i)));
    if (i == 0) continue;
    const double years =
        gauge.years[static_cast<std::size_t>(i)] - gauge.years[static_cast<std::size_t>(i - 1)];
    const double step = mean(i) - mean(i - 1);
    steps += (step * step + left(i, i) + left(i - 1, i - 1) - 2 * left(i, i - 1)) / years;
  }
  CHECK(moments.steps.count == 3);
  CHECK(moments.steps.sum == Approx(steps));
  const Matrix precision = offset_precision(gauge, drift_um, own_um);
  CHECK((precision * (sums * both * sums.transpose()) - Matrix::Identity(4, 4)).norm() < 1e-12);
}

TEST_CASE("a gauge that drifts is followed on days without a foil", "[core]") {
  const Made made = drifting_world();
  const auto model = fit_coating_model(made.portfolio, {.threads = 1});
  REQUIRE(model);
  const CoatingSite& site = model->data.sites[0];
  const SiteEffects& effects = model->effects.sites[0];
  int compared = 0;
  for (int s = 0; s < site.sessions; ++s) {
    const Date day = model->data.sessions[static_cast<std::size_t>(site.first_session + s)].day;
    for (std::size_t i = 0; i < made.portfolio.visits.size(); ++i) {
      const Visit& visit = made.portfolio.visits[i];
      if (visit.site != site.name || visit.day != day) continue;
      const double estimate = effects.core[static_cast<std::size_t>(s)] +
                              50 * effects.core[static_cast<std::size_t>(site.sessions + s)];
      INFO("day " << s << ": " << estimate << " um, truly " << made.offsets_um[i]);
      CHECK(std::abs(estimate - made.offsets_um[i]) < 2.5);
      ++compared;
    }
  }
  CHECK(compared == 8);
  CHECK(effects.drift_um[0] > 1);
  CHECK(model->effects.sites[1].drift_um[0] < 0.5);
}

TEST_CASE("a new day of a gauge that drifts goes on from its last", "[core]") {
  const Made made = drifting_world();
  const auto model = fit_coating_model(made.portfolio, {.threads = 1});
  REQUIRE(model);
  Portfolio one = only_part(made.portfolio, 3);
  Visit today = made.portfolio.visits[0];
  today.id = "w1";
  today.day = one.as_of;
  today.foil_true_um.reset();
  today.foil_read_um.reset();
  one.visits.push_back(today);
  Reading reading;
  reading.visit = static_cast<std::int32_t>(one.visits.size()) - 1;
  reading.spot = 1;
  reading.value = 60;
  one.readings.push_back(reading);
  const auto corrected_um = [&] {
    const auto rows = forecast_one_part(*model, one);
    REQUIRE(rows);
    return -(*rows)[0].session_correction_um;
  };
  const double last = model->effects.sites[0].core[7];
  CHECK(corrected_um() > 0.7 * last);
  one.visits.back().coating_gauge = "new gauge";
  CHECK(std::abs(corrected_um()) < 3);
  // A foil that says it was put right again is believed.
  one.visits.back().coating_gauge = today.coating_gauge;
  one.visits.back().foil_true_um = 50;
  one.visits.back().foil_read_um = 50;
  CHECK(std::abs(corrected_um()) < 0.35 * last);
}
