#pragma once

// The posts, bays and parts of a run that is laid out by rule. Which part comes where is common
// practice of tube-and-fitting and of welded barriers, no source: rails lie at equal distances
// under the top one; a rail that ends at a post is held by an elbow on top and a corner tee below;
// a fitting has one set screw for each tube it holds.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/layout/run_rule.h"

namespace kneerail::layout {

/// A type that the run's parts are of.
struct LaidType {
  WhatItDoes does = WhatItDoes::tube;
  Material material = Material::steel;
  Protection protection = Protection::hot_dip_zinc;
  std::optional<std::int64_t> diameter_tenth_mm;  ///< of the tube it is or fits
  std::optional<std::int64_t> wall_tenth_mm;      ///< of a tube
  System system = System::slip_on;
  bool operator==(const LaidType&) const = default;
};

struct LaidPost {
  std::string label;
  std::int64_t chainage_mm = 0;
  BaseKind base = BaseKind::base_flange;
  std::string landmark;
};

/// From post `from` to the next.
struct LaidBay {
  int from = 0;
  BayKind kind = BayKind::rails;
  int rails = 0;
};

struct LaidPart {
  int post = 0;  ///< its post, or the post before its bay
  int bay = -1;  ///< its bay; -1: a part of the post
  Role role = Role::fitting;
  int type = 0;               ///< place in LaidRun::types
  std::int64_t along_mm = 0;  ///< from its post
  std::int64_t up_mm = 0;     ///< of its middle, from the deck
  int screws = 0;
  int whole = -1;  ///< place of the welded section it belongs to
  int rail = -1;   ///< of a joint: its rail counted from the top
};

struct LaidRun {
  std::vector<LaidPost> posts;
  std::vector<LaidBay> bays;  ///< one less than posts
  std::vector<LaidType> types;
  std::vector<LaidPart> parts;  ///< by post, a post's own before those of the bay after it
  /// Where it turns or slopes, [x, y, z] mm from its first post, which looks along x; y to the left
  /// and z up. Empty: straight and level.
  std::vector<std::array<std::int64_t, 3>> line;

  /// Fittings, and millimetres of rail tube: what a person counts.
  [[nodiscard]] int fittings() const;
  [[nodiscard]] std::int64_t rail_tube_mm() const;
};

/// The run of that rule. Errors: those of check_rule.
Result<LaidRun> lay_out(const RunRule& rule);

/// The line of a run with those bays along it: run_line.cpp.
std::vector<std::array<std::int64_t, 3>> line_of(const RunRule& rule);

/// How many set screws hold such a fitting: one for each tube that comes to it.
int screws_of(WhatItDoes does);

}  // namespace kneerail::layout
