#pragma once

// From the struct of a kind to its body map and back. A struct names its keys once:
//
//   static constexpr int kind = 26;
//   template <class Self, class Each>
//   static void keys(Self& self, Each each) { each(1, self.visit); each(2, self.latches); }
//
// A field that may be absent is std::optional, or a Flag: a truth that is written only when set.
// Keys the struct does not name are passed over when reading; the record keeps them.

#include <array>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "core/base/date.h"
#include "core/records/kinds.h"

namespace kneerail {

/// True is written; false is left out.
struct Flag {
  bool set = false;
  bool operator==(const Flag&) const = default;
};

using Digest = std::array<std::uint8_t, 32>;

/// [latitude, longitude], 1e-7 degree, WGS 84.
struct Place {
  std::int64_t latitude_e7 = 0;
  std::int64_t longitude_e7 = 0;
  bool operator==(const Place&) const = default;
  template <class Self, class Each>
  static void parts(Self& self, Each each) {
    each(self.latitude_e7);
    each(self.longitude_e7);
  }
};

/// [mm along, mm up] from the lower left of what it is on.
struct PlaceOnPart {
  std::int64_t along_mm = 0;
  std::int64_t up_mm = 0;
  bool operator==(const PlaceOnPart&) const = default;
  template <class Self, class Each>
  static void parts(Self& self, Each each) {
    each(self.along_mm);
    each(self.up_mm);
  }
};

namespace body_detail {

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};

template <class T>
concept Tuple = requires(T& t) {
  T::parts(t, [](auto&) {});
};

inline cbor::Value put(const cbor::Value& value) {
  return value;
}
inline cbor::Value put(const cbor::Map& map) {
  return map;
}
inline cbor::Value put(const Uuid& id) {
  return id;
}
inline cbor::Value put(const std::string& text) {
  return text;
}
inline cbor::Value put(Date day) {
  return std::int64_t{day.days};
}
inline cbor::Value put(Instant at) {
  return at.ms;
}
template <std::size_t N>
cbor::Value put(const std::array<std::uint8_t, N>& bytes) {
  return cbor::Bytes(bytes.begin(), bytes.end());
}
template <class T>
requires std::is_arithmetic_v<T> || std::is_enum_v<T> cbor::Value put(T number) {
  if constexpr (std::is_same_v<T, bool>)
    return number;
  else
    return static_cast<std::int64_t>(number);
}
inline cbor::Value put(const std::map<std::int64_t, std::int64_t>& table) {
  cbor::Map map;
  for (const auto& [key, value] : table) map.set(key, value);
  return map;
}
template <Tuple T>
cbor::Value put(const T& tuple);
template <class T>
cbor::Value put(const std::vector<T>& list) {
  cbor::Array items;
  items.reserve(list.size());
  for (const T& one : list) items.push_back(put(one));
  return items;
}
template <Tuple T>
cbor::Value put(const T& tuple) {
  cbor::Array items;
  T::parts(tuple, [&items](const auto& part) {
    if constexpr (IsOptional<std::remove_cvref_t<decltype(part)>>::value) {
      if (part.has_value()) items.push_back(put(*part));
    } else {
      items.push_back(put(part));
    }
  });
  return items;
}

inline bool take(const cbor::Value& value, cbor::Value& out) {
  out = value;
  return true;
}
inline bool take(const cbor::Value& value, cbor::Map& out) {
  if (value.map() != nullptr) out = *value.map();
  return value.map() != nullptr;
}
inline bool take(const cbor::Value& value, Uuid& out) {
  const auto id = value.uuid();
  if (id.has_value()) out = *id;
  return id.has_value();
}
inline bool take(const cbor::Value& value, std::string& out) {
  if (value.text() != nullptr) out = *value.text();
  return value.text() != nullptr;
}
inline bool take(const cbor::Value& value, bool& out) {
  if (value.truth() != nullptr) out = *value.truth();
  return value.truth() != nullptr;
}
template <class T>
requires(std::is_integral_v<T> && !std::is_same_v<T, bool>) bool take(const cbor::Value& value,
                                                                      T& out) {
  const auto* number = value.number();
  if (number == nullptr || *number < std::numeric_limits<T>::min() ||
      *number > std::numeric_limits<T>::max())
    return false;
  out = static_cast<T>(*number);
  return true;
}
template <class T>
requires std::is_enum_v<T>
bool take(const cbor::Value& value, T& out) {
  std::underlying_type_t<T> code{};
  if (!take(value, code)) return false;
  out = static_cast<T>(code);
  return true;
}
inline bool take(const cbor::Value& value, Date& out) {
  return take(value, out.days);
}
inline bool take(const cbor::Value& value, Instant& out) {
  return take(value, out.ms);
}
template <std::size_t N>
bool take(const cbor::Value& value, std::array<std::uint8_t, N>& out) {
  const auto* bytes = value.bytes();
  if (bytes == nullptr || bytes->size() != N) return false;
  for (std::size_t i = 0; i < N; ++i) out[i] = (*bytes)[i];
  return true;
}
inline bool take(const cbor::Value& value, std::map<std::int64_t, std::int64_t>& out) {
  if (value.map() == nullptr) return false;
  for (const auto& [key, one] : value.map()->pairs()) {
    if (key.number() == nullptr || one.number() == nullptr) return false;
    out[*key.number()] = *one.number();
  }
  return true;
}
template <Tuple T>
bool take(const cbor::Value& value, T& out);
template <class T>
bool take(const cbor::Value& value, std::vector<T>& out) {
  const auto* items = value.array();
  if (items == nullptr) return false;
  out.clear();
  out.reserve(items->size());
  for (const cbor::Value& one : *items) {
    if (!take(one, out.emplace_back())) return false;
  }
  return true;
}
template <Tuple T>
bool take(const cbor::Value& value, T& out) {
  const auto* items = value.array();
  if (items == nullptr) return false;
  std::size_t at = 0;
  bool good = true;
  T::parts(out, [&](auto& part) {
    if constexpr (IsOptional<std::remove_cvref_t<decltype(part)>>::value) {
      if (at < items->size()) good = good && take((*items)[at++], part.emplace());
    } else {
      good = good && at < items->size() && take((*items)[at++], part);
    }
  });
  return good;
}

/// "Coating thickness: instrument is missing."
Error unreadable(int kind, int key, bool missing);

}  // namespace body_detail

