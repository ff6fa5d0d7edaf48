#pragma once

// Shapes as triangles for the scene graph: three vertices each, in the list's order, so that one
// geometry node draws a whole list.

#include <cstdint>
#include <vector>

#include "mobile/elevation/shapes.h"

namespace kneerail::elevation {

/// As QSGGeometry::ColoredPoint2D: the colour premultiplied by its alpha.
struct Vertex {
  float x = 0;
  float y = 0;
  std::uint8_t r = 0;
  std::uint8_t g = 0;
  std::uint8_t b = 0;
  std::uint8_t a = 0;
};

/// Rings that are not convex are cut ear by ear (Meisters 1975, two ears theorem). Lines get
/// mitred joins, cut off at twice the half width.
std::vector<Vertex> triangles(const ShapeList& list);

}  // namespace kneerail::elevation
