#pragma once

// What stands before the camera: tubes, a slab of concrete and a card, in mm. x to the right, y up,
// z towards the camera.

#include <optional>
#include <vector>

#include "mobile/photograph/vec3.h"

namespace kneerail::photograph {

enum class Material { zinc, casting, paint, steel, screw, concrete, ruler };

/// A round bar or tube with flat ends.
struct Tube {
  Vec3 from;
  Vec3 along;  ///< unit
  double length_mm = 0;
  double radius_mm = 0;
  Material material = Material::zinc;
  bool open = false;    ///< one sees into its ends
  bool socket = false;  ///< a hexagon socket in its ends, as set screws have
};

/// A flat card: corner, its two edges (unit), its size.
struct Card {
  Vec3 corner;
  Vec3 right;
  Vec3 up;
  double width_mm = 0;
  double height_mm = 0;
};

struct Hit {
  double distance_mm = 0;
  Vec3 place;
  Vec3 outwards;
  Material material = Material::zinc;
  int solid = -1;
  const Tube* tube = nullptr;
  bool at_end = false;
  double u = 0;  ///< on a card, from the left, 0 to 1
  double v = 0;  ///< from below
};

struct Ray {
  Vec3 from;
  Vec3 to;  ///< unit
};

struct Solids {
  std::vector<Tube> tubes;
  std::optional<Card> card;
  std::optional<double> deck_z;  ///< concrete at y = 0 from here towards the camera

  [[nodiscard]] std::optional<Hit> nearest(const Ray& ray) const;
  /// Whether anything but that solid's own surface stands between a place and the sun.
  [[nodiscard]] bool shaded(const Ray& ray) const;
};

}  // namespace kneerail::photograph
