#include "mobile/models/wall_check.h"

#include <QLocale>
#include <algorithm>
#include <numeric>
#include <utility>

#include "mobile/models/part_words.h"

using kneerail::LastWall;
using kneerail::SheetPart;
using kneerail::Uuid;
using kneerail::WallReading;

namespace {

constexpr double hundredths = 100;
constexpr std::int64_t most_hundredth_mm = 5'000;  // what a record can hold
constexpr std::array<int, WallCheck::slot_count> clocks{0, 3, 6, 9};
/// Where the wall of a post is read first: over the weld or the socket of its base (common
/// practice, no source). A part that was read before is read where it was.
constexpr std::int64_t above_base_mm = 150;
constexpr double far_under = 0.6;  // of what it is compared with
constexpr double far_over = 1.25;

bool is_post_tube(const SheetPart& part) {
  return part.role == kneerail::Role::post_tube;
}

std::int64_t mean_of(const std::vector<std::int64_t>& values) {
  const auto sum = std::accumulate(values.begin(), values.end(), std::int64_t{0});
  return values.empty() ? 0 : (2 * sum + 1) / (2 * static_cast<std::int64_t>(values.size()));
}

}  // namespace

WallCheck::WallCheck(WalkPen& pen, QObject* parent) : QAbstractListModel(parent), pen_(pen) {}

int WallCheck::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : slot_count;
}

QHash<int, QByteArray> WallCheck::roleNames() const {
  return {{TextRole, "text"},   {GhostRole, "ghost"},         {CurrentRole, "current"},
          {KeptRole, "kept"},   {LookAgainRole, "lookAgain"}, {NotKeptRole, "notKept"},
          {ClockRole, "clock"}, {SpokenRole, "spoken"}};
}

QVariant WallCheck::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= slot_count) return {};
  const auto place = static_cast<std::size_t>(index.row());
  const Slot& slot = slots_[place];
  const bool filled = slot.filled();
  switch (role) {
    case TextRole:
      if (slot.typing()) return text_of(slot.typed(resolution()));
      return filled ? text_of(slot.value) : QString();
    case GhostRole: {
      const LastWall* last = last_at(place);
      return last == nullptr ? QString() : text_of(mean_of(last->replicates_hundredth_mm));
    }
    case CurrentRole:
      return index.row() == current_;
    case KeptRole:
      return filled && slot.state == State::kept;
    case LookAgainRole:
      return filled && is_far(slot.value);
    case NotKeptRole:
      return slot.state == State::not_kept;
    case ClockRole:
      return clocks[place];
    case SpokenRole:
      return clocks[place] == 0 ? tr("Wall at 12 o'clock")
                                : tr("Wall at %1 o'clock").arg(clocks[place]);
    default:
      return {};
  }
}

bool WallCheck::offered_on(const SheetPart& part) const {
  const bool tube = is_post_tube(part) || part.role == kneerail::Role::rail_tube ||
                    part.role == kneerail::Role::top_rail ||
                    part.role == kneerail::Role::mid_rail ||
                    part.role == kneerail::Role::welded_section;
  return tube && pen_.writable() && part.wall_nominal_tenth_mm &&
         pen_.instrument(kneerail::InstrumentKind::wall_gauge) != nullptr;
}

void WallCheck::show(const SheetPart* part, const QString& name, kneerail::Database& tables) {
  const bool same = part != nullptr && part_ && part->id == part_->id;
  if (!same) close();
  tables_ = &tables;
  name_ = name;
  part_ = part == nullptr ? std::nullopt : std::optional(*part);
  if (same) return refresh();
  begin();
}

void WallCheck::begin() {
  slots_ = {};
  last_.clear();
  current_ = -1;
  if (offered()) {
    if (tables_ != nullptr)
      if (auto last = kneerail::last_walls(*tables_, {part_->id, part_->life, {}, pen_.visit()}))
        last_ = std::move(*last);
    read_now();
    move_on();
  }
  tell();
}

void WallCheck::refresh() {
  if (!offered() || tables_ == nullptr) return begin();
  read_now();
  if (current_ < 0) move_on();
  tell();
}

/// What this visit has on record, and what waits for another try.
void WallCheck::read_now() {
  const auto now = kneerail::last_walls(*tables_, {part_->id, part_->life, pen_.visit(), {}});
  if (!now) return;
  for (std::size_t i = 0; i < slots_.size(); ++i) {
    Slot& slot = slots_[i];
    if (slot.state == State::on_its_way) continue;
    const auto at = std::find_if(now->begin(), now->end(), [&](const LastWall& wall) {
      return wall.clock_position == clocks[i];
    });
    slot.state = at == now->end() ? State::empty : State::kept;
    if (at != now->end()) slot.value = mean_of(at->replicates_hundredth_mm);
  }
  for (const kneerail::Entry* waiting : pen_.waiting_entries(WallReading::kind, part_->id)) {
    const auto reading = kneerail::from_body<WallReading>(waiting->body);
    if (!reading) continue;
    const auto at = std::find(clocks.begin(), clocks.end(), reading->clock_position);
    if (at == clocks.end()) continue;
    slots_[static_cast<std::size_t>(at - clocks.begin())] = {
        mean_of(reading->replicates_hundredth_mm), State::not_kept, {}};
  }
}

