#include "mobile/models/walk_pen.h"

#include <QPointer>
#include <algorithm>
#include <array>
#include <utility>

#include "core/records/correction.h"
#include "core/records/finding.h"
#include "core/records/made_safe.h"
#include "core/records/visit.h"
#include "mobile/models/walk_ahead.h"
#include "schema/store/organisation_days.h"

using kneerail::Done;
using kneerail::Draft;
using kneerail::Entry;
using kneerail::Instant;
using kneerail::KnownInstrument;
using kneerail::KnownPerson;
using kneerail::Result;
using kneerail::Uuid;

namespace {

/// What is said of a finding later is no entry of a visit.
bool is_of_visit(const Entry& entry) {
  constexpr std::array of_findings = {kneerail::MadeSafe::kind, kneerail::FindingEnded::kind,
                                      kneerail::NextStep::kind, kneerail::ClosureLook::kind};
  return std::find(of_findings.begin(), of_findings.end(), entry.kind) == of_findings.end();
}

/// By what tells drafts apart.
bool is_same_draft(const Draft& one, const Draft& other) {
  return one.feed == other.feed && one.kind == other.kind && one.subject == other.subject &&
         one.place == other.place;
}

/// What cannot wait is only ended by a person, who says that it was a mistake.
bool is_hazard(const Entry& entry) {
  constexpr int key_hazard = 4;
  const auto* hazard = entry.body.find(key_hazard);
  return entry.kind == kneerail::Finding::kind && hazard != nullptr &&
         *hazard == kneerail::cbor::Value(true);
}

}  // namespace

WalkPen::WalkPen(StoreLink& store, kneerail::Clock& clock, kneerail::Random& random,
                 QObject* parent)
    : QObject(parent), store_(store), clock_(clock), random_(random) {}

Result<> WalkPen::begin(const Uuid& site) {
  kneerail::Database& tables = store_.reader().tables();
  auto people = people_in_service(tables);
  if (!people) return kneerail::fail(people.error());
  auto instruments = instruments_in_service(tables);
  if (!instruments) return kneerail::fail(instruments.error());
  auto right = readings_put_right(tables);
  if (!right) return kneerail::fail(right.error());
  put_right_ = std::move(*right);
  auto days = kneerail::organisation_days(tables);
  if (!days) return kneerail::fail(days.error());
  zone_ = std::move(days->zone);
  people_ = std::move(*people);
  instruments_ = std::move(*instruments);
  auto rules = walk_rules(tables, site);
  if (!rules) return kneerail::fail(rules.error());
  rules_ = *rules;
  if (site == site_ && !visit_.is_zero()) return Done{};
  site_ = site;
  return find_visit();
}

Result<> WalkPen::find_visit() {
  const Uuid who = person() == nullptr ? Uuid{} : person()->id;
  auto visit = visit_under_way(store_.reader(), site_, who, clock_.now());
  if (!visit) return kneerail::fail(visit.error());
  visit_opened_ = visit->has_value();
  visit_ = visit->value_or(mint());
  entries_kept_ = 0;
  if (visit_opened_)
    if (auto count = entries_of_visit(store_.reader().tables(), visit_)) entries_kept_ = *count;
  // What could be taken back was of the visit before.
  done_.clear();
  undone_.clear();
  emit undoChanged();
  return Done{};
}

Result<> WalkPen::choose_person(const Uuid& person) {
  if (person == person_chosen_) return Done{};
  person_chosen_ = person;
  return site_.is_zero() ? Result<>(Done{}) : find_visit();
}

void WalkPen::choose_instrument(const Uuid& instrument) {
  instruments_chosen_.insert(instruments_chosen_.begin(), instrument);
}

const KnownInstrument* WalkPen::instrument(kneerail::InstrumentKind kind) const {
  for (const Uuid& chosen : instruments_chosen_)
    for (const KnownInstrument& instrument : instruments_)
      if (instrument.id == chosen && instrument.kind == kind) return &instrument;
  for (const KnownInstrument& instrument : instruments_)
    if (instrument.kind == kind) return &instrument;
  return nullptr;
}

std::vector<KnownInstrument> WalkPen::instruments(kneerail::InstrumentKind kind) const {
  std::vector<KnownInstrument> of_kind;
  for (const KnownInstrument& instrument : instruments_)
    if (instrument.kind == kind) of_kind.push_back(instrument);
  return of_kind;
}

