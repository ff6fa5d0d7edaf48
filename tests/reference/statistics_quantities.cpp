#include <cmath>

#include "core/statistics/first_passage.h"
#include "core/statistics/line.h"
#include "core/statistics/normal.h"
#include "core/statistics/progressive_chain.h"
#include "core/statistics/quantiles.h"
#include "core/statistics/uncertainty.h"
#include "tests/reference/registry.h"

namespace kneerail::reference {

namespace {

using namespace statistics;

Answer normal(const Question& question) {
  Needed need(question.inputs);
  const double p = need.probability("p");
  if (!need.complete()) return need.unknown();
  return normal_quantile(p);
}

template <double (*quantile)(double, double)>
Answer by_degrees(const Question& question) {
  Needed need(question.inputs);
  const double p = need.probability("p");
  const double degrees = need.number("df");
  need.demand(degrees > 0, "no degrees of freedom");
  if (!need.complete()) return need.unknown();
  return quantile(p, degrees);
}

Answer tolerance_factor(const Question& question) {
  Needed need(question.inputs);
  const Tolerance wanted{.sample_size = need.number("n"),
                         .coverage = need.probability("coverage"),
                         .confidence = need.probability("confidence")};
  need.demand(wanted.sample_size >= 2, "not a sample of two");
  if (!need.complete()) return need.unknown();
  return one_sided_tolerance_factor(wanted);
}

Answer drift_by(const Question& question) {
  Needed need(question.inputs);
  const Drift process{.barrier = need.number("barrier"),
                      .drift = need.number("drift"),
                      .sigma = need.number("sigma")};
  const double t = need.number("t");
  need.demand(process.barrier > 0 && process.sigma > 0, "no barrier or no sigma");
  if (!need.complete()) return need.unknown();
  return drift_reaches_by(process, t);
}

Answer gamma_by(const Question& question) {
  Needed need(question.inputs);
  const GammaLoss process{.barrier = need.number("barrier"),
                          .shape_per_year = need.number("shape_per_yr"),
                          .scale = need.number("scale")};
  const double t = need.number("t");
  need.demand(process.barrier > 0 && process.shape_per_year > 0 && process.scale > 0,
              "a parameter that is not above 0");
  if (!need.complete()) return need.unknown();
  return gamma_loss_reaches_by(process, t);
}

Answer life(const Question& question) {
  Needed need(question.inputs);
  const RateSpread spread{.thickness = need.number("residual_um"),
                          .rate_median = need.number("rate_median"),
                          .rate_ln_sd = need.number("sd_ln")};
  const double p = need.probability("p");
  need.demand(spread.rate_median > 0, "no rate");
  if (!need.complete()) return need.unknown();
  return life_quantile(spread, p);
}

Answer gone_by(const Question& question) {
  Needed need(question.inputs);
  const NormalPath path{.start = need.number("c0"),
                        .slope = need.number("slope"),
                        .start_sd = need.number("sd_c0"),
                        .slope_sd = need.number("sd_slope"),
                        .correlation = need.number("rho")};
  const double t = need.number("t");
  if (!need.complete()) return need.unknown();
  return path_gone_by(path, t);
}

template <double Line::*part>
Answer of_line(const Question& question) {
  Needed need(question.inputs);
  const auto t = need.numbers("t");
  const auto y = need.numbers("y");
  if (!need.complete()) return need.unknown();
  const auto line = fit_line(t, y);
  if (!line) return Unknown{line.error().message};
  return (*line).*part;
}

/// The crossing with the confidence that the quantity's words name, in percent.
Result<Crossing> crossing_of(const Question& question, Needed& need) {
  const auto t = need.numbers("t");
  const auto y = need.numbers("y");
  const double threshold = need.number("threshold");
  if (!need.complete()) return fail(Fault::invalid_input, need.unknown().why);
  const auto line = fit_line(t, y);
  if (!line) return fail(line.error());
  return crossing(*line, threshold, question.captured_number(0).value_or(90) / 100);
}

template <double Crossing::*part>
Answer of_crossing(const Question& question) {
  Needed need(question.inputs);
  const auto found = crossing_of(question, need);
  if (!found) return Unknown{found.error().message};
  return (*found).*part;
}

template <std::optional<double> Crossing::*end>
Answer end_of_crossing(const Question& question) {
  Needed need(question.inputs);
  const auto found = crossing_of(question, need);
  if (!found) return Unknown{found.error().message};
  if (!((*found).*end)) return "no bound";
  return *((*found).*end);
}

bool are_rates(const std::vector<double>& rates) {
  for (const double rate : rates) {
    if (!(rate >= 0)) return false;
  }
  return !rates.empty();
}

Answer state_chance(const Question& question) {
  Needed need(question.inputs);
  const auto rates = need.numbers("q");
  const double t = need.number("t");
  const double from = need.number("from");
  const double to = need.number("to");
  if (!need.complete()) return need.unknown();
  const auto states = static_cast<double>(rates.size() + 1);
  if (!are_rates(rates) || !(t >= 0) || !(from >= 1 && from <= states && to >= 1 && to <= states)) {
    return Unknown{"not a chain, a time and two of its states"};
  }
  return chances_after(rates, static_cast<std::size_t>(from), t)[static_cast<std::size_t>(to) - 1];
}

Answer passage(const Question& question) {
  Needed need(question.inputs);
  const auto rates = need.numbers("q");
  const double from = question.captured_number(0).value_or(0);
  const double to = question.captured_number(1).value_or(0);
  if (!need.complete()) return need.unknown();
  if (!are_rates(rates) ||
      !(from >= 1 && to > from && to <= static_cast<double>(rates.size() + 1))) {
    return Unknown{"not a chain and two of its states"};
  }
  return mean_passage_years(std::span(rates).subspan(static_cast<std::size_t>(from) - 1,
                                                     static_cast<std::size_t>(to - from)));
}

Answer stay(const Question& question) {
  Needed need(question.inputs);
  const double median_years = need.number("T_median");
  if (!need.complete()) return need.unknown();
  if (!(median_years > 0)) return Unknown{"no median time"};
  return yearly_stay_probability(median_years);
}

Answer step(const Question& question) {
  Needed need(question.inputs);
  const auto counts = need.numbers("counts");
  const double cell = need.number("cell");
  if (!need.complete()) return need.unknown();
  const auto shares = step_probabilities(counts);
  if (!shares || !(cell >= 1 && cell <= static_cast<double>(counts.size()))) {
    return Unknown{"no counts, or a cell that is not one of them"};
  }
  return (*shares)[static_cast<std::size_t>(cell) - 1];
}

Answer rectangular(const Question& question) {
  Needed need(question.inputs);
  const double a = need.number("a");
  if (!need.complete()) return need.unknown();
  return rectangular_uncertainty(a);
}

Answer error_of_mean(const Question& question) {
  Needed need(question.inputs);
  const auto readings = need.numbers("readings");
  if (!need.complete()) return need.unknown();
  const auto error = mean_uncertainty(readings);
  if (!error) return Unknown{"fewer than two readings"};
  return *error;
}

}  // namespace

void add_statistics(Registry& registry) {
  registry.add("standard normal quantile", normal);
  registry.add("student t quantile", by_degrees<student_t_quantile>);
  registry.add("chi-square quantile", by_degrees<chi_square_quantile>);
  registry.add("one-sided normal tolerance factor k", tolerance_factor);
  registry.add("p(t<=t), brownian motion with drift (inverse gaussian)", drift_by);
  registry.add("p(t<=t), stationary gamma process", gamma_by);
  registry.add("remaining-life quantile, log-normal rate", life);
  registry.add("p(coating exhausted by t), normal intercept and loss slope", gone_by);
  registry.add("intercept", of_line<&Line::intercept>);
  registry.add("slope", of_line<&Line::slope>);
  registry.add("residual sd", of_line<&Line::residual_sd>);
  registry.add("time to threshold by straight-line fit", of_crossing<&Crossing::time>);
  registry.add("delta-method se of that time", of_crossing<&Crossing::standard_error>);
  registry.add("fieller # % lower limit*", end_of_crossing<&Crossing::low>);
  registry.add("fieller # % upper limit*", end_of_crossing<&Crossing::high>);
  registry.add("p(state at t) for a progressive #-state chain", state_chance);
  registry.add("mean first-passage time # to #", passage);
  registry.add("yearly stay probability from the median years in a state", stay);
  registry.add("one-step mle from counts", step);
  registry.add("standard uncertainty of a rectangular +-a", rectangular);
  registry.add("se of the mean of*", error_of_mean);
}

}  // namespace kneerail::reference
