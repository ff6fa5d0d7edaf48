#include "mobile/models/walk_place.h"

#include <QPointer>
#include <algorithm>
#include <string>

#include "schema/store/register_things.h"
#include "schema/store/settings.h"

using kneerail::InstrumentKind;
using kneerail::RunSheet;
using kneerail::Uuid;

namespace {

constexpr int rest_ms = 200;  // several steps in a row are one place
constexpr int run_type = 4;

constexpr const char* pad_name = "walk_pad";

// An identifier is two settings: its first and its last eight bytes.
std::string name_of(const char* what, std::size_t half) {
  return std::string("walk_") + what + (half == 0 ? "_first" : "_last");
}

std::int64_t half_of(const Uuid& id, std::size_t half) {
  std::uint64_t bits = 0;
  for (std::size_t i = 0; i < 8; ++i) bits = bits << 8 | id.bytes[half * 8 + i];
  return static_cast<std::int64_t>(bits);
}

void set_half(Uuid& id, std::size_t half, std::int64_t value) {
  auto bits = static_cast<std::uint64_t>(value);
  for (std::size_t i = 8; i-- > 0; bits >>= 8)
    id.bytes[half * 8 + i] = static_cast<std::uint8_t>(bits & 0xff);
}

}  // namespace

WalkPlace::WalkPlace(StoreLink& store, WalkModel& walk, QObject* parent)
    : QObject(parent), store_(store), walk_(walk) {
  rest_.setSingleShot(true);
  rest_.setInterval(rest_ms);
  connect(&rest_, &QTimer::timeout, this, &WalkPlace::keep);
  const auto moved = [this] { rest_.start(); };
  connect(&walk, &WalkModel::whereChanged, this, moved);
  connect(&walk, &WalkModel::padChanged, this, moved);
  connect(&walk, &WalkModel::titleChanged, this, moved);
}

template <class Action>
void WalkPlace::each_id(Place& place, Action action) {
  action("run", place.run);
  action("at", place.at);
  action("person", place.person);
  action("gauge", place.gauge);
  action("wrench", place.wrench);
}

WalkPlace::Place WalkPlace::now() const {
  Place place;
  const RunSheet& sheet = *walk_.run()->sheet();
  const int part = walk_.run()->part();
  const int post = walk_.run()->post();
  if (post < 0) return place;
  place.run = sheet.id;
  place.at = part >= 0 ? sheet.parts[static_cast<std::size_t>(part)].id
                       : sheet.posts[static_cast<std::size_t>(post)].id;
  place.pad = walk_.pad();
  const WalkPen& pen = walk_.pen();
  if (const auto* person = pen.person()) place.person = person->id;
  if (const auto* gauge = pen.instrument(InstrumentKind::coating_gauge)) place.gauge = gauge->id;
  if (const auto* wrench = pen.instrument(InstrumentKind::torque_wrench)) place.wrench = wrench->id;
  return place;
}

WalkPlace::Place WalkPlace::remembered() const {
  Place place;
  kneerail::Database& tables = store_.reader().tables();
  const auto read = [&](const std::string& name) {
    const auto value = kneerail::setting(tables, name);
    return value ? value->value_or(0) : 0;
  };
  each_id(place, [&](const char* what, Uuid& id) {
    for (std::size_t half = 0; half < 2; ++half) set_half(id, half, read(name_of(what, half)));
  });
  place.pad = static_cast<int>(read(pad_name));
  return place;
}

bool WalkPlace::restore() {
  kept_ = remembered();
  Uuid run = kept_.run;
  if (run.is_zero()) {
    const auto runs = kneerail::things_of_type(store_.reader().tables(), run_type);
    if (!runs || runs->empty()) return false;
    const auto first =
        std::min_element(runs->begin(), runs->end(),
                         [](const auto& one, const auto& other) { return one.name < other.name; });
    run = first->id;
  }
  kneerail::Result<> person = kneerail::Done{};
  if (!kept_.person.is_zero()) person = walk_.pen().choose_person(kept_.person);
  for (const Uuid& instrument : {kept_.gauge, kept_.wrench})
    if (!instrument.is_zero()) walk_.pen().choose_instrument(instrument);
  walk_.open(run, kept_.at);
  if (!person) walk_.tell(QString::fromStdString(person.error().message));
  if (walk_.part_chosen() && kept_.pad > WalkModel::PostPad && kept_.pad <= WalkModel::TorquePad)
    walk_.set_pad(static_cast<WalkModel::Pad>(kept_.pad));
  if (kept_.run.is_zero()) kept_ = now();  // nobody walked: nothing to remember until somebody does
  return walk_.opened();
}

void WalkPlace::keep() {
  rest_.stop();
  Place place = now();
  if (place == kept_ || place.run.is_zero() || !store_.writable()) return;
  kneerail::Settings settings{{pad_name, place.pad}};
  each_id(place, [&](const char* what, const Uuid& id) {
    for (std::size_t half = 0; half < 2; ++half)
      settings.emplace_back(name_of(what, half), half_of(id, half));
  });
  store_.keep_settings(std::move(settings),
                       [self = QPointer<WalkPlace>(this), place](const kneerail::Result<>& kept) {
                         if (!self) return;
                         if (kept) self->kept_ = place;
                         self->walk_.set_place_kept(kept.has_value());
                       });
}
