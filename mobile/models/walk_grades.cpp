// The grades of the Walk room: of one part, of a post as last time, and what was skipped.

#include <algorithm>
#include <utility>

#include "core/records/condition_grade.h"
#include "core/records/hand_load.h"
#include "core/records/visit.h"
#include "mobile/models/part_words.h"
#include "mobile/models/walk_model.h"

using kneerail::ConditionGrade;
using kneerail::Felt;
using kneerail::Finish;
using kneerail::HandLoad;
using kneerail::HowLooked;
using kneerail::PostState;
using kneerail::SheetPart;

int WalkModel::last_grade() const {
  const SheetPart* own = part();
  return own == nullptr || !own->last ? 0 : own->last->grade;
}

int WalkModel::grade_now() const {
  const SheetPart* own = part();
  return own == nullptr || !own->now ? 0 : own->now->grade;
}

QStringList WalkModel::grade_names() const {
  QStringList names;
  for (int grade = 1; grade <= 5; ++grade)
    names << kneerail::grade_word(grade, part() == nullptr ? Finish::zinc : part()->finish);
  return names;
}

QStringList WalkModel::grade_tests() const {
  QStringList tests;
  for (int grade = 1; grade <= 5; ++grade) tests << grade_test(grade);
  return tests;
}

QString WalkModel::grade_test(int grade) const {
  const Finish finish = part() == nullptr ? Finish::zinc : part()->finish;
  const bool painted = finish == Finish::paint || finish == Finish::zinc_and_paint;
  switch (grade) {
    case 1:
      if (painted) return tr("paint whole");
      if (finish == Finish::aluminium) return tr("no pits");
      return finish == Finish::stainless ? tr("bright") : tr("coating whole");
    case 2:
      if (painted) return tr("chalking, no red rust");
      if (finish == Finish::aluminium) return tr("white bloom, no pits");
      return finish == Finish::stainless ? tr("tea stain") : tr("white bloom, no red rust");
    case 3:
      if (painted) return tr("or paint broken");
      if (finish == Finish::aluminium) return tr("pits you can feel");
      return finish == Finish::stainless ? tr("pits") : tr("or coating under half");
    case 4:
      return tr("section loss, loose, seized");
    case 5:
      return tr("split, holed, missing, moves");
    default:
      return {};
  }
}

void WalkModel::chooseGrade(int grade) {
  const SheetPart* own = part();
  if (own == nullptr || grade < 1 || grade > 5 || !writable()) return;
  // A second touch on the same key says nothing new.
  if (grade_asked_ > 0 && grade_asked_of_ == own->id && grade_asked_ == grade) return;
  if (grade_asked_ == 0 && own->now && own->now->grade == grade && !own->now->carried) return;
  grade_asked_of_ = own->id;
  grade_asked_ = grade;
  ConditionGrade fields;
  fields.visit = pen_.visit();
  fields.grade = grade;
  fields.how = HowLooked::looked_near;
  fields.note.life = own->life;
  pads_used_[own->role] = GradePad;
  WalkPen::Act act{tr("grade %1").arg(grade), own->id, {pen_.entry(own->id, fields)}, {}, {}};
  act.told = [this, part = own->id](bool kept) {
    if (part == grade_asked_of_) grade_asked_ = 0;
    if (kept) emit felt(QStringLiteral("kept"));
  };
  pen_.write(std::move(act));
  coating_.preset_under_probe(grade);
}

/// The first part of the post, from the top down, that has to be looked at afresh; -1: none.
int WalkModel::part_to_look_at() const {
  const auto& most = pen_.rules().carried_in_a_row_most;
  for (const int place : parts_in_order(run_.post())) {
    const SheetPart& own = sheet().parts[static_cast<std::size_t>(place)];
    if (own.now) continue;
    if (!own.last || own.last->grade > 2) return place;
    if (most && own.carried_in_a_row >= *most) return place;
  }
  return -1;
}

