// What bad_input_test.cpp asks of coatings, of every limit at once: walls, set screws and grades
// too answer with a sentence or a flag, never with a number that is none.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <set>

#include "core/forecast/all_limits.h"
#include "tests/core/forecast/property_check.h"
#include "tests/support/joined_world.h"
#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();
constexpr double endless = std::numeric_limits<double>::infinity();

bool number(double value) {
  return std::isfinite(value);
}

bool is_chance(double value) {
  return value >= 0 && value <= 1;
}

/// Quantiles in order, chances that rise, numbers that are numbers, and words.
bool sound(const LimitForecast& row) {
  const bool years = std::ranges::none_of(row.years, [](double year) { return std::isnan(year); });
  const bool grades = !row.grades_now || std::ranges::all_of(*row.grades_now, is_chance);
  const bool later = std::ranges::all_of(
      row.later, [](const ChanceAt& at) { return is_chance(at.chance) && number(at.years); });
  return years && std::ranges::is_sorted(row.years) && grades && later &&
         std::ranges::is_sorted(row.p_by) && std::ranges::all_of(row.p_by, is_chance) &&
         std::ranges::all_of(row.rate_um_per_year, number) && number(row.own_share) &&
         number(row.start_um) && number(row.now_um) && number(row.session_correction_um) &&
         (!row.words.empty() || !row.sentence.empty());
}

AllLimits computed(const Portfolio& portfolio) {
  auto made = forecast_all_limits(portfolio, {.threads = 1, .passes = 4});
  if (!made) FAIL(made.error().message);
  return std::move(*made);
}

const LimitForecast* row_of(const AllLimits& made, std::int32_t part, Limit limit) {
  for (const LimitForecast& row : made.all.limits)
    if (row.part == part && row.limit == limit) return &row;
  return nullptr;
}

/// Part `part` read on so many days that end on the as-of date.
struct Often {
  Quantity quantity;
  Limit limit;
  Censoring censoring;
  double value;
};
void read_on_days(Portfolio& portfolio, std::int32_t part, const Often& often, int days) {
  std::erase_if(portfolio.readings, [&](const Reading& reading) {
    return reading.part == part && reading.quantity == often.quantity;
  });
  std::erase_if(portfolio.works, [&](const Work& work) { return work.part == part; });
  Part& own = portfolio.parts[static_cast<std::size_t>(part)];
  own.installed = Date{portfolio.as_of.days - days - 3000};
  for (int i = 0; i < days; ++i) {
    Visit visit;
    visit.id = "often" + std::to_string(100'000 + i);
    visit.site = own.site;
    visit.day = Date{portfolio.as_of.days - days + i + 1};
    portfolio.visits.push_back(visit);
    Reading reading;
    reading.id = visit.id;
    reading.part = part;
    reading.visit = static_cast<std::int32_t>(portfolio.visits.size()) - 1;
    reading.quantity = often.quantity;
    reading.censoring = often.censoring;
    reading.spot = often.quantity == Quantity::grade ? std::int16_t{0} : std::int16_t{1};
    reading.value = often.value;
    portfolio.readings.push_back(reading);
  }
}

/// The first part that has an answered row of that limit.
std::int32_t part_with(const AllLimits& made, Limit limit) {
  for (const LimitForecast& row : made.all.limits)
    if (row.limit == limit && row.answered) return row.part;
  FAIL("no row of " << to_text(limit));
  return 0;
}

}  // namespace

