#pragma once

// When frames of a window reach the glass.

#include <QEventLoop>
#include <QQuickWindow>
#include <atomic>
#include <chrono>
#include <optional>

namespace kneerail::benchmark {

class FrameWatch {
 public:
  explicit FrameWatch(QQuickWindow& window);

  [[nodiscard]] int frames() const { return frames_; }
  /// ms from `since` to the end of the next frame that ends after it; none: no frame within 2 s.
  std::optional<double> next_frame_ms(std::chrono::steady_clock::time_point since);
  /// Runs the event loop for so long.
  static void wait(std::chrono::milliseconds time);
  /// Until no frame was drawn for a while: what a touch set going has ended.
  void quiet();

 private:
  QEventLoop loop_;
  std::atomic<int> frames_ = 0;
  std::atomic<std::chrono::steady_clock::time_point> last_;
};

}  // namespace kneerail::benchmark
