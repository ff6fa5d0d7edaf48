// Records a second that the incremental fold takes into tables in memory: an eight-year mix, nine
// in ten of it readings. Run by hand; prints one line a way of folding.

#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "core/base/world.h"
#include "tests/core/fold/records_at_hand.h"

namespace kneerail::fold::test {

namespace {

constexpr int parts = 2'500;
constexpr int parts_a_post = 4;
constexpr int visits = 8;

/// For each of eight visits, each part: a grade, a coating reading and a torque; now and then a
/// finding with what is done about it.
std::vector<PlacedRecord> eight_years() {
  Tablet tablet(1, id(80));
  Hub hub;
  SplitMix64 random(1);
  const Uuid run = id(20);
  tablet.says({kind::create, {}, {{1, 4}, {3, cbor::Map{{1, "Mole"}}}}, morning, run});
  const auto part = [](int number) { return id(100'000 + static_cast<std::uint64_t>(number)); };
  for (int i = 0; i < parts; ++i) {
    const Uuid post = id(200'000 + static_cast<std::uint64_t>(i / parts_a_post));
    if (i % parts_a_post == 0) {
      tablet.says({kind::create, {}, {{1, 5}, {2, run}, {3, cbor::Map{}}}, morning, post});
    }
    tablet.says(
        {kind::create, {}, {{1, 7}, {2, post}, {3, cbor::Map{{1, 5}, {4, 2}}}}, morning, part(i)});
  }
  for (int year = 1; year <= visits; ++year) {
    const Uuid visit = id(100 + static_cast<std::uint64_t>(year));
    const std::int64_t day = morning + year * 365 * 24 * hour;
    tablet.says({kind::visit_opened, id(10), {{1, 1}}, day, visit});
    for (int i = 0; i < parts; ++i) {
      const std::int64_t now = day + i * minute;
      tablet.says({kind::grade, part(i), {{1, visit}, {2, 2}, {5, 1}, {98, part(i)}}, now, {}});
      tablet.says({kind::coating,
                   part(i),
                   {{1, visit},
                    {2, id(95)},
                    {3, cbor::Array{random.between(600, 900), random.between(600, 900), 850}},
                    {4, 1},
                    {98, part(i)}},
                   now,
                   {}});
      tablet.says({kind::torque,
                   part(i),
                   {{1, visit}, {2, id(96)}, {3, 1}, {4, 240}, {5, 2}, {6, 1}, {98, part(i)}},
                   now,
                   {}});
      if (i % 10 != 0) continue;
      const Uuid finding =
          tablet.says({kind::finding, part(i), {{1, visit}, {2, 5}, {3, 4}, {4, true}}, now, {}})
              .record.id;
      tablet.says({kind::made_safe, finding, {{1, cbor::Array{1}}}, now, {}});
      tablet.says({kind::finding_ended, finding, {{1, 1}, {4, cbor::Array{finding}}}, now, {}});
    }
    hub.take(tablet, day + 10 * hour);
  }
  return tablet.records();
}

template <class Fold>
void measure(const char* name, const std::vector<PlacedRecord>& records, Fold fold) {
  MemoryTableStore store;
  const std::clock_t begin = std::clock();
  fold(store);
  const double took = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
  std::printf("%s: %zu records in %.3f s of processor time, %.0f a second\n", name, records.size(),
              took, static_cast<double>(records.size()) / took);
}

}  // namespace

}  // namespace kneerail::fold::test

int main() {
  using namespace kneerail::fold;
  const auto records = test::eight_years();
  test::measure("one by one", records, [&](MemoryTableStore& store) {
    for (const auto& one : records) add(one, store);
  });
  test::measure("one batch", records, [&](MemoryTableStore& store) {
    Batch batch(store);
    for (const auto& one : records) batch.add(one);
    batch.finish();
  });
  test::measure("batches of 2,000", records, [&](MemoryTableStore& store) {
    for (std::size_t next = 0; next < records.size();) {
      Batch batch(store);
      for (int i = 0; i < 2'000 && next < records.size(); ++i) batch.add(records[next++]);
      batch.finish();
    }
  });
  return EXIT_SUCCESS;
}
