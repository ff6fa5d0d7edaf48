#include "mobile/photograph/solids.h"

namespace kneerail::photograph {
namespace {

constexpr double nothing_mm = 1e9;
constexpr double least_mm = 1e-3;

/// Distance along the ray, at least `least_mm`; `nothing_mm` where it misses. `at_end`: on a flat
/// end.
double distance_to(const Tube& tube, const Ray& ray, bool& at_end) {
  const Vec3 away = ray.from - tube.from;
  const double along_ray = dot(ray.to, tube.along);
  const double along_from = dot(away, tube.along);
  const Vec3 across_ray = ray.to - tube.along * along_ray;
  const Vec3 across_from = away - tube.along * along_from;
  double best = nothing_mm;
  const double a = dot(across_ray, across_ray);
  const double b = dot(across_ray, across_from);
  const double c = dot(across_from, across_from) - tube.radius_mm * tube.radius_mm;
  const double root = b * b - a * c;
  if (a > 1e-12 && root > 0) {
    const double near = (-b - std::sqrt(root)) / a;
    const double at = along_from + near * along_ray;
    if (near > least_mm && at >= 0 && at <= tube.length_mm) best = near;
  }
  if (std::abs(along_ray) < 1e-9) return best;
  for (const double end : {0.0, tube.length_mm}) {
    const double far = (end - along_from) / along_ray;
    if (far <= least_mm || far >= best) continue;
    const Vec3 off = across_from + across_ray * far;
    if (dot(off, off) > tube.radius_mm * tube.radius_mm) continue;
    best = far;
    at_end = true;
  }
  return best;
}

double distance_to(const Card& card, const Ray& ray, double& u, double& v) {
  const Vec3 facing = cross(card.right, card.up);
  const double slope = dot(facing, ray.to);
  if (std::abs(slope) < 1e-9) return nothing_mm;
  const double far = dot(facing, card.corner - ray.from) / slope;
  if (far < least_mm) return nothing_mm;
  const Vec3 on = ray.from + ray.to * far - card.corner;
  u = dot(on, card.right) / card.width_mm;
  v = dot(on, card.up) / card.height_mm;
  return u < 0 || u > 1 || v < 0 || v > 1 ? nothing_mm : far;
}

}  // namespace

std::optional<Hit> Solids::nearest(const Ray& ray) const {
  Hit hit;
  hit.distance_mm = nothing_mm;
  for (std::size_t i = 0; i < tubes.size(); ++i) {
    bool at_end = false;
    const double far = distance_to(tubes[i], ray, at_end);
    if (far >= hit.distance_mm) continue;
    hit.distance_mm = far;
    hit.tube = &tubes[i];
    hit.solid = static_cast<int>(i);
    hit.at_end = at_end;
  }
  double u = 0;
  double v = 0;
  const double card_mm = card ? distance_to(*card, ray, u, v) : nothing_mm;
  if (card_mm < hit.distance_mm) {
    hit = {card_mm, {}, unit(cross(card->right, card->up)), Material::ruler, 1'000, nullptr, false,
           u,       v};
    if (dot(hit.outwards, ray.to) > 0) hit.outwards = hit.outwards * -1;
  }
  const double deck_mm = deck_z && ray.to.y < -1e-6 ? -ray.from.y / ray.to.y : nothing_mm;
  if (deck_mm > least_mm && deck_mm < hit.distance_mm &&
      (ray.from + ray.to * deck_mm).z > *deck_z) {
    hit = {deck_mm, {}, {0, 1, 0}, Material::concrete, 1'001, nullptr, false, 0, 0};
  }
  if (hit.distance_mm >= nothing_mm) return std::nullopt;
  hit.place = ray.from + ray.to * hit.distance_mm;
  if (hit.tube != nullptr) {
    const Vec3 off = hit.place - hit.tube->from;
    const double at = dot(off, hit.tube->along);
    hit.material = hit.tube->material;
    hit.outwards = hit.at_end ? hit.tube->along * (at > hit.tube->length_mm / 2 ? 1.0 : -1.0)
                              : unit(off - hit.tube->along * at);
  }
  return hit;
}

bool Solids::shaded(const Ray& ray) const {
  bool at_end = false;
  for (const Tube& tube : tubes)
    if (distance_to(tube, ray, at_end) < nothing_mm) return true;
  double u = 0;
  double v = 0;
  return card && distance_to(*card, ray, u, v) < nothing_mm;
}

}  // namespace kneerail::photograph