TEST_CASE("a part read on 60 days, or on 10,000, is answered for every limit", "[core]") {
  const int days = GENERATE(60, 10'000);
  const auto often =
      GENERATE(Often{Quantity::wall_mm, Limit::wall_limit, Censoring::exact, 3.0},
               Often{Quantity::torque_nm, Limit::torque_minimum, Censoring::at_least, 32},
               Often{Quantity::torque_nm, Limit::torque_minimum, Censoring::about, 30},
               Often{Quantity::grade, Limit::grade_5, Censoring::exact, 2});
  CAPTURE(days, to_text(often.limit), often.value);
  Portfolio portfolio = joined_world(41);
  const std::int32_t part = part_with(computed(portfolio), often.limit);
  read_on_days(portfolio, part, often, days);
  const AllLimits made = computed(portfolio);
  for (const LimitForecast& row : made.all.limits) {
    INFO("part " << row.part << ", " << to_text(row.limit) << ": " << row.words);
    CHECK(sound(row));
  }
  const LimitForecast* row = row_of(made, part, often.limit);
  REQUIRE(row != nullptr);
  CHECK(row->answered);
  CHECK(row->readings_used > 0);
}

TEST_CASE("all limits of any spoilt portfolio are sound, or a sentence", "[core][property]") {
  test::holds(12, 25, [] {
    Portfolio portfolio = joined_world(43);
    const auto odd_number = [] {
      return *rc::gen::element(none, endless, -endless, 0.0, -1.0, 1e-300, 1e300, 0.05, 2.7, 5e4);
    };
    const auto odd_day = [&] {
      return Date{portfolio.as_of.days + *rc::gen::inRange(-800'000, 300'000)};
    };
    const auto pick = [](auto& items) -> auto& {
      return items[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(items.size())))];
    };
    const int spoilt = *rc::gen::inRange(1, 60);
    for (int i = 0; i < spoilt; ++i) switch (*rc::gen::inRange(0, 12)) {
        case 0:
          pick(portfolio.readings).value = odd_number();
          break;
        case 1:
          pick(portfolio.readings).wrench_set_nm = odd_number();
          break;
        case 2:
          pick(portfolio.readings).spot = static_cast<std::int16_t>(*rc::gen::inRange(-9, 99));
          break;
        case 3:
          pick(portfolio.parts).wall_nominal_mm = odd_number();
          break;
        case 4:
          pick(portfolio.parts).wall_limit_mm = odd_number();
          break;
        case 5:
          pick(portfolio.parts).steel_rate_um_per_year = odd_number();
          break;
        case 6:
          pick(portfolio.parts).torque_target_nm = odd_number();
          break;
        case 7:
          pick(portfolio.parts).torque_minimum_nm = odd_number();
          break;
        case 8:
          pick(portfolio.parts).material =
              *rc::gen::element(Material::bare_steel, Material::painted_steel, Material::aluminium,
                                Material::stainless);
          break;
        case 9:
          pick(portfolio.parts).installed = odd_day();
          break;
        case 10:
          pick(portfolio.visits).day = odd_day();
          break;
        default: {
          Work& work = portfolio.works.emplace_back();
          work.part = *rc::gen::inRange(0, static_cast<int>(portfolio.parts.size()));
          work.day = odd_day();
          work.action = *rc::gen::element(Action::replace, Action::regalvanise, Action::retorque,
                                          Action::re_erect);
          work.as_left_nm = odd_number();
          work.same_part_unsure = *rc::gen::arbitrary<bool>();
        }
      }
    const auto made = forecast_all_limits(portfolio, {.threads = 1, .passes = 3});
    if (!made) {
      RC_ASSERT(!made.error().message.empty());
      return;
    }
    std::set<std::int32_t> parts;
    for (const LimitForecast& row : made->all.limits) {
      RC_ASSERT(sound(row));
      parts.insert(row.part);
    }
    RC_ASSERT(parts.size() == portfolio.parts.size());
  });
}

TEST_CASE("one site of 100,000 parts is forecast", "[core][.slow]") {
  Recipe recipe;
  recipe.seed = 44;
  recipe.sites = 1;
  recipe.runs = 100;
  recipe.parts = 500;
  const Portfolio portfolio = made_portfolio(recipe).portfolio;
  REQUIRE(portfolio.parts.size() >= 100'000);
  const AllLimits made = computed(portfolio);
  CHECK(std::ranges::all_of(made.all.limits, sound));
  std::set<std::int32_t> parts;
  for (const LimitForecast& row : made.all.limits) parts.insert(row.part);
  CHECK(parts.size() == portfolio.parts.size());
}
