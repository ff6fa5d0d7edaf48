#include "mobile/elevation/run_measure.h"

#include <algorithm>
#include <cstdlib>
#include <set>
#include <vector>

namespace kneerail::elevation {

namespace {

bool is_rail(const SheetPart& part) {
  return part.role == Role::top_rail || part.role == Role::mid_rail ||
         part.role == Role::rail_tube || part.role == Role::weld;
}

bool joins_a_rail(const SheetPart& part) {
  const auto does = part.does;
  return does == WhatItDoes::three_way_tee || does == WhatItDoes::corner_tee ||
         does == WhatItDoes::cross || does == WhatItDoes::elbow;
}

template <class Is>
std::set<std::int64_t> heights_mm(const RunSheet& sheet, Is is) {
  std::set<std::int64_t> heights;
  for (const SheetPart& part : sheet.parts) {
    if (is(part)) heights.insert(part.up_mm);
  }
  return heights;
}

}  // namespace

double least_rail_gap_mm(const RunSheet& sheet) {
  constexpr std::int64_t same_rail_mm = 100;  // one rail, measured at several places
  std::set<std::int64_t> heights = heights_mm(sheet, is_rail);
  if (heights.size() < 2) heights = heights_mm(sheet, joins_a_rail);
  std::int64_t least_mm = sheet.height_mm;
  std::int64_t before_mm = -1;
  for (const std::int64_t height_mm : heights) {
    const std::int64_t gap_mm = height_mm - before_mm;
    if (before_mm >= 0 && gap_mm >= same_rail_mm) least_mm = std::min(least_mm, gap_mm);
    before_mm = height_mm;
  }
  return static_cast<double>(least_mm);
}

double usual_bay_mm(const RunSheet& sheet) {
  std::vector<std::int64_t> lengths_mm;
  for (std::size_t post = 1; post < sheet.posts.size(); ++post) {
    lengths_mm.push_back(
        std::abs(sheet.posts[post].chainage_mm - sheet.posts[post - 1].chainage_mm));
  }
  if (lengths_mm.empty()) return 0;
  const auto middle = lengths_mm.begin() + static_cast<std::ptrdiff_t>(lengths_mm.size() / 2);
  std::nth_element(lengths_mm.begin(), middle, lengths_mm.end());
  return static_cast<double>(*middle);
}

}  // namespace kneerail::elevation
