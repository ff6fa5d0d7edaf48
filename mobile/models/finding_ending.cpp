#include "mobile/models/finding_ending.h"

#include <utility>

#include "mobile/models/finding_words.h"

using kneerail::EndedOn;
using kneerail::FindingEnded;
using kneerail::HowEnded;
using kneerail::KeptFinding;
using kneerail::Uuid;
using kneerail::WorkAction;
using kneerail::WorkDone;

FindingEnding::FindingEnding(WalkModel& walk, QObject* parent) : QObject(parent), walk_(walk) {}

void FindingEnding::show(const KeptFinding* finding, std::optional<Uuid> life) {
  const bool same = finding != nullptr && finding_ && finding->record == finding_->record;
  finding_ = finding == nullptr ? std::nullopt : std::optional(*finding);
  life_ = life;
  if (!same) said_ = {};
  emit changed();
}

QList<QString> FindingEnding::hands() const {
  return {tr("%1, on the spot").arg(walk_.person_words()), tr("own crew"), tr("contractor")};
}

bool FindingEnding::asks_by_whom() const {
  return said_.work > 0 || said_.how == static_cast<int>(HowEnded::repaired);
}

bool FindingEnding::asks_on_what() const {
  return finding_ && finding_->cannot_wait();
}

HowEnded FindingEnding::ended() const {
  if (said_.work == 0) return static_cast<HowEnded>(said_.how);
  return starts_new_life(static_cast<WorkAction>(said_.work)) ? HowEnded::replaced
                                                              : HowEnded::repaired;
}

QString FindingEnding::missing() const {
  if (said_.work == 0 && said_.how == 0) return tr("Say what ended it.");
  if (asks_on_what() && said_.on_what == 0) return tr("Say on what it is ended.");
  return {};
}

QString FindingEnding::says() const {
  if (said_.work == 0 && said_.how == 0) return {};
  QString what = said_.work > 0 ? kneerail::work_name(static_cast<WorkAction>(said_.work))
                                : kneerail::ended_name(static_cast<HowEnded>(said_.how));
  if (asks_by_whom()) what = tr("%1 by %2").arg(what, hands().at(said_.by));
  if (said_.on_what == 0) return what;
  return tr("%1, %2").arg(what, kneerail::ended_on_name(static_cast<EndedOn>(said_.on_what)));
}

void FindingEnding::chooseWork(int work) {
  if (!mends() || work < 1 || work > static_cast<int>(WorkAction::other)) return;
  said_.work = work;
  said_.how = 0;
  emit changed();
}

void FindingEnding::chooseHow(int how) {
  const auto code = static_cast<HowEnded>(how);
  const bool without_work = code == HowEnded::reassessed || code == HowEnded::raised_by_mistake ||
                            (code == HowEnded::repaired && !mends());
  if (!finding_ || !without_work) return;
  said_.how = how;
  said_.work = 0;
  emit changed();
}

void FindingEnding::chooseBy(int place) {
  if (place < 0 || place >= hands().size()) return;
  said_.by = place;
  emit changed();
}

void FindingEnding::chooseOnWhat(int on) {
  if (on < 1 || on > static_cast<int>(EndedOn::papers_only)) return;
  said_.on_what = on;
  emit changed();
}

WorkDone FindingEnding::work_done() const {
  WorkDone work;
  work.visit = walk_.pen().visit();
  work.action = static_cast<WorkAction>(said_.work);
  work.life_before = life_;
  work.finding = finding_->record;
  work.day_done = walk_.pen().today();
  if (said_.by > 0) work.done_by = hands().at(said_.by).toStdString();
  return work;
}

/// The sentence that is kept with it is the one on the screen.
void FindingEnding::end() {
  if (!finding_ || !walk_.writable() || !missing().isEmpty()) return;
  WalkPen& pen = walk_.pen();
  const WalkPen::Hand hand{finding_->site, pen.visit(), pen.hand().who};
  FindingEnded ended_now;
  ended_now.how = ended();
  ended_now.note = says().toStdString();
  if (finding_->cannot_wait()) ended_now.hazards = finding_->hazards;
  if (said_.on_what > 0) ended_now.on_what = static_cast<EndedOn>(said_.on_what);
  WalkPen::Act act;
  act.words = tr("%1 ended").arg(QString::fromStdString(finding_->number));
  act.component = finding_->subject;
  if (said_.work > 0) {
    act.entries.push_back(
        pen.entry_by(hand, WorkDone::kind, finding_->subject, to_body(work_done())));
    ended_now.work = act.entries.back().id;
  }
  act.entries.push_back(
      pen.entry_by(hand, FindingEnded::kind, finding_->record, to_body(ended_now)));
  pen.write_by(hand, std::move(act));
}
