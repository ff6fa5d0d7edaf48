#include "core/layout/laid_run.h"

#include <algorithm>
#include <cstdlib>

namespace kneerail::layout {
namespace {

constexpr std::int64_t flange_up_mm = 40;     // middle of a base flange's socket
constexpr std::int64_t cut_edge_up_mm = 20;   // of a post that is welded to its plate
constexpr std::int64_t toe_board_up_mm = 75;  // half of 150 mm
constexpr std::int64_t cap_beside_mm = 60;    // an end cap from the middle of its post

bool has_rails(BayKind kind) {
  return kind == BayKind::rails || kind == BayKind::mesh_infill;
}

class Laying {
 public:
  explicit Laying(const RunRule& rule) : rule_(rule) {}

  LaidRun lay() {
    std::int64_t chainage_mm = 0;
    for (int place = 0; place < rule_.posts; ++place) {
      const PostChange* change = post_change(place);
      run_.posts.push_back({std::to_string(rule_.first_number + place), chainage_mm, base_of(place),
                            change == nullptr ? std::string() : change->landmark});
      if (place + 1 == rule_.posts) break;
      run_.bays.push_back({place, kind_of(place), has_rails(kind_of(place)) ? rule_.rails : 0});
      chainage_mm += length_of(place);
    }
    for (int place = 0; place < rule_.posts; ++place) {
      post_ = place;
      welded() ? welded_post() : slip_on_post();
      if (place + 1 < rule_.posts) bay();
    }
    if (welded()) belong_to_sections();
    run_.line = line_of(rule_);
    return std::move(run_);
  }

 private:
  [[nodiscard]] bool welded() const { return rule_.made.system == System::welded; }

  [[nodiscard]] const PostChange* post_change(int post) const {
    const auto found = rule_.post_changes.find(post);
    return found == rule_.post_changes.end() ? nullptr : &found->second;
  }
  [[nodiscard]] const BayChange* bay_change(int bay) const {
    const auto found = rule_.bay_changes.find(bay);
    return found == rule_.bay_changes.end() ? nullptr : &found->second;
  }
  [[nodiscard]] BaseKind base_of(int post) const {
    const PostChange* change = post_change(post);
    return change == nullptr ? rule_.base : change->base.value_or(rule_.base);
  }
  /// Of no bay before the first and after the last: an open gap.
  [[nodiscard]] BayKind kind_of(int bay) const {
    if (bay < 0 || bay + 1 >= rule_.posts) return BayKind::open_gap;
    const BayChange* change = bay_change(bay);
    return change == nullptr ? rule_.bays : change->kind.value_or(rule_.bays);
  }
  [[nodiscard]] std::int64_t length_of(int bay) const {
    const BayChange* change = bay_change(bay);
    return change == nullptr ? rule_.spacing_mm : change->length_mm.value_or(rule_.spacing_mm);
  }
  [[nodiscard]] bool slopes(int bay) const {
    const BayChange* change = has_rails(kind_of(bay)) ? bay_change(bay) : nullptr;
    return change != nullptr && change->rise_mm != 0;
  }
  [[nodiscard]] int turn_at(int post) const {
    const PostChange* change = post_change(post);
    const bool inside = post > 0 && post + 1 < rule_.posts;
    return change == nullptr || !inside ? 0 : change->turn_degrees;
  }
  [[nodiscard]] std::int64_t rail_up_mm(int rail) const {
    return rule_.height_mm * (rule_.rails - rail) / rule_.rails;
  }
  [[nodiscard]] int railed_sides() const {
    return (has_rails(kind_of(post_ - 1)) ? 1 : 0) + (has_rails(kind_of(post_)) ? 1 : 0);
  }

  // Types. A fitting's body is cast; what is aluminium or stainless has bolts of stainless steel.
  [[nodiscard]] LaidType tube() const {
    return {WhatItDoes::tube,        rule_.made.material, rule_.made.protection,
            rule_.diameter_tenth_mm, rule_.wall_tenth_mm, rule_.made.system};
  }
  [[nodiscard]] LaidType fitting(WhatItDoes does) const {
    const bool steel = rule_.made.material == Material::steel;
    return {does,
            steel ? Material::cast_iron : rule_.made.material,
            rule_.made.protection,
            rule_.diameter_tenth_mm,
            {},
            System::slip_on};
  }
  [[nodiscard]] LaidType bolt() const {
    if (rule_.made.material == Material::steel)
      return {WhatItDoes::bolt, Material::steel, rule_.made.protection, {}, {}, rule_.made.system};
    return {WhatItDoes::bolt, Material::stainless_steel, Protection::bare, {}, {}, System::slip_on};
  }
  [[nodiscard]] LaidType of_same(WhatItDoes does, System system) const {
    return {does, rule_.made.material, rule_.made.protection, {}, {}, system};
  }

