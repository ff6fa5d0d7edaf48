#pragma once

// SHA-256 (FIPS 180-4), Ed25519 (RFC 8032) and random bytes, from OpenSSL's libcrypto: the only
// pair of files outside sync/transport that includes its headers.

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/base/world.h"

namespace kneerail {

using Digest = std::array<std::uint8_t, 32>;

/// SHA-256 of bytes handed over in pieces.
class Sha256 {
 public:
  Sha256();
  Sha256(Sha256&&) noexcept;
  Sha256& operator=(Sha256&&) noexcept;
  ~Sha256();

  Sha256& add(std::span<const std::uint8_t> bytes);
  Sha256& add(std::string_view text);
  /// Eight bytes, big-endian.
  Sha256& add(std::uint64_t number);
  /// The digest of all that was added; the next add begins anew.
  Digest finish();

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

Digest sha256(std::span<const std::uint8_t> bytes);

/// Lower-case hexadecimal, two digits a byte.
std::string to_hex(std::span<const std::uint8_t> bytes);

/// Bytes nobody can guess, from the operating system's generator.
class SecureRandom final : public Random {
 public:
  void fill(std::span<std::uint8_t> bytes) override;
};

struct SigningKey {
  std::array<std::uint8_t, 32> secret{};
  std::array<std::uint8_t, 32> shown{};  ///< the public key
};
using Signature = std::array<std::uint8_t, 64>;

/// A key pair from 32 random bytes (RFC 8032, 5.1.5).
SigningKey signing_key(std::span<const std::uint8_t, 32> secret);
Signature sign(const SigningKey& key, std::span<const std::uint8_t> message);
/// Whether the signature is of that message by the owner of that public key.
bool is_signed(std::span<const std::uint8_t, 32> shown, std::span<const std::uint8_t> message,
               std::span<const std::uint8_t, 64> signature);

}  // namespace kneerail
