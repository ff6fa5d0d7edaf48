#pragma once

// Kind 20: the condition of a part as a person judged it, 1 sound to 5 unfit.

#include <optional>

#include "core/records/provenance.h"

namespace kneerail {

enum class HowLooked { pushed_and_looked = 1, looked_near, looked_from_afar, from_a_picture };

/// Subject component, post or bay.
struct ConditionGrade {
  static constexpr int kind = 20;
  Uuid visit;
  int grade = 1;                 ///< 1 to 5
  std::optional<int> rust;       ///< degree of rusting, Ri 0 to Ri 5 (ISO 4628-3)
  std::optional<int> spot;       ///< from 1
  std::optional<HowLooked> how;  ///< absent: not said
  ReadingNote note;
  bool operator==(const ConditionGrade&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.grade);
    each(3, self.rust);
    each(4, self.spot);
    each(5, self.how);
    ReadingNote::keys(self.note, each);
  }
};

extern const KindInfo condition_grade_kind;

}  // namespace kneerail
