#include "mobile/models/bay_check.h"

#include <algorithm>
#include <utility>

#include "mobile/models/finding_pen.h"
#include "mobile/models/finding_words.h"
#include "mobile/models/part_words.h"
#include "schema/journal/draft.h"

using kneerail::BayKind;
using kneerail::Draft;
using kneerail::Felt;
using kneerail::Finding;
using kneerail::FindingKind;
using kneerail::GateCheck;
using kneerail::Geometry;
using kneerail::HandLoad;
using kneerail::Measured;
using kneerail::RunSheet;
using kneerail::SheetBay;
using kneerail::Uuid;

namespace {

constexpr std::array<Measured, BayCheck::measure_count> measured{
    Measured::rail_height, Measured::gap_between, Measured::gap_below};
constexpr TypedSlot::Numbers whole_mm{1, 9'999};  // four digits: no rail is higher
constexpr int given_place = 1;  // of its draft, beside one that the Finding pad has of the same bay
constexpr int visit_key = 1;
constexpr int no = 2;
constexpr int unfit = 5;

std::size_t index_of(int row) {
  return static_cast<std::size_t>(row);
}

}  // namespace

BayCheck::BayCheck(WalkPen& pen, FindingPen& finding, QObject* parent)
    : QAbstractListModel(parent), pen_(pen), finding_(finding) {}

int BayCheck::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : measure_count;
}

bool BayCheck::is_gate() const {
  return bay_ && bay_->kind == BayKind::gate;
}

bool BayCheck::found(FindingKind what) const {
  return std::find(found_.begin(), found_.end(), what) != found_.end();
}

/// A hand at the screws of the bay's posts is still at the bay.
bool BayCheck::is_left(const RunSheet& sheet, Chosen chosen) const {
  if (sheet.id != given_->run) return true;
  if (chosen.bay >= 0) return sheet.bays[index_of(chosen.bay)].id != given_->bay;
  return chosen.post != given_->from && chosen.post != given_->to;
}

void BayCheck::show(const RunSheet& sheet, Chosen chosen) {
  if (given_ && is_left(sheet, chosen)) keep_given();
  const SheetBay* now = chosen.bay < 0 ? nullptr : &sheet.bays[index_of(chosen.bay)];
  if (now != nullptr && now->struck) now = nullptr;
  const bool same = now != nullptr && bay_ && now->id == bay_->id;
  if (!same) finish_measure();
  run_ = sheet.id;
  bay_.reset();
  if (now != nullptr) take(sheet, *now);
  if (!same) return begin();
  read_now();
  settle_given();
  tell();
}

void BayCheck::take(const RunSheet& sheet, const SheetBay& bay) {
  bay_ = bay;
  const auto& from = sheet.posts[index_of(bay.from)];
  const auto& to = sheet.posts[index_of(bay.to)];
  name_ =
      tr("Bay %1 to %2").arg(QString::fromStdString(from.label), QString::fromStdString(to.label));
  from_mm_ = from.chainage_mm;
  to_mm_ = to.chainage_mm;
  high_mm_ = from.height_mm;
  screwed_.clear();
  for (const auto& post : {from, to})
    for (int i = post.first_part; i < post.first_part + post.parts; ++i) {
      const auto& part = sheet.parts[index_of(i)];
      const bool of_other_bay = part.bay >= 0 && sheet.bays[index_of(part.bay)].id != bay.id;
      if (part.screws > 0 && !part.struck && !part.welded && !of_other_bay)
        screwed_.push_back(part.id);
    }
  found_.clear();
  for (const auto& finding : sheet.findings)
    if (finding.part < 0 && finding.bay >= 0 && sheet.bays[index_of(finding.bay)].id == bay.id)
      found_.push_back(finding.what);
}

void BayCheck::begin() {
  push_ = {};
  slots_ = {};
  measuring_ = -1;
  touched_.reset();
  gate_ = {};
  gate_typed_ = false;
  rules_ = {};
  last_ = {};
  if (bay_) {
    read_bay();
    read_now();
    settle_given();
  }
  tell();
}

void BayCheck::read_bay() {
  if (auto rules = bay_rules(pen_.tables(), {pen_.site(), run_, bay_->id}))
    rules_ = std::move(*rules);
  if (auto last = looks_at_bay(pen_.tables(), {bay_->id, {}, pen_.visit()}))
    last_ = std::move(*last);
}

