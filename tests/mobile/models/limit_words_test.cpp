// The rows of a part's limits, and what they say together.

#include "mobile/models/limit_words.h"

#include <catch2/catch.hpp>
#include <limits>

#include "mobile/models/forecast_words.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

const Date today = date_from_civil(2030, 3, 17);

LimitForecast timed(Limit limit, double median, int readings = 4) {
  LimitForecast row;
  row.limit = limit;
  row.answered = true;
  for (std::size_t i = 0; i < row.years.size(); ++i)
    row.years[i] = median * (0.5 + static_cast<double>(i) / 6);
  row.readings_used = readings;
  return row;
}

LimitForecast chances(Limit limit, std::array<double, 4> by, int readings = 4) {
  LimitForecast row;
  row.limit = limit;
  row.answered = true;
  row.has_years = false;
  row.p_by = by;
  row.readings_used = readings;
  return row;
}

PartTold told_of_rows(std::vector<LimitForecast> rows) {
  return {fail(Fault::not_estimable, "no story"), std::move(rows), true, {}};
}

}  // namespace

TEST_CASE("limits stand in the order in which they usually come", "[mobile][forecast]") {
  const auto rows = limit_rows(
      told_of_rows({timed(Limit::coating_exhausted, 6), timed(Limit::coating_first_maintenance, 3),
                    timed(Limit::wall_limit, 30),
                    chances(Limit::torque_minimum, {0.08, 0.1, 0.12, 0.18}),
                    timed(Limit::grade_5, 7)}),
      today);
  QStringList names;
  for (const auto& row : rows) names << row.name;
  CHECK(names.join("; ").toStdString() ==
        "First maintenance; Zinc gone; Structural limit; Torque under minimum; Grade 5");
  CHECK(rows[0].figure == "3 y");
  CHECK(rows[0].band == "2 y to 4 y");
  CHECK(rows[0].timed);
  CHECK(rows[0].soon);
  CHECK(rows[0].share == Approx(0.2));
  CHECK_FALSE(rows[4].soon);
  CHECK(rows[4].spoken == "Grade 5: 7 y, 8 in 10 4 y to 9 y");
}

TEST_CASE("where only chances are known a chance is said, with its day and no bar",
          "[mobile][forecast]") {
  const auto row_of = [](std::array<double, 4> by, int readings = 4) {
    return limit_rows(told_of_rows({chances(Limit::torque_minimum, by, readings)}), today)[0];
  };
  const auto row = row_of({0.08, 0.1, 0.12, 0.18});
  CHECK(row.figure == "18 %");
  CHECK(row.band == "chance by Mar 2035; 8 % today");
  CHECK_FALSE(row.timed);
  CHECK_FALSE(row.soon);
  CHECK(row_of({0.2, 0.3, 0.4, 0.5}).soon);
  CHECK(row_of({0.001, 0.002, 0.003, 0.004}).figure == "under 1 %");
  CHECK(row_of({0.001, 0.002, 0.003, 0.004}).band == "chance today and by Mar 2035");
  CHECK(row_of({0.5, 0.9, 0.99, 0.9999}).figure == "over 99 %");
  CHECK(row_of({0, 0, 0, 0}).figure == "under 1 %");
  CHECK(row_of({0.08, 0.1, 0.12, 0.18}, 0).band.endsWith("; never checked"));
}

TEST_CASE("a limit without an answer says why, one without a reading says that",
          "[mobile][forecast]") {
  LimitForecast none;
  none.limit = Limit::torque_minimum;
  none.words = "no torque minimum is set for this fitting";
  const auto rows = limit_rows(told_of_rows({timed(Limit::wall_limit, 9, 0), none}), today);
  CHECK(rows[0].band == "6 y to 12 y; wall not measured");
  CHECK(rows[1].figure.isEmpty());
  CHECK(rows[1].band == "no torque minimum is set for this fitting");
  CHECK_FALSE(rows[1].timed);
  CHECK(rows[1].spoken == "Torque under minimum: no torque minimum is set for this fitting");
}

TEST_CASE("a limit that is past says since when", "[mobile][forecast]") {
  LimitForecast past = timed(Limit::coating_exhausted, 1);
  past.years = {-9, -8, -7, -4.5, -3, -2, -1};
  const auto rows = limit_rows(told_of_rows({past}), today);
  CHECK(rows[0].figure == "reached");
  CHECK(rows[0].band == "since about 2025");
  CHECK(rows[0].share == 0);
}

TEST_CASE("the limit that comes first is marked, and one close behind", "[mobile][forecast]") {
  PartTold told = told_of_rows({timed(Limit::coating_exhausted, 6), timed(Limit::wall_limit, 30),
                                timed(Limit::grade_5, 6.5)});
  told.outlook = PartOutlook{};
  told.outlook->governing = 0;
  told.outlook->runner_up = 2;
  const auto rows = limit_rows(told, today);
  CHECK(rows[0].first);
  CHECK(rows[0].mark == "comes first");
  CHECK(rows[0].spoken.endsWith(", comes first"));
  CHECK(rows[1].mark.isEmpty());
  CHECK(rows[2].mark == "close behind");
  CHECK_FALSE(rows[2].first);
}

TEST_CASE("what the limits say together ends with what it is worth", "[mobile][forecast]") {
  PartTold told = told_of_rows({timed(Limit::coating_exhausted, 6)});
  CHECK(limits_reason(told, today) == "A projection is an estimate. It is not a certificate.");
  told.rows.push_back(chances(Limit::torque_minimum, {0.08, 0.1, 0.12, 0.18}));
  told.rows.back().flags = {"found at 24 N·m on 2029-05-12, under its minimum"};
  told.outlook = PartOutlook{};
  told.outlook->due = date_from_civil(2032, 7, 9);
  told.outlook->due_row = 1;
  CHECK(limits_reason(told, today).toStdString() ==
        "Comes due by the owner's chance in Jul 2032: Torque under minimum. Torque under minimum: "
        "found at 24 N·m on 2029-05-12, under its minimum. What is not coating leans on how such "
        "parts usually go: look by interval too. A projection is an estimate. It is not a "
        "certificate.");
  told.outlook->due = today;
  CHECK(limits_reason(told, today).startsWith("Due now by the owner's chance: Torque"));
}
