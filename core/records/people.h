#pragma once

// Kinds 60, 61 and 64: roles given and taken, and what a person is competent for.

#include <optional>
#include <string>
#include <vector>

#include "core/records/provenance.h"

namespace kneerail {

enum class PersonRole { inspector = 1, lead, duty_holder, administrator };

/// Subject person.
struct RoleGiven {
  static constexpr int kind = 60;
  PersonRole role = PersonRole::inspector;
  std::optional<std::vector<Uuid>> sites;  ///< absent: all
  std::optional<Date> until;
  Provenance provenance;
  bool operator==(const RoleGiven&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.role);
    each(2, self.sites);
    each(3, self.until);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject person.
struct RoleTaken {
  static constexpr int kind = 61;
  std::vector<Uuid> givings;  ///< records of kind 60
  Provenance provenance;
  bool operator==(const RoleTaken&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.givings);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject person.
struct Competence {
  static constexpr int kind = 64;
  std::string for_what;
  Date from;
  std::optional<Date> valid_until;
  std::optional<Digest> certificate;
  Provenance provenance;
  bool operator==(const Competence&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.for_what);
    each(2, self.from);
    each(3, self.valid_until);
    each(4, self.certificate);
    Provenance::keys(self.provenance, each);
  }
};

extern const KindInfo role_given_kind;
extern const KindInfo role_taken_kind;
extern const KindInfo competence_kind;

}  // namespace kneerail
