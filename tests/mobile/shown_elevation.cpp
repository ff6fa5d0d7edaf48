#include "tests/mobile/shown_elevation.h"

#include <QCoreApplication>
#include <QEventLoop>

namespace kneerail::tests {

ShownElevation::ShownElevation(RunSheet sheet, QSize size) {
  static QPointingDevice* const glass = QTest::createTouchDevice();
  device_ = glass;
  tokens.set_less_motion(true);
  window.resize(size);
  item->setParent(&window);
  item->setParentItem(window.contentItem());
  item->use_tokens(&tokens);
  item->use_clock([this] { return now_ms; });
  item->setSize(size);
  show(std::move(sheet));
  item->set_picture(&picture);
  window.show();
  frame();
}

QPoint ShownElevation::at(double along_mm, double up_mm) const {
  return {qRound(item->view().x_px(along_mm)), qRound(item->view().y_px(up_mm))};
}

void ShownElevation::press(std::initializer_list<QPoint> fingers, std::int64_t t_ms) {
  now_ms = t_ms;
  auto event = QTest::touchEvent(&window, device_);
  int id = 0;
  for (const QPoint& finger : fingers) event.press(id++, finger, &window);
}

void ShownElevation::move(std::initializer_list<QPoint> fingers, std::int64_t t_ms) {
  {
    auto event = QTest::touchEvent(&window, device_);
    int id = 0;
    for (const QPoint& finger : fingers) event.move(id++, finger, &window);
  }
  now_ms = t_ms;
  frame();  // moves are handed on once a frame
}

void ShownElevation::release(std::initializer_list<QPoint> fingers, std::int64_t t_ms) {
  now_ms = t_ms;
  auto event = QTest::touchEvent(&window, device_);
  int id = 0;
  for (const QPoint& finger : fingers) event.release(id++, finger, &window);
}

void ShownElevation::touch(QPoint at) {
  press({at}, now_ms + 1000);
  release({at}, now_ms + 100);
}

void ShownElevation::frame() {
  QEventLoop loop;
  QObject::connect(&window, &QQuickWindow::frameSwapped, &loop, &QEventLoop::quit,
                   Qt::QueuedConnection);
  window.update();
  loop.exec();
}

}  // namespace kneerail::tests
