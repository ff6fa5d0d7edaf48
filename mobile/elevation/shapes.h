#pragma once

// The flat list of shapes that every drawing is made of. What makes a drawing adds to the list in
// painter's order; the list is drawn by triangles on a GPU (triangles.h) and by QPainter for the
// software renderer, pictures and the report (shape_painter.h). Curves are flattened when they are
// added. Pixels, y down, from the list's own origin.

#include <QColor>
#include <QString>
#include <cstdint>
#include <span>
#include <vector>

namespace kneerail::elevation {

struct Point {
  float x = 0;
  float y = 0;
};

struct Stroke {
  float width_px = 1.6F;
  float on_px = 0;  ///< of a dash; 0: solid
  float off_px = 0;
  bool closed = false;
};

enum class ShapeKind : std::uint8_t {
  fill,   ///< the inside of one ring of points, convex or not, not crossing itself
  strip,  ///< between two lines of the same number of points, one after the other
  line    ///< along the points, stroked
};

struct Shape {
  ShapeKind kind = ShapeKind::fill;
  QRgb color = 0;           ///< with alpha, not premultiplied
  std::uint32_t first = 0;  ///< in ShapeList::points
  std::uint32_t count = 0;
  Stroke stroke;  ///< of a line
};

/// Words in a drawing stand above its shapes.
struct Label {
  QString text;
  Point at;  ///< on the baseline
  float size_px = 16;
  QRgb color = 0;
  bool bold = false;
  Qt::Alignment align = Qt::AlignHCenter;  ///< left, right or centre about `at`
  QRgb halo = 0;                           ///< ground behind the letters; 0: none
};

class ShapeList {
 public:
  std::vector<Point> points;
  std::vector<Shape> shapes;
  std::vector<Label> labels;

  [[nodiscard]] bool empty() const { return shapes.empty() && labels.empty(); }
  void clear();
  /// Puts the shapes of another list on top, moved by `by`.
  void add(const ShapeList& other, Point by = {});

  void fill(std::span<const Point> ring, const QColor& color);
  /// `outer` and `inner` have the same number of points, in the same order.
  void strip(std::span<const Point> outer, std::span<const Point> inner, const QColor& color);
  void line(std::span<const Point> way, const QColor& color, const Stroke& stroke);
  void label(Label label) { labels.push_back(std::move(label)); }

  void rect(Point corner, Point size, const QColor& color);
  void rect_outline(Point corner, Point size, const QColor& color, Stroke stroke);
  void line(Point from, Point to, const QColor& color, const Stroke& stroke);
  void disc(Point middle, float radius, const QColor& color);
  void circle(Point middle, float radius, const QColor& color, Stroke stroke);

 private:
  void add_shape(ShapeKind kind, std::span<const Point> points, const QColor& color,
                 const Stroke& stroke = {});
};

inline constexpr float arc_step_degrees = 5;
inline constexpr float arc_error_px = 0.05F;

/// arc_step_degrees; of a small circle more, as far as its chords stay within arc_error_px of it.
float arc_step(float radius);

/// Points on a circle from one angle to another, both included, no further apart than that step.
/// Degrees, 0 at three o'clock, clockwise.
std::vector<Point> arc(Point middle, float radius, float from_degrees, float to_degrees,
                       float step_degrees);
/// By arc_step() of its radius.
std::vector<Point> arc(Point middle, float radius, float from_degrees, float to_degrees);

/// A line cut into its dashes; the line itself when the stroke is solid.
std::vector<std::vector<Point>> dashes(std::span<const Point> way, const Stroke& stroke);

}  // namespace kneerail::elevation
