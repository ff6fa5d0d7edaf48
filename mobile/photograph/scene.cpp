#include "mobile/photograph/scene.h"

#include <array>
#include <numbers>

#include "core/base/world.h"

namespace kneerail::photograph {
namespace {

using demo::Backdrop;
using demo::Damage;
using demo::Shown;

constexpr double tube_mm = 24.15;   // radius of a tube of 48.3 mm
constexpr double socket_mm = 30.5;  // radius of a fitting's socket
constexpr Vec3 upwards{0, 1, 0};
constexpr Vec3 rightwards{1, 0, 0};
constexpr Vec3 frontwards{0, 0, 1};

/// Puts the part together.
class Builder {
 public:
  explicit Builder(Scene& scene) : scene_(scene) {
    const bool painted = scene.of.painted;
    tube_ = painted ? Material::paint : Material::zinc;
    casting_ = painted ? Material::paint : Material::casting;
  }

  void part() {
    switch (scene_.of.shown) {
      case Shown::tee:
        post(-12);
        rail(-700, 1400);
        socket({0, -86, 0}, upwards, 70);
        socket({-44, 0, 0}, rightwards, 88);
        screws({0, -58, 0}, {26, 0, 0});
        scene_.spot = {-6, -30, socket_mm};
        break;
      case Shown::cross:
        post(500);
        rail(-700, 1400);
        socket({0, -46, 0}, upwards, 92);
        socket({-78, 0, 0}, rightwards, 156);
        screws({-56, 0, 0}, {56, 0, 0});
        scene_.spot = {14, -8, socket_mm};
        break;
      case Shown::corner:
        post(-12);
        rail(0, 700);
        bar({{0, 0, 0}, {0, 0, -1}, 700, tube_mm, tube_});
        socket({0, -86, 0}, upwards, 120);
        socket({0, 0, 0}, rightwards, 78);
        socket({0, 0, 0}, {0, 0, -1}, 78);
        screws({0, -58, 0}, {52, 0, 0});
        scene_.spot = {4, -22, socket_mm};
        break;
      case Shown::sleeve:
        rail(-700, 1400);
        socket({-62, 0, 0}, rightwards, 124);
        screws({-40, 0, 0}, {40, 0, 0});
        scene_.spot = {-30, -8, socket_mm};
        break;
      case Shown::cap:
        bar({{-700, 0, 0}, rightwards, 745, tube_mm, tube_, true});
        post(-12);
        socket({0, -86, 0}, upwards, 70);
        socket({-44, 0, 0}, rightwards, 66);
        screws({0, -58, 0}, {-20, 0, 0});
        scene_.spot = {44, 0, 12};
        break;
      case Shown::post:
        post(500);
        scene_.spot = {2, -20, tube_mm};
        break;
      case Shown::rail:
        rail(-700, 1400);
        bar({{-150, -700, 0}, upwards, 700, tube_mm, tube_});
        socket({-150, -86, 0}, upwards, 70);
        socket({-194, 0, 0}, rightwards, 88);
        scene_.spot = {10, -4, tube_mm};
        break;
      case Shown::flange:
      case Shown::anchor:
        base();
        break;
      case Shown::weld:
        post(120);
        rail(0, 700);
        bar({{20, 0, 0}, rightwards, 9, tube_mm + 4, Material::steel});
        scene_.spot = {26, -8, tube_mm};
        break;
      case Shown::gate:
        gate();
        break;
    }
  }

 private:
  void bar(const Tube& tube) { scene_.solids.tubes.push_back(tube); }
  void post(double top_mm) { bar({{0, -700, 0}, upwards, 700 + top_mm, tube_mm, tube_}); }
  void rail(double from_mm, double length_mm) {
    bar({{from_mm, 0, 0}, rightwards, length_mm, tube_mm, tube_});
  }
  void socket(Vec3 from, Vec3 along, double length_mm) {
    bar({from, along, length_mm, socket_mm, casting_});
    // The beads at its ends.
    bar({from, along, 7, socket_mm + 2.6, casting_});
    bar({from + along * (length_mm - 7), along, 7, socket_mm + 2.6, casting_});
  }
  void screw(Vec3 at) {
    bar({at + frontwards * (socket_mm - 3), frontwards, 8, 11.5, casting_});
    bar({at + frontwards * (socket_mm - 3), frontwards, 11, 6.2, Material::screw, false, true});
  }
  void screws(Vec3 first, Vec3 second) {
    screw(first);
    screw(second);
  }

  void base() {
    scene_.solids.deck_z = -170;
    const bool turned = scene_.of.shown == Shown::anchor;
    bar({{0, 0, 0}, upwards, 900, tube_mm, tube_});
    if (scene_.of.painted) {
      bar({{0, 0, 0}, upwards, 10, 66, Material::paint});
      bar({{0, 9, 0}, upwards, 5, tube_mm + 4, Material::steel});
    } else {
      bar({{0, 0, 0}, upwards, 10, 62, casting_});
      socket({0, 9, 0}, upwards, 62);
      screw({0, 46, 0});
    }
    for (const double side : {-1.0, 1.0}) {
      const double lift = turned && side > 0 ? 7 : 0;
      const Vec3 at{side * 46, 10, 8};
      bar({at + upwards * lift, upwards, 2.6, 13, Material::zinc});
      bar({at + upwards * (2.6 + lift), upwards, 9, 9.4, Material::zinc});
      bar({at, upwards, 17 + lift, 5.8, Material::zinc});
    }
    scene_.spot = turned ? Vec3{46, 14, 14} : Vec3{-12, 12, 52};
  }

