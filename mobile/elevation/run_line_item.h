#pragma once

// RunLineItem: all posts of a run on one line, with a window where the elevation stands. Seen posts
// are solid, open ones hollow, skipped ones slashed, struck ones dashed; findings and boards stand
// above. A finger anywhere on it takes the elevation there.

#include <QPointer>

#include "mobile/elevation/drawing_item.h"
#include "mobile/elevation/elevation_item.h"
#include "mobile/elevation/touch_filter.h"
#include "mobile/models/run_picture.h"

class RunLineItem : public DrawingItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(RunPicture* picture READ picture WRITE set_picture NOTIFY pictureChanged)
  Q_PROPERTY(ElevationItem* view READ view WRITE set_view NOTIFY viewChanged)
  /// The post the elevation stands at, and the run's open ones.
  Q_PROPERTY(int post READ post NOTIFY spokenChanged)
  Q_PROPERTY(int open READ open NOTIFY spokenChanged)
  Q_PROPERTY(QString spokenName READ spoken_name NOTIFY spokenChanged)
  /// What the elevation shows, px along the line. RunLine.qml draws it, because it moves with every
  /// frame of a pan and the posts do not.
  Q_PROPERTY(QRectF windowRect READ window_rect NOTIFY windowMoved)
  /// A stretch of posts that is being marked, -1 for none: from here to `stretchTo`.
  Q_PROPERTY(int stretchFrom READ stretch_from WRITE set_stretch_from NOTIFY stretchChanged)
  Q_PROPERTY(int stretchTo READ stretch_to WRITE set_stretch_to NOTIFY stretchChanged)

 public:
  explicit RunLineItem(QQuickItem* parent = nullptr);

  [[nodiscard]] RunPicture* picture() const { return picture_; }
  void set_picture(RunPicture* picture);
  [[nodiscard]] ElevationItem* view() const { return view_; }
  void set_view(ElevationItem* view);
  [[nodiscard]] int post() const;
  [[nodiscard]] int open() const;
  [[nodiscard]] QString spoken_name() const;
  [[nodiscard]] QRectF window_rect() const;
  [[nodiscard]] int stretch_from() const { return stretch_from_; }
  void set_stretch_from(int post);
  [[nodiscard]] int stretch_to() const { return stretch_to_; }
  void set_stretch_to(int post);

  Q_INVOKABLE [[nodiscard]] int postAt(qreal x_px) const;
  Q_INVOKABLE [[nodiscard]] qreal xOfPost(int post) const;
  /// For a screen reader's increase and decrease, and the arrow keys: postTouched of the next one.
  Q_INVOKABLE void stepPost(int direction);

 signals:
  void pictureChanged();
  void viewChanged();
  void spokenChanged();
  void windowMoved();
  void stretchChanged();

  void draggedTo(int post);    ///< while a finger is on it
  void postTouched(int post);  ///< when it leaves

 protected:
  [[nodiscard]] kneerail::elevation::ShapeList shapes() const override;
  void touchEvent(QTouchEvent* event) override;
  void touchUngrabEvent() override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void show_sheet();
  void drag_to(double x_px);
  void let_go();
  [[nodiscard]] double x_px(double along_mm) const;
  [[nodiscard]] double along_mm(double x_px) const;
  void add_post(kneerail::elevation::ShapeList& list, std::size_t post) const;
  void add_numbers(kneerail::elevation::ShapeList& list) const;
  void add_marks(kneerail::elevation::ShapeList& list) const;
  [[nodiscard]] const kneerail::RunSheet& sheet() const;

  QPointer<RunPicture> picture_;
  std::shared_ptr<const kneerail::RunSheet> drawn_;  ///< what the line was drawn from
  QPointer<ElevationItem> view_;
  int stretch_from_ = -1;
  int stretch_to_ = -1;
  int finger_ = -1;  ///< the touch point that drags
  int dragged_post_ = -1;
};
