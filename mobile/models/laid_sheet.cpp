#include "mobile/models/laid_sheet.h"

#include <algorithm>
#include <numeric>
#include <tuple>

#include "schema/store/run_layout.h"

namespace kneerail {
namespace {

using layout::LaidPart;
using layout::LaidRun;

enum class Drawn : std::uint8_t { post = 1, bay, part };

/// Never in a record: what the drawing tells things apart by.
Uuid drawn_id(const Uuid& run, Drawn what, std::size_t place) {
  Uuid id = run;
  id.bytes[0] = static_cast<std::uint8_t>(what);
  for (std::size_t i = 0; i < 4; ++i) id.bytes[1 + i] = static_cast<std::uint8_t>(place >> (8 * i));
  return id;
}

SheetPart part_of(const LaidRun& laid, const LaidPart& from) {
  const auto& type = laid.types[static_cast<std::size_t>(from.type)];
  SheetPart part;
  part.post = from.post;
  part.bay = from.bay;
  part.role = from.role;
  part.does = type.does;
  part.finish = finish_of(type.material, type.protection);
  part.welded = type.system == System::welded;
  part.along_mm = laid.posts[static_cast<std::size_t>(from.post)].chainage_mm + from.along_mm;
  part.up_mm = from.up_mm;
  part.diameter_tenth_mm = type.diameter_tenth_mm.value_or(part.diameter_tenth_mm);
  part.wall_nominal_tenth_mm = type.wall_tenth_mm;
  part.screws = from.screws;
  part.spots = {Face::all_round};
  return part;
}

/// By post; a post's own bottom up, then those of its bay, as a run that was read.
std::vector<int> drawing_order(const LaidRun& laid) {
  std::vector<int> order(laid.parts.size());
  std::iota(order.begin(), order.end(), 0);
  const auto place = [&](int part) {
    const LaidPart& at = laid.parts[static_cast<std::size_t>(part)];
    return std::tuple(at.post, at.bay >= 0, at.up_mm, at.along_mm);
  };
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return place(a) < place(b); });
  return order;
}

}  // namespace

LaidSheet sheet_of(const layout::LaidRun& laid, const Uuid& run, std::int64_t height_mm) {
  LaidSheet made;
  RunSheet& sheet = made.sheet;
  sheet.id = run;
  sheet.height_mm = height_mm;
  for (const auto& from : laid.posts) {
    const Uuid id = drawn_id(run, Drawn::post, sheet.posts.size());
    SheetPost& post = sheet.posts.emplace_back();
    post.id = id;
    post.label = from.label;
    post.landmark = from.landmark;
    post.chainage_mm = from.chainage_mm;
    post.height_mm = height_mm;
    post.base = from.base;
  }
  for (const auto& from : laid.bays) {
    SheetBay bay;
    bay.id = drawn_id(run, Drawn::bay, sheet.bays.size());
    bay.from = from.from;
    bay.to = from.from + 1;
    bay.kind = from.kind;
    sheet.bays.push_back(bay);
  }
  made.laid = drawing_order(laid);
  for (const int place : made.laid) {
    SheetPart part = part_of(laid, laid.parts[static_cast<std::size_t>(place)]);
    part.id = part.life = drawn_id(run, Drawn::part, static_cast<std::size_t>(place));
    auto& post = sheet.posts[static_cast<std::size_t>(part.post)];
    if (post.parts++ == 0) post.first_part = static_cast<int>(sheet.parts.size());
    sheet.parts.push_back(std::move(part));
  }
  return made;
}

}  // namespace kneerail
