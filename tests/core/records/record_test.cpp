#include <catch2/catch.hpp>

#include "core/base/world.h"
#include "core/records/coating_reading.h"
#include "core/records/hybrid_clock.h"
#include "tests/support/seeds.h"

using namespace kneerail;

namespace {

Uuid some_id(std::uint8_t last) {
  Uuid id = *uuid_from_text("01900000-0000-7000-8000-000000000000");
  id.bytes[15] = last;
  return id;
}

Record example() {
  CoatingReading reading;
  reading.visit = some_id(1);
  reading.instrument = some_id(2);
  reading.replicates_tenth_um = {841, 860, 835};
  reading.spot = 2;
  reading.note.life = some_id(3);
  Record record = record_of(reading, some_id(3));
  record.id = some_id(4);
  record.l = 1'780'000'000'000;
  record.w = -137;
  record.g = 3;
  record.who = some_id(5);
  return record;
}

}  // namespace

TEST_CASE("a coating reading is written as the format says, and read back", "[core]") {
  const Record record = example();
  const auto bytes = encode(record);
  // [21, id, 1780000000000, 0, -137, 3, who, subject, {1, 2, 3: [841, 860, 835], 4: 2, 98}]
  // 1 + 1 + 17 + 9 + 1 + 2 + 1 + 17 + 17 bytes before the body, 1 + 18 + 18 + 11 + 2 + 19 in it.
  REQUIRE(bytes.size() == 135);
  CHECK(bytes[0] == 0x89);
  CHECK(bytes[1] == 21);
  CHECK(bytes[2] == 0x50);
  const auto back = decode_record(bytes);
  REQUIRE(back);
  CHECK(*back == record);
  CHECK(check_limits(record));
  const auto fields = from_body<CoatingReading>(back->body);
  REQUIRE(fields);
  CHECK(fields->replicates_tenth_um == std::vector<std::int64_t>{841, 860, 835});
  CHECK(to_body(*fields) == record.body);
}

TEST_CASE("unknown kinds and unknown body keys are kept", "[core]") {
  Record record = example();
  record.body.set(77, cbor::Array{"of a later program", true});
  auto back = decode_record(encode(record));
  REQUIRE(back);
  CHECK(*back == record);
  CHECK(check_limits(record));
  record.kind = 777;
  back = decode_record(encode(record));
  REQUIRE(back);
  CHECK(*back == record);
}

TEST_CASE("any byte of a record changed is refused or reads as just those bytes",
          "[core][property]") {
  const auto whole = encode(example());
  int accepted = 0;
  for (std::size_t at = 0; at < whole.size(); ++at) {
    for (int bit = 1; bit < 256; ++bit) {
      auto bytes = whole;
      bytes[at] = static_cast<std::uint8_t>(bytes[at] ^ bit);
      const auto record = decode_record(bytes);
      if (!record) continue;
      ++accepted;
      CHECK(encode(*record) == bytes);
      CHECK_FALSE(*record == example());
    }
  }
  CHECK(accepted > 0);
  for (std::size_t length = 0; length < whole.size(); ++length)
    CHECK_FALSE(decode_record(std::span(whole).first(length)));
}

