#pragma once

// How one field of a record is described, as data: key, name, shape, unit, limits, words of its
// codes. Every kind of record and every type of thing has such a table in its own file; codec,
// limits, exchange and tests read it. A code is its place in the list of words, from 1 unless the
// list begins at 0.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace kneerail {

/// The unit of a whole number in a record, and how people write the quantity.
enum class Unit : std::uint8_t {
  none,
  tenth_um,
  thousandth_um,
  thousandth,
  hundredth_mm,
  tenth_mm,
  mm,
  mm_as_m,  ///< mm, which people write in m: a chainage
  tenth_nm,
  newton,
  tenth_celsius,
  degree_e7,
  tenth_percent,
  tenth_mg_per_m2_day,
  metre_per_s,
  day,
  instant,
  hours,
  days,
  minutes,
  ms,
  money,
  bytes,
  pixels,
  ten_thousandth,
  newton_per_m,
  megapascal,
};

struct UnitInfo {
  std::string_view text;    ///< "µm", empty for none
  std::string_view suffix;  ///< of a column's name: "um", empty for none
  int digits;               ///< the record's number / 10^digits is what people write
};
const UnitInfo& unit_info(Unit unit);

/// "84.1 µm", "2031-05-14", "7": a record's number as people write it, thousands grouped.
std::string quantity_text(std::int64_t number, Unit unit);

enum class Shape : std::uint8_t {
  number,  ///< whole number, min to max in the unit
  code,    ///< place in `words`
  truth,   ///< true or false
  text,    ///< min to max characters
  id,      ///< sixteen bytes
  bytes,   ///< min to max bytes
  list,    ///< min to max items, each as parts[0]
  tuple,   ///< array with the parts in order; parts at the end that are not required may be absent
  map,     ///< whole-number keys, each as the part of that key; other keys are kept
  table,   ///< whole-number keys of any value, each value as parts[0]
  one_of,  ///< any one of the parts
  mark,    ///< a mark on a picture, see photograph.h
  any,     ///< whatever the codec takes
};

/// A list of words; the first has the code `from`.
struct Words {
  const std::string_view* first = nullptr;
  int count = 0;
  int from = 1;

  /// The word of a code, or nothing.
  [[nodiscard]] std::optional<std::string_view> word(std::int64_t code) const;
  /// The code of a word, written just so, or nothing.
  [[nodiscard]] std::optional<int> code(std::string_view word) const;
};

struct FieldInfo;

struct Fields {
  const FieldInfo* first = nullptr;
  std::size_t count = 0;

  [[nodiscard]] constexpr const FieldInfo* begin() const { return first; }
  [[nodiscard]] constexpr const FieldInfo* end() const;
  /// The field of a key, or null.
  [[nodiscard]] const FieldInfo* find(std::int64_t key) const;
};

struct FieldInfo {
  int key = 0;
  std::string_view name;  ///< in words: "coating nominal"
  Shape shape = Shape::any;
  bool required = false;
  Unit unit = Unit::none;
  std::int64_t min = 0;
  std::int64_t max = 0;
  Words words = {};
  Fields parts = {};
};

constexpr const FieldInfo* Fields::end() const {
  return first + count;
}

/// The column's name in a file: "coating_nominal_um".
std::string column_name(const FieldInfo& field);

