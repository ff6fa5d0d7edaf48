#pragma once

// Every kind of record and every type of thing in the register, by number. Each table stands once,
// in the file of its kind; this only finds it.

#include <span>
#include <string>
#include <vector>

#include "core/records/field.h"
#include "core/records/record.h"

namespace kneerail {

/// Kinds from here up must be understood: a program that does not know one says so instead of
/// passing over it.
inline constexpr int must_understand_from = 500;

/// Which feed the records of a kind are written to; `either`: that of what they are about.
enum class FeedOf { site, organisation, either };

struct KindInfo {
  int kind = 0;
  std::string_view name;     ///< in words: "coating thickness"
  std::string_view subject;  ///< what it is about: "component", "finding or closure"
  FeedOf feed = FeedOf::site;
  Fields fields = {};
  /// The key of the time it was seen at, where that may be earlier than it was typed: 94, or a key
  /// of the kind's own; 0 where there is none. With one, it may carry 93 copied from.
  int time_key = 0;
  bool reading = false;  ///< may carry 97 as last time and 98 life
  /// What the fields must be together: a sentence of what is wrong, empty when nothing is. Called
  /// only when each field by itself is within its limits.
  std::string (*rule)(const Record&) = nullptr;
  /// Adds what is possible but unlikely, each a sentence that asks.
  void (*ask)(const Record&, std::vector<std::string>&) = nullptr;
};

struct EntityInfo {
  int type = 0;
  std::string_view name;
  std::string_view parent;  ///< "site", empty for the organisation
  FeedOf feed = FeedOf::site;
  Fields fields = {};
};

/// Keys any body may carry: 95 typed in (1 US units), 99 confirmed; and those of readings and of
/// what can be seen earlier than it is typed.
enum CommonKey : int {
  key_copied_from = 93,
  key_seen_at = 94,
  key_typed_in = 95,
  key_as_last_time = 97,
  key_life = 98,
  key_confirmed = 99
};

/// The kind of that number, or null when this program does not know it.
const KindInfo* kind_info(int kind);
/// All kinds, ascending.
std::span<const KindInfo* const> all_kinds();
/// The field of a kind, the common ones included, or null.
const FieldInfo* field_info(const KindInfo& kind, std::int64_t key);
/// The common fields that a kind may carry.
std::vector<const FieldInfo*> common_fields(const KindInfo& kind);

/// The type of thing of that number (1 to 12), or null.
const EntityInfo* entity_info(int type);
std::span<const EntityInfo* const> all_entities();

/// Whether a value is of a field's shape and within its limits. `about` begins the sentence.
/// Errors: invalid_input with the sentence a person reads.
Result<> check_field(const FieldInfo& field, const cbor::Value& value, std::string_view about);
/// Whether a value may be given to a field of a thing of that type (kind 2 does not say the type).
/// Unknown types and fields are kept, so they pass.
Result<> check_entity_field(int type, std::int64_t field, const cbor::Value& value);
/// Whether the values of a correction (kind 70) are within the limits of the kind it corrects.
Result<> check_correction(const Record& correction, int target_kind);

}  // namespace kneerail
