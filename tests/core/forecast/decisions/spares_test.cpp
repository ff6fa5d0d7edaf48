#include "core/forecast/decisions/spares.h"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>

#include "tests/core/forecast/decisions/sharing_parts.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;
using kneerail::tests::Fitted;
using kneerail::tests::sharing_parts;

namespace {

Fitted fitted_depot() {
  Portfolio portfolio = sharing_parts(test::seed_or(8), {.sites = 2, .zones = 1, .runs = 2});
  for (Part& part : portfolio.parts) part.depot = "quay";
  return Fitted(std::move(portfolio));
}

OwnerFigures figures_of(const Portfolio& portfolio) {
  OwnerFigures figures;
  figures.types["tube"].lead_time_days = 1461;
  figures.types["fitting"].lead_time_days = 14;
  for (const Part& part : portfolio.parts) figures.sites[part.site].spare_chance = 0.95;
  return figures;
}

const SpareLine& line_of(const std::vector<SpareLine>& lines, const std::string& type) {
  for (const SpareLine& line : lines)
    if (line.type == type) return line;
  FAIL("no line of " << type);
  return lines.front();
}

}  // namespace

TEST_CASE("parts that fail together need more spares than their mean says", "[core][reference]") {
  const std::array<double, 3> means{0.8, 1.6, 3.6};
  CHECK(enough_chance(means, 4) == Approx(0.894).margin(5e-4));
  CHECK(enough_chance(means, 5) == Approx(0.946).margin(5e-4));
  CHECK(enough_chance(means, 6) == Approx(0.975).margin(5e-4));
  CHECK(spares_to_hold(means, 0.95) == 6);
  CHECK(spares_to_hold(std::array{2.0}, 0.95) == 5);
  CHECK(spares_to_hold(std::array{0.0}, 0.95) == 0);
  // Of many the least that is enough all the same, found without summing each number anew; and a
  // chance that no sum of doubles reaches has an end.
  const std::array<double, 3> many{3'900, 4'000, 4'100};
  const int held = spares_to_hold(many, 0.95);
  CHECK(enough_chance(many, held) >= 0.95);
  CHECK(enough_chance(many, held - 1) < 0.95);
  CHECK(spares_to_hold(many, std::nextafter(1.0, 0.0)) > held);
}

TEST_CASE("a depot holds what its lead time asks for", "[core]") {
  const Fitted fitted = fitted_depot();
  OwnerFigures figures = figures_of(fitted.portfolio);
  figures.on_shelf[{"quay", "tube"}] = 1;
  figures.on_order[{"quay", "tube"}] = 1;
  const auto lines = spares(fitted.replacements(), figures);
  REQUIRE(lines);
  REQUIRE(lines->size() == 2);
  const SpareLine& tube = line_of(*lines, "tube");
  const SpareLine& fitting = line_of(*lines, "fitting");
  REQUIRE(tube.hold);
  REQUIRE(fitting.hold);
  CHECK(tube.expected > fitting.expected);
  CHECK(*tube.hold > *fitting.hold);
  CHECK(tube.enough >= 0.95);
  CHECK(enough_chance(tube.means, *tube.hold - 1) < 0.95);
  CHECK(tube.order == std::max(0, *tube.hold - 2));
  CHECK(tube.words.find("in the 1461 days until one comes") != std::string::npos);
  CHECK_FALSE(fitting.shelf);
  CHECK(fitting.order == fitting.hold);
}

TEST_CASE("what is missing for spares is named", "[core]") {
  const Fitted fitted = fitted_depot();
  OwnerFigures figures = figures_of(fitted.portfolio);
  figures.types["fitting"].lead_time_days.reset();
  for (auto& [name, site] : figures.sites) site.spare_chance.reset();
  const auto lines = spares(fitted.replacements(), figures);
  REQUIRE(lines);
  CHECK(line_of(*lines, "fitting").words == "no lead time is set");
  CHECK_FALSE(line_of(*lines, "fitting").hold);
  CHECK(line_of(*lines, "tube").words == "no chance of having the spare is set");
  CHECK_FALSE(line_of(*lines, "tube").hold);
  CHECK(line_of(*lines, "tube").expected > 0);
  for (auto& [name, site] : figures.sites) site.spare_chance = 1;
  const auto sure = spares(fitted.replacements(), figures);
  REQUIRE(sure);
  CHECK(line_of(*sure, "tube").words ==
        "a chance of 100 % needs more than any number; set one under it");
}

TEST_CASE("a site that asks for 100 % leaves its depot the chance of the others", "[core]") {
  const Fitted fitted = fitted_depot();
  OwnerFigures figures = figures_of(fitted.portfolio);
  REQUIRE(figures.sites.size() == 2);
  const auto all = spares(fitted.replacements(), figures);
  REQUIRE(all);
  figures.sites.begin()->second.spare_chance = 1;
  const auto rest = spares(fitted.replacements(), figures);
  REQUIRE(rest);
  const SpareLine& line = line_of(*rest, "tube");
  REQUIRE(line.hold);
  CHECK(line.hold == line_of(*all, "tube").hold);
  CHECK(line.expected == Approx(line_of(*all, "tube").expected));
  CHECK(line.sure_sites == 1);
  CHECK(line_of(*all, "tube").sure_sites == 0);
  CHECK(line.words.find("; the 100 % asked for at 1 of its sites is left out, as no number is "
                        "enough for it") != std::string::npos);
}

TEST_CASE("a strike asks for spares of the largest seasonal run", "[core]") {
  const Fitted fitted = fitted_depot();
  OwnerFigures figures = figures_of(fitted.portfolio);
  const auto quiet = spares(fitted.replacements(), figures);
  REQUIRE(quiet);
  const std::string& run = fitted.portfolio.parts.front().run;
  figures.seasonal_runs = {run};
  figures.types["tube"].struck = 300;
  figures.types["tube"].replaced_at_re_erecting = 18;
  figures.struck_types[run] = {"tube"};
  const auto seasonal = spares(fitted.replacements(), figures);
  REQUIRE(seasonal);
  int tubes = 0;
  int fittings = 0;
  for (const Part& part : fitted.portfolio.parts)
    if (part.run == run) ++(part.component_type == "tube" ? tubes : fittings);
  const SpareLine& line = line_of(*seasonal, "tube");
  CHECK(line.by_strike == Approx(20.0 / 400 * tubes));
  CHECK(line.expected == Approx(line_of(*quiet, "tube").expected + line.by_strike).epsilon(1e-9));
  CHECK(line.words.find("by a strike") != std::string::npos);
  CHECK(line_of(*seasonal, "fitting").by_strike == 0);  // stays up
  // What a strike elsewhere took says nothing of a run that nobody has struck yet.
  figures.struck_types = {{"elsewhere", {"tube"}}};
  const auto first = spares(fitted.replacements(), figures);
  REQUIRE(first);
  CHECK(line_of(*first, "fitting").by_strike == Approx(0.02 * fittings));
}

TEST_CASE("parts of which nothing is reckoned are never enough with none held", "[core]") {
  Fitted fitted = fitted_depot();
  OwnerFigures figures = figures_of(fitted.portfolio);
  for (auto& [name, type] : figures.types) type.lead_time_days = 28;
  const Replacements ungraded(fitted.portfolio, &*fitted.coating, nullptr);
  const auto lines = spares(ungraded, figures);
  REQUIRE(lines);
  const SpareLine& fitting = line_of(*lines, "fitting");
  CHECK_FALSE(fitting.hold);
  CHECK_FALSE(fitting.order);
  CHECK(fitting.not_answered == fitting.parts);
  CHECK(fitting.words == "neither a wall nor a grade is reckoned of them");
  CHECK(line_of(*lines, "tube").hold);
  CHECK(line_of(*lines, "tube").not_answered == 0);

  for (Part& part : fitted.portfolio.parts) part.component_type = "any";
  figures.types["any"].lead_time_days = 28;
  const auto mixed = spares(Replacements(fitted.portfolio, &*fitted.coating, nullptr), figures);
  REQUIRE(mixed);
  const SpareLine& any = line_of(*mixed, "any");
  CHECK(any.hold);
  CHECK(any.not_answered == fitting.parts);
  CHECK(any.words.find("; " + std::to_string(fitting.parts) + " of " + std::to_string(any.parts) +
                       " parts are not reckoned") != std::string::npos);
}

TEST_CASE("what is to be replaced now is ordered besides what is held", "[core]") {
  Portfolio portfolio = sharing_parts(test::seed_or(8), {.sites = 1, .zones = 1, .runs = 2});
  std::int32_t fitting = 0;
  for (std::size_t i = 0; i < portfolio.parts.size(); ++i) {
    portfolio.parts[i].depot = "quay";
    if (portfolio.parts[i].component_type == "fitting") fitting = static_cast<std::int32_t>(i);
  }
  for (Reading& reading : portfolio.readings)
    if (reading.quantity == Quantity::grade) reading.value = reading.part == fitting ? 5 : 1;
  const Fitted fitted(std::move(portfolio));
  OwnerFigures figures = figures_of(fitted.portfolio);
  const auto bare = spares(fitted.replacements(), figures);
  REQUIRE(bare);
  const SpareLine& line = line_of(*bare, "fitting");
  REQUIRE(line.past == 1);
  REQUIRE(line.hold);
  CHECK(*line.order == *line.hold + 1);
  CHECK(line.words.find("; besides 1 to be replaced now, which is in the order") !=
        std::string::npos);
  CHECK(line.may_be_past > 0);
  figures.on_order[{"quay", "fitting"}] = 1;  // the one for the part that is past
  const auto ordered = spares(fitted.replacements(), figures);
  REQUIRE(ordered);
  CHECK(line_of(*ordered, "fitting").order == line.hold);
}
