#include "mobile/models/torque_check.h"

#include <QLocale>
#include <utility>

#include "core/records/correction.h"

using kneerail::Censoring;
using kneerail::Draft;
using kneerail::LastTorque;
using kneerail::SheetPart;
using kneerail::TorqueMethod;
using kneerail::TorqueReading;
using kneerail::Uuid;
using kneerail::WhyNotMeasurable;

namespace {

constexpr int tenths = 10;

QString newton_metres(std::int64_t tenth_nm) {
  return QLocale().toString(static_cast<double>(tenth_nm) / tenths, 'f', tenth_nm % tenths ? 1 : 0);
}

}  // namespace

TorqueCheck::TorqueCheck(WalkPen& pen, QObject* parent) : QObject(parent), pen_(pen) {}

bool TorqueCheck::offered_on(const SheetPart& part) const {
  return pen_.writable() && part.screws > 0 && !part.welded && part.torque_target_tenth_nm &&
         pen_.instrument(kneerail::InstrumentKind::torque_wrench) != nullptr;
}

void TorqueCheck::show(const SheetPart* part, kneerail::Database& tables) {
  const bool same = part != nullptr && part_ && part->id == part_->id;
  if (!same) close();
  tables_ = &tables;
  part_ = part == nullptr ? std::nullopt : std::optional(*part);
  if (same) return refresh();
  choose_screw(1);
}

void TorqueCheck::choose_screw(int screw) {
  screw_ = screw;
  moving_ = false;
  moved_about_ = -1;
  on_its_way_ = false;
  refresh();
}

void TorqueCheck::refresh() {
  last_.reset();
  now_.reset();
  read_wrench();
  if (part_ && tables_ != nullptr) {
    auto last = last_torque(*tables_, {part_->id, screw_, std::nullopt, pen_.visit()});
    if (last) last_ = *last;
    auto now = last_torque(*tables_, {part_->id, screw_, pen_.visit(), {}});
    if (now) now_ = *now;
  }
  emit changed();
}

std::int64_t TorqueCheck::target_tenths() const {
  return part_ ? part_->torque_target_tenth_nm.value_or(0) : 0;
}

QString TorqueCheck::target_words() const {
  return newton_metres(target_tenths());
}

qreal TorqueCheck::target() const {
  return static_cast<double>(target_tenths()) / tenths;
}

qreal TorqueCheck::lowest() const {
  return part_ ? static_cast<double>(part_->torque_lowest_tenth_nm.value_or(0)) / tenths : 0;
}

qreal TorqueCheck::moved_about() const {
  return moved_about_ < 0 ? -1 : static_cast<double>(moved_about_) / tenths;
}

bool TorqueCheck::wrench_asked() const {
  return offered() && wrench_set() != part_->torque_target_tenth_nm;
}

/// As said today, or as this visit's last record of this wrench has it.
std::optional<std::int64_t> TorqueCheck::wrench_set() const {
  const auto* wrench = pen_.instrument(kneerail::InstrumentKind::torque_wrench);
  if (wrench == nullptr) return std::nullopt;
  if (wrench_said_ && wrench_said_->wrench == wrench->id && wrench_said_->visit == pen_.visit())
    return wrench_said_->tenth_nm;
  return wrench_kept_.tenth_nm;
}

/// Once for a visit and a wrench: a visit of many screws is not looked through after each.
void TorqueCheck::read_wrench() {
  const auto* wrench = pen_.instrument(kneerail::InstrumentKind::torque_wrench);
  if (wrench == nullptr || tables_ == nullptr) return;
  if (wrench_kept_.wrench == wrench->id && wrench_kept_.visit == pen_.visit()) return;
  const auto kept = last_wrench_set(*tables_, pen_.visit(), wrench->id);
  wrench_kept_ = {};
  if (kept) wrench_kept_ = {wrench->id, pen_.visit(), *kept};
}

void TorqueCheck::kept(const std::vector<kneerail::Entry>& entries) {
  for (const kneerail::Entry& entry : entries) {
    if (entry.kind == kneerail::Voided::kind) wrench_kept_ = {};  // it may be what was said of it
    if (entry.kind != TorqueReading::kind) continue;
    const auto reading = kneerail::from_body<TorqueReading>(entry.body);
    if (reading && reading->instrument == wrench_kept_.wrench &&
        reading->visit == wrench_kept_.visit)
      wrench_kept_.tenth_nm = reading->wrench_set_tenth_nm;
  }
}

QString TorqueCheck::wrench_question() const {
  const auto* wrench = pen_.instrument(kneerail::InstrumentKind::torque_wrench);
  if (wrench == nullptr) return {};
  return tr("Wrench %1 set at %2 N·m").arg(QString::fromStdString(wrench->serial), target_words());
}

QString TorqueCheck::title() const {
  if (!offered()) return {};
  return tr("Screw %1 of %2, register says %3 N·m")
      .arg(screw_)
      .arg(part_->screws)
      .arg(target_words());
}

namespace {

QString torque_words(const LastTorque& torque) {
  if (torque.censoring == Censoring::not_measurable)
    return torque.why_not == WhyNotMeasurable::no_screw ? TorqueCheck::tr("no screw")
                                                        : TorqueCheck::tr("seized");
  const QString value = newton_metres(torque.as_found_tenth_nm.value_or(0));
  switch (torque.censoring) {
    case Censoring::at_least:
      return TorqueCheck::tr("clicked at %1").arg(value);
    case Censoring::at_most:
      return TorqueCheck::tr("moved, under %1").arg(value);
    default:
      return TorqueCheck::tr("moved at about %1").arg(value);
  }
}

}  // namespace

QString TorqueCheck::last_words() const {
  return last_ ? tr("last time: %1").arg(torque_words(*last_)) : tr("not checked before");
}

