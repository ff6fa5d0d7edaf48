#pragma once

// What a day at a site begins with: what others told, closures that nobody has looked at in time,
// the instruments with their certificates, when one may be there, and how much of the disk each
// site takes.

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/entities.h"
#include "core/records/told.h"
#include "schema/database.h"

namespace kneerail {

/// Told by others, and nobody has looked yet.
struct OpenTold {
  Uuid record;
  Uuid subject;  ///< site, run, post or bay
  Instant at;
  ToldBy by_whom = ToldBy::other;
  std::string said;
  std::string place;  ///< in words; empty: none
  bool moves = false;
};

/// A closure that stands and was to be looked at again by then.
struct ClosureToLookAt {
  Uuid record;
  Uuid subject;
  Instant look_again_by;
};

/// The newest certificate of an instrument, and why it may stay behind.
struct DayInstrument {
  Uuid id;
  InstrumentKind kind = InstrumentKind::coating_gauge;
  std::string serial;
  std::optional<std::int64_t> stated_error;  ///< in the record's unit for its kind
  std::optional<Date> valid_until;           ///< none: no certificate is written down
  bool in_doubt = false;                     ///< today, by a doubt without a shift
  std::optional<Date> away_since;

  [[nodiscard]] bool out_of_date(Date day) const { return valid_until && *valid_until < day; }
  /// Goes on the list to take.
  [[nodiscard]] bool to_take(Date day) const {
    return !out_of_date(day) && !in_doubt && !away_since;
  }
};

/// When people may be at a run on a day; minutes from midnight.
struct AccessHours {
  Uuid run;
  std::string run_name;
  int from_minutes = 0;
  int to_minutes = 1440;
  std::string note;
};

struct SiteOnDisk {
  Uuid site;
  std::string name;
  std::int64_t bytes = 0;  ///< records and objects that are here
};

struct DayAtSite {
  std::vector<OpenTold> told;              ///< what moves first, then the oldest
  std::vector<ClosureToLookAt> closures;   ///< the one that has waited longest first
  std::vector<DayInstrument> instruments;  ///< by kind, then serial
  std::vector<AccessHours> access;         ///< of runs with hours, those of that weekday
  std::vector<AccessHours> no_access;      ///< of runs with hours, and none on that weekday
  std::vector<SiteOnDisk> sites;           ///< of the whole register, by name
};

struct DayQuestion {
  Uuid site;
  Date day;     ///< of the organisation's zone
  Instant now;  ///< of that day
  std::filesystem::path register_folder;
};
/// Errors: io, corrupt.
Result<DayAtSite> read_day(Database& tables, const DayQuestion& asked);

/// 1 Monday to 7 Sunday.
int weekday(Date day);

}  // namespace kneerail
