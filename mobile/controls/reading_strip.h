#pragma once

// Two visits' readings of one spot on one scale: last visit's dots hollow, today's filled, both
// means as lines, the limit with a pointer. It works out means and scale itself; numbers are in the
// unit that is shown.

#include <QtQml/qqmlregistration.h>
#include <QColor>
#include <QFont>
#include <QList>

#include "mobile/controls/painted_item.h"

class ReadingStrip : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QList<qreal> today MEMBER today_ NOTIFY readingsChanged)
  Q_PROPERTY(QList<qreal> last MEMBER last_ NOTIFY readingsChanged)
  Q_PROPERTY(qreal limit MEMBER limit_ NOTIFY readingsChanged)      ///< 0: none is set
  Q_PROPERTY(qreal scaleEnd READ scale_end NOTIFY readingsChanged)  ///< end of the scale
  Q_PROPERTY(qreal drop MEMBER drop_ NOTIFY lookChanged)            ///< 0..1, the newest dot falls
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY lookChanged)
  Q_PROPERTY(QColor ghost MEMBER ghost_ NOTIFY lookChanged)
  Q_PROPERTY(QColor chalk MEMBER chalk_ NOTIFY lookChanged)
  Q_PROPERTY(QColor rust MEMBER rust_ NOTIFY lookChanged)
  Q_PROPERTY(QFont font MEMBER font_ NOTIFY lookChanged)
  Q_PROPERTY(qreal dotRadius MEMBER dot_radius_ NOTIFY lookChanged)

 public:
  explicit ReadingStrip(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

  /// End of the scale: the next multiple of a round step over everything shown, at least 40.
  [[nodiscard]] qreal scale_end() const;

 signals:
  void readingsChanged();
  void lookChanged();

 private:
  [[nodiscard]] qreal across(qreal value) const;
  [[nodiscard]] qreal axis() const;
  void paint_axis(QPainter& painter) const;
  void paint_dots(QPainter& painter, const QList<qreal>& readings, bool filled) const;
  void paint_mean(QPainter& painter, const QList<qreal>& readings, const QPen& pen) const;
  void paint_limit(QPainter& painter) const;

  QList<qreal> today_;
  QList<qreal> last_;
  qreal limit_ = 0;
  qreal drop_ = 1;
  QColor ink_ = Qt::black;
  QColor ghost_ = Qt::gray;
  QColor chalk_ = Qt::blue;
  QColor rust_ = Qt::red;
  QFont font_;
  qreal dot_radius_ = 5.5;
};