  void slip_on_post() {
    add(Role::post_tube, tube(), 0, rule_.height_mm / 2);
    base();
    for (int rail = rule_.rails - 1; rail >= 0; --rail) joint(rail);
  }

  void base() {
    switch (base_of(post_)) {
      case BaseKind::base_flange:
        add(Role::base_fixing, bolt(), 0, 0);
        add(Role::fitting, fitting(WhatItDoes::base_flange), 0, flange_up_mm);
        break;
      case BaseKind::wall_flange:
        add(Role::base_fixing, fitting(WhatItDoes::wall_flange), 0, 0,
            screws_of(WhatItDoes::wall_flange));
        break;
      case BaseKind::welded_plate:
        add(Role::base_fixing, bolt(), 0, 0);
        add(Role::weld, of_same(WhatItDoes::weld, System::welded), 0, cut_edge_up_mm);
        break;
      case BaseKind::cast_in:
      case BaseKind::socket:
        break;  // the foot of the tube itself: nothing that could be replaced by itself
    }
  }

  /// What a rail is held by at this post: by the tubes that come to it, or as the person said.
  void joint(int rail) {
    const auto own = rule_.joint_changes.find({post_, rail});
    if (own != rule_.joint_changes.end()) return add_joint(own->second, rail);
    const bool top = rail == 0;
    const int sides = railed_sides();
    if (sides == 0) {
      if (top) add_joint(WhatItDoes::end_cap, rail);
      return;
    }
    if (slopes(post_ - 1) || slopes(post_)) return add_joint(WhatItDoes::adjustable_swivel, rail);
    if (sides == 2 && turn_at(post_) != 0)
      return add_joint(
          std::abs(turn_at(post_)) == 90 ? WhatItDoes::corner_tee : WhatItDoes::adjustable_swivel,
          rail);
    if (rule_.joint == WhatItDoes::adjustable_swivel)
      return add_joint(WhatItDoes::adjustable_swivel, rail);
    if (sides == 2) return add_joint(top ? rule_.joint : WhatItDoes::cross, rail);
    if (!top) return add_joint(WhatItDoes::corner_tee, rail);
    add_joint(rule_.end, rail);
    if (rule_.end == WhatItDoes::elbow) return;
    const std::int64_t out_mm = has_rails(kind_of(post_)) ? -cap_beside_mm : cap_beside_mm;
    const LaidType cap = fitting(WhatItDoes::end_cap);
    add(Role::fitting, cap, out_mm, rail_up_mm(rail), screws_of(cap.does));
  }

  void add_joint(WhatItDoes does, int rail) {
    add(Role::fitting, fitting(does), 0, rail_up_mm(rail), screws_of(does));
    run_.parts.back().rail = rail;
  }

  void welded_post() {
    add(Role::post_tube, tube(), 0, rule_.height_mm / 2);
    base();
    add(Role::cut_edge, of_same(WhatItDoes::welded_section, System::welded), 0, cut_edge_up_mm);
    if (railed_sides() == 0) return;
    for (int rail = rule_.rails - 1; rail >= 0; --rail) {
      add(Role::weld, of_same(WhatItDoes::weld, System::welded), 0, rail_up_mm(rail));
      run_.parts.back().rail = rail;
    }
  }

  void bay() {
    bay_ = post_;
    const std::int64_t middle_mm = length_of(bay_) / 2;
    const BayKind kind = kind_of(bay_);
    if (kind == BayKind::gate)
      add(Role::gate, of_same(WhatItDoes::welded_section, System::welded), middle_mm,
          rule_.height_mm / 2);
    if (has_rails(kind)) {
      welded() ? section(middle_mm) : rails(middle_mm);
      if (kind == BayKind::mesh_infill) mesh(middle_mm);
      const BayChange* change = bay_change(bay_);
      const bool board =
          change == nullptr ? rule_.toe_board : change->toe_board.value_or(rule_.toe_board);
      if (board)
        add(Role::toe_board, of_same(WhatItDoes::plate, rule_.made.system), middle_mm,
            toe_board_up_mm);
    }
    bay_ = -1;
  }

