#pragma once

// One run as it stands: posts, bays and parts with their last grades, what was found, what is
// struck or closed off. What the elevation draws and the walk goes along. Lengths are the records'
// own millimetres along the run and up from the deck.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/codes.h"
#include "core/records/condition_grade.h"
#include "core/records/entities.h"
#include "core/records/finding.h"
#include "core/records/visit.h"
#include "schema/database.h"

namespace kneerail {

struct SheetGrade {
  int grade = 0;  ///< 1 to 5
  Uuid record;
  Uuid visit;
  Uuid who;
  std::int64_t t_ms = 0;
  bool carried = false;  ///< said again as last time
  std::optional<HowLooked> how;
  bool operator==(const SheetGrade&) const = default;
};

enum class Finish { zinc, zinc_and_paint, paint, aluminium, stainless, bare_steel };

struct SheetPart {
  Uuid id;
  Uuid life;
  int post = -1;  ///< its post, or the post before its bay
  int bay = -1;   ///< place in RunSheet::bays; -1: a part of the post
  Role role = Role::fitting;
  std::optional<WhatItDoes> does;
  Finish finish = Finish::zinc;
  bool welded = false;
  std::int64_t along_mm = 0;  ///< chainage of its middle
  std::int64_t up_mm = 0;
  std::int64_t diameter_tenth_mm = 483;
  int screws = 0;
  std::vector<Face> spots;  ///< at least one
  std::optional<std::int64_t> torque_target_tenth_nm;
  std::optional<std::int64_t> torque_lowest_tenth_nm;
  std::optional<std::int64_t> coating_nominal_tenth_um;
  std::optional<std::int64_t> wall_nominal_tenth_mm;  ///< of its tube; none: nobody said
  std::optional<SheetGrade> now;                      ///< of the visit that is being walked
  std::optional<SheetGrade> last;                     ///< the one that counted before it
  int carried_in_a_row = 0;                           ///< visits, up to and with `last`
  bool struck = false;
  bool found = false;  ///< a finding of the visit that is being walked is on it
  bool operator==(const SheetPart&) const = default;
};

enum class PostState { open, seen, skipped, struck };

struct SheetPost {
  Uuid id;
  std::string label;
  std::string landmark;
  std::int64_t chainage_mm = 0;
  std::int64_t height_mm = 0;
  std::optional<BaseKind> base;
  int first_part = 0;  ///< its own parts, bottom up, then those of the bay after it
  int parts = 0;
  PostState state = PostState::open;
  std::string skipped_because;  ///< in words; empty unless skipped
  bool operator==(const SheetPost&) const = default;
};

struct SheetBay {
  Uuid id;
  int from = 0;  ///< places of posts
  int to = 0;
  BayKind kind = BayKind::rails;
  bool struck = false;
  bool closed_off = false;  ///< a closure with a barrier stands, or a finding in it was closed off
  bool pushed = false;      ///< in the visit that is being walked
  bool looked = false;      ///< in that visit: pushed, or said not to be
  bool operator==(const SheetBay&) const = default;
};

struct SheetFinding {
  Uuid record;
  int part = -1;  ///< what it is on: the first of part, bay and post that is not -1; none: the run
  int bay = -1;
  int post = -1;  ///< its post, or the post before its bay
  FindingKind what = FindingKind::other;
  int grade = 0;
  int hazard_state = 0;  ///< 0 none, 1 open, 2 made safe, 3 ended
  bool not_made_safe = false;
  std::string number;  ///< "F-3", with initials where two of a site have the number
  std::string text;
  std::optional<std::int64_t> along_mm;  ///< chainage where it was marked on the drawing
  std::optional<std::int64_t> up_mm;
  bool operator==(const SheetFinding&) const = default;
};

/// How high a flood or the ice stood, all along the run.
struct SheetWaterMark {
  EventKind what = EventKind::flood;
  std::int64_t up_mm = 0;  ///< from the deck; below it under 0
  Date day;                ///< the event's first, in the organisation's time zone
  bool operator==(const SheetWaterMark&) const = default;
};

struct RunSheet {
  Uuid id;
  Uuid site;  ///< also its feed
  Uuid zone;
  Uuid visit;  ///< the one that is being walked; zero: none
  std::string site_name;
  std::string name;
  std::string looked_at;  ///< "from the sea"
  std::int64_t height_mm = 0;
  std::vector<SheetPost> posts;        ///< by order along the run
  std::vector<SheetBay> bays;          ///< by the post they begin at
  std::vector<SheetPart> parts;        ///< by post; a post's own bottom up, then its bay's
  std::vector<SheetFinding> findings;  ///< not ended
  std::vector<SheetWaterMark> water;   ///< the last flood's and the last ice's
  bool operator==(const RunSheet&) const = default;
};

/// The bays that begin at a post.
std::span<const SheetBay> bays_after(const RunSheet& sheet, int post);

/// The run as it stands. `visit`: the one that is being walked, zero for none; grades given in it
/// are `now`, those that counted before it `last`. Findings that are ended are left out.
/// Errors: not_found (no such run), io, corrupt.
Result<RunSheet> read_run(Database& tables, const Uuid& run, const Uuid& visit = {});

/// The site of a run, which is also its feed. Errors: not_found, io.
Result<Uuid> site_of_run(Database& tables, const Uuid& run);

}  // namespace kneerail
