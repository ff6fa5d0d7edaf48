#include <algorithm>

#include "tests/schema/exchange/portfolio_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

struct Case {
  std::string file;
  std::string row;       ///< put at the end of the small folder's file
  std::string sentence;  ///< without file and line
};

std::vector<Case> component_cases() {
  return {
      {"components.csv", "k1,mole,sea,m1,3,fitting,zinc_coated_steel,,,,,,,,,,,,,",
       ", component_id k1: stands on line 2 already."},
      {"components.csv", ",mole,sea,m1,3,fitting,zinc_coated_steel,,,,,,,,,,,,,",
       ", component_id: is empty, and is needed here."},
      {"components.csv", "n,mole,sea,m1,3,rail_tube,zinc_coated_steel,,,,,,,,,32,,,,",
       ", wall_nominal_mm 32: is outside 0.5 to 20 mm. Was 3.2 meant?"},
      {"components.csv", "n,mole,sea,m1,3,fitting,zinc_coated_steel,,,,,,0.072,,,,,,,",
       ", nominal_coating_um 0.072: is finer than 0.1 µm, the record's unit. Millimetres typed as "
       "µm? Was 72 meant?"},
      {"components.csv", "n,mole,sea,m1,3,fitting,zinc_coated_steel,,,,,30/06/2009,,,,,,,,",
       ", install_date 30/06/2009: is not in the order year-month-day. Was 2009-06-30 meant?"},
      {"components.csv", "n,mole,sea,m1,3,fitting,zinc_coated_steel,,,,,1850-01-01,,,,,,,,",
       ", install_date 1850-01-01: is outside 1900-01-01 to 2199-12-31."},
      {"components.csv", "n,mole,sea,m1,\"3,5\",fitting,zinc_coated_steel,,,,,,,,,,,,,",
       ", chainage_m 3,5: a decimal comma. Write 3.5, with a point."},
      {"components.csv", "n,mole,sea,m1,3,5,fitting,zinc_coated_steel,,,,,,,,,,,,,",
       ": the row has 21 fields, the header 20. Is there a decimal comma in it? Write 3.2, with a "
       "point."},
      {"components.csv", "n,mole,sea,m1,3,bolt,zinc_coated_steel,,,,,,,,,,,,,",
       ", kind bolt: is not one of post_tube, rail_tube, fitting, base_fixing, weld, cut_edge, "
       "welded_section, toe_board, infill, gate."},
      {"components.csv", "n,slip,sea,m1,3,fitting,zinc_coated_steel,,,,,,,,,,,,,",
       ", site_id slip: is another site than that of zone sea on line 2, mole."},
      {"components.csv", "n,mole,land,m1,3,fitting,zinc_coated_steel,,,,,,,,,,,,,",
       ", zone_id land: is another zone than that of run m1 on line 2, sea."},
      {"components.csv", "n,mole,sea,m1,3,fitting,zinc_coated_steel,,C5,,,,,,,,,,,",
       ", corrosivity_category C5: differs from zone sea on line 2."},
      {"components.csv", "n,mole,sea,m1,3,fitting,zinc_coated_steel,,,,,,,25,,,,,,",
       ", first_maintenance_um 25: differs from the first maintenance of site mole said before (a "
       "site has one)."},
      {"components.csv", "n,mole,sea,m1,3,fitting,zinc_coated_steel,,,,,,,,,,,,27,39",
       ", torque_minimum_nm 39: is over the target of 27 N·m. Are the two exchanged?"},
      {"components.csv", "n,mole,sea,m1,3,rail_tube,zinc_coated_steel,,,,,,,,,2.5,3.2,,,",
       ", wall_limit_mm 3.2: is over the nominal wall of 2.5 mm. Are the two exchanged?"},
  };
}

