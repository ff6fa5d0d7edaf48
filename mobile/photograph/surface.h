#pragma once

// What a place of the scene looks like: zinc with its crystals, castings, paint that lifts, rust
// that blooms from the damage and runs down from it, concrete, and the sky and water behind.
// Colours are light, not screen values.

#include "mobile/photograph/scene.h"

namespace kneerail::photograph {

struct Surface {
  Vec3 colour;
  Vec3 outwards;         ///< with the unevenness of the surface
  double gloss = 0;      ///< strength of the highlight
  double sharpness = 8;  ///< of the highlight
};

/// `ruler`: colour of the scale's print at a place of it.
Surface surface_at(const Scene& scene, const Hit& hit);
Vec3 background(const Scene& scene, Vec3 towards);

}  // namespace kneerail::photograph
