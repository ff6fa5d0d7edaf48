#include "mobile/elevation/sign_shapes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numbers>
#include <vector>

namespace kneerail::elevation {

namespace {

constexpr int ring_points = 46;
constexpr int overlap_points = 4;  // 8 % of them

/// The part of a ring of points on one side of an upright line (Sutherland and Hodgman 1974).
std::vector<Point> cut_off(const std::vector<Point>& ring, float edge, bool keep_right) {
  std::vector<Point> kept;
  const auto inside = [&](Point p) { return keep_right ? p.x >= edge : p.x <= edge; };
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point& a = ring[i];
    const Point& b = ring[(i + 1) % ring.size()];
    if (inside(a)) kept.push_back(a);
    if (inside(a) == inside(b)) continue;
    const float t = (edge - a.x) / (b.x - a.x);
    kept.push_back({edge, a.y + (b.y - a.y) * t});
  }
  return kept;
}

}  // namespace

void add_chalk_ring(ShapeList& list, const ChalkRing& ring, QColor chalk) {
  const auto seed = std::hash<Uuid>{}(ring.seed);
  const auto share = [&](unsigned shift) {
    return static_cast<float>((seed >> shift) & 0xFFU) / 255.0F;
  };
  const float d1 = 0.02F + 0.03F * share(0);
  const float d2 = 0.01F + 0.02F * share(8);
  const float phase = 2 * std::numbers::pi_v<float> * share(16);
  const float start = 2 * std::numbers::pi_v<float> * share(24);
  const auto at = [&](float turns, float wider, float shift) {
    const float a = start + 2 * std::numbers::pi_v<float> * turns;
    const float wave = d1 * std::sin(2 * a + phase + shift) + d2 * std::sin(5 * a + shift);
    const float r = ring.radius * wider * (1 + wave);
    return Point{ring.middle.x + r * std::cos(a), ring.middle.y + r * std::sin(a)};
  };
  std::vector<Point> first;
  std::vector<Point> second;
  for (int i = 0; i < ring_points + overlap_points; ++i) {
    const float turns = static_cast<float>(i) / ring_points;
    first.push_back(at(turns, 1.015F - 0.03F * turns, 0));
    second.push_back(at(turns, 0.92F + 0.04F * turns, 1.3F));
  }
  const float dash = ring.radius * 0.34F;
  chalk.setAlphaF(0.62F);
  list.line(second, chalk, {.width_px = ring.stroke_px / 2, .on_px = dash, .off_px = dash / 2});
  chalk.setAlphaF(0.92F);
  list.line(first, chalk, {.width_px = ring.stroke_px});
}

void add_barrier_board(ShapeList& list, const BarrierBoard& board, const theme::Palette& palette) {
  const float left = board.corner.x;
  const float right = left + board.size.x;
  const float top = board.corner.y;
  const float foot = top + board.size.y;
  const float bar = board.size.y / 2;
  const float across = bar * std::numbers::sqrt2_v<float>;  // of a bar, along the board
  list.rect(board.corner, board.size, palette.tape);
  for (float x = left - board.size.y; x < right; x += 2 * across) {
    const std::vector<Point> whole = {Point{x, foot}, Point{x + across, foot},
                                      Point{x + across + board.size.y, top},
                                      Point{x + board.size.y, top}};
    list.fill(cut_off(cut_off(whole, left, true), right, false), palette.tape_ink);
  }
  list.rect_outline(board.corner, board.size, palette.edge, {.width_px = board.outline_px});
}

void add_due_tag(ShapeList& list, const DueTag& tag, const theme::Palette& palette) {
  // The edge lies inside the plate's bounds.
  const float half = tag.edge_px / 2;
  const float left = tag.corner.x + half;
  const float right = tag.corner.x + tag.size.x - half;
  const float top = tag.corner.y + half;
  const float foot = tag.corner.y + tag.size.y - half;
  const float middle = (top + foot) / 2;
  const float shoulder = left + tag.size.y * due_tag_point;
  const std::vector<Point> plate = {
      {left, middle}, {shoulder, top}, {right, top}, {right, foot}, {shoulder, foot}};
  list.fill(plate, tag.soon ? palette.ink : palette.sheet);
  list.line(plate, palette.edge, {.width_px = tag.edge_px, .closed = true});
  const Point hole{left + tag.size.y * 0.3F, middle};
  const float radius = tag.size.y * 0.062F;
  if (tag.soon)
    list.disc(hole, radius, palette.sheet);
  else
    list.circle(hole, radius, palette.edge, {.width_px = tag.edge_px});
}

void add_chosen_mark(ShapeList& list, Point foot, float side, const QColor& chalk,
                     const QColor& ground) {
  const float half = side / 2;
  const float tall = side * 0.85F;
  const std::array<Point, 3> head = {
      Point{foot.x - half, foot.y - tall}, {foot.x + half, foot.y - tall}, foot};
  list.line(head, ground, {.width_px = side * 0.3F, .closed = true});
  list.fill(head, chalk);
}

}  // namespace kneerail::elevation
