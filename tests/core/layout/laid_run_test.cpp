// Runs laid out by rule, one sentence at a time.

#include <catch2/catch.hpp>

#include "core/layout/laid_run.h"

using namespace kneerail;
using namespace kneerail::layout;

namespace {

LaidRun laid(const RunRule& rule) {
  auto run = lay_out(rule);
  INFO((run ? std::string() : run.error().message));
  REQUIRE(run);
  return *run;
}

int count(const LaidRun& run, Role role) {
  int found = 0;
  for (const LaidPart& part : run.parts) found += part.role == role ? 1 : 0;
  return found;
}

/// What the joint of a post and a rail does; none: there is no joint.
std::optional<WhatItDoes> joint(const LaidRun& run, int post, int rail) {
  for (const LaidPart& part : run.parts)
    if (part.post == post && part.rail == rail)
      return run.types[static_cast<std::size_t>(part.type)].does;
  return std::nullopt;
}

bool is_refused(const RunRule& rule, const std::string& words) {
  const auto run = lay_out(rule);
  if (run) return false;
  UNSCOPED_INFO(run.error().message);
  return run.error().fault == Fault::invalid_input &&
         run.error().message.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("24 posts at 1.50 m with two rails have 72 fittings and 69 m of rail", "[core][layout]") {
  const LaidRun run = laid({});
  CHECK(run.posts.size() == 24);
  CHECK(run.bays.size() == 23);
  CHECK(run.posts.back().chainage_mm == 34'500);
  CHECK(run.posts.back().label == "24");
  CHECK(run.fittings() == 72);
  CHECK(run.rail_tube_mm() == 69'000);
  CHECK(run.line.empty());
  CHECK(joint(run, 0, 0) == WhatItDoes::elbow);
  CHECK(joint(run, 0, 1) == WhatItDoes::corner_tee);
  CHECK(joint(run, 1, 0) == WhatItDoes::three_way_tee);
  CHECK(joint(run, 1, 1) == WhatItDoes::cross);
  CHECK(joint(run, 23, 0) == WhatItDoes::elbow);
}

TEST_CASE("rails lie at equal distances under the top one", "[core][layout]") {
  RunRule rule;
  rule.height_mm = 1200;
  rule.rails = 3;
  const LaidRun run = laid(rule);
  std::vector<std::int64_t> up;
  for (const LaidPart& part : run.parts)
    if (part.bay == 4) up.push_back(part.up_mm);
  CHECK(up == std::vector<std::int64_t>{1200, 800, 400});
}

TEST_CASE("rails end at both sides of a gap, and the gate in a bay has none", "[core][layout]") {
  RunRule rule;
  rule.posts = 6;
  rule.bay_changes[1].kind = BayKind::open_gap;
  rule.bay_changes[3].kind = BayKind::gate;
  const LaidRun run = laid(rule);
  CHECK(run.bays[1].rails == 0);
  CHECK(run.bays[3].kind == BayKind::gate);
  CHECK(count(run, Role::gate) == 1);
  CHECK(count(run, Role::top_rail) == 3);
  CHECK(joint(run, 1, 0) == WhatItDoes::elbow);
  CHECK(joint(run, 2, 0) == WhatItDoes::elbow);
  CHECK(joint(run, 2, 1) == WhatItDoes::corner_tee);
  CHECK(joint(run, 4, 1) == WhatItDoes::corner_tee);
}

TEST_CASE("a post between two gaps has a cap and no joint below", "[core][layout]") {
  RunRule rule;
  rule.posts = 4;
  rule.bay_changes[0].kind = BayKind::open_gap;
  rule.bay_changes[1].kind = BayKind::open_gap;
  const LaidRun run = laid(rule);
  CHECK(joint(run, 1, 0) == WhatItDoes::end_cap);
  CHECK_FALSE(joint(run, 1, 1));
}

TEST_CASE("a tee at the end holds a cap beside it, away from the rail", "[core][layout]") {
  RunRule rule;
  rule.posts = 3;
  rule.end = WhatItDoes::three_way_tee;
  const LaidRun run = laid(rule);
  std::vector<std::int64_t> caps;
  for (const LaidPart& part : run.parts)
    if (run.types[static_cast<std::size_t>(part.type)].does == WhatItDoes::end_cap)
      caps.push_back(part.along_mm);
  CHECK(caps == std::vector<std::int64_t>{-60, 60});
}

TEST_CASE("one joint is as somebody said, and the rule holds for the others", "[core][layout]") {
  RunRule rule;
  rule.joint_changes[{11, 1}] = WhatItDoes::adjustable_swivel;
  const LaidRun run = laid(rule);
  CHECK(joint(run, 11, 1) == WhatItDoes::adjustable_swivel);
  CHECK(joint(run, 10, 1) == WhatItDoes::cross);
  CHECK(run.fittings() == 72);
}

TEST_CASE("what is said of a post that is gone does nothing and is not lost", "[core][layout]") {
  RunRule rule;
  rule.joint_changes[{11, 1}] = WhatItDoes::adjustable_swivel;
  rule.posts = 3;
  RunRule plain;
  plain.posts = 3;
  CHECK(laid(rule).parts.size() == laid(plain).parts.size());
  rule.posts = 24;
  CHECK(joint(laid(rule), 11, 1) == WhatItDoes::adjustable_swivel);
}

TEST_CASE("a bay of its own length moves the posts after it", "[core][layout]") {
  RunRule rule;
  rule.posts = 4;
  rule.bay_changes[1].length_mm = 900;
  const LaidRun run = laid(rule);
  CHECK(run.posts[1].chainage_mm == 1500);
  CHECK(run.posts[2].chainage_mm == 2400);
  CHECK(run.posts[3].chainage_mm == 3900);
}

TEST_CASE("a corner has corner tees and turns the line to the left", "[core][layout]") {
  RunRule rule;
  rule.posts = 5;
  rule.post_changes[2].turn_degrees = 90;
  const LaidRun run = laid(rule);
  CHECK(joint(run, 2, 0) == WhatItDoes::corner_tee);
  CHECK(joint(run, 2, 1) == WhatItDoes::corner_tee);
  const std::vector<std::array<std::int64_t, 3>> line = {{0, 0, 0}, {3000, 0, 0}, {3000, 3000, 0}};
  CHECK(run.line == line);
}

TEST_CASE("a bay that rises by 3 in 5 is 4 on the plan and has swivels at its ends",
          "[core][layout]") {
  RunRule rule;
  rule.posts = 4;
  rule.bay_changes[1].rise_mm = 900;
  const LaidRun run = laid(rule);
  const std::vector<std::array<std::int64_t, 3>> line = {
      {0, 0, 0}, {1500, 0, 0}, {2700, 0, 900}, {4200, 0, 900}};
  CHECK(run.line == line);
  CHECK(run.posts[2].chainage_mm == 3000);
  CHECK(joint(run, 1, 0) == WhatItDoes::adjustable_swivel);
  CHECK(joint(run, 2, 1) == WhatItDoes::adjustable_swivel);
  CHECK(joint(run, 0, 0) == WhatItDoes::elbow);
}

TEST_CASE("a welded run has sections that its welds belong to, and no rails of its own",
          "[core][layout]") {
  RunRule rule;
  rule.posts = 3;
  rule.made = {System::welded, Material::steel, Protection::paint_on_steel};
  rule.base = BaseKind::welded_plate;
  const LaidRun run = laid(rule);
  CHECK(run.fittings() == 0);
  CHECK(count(run, Role::welded_section) == 2);
  CHECK(count(run, Role::top_rail) == 0);
  for (const LaidPart& part : run.parts) {
    if (part.role != Role::weld || part.rail < 0) continue;
    REQUIRE(part.whole >= 0);
    CHECK(run.parts[static_cast<std::size_t>(part.whole)].bay == std::min(part.post, 1));
  }
}

TEST_CASE("mesh is clipped to the top and the lowest rail", "[core][layout]") {
  RunRule rule;
  rule.posts = 2;
  rule.bays = BayKind::mesh_infill;
  rule.rails = 3;
  const LaidRun run = laid(rule);
  CHECK(count(run, Role::infill) == 1);
  int clips = 0;
  for (const LaidPart& part : run.parts)
    clips += run.types[static_cast<std::size_t>(part.type)].does == WhatItDoes::clip_on_for_infill;
  CHECK(clips == 4);
}

TEST_CASE("sleeves and toe boards stand where the rule says", "[core][layout]") {
  RunRule rule;
  rule.posts = 9;
  rule.toe_board = true;
  rule.sleeve_every_bays = 4;
  rule.bay_changes[2].toe_board = false;
  const LaidRun run = laid(rule);
  CHECK(count(run, Role::toe_board) == 7);
  RunRule plain = rule;
  plain.sleeve_every_bays = 0;
  CHECK(run.fittings() == laid(plain).fittings() + 4);
}

TEST_CASE("aluminium stands on bolts of stainless steel, galvanized tube on galvanized bolts",
          "[core][layout]") {
  RunRule rule;
  rule.made = {System::slip_on, Material::aluminium, Protection::anodised};
  const auto bolt_of = [](const LaidRun& run) {
    for (const LaidType& type : run.types)
      if (type.does == WhatItDoes::bolt) return type;
    return LaidType{};
  };
  CHECK(bolt_of(laid(rule)).material == Material::stainless_steel);
  CHECK(bolt_of(laid({})).protection == Protection::hot_dip_zinc);
}

TEST_CASE("what makes no run is refused with the numbers it must lie between", "[core][layout]") {
  RunRule rule;
  rule.posts = 1;
  CHECK(is_refused(rule, "2 to 999 posts, not 1"));
  rule = {};
  rule.spacing_mm = 50;
  CHECK(is_refused(rule, "0.10 m to 20.00 m apart, not 0.05 m"));
  rule = {};
  rule.height_mm = 6000;
  CHECK(is_refused(rule, "0.30 m to 5.00 m high, not 6.00 m"));
  rule = {};
  rule.rails = 0;
  CHECK(is_refused(rule, "1 to 6 rails"));
  rule = {};
  rule.wall_tenth_mm = 242;
  CHECK(is_refused(rule, "does not fit into its diameter"));
  rule = {};
  rule.bay_changes[3].rise_mm = -1500;
  CHECK(is_refused(rule, "cannot rise or fall 1.50 m"));
  rule = {};
  rule.posts = 999;
  rule.spacing_mm = 20'000;
  CHECK(is_refused(rule, "at most 10 km long"));
}
