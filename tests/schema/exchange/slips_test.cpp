#include "schema/exchange/slips.h"

#include <catch2/catch.hpp>

using namespace kneerail::exchange;

namespace {
constexpr Measure coating{"µm", 1, 0, 20'000};
constexpr Measure tube_wall{"mm", 1, 5, 200};
constexpr Measure torque{"N·m", 1, 0, 5'000};
}  // namespace

TEST_CASE("a number within the limits has no fault", "[schema][exchange]") {
  for (const std::string text : {"0", "84.1", "84.10", "2000", "0.3"})
    CHECK(number_fault(text, coating) == "");
}

TEST_CASE("a decimal comma is refused with the number that was meant", "[schema][exchange]") {
  CHECK(number_fault("84,1", coating) == "a decimal comma. Write 84.1, with a point.");
  CHECK(number_fault("1,284,1", coating) ==
        "is not a number. Write digits with a point and no other mark.");
}

TEST_CASE("millimetres typed as micrometres are recognised", "[schema][exchange]") {
  CHECK(number_fault("0.072", coating) ==
        "is finer than 0.1 µm, the record's unit. Millimetres typed as µm? Was 72 meant?");
  CHECK(number_fault("84.15", coating) == "is finer than 0.1 µm, the record's unit.");
}

TEST_CASE("a point that was forgotten is recognised", "[schema][exchange]") {
  CHECK(number_fault("32", tube_wall) == "is outside 0.5 to 20 mm. Was 3.2 meant?");
  CHECK(number_fault("3900", torque) == "is outside 0 to 500 N·m. Was 390 meant?");
  CHECK(number_fault("-4", torque) == "is outside 0 to 500 N·m.");
  CHECK(number_fault("1e2", torque) ==
        "is not a number. Write digits with a point and no other mark.");
  CHECK(number_fault("tight", torque) ==
        "is not a number. Write digits with a point and no other mark.");
}

TEST_CASE("dates in another order are recognised, and guessed only where plain",
          "[schema][exchange]") {
  const std::string order = "is not in the order year-month-day. Was 2026-06-30 meant?";
  for (const std::string text :
       {"30/06/2026", "30.6.2026", "30-06-2026", "06/30/2026", "2026-30-06", "2026/30/06"}) {
    INFO(text);
    CHECK(date_fault(text) == order);
  }
  CHECK(date_fault("04/05/2026") ==
        "can be read two ways, day or month first. Write a date as year-month-day, 2026-06-30.");
  CHECK(date_fault("2026-02-30") ==
        "is not a calendar day. Write a date as year-month-day, 2026-06-30.");
  CHECK(date_fault("June") == "is not a date. Write a date as year-month-day, 2026-06-30.");
}

TEST_CASE("a row with a field too many asks for a decimal comma", "[schema][exchange]") {
  CHECK(width_fault(9, 8, true) ==
        "the row has 9 fields, the header 8. Is there a decimal comma in it? Write 3.2, with a "
        "point.");
  CHECK(width_fault(7, 8, true) == "the row has 7 fields, the header 8.");
}
