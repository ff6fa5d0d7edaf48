#pragma once

// Words of table coverage that both folds share.

#include <array>
#include <cstdint>
#include <utility>

#include "core/fold/columns.h"
#include "core/fold/rules.h"
#include "core/records/condition_grade.h"
#include "core/records/hand_load.h"

namespace kneerail::fold {

/// The kinds of record that coverage counts, each with its column.
inline constexpr std::array counted_kinds{
    std::pair(kind::grade, at(coverage_columns, "grades")),
    std::pair(kind::coating, at(coverage_columns, "coatings")),
    std::pair(kind::torque, at(coverage_columns, "torques")),
    std::pair(kind::wall, at(coverage_columns, "walls")),
    std::pair(kind::hand_load, at(coverage_columns, "hand_loads")),
    std::pair(kind::geometry, at(coverage_columns, "geometries")),
    std::pair(kind::gate_check, at(coverage_columns, "gate_checks")),
    std::pair(kind::finding, at(coverage_columns, "findings")),
    std::pair(kind::photograph, at(coverage_columns, "photographs")),
    std::pair(kind::work, at(coverage_columns, "works")),
    std::pair(kind::not_reached, at(coverage_columns, "not_reached")),
};

/// What was seen of a thing: bits of a number in column looks.
inline constexpr std::int64_t look_seen = 1;
inline constexpr std::int64_t look_near = 2;
inline constexpr std::int64_t look_fresh = 4;
inline constexpr std::int64_t look_pushed = 8;
inline constexpr std::int64_t look_not_reached = 16;  ///< said to be so, of a run too

constexpr bool is_counted(std::int64_t kind) {
  for (const auto& [counted, column] : counted_kinds) {
    if (counted == kind) return true;
  }
  return false;
}

}  // namespace kneerail::fold
