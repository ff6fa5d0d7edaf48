#include "mobile/elevation/mark_shapes.h"

#include <QLocale>
#include <array>
#include <cmath>
#include <functional>
#include <numbers>

namespace kneerail::elevation {

namespace {

constexpr double ground_drawn = 36;
constexpr double tag_gap_drawn =
    18;  // from the top rail's fitting to the tag's foot, with its line

}  // namespace

void add_ground(ShapeList& list, const RunPen& pen, float left, float right) {
  const float depth = pen.px(ground_drawn);
  const auto& color = pen.color();
  list.rect({left, 0}, {right - left, depth}, color.concrete);
  const float every = pen.px(16);
  const Stroke hatch{.width_px = pen.px(1)};
  for (float x = left; x < right; x += every) {
    const float end = std::min(x + depth * 0.8F, right);
    const float share = (end - x) / (depth * 0.8F);
    list.line(Point{x, depth}, Point{end, depth * (1 - share)}, color.concrete_line, hatch);
  }
  list.line(Point{left, depth}, Point{right, depth}, color.concrete_line, hatch);
  list.line(Point{left, 0}, Point{right, 0}, color.edge, {.width_px = pen.px(2)});
}

void add_tag(ShapeList& list, const RunPen& pen, const SheetPost& post, Point top, bool chosen) {
  const auto& color = pen.color();
  const bool small = pen.far();
  const float half = pen.px(small ? 24 : 29);
  const float height = pen.px(small ? 26 : 34);
  const float foot = top.y - pen.px(small ? tag_gap_drawn : tag_gap_drawn + 40);
  const float head = foot - height;
  const float cut = pen.px(9);
  const bool absent = post.state == PostState::skipped || post.state == PostState::struck;
  const bool dark = chosen || (post.state == PostState::seen && !absent);
  const QColor ground = chosen ? color.chalk : (dark ? color.ink : color.sheet);
  const QColor ink = dark ? color.sheet : color.ink;
  list.line(Point{top.x, foot}, Point{top.x, top.y - pen.px(18)}, color.edge,
            {.width_px = pen.px(1.2)});
  const std::array plate = {Point{top.x - half, foot},       Point{top.x - half, head + cut},
                            Point{top.x - half + cut, head}, Point{top.x + half - cut, head},
                            Point{top.x + half, head + cut}, Point{top.x + half, foot}};
  list.fill(plate, ground);
  Stroke edge{.width_px = pen.px(2), .closed = true};
  if (absent && !chosen) edge.on_px = edge.off_px = pen.px(5);
  list.line(plate, chosen ? color.chalk : color.edge, edge);
  list.circle({top.x, head + pen.px(6.5)}, pen.px(2.6), ink, {.width_px = pen.px(1.2)});
  list.label({.text = QString::fromStdString(post.label),
              .at = {top.x, foot - pen.px(small ? 5 : 8)},
              .size_px = pen.text_px(small ? 15 : 19),
              .color = ink.rgba(),
              .bold = true});
  if (post.state != PostState::skipped || small) return;
  list.label({.text = QString::fromStdString(post.skipped_because),
              .at = {top.x, head - pen.px(6)},
              .size_px = pen.text_px(16),
              .color = pen.ink2().rgba(),
              .halo = color.paper.rgba()});
}

void add_ring(ShapeList& list, const RunPen& pen, const SheetFinding& finding, Point middle) {
  const auto seed = std::hash<Uuid>{}(finding.record);
  const auto share = [&](unsigned shift) {
    return static_cast<float>((seed >> shift) & 0xFFU) / 255.0F;
  };
  const float d1 = 0.02F + 0.03F * share(0);
  const float d2 = 0.01F + 0.02F * share(8);
  const float phase = 2 * std::numbers::pi_v<float> * share(16);
  const float radius = pen.px(pen.far() ? 22 : 48);
  std::vector<Point> ring;
  constexpr int points = 50;  // 46 and 8 % overlap
  for (int i = 0; i < points; ++i) {
    const float a = 2 * std::numbers::pi_v<float> * static_cast<float>(i) / 46;
    const float r = radius * (1 + d1 * std::sin(2 * a + phase) + d2 * std::sin(5 * a) -
                              0.02F * static_cast<float>(i) / 46);
    ring.push_back({middle.x + r * std::cos(a - 1), middle.y + r * std::sin(a - 1)});
  }
  QColor chalk = pen.color().chalk;
  chalk.setAlphaF(0.92F);
  list.line(ring, chalk, {.width_px = pen.px(4)});
  std::vector<Point> second;
  for (const Point& point : ring) {
    second.push_back({middle.x + (point.x - middle.x) * 0.94F + pen.px(2),
                      middle.y + (point.y - middle.y) * 0.96F});
  }
  list.line(second, chalk, {.width_px = pen.px(2), .on_px = pen.px(14), .off_px = pen.px(9)});
  if (pen.far()) return;
  QString words = QString::fromStdString(finding.number);
  if (!finding.text.empty()) words += QStringLiteral(" ") + QString::fromStdString(finding.text);
  list.line(Point{middle.x - radius, middle.y + radius * 0.3F},
            Point{middle.x - radius * 1.5F, middle.y + radius * 0.75F}, chalk,
            {.width_px = pen.px(1.8)});
  list.label({.text = words.size() > 28 ? words.left(27) + QStringLiteral("…") : words,
              .at = {middle.x - radius * 1.5F, middle.y + radius * 1.05F},
              .size_px = pen.text_px(17),
              .color = pen.color().chalk.rgba(),
              .bold = true,
              .align = Qt::AlignRight,
              .halo = pen.color().paper.rgba()});
}

void add_board(ShapeList& list, const RunPen& pen, Point left, float right_x) {
  const auto& color = pen.color();
  const float half = pen.px(pen.far() ? 7 : 13);
  const float inset = pen.px(pen.far() ? 8 : 34);
  const float from = left.x + inset;
  const float to = right_x - inset;
  if (to - from < 2 * half) return;
  const float top = left.y - half;
  const float foot = left.y + half;
  list.rect({from, top}, {to - from, 2 * half}, color.tape);
  for (float x = from - half; x < to; x += 2 * half) {  // bars at 45 degrees, clipped to the board
    const std::array bar = {Point{x, foot}, Point{x + half, foot}, Point{x + 3 * half, top},
                            Point{x + 2 * half, top}};
    std::vector<Point> inside;
    for (std::size_t i = 0; i < bar.size(); ++i) {
      Point a = bar[i];
      Point b = bar[(i + 1) % bar.size()];
      const auto cut = [&](Point p, Point q, float edge) {
        const float t = (edge - p.x) / (q.x - p.x);
        return Point{edge, p.y + (q.y - p.y) * t};
      };
      if (a.x >= from && a.x <= to) inside.push_back(a);
      for (const float edge : {from, to}) {
        if ((a.x < edge) != (b.x < edge)) inside.push_back(cut(a, b, edge));
      }
    }
    list.fill(inside, color.tape_ink);
  }
  list.rect_outline({from, top}, {to - from, 2 * half}, color.edge, {.width_px = pen.px(1.6)});
  for (const float x : {from, to}) {
    list.line(Point{x, top - half * 0.5F}, Point{x, foot + half * 1.5F}, color.edge,
              {.width_px = pen.px(3)});
  }
}

void add_dimension(ShapeList& list, const RunPen& pen, float left, float right, double length_mm) {
  if (pen.far() || right - left < pen.px(90)) return;
  const QColor color = pen.ink2();
  const float y = pen.px(78);
  const Stroke hair{.width_px = pen.px(1.2)};
  const float gap = pen.px(36);
  const float middle = (left + right) / 2;
  for (const float x : {left, right}) {
    list.line(Point{x, pen.px(46)}, Point{x, pen.px(86)}, color, hair);
    const float inward = x == left ? pen.px(10) : -pen.px(10);
    list.fill(
        std::array{Point{x, y}, Point{x + inward, y - pen.px(4)}, Point{x + inward, y + pen.px(4)}},
        color);
  }
  list.line(Point{left, y}, Point{middle - gap, y}, color, hair);
  list.line(Point{middle + gap, y}, Point{right, y}, color, hair);
  list.label({.text = QStringLiteral("%1 m").arg(QLocale().toString(length_mm / 1000, 'f', 2)),
              .at = {middle, y + pen.px(6)},
              .size_px = pen.text_px(16),
              .color = color.rgba()});
}

}  // namespace kneerail::elevation
