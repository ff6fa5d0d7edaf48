// What the commands that decide print: the sentence for each situation, from figures made by hand.

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>

#include "mobile/commands/order_output.h"
#include "tests/mobile/process.h"

using namespace kneerail;
using namespace kneerail::commands;

namespace {

bool has(const std::string& text, const std::string& wanted) {
  return text.find(wanted) != std::string::npos;
}

/// The text as one line: where lines break is no matter here.
std::string flat(const std::string& text) {
  std::string one;
  for (const char letter : text) {
    const bool space = letter == ' ' || letter == '\n';
    if (!space || (!one.empty() && one.back() != ' ')) one += space ? ' ' : letter;
  }
  return one;
}

template <class View>
std::string printed(void (*print)(const View&, std::ostream&), const View& view) {
  std::ostringstream out;
  print(view, out);
  return out.str();
}

/// The owner's figures of an invented quay, without any reckoning behind them.
DecisionInput quay() {
  DecisionInput input;
  input.read.portfolio.as_of = date_from_civil(2026, 6, 30);
  forecast::Part part;
  part.id = "p1";
  part.site = "s1";
  part.kind = forecast::PartKind::post_tube;
  input.read.portfolio.parts.push_back(part);
  input.read.places.sites = {{"s1", "Ferry Slip"}};
  input.read.places.parts = {{"p1", {"Ferry Slip", "Slip wall", "34", "fitting, cross", 59.4}}};
  input.figures.currency = "EUR";
  input.figures.depots = {{"d1", "Fish Quay"}};
  input.figures.types["t1"].name = "Tee 48";
  input.figures.types["t1"].kind_and_size = "three-way tee, 48.3 mm";
  input.graded = input.walls_read = true;
  return input;
}

forecast::OrderLine line_of(std::string type, double expected, int past, int seen) {
  forecast::OrderLine line;
  line.type = std::move(type);
  line.parts = 40;
  line.past = past;
  line.seen_past = seen;
  line.years = {{expected / 2, 0, 1, 2}, {expected / 2, 1, 1, 1}};
  line.all = {expected, 1, 3, 5};
  return line;
}

}  // namespace

TEST_CASE("an order list says how many, how sure, and what is past already", "[mobile]") {
  DecisionInput input = quay();
  forecast::OrderList list;
  list.lines = {line_of("t1", 3.2, 2, 1), line_of({}, 1.1, 1, 0), line_of("t2", 0.04, 0, 0)};
  list.parts = 120;
  list.past = 3;
  list.all = {4.3, 2, 4, 7};
  list.years = {{2.2, 1, 2, 4}, {2.1, 1, 2, 4}};
  const std::string text = printed(print_order, OrderView{input, list});
  CHECK(has(text, "Order list as of 2026-06-30: 1 site, 120 parts, 2 years."));
  CHECK(has(flat(text),
            "1. Tee 48 (three-way tee, 48.3 mm), 40 parts "
            "In all 3.2 (80 %: 1 to 5); 2 are to be replaced now, 1 of them seen at the grade to "
            "replace at. By year: 2026-27 1.6 (80 %: 0 to 2), 2027-28 1.6 (80 %: 1). "));
  CHECK(has(text,
            "2. post tube, 40 parts\n     In all 1.1 (80 %: 1 to 5); 1 is to be replaced now."));
  CHECK(has(text, "Under 0.1 of each of these: t2."));
  CHECK(has(text, "All types together: 4.3 (80 %: 2 to 7); 3 are to be replaced now."));
  CHECK_FALSE(has(text, "Nobody"));
  input.graded = input.walls_read = false;
  list.not_answered = 1;
  list.lines.push_back({});
  list.lines.back().type = "t3";
  list.lines.back().not_answered = 1;
  list.lines.back().years.resize(2);
  list.lines[2].may_be_past = list.may_be_past = 8.2;
  list.bare = 2;
  list.all.expected = 169.6;
  list.by_grade_alone["no loss rate for this metal"] = 46;
  const std::string less = printed(print_order, OrderView{input, list});
  CHECK(
      has(flat(less),
          "1 part has neither a wall nor a grade that can be reckoned, and no place here: t3 1."));
  CHECK_FALSE(has(less, "Under 0.1 of each of these"));
  CHECK(has(less, "under 0.1 (80 %: 1 to 5); besides, about 8.2 may be past already, unseen."));
  CHECK(has(less, "What may be past already, unseen, is in no year: look at those parts."));
  CHECK(has(less, "2 tubes of bare steel count together by zone"));
  CHECK(has(less, "All types together: 170 (80 %: 2 to 7)"));
  CHECK(has(less, "46 tubes count by the grade alone (no loss rate for this metal)."));
  CHECK(has(less, "Nobody graded a part: grades replace nothing here."));
  CHECK(has(less, "Nobody read a wall: walls go by their zinc and their zone."));
  const auto rows = test::lines_of(printed(print_order_csv, OrderView{input, list}));
  REQUIRE(rows.size() == 13);  // a head, and of four lines two years and the sum
  CHECK(rows[12].ends_with(",1,2026-06-30,2028-06-29,,,,"));
  CHECK(rows[1] ==
        "t1,Tee 48,\"three-way tee, 48.3 mm\",post_tube,40,2,1,0.0000,0,0,2026-06-30,2027-06-30,"
        "1.6000,0,1,2");
  const auto json = nlohmann::json::parse(printed(print_order_json, OrderView{input, list}));
  CHECK(json["lines"][0]["all"]["p90"] == 5);
  CHECK(json["years"][1]["from"] == "2027-06-30");
}

