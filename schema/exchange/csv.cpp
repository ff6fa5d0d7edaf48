#include "schema/exchange/csv.h"

#include <istream>
#include <ostream>

#include "core/base/text.h"

namespace kneerail::csv {
namespace {

constexpr std::size_t buffer_bytes = 64 * 1024;
constexpr int end_of_file = -1;
constexpr std::string_view formula_starts = "=+-@\t\r";

bool begins_like_a_formula(std::string_view text) {
  return !text.empty() && formula_starts.find(text.front()) != std::string_view::npos;
}

void say(Row& row, std::string_view problem) {
  if (row.problem.empty()) row.problem = problem;
}

}  // namespace

Reader::Reader(std::istream& in, Limits limits) : in_(in), limits_(limits), buffer_(buffer_bytes) {}

bool Reader::fill() {
  if (at_ < end_) return true;
  in_.read(buffer_.data(), static_cast<std::streamsize>(buffer_.size()));
  at_ = 0;
  end_ = static_cast<std::size_t>(in_.gcount());
  return end_ > 0;
}

int Reader::peek() {
  return fill() ? static_cast<unsigned char>(buffer_[at_]) : end_of_file;
}

int Reader::take() {
  if (!fill()) return end_of_file;
  const int c = static_cast<unsigned char>(buffer_[at_++]);
  if (c == '\n') ++line_;
  return c;
}

void Reader::skip_byte_order_mark() {
  started_ = true;
  if (!fill() || end_ < 3) return;
  if (std::string_view(buffer_.data(), 3) == "\xEF\xBB\xBF") at_ = 3;
}

void Reader::keep(Row& row, std::string& field, char c) {
  ++row_bytes_;
  if (field.size() >= limits_.field_bytes) {
    say(row, "a field is longer than " + std::to_string(limits_.field_bytes) + " bytes");
  } else if (row_bytes_ > limits_.row_bytes) {
    say(row, "the row is longer than " + std::to_string(limits_.row_bytes) + " bytes");
  } else {
    field.push_back(c);
  }
}

void Reader::read_quoted(Row& row, std::string& field) {
  take();  // the opening quote
  while (true) {
    const int c = take();
    if (c == end_of_file) {
      say(row, "the quote opened here is never closed");
      return;
    }
    if (c == '"') {
      if (peek() != '"') return;
      take();
    }
    keep(row, field, static_cast<char>(c));
  }
}

/// Reads up to the comma or line break, which stays.
void Reader::read_field(Row& row, std::string& field) {
  if (peek() == '"') {
    read_quoted(row, field);
    const int after = peek();
    if (after != ',' && after != '\r' && after != '\n' && after != end_of_file)
      say(row, "text follows a closing quote; a quote inside a field is written twice");
  }
  while (true) {
    const int c = peek();
    if (c == ',' || c == '\n' || c == end_of_file) return;
    take();
    if (c == '\r' && peek() == '\n') return;
    if (c == '"') say(row, "a quote stands inside a field that is not quoted");
    keep(row, field, static_cast<char>(c));
  }
}

Result<bool> Reader::next(Row& row) {
  if (!started_) skip_byte_order_mark();
  do {
    row.fields.clear();
    row.problem.clear();
    row.line = line_;
    row_bytes_ = 0;
    if (peek() == end_of_file) {
      if (in_.bad()) return fail(Fault::io, "the file could not be read to its end");
      return false;
    }
    while (true) {
      row.fields.emplace_back();
      read_field(row, row.fields.back());
      if (take() != ',') break;
    }
  } while (row.fields.size() == 1 && row.fields[0].empty() && row.problem.empty());
  for (const auto& field : row.fields)
    if (row.problem.empty() && !is_utf8(field))
      row.problem = "the text is not UTF-8; save the file again as CSV UTF-8";
  if (!row.problem.empty()) row.fields.clear();
  return true;
}

Writer& Writer::field(std::string_view text) {
  if (!first_) out_ << ',';
  first_ = false;
  if (text.find_first_of("\",\r\n") == std::string_view::npos) {
    out_ << text;
    return *this;
  }
  out_ << '"';
  for (const char c : text) {
    if (c == '"') out_ << '"';
    out_ << c;
  }
  out_ << '"';
  return *this;
}

Writer& Writer::free_text(std::string_view text) {
  return field(guarded(text));
}

void Writer::end_row() {
  out_ << '\n';
  first_ = true;
}

void Writer::row(const std::vector<std::string_view>& fields) {
  for (const auto text : fields) field(text);
  end_row();
}

std::string guarded(std::string_view text) {
  std::string written;
  if (begins_like_a_formula(text) || text.starts_with('\'')) written.push_back('\'');
  return written.append(text);
}

std::string unguarded(std::string_view text) {
  if (text.size() > 1 && text.front() == '\'') {
    const auto rest = text.substr(1);
    if (rest.front() == '\'' || begins_like_a_formula(rest)) return std::string(rest);
  }
  return std::string(text);
}

}  // namespace kneerail::csv
