#include "mobile/screens/trend_painter.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

namespace kneerail {

namespace {

class TrendPainter {
  Q_DECLARE_TR_FUNCTIONS(TrendPainter)

 public:
  TrendPainter(QPainter& painter, const QRectF& area, const TrendPicture& picture,
               const TrendLook& look)
      : painter_(painter), picture_(picture), look_(look), metrics_(look.text) {
    const double left = metrics_.horizontalAdvance(QStringLiteral("0000")) + u(12);
    plot_ = area.adjusted(left, u(8), -u(8), -metrics_.height() - u(18));
  }

  void paint() {
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.fillRect(plot_, look_.palette.sheet);
    paint_grid();
    painter_.save();
    painter_.setClipRect(plot_.adjusted(0, -u(4), 0, u(8)));
    for (const auto& drift : picture_.drifts) paint_drift(drift);
    for (const auto& life : picture_.lives) paint_band(life);
    for (const auto& limit : picture_.limits) paint_limit_line(limit);
    for (const auto& life : picture_.lives) paint_path(life);
    for (const auto& dots : picture_.dots) paint_dots(dots);
    for (const auto& limit : picture_.limits) paint_crossing(limit);
    paint_now();
    painter_.restore();
    for (const auto& life : picture_.lives) paint_begun(life);
    for (const auto& limit : picture_.limits) paint_limit_label(limit);
  }

 private:
  [[nodiscard]] double u(double drawn) const { return drawn * look_.unit; }
  [[nodiscard]] double x(double year) const {
    return plot_.left() + (year - picture_.from) / (picture_.to - picture_.from) * plot_.width();
  }
  [[nodiscard]] double y(double um) const {
    return plot_.bottom() - um / picture_.top * plot_.height();
  }
  [[nodiscard]] QPointF at(double year, double um) const { return {x(year), y(um)}; }

  void text(const QPointF& baseline, const QString& words, const QFont& font, const QColor& ink) {
    painter_.setFont(font);
    painter_.setPen(ink);
    painter_.drawText(baseline, words);
  }

  void paint_grid() {
    const double step = picture_.top > 200 ? 40 : 20;
    for (double um = 0; um <= picture_.top + 0.1; um += step) {
      painter_.setPen(um == 0 ? QPen(look_.palette.ink, u(2.4)) : QPen(look_.palette.hair, u(1)));
      painter_.drawLine(QPointF(plot_.left(), y(um)), QPointF(plot_.right(), y(um)));
      const QString words = QString::number(um, 'f', 0);
      text({plot_.left() - u(10) - metrics_.horizontalAdvance(words),
            y(um) + metrics_.capHeight() / 2},
           words, look_.text, look_.palette.ink2);
    }
    const double span = picture_.to - picture_.from;
    const int every = span > 30 ? 5 : span > 12 ? 2 : 1;
    const int first = static_cast<int>(std::ceil(picture_.from / every)) * every;
    double taken = plot_.left();
    for (int year = first; year <= picture_.to; year += every) {
      painter_.setPen(QPen(look_.palette.ink, u(1.5)));
      painter_.drawLine(QPointF(x(year), plot_.bottom()), QPointF(x(year), plot_.bottom() + u(8)));
      const QString words = QString::number(year);
      const double wide = metrics_.horizontalAdvance(words);
      const double left = std::clamp(x(year) - wide / 2, plot_.left(), plot_.right() - wide);
      if (left < taken) continue;  // the last one, pushed in from the edge
      taken = left + wide + u(6);
      text({left, plot_.bottom() + u(12) + metrics_.ascent()}, words, look_.text,
           look_.palette.ink2);
    }
  }

