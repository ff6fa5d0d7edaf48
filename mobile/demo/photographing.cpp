#include "mobile/demo/photographing.h"

#include <algorithm>

#include "core/records/photograph.h"

namespace kneerail::demo {

namespace {

Shown shown(const Making& making, const PlannedPart& part) {
  const std::string& type = making.plan.types[static_cast<std::size_t>(part.type)].code;
  if (part.role == "fitting") {
    for (const auto& [word, what] :
         {std::pair("tee", Shown::tee), std::pair("cross", Shown::cross),
          std::pair("corner", Shown::corner), std::pair("sleeve", Shown::sleeve),
          std::pair("flange", Shown::flange), std::pair("cap", Shown::cap)}) {
      if (type.ends_with(word)) return what;
    }
  }
  if (part.role == "base fixing") return Shown::anchor;
  if (part.role == "top rail" || part.role == "mid-rail") return Shown::rail;
  if (part.role == "gate") return Shown::gate;
  if (part.role == "weld" || part.role == "welded section") return Shown::weld;
  if (part.role == "cut edge") return Shown::flange;
  return Shown::post;
}

Damage damage(int what) {
  switch (what) {
    case 1:
      return Damage::split;
    case 2:
    case 11:
      return Damage::loose;
    case 5:
      return Damage::weeping;
    case 12:
      return Damage::paint_flaking;
    case 14:
      return Damage::seized;
    default:
      return Damage::rust;
  }
}

Backdrop backdrop(const std::string& site) {
  return site == "FS"   ? Backdrop::slip
         : site == "LI" ? Backdrop::lock
         : site == "CS" ? Backdrop::roof
                        : Backdrop::sea;
}

Digest digest_of(const std::optional<Digest>& kept) {
  return kept.value_or(Digest{});
}

cbor::Value circle_at(const DrawnPhotograph& drawn) {
  constexpr int reach = 900;
  const int rim = drawn.spot_x + reach <= 10'000 ? drawn.spot_x + reach : drawn.spot_x - reach;
  Mark circle;
  circle.shape = MarkShape::circle;
  circle.points = {{drawn.spot_x, drawn.spot_y}, {rim, drawn.spot_y}};
  return to_value({circle});
}

}  // namespace

void photograph(Making& making, const Photographed& finding) {
  if (!making.draws()) return;
  const PlannedPart& part = making.plan.parts[static_cast<std::size_t>(finding.part)];
  const PlannedRun& run = making.plan.runs[static_cast<std::size_t>(part.run)];
  const DrawnPhotograph drawn = making.draw(
      {.seed = 0,
       .shown = shown(making, part),
       .damage = damage(finding.what),
       .grade = finding.grade,
       .painted = run.finish == "paint" || part.role == "gate",
       .backdrop = backdrop(making.plan.sites[static_cast<std::size_t>(run.site)].code)});
  Photograph shot;
  if (!finding.visit.is_zero()) shot.visit = finding.visit;
  shot.sha256 = digest_of(making.keep(drawn.picture));
  shot.size_bytes = std::ssize(drawn.picture);
  shot.media_type = MediaType::jpeg;
  shot.width_pixels = drawn.width_pixels;
  shot.height_pixels = drawn.height_pixels;
  shot.preview_sha256 = digest_of(making.keep(drawn.preview));
  shot.preview_bytes = std::ssize(drawn.preview);
  shot.taken = making.now();
  if (finding.grade == 5) shot.marks = circle_at(drawn);
  if (!finding.caption.empty()) shot.caption = std::string(finding.caption);
  making.write_photograph(making.feed_of_part(finding.part), finding.finding, to_body(shot));
}

}  // namespace kneerail::demo
