#include <algorithm>

#include "schema/exchange/portfolio_export.h"
#include "schema/exchange/portfolio_folder.h"
#include "schema/store/portfolio_store.h"
#include "tests/schema/exchange/portfolio_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

const exchange::FileCount& count_of(const exchange::ImportReport& report, const std::string& file) {
  const auto found = std::find_if(report.files.begin(), report.files.end(),
                                  [&](const auto& one) { return one.file == file; });
  REQUIRE(found != report.files.end());
  return *found;
}

std::string with_line_ends(std::string text, bool mark) {
  std::string made = mark ? "\xEF\xBB\xBF" : "";
  for (const char c : text) {
    if (c == '\n') made += '\r';
    made += c;
  }
  return made;
}

}  // namespace

TEST_CASE("a portfolio folder becomes records", "[schema][exchange]") {
  Shelf shelf;
  const auto report = taken(shelf.import(small_folder()));
  for (const auto& bad : report.bad.kept()) UNSCOPED_INFO(to_text(bad));
  REQUIRE(report.imported);
  CHECK(report.bad.none());
  CHECK(count_of(report, "components.csv").rows_read == 10);
  CHECK(count_of(report, "readings.csv").rows_read == 30);
  // Two replicates join a third, and two more join each other: 30 rows, 27 records.
  CHECK(count_of(report, "readings.csv").records_made == 27);
  CHECK(count_of(report, "interventions.csv").records_made == 7);
  CHECK(counted(*shelf.opened, "SELECT count(*) FROM reading") == 27);
  CHECK(counted(*shelf.opened, "SELECT count(*) FROM entity WHERE type = 7") == 10);
  CHECK(counted(*shelf.opened, "SELECT count(*) FROM entity WHERE type = 5 AND label = '2'") == 1);
  CHECK_FALSE(std::filesystem::exists(shelf.folder.path() / "staging"));
  check_whole(*shelf.opened);
}

TEST_CASE("a visit that is yet to come is asked about", "[schema][exchange]") {
  Shelf shelf;
  auto files = files_of(small_folder());
  files["visits.csv"] += "late,mole,2028-05-10,,,,,,\nlater,mole,2029-05-10,,,,,,\n";
  const auto from = write_files(shelf.folder.path() / "in", files);
  const auto line = std::count(files["visits.csv"].begin(), files["visits.csv"].end(), '\n') - 1;
  shelf.today = date_from_civil(2027, 12, 31);
  const auto report = taken(shelf.import(from));
  CHECK(report.notes ==
        std::vector<std::string>{
            "visits.csv: 2 rows are dated after today, first 2028-05-10 on line " +
            std::to_string(line) +
            ". Is the year right? No forecast as of an earlier day uses what it says."});
  shelf.today = date_from_civil(2030, 6, 30);
  CHECK(taken(shelf.import(from)).notes.empty());
}

TEST_CASE("importing a folder twice changes nothing", "[schema][exchange]") {
  Shelf shelf;
  const auto first = taken(shelf.import(small_folder()));
  const auto records = shelf.records();
  const auto digest = shelf.digest();
  const auto second = taken(shelf.import(small_folder()));
  CHECK(second.records_made() == 0);
  CHECK(second.already_there() == first.records_made());
  CHECK(shelf.records() == records);
  CHECK(shelf.digest() == digest);
}

TEST_CASE("line ends and a byte order mark make no other records", "[schema][exchange]") {
  const bool mark = GENERATE(false, true);
  Shelf plain;
  Shelf other;
  auto files = files_of(small_folder());
  for (auto& [name, text] : files) text = with_line_ends(text, mark);
  const auto folder = write_files(other.folder.path() / "files", files);
  taken(plain.import(small_folder()));
  REQUIRE(taken(other.import(folder)).imported);
  CHECK(other.digest() == plain.digest());
}

TEST_CASE("an import that was stopped is completed by the next", "[schema][exchange]") {
  Folder made;
  const auto folder = write_files(made.path() / "files", generated_files(500, 5));
  Shelf whole;
  taken(whole.import(folder));
  Shelf stopped;
  int calls = 0;
  const auto cut = stopped.import(folder, false, [&](std::int64_t, std::int64_t, auto what) {
    return what != "writing" || ++calls < 1;
  });
  REQUIRE_FALSE(cut);
  CHECK(cut.error().fault == Fault::cancelled);
  CHECK(cut.error().message.find("import again to complete it") != std::string::npos);
  const auto between = stopped.records();
  CHECK(between > 0);
  CHECK(between < whole.records());
  check_whole(*stopped.opened);
  REQUIRE(taken(stopped.import(folder)).imported);
  CHECK(stopped.records() == whole.records());
  CHECK(stopped.digest() == whole.digest());
}

TEST_CASE("nothing is kept while the rows are only being checked", "[schema][exchange]") {
  Folder made;
  const auto folder = write_files(made.path() / "files", generated_files(500, 5));
  Shelf shelf;
  const auto before = shelf.records();
  const auto cut = shelf.import(folder, false, [](auto, auto, auto) { return false; });
  REQUIRE_FALSE(cut);
  CHECK(cut.error().fault == Fault::cancelled);
  CHECK(shelf.records() == before);
  CHECK_FALSE(std::filesystem::exists(shelf.folder.path() / "staging"));
}

TEST_CASE("ten thousand readings are imported a few thousand at a time", "[schema][exchange]") {
  Folder made;
  const auto folder = write_files(made.path() / "files", generated_files(500, 5));
  Shelf shelf;
  int saves = 0;
  const auto report = taken(shelf.import(folder, false, [&](auto, auto, auto what) {
    saves += what == "writing" ? 1 : 0;
    return true;
  }));
  REQUIRE(report.imported);
  CHECK(count_of(report, "readings.csv").rows_read == 10'000);
  CHECK(count_of(report, "readings.csv").records_made == 5'000);
  CHECK(saves >= 2);  // never all in one
  CHECK(counted(*shelf.opened, "SELECT count(*) FROM reading") == 5'000);
}

TEST_CASE("columns and keys that are not known are told and kept out", "[schema][exchange]") {
  Shelf shelf;
  auto files = files_of(small_folder());
  files["visits.csv"] =
      "visit_id,site_id,date,weather\nv1,mole,2015-03-30,rain\nv2,mole,2015-03-30,\n"
      "v3,mole,2021-10-03,\nv4,slip,2018-06-11,\nv5,slip,2024-06-12,\nv6,mole,2027-05-01,\n";
  files["portfolio.csv"] += "owner,harbour\n";
  const auto report = taken(shelf.import(write_files(shelf.folder.path() / "files", files)));
  REQUIRE(report.imported);
  CHECK(report.notes ==
        std::vector<std::string>{"portfolio.csv: the key owner is not known and was kept out.",
                                 "visits.csv: the column weather is not known and was kept out."});
}

TEST_CASE("without a components file nothing is imported", "[schema][exchange]") {
  Shelf shelf;
  const auto missing = shelf.import(shelf.folder.path() / "nowhere");
  REQUIRE_FALSE(missing);
  CHECK(missing.error().fault == Fault::not_found);
  auto files = files_of(small_folder());
  files["components.csv"] = "component_id,site_id\nk1,mole\n";
  const auto headless = shelf.import(write_files(shelf.folder.path() / "files", files));
  REQUIRE_FALSE(headless);
  CHECK(headless.error().message ==
        "components.csv: the column zone_id is missing. Nothing was imported.");
}
