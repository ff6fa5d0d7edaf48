#include "mobile/models/walk_place.h"

#include <algorithm>
#include <array>

#include "schema/store/register_things.h"
#include "schema/store/settings.h"

using kneerail::RunSheet;
using kneerail::Uuid;

namespace {

constexpr int rest_ms = 200;  // several steps in a row are one place
constexpr int run_type = 4;

// An identifier is two settings: its first and its last eight bytes.
constexpr std::array run_names = {"walk_run_first", "walk_run_last"};
constexpr std::array at_names = {"walk_at_first", "walk_at_last"};
constexpr const char* pad_name = "walk_pad";

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
  return place;
}

WalkPlace::Place WalkPlace::remembered() const {
  Place place;
  kneerail::Database& tables = store_.reader().tables();
  const auto read = [&](const char* name) {
    const auto value = kneerail::setting(tables, name);
    return value ? value->value_or(0) : 0;
  };
  for (std::size_t half = 0; half < 2; ++half) {
    set_half(place.run, half, read(run_names[half]));
    set_half(place.at, half, read(at_names[half]));
  }
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
  walk_.open(run, kept_.at);
  if (walk_.part_chosen() && kept_.pad > WalkModel::PostPad && kept_.pad <= WalkModel::TorquePad)
    walk_.set_pad(static_cast<WalkModel::Pad>(kept_.pad));
  return walk_.opened();
}

void WalkPlace::keep() {
  rest_.stop();
  const Place place = now();
  if (place == kept_ || place.run.is_zero() || !store_.writable()) return;
  kneerail::Settings settings{{pad_name, place.pad}};
  for (std::size_t half = 0; half < 2; ++half) {
    settings.emplace_back(run_names[half], half_of(place.run, half));
    settings.emplace_back(at_names[half], half_of(place.at, half));
  }
  kept_ = place;
  store_.keep_settings(std::move(settings), [](const kneerail::Result<>&) {});
}