/// What this visit has on record, and what waits for another try.
void BayCheck::read_now() {
  const auto now = looks_at_bay(pen_.tables(), {bay_->id, pen_.visit(), {}});
  if (!now) return;
  if (push_.state != State::on_its_way) {
    push_.state = now->felt ? State::kept : State::empty;
    if (now->felt) push_.value = static_cast<std::int64_t>(*now->felt);
  }
  for (std::size_t row = 0; row < slots_.size(); ++row) {
    if (slots_[row].state == State::on_its_way) continue;
    const auto read = now->measured_mm.find(measured[row]);
    slots_[row].state = read == now->measured_mm.end() ? State::empty : State::kept;
    if (read != now->measured_mm.end()) slots_[row].value = read->second;
  }
  for (const kneerail::Entry* waiting : pen_.waiting_entries(HandLoad::kind, bay_->id))
    if (const auto load = kneerail::from_body<HandLoad>(waiting->body))
      push_ = {static_cast<std::int64_t>(load->felt), State::not_kept, {}};
  for (const kneerail::Entry* waiting : pen_.waiting_entries(Geometry::kind, bay_->id)) {
    const auto geometry = kneerail::from_body<Geometry>(waiting->body);
    if (!geometry) continue;
    const auto at = std::find(measured.begin(), measured.end(), geometry->what);
    if (at != measured.end())
      slots_[static_cast<std::size_t>(at - measured.begin())] = {
          geometry->measure_mm, State::not_kept, {}};
  }
  if (is_gate()) read_gate(*now);
}

// The push ----------------------------------------------------------------------------------------

int BayCheck::felt() const {
  return push_.state == State::empty ? 0 : static_cast<int>(push_.value);
}

/// What cannot wait is on the disk before what was felt.
void BayCheck::push(int felt) {
  const auto code = static_cast<Felt>(felt);
  if (!offered() || !push_.takes() || code < Felt::firm || code > Felt::moves) return;
  measure(-1);
  if (push_.filled() && push_.value == felt) return;  // a second touch says nothing new
  if (code == Felt::moves) finding_.begin_with(FindingKind::moves);
  push_.send(felt);
  if (code == Felt::gives) begin_given();
  HandLoad fields;
  fields.visit = pen_.visit();
  fields.felt = code;
  WalkPen::Act act;
  act.words = felt_words();
  act.component = bay_->id;
  act.entries.push_back(pen_.entry(bay_->id, fields));
  act.told = [this, bay = bay_->id, felt](bool on_disk) {
    if (!bay_ || bay_->id != bay || !push_.answered(felt, on_disk)) return;
    settle_given();
    tell();
    if (on_disk) emit pushKept();
  };
  pen_.write(std::move(act));
  tell();
  if (code == Felt::moves) emit findingWanted();
}

/// Whether what is on record makes a finding of its own when the bay is left.
void BayCheck::settle_given() {
  if (!bay_ || push_.state == State::on_its_way || !pen_.writable()) return;
  const auto still = gives_still(pen_.tables(), {bay_->id, pen_.visit(), screwed_});
  if (!still) return;
  const bool gives =
      *still || (push_.state == State::not_kept && static_cast<Felt>(push_.value) == Felt::gives);
  if (gives) return begin_given();
  if (given_ && given_->bay == bay_->id) drop_given();
}

void BayCheck::begin_given() {
  const bool sent = std::any_of(given_kept_.begin(), given_kept_.end(), [this](const auto& kept) {
    return kept.bay == bay_->id && kept.visit == pen_.visit();
  });
  if (given_ || sent || found(FindingKind::loose)) return;
  Finding loose = finding_.following(FindingKind::loose);
  loose.text = tr("Gives under a hard push").toStdString();
  Draft draft{pen_.site(), Finding::kind, bay_->id, given_place, {}, to_body(loose)};
  draft.body.set(kneerail::draft_key_id, pen_.mint());
  given_ = {run_, bay_->id, bay_->from, bay_->to, std::move(draft), loose.number};
  pen_.save_draft(given_->draft, {});
}

void BayCheck::drop_given() {
  pen_.drop_draft(given_->draft, {});
  given_.reset();
}

void BayCheck::keep_given() {
  const Given given = *std::exchange(given_, std::nullopt);
  WalkPen::Act act;
  act.words = tr("F-%1").arg(given.number);
  act.component = given.bay;
  act.entries.push_back(pen_.entry(Finding::kind, given.bay, given.draft.body));
  act.entries.back().id = given.draft.body.find(kneerail::draft_key_id)->uuid();
  act.entries.back().body.erase(kneerail::draft_key_id);
  act.ended = given.draft;
  act.told = [this, number = given.number](bool on_disk) {
    if (on_disk) emit foundByItself(tr("F-%1: the bay gives: loose, grade 4.").arg(number));
  };
  given_kept_.push_back({given.bay, pen_.visit(), {}});
  pen_.write(std::move(act));
}

