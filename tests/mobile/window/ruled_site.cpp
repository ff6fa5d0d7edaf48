#include "tests/mobile/window/ruled_site.h"

namespace kneerail::tests {
namespace {

Entry set(const Uuid& feed, const Uuid& thing, int field, cbor::Value value) {
  const cbor::Array change{field, std::move(value), cbor::Array{}};
  return {feed, 2, thing, {}, {{1, cbor::Array{change}}}, {}};
}

}  // namespace

void give_rules(ShownWindow& shown) {
  const WalkedSite& site = shown.site();
  const cbor::Map geometry{{1, cbor::Array{cbor::Array{2, 600, 1'100}}}, {3, 120}, {4, 100}};
  const cbor::Map limits{{11, geometry}, {18, cbor::Map{{1, 2}, {2, 3}}}};
  constexpr int gate = 3;
  shown.rooms().store().save(
      {set(site.organisation, site.rules, 3, limits), set(site.site, site.run, 6, 2),
       set(site.site, site.run, 7, 3'200), set(site.site, site.run, 12, 2),
       set(site.site, site.bays[1], 3, gate)},
      {}, [](const Result<>& saved) { REQUIRE(saved); });
  shown.settle();
  shown.switch_off();
  shown.switch_on();
}

}  // namespace kneerail::tests
