#pragma once

// Sixteen-byte identifiers. Uuid is the raw value as it stands in a record; Id<Post> is the same
// value that cannot be mixed up with an Id<Fitting>.

#include <array>
#include <compare>
#include <cstdint>
#include <cstring>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace kneerail {

struct Uuid {
  std::array<std::uint8_t, 16> bytes{};

  auto operator<=>(const Uuid&) const = default;
  [[nodiscard]] bool is_zero() const { return *this == Uuid{}; }
  /// Bytes 0 to 5 as a number: milliseconds since 1970 UTC in a version 7 identifier (RFC
  /// 9562, 5.7).
  [[nodiscard]] std::int64_t unix_ms() const;
};

/// "017f22e2-79b0-7cc3-98c4-dc0c0c07398f"; lower case.
std::string to_text(const Uuid& id);
/// The identifier written so, in either case; nothing when the text is anything else.
std::optional<Uuid> uuid_from_text(std::string_view text);
/// Version 7 identifier (RFC 9562, 5.7) of a time in ms since 1970 UTC and ten bytes from which 74
/// random bits are taken.
Uuid uuid7(std::int64_t unix_ms, std::span<const std::uint8_t, 10> random);

/// The same sixteen bytes with the kind of thing they name in the type.
template <class Thing>
struct Id {
  Uuid value;
  auto operator<=>(const Id&) const = default;
};

}  // namespace kneerail

template <>
struct std::hash<kneerail::Uuid> {
  std::size_t operator()(const kneerail::Uuid& id) const noexcept {
    std::uint64_t high = 0;
    std::uint64_t low = 0;
    std::memcpy(&high, id.bytes.data(), 8);
    std::memcpy(&low, id.bytes.data() + 8, 8);
    return static_cast<std::size_t>(high ^ (low * 0x9E3779B97F4A7C15ULL));
  }
};
