#include "mobile/models/coating_set.h"

#include <QLocale>
#include <algorithm>
#include <utility>

#include "core/records/coating_reading.h"

using kneerail::CoatingReading;
using kneerail::Draft;
using kneerail::Finish;
using kneerail::SheetPart;

namespace {

constexpr double tenths = 10;
constexpr std::int64_t tenth_um_most = 20'000;  // what a record can hold

/// As it stands; 0: not graded.
int grade_of(const SheetPart& part) {
  if (part.now) return part.now->grade;
  return part.last ? part.last->grade : 0;
}

}  // namespace

CoatingSet::CoatingSet(WalkPen& pen, QObject* parent) : QAbstractListModel(parent), pen_(pen) {}

int CoatingSet::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : slot_count;
}

QVariant CoatingSet::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= slot_count) return {};
  const auto place = static_cast<std::size_t>(index.row());
  const Slot& slot = slots_[place];
  switch (role) {
    case TextRole:
      if (!slot.digits.isEmpty()) return text_of(slot.digits.toLongLong() * resolution());
      return slot.tenth_um ? text_of(*slot.tenth_um) : QString();
    case GhostRole:
      return place < last_.size() ? text_of(last_[place]) : QString();
    case CurrentRole:
      return index.row() == current_;
    case KeptRole:
      return slot.kept && slot.digits.isEmpty();
    case LookAgainRole:
      return slot.digits.isEmpty() && slot.tenth_um && is_far(*slot.tenth_um);
    case NotKeptRole:
      return slot.not_kept;
    default:
      return {};
  }
}

QHash<int, QByteArray> CoatingSet::roleNames() const {
  return {{TextRole, "text"}, {GhostRole, "ghost"},         {CurrentRole, "current"},
          {KeptRole, "kept"}, {LookAgainRole, "lookAgain"}, {NotKeptRole, "notKept"}};
}

bool CoatingSet::offered_on(const SheetPart& part) const {
  if (!pen_.writable()) return false;
  if (pen_.instrument(kneerail::InstrumentKind::coating_gauge) == nullptr) return false;
  return part.finish != Finish::stainless && part.finish != Finish::bare_steel;
}

void CoatingSet::show(const SheetPart* part, kneerail::Database& tables) {
  const bool same = part != nullptr && part_ && part->id == part_->id;
  if (same) {
    const int before = grade_of(*part_);
    part_ = *part;
    if (grade_of(*part) != before) preset_under_probe(grade_of(*part));
    return;
  }
  close();
  tables_ = &tables;
  part_ = part == nullptr ? std::nullopt : std::optional(*part);
  begin();
}

void CoatingSet::begin() {
  spot_ = 1;
  under_probe_ = 0;
  under_probe_said_ = false;
  clear();
  if (part_ && grade_of(*part_) > 0) preset_under_probe(grade_of(*part_));
  if (tables_ != nullptr) read_last(*tables_);
  tell_slots();
}

void CoatingSet::clear() {
  slots_ = {};
  drafted_ = false;
  recorded_ = false;
  on_its_way_ = false;
  ++round_;
  current_ = offered() ? 0 : -1;
}

void CoatingSet::read_last(kneerail::Database& tables) {
  last_.clear();
  if (!part_) return;
  const kneerail::PartSpot at{part_->id, part_->life, spot_};
  if (auto found = last_coating(tables, at, pen_.visit(), pen_.put_right()); found && *found)
    last_ = (*found)->replicates_tenth_um;
  for (const auto* waiting : pen_.waiting_entries(CoatingReading::kind, part_->id)) {
    const auto reading = kneerail::from_body<CoatingReading>(waiting->body);
    if (reading && reading->spot == spot_)
      return show_recorded(reading->replicates_tenth_um, false);
  }
  const auto mine = coating_of_visit(tables, at, pen_.visit());
  if (mine && !mine->empty()) show_set(*mine);
}

