#pragma once

// One CSV file with a header, a row at a time, its cells read as what their column holds. Whatever
// cannot be taken goes to BadRows with the sentence for it, and the row counts as bad.

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "schema/exchange/bad_rows.h"
#include "schema/exchange/csv.h"

namespace kneerail::exchange {

struct SheetColumn {
  std::string_view name;
  bool required = true;  ///< in the header; its cells may still be empty
};

/// The unit of a record as a column sees it: 84.1 µm with one digit is 841.
struct Measure {
  std::string_view unit;
  int digits;         ///< after the point
  std::int64_t low;   ///< in the record's unit
  std::int64_t high;  ///< likewise
};

struct Word {
  std::string_view text;
  int code;
};

class Sheet {
 public:
  /// Opens and reads the header; `columns` are then known by their place in it. Errors: not_found;
  /// invalid_input (a column missing or twice, no header), io.
  static Result<std::unique_ptr<Sheet>> open(const std::filesystem::path& path,
                                             std::span<const SheetColumn> columns, BadRows& bad);

  /// The next row that has as many fields as the header; others are noted as bad and passed over.
  /// False at the end. Errors: io.
  Result<bool> next();

  [[nodiscard]] std::int64_t line() const { return row_.line; }
  [[nodiscard]] std::int64_t rows() const { return rows_; }              ///< read so far, bad too
  [[nodiscard]] std::int64_t unreadable() const { return unreadable_; }  ///< of them without cells
  [[nodiscard]] std::int64_t first_unreadable_line() const { return first_unreadable_line_; }
  [[nodiscard]] bool row_is_good() const { return good_; }
  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] const std::vector<std::string>& unknown_columns() const { return unknown_; }
  [[nodiscard]] std::int64_t bytes_done();

  /// The cell as it stands, blanks at its ends taken off; empty when the file has no such column.
  [[nodiscard]] std::string_view text(int column) const;
  /// An identifier of 1 to 80 characters.
  std::string identifier(int column);
  /// The same, or empty.
  std::string identifier_or_none(int column);
  std::optional<std::int64_t> scaled(int column, const Measure& measure);
  std::optional<double> real(int column, double low, double high);
  std::optional<std::int64_t> whole(int column, std::int64_t low, std::int64_t high);
  std::optional<Date> date(int column);
  std::optional<Instant> instant(int column);
  /// The code of a word of the list.
  std::optional<int> word(int column, std::span<const Word> words);
  /// Nothing is not enough here: says so when the cell is empty.
  bool present(int column);
  /// Notes what is wrong with this row.
  void refuse(int column, std::string reason);
  void refuse_row(std::string reason);
  [[nodiscard]] std::string_view column_name(int column) const;

 private:
  Sheet(const std::filesystem::path& path, std::span<const SheetColumn> columns, BadRows& bad);
  Result<> read_header();
  Result<> place_header(const std::vector<std::string>& header);

  std::string file_;
  std::ifstream in_;
  csv::Reader reader_;
  std::vector<SheetColumn> columns_;
  std::vector<int> places_;  ///< of each column in the file; -1: absent
  std::vector<std::string> unknown_;
  std::size_t width_ = 0;
  csv::Row row_;
  std::int64_t rows_ = 0;
  std::int64_t unreadable_ = 0;
  std::int64_t first_unreadable_line_ = 0;
  bool good_ = true;
  BadRows& bad_;
};

}  // namespace kneerail::exchange
