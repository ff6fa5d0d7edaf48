#include "mobile/elevation/tube_shapes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numbers>

namespace kneerail::elevation {

namespace {

constexpr float last_visit_strength = 0.6F;

/// A small generator of its own (Marsaglia 2003, xorshift), so that every machine draws the same.
class Chance {
 public:
  explicit Chance(const Uuid& id) : state_(std::hash<Uuid>{}(id) | 1U) {}
  float between(float low, float high) {
    state_ ^= state_ << 13U;
    state_ ^= state_ >> 7U;
    state_ ^= state_ << 17U;
    const auto bits = static_cast<float>(state_ >> 40U);
    return low + (high - low) * bits / static_cast<float>(1U << 24U);
  }

 private:
  std::uint64_t state_;
};

QColor faded(QColor color, float strength) {
  color.setAlphaF(static_cast<float>(color.alphaF()) * strength);
  return color;
}

class TubeDrawer {
 public:
  TubeDrawer(ShapeList& list, const RunPen& pen, const Tube& tube)
      : list_(list), pen_(pen), tube_(tube), chance_(tube.part->id) {
    length_ = std::hypot(tube.to.x - tube.from.x, tube.to.y - tube.from.y);
    if (length_ > 0) {
      along_ = {(tube.to.x - tube.from.x) / length_, (tube.to.y - tube.from.y) / length_};
    }
    // Across: down for a rail, to the right for a post.
    across_ = std::abs(along_.x) > 0.5F ? Point{0, 1} : Point{1, 0};
  }

  void draw() {
    if (length_ <= 0) return;
    if (tube_.part->struck)
      return edges({.width_px = pen_.edge_px(), .on_px = pen_.px(9), .off_px = pen_.px(6)});
    body();
    if (pen_.textures() && !pen_.far()) texture();
    edges({.width_px = pen_.edge_px()});
  }

 private:
  /// `s` along in px, `t` across in outside diameters from the upper or left edge.
  [[nodiscard]] Point at(float s, float t) const {
    const float side = (t - 0.5F) * tube_.od_px;
    return {tube_.from.x + along_.x * s + across_.x * side,
            tube_.from.y + along_.y * s + across_.y * side};
  }

  void band(float from, float to, const QColor& color) {
    list_.fill(std::array{at(0, from), at(length_, from), at(length_, to), at(0, to)}, color);
  }

  void edges(const Stroke& stroke) {
    list_.line(at(0, 0), at(length_, 0), pen_.color().edge, stroke);
    list_.line(at(0, 1), at(length_, 1), pen_.color().edge, stroke);
  }

  void body() {
    const auto& color = pen_.color();
    const Finish finish = tube_.part->finish;
    if (finish == Finish::paint || finish == Finish::zinc_and_paint) return band(0, 1, color.paint);
    band(0, 1, grade() == 2 && finish == Finish::zinc ? color.bloom : color.zinc);
    if (tube_.od_px < 5) return;
    if (finish == Finish::stainless) {
      band(0.30F, 0.36F, color.zinc_light);
    } else {
      band(0.20F, 0.42F, color.zinc_light);
    }
    if (finish == Finish::aluminium) band(0.52F, 0.64F, color.zinc_light);
    band(0.80F, 1, faded(color.zinc_shade, 0.55F));
  }

  [[nodiscard]] int grade() const {
    const auto& known = tube_.part->now ? tube_.part->now : tube_.part->last;
    return known ? known->grade : 1;
  }

  void texture() {
    strength_ = tube_.part->now ? 1 : last_visit_strength;
    const auto& color = pen_.color();
    const int worse = grade();
    if (worse < 2) return;
    switch (tube_.part->finish) {
      case Finish::zinc:
      case Finish::bare_steel:
        dots(pen_.px(worse == 2 ? 3.2 : 5), {color.sheet, color.zinc_shade});
        if (worse >= 3) patches(pen_.px(worse == 3 ? 26 : 9), worse > 3 ? 2 : 1);
        break;
      case Finish::paint:
      case Finish::zinc_and_paint:
        if (worse == 2) dots(pen_.px(5), {color.sheet, color.zinc_shade});
        if (worse >= 3) flakes(pen_.px(worse == 3 ? 60 : 20));
        break;
      case Finish::aluminium:
        if (worse >= 3) dots(pen_.px(12), {color.edge, color.edge});
        break;
      case Finish::stainless:
        if (worse >= 2) stains(pen_.px(40));
        break;
    }
  }

