#include <QCoreApplication>

#include "mobile/models/forecast_words.h"
#include "mobile/models/run_choices.h"
#include "mobile/models/run_words.h"
#include "mobile/models/site_words.h"

namespace kneerail {
namespace {

QString zone_air(const SiteZone& zone) {
  SiteBand band;
  band.zones = {zone};
  return air_words(band);
}

}  // namespace

class RunPieceWords {
  Q_DECLARE_TR_FUNCTIONS(RunPieceWords)

 public:
  static PieceWords of(RunPiece piece, const NewRun& run, const RunSurroundings& around) {
    const layout::RunRule& rule = run.rule;
    switch (piece) {
      case RunPiece::name:
        if (run.name.empty()) return {tr("a name"), tr("of the run"), false};
        return {QString::fromStdString(run.name), tr("name of the run")};
      case RunPiece::zone:
        return zone(run, around);
      case RunPiece::posts:
        return {QString::number(rule.posts), tr("post(s)", nullptr, rule.posts)};
      case RunPiece::first:
        return {tr("from %1").arg(rule.first_number), tr("numbers")};
      case RunPiece::spacing:
        return {tr("at %1").arg(metres_words(rule.spacing_mm)), tr("post to post")};
      case RunPiece::height:
        return {metres_words(rule.height_mm), tr("high")};
      case RunPiece::rails:
        return {QString::number(rule.rails), tr("rail(s)", nullptr, rule.rails)};
      case RunPiece::tube:
        return {tube_words(rule.diameter_tenth_mm, rule.wall_tenth_mm), tr("tube")};
      case RunPiece::made:
        return {system_words(rule.made), protection_words(rule.made)};
      case RunPiece::base:
        return {base_words(rule.base), tr("at the foot")};
      case RunPiece::joint:
        if (rule.joint == WhatItDoes::adjustable_swivel)
          return {fitting_words(rule.joint), tr("at each rail")};
        return {fitting_words(rule.joint), tr("and cross")};
      case RunPiece::end:
        return {fitting_words(rule.end), rule.end == WhatItDoes::elbow
                                             ? tr("at both ends")
                                             : tr("and end cap at both ends")};
      default:
        return more(piece, run);
    }
  }

 private:
  static PieceWords more(RunPiece piece, const NewRun& run) {
    const layout::RunRule& rule = run.rule;
    switch (piece) {
      case RunPiece::filling:
        return {rule.bays == BayKind::mesh_infill ? tr("mesh infill") : tr("rails only"),
                rule.toe_board ? tr("and toe board") : tr("no toe board")};
      case RunPiece::sleeves:
        if (rule.sleeve_every_bays == 0) return {tr("no sleeve"), tr("in the rails")};
        return {tr("sleeve coupling"), tr("every %n bay(s)", nullptr, rule.sleeve_every_bays)};
      case RunPiece::in_service:
        if (!rule.in_service) return {tr("in service"), tr("day not known"), false};
        return {whole_day(*rule.in_service), tr("in service since")};
      case RunPiece::drop:
        if (!run.drop_mm) return {tr("drop"), tr("not known"), false};
        return {metres_words(*run.drop_mm), tr("drop behind it")};
      case RunPiece::behind:
        if (!run.behind) return {tr("who walks here"), tr("not known"), false};
        return {behind_words(*run.behind), tr("behind it")};
      default:
        if (!run.below) return {tr("what is below"), tr("not known"), false};
        return {below_words(*run.below), tr("below")};
    }
  }

  static PieceWords zone(const NewRun& run, const RunSurroundings& around) {
    for (const auto& zone : around.zones)
      if (zone.id == run.zone) return {QString::fromStdString(zone.name), zone_air(zone)};
    return {tr("a zone"), around.zones.empty() ? tr("this site has none yet") : tr("of the site"),
            false};
  }
};

PieceWords piece_words(RunPiece piece, const NewRun& run, const RunSurroundings& around) {
  return RunPieceWords::of(piece, run, around);
}

bool has_piece(RunPiece piece, const NewRun& run) {
  if (run.rule.made.system != System::welded) return true;
  return piece != RunPiece::joint && piece != RunPiece::end && piece != RunPiece::sleeves;
}

}  // namespace kneerail
