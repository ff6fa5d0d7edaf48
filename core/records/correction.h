#pragma once

// Kinds 70, 71 and 72: what a record says is corrected, a record does not count, a disagreement is
// settled. None of them changes or hides the record it is about.

#include <string>
#include <variant>
#include <vector>

#include "core/records/provenance.h"

namespace kneerail {

enum class Decision { keep_both = 1, look_again_next_visit, release_held };

/// Subject: the record that is corrected.
struct Correction {
  static constexpr int kind = 70;
  cbor::Map values;  ///< {key: value}; see check_correction()
  std::string reason;
  std::vector<Uuid> base;  ///< corrections the writer saw
  Provenance provenance;
  bool operator==(const Correction&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.values);
    each(2, self.reason);
    each(3, self.base);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject: the record that does not count. A void is not undone; the value is entered again.
struct Voided {
  static constexpr int kind = 71;
  std::string reason;
  Provenance provenance;
  bool operator==(const Voided&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.reason);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject entity or record.
struct Settled {
  static constexpr int kind = 72;
  std::vector<Uuid> in_disagreement;
  cbor::Value decision = static_cast<int>(Decision::keep_both);  ///< a Decision, or a record id
  std::optional<std::string> note;
  Provenance provenance;
  bool operator==(const Settled&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.in_disagreement);
    each(2, self.decision);
    each(3, self.note);
    Provenance::keys(self.provenance, each);
  }
};

extern const KindInfo correction_kind;
extern const KindInfo voided_kind;
extern const KindInfo settled_kind;

}  // namespace kneerail
