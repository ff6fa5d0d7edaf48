#include <catch2/catch.hpp>

#include "tests/core/fold/records_at_hand.h"

namespace kneerail::fold::test {

namespace {

const Uuid fitting = id(50);

/// What a device writes about its clock.
struct ClockSaid {
  std::int64_t segment;
  std::int64_t boot;
  std::int64_t monotonic_ms;
  std::int64_t wall_ms;
  std::optional<std::int64_t> hub_ms;
};

struct Times {
  Tablet tablet{1, id(80)};

  void clock(const ClockSaid& said) {
    cbor::Map body{
        {1, said.segment}, {2, said.boot}, {3, said.monotonic_ms}, {4, said.wall_ms}, {5, 1}};
    if (said.hub_ms) body.set(6, *said.hub_ms);
    if (said.hub_ms) body.set(7, 40);
    tablet.says({kind::clock, tablet.device(), body, said.wall_ms, {}}).record.g =
        static_cast<int>(said.segment);
  }
  Uuid reading(int segment, std::int64_t wall_ms, std::optional<std::int64_t> seen_at = {}) {
    cbor::Map body{{1, id(100)}, {2, 1}};
    if (seen_at) body.set(94, *seen_at);
    PlacedRecord& placed = tablet.says({kind::grade, fitting, body, wall_ms, {}});
    placed.record.g = segment;
    return placed.record.id;
  }
  void expect(const Uuid& reading, std::int64_t t, int quality) {
    auto store = folded_both_ways(tablet.records());
    CHECK(cell_at(store, table_reading, {reading}, at(reading_columns, "t")) == Cell(t));
    CHECK(cell_at(store, table_reading, {reading}, at(reading_columns, "t_quality")) ==
          Cell(std::int64_t{quality}));
  }
};

}  // namespace

TEST_CASE("a clock 26 h fast is corrected once its segment met the hub", "[core][fold]") {
  Times times;
  times.clock({1, 1, 0, morning + 26 * hour, {}});
  const Uuid reading = times.reading(1, morning + 27 * hour);
  times.expect(reading, morning + 27 * hour, quality::provisional);
  times.clock({1, 1, 9 * hour, morning + 35 * hour, morning + 9 * hour});
  times.expect(reading, morning + hour, quality::measured);
}

TEST_CASE("a segment that ended by a jump takes the next one's offset and the jump",
          "[core][fold]") {
  Times times;
  times.clock({1, 1, 0, morning, {}});
  const Uuid reading = times.reading(1, morning + hour);
  // After 2 h the wall clock jumps 26 h ahead.
  times.clock({2, 1, 2 * hour, morning + 28 * hour, {}});
  times.clock({2, 1, 9 * hour, morning + 35 * hour, morning + 9 * hour});
  times.expect(reading, morning + hour, quality::measured);
}

TEST_CASE("a segment that ended by a reboot is assumed, and cut to the contacts around it",
          "[core][fold]") {
  Times times;
  times.clock({1, 1, 0, morning, morning});
  times.clock({2, 2, 0, morning + hour, {}});
  const Uuid within = times.reading(2, morning + 2 * hour);
  const Uuid before = times.reading(2, morning - 30 * hour);
  times.clock({3, 3, 0, morning + 3 * hour, morning + 3 * hour + 5 * minute});
  times.expect(within, morning + 2 * hour + 5 * minute, quality::assumed);
  times.expect(before, morning, quality::uncertain);
}

TEST_CASE("a segment that met nobody goes by the last known offset", "[core][fold]") {
  Times times;
  times.clock({1, 1, 0, morning, morning - 10 * minute});
  const Uuid reading = times.reading(2, morning + hour);
  times.expect(reading, morning + 50 * minute, quality::provisional);
}

TEST_CASE("a time that a person states holds, unless it is later than the typing", "[core][fold]") {
  Times times;
  times.expect(times.reading(1, morning + 5 * hour, morning), morning, quality::as_stated);
  times.expect(times.reading(1, morning + 5 * hour, morning + 6 * hour), morning + 5 * hour,
               quality::uncertain);
}

}  // namespace kneerail::fold::test
