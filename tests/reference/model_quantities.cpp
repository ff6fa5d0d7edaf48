#include <algorithm>
#include <cmath>

#include "tests/reference/model_text.h"
#include "tests/reference/registry.h"

namespace kneerail::reference {

namespace {

using namespace statistics;

Answer entry(const std::vector<double>& values, std::size_t place) {
  if (place >= values.size()) return Unknown{"the model has no such part"};
  return values[place];
}

/// A part of a least-squares fit of the data set the question names.
template <class Part>
Function of_fit(Part part) {
  return [part](const Question& question) -> Answer {
    const auto asked = asked_model(question);
    if (!asked) return Unknown{asked.error().message};
    const auto fit = least_squares_of(*asked);
    if (!fit) return Unknown{fit.error().message};
    return part(*fit, question);
  };
}

/// A part of a mixed fit, restricted unless the question notes ML.
template <class Part>
Function of_mixed_fit(Part part) {
  return [part](const Question& question) -> Answer {
    const bool ml = question.inputs.note("ML");
    if (ml == question.inputs.note("REML")) return Unknown{"needs the note REML or ML"};
    const auto asked = asked_model(question);
    if (!asked) return Unknown{asked.error().message};
    const auto fit = mixed_fit_of(*asked, ml ? Criterion::ml : Criterion::reml);
    if (!fit) return Unknown{fit.error().message};
    return part(*fit, question);
  };
}

Answer column_of(const std::vector<double>& values, const Question& question) {
  const auto column = question.inputs.number("column");
  if (!column || *column < 0) return Unknown{"needs the input column"};
  return entry(values, static_cast<std::size_t>(*column));
}

/// Entry (row, column) of the covariance of the groups.
Function random_covariance(std::size_t row, std::size_t column) {
  return of_mixed_fit([row, column](const GroupedFit& grouped, const Question&) -> Answer {
    const auto& values = grouped.fit.random_covariance;
    const auto q =
        static_cast<std::size_t>(std::lround(std::sqrt(static_cast<double>(values.size()))));
    if (row >= q || column >= q) return Unknown{"the model has no such part"};
    return values[row * q + column];
  });
}

Function root_of(Function function) {
  return [function](const Question& question) -> Answer {
    auto answer = function(question);
    if (auto* value = std::get_if<double>(&answer)) *value = std::sqrt(*value);
    return answer;
  };
}

Function fixed_part(std::vector<double> MixedFit::*part, std::size_t place) {
  return of_mixed_fit([part, place](const GroupedFit& grouped, const Question&) -> Answer {
    return entry(grouped.fit.*part, place);
  });
}

Function whole_number(double MixedFit::*part) {
  return of_mixed_fit(
      [part](const GroupedFit& grouped, const Question&) -> Answer { return grouped.fit.*part; });
}

/// The criterion, where the question asks for the one the words name.
Function criterion(std::string_view note) {
  return [note, inner = whole_number(&MixedFit::criterion)](const Question& question) -> Answer {
    if (!question.inputs.note(note)) return Unknown{"the note names another criterion"};
    return inner(question);
  };
}

Answer correlation(const GroupedFit& grouped, const Question&) {
  const auto& values = grouped.fit.random_covariance;
  if (values.size() != 4) return Unknown{"the model has no such part"};
  if (!(values[0] > 0 && values[3] > 0)) return Unknown{"a variance is zero"};
  return values[1] / std::sqrt(values[0] * values[3]);
}

/// What a group adds, the group named after the comma.
Function deviation(std::size_t place) {
  return of_mixed_fit([place](const GroupedFit& grouped, const Question& question) -> Answer {
    const auto& names = grouped.group_names;
    const auto found = std::ranges::find(names, question.captured.at(0));
    if (found == names.end()) return Unknown{"the data have no such group"};
    const auto group = static_cast<std::size_t>(found - names.begin());
    const auto q = grouped.fit.deviations.size() / names.size();
    if (place >= q) return Unknown{"the model has no such part"};
    return grouped.fit.deviations[group * q + place];
  });
}

void add_least_squares(Registry& registry) {
  registry.add("coefficient", of_fit([](const LeastSquares& fit, const Question& question) {
                 return column_of(fit.coefficients, question);
               }));
  registry.add("standard error", of_fit([](const LeastSquares& fit, const Question& question) {
                 return column_of(fit.standard_errors, question);
               }));
  registry.add("intercept", of_fit([](const LeastSquares& fit, const Question&) {
                 return entry(fit.coefficients, 0);
               }));
  registry.add("slope", of_fit([](const LeastSquares& fit, const Question&) {
                 return entry(fit.coefficients, 1);
               }));
  registry.add("se of intercept", of_fit([](const LeastSquares& fit, const Question&) {
                 return entry(fit.standard_errors, 0);
               }));
  registry.add("se of slope", of_fit([](const LeastSquares& fit, const Question&) {
                 return entry(fit.standard_errors, 1);
               }));
  registry.add("residual sd", of_fit([](const LeastSquares& fit, const Question&) -> Answer {
                 return fit.residual_sd;
               }));
  registry.add("r squared", of_fit([](const LeastSquares& fit, const Question&) -> Answer {
                 return fit.r_squared;
               }));
}

}  // namespace

void add_models(Registry& registry) {
  add_least_squares(registry);
  registry.add("fixed intercept", fixed_part(&MixedFit::fixed, 0));
  registry.add("mean", fixed_part(&MixedFit::fixed, 0));
  registry.add("fixed slope", fixed_part(&MixedFit::fixed, 1));
  registry.add("se of fixed intercept", fixed_part(&MixedFit::fixed_errors, 0));
  registry.add("se of fixed slope", fixed_part(&MixedFit::fixed_errors, 1));
  registry.add("residual variance", whole_number(&MixedFit::residual_variance));
  registry.add("published residual sd", root_of(whole_number(&MixedFit::residual_variance)));
  registry.add("intercept variance", random_covariance(0, 0));
  registry.add("between-batch variance*", random_covariance(0, 0));
  registry.add("slope variance", random_covariance(1, 1));
  registry.add("published intercept sd", root_of(random_covariance(0, 0)));
  registry.add("published slope sd", root_of(random_covariance(1, 1)));
  registry.add("covariance", random_covariance(0, 1));
  registry.add("intercept-slope covariance", random_covariance(0, 1));
  registry.add("intercept-slope correlation", of_mixed_fit(correlation));
  registry.add("reml criterion (-2 restricted log-likelihood)", criterion("REML"));
  registry.add("ml deviance (-2 log-likelihood)", criterion("ML"));
  registry.add("blup intercept deviation, subject *", deviation(0));
  registry.add("blup slope deviation, subject *", deviation(1));
}

}  // namespace kneerail::reference
