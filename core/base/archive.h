#pragma once

// Values written one after another as bytes, and read back. For what a program keeps or hands to
// another run of itself, never for records: there is no name and no version in the bytes, and who
// reads them checks first, by a digest, that they are whole and of the same program.
//
// A struct takes part by a function beside it, found by its argument:
//
//   template <class Archive, OrConst<VisitMean> T>
//   void fields(Archive& archive, T& mean) { archive(mean.day, mean.weight); }
//
// An enumeration, whose values go up from 0, says where it ends, found the same way; what lies
// outside is not ok():
//
//   constexpr StartKind last_of(StartKind) { return StartKind::touched_up; }
//
// Numbers are little-endian, the bits of a double as they are; lists and texts have their length
// first. The same values give the same bytes on every machine.

#include <array>
#include <bit>
#include <concepts>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "core/base/date.h"

namespace kneerail {

template <class T, class Of>
concept OrConst = std::same_as<std::remove_const_t<T>, Of>;

template <class Archive, OrConst<Date> T>
void fields(Archive& archive, T& date) {
  archive(date.days);
}

/// Appends to a text that its caller owns.
class ByteSink {
 public:
  explicit ByteSink(std::string& out) : out_(out) {}

  template <class... T>
  void operator()(const T&... values) {
    (put(values), ...);
  }

 private:
  template <class T>
  requires std::is_arithmetic_v<T>
  void put(T value) {
    using Bits = std::array<char, sizeof(T)>;
    auto bits = std::bit_cast<Bits>(value);
    if constexpr (std::endian::native == std::endian::big)
      for (std::size_t i = 0; i < bits.size() / 2; ++i) std::swap(bits[i], bits[sizeof(T) - 1 - i]);
    out_.append(bits.data(), bits.size());
  }
  template <class T>
  requires std::is_enum_v<T>
  void put(T value) { put(static_cast<std::underlying_type_t<T>>(value)); }
  void put(const std::string& text) {
    put(static_cast<std::uint64_t>(text.size()));
    out_ += text;
  }
  template <class T>
  void put(const std::vector<T>& list) {
    put(static_cast<std::uint64_t>(list.size()));
    for (const T& value : list) put(value);
  }
  template <class T, std::size_t n>
  void put(const std::array<T, n>& list) {
    for (const T& value : list) put(value);
  }
  template <class T>
  void put(const std::optional<T>& value) {
    put(value.has_value());
    if (value) put(*value);
  }
  template <class Key, class T>
  void put(const std::map<Key, T>& map) {
    put(static_cast<std::uint64_t>(map.size()));
    for (const auto& [key, value] : map) (*this)(key, value);
  }
  template <class T>
  requires(std::is_class_v<T>) void put(const T& value) { fields(*this, value); }

  std::string& out_;
};

/// Reads what a ByteSink wrote. Past the end it reads nothing and says so in ok().
class ByteSource {
 public:
  explicit ByteSource(std::string_view bytes) : rest_(bytes) {}

  template <class... T>
  void operator()(T&... values) {
    (take(values), ...);
  }

  /// Whether all that was asked for was there, and what it was said to be.
  [[nodiscard]] bool ok() const { return ok_; }
  [[nodiscard]] bool at_end() const { return rest_.empty(); }

 private:
  template <class T>
  requires std::is_arithmetic_v<T>
  void take(T& value) {
    std::array<char, sizeof(T)> bits{};
    if (rest_.size() < bits.size()) {
      ok_ = false;
      rest_ = {};
      value = T{};
      return;
    }
    for (std::size_t i = 0; i < bits.size(); ++i)
      bits[std::endian::native == std::endian::big ? sizeof(T) - 1 - i : i] = rest_[i];
    rest_.remove_prefix(bits.size());
    if constexpr (std::same_as<T, bool>)
      value = bits[0] != 0;
    else
      value = std::bit_cast<T>(bits);
    if constexpr (std::floating_point<T>) ok_ = ok_ && value == value;  // nothing kept is a NaN
  }
  template <class T>
  requires std::is_enum_v<T>
  void take(T& value) {
    std::underlying_type_t<T> number{};
    take(number);
    const auto last = static_cast<std::underlying_type_t<T>>(last_of(T{}));
    ok_ = ok_ && number >= 0 && number <= last;
    value = static_cast<T>(ok_ ? number : 0);
  }
  /// No list is longer than the bytes that are left: each of its values has one at least.
  std::size_t length() {
    std::uint64_t length = 0;
    take(length);
    if (length <= rest_.size()) return static_cast<std::size_t>(length);
    ok_ = false;
    rest_ = {};
    return 0;
  }
  void take(std::string& text) {
    const std::size_t size = length();
    text.assign(rest_.substr(0, size));
    rest_.remove_prefix(size);
  }
  template <class T>
  void take(std::vector<T>& list) {
    list.clear();
    const std::size_t size = length();
    for (std::size_t i = 0; i < size && ok_; ++i) take(list.emplace_back());
  }
  template <class T, std::size_t n>
  void take(std::array<T, n>& list) {
    for (T& value : list) take(value);
  }
  template <class T>
  void take(std::optional<T>& value) {
    bool some = false;
    take(some);
    value.reset();
    if (some) take(value.emplace());
  }
  template <class Key, class T>
  void take(std::map<Key, T>& map) {
    map.clear();
    const std::size_t size = length();
    for (std::size_t i = 0; i < size && ok_; ++i) {
      Key key{};
      take(key);
      take(map[std::move(key)]);
    }
  }
  template <class T>
  requires(std::is_class_v<T>) void take(T& value) { fields(*this, value); }

  std::string_view rest_;
  bool ok_ = true;
};

/// One value by itself.
template <class T>
std::string archived(const T& value) {
  std::string bytes;
  ByteSink sink(bytes);
  sink(value);
  return bytes;
}

}  // namespace kneerail
