// Rules by chance: whatever the sentence, the run hangs together.

#include <catch2/catch.hpp>
#include <set>

#include "core/base/world.h"
#include "core/layout/laid_run.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::layout;

namespace {

template <class T>
T one_of(SplitMix64& chance, std::initializer_list<T> choices) {
  const auto place = chance.between(0, static_cast<std::int64_t>(choices.size()) - 1);
  return *(choices.begin() + place);
}

RunRule rule_by_chance(SplitMix64& chance) {
  RunRule rule;
  rule.posts = static_cast<int>(chance.between(2, 40));
  rule.first_number = static_cast<int>(chance.between(0, 500));
  rule.spacing_mm = chance.between(500, 3000);
  rule.height_mm = chance.between(600, 1500);
  rule.rails = static_cast<int>(chance.between(1, 4));
  rule.made = one_of<Made>(chance, {{System::slip_on, Material::steel, Protection::hot_dip_zinc},
                                    {System::slip_on, Material::aluminium, Protection::anodised},
                                    {System::welded, Material::steel, Protection::paint_on_steel}});
  rule.base = static_cast<BaseKind>(chance.between(1, 5));
  rule.joint = one_of(chance, {WhatItDoes::three_way_tee, WhatItDoes::adjustable_swivel});
  rule.end = one_of(chance, {WhatItDoes::elbow, WhatItDoes::three_way_tee});
  rule.bays = one_of(chance, {BayKind::rails, BayKind::mesh_infill});
  rule.toe_board = chance.between(0, 1) == 1;
  rule.sleeve_every_bays = static_cast<int>(chance.between(0, 5));
  for (std::int64_t i = chance.between(0, 4); i > 0; --i) {
    BayChange& bay = rule.bay_changes[static_cast<int>(chance.between(0, 45))];
    bay.kind = static_cast<BayKind>(chance.between(1, 4));
    bay.length_mm = chance.between(500, 2500);
    bay.rise_mm = chance.between(-400, 400);
  }
  for (std::int64_t i = chance.between(0, 3); i > 0; --i)
    rule.post_changes[static_cast<int>(chance.between(0, 45))].turn_degrees =
        one_of(chance, {-90, -45, 45, 90});
  for (std::int64_t i = chance.between(0, 3); i > 0; --i)
    rule.joint_changes[{static_cast<int>(chance.between(0, 45)),
                        static_cast<int>(chance.between(0, 4))}] = WhatItDoes::cross;
  return rule;
}

void check_posts(const LaidRun& run, const RunRule& rule) {
  REQUIRE(run.posts.size() == static_cast<std::size_t>(rule.posts));
  REQUIRE(run.bays.size() + 1 == run.posts.size());
  std::set<std::string> labels;
  for (std::size_t i = 0; i < run.posts.size(); ++i) {
    CHECK(labels.insert(run.posts[i].label).second);
    if (i > 0) CHECK(run.posts[i].chainage_mm > run.posts[i - 1].chainage_mm);
  }
  CHECK(run.posts.front().chainage_mm == 0);
  for (std::size_t i = 0; i < run.bays.size(); ++i) {
    const bool railed =
        run.bays[i].kind == BayKind::rails || run.bays[i].kind == BayKind::mesh_infill;
    CHECK(run.bays[i].from == static_cast<int>(i));
    CHECK(run.bays[i].rails == (railed ? rule.rails : 0));
  }
}

/// Each part hangs on a post, or between two, no higher than the rail and at its own place.
void check_parts(const LaidRun& run, const RunRule& rule) {
  std::set<std::tuple<int, int, std::int64_t, std::int64_t, int, int>> places;
  int post_tubes = 0;
  int before = 0;
  for (const LaidPart& part : run.parts) {
    REQUIRE(part.post >= 0);
    REQUIRE(part.post < rule.posts);
    REQUIRE(part.post >= before);
    before = part.post;
    REQUIRE(part.type < static_cast<int>(run.types.size()));
    CHECK(part.up_mm >= 0);
    CHECK(part.up_mm <= rule.height_mm);
    CHECK(part.screws >= 0);
    CHECK(part.screws <= 16);
    const auto post = static_cast<std::size_t>(part.post);
    if (part.bay >= 0) {
      REQUIRE(part.bay == part.post);
      REQUIRE(part.bay < static_cast<int>(run.bays.size()));
      CHECK(run.bays[post].kind != BayKind::open_gap);
      CHECK(part.along_mm > 0);
      CHECK(part.along_mm < run.posts[post + 1].chainage_mm - run.posts[post].chainage_mm);
    } else {
      CHECK(std::abs(part.along_mm) <= 60);
    }
    post_tubes += part.role == Role::post_tube ? 1 : 0;
    const auto place = std::tuple(part.post, part.bay, part.along_mm, part.up_mm,
                                  static_cast<int>(part.role), part.type);
    CHECK(places.insert(place).second);
    if (part.whole >= 0)
      CHECK(run.parts[static_cast<std::size_t>(part.whole)].role == Role::welded_section);
  }
  CHECK(post_tubes == rule.posts);
}

/// What a rail of a bay needs at both its ends: a joint at that height.
void check_joints(const LaidRun& run) {
  std::set<std::pair<int, std::int64_t>> joints;
  for (const LaidPart& part : run.parts)
    if (part.bay < 0 && part.rail >= 0) joints.insert({part.post, part.up_mm});
  for (const LaidPart& part : run.parts) {
    if (part.role != Role::top_rail && part.role != Role::mid_rail) continue;
    CHECK(joints.contains({part.post, part.up_mm}));
    CHECK(joints.contains({part.post + 1, part.up_mm}));
  }
}

}  // namespace

TEST_CASE("whatever the sentence, posts, bays and parts hang together",
          "[core][layout][property]") {
  for (const std::uint64_t seed : test::seeds(1, 1000)) {
    INFO(test::reproduce(seed));
    SplitMix64 chance(seed);
    const RunRule rule = rule_by_chance(chance);
    const auto run = lay_out(rule);
    INFO((run ? std::string() : run.error().message));
    REQUIRE(run);
    check_posts(*run, rule);
    check_parts(*run, rule);
    check_joints(*run);
  }
}

TEST_CASE("the line of a run is as long as its chainage", "[core][layout][property]") {
  for (const std::uint64_t seed : test::seeds(1, 300)) {
    INFO(test::reproduce(seed));
    SplitMix64 chance(seed);
    const LaidRun run = *lay_out(rule_by_chance(chance));
    if (run.line.empty()) continue;
    double length_mm = 0;
    for (std::size_t i = 1; i < run.line.size(); ++i) {
      double squares = 0;
      for (std::size_t axis = 0; axis < 3; ++axis) {
        const auto step = static_cast<double>(run.line[i][axis] - run.line[i - 1][axis]);
        squares += step * step;
      }
      length_mm += std::sqrt(squares);
    }
    const double rounding_mm = 2.0 * static_cast<double>(run.line.size());
    CHECK(std::abs(length_mm - static_cast<double>(run.posts.back().chainage_mm)) < rounding_mm);
  }
}
