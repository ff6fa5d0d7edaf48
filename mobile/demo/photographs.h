#pragma once

// Photographs of the demo's findings. Whoever has something to draw with hands in how; the demo
// says what was in front of the camera. Without one it has no photographs.

#include <cstdint>
#include <functional>
#include <optional>

#include "core/records/cbor.h"

namespace kneerail::demo {

/// What the camera is held at.
enum class Shown { tee, cross, corner, sleeve, flange, cap, post, rail, anchor, weld, gate };
enum class Damage { rust, split, loose, weeping, paint_flaking, seized };
enum class Backdrop { sea, slip, lock, roof };

struct PhotoScene {
  std::uint64_t seed = 0;  ///< one seed, one picture, byte for byte
  Shown shown = Shown::tee;
  Damage damage = Damage::rust;
  int grade = 4;
  bool painted = false;
  Backdrop backdrop = Backdrop::sea;
};

/// JPEG bytes without metadata: the picture and its preview 320 pixels wide.
struct DrawnPhotograph {
  cbor::Bytes picture;
  int width_pixels = 0;
  int height_pixels = 0;
  cbor::Bytes preview;
  int spot_x = 0;  ///< the damage, in 1/10,000 of the width from the left
  int spot_y = 0;  ///< and of the height from the top
};

using DrawPhotograph = std::function<DrawnPhotograph(const PhotoScene&)>;

}  // namespace kneerail::demo
