#include "schema/exchange/register_csv.h"

#include <algorithm>

#include "schema/exchange/portfolio_export.h"
#include "schema/exchange/register_columns.h"
#include "tests/schema/exchange/portfolio_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

Result<exchange::ImportReport> import_register(Shelf& shelf, const std::filesystem::path& from,
                                               bool good_rows = false) {
  exchange::ImportOptions options;
  options.folder = from;
  options.good_rows = good_rows;
  return exchange::import_register(*shelf.opened, options);
}

std::vector<std::string> names_in(const std::filesystem::path& folder) {
  std::vector<std::string> names;
  for (const auto& one : std::filesystem::directory_iterator(folder))
    names.push_back(one.path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

/// Fields of every shape a register file can hold.
void add_every_shape(Register& into) {
  const Uuid site = id_of(2, 9);
  const Uuid organisation = into.organisation();
  const cbor::Map rules{{2, 200},
                        {5, cbor::Map{{1, 35}, {2, 300}}},
                        {7, cbor::Array{cbor::Array{1, 4, 365}, cbor::Array{2, 4, 180}}}};
  const std::vector<Entry> entries = {
      created(organisation, id_of(11, 9), 11, organisation, {{1, "=sum, \"2026\""}, {3, rules}}),
      created(organisation, id_of(10, 9), 10, organisation, {{2, "MO"}}),
      created(organisation, site, 2, organisation,
              {{1, "Lock Island\nupper gate"},
               {3, cbor::Array{543'210'000, -12'345'678}},
               {6, id_of(11, 9)},
               {10, cbor::Array{id_of(10, 9)}}}),
      created(site, id_of(3, 9), 3, site,
              {{1, "-z"},
               {2, 5},
               {3, 4},
               {4, 1'234'567},
               {7, 4'321},
               {8, 405},
               {10, 3},
               {11, cbor::Array{105, 720, 40, 31}}}),
      created(site, id_of(4, 9), 4, id_of(3, 9),
              {{1, "r"},
               {3, cbor::Array{cbor::Array{543'210'000, -12'345'678, 2'500},
                               cbor::Array{543'220'000, -12'345'000, 2'600}}},
               {8, true},
               {13, cbor::Array{cbor::Array{1, 480, 1'020}}}}),
      created(site, id_of(5, 9), 5, id_of(4, 9), {{1, "1"}, {2, 12'345}}),
      created(site, id_of(7, 9), 7, id_of(5, 9),
              {{1, 5},
               {3, cbor::Array{-250, 1'100}},
               {5, -3'650},
               {6, 855},
               {7, false},
               {10, cbor::Array{1, 6, 2}}}),
      created(site, id_of(7, 8), 7, id_of(5, 9), {{1, 2}, {12, id_of(7, 9)}})};
  taken(into.save(entries));
}

}  // namespace

TEST_CASE("columns follow the table of fields, with the unit people use", "[schema][exchange]") {
  const auto columns = exchange::register_columns(*entity_info(7));
  std::vector<std::string> names;
  for (const auto& column : columns) names.push_back(column.name);
  CHECK(names == std::vector<std::string>{
                     "role", "component_type", "place_along_mm", "place_up_mm", "screws_count",
                     "date_in_service_date", "coating_nominal_um", "accessible", "life_state",
                     "tag", "spots", "exposure", "part_of", "wall_limit_mm", "moved_from"});
  CHECK(exchange::register_file(*entity_info(8)) == "component_types.csv");
  CHECK(exchange::register_file(*entity_info(10)) == "people.csv");
}

TEST_CASE("every field that names a thing says of which type", "[schema][exchange]") {
  for (const EntityInfo* type : all_entities()) {
    for (const auto& field : type->fields) {
      INFO(type->name << " " << field.name);
      const bool names_things = field.shape == Shape::id || (field.shape == Shape::list &&
                                                             field.parts.first->shape == Shape::id);
      if (names_things) CHECK(exchange::type_pointed_at(field.name) != 0);
    }
  }
}

TEST_CASE("a register written as files and read again is the same register", "[schema][exchange]") {
  Shelf first;
  taken(first.import(small_folder()));
  add_every_shape(*first.opened);
  const auto once = first.folder.path() / "once";
  const auto written = taken(exchange::export_register(first.opened->tables(), once));
  CHECK(names_in(once) ==
        std::vector<std::string>{"bays.csv", "component_types.csv", "components.csv",
                                 "instruments.csv", "organisation.csv", "people.csv", "posts.csv",
                                 "rule_sets.csv", "runs.csv", "sites.csv", "zones.csv"});
  Shelf second(2);
  const auto report = taken(import_register(second, once));
  for (const auto& bad : report.bad.kept()) UNSCOPED_INFO(to_text(bad));
  for (const auto& note : report.notes) UNSCOPED_INFO(note);
  REQUIRE(report.imported);
  CHECK(report.notes.empty());
  CHECK(second.opened->organisation() == first.opened->organisation());
  const auto twice = second.folder.path() / "twice";
  taken(exchange::export_register(second.opened->tables(), twice));
  CHECK(names_in(twice) == names_in(once));
  for (const auto& name : names_in(once)) {
    INFO(name);
    CHECK(text_of(twice / name) == text_of(once / name));
  }
  const auto again = taken(import_register(second, once));
  CHECK(again.records_made() == 0);
  CHECK(again.already_there() == report.records_made());
}

TEST_CASE("files without an organisation count the one they made on the second import",
          "[schema][exchange]") {
  Shelf first;
  taken(first.import(small_folder()));
  const auto once = first.folder.path() / "once";
  taken(exchange::export_register(first.opened->tables(), once));
  std::filesystem::remove(once / "organisation.csv");
  Shelf second(2);
  const auto report = taken(import_register(second, once));
  REQUIRE(report.imported);
  const auto digest = second.digest();
  const auto again = taken(import_register(second, once));
  CHECK(again.records_made() == 0);
  CHECK(again.already_there() == report.records_made());
  CHECK(second.digest() == digest);
}

TEST_CASE("a portfolio's register goes through files and takes its readings after",
          "[schema][exchange]") {
  Shelf first;
  taken(first.import(small_folder()));
  taken(exchange::export_register(first.opened->tables(), first.folder.path() / "once"));
  Shelf second(2);
  taken(import_register(second, first.folder.path() / "once"));
  const auto report = taken(second.import(small_folder()));
  REQUIRE(report.imported);
  CHECK(counted(*second.opened, "SELECT count(*) FROM entity WHERE type = 7") == 10);
  CHECK(counted(*second.opened, "SELECT count(*) FROM reading") == 27);
}

TEST_CASE("a register row that cannot be taken is told", "[schema][exchange]") {
  struct Case {
    std::string file;
    std::string text;
    std::string sentence;
  };
  const Case cases[] = {
      {"component_types.csv", "id,tube_diameter_mm,tube_wall_mm\nt,48.3,3.2\nu,33.7,20\n",
       "component_types.csv, line 3: a wall of 20 mm does not fit in a tube of 33.7 mm. Was 2 "
       "meant?"},
      {"component_types.csv", "id,tube_diameter_mm,tube_wall_mm\nu,48.3,32\n",
       "component_types.csv, line 2, tube_wall_mm 32: is outside 0.5 to 20 mm. Was 3.2 meant?"},
      {"zones.csv", "id,parent\nz,nowhere\n",
       "zones.csv, line 2, parent nowhere: is no site of these files or of the register."},
      {"zones.csv", "id,parent,corrosivity_category\nz,s,C9\n",
       "zones.csv, line 2, corrosivity_category C9: is not one of C1, C2, C3, C4, C5, CX."},
      {"sites.csv", "id,name\ns,a\ns,b\n", "sites.csv, line 3, id s: stands on line 2 already."},
      {"sites.csv", "id,rule_set\ns,strict\n",
       "sites.csv, line 2, rule_set strict: names nothing in these files or in the register."},
      {"sites.csv", "id,place_longitude_deg\ns,1.5\n",
       "sites.csv, line 2, place_longitude_deg 1.5: stands without the part before it."},
      {"runs.csv", "id,parent,seasonal\nr,z,perhaps\n",
       "runs.csv, line 2, seasonal perhaps: is not one of yes, no."},
      {"runs.csv", "id,parent,hours_of_access\nr,z,8 to 5\n",
       "runs.csv, line 2, hours_of_access 8 to 5: is not JSON of whole numbers, texts, lists and "
       "keys."},
  };
  for (const auto& one : cases) {
    INFO(one.file << "\n" << one.text);
    Shelf shelf;
    Files_of files{{"sites.csv", "id,name\ns,North Mole\n"}, {"zones.csv", "id,parent\nz,s\n"}};
    files[one.file] = one.text;
    const auto report =
        taken(import_register(shelf, write_files(shelf.folder.path() / "files", files)));
    CHECK_FALSE(report.imported);
    std::vector<std::string> told;
    for (const auto& bad : report.bad.kept()) told.push_back(to_text(bad));
    CHECK(std::count(told.begin(), told.end(), one.sentence) == 1);
    if (!told.empty()) CHECK(told.front() == one.sentence);
    CHECK(counted(*shelf.opened, "SELECT count(*) FROM entity") == 0);
  }
}

TEST_CASE("an unknown column of a register file is told and kept out", "[schema][exchange]") {
  Shelf shelf;
  const auto folder = write_files(shelf.folder.path() / "files",
                                  {{"sites.csv", "id,name,colour\ns,North Mole,blue\n"}});
  const auto report = taken(import_register(shelf, folder));
  REQUIRE(report.imported);
  CHECK(report.notes ==
        std::vector<std::string>{"sites.csv: the column colour is not known and was kept out."});
  CHECK(counted(*shelf.opened, "SELECT count(*) FROM entity WHERE name = 'North Mole'") == 1);
}
