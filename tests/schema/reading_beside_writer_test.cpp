// Whoever reads while another program writes sees one moment of the register, from beginning to
// end.

#include "schema/exchange/portfolio_export.h"
#include "tests/schema/register_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// A reader beside the writer that has made the register.
struct Beside : MadeRegister {
  Beside() {
    for (int i = 0; i < 30; ++i) taken(opened->save(coating(site, i)));
  }
  std::unique_ptr<Register> reader =
      taken(Register::open(world.options(folder.path(), Mode::read)));
  int number = 1000;

  void write() { taken(opened->save(coating(site, ++number))); }
};

}  // namespace

TEST_CASE_METHOD(Beside, "verify beside a writer finds nothing wrong", "[schema]") {
  const auto before = counted(*reader, "SELECT count(*) FROM journal");
  int written = 0;
  const auto report = taken(reader->verify([&](std::int64_t, std::int64_t) {
    write();
    ++written;
    // A feed the reader has not heard of.
    if (written == 1) {
      taken(opened->save(created(id_of(2, 9), id_of(3, 9), 3, id_of(2, 9), {{1, "Land side"}})));
    }
    return true;
  }));
  for (const auto& problem : report.problems) UNSCOPED_INFO(problem);
  CHECK(report.problems.empty());
  CHECK(report.records == before);
  REQUIRE(written > 1);
  CHECK(counted(*reader, "SELECT count(*) FROM journal") > before + written);
  CHECK(taken(reader->verify()).problems.empty());
}

TEST_CASE_METHOD(Beside, "an export beside a writer is of one moment", "[schema]") {
  std::vector<Entry> many;
  while (many.size() < 7000) many.push_back(coating(site, std::ssize(many)));
  taken(opened->save(many));
  bool written = false;
  const auto files = taken(exchange::export_portfolio(
      reader->tables(), {.folder = folder.path() / "out",
                         .as_of = std::nullopt,
                         .sites = {},
                         .progress = [&](std::int64_t, std::int64_t, std::string_view) {
                           // Touch-up, after the readings were read and before the works are.
                           if (!written) {
                             taken(opened->save({site.site,
                                                 40,
                                                 site.components[0],
                                                 site.person,
                                                 {{1, site.visit}, {2, 2}, {9, 21'000}},
                                                 {}}));
                           }
                           written = true;
                           return true;
                         }}));
  REQUIRE(written);
  for (const auto& file : files) {
    if (file.file == "interventions.csv") CHECK(file.rows_read == 0);
  }
  CHECK(counted(*reader, "SELECT count(*) FROM work") == 1);
}

TEST_CASE_METHOD(Beside, "a snapshot within another is a part of it", "[schema]") {
  Database& tables = reader->tables();
  {
    const auto whole = taken(Snapshot::begin(tables));
    { const auto part = taken(Snapshot::begin(tables)); }
    write();
    CHECK(counted(*reader, "SELECT count(*) FROM reading") == 30);
  }
  CHECK(counted(*reader, "SELECT count(*) FROM reading") == 31);
}
