// A draft of a run between two starts of the program. What a device remembers are whole numbers by
// name: the sentence is CBOR, eight bytes a number.

#include "schema/store/new_run.h"

namespace kneerail {
namespace {

constexpr std::size_t bytes_in_one = 8;
constexpr std::size_t bytes_most = 64 * 1024;

std::string size_name(const Uuid& site) {
  return "new_run_" + to_text(site) + "_bytes";
}
std::string piece_name(const Uuid& site, std::size_t piece) {
  return "new_run_" + to_text(site) + "_" + std::to_string(piece);
}

enum Key : int {
  key_run = 1,
  key_site,
  key_zone,
  key_name,
  key_numbers,
  key_in_service,
  key_drop,
  key_behind,
  key_below,
  key_posts,
  key_bays,
  key_joints
};

/// The numbers of a rule in the order they are kept.
template <class Rule, class Each>
void each_number(Rule& rule, Each each) {
  each(rule.posts);
  each(rule.first_number);
  each(rule.spacing_mm);
  each(rule.height_mm);
  each(rule.rails);
  each(rule.diameter_tenth_mm);
  each(rule.wall_tenth_mm);
  each(rule.made.system);
  each(rule.made.material);
  each(rule.made.protection);
  each(rule.base);
  each(rule.joint);
  each(rule.end);
  each(rule.bays);
  each(rule.toe_board);
  each(rule.sleeve_every_bays);
}

template <class Number>
std::int64_t number_of(const std::optional<Number>& value) {
  return value ? static_cast<std::int64_t>(*value) : std::int64_t{-1};
}
template <class Number>
void take(std::optional<Number>& value, std::int64_t kept) {
  if (kept >= 0) value = static_cast<Number>(kept);
}

cbor::Map to_map(const NewRun& run) {
  std::vector<std::int64_t> kept;
  each_number(run.rule,
              [&](const auto& value) { kept.push_back(static_cast<std::int64_t>(value)); });
  cbor::Array numbers;
  for (const std::int64_t one : kept) numbers.emplace_back(one);
  cbor::Array posts;
  for (const auto& [post, change] : run.rule.post_changes)
    posts.push_back(
        cbor::Array{post, number_of(change.base), change.turn_degrees, change.landmark});
  cbor::Array bays;
  for (const auto& [bay, change] : run.rule.bay_changes)
    bays.push_back(cbor::Array{bay, number_of(change.kind), number_of(change.length_mm),
                               number_of(change.toe_board), change.rise_mm});
  cbor::Array joints;
  for (const auto& [at, does] : run.rule.joint_changes)
    joints.push_back(cbor::Array{at.first, at.second, static_cast<int>(does)});
  cbor::Map map;
  map.set(key_run, run.run);
  map.set(key_site, run.site);
  map.set(key_zone, run.zone);
  map.set(key_name, run.name);
  map.set(key_numbers, std::move(numbers));
  map.set(key_drop, number_of(run.drop_mm));
  map.set(key_behind, number_of(run.behind));
  map.set(key_below, number_of(run.below));
  map.set(key_posts, std::move(posts));
  map.set(key_bays, std::move(bays));
  map.set(key_joints, std::move(joints));
  if (run.rule.in_service) map.set(key_in_service, std::int64_t{run.rule.in_service->days});
  return map;
}

/// Whole numbers of an array; what is no number is left at 0.
std::vector<std::int64_t> numbers_of(const cbor::Value& value) {
  std::vector<std::int64_t> numbers;
  if (value.array() == nullptr) return numbers;
  for (const cbor::Value& one : *value.array())
    numbers.push_back(one.number() == nullptr ? 0 : *one.number());
  return numbers;
}

const cbor::Array& rows_of(const cbor::Map& map, int key) {
  static const cbor::Array none;
  const cbor::Value* value = map.find(key);
  return value == nullptr || value->array() == nullptr ? none : *value->array();
}

void take_changes(layout::RunRule& rule, const cbor::Map& map) {
  for (const cbor::Value& row : rows_of(map, key_posts)) {
    const auto numbers = numbers_of(row);
    if (numbers.size() != 4) continue;
    layout::PostChange& change = rule.post_changes[static_cast<int>(numbers[0])];
    take(change.base, numbers[1]);
    change.turn_degrees = static_cast<int>(numbers[2]);
    if (const std::string* words = (*row.array())[3].text()) change.landmark = *words;
  }
  for (const cbor::Value& row : rows_of(map, key_bays)) {
    const auto numbers = numbers_of(row);
    if (numbers.size() != 5) continue;
    layout::BayChange& change = rule.bay_changes[static_cast<int>(numbers[0])];
    take(change.kind, numbers[1]);
    take(change.length_mm, numbers[2]);
    take(change.toe_board, numbers[3]);
    change.rise_mm = numbers[4];
  }
  for (const cbor::Value& row : rows_of(map, key_joints)) {
    const auto numbers = numbers_of(row);
    if (numbers.size() != 3) continue;
    rule.joint_changes[{static_cast<int>(numbers[0]), static_cast<int>(numbers[1])}] =
        static_cast<WhatItDoes>(numbers[2]);
  }
}

std::optional<NewRun> from_map(const cbor::Map& map) {
  NewRun run;
  const auto id = [&](int key, Uuid& into) {
    const cbor::Value* value = map.find(key);
    if (const auto kept = value == nullptr ? std::nullopt : value->uuid()) into = *kept;
  };
  const auto number = [&](int key) {
    const cbor::Value* value = map.find(key);
    return value == nullptr || value->number() == nullptr ? std::int64_t{-1} : *value->number();
  };
  id(key_run, run.run);
  id(key_site, run.site);
  id(key_zone, run.zone);
  if (run.run.is_zero() || run.site.is_zero()) return std::nullopt;
  if (const cbor::Value* name = map.find(key_name); name != nullptr && name->text() != nullptr)
    run.name = *name->text();
  const cbor::Value* kept = map.find(key_numbers);
  const auto numbers = kept == nullptr ? std::vector<std::int64_t>() : numbers_of(*kept);
  std::size_t next = 0;
  each_number(run.rule, [&](auto& value) {
    if (next < numbers.size())
      value = static_cast<std::remove_cvref_t<decltype(value)>>(numbers[next]);
    ++next;
  });
  if (next != numbers.size()) return std::nullopt;  // of another program's making
  if (const cbor::Value* day = map.find(key_in_service); day != nullptr && day->number() != nullptr)
    run.rule.in_service = Date{static_cast<std::int32_t>(*day->number())};
  take(run.drop_mm, number(key_drop));
  take(run.behind, number(key_behind));
  take(run.below, number(key_below));
  take_changes(run.rule, map);
  if (!layout::check_rule(run.rule)) return std::nullopt;
  return run;
}

/// The power may go between the run and the end of its draft.
bool came_in(Database& tables, const Uuid& run) {
  auto row = tables.prepare("SELECT 1 FROM entity WHERE id = ?1");
  if (!row) return false;
  row->bind(1, run);
  const auto there = row->step();
  return there && *there;
}

}  // namespace

std::optional<NewRun> kept_draft(Database& tables, const Uuid& site) {
  const auto size = setting(tables, size_name(site));
  if (!size || size->value_or(0) <= 0) return std::nullopt;
  const auto bytes = static_cast<std::size_t>(**size);
  if (bytes > bytes_most) return std::nullopt;
  cbor::Bytes kept;
  for (std::size_t piece = 0; kept.size() < bytes; ++piece) {
    const auto value = setting(tables, piece_name(site, piece));
    if (!value || !*value) return std::nullopt;
    auto bits = static_cast<std::uint64_t>(**value);
    for (std::size_t i = 0; i < bytes_in_one; ++i, bits >>= 8)
      if (kept.size() < bytes) kept.push_back(static_cast<std::uint8_t>(bits & 0xff));
  }
  const auto value = cbor::decode(kept);
  auto run = value && value->map() != nullptr ? from_map(*value->map()) : std::nullopt;
  return run && run->site == site && !came_in(tables, run->run) ? run : std::nullopt;
}

Settings draft_settings(const NewRun& run) {
  const cbor::Bytes bytes = cbor::encode(to_map(run));
  Settings settings{{size_name(run.site), static_cast<std::int64_t>(bytes.size())}};
  for (std::size_t from = 0; from < bytes.size(); from += bytes_in_one) {
    std::uint64_t bits = 0;
    const std::size_t end = std::min(from + bytes_in_one, bytes.size());
    for (std::size_t i = end; i-- > from;) bits = bits << 8 | bytes[i];
    settings.emplace_back(piece_name(run.site, from / bytes_in_one),
                          static_cast<std::int64_t>(bits));
  }
  return settings;
}

Settings no_draft(const Uuid& site) {
  return {{size_name(site), 0}};
}

}  // namespace kneerail
