#include "schema/exchange/sheet.h"

#include <algorithm>

#include "core/base/text.h"
#include "schema/exchange/slips.h"

namespace kneerail::exchange {
namespace {

constexpr std::size_t identifier_max = 80;
constexpr std::string_view outside_records = "is outside 1900-01-01 to 2199-12-31.";

/// The days that a record may name.
bool is_recordable(Date day) {
  return day >= date_from_civil(1900, 1, 1) && day <= date_from_civil(2199, 12, 31);
}

bool is_number(std::string_view text) {
  return !text.empty() && double_from_text(text).has_value();
}

/// Whether two neighbouring cells are numbers, as a number split at its comma would be.
bool numbers_split(const std::vector<std::string>& fields) {
  for (std::size_t i = 1; i < fields.size(); ++i)
    if (is_number(fields[i - 1]) && is_number(fields[i])) return true;
  return false;
}

/// What else the only cell of a header is separated by; empty: nothing.
std::string separator_meant(const std::vector<std::string>& header) {
  if (header.size() != 1) return {};
  const std::string& text = header.front();
  const auto of = [&text](char c) { return std::count(text.begin(), text.end(), c); };
  if (of(';') > 0) return " Is it separated by semicolons? Save it with commas.";
  if (of('\t') > 0) return " Is it separated by tabs? Save it with commas.";
  return {};
}

bool has_control(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) {
    return static_cast<unsigned char>(c) < 0x20 || static_cast<unsigned char>(c) == 0x7F;
  });
}

std::string words_text(std::span<const Word> words) {
  std::string text;
  for (const auto& word : words) text += (text.empty() ? "" : ", ") + std::string(word.text);
  return text;
}

}  // namespace

Sheet::Sheet(const std::filesystem::path& path, std::span<const SheetColumn> columns, BadRows& bad)
    : file_(path.filename().string()),
      in_(path, std::ios::binary),
      reader_(in_),
      columns_(columns.begin(), columns.end()),
      places_(columns.size(), -1),
      bad_(bad) {}

Result<std::unique_ptr<Sheet>> Sheet::open(const std::filesystem::path& path,
                                           std::span<const SheetColumn> columns, BadRows& bad) {
  std::unique_ptr<Sheet> sheet(new Sheet(path, columns, bad));
  if (!sheet->in_)
    return fail(Fault::not_found, path.string() + " could not be opened. Nothing was imported.");
  if (auto read = sheet->read_header(); !read) return fail(read.error());
  return sheet;
}

Result<> Sheet::read_header() {
  csv::Row header;
  auto more = reader_.next(header);
  if (!more) return fail(more.error(), file_ + ": ");
  if (!header.problem.empty())
    return fail(Fault::invalid_input, file_ + ", line " + std::to_string(header.line) + ": " +
                                          header.problem + ". Nothing was imported.");
  if (!*more)
    return fail(Fault::invalid_input,
                file_ + " is empty: its first line must name the columns. Nothing was imported.");
  return place_header(header.fields);
}

Result<> Sheet::place_header(const std::vector<std::string>& header) {
  width_ = header.size();
  for (std::size_t i = 0; i < header.size(); ++i) {
    const auto name = trimmed(header[i]);
    const auto column = std::find_if(columns_.begin(), columns_.end(),
                                     [&](const SheetColumn& c) { return c.name == name; });
    if (column == columns_.end()) {
      unknown_.emplace_back(name);
      continue;
    }
    int& place = places_[static_cast<std::size_t>(column - columns_.begin())];
    if (place >= 0)
      return fail(Fault::invalid_input, file_ + ": the column " + std::string(name) +
                                            " stands twice in the header. Nothing was imported.");
    place = static_cast<int>(i);
  }
  for (std::size_t i = 0; i < columns_.size(); ++i)
    if (columns_[i].required && places_[i] < 0)
      return fail(Fault::invalid_input, file_ + ": the column " + std::string(columns_[i].name) +
                                            " is missing." + separator_meant(header) +
                                            " Nothing was imported.");
  return Done{};
}

