#pragma once

// Frame times of the elevation while it is panned. `measure_panning` shows one ElevationView of
// 876 x 580 on a made run and moves it a little further each frame; the time of a frame is taken on
// the thread that draws it, from beforeSynchronizing to afterFrameEnd.
//
// From a shell, with the OpenGL renderer on a machine without a GPU:
//   xvfb-run -a -s "-screen 0 1280x800x24" build/bin/panning --posts 620 --frames 600
// and the painter's path:
//   QT_QPA_PLATFORM=offscreen build/bin/panning --posts 620 --frames 600
// It also prints how long a touch takes to find its part among 100,000.
// From a program (a benchmark section): call measure_panning with a QGuiApplication running; the
// renderer is the one the process was started with.

#include <string>
#include <vector>

namespace kneerail::tests {

struct PanningRule {
  int posts = 620;
  int frames = 600;
  double denominator = 25;
  int step_px = 12;  ///< of the finger, a frame
  bool dark = false;
  std::string picture;  ///< where the last frame is kept as a picture; empty: nowhere
};

struct Panning {
  std::string renderer;  ///< "OpenGL" or "Software"
  std::vector<double> frames_ms;
  double quantile_ms(double share) const;
};

Panning measure_panning(const PanningRule& rule);

/// Microseconds to find what lies under a touch on a run of so many parts: the mean of 10,000.
double measure_picking_us(int parts);

}  // namespace kneerail::tests
