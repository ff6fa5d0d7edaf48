#pragma once

// Portfolio folders for tests: the small invented one that is kept with the tests, and folders made
// here row by row.

#include <fstream>
#include <map>
#include <optional>
#include <sstream>
#include <string>

#include "schema/exchange/portfolio_import.h"
#include "tests/schema/register_fixture.h"

namespace kneerail::tests {

using Files_of = std::map<std::string, std::string>;

inline std::filesystem::path small_folder() {
  return std::filesystem::path(KNEERAIL_SOURCE_DIR) / "tests/schema/exchange/data/small";
}

inline std::string text_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  REQUIRE(in);
  std::ostringstream all;
  all << in.rdbuf();
  return all.str();
}

inline Files_of files_of(const std::filesystem::path& folder) {
  Files_of files;
  for (const std::string name :
       {"portfolio.csv", "components.csv", "visits.csv", "readings.csv", "interventions.csv"})
    files[name] = text_of(folder / name);
  return files;
}

inline std::filesystem::path write_files(const std::filesystem::path& folder,
                                         const Files_of& files) {
  std::filesystem::create_directories(folder);
  for (const auto& [name, text] : files) {
    std::ofstream out(folder / name, std::ios::binary);
    out << text;
    REQUIRE(out);
  }
  return folder;
}

/// A register in a folder of its own, with its world.
struct Shelf {
  explicit Shelf(std::uint64_t seed = 1) : world(seed) {
    opened = taken(Register::open(world.options(folder.path() / "register", Mode::create)));
  }
  Result<exchange::ImportReport> import(const std::filesystem::path& from, bool good_rows = false,
                                        exchange::Progress progress = {}) {
    exchange::ImportOptions options;
    options.folder = from;
    options.staging = folder.path() / "staging";
    options.good_rows = good_rows;
    options.progress = std::move(progress);
    options.today = today;
    return exchange::import_portfolio(*opened, options);
  }
  std::int64_t records() { return counted(*opened, "SELECT count(*) FROM journal"); }
  std::string digest() { return taken(opened->table_digest()); }

  Folder folder;
  World world;
  std::unique_ptr<Register> opened;
  std::optional<Date> today;
};

/// `parts` fittings in one run, measured once a year with three replicates and a grade.
inline Files_of generated_files(int parts, int years) {
  std::ostringstream components, visits, readings;
  components << "component_id,site_id,zone_id,run_id,chainage_m,kind,material,exposure,"
                "corrosivity_category,zinc_rate_prior_um_per_yr,install_date,nominal_coating_um\n";
  for (int part = 0; part < parts; ++part)
    components << "c" << part << ",s1,z1,r1," << part << (part % 2 ? ".5,fitting" : ",post_tube")
               << ",zinc_coated_steel,open,C4,2.97,2005-05-01,70\n";
  visits << "visit_id,site_id,date,inspector_id,coating_gauge_id\n";
  readings << "reading_id,component_id,visit_id,quantity,spot,replicate,value,censor\n";
  int id = 0;
  for (int year = 0; year < years; ++year) {
    visits << "v" << year << ",s1," << 2006 + year << "-06-01,i1,g1\n";
    for (int part = 0; part < parts; ++part) {
      for (int replicate = 1; replicate <= 3; ++replicate)
        readings << ++id << ",c" << part << ",v" << year << ",coating_um,A," << replicate << ","
                 << 70 - year - replicate << "." << part % 10 << ",exact\n";
      readings << ++id << ",c" << part << ",v" << year << ",grade,,1," << 1 + year % 5
               << ",exact\n";
    }
  }
  return {{"components.csv", components.str()},
          {"visits.csv", visits.str()},
          {"readings.csv", readings.str()}};
}

}  // namespace kneerail::tests
