#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/core/fold/random_records.h"
#include "tests/core/fold/records_at_hand.h"
#include "tests/core/fold/smallest_failing.h"
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

/// How many records a larger set has.
int larger_count(SplitMix64& random, std::uint64_t seed) {
  return static_cast<int>(random.between(6, seed % 10 == 0 ? 120 : 40));
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

MemoryTableStore judged(const Arrivals& records) {
  MemoryTableStore store;
  add_all_naively(records, store);
  return store;
}

/// How the records of one arrival are taken in: pages of so many, 0: one by one. Pages of odd
/// length belong to one batch, which is finished in steps; every other such batch is told that it
/// began with empty tables.
using Page = std::size_t;

MemoryTableStore folded_by(const Arrivals& arrived, Page page) {
  if (page == 0) return folded(arrived);
  MemoryTableStore store;
  const bool one_batch = page % 2 == 1;
  Batch whole(store, nullptr, page % 4 == 3 ? Batch::Begins::empty : Batch::Begins::with_rows);
  for (std::size_t next = 0; next < arrived.size();) {
    Batch own(store);
    Batch& batch = one_batch ? whole : own;
    for (Page i = 0; i < page && next < arrived.size(); ++i) batch.add(arrived[next++]);
    if (one_batch)
      batch.settle();
    else
      batch.finish();
  }
  while (whole.make(2)) {
  }
  return store;
}

/// The two folds give one set of rows for this arrival. Where they do not: the smallest part of it
/// for which they do not, and what differs.
void same_rows(const Arrivals& arrived, const MemoryTableStore& judge, Page page,
               std::uint64_t seed) {
  if (folded_by(arrived, page) == judge) return;
  const Arrivals smallest = smallest_failing(
      arrived, [page](const Arrivals& some) { return folded_by(some, page) != judged(some); });
  INFO(kneerail::test::reproduce(seed)
       << '\n'
       << smallest.size() << " of " << arrived.size() << " records, in this order, "
       << (page == 0 ? "one by one" : "in pages of " + std::to_string(page)) << ":\n"
       << text_of(smallest)
       << "fold left, judge right:" << difference(folded_by(smallest, page), judged(smallest)));
  FAIL();
}

bool by_id(const PlacedRecord& a, const PlacedRecord& b) {
  return a.record.id < b.record.id;
}

/// Every order of a small set.
void in_every_order(std::uint64_t seed, std::int64_t least, std::int64_t most) {
  SplitMix64 random(seed);
  Arrivals records = random_records(random, static_cast<int>(random.between(least, most)));
  const MemoryTableStore judge = judged(records);
  std::sort(records.begin(), records.end(), by_id);
  do {
    same_rows(records, judge, 0, seed);
  } while (std::next_permutation(records.begin(), records.end(), by_id));
}

/// Some orders of a larger set, stamps later, some twice, every third in pages.
void in_some_orders(std::uint64_t seed, int orders) {
  SplitMix64 random(seed * 7919);
  const Arrivals records = random_records(random, larger_count(random, seed));
  const MemoryTableStore judge = judged(records);
  for (int order = 0; order < orders; ++order) {
    const Arrivals arrived = arrivals(records, random);
    const Page page = order % 3 == 2 ? static_cast<Page>(random.between(1, 12)) : 0;
    same_rows(arrived, judge, page, seed);
  }
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
      if (name == "object_state" &&
          row[static_cast<std::size_t>(at(object_state_columns, "erased_by"))] != Cell()) {
        const Cell& keeper = row[static_cast<std::size_t>(at(object_state_columns, "kept_by"))];
        ++reached[keeper == Cell() ? "object erased" : "object kept"];
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

TEST_CASE("up to five records give the same rows in every order of arrival",
          "[core][fold][property]") {
  for (const std::uint64_t seed : kneerail::test::seeds(1, 1000)) in_every_order(seed, 2, 5);
  SUCCEED();
}

TEST_CASE("many records give the same rows in 20 orders, stamps later, some twice",
          "[core][fold][property]") {
  for (const std::uint64_t seed : kneerail::test::seeds(1, 1000)) in_some_orders(seed, 20);
  SUCCEED();
}

TEST_CASE("six records give the same rows in all 720 orders", "[core][fold][property][.slow]") {
  for (const std::uint64_t seed : kneerail::test::seeds(5001, 5500)) in_every_order(seed, 6, 6);
  SUCCEED();
}

TEST_CASE("5,000 more sets of records give the same rows in 20 orders",
          "[core][fold][property][.slow]") {
  for (const std::uint64_t seed : kneerail::test::seeds(1001, 6000)) in_some_orders(seed, 20);
  SUCCEED();
}

TEST_CASE("a set that fails is cut down to what it fails for", "[core][fold]") {
  SplitMix64 random(12);
  const Arrivals records = random_records(random, 120);
  // A property that fails for a grade together with a void, whatever else is there.
  const auto has = [](const Arrivals& some, int kind) {
    return std::any_of(some.begin(), some.end(),
                       [kind](const PlacedRecord& one) { return one.record.kind == kind; });
  };
  const auto fails = [&has](const Arrivals& some) {
    return has(some, kind::grade) && has(some, kind::voided);
  };
  REQUIRE(fails(records));
  const Arrivals smallest = smallest_failing(records, fails);
  REQUIRE(smallest.size() == 2);
  CHECK(fails(smallest));
  for (const PlacedRecord& one : smallest) CHECK(one.record.body.empty());
  CHECK(text_of(smallest).find("kind 20 #") != std::string::npos);
}

TEST_CASE("the random records reach every rule", "[core][fold]") {
  std::map<std::string, int> reached;
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    SplitMix64 random(seed * 7919);
    const int count = larger_count(random, seed);
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
        "closure", "stock", "hold", "told", "latest", "object_use", "object_state", "feed_writer",
        "object erased", "object kept"}) {
    names.push_back(name);
  }
  for (const std::string& name : names) {
    INFO(name << " reached " << reached[name] << " times");
    CHECK(reached[name] > 0);
  }
}

}  // namespace kneerail::fold::test
