#include "mobile/models/part_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

namespace kneerail {

namespace {

class PartWords {
  Q_DECLARE_TR_FUNCTIONS(PartWords)
};

/// Without the height it stands at.
QString kind_name(const SheetPart& part) {
  switch (part.role) {
    case Role::post_tube:
      return PartWords::tr("post tube");
    case Role::rail_tube:
      return PartWords::tr("rail");
    case Role::top_rail:
      return PartWords::tr("top rail");
    case Role::mid_rail:
      return PartWords::tr("mid-rail");
    case Role::toe_board:
      return PartWords::tr("toe board");
    case Role::infill:
      return PartWords::tr("infill");
    case Role::gate:
      return PartWords::tr("gate");
    case Role::cut_edge:
      return PartWords::tr("cut edge");
    case Role::welded_section:
      return PartWords::tr("welded section");
    case Role::weld:
      return PartWords::tr("weld");
    default:
      break;
  }
  switch (part.does.value_or(WhatItDoes::plate)) {
    case WhatItDoes::three_way_tee:
      return PartWords::tr("tee");
    case WhatItDoes::corner_tee:
      return PartWords::tr("corner tee");
    case WhatItDoes::cross:
      return PartWords::tr("cross");
    case WhatItDoes::elbow:
      return PartWords::tr("elbow");
    case WhatItDoes::adjustable_swivel:
      return PartWords::tr("swivel");
    case WhatItDoes::sleeve_coupling:
      return PartWords::tr("sleeve");
    case WhatItDoes::base_flange:
      return PartWords::tr("base flange");
    case WhatItDoes::wall_flange:
      return PartWords::tr("wall flange");
    case WhatItDoes::end_cap:
      return PartWords::tr("end cap");
    case WhatItDoes::clip_on_for_infill:
      return PartWords::tr("clip for infill");
    case WhatItDoes::bolt:
      return PartWords::tr("anchor bolts");
    default:
      break;
  }
  return part.role == Role::base_fixing ? PartWords::tr("base fixing") : PartWords::tr("fitting");
}

bool stands_at_a_rail(const SheetPart& part) {
  if (part.role != Role::fitting && part.role != Role::weld) return false;
  switch (part.does.value_or(WhatItDoes::plate)) {
    case WhatItDoes::base_flange:
    case WhatItDoes::wall_flange:
    case WhatItDoes::end_cap:
    case WhatItDoes::bolt:
      return false;
    default:
      return true;
  }
}

const SheetPost* post_of(const RunSheet& sheet, const SheetPart& part) {
  if (part.post < 0 || static_cast<std::size_t>(part.post) >= sheet.posts.size()) return nullptr;
  return &sheet.posts[static_cast<std::size_t>(part.post)];
}

/// How many rails stand over this one at its post, and whether there are more mid-rails than one.
struct RailPlace {
  int above = 0;
  int mid_rails = 0;
};

RailPlace rail_place(const RunSheet& sheet, const SheetPart& part, const SheetPost& post) {
  RailPlace place;
  std::vector<std::int64_t> seen;
  for (int i = post.first_part; i < post.first_part + post.parts; ++i) {
    if (i < 0 || static_cast<std::size_t>(i) >= sheet.parts.size()) break;
    const SheetPart& other = sheet.parts[static_cast<std::size_t>(i)];
    if (!stands_at_a_rail(other) || other.bay >= 0) continue;
    if (std::find(seen.begin(), seen.end(), other.up_mm) != seen.end()) continue;
    seen.push_back(other.up_mm);
    if (other.up_mm > part.up_mm) ++place.above;
    if (other.up_mm < post.height_mm) ++place.mid_rails;
  }
  return place;
}

}  // namespace

QString part_name(const RunSheet& sheet, int part) {
  const SheetPart& at = sheet.parts.at(static_cast<std::size_t>(part));
  const QString kind = kind_name(at);
  const SheetPost* post = post_of(sheet, at);
  if (post == nullptr) return kind;
  const bool rail = at.role == Role::mid_rail;
  if (!rail && !stands_at_a_rail(at)) return kind;
  const RailPlace place = rail_place(sheet, at, *post);
  if (!rail && place.above == 0) return PartWords::tr("top-rail %1").arg(kind);
  if (rail) return place.mid_rails > 1 ? PartWords::tr("mid-rail %1").arg(place.above) : kind;
  if (place.mid_rails > 1) return PartWords::tr("mid-rail %1 %2").arg(place.above).arg(kind);
  return PartWords::tr("mid-rail %1").arg(kind);
}

QString place_words(const RunSheet& sheet, const Uuid& thing) {
  const auto label = [&](int post) {
    return QString::fromStdString(sheet.posts.at(static_cast<std::size_t>(post)).label);
  };
  for (std::size_t i = 0; i < sheet.parts.size(); ++i)
    if (sheet.parts[i].id == thing) return post_and_part(sheet, static_cast<int>(i));
  for (const SheetBay& bay : sheet.bays)
    if (bay.id == thing) return PartWords::tr("bay %1 to %2").arg(label(bay.from), label(bay.to));
  for (const SheetPost& post : sheet.posts)
    if (post.id == thing) return PartWords::tr("post %1").arg(QString::fromStdString(post.label));
  return {};
}

QString grade_word(int grade, Finish finish) {
  const bool pits = finish == Finish::aluminium || finish == Finish::stainless;
  switch (grade) {
    case 1:
      return PartWords::tr("Sound");
    case 2:
      return PartWords::tr("Dulled");
    case 3:
      return pits ? PartWords::tr("Pits begin") : PartWords::tr("Rust begins");
    case 4:
      return pits ? PartWords::tr("Pits spread") : PartWords::tr("Rust spread");
    case 5:
      return PartWords::tr("Unfit");
    default:
      return {};
  }
}

QString finding_word(FindingKind what) {
  switch (what) {
    case FindingKind::split:
      return PartWords::tr("split");
    case FindingKind::loose:
      return PartWords::tr("loose");
    case FindingKind::missing:
      return PartWords::tr("missing");
    case FindingKind::rust:
      return PartWords::tr("rust");
    case FindingKind::rust_weeping:
      return PartWords::tr("rust weeping");
    case FindingKind::bent:
      return PartWords::tr("bent");
    case FindingKind::knocked:
      return PartWords::tr("knocked");
    case FindingKind::debris_or_scour:
      return PartWords::tr("debris or scour");
    case FindingKind::spread:
      return PartWords::tr("spread");
    case FindingKind::outside_the_rule:
      return PartWords::tr("outside the rule");
    case FindingKind::moves:
      return PartWords::tr("moves");
    case FindingKind::paint_flaking:
      return PartWords::tr("paint flaking");
    case FindingKind::will_not_close:
      return PartWords::tr("will not close");
    case FindingKind::other:
      break;
  }
  return {};
}

QString post_and_part(const RunSheet& sheet, int part) {
  const SheetPost* post = post_of(sheet, sheet.parts.at(static_cast<std::size_t>(part)));
  const QString name = part_name(sheet, part);
  if (post == nullptr) return name;
  return PartWords::tr("post %1, %2").arg(QString::fromStdString(post->label), name);
}

QString spoken_part(const RunSheet& sheet, int part) {
  const SheetPart& at = sheet.parts.at(static_cast<std::size_t>(part));
  QStringList words;
  if (const SheetPost* post = post_of(sheet, at)) {
    words << PartWords::tr("Post %1").arg(QString::fromStdString(post->label));
  }
  words << part_name(sheet, part);
  if (at.struck) words << PartWords::tr("struck");
  const auto& grade = at.now ? at.now : at.last;
  if (grade) {
    words << PartWords::tr("grade %1").arg(grade->grade)
          << grade_word(grade->grade, at.finish).toLower();
  }
  for (const SheetFinding& finding : sheet.findings) {
    if (finding.part == part)
      words << PartWords::tr("finding %1").arg(QString::fromStdString(finding.number));
  }
  if (!at.now) words << PartWords::tr("not yet graded this visit");
  return words.join(PartWords::tr(", "));
}

QString spoken_post(const RunSheet& sheet, int post) {
  const SheetPost& at = sheet.posts.at(static_cast<std::size_t>(post));
  const QString name = PartWords::tr("Post %1").arg(QString::fromStdString(at.label));
  switch (at.state) {
    case PostState::open:
      return PartWords::tr("%1, open").arg(name);
    case PostState::seen:
      return PartWords::tr("%1, seen").arg(name);
    case PostState::struck:
      return PartWords::tr("%1, struck").arg(name);
    case PostState::skipped:
      break;
  }
  return PartWords::tr("%1, skipped: %2").arg(name, QString::fromStdString(at.skipped_because));
}

QString spoken_bay(const RunSheet& sheet, int bay) {
  const SheetBay& at = sheet.bays.at(static_cast<std::size_t>(bay));
  const auto label = [&](int post) {
    return QString::fromStdString(sheet.posts.at(static_cast<std::size_t>(post)).label);
  };
  QString name = PartWords::tr("Bay %1 to %2").arg(label(at.from), label(at.to));
  if (at.closed_off) name = PartWords::tr("%1, closed off").arg(name);
  if (at.struck) name = PartWords::tr("%1, struck").arg(name);
  return name;
}

}  // namespace kneerail