TEST_CASE("spares say what to hold and order, or what is missing", "[mobile]") {
  const DecisionInput input = quay();
  forecast::SpareLine held;
  held.depot = "d1";
  held.type = "t1";
  held.parts = 40;
  held.means = {2};
  held.expected = 2;
  held.hold = 6;
  held.enough = 0.975;
  held.shelf = 1;
  held.on_order = 2;
  held.order = 3;
  held.words =
      "2.0 expected in the 21 days until one comes; 6 are enough with 98 %, the owner's "
      "chance is 95 %";
  forecast::SpareLine none = held;
  none.type = "t2";
  none.hold = none.order = 0;
  none.shelf.reset();
  forecast::SpareLine missing;
  missing.type = "t3";
  missing.words = "no lead time is set";
  forecast::SpareLine unsure = none;
  unsure.type = "t4";
  unsure.not_answered = 3;
  unsure.words = "3 of 40 parts are not reckoned";
  const std::vector<forecast::SpareLine> lines{held, none, missing, unsure};
  const std::string text = printed(print_spares, SparesView{input, lines});
  CHECK(has(text,
            "\nFish Quay\n  Tee 48 (three-way tee, 48.3 mm): hold 6, 1 on the shelf, 2 on "
            "order, order 3\n     2.0 expected in the 21 days"));
  CHECK(has(text, "None to hold of these: t2."));
  CHECK(has(text, "\nSites without a depot\n  t3: no lead time is set.\n"));
  CHECK(has(text, "  t4: hold 0, 2 on order, order none\n     3 of 40 parts are not reckoned."));
  CHECK(has(text, "Shelves never counted, and taken for empty: 3 of 4."));
  CHECK(has(printed(print_spares, SparesView{input, {}}), "No part says of which type it is."));
  const auto rows = test::lines_of(printed(print_spares_csv, SparesView{input, lines}));
  REQUIRE(rows.size() == 5);
  CHECK(test::cells_of(rows[1])[11] == "6");
  CHECK(test::cells_of(rows[3])[11].empty());
  const auto json = nlohmann::json::parse(printed(print_spares_json, SparesView{input, lines}));
  CHECK(json["spares"][0]["order"] == 3);
  CHECK_FALSE(json["spares"][2].contains("hold"));
}

