#include "tests/support/seeds.h"

#include <cstdlib>

using namespace kneerail::test;

namespace {

/// Sets KNEERAIL_SEED while it lives, and then puts back what was there.
class Named {
 public:
  explicit Named(const char* seed) {
    const char* kept = std::getenv("KNEERAIL_SEED");
    if (kept != nullptr) kept_ = kept;
    if (seed == nullptr) {
      ::unsetenv("KNEERAIL_SEED");
    } else {
      ::setenv("KNEERAIL_SEED", seed, 1);
    }
  }
  Named(const Named&) = delete;
  Named& operator=(const Named&) = delete;
  ~Named() {
    if (kept_.empty()) {
      ::unsetenv("KNEERAIL_SEED");
    } else {
      ::setenv("KNEERAIL_SEED", kept_.c_str(), 1);
    }
  }

 private:
  std::string kept_;
};

}  // namespace

TEST_CASE("a test goes through its seeds, or the one that is named", "[support]") {
  {
    const Named none(nullptr);
    CHECK(seeds(3, 5) == std::vector<std::uint64_t>{3, 4, 5});
    CHECK(seed_or(7) == 7);
  }
  const Named one("41");
  CHECK(seeds(3, 5) == std::vector<std::uint64_t>{41});
  CHECK(seed_or(7) == 41);
}

TEST_CASE("a failing seed is printed as a line to type, [brackets], commas and 'quotes' too",
          "[support]") {
  using Catch::Contains;
  const std::string line = reproduce(12);
  CHECK_THAT(line, Contains("KNEERAIL_SEED=12 "));
  CHECK_THAT(line, Contains("/support_tests 'a failing seed is printed as a line to type\\, "
                            "\\[brackets]\\, commas and '\\''quotes'\\'' too'"));
}
