// A register read site by site says of each site what the whole says of it.

#include <algorithm>

#include "core/forecast/whole/part_inputs.h"
#include "schema/exchange/forecast_files.h"
#include "schema/store/portfolio_store.h"
#include "tests/schema/exchange/fit_in_memory.h"
#include "tests/schema/exchange/portfolio_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr std::int32_t july_2026_days = 20'635;  // 2026-07-01

std::map<std::string, std::string> inputs_of(const forecast::Portfolio& portfolio) {
  std::map<std::string, std::string> by_id;
  forecast::each_part_input(portfolio, [&](std::int32_t part, std::string_view bytes) {
    by_id[portfolio.parts[static_cast<std::size_t>(part)].id] = bytes;
  });
  return by_id;
}

void check_same_inputs(const std::vector<SiteInput>& by_site, const std::vector<SiteInput>& whole) {
  REQUIRE(by_site.size() == whole.size());
  for (std::size_t i = 0; i < whole.size(); ++i) {
    CHECK(by_site[i].site == whole[i].site);
    CHECK(by_site[i].parts == whole[i].parts);
    CHECK(by_site[i].digest == whole[i].digest);
  }
}

/// Parts, readings, visits, works, limits and what is left out: all of it, to the last bit.
void check_site_by_site(Register& opened, Date as_of) {
  const auto whole = taken(read_portfolio(opened.tables(), as_of));
  const auto sites = taken(PortfolioSites::open(opened.tables(), as_of));
  std::vector<SiteInput> inputs;
  std::map<std::string, std::string> bytes;
  auto names = sites->names();
  CHECK(std::ranges::is_sorted(names));
  // Last to first and again: what was read before leaves nothing behind.
  std::reverse(names.begin(), names.end());
  for (const std::string& site : names) CHECK(taken(sites->read(site)).as_of == as_of);
  std::reverse(names.begin(), names.end());
  for (const std::string& site : names) {
    const auto own = taken(sites->read(site));
    for (const auto& one : site_inputs(own)) inputs.push_back(one);
    bytes.merge(inputs_of(own));
    CHECK(std::ranges::is_sorted(own.parts, {}, &forecast::Part::id));
    CHECK(std::ranges::is_sorted(own.visits, {}, &forecast::Visit::id));
  }
  CHECK(bytes == inputs_of(whole));
  check_same_inputs(inputs, site_inputs(whole));
  const forecast::InstalledDates dates(whole);
  for (const std::string& site : names)
    CHECK(sites->installed().likely_starts(site, as_of) == dates.likely_starts(site, as_of));
}

}  // namespace

TEST_CASE("a register read site by site is the register read as one", "[schema][exchange]") {
  Shelf shelf;
  taken(shelf.import(small_folder()));
  for (const char* day : {"2018-06-11", "2026-07-01"})
    check_site_by_site(*shelf.opened, date_from_text(day).value());
}

TEST_CASE("works on a whole run reach its parts site by site too", "[schema][exchange]") {
  Shelf shelf;
  taken(shelf.import(small_folder()));
  auto rows = taken(shelf.opened->tables().prepare(
      "SELECT id, feed FROM entity WHERE type = 4 ORDER BY import_reference LIMIT 1"));
  REQUIRE(taken(rows.step()));
  Entry work{rows.uuid(1), 40, rows.uuid(0), {}, {}, {}};
  rows.reset();
  work.body.set(2, 5);  // galvanised anew
  taken(shelf.opened->save(std::vector<Entry>{work}));
  const Date later{july_2026_days + 4000};
  const auto whole = taken(read_portfolio(shelf.opened->tables(), later));
  const auto before = taken(read_portfolio(shelf.opened->tables(), Date{july_2026_days}));
  CHECK(whole.works.size() > before.works.size() + 1);
  check_site_by_site(*shelf.opened, later);
}

