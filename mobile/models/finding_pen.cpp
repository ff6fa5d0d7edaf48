#include "mobile/models/finding_pen.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/fold/finding_rules.h"
#include "core/records/condition_grade.h"
#include "core/records/made_safe.h"
#include "mobile/models/finding_words.h"
#include "mobile/models/part_words.h"
#include "schema/store/finding_store.h"

using kneerail::Draft;
using kneerail::FindingKind;
using kneerail::Instant;
using kneerail::MadeSafe;
using kneerail::Measure;
using kneerail::Photograph;
using kneerail::Uuid;

namespace {

constexpr int kinds = 14;
constexpr int grade_unfit = 5;
constexpr int why_characters_most = 300;
/// A closure is looked at again within a day, until the owner says otherwise.
constexpr std::int64_t look_again_ms = 24LL * 60 * 60 * 1000;

/// What is split, gone or moves carries nobody; that the person says otherwise is their word.
int grade_of_kind(int kind) {
  constexpr std::array<int, kinds + 1> proposed{0, 5, 4, 5, 3, 3, 4, 3, 3, 4, 4, 5, 3, 3, 4};
  return proposed[static_cast<std::size_t>(kind)];
}

QString sentence_of(const QString& typed) {
  return typed.simplified().left(why_characters_most);
}

}  // namespace

FindingPen::FindingPen(WalkPen& pen, QObject* parent) : QObject(parent), pen_(pen) {
  connect(&intake_, &PictureIntake::busyChanged, this, &FindingPen::changed);
}

void FindingPen::show(const kneerail::RunSheet& sheet, int part, int bay, int post) {
  std::optional<About> about;
  const auto at = [](const auto& things, int place) -> const auto& {
    return things[static_cast<std::size_t>(place)];
  };
  if (part >= 0) {
    const auto& own = at(sheet.parts, part);
    const auto& grade = own.now ? own.now : own.last;
    about = {own.id, own.life, grade ? grade->grade : 0, own.now && !own.now->carried, {}};
  } else if (bay >= 0) {
    about = {at(sheet.bays, bay).id, {}, 0, false, {}};
  } else if (post >= 0) {
    about = {at(sheet.posts, post).id, {}, 0, false, {}};
  }
  if (about) about->words = kneerail::place_words(sheet, about->id);
  const bool same = about && about_ && about->id == about_->id;
  if (!same) close();
  about_ = std::move(about);
  if (!same) begin();
  emit changed();
}

void FindingPen::begin() {
  said_ = {};
  typed_why_.reset();
  id_ = pen_.mint();
  safe_id_ = pen_.mint();
  number_ = 0;
  shown_ = 0;
  picture_trouble_.clear();
}

void FindingPen::open() {
  open_ = true;
  if (number_ > 0 || !about_) return;
  number_ = next_number();
  pictures_.refresh();
  emit changed();
}

/// One after the last of this person at the site, also where that is still on its way to the disk.
int FindingPen::next_number() {
  const Uuid who = pen_.person() == nullptr ? Uuid{} : pen_.person()->id;
  const auto kept = kneerail::last_finding_number(pen_.tables(), pen_.site(), who);
  int last = kept ? static_cast<int>(*kept) : 0;
  if (last_number_of_ == who && last_number_at_ == pen_.site()) last = std::max(last, last_number_);
  return last + 1;
}

int FindingPen::proposed_grade(int kind) const {
  const int at_least = grade_of_kind(kind);
  return about_ ? std::max(at_least, about_->grade) : at_least;
}

void FindingPen::begin_with(FindingKind what, int grade_least) {
  const int kind = static_cast<int>(what);
  if (!writes() || (begun() && (said_.kind != kind || said_.grade >= grade_least))) return;
  if (number_ == 0) number_ = next_number();
  Said said = said_;
  said.kind = kind;
  said.grade = std::max(proposed_grade(kind), grade_least);
  say(std::move(said), kneerail::finding_name(what));
}

void FindingPen::give_up(FindingKind what) {
  Said only_that;
  only_that.kind = static_cast<int>(what);
  only_that.grade = said_.grade;
  if (said_ == only_that) say({}, kneerail::finding_name(what));
}

kneerail::Finding FindingPen::following(FindingKind what) {
  kneerail::Finding finding;
  finding.visit = pen_.visit();
  finding.what = what;
  finding.grade = grade_of_kind(static_cast<int>(what));
  finding.number = std::max(next_number(), begun() ? number_ + 1 : 1);
  took_number(finding.number);
  if (!begun()) number_ = 0;  // the pad asks anew
  return finding;
}

void FindingPen::took_number(int number) {
  last_number_of_ = pen_.person() == nullptr ? Uuid{} : pen_.person()->id;
  last_number_at_ = pen_.site();
  last_number_ = number;
}

