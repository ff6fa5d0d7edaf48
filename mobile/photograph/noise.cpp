#include "mobile/photograph/noise.h"

namespace kneerail::photograph {
namespace {

double smooth(double part) {
  return part * part * (3 - 2 * part);
}

/// std::floor is a call on a plain x86-64, and a pixel asks this dozens of times.
int floored(double value) {
  const int cut = static_cast<int>(value);
  return cut - (value < cut ? 1 : 0);
}

}  // namespace

double Noise::corner(int x, int y, int z) const {
  // Mixing of 32 bits after Wang.
  std::uint32_t h = seed_ ^ (static_cast<std::uint32_t>(x) * 0x8DA6B343U) ^
                    (static_cast<std::uint32_t>(y) * 0xD8163841U) ^
                    (static_cast<std::uint32_t>(z) * 0xCB1AB31FU);
  h = (h ^ 61U) ^ (h >> 16);
  h *= 9U;
  h ^= h >> 4;
  h *= 0x27D4EB2DU;
  h ^= h >> 15;
  return static_cast<double>(h & 0xFFFFFFU) / 0xFFFFFF;
}

double Noise::at(Vec3 p) const {
  const int x = floored(p.x);
  const int y = floored(p.y);
  const int z = floored(p.z);
  const double u = smooth(p.x - x);
  const double v = smooth(p.y - y);
  const double w = smooth(p.z - z);
  const auto row = [&](int dy, int dz) {
    return mix(corner(x, y + dy, z + dz), corner(x + 1, y + dy, z + dz), u);
  };
  return mix(mix(row(0, 0), row(1, 0), v), mix(row(0, 1), row(1, 1), v), w);
}

double Noise::rough(Vec3 p, int octaves) const {
  double sum = 0;
  double all = 0;
  double strength = 1;
  for (int i = 0; i < octaves; ++i) {
    sum += strength * at(p);
    all += strength;
    strength /= 2;
    p = p * 2.03 + Vec3{17.3, -5.1, 8.7};
  }
  return sum / all;
}

double Noise::crystal(Vec3 p) const {
  const Vec3 bent = p + Vec3{at(p * 1.7), at(p * 1.7 + Vec3{9, 3, 1}), at(p * 1.7 + Vec3{2, 8, 5})};
  return corner(floored(bent.x), floored(bent.y), floored(bent.z));
}

}  // namespace kneerail::photograph
