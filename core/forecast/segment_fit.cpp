#include "core/forecast/segment_fit.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/statistics/normal.h"

namespace kneerail::forecast {

namespace {

void add_row(const SegmentRow& row, SegmentFit& fit, Pair& pull) {
  const double w = row.precision;
  const double h = row.effective_age;
  fit.information[0] += w;
  fit.information[1] -= w * h;
  fit.information[2] -= w * h;
  fit.information[3] += w * h * h;
  pull[0] += w * row.residual_um;
  pull[1] -= w * h * row.residual_um;
}

void solve(SegmentFit& fit, const Pair& pull) {
  const Square& n = fit.information;
  const Square a{1 + n[0] * fit.prior[0], n[1] * fit.prior[3], n[2] * fit.prior[0],
                 1 + n[3] * fit.prior[3]};
  const double det = a[0] * a[3] - a[1] * a[2];
  fit.q = {a[3] / det, -a[1] / det, -a[2] / det, a[0] / det};
  fit.posterior = product(fit.prior, fit.q);
  const Square& p = fit.posterior;
  fit.estimate = {p[0] * pull[0] + p[1] * pull[1], p[2] * pull[0] + p[3] * pull[1]};
}

/// Response and residual of a value at an effective age, both against the group's mean.
SegmentRow row_at(const SegmentFit& fit, double ln_over_class, double thickness_um,
                  double effective_age) {
  SegmentRow row;
  row.effective_age = effective_age;
  row.residual_um = thickness_um - (fit.start_um - fit.rate * effective_age);
  row.response_um =
      thickness_um + fit.rate * effective_age * (1 - ln_over_class) - fit.terms.given_start_um;
  return row;
}

SegmentRow numeric_row(const FitInput& input, const SegmentFit& fit, double ln_over_class,
                       int place) {
  const VisitMean& mean = input.data->means[static_cast<std::size_t>(place)];
  SegmentRow row = row_at(fit, ln_over_class, mean.thickness_um, mean.effective_age);
  row.mean = place;
  row.session = mean.session - input.first_session;
  row.loss_um = fit.rate * mean.effective_age;
  row.precision = mean.weight / mean_variance(mean, *input.spreads, row.loss_um);
  row.gain_um = gain_thickness_um(fit.start_um - fit.rate * mean.effective_age);
  const auto& core = input.effects->core;
  row.residual_um -= core[static_cast<std::size_t>(input.layout.offset(row.session))] +
                     core[static_cast<std::size_t>(input.layout.gain(row.session))] * row.gain_um;
  return row;
}

/// "Thinner than so much" as one normal reading that moves mean and variance of the thickness there
/// as the bound does (a Gaussian site of expectation propagation).
std::optional<SegmentRow> bound_row(const SegmentFit& fit, double ln_over_class, double h,
                                    const ThicknessBound& bound) {
  const Square& p = fit.posterior;
  const double centre = fit.start_um - fit.rate * h + fit.estimate[0] - h * fit.estimate[1];
  const double v = p[0] - h * (p[1] + p[2]) + h * h * p[3];
  const double scale = std::sqrt(v + bound.variance);
  const double x = (bound.limit_um - centre) / scale;
  const double pull =
      statistics::normal_density(x) / (constant::gone_floor + statistics::normal_cdf(x));
  const double moved = centre - v * pull / scale;
  const double left = v - v * v * pull * (pull + x) / (scale * scale);
  if (!(left > 0) || !(v > 0)) return std::nullopt;
  const double precision = 1 / left - 1 / v;
  if (!(precision >= constant::gone_precision_least)) return std::nullopt;
  SegmentRow row = row_at(fit, ln_over_class, (moved / left - centre / v) / precision, h);
  row.precision = precision;
  return row;
}

}  // namespace

Square product(const Square& a, const Square& b) {
  return {a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3], a[2] * b[0] + a[3] * b[2],
          a[2] * b[1] + a[3] * b[3]};
}

void fit_segment(const FitInput& input, const Segment& segment, SegmentFit& fit) {
  const CoatingPart& part = input.data->parts[static_cast<std::size_t>(segment.part)];
  fit.terms = group_terms(input.layout, part, segment, *input.spreads);
  const double over_class = ln_rate_over_class(fit.terms, *input.effects, part.run);
  fit.rate = std::exp(part.ln_prior + over_class);
  fit.start_um = mean_start_um(fit.terms, *input.effects, part.run);
  const double rate_sd = input.spreads->rate * fit.rate;
  fit.prior = {fit.terms.start_sd_um * fit.terms.start_sd_um, 0, 0, rate_sd * rate_sd};
  fit.information = {};
  fit.rows.clear();
  Pair pull{};
  std::optional<ThicknessBound> first_bound;
  double bound_age = 0;
  for (int i = segment.first; i < segment.first + segment.visible; ++i) {
    if (const auto bound = bound_of(*input.data, *input.spreads, segment, i)) {
      if (!first_bound) bound_age = input.data->means[static_cast<std::size_t>(i)].effective_age;
      if (!first_bound) first_bound = bound;
      continue;
    }
    fit.rows.push_back(numeric_row(input, fit, over_class, i));
    add_row(fit.rows.back(), fit, pull);
  }
  solve(fit, pull);
  if (!first_bound) return;
  if (const auto row = bound_row(fit, over_class, bound_age, *first_bound)) {
    fit.rows.push_back(*row);
    add_row(*row, fit, pull);
    solve(fit, pull);
  }
}

RowError row_error(const SegmentFit& fit, const SegmentRow& row) {
  const double h = row.effective_age;
  const Square& p = fit.posterior;
  return {row.residual_um - fit.estimate[0] + h * fit.estimate[1],
          p[0] - h * (p[1] + p[2]) + h * h * p[3]};
}

double robust_weight(const SegmentFit& fit, const SegmentRow& row, const VisitMean& mean) {
  const double variance = mean.weight / row.precision;
  return std::clamp(constant::odd_square * variance / row_error(fit, row).square(),
                    constant::weight_least, 1.0);
}

}  // namespace kneerail::forecast
