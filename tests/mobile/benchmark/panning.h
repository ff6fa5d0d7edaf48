#pragma once

// Frame times of the elevation while it is panned. `measure_panning` shows one ElevationView of
// 876 x 580 on a made run and moves it a little further each frame; the time of a frame is taken on
// the thread that draws it, from beforeSynchronizing to afterFrameEnd.
//
// The renderer is the one the process was started with.

#include <string>
#include <vector>

namespace kneerail::benchmark {

struct PanningRule {
  int posts = 620;
  int frames = 600;
  double denominator = 25;
  int step_px = 12;  ///< of the finger, a frame
};

struct Panning {
  std::string renderer;  ///< "OpenGL" or "Software"
  std::vector<double> frames_ms;
};

Panning measure_panning(const PanningRule& rule);

/// Microseconds to find what lies under a touch on a run of so many parts: the mean of 10,000.
double measure_picking_us(int parts);

}  // namespace kneerail::benchmark
