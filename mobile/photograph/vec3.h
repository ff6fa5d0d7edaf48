#pragma once

// Points, directions and colours of the drawn photographs: three numbers.

#include <cmath>

namespace kneerail::photograph {

struct Vec3 {
  double x = 0;
  double y = 0;
  double z = 0;

  friend Vec3 operator+(Vec3 a, Vec3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
  friend Vec3 operator-(Vec3 a, Vec3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
  friend Vec3 operator*(Vec3 a, Vec3 b) { return {a.x * b.x, a.y * b.y, a.z * b.z}; }
  friend Vec3 operator*(Vec3 a, double f) { return {a.x * f, a.y * f, a.z * f}; }
};

inline double dot(Vec3 a, Vec3 b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
inline Vec3 cross(Vec3 a, Vec3 b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double length(Vec3 a) {
  return std::sqrt(dot(a, a));
}
inline Vec3 unit(Vec3 a) {
  return a * (1 / length(a));
}
inline double mix(double a, double b, double part) {
  return a + (b - a) * part;
}
inline Vec3 mix(Vec3 a, Vec3 b, double part) {
  return a + (b - a) * part;
}
inline double held(double value) {
  return value < 0 ? 0 : value > 1 ? 1 : value;
}
/// 0 below `from`, 1 above `to`, smooth between.
inline double step(double from, double to, double value) {
  const double part = held((value - from) / (to - from));
  return part * part * (3 - 2 * part);
}

}  // namespace kneerail::photograph
