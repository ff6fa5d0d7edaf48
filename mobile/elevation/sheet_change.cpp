#include "mobile/elevation/sheet_change.h"

#include <algorithm>
#include <tuple>

namespace kneerail::elevation {

namespace {

template <class Thing, class Place>
bool alike(const std::vector<Thing>& before, const std::vector<Thing>& after, Place place) {
  return std::equal(
      before.begin(), before.end(), after.begin(), after.end(),
      [&place](const Thing& one, const Thing& other) { return place(one) == place(other); });
}

}  // namespace

bool stand_alike(const RunSheet& before, const RunSheet& after) {
  const auto post = [](const SheetPost& at) {
    return std::tie(at.id, at.chainage_mm, at.height_mm, at.first_part, at.parts);
  };
  const auto bay = [](const SheetBay& at) { return std::tie(at.id, at.from, at.to, at.kind); };
  const auto part = [](const SheetPart& at) {
    return std::tie(at.id, at.post, at.bay, at.role, at.does, at.finish, at.welded, at.along_mm,
                    at.up_mm, at.diameter_tenth_mm, at.screws);
  };
  return before.id == after.id && before.height_mm == after.height_mm &&
         alike(before.posts, after.posts, post) && alike(before.bays, after.bays, bay) &&
         alike(before.parts, after.parts, part);
}

bool marked_alike(const RunSheet& before, const RunSheet& after) {
  const auto bay = [](const SheetBay& at) { return std::tie(at.struck, at.closed_off); };
  return before.findings == after.findings && alike(before.bays, after.bays, bay);
}

bool drawn_alike(const RunSheet& before, const RunSheet& after, const Stretch& stretch) {
  const auto end =
      std::min(static_cast<std::size_t>(stretch.first_post + stretch.posts), before.posts.size());
  for (auto post = static_cast<std::size_t>(stretch.first_post); post < end; ++post) {
    const SheetPost& at = before.posts[post];
    if (at != after.posts[post]) return false;
    const auto first = static_cast<std::ptrdiff_t>(at.first_part);
    if (!std::equal(before.parts.begin() + first, before.parts.begin() + first + at.parts,
                    after.parts.begin() + first))
      return false;
  }
  return true;
}

bool seen_alike(const RunSheet& before, const RunSheet& after) {
  return alike(before.posts, after.posts,
               [](const SheetPost& at) { return std::tie(at.state, at.label); });
}

}  // namespace kneerail::elevation
