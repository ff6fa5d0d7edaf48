// Elimination of a site's unknowns and the way back.

#include <algorithm>

#include "core/forecast/site_equations_inside.h"

namespace kneerail::forecast {

namespace {

double precision(double sd) {
  return 1 / (sd * sd);
}

/// A site with one session cannot tell its offset from its rate, and the spread learnt elsewhere
/// also holds drift and weather.
double offset_sd_um(const SiteEquations& equations, const Spreads& spreads) {
  const auto seen =
      std::count(equations.session_seen.begin(), equations.session_seen.end(), char{1});
  return seen > 1 ? spreads.offset_um
                  : std::min(spreads.offset_um, constant::lone_session_sd_most_um);
}

void add_priors(const CoatingSite& site, const Spreads& spreads, SiteEquations& e) {
  const double offset = precision(offset_sd_um(e, spreads));
  for (int s = 0; s < e.layout.sessions; ++s) {
    e.core(e.layout.offset(s), e.layout.offset(s)) += offset;
    e.core(e.layout.gain(s), e.layout.gain(s)) += precision(spreads.gain);
  }
  e.core(e.layout.site(), e.layout.site()) += precision(spreads.site);
  for (int z = 0; z < e.layout.zones; ++z)
    e.core(e.layout.zone(z), e.layout.zone(z)) += precision(spreads.zone);
  for (int r = 0; r < static_cast<int>(site.runs.size()); ++r) {
    e.run_blocks(r * run_unknowns, 0) += precision(spreads.run);
    e.run_blocks(r * run_unknowns + 1, 1) += precision(spreads.batch);
  }
}

/// A check foil is a reading of a known thickness: it tells b + g * thickness alone.
void add_foils(const CoatingData& data, const CoatingSite& site, SiteEquations& e) {
  const double w = precision(constant::foil_sd_um);
  for (int s = 0; s < site.sessions; ++s) {
    const int b = e.layout.offset(s);
    const int g = e.layout.gain(s);
    for (const Foil& foil : data.sessions[static_cast<std::size_t>(site.first_session + s)].foils) {
      e.core(b, b) += w;
      e.core(b, g) += w * foil.true_um;
      e.core(g, b) += w * foil.true_um;
      e.core(g, g) += w * foil.true_um * foil.true_um;
      e.core_right(b) += w * (foil.read_um - foil.true_um);
      e.core_right(g) += w * (foil.read_um - foil.true_um) * foil.true_um;
    }
  }
}

Eigen::Matrix2d run_inverse(const SiteEquations& e, Eigen::Index run) {
  Eigen::Matrix2d block = e.run_blocks.middleRows<run_unknowns>(run * run_unknowns);
  // Start and rate of a run were summed once each way; the block is symmetric.
  const double cross = (block(0, 1) + block(1, 0)) / 2;
  block(0, 1) = block(1, 0) = cross;
  return block.inverse();
}

void eliminate_runs(SiteEquations& e) {
  for (Eigen::Index r = 0; r < e.runs.rows() / run_unknowns; ++r) {
    const auto rows = e.runs.middleRows<run_unknowns>(r * run_unknowns);
    const Matrix reach = run_inverse(e, r) * rows;
    e.core.noalias() -= rows.transpose() * reach;
    e.core_right.noalias() -=
        reach.transpose() * e.runs_right.segment<run_unknowns>(r * run_unknowns);
  }
}

void solve_runs(const SiteEquations& e, const Eigen::Map<const Matrix>& covariance,
                const Vector& core, SiteEffects& site) {
  const Eigen::Index n = e.core.rows();
  const Eigen::Index count = e.runs.rows() / run_unknowns;
  site.runs.resize(static_cast<std::size_t>(count * run_unknowns));
  site.run_cross.resize(static_cast<std::size_t>(count * run_unknowns * n));
  site.run_covariance.resize(static_cast<std::size_t>(count * run_unknowns * run_unknowns));
  Eigen::Map<Vector> runs(site.runs.data(), count * run_unknowns);
  Eigen::Map<Matrix> cross(site.run_cross.data(), count * run_unknowns, n);
  Eigen::Map<Matrix> own(site.run_covariance.data(), count * run_unknowns, run_unknowns);
  for (Eigen::Index r = 0; r < count; ++r) {
    const Eigen::Index at = r * run_unknowns;
    const Eigen::Matrix2d inverse = run_inverse(e, r);
    const Matrix reach = inverse * e.runs.middleRows<run_unknowns>(at);
    runs.segment<run_unknowns>(at) =
        inverse * e.runs_right.segment<run_unknowns>(at) - reach * core;
    cross.middleRows<run_unknowns>(at).noalias() = -reach * covariance;
    own.middleRows<run_unknowns>(at) =
        inverse - cross.middleRows<run_unknowns>(at) * reach.transpose();
  }
}

}  // namespace

void eliminate_site(const CoatingData& data, const Spreads& spreads, int site_index,
                    SiteEquations& e) {
  const CoatingSite& site = data.sites[static_cast<std::size_t>(site_index)];
  add_priors(site, spreads, e);
  add_foils(data, site, e);
  eliminate_runs(e);
  const Eigen::Index n = e.layout.size();
  e.solved = invert(e.core.topLeftCorner(n, n), e.core_inverse);
  if (!e.solved) return;
  const Matrix border = e.core.topRightCorner(n, global_count);
  e.reach = e.core_inverse * border;
  e.core_given = e.core_inverse * e.core_right.head(n);
  e.onto_globals =
      e.core.bottomRightCorner(global_count, global_count) - border.transpose() * e.reach;
  e.onto_globals_right = e.core_right.tail(global_count) - border.transpose() * e.core_given;
}

void solve_site(const SiteEquations& e, const SharedEffects& effects, SiteEffects& site) {
  const Eigen::Index n = e.layout.size();
  const Eigen::Index all = n + global_count;
  const Eigen::Map<const Vector> globals(effects.globals.data(), global_count);
  const Eigen::Map<const Matrix> spread(effects.global_covariance.data(), global_count,
                                        global_count);
  Vector core(all);
  core.head(n) = e.core_given - e.reach * globals;
  core.tail(global_count) = globals;
  site.core.assign(core.data(), core.data() + all);
  site.covariance.resize(static_cast<std::size_t>(all * all));
  Eigen::Map<Matrix> covariance(site.covariance.data(), all, all);
  const Matrix cross = -e.reach * spread;
  covariance.topLeftCorner(n, n) = e.core_inverse - cross * e.reach.transpose();
  covariance.topRightCorner(n, global_count) = cross;
  covariance.bottomLeftCorner(global_count, n) = cross.transpose();
  covariance.bottomRightCorner(global_count, global_count) = spread;
  solve_runs(e, Eigen::Map<const Matrix>(site.covariance.data(), all, all), core, site);
  site.zone_seen = e.zone_seen;
  site.run_seen = e.run_seen;
}

}  // namespace kneerail::forecast
