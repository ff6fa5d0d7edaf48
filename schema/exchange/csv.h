#pragma once

// CSV as RFC 4180 has it: fields between commas, quoted where they hold a comma, a quote or a line
// break, a quote inside quotes doubled. Lines end with CRLF or LF; a byte order mark at the start
// is passed over. A row at a time, so that a file of any length needs the memory of one row.
//
// A spreadsheet runs a text that begins with = + - @ as a formula. Free text that begins so is
// written with an apostrophe before it, and the apostrophe is taken off again on reading.

#include <cstdint>
#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace kneerail::csv {

struct Row {
  std::int64_t line = 0;  ///< of the row's first character, from 1
  std::vector<std::string> fields;
  std::string problem;  ///< a sentence when the row cannot be read; its fields are then empty
};

struct Limits {
  std::size_t field_bytes = 64 * 1024;
  std::size_t row_bytes = 256 * 1024;
};

class Reader {
 public:
  explicit Reader(std::istream& in, Limits limits = {});

  /// The next row; false at the end of the file. Empty lines are passed over. A row that cannot be
  /// read (not UTF-8, a stray quote, too long) comes with its `problem`, and reading goes on after
  /// it. Errors: io.
  Result<bool> next(Row& row);

 private:
  int take();
  int peek();
  bool fill();
  void read_field(Row& row, std::string& field);
  void read_quoted(Row& row, std::string& field);
  void keep(Row& row, std::string& field, char c);
  void skip_byte_order_mark();

  std::istream& in_;
  Limits limits_;
  std::vector<char> buffer_;
  std::size_t at_ = 0;
  std::size_t end_ = 0;
  std::int64_t line_ = 1;
  std::size_t row_bytes_ = 0;
  bool started_ = false;
};

/// Writes rows with LF at the end of each.
class Writer {
 public:
  explicit Writer(std::ostream& out) : out_(out) {}

  Writer& field(std::string_view text);
  /// Free text: an identifier, a name, a note. See the top of this file about formulas.
  Writer& free_text(std::string_view text);
  void end_row();
  /// A header or any row of plain fields.
  void row(const std::vector<std::string_view>& fields);

 private:
  std::ostream& out_;
  bool first_ = true;
};

/// Free text as it is written and as it is read again; the second undoes the first exactly.
std::string guarded(std::string_view text);
std::string unguarded(std::string_view text);

}  // namespace kneerail::csv
