#include "mobile/models/gauge_check.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "core/records/instrument.h"

using kneerail::CheckKind;
using kneerail::InstrumentCheck;
using kneerail::KnownInstrument;

namespace {

constexpr std::int64_t tenth_um_most = 20'000;  // what a record can hold
constexpr std::int64_t zero_most = 500;         // of a zero, either side

}  // namespace

GaugeCheck::GaugeCheck(WalkPen& pen, QObject* parent) : QAbstractListModel(parent), pen_(pen) {}

const KnownInstrument* GaugeCheck::gauge() const {
  return pen_.instrument(kneerail::InstrumentKind::coating_gauge);
}

int GaugeCheck::rowCount(const QModelIndex& parent) const {
  if (parent.isValid() || what_ == Nothing) return 0;
  return what_ == Foil ? static_cast<int>(slot_count) : static_cast<int>(slot_count) - 1;
}

QHash<int, QByteArray> GaugeCheck::roleNames() const {
  return {{TextRole, "text"}, {GhostRole, "ghost"},     {CurrentRole, "current"},
          {KeptRole, "kept"}, {NotKeptRole, "notKept"}, {SpokenRole, "spoken"}};
}

std::vector<std::int64_t> GaugeCheck::readings() const {
  std::vector<std::int64_t> read;
  for (std::size_t i = first_reading(); i < slot_count; ++i)
    if (slots_[i].tenth_um) read.push_back(*slots_[i].tenth_um);
  return read;
}

bool GaugeCheck::holds_reading() const {
  return has_reading() ||
         std::any_of(slots_.begin() + static_cast<std::ptrdiff_t>(first_reading()), slots_.end(),
                     [](const Slot& slot) { return !slot.digits.isEmpty(); });
}

std::optional<std::int64_t> GaugeCheck::reference() const {
  if (what_ == Foil) return slots_[0].tenth_um;
  return std::nullopt;
}

/// How far the mean of the readings is from what it should be.
std::optional<double> GaugeCheck::off_tenth_um() const {
  const auto read = readings();
  if (read.empty() || (what_ == Foil && !reference())) return std::nullopt;
  const auto sum = std::accumulate(read.begin(), read.end(), std::int64_t{0});
  const double mean = static_cast<double>(sum) / static_cast<double>(read.size());
  return mean - static_cast<double>(reference().value_or(0));
}

/// Nothing is known against a gauge whose error nobody stated.
bool GaugeCheck::judged() const {
  const auto off = off_tenth_um();
  if (!off || gauge() == nullptr || !gauge()->stated_error) return true;
  return std::abs(*off) <= static_cast<double>(*gauge()->stated_error);
}

void GaugeCheck::begin(What what) {
  end();
  if (!offered() || (what != Zero && what != Foil)) return;
  beginResetModel();
  what_ = what;
  gauge_ = gauge()->id;
  slots_ = {};
  said_.reset();
  drafted_ = false;
  ++round_;
  current_ = 0;
  if (what == Foil && gauge()->foil) {
    slots_[0].tenth_um = gauge()->foil->reference;
    slots_[0].kept = true;
    current_ = 1;
  }
  endResetModel();
  emit changed();
}

/// A foil is known to its tenth, whatever the gauge shows.
std::int64_t GaugeCheck::step(std::size_t slot) const {
  const bool foil = what_ == Foil && slot == 0;
  return foil || gauge() == nullptr ? 1 : gauge()->resolution;
}

std::int64_t GaugeCheck::typed_value(const Slot& slot, std::size_t place) const {
  const std::int64_t size = slot.digits.toLongLong() * step(place);
  return slot.under_zero ? -size : size;
}

void GaugeCheck::digit(int digit) {
  if (current_ < 0 || digit < 0 || digit > 9 || !pen_.writable()) return;
  const auto place = static_cast<std::size_t>(current_);
  Slot& slot = slots_[place];
  const QString longer = slot.digits + QChar('0' + digit);
  const std::int64_t most = what_ == Zero ? zero_most : tenth_um_most;
  if (longer.toLongLong() * step(place) > most) return;
  pen_.forget_redo();
  slot.digits = longer.size() > 1 && longer.startsWith('0') ? longer.mid(1) : longer;
  tell();
}

