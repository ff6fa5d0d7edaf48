#include "mobile/elevation/run_shapes.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "mobile/elevation/bay_shapes.h"
#include "mobile/elevation/fitting_shapes.h"
#include "mobile/elevation/grade_glyph.h"
#include "mobile/elevation/mark_shapes.h"
#include "mobile/elevation/part_place.h"
#include "mobile/elevation/tube_shapes.h"
#include "mobile/elevation/water_shapes.h"

namespace kneerail::elevation {

namespace {

bool is_tube(const SheetPart& part) {
  return part.role == Role::post_tube || part.role == Role::rail_tube ||
         part.role == Role::top_rail || part.role == Role::mid_rail;
}

bool has_rails(BayKind kind) {
  return kind == BayKind::rails || kind == BayKind::mesh_infill;
}

class Piece {
 public:
  Piece(const RunSheet& sheet, const Stretch& stretch, const RunDrawing& drawing)
      : sheet_(sheet), stretch_(stretch), pen_(drawing), drawing_(drawing) {
    end_post_ = std::min(stretch.first_post + stretch.posts, static_cast<int>(sheet.posts.size()));
  }

  RunPiece make() {
    ground();
    for (const SheetWaterMark& mark : sheet_.water) water(mark);
    for (const SheetBay& bay : sheet_.bays) {
      if (mine(bay.from) && bay.kind == BayKind::mesh_infill && !bay.struck) {
        add_infill(piece_.body, pen_, frame(bay));
      }
    }
    for (const SheetFinding& finding : sheet_.findings) bent_bar(finding);
    each_part([&](int part) { toe_board(part_at(part)); });  // behind the posts
    each_part([&](int part) { tube(part_at(part)); });
    for (const SheetFinding& finding : sheet_.findings) weeping(finding);
    each_part([&](int part) { add_fitting(piece_.body, pen_, fitting(part_at(part))); });
    each_part([&](int part) { glyph(part); });
    for (int post = stretch_.first_post; post < end_post_; ++post) {
      if (drawing_.tags) tag(post);
      dimension(post);
    }
    for (const SheetFinding& finding : sheet_.findings) mark(finding);
    for (const SheetBay& bay : sheet_.bays) board(bay);
    return std::move(piece_);
  }

  /// Smaller where another joint of the post stands near, so that neither hides the other.
  [[nodiscard]] float glyph_radius(int part) const {
    const SheetPart& at = part_at(part);
    const bool little = stands_in_ground(sheet_, at) || at.does == WhatItDoes::end_cap ||
                        at.does == WhatItDoes::base_flange;
    const float radius = glyph_radius_px(pen_, little ? Room::little : Room::enough);
    if (at.post < 0 || static_cast<std::size_t>(at.post) >= sheet_.posts.size()) return radius;
    const SheetPost& post = sheet_.posts[static_cast<std::size_t>(at.post)];
    const Point here = place(part);
    float nearest = 4 * radius;
    const int end = std::min(post.first_part + post.parts, static_cast<int>(sheet_.parts.size()));
    for (int i = std::max(post.first_part, 0); i < end; ++i) {
      if (i == part || !is_joint(part_at(i))) continue;
      const Point other = place(i);
      nearest = std::min(nearest, std::hypot(other.x - here.x, other.y - here.y));
    }
    const float least = pen_.px(least_glyph_drawn);
    return std::clamp(nearest / 2 - pen_.px(glyph_ground_drawn), least, std::max(least, radius));
  }

 private:
  template <class Do>
  void each_part(Do draw) {
    for (int post = stretch_.first_post; post < end_post_; ++post) {
      const SheetPost& at = sheet_.posts[static_cast<std::size_t>(post)];
      const int end = std::min(at.first_part + at.parts, static_cast<int>(sheet_.parts.size()));
      for (int i = std::max(at.first_part, 0); i < end; ++i) {
        draw(i);
      }
    }
  }

