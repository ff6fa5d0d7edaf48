#include "core/records/cbor.h"

#include <algorithm>
#include <limits>
#include <optional>

#include "core/records/cbor_reader.h"

namespace kneerail::cbor {
namespace {

// Keys are ordered by their encoded bytes (RFC 8949, 4.2.1). That is: whole numbers from 0 up, then
// negative ones from -1 down, then text, the shorter first and equal lengths byte by byte.
int rank(const Value& key) {
  if (const auto* number = key.number()) return *number >= 0 ? 0 : 1;
  check(key.text() != nullptr, "a map key is a whole number or text");
  return 2;
}

int compare_text(const std::string& a, const std::string& b) {
  if (a.size() != b.size()) return a.size() < b.size() ? -1 : 1;
  return a.compare(b);  // char_traits<char> compares as unsigned bytes
}

int compare_keys(const Value& a, const Value& b) {
  if (const int by_rank = rank(a) - rank(b); by_rank != 0) return by_rank;
  if (a.text() != nullptr) return compare_text(*a.text(), *b.text());
  const std::int64_t x = *a.number();
  const std::int64_t y = *b.number();
  if (x == y) return 0;
  return (x < y) == (x >= 0) ? -1 : 1;
}

void head(int major, std::uint64_t argument, Bytes& out) {
  const auto type = static_cast<unsigned>(major) << 5U;
  if (argument < 24) {
    out.push_back(static_cast<std::uint8_t>(type | argument));
    return;
  }
  int more = 1;  // bytes of the argument
  while (more < 8 && (argument >> (8 * more)) != 0) more *= 2;
  const unsigned code = more == 1 ? 24 : more == 2 ? 25 : more == 4 ? 26 : 27;
  out.push_back(static_cast<std::uint8_t>(type | code));
  for (int i = more - 1; i >= 0; --i)
    out.push_back(static_cast<std::uint8_t>((argument >> (8 * i)) & 0xFFU));
}

void encode_at(const Value& value, int depth, Bytes& out) {
  if (const auto* number = value.number()) {
    if (*number >= 0)
      head(0, static_cast<std::uint64_t>(*number), out);
    else
      head(1, static_cast<std::uint64_t>(-1 - *number), out);
  } else if (const auto* bytes = value.bytes()) {
    head(2, bytes->size(), out);
    out.insert(out.end(), bytes->begin(), bytes->end());
  } else if (const auto* text = value.text()) {
    head(3, text->size(), out);
    out.insert(out.end(), text->begin(), text->end());
  } else if (const auto* array = value.array()) {
    check(depth < depth_max, "a value is at most eight levels deep");
    head(4, array->size(), out);
    for (const Value& one : *array) encode_at(one, depth + 1, out);
  } else if (const auto* map = value.map()) {
    check(depth < depth_max, "a value is at most eight levels deep");
    head(5, map->size(), out);
    for (const auto& [key, one] : map->pairs()) {
      encode_at(key, depth + 1, out);
      encode_at(one, depth + 1, out);
    }
  } else {
    out.push_back(*value.truth() ? 0xF5 : 0xF4);
  }
}

}  // namespace

std::optional<Uuid> Value::uuid() const {
  const Bytes* sixteen = bytes();
  if (sixteen == nullptr || sixteen->size() != 16) return std::nullopt;
  Uuid id;
  std::copy(sixteen->begin(), sixteen->end(), id.bytes.begin());
  return id;
}

bool Value::operator==(const Value& other) const {
  return of_ == other.of_;
}

bool Map::operator==(const Map& other) const {
  return pairs_ == other.pairs_;
}

bool key_before(const Value& a, const Value& b) {
  return compare_keys(a, b) < 0;
}

Map::Map(std::initializer_list<Pair> pairs) {
  pairs_.reserve(pairs.size());
  for (const auto& [key, value] : pairs) set(key, value);
}

Map Map::from_sorted(std::vector<Pair> pairs) {
  Map map;
  map.pairs_ = std::move(pairs);
  return map;
}

const Value* Map::find(std::int64_t key) const {
  for (const auto& [at, value] : pairs_) {
    const auto* number = at.number();
    if (number != nullptr && *number == key) return &value;
  }
  return nullptr;
}

const Value* Map::find(const Value& key) const {
  const auto place = std::lower_bound(
      pairs_.begin(), pairs_.end(), key,
      [](const Pair& pair, const Value& wanted) { return key_before(pair.first, wanted); });
  return place != pairs_.end() && place->first == key ? &place->second : nullptr;
}

void Map::set(Value key, Value value) {
  if (!pairs_.empty() && key_before(pairs_.back().first, key)) {
    pairs_.emplace_back(std::move(key), std::move(value));
    return;
  }
  const auto place = std::lower_bound(
      pairs_.begin(), pairs_.end(), key,
      [](const Pair& pair, const Value& wanted) { return key_before(pair.first, wanted); });
  if (place != pairs_.end() && place->first == key)
    place->second = std::move(value);
  else
    pairs_.emplace(place, std::move(key), std::move(value));
}

void Map::erase(std::int64_t key) {
  std::erase_if(pairs_, [key](const Pair& pair) {
    const auto* number = pair.first.number();
    return number != nullptr && *number == key;
  });
}

void encode(const Value& value, Bytes& out) {
  encode_at(value, 0, out);
}

Bytes encode(const Value& value) {
  Bytes out;
  encode(value, out);
  return out;
}

Result<Value> decode(std::span<const std::uint8_t> bytes) {
  Reader reader(bytes);
  Value value;
  if (!reader.value(value) || !reader.end()) return reader.error();
  return value;
}

}  // namespace kneerail::cbor
