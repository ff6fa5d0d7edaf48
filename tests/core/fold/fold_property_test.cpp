#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/core/fold/random_records.h"
#include "tests/core/fold/records_at_hand.h"
#include "tests/support/seeds.h"

namespace kneerail::fold::test {

namespace {

void shuffle(std::vector<PlacedRecord>& records, SplitMix64& random) {
  for (std::size_t i = records.size(); i > 1; --i) {
    const auto other =
        static_cast<std::size_t>(random.between(0, static_cast<std::int64_t>(i) - 1));
    std::swap(records[i - 1], records[other]);
  }
}

/// As they may arrive: some first without their stamp, and again with it later; some twice.
std::vector<PlacedRecord> arrivals(const std::vector<PlacedRecord>& records, SplitMix64& random) {
  std::vector<PlacedRecord> first;
  std::vector<PlacedRecord> later;
  for (const PlacedRecord& one : records) {
    if (one.stamp && random.between(0, 2) == 0) {
      PlacedRecord unsent = one;
      unsent.stamp.reset();
      first.push_back(unsent);
      later.push_back(one);
    } else {
      first.push_back(one);
      if (random.between(0, 9) == 0) later.push_back(one);
    }
  }
  shuffle(first, random);
  shuffle(later, random);
  // Some of the later ones come in between.
  for (const PlacedRecord& one : later) {
    const auto same = std::find_if(first.begin(), first.end(), [&one](const PlacedRecord& other) {
      return other.record.id == one.record.id;
    });
    const auto after = std::distance(first.begin(), same) + 1;
    const auto place = random.between(after, static_cast<std::int64_t>(first.size()));
    first.insert(first.begin() + place, one);
  }
  return first;
}

MemoryTableStore judged(const std::vector<PlacedRecord>& records) {
  MemoryTableStore store;
  add_all_naively(records, store);
  return store;
}

MemoryTableStore folded_in_batches(const std::vector<PlacedRecord>& records, SplitMix64& random) {
  MemoryTableStore store;
  std::size_t next = 0;
  while (next < records.size()) {
    Batch batch(store);
    const auto size = static_cast<std::size_t>(random.between(1, 12));
    for (std::size_t i = 0; i < size && next < records.size(); ++i) batch.add(records[next++]);
    batch.finish();
  }
  return store;
}

/// Adds one under each name that a row of the store shows to have been reached.
void count_reached(const MemoryTableStore& store, std::map<std::string, int>& reached) {
  for (std::size_t table = 0; table < tables().size(); ++table) {
    const std::string name(tables()[table].name);
    for (const auto& [key, row] : store.all(static_cast<int>(table))) {
      ++reached[name];
      for (const auto& [column, of] :
           {std::pair("disagreement", at(disagreement_columns, "what")),
            std::pair("finding", at(finding_columns, "hazard_state")),
            std::pair("strike", at(strike_columns, "state")),
            std::pair("clock_segment", at(clock_segment_columns, "quality")),
            std::pair("coverage", at(coverage_columns, "since_fresh_max"))}) {
        if (name != column) continue;
        const Cell& cell = row[static_cast<std::size_t>(of)];
        ++reached[name + ' ' + std::to_string(std::get<std::int64_t>(cell))];
      }
      if (name != "coverage") continue;
      for (const auto& [what, of] : {std::pair("done", at(coverage_columns, "done")),
                                     std::pair("skipped", at(coverage_columns, "skipped")),
                                     std::pair("far", at(coverage_columns, "parts_far")),
                                     std::pair("pushed", at(coverage_columns, "bays_pushed"))}) {
        if (row[static_cast<std::size_t>(of)] == Cell(std::int64_t{0})) continue;
        ++reached[name + ' ' + what];
      }
    }
  }
}

}  // namespace

TEST_CASE("few records give the same rows in every order of arrival", "[core][fold][property]") {
  for (const std::uint64_t seed : kneerail::test::seeds(1, 1000)) {
    SplitMix64 random(seed);
    const int count = static_cast<int>(random.between(2, 5));
    std::vector<PlacedRecord> records = random_records(random, count);
    const MemoryTableStore judge = judged(records);
    std::sort(records.begin(), records.end(),
              [](const auto& a, const auto& b) { return a.record.id < b.record.id; });
    do {
      const MemoryTableStore store = folded(records);
      if (store == judge) continue;
      INFO(kneerail::test::reproduce(seed) << "\n"
                                           << count << " records" << difference(store, judge));
      FAIL();
    } while (std::next_permutation(
        records.begin(), records.end(),
        [](const auto& a, const auto& b) { return a.record.id < b.record.id; }));
  }
  SUCCEED();
}

TEST_CASE("many records give the same rows in random orders, stamps later, some twice",
          "[core][fold][property]") {
  for (const std::uint64_t seed : kneerail::test::seeds(1, 1000)) {
    SplitMix64 random(seed * 7919);
    const int count = static_cast<int>(random.between(6, seed % 10 == 0 ? 120 : 40));
    const std::vector<PlacedRecord> records = random_records(random, count);
    const MemoryTableStore judge = judged(records);
    const int orders = seed % 20 == 0 ? 50 : 3;
    for (int order = 0; order < orders; ++order) {
      const std::vector<PlacedRecord> arrived = arrivals(records, random);
      const MemoryTableStore store =
          order % 3 == 2 ? folded_in_batches(arrived, random) : folded(arrived);
      if (store == judge) continue;
      INFO(kneerail::test::reproduce(seed)
           << "\n"
           << count << " records, order " << order << difference(store, judge));
      FAIL();
    }
  }
  SUCCEED();
}

TEST_CASE("the random records reach every rule", "[core][fold]") {
  std::map<std::string, int> reached;
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    SplitMix64 random(seed * 7919);
    const int count = static_cast<int>(random.between(6, seed % 10 == 0 ? 120 : 40));
    count_reached(judged(random_records(random, count)), reached);
  }
  std::vector<std::string> names;
  for (int what = 1; what <= 10; ++what) names.push_back("disagreement " + std::to_string(what));
  for (int state = 0; state <= 3; ++state) names.push_back("finding " + std::to_string(state));
  for (int state = 1; state <= 3; ++state) names.push_back("strike " + std::to_string(state));
  for (int sure = 1; sure <= 4; ++sure) {
    if (sure != 3) names.push_back("clock_segment " + std::to_string(sure));
  }
  for (const std::string seen : {"0", "1", "2", "done", "skipped", "far", "pushed"}) {
    names.push_back("coverage " + seen);
  }
  for (const std::string name :
       {"bay_after", "life", "visit_group", "visit_part", "retirement", "change", "strike_part",
        "closure", "stock", "hold", "told", "latest"}) {
    names.push_back(name);
  }
  for (const std::string& name : names) {
    INFO(name << " reached " << reached[name] << " times");
    CHECK(reached[name] > 0);
  }
}

}  // namespace kneerail::fold::test