  void rails(std::int64_t middle_mm) {
    const bool sleeved = rule_.sleeve_every_bays > 0 && (bay_ + 1) % rule_.sleeve_every_bays == 0;
    for (int rail = 0; rail < rule_.rails; ++rail) {
      add(rail == 0 ? Role::top_rail : Role::mid_rail, tube(), middle_mm, rail_up_mm(rail));
      if (!sleeved) continue;
      const LaidType sleeve = fitting(WhatItDoes::sleeve_coupling);
      add(Role::fitting, sleeve, length_of(bay_) / 3, rail_up_mm(rail), screws_of(sleeve.does));
    }
  }

  /// One piece of rails and welds between two posts.
  void section(std::int64_t middle_mm) {
    LaidType type = of_same(WhatItDoes::welded_section, System::welded);
    type.diameter_tenth_mm = rule_.diameter_tenth_mm;
    type.wall_tenth_mm = rule_.wall_tenth_mm;
    add(Role::welded_section, type, middle_mm, rule_.height_mm / 2);
  }

  /// A panel of mesh, clipped to the top and the lowest rail, or part of its section.
  void mesh(std::int64_t middle_mm) {
    add(Role::infill, of_same(WhatItDoes::welded_section, System::welded), middle_mm,
        rule_.height_mm / 2);
    if (welded()) return;
    const LaidType clip = fitting(WhatItDoes::clip_on_for_infill);
    const int lowest = rule_.rails - 1;
    for (int rail = 0; rail < rule_.rails; ++rail) {
      if (rail != 0 && rail != lowest) continue;
      for (const std::int64_t along_mm : {middle_mm / 2, middle_mm + middle_mm / 2})
        add(Role::fitting, clip, along_mm, rail_up_mm(rail), screws_of(clip.does));
    }
  }

  /// Welds belong to the section after their post, those of the last post of one to it.
  void belong_to_sections() {
    std::vector<int> section_of(static_cast<std::size_t>(rule_.posts), -1);
    for (std::size_t i = 0; i < run_.parts.size(); ++i)
      if (run_.parts[i].role == Role::welded_section)
        section_of[static_cast<std::size_t>(run_.parts[i].bay)] = static_cast<int>(i);
    for (LaidPart& part : run_.parts) {
      const bool in_bay = part.role == Role::infill;
      if (part.role != Role::weld && !in_bay) continue;
      if (!in_bay && part.rail < 0) continue;  // the weld of a base plate holds the post alone
      const auto post = static_cast<std::size_t>(part.post);
      part.whole = section_of[post];
      if (part.whole < 0 && !in_bay && post > 0) part.whole = section_of[post - 1];
    }
  }

  void add(Role role, const LaidType& type, std::int64_t along_mm, std::int64_t up_mm,
           int screws = -1) {
    LaidPart part;
    part.post = post_;
    part.bay = bay_;
    part.role = role;
    part.type = type_place(type);
    part.along_mm = along_mm;
    part.up_mm = up_mm;
    const bool held_by_screws = role == Role::fitting;
    part.screws = screws >= 0 ? screws : held_by_screws ? screws_of(type.does) : 0;
    run_.parts.push_back(part);
  }

  int type_place(const LaidType& type) {
    const auto found = std::find(run_.types.begin(), run_.types.end(), type);
    const auto place = static_cast<int>(found - run_.types.begin());
    if (found == run_.types.end()) run_.types.push_back(type);
    return place;
  }

  const RunRule& rule_;
  LaidRun run_;
  int post_ = 0;
  int bay_ = -1;
};

}  // namespace

int screws_of(WhatItDoes does) {
  switch (does) {
    case WhatItDoes::three_way_tee:
    case WhatItDoes::corner_tee:
      return 3;
    case WhatItDoes::cross:
      return 4;
    case WhatItDoes::elbow:
    case WhatItDoes::adjustable_swivel:
    case WhatItDoes::sleeve_coupling:
      return 2;
    case WhatItDoes::base_flange:
    case WhatItDoes::wall_flange:
    case WhatItDoes::end_cap:
    case WhatItDoes::clip_on_for_infill:
      return 1;
    default:
      return 0;
  }
}

int LaidRun::fittings() const {
  return static_cast<int>(std::count_if(
      parts.begin(), parts.end(), [](const LaidPart& part) { return part.role == Role::fitting; }));
}

std::int64_t LaidRun::rail_tube_mm() const {
  std::int64_t sum_mm = 0;
  for (const LaidBay& bay : bays) {
    const auto from = static_cast<std::size_t>(bay.from);
    sum_mm += bay.rails * (posts[from + 1].chainage_mm - posts[from].chainage_mm);
  }
  return sum_mm;
}

Result<LaidRun> lay_out(const RunRule& rule) {
  if (auto fits = check_rule(rule); !fits) return fail(fits.error());
  return Laying(rule).lay();
}

}  // namespace kneerail::layout
