#pragma once

// Tape: the surveyor's tape along the top of an elevation, aligned with it. In QML:
// Tape { view: elevation; width: elevation.width; height: Tokens.tapeHeight }

#include <QPointer>

#include "mobile/elevation/drawing_item.h"
#include "mobile/elevation/elevation_item.h"

class TapeItem : public DrawingItem {
  Q_OBJECT
  QML_NAMED_ELEMENT(Tape)
  Q_PROPERTY(ElevationItem* view READ view WRITE set_view NOTIFY viewChanged)

 public:
  explicit TapeItem(QQuickItem* parent = nullptr);

  [[nodiscard]] ElevationItem* view() const { return view_; }
  void set_view(ElevationItem* view);

 signals:
  void viewChanged();

 protected:
  [[nodiscard]] kneerail::elevation::ShapeList shapes() const override;
  [[nodiscard]] QPointF offset() const override;

 private:
  void follow();
  [[nodiscard]] double scale() const;

  QPointer<ElevationItem> view_;
  double made_about_mm_ = 0;  ///< the tape is made for a width to either side of here
  double made_scale_ = 0;
};
