#pragma once

// The subset of CBOR that records are written in: deterministic encoding (RFC 8949, 4.2.1),
// definite lengths, shortest integers, map keys ascending by their encoded bytes and each once, at
// most eight levels. No floats, tags, null or undefined. What is written here reads back as the
// same bytes; whatever could be written two ways is refused.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "core/base/id.h"
#include "core/base/result.h"

namespace kneerail::cbor {

using Bytes = std::vector<std::uint8_t>;
class Value;
using Array = std::vector<Value>;

/// Pairs in ascending order of the key's encoded bytes. Keys are whole numbers or text.
class Map {
 public:
  using Pair = std::pair<Value, Value>;

  Map() = default;
  Map(std::initializer_list<Pair> pairs);
  /// Takes pairs that are in order already, each key once.
  static Map from_sorted(std::vector<Pair> pairs);

  /// The value under a whole-number key, or null.
  [[nodiscard]] const Value* find(std::int64_t key) const;
  [[nodiscard]] const Value* find(const Value& key) const;
  [[nodiscard]] bool has(std::int64_t key) const { return find(key) != nullptr; }
  /// Puts the pair where its key belongs; replaces the value of a key that is there.
  void set(Value key, Value value);
  void erase(std::int64_t key);

  [[nodiscard]] const std::vector<Pair>& pairs() const { return pairs_; }
  [[nodiscard]] bool empty() const;
  [[nodiscard]] std::size_t size() const;
  bool operator==(const Map& other) const;

 private:
  std::vector<Pair> pairs_;
};

/// A whole number of 64 bits with sign, a truth value, text, bytes, an array or a map.
class Value {
 public:
  Value() : of_(std::int64_t{0}) {}
  Value(std::int64_t number) : of_(number) {}        // NOLINT: conversions keep bodies readable
  Value(int number) : of_(std::int64_t{number}) {}   // NOLINT
  Value(bool truth) : of_(truth) {}                  // NOLINT
  Value(std::string text) : of_(std::move(text)) {}  // NOLINT
  Value(std::string_view text) : of_(std::string(text)) {}                 // NOLINT
  Value(const char* text) : of_(std::string(text)) {}                      // NOLINT
  Value(Bytes bytes) : of_(std::move(bytes)) {}                            // NOLINT
  Value(const Uuid& id) : of_(Bytes(id.bytes.begin(), id.bytes.end())) {}  // NOLINT
  Value(Array array) : of_(std::move(array)) {}                            // NOLINT
  Value(Map map) : of_(std::move(map)) {}                                  // NOLINT

  /// Null when the value is of another type.
  [[nodiscard]] const std::int64_t* number() const { return std::get_if<std::int64_t>(&of_); }
  [[nodiscard]] const bool* truth() const { return std::get_if<bool>(&of_); }
  [[nodiscard]] const std::string* text() const { return std::get_if<std::string>(&of_); }
  [[nodiscard]] const Bytes* bytes() const { return std::get_if<Bytes>(&of_); }
  [[nodiscard]] const Array* array() const { return std::get_if<Array>(&of_); }
  [[nodiscard]] const Map* map() const { return std::get_if<Map>(&of_); }
  /// The sixteen bytes as an identifier; nothing for anything else.
  [[nodiscard]] std::optional<Uuid> uuid() const;

  bool operator==(const Value& other) const;

 private:
  std::variant<std::int64_t, bool, std::string, Bytes, Array, Map> of_;
};

// Here, because a pair is whole only once Value is.
inline bool Map::empty() const {
  return pairs_.empty();
}
inline std::size_t Map::size() const {
  return pairs_.size();
}

inline constexpr int depth_max = 8;

/// Whether one map key stands before another: by their encoded bytes.
bool key_before(const Value& a, const Value& b);

/// Appends the canonical bytes of a value.
void encode(const Value& value, Bytes& out);
Bytes encode(const Value& value);
/// Reads one value that uses up all the bytes. Errors: corrupt, with the place and what is wrong
/// there.
Result<Value> decode(std::span<const std::uint8_t> bytes);

}  // namespace kneerail::cbor
