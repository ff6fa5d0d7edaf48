#include "core/forecast/words.h"

#include <catch2/catch.hpp>
#include <limits>

using namespace kneerail::forecast;

TEST_CASE("a life is said with its band, and a narrow band once", "[forecast]") {
  constexpr double never = std::numeric_limits<double>::infinity();
  CHECK(life_with_band({10, 14.2, 20, 23.9, 30, 39.5, 50}) ==
        "in about 23 years (80 %: 14 to 39 years)");
  CHECK(life_with_band({-3.4, -2.9, -2.7, -2.6, -2.5, -2.3, -2}) ==
        "about 3 years ago (80 %: 3 years ago)");
  CHECK(life_with_band({4, 5.1, 5.2, 5.5, 5.6, 5.9, 7}) == "in about 5 years (80 %: 5 years)");
  CHECK(life_with_band({-4, -2, -1, 0.5, 2, 3.5, 9}) ==
        "in about 6 months (80 %: 2 years ago to 3 years)");
  CHECK(life_with_band({-1, -0.6, -0.2, 0.05, 0.3, 0.6, 1}) ==
        "in under a month (80 %: 8 months ago to 7 months)");
  CHECK(life_with_band({1, 2, never, never, never, never, never}) ==
        "with no upper bound (80 %: 2 years to no upper bound)");
}

TEST_CASE("a small number keeps its first two digits, a share is never all or none", "[forecast]") {
  CHECK(two_digits(12.34) == "12.3");
  CHECK(two_digits(2.04) == "2.0");
  CHECK(two_digits(0.999) == "1.0");
  CHECK(two_digits(0.45) == "0.45");
  CHECK(two_digits(0.0123) == "0.012");
  CHECK(two_digits(0) == "0.0");
  CHECK(own_share_words(3, 0.64) == "Own readings carry 64 %, its run, zone and site the rest.");
  CHECK(own_share_words(3, 0.9999) ==
        "Own readings carry over 99 %, its run, zone and site the rest.");
  CHECK(own_share_words(0, 0) == "No reading of its own: all from its run, zone and site.");
}
