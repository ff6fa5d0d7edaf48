#pragma once

// The fixed tables of the invented harbour authority (assets/skerrymouth/*.csv), built into the
// program. Plain commas, no quotes, a header row.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace kneerail::demo {

/// The text of one table: "sites", "zones", "runs", "types", "people", "instruments".
std::string_view table_text(std::string_view table);

/// One row of a table, by column name. Empty cells are absent.
class TableRow {
 public:
  TableRow() = default;
  explicit TableRow(std::map<std::string, std::string, std::less<>> cells)
      : cells_(std::move(cells)) {}
  /// Empty where the cell is.
  [[nodiscard]] const std::string& text(std::string_view column) const;
  [[nodiscard]] std::optional<std::int64_t> number(std::string_view column) const;
  /// The cell must be there: the tables are ours.
  [[nodiscard]] std::int64_t whole(std::string_view column) const;
  [[nodiscard]] double real(std::string_view column) const;

 private:
  std::map<std::string, std::string, std::less<>> cells_;
};

std::vector<TableRow> table_rows(std::string_view table);

}  // namespace kneerail::demo
