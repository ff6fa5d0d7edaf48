#include "core/forecast/decisions/order_list.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

#include "tests/core/forecast/decisions/sharing_parts.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;
using kneerail::tests::Fitted;
using kneerail::tests::sharing_parts;

namespace {

const std::vector<double> years{0, 1, 2, 5, 10};

void check_same(const OrderList& a, const OrderList& b) {
  REQUIRE(a.lines.size() == b.lines.size());
  CHECK(a.past == b.past);
  for (std::size_t i = 0; i < a.lines.size(); ++i) {
    CHECK(a.lines[i].type == b.lines[i].type);
    CHECK(a.lines[i].parts == b.lines[i].parts);
    for (std::size_t y = 0; y < a.lines[i].years.size(); ++y) {
      CHECK(std::abs(a.lines[i].years[y].expected - b.lines[i].years[y].expected) < 1e-9);
      CHECK(a.lines[i].years[y].p10 == b.lines[i].years[y].p10);
      CHECK(a.lines[i].years[y].p90 == b.lines[i].years[y].p90);
    }
  }
}

}  // namespace

TEST_CASE("the mean over the draws is the chance of the part", "[core][property]") {
  const auto seed = GENERATE(test::each_seed(1, 3));
  INFO(test::reproduce(seed));
  const Fitted fitted(sharing_parts(seed));
  const Replacements replacements = fitted.replacements();
  int moved = 0;
  for (std::int32_t part = 0; part < static_cast<std::int32_t>(fitted.portfolio.parts.size());
       ++part) {
    const PartReplacement made = replacements.of(part, years);
    for (std::size_t y = 0; y < years.size(); ++y) {
      double mean = 0;
      double least = 1;
      double most = 0;
      for (int d = 0; d < replacements.draws(); ++d) {
        const double own = made.reached.drawn[static_cast<std::size_t>(d) * years.size() + y];
        mean += own / replacements.draws();
        least = std::min(least, own);
        most = std::max(most, own);
      }
      CHECK(mean == Approx(made.reached.by[y]).margin(0.004));
      moved += most > least + 0.01 ? 1 : 0;
      if (y > 0) CHECK(made.reached.by[y] >= made.reached.by[y - 1]);
    }
  }
  CHECK(moved > 50);
}

TEST_CASE("threads and the order of rows change nothing in an order list", "[core][property]") {
  const auto seed = test::seed_or(5);
  INFO(test::reproduce(seed));
  const Portfolio portfolio = sharing_parts(seed);
  const Fitted one(portfolio, 1);
  const Fitted other(shuffled(portfolio, seed + 1), 3);
  const auto list = order_list(one.replacements(), {.years = 4, .workers = {.threads = 1}});
  const auto again = order_list(other.replacements(), {.years = 4, .workers = {.threads = 3}});
  REQUIRE(list);
  REQUIRE(again);
  CHECK(list->lines.size() == 2);
  check_same(*list, *again);
}

TEST_CASE("parts that share a zone make the count less sure", "[core][property]") {
  const auto seed = GENERATE(test::each_seed(1, 3));
  INFO(test::reproduce(seed));
  // Few of many parts are measured: what is known of the others is what they share.
  const Fitted fitted(sharing_parts(
      seed, {.sites = 1, .zones = 2, .runs = 2, .parts = 60, .days = 2, .measured = 0.1}));
  const Replacements replacements = fitted.replacements();
  const std::vector<double> at{0, 10};
  std::vector<statistics::PoissonBinomial> drawn(draw_count);
  statistics::PoissonBinomial independent;
  double variance_between = 0;
  double expected = 0;
  for (std::int32_t part = 0; part < static_cast<std::int32_t>(fitted.portfolio.parts.size());
       ++part) {
    const PartReplacement made = replacements.of(part, at);
    independent.add(made.reached.by[1]);
    expected += made.reached.by[1];
    for (std::size_t d = 0; d < drawn.size(); ++d) drawn[d].add(made.reached.drawn[2 * d + 1]);
  }
  for (const auto& own : drawn) variance_between += std::pow(own.mean() - expected, 2) / draw_count;
  INFO("expected " << expected << ", variance within " << independent.variance() << ", between "
                   << variance_between);
  CHECK(variance_between > independent.variance());
  const int width = count_quantile(drawn, 0.9) - count_quantile(drawn, 0.1);
  const int narrow = count_quantile({independent}, 0.9) - count_quantile({independent}, 0.1);
  CHECK(width > narrow);
}

TEST_CASE("every part is replaced once in the long run, past ones now", "[core]") {
  const auto seed = test::seed_or(6);
  INFO(test::reproduce(seed));
  Portfolio portfolio = sharing_parts(seed, {.sites = 1, .zones = 1, .runs = 2, .parts = 10});
  for (Reading& reading : portfolio.readings)
    if (reading.quantity == Quantity::grade && reading.part == 3) reading.value = 5;
  const Fitted fitted(std::move(portfolio));
  const auto list = order_list(fitted.replacements(), {.years = 50});
  REQUIRE(list);
  CHECK(list->parts == 20);
  CHECK(list->past >= 1);
  CHECK(list->years.front().expected >= list->past);
  double sum = 0;
  for (const ReplacedCount& year : list->years) sum += year.expected;
  CHECK(sum == Approx(list->all.expected).epsilon(1e-9));
  CHECK(list->all.expected <= 20);
  CHECK(list->all.p10 <= list->all.p50);
  CHECK(list->all.p50 <= list->all.p90);
  const auto seen = fitted.replacements().of(3, years);
  CHECK(seen.past);
  CHECK(seen.seen_past);
  CHECK_FALSE(order_list(fitted.replacements(), {.years = 0}));
}

TEST_CASE("a new part knows nothing of the readings of the one before it", "[core]") {
  const auto seed = test::seed_or(7);
  INFO(test::reproduce(seed));
  const Portfolio portfolio = sharing_parts(seed, {.sites = 1, .zones = 1, .runs = 2, .parts = 8});
  Portfolio thin = portfolio;
  for (const auto censoring : {Censoring::exact, Censoring::at_most}) {
    Reading reading;
    reading.id = "w" + std::to_string(thin.readings.size());
    reading.quantity = Quantity::wall_mm;
    reading.visit = static_cast<std::int32_t>(thin.visits.size()) - 1;
    reading.censoring = censoring;
    reading.value = 2.6;
    thin.readings.push_back(reading);  // of the first part, a post
  }
  REQUIRE(thin.parts.front().kind == PartKind::post_tube);
  const Fitted as_made(portfolio);
  const Fitted read(std::move(thin));
  const auto before = as_made.replacements().of_new(0, {}, years);
  const auto after = read.replacements().of_new(0, {}, years);
  CHECK(before.reached.by == after.reached.by);
  CHECK(before.reached.drawn == after.reached.drawn);
  CHECK(as_made.replacements().of(0, years).reached.by !=
        read.replacements().of(0, years).reached.by);
  CHECK(as_made.replacements().new_part_key(0) == read.replacements().new_part_key(0));
}
