#pragma once

// The file `identity` beside the register: who this device is, so that a lost register is still
// known to be one. Canonical CBOR with a CRC-32C behind it, mode 0600 because the signing key is in
// it.

#include <array>
#include <filesystem>
#include <string>
#include <vector>

#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/cbor.h"
#include "schema/journal/files.h"

namespace kneerail {

struct Identity {
  Uuid device;
  std::array<std::uint8_t, 32> signing_secret{};  ///< Ed25519; seals are signed with it
  std::string hub;                                ///< address; empty: not enrolled
  std::string hub_pin;                            ///< of the hub's public key; empty: none
  std::vector<Uuid> feeds;                        ///< carried
};

cbor::Bytes encode(const Identity& identity);
Result<Identity> decode_identity(std::span<const std::uint8_t> bytes);

/// Errors: not_found, corrupt, io.
Result<Identity> read_identity(Files& files, const std::filesystem::path& path);
/// Under another name first, then in place: a cut leaves the old one or the new one.
Result<> write_identity(Files& files, const std::filesystem::path& path, const Identity& identity);

}  // namespace kneerail