  void dots(float every_px, const std::array<QColor, 2>& colors) {
    const int count = static_cast<int>(length_ / every_px);
    for (int i = 0; i < count; ++i) {
      const Point middle = at(chance_.between(0, length_), chance_.between(0.1F, 0.9F));
      const float half = chance_.between(pen_.px(0.6), std::max(0.09F * tube_.od_px, pen_.px(0.8)));
      const QColor color = faded(colors[chance_.between(0, 1) < 0.6F ? 0 : 1], strength_);
      if (half < pen_.px(1.2)) {
        list_.rect({middle.x - half, middle.y - half}, {2 * half, 2 * half}, color);
      } else {
        round<6>(middle, half, half, color);
      }
    }
  }

  /// Rust sits low on rails and thickens towards the foot of posts.
  [[nodiscard]] Point rust_place() {
    const bool rail = std::abs(along_.x) > 0.5F;
    const float s = chance_.between(0, 1);
    return rail ? at(s * length_, chance_.between(0.55F, 0.95F))
                : at(s * s * length_, chance_.between(0.2F, 0.9F));
  }

  void patches(float every_px, int dark_weight) {
    const int count = static_cast<int>(length_ / every_px);
    for (int i = 0; i < count; ++i) {
      const Point middle = rust_place();
      const float half_long = chance_.between(0.16F, 0.50F) * tube_.od_px;
      const float half_short = chance_.between(0.10F, 0.30F) * tube_.od_px;
      const float pick = chance_.between(0, static_cast<float>(2 + dark_weight));
      const auto shade = static_cast<float>(dark_weight);
      const std::size_t which = pick < shade ? 0 : (pick < shade + 1 ? 1 : 2);
      round<10>(middle, half_long, half_short, faded(pen_.color().patch[which], strength_));
    }
  }

  void flakes(float every_px) {
    const int count = static_cast<int>(length_ / every_px) + 1;
    for (int i = 0; i < count; ++i) {
      const Point middle = rust_place();
      const float radius = chance_.between(0.3F, 0.7F) * tube_.od_px / 2;
      std::vector<Point> outer;
      std::vector<Point> inner;
      for (int corner = 0; corner < 7; ++corner) {
        const float angle = static_cast<float>(corner) * 2 * std::numbers::pi_v<float> / 7;
        const float r = radius * chance_.between(0.75F, 1.15F);
        const Point out{r * std::cos(angle), r * std::sin(angle)};
        outer.push_back(on_tube({middle.x + out.x, middle.y + out.y}));
        inner.push_back(on_tube({middle.x + out.x * 0.6F, middle.y + out.y * 0.6F}));
      }
      list_.fill(outer, faded(pen_.color().primer, strength_));
      list_.fill(inner, faded(pen_.color().patch[0], strength_));
    }
  }

  void stains(float every_px) {
    const int count = static_cast<int>(length_ / every_px);
    for (int i = 0; i < count; ++i) {
      const float s = chance_.between(0, length_);
      const float t = chance_.between(0.3F, 0.9F);
      const float end = std::min(s + pen_.px(chance_.between(4, 14)), length_);
      list_.line(at(s, t), at(end, t), faded(pen_.color().patch[2], strength_),
                 {.width_px = pen_.px(1)});
    }
  }

  /// An ellipse of so many corners, as far as it lies on the tube.
  template <std::size_t corners>
  void round(Point middle, float half_long, float half_short, const QColor& color) {
    std::array<Point, corners> ring;
    for (std::size_t i = 0; i < corners; ++i) {
      const float angle = static_cast<float>(i) * 2 * std::numbers::pi_v<float> / corners;
      const float s = half_long * std::cos(angle);
      const float t = half_short * std::sin(angle);
      ring[i] = on_tube(
          {middle.x + along_.x * s + across_.x * t, middle.y + along_.y * s + across_.y * t});
    }
    list_.fill(ring, color);
  }

  /// The point of the tube nearest to a point.
  [[nodiscard]] Point on_tube(Point point) const {
    const Point from{point.x - tube_.from.x, point.y - tube_.from.y};
    const float s = std::clamp(from.x * along_.x + from.y * along_.y, 0.0F, length_);
    const float half = tube_.od_px / 2;
    const float t = std::clamp(from.x * across_.x + from.y * across_.y, -half, half);
    return {tube_.from.x + along_.x * s + across_.x * t,
            tube_.from.y + along_.y * s + across_.y * t};
  }

  ShapeList& list_;
  const RunPen& pen_;
  const Tube& tube_;
  Chance chance_;
  float length_ = 0;
  float strength_ = 1;
  Point along_{1, 0};
  Point across_{0, 1};
};

}  // namespace

void add_tube(ShapeList& list, const RunPen& pen, const Tube& tube) {
  TubeDrawer(list, pen, tube).draw();
}

}  // namespace kneerail::elevation
