#pragma once

// Where a test takes its chance from. Every seeded test asks here, so that KNEERAIL_SEED in the
// environment makes it run that one seed, and a failure prints the line that does so.

#include <catch2/catch.hpp>
#include <cstdint>
#include <string>
#include <vector>

namespace kneerail::test {

/// The seeds a test goes through: first to last, or the one that KNEERAIL_SEED names.
std::vector<std::uint64_t> seeds(std::uint64_t first, std::uint64_t last);

/// The same as sections of their own: const auto seed = GENERATE(each_seed(1, 20));
Catch::Generators::GeneratorWrapper<std::uint64_t> each_seed(std::uint64_t first,
                                                             std::uint64_t last);

/// The seed of a test that runs one: its own, or the one that KNEERAIL_SEED names.
std::uint64_t seed_or(std::uint64_t own);

/// The command line that runs the test of this moment with that seed alone, for INFO:
/// "reproduce: KNEERAIL_SEED=17 build/bin/schema_tests 'a damaged log loses nothing'".
std::string reproduce(std::uint64_t seed);

}  // namespace kneerail::test
