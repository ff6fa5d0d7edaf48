#include <algorithm>
#include <catch2/catch.hpp>
#include <random>
#include <set>
#include <tuple>

#include "core/forecast/whole/fit_by_site.h"
#include "core/forecast/whole/kept_models.h"
#include "core/forecast/whole/part_inputs.h"
#include "core/forecast/whole/portfolio_fit.h"
#include "tests/support/joined_world.h"
#include "tests/support/made_portfolio.h"
#include "tests/support/seeds.h"
#include "tests/support/site_split.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

/// The bytes of rows: equal where every number is, to the last bit.
std::string exactly(const ForecastRows& rows) {
  return bytes_of(rows);
}

/// Rows of single sites as those of all: places counted anew, in the whole's order.
ForecastRows joined(const Portfolio& whole, const std::vector<ForecastRows>& of_sites,
                    const std::vector<Portfolio>& sites) {
  std::map<std::string, std::int32_t> places;
  for (std::size_t i = 0; i < whole.parts.size(); ++i)
    places[whole.parts[i].id] = static_cast<std::int32_t>(i);
  ForecastRows all;
  for (std::size_t s = 0; s < of_sites.size(); ++s) {
    for (LimitForecast row : of_sites[s].limits) {
      row.part = places.at(sites[s].parts[static_cast<std::size_t>(row.part)].id);
      all.limits.push_back(std::move(row));
    }
    all.left_out.insert(all.left_out.end(), of_sites[s].left_out.begin(),
                        of_sites[s].left_out.end());
  }
  std::stable_sort(all.limits.begin(), all.limits.end(), [&](const auto& a, const auto& b) {
    const auto& one = whole.parts[static_cast<std::size_t>(a.part)].id;
    const auto& other = whole.parts[static_cast<std::size_t>(b.part)].id;
    return std::tie(one, a.limit) < std::tie(other, b.limit);
  });
  sort_left_out(all.left_out);
  return all;
}

}  // namespace

TEST_CASE("rows site by site are those of the whole to the last bit", "[forecast]") {
  const Portfolio world = joined_world(11, 4);
  const RunOptions options{.threads = 2, .on = Date{world.as_of.days + 1000}};
  const auto fit = fit_portfolio(world, options);
  REQUIRE(fit);
  const auto whole = rows_of(*fit, world, options);
  REQUIRE(whole);
  std::set<Limit> limits;
  for (const auto& row : whole->limits)
    if (row.answered) limits.insert(row.limit);
  CHECK(limits.size() >= 5);
  const SiteSplit split(world);
  std::vector<ForecastRows> rows;
  std::vector<Portfolio> portfolios;
  for (const auto& [site, parts] : split.sites()) {
    // Through bytes, as another process gets it.
    const auto own = fit_from_bytes(bytes_of(split.fit_of(*fit, site)));
    REQUIRE(own);
    portfolios.push_back(split.portfolio_of(site));
    CHECK(portfolios.back().parts.size() == static_cast<std::size_t>(parts));
    auto of_site = rows_of(*own, portfolios.back(), options);
    REQUIRE(of_site);
    rows.push_back(std::move(*of_site));
  }
  CHECK(rows.size() == 8);
  CHECK(exactly(joined(world, rows, portfolios)) == exactly(*whole));
}

TEST_CASE("a fit comes back from its bytes, and damaged bytes do not", "[forecast]") {
  const Portfolio world = joined_world(3);
  const auto fit = fit_portfolio(world, {.threads = 1});
  REQUIRE(fit);
  const std::string bytes = bytes_of(*fit);
  const auto again = fit_from_bytes(bytes);
  REQUIRE(again);
  CHECK(bytes_of(*again) == bytes);
  CHECK_FALSE(fit_from_bytes(bytes.substr(0, bytes.size() - 1)));
  CHECK_FALSE(fit_from_bytes(bytes + "x"));
  CHECK_FALSE(fit_from_bytes({}));
}