void GaugeCheck::sign() {
  if (what_ != Zero || current_ < 0) return;
  Slot& slot = slots_[static_cast<std::size_t>(current_)];
  if (slot.digits.isEmpty() && slot.tenth_um)
    return change(static_cast<std::size_t>(current_), -*slot.tenth_um);
  slot.under_zero = !slot.under_zero;
  tell();
}

void GaugeCheck::backspace() {
  if (current_ < 0 || !pen_.writable()) return;
  const auto place = static_cast<std::size_t>(current_);
  if (slots_[place].digits.isEmpty() && slots_[place].tenth_um) {
    const std::int64_t was = *slots_[place].tenth_um;
    change(place, std::nullopt);
    slots_[place].digits = QString::number(std::abs(was) / step(place));
    slots_[place].under_zero = was < 0;
  }
  pen_.forget_redo();
  slots_[place].digits.chop(1);
  tell();
}

void GaugeCheck::chooseSlot(int slot) {
  if (slot < 0 || slot >= rowCount()) return;
  finish_current();
  // A reading without the foil's value says nothing.
  if (what_ != Foil || slot == 0 || slots_[0].tenth_um) current_ = slot;
  tell();
}

void GaugeCheck::nextSlot() {
  if (current_ < 0) return;
  finish_current();
  move_on();
}

/// To the first empty slot; -1: there is none.
void GaugeCheck::move_on() {
  current_ = -1;
  for (int i = rowCount(); i-- > 0;)
    if (!slots_[static_cast<std::size_t>(i)].tenth_um) current_ = i;
  tell();
}

void GaugeCheck::finish_current() {
  if (current_ < 0) return;
  const auto place = static_cast<std::size_t>(current_);
  Slot& slot = slots_[place];
  if (slot.digits.isEmpty()) return;
  const std::int64_t value = typed_value(slot, place);
  slot.digits.clear();
  if (what_ == Foil && place == 0 && value == 0) return;  // there is no such foil
  change(place, value);
}

bool GaugeCheck::typed(const QString& number) {
  bool is_number = false;
  const double um = QString(number).replace(',', '.').toDouble(&is_number);
  const double tenth_um = std::round(um * 10);
  const double most = what_ == Zero ? zero_most : tenth_um_most;
  const double least = what_ == Zero ? -zero_most : 0;
  if (!is_number || tenth_um < least || tenth_um > most || what_ == Nothing) return false;
  finish_current();
  if (what_ == Foil && !slots_[0].tenth_um) return false;
  const auto end = slots_.begin() + rowCount();
  const auto empty = std::find_if(slots_.begin() + static_cast<std::ptrdiff_t>(first_reading()),
                                  end, [](const Slot& slot) { return !slot.tenth_um; });
  if (empty == end) return false;
  change(static_cast<std::size_t>(empty - slots_.begin()), static_cast<std::int64_t>(tenth_um));
  move_on();
  return true;
}

void GaugeCheck::change(std::size_t slot, std::optional<std::int64_t> tenth_um) {
  if (slots_[slot].tenth_um == tenth_um && slots_[slot].kept) return;
  const Slots before = slots_;
  Slots after = before;
  after[slot] = Slot{.tenth_um = tenth_um};
  slots_ = after;
  const auto words = [&](const Slots& of) { return text(of[slot].tenth_um, slot); };
  pen_.remember({this,
                 words(tenth_um ? after : before),
                 {},
                 [this, before, slot] { restore(before, slot); },
                 [this, after, slot] { restore(after, slot); }});
  save_draft();
  tell();
}