// What the tables are written with.
namespace field {

inline constexpr std::int64_t two_to_53 = std::int64_t{1} << 53;

template <std::size_t N>
constexpr Fields fields(const FieldInfo (&parts)[N]) {
  return {parts, N};
}
template <std::size_t N>
constexpr Words words(const std::string_view (&list)[N], int from = 1) {
  return {list, static_cast<int>(N), from};
}

constexpr FieldInfo must(FieldInfo one) {
  one.required = true;
  return one;
}
constexpr FieldInfo number(int key, std::string_view name, Unit unit, std::int64_t min,
                           std::int64_t max) {
  return {.key = key, .name = name, .shape = Shape::number, .unit = unit, .min = min, .max = max};
}
template <std::size_t N>
constexpr FieldInfo code(int key, std::string_view name, const std::string_view (&list)[N],
                         int from = 1) {
  return {.key = key,
          .name = name,
          .shape = Shape::code,
          .min = from,
          .max = from + static_cast<int>(N) - 1,
          .words = words(list, from)};
}
constexpr FieldInfo truth(int key, std::string_view name) {
  return {.key = key, .name = name, .shape = Shape::truth};
}
constexpr FieldInfo text(int key, std::string_view name, std::int64_t max) {
  return {.key = key, .name = name, .shape = Shape::text, .min = 0, .max = max};
}
constexpr FieldInfo id(int key, std::string_view name) {
  return {.key = key, .name = name, .shape = Shape::id};
}
constexpr FieldInfo bytes(int key, std::string_view name, std::int64_t length) {
  return {.key = key, .name = name, .shape = Shape::bytes, .min = length, .max = length};
}
/// A SHA-256: of an object, or of a chain.
constexpr FieldInfo digest(int key, std::string_view name) {
  return bytes(key, name, 32);
}
constexpr FieldInfo list(int key, std::string_view name, std::int64_t min, std::int64_t max,
                         const FieldInfo& one) {
  return {.key = key,
          .name = name,
          .shape = Shape::list,
          .min = min,
          .max = max,
          .parts = Fields{&one, 1}};
}
template <std::size_t N>
constexpr FieldInfo tuple(int key, std::string_view name, const FieldInfo (&parts)[N]) {
  return {.key = key, .name = name, .shape = Shape::tuple, .parts = fields(parts)};
}
template <std::size_t N>
constexpr FieldInfo map(int key, std::string_view name, const FieldInfo (&parts)[N]) {
  return {.key = key, .name = name, .shape = Shape::map, .parts = fields(parts)};
}
constexpr FieldInfo table(int key, std::string_view name, const FieldInfo& one) {
  return {.key = key, .name = name, .shape = Shape::table, .parts = Fields{&one, 1}};
}
template <std::size_t N>
constexpr FieldInfo one_of(int key, std::string_view name, const FieldInfo (&parts)[N]) {
  return {.key = key, .name = name, .shape = Shape::one_of, .parts = fields(parts)};
}
constexpr FieldInfo any(int key, std::string_view name) {
  return {.key = key, .name = name, .shape = Shape::any};
}

/// 1900-01-01 to 2199-12-31.
constexpr FieldInfo day(int key, std::string_view name) {
  return number(key, name, Unit::day, -25'567, 84'005);
}
/// The same span, to the last millisecond.
constexpr FieldInfo instant(int key, std::string_view name) {
  return number(key, name, Unit::instant, -2'208'988'800'000, 7'258'118'399'999);
}
constexpr FieldInfo thickness(int key, std::string_view name) {
  return number(key, name, Unit::tenth_um, 0, 20'000);
}
constexpr FieldInfo wall(int key, std::string_view name) {
  return number(key, name, Unit::hundredth_mm, 1, 5'000);
}
constexpr FieldInfo torque(int key, std::string_view name) {
  return number(key, name, Unit::tenth_nm, 0, 5'000);
}
constexpr FieldInfo deflection(int key, std::string_view name) {
  return number(key, name, Unit::tenth_mm, 0, 5'000);
}
constexpr FieldInfo load(int key, std::string_view name) {
  return number(key, name, Unit::newton, 10, 2'000);
}
constexpr FieldInfo line_load(int key, std::string_view name) {
  return number(key, name, Unit::newton_per_m, 10, 20'000);
}
constexpr FieldInfo temperature(int key, std::string_view name) {
  return number(key, name, Unit::tenth_celsius, -400, 800);
}
constexpr FieldInfo money(int key, std::string_view name) {
  return number(key, name, Unit::money, 0, 10'000'000'000'000);
}
constexpr FieldInfo count(int key, std::string_view name, std::int64_t min, std::int64_t max) {
  return number(key, name, Unit::none, min, max);
}
/// A place in a feed or a chain: 1, 2, 3 ...
constexpr FieldInfo sequence(int key, std::string_view name, std::int64_t min = 0) {
  return number(key, name, Unit::none, min, two_to_53);
}

inline constexpr FieldInfo place_parts[] = {
    must(number(1, "latitude", Unit::degree_e7, -900'000'000, 900'000'000)),
    must(number(2, "longitude", Unit::degree_e7, -1'800'000'000, 1'800'000'000)),
};
/// [latitude, longitude], WGS 84.
constexpr FieldInfo place(int key, std::string_view name) {
  return tuple(key, name, place_parts);
}
inline constexpr FieldInfo place_on_part_parts[] = {
    must(number(1, "along", Unit::mm, -100'000, 1'000'000)),
    must(number(2, "up", Unit::mm, -10'000, 100'000)),
};
/// [mm along, mm up].
constexpr FieldInfo place_on_part(int key, std::string_view name) {
  return tuple(key, name, place_on_part_parts);
}

inline constexpr FieldInfo one_id = id(0, "id");
inline constexpr FieldInfo one_digest = digest(0, "object");
/// At most a thousand ids; min is 1 where the list must name something.
constexpr FieldInfo ids(int key, std::string_view name, std::int64_t min = 0) {
  return list(key, name, min, 1'000, one_id);
}
inline constexpr FieldInfo feed_sequence_parts[] = {must(id(1, "feed")),
                                                    must(sequence(2, "last sequence"))};
inline constexpr FieldInfo one_feed_sequence = tuple(0, "last sequence", feed_sequence_parts);

}  // namespace field
}  // namespace kneerail
