#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>

#include "core/forecast/part_story.h"
#include "core/forecast/whole/kept_models.h"
#include "schema/exchange/forecast_cache.h"
#include "tests/support/folder.h"
#include "tests/support/joined_world.h"

using namespace kneerail;
using forecast::Portfolio;
using kneerail::test::Folder;

namespace {

Portfolio sorted_world() {
  Portfolio world = forecast::joined_world(31, 2);
  std::vector<std::int32_t> order(world.parts.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<std::int32_t>(i);
  std::ranges::sort(order, {},
                    [&](std::int32_t i) { return world.parts[static_cast<std::size_t>(i)].id; });
  std::vector<std::int32_t> place(order.size());
  std::vector<forecast::Part> parts;
  for (std::size_t i = 0; i < order.size(); ++i) {
    place[static_cast<std::size_t>(order[i])] = static_cast<std::int32_t>(i);
    parts.push_back(world.parts[static_cast<std::size_t>(order[i])]);
  }
  world.parts = std::move(parts);
  for (auto& reading : world.readings) reading.part = place[static_cast<std::size_t>(reading.part)];
  for (auto& work : world.works) work.part = place[static_cast<std::size_t>(work.part)];
  return world;
}

/// A portfolio, and the forecast kept of it.
struct World {
  Portfolio portfolio = sorted_world();
  Folder folder;
  CacheQuestion question{.file = folder / "kept", .sealed = {}};

  [[nodiscard]] CachedForecast ask(forecast::RunOptions options = {.threads = 2}) const {
    auto made = cached_forecast(portfolio, options, question);
    REQUIRE(made);
    return std::move(*made);
  }
  [[nodiscard]] std::int64_t parts() const {
    return static_cast<std::int64_t>(portfolio.parts.size());
  }
};

std::string text_of(const forecast::AllLimits& made) {
  return forecast::bytes_of(forecast::ForecastRows{made.all.limits, made.all.left_out});
}

std::string rows_of_part(const forecast::AllLimits& made, std::int32_t part) {
  forecast::ForecastRows rows;
  for (const auto& row : made.all.limits)
    if (row.part == part) rows.limits.push_back(row);
  return forecast::bytes_of(rows);
}

}  // namespace

TEST_CASE("what has not changed is not reckoned again", "[schema][forecast]") {
  World world;
  const auto first = world.ask();
  CHECK(first.reckoned.fitted);
  CHECK(first.reckoned.parts == world.parts());
  CHECK(first.kept);
  const auto whole = forecast::forecast_all_limits(world.portfolio, {.threads = 1});
  REQUIRE(whole);
  CHECK(text_of(first.made) == text_of(*whole));
  const auto second = world.ask();
  CHECK_FALSE(second.reckoned.fitted);
  CHECK(second.reckoned.parts == 0);
  CHECK(text_of(second.made) == text_of(*whole));
  CHECK(second.made.all.notes == whole->all.notes);
  CHECK(second.made.all.track_record.size() == whole->all.track_record.size());
  CHECK(second.made.inspectors.size() == whole->inspectors.size());
  SECTION("a visit that was sealed changes no input, and nothing is reckoned") {
    world.question.sealed[0] = 1;
    CHECK(world.ask().reckoned.parts == 0);
  }
  SECTION("a date asked is reckoned from the kept fit") {
    const Date on{world.portfolio.as_of.days + 400};
    const auto asked = world.ask({.threads = 2, .on = on});
    CHECK_FALSE(asked.reckoned.fitted);
    CHECK(asked.reckoned.parts == world.parts());
    const auto wanted = forecast::forecast_all_limits(world.portfolio, {.threads = 1, .on = on});
    REQUIRE(wanted);
    CHECK(text_of(asked.made) == text_of(*wanted));
    CHECK(world.ask().reckoned.parts == 0);
  }
  SECTION("asked afresh, all is") {
    world.question.afresh = true;
    CHECK(world.ask().reckoned.fitted);
  }
  SECTION("on another day all is") {
    world.portfolio.as_of.days += 1;
    CHECK(world.ask().reckoned.fitted);
  }
  SECTION("with another setting all is") {
    world.portfolio.settings.steel_over_zinc = 25;
    CHECK(world.ask().reckoned.fitted);
  }
  SECTION("what the reader had left out is told as it is now") {
    world.portfolio.left_out.push_back({"r1", world.portfolio.parts[0].id, "void"});
    const auto told = world.ask();
    CHECK(told.reckoned.parts == 0);
    CHECK(std::ranges::count(told.made.all.left_out, std::string("void"),
                             &forecast::LeftOut::reason) == 1);
  }
}

TEST_CASE("a correction reckons its part again and no other", "[schema][forecast]") {
  World world;
  const auto before = world.ask();
  const auto found = std::ranges::find(world.portfolio.readings, forecast::Quantity::coating_um,
                                       &forecast::Reading::quantity);
  const auto place = static_cast<std::size_t>(found - world.portfolio.readings.begin());
  auto& reading = world.portfolio.readings[place];
  const std::int32_t part = reading.part;
  reading.value -= 12;
  const auto after = world.ask();
  CHECK_FALSE(after.reckoned.fitted);
  CHECK(after.reckoned.parts == 1);
  CHECK(after.reckoned.held == 1);
  for (std::int32_t i = 0; i < static_cast<std::int32_t>(world.portfolio.parts.size()); ++i)
    CHECK((rows_of_part(after.made, i) == rows_of_part(before.made, i)) == (i != part));
  // As it is said of one part with what parts share held.
  const Portfolio untouched = [&] {
    Portfolio as_was = world.portfolio;
    as_was.readings[place].value += 12;
    return as_was;
  }();
  const auto fit = forecast::fit_portfolio(untouched, {.threads = 1});
  REQUIRE(fit);
  auto held = forecast::rows_of_one_part(*fit, forecast::only_part(world.portfolio, part));
  REQUIRE(held);
  for (auto& row : held->limits) row.part = part;
  CHECK(rows_of_part(after.made, part) ==
        forecast::bytes_of(forecast::ForecastRows{held->limits, {}}));
  SECTION("asked again, nothing is") {
    const auto again = world.ask();
    CHECK(again.reckoned.parts == 0);
    CHECK(again.reckoned.held == 1);
    CHECK(text_of(again.made) == text_of(after.made));
  }
  SECTION("corrected back, its part again, and the others stay") {
    world.portfolio.readings[place].value += 12;
    CHECK(world.ask().reckoned.parts == 1);
  }
  SECTION("with a visit sealed after it, all is fitted again") {
    world.question.sealed[0] = 1;
    const auto refitted = world.ask();
    CHECK(refitted.reckoned.fitted);
    CHECK(refitted.reckoned.held == 0);
    const auto whole = forecast::forecast_all_limits(world.portfolio, {.threads = 1});
    REQUIRE(whole);
    CHECK(text_of(refitted.made) == text_of(*whole));
  }
  SECTION("a reading that is no thickness is told of its part") {
    world.portfolio.readings[place].value = 4'000;
    const auto odd = world.ask();
    CHECK(odd.reckoned.parts == 1);
    CHECK(std::ranges::count(odd.made.all.left_out, std::string("too_large"),
                             &forecast::LeftOut::reason) == 1);
  }
}

TEST_CASE("what touches many parts, or where they are, fits all again", "[schema][forecast]") {
  World world;
  REQUIRE(world.ask().reckoned.fitted);
  SECTION("a gauge put right: all of its session differs") {
    for (auto& reading : world.portfolio.readings) reading.value += 1;
    CHECK(world.ask().reckoned.fitted);
  }
  SECTION("a part more") {
    auto part = world.portfolio.parts.back();
    part.id += "-more";
    world.portfolio.parts.push_back(part);
    CHECK(world.ask().reckoned.fitted);
  }
  SECTION("a part moved to another run") {
    world.portfolio.parts[3].run += "-other";
    CHECK(world.ask().reckoned.fitted);
  }
}

TEST_CASE("a kept forecast that is damaged is as none", "[schema][forecast]") {
  World world;
  const auto first = world.ask();
  const auto size = std::filesystem::file_size(world.question.file);
  SECTION("cut short") {
    std::filesystem::resize_file(world.question.file, size / 2);
  }
  SECTION("a byte changed") {
    std::fstream file(world.question.file, std::ios::in | std::ios::out | std::ios::binary);
    file.seekp(static_cast<std::streamoff>(size / 3));
    file.put('\x7e');
    file.put('\x01');
  }
  SECTION("another kind of file") {
    std::ofstream(world.question.file) << "component_id\n";
  }
  const auto again = world.ask();
  CHECK(again.reckoned.fitted);
  CHECK(text_of(again.made) == text_of(first.made));
  CHECK(world.ask().reckoned.parts == 0);
}

TEST_CASE("where nothing can be kept the forecast is said all the same", "[schema][forecast]") {
  World world;
  world.question.file = world.folder / "no-folder/kept";
  const auto made = world.ask();
  CHECK(made.reckoned.fitted);
  CHECK_FALSE(made.kept);
}