  void paint_drift(const TrendPicture::Drift& drift) {
    const QRectF span(QPointF(x(drift.from), plot_.top()), QPointF(x(drift.to), plot_.bottom()));
    painter_.fillRect(span, look_.palette.shade);
    painter_.save();
    painter_.setClipRect(span, Qt::IntersectClip);
    painter_.setPen(QPen(look_.palette.line, u(1)));
    for (double c = span.left() - span.height(); c < span.right(); c += u(14))
      painter_.drawLine(QPointF(c, span.bottom()), QPointF(c + span.height(), span.top()));
    painter_.restore();
    const double wide = u(150);
    const bool left = span.left() - plot_.left() > wide;
    QRectF box(left ? span.left() - wide - u(8) : span.right() + u(8), plot_.top() + u(6), wide,
               metrics_.height() * 3.2);
    // Beside the words of a work that stand in the same place.
    for (const auto& life : picture_.lives)
      if (is_marked(life) && box.intersects(begun_box(life)))
        box.moveLeft(begun_box(life).right() + u(16));
    painter_.setFont(look_.text);
    painter_.setPen(look_.palette.ink2);
    painter_.drawText(box, Qt::TextWordWrap | (left ? Qt::AlignRight : Qt::AlignLeft), drift.words);
  }

  void paint_band(const TrendPicture::Life& life) {
    if (life.path.size() < 2) return;
    QPolygonF band;
    for (const auto& point : life.path) band << at(point.year, point.high);
    for (auto i = life.path.size(); i-- > 0;) band << at(life.path[i].year, life.path[i].low);
    QColor fill = life.current ? look_.palette.chalk : look_.palette.band;
    fill.setAlphaF(0.16F);
    painter_.setPen(look_.stale ? QPen(fill, u(1)) : QPen(Qt::NoPen));
    painter_.setBrush(look_.stale ? QBrush(Qt::NoBrush) : QBrush(fill));
    painter_.drawPolygon(band);
  }

  /// Solid as far as it was read, dashed ahead.
  void paint_path(const TrendPicture::Life& life) {
    QPolygonF past;
    QPolygonF ahead;
    for (const auto& point : life.path) {
      if (point.year <= picture_.now)
        past << at(point.year, point.middle);
      else if (point.middle > 0)
        ahead << at(point.year, point.middle);
    }
    if (!past.isEmpty() && !ahead.isEmpty()) ahead.prepend(past.last());
    const QColor ink = life.current ? look_.palette.chalk : look_.palette.ghost;
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(QPen(ink, u(2.6)));
    painter_.drawPolyline(past);
    QPen dashed(ink, u(3));
    dashed.setDashPattern({3, 2.2});
    painter_.setPen(dashed);
    painter_.drawPolyline(ahead);
  }

  void paint_dots(const TrendPicture::Dots& dots) {
    const QColor ink = dots.current ? look_.palette.chalk : look_.palette.ghost;
    const double radius = u(4.6);
    painter_.setPen(dots.put_right ? QPen(ink, u(2)) : QPen(Qt::NoPen));
    painter_.setBrush(dots.put_right ? QBrush(Qt::NoBrush) : QBrush(ink));
    for (qsizetype i = 0; i < dots.values.size(); ++i) {
      // Replicates of one day stand a little apart, so that none hides another.
      const double aside = (static_cast<double>(i % 3) - 1) * radius * 0.7;
      painter_.drawEllipse(at(dots.year, dots.values[i]) + QPointF(aside, 0), radius, radius);
    }
  }

  void paint_limit_line(const TrendPicture::Limit& limit) {
    const double line = y(limit.value);
    if (!limit.last || limit.value > 0) {
      QPen dashed(look_.palette.rust, u(2.4));
      dashed.setDashPattern({5, 2.6});
      painter_.setPen(dashed);
      painter_.drawLine(QPointF(plot_.left(), line), QPointF(plot_.right(), line));
    }
  }

  /// Last, on a ground of its own, so that nothing runs through the words.
  void paint_limit_label(const TrendPicture::Limit& limit) {
    const QFontMetricsF bold(look_.bold);
    const QColor ink = limit.last ? look_.palette.ink : look_.palette.rust;
    const QPointF place(plot_.left() + u(8), y(limit.value) - u(8));
    const QRectF words(place.x(), place.y() - bold.capHeight(), bold.horizontalAdvance(limit.label),
                       bold.capHeight());
    painter_.fillRect(words.adjusted(-u(4), -u(5), u(4), u(5)), look_.palette.sheet);
    text(place, limit.label, look_.bold, ink);
  }

