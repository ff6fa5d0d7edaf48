// What ElevationView hands to the scene graph.

#include <array>

#include "mobile/elevation/elevation_item.h"
#include "mobile/elevation/sign_shapes.h"
#include "mobile/elevation/water_shapes.h"

namespace elevation = kneerail::elevation;
using elevation::Point;
using elevation::ShapeList;

namespace {

constexpr double arm_drawn = 16;
constexpr double long_arm_drawn = 24;  // of a bay or a post
constexpr double stroke_drawn = 4.5;
constexpr double mark_up_drawn = 15;  // over the middle of the part
constexpr double mark_drawn = 15;

}  // namespace

QSGNode* ElevationItem::updatePaintNode(QSGNode* old, UpdatePaintNodeData* /*data*/) {
  ++paints_;
  bool more = false;
  QSGNode* node = scene_.update(old, *window(), wanted(), more);
  if (more) QMetaObject::invokeMethod(this, &QQuickItem::update, Qt::QueuedConnection);
  return node;
}

elevation::SceneWanted ElevationItem::wanted() const {
  elevation::SceneWanted wanted;
  wanted.sheet = sheet_;
  wanted.view = view_;
  wanted.drawing.pixels_per_mm = view_.pixels_per_mm;
  // While a pinch lasts the shapes of the last step are stretched; they are made again when it
  // settles.
  wanted.drawing.denominator = drawn_denominator_;
  wanted.drawing.chosen_post = picture_ != nullptr ? picture_->post() : -1;
  wanted.drawing.tags = tagged_;
  wanted.drawing.text_scale = tokens().place_text_scale();
  wanted.drawing.theme =
      tokens().dark() ? kneerail::theme::Theme::dark : kneerail::theme::Theme::light;
  wanted.drawing.more_contrast = tokens().more_contrast();
  wanted.family = tokens().text_family();
  if (!rings_.rings.empty())
    wanted.over = elevation::filling_rings(*sheet_, rings_.rings, wanted.drawing, view_,
                                           ring_fill_.currentValue().toFloat());
  wanted.over.add(marked_shapes());
  wanted.over.add(bracket_shapes());
  if (lens_) {
    wanted.lens_view = lens_->view;
    wanted.lens_rect = lens_->rect;
  }
  return wanted;
}

ShapeList ElevationItem::bracket_shapes() const {
  ShapeList list;
  if (!brackets_) return list;
  const QRectF rect = chosen_rect();
  const auto arm =
      static_cast<float>(drawn_px(brackets_->half_up_mm > 0 ? long_arm_drawn : arm_drawn));
  const elevation::Stroke stroke{.width_px = static_cast<float>(drawn_px(stroke_drawn))};
  const auto left = static_cast<float>(rect.left());
  const auto right = static_cast<float>(rect.right());
  const auto top = static_cast<float>(rect.top());
  const auto foot = static_cast<float>(rect.bottom());
  for (const auto& [x, y] : {std::pair{left, top}, {right, top}, {left, foot}, {right, foot}}) {
    const float inward = x == left ? arm : -arm;
    const float down = y == top ? arm : -arm;
    list.line(std::array{Point{x + inward, y}, Point{x, y}, Point{x, y + down}}, tokens().chalk(),
              stroke);
  }
  return list;
}

/// Over each part that was chosen to be measured.
ShapeList ElevationItem::marked_shapes() const {
  ShapeList list;
  if (picture_ == nullptr) return list;
  const double beyond_mm = drawn_px(arm_drawn) / view_.scale();
  for (const int place : picture_->marked()) {
    if (static_cast<std::size_t>(place) >= sheet_->parts.size()) continue;
    const auto& part = sheet_->parts[static_cast<std::size_t>(place)];
    const auto along_mm = static_cast<double>(part.along_mm);
    if (along_mm < view_.left_mm() - beyond_mm || along_mm > view_.right_mm() + beyond_mm) continue;
    const Point foot{
        static_cast<float>(view_.x_px(along_mm)),
        static_cast<float>(view_.y_px(static_cast<double>(part.up_mm)) - drawn_px(mark_up_drawn))};
    elevation::add_chosen_mark(list, foot, drawn(mark_drawn), tokens().chalk(), tokens().paper());
  }
  return list;
}

QString ElevationItem::short_scale_text() const {
  const int denominator = qRound(view_.denominator);
  return (tokens().size_measured() ? tr("1:%1") : tr("about 1:%1")).arg(denominator);
}

QString ElevationItem::scale_text() const {
  const QString scale = short_scale_text();
  if (sheet_->looked_at.empty()) return scale;
  return tr("seen %1 · %2").arg(QString::fromStdString(sheet_->looked_at), scale);
}

QString ElevationItem::water_words() const {
  QStringList words;
  for (const kneerail::SheetWaterMark& mark : sheet_->water) words << elevation::spoken_water(mark);
  return words.join(QStringLiteral("; "));
}