// Height and gaps ---------------------------------------------------------------------------------

void BayCheck::measure(int row) {
  if (row >= measure_count || (row >= 0 && !offered())) return;
  finish_measure();
  measuring_ = row;
  tell();
}

void BayCheck::digit(int digit) {
  if (measuring_ < 0 || digit < 0 || digit > 9 || !offered()) return;
  TypedSlot& slot = slots_[index_of(measuring_)];
  if (!slot.takes() || !slot.add(digit, whole_mm)) return;
  pen_.forget_redo();
  tell();
}

void BayCheck::backspace() {
  if (measuring_ < 0 || !slots_[index_of(measuring_)].typing()) return;
  pen_.forget_redo();
  slots_[index_of(measuring_)].digits.chop(1);
  tell();
}

/// Round the three.
void BayCheck::nextSlot() {
  if (measuring_ >= 0) measure((measuring_ + 1) % measure_count);
}

void BayCheck::finish_measure() {
  for (std::size_t row = 0; row < slots_.size(); ++row)
    if (const auto mm = slots_[row].take(whole_mm.step); mm && bay_) write_measure(row, *mm);
}

void BayCheck::write_measure(std::size_t row, std::int64_t mm) {
  const bool outside = is_outside(row, mm);
  const bool was_outside = slots_[row].filled() && is_outside(row, slots_[row].value);
  Geometry fields;
  fields.visit = pen_.visit();
  fields.what = measured[row];
  fields.measure_mm = mm;
  fields.limit_mm = limit_of(row).mm;
  fields.rule_set = rules_.rule_set;
  if (const auto* rule = pen_.instrument(kneerail::InstrumentKind::rule))
    fields.instrument = rule->id;
  slots_[row].send(mm);
  WalkPen::Act act;
  act.words = tr("%1 mm").arg(mm);
  act.component = bay_->id;
  act.entries.push_back(pen_.entry(bay_->id, fields));
  QString found;
  if (outside && !was_outside) {
    act.entries.push_back(outside_finding(row, mm));
    const auto number = kneerail::from_body<Finding>(act.entries.back().body)->number;
    found = tr("F-%1: %2").arg(number).arg(outside_words(row, mm));
  }
  act.told = [this, bay = bay_->id, row, mm, outside, found](bool on_disk) {
    if (on_disk && !found.isEmpty()) emit foundByItself(found);
    if (!bay_ || bay_->id != bay || !slots_[row].answered(mm, on_disk)) return;
    tell();
    if (on_disk) emit measureKept(outside);
  };
  pen_.write(std::move(act));
}

kneerail::Entry BayCheck::outside_finding(std::size_t row, std::int64_t mm) {
  Finding finding = finding_.following(FindingKind::outside_the_rule);
  finding.text = outside_words(row, mm).toStdString();
  finding.place = place_of(row, mm);
  return pen_.entry(bay_->id, finding);
}

/// A gap is ringed where the bay was touched; a height at the rail, a gap below under it.
kneerail::PlaceOnPart BayCheck::place_of(std::size_t row, std::int64_t mm) const {
  kneerail::PlaceOnPart place{(from_mm_ + to_mm_) / 2, high_mm_ / 2};
  if (touched_) place = *touched_;
  place.along_mm =
      std::clamp(place.along_mm, std::min(from_mm_, to_mm_), std::max(from_mm_, to_mm_));
  if (row == Height) place.up_mm = mm;
  if (row == GapBelow) place.up_mm = mm / 2;
  return place;
}

BayCheck::Limit BayCheck::limit_of(std::size_t row) const {
  if (row == Height) return {rules_.height_least_mm, true};
  return {row == Gap ? rules_.gap_between_most_mm : rules_.gap_below_most_mm, false};
}

bool BayCheck::is_outside(std::size_t row, std::int64_t mm) const {
  const Limit limit = limit_of(row);
  return limit.mm && (limit.least ? mm < *limit.mm : mm > *limit.mm);
}

QString BayCheck::pending() const {
  for (const TypedSlot& slot : slots_)
    if (slot.typing()) return tr("%1 mm").arg(slot.typed(whole_mm.step));
  return {};
}

