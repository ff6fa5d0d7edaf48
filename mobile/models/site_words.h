#pragma once

// The words of a site's band: its air and counts, when somebody was there, when somebody is to come
// again, and why in one or two sentences.

#include <QString>
#include <optional>
#include <vector>

#include "core/forecast/decisions/coming_due.h"
#include "schema/store/site_store.h"

namespace kneerail {

/// What the newest forecast says of a site's coatings.
enum class Pace { as_its_class, faster };

/// When somebody is to come: a run that is down has to be up again, or the site is to be visited on
/// the day agreed, at the end of the owner's longest interval, or a year after the last visit where
/// its coating goes faster than its class, whichever comes first. A day agreed that was kept asks
/// for nothing more.
struct SiteDue {
  enum class What { nothing, visit, re_erect };
  enum class Why { agreed, longest_interval, faster_than_class };
  What what = What::nothing;
  Date day;
  std::optional<Date> moved_from = {};  ///< agreed, a month or more later
  Why why = Why::agreed;
};
SiteDue site_due(const SiteBand& band, Pace pace = Pace::as_its_class);

/// What the forecast knows of a site. Without `known` it says why it does not.
struct SiteForecast {
  bool known = false;
  bool by_now = false;  ///< the day is not ahead of the reckoning
  std::vector<forecast::RunComing> runs;
  QString why_not;  ///< a sentence; empty: nothing to say
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

/// What is down, what cannot wait, what comes due, how the parts were graded.
QString band_sentence(const SiteBand& band, const SiteDue& due, const SiteForecast& forecast);

}  // namespace kneerail
