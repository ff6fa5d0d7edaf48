#pragma once

// R as a peer of the same run, and the graded parts that both are given.

#include <cstdint>
#include <filesystem>
#include <initializer_list>
#include <string_view>

#include "core/base/result.h"
#include "core/forecast/portfolio.h"

namespace kneerail::benchmark {

/// Whether R has msm; says so when it has not.
bool msm_is_there();

/// Writes the script and runs it with the files as its arguments. Errors: io.
Result<> run_r(const std::filesystem::path& script, std::string_view text,
               std::initializer_list<std::filesystem::path> arguments);

/// About so many invented parts, graded a little over three times each.
forecast::Portfolio graded_parts(std::uint64_t seed, int parts);

}  // namespace kneerail::benchmark
