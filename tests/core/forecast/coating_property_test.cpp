// What must hold for every part, with shared effects, weights and hypotheses held: thinner never
// lasts longer, a worse last reading never lengthens the median, quantiles are ordered, chances
// rise.

#include <algorithm>
#include <cmath>

#include "core/forecast/limit_report.h"
#include "core/forecast/one_part.h"
#include "core/forecast/part_story.h"
#include "core/forecast/predictive.h"
#include "core/forecast/session_report.h"
#include "tests/core/forecast/property_check.h"
#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;
using kneerail::test::drawn;

namespace {

const Made& world() {
  static const Made made = made_portfolio({.seed = 57, .sites = 3, .unknown_start = 0.3});
  return made;
}

const CoatingModel& fitted() {
  static const CoatingModel model = [] {
    auto result = fit_coating_model(world().portfolio, {});
    if (!result) FAIL(result.error().message);
    return std::move(*result);
  }();
  return model;
}

/// A part of the world by itself under the fitted effects, its weights set to 1.
CoatingModel any_part() {
  const auto parts = static_cast<int>(world().portfolio.parts.size());
  const std::int32_t part = *rc::gen::inRange(0, parts);
  auto own = model_of_one_part(fitted(), only_part(world().portfolio, part));
  RC_ASSERT(own.has_value());
  for (VisitMean& mean : own->data.means) mean.weight = 1;
  return std::move(*own);
}

std::array<double, 7> years_of(const CoatingModel& model, double limit_um) {
  const Segment& segment = model.data.segments.back();
  const Posterior posterior =
      scaled(life_posterior({&model.data, &model.effects}, segment), model.back_dated.spread_scale);
  return limit_quantiles(posterior, clock_of(model.data, segment), limit_um, 1e-9);
}

/// The segment's last numbers; none when it has no reading that is one.
VisitMean* last_number(CoatingModel& model) {
  const Segment& segment = model.data.segments.back();
  if (segment.count == 0) return nullptr;
  VisitMean& mean = model.data.means[static_cast<std::size_t>(segment.first + segment.count - 1)];
  return mean.gone ? nullptr : &mean;
}

bool no_later(double years, double than) {
  return years <= than + 1e-5 * std::max(1.0, std::abs(than));
}

}  // namespace

TEST_CASE("a coating thinner at every visit never lasts longer", "[core][property]") {
  test::holds(1, 300, [] {
    CoatingModel part = any_part();
    const auto before = years_of(part, 0);
    const double thinner_um = drawn(0, 30);
    for (VisitMean& mean : part.data.means) mean.thickness_um -= thinner_um;
    const auto after = years_of(part, 0);
    for (std::size_t q = 0; q < before.size(); ++q) RC_ASSERT(no_later(after[q], before[q]));
  });
}

TEST_CASE("a higher limit is never reached later", "[core][property]") {
  test::holds(2, 300, [] {
    const CoatingModel part = any_part();
    const double limit_um = drawn(0, 60);
    const auto sooner = years_of(part, limit_um + drawn(0, 20));
    const auto later = years_of(part, limit_um);
    for (std::size_t q = 0; q < later.size(); ++q) RC_ASSERT(no_later(sooner[q], later[q]));
  });
}

TEST_CASE("a worse last reading never lengthens the median", "[core][property]") {
  test::holds(3, 300, [] {
    CoatingModel part = any_part();
    VisitMean* last = last_number(part);
    const bool has_number = last != nullptr;
    RC_PRE(has_number);
    last->thickness_um = drawn(8, 120);
    const double better = years_of(part, 0)[3];
    last->thickness_um -= drawn(0, last->thickness_um - 8);
    RC_ASSERT(no_later(years_of(part, 0)[3], better));
  });
}

TEST_CASE("a reading thinner than thought never lengthens the median", "[core][property]") {
  test::holds(4, 300, [] {
    const auto parts = static_cast<int>(world().portfolio.parts.size());
    const std::int32_t place = *rc::gen::inRange(0, parts);
    Portfolio one = only_part(world().portfolio, place);
    const auto before = model_of_one_part(fitted(), one);
    RC_ASSERT(before.has_value());
    const Segment& segment = before->data.segments.back();
    RC_PRE(segment.count > 0);
    const Posterior posterior =
        scaled(segment_posterior({&before->data, &before->effects}, segment),
               before->back_dated.spread_scale);
    // Well under the lower end of what was thought, so that the gauge's own error does not matter.
    const double low = thickness_quantiles_um(posterior, clock_of(before->data, segment), 0)[0];
    RC_PRE(low > 14);
    Visit today;
    today.id = std::string("w1");
    today.site = one.parts[0].site;
    today.day = one.as_of;
    today.coating_gauge = std::string("new gauge");
    one.visits.push_back(today);
    Reading reading;
    reading.visit = static_cast<std::int32_t>(one.visits.size()) - 1;
    reading.spot = 1;
    reading.value = drawn(8, low - 5);
    one.readings.push_back(reading);
    auto after = model_of_one_part(fitted(), one);
    RC_ASSERT(after.has_value());
    // Weights held: those of before, the new reading at 1.
    for (std::size_t i = 0; i < before->data.means.size(); ++i)
      after->data.means[i].weight = before->data.means[i].weight;
    after->data.means.back().weight = 1;
    RC_PRE(after->data.segments.size() == before->data.segments.size());
    RC_ASSERT(no_later(years_of(*after, 0)[3], years_of(*before, 0)[3]));
  });
}

TEST_CASE("whatever a part reads, its quantiles are ordered and its chances rise",
          "[core][property]") {
  test::holds(5, 400, [] {
    CoatingModel part = any_part();
    for (VisitMean& mean : part.data.means) {
      mean.thickness_um = drawn(0, 290);
      mean.gone = *rc::gen::arbitrary<bool>();
      mean.weight = drawn(0.02, 1);
    }
    Segment& segment = part.data.segments.back();
    segment.over_rust = static_cast<std::int16_t>(*rc::gen::inRange(0, segment.count + 1));
    segment.over_rust_next = static_cast<std::int16_t>(*rc::gen::inRange(0, segment.count + 1));
    segment.next_share = static_cast<float>(drawn(0, 0.5));
    const Portfolio one = only_part(world().portfolio, 0);
    Portfolio shown = one;
    shown.parts[0] = world().portfolio.parts[0];
    const auto sessions = session_reports(part);
    for (const LimitForecast& row : limit_rows({&shown, &part, &sessions}, 0)) {
      if (!row.answered) continue;
      for (const double year : row.years) RC_ASSERT(!std::isnan(year));
      RC_ASSERT(std::is_sorted(row.years.begin(), row.years.end()));
      RC_ASSERT(std::is_sorted(row.p_by.begin(), row.p_by.end()));
      RC_ASSERT(row.p_by[0] >= 0 && row.p_by[3] <= 1);
      RC_ASSERT(std::isfinite(row.now_um) && row.now_um >= 0);
      RC_ASSERT(std::is_sorted(row.rate_um_per_year.begin(), row.rate_um_per_year.end()));
      RC_ASSERT(row.rate_um_per_year[0] > 0);
    }
  });
}
