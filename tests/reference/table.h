#pragma once

// A CSV file (RFC 4180) read whole into cells: the checks and the data sets they name.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"

namespace kneerail::reference {

struct Table {
  std::vector<std::string> header;
  std::vector<std::vector<std::string>> rows;

  /// The place of a column; nothing when there is none of that name.
  [[nodiscard]] std::optional<std::size_t> column(std::string_view name) const;
  [[nodiscard]] std::vector<std::string> texts(std::size_t column) const;
  /// Nothing when a cell of the column is no number.
  [[nodiscard]] std::optional<std::vector<double>> numbers(std::size_t column) const;
};

/// Errors: not_found, invalid_input (a row with another count of cells than the header; a quote
/// left open), with the line.
Result<Table> read_table(const std::filesystem::path& path);

}  // namespace kneerail::reference
