#include "mobile/elevation/part_place.h"

#include <algorithm>
#include <cmath>

namespace kneerail::elevation {

bool is_joint(const SheetPart& part) {
  return part.role == Role::fitting || part.role == Role::weld || part.role == Role::base_fixing ||
         part.role == Role::cut_edge;
}

bool stands_in_ground(const SheetPart& fixing, double lowest_other_joint_mm) {
  constexpr double no_room_mm = 100;
  return fixing.role == Role::base_fixing &&
         std::abs(lowest_other_joint_mm - static_cast<double>(fixing.up_mm)) < no_room_mm;
}

bool stands_in_ground(const RunSheet& sheet, const SheetPart& part) {
  if (part.role != Role::base_fixing || part.post < 0) return false;
  if (static_cast<std::size_t>(part.post) >= sheet.posts.size()) return false;
  const SheetPost& post = sheet.posts[static_cast<std::size_t>(part.post)];
  double lowest_mm = 1e9;
  const int end = std::min(post.first_part + post.parts, static_cast<int>(sheet.parts.size()));
  for (int i = std::max(post.first_part, 0); i < end; ++i) {
    const SheetPart& other = sheet.parts[static_cast<std::size_t>(i)];
    if (other.role == Role::base_fixing || !is_joint(other)) continue;
    lowest_mm = std::min(lowest_mm, static_cast<double>(other.up_mm));
  }
  return stands_in_ground(part, lowest_mm);
}

RunPoint part_place(const RunSheet& sheet, int part, double denominator) {
  const SheetPart& at = sheet.parts.at(static_cast<std::size_t>(part));
  RunPoint place{static_cast<double>(at.along_mm), static_cast<double>(at.up_mm)};
  if (stands_in_ground(sheet, at)) place.up_mm = -in_ground_mm * denominator;
  return place;
}

}  // namespace kneerail::elevation
