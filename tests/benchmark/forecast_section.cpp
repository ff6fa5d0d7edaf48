#include <cstdlib>
#include <fstream>
#include <iostream>
#include <map>

#include "core/base/text.h"
#include "core/forecast/coating_forecast.h"
#include "core/forecast/preparation.h"
#include "core/forecast/stage_one.h"
#include "tests/benchmark/made_coatings.h"
#include "tests/benchmark/section.h"

namespace kneerail::benchmark {

namespace {

using forecast::Portfolio;

/// Of the clock and of all processors.
struct Spent {
  double seconds = 0;
  double processor = 0;
};

Result<Spent> whole_forecast(const Portfolio& portfolio, std::size_t& answered) {
  const Stopwatch running;
  const ProcessorWatch working;
  const auto result = forecast::forecast_coating(portfolio);
  const Spent seconds{running.seconds(), working.seconds()};
  if (!result) return fail(result.error());
  answered = 0;
  for (const auto& limit : result->limits) answered += limit.answered ? 1 : 0;
  return seconds;
}

/// Processor time of the shared effects alone, 10 passes, from visit means that are ready: what a
/// mixed model's fit is.
Result<double> first_stage(const Portfolio& portfolio) {
  auto data = forecast::prepare_coating(portfolio);
  if (!data) return fail(data.error());
  const ProcessorWatch working;
  const auto effects =
      forecast::fit_shared_effects(*data, forecast::first_effects(*data), {.passes = 10});
  const double seconds = working.seconds();
  if (!effects.computed) return fail(Fault::not_estimable, "the shared effects were not computed.");
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
  out << "y,t,part,session,kind,zone\n";
  for (const auto& [key, sum] : sums) {
    const auto& visit = portfolio.visits[static_cast<std::size_t>(key.second)];
    const auto& part = portfolio.parts[static_cast<std::size_t>(key.first)];
    out << shortest(sum.first / sum.second) << ','
        << shortest(years_between(portfolio.as_of, visit.day)) << ',' << key.first << ','
        << key.second << ',' << static_cast<int>(part.kind) << ',' << part.site << ' ' << part.zone
        << '\n';
  }
  if (!out.flush()) return fail(Fault::io, file.string() + ": cannot be written.");
  return Done{};
}

constexpr std::string_view peer_script = R"(
a <- commandArgs(TRUE)
suppressPackageStartupMessages(library(lme4))
d <- read.csv(a[1]); d$part <- factor(d$part); d$session <- factor(d$session)
d$kind <- factor(d$kind); d$zone <- factor(d$zone)
s <- system.time(suppressWarnings(suppressMessages(
  lmer(y ~ t * kind + (t | part) + (1 | session) + (t | zone), d, control = lmerControl(calc.derivs = FALSE)))))
cat(sum(s[1:2]), "\n", file = a[2])
)";

/// Processor seconds lme4 takes for the same visit means; nothing where R or lme4 is not installed.
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
  const Portfolio whole = made_coatings(plan.seed, plan.parts);
  std::cout << "Forecast the coating of " << whole.parts.size() << " parts, "
            << whole.readings.size() << " readings, seed " << plan.seed << std::endl;
  std::size_t answered = 0;
  const auto spent = whole_forecast(whole, answered);
  if (!spent) return fail(spent.error());
  std::cout << "  whole: " << fixed(spent->seconds, 2) << " s (" << fixed(spent->processor, 2)
            << " s of processors), " << answered << " limits answered, peak memory "
            << fixed(memory_peak_mb(), 0) << " MB" << std::endl;

  const Portfolio few = made_coatings(plan.seed, plan.peer_parts);
  const auto few_spent = whole_forecast(few, answered);
  if (!few_spent) return fail(few_spent.error());
  const auto first = first_stage(few);
  if (!first) return fail(first.error());
  const auto peer = lme4_seconds(few, plan.folder);
  if (!peer) return fail(peer.error());
  const std::string what = std::to_string(few.parts.size()) + " parts, processor time: ";
  if (!*peer) {
    std::cout << "  " << what << fixed(few_spent->processor, 3)
              << " s; R with lme4 is not installed: no peer\n";
    return Done{};
  }
  const char* lme4 = "lme4, y ~ t * kind + (t | part) + (1 | session) + (t | zone), the fit alone";
  print({what + "shared effects, 10 passes", *first, lme4, **peer, "s"});
  print({what + "whole, lives and reasons", few_spent->processor, lme4, **peer, "s"});
  return Done{};
}

}  // namespace kneerail::benchmark