void BayCheck::take_back_pending() {
  const auto typed = std::find_if(slots_.begin(), slots_.end(),
                                  [](const TypedSlot& slot) { return slot.typing(); });
  if (typed == slots_.end() || !bay_) return;
  const auto row = static_cast<int>(typed - slots_.begin());
  const auto put_back = [this, bay = bay_->id, row, digits = typed->digits] {
    if (!bay_ || bay_->id != bay) return;
    measuring_ = row;
    slots_[index_of(row)].digits = digits;
    tell();
  };
  pen_.took_back({this, pending(), bay_->id, {}, put_back});
  typed->digits.clear();
  tell();
}

// The gate ----------------------------------------------------------------------------------------

int BayCheck::gate_answer(int key) const {
  const auto* said = gate_.find(key);
  return said == nullptr || said->number() == nullptr ? 0 : static_cast<int>(*said->number());
}

/// A draft says more than a record.
void BayCheck::read_gate(const kneerail::BayLooks& looks) {
  if (gate_typed_) return;
  gate_ = looks.gate ? to_body(*looks.gate) : kneerail::cbor::Map{};
  for (const kneerail::Entry* waiting : pen_.waiting_entries(GateCheck::kind, bay_->id))
    gate_ = waiting->body;
  const auto drafts = kneerail::read_drafts(pen_.tables());
  if (!drafts) return;
  for (const Draft& draft : *drafts)
    if (draft.kind == GateCheck::kind && draft.subject == bay_->id) {
      gate_ = draft.body;
      gate_typed_ = true;
    }
}

Draft BayCheck::gate_draft() const {
  return {pen_.site(), GateCheck::kind, bay_->id, 0, {}, gate_};
}

void BayCheck::answerGate(int question, int answer) {
  const int answers = question == ClosesByItself ? 3 : 2;
  if (!offered() || !is_gate() || question < ClosesByItself || question > OpensAway) return;
  if (answer < 1 || answer > answers || gate_answer(question) == answer) return;
  measure(-1);
  const kneerail::cbor::Map before = gate_;
  kneerail::cbor::Map said = gate_;
  said.set(visit_key, pen_.visit());
  said.set(question, answer);
  const auto setting = [this, bay = bay_->id](const kneerail::cbor::Map& to) {
    return [this, bay, to] {
      if (bay_ && bay_->id == bay) set_gate(to);
    };
  };
  const bool whole = said.has(ClosesByItself) && said.has(Latches) && said.has(OpensAway);
  if (!whole) pen_.remember({this, tr("the gate"), bay_->id, setting(before), setting(said)});
  if (!whole)
    set_gate(std::move(said));
  else
    gate_ = std::move(said);
  propose_for_gate();
  if (whole) write_gate();
}

/// What was said is on the disk as a draft until all three are.
void BayCheck::set_gate(kneerail::cbor::Map said) {
  const Draft before = gate_draft();
  gate_ = std::move(said);
  gate_typed_ = gate_.has(ClosesByItself) || gate_.has(Latches) || gate_.has(OpensAway);
  if (gate_typed_)
    pen_.save_draft(gate_draft(), {});
  else
    pen_.drop_draft(before, {});
  tell();
}

void BayCheck::write_gate() {
  WalkPen::Act act;
  act.words = tr("the gate");
  act.component = bay_->id;
  act.entries.push_back(pen_.entry(GateCheck::kind, bay_->id, gate_));
  if (std::exchange(gate_typed_, false)) act.ended = gate_draft();
  act.told = [this](bool on_disk) {
    if (on_disk) emit pushKept();
    tell();
  };
  pen_.forget_typed(this);
  pen_.write(std::move(act));
  tell();
  const bool shuts = closes() != no && latches() != no && opens_away() != no;
  if (!shuts && !found(FindingKind::will_not_close)) emit findingWanted();
}

/// One that does not latch, or opens to the drop, holds nobody back.
void BayCheck::propose_for_gate() {
  if (found(FindingKind::will_not_close)) return;
  const bool open = latches() == no || opens_away() == no;
  if (open || closes() == no)
    finding_.begin_with(FindingKind::will_not_close, open ? unfit : 0);
  else
    finding_.give_up(FindingKind::will_not_close);
}

void BayCheck::close() {
  finish_measure();
  if (given_) keep_given();
}

void BayCheck::tell() {
  emit dataChanged(index(0), index(measure_count - 1));
  emit changed();
}
