#include "mobile/models/walk_place.h"

#include <QPointer>
#include <algorithm>

#include "schema/store/register_things.h"

using kneerail::InstrumentKind;
using kneerail::PlaceKept;
using kneerail::RunSheet;
using kneerail::Uuid;

namespace {

constexpr int rest_ms = 200;  // several steps in a row are one place
constexpr int run_type = 4;

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

PlaceKept WalkPlace::now() const {
  PlaceKept place;
  const RunSheet& sheet = *walk_.run()->sheet();
  const int part = walk_.run()->part();
  const int post = walk_.run()->post();
  if (post < 0) return place;
  place.run = sheet.id;
  place.at = sheet.posts[static_cast<std::size_t>(post)].id;
  if (part >= 0)
    place.at = sheet.parts[static_cast<std::size_t>(part)].id;
  else if (const int bay = walk_.run()->bay(); bay >= 0)
    place.at = sheet.bays[static_cast<std::size_t>(bay)].id;
  place.pad = walk_.pad();
  const WalkPen& pen = walk_.pen();
  if (const auto* person = pen.person()) place.person = person->id;
  if (const auto* gauge = pen.instrument(InstrumentKind::coating_gauge)) place.gauge = gauge->id;
  if (const auto* wrench = pen.instrument(InstrumentKind::torque_wrench)) place.wrench = wrench->id;
  return place;
}

bool WalkPlace::restore() {
  kept_ = place_kept(store_.reader().tables());
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
  if (walk_.part_chosen() && kept_.pad > WalkModel::PostPad && kept_.pad <= WalkModel::WallPad)
    walk_.set_pad(static_cast<WalkModel::Pad>(kept_.pad));
  if (kept_.run.is_zero()) kept_ = now();  // nobody walked: nothing to remember until somebody does
  return walk_.opened();
}

void WalkPlace::keep() {
  rest_.stop();
  const PlaceKept place = now();
  if (place == kept_ || place.run.is_zero() || !store_.writable()) return;
  store_.keep_settings(settings_of(place),
                       [self = QPointer<WalkPlace>(this), place](const kneerail::Result<>& kept) {
                         if (!self) return;
                         if (kept) self->kept_ = place;
                         self->walk_.set_place_kept(kept.has_value());
                       });
}
