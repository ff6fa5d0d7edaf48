#pragma once

// The set-screw model once fitted: every fitting's ln loss per tenfold of days,
//
//   x = mu + site + zone + run + N(0, tau^2)
//
// by the shared-rate engine (shared_rate.h): 31 nodes, 10 passes; mu ~ N(ln 3, 0.5^2); sds of site,
// zone, run start at 0.2, 0.3, 0.15 and move by EM with weights 3, 3, 10; ln tau ~ N(ln 0.5, 0.4^2)
// and the wear per strike ~ N(0.05, 0.05^2) move by scoring steps. What is said of one fitting
// takes 1.5 tau^2 + Var(shared effects) as its prior variance.

#include <memory>

#include "core/base/result.h"
#include "core/forecast/screws/screw_likelihood.h"
#include "core/forecast/shared_rate.h"
#include "core/forecast/start_dates.h"

namespace kneerail::forecast {

struct ScrewModel {
  InstalledDates installed;
  ScrewData data;
  RateLayout layout;  ///< parts as ScrewData::fittings
  RateSettings settings;
  std::unique_ptr<ScrewLikelihood> likelihood;
  RateFit fit;
};

/// Errors: cancelled when the workers were stopped; not_estimable when the equations could not be
/// solved. No fitting at all is no error: an empty model.
Result<ScrewModel> fit_screw_model(const Portfolio& portfolio, const Workers& workers);
/// The same of what was gathered before.
Result<ScrewModel> fit_screw_data(InstalledDates installed, ScrewData data, const Workers& workers);

/// The model of one part again with readings that came after the fit: `one` holds it alone, with
/// its visits and works (part_story.h, only_part). What the parts share is held; of the sites there
/// is its own alone, and no dates of installation. It has no fitting where the part has no set
/// screws. Errors: not_found (a site, zone or run that the fit has not seen), invalid_input (more
/// than one part).
Result<ScrewModel> screw_model_of_one_part(const ScrewModel& model, const Portfolio& one);

/// A fitting's x given everything, the shared effects held.
RateNodes loss_nodes(const ScrewModel& model, int site, int fitting);

}  // namespace kneerail::forecast
