// How the work grows with the parts, what the model holds of each, and one new reading.

#include <cmath>
#include <iostream>
#include <optional>

#include "core/base/text.h"
#include "core/forecast/coating_model.h"
#include "core/forecast/one_part.h"
#include "core/forecast/part_story.h"
#include "tests/benchmark/made_coatings.h"
#include "tests/benchmark/section.h"
#include "tests/support/made_portfolio.h"

namespace kneerail::benchmark {

using forecast::Portfolio;

Portfolio made_coatings(std::uint64_t seed, int parts) {
  forecast::Recipe recipe;
  recipe.seed = seed;
  recipe.parts = 25;
  recipe.runs = 10;
  recipe.days = 10;
  recipe.grades = true;
  recipe.zones = parts >= 1'000 ? 4 : 1;
  recipe.sites = std::max(1, parts / (recipe.parts * recipe.runs * recipe.zones));
  return forecast::made_portfolio(recipe).portfolio;
}

Portfolio made_diligently(std::uint64_t seed, int visits) {
  forecast::Recipe recipe;
  recipe.seed = seed;
  recipe.days = visits;
  recipe.measured = 1;
  return forecast::made_portfolio(recipe).portfolio;
}

namespace {

/// One size: processor time of fit and forecast together, and what the model holds.
struct Size {
  double parts = 0;
  double seconds = 0;
  double bytes = 0;
};

Result<Size> measure_size(std::uint64_t seed, int parts) {
  const Portfolio portfolio = made_coatings(seed, parts);
  Size size;
  size.parts = static_cast<double>(portfolio.parts.size());
  const double before = heap_bytes();
  const ProcessorWatch running;
  const auto model = forecast::fit_coating_model(portfolio, {.passes = 10});
  if (!model) return fail(model.error());
  size.bytes = heap_bytes() - before;
  const auto report = forecast::report_coating(*model, portfolio, forecast::RunOptions{});
  size.seconds = running.seconds();
  if (!report) return fail(report.error());
  return size;
}

Result<> measure_one_reading(const Plan& plan) {
  constexpr int visits = 12;
  const Portfolio whole = made_diligently(plan.seed, visits);
  const auto model = forecast::fit_coating_model(whole, {});
  if (!model) return fail(model.error());
  std::vector<Portfolio> ones;
  for (std::size_t i = 0; i < whole.parts.size(); ++i)
    ones.push_back(forecast::only_part(whole, static_cast<std::int32_t>(i)));
  const ProcessorWatch running;
  for (const Portfolio& one : ones)
    if (const auto rows = forecast::forecast_one_part(*model, one); !rows)
      return fail(rows.error());
  std::cout << "  one part again after a reading, " << visits
            << " visits: " << fixed(1e3 * running.seconds() / static_cast<double>(ones.size()), 3)
            << " ms of processor, mean of " << ones.size() << std::endl;
  return Done{};
}

}  // namespace

Result<> measure_scale(const Plan& plan) {
  std::cout << "Forecast the coating of ever more parts, 10 passes, track record, seed "
            << plan.seed << std::endl;
  std::optional<Size> before;
  for (int parts = 1'000; parts <= plan.scale_parts; parts *= 10) {
    const auto size = measure_size(plan.seed, parts);
    if (!size) return fail(size.error());
    std::cout << "  " << fixed(size->parts, 0) << " parts: " << fixed(size->seconds, 2)
              << " s of processors; the model holds " << fixed(size->bytes / size->parts, 0)
              << " bytes a part";
    if (before)
      std::cout << "; exponent "
                << fixed(std::log(size->seconds / before->seconds) /
                             std::log(size->parts / before->parts),
                         2);
    std::cout << std::endl;
    before = *size;
  }
  return measure_one_reading(plan);
}

}  // namespace kneerail::benchmark
