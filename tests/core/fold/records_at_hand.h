#pragma once

// Records written by hand for the fold's tests: a few named subjects, people and devices, and a
// builder that fills the envelope.

#include <initializer_list>
#include <map>
#include <vector>

#include "core/fold/columns.h"
#include "core/fold/finding_rules.h"
#include "core/fold/fold.h"
#include "core/fold/memory_tables.h"
#include "core/fold/rules.h"

namespace kneerail::fold::test {

/// An identifier that depends on the number alone.
Uuid id(std::uint64_t number);

inline constexpr std::int64_t minute = 60'000;
inline constexpr std::int64_t hour = 60 * minute;
/// 07:30 of the day of the examples.
inline constexpr std::int64_t morning = 1'780'000'000'000;
/// A time of that day.
constexpr std::int64_t clock_time(int hours, int minutes) {
  return morning + hours * hour + minutes * minute - 7 * hour - 30 * minute;
}

/// One tablet: numbers its records and stamps them on arrival.
class Tablet {
 public:
  Tablet(std::uint64_t number, const Uuid& person) : device_(id(900 + number)), person_(person) {}

  struct Said {
    int kind;
    Uuid subject;
    cbor::Map body;
    std::int64_t at;  ///< l, and the raw clock
    Uuid id;          ///< zero: minted
  };
  PlacedRecord& says(const Said& said);
  std::vector<PlacedRecord>& records() { return records_; }
  [[nodiscard]] const Uuid& device() const { return device_; }
  Uuid feed = test::id(1);

 private:
  Uuid device_;
  Uuid person_;
  std::vector<PlacedRecord> records_;
};

/// Gives every unstamped record of a tablet a stamp; numbers and times go on from the last.
class Hub {
 public:
  void take(Tablet& tablet, std::int64_t at);

 private:
  std::int64_t hseq_ = 0;
  std::int64_t recv_ = 0;
};

/// Folded one by one, in this order.
MemoryTableStore folded(const std::vector<PlacedRecord>& records);
/// Both folds, checked against each other.
MemoryTableStore folded_both_ways(const std::vector<PlacedRecord>& records);
std::vector<PlacedRecord> together(std::initializer_list<std::vector<PlacedRecord>> tablets);

/// One cell of one row; absent also where there is no row.
Cell cell_at(MemoryTableStore& store, int table, std::vector<Cell> key, int column);

}  // namespace kneerail::fold::test
