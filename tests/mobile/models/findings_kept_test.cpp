// What the Findings room is told of a site: how each finding stands, and in which order they hang.

#include <algorithm>
#include <catch2/catch.hpp>

#include "mobile/models/finding_pen.h"
#include "schema/store/finding_store.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr int split = 1, loose = 2, rust = 4;
constexpr int closed_off = 1, taped = 3;

void found(Walking& walking, int part, int kind, int measure = 0) {
  walking.walk().choosePart(part);
  walking.walk().openPad(WalkModel::FindingPad);
  FindingPen& pen = *walking.walk().finding();
  pen.chooseKind(kind);
  if (measure > 0) pen.touchMeasure(measure);
  pen.keep();
  walking.settle();
  walking.clock().move_on(60'000);
}

std::vector<KeptFinding> read(Walking& walking, bool ended_too = false) {
  return taken(read_findings(walking.store().reader().tables(), {walking.site().site, ended_too}));
}

void write(Walking& walking, const Uuid& finding, int kind, const cbor::Map& body) {
  walking.store().save({{walking.site().site, kind, finding, walking.site().person, body, {}}}, {},
                       [](const Result<>& saved) { REQUIRE(saved); });
  walking.settle();
}

}  // namespace

TEST_CASE("where two have one number their writers' initials follow", "[mobile][finding]") {
  Walking walking;
  found(walking, walking.tee(0), rust);
  const Uuid other = id_of(10, 7);
  const WalkedSite& site = walking.site();
  walking.switch_off();
  walking.write_down({created(site.organisation, other, 10, site.organisation, {{2, "JV"}}),
                      {site.site,
                       30,
                       site.crosses[1],
                       other,
                       {{1, site.last_visit}, {2, rust}, {3, 3}, {4, false}, {7, 1}},
                       {}}});
  walking.switch_on();
  std::vector<std::string> numbers;
  for (const KeptFinding& one : read(walking)) numbers.push_back(one.number);
  CHECK(numbers == std::vector<std::string>{"F-1 MO", "F-1 JV"});
  for (const SheetFinding& one : walking.read_whole().findings)
    CHECK(std::find(numbers.begin(), numbers.end(), one.number) != numbers.end());
}

TEST_CASE("findings hang: not made safe, made safe, by the day to mend, by grade",
          "[mobile][finding]") {
  Walking walking;
  found(walking, walking.tee(0), rust);                 // F-1
  found(walking, walking.cross(0), loose);              // F-2
  found(walking, walking.cross(1), split, closed_off);  // F-3
  found(walking, walking.cross(2), split, taped);       // F-4
  found(walking, walking.tee(1), rust);                 // F-5
  auto all = read(walking);
  REQUIRE(all.size() == 5);
  const auto order = [](const std::vector<KeptFinding>& findings) {
    std::string numbers;
    for (const KeptFinding& one : findings) numbers += one.number + " ";
    return numbers;
  };
  CHECK(order(all) == "F-4 F-3 F-2 F-1 F-5 ");
  CHECK(all[0].hazard == HazardState::open);
  CHECK(all[0].measures == std::vector{Measure::taped});
  CHECK(all[1].hazard == HazardState::made_safe);
  REQUIRE(all[1].safe_since);
  CHECK(all[1].look_again_by->ms - all[1].safe_since->ms == 24LL * 60 * 60 * 1000);
  for (const KeptFinding& one : all) CHECK(one.run == walking.site().run);

  constexpr int next_step = 35, mend = 3, ended = 34, gone = 3, closure_look = 37;
  write(walking, all[4].record, next_step, {{1, mend}, {2, 22'500}});
  write(walking, all[1].record, closure_look, {{1, gone}});
  CHECK(order(read(walking)) == "F-3 F-4 F-5 F-2 F-1 ");
  const auto standing = taken(hazards_standing(walking.store().reader().tables()));
  CHECK(order(standing) == "F-3 F-4 ");
  CHECK(standing[0].is_gone());
  CHECK_FALSE(standing[1].is_gone());

  write(walking, all[0].record, ended,
        {{1, 1}, {3, "welded"}, {4, cbor::Array{all[0].record}}, {5, 1}});
  CHECK(order(read(walking)) == "F-3 F-5 F-2 F-1 ");
  const auto with_ended = read(walking, true);
  CHECK(order(with_ended) == "F-3 F-5 F-2 F-1 F-4 ");
  CHECK(with_ended.back().ended_how == HowEnded::repaired);
  CHECK(taken(findings_ended(walking.store().reader().tables(), walking.site().site)) == 1);
  CHECK(taken(last_look_at(walking.store().reader().tables(), walking.site().run)));
  CHECK(taken(last_finding_number(walking.store().reader().tables(), walking.site().site,
                                  walking.site().person)) == 5);
}
