// What a part's limits say together, and which part goes first.

#include "core/forecast/decisions/part_outlook.h"

#include <catch2/catch.hpp>

#include "tests/core/forecast/decisions/rows.h"

using namespace kneerail;
using namespace kneerail::forecast;
using namespace kneerail::tests;

namespace {

/// Parts p0, p1 ... on a site whose owner acts at 5 % where the consequence is high, and at
/// nothing where it is low.
Portfolio parts(int count, int consequence = 1) {
  Portfolio made;
  made.as_of = date_from_civil(2026, 6, 30);
  made.limits.push_back({.site = "quay", .zinc_gone_um = {}, .replace_grade = {}, .chance = {}});
  made.limits.back().chance[1] = 0.05;
  for (int i = 0; i < count; ++i) {
    Part part;
    part.id = "p" + std::to_string(i);
    part.site = "quay";
    part.consequence = consequence;
    made.parts.push_back(part);
  }
  return made;
}

LimitForecast screws(std::array<double, 4> p_by, std::int32_t part = 0) {
  auto row = row_of({}, p_by, Limit::torque_minimum, part);
  row.has_years = false;
  return row;
}

/// A life whose median is `years`, and its chances to match.
LimitForecast life(Limit limit, double years, std::int32_t part = 0) {
  auto row =
      row_of({0.4 * years, 0.5 * years, 0.7 * years, years, 1.4 * years, 2 * years, 2.5 * years},
             {0, 0, 0, 0}, limit, part);
  const std::array<double, 7> levels{0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95};
  const std::array<double, 4> dates{0, 1, 2, 5};
  for (std::size_t date = 0; date < dates.size(); ++date)
    for (std::size_t i = 0; i < levels.size(); ++i)
      if (row.years[i] <= dates[date]) row.p_by[date] = levels[i];
  return row;
}

}  // namespace

TEST_CASE("the limit with the earliest median governs, and one within a fifth is named",
          "[forecast]") {
  const auto portfolio = parts(1);
  const std::vector<LimitForecast> rows{life(Limit::coating_exhausted, 11),
                                        life(Limit::wall_limit, 30), life(Limit::grade_5, 10)};
  const auto outlooks = part_outlooks(portfolio, rows);
  REQUIRE(outlooks.size() == 1);
  CHECK(outlooks[0].governing == 2u);
  CHECK(outlooks[0].governing_years == 10);
  CHECK(outlooks[0].runner_up == 0u);
  const auto apart =
      part_outlooks(portfolio, {life(Limit::coating_exhausted, 13), life(Limit::grade_5, 10)});
  CHECK_FALSE(apart[0].runner_up);
}

TEST_CASE("of limits with the same median the one that hurts most governs", "[forecast]") {
  const std::vector<LimitForecast> rows{life(Limit::coating_exhausted, 8), life(Limit::grade_5, 8),
                                        life(Limit::wall_limit, 8)};
  CHECK(part_outlooks(parts(1), rows)[0].governing == 2u);
}

TEST_CASE("screws govern by the date they are as likely loose as not", "[forecast]") {
  const auto outlook =
      part_outlooks(parts(1), {life(Limit::coating_exhausted, 9), screws({0.3, 0.4, 0.5, 0.6})})[0];
  CHECK(outlook.governing == 1u);
  CHECK(outlook.governing_years == Approx(2));
  CHECK(outlook.structural == 1u);
  CHECK(outlook.structural_chance == Approx(0.6));
}

TEST_CASE("a lost coating alone never makes a part structural", "[forecast]") {
  const auto outlook = part_outlooks(parts(1), {life(Limit::coating_exhausted, 1)})[0];
  CHECK(outlook.structural_chance == 0);
  CHECK_FALSE(outlook.structural);
  CHECK(outlook.governing == 0u);
}

