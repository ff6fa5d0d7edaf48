#pragma once

// Seals (kind 13): what closes one person's part of a visit on this device. A seal names the last
// record of the device's chain in the site's feed and its chain digest, and signs
//
//   "kneerail seal 1" || feed || device || visit || last seq || chain digest
//
// with the device's Ed25519 key; the number as eight bytes, big-endian. Whatever is changed in the
// chain up to there shows, and what is added to the visit later has a higher sequence.

#include <optional>
#include <string>
#include <vector>

#include "schema/store/state.h"

namespace kneerail {

/// The bytes that a seal signs.
struct SealedText {
  Uuid feed;
  Uuid device;
  Uuid visit;
  std::int64_t last_seq = 0;
  Digest chain_digest{};
};
std::vector<std::uint8_t> bytes_to_sign(const SealedText& text);
/// The first eight bytes of the SHA-256 of the public key.
std::array<std::uint8_t, 8> key_id_of(const SigningKey& key);

/// The entry that seals, reckoned from the journal: counts by kind of this person's records of the
/// visit, those not reached among them, and the chain's head. Errors: not_found (the person has no
/// part in that visit on this device), io, corrupt.
Result<Entry> seal_entry(RegisterState& state, const VisitSeal& seal);

/// Each seal of the journal against its chain, and, where this device made it, its signature.
/// Adds a sentence for each that does not fit. Errors: io.
Result<> check_seals(RegisterState& state, std::vector<std::string>& problems);

}  // namespace kneerail
