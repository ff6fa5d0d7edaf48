// Grades as a hidden chain of five states seen one off at times, fitted here and by R's msm: the
// same looks, the same model (four rates, twenty errors, all free, new at the start), the same
// start of the search. Of a folder of portfolio files, or of invented parts.

#include <array>
#include <cmath>
#include <fstream>
#include <iostream>

#include "core/base/text.h"
#include "core/forecast/grade/grade_model.h"
#include "core/statistics/hidden_chain.h"
#include "schema/exchange/portfolio_import.h"
#include "schema/store/portfolio_store.h"
#include "tests/benchmark/peer_r.h"
#include "tests/benchmark/section.h"

namespace kneerail::benchmark {

namespace {

using forecast::Portfolio;
using statistics::HiddenData;
using statistics::HiddenParameters;

/// The files as the program reads them: imported into a register, and out of it again.
Result<Portfolio> imported(const Plan& plan) {
  auto store = Register::open({.folder = plan.folder / "hidden", .mode = Mode::create});
  if (!store) return fail(store.error());
  exchange::ImportOptions options;
  options.folder = plan.portfolio;
  options.staging = plan.folder / "hidden_staging";
  options.good_rows = true;
  const auto report = exchange::import_portfolio(**store, options);
  if (!report) return fail(report.error());
  if (report->left_out() > 0)
    std::cout << "Of the files " << report->left_out() << " bad rows are left out\n";
  constexpr Date whenever{40'000};
  auto portfolio = read_portfolio((*store)->tables(), whenever);
  if (!portfolio) return portfolio;
  portfolio->as_of = Date{0};
  for (const auto& visit : portfolio->visits)
    portfolio->as_of = std::max(portfolio->as_of, visit.day);
  return portfolio;
}

struct Hidden {
  HiddenData data;
  int left_out = 0;  ///< looks of segments with an unknown start, or of no time after another
};

/// Looks at parts with a known start, each segment a subject.
Hidden hidden_of(const Portfolio& portfolio) {
  const auto grades = forecast::prepare_grades(portfolio, forecast::InstalledDates(portfolio));
  Hidden hidden;
  hidden.data.states = forecast::grade_worst;
  for (int state = 1; state < forecast::grade_worst; ++state)
    hidden.data.steps.push_back({state, state + 1});
  for (int truth = 1; truth <= forecast::grade_worst; ++truth)
    for (int seen = 1; seen <= forecast::grade_worst; ++seen)
      if (seen != truth) hidden.data.errors.push_back({truth, seen});
  int subject = 0;
  for (const auto& segment : grades.segments) {
    if (!segment.start_known) {
      hidden.left_out += segment.count;
      continue;
    }
    Date before = segment.starts.front();
    for (int i = segment.first; i < segment.first + segment.count; ++i) {
      const auto& look = grades.looks[static_cast<std::size_t>(i)];
      if (look.day <= before) {
        ++hidden.left_out;
        continue;
      }
      hidden.data.looks.push_back({subject, years_between(before, look.day), look.seen});
      before = look.day;
    }
    ++subject;
  }
  return hidden;
}

Result<> write_looks(const HiddenData& data, const std::filesystem::path& file) {
  std::ofstream out(file);
  out << "subject,years,state,known\n";
  int before = -1;
  double years = 0;
  for (const auto& look : data.looks) {
    if (look.subject != before) {
      years = 0;
      out << look.subject << ",0,1,1\n";
    }
    before = look.subject;
    years += look.years;
    out << look.subject << ',' << shortest(years) << ',' << look.seen << ",0\n";
  }
  if (!out.flush()) return fail(Fault::io, file.string() + ": cannot be written.");
  return Done{};
}

/// As the peer's script has it.
HiddenParameters start_of(const HiddenData& data) {
  HiddenParameters start{std::vector<double>(data.steps.size(), 0.12), {}};
  for (const auto& error : data.errors)
    start.errors.push_back(std::abs(error.to - error.from) == 1 ? 0.04 : 0.001);
  return start;
}

constexpr std::string_view peer_script = R"(
a <- commandArgs(TRUE)
suppressPackageStartupMessages(library(msm))
d <- read.csv(a[1])
Q <- matrix(0, 5, 5); for (k in 1:4) Q[k, k + 1] <- 0.12
E <- matrix(0.001, 5, 5); for (k in 1:4) { E[k, k + 1] <- 0.04; E[k + 1, k] <- 0.04 }; diag(E) <- 0
s <- system.time(suppressWarnings(m <- msm(
  state ~ years, subject = subject, data = d, qmatrix = Q, ematrix = E, obstrue = known,
  initprobs = c(1, 0, 0, 0, 0), hessian = FALSE, control = list(fnscale = nrow(d), maxit = 1000))))
q <- qmatrix.msm(m, ci = "none"); e <- ematrix.msm(m, ci = "none")
cat(sprintf("%.15g", c(sum(s[1:2]), m$minus2loglik, m$opt$convergence, m$opt$counts[1],
                       q[cbind(1:4, 2:5)], t(e)[row(e) != col(e)])), "\n", file = a[2])
)";

struct Peer {
  double seconds = 0;
  double criterion = 0;
  int unfinished = 0;  ///< 0: it says that it converged
  int evaluations = 0;
  HiddenParameters at{std::vector<double>(4), std::vector<double>(20)};
};

Result<Peer> fitted_by_msm(const Plan& plan, const HiddenData& data) {
  const auto looks = plan.folder / "looks.csv";
  const auto answer = plan.folder / "hidden_answer";
  if (auto done = write_looks(data, looks); !done) return fail(done.error());
  if (auto done = run_r(plan.folder / "hidden.R", peer_script, {looks, answer}); !done)
    return fail(done.error());
  Peer peer;
  std::ifstream in(answer);
  in >> peer.seconds >> peer.criterion >> peer.unfinished >> peer.evaluations;
  for (double& rate : peer.at.rates) in >> rate;
  for (double& error : peer.at.errors) in >> error;
  if (!in) return fail(Fault::io, "msm gave no answer.");
  return peer;
}

std::string listed(const std::vector<double>& values) {
  std::string text;
  for (const double value : values) text += (text.empty() ? "" : ", ") + fixed(value, 4);
  return text;
}

Result<> compare(const Plan& plan, const Portfolio& portfolio, const HiddenData& data) {
  const ProcessorWatch working;
  const auto fit = statistics::fit_hidden_chain(data, start_of(data));
  const double seconds = working.seconds();
  if (!fit) return fail(fit.error());
  std::cout << "  -2 ln likelihood " << fixed(fit->minus_two_ln_likelihood, 4) << ", "
            << fit->passes << " passes" << (fit->settled ? "" : ", not settled") << "; rates "
            << listed(fit->found.rates) << "; errors " << listed(fit->found.errors) << std::endl;
  const ProcessorWatch whole;
  const auto model = forecast::fit_grade_model(portfolio, {.workers = {.threads = 1}});
  const double whole_seconds = whole.seconds();
  if (!model) return fail(model.error());
  if (!msm_is_there()) return Done{};
  const auto peer = fitted_by_msm(plan, data);
  if (!peer) {
    std::cout << "  " << peer.error().message << " No peer.\n";
    return Done{};
  }
  std::cout << "  msm: -2 ln likelihood " << fixed(peer->criterion, 4) << ", " << peer->evaluations
            << " evaluations" << (peer->unfinished == 0 ? "" : ", not converged") << "; rates "
            << listed(peer->at.rates) << "; errors " << listed(peer->at.errors)
            << "; reckoned here at its estimates "
            << fixed(statistics::hidden_chain_criterion(data, peer->at), 4) << "\n";
  print({"the same hidden chain, processor time", seconds, "msm", peer->seconds, "s"});
  print({"grade model with parts, zones, kinds, inspectors and unknown starts", whole_seconds,
         "msm, hidden chain without these", peer->seconds, "s"});
  return Done{};
}

}  // namespace

Result<> measure_hidden(const Plan& plan) {
  const auto portfolio = plan.portfolio.empty()
                             ? Result<Portfolio>(graded_parts(plan.seed, plan.peer_parts))
                             : imported(plan);
  if (!portfolio) return fail(portfolio.error());
  const Hidden hidden = hidden_of(*portfolio);
  std::cout << "Fit grades as a hidden chain: " << portfolio->parts.size() << " parts, "
            << (plan.portfolio.empty() ? "seed " + std::to_string(plan.seed) : "of the folder")
            << ", " << hidden.data.looks.size() << " grades after a known start, "
            << hidden.left_out << " others left out" << std::endl;
  return compare(plan, *portfolio, hidden.data);
}

}  // namespace kneerail::benchmark