TEST_CASE("the owner's grade counts as structural, and the worse one beside it does not",
          "[forecast]") {
  auto portfolio = parts(1);
  portfolio.limits[0].replace_grade = 4;
  const std::vector<LimitForecast> rows{life(Limit::grade_4, 5), life(Limit::grade_5, 4)};
  const auto outlook = part_outlooks(portfolio, rows)[0];
  CHECK(outlook.structural == 0u);
  CHECK(outlook.structural_chance == Approx(0.5));
}

TEST_CASE("what likely stops holding first goes first, whatever its coating", "[forecast]") {
  const std::vector<LimitForecast> rows{
      life(Limit::coating_exhausted, 0.5, 0), life(Limit::coating_exhausted, 40, 1),
      screws({0.02, 0.1, 0.2, 0.7}, 1),       life(Limit::coating_exhausted, 6, 2),
      screws({0.02, 0.05, 0.1, 0.3}, 2),      life(Limit::coating_exhausted, 5, 3),
      screws({0.02, 0.05, 0.1, 0.3}, 3)};
  std::vector<std::int32_t> order;
  for (const PartOutlook& outlook : part_outlooks(parts(4), rows)) order.push_back(outlook.part);
  // The last two are as likely loose: the earlier median decides between them.
  CHECK(order == std::vector<std::int32_t>{1, 3, 2, 0});
}

TEST_CASE("a part seen at grade 5 goes before whatever is only likely", "[forecast]") {
  auto portfolio = parts(3);
  auto seen = life(Limit::grade_5, 12, 1);
  seen.seen = SeenGrade{5, date_from_civil(2026, 5, 12)};
  auto near = life(Limit::grade_5, 12, 2);
  near.seen = SeenGrade{4, date_from_civil(2026, 5, 12)};
  const std::vector<LimitForecast> rows{screws({0.9, 0.95, 0.97, 0.99}, 0), seen,
                                        life(Limit::wall_limit, 1, 1), near};
  const auto outlooks = part_outlooks(portfolio, rows);
  REQUIRE(outlooks.size() == 3);
  CHECK(outlooks[0].part == 1);
  CHECK(outlooks[0].structural == 1u);
  CHECK(outlooks[0].structural_chance == 1);
  CHECK(outlooks[0].governing == 1u);
  CHECK(outlooks[0].governing_years == Approx(-49 / 365.25));
  CHECK(outlooks[0].seen_past == date_from_civil(2026, 5, 12));
  CHECK(outlooks[0].due == portfolio.as_of);
  CHECK(outlooks[0].words ==
        "seen at grade 5 on 2026-05-12: act on it; due 2026-06-30 for condition grade 5 by the "
        "owner's chance of 5 %");
  CHECK(outlooks[1].part == 0);
  CHECK_FALSE(outlooks[2].seen_past);
}

TEST_CASE("a part seen at the grade its owner replaces at goes by what was seen", "[forecast]") {
  auto portfolio = parts(2);
  portfolio.limits.front().replace_grade = 4;
  auto seen = life(Limit::grade_4, 12, 1);
  auto worst = life(Limit::grade_5, 20, 1);
  seen.seen = worst.seen = SeenGrade{4, date_from_civil(2026, 5, 12)};
  const std::vector<LimitForecast> rows{screws({0.9, 0.95, 0.97, 0.99}, 0), seen, worst};
  const auto outlooks = part_outlooks(portfolio, rows);
  REQUIRE(outlooks.size() == 2);
  CHECK(outlooks[0].part == 1);
  CHECK(outlooks[0].structural == 1u);
  CHECK(outlooks[0].structural_chance == 1);
  CHECK(outlooks[0].seen_past == date_from_civil(2026, 5, 12));
  CHECK(outlooks[0].words.rfind("seen at grade 4 on 2026-05-12: act on it", 0) == 0);
}

