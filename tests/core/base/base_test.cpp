#include <catch2/catch.hpp>

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/text.h"
#include "core/base/world.h"

using namespace kneerail;

TEST_CASE("a version 7 identifier carries its time", "[core][reference]") {
  // RFC 9562, A.6.
  const auto id = uuid_from_text("017F22E2-79B0-7CC3-98C4-DC0C0C07398F");
  REQUIRE(id);
  CHECK(id->unix_ms() == 1645557742000);
  CHECK(to_text(*id) == "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");

  std::array<std::uint8_t, 10> random{};
  random.fill(0xFF);
  const Uuid made = uuid7(1645557742000, random);
  CHECK(made.unix_ms() == 1645557742000);
  CHECK((made.bytes[6] >> 4) == 7);
  CHECK((made.bytes[8] >> 6) == 2);
}

TEST_CASE("an identifier written wrong is not read", "[core]") {
  CHECK_FALSE(uuid_from_text(""));
  CHECK_FALSE(uuid_from_text("017F22E2-79B0-7CC3-98C4-DC0C0C07398"));
  CHECK_FALSE(uuid_from_text("017F22E2x79B0-7CC3-98C4-DC0C0C07398F"));
  CHECK_FALSE(uuid_from_text("017F22E2-79B0-7CC3-98C4-DC0C0C07398G"));
}

TEST_CASE("days and instants read back as they were written", "[core]") {
  const Date leap = date_from_civil(2024, 2, 29);
  CHECK(to_text(leap) == "2024-02-29");
  CHECK(date_from_text("2024-02-29") == leap);
  CHECK_FALSE(date_from_text("2023-02-29"));
  CHECK_FALSE(date_from_text("2023-2-9"));
  CHECK(utc_day(Instant{-1}) == date_from_civil(1969, 12, 31));
  CHECK(years_between(date_from_civil(2000, 1, 1), date_from_civil(2004, 1, 1)) == Approx(4.0));
  // RFC 3339, 5.8.
  const auto instant = instant_from_text("1996-12-19T16:39:57-08:00");
  REQUIRE(instant);
  CHECK(instant->ms == 851042397000);
  CHECK(to_text(*instant) == "1996-12-20T00:39:57Z");
  CHECK_FALSE(instant_from_text("1996-12-19T16:39:57"));
}

TEST_CASE("a number is scaled to its unit with nothing rounded away", "[core]") {
  CHECK(scaled_from_text("84.1", 1) == 841);
  CHECK(scaled_from_text("84", 1) == 840);
  CHECK(scaled_from_text("-0.5", 1) == -5);
  CHECK(scaled_from_text("84.10", 1) == 841);
  CHECK_FALSE(scaled_from_text("84.15", 1));
  CHECK_FALSE(scaled_from_text("84,1", 1));
  CHECK_FALSE(scaled_from_text("", 1));
  CHECK_FALSE(scaled_from_text(".", 1));
  CHECK_FALSE(scaled_from_text("99999999999999999999", 1));
  CHECK(scaled_to_text(841, 1) == "84.1");
  CHECK(scaled_to_text(840, 1) == "84");
  CHECK(scaled_to_text(-5, 1) == "-0.5");
  CHECK(scaled_to_text(7, 2) == "0.07");
}

TEST_CASE("text that is no UTF-8 is told apart", "[core]") {
  CHECK(is_utf8("µm · ≥ 5 Ø"));
  CHECK_FALSE(is_utf8("\xC0\xAF"));
  CHECK_FALSE(is_utf8("\xED\xA0\x80"));
  CHECK_FALSE(is_utf8("\xF4\x90\x80\x80"));
  CHECK_FALSE(is_utf8("\xE2\x82"));
}

TEST_CASE("the seeded source repeats itself", "[core]") {
  // SplitMix64 from seed 1234567: the first three numbers of the public-domain reference program.
  SplitMix64 random(1234567);
  CHECK(random.next() == 6457827717110365317ULL);
  CHECK(random.next() == 3203168211198807973ULL);
  CHECK(random.next() == 9817491932198370423ULL);
}
