#include <algorithm>
#include <map>
#include <string_view>

#include "core/forecast/gauge_walk_inside.h"

namespace kneerail::forecast {

std::vector<GaugeDays> days_by_gauge(const CoatingData& data, const CoatingSite& site) {
  std::map<std::string_view, std::size_t> place;
  std::vector<GaugeDays> gauges;
  std::vector<Date> first;
  for (int s = 0; s < site.sessions; ++s) {
    const Session& session = data.sessions[static_cast<std::size_t>(site.first_session + s)];
    const auto [at, is_new] = place.try_emplace(session.gauge, gauges.size());
    if (is_new) {
      gauges.emplace_back();
      first.push_back(session.day);
    }
    gauges[at->second].sessions.push_back(s);
    gauges[at->second].years.push_back(years_between(first[at->second], session.day));
  }
  return gauges;
}

Matrix walk_covariance(const std::vector<double>& years, double drift_um) {
  const auto n = static_cast<Eigen::Index>(years.size());
  Matrix covariance(n, n);
  for (Eigen::Index i = 0; i < n; ++i)
    for (Eigen::Index j = 0; j < n; ++j)
      covariance(i, j) =
          drift_um * drift_um *
          std::min(years[static_cast<std::size_t>(i)], years[static_cast<std::size_t>(j)]);
  return covariance;
}

Matrix offset_precision(const GaugeDays& gauge, double drift_um, double own_sd_um) {
  Matrix covariance = walk_covariance(gauge.years, drift_um);
  covariance.diagonal().array() += own_sd_um * own_sd_um;
  return covariance.llt().solve(Matrix::Identity(covariance.rows(), covariance.cols()));
}

WalkMoments walk_moments(const GaugeDays& gauge, double drift_um, double own_sd_um,
                         const Matrix& second_moments) {
  const Matrix walk = walk_covariance(gauge.years, drift_um);
  const Matrix precision = offset_precision(gauge, drift_um, own_sd_um);
  // Given the offsets, the walk is normal with mean A b and covariance K - A K, A = K precision.
  const Matrix to_walk = walk * precision;
  const Matrix walked = to_walk * second_moments * to_walk.transpose() + walk - to_walk * walk;
  const double own = own_sd_um * own_sd_um;
  const Matrix to_own = own * precision;
  const Matrix rest = to_own * second_moments * to_own.transpose() - own * to_own;
  WalkMoments out;
  for (Eigen::Index i = 0; i < walk.rows(); ++i) {
    out.own_um2.push_back(rest(i, i) + own);
    if (i == 0) continue;
    const double years =
        gauge.years[static_cast<std::size_t>(i)] - gauge.years[static_cast<std::size_t>(i - 1)];
    if (years <= 0) continue;
    out.steps.add((walked(i, i) - 2 * walked(i, i - 1) + walked(i - 1, i - 1)) / years);
  }
  return out;
}

}  // namespace kneerail::forecast
