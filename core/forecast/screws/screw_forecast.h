#pragma once

// The forecast of torque_minimum: the chance that a fitting has a set screw under its lowest
// torque, today and at dates ahead. Years to the limit run to 10^x days and mean little, so a
// chance at a date is what is said; the median year only where it is under 30 years away.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/forecast/coating_forecast.h"
#include "core/forecast/screws/screw_fit.h"

namespace kneerail::forecast {

/// Chances on the as-of date and 1, 2, 5 years after; never falling.
using ChancesByYear = std::array<double, 4>;

struct ScrewForecast {
  std::int32_t part = 0;  ///< place in Portfolio::parts
  bool answered = false;
  ChancesByYear as_found{};  ///< the clocks running on
  ChancesByYear as_left{};   ///< all its screws re-torqued to the target on the as-of date
  /// (P_h - P_0)/(1 - P_0): given that it is good now. Only where a check of the as-of date held or
  /// moved at the minimum or more on every screw.
  std::optional<ChancesByYear> proved_good;
  std::optional<double> on_date;  ///< as found, on the date asked
  std::optional<double> left_on_date;
  std::optional<double> median_years;  ///< as found, from the as-of date; only under 30
  /// As found, until the owner's chance is reached: years from the as-of date, under 100.
  std::optional<ChanceAt> owners;
  /// The date the chance as left reaches the owner's; none within 100 years, where it does at once
  /// (the target is too near the minimum), or where none is set.
  std::optional<Date> retorque_by;
  bool target_too_low = false;  ///< re-torqued today, the chance is at once the owner's
  int screws = 0;
  int readings_used = 0;
  double own_share = 0;  ///< share of the loss rate's information from its own readings, 0 to 1
  std::array<double, 3> loss_nm_per_tenfold{};  ///< of days since tightening; 10, 50, 90 %
  std::string words;                            ///< how well founded
  std::string sentence;                         ///< the reason, from its numbers
  std::vector<std::string> flags;
};

struct ScrewForecasts {
  std::vector<ScrewForecast> fittings;  ///< by part id
  std::vector<LeftOut> left_out;        ///< torque readings not used, with their reason
  std::vector<std::string> notes;
};

struct ScrewOptions {
  int threads = 0;  ///< 0: as many as the machine has
  const std::atomic<bool>* stop = nullptr;
  std::optional<Date> date;  ///< a date asked, not before the as-of date
  /// In place of the portfolio's: the owner's chance by consequence of the run (1 high, 2 medium,
  /// 3 low; [0] is not used).
  std::array<std::optional<double>, 4> chance;
};

/// A row for every part with set screws (has_set_screws, or a torque reading). A row that cannot be
/// answered keeps its words. The same portfolio gives the same digits whatever the order of its
/// rows and the number of threads. Errors: cancelled, not_estimable, as fit_screw_model().
Result<ScrewForecasts> forecast_screws(const Portfolio& portfolio,
                                       const ScrewOptions& options = {});

/// The same from a model already fitted to that portfolio.
Result<ScrewForecasts> report_screws(const ScrewModel& model, const Portfolio& portfolio,
                                     const ScrewOptions& options);

/// The row of one part again with readings that came after the fit, the chances of its owner those
/// of the portfolio; nothing where it has no set screws. Errors as screw_model_of_one_part().
Result<std::optional<ScrewForecast>> screws_of_one_part(const ScrewModel& model,
                                                        const Portfolio& one);

/// The row among those of the other limits: chances as found, no quantiles; beyond five years the
/// median and the owner's chance.
LimitForecast limit_row(const ScrewForecast& fitting);

}  // namespace kneerail::forecast
