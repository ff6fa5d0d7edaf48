// What an order list takes as seen, and what it says of the parts that are in none of its years.

#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <numeric>
#include <string>
#include <vector>

#include "core/forecast/decisions/order_list.h"
#include "tests/core/forecast/decisions/sharing_parts.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;
using kneerail::tests::Fitted;
using kneerail::tests::sharing_parts;

namespace {

const std::vector<double> years{0, 1, 2};

/// Every part graded 1 at every visit but the fourth, which was always seen at 4.
Portfolio one_seen_at_4(int replaced_at) {
  Portfolio portfolio = sharing_parts(test::seed_or(9), {.sites = 1, .zones = 1, .runs = 2});
  for (Reading& reading : portfolio.readings)
    if (reading.quantity == Quantity::grade) reading.value = reading.part == 3 ? 4 : 1;
  portfolio.limits.clear();
  portfolio.limits.push_back({.site = portfolio.parts.front().site,
                              .zinc_gone_um = {},
                              .replace_grade = replaced_at,
                              .chance = {}});
  return portfolio;
}

double correlation(const std::vector<double>& a, const std::vector<double>& b) {
  const auto n = static_cast<double>(a.size());
  const double mean_a = std::accumulate(a.begin(), a.end(), 0.0) / n;
  const double mean_b = std::accumulate(b.begin(), b.end(), 0.0) / n;
  double both = 0;
  double of_a = 0;
  double of_b = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    both += (a[i] - mean_a) * (b[i] - mean_b);
    of_a += (a[i] - mean_a) * (a[i] - mean_a);
    of_b += (b[i] - mean_b) * (b[i] - mean_b);
  }
  return both / std::sqrt(of_a * of_b);
}

}  // namespace

TEST_CASE("a part seen at the grade its owner replaces at is ordered now", "[core]") {
  for (const int replaced_at : {3, 4}) {
    INFO("replaced at " << replaced_at);
    const Fitted fitted(one_seen_at_4(replaced_at));
    const auto made = fitted.replacements().of(3, years);
    CHECK(made.past);
    CHECK(made.seen_past);
    const auto list = order_list(fitted.replacements(), {.years = 2});
    REQUIRE(list);
    int seen = 0;
    for (const OrderLine& line : list->lines) seen += line.seen_past;
    CHECK(seen == 1);
    CHECK(list->years.front().p10 >= 1);
  }
  const Fitted later(one_seen_at_4(5));
  CHECK_FALSE(later.replacements().of(3, years).seen_past);
}

TEST_CASE("what may be past unseen is summed beside the years", "[core]") {
  const Fitted fitted(sharing_parts(test::seed_or(10)));
  const Replacements replacements = fitted.replacements();
  const auto list = order_list(replacements, {.years = 2});
  REQUIRE(list);
  double unseen = 0;
  for (std::int32_t part = 0; part < static_cast<std::int32_t>(fitted.portfolio.parts.size());
       ++part)
    if (const auto made = replacements.of(part, years); !made.past) unseen += made.reached.by[0];
  CHECK(unseen > 0);
  CHECK(list->may_be_past == Approx(unseen).epsilon(1e-9));
  double of_lines = 0;
  for (const OrderLine& line : list->lines) of_lines += line.may_be_past;
  CHECK(of_lines == Approx(unseen).epsilon(1e-9));
}

TEST_CASE("a tube that counts by its grade alone is counted with why", "[core]") {
  Portfolio portfolio = sharing_parts(test::seed_or(10), {.sites = 1, .zones = 1, .runs = 2});
  int dented = 0;
  for (Part& part : portfolio.parts)
    if (part.component_type == "tube" && dented < 2) {
      part.out_of_shape = true;
      ++dented;
    }
  REQUIRE(dented == 2);
  const Fitted fitted(std::move(portfolio));
  const auto list = order_list(fitted.replacements(), {.years = 2});
  REQUIRE(list);
  CHECK(list->by_grade_alone ==
        std::map<std::string, int>{
            {"dented, oval or holed: not projected; refer to an engineer", 2}});
  for (const OrderLine& line : list->lines)
    CHECK(line.by_grade_alone == (line.type == "tube" ? 2 : 0));
}

TEST_CASE("parts without an answer have a line that says so, and none of its own", "[core]") {
  const Fitted fitted(sharing_parts(test::seed_or(10), {.sites = 1, .zones = 1, .runs = 2}));
  const Replacements ungraded(fitted.portfolio, &*fitted.coating, nullptr);
  const auto list = order_list(ungraded, {.years = 2});
  REQUIRE(list);
  REQUIRE(list->lines.size() == 2);
  CHECK(list->lines.front().type == "tube");
  CHECK(list->lines.front().not_answered == 0);
  CHECK(list->lines.back().type == "fitting");
  CHECK(list->lines.back().parts == 0);
  CHECK(list->lines.back().not_answered == list->not_answered);
  CHECK(list->not_answered > 0);
}

TEST_CASE("tubes of bare steel are counted, as no wall read narrows their zone", "[core]") {
  Portfolio portfolio = sharing_parts(test::seed_or(10), {.sites = 1, .zones = 1, .runs = 2});
  for (Reading& reading : portfolio.readings)
    if (reading.quantity == Quantity::grade) reading.value = 1;
  int bare = 0;
  for (Part& part : portfolio.parts)
    if (part.component_type == "tube" && bare < 2) {
      part.material = Material::bare_steel;
      ++bare;
    }
  const Fitted fitted(std::move(portfolio));
  const Replacements ungraded(fitted.portfolio, &*fitted.coating, nullptr);
  const auto list = order_list(ungraded, {.years = 2});
  REQUIRE(list);
  CHECK(list->bare == 2);
}

TEST_CASE("tubes of bare steel move together with their zone alone", "[core][property]") {
  const auto seed = GENERATE(test::each_seed(1, 3));
  INFO(test::reproduce(seed));
  Portfolio portfolio = sharing_parts(seed, {.sites = 1, .zones = 2, .runs = 2});
  std::map<std::string, std::vector<std::int32_t>> tubes;  // by zone
  for (std::size_t i = 0; i < portfolio.parts.size(); ++i) {
    Part& part = portfolio.parts[i];
    if (part.component_type != "tube") continue;
    part.material = Material::bare_steel;
    part.installed = Date{portfolio.as_of.days - 7000};
    tubes[part.zone].push_back(static_cast<std::int32_t>(i));
  }
  REQUIRE(tubes.size() == 2);
  const Fitted fitted(std::move(portfolio));
  const Replacements ungraded(fitted.portfolio, &*fitted.coating, nullptr);
  constexpr std::array<double, 1> in_ten{10};
  const auto drawn = [&](std::int32_t part) {
    const PartReplacement made = ungraded.of(part, in_ten);
    REQUIRE(made.why == ReplacedFor::wall);
    const auto& all = made.reached.drawn;
    CHECK(std::accumulate(all.begin(), all.end(), 0.0) / draw_count ==
          Approx(made.reached.by.front()).margin(0.002));
    return all;
  };
  const auto& here = tubes.begin()->second;
  const auto& there = tubes.rbegin()->second;
  REQUIRE(here.size() >= 2);
  CHECK(correlation(drawn(here[0]), drawn(here[1])) > 0.7);
  CHECK(std::abs(correlation(drawn(here[0]), drawn(there[0]))) < 0.25);
}
