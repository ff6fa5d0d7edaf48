// Numbers in files that are none, or cannot be: each is kept out with its line, column and value.

#include <algorithm>
#include <map>

#include "tests/schema/exchange/portfolio_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

using Row = std::map<std::string, std::string>;

/// The values under their names in the file's header; empty where there is none.
std::string row_of(const std::string& file, const Row& values) {
  std::istringstream header(file.substr(0, file.find_first_of("\r\n")));
  std::string row;
  for (std::string name; std::getline(header, name, ',');) {
    const auto value = values.find(name);
    row += (row.empty() ? "" : ",") + (value == values.end() ? std::string() : value->second);
  }
  return row + "\n";
}

struct Column {
  std::string file;
  std::string name;
  Row around;
  bool may_be_negative = false;
};

std::vector<Column> component_columns() {
  Row fitting{{"component_id", "n"},
              {"site_id", "mole"},
              {"zone_id", "sea"},
              {"run_id", "m1"},
              {"chainage_m", "3"},
              {"kind", "fitting"},
              {"material", "zinc_coated_steel"}};
  Row tube = fitting;
  tube["kind"] = "rail_tube";
  tube["wall_nominal_mm"] = "3.2";
  std::vector<Column> columns;
  for (const char* name :
       {"zinc_rate_prior_um_per_yr", "zinc_rate_prior_ln_sd", "nominal_coating_um",
        "first_maintenance_um", "reference_areas", "torque_target_nm", "torque_minimum_nm"})
    columns.push_back({"components.csv", name, fitting});
  columns.push_back({"components.csv", "chainage_m", fitting, true});
  for (const char* name : {"wall_nominal_mm", "wall_limit_mm", "steel_rate_prior_um_per_yr"})
    columns.push_back({"components.csv", name, tube});
  return columns;
}

std::vector<Column> other_columns() {
  const Row visit{{"visit_id", "n"},          {"site_id", "mole"},    {"date", "2015-03-30"},
                  {"coating_gauge_id", "g1"}, {"foil_true_um", "50"}, {"foil_read_um", "50"}};
  const auto reading = [](const char* part, const char* quantity, const char* spot,
                          const char* censor) {
    return Row{{"reading_id", "99"},   {"component_id", part}, {"visit_id", "v1"},
               {"quantity", quantity}, {"spot", spot},         {"replicate", "7"},
               {"value", "30"},        {"censor", censor}};
  };
  const Row torque = reading("k3", "torque_nm", "A", "at_least");
  return {{"visits.csv", "foil_true_um", visit},
          {"visits.csv", "foil_read_um", visit},
          {"readings.csv", "value", reading("k1", "coating_um", "A", "exact")},
          {"readings.csv", "value", reading("k2", "wall_mm", "C", "exact")},
          {"readings.csv", "value", torque},
          {"readings.csv", "value", reading("k1", "grade", "", "exact")},
          {"readings.csv", "replicate", reading("k1", "coating_um", "A", "exact")},
          {"readings.csv", "wrench_set_nm", torque},
          {"interventions.csv",
           "new_nominal_coating_um",
           {{"component_id", "k3"}, {"date", "2016-03-30"}, {"action", "replace"}}},
          {"interventions.csv",
           "as_left_nm",
           {{"component_id", "k3"}, {"date", "2016-03-30"}, {"action", "retorque"}}},
          {"portfolio.csv", "value", {{"key", "zinc_gone_um"}}}};
}

}  // namespace

TEST_CASE("what is no number, or no thickness, is kept out and told", "[schema][exchange]") {
  const Folder folder;
  const auto good = files_of(small_folder());
  auto columns = component_columns();
  for (const Column& column : other_columns()) columns.push_back(column);
  for (const Column& column : columns)
    for (const std::string text :
         {"nan", "NaN", "inf", "-inf", "Infinity", "1e400", "-1e400", "-12.5", "0x1p3", "1e"}) {
      if (text == "-12.5" && column.may_be_negative) continue;
      auto files = good;
      Row values = column.around;
      values[column.name] = text;
      const std::string row = row_of(files[column.file], values);
      INFO(column.file << ", " << column.name << ": " << row);
      auto& file = files[column.file];
      const auto line = std::count(file.begin(), file.end(), '\n') + 1;
      file += row;
      const auto checked =
          taken(exchange::check_portfolio(write_files(folder.path() / "files", files), {}));
      REQUIRE(checked->bad.count() == 1);
      const exchange::Bad& bad = checked->bad.kept()[0];
      CHECK(bad.file == column.file);
      CHECK(bad.line == line);
      CHECK(bad.column == column.name);
      CHECK(bad.value == text);
      CHECK(bad.reason.ends_with("."));
    }
}

TEST_CASE("a file with one number that is none gives no record at all", "[schema][exchange]") {
  Shelf shelf;
  auto files = files_of(small_folder());
  files["readings.csv"] += "99,k1,v1,coating_um,A,7,nan,exact,,,,,\n";
  const auto before = shelf.records();
  const auto report = taken(shelf.import(write_files(shelf.folder.path() / "files", files)));
  CHECK_FALSE(report.imported);
  CHECK(report.bad.count() == 1);
  CHECK(shelf.records() == before);
}
