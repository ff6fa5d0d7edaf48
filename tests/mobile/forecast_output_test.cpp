#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>
#include <nlohmann/json.hpp>
#include <sstream>

#include "core/forecast/decisions/part_outlook.h"
#include "mobile/commands/forecast_output.h"

using namespace kneerail;
using namespace kneerail::commands;

namespace {

constexpr double inf = std::numeric_limits<double>::infinity();

forecast::LimitForecast answered(int part, forecast::Limit limit, double median, double p_5y) {
  forecast::LimitForecast row;
  row.part = part;
  row.limit = limit;
  row.answered = true;
  row.years = {median - 3, median - 2, median - 1, median, median + 1, median + 2, inf};
  row.p_by = {0, 0.1, 0.2, p_5y};
  row.readings_used = 3;
  row.words = "own readings and zone";
  row.sentence = "Life, with a comma and a \"quote\".";
  return row;
}

struct Shown {
  forecast::Portfolio portfolio;
  forecast::CoatingForecast forecast;
  Places places;

  Shown() {
    for (const char* id : {"c1", "c2", "c3", "c4"}) {
      forecast::Part part;
      part.id = id;
      part.site = part.id == "c4" ? "s2" : "s1";
      portfolio.parts.push_back(part);
    }
    using forecast::Limit;
    forecast.limits = {answered(0, Limit::coating_exhausted, 9, 0.25),
                       answered(0, Limit::coating_first_maintenance, 4, 0.75),
                       answered(1, Limit::coating_exhausted, 4, 0.75),
                       answered(2, Limit::coating_exhausted, 3.5, 0.75),
                       answered(3, Limit::coating_exhausted, 1.5, 0.995)};
    forecast::LimitForecast not_answered;
    not_answered.part = 3;
    not_answered.limit = Limit::coating_first_maintenance;
    not_answered.words = "no first-maintenance limit is set";
    forecast.limits.push_back(not_answered);
    places.sites = {{"s1", "North"}, {"s2", "South"}};
    places.parts["c1"] = {"North", "Wall", "12", "fitting", 16.5};
    portfolio.as_of = date_from_civil(2026, 6, 30);
  }
  ForecastView view(std::string site = {}) const {
    return ForecastView{portfolio, forecast, places, std::move(site)};
  }
};

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

}  // namespace

TEST_CASE("identifiers of things with a name are shown by their name", "[mobile]") {
  Places places;
  places.names["01890a5d-ac96-774b-bcce-b302099a8057"] = "Mole head";
  CHECK(with_names("zone 01890a5d-ac96-774b-bcce-b302099a8057: faster", places) ==
        "zone Mole head: faster");
  const std::string unknown = "zone 01890a5d-ac96-774b-bcce-b302099a8058: faster";
  CHECK(with_names(unknown, places) == unknown);
  CHECK(with_names("zone z4", places) == "zone z4");
}

TEST_CASE("a forecast in pieces is written as the whole one, byte for byte", "[mobile]") {
  Shown shown;
  shown.forecast.left_out = {{"r1", "c1", "void"}, {"r9", "c3", "held"}};
  const ForecastView whole = shown.view();
  const auto read = forecast::limits_read(shown.forecast.limits);
  const ForecastPieces pieces = [&](const auto& each) -> Result<> {
    for (std::size_t i = 0; i < shown.portfolio.parts.size(); ++i) {
      forecast::CoatingForecast own;
      for (const auto& row : shown.forecast.limits)
        if (row.part == static_cast<std::int32_t>(i)) own.limits.push_back(row);
      for (const auto& left : shown.forecast.left_out)
        if (left.part == shown.portfolio.parts[i].id) own.left_out.push_back(left);
      ForecastView piece{shown.portfolio, own, shown.places, {}};
      piece.limits_read = &read;
      each(piece);
    }
    return Done{};
  };
  std::ostringstream csv, csv_whole, json, json_whole;
  REQUIRE(print_csv(whole, pieces, csv));
  print_csv(whole, csv_whole);
  CHECK(csv.str() == csv_whole.str());
  REQUIRE(print_json(whole, pieces, json));
  print_json(whole, json_whole);
  CHECK(json.str() == json_whole.str());
  const auto parsed = nlohmann::json::parse(json.str());
  CHECK(parsed.dump(1) + "\n" == json.str());
  CHECK(parsed["left_out"].size() == 2);
  SECTION("what ends in between is told") {
    std::ostringstream out;
    const auto ended = print_csv(
        whole, [](const auto&) -> Result<> { return fail(Fault::corrupt, "damaged"); }, out);
    REQUIRE_FALSE(ended);
    CHECK(ended.error().fault == Fault::corrupt);
  }
}

