#include <QCoreApplication>
#include <iostream>
#include <memory>

#include "mobile/models/walk_model.h"
#include "schema/digest.h"
#include "schema/machine.h"
#include "tests/benchmark/section.h"
#include "tests/mobile/benchmark/sections.h"

namespace kneerail::benchmark {

namespace {

constexpr int parts_of_post = 10;
constexpr std::int64_t bay_mm = 900;  // a run is 10 km long at most
constexpr int hundredth = 100;
constexpr int steps = 200;
constexpr int grades = 100;

Uuid id_of(std::uint8_t type, int number) {
  Uuid id;
  id.bytes = {0x01, 0x90, 0, 0, 0, 0, 0x70, 0, 0x80, type};
  for (std::size_t i = 0; i < 4; ++i)
    id.bytes[15 - i] = static_cast<std::uint8_t>(static_cast<unsigned>(number) >> (8 * i));
  return id;
}

Entry created(const Uuid& feed, const Uuid& id, int type, const Uuid& parent, cbor::Map fields) {
  Entry entry{feed, 1, {}, {}, {}, id};
  entry.body.set(1, type);
  if (!parent.is_zero()) entry.body.set(2, parent);
  entry.body.set(3, std::move(fields));
  return entry;
}

/// One run of posts with ten fittings each.
std::vector<Entry> run_of(int posts) {
  const Uuid owner = id_of(1, 1);
  const Uuid site = id_of(2, 1);
  const Uuid run = id_of(4, 1);
  std::vector<Entry> all = {created(owner, owner, 1, {}, {{1, "Harbour"}}),
                            created(owner, id_of(10, 1), 10, owner, {{2, "MO"}}),
                            created(owner, site, 2, owner, {{1, "Mole"}}),
                            created(site, id_of(3, 1), 3, site, {{1, "Sea side"}, {2, 4}}),
                            created(site, run, 4, id_of(3, 1), {{1, "Wall"}, {5, 1100}})};
  for (int post = 0; post < posts; ++post) {
    all.push_back(
        created(site, id_of(5, post), 5, run, {{1, std::to_string(post + 1)}, {2, bay_mm * post}}));
    for (int part = 0; part < parts_of_post; ++part)
      all.push_back(created(site, id_of(7, parts_of_post * post + part), 7, id_of(5, post),
                            {{1, 5}, {3, cbor::Array{0, std::int64_t{100} * part}}, {4, 2}}));
  }
  return all;
}

struct Walked {
  double open_ms = 0;
  std::vector<double> step_ms;
  std::vector<double> grade_ms;
};

double ms_of(const Stopwatch& watch) {
  return watch.seconds() * 1000;
}

void grade_parts(WalkModel& walk, std::vector<double>& times_ms) {
  bool kept = false;
  QObject::connect(&walk, &WalkModel::entered, &walk, [&kept] { kept = true; });
  const int first = walk.run()->posts() / 2 * parts_of_post;
  for (int i = 0; i < grades && i < first; ++i) {
    walk.choosePart(first + i);
    kept = false;
    const Stopwatch watch;
    walk.chooseGrade(2);
    while (!kept && !walk.not_kept())
      QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    times_ms.push_back(ms_of(watch));
  }
}

Result<Walked> walk_of(const std::filesystem::path& folder, int posts) {
  {
    auto made = Register::open({.folder = folder, .mode = Mode::create});
    if (!made) return fail(made.error());
    const auto entries = run_of(posts);
    if (auto saved = (*made)->save(entries); !saved) return fail(saved.error());
  }
  auto store = StoreLink::open({.folder = folder});
  if (!store) return fail(store.error());
  MachineClock clock;
  SecureRandom chance;
  WalkModel walk(**store, clock, chance);
  Walked walked;
  const Stopwatch opening;
  walk.open(id_of(4, 1));
  walked.open_ms = ms_of(opening);
  if (walk.run()->posts() != posts)
    return fail(Fault::io, "The large run was not opened: " + walk.message().toStdString());
  for (int i = 0; i < steps && i < posts * parts_of_post; ++i) {
    const Stopwatch watch;
    walk.nextPart();
    walked.step_ms.push_back(ms_of(watch));
  }
  grade_parts(walk, walked.grade_ms);
  (*store)->settle();
  return walked;
}

}  // namespace

Result<> measure_large(const std::filesystem::path& below, const Times& times) {
  const int posts = times.parts / parts_of_post;
  auto large = walk_of(below / "large", posts);
  if (!large) return fail(large.error());
  auto small = walk_of(below / "small", std::max(posts / hundredth, 3));
  if (!small) return fail(small.error());
  const auto peer = "a hundredth of it";
  std::cout << "A run of " << times.parts << " parts by the walk's model, without a window\n";
  print({"opened", large->open_ms, peer, small->open_ms, "ms"});
  print({"from part to part, p99", share_below(large->step_ms, 0.99), peer,
         share_below(small->step_ms, 0.99), "ms"});
  print({"grade to kept, p50", share_below(large->grade_ms, 0.5), peer,
         share_below(small->grade_ms, 0.5), "ms"});
  print({"grade to kept, p99", share_below(large->grade_ms, 0.99), peer,
         share_below(small->grade_ms, 0.99), "ms"});
  return Done{};
}

}  // namespace kneerail::benchmark
