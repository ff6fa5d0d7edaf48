#pragma once

// A small invented portfolio whose parts are measured and graded, with the models fitted to it.

#include <optional>

#include "core/forecast/decisions/replacement.h"
#include "tests/support/made_portfolio.h"

namespace kneerail::tests {

inline forecast::Portfolio sharing_parts(std::uint64_t seed, forecast::Recipe recipe = {}) {
  recipe.seed = seed;
  recipe.grades = true;
  auto portfolio = forecast::made_portfolio(recipe).portfolio;
  for (auto& part : portfolio.parts) {
    const bool tube =
        part.kind == forecast::PartKind::post_tube || part.kind == forecast::PartKind::rail_tube;
    part.component_type = tube ? "tube" : "fitting";
    if (!tube) continue;
    part.wall_nominal_mm = 3.2;
    part.wall_limit_mm = 2.56;
  }
  return portfolio;
}

/// The fitted models; kept together with the portfolio they were fitted to.
struct Fitted {
  explicit Fitted(forecast::Portfolio of, int threads = 1) : portfolio(std::move(of)) {
    forecast::RunOptions options;
    options.threads = threads;
    options.track_record = false;
    coating.emplace(*forecast::fit_coating_model(portfolio, options));
    grades.emplace(*forecast::fit_grade_model(portfolio, {.workers = {.threads = threads}}));
  }

  [[nodiscard]] forecast::Replacements replacements(int draws = forecast::draw_count) const {
    return {portfolio, &*coating, &*grades, draws};
  }

  forecast::Portfolio portfolio;
  std::optional<forecast::CoatingModel> coating;
  std::optional<forecast::GradeModel> grades;
};

}  // namespace kneerail::tests
