#include <sys/wait.h>
#include <unistd.h>

#include <fstream>
#include <iostream>

#include "schema/exchange/portfolio_import.h"
#include "tests/benchmark/bare_table.h"
#include "tests/benchmark/portfolio_files.h"
#include "tests/benchmark/section.h"

namespace kneerail::benchmark {

namespace {

struct Cost {
  double seconds = 0;
  double memory_mb = 0;
};

/// Runs the work in a process of its own, so that its memory is its own, and brings back what it
/// cost. The child does nothing but the work and one line to a pipe.
template <class Work>
Result<Cost> cost_of(Work work) {
  std::array<int, 2> ends{};
  if (::pipe(ends.data()) != 0) return fail(Fault::io, "No pipe to a process of its own.");
  std::cout.flush();  // else the child would say it again
  const pid_t child = ::fork();
  if (child < 0) return fail(Fault::io, "No process of its own.");
  if (child == 0) {
    ::close(ends[0]);
    const Stopwatch working;
    const Result<> done = work();
    const Cost cost{.seconds = working.seconds(), .memory_mb = memory_peak_mb()};
    if (!done) std::cerr << done.error().message << "\n";
    const bool told = ::write(ends[1], &cost, sizeof cost) == static_cast<ssize_t>(sizeof cost);
    ::_exit(done && told ? 0 : 1);
  }
  ::close(ends[1]);
  Cost cost;
  const bool heard = ::read(ends[0], &cost, sizeof cost) == static_cast<ssize_t>(sizeof cost);
  ::close(ends[0]);
  int status = 0;
  ::waitpid(child, &status, 0);
  if (!heard || !WIFEXITED(status) || WEXITSTATUS(status) != 0) {
    return fail(Fault::io, "The process that was measured ended without its figures.");
  }
  return cost;
}

Result<> generate(const Plan& plan, const std::filesystem::path& files) {
  // In a child too: what the generator holds must not count as the import's.
  const auto made = cost_of([&]() -> Result<> {
    const auto written = write_portfolio_files(files, plan.seed, plan.imported);
    if (!written) return fail(written.error());
    std::cout << "Import " << written->readings << " readings of " << written->parts
              << " parts, seed " << plan.seed << std::endl;
    return Done{};
  });
  if (!made) return fail(made.error());
  return Done{};
}

Result<> import_files(const Plan& plan, const std::filesystem::path& files) {
  auto store = Register::open({.folder = plan.folder / "import", .mode = Mode::create});
  if (!store) return fail(store.error());
  exchange::ImportOptions options;
  options.folder = files;
  options.staging = plan.folder / "import_staging";
  const auto report = exchange::import_portfolio(**store, options);
  if (!report) return fail(report.error());
  if (!report->imported || report->left_out() > 0) {
    return fail(Fault::invalid_input,
                "The import left " + std::to_string(report->left_out()) +
                    " rows of the generated files out: the generator must follow its limits.");
  }
  return Done{};
}

/// The same lines of readings into a bare table, ten thousand to a transaction.
Result<> insert_lines(const Plan& plan, const std::filesystem::path& files) {
  auto bare = BareTable::open(plan.folder / "import_peer.sqlite");
  if (!bare) return fail(bare.error());
  std::ifstream rows(files / "readings.csv");
  std::string line;
  if (auto begun = (*bare)->begin(); !begun) return fail(begun.error());
  for (int count = 1; std::getline(rows, line); ++count) {
    const std::span bytes(reinterpret_cast<const std::uint8_t*>(line.data()), line.size());
    if (auto put = (*bare)->insert(bytes); !put) return fail(put.error());
    if (count % 10'000 != 0) continue;
    if (auto done = (*bare)->commit(); !done) return fail(done.error());
    if (auto begun = (*bare)->begin(); !begun) return fail(begun.error());
  }
  return (*bare)->commit();
}

}  // namespace

Result<> measure_import(const Plan& plan) {
  const auto files = plan.folder / "files";
  if (auto made = generate(plan, files); !made) return fail(made.error());
  const auto ours = cost_of([&] { return import_files(plan, files); });
  if (!ours) return fail(ours.error());
  const auto peer = cost_of([&] { return insert_lines(plan, files); });
  if (!peer) return fail(peer.error());
  constexpr std::string_view name = "bare SQLite insert of the same lines";
  print({"import", ours->seconds, name, peer->seconds, "s"});
  print({"rows", plan.imported / ours->seconds, name, plan.imported / peer->seconds, "rows/s"});
  print({"peak memory", ours->memory_mb, name, peer->memory_mb, "MB"});
  return Done{};
}

}  // namespace kneerail::benchmark
