#pragma once

// The grade model fitted to a portfolio.
//
// A hidden condition grade 1 -> 5 that never improves without work (chain_table.h), at a speed of
// each part's own: rates q_k e^x per year, q_1 = 1,
//   x = mu + kind + material + exposure + site + zone + N(0, tau^2),
// seen through inspectors who are at times one grade off (grade_chain.h). x acts on time only.
// Part effects, zones, kinds and tau by the engine of shared_rate.h, 8 passes on 9 nodes; ln
// q_k/q_1 by its scoring step with mu as their centre. Errors by expected counts (EM with a weak
// prior): pooled u = (4 + ups)/(100 + fresh grades of true 1 to 4), per inspector u_I = (100 u +
// ups_I)/(100 + those of I), at most 0.4; d the same for one too few.
//
// Priors (ln units): mu N(ln 0.12, 0.7^2) per year; kinds N(0, 0.2^2); materials N(0, 0.5^2), bare
// zinc 0, zinc under paint its own; exposures N(0, 0.3^2), unknown 0; ratios N(0, 0.5^2); ln tau
// N(ln 0.4, 0.4^2), tau 0.05 to 1.5. Chosen on invented portfolios with known truth.
// Limits: one shape of life for all parts but for its speed; no season, no spread of a fault from
// part to part. Jackson 2011, J. Stat. Softw. 38(8), for hidden chains with misclassification.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/grade/grade_chain.h"
#include "core/forecast/grade/grade_data.h"
#include "core/forecast/parallel.h"
#include "core/forecast/shared_rate.h"

namespace kneerail::forecast {

/// One inspector's fresh grades, as expected counts given everything.
struct InspectorCounts {
  double seen = 0;
  double could_be_up = 0;    ///< of a true grade 1 to 4
  double could_be_down = 0;  ///< of a true grade 2 to 5
  double ups = 0;            ///< one grade too many
  double downs = 0;
};

struct GradeModel {
  InstalledDates installed;
  GradeData data;
  RateLayout layout;
  RateSettings settings;
  RateFit fit;
  GradeErrors pooled_errors;
  std::vector<GradeErrors> errors;      ///< by place in data.inspectors
  std::vector<InspectorCounts> counts;  ///< the same
  std::optional<ChainTable> table;      ///< at the fitted ratios
};

struct GradeOptions {
  Workers workers = {};
  int passes = 0;  ///< 0: 8
  int nodes = 0;   ///< 0: 9
  /// False: a grade said again counts as a fresh look. For comparison only.
  bool repeats_are_weak = true;
};

/// Without a grade the priors speak. Errors: not_estimable (numerical), cancelled.
Result<GradeModel> fit_grade_model(const Portfolio& portfolio, const GradeOptions& options = {});
/// The same of what was prepared before.
Result<GradeModel> fit_grade_data(InstalledDates installed, GradeData data,
                                  const GradeOptions& options);

/// Rates at which grades 1 to 4 are left in the middle of the portfolio's reference group (zinc,
/// exposure unknown), per year.
GradeRates rates_per_year(const GradeModel& model);

/// Which effects bear on each part, in the order of `data`.
RateLayout grade_layout(const GradeData& data);

/// What the looks say, for the engine and for the forecast.
class GradeLikelihood : public RateLikelihood {
 public:
  /// For a fit.
  GradeLikelihood(const GradeData& data, std::vector<GradeErrors> errors);
  /// For what a fitted model says; begin_pass() is not for this one.
  GradeLikelihood(const GradeData& data, std::vector<GradeErrors> errors, const ChainTable& fitted);

  void begin_pass(std::span<const double> own) override;
  [[nodiscard]] bool tells(int part) const override;
  [[nodiscard]] bool depends(int part, int k) const override;
  void ln_likelihood(int part, int shifted, std::span<const double> x,
                     std::span<double> out) const override;
  void note_posterior(int site, int part, std::span<const double> x,
                      std::span<const double> weights) override;
  void end_pass() override;

  /// At the parameters as they stand.
  [[nodiscard]] GradeChain chain() const { return {*data_, table(), emissions_}; }
  [[nodiscard]] const ChainTable& table() const { return of_shift(-1); }
  [[nodiscard]] const GradeErrors& pooled() const { return pooled_; }
  [[nodiscard]] const std::vector<GradeErrors>& errors() const { return errors_; }
  [[nodiscard]] const std::vector<InspectorCounts>& counts() const { return counts_; }

 private:
  struct SiteCounts {
    std::vector<std::int32_t> inspectors;  ///< of the site, ascending
    std::vector<InspectorCounts> counts;
    std::vector<GradeChances> at_looks;  ///< memory used again
    std::vector<GradeChances> mean;
  };
  [[nodiscard]] const ChainTable& of_shift(int shifted) const {
    return fitted_ != nullptr ? *fitted_ : tables_[static_cast<std::size_t>(shifted + 1)];
  }
  void note_segment(const GradeSegment& segment, std::span<const double> x,
                    std::span<const double> weights, SiteCounts& site) const;

  const GradeData* data_;
  const ChainTable* fitted_ = nullptr;
  std::vector<ChainTable> tables_;  ///< as they stand; each ratio larger by its step
  GradeErrors pooled_;
  std::vector<GradeErrors> errors_;
  std::vector<InspectorCounts> counts_;
  GradeEmissions emissions_;
  std::vector<SiteCounts> sites_;
};

/// Rates relative to that of grade 1, from the logs of the three ratios.
GradeRates relative_rates(std::span<const double> ln_ratios);

}  // namespace kneerail::forecast