const KnownPerson* WalkPen::person() const {
  return who_walks(people_, person_chosen_);
}

QTime WalkPen::kept_at() const {
  return kept_at_ ? local(*kept_at_).time() : QTime();
}

QDateTime WalkPen::local(Instant at) const {
  return QDateTime::fromMSecsSinceEpoch(at.ms + 1000LL * zone_.offset_s(at), Qt::UTC);
}

/// Where clocks go back, the later of the two.
Instant WalkPen::instant(const QDateTime& local) const {
  const std::int64_t shown_ms = QDateTime(local.date(), local.time(), Qt::UTC).toMSecsSinceEpoch();
  const Instant near{shown_ms - 1000LL * zone_.offset_s({shown_ms})};
  return {shown_ms - 1000LL * zone_.offset_s(near)};
}

Uuid WalkPen::mint() {
  std::array<std::uint8_t, 10> chance{};
  random_.fill(chance);
  return kneerail::uuid7(clock_.now().ms, chance);
}

WalkPen::Hand WalkPen::hand() const {
  return {site_, visit_, person() == nullptr ? Uuid{} : person()->id};
}

Entry WalkPen::entry(int kind, const Uuid& subject, kneerail::cbor::Map body) {
  return entry_by(hand(), kind, subject, std::move(body));
}

Entry WalkPen::entry_by(const Hand& hand, int kind, const Uuid& subject, kneerail::cbor::Map body) {
  return {hand.site, kind, subject, hand.who, std::move(body), mint()};
}

Entry WalkPen::opening(const Hand& hand) {
  Entry opening = entry_by(hand, kneerail::VisitOpened::kind, hand.site,
                           kneerail::to_body(kneerail::VisitOpened{}));
  opening.id = hand.visit;
  return opening;
}

Draft WalkPen::own(Draft draft) const {
  if (draft.feed.is_zero()) draft.feed = site_;
  if (person() != nullptr) draft.who = person()->id;
  return draft;
}

void WalkPen::write_by(const Hand& hand, Act act) {
  if (act.entries.empty()) return;
  const bool goes_on = hand.visit == visit_;
  act.visit = hand.visit;
  act.counts = std::count_if(act.entries.begin(), act.entries.end(), is_of_visit);
  // Sent with each act until the disk has it: the register leaves alone what it has already.
  if (act.counts > 0 && (!goes_on || !visit_opened_)) act.opens = opening(hand);
  if (goes_on) {
    done_.push_back({act, {}});
    done_.back().act->told = nullptr;
    undone_.clear();
    emit undoChanged();
  }
  send(std::move(act));
}

void WalkPen::send(Act act) {
  std::vector<Entry> entries = act.entries;
  if (act.opens) entries.insert(entries.begin(), *act.opens);
  auto ended = act.ended;
  store_.save(std::move(entries), std::move(ended),
              [self = QPointer<WalkPen>(this), act = std::move(act)](const Result<>& saved) {
                if (self) self->answered(act, saved);
              });
}

void WalkPen::answered(const Act& act, const Result<>& saved) {
  if (!saved) {
    // The identifiers stay: sent again, what had reached the disk after all is left alone.
    failed_.push_back(act);
    say(saved.error());
    if (act.told) act.told(false);
    return;
  }
  if (act.opens && act.opens->id == visit_) visit_opened_ = true;
  kept_at_ = clock_.now();
  is_ended(act);
  clear_trouble();
  count(act);
  drop_also_ended(act);
  const auto is_of_act = [&](const KnownInstrument& one) { return one.id == act.component; };
  if (std::any_of(instruments_.begin(), instruments_.end(), is_of_act)) read_instruments();
  if (act.told) act.told(true);
  emit kept(act.component, act.entries);
}

/// What the visit holds, without counting all of it after each entry.
void WalkPen::count(const Act& act) {
  if (act.visit != visit_) return;
  entries_kept_ += act.counts;
}

/// Their records are there. One that is still there after a power cut says the same once more, and
/// the register leaves alone what it has.
void WalkPen::drop_also_ended(const Act& act) {
  for (const Draft& draft : act.also_ended) drop_draft(draft, {});
}

/// One of them was checked. Where they cannot be read, they stay as they were.
void WalkPen::read_instruments() {
  if (auto known = instruments_in_service(store_.reader().tables()))
    instruments_ = std::move(*known);
}

