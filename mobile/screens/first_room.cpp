#include "mobile/screens/first_room.h"

namespace kneerail {

FirstRoom::FirstRoom(QQuickWindow& window) : window_(&window) {
  connect(&window, &QQuickWindow::afterSynchronizing, this, &FirstRoom::make,
          static_cast<Qt::ConnectionType>(Qt::QueuedConnection | Qt::SingleShotConnection));
  window.update();  // its first frame may have been drawn already
}

void FirstRoom::make() {
  if (window_ == nullptr) return;
  window_->setProperty("begun", true);
  // The rail's own frame may still be on its way: the one that counts is taken from here on.
  connect(
      window_, &QQuickWindow::afterSynchronizing, this, [this] { in_frame_ = true; },
      static_cast<Qt::ConnectionType>(Qt::DirectConnection | Qt::SingleShotConnection));
  connect(window_, &QQuickWindow::frameSwapped, this, &FirstRoom::swapped, Qt::DirectConnection);
  window_->update();
}

void FirstRoom::swapped() {
  if (!in_frame_) return;
  disconnect(window_, &QQuickWindow::frameSwapped, this, &FirstRoom::swapped);
  QMetaObject::invokeMethod(this, &FirstRoom::drawn, Qt::QueuedConnection);
}

}  // namespace kneerail
