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

namespace kneerail::forecast {

struct ScrewModel {
  ScrewData data;
  RateLayout layout;  ///< parts as ScrewData::fittings
  RateSettings settings;
  std::unique_ptr<ScrewLikelihood> likelihood;
  RateFit fit;
};

/// Errors: cancelled when the workers were stopped; not_estimable when the equations could not be
/// solved. No fitting at all is no error: an empty model.
Result<ScrewModel> fit_screw_model(const Portfolio& portfolio, const Workers& workers);

/// A fitting's x given everything, the shared effects held.
RateNodes loss_nodes(const ScrewModel& model, int site, int fitting);

}  // namespace kneerail::forecast