bool FindingPen::asks(const Said& said) {
  const auto what = static_cast<FindingKind>(said.kind);
  return said.grade == grade_unfit || what == FindingKind::split || what == FindingKind::missing ||
         what == FindingKind::moves;
}

bool FindingPen::cannot_wait() const {
  return asks(said_);
}

int FindingPen::why_most() const {
  return why_characters_most;
}

QList<int> FindingPen::measures() const {
  QList<int> codes;
  for (const Measure measure : said_.measures) codes << static_cast<int>(measure);
  return codes;
}

bool FindingPen::did(Measure measure) const {
  return std::find(said_.measures.begin(), said_.measures.end(), measure) != said_.measures.end();
}

bool FindingPen::safe() const {
  std::vector<std::int64_t> codes;
  for (const Measure measure : said_.measures) codes.push_back(static_cast<int>(measure));
  return kneerail::fold::hold_people_back(codes, false);
}

void FindingPen::chooseKind(int kind) {
  if (!writes() || kind < 1 || kind > kinds || kind == said_.kind) return;
  Said said = said_;
  said.kind = kind;
  if (!said.grade_by_hand) said.grade = proposed_grade(kind);
  say(std::move(said), kneerail::finding_name(static_cast<FindingKind>(kind)));
}

void FindingPen::chooseGrade(int grade) {
  if (!writes() || grade < 1 || grade > grade_unfit ||
      (grade == said_.grade && said_.grade_by_hand))
    return;
  Said said = said_;
  said.grade = grade;
  said.grade_by_hand = true;
  say(std::move(said), tr("grade %1").arg(grade));
}

void FindingPen::touchMeasure(int measure) {
  const auto code = static_cast<Measure>(measure);
  const bool known = measure >= static_cast<int>(Measure::closed_off) &&
                     measure <= static_cast<int>(Measure::closed_below) && code != Measure::struck;
  if (!writes() || !known || !cannot_wait()) return;
  Said said = said_;
  said.why_it_can_wait.clear();
  if (std::erase(said.measures, code) == 0) said.measures.push_back(code);
  if (said.measures.empty())
    said.safe_at.reset();
  else if (!said.safe_at)
    said.safe_at = pen_.now();
  say(std::move(said), kneerail::measure_name(code));
}

void FindingPen::writeWhy() {
  if (!writes() || !cannot_wait() || typed_why_) return;
  type(said_.why_it_can_wait);
  emit changed();
}

void FindingPen::typeWhy(const QString& why) {
  if (!writes() || !typed_why_ || why == *typed_why_) return;
  type(why);
  emit changed();
}

void FindingPen::leaveWhy() {
  if (!typed_why_) return;
  type({});
  emit changed();
}

void FindingPen::type(std::optional<QString> why) {
  const std::vector<Draft> before = drafts_of(said_);
  typed_why_ = std::move(why);
  put_drafts(before);
}

void FindingPen::itCanWait(const QString& why) {
  if (!writes() || !cannot_wait()) return;
  type(why);
  const QString sentence = sentence_of(why);
  if (sentence != said_.why_it_can_wait) {
    Said said = said_;
    said.why_it_can_wait = sentence;
    if (!sentence.isEmpty()) {
      said.measures.clear();
      said.safe_at.reset();
    }
    say(std::move(said), tr("it can wait"));
  }
  type({});
  emit changed();
}

void FindingPen::say(Said said, const QString& words) {
  open();
  // What cannot be asked any more was not answered.
  if (!asks(said)) {
    said.measures.clear();
    said.safe_at.reset();
    said.why_it_can_wait.clear();
  }
  const auto setting = [this, id = id_](const Said& to) {
    return [this, id, to] {
      if (id_ == id) set(to);
    };
  };
  pen_.remember({this, words, about_->id, setting(said_), setting(said)});
  set(std::move(said));
}

void FindingPen::set(Said said) {
  const std::vector<Draft> before = drafts_of(said_);
  said_ = std::move(said);
  if (!asks(said_)) typed_why_.reset();
  put_drafts(before);
  emit changed();
}

/// Only what changed, and what the disk refused before. What is new is there before what it stands
/// for goes.
void FindingPen::put_drafts(const std::vector<Draft>& before) {
  const std::vector<Draft> now = drafts_of(said_);
  if (has_not_kept()) pen_.put_drafts_again();
  const auto holds = [](const std::vector<Draft>& drafts, const Draft& wanted, bool whole) {
    return std::any_of(drafts.begin(), drafts.end(), [&](const Draft& one) {
      return one.kind == wanted.kind && one.subject == wanted.subject &&
             one.place == wanted.place && (!whole || one.body == wanted.body);
    });
  };
  for (const Draft& draft : now)
    if (!holds(before, draft, true)) put_draft(draft, true);
  for (const Draft& draft : before)
    if (!holds(now, draft, false)) put_draft(draft, false);
}

