#pragma once

// Kind 24: what a bay or post did when a person pushed it, or that nobody did.

#include <optional>

#include "core/records/provenance.h"

namespace kneerail {

enum class Felt { firm = 1, gives, moves, not_pushed };

/// Subject bay or post.
struct HandLoad {
  static constexpr int kind = 24;
  Uuid visit;
  Felt felt = Felt::not_pushed;
  std::optional<std::int64_t> load_n;
  std::optional<std::int64_t> deflection_tenth_mm;
  std::optional<std::int64_t> left_over_tenth_mm;  ///< after unloading
  std::optional<std::int64_t> height_above_deck_mm;
  std::optional<Uuid> instrument;
  ReadingNote note;
  bool operator==(const HandLoad&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.felt);
    each(3, self.load_n);
    each(4, self.deflection_tenth_mm);
    each(5, self.left_over_tenth_mm);
    each(6, self.height_above_deck_mm);
    each(7, self.instrument);
    ReadingNote::keys(self.note, each);
  }
};

extern const KindInfo hand_load_kind;

}  // namespace kneerail