  [[nodiscard]] bool mine(int post) const {
    return post >= stretch_.first_post && post < end_post_;
  }

  [[nodiscard]] float x(std::int64_t along_mm) const {
    return static_cast<float>((static_cast<double>(along_mm) - stretch_.origin_mm) * pen_.scale());
  }
  [[nodiscard]] float y(std::int64_t up_mm) const {
    return static_cast<float>(-static_cast<double>(up_mm) * pen_.scale());
  }
  [[nodiscard]] float post_x(int post) const {
    const int last = static_cast<int>(sheet_.posts.size()) - 1;
    return x(sheet_.posts[static_cast<std::size_t>(std::clamp(post, 0, last))].chainage_mm);
  }

  void ground() {
    if (stretch_.first_post >= end_post_) return;
    float left = post_x(stretch_.first_post);
    float right = post_x(end_post_);
    const float beyond = pen_.px(60);
    if (stretch_.first_post == 0) left -= beyond;
    if (end_post_ == static_cast<int>(sheet_.posts.size())) right += beyond;
    add_ground(piece_.body, pen_, left, right);
  }

  /// Behind the rails; the day stands in every second bay, or fourth where they are small.
  void water(const SheetWaterMark& mark) {
    const bool last = end_post_ == static_cast<int>(sheet_.posts.size());
    const WaterReach reach{post_x(stretch_.first_post), post_x(last ? end_post_ - 1 : end_post_),
                           stretch_.origin_mm * pen_.scale()};
    add_water_line(piece_.body, pen_, reach, y(mark.up_mm));
    if (pen_.far()) return;
    const int every = pen_.crowded() ? 4 : 2;
    for (int post = stretch_.first_post; post < end_post_; ++post) {
      if (post % every != 0 || (last && post + 1 == end_post_)) continue;
      add_water_words(piece_.marks, pen_, mark, {post_x(post + 1) - pen_.px(40), y(mark.up_mm)});
    }
  }

  void toe_board(const SheetPart& part) {
    if (part.role != Role::toe_board || part.bay < 0) return;
    if (static_cast<std::size_t>(part.bay) >= sheet_.bays.size()) return;
    add_toe_board(piece_.body, pen_, part, frame(sheet_.bays[static_cast<std::size_t>(part.bay)]));
  }

  void tube(const SheetPart& part) {
    if (part.role == Role::welded_section) return section(part);
    if (part.bay >= 0 && static_cast<std::size_t>(part.bay) < sheet_.bays.size()) {
      const BayFrame bay = frame(sheet_.bays[static_cast<std::size_t>(part.bay)]);
      if (part.role == Role::gate) return add_gate(piece_.body, pen_, part, bay);
    }
    if (!is_tube(part)) return;
    if (part.role == Role::post_tube) {
      const Point foot{x(part.along_mm), 0};
      add_tube(piece_.body, pen_, {&part, foot, {foot.x, y(2 * part.up_mm)}, pen_.od_px(part)});
    } else {
      rail(part, part.up_mm);
    }
  }

  [[nodiscard]] BayFrame frame(const SheetBay& bay) const {
    BayFrame at{post_x(bay.from), post_x(bay.to), y(sheet_.height_mm), y(own_foot_mm), false};
    if (bay.kind != BayKind::mesh_infill || !mine(bay.from)) return at;
    const SheetPost& post = sheet_.posts[static_cast<std::size_t>(bay.from)];
    const int end = std::min(post.first_part + post.parts, static_cast<int>(sheet_.parts.size()));
    for (int i = std::max(post.first_part, 0); i < end; ++i) {
      const SheetPart& part = part_at(i);
      const bool rail =
          part.role == Role::weld || part.role == Role::mid_rail || part.role == Role::rail_tube;
      if (!rail || part.up_mm > lowest_rail_mm) continue;
      at.foot = y(part.up_mm);
      at.has_foot = true;
    }
    return at;
  }