Result<bool> Sheet::next() {
  while (true) {
    auto more = reader_.next(row_);
    if (!more) return fail(more.error(), file_ + ": ");
    if (!*more) return false;
    ++rows_;
    good_ = true;
    if (row_.problem.empty() && row_.fields.size() == width_) return true;
    if (unreadable_++ == 0) first_unreadable_line_ = row_.line;
    refuse_row(row_.problem.empty()
                   ? width_fault(row_.fields.size(), width_, numbers_split(row_.fields))
                   : row_.problem + ".");
  }
}

std::int64_t Sheet::bytes_done() {
  const auto at = in_.tellg();
  return at < 0 ? 0 : static_cast<std::int64_t>(at);
}

std::string_view Sheet::column_name(int column) const {
  return columns_[static_cast<std::size_t>(column)].name;
}

std::string_view Sheet::text(int column) const {
  const int place = places_[static_cast<std::size_t>(column)];
  return place < 0 ? std::string_view{} : trimmed(row_.fields[static_cast<std::size_t>(place)]);
}

void Sheet::refuse(int column, std::string reason) {
  good_ = false;
  bad_.add({file_, row_.line, std::string(column_name(column)), std::string(text(column)),
            std::move(reason)});
}

void Sheet::refuse_row(std::string reason) {
  good_ = false;
  bad_.add({file_, row_.line, {}, {}, std::move(reason)});
}

bool Sheet::present(int column) {
  if (!text(column).empty()) return true;
  refuse(column, "is empty, and is needed here.");
  return false;
}

std::string Sheet::identifier_or_none(int column) {
  std::string id = csv::unguarded(text(column));
  if (id.size() > identifier_max)
    refuse(column, "is longer than " + std::to_string(identifier_max) + " characters.");
  if (has_control(id)) refuse(column, "holds a tab, a line break or another control character.");
  return id;
}

std::string Sheet::identifier(int column) {
  return present(column) ? identifier_or_none(column) : std::string();
}

std::optional<std::int64_t> Sheet::scaled(int column, const Measure& measure) {
  const auto cell = text(column);
  if (cell.empty()) return std::nullopt;
  if (auto fault = number_fault(cell, measure); !fault.empty()) {
    refuse(column, std::move(fault));
    return std::nullopt;
  }
  return scaled_from_text(cell, measure.digits);
}

std::optional<std::int64_t> Sheet::whole(int column, std::int64_t low, std::int64_t high) {
  return scaled(column, {"", 0, low, high});
}

std::optional<double> Sheet::real(int column, double low, double high) {
  const auto cell = text(column);
  if (cell.empty()) return std::nullopt;
  const auto value = double_from_text(cell);
  if (!value) {
    refuse(column, number_fault(cell, {"", 15, -1, 1}));
    return std::nullopt;
  }
  if (*value < low || *value > high) {
    refuse(column, "is outside " + shortest(low) + " to " + shortest(high) + ".");
    return std::nullopt;
  }
  return value;
}

std::optional<Date> Sheet::date(int column) {
  const auto cell = text(column);
  if (cell.empty()) return std::nullopt;
  const auto day = date_from_text(cell);
  if (!day)
    refuse(column, date_fault(cell));
  else if (!is_recordable(*day))
    refuse(column, std::string(outside_records));
  return day;
}

std::optional<Instant> Sheet::instant(int column) {
  const auto cell = text(column);
  if (cell.empty()) return std::nullopt;
  const auto at = instant_from_text(cell);
  if (!at)
    refuse(column, "is not an instant with its offset. Write 2026-06-30T14:05:00+02:00.");
  else if (!is_recordable(utc_day(*at)))
    refuse(column, std::string(outside_records));
  return at;
}

std::optional<int> Sheet::word(int column, std::span<const Word> words) {
  const auto cell = text(column);
  if (cell.empty()) return std::nullopt;
  for (const auto& word : words)
    if (word.text == cell) return word.code;
  refuse(column, "is not one of " + words_text(words) + ".");
  return std::nullopt;
}

}  // namespace kneerail::exchange
