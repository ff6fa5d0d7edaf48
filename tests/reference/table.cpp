#include "tests/reference/table.h"

#include <algorithm>
#include <fstream>
#include <sstream>

#include "core/base/text.h"

namespace kneerail::reference {

namespace {

using Row = std::vector<std::string>;

/// Reads one row from `at` on; false at the end of the text.
bool next_row(std::string_view text, std::size_t& at, Row& row, bool& open) {
  row.clear();
  if (at >= text.size()) return false;
  std::string cell;
  open = false;
  for (; at < text.size(); ++at) {
    const char letter = text[at];
    if (open) {
      if (letter != '"') {
        cell += letter;
      } else if (at + 1 < text.size() && text[at + 1] == '"') {
        cell += text[++at];
      } else {
        open = false;
      }
    } else if (letter == '"' && cell.empty()) {
      open = true;
    } else if (letter == ',') {
      row.push_back(std::move(cell));
      cell.clear();
    } else if (letter == '\n') {
      ++at;
      break;
    } else if (letter != '\r') {
      cell += letter;
    }
  }
  row.push_back(std::move(cell));
  return true;
}

}  // namespace

std::optional<std::size_t> Table::column(std::string_view name) const {
  const auto found = std::ranges::find(header, name);
  if (found == header.end()) return std::nullopt;
  return static_cast<std::size_t>(found - header.begin());
}

std::vector<std::string> Table::texts(std::size_t column) const {
  std::vector<std::string> cells;
  for (const auto& row : rows) cells.push_back(row.at(column));
  return cells;
}

std::optional<std::vector<double>> Table::numbers(std::size_t column) const {
  std::vector<double> values;
  for (const auto& row : rows) {
    const auto value = double_from_text(row.at(column));
    if (!value) return std::nullopt;
    values.push_back(*value);
  }
  return values;
}

Result<Table> read_table(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) return fail(Fault::not_found, path.string() + ": cannot be read.");
  std::ostringstream all;
  all << file.rdbuf();
  const std::string text = all.str();

  Table table;
  std::size_t at = 0;
  bool open = false;
  Row row;
  next_row(text, at, table.header, open);
  for (int line = 2; next_row(text, at, row, open); ++line) {
    if (open || row.size() != table.header.size()) {
      return fail(Fault::invalid_input,
                  path.string() + ", row " + std::to_string(line) +
                      (open ? ": a quote is left open."
                            : ": " + std::to_string(row.size()) + " cells where the header has " +
                                  std::to_string(table.header.size()) + "."));
    }
    table.rows.push_back(row);
  }
  return table;
}

}  // namespace kneerail::reference
