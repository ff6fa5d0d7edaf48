#include "core/records/instrument_history.h"

#include <catch2/catch.hpp>

using namespace kneerail;

namespace {

Date on(const char* text) {
  return date_from_text(text).value();
}

ReadAt noon(const char* text) {
  return {on(text), noon_utc(on(text))};
}

KnownCalibration calibration(const char* day, const char* until, std::vector<AtAdd> corrections) {
  return {on(day), on(until), std::move(corrections), noon_utc(on(day)).ms, {}};
}

}  // namespace

TEST_CASE("a certificate adds along a straight line between its values", "[core][records]") {
  // By hand: at 50.0 um add 1.0, at 100.0 um take 3.0 off. 80.0 um stands at 0.6 of the way:
  // 1.0 + 0.6 * (-3.0 - 1.0) = -1.4, so 80.0 um counts as 78.6.
  InstrumentHistory gauge;
  gauge.add(calibration("2031-03-01", "2032-02-29", {{1000, -30}, {500, 10}}));
  const Date day = on("2031-05-14");
  CHECK(gauge.certificate_add(day, 800) == Approx(-14));
  CHECK(gauge.put_right(noon("2031-05-14"), std::int64_t{800}) == 786);
  CHECK(gauge.certificate_add(day, 500) == Approx(10));
  CHECK(gauge.certificate_add(day, 1000) == Approx(-30));
  SECTION("under its lowest and over its highest value it stays") {
    CHECK(gauge.certificate_add(day, 20) == Approx(10));
    CHECK(gauge.certificate_add(day, 5000) == Approx(-30));
  }
}

TEST_CASE("a calibration holds from its day to its last, and until the next", "[core][records]") {
  InstrumentHistory gauge;
  gauge.add(calibration("2031-03-01", "2032-02-29", {{500, 10}}));
  CHECK(gauge.certificate_add(on("2031-02-28"), 500) == 0);
  CHECK(gauge.certificate_add(on("2031-03-01"), 500) == 10);
  CHECK(gauge.certificate_add(on("2032-02-29"), 500) == 10);
  CHECK(gauge.certificate_add(on("2032-03-01"), 500) == 0);
  SECTION("the next takes over on its day, whichever was written first") {
    InstrumentHistory other;
    other.add(calibration("2031-06-01", "2031-07-31", {{500, 25}}));
    other.add(calibration("2031-03-01", "2032-02-29", {{500, 10}}));
    CHECK(other.certificate_add(on("2031-05-31"), 500) == 10);
    CHECK(other.certificate_add(on("2031-06-01"), 500) == 25);
    CHECK(other.certificate_add(on("2031-08-01"), 500) == 0);  // the older one does not come back
  }
  SECTION("of two of one day the one written later holds") {
    auto again = calibration("2031-03-01", "2032-02-29", {{500, -7}});
    again.written_ms += 1;
    InstrumentHistory other;
    other.add(again);
    other.add(calibration("2031-03-01", "2032-02-29", {{500, 10}}));
    CHECK(other.certificate_add(on("2031-05-14"), 500) == -7);
  }
  SECTION("one without corrections ends those of the one before") {
    gauge.add(calibration("2031-06-01", "2032-05-31", {}));
    CHECK(gauge.certificate_add(on("2031-06-02"), 500) == 0);
  }
}

TEST_CASE("doubts add to what the certificate adds, or keep a reading back", "[core][records]") {
  InstrumentHistory gauge;
  gauge.add(calibration("2031-03-01", "2032-02-29", {{500, 10}}));
  gauge.add(KnownDoubt{noon_utc(on("2031-05-01")), noon_utc(on("2031-05-31")), -88});
  CHECK(gauge.put_right(noon("2031-05-14"), std::int64_t{500}) == 422);  // 500 + 10 - 88
  CHECK(gauge.put_right(noon("2031-06-01"), std::int64_t{500}) == 510);
  CHECK_FALSE(gauge.in_doubt(noon_utc(on("2031-05-14"))));
  gauge.add(KnownDoubt{noon_utc(on("2031-08-01")), {}, {}});
  CHECK_FALSE(gauge.in_doubt(noon_utc(on("2031-07-31"))));
  CHECK(gauge.in_doubt(noon_utc(on("2040-01-01"))));
}

TEST_CASE("no thickness is put right to less than nothing", "[core][records]") {
  InstrumentHistory gauge;
  gauge.add(calibration("2031-03-01", "2032-02-29", {{0, -20}}));
  CHECK(gauge.put_right(noon("2031-05-14"), std::int64_t{12}) == 0);
  CHECK(gauge.put_right(noon("2031-05-14"), std::int64_t{-5}) == -25);  // a zero may be negative
}
