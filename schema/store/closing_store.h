#pragma once

// A visit as a person looks over it before sealing it: what was seen of each run, what was entered,
// and what is still open. Read from the tables away from the screens; nothing here forbids a seal.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/visit.h"
#include "schema/database.h"
#include "schema/store/run_store.h"

namespace kneerail {

/// Posts of a run one after another, by their places in the sheet, both included.
struct PostStretch {
  std::size_t run = 0;  ///< place in VisitClosing::runs
  int from = 0;
  int to = 0;
};
struct SkippedStretch {
  PostStretch posts;
  std::string why;  ///< "blocked"
};
/// Posts that were looked at and not pushed, one after another; nothing was measured on them.
struct ByEyeStretch {
  PostStretch posts;
  std::int64_t seconds_each = 0;
};

struct OpenHazard {
  std::string number;  ///< "F-3"
  std::string post;    ///< its label; empty: none
  FindingKind what = FindingKind::other;
  bool made_safe = false;
  bool told = false;  ///< to somebody, at any time
};

/// Coating readings that were taken while the gauge's last zero was older than it may be.
struct OldZero {
  std::string serial;
  std::int64_t readings = 0;   ///< records
  std::int64_t oldest_ms = 0;  ///< at the last of them; 0: it was never zeroed
};

struct VisitClosing {
  Uuid visit;
  int number = 1;  ///< of the site's visits, in order of time
  VisitKind kind = VisitKind::routine;
  std::string name;
  std::string site_name;
  Instant first;
  Instant last;
  std::vector<std::string> instruments;  ///< serials of those that measured, in order

  std::vector<RunSheet> runs;  ///< of the site, in its order
  std::int64_t posts = 0;
  std::int64_t posts_seen = 0;
  std::vector<SkippedStretch> skipped;
  std::vector<PostStretch> open;      ///< neither seen nor said why not; struck posts are not
  std::int64_t coating_readings = 0;  ///< single replicates
  std::int64_t screws_checked = 0;
  std::int64_t walls_read = 0;
  std::int64_t findings = 0;  ///< of this visit
  std::int64_t findings_made_safe = 0;
  std::int64_t photographs = 0;
  std::array<std::int64_t, 6> grades{};  ///< parts of today by grade; [0] is not used

  std::vector<OpenHazard> hazards;            ///< of the site, not ended, that need somebody
  std::int64_t closures_past = 0;             ///< that should have been looked at by now
  std::int64_t parts_without_fresh_look = 0;  ///< for two visits or more, this one counted
  std::vector<ByEyeStretch> by_eye;           ///< ten posts or more
  std::vector<OldZero> old_zeros;
  /// Head of this device's chain at the site, hexadecimal: what a seal would fix now.
  std::string digest;
};

/// Errors: not_found (no such visit), io, corrupt.
Result<VisitClosing> read_closing(Database& tables, const Uuid& site, const Uuid& visit,
                                  Instant now);

}  // namespace kneerail
