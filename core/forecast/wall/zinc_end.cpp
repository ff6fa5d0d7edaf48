#include "core/forecast/wall/zinc_end.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/forecast/constants.h"
#include "core/forecast/wall/constants.h"

namespace kneerail::forecast {

namespace {

constexpr double reach_sds = 5;      // of a curve before its middle
constexpr double pieces_per_sd = 4;  // where it is steepest
constexpr double tail_sds = 8;       // past the middle: a chance that rises slower is not laid on
constexpr double nearly = 1e-5;      // short of 1
constexpr double pieces_most = 160;
constexpr double at_once = 1e9;  // pieces per year
constexpr double least_variance_um2 = 1e-6;

/// Just past where a chance that rises with age comes up to `level`, between two ages.
template <class Chance>
double age_past(const Chance& chance, double level, double low, double high) {
  constexpr int halvings = 7;
  for (int i = 0; i < halvings; ++i) {
    const double middle = (low + high) / 2;
    (chance(middle) < level ? low : high) = middle;
  }
  return high;
}

}  // namespace

ZincEnd::ZincEnd(const Clock& clock, const PathTable* zinc_path, const Posterior* coating)
    : path_(clock.start_known ? zinc_path : nullptr),
      age_now_(clock.age_now),
      now_(effective(age_now_)),
      excess_um2_(coating == nullptr ? 0 : coating->spots_excess_um2) {}

double ZincEnd::earliest_age() const {
  return path_ != nullptr ? 0 : age_now_ - wall_constant::longest_years;
}

double ZincEnd::age(const ZincWay& zinc) const {
  if (zinc.um_per_year <= 0) return 0;
  return age_of_loss(zinc, zinc.start_um);
}

double ZincEnd::age_of_loss(const ZincWay& zinc, double lost_um) const {
  double h = lost_um / zinc.um_per_year;
  if (h > now_) h = now_ + (h - now_) / zinc.ahead;
  return path_ != nullptr ? path_->age(h) : h;
}

ZincEnd::Lost ZincEnd::lost(const ZincWay& zinc, double h) const {
  const double ahead = std::max(0.0, h - now_);
  const double rate = ahead > 0 ? zinc.ahead * zinc.um_per_year : zinc.um_per_year;
  const double loss = zinc.um_per_year * h + (rate - zinc.um_per_year) * ahead;
  const double drift = constant::future_sd * rate * ahead;
  const double variance = zinc.start_variance + constant::spots_fixed * excess_um2_ +
                          drift * drift + weather_um2(rate, ahead) +
                          constant::spots_of_loss * excess_um2_ * loss * loss;
  return {loss - zinc.start_um, std::max(variance, least_variance_um2)};
}

double ZincEnd::age_before(const ZincWay& zinc, double sds) const {
  const double sd = std::sqrt(lost(zinc, effective(age(zinc))).variance);  // it only rises
  return std::max(age_of_loss(zinc, zinc.start_um - sds * sd), earliest_age());
}

double ZincEnd::gone_chance(const ZincWay& zinc, double age_years) const {
  if (zinc.um_per_year <= 0) return age_years >= 0 ? 1 : 0;
  if (path_ != nullptr && age_years <= 0) return 0;
  const Lost by_then = lost(zinc, effective(age_years));
  return normal_(by_then.over_start_um / std::sqrt(by_then.variance));
}

ZincEnd::Rise ZincEnd::rise(const ZincWay& zinc, double age_years, Side side) const {
  const double h = effective(age_years);
  const Lost by_then = lost(zinc, h);
  const double rate = side == Side::after_now ? zinc.ahead * zinc.um_per_year : zinc.um_per_year;
  const double drift = constant::future_sd * rate;
  const bool after = side == Side::after_now;
  const double half_variance_slope =
      (after ? drift * drift * std::max(0.0, h - now_) + weather_um2(rate, 1) / 2 : 0) +
      constant::spots_of_loss * excess_um2_ * (by_then.over_start_um + zinc.start_um) * rate;
  const double sd = std::sqrt(by_then.variance);
  const auto at = normal_.with_density(by_then.over_start_um / sd);
  const double per_effective =
      at.density * (rate - by_then.over_start_um * half_variance_slope / by_then.variance) / sd;
  return {at.cdf, std::max(0.0, per_effective) * (path_ != nullptr ? path_->slope(age_years) : 1)};
}

GoneCurves::GoneCurves(const ZincEnd& end, const std::vector<ZincWay>& zincs) : end_(end) {
  curves_.reserve(zincs.size());
  for (const ZincWay& zinc : zincs) {
    curves_.push_back(laid_out(zinc));
    fill(curves_.back());
  }
}

GoneCurves::Curve GoneCurves::laid_out(const ZincWay& zinc) const {
  if (zinc.um_per_year <= 0) return {zinc, -1 / at_once, at_once, 1, true, pieces_.size()};
  const double latest = std::max(0.0, end_.age_now()) + wall_constant::longest_years;
  const auto chance = [&](double age) { return end_.gone_chance(zinc, age); };
  const double middle = std::clamp(end_.age(zinc), end_.earliest_age(), latest);
  const double low = end_.age_before(zinc, reach_sds);
  const double sd_years =
      0.4 / std::max(1e-4, std::max(end_.rise(zinc, middle, ZincEnd::Side::before_now).slope,
                                    end_.rise(zinc, middle, ZincEnd::Side::after_now).slope));
  const double high =
      age_past(chance, 1 - nearly, middle, std::min(latest, middle + tail_sds * sd_years));
  const double span = std::max(high - low, 1e-3);
  const double count = std::clamp(std::ceil(pieces_per_sd * span / sd_years), 16.0, pieces_most);
  double first = low;
  double per_year = count / span;
  // A piece ends on the as-of date, for the slope may leap there.
  const double to_now = (end_.age_now() - low) * per_year;
  if (to_now > 0 && to_now < 1)
    first = end_.age_now();
  else if (to_now >= 1 && to_now < count)
    per_year *= std::ceil(to_now) / to_now;
  return {zinc,
          first - 1 / per_year,
          per_year,
          1 + std::ceil((high - first) * per_year),
          chance(high) >= 1 - 2 * nearly,
          pieces_.size()};
}

void GoneCurves::fill(const Curve& curve) {
  using Side = ZincEnd::Side;
  pieces_.push_back({0, 0, 0, 0});
  const auto age_of = [&](int piece) { return curve.first_age + piece / curve.per_year; };
  const auto side_of = [&](int piece) {
    return age_of(piece) + 0.5 / curve.per_year > end_.age_now() ? Side::after_now
                                                                 : Side::before_now;
  };
  ZincEnd::Rise from = end_.rise(curve.zinc, age_of(1), side_of(1));
  for (int i = 1; i < static_cast<int>(curve.last); ++i) {
    const ZincEnd::Rise to = end_.rise(curve.zinc, age_of(i + 1), side_of(i));
    const double gain = to.chance - from.chance;
    const double steepest = 3 * gain;  // of both ends: a piece that rises throughout
    const double a = std::min(from.slope / curve.per_year, steepest);
    const double b = std::min(to.slope / curve.per_year, steepest);
    pieces_.push_back({from.chance, a, 3 * gain - 2 * a - b, a + b - 2 * gain});
    from = side_of(i + 1) == side_of(i) ? to : end_.rise(curve.zinc, age_of(i + 1), side_of(i + 1));
  }
  pieces_.push_back({1, 0, 0, 0});
}

}  // namespace kneerail::forecast