const LastWall* WallCheck::last_at(std::size_t slot) const {
  const auto at = std::find_if(last_.begin(), last_.end(), [&](const LastWall& wall) {
    return wall.clock_position == clocks[slot];
  });
  return at == last_.end() ? nullptr : &*at;
}

const LastWall* WallCheck::any_last() const {
  return last_.empty() ? nullptr : &last_.front();
}

std::int64_t WallCheck::resolution() const {
  const auto* gauge = pen_.instrument(kneerail::InstrumentKind::wall_gauge);
  return gauge == nullptr ? 1 : gauge->resolution;
}

QString WallCheck::text_of(std::int64_t hundredth_mm) const {
  const bool tenths = resolution() % 10 == 0 && hundredth_mm % 10 == 0;
  return QLocale().toString(static_cast<double>(hundredth_mm) / hundredths, 'f', tenths ? 1 : 2);
}

std::optional<std::int64_t> WallCheck::owners_limit() const {
  const auto& share = pen_.rules().wall_share_least_per_mille;
  if (!share || !part_ || !part_->wall_nominal_tenth_mm) return std::nullopt;
  return *share * *part_->wall_nominal_tenth_mm / 100;  // per mille of 0.1 mm, as 0.01 mm
}

/// A tube does not grow, and a thin place is looked at twice.
bool WallCheck::is_far(std::int64_t hundredth_mm) const {
  const auto* gauge = pen_.instrument(kneerail::InstrumentKind::wall_gauge);
  if (gauge != nullptr && gauge->low && hundredth_mm < *gauge->low) return true;
  if (gauge != nullptr && gauge->high && hundredth_mm > *gauge->high) return true;
  const auto as_new = static_cast<double>(*part_->wall_nominal_tenth_mm * 10);
  const auto read = static_cast<double>(hundredth_mm);
  return read < far_under * as_new || read > far_over * as_new;
}

QString WallCheck::place_words() const {
  if (part_->role == kneerail::Role::welded_section) return tr("at the foot, inside the hollow");
  if (any_last() != nullptr && any_last()->height_above_base_mm)
    return tr("%1 mm above its base").arg(*any_last()->height_above_base_mm);
  if (is_post_tube(*part_)) return tr("%1 mm above its base").arg(above_base_mm);
  return tr("in the middle of the bay");
}

QString WallCheck::title() const {
  if (!offered()) return {};
  QString name = name_;
  if (!name.isEmpty()) name[0] = name[0].toUpper();
  return tr("%1, %2").arg(name, place_words());
}

QString WallCheck::facts() const {
  if (!offered()) return {};
  QStringList words{tr("new %1 mm").arg(text_of(*part_->wall_nominal_tenth_mm * 10))};
  std::int64_t thinnest = 0;
  for (const LastWall& wall : last_) {
    const std::int64_t mean = mean_of(wall.replicates_hundredth_mm);
    if (thinnest == 0 || mean < thinnest) thinnest = mean;
  }
  words << (thinnest > 0 ? tr("last time %1").arg(text_of(thinnest)) : tr("not read before"));
  if (const auto limit = owners_limit()) words << tr("owner's limit %1").arg(text_of(*limit));
  return words.join(tr(" · "));
}

bool WallCheck::under() const {
  const auto limit = owners_limit();
  return limit && std::any_of(slots_.begin(), slots_.end(), [&](const Slot& slot) {
           return slot.filled() && slot.value < *limit;
         });
}

QString WallCheck::ask_words() const {
  if (!offered()) return {};
  const bool far = std::any_of(slots_.begin(), slots_.end(), [&](const Slot& slot) {
    return slot.filled() && is_far(slot.value);
  });
  if (far) return tr("Far from its wall when new. Read it once more?");
  if (!under()) return {};
  return tr("Under the owner's limit of %1: keep people off it until it is looked at.")
      .arg(text_of(*owners_limit()));
}

bool WallCheck::has_not_kept() const {
  return std::any_of(slots_.begin(), slots_.end(),
                     [](const Slot& slot) { return slot.state == State::not_kept; });
}

std::optional<std::int64_t> WallCheck::hundredth_mm_of(const QString& number) {
  bool is_number = false;
  const double mm = QLocale::c().toDouble(QString(number).replace(',', '.'), &is_number);
  if (!is_number || !(mm > 0) || mm * hundredths > static_cast<double>(most_hundredth_mm))
    return std::nullopt;
  const std::int64_t value = qRound64(mm * hundredths);
  return value > 0 ? std::optional(value) : std::nullopt;
}