  /// A bar for 8 in 10, a tick where it is as likely before as after.
  void paint_crossing(const TrendPicture::Limit& limit) {
    if (!limit.crossed) return;
    const double right = std::isfinite(limit.high) ? x(limit.high) : plot_.right();
    const QRectF bar(QPointF(x(limit.low), y(limit.value) - u(4.5)),
                     QPointF(right, y(limit.value) + u(4.5)));
    const QColor ink = limit.last ? look_.palette.grade[4] : look_.palette.rust;
    painter_.setPen(look_.stale ? QPen(ink, u(1.6)) : QPen(Qt::NoPen));
    painter_.setBrush(look_.stale ? QBrush(Qt::NoBrush) : QBrush(ink));
    painter_.drawRect(bar);
    if (!std::isfinite(limit.middle)) return;
    const QPointF top(x(limit.middle), y(limit.value) - u(13));
    const QPointF foot(x(limit.middle), y(limit.value) + u(13));
    painter_.setPen(QPen(look_.palette.sheet, u(5)));
    painter_.drawLine(top, foot);
    painter_.setPen(QPen(look_.palette.ink, u(3)));
    painter_.drawLine(top, foot);
  }

  void paint_now() {
    painter_.setPen(QPen(look_.palette.ink, u(1.6)));
    const double now = x(picture_.now);
    painter_.drawLine(QPointF(now, plot_.top() + u(60)), QPointF(now, plot_.bottom()));
    text({now + u(8), plot_.top() + u(60) + metrics_.ascent()}, tr("now"), look_.text,
         look_.palette.ink2);
  }

  [[nodiscard]] bool is_marked(const TrendPicture::Life& life) const {
    return !life.begun.isEmpty() && life.start >= picture_.from && life.start <= picture_.to;
  }

  /// The two lines of words beside the mark where history starts again.
  [[nodiscard]] QRectF begun_box(const TrendPicture::Life& life) const {
    const double wide = std::max(QFontMetricsF(look_.bold).horizontalAdvance(life.begun),
                                 metrics_.horizontalAdvance(starts_again()));
    const double start = x(life.start);
    const bool left = start + wide + u(20) > plot_.right();
    return {left ? start - wide - u(16) : start + u(16), plot_.top() + u(6), wide,
            metrics_.height() * 2 + u(4)};
  }

  static QString starts_again() { return tr("history starts again"); }

  /// Where history starts again.
  void paint_begun(const TrendPicture::Life& life) {
    if (!is_marked(life)) return;
    const double start = x(life.start);
    QPen dotted(look_.palette.ink, u(2));
    dotted.setDashPattern({1, 2});
    painter_.setPen(dotted);
    painter_.drawLine(QPointF(start, plot_.top() + u(24)), QPointF(start, plot_.bottom()));
    const double half = u(8);
    const QPolygonF marker({{start - half, plot_.top() + u(10)},
                            {start + half, plot_.top() + u(10)},
                            {start + half, plot_.top() + u(20)},
                            {start, plot_.top() + u(29)},
                            {start - half, plot_.top() + u(20)}});
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(look_.palette.ink);
    painter_.drawPolygon(marker);
    const QRectF box = begun_box(life);
    text({box.left(), box.top() + metrics_.ascent()}, life.begun, look_.bold, look_.palette.ink);
    text({box.left(), box.bottom() - metrics_.descent()}, starts_again(), look_.text,
         look_.palette.ink2);
  }

  QPainter& painter_;
  const TrendPicture& picture_;
  const TrendLook& look_;
  QFontMetricsF metrics_;
  QRectF plot_;
};

}  // namespace

void paint_trend(QPainter& painter, const QRectF& area, const TrendPicture& picture,
                 const TrendLook& look) {
  if (picture.to <= picture.from || area.width() <= 0 || area.height() <= 0) return;
  TrendPainter(painter, area, picture, look).paint();
}

}  // namespace kneerail
