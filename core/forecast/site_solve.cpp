// Elimination of a site's unknowns and the way back.

#include <algorithm>

#include "core/forecast/site_equations_inside.h"

namespace kneerail::forecast {

namespace {

double precision(double sd) {
  return 1 / (sd * sd);
}

bool has_lone_session(const SiteEquations& e) {
  return std::count(e.session_seen.begin(), e.session_seen.end(), char{1}) <= 1;
}

/// A site with one session cannot tell its offset from its rate, and the spread learnt elsewhere
/// also holds drift and weather.
double offset_sd_um(const SiteEquations& e, const Spreads& spreads) {
  return has_lone_session(e) ? std::min(spreads.offset_um, constant::lone_session_sd_most_um)
                             : spreads.offset_um;
}

/// Where offsets lie before any reading: about whose habit, and how far from it.
void set_offset_priors(const CoatingData& data, const CoatingSite& site, const Spreads& spreads,
                       const std::vector<double>& drift_um, SiteEquations& e) {
  const bool lone = has_lone_session(e);
  e.habits.assign(static_cast<std::size_t>(site.sessions), -1);
  for (int s = 0; s < site.sessions && !lone; ++s)
    e.habits[static_cast<std::size_t>(s)] =
        data.sessions[static_cast<std::size_t>(site.first_session + s)].inspector;
  e.offset_precisions.setZero(site.sessions, site.sessions);
  e.gauges = days_by_gauge(data, site);
  for (const GaugeDays& gauge : e.gauges) {
    const Matrix own = offset_precision(
        gauge, drift_um[static_cast<std::size_t>(gauge.sessions[0])], offset_sd_um(e, spreads));
    for (std::size_t i = 0; i < gauge.sessions.size(); ++i)
      for (std::size_t j = 0; j < gauge.sessions.size(); ++j)
        e.offset_precisions(gauge.sessions[i], gauge.sessions[j]) =
            own(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
  }
}

void add_priors(const CoatingSite& site, const Spreads& spreads,
                const std::vector<double>& batch_weights, SiteEquations& e) {
  const int sessions = e.layout.sessions;
  e.core.block(e.layout.offset(0), e.layout.offset(0), sessions, sessions) += e.offset_precisions;
  for (int s = 0; s < sessions; ++s)
    e.core(e.layout.gain(s), e.layout.gain(s)) += precision(spreads.gain);
  e.core(e.layout.site(), e.layout.site()) += precision(spreads.site);
  for (int z = 0; z < e.layout.zones; ++z)
    e.core(e.layout.zone(z), e.layout.zone(z)) += precision(spreads.zone);
  for (int r = 0; r < static_cast<int>(site.runs.size()); ++r) {
    e.run_blocks(r * run_unknowns + run_rate, run_rate) += precision(spreads.run);
    e.run_blocks(r * run_unknowns + run_batch, run_batch) +=
        batch_weights[static_cast<std::size_t>(r)] * precision(spreads.batch);
    for (int k = run_kind_groups; k < run_unknowns; ++k)
      e.run_blocks(r * run_unknowns + k, k) += precision(spreads.run_kind);
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

using RunBlock = Eigen::Matrix<double, run_unknowns, run_unknowns>;

/// Every pair was summed once each way, so that the block is symmetric; its priors make it positive
/// definite.
RunBlock run_inverse(const SiteEquations& e, Eigen::Index run) {
  const RunBlock block = e.run_blocks.middleRows<run_unknowns>(run * run_unknowns);
  return block.llt().solve(RunBlock::Identity());
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
    const RunBlock inverse = run_inverse(e, r);
    const Matrix reach = inverse * e.runs.middleRows<run_unknowns>(at);
    runs.segment<run_unknowns>(at) =
        inverse * e.runs_right.segment<run_unknowns>(at) - reach * core;
    cross.middleRows<run_unknowns>(at).noalias() = -reach * covariance;
    own.middleRows<run_unknowns>(at) =
        inverse - cross.middleRows<run_unknowns>(at) * reach.transpose();
  }
}

/// Offsets lie about habits: what that adds between the two.
void add_habits(SiteEquations& e, Matrix& border) {
  for (const GaugeDays& gauge : e.gauges)
    for (const int s : gauge.sessions) {
      const int habit = e.habits[static_cast<std::size_t>(s)];
      if (habit < 0) continue;
      for (const int t : gauge.sessions) {
        border(e.layout.offset(t), global_count + habit) -= e.offset_precisions(t, s);
        const int other = e.habits[static_cast<std::size_t>(t)];
        if (other >= 0)
          e.onto_border(global_count + habit, global_count + other) += e.offset_precisions(s, t);
      }
    }
}

/// Second moments of a gauge's offsets about the habits of their inspectors.
Matrix square_offsets(const GaugeDays& gauge, const Border& border, const Matrix& cross,
                      const SiteEffects& effects, const SiteEquations& e) {
  const auto n = static_cast<std::size_t>(e.layout.with_globals());
  const auto count = static_cast<Eigen::Index>(gauge.sessions.size());
  Vector off(count);
  Matrix squares(count, count);
  for (Eigen::Index i = 0; i < count; ++i) {
    const int s = gauge.sessions[static_cast<std::size_t>(i)];
    const int a = e.habits[static_cast<std::size_t>(s)];
    off(i) = effects.core[static_cast<std::size_t>(e.layout.offset(s))];
    if (a >= 0) off(i) -= border.estimate(global_count + a);
    for (Eigen::Index j = 0; j <= i; ++j) {
      const int t = gauge.sessions[static_cast<std::size_t>(j)];
      const int b = e.habits[static_cast<std::size_t>(t)];
      double square = effects.covariance[static_cast<std::size_t>(e.layout.offset(s)) * n +
                                         static_cast<std::size_t>(e.layout.offset(t))];
      if (b >= 0) square -= cross(e.layout.offset(s), global_count + b);
      if (a >= 0) square -= cross(e.layout.offset(t), global_count + a);
      if (a >= 0 && b >= 0) square += border.covariance(global_count + a, global_count + b);
      squares(i, j) = squares(j, i) = square + off(i) * off(j);
    }
  }
  return squares;
}

/// How far offsets are off of themselves, and how far their gauges walk.
void judge_offsets(const Border& border, const Matrix& cross, const Spreads& spreads,
                   const SiteEffects& effects, SiteEquations& e) {
  e.offset_squares.assign(e.habits.size(), 0);
  e.drift_um.assign(e.habits.size(), constant::drift_spread.first);
  for (const GaugeDays& gauge : e.gauges) {
    const WalkMoments moments =
        walk_moments(gauge, effects.drift_um[static_cast<std::size_t>(gauge.sessions[0])],
                     offset_sd_um(e, spreads), square_offsets(gauge, border, cross, effects, e));
    const double drift_um = moved(constant::drift_spread, moments.steps);
    for (std::size_t i = 0; i < gauge.sessions.size(); ++i) {
      const auto session = static_cast<std::size_t>(gauge.sessions[i]);
      e.offset_squares[session] = moments.own_um2[i];
      e.drift_um[session] = drift_um;
    }
  }
}

}  // namespace

void weigh_batches(const SiteEquations& e, double batch_sd, SiteEffects& site) {
  const double variance = batch_sd * batch_sd;
  site.batch_weights.assign(e.run_seen.size(), 1.0);
  for (std::size_t r = 0; r < e.run_seen.size(); ++r) {
    if (e.run_seen[r] == 0) continue;
    const double batch = site.runs[r * run_unknowns + run_batch];
    const double own =
        site.run_covariance[(r * run_unknowns + run_batch) * run_unknowns + run_batch];
    site.batch_weights[r] = std::min(
        constant::batch_weight_most,
        (constant::batch_tail + 1) / (constant::batch_tail + (batch * batch + own) / variance));
  }
}

void eliminate_site(const CoatingData& data, const SharedEffects& effects, int site_index,
                    SiteEquations& e) {
  const CoatingSite& site = data.sites[static_cast<std::size_t>(site_index)];
  const SiteEffects& own = effects.sites[static_cast<std::size_t>(site_index)];
  set_offset_priors(data, site, effects.spreads, own.drift_um, e);
  add_priors(site, effects.spreads, own.batch_weights, e);
  add_foils(data, site, e);
  eliminate_runs(e);
  const Eigen::Index n = e.layout.size();
  const Eigen::Index all = global_count + static_cast<Eigen::Index>(data.inspectors.size());
  e.solved = invert(e.core.topLeftCorner(n, n), e.core_inverse);
  if (!e.solved) return;
  Matrix border = Matrix::Zero(n, all);
  border.leftCols(global_count) = e.core.topRightCorner(n, global_count);
  e.onto_border.setZero(all, all);
  e.onto_border.topLeftCorner(global_count, global_count) =
      e.core.bottomRightCorner(global_count, global_count);
  add_habits(e, border);
  e.reach = e.core_inverse * border;
  e.core_given = e.core_inverse * e.core_right.head(n);
  e.onto_border.noalias() -= border.transpose() * e.reach;
  e.onto_border_right.setZero(all);
  e.onto_border_right.head(global_count) = e.core_right.tail(global_count);
  e.onto_border_right.noalias() -= border.transpose() * e.core_given;
}

void solve_site(const Border& border, const Spreads& spreads, SiteEquations& e,
                SiteEffects& effects) {
  const Eigen::Index n = e.layout.size();
  const Eigen::Index all = n + global_count;
  Vector core(all);
  core.head(n) = e.core_given - e.reach * border.estimate;
  core.tail(global_count) = border.estimate.head(global_count);
  effects.core.assign(core.data(), core.data() + all);
  effects.covariance.resize(static_cast<std::size_t>(all * all));
  Eigen::Map<Matrix> covariance(effects.covariance.data(), all, all);
  const Matrix cross = -e.reach * border.covariance;
  covariance.topLeftCorner(n, n) = e.core_inverse - cross * e.reach.transpose();
  covariance.topRightCorner(n, global_count) = cross.leftCols(global_count);
  covariance.bottomLeftCorner(global_count, n) = cross.leftCols(global_count).transpose();
  covariance.bottomRightCorner(global_count, global_count) =
      border.covariance.topLeftCorner(global_count, global_count);
  solve_runs(e, Eigen::Map<const Matrix>(effects.covariance.data(), all, all), core, effects);
  judge_offsets(border, cross, spreads, effects, e);
  effects.zone_seen = e.zone_seen;
  effects.run_seen = e.run_seen;
}

}  // namespace kneerail::forecast