std::vector<Draft> FindingPen::drafts_of(const Said& said) const {
  std::vector<Draft> drafts;
  if (is_finding(said)) drafts.push_back(finding_draft(said));
  if (!said.measures.empty()) drafts.push_back(safe_draft(said));
  for (const Photo& photo : said.photographs) drafts.push_back(photograph_draft(said, photo));
  return drafts;
}

void FindingPen::put_draft(Draft draft, bool wanted) {
  const auto told = [this, id = id_](bool) {
    if (id_ == id) emit changed();
  };
  if (wanted)
    pen_.save_draft(std::move(draft), told);
  else
    pen_.drop_draft(std::move(draft), told);
}

bool FindingPen::has_not_kept() const {
  return about_ &&
         (pen_.draft_failed(kneerail::Finding::kind, about_->id) ||
          pen_.draft_failed(Photograph::kind, about_->id) ||
          pen_.draft_failed(Photograph::kind, id_) || pen_.draft_failed(MadeSafe::kind, id_));
}

kneerail::Finding FindingPen::finding(const Said& said) const {
  kneerail::Finding finding;
  finding.visit = pen_.visit();
  finding.what = said.kind > 0 ? static_cast<FindingKind>(said.kind) : FindingKind::other;
  finding.grade = said.grade > 0 ? said.grade : proposed_grade(said.kind);
  finding.hazard = asks(said) && said.why_it_can_wait.isEmpty();
  finding.number = number_;
  if (!said.why_it_can_wait.isEmpty()) finding.why_it_can_wait = said.why_it_can_wait.toStdString();
  finding.life = about_->life;
  return finding;
}

MadeSafe FindingPen::made_safe(const Said& said) const {
  MadeSafe safe;
  safe.measures = said.measures;
  std::sort(safe.measures.begin(), safe.measures.end());
  safe.when = said.safe_at;
  safe.look_again_by = Instant{said.safe_at->ms + look_again_ms};
  return safe;
}

/// With the sentence as far as it is typed: a cut of the power loses no word of it, and nothing can
/// wait by half a sentence.
Draft FindingPen::finding_draft(const Said& said) const {
  kneerail::Finding found = finding(said);
  if (const QString typed = sentence_of(typed_why()); !typed.isEmpty())
    found.why_it_can_wait = typed.toStdString();
  Draft draft{pen_.site(), kneerail::Finding::kind, about_->id, 0, {}, to_body(found)};
  draft.body.set(kneerail::draft_key_id, id_);
  return draft;
}

Draft FindingPen::safe_draft(const Said& said) const {
  Draft draft{pen_.site(), MadeSafe::kind, id_, 0, {}, to_body(made_safe(said))};
  draft.body.set(kneerail::draft_key_id, safe_id_);
  return draft;
}

WalkPen::Act FindingPen::act() const {
  WalkPen::Act act;
  act.component = about_->id;
  act.words =
      is_finding(said_) ? tr("F-%1").arg(number_) : tr("%n photograph(s)", nullptr, photographs());
  if (is_finding(said_)) add_finding(act);
  for (const Photo& photo : said_.photographs) {
    const Draft draft = photograph_draft(said_, photo);
    act.entries.push_back(pen_.entry(Photograph::kind, draft.subject, draft.body));
    act.entries.back().body.erase(kneerail::draft_key_id);
    act.entries.back().id = photo.id;
    act.also_ended.push_back(draft);
  }
  return act;
}

/// The finding, with the part's grade; and what was done, at the same moment.
void FindingPen::add_finding(WalkPen::Act& act) const {
  act.ended = finding_draft(said_);
  const kneerail::Finding found = finding(said_);
  act.entries.push_back(pen_.entry(about_->id, found));
  act.entries.back().id = id_;
  if (about_->life && !(about_->graded_now && about_->grade == found.grade)) {
    kneerail::ConditionGrade graded;
    graded.visit = pen_.visit();
    graded.grade = found.grade;
    graded.how = kneerail::HowLooked::looked_near;
    graded.note.life = about_->life;
    act.entries.push_back(pen_.entry(about_->id, graded));
  }
  if (said_.measures.empty()) return;
  act.entries.push_back(pen_.entry(id_, made_safe(said_)));
  act.entries.back().id = safe_id_;
  act.also_ended.push_back(safe_draft(said_));
}

void FindingPen::keep() {
  if (!begun() || !writes()) return;
  if (typed_why_) itCanWait(*typed_why_);
  WalkPen::Act kept_now = act();
  const bool found = is_finding(said_);
  kept_now.told = [this, about = about_->id,
                   hazard = is_finding(said_) && finding(said_).hazard](bool on_disk) {
    if (on_disk) emit kept(about, hazard);
  };
  if (found) {
    took_number(number_);
    if (reads_picture()) kept_.push_back(id_);
  }
  pen_.forget_typed(this);
  begin();
  pen_.write(std::move(kept_now));
  emit changed();
}

void FindingPen::close() {
  keep();
  open_ = false;
}
