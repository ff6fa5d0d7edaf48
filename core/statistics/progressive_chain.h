#pragma once

// A condition that only gets worse: states 1, 2 ... n, each left at its own rate for the next. The
// chance of being in a state after a time is a row of exp(Q t), summed from parts that are never
// negative, so that small chances keep their digits.

#include <optional>
#include <span>
#include <vector>

namespace kneerail::statistics {

/// P(in state j after t | in state `from` now) for j = 1 ... rates + 1, as a vector from 0 on.
/// `rates` leave states 1, 2 ...; per year, not negative; `from` counts from 1; t >= 0 years.
/// Method: uniformization (Jensen 1953) over t / 2^k with squaring k times.
std::vector<double> chances_after(std::span<const double> rates, std::size_t from, double t);

/// Mean time from the first state to the last, years: the sum of 1 / rate; inf when a rate is 0.
double mean_passage_years(std::span<const double> rates);

/// Chance to stay a year in a state half of which is left in `median_years`: 0.5^(1/T).
double yearly_stay_probability(double median_years);

/// Shares of a row of transition counts: the likeliest probabilities of one step. Nothing when the
/// row is empty of transitions.
std::optional<std::vector<double>> step_probabilities(std::span<const double> counts);

}  // namespace kneerail::statistics