/// The last set of this visit. One that was left before its fifth, by the gauge in the hand, goes
/// on.
void CoatingSet::show_set(const std::vector<kneerail::CoatingOfVisit>& records) {
  kneerail::CoatingOfVisit set;
  for (const auto& record : records) {
    auto& values = set.replicates_tenth_um;
    if (values.size() >= slot_count || record.gauge != set.gauge) values.clear();
    set.gauge = record.gauge;
    values.insert(values.end(), record.replicates_tenth_um.begin(),
                  record.replicates_tenth_um.end());
  }
  show_recorded(set.replicates_tenth_um, true);
  const auto* gauge = pen_.instrument(kneerail::InstrumentKind::coating_gauge);
  if (values().size() == slot_count || gauge == nullptr || gauge->id != set.gauge) return;
  recorded_ = false;
  current_ = static_cast<int>(values().size());
}

void CoatingSet::show_recorded(const std::vector<std::int64_t>& values, bool kept) {
  const std::size_t shown = std::min<std::size_t>(values.size(), slot_count);
  for (std::size_t i = 0; i < shown; ++i) {
    slots_[i].tenth_um = values[values.size() - shown + i];
    slots_[i].kept = kept;
    slots_[i].not_kept = !kept;
    slots_[i].on_record = true;
  }
  recorded_ = true;
  current_ = -1;
}

void CoatingSet::reload() {
  const bool typing = !recorded_ && (!typed_values().empty() || !pending().isEmpty());
  if (typing || on_its_way_ || tables_ == nullptr) return;
  const int chosen = current_;
  clear();
  read_last(*tables_);
  if (!recorded_ && chosen >= 0 && !slots_[static_cast<std::size_t>(chosen)].tenth_um)
    current_ = chosen;
  tell_slots();
}

std::int64_t CoatingSet::resolution() const {
  const auto* gauge = pen_.instrument(kneerail::InstrumentKind::coating_gauge);
  return gauge == nullptr ? 1 : gauge->resolution;
}

std::vector<std::int64_t> CoatingSet::values() const {
  std::vector<std::int64_t> values;
  for (const Slot& slot : slots_)
    if (slot.tenth_um) values.push_back(*slot.tenth_um);
  return values;
}

/// Those that are in no record yet.
std::vector<std::int64_t> CoatingSet::typed_values() const {
  std::vector<std::int64_t> values;
  for (const Slot& slot : slots_)
    if (slot.tenth_um && !slot.on_record) values.push_back(*slot.tenth_um);
  return values;
}

/// What was read now, put right by what is known of the gauge in the hand: last visit's values are.
std::vector<std::int64_t> CoatingSet::put_right(std::vector<std::int64_t> read) const {
  const auto* gauge = pen_.instrument(kneerail::InstrumentKind::coating_gauge);
  if (gauge == nullptr) return read;
  for (std::int64_t& value : read) value = pen_.put_right().of(gauge->id, pen_.now(), value);
  return read;
}

void CoatingSet::digit(int digit) {
  if (on_its_way_ || digit < 0 || digit > 9 || !pen_.writable()) return;
  if (recorded_) {
    if (has_not_kept()) return;  // first that set, again
    clear();                     // another set at the same spot
  }
  if (current_ < 0) return;
  Slot& slot = slots_[static_cast<std::size_t>(current_)];
  const QString longer = slot.digits + QChar('0' + digit);
  if (longer.toLongLong() * resolution() > tenth_um_most) return;
  pen_.forget_redo();
  slot.digits = longer.size() > 1 && longer.startsWith('0') ? longer.mid(1) : longer;
  tell_slots();
}

void CoatingSet::backspace() {
  if (current_ < 0 || !pen_.writable()) return;
  Slot& slot = slots_[static_cast<std::size_t>(current_)];
  if (slot.digits.isEmpty() && slot.tenth_um) {
    const QString digits = QString::number(*slot.tenth_um / resolution());
    change(static_cast<std::size_t>(current_), std::nullopt);
    slot.digits = digits;
  }
  pen_.forget_redo();
  slot.digits.chop(1);
  tell_slots();
}

QString CoatingSet::pending() const {
  for (const Slot& slot : slots_)
    if (!slot.digits.isEmpty()) return text_of(slot.digits.toLongLong() * resolution());
  return {};
}

