// How high water stood, as far as the register knows it.

#include <catch2/catch.hpp>

#include "mobile/elevation/water_shapes.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr int ice = 1, flood = 2, storm = 6;
constexpr std::int64_t day_ms = 24LL * 60 * 60 * 1000;

Entry event(const WalkedSite& site, const Uuid& subject, int what, std::int64_t from_ms,
            std::optional<std::int64_t> up_mm) {
  cbor::Map body{{1, what}, {2, from_ms}};
  const cbor::Array place{515'000'000, -21'000'000};
  if (up_mm) body.set(6, cbor::Array{place, *up_mm});
  return {site.site, 9, subject, site.person, body, {}};
}

const std::vector<SheetWaterMark>& water_after(Walking& walking, std::vector<Entry> entries) {
  walking.switch_off();
  walking.write_down(entries);
  walking.switch_on();
  return walking.walk().run()->sheet()->water;
}

}  // namespace

TEST_CASE("no record of a level, no line", "[mobile][water]") {
  Walking walking;
  const WalkedSite& site = walking.site();
  const std::int64_t now = walking.clock().now().ms;
  CHECK(walking.walk().run()->sheet()->water.empty());
  CHECK(water_after(walking, {event(site, site.run, flood, now - day_ms, {}),
                              event(site, site.run, storm, now - day_ms, 300)})
            .empty());
}

TEST_CASE("the line stands where the last flood and the last ice did", "[mobile][water]") {
  Walking walking;
  const WalkedSite& site = walking.site();
  const std::int64_t now = walking.clock().now().ms;
  const auto& water = water_after(walking, {event(site, site.run, flood, now - 400 * day_ms, 700),
                                            event(site, site.run, flood, now - 2 * day_ms, 340),
                                            event(site, site.site, ice, now - 9 * day_ms, -60)});
  REQUIRE(water.size() == 2);
  CHECK(water[0].what == EventKind::flood);
  CHECK(water[0].up_mm == 340);
  CHECK(water[0].day == utc_day({now - 2 * day_ms}));
  CHECK(water[1].what == EventKind::ice);
  CHECK(water[1].up_mm == -60);  // the site's, which has no other run
  CHECK(elevation::spoken_water(water[0]).endsWith(", 0.34 m above the deck"));
  CHECK(elevation::spoken_water(water[1]).endsWith(", 0.06 m under the deck"));
}

TEST_CASE("a level of a site with other runs is not this run's", "[mobile][water]") {
  Walking walking;
  const WalkedSite& site = walking.site();
  const std::int64_t now = walking.clock().now().ms;
  CHECK(water_after(walking, {event(site, site.site, flood, now, 340),
                              created(site.site, id_of(4, 9), 4, site.zone, {{1, "Other"}})})
            .empty());
}
