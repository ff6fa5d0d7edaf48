#include "mobile/elevation/picking.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace kneerail::elevation {

namespace {

bool is_along_the_bay(Role role) {
  switch (role) {
    case Role::rail_tube:
    case Role::top_rail:
    case Role::mid_rail:
    case Role::toe_board:
    case Role::infill:
    case Role::gate:
      return true;
    default:
      return false;
  }
}

template <class Row>
const Row* at(const std::vector<Row>& rows, int place) {
  if (place < 0 || static_cast<std::size_t>(place) >= rows.size()) return nullptr;
  return &rows[static_cast<std::size_t>(place)];
}

}  // namespace

PickIndex::PickIndex(const RunSheet& sheet) {
  for (std::size_t i = 0; i < sheet.posts.size(); ++i) {
    const SheetPost& post = sheet.posts[i];
    posts_.push_back({static_cast<double>(post.chainage_mm), static_cast<double>(post.height_mm),
                      static_cast<int>(i), -1});
  }
  for (std::size_t i = 0; i < sheet.parts.size(); ++i) add_part(sheet, static_cast<int>(i));
  add_fixings(sheet);
  for (std::size_t i = 0; i < sheet.bays.size(); ++i) {
    const SheetPost* from = at(sheet.posts, sheet.bays[i].from);
    const SheetPost* to = at(sheet.posts, sheet.bays[i].to);
    if (from == nullptr || to == nullptr) continue;
    const auto [low, high] = std::minmax(from->chainage_mm, to->chainage_mm);
    bays_.push_back({static_cast<double>(low), static_cast<double>(high), 0, static_cast<int>(i)});
  }
  std::sort(posts_.begin(), posts_.end(),
            [](const Post& a, const Post& b) { return a.along_mm < b.along_mm; });
  std::sort(bays_.begin(), bays_.end(),
            [](const Bay& a, const Bay& b) { return a.from_mm < b.from_mm; });
  double furthest_mm = std::numeric_limits<double>::lowest();
  for (Bay& bay : bays_) bay.furthest_mm = furthest_mm = std::max(furthest_mm, bay.to_mm);
  joints_.sort();
  tubes_.sort();
}

void PickIndex::add_part(const RunSheet& sheet, int place) {
  const SheetPart& part = *at(sheet.parts, place);
  const auto along_mm = static_cast<double>(part.along_mm);
  const auto up_mm = static_cast<double>(part.up_mm);
  if (part.role == Role::post_tube) {
    const SheetPost* post = at(sheet.posts, part.post);
    const double top_mm = post == nullptr ? 2 * up_mm : static_cast<double>(post->height_mm);
    tubes_.targets.push_back({along_mm, along_mm, 0, std::max(top_mm, 0.0), place});
  } else if (part.role == Role::welded_section) {
    add_section(sheet, place);
  } else if (is_along_the_bay(part.role)) {
    add_tube(sheet, place, up_mm);
  } else if (part.role != Role::base_fixing) {
    add_joint(sheet, place);
    if (at(posts_, part.post) == nullptr) return;
    double& lowest_mm = posts_[static_cast<std::size_t>(part.post)].lowest_mm;
    lowest_mm = std::min(lowest_mm, up_mm);
  }
}

void PickIndex::add_joint(const RunSheet& sheet, int place) {
  const SheetPart& part = *at(sheet.parts, place);
  const double along_mm = along_of(sheet, part);
  const auto up_mm = static_cast<double>(part.up_mm);
  joints_.targets.push_back({along_mm, along_mm, up_mm, up_mm, place});
}

/// The ground chooses a post's lowest base fixing. One right under a flange has no other place.
void PickIndex::add_fixings(const RunSheet& sheet) {
  for (std::size_t i = 0; i < sheet.parts.size(); ++i) {
    const SheetPart& part = sheet.parts[i];
    if (part.role != Role::base_fixing) continue;
    const int place = static_cast<int>(i);
    if (at(posts_, part.post) == nullptr) {
      add_joint(sheet, place);
      continue;
    }
    Post& post = posts_[static_cast<std::size_t>(part.post)];
    const SheetPart* lower = at(sheet.parts, post.base);
    if (lower == nullptr || part.up_mm < lower->up_mm) post.base = place;
    if (!stands_in_ground(part, post.lowest_mm)) add_joint(sheet, place);
  }
}

void PickIndex::add_tube(const RunSheet& sheet, int place, double up_mm) {
  const SheetPart& part = *at(sheet.parts, place);
  const SheetBay* bay = at(sheet.bays, part.bay);
  // A part of no bay that lies along one reaches from its post to the next.
  const SheetPost* from = at(sheet.posts, bay == nullptr ? part.post : bay->from);
  const SheetPost* to = at(sheet.posts, bay == nullptr ? part.post + 1 : bay->to);
  const auto middle_mm = static_cast<double>(part.along_mm);
  Target tube{middle_mm, middle_mm, up_mm, up_mm, place};
  if (part.post >= 0 && from != nullptr && to != nullptr) {
    const auto [low, high] = std::minmax(from->chainage_mm, to->chainage_mm);
    tube.from_mm = static_cast<double>(low);
    tube.to_mm = static_cast<double>(high);
  }
  tubes_.targets.push_back(tube);
}

