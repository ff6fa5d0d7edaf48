#pragma once

// Kinds 1 and 2: a thing comes into the register, and one or more of its fields get a value.

#include <optional>
#include <string>
#include <vector>

#include "core/records/body.h"
#include "core/records/entities.h"

namespace kneerail {

enum class MadeBy { rule = 1, import, typing };

/// The record's id is the thing's id, and its subject.
struct Create {
  static constexpr int kind = 1;
  EntityType type = EntityType::site;
  std::optional<Uuid> parent;
  cbor::Map fields;  ///< {field: value}, see entities.h
  std::optional<std::string> import_reference;
  std::optional<MadeBy> made_by;

  bool operator==(const Create&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.type);
    each(2, self.parent);
    each(3, self.fields);
    each(4, self.import_reference);
    each(5, self.made_by);
  }
};

struct FieldChange {
  int field = 0;
  cbor::Value value;
  std::vector<Uuid> base;  ///< records whose values of this field the writer saw

  bool operator==(const FieldChange&) const = default;
  template <class Self, class Each>
  static void parts(Self& self, Each each) {
    each(self.field);
    each(self.value);
    each(self.base);
  }
};

struct Set {
  static constexpr int kind = 2;
  std::vector<FieldChange> changes;

  bool operator==(const Set&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.changes);
  }
};

extern const KindInfo create_kind;
extern const KindInfo set_kind;

}  // namespace kneerail