void GaugeCheck::restore(const Slots& values, std::size_t slot) {
  if (what_ == Nothing) return;
  for (std::size_t i = 0; i < values.size(); ++i)
    if (slots_[i].tenth_um != values[i].tenth_um) slots_[i] = Slot{.tenth_um = values[i].tenth_um};
  current_ = static_cast<int>(slot);
  save_draft();
  tell();
}

QString GaugeCheck::pending() const {
  for (std::size_t i = 0; i < slot_count; ++i)
    if (!slots_[i].digits.isEmpty()) return text(typed_value(slots_[i], i), i);
  return {};
}

void GaugeCheck::take_back_pending() {
  const auto typed = std::find_if(slots_.begin(), slots_.end(),
                                  [](const Slot& slot) { return !slot.digits.isEmpty(); });
  if (typed == slots_.end()) return;
  const auto put_back = [this, was = *typed, place = typed - slots_.begin()] {
    if (what_ == Nothing) return;
    slots_[static_cast<std::size_t>(place)] = was;
    current_ = static_cast<int>(place);
    tell();
  };
  pen_.took_back({this, pending(), {}, {}, put_back});
  typed->digits.clear();
  tell();
}

void GaugeCheck::sayInOrder(bool in_order) {
  said_ = in_order;
  if (drafted_) save_draft();
  emit changed();
}

kneerail::cbor::Map GaugeCheck::body() const {
  InstrumentCheck check;
  check.visit = pen_.visit();
  check.what = static_cast<CheckKind>(what_);
  check.reference_value = reference();
  check.readings = readings();
  check.in_order = in_order();
  return to_body(check);
}

kneerail::Draft GaugeCheck::draft() const {
  return {pen_.site(), InstrumentCheck::kind, gauge_, static_cast<std::int64_t>(what_), {}, body()};
}

void GaugeCheck::save_draft() {
  const auto told = [this, round = round_, sent = slots_](bool kept) {
    answered(sent, round, kept);
  };
  if (has_reading()) {
    drafted_ = true;
    return pen_.save_draft(draft(), told);
  }
  if (drafted_) pen_.drop_draft(draft(), told);
  drafted_ = false;
}

void GaugeCheck::answered(const Slots& sent, int round, bool kept) {
  if (round != round_) return;
  bool news = false;
  for (std::size_t i = 0; i < slots_.size(); ++i) {
    if (!sent[i].tenth_um || slots_[i].tenth_um != sent[i].tenth_um) continue;
    if (!kept && slots_[i].kept) continue;  // the disk has it from before
    news = news || (kept && !slots_[i].kept);
    slots_[i].kept = kept;
    slots_[i].not_kept = !kept;
  }
  tell();
  if (news) emit readingKept();
}

bool GaugeCheck::has_not_kept() const {
  return std::any_of(slots_.begin(), slots_.end(), [](const Slot& slot) { return slot.not_kept; });
}

void GaugeCheck::try_again() {
  if (has_not_kept()) save_draft();
}

void GaugeCheck::keep() {
  finish_current();
  const bool says = has_reading() && !in_order();
  close();
  if (says) emit notInOrder();
}

void GaugeCheck::close() {
  if (what_ == Nothing) return;
  end();
  emit closed();
}

void GaugeCheck::end() {
  if (what_ == Nothing) return;
  finish_current();
  if (has_reading()) {
    WalkPen::Act act;
    act.words = what_ == Zero ? tr("zero") : tr("check foil");
    act.component = gauge_;
    act.entries.push_back(pen_.entry(InstrumentCheck::kind, gauge_, body()));
    if (drafted_) act.ended = draft();
    pen_.forget_typed(this);
    pen_.write(std::move(act));
  } else {
    pen_.forget_typed(this);
    if (drafted_) pen_.drop_draft(draft(), {});
  }
  beginResetModel();
  what_ = Nothing;
  slots_ = {};
  drafted_ = false;
  current_ = -1;
  ++round_;
  endResetModel();
  emit changed();
}

void GaugeCheck::tell() {
  if (what_ != Nothing) emit dataChanged(index(0), index(rowCount() - 1));
  emit changed();
}
