#pragma once

// What the screens ask of the findings of a site: how each stands, what was done, what is next, and
// its newest photograph. In the order they hang: what cannot wait first, then by what comes due.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/finding.h"
#include "core/records/made_safe.h"
#include "core/records/photograph.h"
#include "schema/database.h"

namespace kneerail {

/// The highest number that person gave a finding at a site; 0: none. Errors: io.
Result<std::int64_t> last_finding_number(Database& tables, const Uuid& site, const Uuid& person);

struct KeptPhotograph {
  Uuid record;
  Digest sha256{};
  Digest preview_sha256{};
  std::vector<Mark> marks;
};

struct KeptFinding {
  Uuid record;
  Uuid subject;
  Uuid run;  ///< zero: its place is not known here
  FindingKind what = FindingKind::other;
  int grade = 0;
  int hazard_state = 0;  ///< 0 none, 1 open, 2 made safe, 3 ended
  std::vector<Uuid> hazards;
  std::string number;  ///< "F-3", with initials where two of the site have the number
  std::string text;
  std::string why_it_can_wait;
  std::int64_t found_ms = 0;
  std::vector<Measure> measures;
  std::optional<Instant> safe_since;  ///< when what stands was done or last seen to stand
  std::optional<Instant> look_again_by;
  std::optional<NextStepKind> next;
  std::optional<Date> mend_by;
  std::optional<HowEnded> ended_how;
  std::optional<Instant> ended_at;
  std::vector<KeptPhotograph> photographs;  ///< the newest first

  [[nodiscard]] bool cannot_wait() const { return hazard_state == 1 || hazard_state == 2; }
};

struct FindingsAsked {
  Uuid site;
  bool ended_too = false;
};
/// Errors: io, corrupt.
Result<std::vector<KeptFinding>> read_findings(Database& tables, const FindingsAsked& asked);

/// How many of a site are ended. Errors: io.
Result<std::int64_t> findings_ended(Database& tables, const Uuid& site);

/// The last entry on any post of a run; nothing: nobody was there yet. Errors: io.
Result<std::optional<Instant>> last_look_at(Database& tables, const Uuid& run);

/// What holds nobody back, in the whole register, the oldest first; without photographs.
/// Errors: io, corrupt.
Result<std::vector<KeptFinding>> not_made_safe(Database& tables);

}  // namespace kneerail
