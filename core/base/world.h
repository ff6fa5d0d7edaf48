#pragma once

// What code may ask of the world outside: the time, and random bytes. Both are handed in, never
// fetched, so that a test or the simulator runs the real code under one seed.

#include <cstdint>
#include <span>

#include "core/base/date.h"

namespace kneerail {

class Clock {
 public:
  virtual ~Clock() = default;
  /// The wall clock as the device shows it; may be wrong by hours or years.
  virtual Instant now() = 0;
  /// Milliseconds since boot; never goes back.
  virtual std::int64_t monotonic_ms() = 0;
};

class Random {
 public:
  virtual ~Random() = default;
  virtual void fill(std::span<std::uint8_t> bytes) = 0;
};

/// SplitMix64 (Steele, Lea and Flood 2014): small, seeded, the same numbers on every machine.
class SplitMix64 final : public Random {
 public:
  explicit SplitMix64(std::uint64_t seed) : state_(seed) {}
  std::uint64_t next();
  /// Uniform in [0, 1), 53 bits.
  double uniform();
  /// Whole number in [low, high].
  std::int64_t between(std::int64_t low, std::int64_t high);
  void fill(std::span<std::uint8_t> bytes) override;

 private:
  std::uint64_t state_;
};

}  // namespace kneerail
