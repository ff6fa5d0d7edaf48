#include <algorithm>
#include <tuple>

#include "schema/exchange/portfolio_export.h"
#include "schema/exchange/portfolio_folder.h"
#include "schema/store/portfolio_store.h"
#include "schema/time_zone_file.h"
#include "tests/schema/exchange/portfolio_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr int july_2026_days = 20'635;  // 2026-07-01

void export_to(Shelf& shelf, const std::filesystem::path& folder) {
  exchange::ExportOptions options;
  options.folder = folder;
  taken(exchange::export_portfolio(shelf.opened->tables(), options));
}

/// What a reading says, with its part and visit by their own words.
std::string words_of(const forecast::Portfolio& all, const forecast::Reading& one) {
  const auto& visit = all.visits[static_cast<std::size_t>(one.visit)];
  std::ostringstream text;
  text << all.parts[static_cast<std::size_t>(one.part)].id << ' ' << visit.site << ' '
       << to_text(visit.day) << ' ' << visit.inspector << " quantity "
       << static_cast<int>(one.quantity) << " spot " << one.spot << " value " << one.value
       << " censoring " << static_cast<int>(one.censoring) << " surface "
       << static_cast<int>(one.surface) << " how " << static_cast<int>(one.how) << " carried "
       << one.carried << " set " << one.wrench_set_nm.value_or(-1) << " seen "
       << (one.seen ? to_text(*one.seen) : "");
  if (one.quantity == forecast::Quantity::coating_um) text << " gauge " << visit.coating_gauge;
  if (one.quantity == forecast::Quantity::torque_nm) text << " wrench " << visit.wrench;
  return text.str();
}

std::vector<std::string> words_of(const forecast::Portfolio& all) {
  std::vector<std::string> words;
  for (const auto& one : all.readings) words.push_back(words_of(all, one));
  std::sort(words.begin(), words.end());
  return words;
}

std::vector<std::string> words_of_left_out(const forecast::Portfolio& all) {
  std::vector<std::string> words;
  for (const auto& one : all.left_out) words.push_back(one.part + " " + one.reason);
  std::sort(words.begin(), words.end());
  return words;
}

void check_near(const std::optional<double>& a, const std::optional<double>& b, double tolerance) {
  REQUIRE(a.has_value() == b.has_value());
  if (a) CHECK(*a == Approx(*b).margin(tolerance));
}

void check_same(const forecast::Part& a, const forecast::Part& b) {
  INFO(a.id << " and " << b.id);
  CHECK(std::tie(a.id, a.site, a.zone, a.run, a.kind, a.material, a.painted, a.exposure, a.category,
                 a.prior_is_category, a.installed, a.reference_areas, a.component_type) ==
        std::tie(b.id, b.site, b.zone, b.run, b.kind, b.material, b.painted, b.exposure, b.category,
                 b.prior_is_category, b.installed, b.reference_areas, b.component_type));
  CHECK(a.chainage_m == Approx(b.chainage_m).margin(1e-9));
  // A zone keeps its first-year loss to 0.001 um: a 20-year mean to half of 0.741 of that.
  check_near(a.zinc_rate_um_per_year, b.zinc_rate_um_per_year, 0.0004);
  check_near(a.steel_rate_um_per_year, b.steel_rate_um_per_year, 0.0004);
  check_near(a.zinc_rate_ln_sd, b.zinc_rate_ln_sd, 1e-9);
  check_near(a.nominal_coating_um, b.nominal_coating_um, 1e-9);
  check_near(a.first_maintenance_um, b.first_maintenance_um, 1e-9);
  check_near(a.wall_nominal_mm, b.wall_nominal_mm, 1e-9);
  check_near(a.wall_limit_mm, b.wall_limit_mm, 1e-9);
  check_near(a.torque_target_nm, b.torque_target_nm, 1e-9);
  check_near(a.torque_minimum_nm, b.torque_minimum_nm, 1e-9);
}

}  // namespace

