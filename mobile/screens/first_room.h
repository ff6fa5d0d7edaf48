#pragma once

// The window's first frame shows the top rail alone, and while it is drawn the room under it is
// made: on a slow machine that is a good part of the wait.

#include <QObject>
#include <QPointer>
#include <QQuickWindow>

namespace kneerail {

class FirstRoom : public QObject {
  Q_OBJECT

 public:
  /// Sets `begun` of the window when its first frame is on its way.
  explicit FirstRoom(QQuickWindow& window);

 signals:
  /// Once: the room is on the glass.
  void drawn();

 private:
  void make();
  void swapped();

  QPointer<QQuickWindow> window_;
  bool in_frame_ = false;  ///< the room is in the frame that is drawn; the drawing thread's own
};

}  // namespace kneerail
