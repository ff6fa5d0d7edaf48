#include "tests/mobile/benchmark/panning.h"

#include <QCoreApplication>
#include <QEventLoop>
#include <QQuickWindow>
#include <QSGRendererInterface>
#include <algorithm>
#include <atomic>
#include <chrono>
#include <iostream>
#include <memory>

#include "core/base/result.h"
#include "core/base/text.h"
#include "mobile/elevation/elevation_item.h"
#include "tests/benchmark/section.h"
#include "tests/mobile/benchmark/sections.h"
#include "tests/mobile/made_run.h"

namespace kneerail::benchmark {

namespace {

using Clock = std::chrono::steady_clock;

/// Times each frame of a window on the thread that draws it, from the synchronisation with the
/// item to the end of the frame.
class FrameTimer {
 public:
  explicit FrameTimer(QQuickWindow& window) : window_(window) {
    QObject::connect(
        &window, &QQuickWindow::beforeSynchronizing, &window, [this] { from_ = Clock::now(); },
        Qt::DirectConnection);
    QObject::connect(
        &window, &QQuickWindow::afterFrameEnd, &window,
        [this] {
          last_ms_ = std::chrono::duration<double, std::milli>(Clock::now() - from_).count();
        },
        Qt::DirectConnection);
    QObject::connect(&window, &QQuickWindow::frameSwapped, &loop_, &QEventLoop::quit,
                     Qt::QueuedConnection);
  }

  double frame_ms() {
    window_.update();
    loop_.exec();
    return last_ms_;
  }

 private:
  QQuickWindow& window_;
  QEventLoop loop_;
  Clock::time_point from_;
  std::atomic<double> last_ms_ = 0;
};

}  // namespace

Panning measure_panning(const PanningRule& rule) {
  RunPicture picture;
  picture.show(std::make_shared<RunSheet>(
      tests::made_run({.posts = rule.posts, .rails = 3, .rail_spacing_mm = 450})));
  Tokens tokens;
  tokens.set_less_motion(true);
  QQuickWindow window;
  window.resize(876, 580);
  window.setColor(tokens.paper());
  ElevationItem item;
  item.use_tokens(&tokens);
  item.setParentItem(window.contentItem());
  item.setSize({876, 580});
  item.set_picture(&picture);
  item.set_scale_denominator(rule.denominator);
  window.show();
  FrameTimer timer(window);
  Panning panning;
  for (int warm = 0; warm < 10; ++warm) timer.frame_ms();
  const auto api = window.rendererInterface()->graphicsApi();
  panning.renderer = api == QSGRendererInterface::Software ? "Software" : "OpenGL";
  const double step_mm = rule.step_px / item.view().scale();
  double at_mm = 0;
  double direction = 1;
  const auto end_mm = static_cast<double>(picture.sheet()->posts.back().chainage_mm);
  for (int frame = 0; frame < rule.frames; ++frame) {
    if (at_mm + direction * step_mm > end_mm || at_mm + direction * step_mm < 0) {
      direction = -direction;
    }
    at_mm += direction * step_mm;
    item.set_centre_chainage(at_mm);
    panning.frames_ms.push_back(timer.frame_ms());
  }
  return panning;
}

double measure_picking_us(int parts) {
  const RunSheet sheet = tests::run_of_parts(parts);
  const elevation::PickIndex index(sheet);
  constexpr int touches = 10000;
  const auto length_mm = static_cast<double>(sheet.posts.back().chainage_mm);
  int found = 0;
  const auto from = Clock::now();
  for (int touch = 0; touch < touches; ++touch) {
    const double along_mm = length_mm * touch / touches;
    const double up_mm = touch % 1300;
    if (index.pick({along_mm, up_mm}, 25).what != elevation::Pick::What::nothing) ++found;
  }
  const auto to = Clock::now();
  check(found > 0, "no touch of the measure found anything");
  return std::chrono::duration<double, std::micro>(to - from).count() / touches;
}

void measure_frames(int frames) {
  for (const int posts : {150, 620}) {
    auto panning = measure_panning({.posts = posts, .frames = frames});
    std::cout << "Panning " << posts << " posts, " << panning.renderer << " renderer, " << frames
              << " frames: p50 " << fixed(share_below(panning.frames_ms, 0.5), 2) << " ms, p99 "
              << fixed(share_below(panning.frames_ms, 0.99), 2) << " ms" << std::endl;
  }
  std::cout << "A touch finds its part among 100,000 in " << fixed(measure_picking_us(100'000), 1)
            << " us" << std::endl;
}

}  // namespace kneerail::benchmark
