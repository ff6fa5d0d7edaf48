#include <cstdlib>
#include <fstream>
#include <iostream>
#include <map>

#include "core/base/text.h"
#include "core/forecast/coating_forecast.h"
#include "tests/benchmark/section.h"
#include "tests/support/made_portfolio.h"

namespace kneerail::benchmark {

namespace {

using forecast::Portfolio;

/// A portfolio of about so many parts, each read about eight times and graded: 25 to a run, 10 runs
/// to a zone.
Portfolio made(std::uint64_t seed, int parts) {
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

Result<double> our_seconds(const Portfolio& portfolio, std::size_t& answered) {
  const Stopwatch running;
  const auto result = forecast::forecast_coating(portfolio);
  const double seconds = running.seconds();
  if (!result) return fail(result.error());
  answered = 0;
  for (const auto& limit : result->limits) answered += limit.answered ? 1 : 0;
  return seconds;
}

/// One row a visit of a part: the mean of its replicates, its age since the first reading here.
Result<> write_visit_means(const Portfolio& portfolio, const std::filesystem::path& file) {
  std::map<std::pair<std::int32_t, std::int32_t>, std::pair<double, int>> sums;
  for (const auto& reading : portfolio.readings) {
    if (reading.quantity != forecast::Quantity::coating_um) continue;
    auto& [sum, count] = sums[{reading.part, reading.visit}];
    sum += reading.value;
    ++count;
  }
  std::ofstream out(file);
  out << "y,t,part,session\n";
  for (const auto& [key, sum] : sums) {
    const auto& visit = portfolio.visits[static_cast<std::size_t>(key.second)];
    out << shortest(sum.first / sum.second) << ','
        << shortest(years_between(portfolio.as_of, visit.day)) << ',' << key.first << ','
        << key.second << '\n';
  }
  if (!out.flush()) return fail(Fault::io, file.string() + ": cannot be written.");
  return Done{};
}

constexpr std::string_view peer_script = R"(
a <- commandArgs(TRUE)
suppressPackageStartupMessages(library(lme4))
d <- read.csv(a[1]); d$part <- factor(d$part); d$session <- factor(d$session)
s <- system.time(suppressWarnings(suppressMessages(
  lmer(y ~ t + (t | part) + (1 | session), d, control = lmerControl(calc.derivs = FALSE)))))
cat(s[["elapsed"]], "\n", file = a[2])
)";

/// Seconds lme4 takes for the same visit means; nothing where R or lme4 is not installed.
Result<std::optional<double>> lme4_seconds(const Portfolio& portfolio,
                                           const std::filesystem::path& folder) {
  if (std::system("Rscript -e 'library(lme4)' >/dev/null 2>&1") != 0)
    return std::optional<double>{};
  const auto data = folder / "visit_means.csv";
  const auto script = folder / "peer.R";
  const auto answer = folder / "peer_seconds";
  if (auto written = write_visit_means(portfolio, data); !written) return fail(written.error());
  std::ofstream(script) << peer_script;
  const std::string command = "Rscript '" + script.string() + "' '" + data.string() + "' '" +
                              answer.string() + "' >/dev/null";
  if (std::system(command.c_str()) != 0) {
    return fail(Fault::io, "lme4 could not fit the visit means.");
  }
  double seconds = 0;
  std::ifstream(answer) >> seconds;
  return std::optional(seconds);
}

}  // namespace

Result<> measure_forecast(const Plan& plan) {
  const Portfolio whole = made(plan.seed, plan.parts);
  std::cout << "Forecast the coating of " << whole.parts.size() << " parts, "
            << whole.readings.size() << " readings, seed " << plan.seed << std::endl;
  std::size_t answered = 0;
  const auto seconds = our_seconds(whole, answered);
  if (!seconds) return fail(seconds.error());
  std::cout << "  whole: " << fixed(*seconds, 2) << " s, "
            << fixed(static_cast<double>(whole.parts.size()) / *seconds, 0) << " parts/s, "
            << answered << " limits answered, peak memory " << fixed(memory_peak_mb(), 0) << " MB"
            << std::endl;

  const Portfolio few = made(plan.seed, plan.peer_parts);
  const auto few_seconds = our_seconds(few, answered);
  if (!few_seconds) return fail(few_seconds.error());
  const auto peer = lme4_seconds(few, plan.folder);
  if (!peer) return fail(peer.error());
  const std::string what = std::to_string(few.parts.size()) + " parts, lives and reasons";
  if (!*peer) {
    std::cout << "  " << what << ": " << fixed(*few_seconds, 3)
              << " s; R with lme4 is not installed: no peer\n";
    return Done{};
  }
  print(
      {what, *few_seconds, "lme4, y ~ t + (t | part) + (1 | session), the fit alone", **peer, "s"});
  return Done{};
}

}  // namespace kneerail::benchmark
