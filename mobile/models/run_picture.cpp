#include "mobile/models/run_picture.h"

#include <utility>

void RunPicture::show(std::shared_ptr<const kneerail::RunSheet> sheet) {
  const bool same_run = sheet->id == sheet_->id;
  sheet_ = std::move(sheet);
  // Places may be others now: who marked parts marks them again.
  std::erase_if(marked_,
                [&](int part) { return static_cast<std::size_t>(part) >= sheet_->parts.size(); });
  emit changed();
  if (!same_run) choose(-1, -1, -1);
}

void RunPicture::mark(std::vector<int> parts) {
  if (parts == marked_) return;
  marked_ = std::move(parts);
  emit markedChanged();
}

void RunPicture::choose_post(int post) {
  choose(post, -1, -1);
}

void RunPicture::choose_part(int part) {
  if (part < 0) return choose(post_, -1, -1);
  choose(sheet_->parts.at(static_cast<std::size_t>(part)).post, part, -1);
}

void RunPicture::choose_bay(int bay) {
  if (bay < 0) return choose(post_, -1, -1);
  choose(sheet_->bays.at(static_cast<std::size_t>(bay)).from, -1, bay);
}

void RunPicture::choose(int post, int part, int bay) {
  if (post == post_ && part == part_ && bay == bay_) return;
  post_ = post;
  part_ = part;
  bay_ = bay;
  emit chosenChanged();
}
