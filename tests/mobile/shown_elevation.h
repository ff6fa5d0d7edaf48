#pragma once

// An elevation in an offscreen window, touched by Qt's own touch events at scripted times.

#include <QQuickWindow>
#include <QSignalSpy>
#include <QTest>
#include <initializer_list>
#include <memory>

#include "mobile/elevation/elevation_item.h"
#include "tests/mobile/made_run.h"

namespace kneerail::tests {

class ShownElevation {
 public:
  explicit ShownElevation(RunSheet sheet, QSize size = {876, 580});

  void show(RunSheet sheet) { picture.show(std::make_shared<RunSheet>(std::move(sheet))); }
  /// Where a place of the run is on the glass.
  [[nodiscard]] QPoint at(double along_mm, double up_mm) const;

  void press(std::initializer_list<QPoint> fingers, std::int64_t t_ms);
  void move(std::initializer_list<QPoint> fingers, std::int64_t t_ms);
  void release(std::initializer_list<QPoint> fingers, std::int64_t t_ms);
  /// Down and up after 100 ms.
  void touch(QPoint at);
  /// A frame of the window, waited for.
  void frame();

  RunPicture picture;
  Tokens tokens;
  QQuickWindow window;
  ElevationItem* item = new ElevationItem;
  std::int64_t now_ms = 1000;

 private:
  QPointingDevice* device_;
};

}  // namespace kneerail::tests
