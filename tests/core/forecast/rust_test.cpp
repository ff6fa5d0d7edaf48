// A gauge on rust reads rust: how grades are tied to thickness, and which readings are taken as
// bounds.

#include "core/forecast/rust.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "core/base/world.h"
#include "core/forecast/coating_model.h"
#include "core/forecast/one_part.h"
#include "core/forecast/part_story.h"
#include "core/forecast/predictive.h"
#include "core/forecast/preparation.h"
#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

constexpr std::int32_t last_day = 5;

std::string numbered(const char* letter, std::size_t number) {
  std::string name(letter);
  name += std::to_string(number);
  return name;
}

/// The only grade of that part at that visit.
void add_grade(Portfolio& portfolio, std::int32_t part, std::int32_t visit, double grade) {
  std::erase_if(portfolio.readings, [&](const Reading& r) {
    return r.part == part && r.visit == visit && r.quantity == Quantity::grade;
  });
  Reading reading;
  reading.id = numbered("h", portfolio.readings.size());
  reading.part = part;
  reading.visit = visit;
  reading.quantity = Quantity::grade;
  reading.spot = 0;
  reading.value = grade;
  portfolio.readings.push_back(reading);
}

void read_as(Portfolio& portfolio, std::int32_t part, std::int32_t visit, double value) {
  std::erase_if(portfolio.readings, [&](const Reading& r) {
    return r.part == part && r.visit == visit && r.quantity == Quantity::coating_um;
  });
  for (std::int16_t replicate = 1; replicate <= 3; ++replicate) {
    Reading reading;
    reading.id = numbered("x", portfolio.readings.size());
    reading.part = part;
    reading.visit = visit;
    reading.spot = 1;
    reading.replicate = replicate;
    reading.value = value + replicate - 2;
    portfolio.readings.push_back(reading);
  }
}

/// A portfolio with a grade at every visit: 1 over 40 um, 2 over 15, else 5. `telling` false: the
/// same grades, shared out among parts without regard to their thickness.
Made graded(std::uint64_t seed, bool telling) {
  Made made = made_portfolio({.seed = seed, .sites = 4, .unknown_start = 0, .rate_over_class = 2});
  std::vector<Reading> first;
  for (const Reading& reading : made.portfolio.readings)
    if (reading.replicate == 1) first.push_back(reading);
  std::vector<double> grades;
  for (const Reading& reading : first)
    grades.push_back(reading.value > 40 ? 1 : reading.value > 15 ? 2 : 5);
  if (!telling) {
    SplitMix64 random(seed);
    for (std::size_t i = grades.size(); i > 1; --i)
      std::swap(
          grades[i - 1],
          grades[static_cast<std::size_t>(random.between(0, static_cast<std::int64_t>(i) - 1))]);
  }
  for (std::size_t i = 0; i < first.size(); ++i)
    add_grade(made.portfolio, first[i].part, first[i].visit, grades[i]);
  return made;
}

CoatingData prepared(const Portfolio& portfolio) {
  auto data = prepare_coating(portfolio);
  if (!data) FAIL(data.error().message);
  return std::move(*data);
}

CoatingModel fitted(const Portfolio& portfolio) {
  auto model = fit_coating_model(portfolio, {.track_record = false});
  if (!model) FAIL(model.error().message);
  return std::move(*model);
}

/// Its current one.
const Segment& segment_of(const CoatingData& data, std::int32_t place) {
  for (const CoatingPart& part : data.parts)
    if (part.place == place)
      return data.segments[static_cast<std::size_t>(part.first_segment + part.segments - 1)];
  throw std::logic_error("no such part");
}

/// A part of the graded portfolio that was thick enough two days before the last.
std::int32_t part_worn_to(const Made& made, double low_um, double high_um) {
  for (const Reading& reading : made.portfolio.readings)
    if (reading.quantity == Quantity::coating_um && reading.visit == last_day - 2 &&
        reading.value > low_um && reading.value < high_um)
      return reading.part;
  throw std::logic_error("no such part");
}

}  // namespace

TEST_CASE("grades count only where the owner's data tie them to thickness", "[core]") {
  const auto tied = prepared(graded(31, true).portfolio).rust_chance;
  CHECK(tied[5] == Approx(0.98));
  CHECK(tied[3] == Approx(constant::rust_chance_least));  // no reading at grade 3
  const auto loose = prepared(graded(31, false).portfolio).rust_chance;
  CHECK(loose[5] == Approx(constant::rust_chance_least));
  // Too few to tell.
  Made few = made_portfolio({.seed = 31});
  add_grade(few.portfolio, 0, last_day, 5);
  CHECK(prepared(few.portfolio).rust_chance[5] == Approx(constant::rust_chance_least));
}