  static constexpr std::int64_t own_foot_mm = 100;  ///< of infill without a rail below it
  static constexpr std::int64_t lowest_rail_mm = 300;

  void rail(const SheetPart& part, std::int64_t up_mm) {
    if (part.bay < 0 || static_cast<std::size_t>(part.bay) >= sheet_.bays.size()) return;
    const SheetBay& bay = sheet_.bays[static_cast<std::size_t>(part.bay)];
    add_tube(piece_.body, pen_,
             {&part, {post_x(bay.from), y(up_mm)}, {post_x(bay.to), y(up_mm)}, pen_.od_px(part)});
  }

  /// A welded section has no rails of its own in the register: they run at its post's welds.
  void section(const SheetPart& part) {
    if (part.post < 0 || static_cast<std::size_t>(part.post) >= sheet_.posts.size()) return;
    const SheetPost& post = sheet_.posts[static_cast<std::size_t>(part.post)];
    const int end = std::min(post.first_part + post.parts, static_cast<int>(sheet_.parts.size()));
    for (int i = std::max(post.first_part, 0); i < end; ++i) {
      const SheetPart& weld = part_at(i);
      if (weld.role == Role::weld) section_rail(part, weld.up_mm);
    }
  }

  void section_rail(const SheetPart& part, std::int64_t up_mm) {
    if (part.bay >= 0) return rail(part, up_mm);
    const int next = std::min(part.post + 1, static_cast<int>(sheet_.posts.size()) - 1);
    add_tube(piece_.body, pen_,
             {&part, {post_x(part.post), y(up_mm)}, {post_x(next), y(up_mm)}, pen_.od_px(part)});
  }

  [[nodiscard]] const SheetPart& part_at(int part) const {
    return sheet_.parts[static_cast<std::size_t>(part)];
  }

  [[nodiscard]] Point place(int part) const {
    const RunPoint at = part_place(sheet_, part, drawing_.denominator);
    return {static_cast<float>((at.along_mm - stretch_.origin_mm) * pen_.scale()),
            static_cast<float>(-at.up_mm * pen_.scale())};
  }

  [[nodiscard]] Fitting fitting(const SheetPart& part) const {
    const double from_origin_mm = along_of(sheet_, part) - stretch_.origin_mm;
    Fitting at{.part = &part,
               .middle = {static_cast<float>(from_origin_mm * pen_.scale()), y(part.up_mm)}};
    if (part.bay >= 0) return at;
    at.joins.left = at.joins.right = false;
    for (const SheetBay& bay : sheet_.bays) {
      if (!has_rails(bay.kind) || (bay.from != part.post && bay.to != part.post)) continue;
      const int other = bay.from == part.post ? bay.to : bay.from;
      (post_x(other) < post_x(part.post) ? at.joins.left : at.joins.right) = true;
    }
    at.joins.up = part.up_mm < post_height_mm(part.post);
    return at;
  }

  [[nodiscard]] std::int64_t post_height_mm(int post) const {
    if (post < 0 || static_cast<std::size_t>(post) >= sheet_.posts.size()) return sheet_.height_mm;
    return sheet_.posts[static_cast<std::size_t>(post)].height_mm;
  }

  void glyph(int part) {
    const SheetPart& at = part_at(part);
    if (!is_joint(at)) return;
    const bool passed_by =
        at.bay < 0 && at.post >= 0 &&
        sheet_.posts[static_cast<std::size_t>(at.post)].state == PostState::skipped;
    add_grade_of(piece_.body, pen_, at, place(part), glyph_radius(part),
                 passed_by ? Ghost::hollow : Ghost::shown);
  }

  static constexpr double least_glyph_drawn = 6.5;

