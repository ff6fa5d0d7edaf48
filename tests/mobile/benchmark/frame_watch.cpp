#include "tests/mobile/benchmark/frame_watch.h"

#include <QTimer>

namespace kneerail::benchmark {

using Steady = std::chrono::steady_clock;
using namespace std::chrono_literals;

FrameWatch::FrameWatch(QQuickWindow& window) {
  // On the thread that draws, so that the time is that of the frame and not of its news.
  QObject::connect(
      &window, &QQuickWindow::frameSwapped, &window,
      [this] {
        last_ = Steady::now();
        ++frames_;
      },
      Qt::DirectConnection);
  QObject::connect(&window, &QQuickWindow::frameSwapped, &loop_, &QEventLoop::quit,
                   Qt::QueuedConnection);
}

std::optional<double> FrameWatch::next_frame_ms(Steady::time_point since) {
  while (last_.load() < since) {
    if (Steady::now() - since > 2s) return std::nullopt;
    QTimer::singleShot(2s, &loop_, &QEventLoop::quit);
    loop_.exec();
  }
  return std::chrono::duration<double, std::milli>(last_.load() - since).count();
}

void FrameWatch::wait(std::chrono::milliseconds time) {
  QEventLoop loop;
  QTimer::singleShot(time, &loop, &QEventLoop::quit);
  loop.exec();
}

void FrameWatch::quiet() {
  for (int round = 0; round < 50; ++round) {
    const int before = frames_;
    wait(40ms);
    if (frames_ == before) return;
  }
}

}  // namespace kneerail::benchmark
