// The commands that decide, run as a person runs them on a small imported portfolio.

#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "mobile/commands/figures_file.h"
#include "tests/mobile/process.h"
#include "tests/mobile/small_portfolio.h"

using namespace kneerail::test;

namespace {

bool has(const std::string& text, const std::string& wanted) {
  return text.find(wanted) != std::string::npos;
}

struct Imported {
  Folder folder;
  std::string data = folder / "register";

  Imported() {
    write_small_portfolio(folder, "in");
    REQUIRE(run_kneerail({"import", folder / "in", "--data", data}).code == 0);
  }

  [[nodiscard]] Ended run(std::vector<std::string> words) const {
    words.insert(words.begin() + 1, {"--data", data, "--as-of", "2026-06-30"});
    return run_kneerail(words);
  }

  [[nodiscard]] std::string figures(const std::string& rows) const {
    const std::string file = folder / "figures.csv";
    std::ofstream(file, std::ios::binary) << "figure,of,value,unit\n" << rows;
    return file;
  }
};

}  // namespace

TEST_CASE("what decides is answered from a small register, and says what is missing", "[mobile]") {
  const Imported small;
  const Ended visits = small.run({"visits"});
  INFO(visits.out << visits.err);
  CHECK(visits.code == 0);
  CHECK(has(visits.out, "(no longest interval is set)"));
  CHECK(has(visits.out, "(no chance is set)"));
  const Ended order = small.run({"order", "--years", "3", "--json", "-"});
  REQUIRE(order.code == 0);
  const auto list = nlohmann::json::parse(order.out);
  CHECK(list["years"].size() == 3);
  const Ended spares = small.run({"spares"});
  CHECK(spares.code == 0);
  CHECK(has(spares.out, "no lead time is set"));
  const Ended cost = small.run({"cost", "--what-if", "iso1461"});
  INFO(cost.out << cost.err);
  CHECK(cost.code == 0);
  CHECK(has(cost.out, "As it stands: no cost that is known over 30 years; without the price"));
  CHECK(has(cost.out, "bare steel"));
  CHECK_FALSE(has(cost.out + cost.err, "\r"));
}

TEST_CASE("figures of a file fill what no record says", "[mobile]") {
  const Imported small;
  const std::string file = small.figures("discount_rate,,3,%\nspare_chance,,95,%\n");
  const Ended cost = small.run({"cost", "--figures", file});
  INFO(cost.out << cost.err);
  CHECK(cost.code == 0);
  CHECK(has(cost.out, "at 3.0 % a year; without the price"));
  CHECK_FALSE(has(cost.out, "discounting"));
  // The same figure again: the first stands.
  const Ended twice =
      small.run({"cost", "--figures", small.figures("discount_rate,,3,%\ndiscount_rate,,9,%\n")});
  CHECK(has(twice.err, "Line 3: discount_rate of a site is there already; this one is not used."));
  CHECK(has(twice.out, "at 3.0 % a year"));
}

TEST_CASE("a figure that cannot be right is refused with its line", "[mobile]") {
  const Imported small;
  struct Case {
    const char* rows;
    const char* said;
  };
  const Case cases[] = {
      {"discount_rate,,x,%\n", "line 2: 'x' is no number from 0 up."},
      {"discount_rate,,-1,%\n", "line 2: '-1' is no number from 0 up."},
      {"discount_rate,,3,years\n", "line 2: the unit of discount_rate is %, not 'years'."},
      {"hope,,3,%\n", "line 2: 'hope' is no figure. There are: on_order, price,"},
      {"price,Nothing,3,\n", "line 2: there is no component type 'Nothing' in the register."},
      {"spare_chance,,950,%\n", "line 2: '950' is over 100 %."},
      {"on_order,Nothing,4.7,pieces\n",
       "line 2: '4.7' is no whole number of pieces up to 1,000,000."},
      {"on_order,Nothing,1e30,pieces\n",
       "line 2: '1e30' is no whole number of pieces up to 1,000,000."},
      {"discount_rate,Atlantis,3,%\n", "line 2: there is no site 'Atlantis' in the register."},
      {"discount_rate,3,%\n", "line 2: it has not four fields."},
      {"visit_cost,,3,EUR\n",
       "line 2: the unit of visit_cost is the organisation's currency, which no record names"}};
  for (const Case& one : cases) {
    const Ended ended = small.run({"cost", "--figures", small.figures(one.rows)});
    INFO(one.rows << ended.err);
    CHECK(ended.code == 2);
    CHECK(has(ended.err, one.said));
    CHECK(has(ended.err, "Nothing was reckoned; mend the file."));
  }
  CHECK(small.run({"cost", "--figures", "nowhere.csv"}).code == 3);
  const Ended finish = small.run({"cost", "--what-if", "gold"});
  CHECK(finish.code == 2);
  CHECK(has(finish.err, "'gold' is no finish"));
  CHECK(small.run({"order", "--years", "0"}).code == 2);
}

TEST_CASE("a name that two types bear is refused in the figures", "[mobile]") {
  const Folder folder;
  const std::string file = folder / "figures.csv";
  std::ofstream(file, std::ios::binary) << "figure,of,value,unit\nhours,Tee,2,h\n";
  kneerail::forecast::OwnerFigures figures;
  figures.types["t1"].name = figures.types["t2"].name = "Tee";
  std::ostringstream notes;
  const auto twice = kneerail::commands::add_figures_of(file, {}, figures, notes);
  REQUIRE_FALSE(twice);
  CHECK(has(twice.error().message, "line 2: more than one component type is called 'Tee'"));
  std::ofstream(file, std::ios::binary) << "figure,of,value,unit\nhours,t2,2,h\n";
  REQUIRE(kneerail::commands::add_figures_of(file, {}, figures, notes));
  CHECK(figures.types["t2"].hours_per_replacement == 2);
  CHECK_FALSE(figures.types["t1"].hours_per_replacement);
}