TEST_CASE("the worst come first: by chance, then median, then identifier", "[mobile]") {
  Shown shown;
  const auto order = worst_first(shown.view());
  const std::vector<std::size_t> wanted = {4, 3, 2, 0};
  CHECK(order == wanted);
  SECTION("equal in both, the identifier decides") {
    shown.forecast.limits[3].years[3] = 4;
    const std::vector<std::size_t> by_id = {4, 2, 3, 0};
    CHECK(worst_first(shown.view()) == by_id);
  }
  SECTION("a site limits what is shown") {
    const std::vector<std::size_t> south = {4};
    CHECK(worst_first(shown.view("s2")) == south);
  }
}

TEST_CASE("the forecast as CSV has a row a limit and empty figures where it has no answer",
          "[mobile]") {
  const Shown shown;
  std::ostringstream out;
  print_csv(shown.view(), out);
  const auto lines = lines_of(out.str());
  REQUIRE(lines.size() == 7);
  CHECK(lines[0].starts_with("component_id,limit,p05,p10,p25,p50,p75,p90,p95,p_now"));
  CHECK(
      lines[1].starts_with("c1,coating_exhausted,6.00000,7.00000,8.00000,9.00000,10.00000,"
                           "11.00000,inf,0.000000,0.100000,0.200000,0.250000,3,"));
  CHECK(lines[1].find("\"Life, with a comma and a \"\"quote\"\".\"") != std::string::npos);
  CHECK(lines[6] ==
        "c4,coating_first_maintenance,,,,,,,,,,,,,,,,,,,,,,,,,,"
        "no first-maintenance limit is set,,");
  const auto commas = [](const std::string& line) {
    return std::count(line.begin(), line.end(), ',');
  };
  CHECK(commas(lines[0]) == commas(lines[6]));
}

TEST_CASE("the row that governs a part is marked, and the day it comes due stands at its reason",
          "[mobile]") {
  Shown shown;
  shown.portfolio.limits.push_back(
      {.site = "s1", .zinc_gone_um = {}, .replace_grade = {}, .chance = {}});
  shown.portfolio.limits.back().chance[2] = 0.1;
  shown.portfolio.parts[0].consequence = 2;
  std::ostringstream out;
  print_csv(shown.view(), out);
  const auto lines = lines_of(out.str());
  CHECK(lines[1].find(",,own readings") != std::string::npos);
  // 10 % is reached within a year, the chance of that date.
  CHECK(lines[2].find(",1,2027-06-30,own readings") != std::string::npos);
  CHECK(lines[3].find(",1,,own readings") != std::string::npos);  // no chance is set for the part
  std::ostringstream json;
  print_json(shown.view(), json);
  const auto rows = nlohmann::json::parse(json.str()).at("limits");
  CHECK_FALSE(rows[0].contains("governing"));
  CHECK(rows[1].at("governing") == true);
  CHECK(rows[1].at("due_date") == "2027-06-30");
  CHECK_FALSE(rows[2].contains("due_date"));
}

TEST_CASE("what goes first is said before the coatings, by what holds people", "[mobile]") {
  Shown shown;
  auto screws = answered(1, forecast::Limit::torque_minimum, 0, 0.4);
  screws.has_years = false;
  shown.forecast.limits.insert(shown.forecast.limits.begin() + 3, screws);
  std::ostringstream out;
  print_text(shown.view(), out);
  const std::string text = out.str();
  const auto first = text.find("What goes first: 1 of 1 part");
  REQUIRE(first != std::string::npos);
  CHECK(first < text.find("Coatings, worst first"));
  CHECK(text.find("40 % for set screws; governed by coating gone") != std::string::npos);
}