TEST_CASE("a part is due when its first limit has the owner's chance", "[forecast]") {
  const auto rows = std::vector<LimitForecast>{life(Limit::coating_exhausted, 20),
                                               screws({0.01, 0.03, 0.05, 0.2})};
  const auto due = part_outlooks(parts(1), rows)[0];
  REQUIRE(due.due);
  CHECK(*due.due == date_from_civil(2028, 6, 29));  // two years of 365.25 days, rounded down
  CHECK(due.due_row == 1u);
  const auto none_set = part_outlooks(parts(1, 3), rows)[0];
  CHECK_FALSE(none_set.due);
  const auto not_said = part_outlooks(parts(1, 0), rows)[0];
  CHECK_FALSE(not_said.due);
}

TEST_CASE("a part that has the owner's chance by now is due today", "[forecast]") {
  const auto portfolio = parts(1);
  const auto outlook = part_outlooks(portfolio, {screws({0.3, 0.4, 0.5, 0.6})})[0];
  REQUIRE(outlook.due);
  CHECK(*outlook.due == portfolio.as_of);
}

TEST_CASE("a part without an answer has no outlook", "[forecast]") {
  LimitForecast silent;
  silent.part = 0;
  CHECK(part_outlooks(parts(1), {silent}).empty());
}

TEST_CASE("a limit that nobody read decides nothing", "[forecast]") {
  auto assumed = screws({0.6, 0.7, 0.8, 0.9});
  assumed.readings_used = 0;
  const auto read = life(Limit::coating_exhausted, 9);
  const auto outlook = part_outlooks(parts(1), {read, assumed})[0];
  CHECK(outlook.governing == 0u);
  CHECK_FALSE(outlook.structural);
  // Once one part's screws are read, the others are judged by them.
  const auto judged = part_outlooks(parts(2), {read, assumed, screws({0, 0, 0, 0.1}, 1)})[0];
  CHECK(judged.structural == 1u);
}

TEST_CASE("the wall of bare steel counts though nobody measured one", "[forecast]") {
  auto wall = life(Limit::wall_limit, 3);
  wall.readings_used = 0;
  auto portfolio = parts(1);
  CHECK(part_outlooks(portfolio, {wall}).empty());
  portfolio.parts[0].material = Material::bare_steel;
  const auto outlooks = part_outlooks(portfolio, {wall});
  REQUIRE(outlooks.size() == 1);
  CHECK(outlooks[0].structural == 0u);
  CHECK(outlooks[0].governing_years == 3);
}

TEST_CASE("screws have a median and a due date beyond five years", "[forecast]") {
  auto row = screws({0.001, 0.004, 0.01, 0.03});
  const auto nothing = part_outlooks(parts(1), {row})[0];
  CHECK_FALSE(nothing.governing);
  CHECK_FALSE(nothing.due);
  row.later = {{0.05, 8}, {0.5, 22}};
  const auto outlook = part_outlooks(parts(1), {row})[0];
  CHECK(outlook.governing_years == 22);
  REQUIRE(outlook.due);
  CHECK(*outlook.due == date_from_civil(2034, 6, 30));
}

TEST_CASE("an outlook says what governs, what is close and when it is due", "[forecast]") {
  const auto words = [](const Portfolio& portfolio, const std::vector<LimitForecast>& rows) {
    return part_outlooks(portfolio, rows)[0].words;
  };
  CHECK(words(parts(1), {life(Limit::coating_exhausted, 11), life(Limit::grade_5, 10.5)}) ==
        "governed by condition grade 5, as likely as not in about 10 years; coating gone close "
        "behind; due 2030-09-11 for condition grade 5 by the owner's chance of 5 %");
  CHECK(words(parts(1, 3), {screws({0.6, 0.7, 0.8, 0.9})}) ==
        "governed by set screws, as likely as not by now; no chance is set, so no date");
  CHECK(words(parts(1), {screws({0, 0, 0.01, 0.02})}) ==
        "no limit is as likely as not reached in the time that can be said; no figure gets to the "
        "owner's chance of 5 %");
}
