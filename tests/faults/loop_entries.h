#pragma once

// What save-loop writes, known to the test that kills it.

#include "schema/store/register.h"

namespace kneerail::faults {

inline Uuid loop_id(std::uint8_t kind) {
  Uuid id;
  id.bytes = {0x01, 0x90, 0, 0, 0, 0, 0x70, 0, 0x80, kind};
  return id;
}

inline const Uuid loop_site = loop_id(2);
inline const Uuid loop_visit = loop_id(20);

inline Entry loop_reading(std::int64_t number) {
  return {loop_site,
          21,
          loop_id(7),
          loop_id(10),
          {{1, loop_visit},
           {2, loop_id(9)},
           {3, cbor::Array{700 + number % 200, 712 + number % 200}},
           {4, 1 + number % 16},
           {98, loop_id(7)}},
          {}};
}

/// A finding of grade 3; the number is its place, so that each draft is one of its own.
inline Draft loop_draft(std::int64_t number) {
  return {loop_site,   30,
          loop_id(7),  number,
          loop_id(10), {{1, loop_visit}, {2, 1}, {3, 3}, {5, "draft " + std::to_string(number)}}};
}

}  // namespace kneerail::faults
