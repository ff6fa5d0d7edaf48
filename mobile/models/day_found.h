#pragma once

// What there is to do at a site on a day, in the order in which it goes first, and what each thing
// takes: what others told, events, closures and findings; then a look at every post; then what more
// likely than not has reached a structural limit; then the parts by what a reading of them would
// tell; then what else is past the owner's chance. Made once from the register and what was
// reckoned, away from the screen; the time there is chooses from it.

#include <QString>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/forecast/decisions/day_plan.h"
#include "core/forecast/decisions/next_visit.h"
#include "mobile/models/prepared_kept.h"
#include "mobile/models/reckoning.h"
#include "schema/store/day_store.h"
#include "schema/store/finding_store.h"
#include "schema/store/site_store.h"

namespace kneerail {

/// How long things take, s. A post by eye 40 s; one in full, with a coating set and three screws,
/// 150 s. Common practice, no source: what a person with gloves needs is to be timed on a rail.
namespace day_seconds {
inline constexpr int by_eye = 40;
inline constexpr int each_part_by_eye = 75;  ///< a post whose parts each get a look of their own
inline constexpr int stop = 20;              ///< an instrument is taken out
inline constexpr int coating_set = 39;
inline constexpr int screw = 17;
inline constexpr int wall_set = 60;
inline constexpr int told = 300;
inline constexpr int closure = 180;
inline constexpr int finding = 180;
}  // namespace day_seconds

/// A line of the day. Counts and places follow from the tasks that are done.
struct DayLine {
  enum class Kind {
    told,
    event,
    closure,
    finding,
    look,
    loose_screws,
    thin_wall,
    bad_grade,
    open_and_near,
    read_once,
    never_measured,
    ties_a_gauge,
    past_chance,
    if_time,
    re_erect
  };
  Kind kind = Kind::look;
  int run = -1;   ///< place in DayFound::runs; -1: the whole site
  QString name;   ///< of one thing: "F-7 split"; empty: it is counted
  QString why;    ///< a sentence
  int grade = 0;  ///< of a finding

  [[nodiscard]] bool first() const { return kind <= Kind::finding; }
};

/// Where a task is done.
struct TaskAt {
  int run = -1;
  int post = -1;
  int part = -1;                     ///< place in the sheet
  std::optional<ChosenPart> chosen;  ///< a reading is taken
};

struct DayFound {
  Uuid site;
  std::string site_name;
  Date day;
  std::vector<SiteRun> runs;
  std::vector<RunSheet> sheets;  ///< by run
  DayAtSite begins;
  std::vector<DayLine> lines;  ///< those that come first in front, each with its tasks in order
  forecast::DayPlan plan;
  std::vector<TaskAt> at;  ///< by task
  int posts = 0;           ///< to be looked at
  QString not_reckoned;    ///< why no part is chosen; empty: some could be

  /// The time one may be there, minutes; none: nothing limits it.
  [[nodiscard]] std::optional<int> access_minutes() const;
};

struct DayAsked {
  Uuid site;
  Instant now;
  std::filesystem::path register_folder;
  std::shared_ptr<const Reckoning> coatings;     ///< may be null
  std::shared_ptr<const OtherReckoning> others;  ///< likewise
};
/// Errors: not_found (no such site), io, corrupt.
Result<DayFound> find_day(Database& tables, const DayAsked& asked);

}  // namespace kneerail
