#include "core/base/time_zone.h"

#include <catch2/catch.hpp>

using namespace kneerail;

namespace {

Instant at(const char* text) {
  return instant_from_text(text).value();
}
Date on(const char* text) {
  return date_from_text(text).value();
}

TimeZone ruled(const char* rule) {
  const auto read = yearly_rule_from_text(rule);
  REQUIRE(read.has_value());
  auto zone = TimeZone::from(read->offset_s, {}, read);
  REQUIRE(zone.has_value());
  return *zone;
}

}  // namespace

TEST_CASE("without a zone a day is that of UTC", "[core][base]") {
  const TimeZone utc;
  CHECK(utc.offset_s(at("2031-05-14T23:59:59Z")) == 0);
  CHECK(utc.day(at("2031-05-14T23:59:59.999Z")) == on("2031-05-14"));
  CHECK(utc.day(at("1969-12-31T23:59:59.999Z")) == on("1969-12-31"));
}

TEST_CASE("a change of the offset takes its own second", "[core][base]") {
  // Two made changes: to +1 h at 1000 s, to -2 h at 2000 s.
  const auto zone = TimeZone::from(0, {{1000, 3600}, {2000, -7200}}, {});
  REQUIRE(zone.has_value());
  CHECK(zone->offset_s(Instant{999'999}) == 0);
  CHECK(zone->offset_s(Instant{1'000'000}) == 3600);
  CHECK(zone->offset_s(Instant{1'999'999}) == 3600);
  CHECK(zone->offset_s(Instant{2'000'000}) == -7200);
  CHECK(zone->day(Instant{2'000'000}) == on("1969-12-31"));
  CHECK(zone->offset_s(Instant{-1'000'000'000}) == 0);
}

TEST_CASE("a table of offsets that does not ascend is refused", "[core][base]") {
  CHECK_FALSE(TimeZone::from(0, {{2000, 3600}, {1000, 0}}, {}).has_value());
  CHECK_FALSE(TimeZone::from(0, {{1000, 3600}, {1000, 0}}, {}).has_value());
  CHECK_FALSE(TimeZone::from(0, {{1000, 86'400}}, {}).has_value());
}

TEST_CASE("a rule gives the day on both sides of a change", "[core][base]") {
  // Central European time: last Sundays of March and October, 01:00 UTC (Directive 2000/84/EC).
  const TimeZone oslo = ruled("CET-1CEST,M3.5.0,M10.5.0/3");
  CHECK(oslo.offset_s(at("2031-03-30T00:59:59Z")) == 3600);
  CHECK(oslo.offset_s(at("2031-03-30T01:00:00Z")) == 7200);
  CHECK(oslo.offset_s(at("2031-10-26T00:59:59Z")) == 7200);
  CHECK(oslo.offset_s(at("2031-10-26T01:00:00Z")) == 3600);
  CHECK(oslo.day(at("2031-07-01T21:59:59Z")) == on("2031-07-01"));
  CHECK(oslo.day(at("2031-07-01T22:00:00Z")) == on("2031-07-02"));
  CHECK(oslo.day(at("2031-12-31T23:00:00Z")) == on("2032-01-01"));
  SECTION("and of a leap day") {
    CHECK(oslo.day(at("2032-02-28T23:00:00Z")) == on("2032-02-29"));
    CHECK(oslo.day(at("2032-02-29T22:59:59Z")) == on("2032-02-29"));
    CHECK(oslo.day(at("2032-02-29T23:00:00Z")) == on("2032-03-01"));
    CHECK(oslo.day(at("2100-02-28T23:00:00Z")) == on("2100-03-01"));
  }
}

TEST_CASE("south of the equator summer goes over the new year", "[core][base]") {
  const TimeZone auckland = ruled("NZST-12NZDT,M9.5.0,M4.1.0/3");
  CHECK(auckland.offset_s(at("2031-12-31T12:00:00Z")) == 13 * 3600);
  CHECK(auckland.offset_s(at("2032-01-01T12:00:00Z")) == 13 * 3600);
  CHECK(auckland.offset_s(at("2031-07-01T12:00:00Z")) == 12 * 3600);
  CHECK(auckland.day(at("2031-12-31T10:59:59Z")) == on("2031-12-31"));
  CHECK(auckland.day(at("2031-12-31T11:00:00Z")) == on("2032-01-01"));
}

TEST_CASE("rules of every form are read", "[core][base]") {
  // The forms are those of RFC 8536, 3.3.1 and its appendix B.
  SECTION("no summer time, quoted name, minutes") {
    const TimeZone zone = ruled("<+0545>-5:45");
    CHECK(zone.offset_s(at("2050-07-01T00:00:00Z")) == 5 * 3600 + 45 * 60);
  }
  SECTION("daylight saving time all year") {
    const TimeZone zone = ruled("EST5EDT,0/0,J365/25");
    for (const char* time : {"2030-01-01T04:59:59Z", "2030-01-01T05:00:00Z", "2032-02-29T12:00:00Z",
                             "2032-12-31T23:59:59Z"})
      CHECK(zone.offset_s(at(time)) == -4 * 3600);
  }
  SECTION("a change on the day before, by hours under 0") {
    const TimeZone zone = ruled("<-03>3<-02>,M3.5.0/-2,M10.5.0/-1");
    CHECK(zone.offset_s(at("2031-03-30T00:59:59Z")) == -3 * 3600);
    CHECK(zone.offset_s(at("2031-03-30T01:00:00Z")) == -2 * 3600);
    CHECK(zone.offset_s(at("2031-10-26T00:59:59Z")) == -2 * 3600);
    CHECK(zone.offset_s(at("2031-10-26T01:00:00Z")) == -3 * 3600);
  }
  SECTION("a change on the day after, by hours over 24") {
    const TimeZone zone = ruled("IST-2IDT,M3.4.4/26,M10.5.0");
    CHECK(zone.offset_s(at("2031-03-27T23:59:59Z")) == 2 * 3600);
    CHECK(zone.offset_s(at("2031-03-28T00:00:00Z")) == 3 * 3600);
  }
  SECTION("winter time that is said to be the saving one") {
    const TimeZone zone = ruled("IST-1GMT0,M10.5.0,M3.5.0/1");
    CHECK(zone.offset_s(at("2031-01-15T12:00:00Z")) == 0);
    CHECK(zone.offset_s(at("2031-07-15T12:00:00Z")) == 3600);
  }
  SECTION("days counted with and without the leap day") {
    // J60 is 1 March in every year; day 59 from 0 is 29 February in a leap year.
    const TimeZone without = ruled("AAA0BBB,J60/0,J300/0");
    CHECK(without.offset_s(at("2032-02-29T23:59:59Z")) == 0);
    CHECK(without.offset_s(at("2032-03-01T00:00:00Z")) == 3600);
    const TimeZone with = ruled("AAA0BBB,59/0,300/0");
    CHECK(with.offset_s(at("2032-02-28T23:59:59Z")) == 0);
    CHECK(with.offset_s(at("2032-02-29T00:00:00Z")) == 3600);
    CHECK(with.offset_s(at("2031-03-01T00:00:00Z")) == 3600);
    CHECK(with.offset_s(at("2031-02-28T23:59:59Z")) == 0);
  }
}

TEST_CASE("what is no rule is none", "[core][base]") {
  for (const char* text :
       {"", "CET", "CE-1", "CET-", "CET-25", "CET-1:60", "CET-1CEST", "CET-1CEST,M3.5.0",
        "CET-1CEST,M13.5.0,M10.5.0", "CET-1CEST,M3.6.0,M10.5.0", "CET-1CEST,M3.5.7,M10.5.0",
        "CET-1CEST,M3.5.0,M10.5.0/168", "CET-1CEST,J0,J300", "CET-1CEST,366,300", "<+01-1",
        "CET-1CEST,M3.5.0,M10.5.0 ", "CET-1CEST,M3.5.0,M10.5.0,", "CET-99999999999"}) {
    INFO(text);
    CHECK_FALSE(yearly_rule_from_text(text).has_value());
  }
}

TEST_CASE("an entry of which only the day is known has that day everywhere", "[core][base]") {
  const TimeZone kiritimati = ruled("<+14>-14");
  const TimeZone pago_pago = ruled("SST11");
  const Date day = on("2031-05-14");
  for (const auto* zone : {&kiritimati, &pago_pago})
    CHECK(zone->day_of_entry(noon_utc(day)) == day);
  CHECK(kiritimati.day(noon_utc(day)) == on("2031-05-15"));
  CHECK(kiritimati.day_of_entry(Instant{noon_utc(day).ms + 1}) == on("2031-05-15"));
}
