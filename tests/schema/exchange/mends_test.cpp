// A file that was imported, mended, and imported again.

#include "core/records/correction.h"
#include "core/records/registers.h"
#include "schema/exchange/portfolio_export.h"
#include "tests/schema/exchange/portfolio_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

Files_of with(Files_of files, const std::string& file, const std::string& from,
              const std::string& to) {
  std::string& text = files.at(file);
  const auto at = text.find(from);
  REQUIRE(at != std::string::npos);
  text.replace(at, from.size(), to);
  return files;
}

exchange::ImportReport import(Shelf& shelf, const Files_of& files, bool good_rows = false) {
  return taken(shelf.import(write_files(shelf.folder.path() / "files", files), good_rows));
}

Files_of exported(Shelf& shelf) {
  const auto folder = shelf.folder.path() / "taken-out";
  exchange::ExportOptions options;
  options.folder = folder;
  taken(exchange::export_portfolio(shelf.opened->tables(), options));
  return files_of(folder);
}

void check_as_fresh(Shelf& shelf, const Files_of& files) {
  Shelf fresh(2);
  REQUIRE(import(fresh, files).imported);
  CHECK(exported(shelf) == exported(fresh));
  check_whole(*shelf.opened);
}

/// Two parts, two years; line 2 of readings.csv is "1,c0,v0,coating_um,A,1,69.0,exact".
Files_of two_parts() {
  auto files = generated_files(2, 2);
  files["portfolio.csv"] = "key,value\nzinc_gone_um,5\n";
  files["interventions.csv"] =
      "component_id,date,action,new_nominal_coating_um,as_left_nm\nc1,2007-09-01,retorque,,38\n";
  return files;
}

const std::string first_reading = "1,c0,v0,coating_um,A,1,69.0,exact\n";

Uuid first_coating(Shelf& shelf) {
  auto query = taken(shelf.opened->tables().prepare(
      "SELECT record FROM reading WHERE kind = 21 AND v1 = 2040 AND v2 = 3"));
  REQUIRE(taken(query.step()));
  return query.uuid(0);
}

Entry corrected_by_a_person(Shelf& shelf, std::int64_t first) {
  Correction made;
  made.values.set(3, cbor::Array{first, std::int64_t{680}, std::int64_t{670}});
  made.reason = "read again from the sheet";
  Entry entry;
  entry.kind = Correction::kind;
  entry.subject = first_coating(shelf);
  auto feed = taken(shelf.opened->tables().prepare("SELECT feed FROM reading LIMIT 1"));
  REQUIRE(taken(feed.step()));
  entry.feed = feed.uuid(0);
  feed.reset();
  entry.body = to_body(made);
  return entry;
}

}  // namespace

TEST_CASE("a row kept out gets in when it is mended", "[schema][exchange]") {
  const auto files = two_parts();
  const auto slip = with(files, "readings.csv", "69.0", "69.O");
  Shelf shelf;
  CHECK(import(shelf, slip, true).bad.count() == 1);
  const auto mended = import(shelf, files);
  CHECK(mended.bad.none());
  CHECK(mended.records_made() == 0);
  CHECK(mended.corrected() == 1);
  check_as_fresh(shelf, files);
  const auto records = shelf.records();
  const auto again = import(shelf, files);
  CHECK(again.corrected() == 0);
  CHECK(again.bad.none());
  CHECK(shelf.records() == records);
}

TEST_CASE("what was mended in a file is corrected in the register", "[schema][exchange]") {
  const auto files = two_parts();
  struct Mended {
    const char* file;
    const char* from;
    const char* to;
  };
  const auto mend =
      GENERATE(Mended{"readings.csv", "coating_um,A,1,69.0", "coating_um,A,1,68.5"},
               Mended{"readings.csv", "coating_um,A,3,67.0,exact",
                      "coating_um,A,3,67.0,exact\n99,c0,v0,"
                      "coating_um,A,4,66.0,exact"},
               Mended{"readings.csv", "grade,,1,1", "grade,,1,2"},
               Mended{"components.csv", "C4,2.97,2005-05-01,70", "C4,2.97,2005-05-01,85"},
               Mended{"components.csv", "c1,s1,z1,r1,1.5", "c1,s1,z1,r1,1.25"},
               Mended{"components.csv", "fitting,zinc_coated_steel", "fitting,painted_steel"},
               Mended{"visits.csv", "v1,s1,2007-06-01,i1,g1", "v1,s1,2007-06-01,i1,g2"},
               Mended{"interventions.csv", "retorque,,38", "retorque,,36.5"},
               Mended{"portfolio.csv", "zinc_gone_um,5", "zinc_gone_um,8"});
  INFO(mend.file << ": " << mend.to);
  Shelf shelf;
  import(shelf, files);
  const auto after = with(files, mend.file, mend.from, mend.to);
  const auto report = import(shelf, after);
  for (const auto& bad : report.bad.kept()) UNSCOPED_INFO(to_text(bad));
  CHECK(report.bad.none());
  CHECK(report.corrected() >= 1);
  check_as_fresh(shelf, after);
  if (std::string(mend.to).find("\n99") != std::string::npos) return;  // see the gone replicate
  CHECK(import(shelf, files).corrected() >= 1);
  check_as_fresh(shelf, files);
}

