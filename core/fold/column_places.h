#pragma once

// How a table's columns are written down once and found by name while compiling.

#include <array>
#include <cstddef>
#include <span>
#include <string_view>

#include "core/fold/tables.h"

namespace kneerail::fold {

/// The place of a column; a name that is not there does not compile.
consteval int at(std::span<const Column> columns, std::string_view name) {
  for (std::size_t place = 0; place < columns.size(); ++place) {
    if (columns[place].name == name) return static_cast<int>(place);
  }
  throw "no such column";
}

/// What the tables of one record a row begin with. t: corrected time of inspection, ms; t_quality:
/// 1 measured, 2 assumed, 3 uncertain, 4 provisional, 5 as stated; held: waits for review.
inline constexpr Column plain_start[] = {
    {"record", Type::id},
    {"kind", Type::number},
    {"feed", Type::id},
    {"subject", Type::id},
    {"who", Type::id},
    {"dev", Type::id},
    {"t", Type::number},
    {"t_quality", Type::number},
    {"held", Type::number},
    {"voided_by", Type::id, true},
    {"corrected_by", Type::id, true},
};
inline constexpr std::size_t plain_start_size = std::size(plain_start);

/// The start, the table's own columns, and `rest`: a CBOR map of the body fields without a column.
template <std::size_t N>
consteval std::array<Column, plain_start_size + N + 1> plain(const Column (&own)[N]) {
  std::array<Column, plain_start_size + N + 1> all{};
  for (std::size_t i = 0; i < plain_start_size; ++i) all[i] = plain_start[i];
  for (std::size_t i = 0; i < N; ++i) all[plain_start_size + i] = own[i];
  all[plain_start_size + N] = {"rest", Type::bytes, true};
  return all;
}

}  // namespace kneerail::fold
