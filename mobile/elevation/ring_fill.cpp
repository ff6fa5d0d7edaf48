#include "mobile/elevation/ring_fill.h"

#include <algorithm>

#include "mobile/elevation/grade_glyph.h"
#include "mobile/elevation/part_place.h"
#include "mobile/elevation/run_pen.h"

namespace kneerail::elevation {

RingChange ring_change(const RunSheet& before, const RunSheet& after) {
  RingChange came;
  RingChange went{{}, true};
  const std::size_t parts = std::min(before.parts.size(), after.parts.size());
  for (std::size_t i = 0; i < parts; ++i) {
    const SheetPart& was = before.parts[i];
    const SheetPart& is = after.parts[i];
    if (!is_joint(is) || is.struck) continue;
    const int part = static_cast<int>(i);
    if (is.now && (!was.now || was.now->grade != is.now->grade))
      came.rings.push_back({part, is.now->grade});
    else if (was.now && !is.now)
      went.rings.push_back({part, was.now->grade});
  }
  return came.rings.empty() ? went : came;
}

ShapeList filling_rings(const RunSheet& sheet, const std::vector<RingFill>& rings,
                        const RunDrawing& drawing, const RunView& view, float share) {
  const RunPen pen(drawing);
  ShapeList list;
  for (const RingFill& ring : rings) {
    const SheetPart& part = sheet.parts[static_cast<std::size_t>(ring.part)];
    const RunPoint at = part_place(sheet, ring.part, drawing.denominator);
    const Point middle{static_cast<float>(view.x_px(at.along_mm)),
                       static_cast<float>(view.y_px(at.up_mm))};
    const float radius = sign_radius_px(sheet, ring.part, drawing);
    if (middle.x < -2 * radius || middle.x > static_cast<float>(view.width_px) + 2 * radius)
      continue;
    list.disc(middle, radius + pen.px(glyph_ground_drawn), pen.color().sheet);
    add_open_grade(list, middle, radius, pen.ink2(), pen.px(1));
    if (part.last) add_last_grade(list, middle, radius, part.last->grade, pen.ghost());
    const int grade = std::clamp(ring.grade, 1, 5);
    const float grown = share * radius;
    if (grown < 1) continue;
    list.disc(middle, grown, pen.color().sheet);
    add_grade(list, middle, grown, grade, pen.color().grade[static_cast<std::size_t>(grade - 1)]);
  }
  return list;
}

}  // namespace kneerail::elevation
