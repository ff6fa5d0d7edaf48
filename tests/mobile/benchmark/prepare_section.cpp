#include <QCoreApplication>
#include <algorithm>
#include <iostream>

#include "mobile/models/prepare_model.h"
#include "schema/machine.h"
#include "schema/store/site_store.h"
#include "tests/benchmark/section.h"
#include "tests/mobile/benchmark/sections.h"

namespace kneerail::benchmark {

namespace {

/// The site with the most parts.
Result<Uuid> largest_site(Database& tables) {
  const auto sites = read_sites(tables, TimeZone());
  if (!sites) return fail(sites.error());
  const auto most =
      std::max_element(sites->begin(), sites->end(),
                       [](const SiteBand& a, const SiteBand& b) { return a.parts < b.parts; });
  if (most == sites->end()) return fail(Fault::not_found, "There is no site to prepare a day at.");
  return most->id;
}

}  // namespace

Result<> measure_prepare(const std::filesystem::path& register_folder, const Times& times) {
  auto store = StoreLink::open({.folder = register_folder});
  if (!store) return fail(store.error());
  MachineClock clock;
  ForecastWorker worker(register_folder, clock);
  PrepareModel model(register_folder, **store, worker, clock);
  const auto settle = [&] {
    while (worker.busy() || model.busy())
      QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  };
  worker.reckon();
  settle();
  const auto site = largest_site((*store)->reader().tables());
  if (!site) return fail(site.error());
  const Stopwatch finding;
  model.prepare(*site);
  settle();
  const double found_ms = finding.seconds() * 1000;
  if (!model.known()) return fail(Fault::io, model.trouble().toStdString());
  std::vector<double> moved_ms;
  for (int i = 0; i < times.frames; ++i) {
    const int steps = model.most_minutes() / PrepareModel::step_minutes;
    const Stopwatch watch;
    model.set_minutes(i * 7 % (steps + 1) * PrepareModel::step_minutes);
    moved_ms.push_back(watch.seconds() * 1000);
  }
  const char* peer = "the day found once";
  std::cout << "A day prepared at the largest site, " << model.day().plan.tasks().size()
            << " tasks, without a window\n";
  print({"the tape moved, p50", share_below(moved_ms, 0.5), peer, found_ms, "ms"});
  print({"the tape moved, p99", share_below(moved_ms, 0.99), peer, found_ms, "ms"});
  return Done{};
}

}  // namespace kneerail::benchmark