void CoatingSet::take_back_pending() {
  const auto typed = std::find_if(slots_.begin(), slots_.end(),
                                  [](const Slot& slot) { return !slot.digits.isEmpty(); });
  if (typed == slots_.end() || !part_) return;
  const Place place{part_->id, spot_, static_cast<std::size_t>(typed - slots_.begin())};
  const auto put_back = [this, place, digits = typed->digits] {
    if (!stand_at(place)) return;
    slots_[place.slot].digits = digits;
    tell_slots();
  };
  pen_.took_back({this, pending(), place.part, {}, put_back});
  typed->digits.clear();
  tell_slots();
}

void CoatingSet::chooseSlot(int slot) {
  if (recorded_ || slot < 0 || slot >= slot_count || !offered()) return;
  if (slots_[static_cast<std::size_t>(slot)].on_record) return;
  finish_current();
  current_ = slot;
  tell_slots();
}

void CoatingSet::nextSlot() {
  if (!waits()) return;
  finish_current();
  move_on();
}

void CoatingSet::nextSpot() {
  if (spots() < 2 || tables_ == nullptr) return;
  show_spot(spot_ % spots() + 1);
}

void CoatingSet::show_spot(int spot) {
  close();
  spot_ = spot;
  clear();
  read_last(*tables_);
  tell_slots();
}

/// To the first empty slot; with none the set is full.
void CoatingSet::move_on() {
  const auto empty =
      std::find_if(slots_.begin(), slots_.end(), [](const Slot& slot) { return !slot.tenth_um; });
  if (empty == slots_.end()) return close();
  current_ = static_cast<int>(empty - slots_.begin());
  tell_slots();
}

bool CoatingSet::waits() const {
  return offered() && current_ >= 0 && !recorded_;
}

std::optional<std::int64_t> CoatingSet::tenth_um_of(const QString& number) {
  bool is_number = false;
  const double um = QLocale::c().toDouble(QString(number).replace(',', '.'), &is_number);
  if (!is_number || !(um >= 0) || um * tenths > static_cast<double>(tenth_um_most))
    return std::nullopt;
  return qRound64(um * tenths);
}

bool CoatingSet::typed(const QString& number) {
  const auto tenth_um = tenth_um_of(number);
  if (!waits() || !tenth_um) return false;
  const auto slot = static_cast<std::size_t>(current_);
  slots_[slot].digits.clear();
  change(slot, tenth_um);
  move_on();
  return true;
}

void CoatingSet::finish_current() {
  if (current_ < 0) return;
  Slot& slot = slots_[static_cast<std::size_t>(current_)];
  if (slot.digits.isEmpty()) return;
  const std::int64_t value = slot.digits.toLongLong() * resolution();
  slot.digits.clear();
  change(static_cast<std::size_t>(current_), value);
}

void CoatingSet::change(std::size_t slot, std::optional<std::int64_t> tenth_um) {
  const Values before = slots_;
  if (before[slot].tenth_um == tenth_um && before[slot].kept) return;
  const Place place{part_->id, spot_, slot};
  Values after = before;
  after[slot] = {tenth_um, {}, false, false, false};
  slots_ = after;
  pen_.remember({this, text_of(tenth_um ? *tenth_um : *before[slot].tenth_um), place.part,
                 [this, before, place] { restore(before, place); },
                 [this, after, place] { restore(after, place); }});
  // The one that fills the set goes to the disk as the record it makes.
  if (values().size() < slot_count) save_draft();
}

/// The pad is at the slot where it was typed. False: that part is not the chosen one.
bool CoatingSet::stand_at(const Place& place) {
  if (!part_ || part_->id != place.part || tables_ == nullptr || on_its_way_) return false;
  if (spot_ != place.spot) show_spot(place.spot);
  if (recorded_) clear();  // it was of another set at the same spot
  current_ = static_cast<int>(place.slot);
  return true;
}

void CoatingSet::restore(const Values& values, const Place& place) {
  if (!stand_at(place)) return;
  for (std::size_t i = 0; i < slots_.size(); ++i)
    if (slots_[i].tenth_um != values[i].tenth_um) {
      const bool on_record = values[i].on_record;
      slots_[i] = {values[i].tenth_um, {}, on_record, false, on_record};
    }
  save_draft();
  tell_slots();
}

