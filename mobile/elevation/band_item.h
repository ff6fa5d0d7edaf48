#pragma once

// RunBandItem: a whole run as one small elevation, all runs at the same pixels for a metre, so that
// their lengths can be compared. Rust stands where the last grade was 3 or more.

#include <QPointer>
#include <vector>

#include "mobile/elevation/drawing_item.h"
#include "mobile/elevation/touch_filter.h"
#include "mobile/models/run_picture.h"

class RunBandItem : public DrawingItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(RunPicture* picture READ picture WRITE set_picture NOTIFY pictureChanged)
  Q_PROPERTY(qreal pixelsPerMetre READ pixels_per_metre WRITE set_pixels_per_metre NOTIFY
                 pixelsPerMetreChanged)
  Q_PROPERTY(QString spokenName READ spoken_name NOTIFY pictureChanged)

 public:
  explicit RunBandItem(QQuickItem* parent = nullptr);

  [[nodiscard]] RunPicture* picture() const { return picture_; }
  void set_picture(RunPicture* picture);
  [[nodiscard]] qreal pixels_per_metre() const { return pixels_per_metre_; }
  void set_pixels_per_metre(qreal pixels);
  [[nodiscard]] QString spoken_name() const;

 signals:
  void pictureChanged();
  void pixelsPerMetreChanged();
  void chosen();

 protected:
  [[nodiscard]] kneerail::elevation::ShapeList shapes() const override;
  void tokens_changed(bool sizes) override;
  void touchEvent(QTouchEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void resize();
  void act(const std::vector<kneerail::elevation::Gesture>& gestures);
  [[nodiscard]] float x(std::int64_t along_mm) const;
  [[nodiscard]] float y(std::int64_t up_mm) const;
  void add_rails(kneerail::elevation::ShapeList& list) const;
  void add_marks(kneerail::elevation::ShapeList& list) const;
  void add_chosen(kneerail::elevation::ShapeList& list) const;
  /// A chalk ring and how many findings it stands for, px along the run.
  struct Ring {
    float from = 0;
    float to = 0;
    int count = 0;
    kneerail::Uuid first;
    [[nodiscard]] float middle() const { return (from + to) / 2; }
  };
  [[nodiscard]] std::vector<Ring> rings() const;
  void add_count(kneerail::elevation::ShapeList& list, const Ring& ring,
                 const std::vector<float>& boards) const;
  [[nodiscard]] float x_of_post(int post) const;
  [[nodiscard]] const kneerail::RunSheet& sheet() const;

  QPointer<RunPicture> picture_;
  qreal pixels_per_metre_ = 2.2;
  kneerail::elevation::TouchFilter filter_;
};
