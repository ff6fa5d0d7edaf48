#include "mobile/screens/first_room.h"

namespace kneerail {

FirstRoom::FirstRoom(QQuickWindow& window) {
  // A frame that was drawn already counts no more: the next is asked for.
  connect(&window, &QQuickWindow::frameSwapped, this, &FirstRoom::drawn,
          static_cast<Qt::ConnectionType>(Qt::QueuedConnection | Qt::SingleShotConnection));
  window.update();
}

}  // namespace kneerail
