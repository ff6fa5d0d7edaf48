#pragma once

// Kind 26: whether a gate closes, latches and opens the safe way.

#include "core/records/provenance.h"

namespace kneerail {

enum class ClosesByItself { yes = 1, no, not_meant_to };
enum class YesNo { yes = 1, no };

/// Subject bay or gate.
struct GateCheck {
  static constexpr int kind = 26;
  Uuid visit;
  ClosesByItself closes_by_itself = ClosesByItself::yes;
  YesNo latches = YesNo::yes;
  YesNo opens_away_from_drop = YesNo::yes;
  ReadingNote note;
  bool operator==(const GateCheck&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.closes_by_itself);
    each(3, self.latches);
    each(4, self.opens_away_from_drop);
    ReadingNote::keys(self.note, each);
  }
};

extern const KindInfo gate_check_kind;

}  // namespace kneerail
