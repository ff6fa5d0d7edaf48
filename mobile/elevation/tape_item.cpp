#include "mobile/elevation/tape_item.h"

#include <QLocale>
#include <array>
#include <cmath>

using kneerail::elevation::Point;
using kneerail::elevation::ShapeList;

namespace {

constexpr double least_gap_of_numbers_drawn = 150;
constexpr double letter_wide = 0.66;  // of a letter's size

/// Metres from number to number, so that they never crowd.
double number_step_m(double pixels_per_metre, double least_gap_px) {
  for (const double step_m : {0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0}) {
    if (step_m * pixels_per_metre >= least_gap_px) return step_m;
  }
  return 100;
}

}  // namespace

TapeItem::TapeItem(QQuickItem* parent) : DrawingItem(parent) {
  setClip(true);
}

void TapeItem::set_view(ElevationItem* view) {
  if (view == view_) return;
  if (view_ != nullptr) view_->disconnect(this);
  view_ = view;
  if (view != nullptr) {
    connect(view, &ElevationItem::viewChanged, this, &TapeItem::follow);
    connect(view, &ElevationItem::movingChanged, this, [this] {
      if (!view_->moving()) redraw();  // at rest no number is cut
    });
    follow();
  }
  redraw();
  emit viewChanged();
}

double TapeItem::scale() const {
  return view_ != nullptr ? view_->view().scale() : 1;
}

void TapeItem::follow() {
  const double off_px = (view_->centre_chainage() - made_about_mm_) * scale();
  const bool near = scale() == made_scale_ && std::abs(off_px) < width() / 2;
  if (near && view_->moving()) return update();
  made_about_mm_ = view_->centre_chainage();
  made_scale_ = scale();
  redraw();
}

QPointF TapeItem::offset() const {
  if (view_ == nullptr) return {};
  return {std::round(view_->view().x_px(made_about_mm_)), 0};
}

ShapeList TapeItem::shapes() const {
  ShapeList list;
  const auto across = static_cast<float>(width());
  const auto foot = static_cast<float>(height());
  list.rect({-2 * across, 0}, {4 * across, foot}, tokens().tape_measure());
  list.line(Point{-2 * across, foot - drawn(0.75)}, Point{2 * across, foot - drawn(0.75)},
            tokens().ink(), {.width_px = drawn(1.5)});
  if (view_ == nullptr) return list;
  const double numbers_m =
      number_step_m(scale() * 1000, drawn_px(least_gap_of_numbers_drawn) * tokens().text_scale());
  const double tick_m = numbers_m / 10;
  const double reach_m = width() * 1.25 / scale() / 1000;
  const double middle_m = made_about_mm_ / 1000;
  const auto first = static_cast<std::int64_t>(std::ceil((middle_m - reach_m) / tick_m));
  const auto last = static_cast<std::int64_t>(std::floor((middle_m + reach_m) / tick_m));
  for (std::int64_t tick = first; tick <= last; ++tick) {
    const double at_m = static_cast<double>(tick) * tick_m;
    const auto x = static_cast<float>((at_m - middle_m) * 1000 * scale());
    const bool number = tick % 10 == 0;
    const float high = drawn(number ? 20 : (tick % 5 == 0 ? 13 : 7));
    list.line(Point{x, foot}, Point{x, foot - high}, tokens().ink(),
              {.width_px = drawn(number ? 2.4 : 1.2)});
    if (!number) continue;
    const int decimals = numbers_m < 1 ? 1 : 0;
    const QString text = tr("%1 m").arg(QLocale().toString(at_m, 'f', decimals));
    const float size = static_cast<float>(tokens().small_text()) * 1.06F;
    const double from = view_->view().x_px(at_m * 1000) + static_cast<double>(drawn(5));
    const double wide = letter_wide * static_cast<double>(size) * static_cast<double>(text.size());
    const bool resting = !view_->moving();
    if (resting && from < 0 && from + wide > 0) continue;
    const bool cut = resting && from + wide > width() && from < width();
    list.label({.text = text,
                .at = {cut ? x - drawn(5) : x + drawn(5), foot - drawn(11)},
                .size_px = size,
                .color = tokens().ink().rgba(),
                .bold = true,
                .align = cut ? Qt::AlignRight : Qt::AlignLeft});
  }
  return list;
}
