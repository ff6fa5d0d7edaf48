#pragma once

// A record: one immutable fact that a person entered, and the envelope it travels in. Feed, device
// and sequence are not part of it; the chain digest binds them.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/cbor.h"

namespace kneerail {

inline constexpr std::size_t record_bytes_max = 64 * 1024;

struct Record {
  int kind = 0;        ///< 1 to 999, see kinds.h
  Uuid id;             ///< version 7; for a create, also the id of the thing made
  std::int64_t l = 0;  ///< hybrid clock, ms since 1970 UTC, < 2^53
  int c = 0;           ///< hybrid clock, counter, <= 65,535
  std::int64_t w = 0;  ///< raw wall clock minus l, ms
  int g = 0;           ///< clock segment of the device, <= 65,535
  Uuid who;            ///< person; zero: the device itself
  Uuid subject;        ///< what it is about
  cbor::Map body;      ///< fields by key, see the kind's file

  bool operator==(const Record&) const = default;
};

/// What the hub adds when a record arrives.
struct Stamp {
  std::int64_t hseq = 0;  ///< 1, 2, 3 ... in the feed
  std::int64_t recv = 0;  ///< hub time, ms since 1970 UTC, strictly rising in the feed
  std::int64_t flags =
      0;  ///< 1 held for review, 2 brought in by another device, bits 4 to 6 the writer's role
  bool operator==(const Stamp&) const = default;
};

/// A record with where it stands: which feed, whose chain, which place in it, and its stamp once
/// the hub has given one.
struct PlacedRecord {
  Record record;
  Uuid feed;
  Uuid device;
  std::int64_t seq = 0;
  std::optional<Stamp> stamp;
};

/// The canonical bytes. The record must be within its limits.
cbor::Bytes encode(const Record& record);
/// Reads canonical bytes. Errors: corrupt (not canonical, too deep, too long, envelope out of
/// range), with what is wrong. A kind or body key that is not known is no error: it is kept.
Result<Record> decode_record(std::span<const std::uint8_t> bytes);

/// Whether every field of a known kind is there, of its type and within its limits; text UTF-8
/// without control characters but line feed. Errors: invalid_input with the sentence a person
/// reads.
Result<> check_limits(const Record& record);

/// What is possible but unlikely, each a sentence that asks; empty when nothing is. Body key 99 =
/// true answers them.
std::vector<std::string> questions(const Record& record);

}  // namespace kneerail