TEST_CASE("a cost is said with its band, its shares and what it is without", "[mobile]") {
  const DecisionInput input = quay();
  SiteCost site;
  site.cost.site = "s1";
  site.cost.years = 30;
  site.cost.parts = 40;
  site.cost.replacements = 12.4;
  site.cost.mean.parts = 1234;
  site.cost.mean.visits = 9088;
  site.cost.p10 = 9'876;
  site.cost.p50 = 10'321;
  site.cost.p90 = 11'111;
  site.cost.words = "over 30 years, at 3.0 % a year; without labour";
  const std::string text = printed(print_costs, CostView{input, {site}, {}});
  CHECK(has(text, "\nFerry Slip, 40 parts\n"));
  CHECK(has(flat(text),
            "As it stands: EUR 10,300 (replacements 1,230, 80 %: 788 to 2,020; visits as often as "
            "now) over 30 years, at 3.0 % a year; without labour."));
  CHECK(has(text, "Of it, in EUR: parts 1,230, visits 9,090. About 12 replacements."));
  CHECK_FALSE(has(text, "All put up new"));
  site.new_as_now = site.new_other = site.cost;
  site.new_other->p50 = 8'000;
  site.new_other->mean.visits = 0;
  site.new_other->as_now = 14;
  forecast::FinishLife life;
  life.zone = "z1";
  life.parts = 10;
  life.as_now = {55, {8, 9, 12, 16, 20, 27, 30}, {}};
  life.other = {140, {20, 28, 40, 47, 60, 77, 90}, {}};
  site.lives = {life};
  const std::string other = printed(print_costs, CostView{input, {site}, "140 um of zinc"});
  CHECK(has(flat(other), "in 140 um of zinc: EUR 8,000 (80 %: 9,880 to 11,100), beside"));
  CHECK(has(flat(other), "14 parts are as now, having no zinc that is reckoned"));
  CHECK(has(flat(other),
            "post tube in z1, 10 parts: bare steel in about 47 years (80 %: 28 to 77 years) with "
            "140 um, in about 16 years (80 %: 9 to 27 years) with the 55 um of now."));
  CHECK(has(other, "What another finish does to the grades is not known"));
  CHECK(test::lines_of(printed(print_costs_csv, CostView{input, {site}, "140"})).size() == 4);
  const auto json =
      nlohmann::json::parse(printed(print_costs_json, CostView{input, {site}, "140"}));
  CHECK(json["sites"][0]["all_new_other_finish"]["p50"] == 8000);
}

TEST_CASE("a next visit names its day, its reason and the part by its place", "[mobile]") {
  const DecisionInput input = quay();
  forecast::NextVisit visit;
  visit.site = "s1";
  visit.agreed = date_from_civil(2027, 3, 1);
  visit.day = date_from_civil(2026, 6, 30);
  visit.brought_forward = true;
  visit.proposals = {{*visit.day, forecast::VisitReason::due_part, 0, "p1 is past"},
                     {date_from_civil(2027, 4, 30), forecast::VisitReason::longest_interval, -1,
                      "the owner's longest interval ends"}};
  visit.words = "Brought forward from Mar 2027: p1 is past.";
  forecast::NextVisit nothing;
  nothing.site = "s2";
  nothing.words = "Nothing asks for a visit.";
  nothing.not_said = {"no chance is set"};
  const std::vector<forecast::NextVisit> visits{visit, nothing};
  const std::string text = printed(print_visits, VisitsView{input, visits});
  CHECK(has(text,
            "\nFerry Slip: 2026-06-30\n  Brought forward from Mar 2027: Ferry Slip · Slip "
            "wall · post 34 at 59.4 m"));
  CHECK(has(text, "     2027-04-30: the owner's longest interval ends.\n"));
  CHECK(has(text, "\ns2: no day\n  Nothing asks for a visit.\n     (no chance is set)\n"));
  const auto rows = test::lines_of(printed(print_visits_csv, VisitsView{input, visits}));
  REQUIRE(rows.size() == 3);
  CHECK(rows[1] ==
        "s1,Ferry Slip,2026-06-30,2027-03-01,1,2026-06-30,due_part,p1,Brought forward "
        "from Mar 2027: p1 is past.,");
  CHECK(rows[2].ends_with(",Nothing asks for a visit.,no chance is set"));
  const auto json = nlohmann::json::parse(printed(print_visits_json, VisitsView{input, visits}));
  CHECK(json["visits"][0]["proposals"][0]["component_id"] == "p1");
  CHECK_FALSE(json["visits"][1].contains("day"));
}
