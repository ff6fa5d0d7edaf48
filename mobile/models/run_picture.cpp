#include "mobile/models/run_picture.h"

#include <algorithm>
#include <utility>

namespace {

/// -1: not among them.
template <class Things>
int place_of(const Things& things, const kneerail::Uuid& id) {
  const auto at =
      std::find_if(things.begin(), things.end(), [&](const auto& thing) { return thing.id == id; });
  return at == things.end() ? -1 : static_cast<int>(at - things.begin());
}

}  // namespace

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

bool RunPicture::choose(const kneerail::Uuid& thing) {
  if (const int part = place_of(sheet_->parts, thing); part >= 0)
    choose_part(part);
  else if (const int bay = place_of(sheet_->bays, thing); bay >= 0)
    choose_bay(bay);
  else if (const int post = place_of(sheet_->posts, thing); post >= 0)
    choose_post(post);
  else
    return false;
  return true;
}

void RunPicture::choose(int post, int part, int bay) {
  if (post == post_ && part == part_ && bay == bay_) return;
  post_ = post;
  part_ = part;
  bay_ = bay;
  emit chosenChanged();
}
