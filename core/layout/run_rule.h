#pragma once

// A run as a rule that is read as a sentence: "24 posts at 1.50 m, 1.10 m high, 2 rails, 48.3 x 3.2
// mm, base flange, three-way tee and cross, elbow at both ends", and what is different at single
// posts, bays and joints. laid_run.h makes posts, bays and parts of it.

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/records/codes.h"
#include "core/records/entities.h"

namespace kneerail::layout {

/// What the run is built in.
struct Made {
  System system = System::slip_on;
  Material material = Material::steel;
  Protection protection = Protection::hot_dip_zinc;
  bool operator==(const Made&) const = default;
};

/// At one post. What is absent is as the rule has it.
struct PostChange {
  std::optional<BaseKind> base;
  /// The run goes on so many degrees to the left of the way it came (under zero: to the right).
  int turn_degrees = 0;
  std::string landmark;  ///< what stands there
  bool operator==(const PostChange&) const = default;
};

/// In one bay.
struct BayChange {
  std::optional<BayKind> kind;
  std::optional<std::int64_t> length_mm;  ///< along the rail
  std::optional<bool> toe_board;
  std::int64_t rise_mm = 0;  ///< of its far end over its near one; under zero it falls
  bool operator==(const BayChange&) const = default;
};

/// A joint: the place of its post, and its rail counted from the top, which is 0.
using JointPlace = std::pair<int, int>;

/// Places count from 0. What is said of places that are not there (any more) is kept and does
/// nothing.
struct RunRule {
  int posts = 24;
  int first_number = 1;  ///< of the labels; the others follow
  std::int64_t spacing_mm = 1500;
  std::int64_t height_mm = 1100;
  int rails = 2;
  std::int64_t diameter_tenth_mm = 483;
  std::int64_t wall_tenth_mm = 32;
  Made made;
  BaseKind base = BaseKind::base_flange;
  WhatItDoes joint = WhatItDoes::three_way_tee;  ///< with a cross below; or adjustable swivels
  WhatItDoes end = WhatItDoes::elbow;  ///< where the top rail ends; or a tee with an end cap
  BayKind bays = BayKind::rails;       ///< or mesh infill
  bool toe_board = false;
  int sleeve_every_bays = 0;  ///< a sleeve coupling in each rail; 0: none
  std::optional<Date> in_service;
  std::map<int, PostChange> post_changes;
  std::map<int, BayChange> bay_changes;
  std::map<JointPlace, WhatItDoes> joint_changes;
  bool operator==(const RunRule&) const = default;
};

namespace most {
inline constexpr int posts = 999;
inline constexpr int rails = 6;
inline constexpr std::int64_t spacing_mm = 20'000;
inline constexpr std::int64_t height_mm = 5'000;
inline constexpr int first_number = 99'999;
}  // namespace most
namespace least {
inline constexpr int posts = 2;
inline constexpr int rails = 1;
inline constexpr std::int64_t spacing_mm = 100;
inline constexpr std::int64_t height_mm = 300;
}  // namespace least

/// Whether a run can be laid out by it. Errors: invalid_input, with what does not fit and between
/// what it must lie.
Result<> check_rule(const RunRule& rule);

}  // namespace kneerail::layout