TEST_CASE("a reference that two parts bear is the first one's in every site",
          "[schema][exchange]") {
  Shelf shelf;
  taken(shelf.import(small_folder()));
  // Of another site, made later, with the reference of a part that is there already.
  auto rows = taken(shelf.opened->tables().prepare(
      "SELECT e.import_reference, o.feed, o.parent FROM entity e JOIN entity o ON o.type = 7 AND "
      "o.feed <> e.feed WHERE e.type = 7 ORDER BY e.id, o.id LIMIT 1"));
  REQUIRE(taken(rows.step()));
  const std::string reference(rows.text(0));
  const Uuid site = rows.uuid(1);
  const Uuid parent = rows.uuid(2);
  rows.reset();
  const Uuid part = id_of(7, 900);
  Entry made = created(site, part, 7, parent, {{1, 5}});
  made.body.set(4, reference);
  taken(shelf.opened->save(std::vector<Entry>{made}));
  const auto whole = taken(read_portfolio(shelf.opened->tables(), Date{july_2026_days}));
  CHECK(std::ranges::count(whole.parts, reference, &forecast::Part::id) == 1);
  CHECK(std::ranges::count(whole.parts, to_text(part), &forecast::Part::id) == 1);
  check_site_by_site(*shelf.opened, Date{july_2026_days});
}

TEST_CASE("a reading kept under another site than its part's is not lost", "[schema][exchange]") {
  Shelf shelf;
  taken(shelf.import(small_folder()));
  auto rows = taken(shelf.opened->tables().prepare(
      "SELECT r.visit, r.who, e.id FROM reading r JOIN entity e ON e.type = 7 AND e.feed <> r.feed "
      "WHERE r.kind = 20 AND r.visit IS NOT NULL ORDER BY r.record, e.id LIMIT 1"));
  REQUIRE(taken(rows.step()));
  const Uuid visit = rows.uuid(0);
  const Uuid who = rows.uuid(1);
  const Uuid part = rows.uuid(2);
  rows.reset();
  auto of_visit =
      taken(shelf.opened->tables().prepare("SELECT feed FROM reading WHERE visit = ?1"));
  of_visit.bind(1, visit);
  REQUIRE(taken(of_visit.step()));
  const Uuid site = of_visit.uuid(0);
  of_visit.reset();
  taken(shelf.opened->save(std::vector<Entry>{{site, 20, part, who, {{1, visit}, {2, 3}}, {}}}));
  const auto whole = taken(read_portfolio(shelf.opened->tables(), Date{july_2026_days + 4000}));
  CHECK(std::ranges::any_of(whole.readings, [&](const forecast::Reading& reading) {
    const auto& own = whole.parts[static_cast<std::size_t>(reading.part)];
    return own.site != whole.visits[static_cast<std::size_t>(reading.visit)].site;
  }));
  check_site_by_site(*shelf.opened, Date{july_2026_days + 4000});
}

TEST_CASE("a register fitted site by site is fitted as one", "[schema][exchange][forecast]") {
  Shelf shelf;
  taken(shelf.import(small_folder()));
  const Date as_of{july_2026_days};
  const auto whole = taken(read_portfolio(shelf.opened->tables(), as_of));
  const auto fit = taken(forecast::fit_portfolio(whole, {.threads = 1}));
  test::FitInMemory wanted(fit, whole, 17);
  const auto made = taken(
      fit_register(taken(PortfolioSites::open(shelf.opened->tables(), as_of)), {.threads = 1}, 17));
  CHECK(made->key() == wanted.key());
  CHECK(made->as_of() == as_of);
  CHECK(made->records() == 17);
  CHECK(forecast::bytes_of(made->head()) == forecast::bytes_of(wanted.head()));
  check_same_inputs(made->sites(), wanted.sites());
  REQUIRE(made->sites().size() == 2);
  for (const auto& [site, parts, digest] : made->sites())
    CHECK(forecast::bytes_of(taken(made->fit_of(site))) ==
          forecast::bytes_of(taken(wanted.fit_of(site))));
}
