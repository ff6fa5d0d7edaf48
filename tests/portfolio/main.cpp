// portfolio-coverage: forecasts invented portfolios of all shapes and prints how the bands held the
// true dates, by stratum. A report, not a mark to be tuned to: the world is the program's own.

#include <CLI/CLI.hpp>
#include <chrono>
#include <iostream>

#include "tests/portfolio/chance_score.h"
#include "tests/portfolio/score.h"

namespace {

using namespace kneerail;
using namespace kneerail::portfolio_test;

void print(const std::string& title, const std::vector<Stratum>& strata) {
  std::cout << title << '\n' << head() << '\n';
  for (const Stratum& stratum : strata)
    if (!stratum.scored.empty()) std::cout << line(stratum.name, scores_of(stratum.scored)) << '\n';
}

void print(const std::vector<ChanceStratum>& strata) {
  std::cout << chance_head() << '\n';
  for (const ChanceStratum& stratum : strata)
    if (!stratum.chances.empty())
      std::cout << line(stratum.name, scores_of(stratum.chances)) << '\n';
}

int run(std::uint64_t first, int seeds, const std::string& only) {
  std::vector<Stratum> pooled;
  std::vector<ChanceStratum> pooled_grades;
  double seconds = 0;
  for (const Shape& shape : shapes()) {
    if (!only.empty() && only != shape.name) continue;
    std::vector<Stratum> strata;
    std::vector<ChanceStratum> grade_strata;
    for (int i = 0; i < seeds; ++i) {
      const World world = made_world(shape, first + static_cast<std::uint64_t>(i));
      const auto from = std::chrono::steady_clock::now();
      const auto forecast = forecast::forecast_coating(world.portfolio);
      seconds += std::chrono::duration<double>(std::chrono::steady_clock::now() - from).count();
      if (!forecast) {
        std::cerr << shape.name << ", seed " << first + static_cast<std::uint64_t>(i) << ": "
                  << forecast.error().message << '\n';
        return 1;
      }
      add_coating(world, *forecast, strata);
      add_coating(world, *forecast, pooled);
      const auto walls = forecast::forecast_walls(world.portfolio);
      if (!walls) {
        std::cerr << shape.name << ": " << walls.error().message << '\n';
        return 1;
      }
      add_walls(world, *walls, strata);
      add_walls(world, *walls, pooled);
      const auto grades = forecast::forecast_grades(world.portfolio);
      if (!grades) {
        std::cerr << shape.name << ": " << grades.error().message << '\n';
        return 1;
      }
      add_grades(world, *grades, grade_strata);
      add_grades(world, *grades, pooled_grades);
    }
    print("Shape " + std::string(shape.name) + ", seeds " + std::to_string(first) + " to " +
              std::to_string(first + static_cast<std::uint64_t>(seeds) - 1),
          strata);
    print(grade_strata);
  }
  print("All shapes, " + std::to_string(static_cast<int>(1000 * seconds)) + " ms of forecasting",
        pooled);
  print(pooled_grades);
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app(
      "Coverage of the forecasts of coatings and walls, and chances of grade 5, on invented "
      "portfolios with known truth");
  std::uint64_t first = 1;
  int seeds = 3;
  std::string shape;
  app.add_option("--first", first, "First seed")->capture_default_str();
  app.add_option("--seeds", seeds, "Seeds a shape")
      ->capture_default_str()
      ->check(CLI::Range(1, 1000));
  app.add_option("--shape", shape, "One shape only");
  CLI11_PARSE(app, argc, argv);
  return run(first, seeds, shape);
}
