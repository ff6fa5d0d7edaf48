#include "mobile/elevation/water_shapes.h"

#include <QCoreApplication>
#include <QLocale>
#include <array>
#include <cmath>
#include <numbers>

#include "mobile/models/forecast_words.h"

namespace kneerail::elevation {

namespace {

class Water {
  Q_DECLARE_TR_FUNCTIONS(Water)
};

QString words(const SheetWaterMark& mark) {
  const QString day = whole_day(mark.day);
  return mark.what == EventKind::ice ? Water::tr("ice mark %1").arg(day)
                                     : Water::tr("flood mark %1").arg(day);
}

}  // namespace

void add_water_line(ShapeList& list, const RunPen& pen, const WaterReach& reach, float y) {
  const double dash = pen.px(9);
  const double period = pen.px(15);
  const double wave = pen.px(48);
  const double height = pen.px(3);
  const Stroke stroke{.width_px = pen.px(1.6)};
  const double from = reach.origin_px + reach.left;
  const double to = reach.origin_px + reach.right;
  for (double start = std::ceil(from / period) * period; start < to; start += period) {
    std::array<Point, 4> way;
    for (std::size_t i = 0; i < way.size(); ++i) {
      const double x = start + dash * static_cast<double>(i) / (way.size() - 1);
      const double up = height * std::sin(2 * std::numbers::pi * x / wave);
      way[i] = {static_cast<float>(x - reach.origin_px), y - static_cast<float>(up)};
    }
    list.line(way, pen.ink2(), stroke);
  }
}

void add_water_words(ShapeList& list, const RunPen& pen, const SheetWaterMark& mark, Point at) {
  // Over the line only where the ground is near under it.
  const float below = at.y < -pen.px(26) || at.y > 0 ? pen.px(22) : -pen.px(9);
  list.label({words(mark),
              {at.x, at.y + below},
              pen.text_px(16),
              pen.ink2().rgba(),
              false,
              Qt::AlignRight,
              pen.color().paper.rgba()});
}

QString spoken_water(const SheetWaterMark& mark) {
  const QString height =
      QLocale().toString(std::abs(static_cast<double>(mark.up_mm)) / 1000, 'f', 2);
  return mark.up_mm < 0 ? Water::tr("%1, %2 m under the deck").arg(words(mark), height)
                        : Water::tr("%1, %2 m above the deck").arg(words(mark), height);
}

}  // namespace kneerail::elevation
