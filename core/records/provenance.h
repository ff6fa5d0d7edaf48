#pragma once

// What a body says about itself besides its fields: when it was seen and copied from what, in which
// units it was typed, and that an unlikely value was confirmed.

#include <optional>

#include "core/records/body.h"
#include "core/records/codes.h"

namespace kneerail {

struct Provenance {
  std::optional<CopiedFrom> copied_from;
  std::optional<Instant> seen_at;
  std::optional<TypedIn> typed_in;
  Flag confirmed;
  bool operator==(const Provenance&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each& each) {
    each(key_copied_from, self.copied_from);
    each(key_seen_at, self.seen_at);
    each(key_typed_in, self.typed_in);
    each(key_confirmed, self.confirmed);
  }
};

/// What every reading says besides its numbers.
struct ReadingNote {
  Flag as_last_time;
  std::optional<Uuid> life;  ///< the life the writer believed current
  Provenance provenance;
  bool operator==(const ReadingNote&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each& each) {
    each(key_as_last_time, self.as_last_time);
    each(key_life, self.life);
    Provenance::keys(self.provenance, each);
  }
};

}  // namespace kneerail
