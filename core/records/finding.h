#pragma once

// Kinds 30, 34, 35 and 36: a finding, what is to come next of it, that it is a hazard, that it has
// ended. Only an ending that names a hazard record ends that hazard.

#include <optional>
#include <string>
#include <vector>

#include "core/records/provenance.h"

namespace kneerail {

enum class FindingKind {
  split = 1,
  loose,
  missing,
  rust,
  rust_weeping,
  bent,
  knocked,
  debris_or_scour,
  spread,
  outside_the_rule,
  moves,
  paint_flaking,
  other,
  will_not_close
};
enum class HowEnded { repaired = 1, replaced, reassessed, raised_by_mistake };
enum class EndedOn { seen_and_pushed = 1, seen, papers_only };
enum class NextStepKind { watch = 1, measure_next_visit, mend, order, ask_an_engineer };
enum class WhyPutOff { money = 1, part, access, weather, engineer, other };

/// Subject component, post, bay or run.
struct Finding {
  static constexpr int kind = 30;
  std::optional<Uuid> visit;
  FindingKind what = FindingKind::other;
  int grade = 1;  ///< 1 to 5
  bool hazard = false;
  std::optional<std::string> text;
  std::optional<PlaceOnPart> place;
  int number = 1;  ///< this writer's next at this site
  std::optional<std::string> why_it_can_wait;
  std::optional<Uuid> life;
  Provenance provenance;
  bool operator==(const Finding&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.what);
    each(3, self.grade);
    each(4, self.hazard);
    each(5, self.text);
    each(6, self.place);
    each(7, self.number);
    each(8, self.why_it_can_wait);
    each(key_life, self.life);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject finding.
struct FindingEnded {
  static constexpr int kind = 34;
  HowEnded how = HowEnded::repaired;
  std::optional<Uuid> work;
  std::optional<std::string> note;  ///< always, when a hazard is named
  std::vector<Uuid> hazards;        ///< hazard records; empty: it was none
  std::optional<EndedOn> on_what;   ///< always, when a hazard is named
  Provenance provenance;
  bool operator==(const FindingEnded&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.how);
    each(2, self.work);
    each(3, self.note);
    each(4, self.hazards);
    each(5, self.on_what);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject finding.
struct NextStep {
  static constexpr int kind = 35;
  NextStepKind what = NextStepKind::watch;
  std::optional<Date> mend_by;
  std::optional<std::string> note;
  std::optional<std::vector<Uuid>> by_whom;
  std::optional<std::string> by_whom_in_words;
  std::optional<WhyPutOff> put_off;  ///< always, when mend by moves later
  Provenance provenance;
  bool operator==(const NextStep&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.what);
    each(2, self.mend_by);
    each(3, self.note);
    each(4, self.by_whom);
    each(5, self.by_whom_in_words);
    each(6, self.put_off);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject finding, which was not a hazard or is one again.
struct HazardRaised {
  static constexpr int kind = 36;
  std::optional<Uuid> visit;
  std::optional<std::string> note;
  Provenance provenance;
  bool operator==(const HazardRaised&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.note);
    Provenance::keys(self.provenance, each);
  }
};

extern const KindInfo finding_kind;
extern const KindInfo finding_ended_kind;
extern const KindInfo next_step_kind;
extern const KindInfo hazard_raised_kind;

}  // namespace kneerail
