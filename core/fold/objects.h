#pragma once

// Objects are bytes kept beside the records under their SHA-256: photographs, drawings, reports,
// particulars. Table object_use says which records name one; it is only ever added to, also for
// records that are void or held, because whoever may read a record's feed may read what it names.
// Table object_state says what an object is and whether it was erased.
//
// An erasure (kind 85) counts from its stamp. From then on the object is out of sight; its bytes go
// when the wait is over, unless a hold (kind 86) stands at that moment: then the erasure never has
// any effect. A hold covers what the records of its site name, and the particulars of people who
// have written there. Whoever removes the bytes reads nothing of an erasure and a hold but their
// envelope, stamp and digest; so a void changes nothing about them, and an erasure that is held for
// review stays without effect. A hold or its end that is not stamped yet counts for the safe side:
// the hold stands, the end does not.

#include <vector>

#include "core/fold/columns.h"
#include "core/records/record.h"

namespace kneerail::fold {

inline constexpr std::int64_t erasure_wait_ms = std::int64_t{14} * 24 * 60 * 60 * 1000;

/// An object as a record names it, as first written.
struct NamedObject {
  cbor::Bytes sha;
  std::optional<std::int64_t> size_bytes;
};
/// Each once, in the order of the record's keys. An erasure names what it erases.
std::vector<NamedObject> objects_of(const Record& record);

}  // namespace kneerail::fold