TEST_CASE("an envelope out of its range is refused", "[core]") {
  const auto refused = [](auto change) {
    Record record = example();
    change(record);
    return !check_limits(record) && !decode_record(encode(record));
  };
  CHECK(refused([](Record& r) { r.kind = 0; }));
  CHECK(refused([](Record& r) { r.kind = 1000; }));
  CHECK(refused([](Record& r) { r.l = std::int64_t{1} << 53; }));
  CHECK(refused([](Record& r) { r.l = -1; }));
  CHECK(refused([](Record& r) { r.c = 65'536; }));
  CHECK(refused([](Record& r) { r.g = -1; }));
  CHECK(refused([](Record& r) { r.w = -(std::int64_t{1} << 53) - 1; }));
  CHECK(refused([](Record& r) { r.body.set(500, std::string(65'536, 'a')); }));
  CHECK(refused([](Record& r) { r.body.set("name", 1); }));
}

TEST_CASE("a version 7 identifier equals the example of RFC 9562", "[core][reference]") {
  // RFC 9562, appendix A.6: 2022-02-22T19:22:22Z, random a CC3, random b 18C4DC0C0C07398F.
  const std::array<std::uint8_t, 10> random = {0x0C, 0xC3, 0x18, 0xC4, 0xDC,
                                               0x0C, 0x0C, 0x07, 0x39, 0x8F};
  const Uuid id = uuid7(1'645'557'742'000, random);
  CHECK(to_text(id) == "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
  CHECK(id.unix_ms() == 1'645'557'742'000);
}

TEST_CASE("the published clock counts where physical time stands still", "[core]") {
  CHECK(published_send({10, 0}, 12) == HybridTime{12, 0});
  CHECK(published_send({10, 3}, 10) == HybridTime{10, 4});
  CHECK(published_send({10, 3}, 2) == HybridTime{10, 4});
  CHECK(published_receive({10, 3}, {10, 5}, 9) == HybridTime{10, 6});
  CHECK(published_receive({10, 3}, {8, 5}, 9) == HybridTime{10, 4});
  CHECK(published_receive({7, 3}, {10, 5}, 9) == HybridTime{10, 6});
  CHECK(published_receive({7, 3}, {10, 5}, 11) == HybridTime{11, 0});
}

TEST_CASE("what was in sight always loses to what was written after it", "[core][property]") {
  const std::uint64_t seed = test::seed_or(20'310'514);
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  constexpr std::int64_t day = 86'400'000;
  for (int round = 0; round < 1'000; ++round) {
    // b was stamped at recv_b; a device with any clock pulls it, writes F, and F arrives later.
    const std::int64_t recv_b = random.between(1'000 * day, 1'001 * day);
    const std::int64_t l_b = recv_b + random.between(-400 * day, 400 * day);
    const HybridTime before{random.between(0, 2'000 * day), static_cast<int>(random.between(0, 9))};
    const HybridTime clock = seen(before, l_b, recv_b);
    const HybridTime f = own_entry(clock, random.between(0, 2'000 * day));
    const std::int64_t recv_f = recv_b + random.between(1, day);
    const MergeKey older{effective_ms(l_b, recv_b), l_b, 0, some_id(9)};
    const MergeKey unsent{effective_ms(f.l, std::nullopt), f.l, f.c, some_id(1)};
    const MergeKey stamped{effective_ms(f.l, recv_f), f.l, f.c, some_id(1)};
    CHECK(unsent > older);
    CHECK(stamped > older);
    CHECK(own_entry(f, 0) > f);
  }
}

TEST_CASE("a clock that ran ahead is forgotten once all is sent", "[core]") {
  HybridTime clock = own_entry({}, 9'000);
  CHECK(clock == HybridTime{9'000, 0});
  clock = own_entry(clock, 1'000);
  CHECK(clock == HybridTime{9'000, 1});
  CHECK(all_sent(effective_ms(9'000, 1'100)) == HybridTime{1'101, 0});
  CHECK(own_entry({9'000, 65'535}, 0) == HybridTime{9'001, 0});
}

TEST_CASE("a clock segment ends at a start and at a jump of over two seconds", "[core]") {
  const ClockMoment begin{.boot = 4, .monotonic_ms = 1'000, .wall_ms = 50'000};
  CHECK_FALSE(begins_segment(begin, {4, 11'000, 62'000}));
  CHECK(begins_segment(begin, {4, 11'000, 62'001}));
  CHECK(begins_segment(begin, {4, 11'000, 57'999}));
  CHECK_FALSE(begins_segment(begin, {4, 11'000, 58'000}));
  CHECK(begins_segment(begin, {5, 1'000, 50'000}));
  CHECK(jump_ms(begin, {4, 11'000, 60'000 + 93'600'000}) == 93'600'000);
}
