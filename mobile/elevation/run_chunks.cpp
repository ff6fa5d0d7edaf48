#include "mobile/elevation/run_chunks.h"

#include <algorithm>
#include <utility>

#include "mobile/elevation/sheet_change.h"

namespace kneerail::elevation {

namespace {

constexpr double overhang_mm_on_glass = 20;  // tags, rings and letters reach beyond their posts

}  // namespace

void RunChunks::show(const std::shared_ptr<const RunSheet>& sheet, const RunDrawing& drawing) {
  const bool other_sheet = sheet != sheet_;
  RunDrawing same_choice = drawing;
  same_choice.chosen_post = drawing_.chosen_post;
  const bool other_drawing = !(same_choice == drawing_);
  const auto before = std::exchange(sheet_, sheet);
  drawing_ = drawing;
  if (other_sheet && !(before && stand_alike(*before, *sheet_))) return cut();
  const bool all = other_drawing || (other_sheet && !marked_alike(*before, *sheet_));
  for (Chunk& chunk : chunks_)
    if (all || (other_sheet && chunk.serial != 0 && !drawn_alike(*before, *sheet_, chunk.stretch)))
      chunk.serial = 0;
}

void RunChunks::cut() {
  chunks_.clear();
  const int posts = static_cast<int>(sheet_->posts.size());
  for (int first = 0; first < posts; first += posts_in_one) {
    Chunk chunk;
    chunk.stretch = {first, std::min(posts_in_one, posts - first), 0};
    const auto along = [&](int post) {
      const int inside = std::min(post, posts - 1);
      return static_cast<double>(sheet_->posts[static_cast<std::size_t>(inside)].chainage_mm);
    };
    chunk.stretch.origin_mm = chunk.from_mm = chunk.to_mm = along(first);
    for (int post = first; post <= first + chunk.stretch.posts; ++post) {
      chunk.from_mm = std::min(chunk.from_mm, along(post));
      chunk.to_mm = std::max(chunk.to_mm, along(post));
    }
    chunks_.push_back(std::move(chunk));
  }
}

int RunChunks::chosen_in(const Chunk& chunk) const {
  const int after = drawing_.chosen_post - chunk.stretch.first_post;
  return after >= 0 && after < chunk.stretch.posts ? drawing_.chosen_post : -1;
}

bool RunChunks::is_made(const Chunk& chunk) const {
  return chunk.serial != 0 && chunk.chosen_post == chosen_in(chunk);
}

void RunChunks::make(Chunk& chunk) {
  chunk.piece = run_shapes(*sheet_, chunk.stretch, drawing_);
  chunk.chosen_post = chosen_in(chunk);
  chunk.serial = ++serial_;
}

double RunChunks::distance_px(const Chunk& chunk, const RunView& view) const {
  const double overhang_px = overhang_mm_on_glass * view.pixels_per_mm;
  const double left_px = view.x_px(chunk.from_mm) - overhang_px;
  const double right_px = view.x_px(chunk.to_mm) + overhang_px;
  return std::max({left_px - view.width_px, -right_px, 0.0});
}

bool RunChunks::in_view(const Chunk& chunk, const RunView& view) const {
  return chunk.serial != 0 && distance_px(chunk, view) <= 0;
}

bool RunChunks::make_for(const RunView& view) {
  Chunk* coming = nullptr;
  int still_coming = 0;
  bool waited_for = false;
  for (Chunk& chunk : chunks_) {
    const double off_px = distance_px(chunk, view);
    if (off_px <= 0) {
      if (is_made(chunk)) continue;
      make(chunk);
      waited_for = true;
    } else if (off_px <= view.width_px / 2) {
      if (!is_made(chunk) && ++still_coming == 1) coming = &chunk;
    } else if (off_px > 2 * view.width_px && chunk.serial != 0) {
      chunk.piece = {};
      chunk.serial = 0;
    }
  }
  if (coming == nullptr || waited_for) return still_coming > 0;
  make(*coming);
  return still_coming > 1;
}

}  // namespace kneerail::elevation
