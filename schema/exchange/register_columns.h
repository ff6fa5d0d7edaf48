#pragma once

// The columns of a register file, from the table of fields of its type of thing: nothing here knows
// a field by name. A number stands in the unit people use, with the unit at the end of the column's
// name; a code as its word; a truth as yes or no; a day and an instant as ISO 8601; another thing
// as its reference; a list of these between semicolons. Fields of several parts have a column for
// each. What is deeper than that (polylines, intervals by class) stands as JSON in one cell.

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/records/kinds.h"
#include "schema/exchange/sheet.h"

namespace kneerail::exchange {

struct RegisterColumn {
  std::string name;       ///< "coating_nominal_um"
  std::vector<int> keys;  ///< field, then keys of maps inside it
  int part = -1;          ///< place in the tuple under those keys; -1: none
  FieldInfo leaf;
};

std::vector<RegisterColumn> register_columns(const EntityInfo& type);

/// "component_types.csv".
std::string register_file(const EntityInfo& type);

/// The type of thing that a field of that name points at; 0 where its name does not say.
int type_pointed_at(std::string_view field_name);

using ReferenceOf = std::function<std::string(const Uuid&)>;
/// The id of the thing a reference means, or nothing.
using ThingOf = std::function<std::optional<Uuid>(int type, std::string_view reference)>;

/// The value under a column's keys, or null.
const cbor::Value* value_at(const cbor::Map& fields, const RegisterColumn& column);
/// As it stands in the cell; free text is not yet guarded.
std::string cell_text(const cbor::Value& value, const FieldInfo& field,
                      const ReferenceOf& reference);
/// The value of a cell that is not empty. Notes at the sheet what cannot be taken.
std::optional<cbor::Value> cell_value(Sheet& sheet, int place, const RegisterColumn& column,
                                      const ThingOf& thing);
/// Puts a value under the column's keys. A part must follow the parts before it.
bool put_value(cbor::Map& fields, const RegisterColumn& column, cbor::Value value);

}  // namespace kneerail::exchange
