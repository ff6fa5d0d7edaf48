#include "tests/mobile/drawing/sign_sheet.h"

#include <array>

#include "mobile/elevation/bay_shapes.h"
#include "mobile/elevation/fitting_shapes.h"
#include "mobile/elevation/grade_glyph.h"
#include "mobile/elevation/mark_shapes.h"
#include "mobile/elevation/sign_shapes.h"
#include "mobile/elevation/tube_shapes.h"
#include "mobile/elevation/weld_shapes.h"

namespace kneerail::tests {

namespace {

using elevation::Fitting;
using elevation::Joins;
using elevation::Point;
using elevation::RunDrawing;
using elevation::RunPen;
using elevation::ShapeList;

/// A drawing on which a tube of 48.3 mm is `od_px` wide.
RunDrawing at_od(double od_px, theme::Theme theme) {
  RunDrawing drawing;
  drawing.denominator = 48.3 * drawing.pixels_per_mm / od_px;
  drawing.theme = theme;
  return drawing;
}

SheetPart part(int seed, Finish finish = Finish::zinc, int grade = 1) {
  SheetPart part;
  part.id.bytes.fill(static_cast<std::uint8_t>(17 * seed + 3));
  part.finish = finish;
  part.now = SheetGrade{};
  part.now->grade = grade;
  return part;
}

class Sheet {
 public:
  explicit Sheet(theme::Theme theme)
      : pen_(at_od(17, theme)), thick_(at_od(30, theme)), palette_(theme::palette(theme)) {}

  ShapeList make() {
    grades();
    fittings();
    marks();
    tubes();
    return std::move(list_);
  }

 private:
  void grades() {
    for (int grade = 1; grade <= 5; ++grade) {
      const QColor& color = palette_.grade[static_cast<std::size_t>(grade - 1)];
      const float x = 90 + 176 * static_cast<float>(grade - 1);
      elevation::add_grade(list_, {x, 60}, 48, grade, color);
      elevation::add_grade(list_, {x - 50, 140}, 12, grade, color);
      elevation::add_grade(list_, {x - 10, 140}, 17, grade, color);
      elevation::add_grade(list_, {x + 40, 140}, 23, grade, color);
    }
    for (const float x : {970.0F, 1146.0F}) {
      elevation::add_open_grade(list_, {x, 60}, 48, palette_.ink2);
      elevation::add_open_grade(list_, {x, 140}, 17, palette_.ink2);
    }
    elevation::add_last_grade(list_, {1146, 60}, 48, 2, palette_.ghost);
    elevation::add_last_grade(list_, {1146, 140}, 17, 2, palette_.ghost);
  }

  void fitting(float x, WhatItDoes does, Joins joins, int grade = 1) {
    SheetPart at = part(static_cast<int>(x), Finish::zinc, grade);
    at.does = does;
    elevation::add_fitting(list_, pen_, {&at, {x, 230}, 250, joins});
  }

  void tube_at(Point from, Point to) {
    const SheetPart at = part(1);
    elevation::add_tube(list_, pen_, {&at, from, to, 17});
  }

  void fittings() {
    const Joins top{true, true, false, true};
    const Joins end{true, false, true, true};
    fitting(76, WhatItDoes::three_way_tee, top);
    fitting(200, WhatItDoes::corner_tee, end);
    fitting(320, WhatItDoes::cross, {}, 3);
    fitting(450, WhatItDoes::elbow, end);
    fitting(576, WhatItDoes::adjustable_swivel, {true, true, false, true});
    tube_at({650, 230}, {752, 230});
    fitting(700, WhatItDoes::sleeve_coupling, {});
    tube_at({826, 235}, {826, 180});
    fitting(826, WhatItDoes::base_flange, end);
    tube_at({1000, 230}, {950, 230});
    fitting(945, WhatItDoes::wall_flange, {false, true, false, false});
    tube_at({1026, 230}, {1076, 230});
    fitting(1076, WhatItDoes::end_cap, {true, false, false, false});
    tube_at({1156, 230}, {1246, 230});
    fitting(1200, WhatItDoes::clip_on_for_infill, {});
  }

  void marks() {
    Uuid found;
    found.bytes.fill(0x5A);
    elevation::add_chalk_ring(list_, {{80, 350}, 36, 4, found}, palette_.chalk);
    elevation::add_board(list_, pen_, {124, 340}, 286);
    SheetPart struck = part(2);
    struck.struck = true;
    elevation::add_tube(list_, pen_, {&struck, {310, 340}, {450, 340}, 17});
    struck.does = WhatItDoes::three_way_tee;
    elevation::add_fitting(list_, pen_, {&struck, {380, 340}, 400, {true, true, false, true}});
    SheetPost post;
    float x = 500;
    for (const PostState state :
         {PostState::seen, PostState::open, PostState::skipped, PostState::struck}) {
      post.state = state;
      elevation::add_tag(list_, pen_, post, {x, 410}, false);
      x += 80;
    }
    elevation::add_tag(list_, pen_, post, {x, 410}, true);
    tube_at({900, 310}, {900, 400});
    const SheetPart weeping = part(5);
    elevation::add_weeping(list_, pen_, {&weeping, {900, 310}, 400, {true, true, true, false}});
    const SheetPart weld = part(6, Finish::paint);
    elevation::add_weld(list_, pen_, {&weld, {980, 350}, 400});
    elevation::add_weld_foot(list_, pen_, {&weld, {1060, 350}, 370});
    elevation::add_cut_edge(list_, pen_, {&weld, {1060, 345}, 370});
    elevation::add_infill(list_, pen_, {1120, 1260, 300, 390, false});
    elevation::add_bent_bar(list_, pen_, {1120, 1260, 300, 390, false}, 1190);
  }

  void tubes() {
    struct Coated {
      Finish finish;
      int grade;
    };
    const std::array coats = {
        Coated{Finish::zinc, 1},      Coated{Finish::zinc, 2},      Coated{Finish::zinc, 3},
        Coated{Finish::zinc, 4},      Coated{Finish::paint, 1},     Coated{Finish::paint, 2},
        Coated{Finish::paint, 3},     Coated{Finish::paint, 4},     Coated{Finish::aluminium, 1},
        Coated{Finish::aluminium, 4}, Coated{Finish::stainless, 1}, Coated{Finish::stainless, 4}};
    for (std::size_t i = 0; i < coats.size(); ++i) {
      const SheetPart at = part(static_cast<int>(i) + 20, coats[i].finish, coats[i].grade);
      const float x = 30 + 205 * static_cast<float>(i % 6);
      const float y = i < 6 ? 462 : 522;
      elevation::add_tube(list_, thick_, {&at, {x, y}, {x + 185, y}, 30});
    }
  }

  RunPen pen_;
  RunPen thick_;
  const theme::Palette& palette_;
  ShapeList list_;
};

}  // namespace

ShapeList sign_sheet(theme::Theme theme) {
  return Sheet(theme).make();
}

}  // namespace kneerail::tests
