#pragma once

// When loss that adds up by chance first reaches a barrier, and when a thickness that falls along
// a straight line runs out. All give P(T <= t).

namespace kneerail::statistics {

struct Drift {
  double barrier;  ///< above 0
  double drift;    ///< per year
  double sigma;    ///< per square root of a year, above 0
};
/// Brownian motion with drift (inverse Gaussian law):
///   F(t) = N((m t - a) / (s sqrt t)) + exp(2 a m / s^2) N(-(m t + a) / (s sqrt t))
/// 0 at and before t = 0. No overflow however large 2 a m / s^2.
double drift_reaches_by(const Drift& process, double t);

struct GammaLoss {
  double barrier;         ///< above 0
  double shape_per_year;  ///< above 0
  double scale;           ///< above 0; mean loss per year is shape times scale
};
/// Gamma process, which never goes back: P(T <= t) = Q(c t, a / u), the upper incomplete gamma
/// function. Source: van Noortwijk (2009), Reliab. Eng. Syst. Saf. 94, 2-21.
double gamma_loss_reaches_by(const GammaLoss& process, double t);

struct RateSpread {
  double thickness;
  double rate_median;  ///< above 0
  double rate_ln_sd;   ///< standard deviation of ln rate
};
/// The p quantile of thickness / rate with a log-normal rate: exp(ln(c / r) + s z(p)). 0 < p < 1.
double life_quantile(const RateSpread& spread, double p);

struct NormalPath {
  double start;
  double slope;  ///< loss per year
  double start_sd;
  double slope_sd;
  double correlation;  ///< of start and slope
};
/// P(start - slope t <= 0), both normal (general degradation path: Lu and Meeker 1993,
/// Technometrics 35, 161-174).
double path_gone_by(const NormalPath& path, double t);

}  // namespace kneerail::statistics