QString WalkModel::why_not_as_last_time() const {
  if (!writable()) return tr("Read only");
  if (run_.post() < 0) return tr("Choose a post.");
  const auto order = parts_in_order(run_.post());
  if (order.empty()) return tr("Nothing stands here.");
  const int place = part_to_look_at();
  if (place >= 0) {
    const SheetPart& own = sheet().parts[static_cast<std::size_t>(place)];
    if (!own.last) return tr("Look again: not graded before");
    if (own.last->grade > 2) return tr("Look again: grade %1 last time").arg(own.last->grade);
    return tr("Look again: as last time %n time(s) running", nullptr, own.carried_in_a_row);
  }
  for (const auto& finding : sheet().findings)
    if (finding.post == run_.post())
      return tr("Look again: %1 is open").arg(QString::fromStdString(finding.number));
  const bool done = std::all_of(order.begin(), order.end(), [this](int at) {
    return sheet().parts[static_cast<std::size_t>(at)].now.has_value();
  });
  return done ? tr("Every part has its grade.") : QString();
}

QString WalkModel::look_again_part() const {
  const int place = part_to_look_at();
  return place < 0 ? QString() : kneerail::part_name(sheet(), place);
}

void WalkModel::lookAgain() {
  const auto order = parts_in_order(run_.post());
  if (order.empty() || !writable()) return;
  const int place = part_to_look_at();
  run_.choose_part(place < 0 ? order.front() : place);
  set_pad(GradePad);
}

/// Parts that were graded in this visit keep that grade.
void WalkModel::asLastTime(bool pushed) {
  if (!as_last_time_offered() || post_asked_ >= 0) return;
  leave();
  WalkPen::Act act;
  act.words = tr("post %1").arg(post_label());
  act.component = sheet().posts[static_cast<std::size_t>(run_.post())].id;
  for (const int place : parts_in_order(run_.post())) {
    const SheetPart& own = sheet().parts[static_cast<std::size_t>(place)];
    if (own.now) continue;
    ConditionGrade fields;
    fields.visit = pen_.visit();
    fields.grade = own.last->grade;
    fields.how = pushed ? HowLooked::pushed_and_looked : HowLooked::looked_near;
    fields.note.as_last_time.set = true;
    fields.note.life = own.life;
    act.entries.push_back(pen_.entry(own.id, fields));
  }
  for (const auto& bay : sheet().bays) {
    if (bay.from != run_.post() || bay.struck) continue;
    HandLoad fields;
    fields.visit = pen_.visit();
    fields.felt = pushed ? Felt::firm : Felt::not_pushed;
    act.entries.push_back(pen_.entry(bay.id, fields));
  }
  write_and_go_on(std::move(act), run_.post());
}

/// The drawing goes on when the disk has it, from where it was asked.
void WalkModel::write_and_go_on(WalkPen::Act act, int post) {
  act.told = [this, run = sheet().id, post](bool kept) {
    post_asked_ = -1;
    if (!kept || sheet().id != run) return;
    emit felt(QStringLiteral("postDone"));
    if (run_.post() >= 0 && run_.post() <= post) choosePost(std::min(post + 1, run_.posts() - 1));
  };
  post_asked_ = post;
  pen_.write(std::move(act));
}

void WalkModel::skip(SkipReason reason, int to_post) {
  if (run_.post() < 0 || post_asked_ >= 0 || !writable()) return;
  leave();
  const auto [first, last] = std::minmax({run_.post(), std::clamp(to_post, 0, run_.posts() - 1)});
  WalkPen::Act act;
  for (int place = first; place <= last; ++place) {
    const auto& post = sheet().posts[static_cast<std::size_t>(place)];
    if (post.state == PostState::seen || post.state == PostState::struck) continue;
    kneerail::NotReached fields;
    fields.visit = pen_.visit();
    fields.reason = static_cast<kneerail::WhyNotReached>(reason);
    if (act.entries.empty()) act.component = post.id;
    act.entries.push_back(pen_.entry(post.id, fields));
  }
  if (act.entries.empty())
    return say(tr("Nothing was skipped: every post there is seen or struck."));
  act.words = tr("%n post(s) skipped", nullptr, static_cast<int>(act.entries.size()));
  write_and_go_on(std::move(act), last);
}
