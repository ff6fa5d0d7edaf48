#pragma once

// An identifier as this device remembers it: two settings, its first and its last eight bytes.

#include <string>

#include "core/base/id.h"
#include "schema/store/settings.h"

namespace kneerail {

inline std::int64_t half_of(const Uuid& id, std::size_t half) {
  std::uint64_t bits = 0;
  for (std::size_t i = 0; i < 8; ++i) bits = bits << 8 | id.bytes[half * 8 + i];
  return static_cast<std::int64_t>(bits);
}

inline void set_half(Uuid& id, std::size_t half, std::int64_t value) {
  auto bits = static_cast<std::uint64_t>(value);
  for (std::size_t i = 8; i-- > 0; bits >>= 8)
    id.bytes[half * 8 + i] = static_cast<std::uint8_t>(bits & 0xff);
}

inline void add_id(Settings& settings, const std::string& name, const Uuid& id) {
  settings.emplace_back(name + "_first", half_of(id, 0));
  settings.emplace_back(name + "_last", half_of(id, 1));
}

/// `read` gives the value of a name; 0 where it was never set.
template <class Read>
Uuid id_of_settings(const std::string& name, const Read& read) {
  Uuid id;
  set_half(id, 0, read(name + "_first"));
  set_half(id, 1, read(name + "_last"));
  return id;
}

}  // namespace kneerail
