#pragma once

// What the walk asks of the tables: the visit that goes on, the people and instruments there are,
// the site's limits, and the last readings of a part.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/entities.h"
#include "core/records/torque_reading.h"
#include "schema/database.h"
#include "schema/store/instrument_store.h"

namespace kneerail {

struct VisitTime {
  Instant since;
  Instant until;
};
/// The visit of that person on that device at a site that was opened in that time, by the clock it
/// was opened with, and is not sealed.
Result<std::optional<Uuid>> open_visit(Database& tables, const Uuid& site, const Uuid& person,
                                       const Uuid& device, VisitTime within);
/// Records of a visit that count, the opening of it apart.
Result<std::int64_t> entries_of_visit(Database& tables, const Uuid& visit);

/// A foil of known thickness, as the gauge last read it.
struct LastFoil {
  Instant at;
  std::int64_t reference = 0;
  double mean_read = 0;
};

struct KnownInstrument {
  Uuid id;
  InstrumentKind kind = InstrumentKind::coating_gauge;
  std::string serial;
  std::int64_t resolution = 1;  ///< in the unit of its kind's records
  std::optional<std::int64_t> low;
  std::optional<std::int64_t> high;
  std::optional<std::int64_t> zero_good_for_hours;
  std::optional<std::int64_t> stated_error;
  std::optional<Instant> zeroed;  ///< the last zero or check foil that was in order
  std::optional<LastFoil> foil;   ///< in order or not
};
/// In service and not in doubt, by serial.
Result<std::vector<KnownInstrument>> instruments_in_service(Database& tables);

struct KnownPerson {
  Uuid id;
  std::string initials;
  bool inspects = false;  ///< has the role of an inspector
};
/// In service; those who inspect first, then by initials.
Result<std::vector<KnownPerson>> people_in_service(Database& tables);

/// The owner's rule set of a site as it bears on a walk. Absent: not set.
struct WalkRules {
  std::optional<std::int64_t> first_maintenance_tenth_um;
  std::optional<std::int64_t> wall_share_least_per_mille;  ///< of the nominal wall
  std::optional<std::int64_t> check_good_for_hours;
  std::optional<std::int64_t> carried_in_a_row_most;
};
Result<WalkRules> walk_rules(Database& tables, const Uuid& site);

/// The last coating record of a part's spot in its present life, not of that visit. Values are put
/// right by what calibrations and doubts say of the gauge.
struct LastCoating {
  Uuid visit;
  std::int64_t t_ms = 0;
  std::vector<std::int64_t> replicates_tenth_um;
};
struct PartSpot {
  Uuid part;
  Uuid life;
  int spot = 1;
};
Result<std::optional<LastCoating>> last_coating(Database& tables, const PartSpot& at,
                                                const Uuid& not_of_visit,
                                                const ReadingsPutRight& right);
/// One record of a spot's replicates, as read.
struct CoatingOfVisit {
  Uuid gauge;  ///< zero: not said
  std::vector<std::int64_t> replicates_tenth_um;
};
/// Those of that visit, in the order they were written, whatever the clock was set to.
Result<std::vector<CoatingOfVisit>> coating_of_visit(Database& tables, const PartSpot& at,
                                                     const Uuid& visit);

struct LastTorque {
  Censoring censoring = Censoring::exact;
  std::optional<std::int64_t> as_found_tenth_nm;
  std::optional<WhyNotMeasurable> why_not;
};
/// The last torque record of a screw. `visit`: only of that one; none: of any other than
/// `not_of_visit`.
struct ScrewQuestion {
  Uuid part;
  int screw = 1;
  std::optional<Uuid> visit;
  Uuid not_of_visit;
};
Result<std::optional<LastTorque>> last_torque(Database& tables, const ScrewQuestion& question);

/// What that wrench was last said to be set at in that visit, 0.1 N·m.
Result<std::optional<std::int64_t>> last_wrench_set(Database& tables, const Uuid& visit,
                                                    const Uuid& wrench);

}  // namespace kneerail
