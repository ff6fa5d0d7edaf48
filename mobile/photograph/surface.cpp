#include "mobile/photograph/surface.h"

#include <algorithm>
#include <numbers>

namespace kneerail::photograph {
namespace {

using demo::Backdrop;
using demo::Damage;
using demo::Shown;

constexpr Vec3 pit{0.022, 0.012, 0.008};
constexpr Vec3 dark_rust{0.085, 0.030, 0.014};
constexpr Vec3 rust{0.21, 0.072, 0.023};
constexpr Vec3 light_rust{0.40, 0.17, 0.058};
constexpr Vec3 steel{0.16, 0.155, 0.15};

double near_spot(const Scene& scene, Vec3 p, double reach_mm) {
  const double away = length(p - scene.spot) / reach_mm;
  return std::exp(-away * away);
}

/// Streaks that run down from the damage.
double running(const Scene& scene, Vec3 p) {
  const double below = scene.spot.y - p.y;
  if (below < -6) return 0;
  const double reach = scene.of.damage == Damage::weeping ? 190 : 120;
  const double streak = scene.noise.rough({p.x * 0.16, p.y * 0.007, p.z * 0.16}, 3);
  return step(0.46, 0.70, streak) * step(-6, 8, below) * held(1 - below / reach);
}

/// 0 bare to 1 rusted.
double rust_at(const Scene& scene, const Hit& hit) {
  const Vec3 p = hit.place;
  double eager = scene.rust + 0.34 * near_spot(scene, p, 34) + 0.16 * near_spot(scene, p, 80);
  if (hit.material == Material::casting) eager += 0.05;
  if (hit.material == Material::steel) eager += 0.42;
  if (hit.material == Material::screw) {
    eager += scene.of.damage == Damage::seized ? 0.5 : -0.12;
  }
  if (hit.tube != nullptr && !hit.at_end) {
    // Water stands at the ends of sockets.
    const double at = dot(hit.place - hit.tube->from, hit.tube->along);
    const double edge_mm = std::min(at, hit.tube->length_mm - at);
    eager += 0.11 * std::exp(-edge_mm / 6);
  }
  const double rough = scene.noise.rough(p * 0.030, 5) * 0.72 +
                       scene.noise.rough(p * 0.21 + Vec3{40, 7, 3}, 3) * 0.28;
  const double bloom = step(1 - eager - 0.07, 1 - eager + 0.06, rough + 0.17);
  return held(bloom + 0.75 * running(scene, p));
}

Vec3 rust_colour(const Scene& scene, Vec3 p, double amount) {
  const double coarse = scene.noise.rough(p * 0.075 + Vec3{3, 90, 1}, 4);
  const double fine = scene.noise.rough(p * 0.8, 3);
  Vec3 colour = mix(dark_rust, rust, step(0.32, 0.60, coarse));
  colour = mix(colour, light_rust, 0.7 * step(0.52, 0.78, coarse + 0.25 * (fine - 0.5)));
  colour = mix(colour, pit, 0.75 * step(0.60, 0.76, fine) * amount);
  return colour * (0.72 + 0.56 * fine);
}

Vec3 unevenness(const Scene& scene, Vec3 p, double scale) {
  const auto at = [&](Vec3 q) { return scene.noise.rough(q * scale, 2); };
  const double here = at(p);
  const double far = 0.25 / scale;
  return Vec3{at(p + Vec3{far, 0, 0}) - here, at(p + Vec3{0, far, 0}) - here,
              at(p + Vec3{0, 0, far}) - here};
}

Surface zinc(const Scene& scene, const Hit& hit) {
  const Vec3 p = hit.place;
  const bool cast = hit.material == Material::casting;
  const double crystal = scene.noise.crystal(p * (cast ? 0.35 : 0.13));
  const double dull = scene.noise.rough(p * 0.02 + Vec3{9, 9, 9}, 4);
  Surface surface;
  surface.colour = mix(Vec3{0.30, 0.315, 0.325}, Vec3{0.40, 0.415, 0.42}, crystal * 0.6);
  surface.colour = surface.colour * (cast ? 0.80 : 0.95);
  const double white = step(0.52, 0.72, dull);  // white corrosion products
  surface.colour = mix(surface.colour, Vec3{0.58, 0.59, 0.58}, 0.55 * white);
  surface.gloss = (cast ? 0.16 : 0.34) * (1 - 0.8 * white);
  surface.sharpness = cast ? 12 : 26;
  surface.outwards =
      unit(hit.outwards - unevenness(scene, p, cast ? 0.5 : 0.12) * (cast ? 0.35 : 0.16));
  return surface;
}

Surface painted(const Scene& scene, const Hit& hit) {
  const Vec3 p = hit.place;
  Surface surface;
  const double faded = scene.noise.rough(p * 0.015, 4);
  surface.colour = mix(scene.paint, Vec3{0.35, 0.36, 0.35}, 0.10 + 0.22 * step(0.4, 0.8, faded));
  surface.gloss = 0.22;
  surface.sharpness = 34;
  surface.outwards = unit(hit.outwards - unevenness(scene, p, 0.09) * 0.12);
  // Flakes: paint gone inside, its edge lifted and light.
  const double flake =
      scene.noise.rough(p * 0.045 + Vec3{5, 5, 5}, 4) + 0.30 * near_spot(scene, p, 46) - 0.02;
  const double edge = step(0.60, 0.625, flake);
  if (edge > 0 && flake < 0.645) surface.colour = mix(surface.colour, Vec3{0.42, 0.40, 0.36}, edge);
  if (flake >= 0.645) {
    const double amount = step(0.645, 0.72, flake);
    surface.colour = mix(Vec3{0.22, 0.10, 0.075}, rust_colour(scene, p, amount), amount);
    surface.gloss = 0.03;
    surface.outwards = unit(hit.outwards - unevenness(scene, p, 0.6) * 0.8);
  }
  return surface;
}

/// The split of a socket: dark where it gapes, torn bright metal along it.
void put_split(const Scene& scene, const Hit& hit, Surface& surface) {
  if (scene.of.damage != Damage::split || hit.material != Material::casting) return;
  if (hit.place.z < 0 || length(hit.place - scene.spot) > 74) return;
  const double along = hit.place.x - scene.spot.x;
  const double wander = 18 * (scene.noise.rough({along * 0.05, 4, 4}, 4) - 0.5) +
                        3 * (scene.noise.at({along * 0.5, 9, 2}) - 0.5);
  const double off = std::abs(hit.place.y - scene.spot.y - wander - along * 0.22);
  const double gape = 2.5 * held(1 - std::abs(along) / 66) + 0.25;
  if (off < gape) {
    surface.colour = surface.colour * (0.03 + 0.10 * off / gape);
    surface.gloss = 0;
  } else if (off < gape + 1.3) {
    surface.colour = mix(surface.colour, Vec3{0.52, 0.47, 0.42}, 0.6);
  } else if (off < gape + 9) {
    surface.colour =
        mix(surface.colour, rust_colour(scene, hit.place, 0.5), 0.75 * (1 - (off - gape) / 9));
  }
}

void put_rust(const Scene& scene, const Hit& hit, Surface& surface) {
  const double amount = rust_at(scene, hit);
  if (amount <= 0) return;
  const Vec3 p = hit.place;
  surface.colour = mix(surface.colour, rust_colour(scene, p, amount), amount);
  surface.gloss *= 1 - 0.95 * amount;
  const Vec3 rough = unit(hit.outwards - unevenness(scene, p, 0.45) * 1.1);
  surface.outwards = unit(mix(surface.outwards, rough, amount));
}

Surface concrete(const Scene& scene, const Hit& hit) {
  const Vec3 p = hit.place;
  const double coarse = scene.noise.rough(p * 0.011, 5);
  const double grain = scene.noise.rough(p * 0.9, 2);
  Surface surface;
  surface.colour =
      mix(Vec3{0.17, 0.165, 0.15}, Vec3{0.36, 0.35, 0.32}, coarse) * (0.75 + 0.5 * grain);
  const double stone = scene.noise.crystal(p * 0.16);
  if (stone > 0.86) surface.colour = surface.colour * (1.1 + 1.6 * (stone - 0.86));
  const double stain = std::exp(-length({p.x, 0, p.z - 20}) / 90.0);
  surface.colour = mix(surface.colour, Vec3{0.22, 0.10, 0.045},
                       0.85 * stain * step(0.35, 0.6, scene.noise.rough(p * 0.03, 3)));
  if (scene.of.damage == Damage::loose) {
    // A crack through the hole of the anchor.
    const double across =
        (p.z - 8) - 0.5 * (p.x - 46) + 26 * (scene.noise.rough({p.x * 0.03, 2, 7}, 4) - 0.5);
    if (std::abs(across) < 1.7 && p.x > 8) surface.colour = surface.colour * 0.12;
  }
  // In the shade of the plate.
  surface.colour = surface.colour * (0.45 + 0.55 * step(60, 84, length({p.x, 0, p.z})));
  surface.outwards = unit(Vec3{0, 1, 0} - unevenness(scene, p, 0.3) * 0.5);
  surface.gloss = 0.02;
  return surface;
}

/// White print on a black field and black on white by turns of 10 mm, ticks of 1 and 5 mm above.
Surface ruler(const Hit& hit) {
  const double mm = hit.u * 150;
  const double up_mm = hit.v * 24;
  const double to_tick = std::abs(mm - std::round(mm));
  const int nth = static_cast<int>(std::round(mm));
  const double tick_mm = nth % 10 == 0 ? 9 : nth % 5 == 0 ? 7 : 4.5;
  const bool block = static_cast<int>(mm / 10) % 2 == 0;
  Surface surface;
  surface.outwards = hit.outwards;
  surface.colour = {0.74, 0.72, 0.60};
  const bool tick = to_tick < (nth % 10 == 0 ? 0.24 : 0.17) && up_mm > 24 - tick_mm;
  const bool dark = tick || (up_mm < 8 && up_mm > 2 && block) || (up_mm <= 2 && up_mm > 1.4);
  if (dark) surface.colour = {0.02, 0.02, 0.022};
  surface.gloss = 0.10;
  surface.sharpness = 40;
  return surface;
}

bool is_hexagon_inside(const Hit& hit) {
  const Vec3 off = hit.place - hit.tube->from;
  for (int i = 0; i < 3; ++i) {
    const double turn = i * std::numbers::pi / 3 + 0.3;
    if (std::abs(off.x * std::cos(turn) + off.y * std::sin(turn)) > 3.1) return false;
  }
  return true;
}

}  // namespace

Surface surface_at(const Scene& scene, const Hit& hit) {
  if (hit.material == Material::concrete) return concrete(scene, hit);
  if (hit.material == Material::ruler) return ruler(hit);
  Surface surface;
  switch (hit.material) {
    case Material::paint:
      surface = painted(scene, hit);
      break;
    case Material::steel:
    case Material::screw:
      surface = zinc(scene, hit);
      surface.colour = hit.material == Material::screw ? Vec3{0.34, 0.34, 0.335} : steel;
      break;
    default:
      surface = zinc(scene, hit);
  }
  if (hit.material != Material::paint) put_rust(scene, hit, surface);
  put_split(scene, hit, surface);
  if (hit.at_end && hit.tube->socket && is_hexagon_inside(hit)) {
    surface.colour = surface.colour * 0.10;
    surface.gloss = 0;
  }
  if (hit.at_end && hit.tube->open) {
    const Vec3 off = hit.place - hit.tube->from;
    const double out_mm = length(off - hit.tube->along * dot(off, hit.tube->along));
    if (out_mm < hit.tube->radius_mm - 4) {
      surface.colour = surface.colour * (0.05 + 0.10 * held((hit.outwards.y + off.y + 24) / 60));
      surface.gloss = 0;
    }
  }
  return surface;
}

namespace {

Vec3 sky(const Scene& scene, Vec3 towards) {
  const double high = held(towards.y);
  const Vec3 clear = mix(Vec3{0.62, 0.70, 0.76}, Vec3{0.20, 0.36, 0.58}, std::sqrt(high));
  const Vec3 grey = mix(Vec3{0.62, 0.64, 0.66}, Vec3{0.42, 0.45, 0.48}, high);
  const double bank = 1 / (towards.y + 0.18);
  const double cloud = scene.noise.rough({towards.x * bank * 1.2, 3, towards.z * bank * 1.2}, 4);
  const Vec3 open = mix(clear, Vec3{0.86, 0.87, 0.88}, 0.8 * step(0.46, 0.68, cloud));
  return mix(open, grey * (0.85 + 0.3 * cloud), scene.overcast);
}

}  // namespace

Vec3 background(const Scene& scene, Vec3 towards) {
  const double below = -towards.y + 0.004;
  if (below <= 0) return sky(scene, towards);
  const double away = 1 / below;
  const bool roof = scene.of.backdrop == Backdrop::roof;
  const bool lock = scene.of.backdrop == Backdrop::lock;
  const Vec3 on{towards.x * away, 0, towards.z * away};
  if (roof) {
    const double seam = std::abs(std::fmod(std::abs(on.x) * 1.5, 1.0) - 0.5);
    const double worn = scene.noise.rough(on * 0.7, 4);
    const Vec3 sheet = mix(Vec3{0.16, 0.165, 0.17}, Vec3{0.25, 0.25, 0.245}, worn);
    return mix(sheet * (0.75 + 0.25 * step(0, 0.06, seam)), sky(scene, {towards.x, 0, towards.z}),
               held(1 - below * 14));
  }
  const double wave = scene.noise.rough({on.x * 3.2, 1, on.z * 7.0}, 4);
  const Vec3 deep = lock ? Vec3{0.045, 0.075, 0.055} : Vec3{0.035, 0.085, 0.105};
  const Vec3 shine = sky(scene, unit({towards.x, 0.25, towards.z}));
  Vec3 water = mix(deep, shine, 0.14 + 0.42 * step(0.42, 0.72, wave));
  if (scene.of.backdrop == Backdrop::slip) {
    const double foam = scene.noise.rough({on.x * 4, 6, on.z * 11}, 4);
    water = mix(water, Vec3{0.75, 0.77, 0.76}, 0.5 * step(0.60, 0.70, foam));
  }
  return mix(water, sky(scene, {towards.x, 0.02, towards.z}), 0.75 * held(1 - below * 16));
}

}  // namespace kneerail::photograph
