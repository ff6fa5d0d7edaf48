#pragma once

// Says when a window's first room is on the glass.

#include <QObject>
#include <QQuickWindow>

namespace kneerail {

class FirstRoom : public QObject {
  Q_OBJECT

 public:
  explicit FirstRoom(QQuickWindow& window);

 signals:
  /// Once.
  void drawn();
};

}  // namespace kneerail
