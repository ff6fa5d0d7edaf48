#pragma once

// When somebody is to come to a site again, and why: the earliest of
//   the longest interval that the owner allows (limit 7), from the last visit of the whole; at once
//     where there was none yet
//   the time allowed after an event that no visit has answered yet (limit 13); of one that lies
//     ahead the day before it
//   half of the time until the first part comes up to the owner's chance (limit 14) of a structural
//     limit: at once where one is there already
//   a year after the last visit where a zone likely loses zinc faster than its class
//   the first whole year, 1 to 10, by which one more reading of the part that goes first narrows
//     its rate by a third: 1 + Var(u) (r (h(d) - h(last)))^2 / (D + u_b^2) >= 2.25, r the median
//     rate, Var(u) of its logarithm, D the variance of a visit mean, u_b that of a session's offset
// The day agreed stands unless an event or a part asks for an earlier one, or another rule for one
// a month or more earlier. A day agreed that somebody came on or after is kept and says no more. A
// part seen at the grade to replace at asks for work, not for another look: it moves no visit.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/forecast/coating_model.h"
#include "core/forecast/decisions/part_outlook.h"

namespace kneerail::forecast {

/// An event that asks for a visit: one that nobody came for since it began, or one that lies ahead
/// (a planned crowd, a storm that is warned of) and that nobody has looked before.
struct OpenEvent {
  std::string what;  ///< "flood"
  Date day;          ///< it began or begins
  std::optional<double> hours_allowed;
};

/// What the register says of a site's visits.
struct SiteVisits {
  std::string site;  ///< as the portfolio calls it
  /// The last routine or detailed visit of the whole; with an interval that of the run whose
  /// interval ends first.
  std::optional<Date> last;
  std::optional<Date> last_any;              ///< somebody came, for whatever and to whichever run
  std::optional<int> longest_interval_days;  ///< of the run whose interval ends first
  std::vector<OpenEvent> events;
  std::optional<Date> agreed;
};

enum class VisitReason { longest_interval, event, due_part, faster_than_class, narrows_a_rate };

/// What a reason is made of, for who says it in words of his own; unused fields stay as they are.
struct VisitDetails {
  std::string event = {};             ///< "flood"
  Date event_day = {};                ///< it began or begins
  std::optional<Limit> limit = {};    ///< that a part comes up to
  double owners_chance = 0;           ///< of that limit
  double chance_now = 0;              ///< of it on the as-of date
  std::optional<Date> comes_up = {};  ///< none: the part is past the owner's chance already
  int past = 0;                       ///< parts past the owner's chance, this one among them
  std::string zone = {};              ///< that loses zinc faster than its class
  std::optional<int> longest_interval_days = {};
  bool never_visited = false;  ///< nobody has looked at the whole of it yet
};

struct VisitProposal {
  Date day;
  VisitReason why = VisitReason::longest_interval;
  std::int32_t part = -1;  ///< place in Portfolio::parts, where one is why
  std::string words;       ///< the reason; a part by its identifier
  VisitDetails of = {};    ///< what the words are made of
};

struct NextVisit {
  std::string site;
  std::vector<VisitProposal> proposals;  ///< by day, then reason; the first is the proposal
  std::optional<Date> agreed;            ///< and not kept yet
  std::optional<Date> day;               ///< the day that stands; none: `words` say why
  bool brought_forward = false;          ///< by a proposal, from the day agreed
  std::vector<std::string> not_said;     ///< rules that could not speak: "no chance is set"
  std::string words;                     ///< "Brought forward from Aug 2031: REASON."
};

/// `outlooks` and `rows` of the whole portfolio (part_outlook.h); `coating` null where none could
/// be fitted.
NextVisit next_visit(const Portfolio& portfolio, const std::vector<LimitForecast>& rows,
                     const std::vector<PartOutlook>& outlooks, const CoatingModel* coating,
                     const SiteVisits& visits);

/// The first whole year from the as-of date, 1 to 10, at which one more reading narrows the rate of
/// a part by a third; `part` is its place in the portfolio. None: no such year, or no model.
std::optional<int> year_that_narrows(const Portfolio& portfolio, const CoatingModel& coating,
                                     std::int32_t part);

}  // namespace kneerail::forecast