TEST_CASE("the tables of an import say what the files say", "[schema][exchange]") {
  Shelf shelf;
  taken(shelf.import(small_folder()));
  const Date as_of{july_2026_days - 1};
  const auto files = taken(exchange::read_portfolio_folder(small_folder()));
  const auto tables = taken(read_portfolio(shelf.opened->tables(), as_of));
  CHECK(files.portfolio.as_of == as_of);
  REQUIRE(tables.parts.size() == files.portfolio.parts.size());
  for (std::size_t i = 0; i < tables.parts.size(); ++i)
    check_same(tables.parts[i], files.portfolio.parts[i]);
  CHECK(tables.visits.size() == files.portfolio.visits.size());
  CHECK(words_of(tables) == words_of(files.portfolio));
  CHECK(words_of_left_out(tables) == words_of_left_out(files.portfolio));
  REQUIRE(tables.works.size() == files.portfolio.works.size());
  for (std::size_t i = 0; i < tables.works.size(); ++i) {
    const auto& a = tables.works[i];
    const auto& b = files.portfolio.works[i];
    CHECK(std::tie(a.part, a.day, a.action, a.new_nominal_coating_um, a.as_left_nm, a.screw) ==
          std::tie(b.part, b.day, b.action, b.new_nominal_coating_um, b.as_left_nm, b.screw));
  }
  REQUIRE(tables.limits.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(tables.limits[i].site == files.portfolio.limits[i].site);
    CHECK(tables.limits[i].zinc_gone_um == 5.0);
    CHECK(tables.limits[i].replace_grade == 4);
  }
}

TEST_CASE("a forecast as of a day knows nothing later", "[schema][exchange]") {
  Shelf shelf;
  taken(shelf.import(small_folder()));
  const auto day = date_from_text("2018-06-11").value();
  const auto tables = taken(read_portfolio(shelf.opened->tables(), day));
  const auto files = taken(exchange::read_portfolio_folder(small_folder(), day)).portfolio;
  CHECK(words_of(tables) == words_of(files));
  CHECK(tables.visits.size() == 3);
  CHECK(tables.works.size() == 4);
  CHECK(files.works.size() == 4);
}

TEST_CASE("files and tables agree on days in every time zone", "[schema][exchange]") {
  Shelf shelf;
  taken(shelf.import(small_folder()));
  const Uuid organisation = shelf.opened->organisation();
  const auto name_zone = [&](const char* zone) {
    Entry set{organisation, 2, organisation, {}, {}, {}};
    set.body.set(1, cbor::Array{cbor::Array{4, zone, cbor::Array{}}});
    taken(shelf.opened->save(std::vector<Entry>{set}));
  };
  // Reading 12 was seen at 2015-03-28 13:30 UTC: the 29th in Auckland, 13 hours ahead.
  const auto [zone, day] = GENERATE(std::pair("Pacific/Auckland", "2015-03-29"),
                                    std::pair("America/Anchorage", "2015-03-28"));
  INFO(zone);
  name_zone(zone);
  const Date as_of{july_2026_days};
  const auto tables = taken(read_portfolio(shelf.opened->tables(), as_of));
  const auto files =
      taken(exchange::read_portfolio_folder(small_folder(), as_of, {}, taken(read_time_zone(zone))))
          .portfolio;
  CHECK(words_of(tables) == words_of(files));
  const auto words = words_of(tables);
  CHECK(std::count(words.begin(), words.end(),
                   "k3 mole 2015-03-30 i2 quantity 0 spot 1 value 72.2 censoring 0 surface 0 how 0 "
                   "carried 0 set -1 seen " +
                       std::string(day) + " gauge g2") == 1);
}

