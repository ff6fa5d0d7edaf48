// What should never be in a portfolio and will be: each is answered with a sentence or a flag,
// never with a number that is none, and nothing is dropped in silence.

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "core/forecast/coating_model.h"
#include "core/forecast/coating_readings.h"
#include "core/forecast/preparation.h"
#include "tests/core/forecast/property_check.h"
#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;
using kneerail::test::drawn;

namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();
constexpr double endless = std::numeric_limits<double>::infinity();

std::string numbered(const char* letter, std::size_t number) {
  std::string name(letter);
  name += std::to_string(number);
  return name;
}

CoatingForecast computed(const Portfolio& portfolio) {
  auto result = forecast_coating(portfolio, {.passes = 10});
  if (!result) FAIL(result.error().message);
  return std::move(*result);
}

/// Every number of a row is one, or says that there is no upper bound.
bool sound(const LimitForecast& row) {
  const auto number = [](double value) { return std::isfinite(value); };
  const bool years = std::all_of(row.years.begin(), row.years.end(),
                                 [](double year) { return !std::isnan(year) && year > -1e7; });
  return years && std::is_sorted(row.years.begin(), row.years.end()) &&
         std::is_sorted(row.p_by.begin(), row.p_by.end()) && row.p_by[0] >= 0 && row.p_by[3] <= 1 &&
         number(row.own_share) && number(row.now_um) && number(row.start_um) &&
         number(row.session_correction_um) &&
         std::all_of(row.rate_um_per_year.begin(), row.rate_um_per_year.end(), number) &&
         (!row.words.empty() || !row.sentence.empty());
}

void check_sound(const CoatingForecast& forecast) {
  for (const LimitForecast& row : forecast.limits) {
    INFO("part " << row.part << ": " << row.words << " / " << row.sentence);
    CHECK(sound(row));
  }
}

/// Coating readings that are neither in a visit mean nor left out with a reason.
long dropped_in_silence(const Portfolio& portfolio) {
  const auto data = prepare_coating(portfolio);
  REQUIRE(data);
  std::set<std::string> told;
  for (const LeftOut& left : data->left_out) told.insert(left.reading);
  std::set<std::int32_t> read;
  for (const Segment& segment : data->segments)
    if (segment.count > 0) read.insert(data->parts[static_cast<std::size_t>(segment.part)].place);
  return std::count_if(portfolio.readings.begin(), portfolio.readings.end(),
                       [&](const Reading& reading) {
                         return reading.quantity == Quantity::coating_um &&
                                !told.contains(reading.id) && !read.contains(reading.part);
                       });
}

bool any_contains(const std::vector<std::string>& texts, std::string_view what) {
  return std::any_of(texts.begin(), texts.end(),
                     [&](const std::string& text) { return text.find(what) != std::string::npos; });
}

long left_out_as(const CoatingForecast& forecast, std::string_view reason) {
  return std::count_if(forecast.left_out.begin(), forecast.left_out.end(),
                       [&](const LeftOut& left) { return left.reason == reason; });
}

/// Readings of the first part of its own on so many days that end on the as-of date.
void read_on_days(Portfolio& portfolio, int days) {
  std::erase_if(portfolio.readings, [](const Reading& r) { return r.part == 0; });
  portfolio.parts[0].installed = Date{portfolio.as_of.days - days - 3000};
  for (int i = 0; i < days; ++i) {
    Visit visit;
    visit.id = numbered("w", 100000 + static_cast<std::size_t>(i));
    visit.site = portfolio.parts[0].site;
    visit.day = Date{portfolio.as_of.days - days + i + 1};
    visit.coating_gauge = std::string("g9");
    portfolio.visits.push_back(visit);
    Reading reading;
    reading.id = numbered("w", 200000 + static_cast<std::size_t>(i));
    reading.visit = static_cast<std::int32_t>(portfolio.visits.size()) - 1;
    reading.spot = 1;
    reading.value = 60 + i % 5 - 10.0 * i / days;
    portfolio.readings.push_back(reading);
  }
}

}  // namespace

