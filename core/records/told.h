#pragma once

// Kinds 38, 39 and 58: what others told, what became of it, and that somebody has read something.
// Told is not seen: it makes no grade and no finding by itself.

#include <optional>
#include <string>
#include <vector>

#include "core/records/provenance.h"

namespace kneerail {

enum class ToldBy {
  public_person = 1,
  staff,
  contractor,
  police_or_rescue,
  maker,
  engineer,
  other
};
enum class ToldHow { telephone = 1, mail, in_person, form };
enum class Answered {
  looked_finding = 1,
  looked_nothing_wrong,
  same_as_an_earlier_one,
  place_not_found,
  written_by_mistake
};

/// Subject site, run, post or bay.
struct Told {
  static constexpr int kind = 38;
  Instant at;
  ToldBy by_whom = ToldBy::other;  ///< no names
  std::string what_was_said;
  std::optional<ToldHow> how;
  std::optional<std::string> where_in_words;
  std::optional<bool> moves_or_missing;
  std::optional<Digest> picture;
  Provenance provenance;
  bool operator==(const Told&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.at);
    each(2, self.by_whom);
    each(3, self.what_was_said);
    each(4, self.how);
    each(5, self.where_in_words);
    each(6, self.moves_or_missing);
    each(7, self.picture);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject told.
struct ToldAnswered {
  static constexpr int kind = 39;
  Answered how = Answered::looked_nothing_wrong;
  std::optional<Uuid> finding_or_told;
  std::optional<Uuid> visit;
  std::optional<std::string> note;
  Provenance provenance;
  bool operator==(const ToldAnswered&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.how);
    each(2, self.finding_or_told);
    each(3, self.visit);
    each(4, self.note);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject finding, told, event, visit or report.
struct ReadBy {
  static constexpr int kind = 58;
  std::vector<Uuid> shown;  ///< the records that were shown
  Provenance provenance;
  bool operator==(const ReadBy&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.shown);
    Provenance::keys(self.provenance, each);
  }
};

extern const KindInfo told_kind;
extern const KindInfo told_answered_kind;
extern const KindInfo read_by_kind;

}  // namespace kneerail