TEST_CASE("a correction of an import says what it saw, and is made once", "[schema][exchange]") {
  const auto files = two_parts();
  const auto mended = with(files, "readings.csv", "69.0", "68.5");
  Shelf one;
  Shelf other(2);
  for (Shelf* shelf : {&one, &other}) {
    import(*shelf, files);
    import(*shelf, mended);
  }
  CHECK(one.records() == other.records());
  auto ids = [](Shelf& shelf) {
    auto query = taken(shelf.opened->tables().prepare("SELECT record FROM fact WHERE kind = 70"));
    REQUIRE(taken(query.step()));
    return query.uuid(0);
  };
  CHECK(ids(one) == ids(other));
  import(one, files);
  CHECK(counted(*one.opened, "SELECT count(*) FROM disagreement") == 0);
  check_as_fresh(one, files);
}

TEST_CASE("an import leaves what a person corrected in the register", "[schema][exchange]") {
  const auto files = two_parts();
  Shelf shelf;
  import(shelf, files);
  taken(shelf.opened->save(corrected_by_a_person(shelf, 700)));
  const auto digest = shelf.digest();
  const auto same = import(shelf, files);
  CHECK(same.corrected() == 0);
  CHECK(same.bad.none());
  CHECK(same.notes == std::vector<std::string>{
                          "readings.csv: 1 of the records have been corrected in the register "
                          "since they were imported; that stays."});
  CHECK(shelf.digest() == digest);
  const auto both = import(shelf, with(files, "readings.csv", "69.0", "68.5"));
  CHECK(both.corrected() == 0);
  REQUIRE(both.bad.count() == 1);
  CHECK(to_text(both.bad.kept().front()) ==
        "readings.csv, line 2, value 68.5 68 67: the register has 70 68 67, corrected there since "
        "the last import; which is right?");
  CHECK(shelf.digest() == digest);
  // The file that says what the person said is at one with the register again.
  CHECK(import(shelf, with(files, "readings.csv", "69.0", "70.0")).bad.none());
}

TEST_CASE("a replicate that is gone from a file stays in the register", "[schema][exchange]") {
  const auto files = two_parts();
  Shelf shelf;
  import(shelf, files);
  const auto before = exported(shelf);
  const auto report = import(shelf, with(files, "readings.csv", first_reading, ""));
  REQUIRE(report.bad.count() == 1);
  CHECK(to_text(report.bad.kept().front()) ==
        "readings.csv, line 2, value 68 67: the register has 69 68 67; fewer of them, or some "
        "between missing, do not take their place.");
  CHECK(exported(shelf) == before);
}

TEST_CASE("what no correction can say is named", "[schema][exchange]") {
  const auto files = two_parts();
  Shelf shelf;
  import(shelf, files);
  const auto before = exported(shelf);
  SECTION("a visit on another day, whose readings would count twice") {
    const auto report = import(shelf, with(files, "visits.csv", "2007-06-01", "2007-07-01"));
    REQUIRE(report.bad.count() == 1);
    CHECK(to_text(report.bad.kept().front()) ==
          "visits.csv, line 3, date 2007-07-01: the register has this visit on 2007-06-01. It "
          "stays, and so do its readings; those of the file are kept out.");
    CHECK(report.left_out() == 1 + 8);
  }
  SECTION("a coating that the file no longer says") {
    const auto report = import(
        shelf, with(files, "components.csv", "C4,2.97,2005-05-01,70", "C4,2.97,2005-05-01,"));
    REQUIRE(report.bad.count() == 1);
    CHECK(
        to_text(report.bad.kept().front()) ==
        "components.csv, line 2, nominal_coating_um: the register has 70; an import does not take "
        "a value away.");
  }
  CHECK(exported(shelf) == before);
  check_whole(*shelf.opened);
}
