#pragma once

// The run cut into stretches of a few posts, of which only those in view and about half a screen to
// either side are made into shapes. They are made again when the run, the scale or the colours
// change, and where something else is known of their own posts and parts; panning makes only what
// comes into view.

#include <cstdint>
#include <memory>
#include <vector>

#include "mobile/elevation/run_shapes.h"
#include "mobile/elevation/run_view.h"

namespace kneerail::elevation {

class RunChunks {
 public:
  static constexpr int posts_in_one = 4;

  struct Chunk {
    Stretch stretch;
    double from_mm = 0;
    double to_mm = 0;
    RunPiece piece;
    std::uint64_t serial = 0;  ///< another number each time it is made; 0: not made
    int chosen_post = -1;      ///< that it was made with, if it holds it
  };

  /// What is drawn and how. Chunks made for something else are dropped.
  void show(const std::shared_ptr<const RunSheet>& sheet, const RunDrawing& drawing);

  /// Makes the chunks in view; where there was none to make, one that is about to come into view.
  /// Drops those far away. True when one about to come into view is still to be made.
  bool make_for(const RunView& view);

  [[nodiscard]] const std::vector<Chunk>& chunks() const { return chunks_; }
  /// Whether any of it is in view.
  [[nodiscard]] bool in_view(const Chunk& chunk, const RunView& view) const;
  [[nodiscard]] std::uint64_t made() const { return serial_; }  ///< how many so far

 private:
  void cut();
  void make(Chunk& chunk);
  [[nodiscard]] bool is_made(const Chunk& chunk) const;
  [[nodiscard]] int chosen_in(const Chunk& chunk) const;
  [[nodiscard]] double distance_px(const Chunk& chunk, const RunView& view) const;

  std::shared_ptr<const RunSheet> sheet_;
  RunDrawing drawing_;
  std::vector<Chunk> chunks_;
  std::uint64_t serial_ = 0;
};

}  // namespace kneerail::elevation
