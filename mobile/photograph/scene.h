#pragma once

// A scene of the demo as it stands before the camera: the solids, the camera's place, the light.

#include "mobile/demo/photographs.h"
#include "mobile/photograph/noise.h"
#include "mobile/photograph/solids.h"

namespace kneerail::photograph {

struct Scene {
  demo::PhotoScene of;
  Noise noise{0};
  Solids solids;
  Vec3 eye;
  Vec3 forwards;
  Vec3 right;
  Vec3 up;
  Vec3 sun;             ///< towards it
  double overcast = 0;  ///< 0 clear, 1 grey
  Vec3 spot;            ///< where the damage is worst
  double rust = 0;      ///< how much of the whole is rusted, about
  Vec3 paint;           ///< its colour, where it is painted
};

inline constexpr double focal = 2.0;  ///< half the picture's width is 1

Scene made_scene(const demo::PhotoScene& of);

}  // namespace kneerail::photograph
