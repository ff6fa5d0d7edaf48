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

/// Whether something cannot wait, and whether people are held back from it.
enum class HazardState { none, open, made_safe, ended };

/// Somebody was told of a finding.
struct Telling {
  std::optional<Uuid> person;  ///< absent: an office
  std::string whom;            ///< initials, or the office in words
  Instant at;
};
/// Somebody who answers for the rails has read of it.
struct ReadMark {
  Uuid person;
  std::string initials;
  Instant at;
};

struct KeptFinding {
  Uuid record;
  Uuid site;
  Uuid who;
  std::optional<Uuid> life;  ///< of the part, when it was found
  Uuid subject;
  Uuid run;  ///< zero: its place is not known here
  FindingKind what = FindingKind::other;
  int grade = 0;
  HazardState hazard = HazardState::none;
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
  std::optional<Date> mend_by_before;  ///< the day that the last one took the place of
  std::optional<WhyPutOff> put_off;    ///< why it did
  std::optional<HowEnded> ended_how;
  std::optional<Instant> ended_at;
  std::optional<EndedOn> ended_on;
  std::vector<Telling> told;                ///< in order of time
  std::vector<ReadMark> read;               ///< likewise
  std::vector<KeptPhotograph> photographs;  ///< the newest first

  [[nodiscard]] bool cannot_wait() const {
    return hazard == HazardState::open || hazard == HazardState::made_safe;
  }
  /// What held people back was last seen gone.
  [[nodiscard]] bool is_gone() const;
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

/// What cannot wait and is not ended, in the whole register, the oldest first; without photographs.
/// Errors: io, corrupt.
Result<std::vector<KeptFinding>> hazards_standing(Database& tables);

}  // namespace kneerail
