#pragma once

// The SQL files of this folder, built into the library: nothing is looked for on disk at run time.

#include <span>
#include <string_view>

namespace kneerail {

/// schema/tables.sql: the folded tables with their indexes, as they are now.
extern const std::string_view tables_sql;
/// schema/steps/journal_0001.sql and on, in order; step n stands at place n - 1.
std::span<const std::string_view> journal_steps();

}  // namespace kneerail