std::vector<Case> visit_and_reading_cases() {
  return {
      {"visits.csv", "v1,mole,2015-03-30,,,,,,", ", visit_id v1: stands on line 2 already."},
      {"visits.csv", "n,nowhere,2015-03-30,,,,,,",
       ", site_id nowhere: no component of components.csv stands at this site."},
      {"visits.csv", "n,mole,04/05/2015,,,,,,",
       ", date 04/05/2015: can be read two ways, day or month first. Write a date as "
       "year-month-day, 2026-06-30."},
      {"visits.csv", "n,mole,2015-03-30,,g1,,,50,",
       ", foil_read_um: a check foil needs both its own thickness and what the gauge read on it."},
      {"readings.csv", "1,k1,v4,grade,,1,2,exact,,,,,",
       ", visit_id v4: is a visit of site slip, and k1 stands at site mole."},
      {"readings.csv", "1,k1,v3,grade,,2,2,exact,,,,,",
       ", reading_id 1: stands on line 2 already."},
      {"readings.csv", "99,k1,v1,coating_um,A,2,70,exact,,,,,",
       ", replicate: this replicate of this spot stands on line 3 already."},
      {"readings.csv", "99,k77,v1,grade,,1,2,exact,,,,,",
       ", component_id k77: is not in components.csv."},
      {"readings.csv", "99,k1,v77,grade,,1,2,exact,,,,,", ", visit_id v77: is not in visits.csv."},
      {"readings.csv", "99,k1,v1,coating_um,A,9,0.072,exact,,,,,",
       ", value 0.072: is finer than 0.1 µm, the record's unit. Millimetres typed as µm? Was 72 "
       "meant?"},
      {"readings.csv", "99,k2,v1,wall_mm,C,1,32,exact,,,,,",
       ", value 32: a wall of 32 mm does not fit a tube with one of 3.2 mm. Was 3.2 meant?"},
      {"readings.csv", "99,k2,v1,coating_um,,1,60,exact,,,,,",
       ", spot: which of the 2 reference areas of k2 was measured?"},
      {"readings.csv", "99,k1,v1,grade,A,1,2,exact,,,,,",
       ", spot A: a grade is of the whole part; leave it empty."},
      {"readings.csv", "99,k1,v1,grade,,1,6,exact,,,,,", ", value 6: is outside 1 to 5."},
      {"readings.csv", "99,k1,v1,coating_um,A,4,70,at_least,,,,,",
       ", censor at_least: only a torque can be a bound; write exact."},
      {"readings.csv", "99,k3,v1,torque_nm,A,2,3900,exact,,,,,",
       ", value 3900: is outside 0 to 500 N·m. Was 390 meant?"},
      {"readings.csv", "99,k1,v1,coating_um,A,31,70,exact,,,,,",
       ", replicate 31: is outside 1 to 30. Was 3.1 meant?"},
      {"readings.csv", "99,k1,v1,grade,,2,2,exact,,yesterday,,,",
       ", seen_at yesterday: is not an instant with its offset. Write 2026-06-30T14:05:00+02:00."},
  };
}

std::vector<Case> other_cases() {
  return {
      {"interventions.csv", "k3,2015-03-30,retorque,,39,B",
       ": the same work stands on line 2 already."},
      {"interventions.csv", "k77,2015-03-30,retorque,,39,B",
       ", component_id k77: is not in components.csv."},
      {"interventions.csv", "k3,2015-03-30,polish,,,",
       ", action polish: is not one of replace, regalvanise, touch_up, retorque, re_erect."},
      {"portfolio.csv", "as_of_date,30.06.2026",
       ", value 30.06.2026: is not in the order year-month-day. Was 2026-06-30 meant?"},
      {"readings.csv", "99,k1,v1,grade,,2,\xFF,exact,,,,,",
       ": the text is not UTF-8; save the file again as CSV UTF-8."},
  };
}

const std::vector<Case>& cases() {
  static const std::vector<Case> all = [] {
    auto joined = component_cases();
    for (const auto& more : {visit_and_reading_cases(), other_cases()}) {
      joined.insert(joined.end(), more.begin(), more.end());
    }
    return joined;
  }();
  return all;
}

std::int64_t lines_of(const std::string& text) {
  return std::count(text.begin(), text.end(), '\n');
}

}  // namespace