QString TorqueCheck::done_words() const {
  return now_ ? tr("Kept: %1").arg(torque_words(*now_)) : QString();
}

QString TorqueCheck::clicked_words() const {
  return tr("Clicked at %1, did not move").arg(target_words());
}
QString TorqueCheck::clicked_second() const {
  return tr("held at least %1 N·m").arg(target_words());
}
QString TorqueCheck::moved_second() const {
  return tr("then tight again at %1").arg(target_words());
}

QString TorqueCheck::next_screw_words() const {
  if (!part_ || screw_ >= part_->screws) return {};
  return tr("%1 of %2").arg(screw_ + 1).arg(part_->screws);
}

void TorqueCheck::wrenchIsSet() {
  const auto* wrench = pen_.instrument(kneerail::InstrumentKind::torque_wrench);
  if (!offered()) return;
  wrench_said_ = {wrench->id, pen_.visit(), *part_->torque_target_tenth_nm};
  emit changed();
}

TorqueReading TorqueCheck::reading() const {
  TorqueReading reading;
  reading.visit = pen_.visit();
  if (const auto* wrench = pen_.instrument(kneerail::InstrumentKind::torque_wrench))
    reading.instrument = wrench->id;
  reading.screw = screw_;
  reading.target_tenth_nm = part_->torque_target_tenth_nm;
  reading.wrench_set_tenth_nm = wrench_set();
  reading.method = TorqueMethod::click_no_movement;
  reading.note.life = part_->life;
  return reading;
}

TorqueReading TorqueCheck::moved_reading() const {
  TorqueReading found = reading();
  found.method = TorqueMethod::click_moved;
  found.as_left_tenth_nm = found.wrench_set_tenth_nm;
  // No mark on the slide: it moved somewhere under what the wrench was set at.
  found.censoring = moved_about_ < 0 ? Censoring::at_most : Censoring::about;
  found.as_found_tenth_nm =
      moved_about_ < 0 ? found.wrench_set_tenth_nm : std::optional(moved_about_);
  return found;
}

Draft TorqueCheck::draft() const {
  return {pen_.site(), TorqueReading::kind, part_->id, screw_, {}, to_body(moved_reading())};
}

void TorqueCheck::clicked() {
  if (!ready()) return;
  TorqueReading found = reading();
  found.as_found_tenth_nm = found.wrench_set_tenth_nm;
  found.censoring = Censoring::at_least;
  write(std::move(found), tr("clicked at %1").arg(target_words()));
}

void TorqueCheck::moved() {
  if (!ready() || moving_) return;
  remember_slide(tr("it moved"), true, -1);
}

void TorqueCheck::movedAt(qreal torque_nm) {
  const std::int64_t about = qRound64(torque_nm * tenths);
  if (!moving_ || about < 0 || about > target_tenths() || about == moved_about_) return;
  remember_slide(tr("moved at %1").arg(newton_metres(about)), true, about);
}

void TorqueCheck::remember_slide(const QString& words, bool moving, std::int64_t about) {
  const auto set = [this, part = part_->id, screw = screw_](bool up, std::int64_t at) {
    return [this, part, screw, up, at] {
      if (!part_ || part_->id != part) return;
      if (screw_ != screw) choose_screw(screw);
      set_slide(up, at);
    };
  };
  pen_.remember({this, words, part_->id, set(moving_, moved_about_), set(moving, about)});
  set_slide(moving, about);
}

/// The slide's place is on the disk as a draft: what was said is there after a power cut.
void TorqueCheck::set_slide(bool moving, std::int64_t about) {
  const Draft before = draft();
  moving_ = moving;
  moved_about_ = about;
  if (moving_)
    pen_.save_draft(draft(), {});
  else
    pen_.drop_draft(before, {});
  emit changed();
}

void TorqueCheck::close() {
  if (!moving_ || !part_) return;
  write(moved_reading(),
        moved_about_ < 0 ? tr("it moved") : tr("moved at %1").arg(newton_metres(moved_about_)));
}

void TorqueCheck::seized() {
  if (!ready()) return;
  TorqueReading found = reading();
  found.censoring = Censoring::not_measurable;
  found.why_not = WhyNotMeasurable::seized;
  write(std::move(found), tr("seized"));
}

void TorqueCheck::noScrew() {
  if (!ready()) return;
  TorqueReading found = reading();
  found.censoring = Censoring::not_measurable;
  found.why_not = WhyNotMeasurable::no_screw;
  write(std::move(found), tr("no screw"));
}

/// One touch a screw: when it is on the disk the pad goes on to the next.
void TorqueCheck::write(TorqueReading reading, const QString& words) {
  WalkPen::Act act;
  act.words = words;
  act.component = part_->id;
  act.entries.push_back(pen_.entry(part_->id, reading));
  if (moving_) act.ended = draft();
  act.told = [this, part = part_->id, screw = screw_](bool kept) { answered(part, screw, kept); };
  moving_ = false;
  moved_about_ = -1;
  on_its_way_ = true;
  pen_.forget_typed(this);
  pen_.write(std::move(act));
  emit changed();
}

void TorqueCheck::answered(const Uuid& part, int screw, bool kept) {
  if (!part_ || part_->id != part || screw_ != screw || !on_its_way_) return;
  on_its_way_ = false;
  if (!kept) return emit changed();
  if (screw_ < part_->screws)
    choose_screw(screw_ + 1);
  else
    emit lastScrewDone();
}

bool TorqueCheck::nextScrew() {
  if (!part_) return false;
  if (moving_) {
    close();  // the pad goes on when the disk has it
    return screw_ < part_->screws;
  }
  if (on_its_way_ || screw_ >= part_->screws) return false;
  choose_screw(screw_ + 1);
  return true;
}
