#pragma once

// What the screens are measured by. Each prints its figures beside a peer of the same run.

#include <filesystem>

#include "core/base/result.h"

namespace kneerail::benchmark {

/// How often each thing is done.
struct Times {
  int starts = 9;
  int sets = 30;  ///< of five readings
  int bare_touches = 300;
  int frames = 600;  ///< of each panned run
  int parts = 100'000;
  bool idle = true;  ///< waits, to see that nothing is drawn
};

/// New process to first frame: `kneerail open` standing in the walk, beside a Qt Quick window with
/// nothing in it, in turn; and the most memory each held by then. The files are in the system's
/// cache in both.
Result<> measure_start(const std::filesystem::path& register_folder, const Times& times);

/// The peer of measure_start: shows the empty window, says so, and stays until it is ended.
int show_empty_window();

/// On the real window in the walk: touch of a digit to the first frame after it, beside a bare
/// rectangle that takes a touch; finished reading to the frame that shows it kept, with its place
/// in the register; frames drawn while nobody touches anything.
Result<> measure_walk(const std::filesystem::path& register_folder, const Times& times);

/// The walk's model on a run with so many parts, beside one of a hundredth of it, without a window:
/// opened, from part to part, a grade from touch to kept, the disk included.
Result<> measure_large(const std::filesystem::path& below, const Times& times);

/// A day prepared at the largest site: each step of a finger on the tape, beside what is done once.
Result<> measure_prepare(const std::filesystem::path& register_folder, const Times& times);

/// Frame times of a panned run of 150 and of 620 posts; and how long a touch looks for its part.
void measure_frames(int frames);

}  // namespace kneerail::benchmark
