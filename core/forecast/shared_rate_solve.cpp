// Elimination of a site's shared rate effects and the way back.

#include "core/forecast/shared_rate_inside.h"

namespace kneerail::forecast {

namespace {

double precision(double sd) {
  return 1 / (sd * sd);
}

void add_priors(const RatePass& pass, const RateCore& core, RateEquations& e) {
  e.core(0, 0) += precision(pass.fit.site_sd);
  for (int z = 0; z < core.zones; ++z)
    e.core(core.zone(z), core.zone(z)) += precision(pass.fit.zone_sd);
  e.run_blocks.array() += precision(pass.fit.run_sd);
}

}  // namespace

RateCore rate_core(const RateLayout& layout, int site) {
  return {layout.sites[static_cast<std::size_t>(site)].zones,
          static_cast<int>(layout.globals.size())};
}

RatePlaces rate_places(const RateCore& core, const RatePart& part) {
  RatePlaces places;
  const auto add = [&](int place) {
    places.place[static_cast<std::size_t>(places.count++)] = place;
  };
  add(0);
  add(core.zone(part.zone));
  for (int i = 0; i < part.global_terms; ++i)
    add(core.global(part.globals[static_cast<std::size_t>(i)]));
  return places;
}

void eliminate_rates(const RatePass& pass, int site, RateEquations& e) {
  const RateCore core = rate_core(pass.layout, site);
  add_priors(pass, core, e);
  for (Eigen::Index r = 0; r < e.runs.rows(); ++r) {
    if (e.run_seen[static_cast<std::size_t>(r)] == 0) continue;
    const Vector row = e.runs.row(r).transpose();
    e.core.noalias() -= row * row.transpose() / e.run_blocks(r);
    e.right -= row * (e.runs_right(r) / e.run_blocks(r));
  }
  const Eigen::Index n = core.own();
  e.solved = invert(e.core.topLeftCorner(n, n), e.own_inverse);
  if (!e.solved) return;
  const Matrix border = e.core.topRightCorner(n, core.globals);
  e.reach = e.own_inverse * border;
  e.own_given = e.own_inverse * e.right.head(n);
  e.onto_globals =
      e.core.bottomRightCorner(core.globals, core.globals) - border.transpose() * e.reach;
  e.onto_globals_right = e.right.tail(core.globals) - border.transpose() * e.own_given;
}

void solve_rates(const RatePass& pass, int site, const RateEquations& e, RateSiteEffects& effects) {
  const RateCore places = rate_core(pass.layout, site);
  const Eigen::Index n = places.own();
  const Eigen::Index globals = places.globals;
  const Eigen::Map<const Vector> shared(pass.fit.globals.data(), globals);
  const Eigen::Map<const Matrix> spread(pass.fit.global_covariance.data(), globals, globals);
  Vector core(places.size());
  core.head(n) = e.own_given - e.reach * shared;
  core.tail(globals) = shared;
  effects.core.assign(core.data(), core.data() + core.size());
  Matrix covariance(places.size(), places.size());
  const Matrix cross = -e.reach * spread;
  covariance.topLeftCorner(n, n) = e.own_inverse - cross * e.reach.transpose();
  covariance.topRightCorner(n, globals) = cross;
  covariance.bottomLeftCorner(globals, n) = cross.transpose();
  covariance.bottomRightCorner(globals, globals) = spread;
  effects.covariance.assign(covariance.data(), covariance.data() + covariance.size());
  const Eigen::Index runs = e.runs.rows();
  const Vector inverse = e.run_blocks.cwiseInverse();
  const Matrix reach = inverse.asDiagonal() * e.runs;
  const Vector estimate = inverse.cwiseProduct(e.runs_right) - reach * core;
  const Matrix run_cross = -reach * covariance;
  const Vector variance = inverse - run_cross.cwiseProduct(reach).rowwise().sum();
  effects.runs.assign(estimate.data(), estimate.data() + runs);
  effects.run_cross.assign(run_cross.data(), run_cross.data() + run_cross.size());
  effects.run_variance.assign(variance.data(), variance.data() + runs);
  effects.zone_seen = e.zone_seen;
  effects.run_seen = e.run_seen;
}

RatePrior rate_prior(const RateLayout& layout, const RateFit& fit, int site, int part) {
  const RateCore core = rate_core(layout, site);
  const RatePart& own = layout.parts[static_cast<std::size_t>(part)];
  const RateSiteEffects& effects = fit.sites[static_cast<std::size_t>(site)];
  const RatePlaces places = rate_places(core, own);
  const auto n = static_cast<std::size_t>(core.size());
  RatePrior prior;
  for (int i = 0; i < places.count; ++i) {
    const auto a = static_cast<std::size_t>(places.place[static_cast<std::size_t>(i)]);
    prior.mean += effects.core[a];
    if (effects.covariance.empty()) continue;  // before the first pass
    for (int j = 0; j < places.count; ++j)
      prior.shared_variance +=
          effects.covariance[a * n +
                             static_cast<std::size_t>(places.place[static_cast<std::size_t>(j)])];
    if (own.run >= 0)
      prior.shared_variance += 2 * effects.run_cross[static_cast<std::size_t>(own.run) * n + a];
  }
  if (own.run >= 0) {
    prior.mean += effects.runs[static_cast<std::size_t>(own.run)];
    if (!effects.run_variance.empty())
      prior.shared_variance += effects.run_variance[static_cast<std::size_t>(own.run)];
  }
  return prior;
}

}  // namespace kneerail::forecast
