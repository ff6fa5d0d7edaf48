#pragma once

// What the readers of a run share: the sheet as far as it is filled, and where each thing stands in
// it.

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "schema/store/run_store.h"

namespace kneerail {

struct RunWork {
  RunSheet sheet;
  std::unordered_map<Uuid, int> posts;  ///< places in the sheet
  std::unordered_map<Uuid, int> bays;
  std::unordered_map<Uuid, std::size_t> parts;

  SheetPart* part_of(const Uuid& id) {
    const auto found = parts.find(id);
    return found == parts.end() ? nullptr : &sheet.parts[found->second];
  }
};

/// The parts of a run in SQL: posts and bays are its children, components theirs.
inline constexpr std::string_view parts_of_run =
    "FROM entity AS place JOIN entity AS part ON part.parent = place.id AND part.type = 7 ";

/// How a part of that material and protection is drawn and graded.
Finish finish_of(Material material, Protection protection);

/// Binds the identifiers in order and gives each row to `take`. Errors: io, corrupt, and what
/// `take` returns.
Result<> each_row(Database& tables, std::string_view sql, const std::vector<Uuid>& given,
                  const std::function<Result<>(const Statement&)>& take);

/// The map in a column; empty where there is none.
Result<cbor::Map> map_in(const Statement& row, int column);
std::optional<std::int64_t> number_in(const cbor::Map& map, int key);
/// The numbers of a column that holds an array of them; empty where it does not.
std::vector<std::int64_t> numbers_in(const Statement& row, int column);
std::string text_in(const cbor::Map& map, int key);
std::optional<Uuid> id_in(const cbor::Map& map, int key);

/// Head, posts, bays, parts and the lives they are in.
Result<> read_layout(Database& tables, RunWork& work);

}  // namespace kneerail
