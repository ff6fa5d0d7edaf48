#pragma once

// The things of a register as rows of the entity table, by identifier, with the fields that have no
// column of their own.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/cbor.h"
#include "core/records/entities.h"
#include "schema/database.h"

namespace kneerail {

struct Thing {
  Uuid id;
  int type = 0;
  Uuid feed;
  Uuid parent;  ///< zero: none said
  std::string reference;
  std::string name;
  std::string code;  ///< serial, initials or short mark, as the kind of thing has it
  std::optional<std::int64_t> chainage_mm;
  std::optional<std::int64_t> role;
  std::optional<Uuid> component_type;
  std::optional<std::int64_t> date_in_service;
  std::optional<std::int64_t> coating_nominal_tenth_um;
  std::optional<Uuid> part_of;  ///< the welded section it belongs to
  cbor::Map rest;               ///< by field key

  /// A field that is kept in `rest`: absent where it is not said or of another shape.
  [[nodiscard]] std::optional<std::int64_t> number(int field) const;
  [[nodiscard]] std::optional<Uuid> id_field(int field) const;
  /// What people call it: the import reference, else its identifier.
  [[nodiscard]] std::string text() const;
};

/// All things of one type that are not retired, held or void, ascending by identifier.
Result<std::vector<Thing>> things_of_type(Database& tables, int type);

/// Identifiers as the table `given` of one query, with the column `asked`: SQL that goes before it,
/// and the bytes that are bound in its first place and stay where they are until it has run.
inline constexpr std::string_view with_given =
    "WITH RECURSIVE given(next, asked) AS (SELECT 1, substr(?1, 1, 16) UNION ALL SELECT next + 1, "
    "substr(?1, 16 * next + 1, 16) FROM given WHERE 16 * next < length(?1)) ";
std::vector<std::uint8_t> bytes_of_ids(const std::vector<Uuid>& ids);

/// Those of them that are things of that type, as things_of_type().
Result<std::vector<Thing>> things_among(Database& tables, int type, const std::vector<Uuid>& ids);
/// The things of that type whose parent is among those.
Result<std::vector<Thing>> things_under(Database& tables, int type,
                                        const std::vector<Uuid>& parents);
/// Things whose reference another of their type with a smaller identifier bears too.
Result<std::vector<Uuid>> without_own_reference(Database& tables);

/// Things by identifier. A reference that two of them bear is the first one's only; null for what
/// has not been received.
class Things {
 public:
  Things() = default;
  explicit Things(std::vector<Thing> things);
  [[nodiscard]] const Thing* find(const Uuid& id) const;
  [[nodiscard]] const std::vector<Thing>& all() const { return things_; }
  /// The reference of a thing, else the identifier as text; empty for zero.
  [[nodiscard]] std::string text(const Uuid& id) const;

 private:
  std::vector<Thing> things_;
  std::unordered_map<Uuid, std::size_t> places_;
};

Result<Things> load_things(Database& tables, int type);

/// The word of a code that a field of such a thing holds; empty where there is none.
std::string word_of_code(EntityType type, int field, std::int64_t code);

}  // namespace kneerail