/// A draft becomes a record of its visit at the next start, whatever happens: the visit is first.
void WalkPen::open_visit_first() {
  if (visit_opened_) return;
  store_.save({opening(hand())}, std::nullopt,
              [self = QPointer<WalkPen>(this), visit = visit_](const Result<>& saved) {
                if (self && saved && self->visit_ == visit) self->visit_opened_ = true;
              });
}

void WalkPen::save_draft(Draft draft, Told told) {
  open_visit_first();
  ask_draft(own(std::move(draft)), true, std::move(told));
}

void WalkPen::drop_draft(Draft draft, Told told) {
  ask_draft(own(std::move(draft)), false, std::move(told));
}

void WalkPen::ask_draft(Draft draft, bool wanted, Told told) {
  auto asked = std::find_if(drafts_.begin(), drafts_.end(),
                            [&](const AskedDraft& one) { return is_same_draft(one.draft, draft); });
  if (asked == drafts_.end()) asked = drafts_.insert(asked, AskedDraft{});
  asked->draft = draft;
  asked->wanted = wanted;
  asked->told = told;
  ++asked->on_their_way;
  const auto answer = [self = QPointer<WalkPen>(this), told = std::move(told),
                       draft](const Result<>& saved) {
    if (self) self->answered_draft(draft, told, saved);
  };
  if (wanted)
    store_.save_draft(std::move(draft), answer);
  else
    store_.drop_draft(std::move(draft), answer);
}

/// They are answered in the order they were asked: the last answer of a draft says how it stands.
void WalkPen::answered_draft(const Draft& draft, const Told& told, const Result<>& saved) {
  const auto asked = std::find_if(drafts_.begin(), drafts_.end(), [&](const AskedDraft& one) {
    return is_same_draft(one.draft, draft);
  });
  if (asked != drafts_.end()) {
    --asked->on_their_way;
    asked->failed = !saved;
    if (saved && asked->on_their_way == 0) drafts_.erase(asked);
  }
  if (saved) {
    kept_at_ = clock_.now();
    clear_trouble();
  } else {
    say(saved.error());
  }
  if (told) told(saved.has_value());
}

/// What the drafts said is in records.
void WalkPen::is_ended(const Act& act) {
  const auto ended = [&](const AskedDraft& one) {
    const auto same = [&](const Draft& draft) { return is_same_draft(own(draft), one.draft); };
    return (act.ended && same(*act.ended)) ||
           std::any_of(act.also_ended.begin(), act.also_ended.end(), same);
  };
  for (AskedDraft& one : drafts_)
    if (ended(one)) one.failed = false;
  std::erase_if(drafts_,
                [](const AskedDraft& one) { return !one.failed && one.on_their_way == 0; });
}

bool WalkPen::draft_failed() const {
  return std::any_of(drafts_.begin(), drafts_.end(),
                     [](const AskedDraft& one) { return one.failed; });
}

bool WalkPen::draft_failed(int kind, const Uuid& subject) const {
  return std::any_of(drafts_.begin(), drafts_.end(), [&](const AskedDraft& one) {
    return one.failed && one.draft.kind == kind && one.draft.subject == subject;
  });
}

void WalkPen::put_drafts_again() {
  const std::vector<AskedDraft> asked = drafts_;
  for (const AskedDraft& one : asked)
    if (one.failed) ask_draft(one.draft, one.wanted, one.told);
}

void WalkPen::seal(std::vector<std::uint8_t> signature,
                   std::function<void(const QString& why_not)> told) {
  if (waits() || draft_failed())
    return told(tr("Something is not kept yet. Try again, then seal. Nothing was sealed."));
  if (!visit_opened_ || person() == nullptr)
    return told(tr("Nothing was entered in this visit. Nothing was sealed."));
  store_.seal({site_, visit_, person()->id}, std::move(signature),
              [self = QPointer<WalkPen>(this), visit = visit_,
               told = std::move(told)](const Result<>& sealed) {
                if (!self) return;
                if (!sealed) return told(QString::fromStdString(sealed.error().message));
                if (self->visit_ == visit)
                  if (auto begun = self->find_visit(); !begun) self->say(begun.error());
                told({});
              });
}

void WalkPen::remember(Typed typed) {
  done_.push_back({std::nullopt, std::move(typed)});
  undone_.clear();
  emit undoChanged();
}

