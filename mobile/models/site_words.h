#pragma once

// The words of a site's band: its air and counts, when somebody was there, when somebody is to come
// again, and why in one or two sentences.

#include <QString>
#include <optional>
#include <vector>

#include "core/forecast/decisions/coming_due.h"
#include "core/forecast/decisions/next_visit.h"
#include "schema/store/site_store.h"

namespace kneerail {

/// When somebody is to come: a run that is down has to be up again, or the site is to be visited as
/// the command `visits` says it too (core/forecast/decisions/next_visit.h), whichever comes first.
struct SiteDue {
  enum class What { nothing, visit, re_erect };
  What what = What::nothing;
  Date day;
  std::optional<forecast::VisitProposal> why = {};  ///< none: it is the day agreed
  std::optional<Date> moved_from = {};              ///< the day agreed, which is later
  QString part = {};                                ///< where a part is why: "post 61, base flange"
};
SiteDue site_due(const SiteBand& band, const forecast::NextVisit& visit);

/// What the forecast knows of a site. Without `known` it says why it does not.
struct SiteForecast {
  bool known = false;
  bool by_now = false;  ///< the day is not ahead of the reckoning
  std::vector<forecast::RunComing> runs;
  QString why_not;  ///< a sentence; empty: nothing to say
  QString rest;     ///< why walls, set screws and grades are not in it; empty: they are
};

/// "C4 and C5, open and spray"; empty where nobody said.
QString air_words(const SiteBand& band);
/// "214 posts · 866 fittings".
QString count_words(std::int64_t posts, std::int64_t fittings);
/// "Last visit 12 May 2026"; "Nobody has been here yet".
QString last_visit_words(const SiteBand& band);

/// What the due tag says: "due" over "11 May 2027"; soon: within 60 days of `today`, or past.
struct TagWords {
  QString caption;
  QString day;
  bool soon = false;
};
TagWords tag_words(const SiteDue& due, Date today);

/// "flood"; what the register has no word of is an event.
QString event_word(const std::string& what);

/// What is down, what cannot wait, why that day, what comes due, how the parts were graded.
QString band_sentence(const SiteBand& band, const SiteDue& due, const SiteForecast& forecast);

}  // namespace kneerail
