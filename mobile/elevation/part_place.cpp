#include "mobile/elevation/part_place.h"

#include <algorithm>
#include <cmath>
#include <optional>

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

namespace {

struct CappedEnd {
  double post_mm = 0;
  double out = 1;  ///< 1: away from it chainage rises, -1: it falls
};

/// The end of the run that a part caps; nothing for any other part.
std::optional<CappedEnd> capped(const RunSheet& sheet, const SheetPart& part) {
  if (part.does != WhatItDoes::end_cap || part.bay >= 0 || part.post < 0) return {};
  const int last = static_cast<int>(sheet.posts.size()) - 1;
  if (last < 1 || (part.post != 0 && part.post != last)) return {};
  const auto chainage_mm = [&](int post) {
    return static_cast<double>(sheet.posts[static_cast<std::size_t>(post)].chainage_mm);
  };
  const double post_mm = chainage_mm(part.post);
  const double next_mm = chainage_mm(part.post == 0 ? 1 : last - 1);
  return CappedEnd{post_mm, next_mm <= post_mm ? 1.0 : -1.0};
}

}  // namespace

double along_of(const RunSheet& sheet, const SheetPart& part) {
  const auto along_mm = static_cast<double>(part.along_mm);
  const auto end = capped(sheet, part);
  return end ? end->post_mm + end->out * std::abs(along_mm - end->post_mm) : along_mm;
}

RunPoint part_place(const RunSheet& sheet, int part, double denominator) {
  const SheetPart& at = sheet.parts.at(static_cast<std::size_t>(part));
  RunPoint place{along_of(sheet, at), static_cast<double>(at.up_mm)};
  if (stands_in_ground(sheet, at)) {
    place.up_mm = -in_ground_mm * denominator;
    place.along_mm += beside_post_mm * denominator;
  }
  if (const auto end = capped(sheet, at)) {
    const double out_mm =
        std::max(std::abs(place.along_mm - end->post_mm), cap_out_mm * denominator);
    place.along_mm = end->post_mm + end->out * out_mm;
  }
  return place;
}

}  // namespace kneerail::elevation