  void weeping(const SheetFinding& finding) {
    if (finding.what != FindingKind::rust_weeping || finding.part < 0 ||
        static_cast<std::size_t>(finding.part) >= sheet_.parts.size()) {
      return;
    }
    const SheetPart& part = part_at(finding.part);
    if (mine(part.post) && is_joint(part)) add_weeping(piece_.body, pen_, fitting(part));
  }

  void bent_bar(const SheetFinding& finding) {
    if (finding.what != FindingKind::bent || finding.bay < 0 ||
        static_cast<std::size_t>(finding.bay) >= sheet_.bays.size()) {
      return;
    }
    const SheetBay& bay = sheet_.bays[static_cast<std::size_t>(finding.bay)];
    if (!mine(bay.from) || bay.kind != BayKind::mesh_infill || bay.struck) return;
    const BayFrame at = frame(bay);
    const float bar_x = finding.along_mm ? x(*finding.along_mm) : (at.left + at.right) / 2;
    add_bent_bar(piece_.body, pen_, at, bar_x);
  }

  void dimension(int post) {
    if (static_cast<std::size_t>(post) + 1 >= sheet_.posts.size()) return;
    const auto length_mm = sheet_.posts[static_cast<std::size_t>(post) + 1].chainage_mm -
                           sheet_.posts[static_cast<std::size_t>(post)].chainage_mm;
    add_dimension(piece_.marks, pen_, post_x(post), post_x(post + 1),
                  static_cast<double>(length_mm),
                  static_cast<std::size_t>(post) + 2 == sheet_.posts.size());
  }

  void tag(int post) {
    const SheetPost& at = sheet_.posts[static_cast<std::size_t>(post)];
    add_tag(piece_.marks, pen_, at, {post_x(post), y(at.height_mm)}, post == drawing_.chosen_post);
  }

  void mark(const SheetFinding& finding) {
    const auto in = [](const auto& rows, int place) {
      return place >= 0 && static_cast<std::size_t>(place) < rows.size();
    };
    Point at;
    int post = finding.post;
    if (in(sheet_.parts, finding.part)) {
      const SheetPart& part = sheet_.parts[static_cast<std::size_t>(finding.part)];
      post = part.post;
      at = {x(part.along_mm), y(part.up_mm)};
    } else if (in(sheet_.bays, finding.bay)) {
      const SheetBay& bay = sheet_.bays[static_cast<std::size_t>(finding.bay)];
      post = bay.from;
      at = {(post_x(bay.from) + post_x(bay.to)) / 2, y(sheet_.height_mm / 2)};
    } else if (in(sheet_.posts, post)) {
      at = {post_x(post), y(sheet_.height_mm / 2)};
    }
    if (!mine(post)) return;
    if (finding.along_mm && finding.up_mm) at = {x(*finding.along_mm), y(*finding.up_mm)};
    int before = 0;
    for (const Point& other : ringed_) {
      if (std::hypot(other.x - at.x, other.y - at.y) < pen_.px(30)) ++before;
    }
    ringed_.push_back(at);
    add_ring(piece_.marks, pen_, finding, at, before);
  }

  void board(const SheetBay& bay) {
    if (!bay.closed_off || !mine(bay.from)) return;
    add_board(piece_.marks, pen_, {post_x(bay.from), y(sheet_.height_mm * 7 / 10)}, post_x(bay.to));
  }

  const RunSheet& sheet_;
  const Stretch& stretch_;
  const RunPen pen_;
  const RunDrawing& drawing_;
  int end_post_ = 0;
  std::vector<Point> ringed_;  ///< middles of the rings so far
  RunPiece piece_;
};

}  // namespace

float sign_radius_px(const RunSheet& sheet, int part, const RunDrawing& drawing) {
  return Piece(sheet, {}, drawing).glyph_radius(part);
}

RunPiece run_shapes(const RunSheet& sheet, const Stretch& stretch, const RunDrawing& drawing) {
  return Piece(sheet, stretch, drawing).make();
}

}  // namespace kneerail::elevation