TEST_CASE("every bad row is told with its line and what was probably meant", "[schema][exchange]") {
  for (const auto& one : cases()) {
    INFO(one.file << ": " << one.row);
    Folder made;
    auto files = files_of(small_folder());
    const auto line = lines_of(files[one.file]) + 1;
    files[one.file] += one.row + "\n";
    const auto checked =
        taken(exchange::check_portfolio(write_files(made.path() / "files", files), {}));
    REQUIRE(checked->bad.count() == 1);
    CHECK(to_text(checked->bad.kept()[0]) ==
          one.file + ", line " + std::to_string(line) + one.sentence);
  }
}

TEST_CASE("one bad row keeps everything out, unless the good rows are enough",
          "[schema][exchange]") {
  Shelf shelf;
  auto files = files_of(small_folder());
  files["readings.csv"] += "99,k1,v3,coating_um,A,3,0.041,exact,,,,,\n";
  const auto folder = write_files(shelf.folder.path() / "files", files);
  const auto empty = shelf.records();
  const auto refused = taken(shelf.import(folder));
  CHECK_FALSE(refused.imported);
  CHECK(refused.bad.count() == 1);
  CHECK(refused.records_made() == 0);
  CHECK(shelf.records() == empty);
  const auto good = taken(shelf.import(folder, true));
  CHECK(good.imported);
  CHECK(good.bad.count() == 1);
  CHECK(good.left_out() == 1);
  Shelf whole;
  taken(whole.import(small_folder()));
  CHECK(shelf.digest() == whole.digest());
}

TEST_CASE("rows that lean on a bad row are left out and say which", "[schema][exchange]") {
  Shelf shelf;
  auto files = files_of(small_folder());
  auto& components = files["components.csv"];
  components.replace(components.find("k7,mole,land,m2,10.125"), 22, "k7,mole,land,m2,10.1255");
  const auto report = taken(shelf.import(write_files(shelf.folder.path() / "files", files), true));
  std::vector<std::string> told;
  for (const auto& bad : report.bad.kept()) told.push_back(to_text(bad));
  CHECK(told == std::vector<std::string>{
                    "components.csv, line 8, chainage_m 10.1255: is finer than 0.001 m, the "
                    "record's unit.",
                    "readings.csv, line 23, component_id k7: is left out: see components.csv, "
                    "line 8.",
                    "interventions.csv, line 6, component_id k7: is left out: see components.csv, "
                    "line 8."});
  CHECK(report.left_out() == 3);
}

TEST_CASE("the list of bad rows is kept short and counted in full", "[schema][exchange]") {
  exchange::BadRows bad;
  for (int i = 0; i < 2'500; ++i) bad.add({"readings.csv", 2'500 - i, "value", "x", "is wrong."});
  bad.sort();
  CHECK(bad.count() == 2'500);
  CHECK(bad.kept().size() == exchange::BadRows::kept_max);
  CHECK(bad.kept().front().line == 1'501);
}

TEST_CASE("a file with another separator is asked about", "[schema][exchange]") {
  const auto [mark, word] = GENERATE(std::pair(';', "semicolons"), std::pair('\t', "tabs"));
  Shelf shelf;
  auto files = files_of(small_folder());
  std::replace(files["readings.csv"].begin(), files["readings.csv"].end(), ',', mark);
  const auto report = shelf.import(write_files(shelf.folder.path() / "files", files));
  REQUIRE_FALSE(report);
  CHECK(report.error().message ==
        std::string("readings.csv: the column reading_id is missing. Is it separated by ") + word +
            "? Save it with commas. Nothing was imported.");
}

TEST_CASE("readings of a part whose row could not be read say which row", "[schema][exchange]") {
  Shelf shelf;
  auto files = generated_files(2, 1);
  std::string& text = files["components.csv"];
  text.insert(text.find("c1,"), "\"");  // the quote is never closed
  const auto report = taken(shelf.import(write_files(shelf.folder.path() / "files", files)));
  REQUIRE(report.bad.count() > 1);
  CHECK(to_text(report.bad.kept().front()).starts_with("components.csv, line 3"));
  CHECK(to_text(report.bad.kept().back()) ==
        "readings.csv, line 9, component_id c1: is not in components.csv, where a row could not be "
        "read: see line 3.");
}