void WallCheck::digit(int digit) {
  if (current_ < 0 || digit < 0 || digit > 9 || !pen_.writable()) return;
  Slot& slot = slots_[static_cast<std::size_t>(current_)];
  if (!slot.takes() || !slot.add(digit, {resolution(), most_hundredth_mm})) return;
  pen_.forget_redo();
  tell();
}

void WallCheck::backspace() {
  if (current_ < 0 || !pen_.writable()) return;
  Slot& slot = slots_[static_cast<std::size_t>(current_)];
  if (!slot.typing()) return;  // what is on record is taken back by Undo
  pen_.forget_redo();
  slot.digits.chop(1);
  tell();
}

void WallCheck::nextSlot() {
  if (current_ < 0) return;
  close();
  move_on();
  tell();
}

void WallCheck::chooseSlot(int slot) {
  if (slot < 0 || slot >= slot_count || !offered()) return;
  close();
  current_ = slot;
  tell();
}

/// To the next empty slot after the chosen one; with none there is nothing to type into.
void WallCheck::move_on() {
  const int from = current_;
  current_ = -1;
  for (int step = 1; step <= slot_count && current_ < 0; ++step) {
    const int slot = (from + step) % slot_count;
    if (slots_[static_cast<std::size_t>(slot)].state == State::empty) current_ = slot;
  }
}

bool WallCheck::typed(const QString& number) {
  const auto value = hundredth_mm_of(number);
  if (!offered() || current_ < 0 || !value) return false;
  if (!kneerail::wall_fits(part_->diameter_tenth_mm, *value / 10)) return false;
  const auto slot = static_cast<std::size_t>(current_);
  if (!slots_[slot].takes()) return false;
  slots_[slot].digits.clear();
  write(slot, *value);
  move_on();
  tell();
  return true;
}

void WallCheck::close() {
  for (std::size_t i = 0; i < slots_.size(); ++i) finish(i);
}

void WallCheck::finish(std::size_t slot) {
  const auto value = slots_[slot].take(resolution());
  if (value && part_) write(slot, *value);
}

QString WallCheck::pending() const {
  for (const Slot& slot : slots_)
    if (slot.typing()) return tr("%1 mm").arg(text_of(slot.typed(resolution())));
  return {};
}

void WallCheck::take_back_pending() {
  const auto typed =
      std::find_if(slots_.begin(), slots_.end(), [](const Slot& slot) { return slot.typing(); });
  if (typed == slots_.end() || !part_) return;
  const auto slot = static_cast<int>(typed - slots_.begin());
  const auto put_back = [this, part = part_->id, slot, digits = typed->digits] {
    if (!part_ || part_->id != part) return;
    current_ = slot;
    slots_[static_cast<std::size_t>(slot)].digits = digits;
    tell();
  };
  pen_.took_back({this, pending(), part_->id, {}, put_back});
  typed->digits.clear();
  tell();
}

void WallCheck::write(std::size_t slot, std::int64_t hundredth_mm) {
  WallReading reading;
  reading.visit = pen_.visit();
  if (const auto* gauge = pen_.instrument(kneerail::InstrumentKind::wall_gauge))
    reading.instrument = gauge->id;
  reading.replicates_hundredth_mm = {hundredth_mm};
  reading.clock_position = clocks[slot];
  reading.note.life = part_->life;
  if (const LastWall* last = any_last()) {
    reading.sound_m_per_s = last->sound_m_per_s;
    reading.height_above_base_mm = last->height_above_base_mm;
    reading.inside_the_hollow = last->inside_the_hollow;
  }
  if (part_->role == kneerail::Role::welded_section) reading.inside_the_hollow = true;
  if (is_post_tube(*part_) && !reading.height_above_base_mm)
    reading.height_above_base_mm = above_base_mm;
  slots_[slot].send(hundredth_mm);
  WalkPen::Act act;
  act.words = tr("%1 mm").arg(text_of(hundredth_mm));
  act.component = part_->id;
  act.entries.push_back(pen_.entry(part_->id, reading));
  act.told = [this, part = part_->id, slot, hundredth_mm](bool kept) {
    answered(part, slot, hundredth_mm, kept);
  };
  pen_.write(std::move(act));
}

void WallCheck::answered(const Uuid& part, std::size_t slot, std::int64_t value, bool kept) {
  if (!part_ || part_->id != part || !slots_[slot].answered(value, kept)) return;
  tell();
  if (!kept) return;
  emit readingKept(is_far(value));
  const bool all = std::all_of(slots_.begin(), slots_.end(),
                               [](const Slot& own) { return own.state == State::kept; });
  if (all) emit full();
}

void WallCheck::tell() {
  emit dataChanged(index(0), index(slot_count - 1));
  emit changed();
}