TEST_CASE("what to measure first is said where it is asked, by site", "[mobile]") {
  Shown shown;
  for (auto& row : shown.forecast.limits) row.own_share = 0.5;
  ForecastView view = shown.view();
  std::ostringstream silent;
  print_text(view, silent);
  CHECK(silent.str().find("Measure first") == std::string::npos);
  view.years_between_visits = 2.5;
  std::ostringstream out;
  print_text(view, out);
  const std::string text = out.str();
  CHECK(text.find("Measure first at North, where the time does not do for all: 1 of 1 part") !=
        std::string::npos);
  CHECK(text.find("75 % to reach a coating limit in two visits, and 50 % of its rate still open") !=
        std::string::npos);
}

TEST_CASE("the forecast as JSON reads back, the unbounded as text", "[mobile]") {
  const Shown shown;
  std::ostringstream out;
  print_json(shown.view(), out);
  const auto read = nlohmann::json::parse(out.str());
  CHECK(read["as_of"] == "2026-06-30");
  REQUIRE(read["limits"].size() == 6);
  CHECK(read["limits"][0]["p50"] == 9.0);
  CHECK(read["limits"][0]["p95"] == "inf");
  CHECK(read["limits"][5]["answered"] == false);
  CHECK_FALSE(read["limits"][5].contains("p50"));
}

TEST_CASE("the forecast in words says where, how long, how sure, and the cautions", "[mobile]") {
  Shown shown;
  shown.forecast.left_out = {{"r1", "c1", "not_zinc"}, {"r2", "c1", "not_zinc"}};
  shown.forecast.sessions = {
      {"s1", "g1", date_from_civil(2022, 5, 1), 7, 0, "gauge g1 drifting", ""},
      {"s2", "g2", date_from_civil(2022, 5, 1), 0, 0, "", ""}};
  std::ostringstream out;
  print_text(shown.view(), out);
  const std::string text = out.str();
  INFO(text);
  CHECK(text.find("Forecast as of 2026-06-30: 2 sites, 4 parts") == 0);
  CHECK(text.find("North · Wall · post 12 at 16.5 m · fitting") != std::string::npos);
  CHECK(text.find("gone within 5 years: over 99 %") != std::string::npos);
  CHECK(text.find("North: gauge g1 drifting") != std::string::npos);
  CHECK(text.find("not_zinc: 2") != std::string::npos);
  CHECK(text.find("walls of tubes.") != std::string::npos);
  CHECK(text.find("Walls of tubes, worst first") == std::string::npos);  // none is answered
  CHECK(text.find("it does not certify") != std::string::npos);
  const std::size_t first = text.find("  1. c4");
  const std::size_t second = text.find("  2. c3");
  CHECK(first < second);
  CHECK(second != std::string::npos);
}

TEST_CASE("a wall has years but no rate and thickness of a coating", "[mobile]") {
  Shown shown;
  forecast::LimitForecast wall = answered(0, forecast::Limit::wall_limit, 30, 0.125);
  wall.sentence = "Wall down to 2.56 mm in about 30 years.";
  shown.forecast.limits.insert(shown.forecast.limits.begin() + 2, wall);
  std::ostringstream out;
  print_csv(shown.view(), out);
  CHECK(lines_of(out.str())[3] ==
        "c1,wall_limit,27.00000,28.00000,29.00000,30.00000,31.00000,32.00000,inf,0.000000,"
        "0.100000,0.200000,0.125000,3,0.0000,,,,,,,,,,,,,own readings and zone,"
        "Wall down to 2.56 mm in about 30 years.,");
  std::ostringstream text;
  print_text(shown.view(), text);
  CHECK(text.str().find("Walls of tubes, worst first: 1 of 1 tube") != std::string::npos);
  CHECK(text.str().find("Wall down to 2.56 mm in about 30 years.") != std::string::npos);
  std::ostringstream json;
  print_json(shown.view(), json);
  const auto row = nlohmann::json::parse(json.str())["limits"][2];
  CHECK(row["p50"] == 30);
  CHECK_FALSE(row.contains("start_um"));
}

