#include "tests/core/fold/records_at_hand.h"

namespace kneerail::fold::test {

Uuid id(std::uint64_t number) {
  Uuid made;
  made.bytes[0] = 1;
  made.bytes[6] = 0x70;
  made.bytes[8] = 0x80;
  for (int i = 0; i < 7; ++i) {
    made.bytes[static_cast<std::size_t>(15 - i)] = static_cast<std::uint8_t>(number >> (8 * i));
  }
  return made;
}

PlacedRecord& Tablet::says(const Said& said) {
  PlacedRecord placed;
  placed.feed = feed;
  placed.device = device_;
  placed.seq = static_cast<std::int64_t>(records_.size()) + 1;
  Record& record = placed.record;
  record.kind = said.kind;
  const auto low = static_cast<std::uint64_t>(device_.bytes[15]);
  record.id = said.id.is_zero()
                  ? id(1'000'000 + 10'000 * low + static_cast<std::uint64_t>(placed.seq))
                  : said.id;
  record.l = said.at;
  record.who = person_;
  record.subject = said.subject.is_zero() ? record.id : said.subject;
  record.body = said.body;
  records_.push_back(placed);
  return records_.back();
}

void Hub::take(Tablet& tablet, std::int64_t at) {
  for (PlacedRecord& one : tablet.records()) {
    if (one.stamp) continue;
    recv_ = std::max(recv_ + 1, at);
    one.stamp = Stamp{++hseq_, recv_, 0};
  }
}

MemoryTableStore folded(const std::vector<PlacedRecord>& records) {
  MemoryTableStore store;
  for (const PlacedRecord& one : records) add(one, store);
  return store;
}

MemoryTableStore folded_both_ways(const std::vector<PlacedRecord>& records) {
  MemoryTableStore judge;
  add_all_naively(records, judge);
  MemoryTableStore store = folded(records);
  const std::string differs = difference(store, judge);
  check(differs.empty(), differs.c_str());
  return store;
}

std::vector<PlacedRecord> together(std::initializer_list<std::vector<PlacedRecord>> tablets) {
  std::vector<PlacedRecord> all;
  for (const auto& records : tablets) all.insert(all.end(), records.begin(), records.end());
  return all;
}

Cell cell_at(MemoryTableStore& store, int table, std::vector<Cell> key, int column) {
  const auto row = store.row(table, key);
  return row ? (*row)[static_cast<std::size_t>(column)] : Cell();
}

}  // namespace kneerail::fold::test
