#pragma once

// Kinds 85, 86 and 87: an object is erased, or kept from being erased while a hold stands.

#include <optional>
#include <string>

#include "core/records/provenance.h"

namespace kneerail {

enum class WhyErased { person_asked = 1, retention_ended, wrong_picture };
enum class WhyHeld { accident = 1, claim, order_of_an_authority, other };

struct ObjectErased {
  static constexpr int kind = 85;
  Digest sha256{};
  WhyErased why = WhyErased::person_asked;
  std::optional<std::string> note;
  Provenance provenance;
  bool operator==(const ObjectErased&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.sha256);
    each(2, self.why);
    each(3, self.note);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject site, run, post or component.
struct Hold {
  static constexpr int kind = 86;
  WhyHeld why = WhyHeld::other;
  std::optional<std::string> note;
  Provenance provenance;
  bool operator==(const Hold&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.why);
    each(2, self.note);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject hold.
struct HoldEnded {
  static constexpr int kind = 87;
  std::string why;
  Provenance provenance;
  bool operator==(const HoldEnded&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.why);
    Provenance::keys(self.provenance, each);
  }
};

extern const KindInfo object_erased_kind;
extern const KindInfo hold_kind;
extern const KindInfo hold_ended_kind;

}  // namespace kneerail
