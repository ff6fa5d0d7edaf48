// Condition grades of a portfolio, one part again, and a chain of states beside R's msm.

#include <fstream>
#include <iostream>

#include "core/base/text.h"
#include "core/forecast/grade/grade_forecast.h"
#include "core/forecast/part_story.h"
#include "core/statistics/panel_chain.h"
#include "tests/benchmark/peer_r.h"
#include "tests/benchmark/section.h"

namespace kneerail::benchmark {

namespace {

using forecast::GradeModel;
using forecast::Portfolio;

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

constexpr std::string_view peer_script = R"(
a <- commandArgs(TRUE)
suppressPackageStartupMessages(library(msm))
write.csv(cav[, c("PTNUM", "years", "state")], a[1], row.names = FALSE, quote = FALSE)
Q <- rbind(c(0, 1, 0, 1), c(1, 0, 1, 1), c(0, 1, 0, 1), c(0, 0, 0, 0)) * 0.1
s <- system.time(msm(state ~ years, subject = PTNUM, data = cav, qmatrix = Q, gen.inits = TRUE, deathexact = 4,
                     control = list(reltol = 1e-12, maxit = 1000)))
cat(sum(s[1:2]), "\n", file = a[2])
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

Result<> measure_beside_msm(const Plan& plan) {
  if (!msm_is_there()) return Done{};
  const auto cav_file = plan.folder / "cav.csv";
  const auto seconds_file = plan.folder / "cav_seconds";
  if (auto done = run_r(plan.folder / "cav.R", peer_script, {cav_file, seconds_file}); !done)
    return done;
  double peer_seconds = 0;
  std::ifstream(seconds_file) >> peer_seconds;
  const auto cav = read_cav(cav_file);
  if (!cav) return fail(cav.error());
  const ProcessorWatch panel;
  const auto fit = statistics::fit_panel_chain(*cav);
  const double panel_seconds = panel.seconds();
  if (!fit) return fail(fit.error());
  print({"cav, 4 states, deaths exact, processor time", panel_seconds, "msm", peer_seconds, "s"});
  return Done{};
}

}  // namespace

Result<> measure_grades(const Plan& plan) {
  const Portfolio whole = graded_parts(plan.seed, plan.parts);
  std::cout << "Forecast the condition grades of " << whole.parts.size() << " parts, seed "
            << plan.seed << std::endl;
  if (const auto model = measure_whole(whole); !model) return fail(model.error());
  return measure_beside_msm(plan);
}

}  // namespace kneerail::benchmark
