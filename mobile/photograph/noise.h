#pragma once

// Noise in space: the same place gives the same value, neighbours similar ones. What rust, zinc,
// concrete and water are mottled with.

#include <cstdint>

#include "mobile/photograph/vec3.h"

namespace kneerail::photograph {

class Noise {
 public:
  explicit Noise(std::uint64_t seed) : seed_(static_cast<std::uint32_t>(seed ^ (seed >> 32))) {}

  /// 0 to 1; cells of size 1.
  [[nodiscard]] double at(Vec3 p) const;
  /// Several octaves, each half as large and half as strong; 0 to 1.
  [[nodiscard]] double rough(Vec3 p, int octaves = 4) const;
  /// A value for the cell of size 1 whose centre is nearest, as the crystals of zinc lie; 0 to 1.
  [[nodiscard]] double crystal(Vec3 p) const;

 private:
  [[nodiscard]] double corner(int x, int y, int z) const;

  std::uint32_t seed_;
};

}  // namespace kneerail::photograph