TEST_CASE("a grade stands in its own columns, and its worst come first", "[mobile]") {
  Shown shown;
  const auto grade = [](int part, forecast::Limit limit, double p_5y) {
    forecast::LimitForecast row = answered(part, limit, 9, p_5y);
    row.grades_now = {0.125, 0.25, 0.5, 0.0625, 0.0625};
    row.sentence = "Seen 3 on 2025-05-22; likely 3 (50 %), 2 (25 %).";
    return row;
  };
  auto& limits = shown.forecast.limits;
  limits.insert(limits.begin() + 2, {grade(0, forecast::Limit::grade_4, 0.5),
                                     grade(0, forecast::Limit::grade_5, 0.25)});
  limits.insert(limits.begin() + 5, grade(1, forecast::Limit::grade_5, 0.75));
  CHECK(worst_grades_first(shown.view()) == std::vector<std::size_t>{5, 2});
  std::ostringstream out;
  print_csv(shown.view(), out);
  const auto lines = lines_of(out.str());
  CHECK(lines[3] ==
        "c1,grade_4,6.00000,7.00000,8.00000,9.00000,10.00000,11.00000,inf,0.000000,0.100000,"
        "0.200000,0.500000,3,0.0000,,,,,,0.125000,0.250000,0.500000,0.062500,0.062500,,,"
        "own readings and zone,\"Seen 3 on 2025-05-22; likely 3 (50 %), 2 (25 %).\",");
  std::ostringstream json;
  print_json(shown.view(), json);
  const auto row = nlohmann::json::parse(json.str())["limits"][2];
  CHECK(row["grades_now"][2] == 0.5);
  CHECK(row["p50"] == 9.0);
  CHECK_FALSE(row.contains("start_um"));
  std::ostringstream text;
  print_text(shown.view(), text);
  CHECK(text.str().find("Condition grades, worst first: 2 of 2 parts") != std::string::npos);
}

TEST_CASE("inspectors' habits are told only where they are asked for", "[mobile]") {
  const Shown shown;
  ForecastView view = shown.view();
  std::ostringstream quiet;
  print_text(view, quiet);
  CHECK(quiet.str().find("nspector") == std::string::npos);
  view.inspectors = {{"I1", 200, 0.04, 0.04, ""},
                     {"I2", 300, 0.16, 0.04, "I2 grades high: 1 in 6"}};
  std::ostringstream asked;
  print_text(view, asked);
  CHECK(asked.str().find("I1 grades like the others (200 fresh grades)") != std::string::npos);
  CHECK(asked.str().find("I2 grades high: 1 in 6 (300 fresh grades)") != std::string::npos);
  std::ostringstream json;
  print_json(view, json);
  CHECK(nlohmann::json::parse(json.str())["inspectors"][1]["words"] == "I2 grades high: 1 in 6");
}

TEST_CASE("reports issued earlier are judged where the track record is asked for", "[mobile]") {
  const Shown shown;
  forecast::TrackRecord record;
  record.site = "s1";
  record.horizon = "all";
  record.issued = date_from_civil(2024, 5, 10);
  record.readings = 214;
  record.sessions = 8;
  record.inside_50 = 0.5;
  record.inside_80 = 0.79;
  record.inside_90 = 0.9;
  record.words = "Of 214 readings since the report of 2024-05-10, 79 % fell inside.";
  forecast::TrackRecord stratum = record;
  stratum.stratum = "1 reading before";
  const auto text = [&](bool asked, std::vector<forecast::TrackRecord> reports) {
    ForecastView view = shown.view();
    view.track_record = asked;
    view.reports = std::move(reports);
    std::ostringstream out;
    print_text(view, out);
    return out.str();
  };
  CHECK(text(false, {}).find("Reports issued earlier") == std::string::npos);
  CHECK(text(true, {}).find("  No report with coatings read since is on record") !=
        std::string::npos);
  const std::string said = text(true, {record, stratum});
  CHECK(said.find("  North, report of 2024-05-10, horizon all: 214 readings of 8 sessions; inside "
                  "the 50, 80 and 90 % band: 50 %, 79 %, 90 %\n    Of 214 readings since") !=
        std::string::npos);
  CHECK(said.find("  North, report of 2024-05-10, 1 reading before: 214 readings") !=
        std::string::npos);
  const auto first = said.find(record.words);
  REQUIRE(first != std::string::npos);
  CHECK(said.find(record.words, first + 1) == std::string::npos);  // once a report
  ForecastView view = shown.view();
  view.reports = {record};
  std::ostringstream json;
  print_json(view, json);
  const auto read = nlohmann::json::parse(json.str());
  CHECK(read["reports"][0]["issued"] == "2024-05-10");
  CHECK(read["reports"][0]["inside_80"] == 0.79);
}