TEST_CASE("a thick reading at grade 5 of a part that was thin is rust, not zinc", "[core]") {
  Made made = graded(33, true);
  const std::int32_t part = part_worn_to(made, 8, 14);
  for (const std::int32_t day : {last_day - 1, last_day}) {
    read_as(made.portfolio, part, day, 34);
    add_grade(made.portfolio, part, day, 5);
  }
  const CoatingModel model = fitted(made.portfolio);
  const Segment& segment = segment_of(model.data, part);
  CHECK(segment.over_rust >= 2);
  const auto rows = forecast_coating(made.portfolio, {.track_record = false});
  REQUIRE(rows);
  const auto row =
      std::find_if(rows->limits.begin(), rows->limits.end(), [&](const LimitForecast& r) {
        return r.part == part && r.limit == Limit::coating_exhausted;
      });
  REQUIRE(row != rows->limits.end());
  CHECK(row->years[3] < 1);  // not decades
  CHECK(std::any_of(row->flags.begin(), row->flags.end(), [](const std::string& flag) {
    return flag.find("was likely taken on rust: counted as under 17 um") != std::string::npos;
  }));
}

TEST_CASE("what was said of the surface goes before the grade", "[core]") {
  const auto odds_of = [](Surface surface) {
    Made made = made_portfolio({.seed = 3});
    read_as(made.portfolio, 0, last_day, 20);
    for (Reading& reading : made.portfolio.readings)
      if (reading.part == 0 && reading.visit == last_day) reading.surface = surface;
    const CoatingData data = prepared(made.portfolio);
    const Segment& segment = segment_of(data, 0);
    CHECK(segment.may_be_rust == (surface == Surface::rust));
    return static_cast<double>(
        data.means[static_cast<std::size_t>(segment.first + segment.count - 1)].ln_rust_odds);
  };
  // Density of 20 um on rust: 0.8 * 20/144 * exp(-20/12) + 0.2/150.
  const double ln_density = std::log(0.8 * 20 / 144 * std::exp(-20.0 / 12) + 0.2 / 150);
  CHECK(odds_of(Surface::rust) == Approx(std::log(0.98 / 0.02) + ln_density));
  CHECK(odds_of(Surface::zinc) == Approx(std::log(0.002 / 0.998) + ln_density));
  CHECK(odds_of(Surface::not_said) == Approx(std::log(0.002 / 0.998) + ln_density));
}

TEST_CASE("no reading up to a good grade is taken as rust", "[core]") {
  Made made = graded(33, true);
  const std::int32_t part = part_worn_to(made, 8, 14);
  read_as(made.portfolio, part, last_day - 1, 30);
  add_grade(made.portfolio, part, last_day - 1, 5);
  read_as(made.portfolio, part, last_day, 30);
  add_grade(made.portfolio, part, last_day, 2);
  CHECK(segment_of(fitted(made.portfolio).data, part).over_rust == 0);
}

TEST_CASE("the forecast mixes the two best hypotheses by their weights", "[core]") {
  Made made = graded(35, true);
  const std::int32_t part = part_worn_to(made, 8, 14);
  read_as(made.portfolio, part, last_day, 12);
  add_grade(made.portfolio, part, last_day, 5);
  const CoatingModel model = fitted(made.portfolio);
  Segment segment = segment_of(model.data, part);
  segment.over_rust = 1;
  segment.over_rust_next = 0;
  segment.next_share = 0.25F;
  const PosteriorInput input{&model.data, &model.effects};
  const Posterior mixed = life_posterior(input, segment);
  Segment numbers = segment;
  numbers.over_rust = 0;
  Posterior one = segment_posterior(input, segment);
  Posterior other = segment_posterior(input, numbers);
  one.spots_excess_um2 = other.spots_excess_um2 = mixed.spots_excess_um2;
  const forecast::Clock clock = clock_of(model.data, segment);
  for (const double years : {-2.0, 0.0, 3.0, 12.0})
    CHECK(chance_by(mixed, clock, 0, years) == Approx(0.75 * chance_by(one, clock, 0, years) +
                                                      0.25 * chance_by(other, clock, 0, years)));
}

TEST_CASE("one part again weighs its readings for rust as the fit did", "[core]") {
  Made made = graded(33, true);
  const std::int32_t part = part_worn_to(made, 8, 14);
  for (const std::int32_t day : {last_day - 1, last_day}) {
    read_as(made.portfolio, part, day, 34);
    add_grade(made.portfolio, part, day, 5);
  }
  const CoatingModel model = fitted(made.portfolio);
  const auto again = model_of_one_part(model, only_part(made.portfolio, part));
  REQUIRE(again);
  CHECK(segment_of(again->data, 0).over_rust == segment_of(model.data, part).over_rust);
}
