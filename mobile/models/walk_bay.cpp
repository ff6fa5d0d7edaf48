// The bays of the Walk room.

#include <algorithm>

#include "mobile/models/walk_model.h"

using kneerail::SheetBay;

void WalkModel::listen_to_bay() {
  connect(&bay_, &BayCheck::changed, this, &WalkModel::undoChanged);
  connect(&bay_, &BayCheck::changed, this, &WalkModel::messageChanged);
  connect(&bay_, &BayCheck::pushKept, this, [this] { emit felt(QStringLiteral("kept")); });
  connect(&bay_, &BayCheck::measureKept, this, [this](bool outside) {
    emit felt(outside ? QStringLiteral("far") : QStringLiteral("kept"));
  });
  connect(&bay_, &BayCheck::foundByItself, this, &WalkModel::say);
  connect(&bay_, &BayCheck::findingWanted, this, [this] { openPad(FindingPad); });
}

WalkModel::Pad WalkModel::plain_pad() const {
  if (part_chosen()) return GradePad;
  const int bay = run_.bay();
  return bay >= 0 && !sheet().bays[static_cast<std::size_t>(bay)].struck ? BayPad : PostPad;
}

void WalkModel::chooseBay(int bay) {
  if (bay >= 0 && bay < static_cast<int>(sheet().bays.size())) run_.choose_bay(bay);
}

void WalkModel::chooseBayAfter() {
  const auto& bays = sheet().bays;
  const auto at = std::find_if(bays.begin(), bays.end(), [this](const SheetBay& bay) {
    return bay.from == run_.post() && !bay.struck;
  });
  if (at != bays.end()) run_.choose_bay(static_cast<int>(at - bays.begin()));
}

void WalkModel::touchBay(int bay, qreal along_mm, qreal up_mm) {
  chooseBay(bay);
  bay_.touched_at({qRound64(along_mm), qRound64(up_mm)});
}

/// The next that stands; -1 at the last.
int WalkModel::next_bay_place() const {
  const auto& bays = sheet().bays;
  for (int place = run_.bay() + 1; run_.bay() >= 0 && place < static_cast<int>(bays.size());
       ++place)
    if (!bays[static_cast<std::size_t>(place)].struck) return place;
  return -1;
}

QString WalkModel::next_bay_words() const {
  const int next = next_bay_place();
  if (next < 0) return {};
  const SheetBay& bay = sheet().bays[static_cast<std::size_t>(next)];
  return tr("%1 to %2").arg(postLabelAt(bay.from), postLabelAt(bay.to));
}

void WalkModel::nextBay() {
  if (run_.bay() < 0) return;
  const int next = next_bay_place();
  if (next < 0) return choosePost(sheet().bays[static_cast<std::size_t>(run_.bay())].to);
  emit felt(QStringLiteral("postDone"));
  chooseBay(next);
}