TEST_CASE("the optional columns reach the forecast's input", "[schema][exchange]") {
  Shelf shelf;
  taken(shelf.import(small_folder()));
  const auto all = taken(read_portfolio(shelf.opened->tables(), Date{july_2026_days}));
  const auto words = words_of(all);
  const auto said = [&](const std::string& wanted) {
    return std::count(words.begin(), words.end(), wanted) == 1;
  };
  CHECK(
      said("k3 mole 2015-03-30 i1 quantity 2 spot 2 value 31.5 censoring 1 surface 0 how 0 "
           "carried 0 set 39 seen  wrench t1"));
  CHECK(
      said("k3 mole 2015-03-30 i2 quantity 2 spot 3 value 30.4 censoring 1 surface 0 how 0 "
           "carried 0 set -1 seen  wrench t1"));
  CHECK(
      said("k3 mole 2015-03-30 i2 quantity 0 spot 1 value 72.2 censoring 0 surface 0 how 0 "
           "carried 0 set -1 seen 2015-03-28 gauge g2"));
  CHECK(
      said("k6 mole 2015-03-30 i2 quantity 3 spot 0 value 3 censoring 0 surface 0 how 2 "
           "carried 1 set -1 seen "));
  CHECK(
      said("k2 mole 2021-10-03 i1 quantity 0 spot 1 value 35 censoring 0 surface 3 how 0 "
           "carried 0 set -1 seen  gauge g1"));
  CHECK(
      said("k2 mole 2021-10-03 i1 quantity 1 spot 7 value 3.05 censoring 0 surface 0 how 0 "
           "carried 0 set -1 seen "));
}

TEST_CASE("a coating that is no zinc is left out with its reason", "[schema][exchange]") {
  const auto all = taken(exchange::read_portfolio_folder(small_folder())).portfolio;
  REQUIRE(all.left_out.size() == 1);
  CHECK(all.left_out[0].reading == "24");
  CHECK(all.left_out[0].part == "=k8");
  CHECK(all.left_out[0].reason == "not_zinc");
}

TEST_CASE("what is exported, imported and exported again has the same bytes",
          "[schema][exchange]") {
  Shelf first;
  taken(first.import(small_folder()));
  const auto once = first.folder.path() / "once";
  export_to(first, once);
  Shelf second(2);
  const auto report = taken(second.import(once));
  for (const auto& bad : report.bad.kept()) UNSCOPED_INFO(to_text(bad));
  REQUIRE(report.imported);
  const auto twice = second.folder.path() / "twice";
  export_to(second, twice);
  const auto a = files_of(once);
  const auto b = files_of(twice);
  for (const auto& [name, text] : a) {
    INFO(name);
    CHECK(b.at(name) == text);
  }
  CHECK(a.at("components.csv").find("'=k8,slip") != std::string::npos);
}

TEST_CASE("an exported folder gives equal tables in a new register", "[schema][exchange]") {
  Shelf first;
  taken(first.import(small_folder()));
  export_to(first, first.folder.path() / "once");
  Shelf second(2);
  REQUIRE(taken(second.import(first.folder.path() / "once")).imported);
  const std::string queries[] = {
      "SELECT group_concat(hex(record) || hex(subject) || hex(coalesce(visit, '')) || "
      "hex(coalesce(life, '')) || hex(who) || hex(coalesce(instrument, '')) || t || "
      "coalesce(v1, '') || hex(coalesce(replicates, '')) || coalesce(spot, '') || "
      "coalesce(screw, '') || coalesce(censoring, '') || coalesce(method, '') || "
      "coalesce(wrench_set_tenth_nm, '') || carried || coalesce(how, '')) FROM reading",
      "SELECT group_concat(hex(id) || type || hex(feed) || hex(coalesce(parent, '')) || "
      "coalesce(import_reference, '') || coalesce(name, '') || coalesce(chainage_mm, '') || "
      "hex(coalesce(rest, ''))) FROM entity WHERE type IN (2, 3, 4, 5, 6, 7)",
      "SELECT group_concat(hex(record) || hex(subject) || action || day || "
      "coalesce(as_left_tenth_nm, '')) FROM work",
      "SELECT group_concat(hex(component) || hex(life) || coalesce(started_t, '')) FROM life"};
  for (const auto& query : queries) {
    INFO(query);
    auto a = taken(first.opened->tables().prepare(query));
    auto b = taken(second.opened->tables().prepare(query));
    REQUIRE(taken(a.step()));
    REQUIRE(taken(b.step()));
    CHECK(a.text(0).size() > 100);
    CHECK(std::string(a.text(0)) == std::string(b.text(0)));
  }
}
