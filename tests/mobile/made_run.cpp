#include "tests/mobile/made_run.h"

#include <string>

namespace kneerail::tests {

namespace {

struct Made {
  Role role = Role::fitting;
  WhatItDoes does = WhatItDoes::tube;
  int screws = 0;
};

class Maker {
 public:
  explicit Maker(const MadeRun& rule) : rule_(rule) {}

  RunSheet run() {
    sheet_.id = next_id();
    sheet_.site = next_id();
    sheet_.zone = next_id();
    sheet_.site_name = "Made Mole";
    sheet_.name = "Made wall";
    sheet_.looked_at = "from the sea";
    sheet_.height_mm = rule_.height_mm;
    for (int n = 0; n < rule_.posts; ++n) post(n);
    findings();
    return std::move(sheet_);
  }

 private:
  Uuid next_id() {
    Uuid id;
    std::uint64_t rest = ++count_ * 0x9E3779B97F4A7C15ULL;
    for (auto& byte : id.bytes) {
      byte = static_cast<std::uint8_t>(rest & 0xFF);
      rest = (rest >> 8) ^ (rest * 0xD1B54A32D192ED03ULL);
    }
    return id;
  }

  void post(int n) {
    SheetPost post;
    post.id = next_id();
    post.label = std::to_string(rule_.first_label + n);
    if (n % 20 == 0) post.landmark = "ladder " + std::to_string(n / 20 + 1);
    post.chainage_mm = n * rule_.bay_mm;
    post.height_mm = rule_.height_mm;
    post.base = BaseKind::base_flange;
    post.first_part = static_cast<int>(sheet_.parts.size());
    post.state = state_of(n);
    if (post.state == PostState::skipped) post.skipped_because = "boat across";
    const bool end = n == 0 || n + 1 == rule_.posts;
    if (rule_.tubes) add({.role = Role::post_tube, .does = WhatItDoes::tube}, n, 0, half());
    if (rule_.welded) {
      welded(n);
    } else {
      fittings(n, end);
    }
    if (n + 1 < rule_.posts) bay(n);
    post.parts = static_cast<int>(sheet_.parts.size()) - post.first_part;
    sheet_.posts.push_back(std::move(post));
  }

  void fittings(int n, bool end) {
    add({.role = Role::base_fixing, .does = WhatItDoes::base_flange, .screws = 1}, n, 0, 40);
    for (int rail = rule_.rails - 1; rail > 0; --rail) {
      add({.role = Role::fitting, .does = WhatItDoes::cross, .screws = 4}, n, 0, rail_up(rail));
    }
    const WhatItDoes top = end ? WhatItDoes::corner_tee : WhatItDoes::three_way_tee;
    add({.role = Role::fitting, .does = top, .screws = 3}, n, 0, rule_.height_mm);
  }

  void welded(int n) {
    add({.role = Role::base_fixing, .does = WhatItDoes::bolt}, n, 0, 0);
    for (int rail = rule_.rails - 1; rail >= 0; --rail) {
      add({.role = Role::weld, .does = WhatItDoes::weld}, n, 0, rail_up(rail));
    }
  }

  void bay(int n) {
    SheetBay bay;
    bay.id = next_id();
    bay.from = n;
    bay.to = n + 1;
    bay.kind = rule_.welded ? BayKind::mesh_infill : BayKind::rails;
    bay.struck = state_of(n) == PostState::struck;
    bay.closed_off = n == 5;
    bay.pushed = n % 2 == 0;
    bay_ = static_cast<int>(sheet_.bays.size());
    sheet_.bays.push_back(bay);
    const std::int64_t middle = rule_.bay_mm / 2;
    if (rule_.welded) {
      add({.role = Role::welded_section, .does = WhatItDoes::welded_section}, n, middle, half());
    } else if (rule_.tubes) {
      for (int rail = rule_.rails - 1; rail > 0; --rail) {
        add({.role = Role::mid_rail, .does = WhatItDoes::tube}, n, middle, rail_up(rail));
      }
      add({.role = Role::top_rail, .does = WhatItDoes::tube}, n, middle, rule_.height_mm);
    }
    if (rule_.sleeve_every_bays > 0 && n % rule_.sleeve_every_bays == 1) {
      add({.role = Role::fitting, .does = WhatItDoes::sleeve_coupling, .screws = 2}, n,
          rule_.bay_mm / 3, rule_.height_mm);
    }
    bay_ = -1;
  }

  void add(const Made& made, int n, std::int64_t along_mm, std::int64_t up_mm) {
    SheetPart part;
    part.role = made.role;
    part.does = made.does;
    part.screws = made.screws;
    part.welded = rule_.welded;
    part.id = next_id();
    part.life = next_id();
    part.post = n;
    part.bay = bay_;
    part.finish = rule_.welded ? Finish::paint : Finish::zinc;
    part.along_mm = n * rule_.bay_mm + along_mm;
    part.up_mm = up_mm;
    part.spots = {Face::seaward};
    if (part.screws > 0) {
      part.torque_target_tenth_nm = 240;
      part.torque_lowest_tenth_nm = 150;
    }
    const int place = static_cast<int>(sheet_.parts.size());
    part.last = grade(1 + place % 7 / 2);
    if (n % 2 == 0) part.now = grade(1 + place % 11 / 3);
    part.struck = state_of(n) == PostState::struck;
    sheet_.parts.push_back(std::move(part));
  }

  SheetGrade grade(int value) {
    SheetGrade grade;
    grade.grade = value;
    grade.record = next_id();
    return grade;
  }

  void findings() {
    if (rule_.posts < 7) return;
    SheetFinding ring;
    ring.record = next_id();
    ring.what = FindingKind::rust_weeping;
    ring.part = sheet_.posts[3].first_part + sheet_.posts[3].parts / 2;
    ring.post = sheet_.parts[static_cast<std::size_t>(ring.part)].post;
    ring.grade = 3;
    ring.number = "F-2";
    ring.text = "from drain hole";
    sheet_.findings.push_back(ring);
    SheetFinding hazard;
    hazard.record = next_id();
    hazard.bay = 5;
    hazard.post = 5;
    hazard.what = FindingKind::moves;
    hazard.grade = 5;
    hazard.hazard_state = 2;
    hazard.number = "F-3";
    sheet_.findings.push_back(hazard);
  }

  static PostState state_of(int n) {
    if (n % 17 == 16) return PostState::struck;
    if (n % 13 == 12) return PostState::skipped;
    return n % 2 == 0 ? PostState::seen : PostState::open;
  }

  [[nodiscard]] std::int64_t half() const { return rule_.height_mm / 2; }
  [[nodiscard]] std::int64_t rail_up(int rail) const {
    return rule_.height_mm - rail * rule_.rail_spacing_mm;
  }

  const MadeRun& rule_;
  RunSheet sheet_;
  std::uint64_t count_ = 0;
  int bay_ = -1;
};

}  // namespace

RunSheet made_run(const MadeRun& rule) {
  return Maker(rule).run();
}

RunSheet long_run() {
  return made_run({.posts = 620, .rails = 3, .rail_spacing_mm = 450, .sleeve_every_bays = 31});
}

RunSheet run_of_parts(int parts) {
  return made_run({.posts = parts / 5 + 1, .rails = 2, .sleeve_every_bays = 0});
}

}  // namespace kneerail::tests