  void gate() {
    post(500);
    const double leaf_mm = 78;
    bar({{leaf_mm, -700, 0}, upwards, 1200, 17, Material::paint});
    bar({{leaf_mm, 90, 0}, rightwards, 600, 13, Material::paint});
    bar({{leaf_mm, -200, 0}, rightwards, 600, 13, Material::paint});
    bar({{42, -46, 12}, upwards, 40, 10.5, Material::steel});
    bar({{42, -5, 12}, upwards, 40, 10.5, Material::steel});
    bar({{42, -60, 12}, upwards, 110, 6, Material::steel});
    for (const double y : {-30.0, 20.0}) {
      bar({{24, y, 8}, rightwards, 14, 5, Material::steel});
      bar({{50, y, 8}, rightwards, 16, 5, Material::steel});
    }
    scene_.spot = {42, -6, 22};
  }

  Scene& scene_;
  Material tube_ = Material::zinc;
  Material casting_ = Material::casting;
};

bool is_base(const Scene& scene) {
  return scene.of.shown == Shown::flange || scene.of.shown == Shown::anchor;
}

void put_camera(Scene& scene, SplitMix64& chance) {
  const auto within = [&](double low, double high) { return mix(low, high, chance.uniform()); };
  const bool base = is_base(scene);
  const double turn = within(-0.62, 0.62);
  const double tilt = base ? within(0.42, 0.62) : within(0.06, 0.40);
  const double away_mm = base ? within(430, 520) : within(360, 450);
  const Vec3 target = base ? Vec3{within(-14, 14), 34, 0}
                           : Vec3{scene.spot.x * 0.5 + within(-14, 14), within(-30, 4), 0};
  const Vec3 towards{std::sin(turn) * std::cos(tilt), std::sin(tilt),
                     std::cos(turn) * std::cos(tilt)};
  scene.eye = target + towards * away_mm;
  scene.forwards = towards * -1;
  const Vec3 level = unit(cross(scene.forwards, upwards));
  const Vec3 upright = cross(level, scene.forwards);
  const double roll = within(-0.05, 0.05);  // held in a hand
  scene.right = level * std::cos(roll) + upright * std::sin(roll);
  scene.up = upright * std::cos(roll) - level * std::sin(roll);
  scene.overcast = std::pow(chance.uniform(), 1.6);
  const double side = chance.uniform() < 0.5 ? -1 : 1;
  scene.sun = unit(level * (side * within(0.35, 0.85)) + upwards * within(0.55, 1.0) +
                   towards * within(0.35, 0.7));
}

/// A scale of 150 mm, as inspectors hold beside a finding: on the deck, or beside the part.
void put_ruler(Scene& scene, SplitMix64& chance) {
  const double lean = (chance.uniform() - 0.5) * 0.3;
  Card card;
  card.width_mm = 150;
  card.height_mm = 24;
  if (is_base(scene)) {
    card.right = unit({std::cos(lean), 0, -std::sin(lean)});
    card.up = {std::sin(lean), 0, -std::cos(lean)};
    card.corner = Vec3{-75, 0.8, 112};
  } else if (scene.of.shown == Shown::cap) {
    card.right = unit({1, 0.2 * lean, 0});
    card.up = unit(cross(frontwards, card.right));
    card.corner = Vec3{56, -70, 0};
  } else if (scene.of.shown == Shown::sleeve || scene.of.shown == Shown::rail) {
    card.right = unit({1, 0.2 * lean, 0});
    card.up = unit(cross(frontwards, card.right));
    card.corner = Vec3{scene.spot.x - 84, -72, 22};
  } else {
    const double side = scene.of.shown == Shown::gate || scene.spot.x > 0 ? -1 : 1;
    card.right = unit({0.5 * lean, 1, 0});
    card.up = unit(cross(frontwards, card.right));
    card.corner = Vec3{side * 62 + 12, -124, 24};
  }
  scene.solids.card = card;
}

}  // namespace

Scene made_scene(const demo::PhotoScene& of) {
  Scene scene;
  scene.of = of;
  scene.noise = Noise(of.seed);
  SplitMix64 chance(of.seed);
  Builder(scene).part();
  put_camera(scene, chance);
  put_ruler(scene, chance);
  const double by_damage = of.damage == Damage::rust      ? 0.31
                           : of.damage == Damage::weeping ? 0.34
                           : of.damage == Damage::seized  ? 0.30
                           : of.damage == Damage::split   ? 0.16
                                                          : 0.20;
  scene.rust = by_damage + 0.05 * (of.grade - 4) + 0.10 * (chance.uniform() - 0.5);
  constexpr std::array<Vec3, 3> paints{Vec3{0.035, 0.10, 0.075}, Vec3{0.03, 0.075, 0.16},
                                       Vec3{0.30, 0.31, 0.30}};
  scene.paint = paints[static_cast<std::size_t>(chance.between(0, 2))];
  return scene;
}

}  // namespace kneerail::photograph
