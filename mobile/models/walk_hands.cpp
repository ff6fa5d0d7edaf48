// Who walks, and with which gauge and wrench.

#include <algorithm>

#include "mobile/models/walk_model.h"

using kneerail::InstrumentKind;
using kneerail::KnownInstrument;

namespace {

QList<QString> serials(const WalkPen& pen, InstrumentKind kind) {
  QList<QString> list;
  for (const KnownInstrument& instrument : pen.instruments(kind))
    list << QString::fromStdString(instrument.serial);
  return list;
}

int place_of(const WalkPen& pen, InstrumentKind kind) {
  const KnownInstrument* now = pen.instrument(kind);
  if (now == nullptr) return -1;
  const auto known = pen.instruments(kind);
  const auto at = std::find_if(known.begin(), known.end(),
                               [&](const KnownInstrument& other) { return other.id == now->id; });
  return static_cast<int>(at - known.begin());
}

}  // namespace

QList<QString> WalkModel::people() const {
  QList<QString> initials;
  for (const auto& person : pen_.people()) initials << QString::fromStdString(person.initials);
  return initials;
}

int WalkModel::person_now() const {
  const auto& people = pen_.people();
  const auto* now = pen_.person();
  if (now == nullptr) return -1;
  const auto at = std::find_if(people.begin(), people.end(),
                               [&](const auto& person) { return person.id == now->id; });
  return static_cast<int>(at - people.begin());
}

QString WalkModel::person_words() const {
  const auto* now = pen_.person();
  return now == nullptr ? QString() : QString::fromStdString(now->initials);
}

QList<QString> WalkModel::gauges() const {
  return serials(pen_, InstrumentKind::coating_gauge);
}

int WalkModel::gauge_now() const {
  return place_of(pen_, InstrumentKind::coating_gauge);
}

QList<QString> WalkModel::wrenches() const {
  return serials(pen_, InstrumentKind::torque_wrench);
}

int WalkModel::wrench_now() const {
  return place_of(pen_, InstrumentKind::torque_wrench);
}

QList<QString> WalkModel::wall_gauges() const {
  return serials(pen_, InstrumentKind::wall_gauge);
}

int WalkModel::wall_gauge_now() const {
  return place_of(pen_, InstrumentKind::wall_gauge);
}

void WalkModel::choosePerson(int place) {
  const auto& people = pen_.people();
  if (place < 0 || place >= static_cast<int>(people.size()) || place == person_now()) return;
  settle();
  if (auto chosen = pen_.choose_person(people[static_cast<std::size_t>(place)].id); !chosen)
    return say(QString::fromStdString(chosen.error().message));
  another_hand();
}

void WalkModel::settle() {
  leave();
  store_.settle();
}

/// What the pads show is of another visit, or by another gauge.
void WalkModel::another_hand() {
  read_sheet(sheet().id);
  coating_.begin();
  torque_.refresh();
  wall_.begin();
  bay_.begin();
  emit whereChanged();
  emit titleChanged();
}

void WalkModel::choose_instrument(InstrumentKind kind, int place) {
  const auto known = pen_.instruments(kind);
  if (place < 0 || place >= static_cast<int>(known.size())) return;
  settle();
  pen_.choose_instrument(known[static_cast<std::size_t>(place)].id);
  another_hand();
}

void WalkModel::chooseGauge(int place) {
  choose_instrument(InstrumentKind::coating_gauge, place);
}

void WalkModel::chooseWallGauge(int place) {
  choose_instrument(InstrumentKind::wall_gauge, place);
}

void WalkModel::chooseWrench(int place) {
  choose_instrument(InstrumentKind::torque_wrench, place);
}