void WalkPen::took_back(Typed digits) {
  undone_.push_back({std::nullopt, std::move(digits), true});
  emit undoChanged();
}

void WalkPen::forget_redo() {
  if (undone_.empty()) return;
  undone_.clear();
  emit undoChanged();
}

void WalkPen::forget_typed(const void* owner) {
  const auto of_owner = [&](const Step& step) { return !step.act && step.typed.owner == owner; };
  std::erase_if(done_, of_owner);
  std::erase_if(undone_, of_owner);
  emit undoChanged();
}

QString WalkPen::undo_words() const {
  return done_.empty() ? QString() : done_.back().words();
}
QString WalkPen::redo_words() const {
  return undone_.empty() ? QString() : undone_.back().words();
}

bool WalkPen::undo() {
  if (done_.empty()) return false;
  undone_.push_back(std::move(done_.back()));
  done_.pop_back();
  const Step step = undone_.back();  // what is taken back may change both lists
  bool in_log = false;
  if (step.act) {
    in_log = take_back(*step.act);
  } else {
    emit takenBack(step.typed.component);
    step.typed.take_back();
  }
  emit undoChanged();
  return in_log;
}

/// What never reached the disk is given up; what did gets a void, and the log keeps both.
bool WalkPen::take_back(const Act& act) {
  const auto waiting = std::find_if(failed_.begin(), failed_.end(), [&](const Act& other) {
    return other.entries.front().id == act.entries.front().id;
  });
  if (waiting != failed_.end()) {
    failed_.erase(waiting);
    if (act.ended) drop_draft(*act.ended, {});
    drop_also_ended(act);
    clear_trouble();
    emit givenUp(act.component);
    return false;
  }
  Act voids{tr("taken back"), act.component, {}, {}, {}, {}, act.visit};
  for (const Entry& entered : act.entries) {
    voids.entries.push_back(taking_back(entered));
    if (is_of_visit(entered) && !is_hazard(entered)) --voids.counts;
  }
  send(std::move(voids));
  emit takenBack(act.component);
  return true;
}

Entry WalkPen::taking_back(const Entry& entered) {
  if (!is_hazard(entered))
    return entry(*entered.id, kneerail::Voided{.reason = "taken back", .provenance = {}});
  kneerail::FindingEnded ended;
  ended.how = kneerail::HowEnded::raised_by_mistake;
  ended.note = "taken back";
  ended.hazards = {*entered.id};
  ended.on_what = kneerail::EndedOn::seen;
  return entry(*entered.id, ended);
}

void WalkPen::redo() {
  if (undone_.empty()) return;
  Step step = std::move(undone_.back());
  undone_.pop_back();
  if (step.act) {
    give_new_ids(step.act->entries);
    step.act->ended.reset();
    step.act->also_ended.clear();
    send(*step.act);
    emit takenBack(step.act->component);
  } else {
    emit takenBack(step.typed.component);
    step.typed.put_back();
  }
  if (!step.unfinished) done_.push_back(std::move(step));
  emit undoChanged();
}

/// What is about one of them stays about it.
void WalkPen::give_new_ids(std::vector<Entry>& entries) {
  for (Entry& entered : entries) {
    const Uuid before = *entered.id;
    entered.id = mint();
    for (Entry& other : entries)
      if (other.subject == before) other.subject = *entered.id;
  }
}

void WalkPen::say(const kneerail::Error& error) {
  trouble_ = tr("Not kept: %1 The number stays here. Try again.")
                 .arg(QString::fromStdString(error.message));
  emit troubleChanged();
}

void WalkPen::clear_trouble() {
  if (trouble_.isEmpty() || !failed_.empty() || draft_failed()) return;
  trouble_.clear();
  emit troubleChanged();
}

std::vector<const Entry*> WalkPen::waiting_entries(int kind, const Uuid& subject) const {
  std::vector<const Entry*> waiting;
  for (const Act& act : failed_)
    for (const Entry& entry : act.entries)
      if (entry.kind == kind && entry.subject == subject) waiting.push_back(&entry);
  return waiting;
}

void WalkPen::try_again() {
  std::vector<Act> again = std::exchange(failed_, {});
  trouble_.clear();
  emit troubleChanged();
  put_drafts_again();
  for (Act& act : again) send(std::move(act));
}
