// A site comes into the register as it was said, and what is changed later says what it was changed
// from.

#include "schema/store/site_sheet.h"
#include "core/records/registers.h"
#include "tests/schema/register_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

SiteWriter writer(Register& opened) {
  return {id_of(10, 1), "Europe/Oslo", [&] { return opened.mint(); }};
}

std::vector<Entry> entries(Register& opened, const SaidSite& site, const SiteFacts& facts) {
  return taken(entries_of(site, facts, opened.tables(), writer(opened)));
}

std::string why_not(Register& opened, const SaidSite& site) {
  const SiteFacts facts = taken(read_site_facts(opened.tables(), {}));
  const auto made = entries_of(site, facts, opened.tables(), writer(opened));
  return made ? std::string() : made.error().message;
}

SaidSite lock_island() {
  SaidSite site;
  site.id = id_of(2, 50);
  site.name = "Lock Island";
  site.zones = {{id_of(3, 50), "Deck", 3, Exposure::open},
                {id_of(3, 51), "Under the deck", 0, Exposure::sheltered}};
  return site;
}

}  // namespace

TEST_CASE("the first site of an empty register brings its owner with it", "[site-sheet]") {
  const Folder folder;
  World world;
  auto opened = taken(Register::open(world.options(folder.path(), Mode::create)));
  SaidSite site = lock_island();
  CHECK(why_not(*opened, site).find("whose rails") != std::string::npos);
  site.owner = "Harbour Authority of Skerrymouth";
  site.new_depots = {{id_of(12, 1), "Fish Quay depot"}, {id_of(12, 2), "typed and not wanted"}};
  site.depot = id_of(12, 1);
  const Digest particulars = taken(opened->keep_object(std::vector<std::uint8_t>{1, 2, 3}));
  site.new_people = {{id_of(10, 5), "RH", particulars}, {id_of(10, 6), "XX", {}}};
  site.people = {id_of(10, 5)};
  const SiteFacts nothing = taken(read_site_facts(opened->tables(), {}));
  taken(opened->save(entries(*opened, site, nothing)));
  CHECK_FALSE(opened->organisation().is_zero());
  const SiteFacts facts = taken(read_site_facts(opened->tables(), site.id));
  REQUIRE(facts.there);
  CHECK(facts.there->name == "Lock Island");
  REQUIRE(facts.there->zones.size() == 2);
  CHECK(facts.there->zones[0].category == 3);
  CHECK(facts.there->zones[1].category == 0);
  CHECK(facts.there->zones[1].exposure == Exposure::sheltered);
  CHECK(facts.there->depot == id_of(12, 1));
  CHECK(facts.there->people == site.people);
  REQUIRE(facts.people.size() == 1);  // who is not told stays out
  CHECK(facts.people[0].particulars == particulars);
  CHECK(facts.depots.size() == 1);
  CHECK(counted(*opened, "SELECT count(*) FROM entity WHERE type = 1") == 1);
  check_whole(*opened);
}

TEST_CASE("a site without a name or a zone says what to do", "[site-sheet]") {
  MadeRegister made;
  SaidSite site = lock_island();
  CHECK(why_not(*made.opened, site).empty());
  site.zones[1].name = "Deck";
  CHECK(why_not(*made.opened, site).find("Two zones are named Deck") != std::string::npos);
  site.zones.clear();
  CHECK(why_not(*made.opened, site).find("no zone yet") != std::string::npos);
  site.name = "North Mole";
  CHECK(why_not(*made.opened, site).find("named North Mole already") != std::string::npos);
  site.name.clear();
  CHECK(why_not(*made.opened, site).find("no name yet") != std::string::npos);
}

TEST_CASE("only what was changed is written, with the values it was changed from", "[site-sheet]") {
  MadeRegister made;
  const SiteFacts facts = taken(read_site_facts(made.opened->tables(), made.site.site));
  REQUIRE(facts.there);
  CHECK(entries(*made.opened, *facts.there, facts).empty());
  SaidSite site = *facts.there;
  site.zones[0].exposure = Exposure::spray;
  site.zones.push_back({id_of(3, 60), "Lee side", 2, Exposure::sheltered});
  site.people = {made.site.person};
  const auto changed = entries(*made.opened, site, facts);
  REQUIRE(changed.size() == 3);
  CHECK(changed[0].kind == Set::kind);
  CHECK(changed[0].feed == made.site.organisation);
  CHECK(changed[1].subject == made.site.zone);
  taken(made.opened->save(changed));
  made.world.clock.move_on(1000);
  const SiteFacts then = taken(read_site_facts(made.opened->tables(), made.site.site));
  SaidSite again = *then.there;
  REQUIRE(again.zones.size() == 2);
  CHECK(again.zones[1].exposure == Exposure::spray);
  again.zones[1].exposure = Exposure::open;
  taken(made.opened->save(entries(*made.opened, again, then)));
  CHECK(counted(*made.opened,
                "SELECT count(*) FROM field_edit WHERE field = 3 AND superseded = 0 "
                "AND entity IN (SELECT id FROM entity WHERE type = 3)") == 2);
  CHECK(counted(*made.opened, "SELECT count(*) FROM disagreement") == 0);
}
