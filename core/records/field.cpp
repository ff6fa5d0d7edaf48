#include "core/records/field.h"

#include <array>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/base/text.h"

namespace kneerail {
namespace {

constexpr std::array<UnitInfo, 27> units{{
    {"", "", 0},                     // none
    {"µm", "um", 1},                 // tenth_um
    {"µm", "um", 3},                 // thousandth_um
    {"", "", 3},                     // thousandth
    {"mm", "mm", 2},                 // hundredth_mm
    {"mm", "mm", 1},                 // tenth_mm
    {"mm", "mm", 0},                 // mm
    {"m", "m", 3},                   // mm_as_m
    {"N·m", "nm", 1},                // tenth_nm
    {"N", "n", 0},                   // newton
    {"°C", "c", 1},                  // tenth_celsius
    {"°", "deg", 7},                 // degree_e7
    {"%", "pct", 1},                 // tenth_percent
    {"mg/(m² d)", "mg_m2_d", 1},     // tenth_mg_per_m2_day
    {"m/s", "m_per_s", 0},           // metre_per_s
    {"", "date", 0},                 // day
    {"", "time", 0},                 // instant
    {"h", "h", 0},                   // hours
    {"days", "days", 0},             // days
    {"min", "min", 0},               // minutes
    {"ms", "ms", 0},                 // ms
    {"", "", 2},                     // money
    {"bytes", "bytes", 0},           // bytes
    {"pixels", "pixels", 0},         // pixels
    {"of the picture", "share", 4},  // ten_thousandth
    {"N/m", "n_per_m", 0},           // newton_per_m
    {"MPa", "mpa", 0},               // megapascal
}};

void group_thousands(std::string& text) {
  const std::size_t start = text.starts_with('-') ? 1 : 0;
  std::size_t end = text.find('.');
  if (end == std::string::npos) end = text.size();
  while (end > start + 3) {
    end -= 3;
    text.insert(end, 1, ',');
  }
}

}  // namespace

const UnitInfo& unit_info(Unit unit) {
  const auto place = static_cast<std::size_t>(unit);
  check(place < units.size(), "a unit of the list");
  return units[place];
}

std::string quantity_text(std::int64_t number, Unit unit) {
  if (unit == Unit::day && number >= -100'000'000 && number <= 100'000'000)
    return to_text(Date{static_cast<std::int32_t>(number)});
  if (unit == Unit::instant && number >= -field::two_to_53 && number <= field::two_to_53)
    return to_text(Instant{number});
  const UnitInfo& info = unit_info(unit);
  std::string text = scaled_to_text(number, info.digits);
  group_thousands(text);
  if (!info.text.empty()) text.append(info.text == "°" ? "" : " ").append(info.text);
  return text;
}

std::optional<std::string_view> Words::word(std::int64_t code) const {
  if (code < from || code >= from + count) return std::nullopt;
  return first[code - from];
}

std::optional<int> Words::code(std::string_view word) const {
  for (int i = 0; i < count; ++i) {
    if (first[i] == word) return from + i;
  }
  return std::nullopt;
}

const FieldInfo* Fields::find(std::int64_t key) const {
  for (const FieldInfo& one : *this) {
    if (one.key == key) return &one;
  }
  return nullptr;
}

std::string column_name(const FieldInfo& field) {
  std::string name(field.name);
  for (char& c : name) {
    if (c == ' ' || c == '-') c = '_';
  }
  const std::string_view suffix = unit_info(field.unit).suffix;
  if (!suffix.empty()) name.append("_").append(suffix);
  return name;
}

}  // namespace kneerail