/// A section has no rails of its own in the register: its rails run at the height of its welds.
void PickIndex::add_section(const RunSheet& sheet, int place) {
  const SheetPart& part = *at(sheet.parts, place);
  add_tube(sheet, place, static_cast<double>(part.up_mm));
  const SheetPost* post = at(sheet.posts, part.post);
  if (post == nullptr) return;
  for (int i = post->first_part; i < post->first_part + post->parts; ++i) {
    const SheetPart* other = at(sheet.parts, i);
    if (other == nullptr || other->role != Role::weld) continue;
    add_tube(sheet, place, static_cast<double>(other->up_mm));
  }
}

void PickIndex::Layer::sort() {
  std::sort(targets.begin(), targets.end(),
            [](const Target& a, const Target& b) { return a.from_mm < b.from_mm; });
  double furthest = std::numeric_limits<double>::lowest();
  for (const Target& target : targets) {
    furthest = std::max(furthest, target.to_mm);
    furthest_mm.push_back(furthest);
  }
}

PickIndex::Near PickIndex::nearest(const Layer& layer, RunPoint touch, double reach, int but_not) {
  Near near{-1, reach, {}};
  const auto& targets = layer.targets;
  auto next = std::upper_bound(
      targets.begin(), targets.end(), touch.along_mm + reach,
      [](double along_mm, const Target& target) { return along_mm < target.from_mm; });
  while (next != targets.begin()) {
    --next;
    const auto i = static_cast<std::size_t>(next - targets.begin());
    if (layer.furthest_mm[i] < touch.along_mm - reach) break;
    if (next->part == but_not) continue;
    const RunPoint at{std::clamp(touch.along_mm, next->from_mm, next->to_mm),
                      std::clamp(touch.up_mm, next->low_mm, next->high_mm)};
    const double distance = std::hypot(touch.along_mm - at.along_mm, touch.up_mm - at.up_mm);
    const bool nearer = distance < near.distance_mm;
    const bool same = distance == near.distance_mm && (near.part < 0 || next->part < near.part);
    if (nearer || same) near = {next->part, distance, at};
  }
  return near;
}

Pick PickIndex::joint(RunPoint touch, double denominator, Crowds crowds) const {
  const Near near = nearest(joints_, touch, reach_mm * denominator);
  if (near.part < 0) return {};
  const Pick chosen{Pick::What::part, near.part, near.at};
  if (crowds == Crowds::choose_nearest) return chosen;
  // Another joint that is close to this one, and nearly as near to the touch.
  const double nearly = near.distance_mm + 2 * sure_mm * denominator;
  const Near other = nearest(joints_, touch, nearly, near.part);
  if (other.part < 0) return chosen;
  const double apart =
      std::hypot(other.at.along_mm - near.at.along_mm, other.at.up_mm - near.at.up_mm);
  if (apart >= crowd_mm * denominator) return chosen;
  return {Pick::What::crowd,
          near.part,
          {(near.at.along_mm + other.at.along_mm) / 2, (near.at.up_mm + other.at.up_mm) / 2}};
}

const PickIndex::Post* PickIndex::nearest_post(double along_mm) const {
  if (posts_.empty()) return nullptr;
  const auto next =
      std::lower_bound(posts_.begin(), posts_.end(), along_mm,
                       [](const Post& post, double along) { return post.along_mm < along; });
  if (next == posts_.end()) return &posts_.back();
  if (next == posts_.begin()) return &*next;
  return along_mm - (next - 1)->along_mm <= next->along_mm - along_mm ? &*(next - 1) : &*next;
}

Pick PickIndex::open_air(RunPoint touch, const Post& post, double denominator) const {
  auto next = std::upper_bound(bays_.begin(), bays_.end(), touch.along_mm,
                               [](double along, const Bay& bay) { return along < bay.from_mm; });
  while (next != bays_.begin()) {
    --next;
    if (next->furthest_mm < touch.along_mm) break;
    if (next->to_mm >= touch.along_mm) return {Pick::What::bay, next->place, {}};
  }
  // Beyond the ends of the run nothing is near.
  if (std::abs(touch.along_mm - post.along_mm) > reach_mm * denominator) return {};
  return {Pick::What::post, post.place, {}};
}

Pick PickIndex::pick(RunPoint touch, double denominator, Crowds crowds) const {
  const Post* post = nearest_post(touch.along_mm);
  if (touch.up_mm < 0 && post != nullptr && post->base >= 0) {
    return {Pick::What::part, post->base, {}};
  }
  if (const Pick chosen = joint(touch, denominator, crowds); chosen.what != Pick::What::nothing) {
    return chosen;
  }
  const Near tube = nearest(tubes_, touch, tube_reach_mm * denominator);
  if (tube.part >= 0) return {Pick::What::part, tube.part, {}};
  if (post == nullptr) return {};
  if (touch.up_mm > post->height_mm) return {Pick::What::post, post->place, {}};
  return open_air(touch, *post, denominator);
}

}  // namespace kneerail::elevation
