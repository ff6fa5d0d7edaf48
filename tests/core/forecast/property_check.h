#pragma once

// RapidCheck under our own seeds: what it finds is shrunk and printed with the seed that finds it.

#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include <sstream>

#include "tests/support/seeds.h"

namespace kneerail::test {

/// Holds a property of randomly drawn cases; in the failing one RC_ASSERT tells what differed.
template <class Property>
void holds(std::uint64_t own_seed, int cases, Property&& property) {
  const std::uint64_t seed = seed_or(own_seed);
  rc::detail::TestParams params;
  params.seed = seed;
  params.maxSuccess = cases;
  const auto result = rc::detail::checkTestable(std::forward<Property>(property),
                                                rc::detail::TestMetadata{}, params);
  std::ostringstream text;
  rc::detail::printResultMessage(result, text);
  INFO(text.str() << '\n' << reproduce(seed));
  CHECK(result.template is<rc::detail::SuccessResult>());
}

/// A number of even chance between two.
inline double drawn(double low, double high) {
  constexpr int steps = 1'000'000;
  return low + (high - low) * *rc::gen::inRange(0, steps + 1) / steps;
}

}  // namespace kneerail::test
