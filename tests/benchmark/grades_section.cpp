// Condition grades of a portfolio, one part again, and chains beside R's msm.

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iostream>

#include "core/base/text.h"
#include "core/forecast/grade/grade_forecast.h"
#include "core/forecast/part_story.h"
#include "core/statistics/panel_chain.h"
#include "tests/benchmark/section.h"
#include "tests/support/made_grades.h"

namespace kneerail::benchmark {

namespace {

using forecast::GradeModel;
using forecast::Portfolio;

/// About so many parts, graded a little over three times each.
Portfolio made(std::uint64_t seed, int parts) {
  forecast::GradeRecipe recipe;
  recipe.seed = seed;
  recipe.zones = 5;
  recipe.parts = std::clamp(parts / 25, 1, 100);
  recipe.sites = std::max(1, parts / (recipe.zones * recipe.parts));
  recipe.graded = 0.7;
  return forecast::made_grades(recipe).portfolio;
}

std::string with_processor(double seconds, double processor) {
  return fixed(seconds, 2) + " s (" + fixed(processor, 2) + " s of processors)";
}

/// Prints the fit, the forecast and one part again.
Result<GradeModel> measure_whole(const Portfolio& whole) {
  const Stopwatch fitting;
  const ProcessorWatch fitting_work;
  auto model = forecast::fit_grade_model(whole);
  if (!model) return model;
  std::cout << "  " << model->data.looks.size() << " grades; fit "
            << with_processor(fitting.seconds(), fitting_work.seconds());
  const Stopwatch telling;
  const ProcessorWatch telling_work;
  const auto report = forecast::report_grades(*model, whole);
  if (!report) return fail(report.error());
  std::cout << ", forecast with seven quantiles "
            << with_processor(telling.seconds(), telling_work.seconds()) << "\n";
  constexpr int again = 200;
  std::vector<Portfolio> ones;
  for (int i = 0; i < again; ++i)
    ones.push_back(forecast::only_part(
        whole,
        static_cast<std::int32_t>(static_cast<std::size_t>(i) * whole.parts.size() / again)));
  const Stopwatch running;
  for (const Portfolio& one : ones)
    if (const auto rows = forecast::grades_of_one_part(*model, one); !rows)
      return fail(rows.error());
  std::cout << "  one part again after a grade: " << fixed(1e3 * running.seconds() / again, 3)
            << " ms, mean of " << again << std::endl;
  return model;
}

/// Grades of parts with a known start and no replacement, the start as a row of its own.
Result<int> write_states(const Portfolio& portfolio, const std::filesystem::path& file) {
  const auto data = forecast::prepare_grades(portfolio, forecast::InstalledDates(portfolio));
  std::ofstream out(file);
  out << "subject,years,state,known\n";
  int rows = 0;
  for (const auto& segment : data.segments) {
    if (!segment.start_known || segment.count == 0) continue;
    out << segment.first << ",0,1,1\n";
    for (int i = segment.first; i < segment.first + segment.count; ++i) {
      const auto& look = data.looks[static_cast<std::size_t>(i)];
      const double years = years_between(segment.starts.front(), look.day);
      if (years > 0)
        out << segment.first << ',' << shortest(years) << ',' << int{look.seen} << ",0\n";
      ++rows;
    }
  }
  if (!out.flush()) return fail(Fault::io, file.string() + ": cannot be written.");
  return rows;
}

constexpr std::string_view peer_script = R"(
a <- commandArgs(TRUE)
suppressPackageStartupMessages(library(msm))
write.csv(cav[, c("PTNUM", "years", "state")], a[2], row.names = FALSE, quote = FALSE)
Q <- rbind(c(0, 1, 0, 1), c(1, 0, 1, 1), c(0, 1, 0, 1), c(0, 0, 0, 0)) * 0.1
s <- system.time(msm(state ~ years, subject = PTNUM, data = cav, qmatrix = Q, gen.inits = TRUE, deathexact = 4,
                     control = list(reltol = 1e-12, maxit = 1000)))
d <- read.csv(a[1])
Q <- matrix(0, 5, 5); for (k in 1:4) Q[k, k + 1] <- 0.12
E <- matrix(0, 5, 5); for (k in 1:4) { E[k, k + 1] <- 0.04; E[k + 1, k] <- 0.04 }
h <- system.time(suppressWarnings(try(msm(
  state ~ years, subject = subject, data = d, qmatrix = Q, ematrix = E, obstrue = known,
  initprobs = c(1, 0, 0, 0, 0), control = list(fnscale = nrow(d), maxit = 60)), silent = TRUE)))
cat(sum(s[1:2]), sum(h[1:2]), "\n", file = a[3])
)";

/// The pairs of looks in a file of subject, years and state; death, the last state, exactly known.
Result<statistics::PanelData> read_cav(const std::filesystem::path& file) {
  statistics::PanelData data{4, {{1, 2}, {1, 4}, {2, 1}, {2, 3}, {2, 4}, {3, 2}, {3, 4}}, {}};
  std::ifstream in(file);
  std::string line;
  std::getline(in, line);
  std::string before;
  double since = 0;
  int from = 1;
  int number = 0;
  while (std::getline(in, line)) {
    const auto first = line.find(',');
    const auto second = line.find(',', first + 1);
    if (second == std::string::npos) return fail(Fault::io, file.string() + ": no such row.");
    const std::string subject = line.substr(0, first);
    const double years = double_from_text(line.substr(first + 1, second - first - 1)).value_or(0);
    const int state = line[second + 1] - '0';
    if (subject == before)
      data.pairs.push_back(
          {number, from, state, years - since,
           state == 4 ? statistics::Arrival::exactly_then : statistics::Arrival::some_time_before});
    else
      ++number;
    before = subject;
    since = years;
    from = state;
  }
  return data;
}

struct PeerSeconds {
  double cav = 0;
  double hidden = 0;
};

/// Nothing where R or msm is not installed.
Result<std::optional<PeerSeconds>> msm_seconds(const std::filesystem::path& folder) {
  if (std::system("Rscript -e 'library(msm)' >/dev/null 2>&1") != 0)
    return std::optional<PeerSeconds>{};
  const auto script = folder / "chains.R";
  const auto answer = folder / "chains_seconds";
  std::ofstream(script) << peer_script;
  const std::string command =
      "Rscript '" + script.string() + "' '" + (folder / "states.csv").string() + "' '" +
      (folder / "cav.csv").string() + "' '" + answer.string() + "' >/dev/null 2>&1";
  if (std::system(command.c_str()) != 0) return fail(Fault::io, "msm could not fit the chains.");
  PeerSeconds seconds;
  std::ifstream(answer) >> seconds.cav >> seconds.hidden;
  return std::optional(seconds);
}

Result<> measure_beside_msm(const Plan& plan) {
  const Portfolio few = made(plan.seed, plan.peer_parts);
  const auto rows = write_states(few, plan.folder / "states.csv");
  if (!rows) return fail(rows.error());
  const auto peer = msm_seconds(plan.folder);
  if (!peer) return fail(peer.error());
  if (!*peer) {
    std::cout << "  R with msm is not installed: no peer\n";
    return Done{};
  }
  const auto cav = read_cav(plan.folder / "cav.csv");
  if (!cav) return fail(cav.error());
  const ProcessorWatch panel;
  const auto fit = statistics::fit_panel_chain(*cav);
  const double panel_seconds = panel.seconds();
  if (!fit) return fail(fit.error());
  print({"cav, 4 states, deaths exact, processor time", panel_seconds, "msm", (*peer)->cav, "s"});
  const ProcessorWatch hidden;
  const auto model = forecast::fit_grade_model(few, {.workers = {.threads = 1}});
  const double hidden_seconds = hidden.seconds();
  if (!model) return fail(model.error());
  const std::string what = std::to_string(few.parts.size()) +
                           " parts' grades, with parts, zones, kinds, inspectors, the same";
  print({what, hidden_seconds,
         "msm, hidden chain of " + std::to_string(*rows) + " of them without these",
         (*peer)->hidden, "s"});
  return Done{};
}

}  // namespace

Result<> measure_grades(const Plan& plan) {
  const Portfolio whole = made(plan.seed, plan.parts);
  std::cout << "Forecast the condition grades of " << whole.parts.size() << " parts, seed "
            << plan.seed << std::endl;
  if (const auto model = measure_whole(whole); !model) return fail(model.error());
  return measure_beside_msm(plan);
}

}  // namespace kneerail::benchmark
