// Reports issued earlier against what was read since.

#include "core/forecast/issued_reports.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <string>
#include <tuple>

#include "tests/support/made_portfolio.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

Portfolio reported(std::uint64_t seed, std::vector<IssuedReport> reports) {
  Made made = made_portfolio({.seed = seed, .sites = 2, .days = 8});
  made.portfolio.reports = std::move(reports);
  return std::move(made.portfolio);
}

/// The day of the n-th visit of a site.
Date visit_day(const Portfolio& portfolio, const std::string& site, std::size_t n) {
  std::vector<Date> days;
  for (const Visit& visit : portfolio.visits)
    if (visit.site == site) days.push_back(visit.day);
  std::sort(days.begin(), days.end());
  return days.at(n);
}

std::vector<TrackRecord> judged(const Portfolio& portfolio, int threads = 1) {
  auto rows = judge_issued_reports(portfolio, {.threads = threads});
  INFO((rows ? std::string() : rows.error().message));
  REQUIRE(rows);
  CHECK(rows->notes.empty());
  return std::move(rows->rows);
}

int counted(const std::vector<TrackRecord>& rows, const std::string& site, Date issued,
            const std::string& horizon, const std::string& stratum) {
  for (const TrackRecord& row : rows)
    if (row.site == site && row.issued == issued && row.horizon == horizon &&
        row.stratum == stratum)
      return row.readings;
  return 0;
}

}  // namespace

TEST_CASE("a report is judged by what was read at its site since", "[core]") {
  Portfolio portfolio = reported(5, {});
  const std::string site = portfolio.parts.front().site;
  const Date day = visit_day(portfolio, site, 4);
  portfolio.reports = {{site, day}};
  const auto rows = judged(portfolio);
  REQUIRE_FALSE(rows.empty());
  const int all = counted(rows, site, day, "all", "all");
  CHECK(all > 50);
  int by_horizon = 0;
  int by_stratum = 0;
  for (const TrackRecord& row : rows) {
    CHECK(row.site == site);
    CHECK(row.issued == day);
    CHECK((row.horizon == "all" || row.stratum == "all"));
    if (row.horizon != "all") by_horizon += row.readings;
    if (row.stratum != "all") by_stratum += row.readings;
    CHECK(row.inside_50 <= row.inside_80);
    CHECK(row.inside_80 <= row.inside_90);
    CHECK(row.words.find("readings since the report of " + to_text(day)) != std::string::npos);
    CHECK(row.words.find("This is evidence, not proof: readings are nearer than dates.") !=
          std::string::npos);
  }
  CHECK(by_horizon == all);
  CHECK(by_stratum == all);
}

TEST_CASE("the bands of reports hold in a world the model nearly describes", "[core][property]") {
  int readings = 0;
  double inside = 0;
  for (const std::uint64_t seed : test::seeds(1, 4)) {
    INFO(test::reproduce(seed));
    Portfolio portfolio = reported(seed, {});
    const std::string site = portfolio.parts.front().site;
    portfolio.reports = {{site, visit_day(portfolio, site, 4)}};
    for (const TrackRecord& row : judged(portfolio)) {
      if (row.horizon != "all" || row.stratum != "all") continue;
      readings += row.readings;
      inside += row.inside_80 * row.readings;
    }
  }
  REQUIRE(readings > 200);
  CHECK(inside / readings > 0.68);
  CHECK(inside / readings < 0.93);
}

TEST_CASE("what was read by the day of a report does not judge it", "[core]") {
  Portfolio portfolio = reported(6, {});
  const std::string site = portfolio.parts.front().site;
  const Date last = visit_day(portfolio, site, 7);
  portfolio.reports = {{site, last}};
  CHECK(judged(portfolio).empty());
  portfolio.reports = {{site, Date{last.days - 1}}};
  CHECK_FALSE(judged(portfolio).empty());
  portfolio.reports = {{site, portfolio.as_of}};
  CHECK(judged(portfolio).empty());
  portfolio.reports = {};
  CHECK(judged(portfolio).empty());
}

TEST_CASE("a reading altered since changes the judgement, not what was forecast before", "[core]") {
  Portfolio portfolio = reported(7, {});
  const std::string site = portfolio.parts.front().site;
  const Date day = visit_day(portfolio, site, 5);
  portfolio.reports = {{site, day}};
  const auto inside = [&] {
    for (const TrackRecord& row : judged(portfolio))
      if (row.horizon == "all" && row.stratum == "all") return row.inside_90;
    return -1.0;
  };
  const double before = inside();
  CHECK(before > 0.6);
  for (Reading& reading : portfolio.readings) {
    const Visit& visit = portfolio.visits[static_cast<std::size_t>(reading.visit)];
    if (visit.site == site && day < visit.day) reading.value += 60;
  }
  CHECK(inside() < before - 0.2);
}

TEST_CASE("reports come by site and day, the same with any threads", "[core][property]") {
  Portfolio portfolio = reported(8, {});
  std::map<std::string, int> sites;
  for (const Part& part : portfolio.parts) sites[part.site] = 1;
  REQUIRE(sites.size() == 2);
  for (const auto& [site, one] : sites) {
    portfolio.reports.push_back({site, visit_day(portfolio, site, 5)});
    portfolio.reports.push_back({site, visit_day(portfolio, site, 3)});
  }
  const auto rows = judged(portfolio);
  CHECK(std::is_sorted(rows.begin(), rows.end(), [](const auto& a, const auto& b) {
    return std::tie(a.site, *a.issued) < std::tie(b.site, *b.issued);
  }));
  const auto again = judged(portfolio, 3);
  REQUIRE(again.size() == rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CHECK(again[i].words == rows[i].words);
    CHECK(again[i].inside_50 == rows[i].inside_50);
  }
}

TEST_CASE("of many report days the latest are judged, and the others are said", "[core]") {
  std::vector<IssuedReport> reports;
  const Date first = date_from_text("2016-01-01").value();
  constexpr int days = 20;
  const Portfolio portfolio = reported(5, {});
  for (int day = 0; day < days; ++day)
    reports.push_back({portfolio.parts[0].site, Date{first.days + 30 * day}});
  const auto judged_all = judge_issued_reports(reported(5, reports));
  REQUIRE(judged_all);
  for (const TrackRecord& row : judged_all->rows)
    CHECK(row.issued >= reports[days - report_days_judged].day);
  REQUIRE(judged_all->notes.size() == 1);
  CHECK(judged_all->notes[0].find("8 of them") != std::string::npos);
}