/// The body of a record of the struct's kind.
template <class T>
cbor::Map to_body(const T& fields) {
  cbor::Map body;
  T::keys(fields, [&body](int key, const auto& field) {
    using Field = std::remove_cvref_t<decltype(field)>;
    if constexpr (std::is_same_v<Field, Flag>) {
      if (field.set) body.set(key, true);
    } else if constexpr (body_detail::IsOptional<Field>::value) {
      if (field.has_value()) body.set(key, body_detail::put(*field));
    } else {
      body.set(key, body_detail::put(field));
    }
  });
  return body;
}

/// The struct of a body. Errors: corrupt, with the field that is missing or of another type. Limits
/// are not looked at: what a person has saved is shown, whatever it is.
template <class T>
Result<T> from_body(const cbor::Map& body) {
  T fields;
  std::optional<Error> error;
  T::keys(fields, [&](int key, auto& field) {
    using Field = std::remove_cvref_t<decltype(field)>;
    const cbor::Value* value = body.find(key);
    bool good = true;
    if constexpr (std::is_same_v<Field, Flag>) {
      good = value == nullptr || body_detail::take(*value, field.set);
    } else if constexpr (body_detail::IsOptional<Field>::value) {
      good = value == nullptr || body_detail::take(*value, field.emplace());
    } else {
      good = value != nullptr && body_detail::take(*value, field);
    }
    if (!good && !error) error = body_detail::unreadable(T::kind, key, value == nullptr);
  });
  if (error) return *error;
  return fields;
}

/// A record of the struct's kind, all but the envelope's clock and ids.
template <class T>
Record record_of(const T& fields, const Uuid& subject) {
  Record record;
  record.kind = T::kind;
  record.subject = subject;
  record.body = to_body(fields);
  return record;
}

}  // namespace kneerail
