#pragma once

// The invented register of Skerrymouth: a harbour authority with four sites, eight years of visits
// by three inspectors, and the things that go wrong in eight years. Made by a seeded program
// through the same door as a touch, Register::save. The same seed makes the same register.

#include <cstdint>
#include <filesystem>
#include <functional>

#include "core/base/date.h"
#include "core/base/result.h"
#include "mobile/demo/photographs.h"

namespace kneerail::demo {

inline constexpr std::uint64_t default_seed = 20260630;

/// The day on which its story ends: 2026-06-30.
Date as_of();

struct Options {
  std::filesystem::path folder;
  std::uint64_t seed = default_seed;
  DrawPhotograph draw{};  ///< empty: findings have no photographs
};

struct Made {
  std::int64_t sites = 0;
  std::int64_t posts = 0;
  std::int64_t fittings = 0;
  std::int64_t parts = 0;
  std::int64_t visits = 0;
  std::int64_t photographs = 0;
  std::int64_t records = 0;
};

/// Makes the register in that folder. `progress(records so far)` returns false to stop: what was
/// saved until then stays. Errors: invalid_input (there is a register in the folder already:
/// nothing was changed), cancelled, and those of Register.
Result<Made> make_skerrymouth(const Options& options,
                              const std::function<bool(std::int64_t)>& progress = {});

}  // namespace kneerail::demo