TEST_CASE("a part's input tells of all its forecast is made from", "[forecast]") {
  const Portfolio world = joined_world(5);
  const auto inputs = [](const Portfolio& portfolio) {
    std::map<std::string, std::string> by_id;
    each_part_input(portfolio, [&](std::int32_t part, std::string_view bytes) {
      by_id[portfolio.parts[static_cast<std::size_t>(part)].id] = bytes;
    });
    return by_id;
  };
  const auto before = inputs(world);
  const auto changed = [&](const Portfolio& portfolio) {
    std::set<std::string> ids;
    for (const auto& [id, bytes] : inputs(portfolio))
      if (before.at(id) != bytes) ids.insert(id);
    return ids;
  };
  SECTION("in another order it is the same") {
    CHECK(changed(shuffled(world, 8)).empty());
  }
  SECTION("a corrected reading touches its part") {
    Portfolio corrected = world;
    corrected.readings[7].value += 1;
    const auto part = static_cast<std::size_t>(corrected.readings[7].part);
    CHECK(changed(corrected) == std::set{world.parts[part].id});
  }
  SECTION("a work touches its part") {
    Portfolio worked = world;
    Work work;
    work.part = 4;
    work.day = Date{world.as_of.days - 9};
    worked.works.push_back(work);
    CHECK(changed(worked) == std::set{world.parts[4].id});
  }
  SECTION("a visit's day touches all that was read on it, and nothing else") {
    Portfolio moved = world;
    moved.visits[0].day.days -= 1;
    std::set<std::string> read;
    for (const Reading& reading : world.readings)
      if (reading.visit == 0) read.insert(world.parts[static_cast<std::size_t>(reading.part)].id);
    CHECK_FALSE(read.empty());
    CHECK(changed(moved) == read);
  }
  SECTION("a site's limit touches its parts and no others") {
    Portfolio limited = world;
    SiteLimits limits;
    limits.zinc_gone_um = 12.5;
    limits.site = world.parts[0].site;
    std::erase_if(limited.limits, [&](const SiteLimits& own) { return own.site == limits.site; });
    limited.limits.push_back(limits);
    std::set<std::string> of_site;
    for (const Part& part : world.parts)
      if (part.site == limits.site) of_site.insert(part.id);
    CHECK(changed(limited) == of_site);
  }
}

TEST_CASE("sites handed over one by one, in any order, are fitted as the whole", "[forecast]") {
  const std::uint64_t seed = GENERATE(test::each_seed(21, 22));
  INFO(test::reproduce(seed));
  Portfolio world = joined_world(seed, 4);
  // A gauge that reads millimetres on one site, an odd rate, parts without a date: told by all.
  for (std::size_t i = 0; i < world.parts.size(); i += 5) world.parts[i].installed.reset();
  world.parts[3].zinc_rate_um_per_year = 900;
  for (Reading& reading : world.readings)
    if (reading.visit == 0 && reading.quantity == Quantity::coating_um) reading.value /= 1000;
  const RunOptions options{.threads = 2};
  const auto whole = fit_portfolio(world, options);
  REQUIRE(whole);
  const SiteSplit split(world);
  auto sites = split.sites();
  std::shuffle(sites.begin(), sites.end(), std::mt19937_64(seed));
  FitBySite by_site{InstalledDates(world)};
  for (const auto& [site, parts] : sites)
    REQUIRE(by_site.add(site, shuffled(split.portfolio_of(site), seed)));
  const auto fits = std::move(by_site).fit(options);
  REQUIRE(fits);
  CHECK(bytes_of(fits->head()) == bytes_of(head_of(*whole)));
  CHECK_FALSE(fits->head().notes.empty());
  for (const auto& [site, parts] : sites) {
    // Shuffled parts have other places; what is said of them is the same.
    const auto own = split.portfolio_of(site);
    const auto mixed = shuffled(own, seed);
    const auto rows = rows_of(fits->of(site), mixed, options);
    const auto wanted = rows_of(split.fit_of(*whole, site), own, options);
    REQUIRE(rows);
    REQUIRE(wanted);
    CHECK(exactly(joined(own, {*rows}, {mixed})) == exactly(*wanted));
  }
}

TEST_CASE("sites without a part are no fit", "[forecast]") {
  FitBySite by_site{InstalledDates()};
  CHECK(by_site.add("S1", Portfolio()));
  const auto fits = std::move(by_site).fit({});
  REQUIRE_FALSE(fits);
  CHECK(fits.error().fault == Fault::not_estimable);
}