TEST_CASE("numbers that are none are kept out of a forecast", "[core]") {
  Made made = made_portfolio({.seed = 3});
  Portfolio& portfolio = made.portfolio;
  const double odd = GENERATE(values({none, endless, -endless, -5.0, 1e300}));
  CAPTURE(odd);
  portfolio.readings[0].value = odd;
  portfolio.parts[0].nominal_coating_um = odd;
  portfolio.parts[1].zinc_rate_um_per_year = odd > 1e200 ? none : odd;
  portfolio.parts[2].first_maintenance_um = odd;
  portfolio.parts[3].zinc_rate_ln_sd = odd;
  portfolio.limits.push_back({portfolio.parts[0].site, odd, std::nullopt});
  portfolio.visits[0].foil_true_um = odd;
  portfolio.visits[0].foil_read_um = 51;
  portfolio.visits[1].foil_true_um = 51;
  portfolio.visits[1].foil_read_um = odd;
  Work work;
  work.day = Date{portfolio.as_of.days - 900};
  work.action = Action::replace;
  work.new_nominal_coating_um = odd;
  portfolio.works.push_back(work);
  const auto forecast = computed(portfolio);
  check_sound(forecast);
  CHECK(left_out_as(forecast, "no_thickness") + left_out_as(forecast, "too_large") == 1);
  CHECK(any_contains(forecast.notes, "1 part has a nominal coating that is no thickness"));
  CHECK(any_contains(forecast.notes, "is too far off to be one; not used"));
  for (const LimitForecast& row : forecast.limits)
    if (row.part == 2 && row.limit == Limit::coating_first_maintenance) {
      CHECK_FALSE(row.answered);
      CHECK(row.words == "the first-maintenance limit that is set is no thickness");
    }
}

TEST_CASE("a rate that is none, and no class, is no answer but a sentence", "[core]") {
  Made made = made_portfolio({.seed = 3});
  for (std::size_t i = 0; i < 12; ++i) {
    made.portfolio.parts[i].category.reset();
    made.portfolio.parts[i].zinc_rate_um_per_year = none;
  }
  const auto forecast = computed(made.portfolio);
  check_sound(forecast);
  CHECK(left_out_as(forecast, "no_class") > 0);
  for (const LimitForecast& row : forecast.limits)
    if (row.part < 12) {
      CHECK_FALSE(row.answered);
      CHECK(row.words == "no corrosivity class and no rate of its zone is known");
    }
}

TEST_CASE("dates that cannot be leave their readings out and nothing else", "[core]") {
  Made made = made_portfolio({.seed = 4});
  Portfolio& portfolio = made.portfolio;
  portfolio.parts[0].installed = Date{portfolio.as_of.days + 4000};
  portfolio.parts[1].installed = date_from_civil(1, 1, 1);
  portfolio.parts[2].installed = portfolio.as_of;
  portfolio.visits[2].day = date_from_civil(2999, 1, 1);
  const auto forecast = computed(portfolio);
  check_sound(forecast);
  CHECK(left_out_as(forecast, "before_installed") > 0);
  CHECK(left_out_as(forecast, "after_as_of") > 0);
  CHECK(dropped_in_silence(portfolio) == 0);
}

TEST_CASE("readings a second apart are one visit", "[core]") {
  Made made = made_portfolio({.seed = 4});
  const auto before = prepare_coating(made.portfolio);
  REQUIRE(before);
  Reading again = made.portfolio.readings.front();
  again.id = std::string("twice");
  made.portfolio.readings.push_back(again);
  const auto after = prepare_coating(made.portfolio);
  REQUIRE(after);
  CHECK(after->means.size() == before->means.size());
  CHECK(after->sessions.size() == before->sessions.size());
  check_sound(computed(made.portfolio));
}