kneerail::cbor::Map CoatingSet::body() const {
  CoatingReading reading;
  reading.visit = pen_.visit();
  if (const auto* gauge = pen_.instrument(kneerail::InstrumentKind::coating_gauge))
    reading.instrument = gauge->id;
  reading.replicates_tenth_um = typed_values();
  reading.spot = spot_;
  if (under_probe_ > 0) reading.under_probe = static_cast<kneerail::UnderProbe>(under_probe_);
  reading.note.life = part_->life;
  return to_body(reading);
}

Draft CoatingSet::draft() const {
  return {pen_.site(), CoatingReading::kind, part_->id, spot_, {}, body()};
}

void CoatingSet::save_draft() {
  const auto told = [this, round = round_, sent = slots_](bool kept) {
    answered(sent, round, kept);
  };
  if (!typed_values().empty()) {
    drafted_ = true;
    return pen_.save_draft(draft(), told);
  }
  if (drafted_) pen_.drop_draft(draft(), told);
  drafted_ = false;
}

void CoatingSet::answered(const Values& sent, int round, bool kept) {
  if (round != round_) return;
  bool news = false;
  bool far = false;
  for (std::size_t i = 0; i < slots_.size(); ++i) {
    if (!sent[i].tenth_um || slots_[i].tenth_um != sent[i].tenth_um) continue;
    if (slots_[i].on_record) continue;
    if (!kept && slots_[i].kept) continue;  // the disk has it from before
    if (kept && !slots_[i].kept) {
      news = true;
      far = far || is_far(*sent[i].tenth_um);
    }
    slots_[i].kept = kept;
    slots_[i].not_kept = !kept;
  }
  tell_slots();
  if (news) emit replicateKept(far);
}

void CoatingSet::close() {
  if (!part_ || recorded_) return;
  finish_current();
  const auto taken = typed_values();
  if (taken.empty()) return;
  const bool was_full = values().size() == slot_count;
  WalkPen::Act act;
  act.words = tr("%n reading(s)", nullptr, static_cast<int>(taken.size()));
  act.component = part_->id;
  act.entries.push_back(pen_.entry(CoatingReading::kind, part_->id, body()));
  if (drafted_) act.ended = draft();
  drafted_ = false;
  recorded_ = true;
  on_its_way_ = true;
  current_ = -1;
  ++round_;
  act.told = [this, was_full, round = round_](bool kept) { recorded(was_full, round, kept); };
  pen_.forget_typed(this);
  pen_.write(std::move(act));
  tell_slots();
}

void CoatingSet::recorded(bool was_full, int round, bool kept) {
  if (round != round_) return;
  on_its_way_ = false;
  answered(slots_, round, kept);
  if (kept && was_full) emit full();
}

void CoatingSet::try_again() {
  if (!recorded_ && has_not_kept()) save_draft();
}

bool CoatingSet::has_not_kept() const {
  return std::any_of(slots_.begin(), slots_.end(), [](const Slot& slot) { return slot.not_kept; });
}

void CoatingSet::preset_under_probe(int grade) {
  if (!part_ || under_probe_said_) return;
  const int before = under_probe_;
  if (part_->finish == Finish::paint || part_->finish == Finish::zinc_and_paint)
    under_probe_ = static_cast<int>(kneerail::UnderProbe::paint);
  else if (grade >= 4)
    under_probe_ = static_cast<int>(kneerail::UnderProbe::rust);
  else if (grade >= 2)
    under_probe_ = static_cast<int>(kneerail::UnderProbe::dull_zinc);
  else
    under_probe_ = static_cast<int>(kneerail::UnderProbe::bright_zinc);
  if (under_probe_ != before && drafted_ && !recorded_) save_draft();
  emit setChanged();
}

void CoatingSet::set_under_probe(int under) {
  if (under < 0 || under > 4) return;
  under_probe_said_ = true;
  if (under == under_probe_) return;
  under_probe_ = under;
  if (drafted_ && !recorded_) save_draft();
  emit setChanged();
}

void CoatingSet::tell_slots() {
  emit dataChanged(index(0), index(slot_count - 1));
  emit setChanged();
}