TEST_CASE("a part with 60 visits, and one with 10,000 readings, is answered", "[core]") {
  Made made = made_portfolio({.seed = 5});
  SECTION("60 visits") {
    read_on_days(made.portfolio, 60);
    const auto forecast = computed(made.portfolio);
    check_sound(forecast);
    CHECK(forecast.limits[0].readings_used == 60);
  }
  SECTION("10,000 days") {
    read_on_days(made.portfolio, 10'000);
    const auto forecast = computed(made.portfolio);
    check_sound(forecast);
    CHECK(any_contains(forecast.notes, "more days of readings than can be reckoned one by one"));
    CHECK(forecast.limits[0].readings_used > 200);
    CHECK(dropped_in_silence(made.portfolio) == 0);
  }
  SECTION("one visit of 10,000 replicates") {
    read_on_days(made.portfolio, 10'000);
    for (Reading& reading : made.portfolio.readings)
      if (reading.part == 0) reading.visit = 3;
    made.portfolio.parts[0].installed = date_from_civil(2010, 1, 1);
    const auto forecast = computed(made.portfolio);
    check_sound(forecast);
    CHECK(forecast.limits[0].readings_used == 1);
  }
}

TEST_CASE("readings all equal give a forecast of its own width", "[core]") {
  Made made = made_portfolio({.seed = 6});
  for (Reading& reading : made.portfolio.readings) reading.value = 60;
  const auto forecast = computed(made.portfolio);
  check_sound(forecast);
  for (const LimitForecast& row : forecast.limits)
    if (row.answered) CHECK(row.years[5] > row.years[1]);
}

TEST_CASE("a rate three or a thousand times the true one is asked about", "[core]") {
  const double factor = GENERATE(values({3.0, 1000.0, 1 / 3.0, 0.001}));
  CAPTURE(factor);
  Made made = made_portfolio({.seed = 7, .sites = 3});
  for (Part& part : made.portfolio.parts) *part.zinc_rate_um_per_year *= factor;
  const auto forecast = computed(made.portfolio);
  check_sound(forecast);
  CHECK(any_contains(forecast.notes, "are class, unit and dates right?"));
}

TEST_CASE("a file in another unit is asked about and never corrected", "[core]") {
  Made made = made_portfolio({.seed = 8});
  const auto before = computed(made.portfolio);
  SECTION("millimetres") {
    for (Reading& reading : made.portfolio.readings) reading.value /= 1000;
    const auto forecast = computed(made.portfolio);
    check_sound(forecast);
    CHECK(any_contains(forecast.notes, "coating readings look like millimetres; kept back"));
    CHECK(left_out_as(forecast, "unit_mm") > static_cast<long>(made.portfolio.readings.size() / 2));
  }
  SECTION("thousandths of an inch") {
    for (Reading& reading : made.portfolio.readings) reading.value /= 25.4;
    const auto forecast = computed(made.portfolio);
    check_sound(forecast);
    CHECK(any_contains(forecast.notes, "all coating readings look like thousandths of an inch"));
    // Reckoned as read until somebody says so: the safe side.
    CHECK(forecast.limits[0].years[3] <= before.limits[0].years[3]);
  }
  SECTION("as it should be") {
    CHECK_FALSE(any_contains(before.notes, "look like"));
  }
}

TEST_CASE("a forecast of any spoilt portfolio is sound, or a sentence", "[core][property]") {
  test::holds(11, 60, [] {
    Made made = made_portfolio({.seed = 9, .sites = 2, .runs = 2, .parts = 6, .grades = true});
    Portfolio& portfolio = made.portfolio;
    const auto odd_number = [] {
      return *rc::gen::element(none, endless, -endless, 0.0, -1.0, 1e-300, 1e300, 0.05, 2.7, 5e4);
    };
    const auto odd_day = [&] {
      return Date{portfolio.as_of.days + *rc::gen::inRange(-800'000, 300'000)};
    };
    const int spoilt = *rc::gen::inRange(1, 25);
    for (int i = 0; i < spoilt; ++i) {
      const auto pick = [](auto& items) -> auto& {
        return items[static_cast<std::size_t>(
            *rc::gen::inRange(0, static_cast<int>(items.size())))];
      };
      switch (*rc::gen::inRange(0, 10)) {
        case 0:
          pick(portfolio.readings).value = odd_number();
          break;
        case 1:
          pick(portfolio.parts).nominal_coating_um = odd_number();
          break;
        case 2:
          pick(portfolio.parts).zinc_rate_um_per_year = odd_number();
          break;
        case 3:
          pick(portfolio.parts).first_maintenance_um = odd_number();
          break;
        case 4:
          pick(portfolio.parts).installed = odd_day();
          break;
        case 5:
          pick(portfolio.visits).day = odd_day();
          break;
        case 6:
          pick(portfolio.parts).category.reset();
          break;
        case 7:
          pick(portfolio.parts).reference_areas = *rc::gen::inRange(-3, 100);
          break;
        case 8:
          pick(portfolio.visits).foil_read_um = odd_number();
          break;
        default: {
          Work work;
          work.part = *rc::gen::inRange(0, static_cast<int>(portfolio.parts.size()));
          work.day = odd_day();
          work.action = *rc::gen::element(Action::replace, Action::regalvanise, Action::touch_up,
                                          Action::re_erect);
          work.same_part_unsure = *rc::gen::arbitrary<bool>();
          work.new_nominal_coating_um = odd_number();
          portfolio.works.push_back(work);
        }
      }
    }
    const auto forecast = forecast_coating(portfolio, {.threads = 1, .passes = 6});
    if (!forecast) {
      RC_ASSERT(!forecast.error().message.empty());
      return;
    }
    for (const LimitForecast& row : forecast->limits) RC_ASSERT(sound(row));
    std::set<std::int32_t> parts;
    for (const LimitForecast& row : forecast->limits) parts.insert(row.part);
    RC_ASSERT(parts.size() == portfolio.parts.size());
    RC_ASSERT(dropped_in_silence(portfolio) == 0);
  });
}
