#include "schema/exchange/register_columns.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "core/base/date.h"
#include "core/base/text.h"
#include "schema/digest.h"

namespace kneerail::exchange {
namespace {

using Json = nlohmann::json;

bool is_scalar(const FieldInfo& field) {
  switch (field.shape) {
    case Shape::number:
    case Shape::code:
    case Shape::truth:
    case Shape::text:
    case Shape::id:
    case Shape::bytes:
      return true;
    default:
      return false;
  }
}

bool is_list_of_words(const FieldInfo& field) {
  if (field.shape != Shape::list) return false;
  const Shape one = field.parts.first->shape;
  return one == Shape::number || one == Shape::code || one == Shape::id;
}

bool all_scalar(const Fields& fields) {
  return std::all_of(fields.begin(), fields.end(), is_scalar);
}

std::string plain_name(const FieldInfo& field) {
  std::string name = column_name(field);
  std::erase_if(name, [](char c) { return c == '\'' || c == ','; });
  return name;
}

void add_columns(const FieldInfo& field, const std::string& before, std::vector<int> keys,
                 std::vector<RegisterColumn>& columns) {
  keys.push_back(field.key);
  const std::string name = before + plain_name(field);
  if (field.shape == Shape::map) {
    for (const auto& part : field.parts) add_columns(part, name + "_", keys, columns);
  } else if (field.shape == Shape::tuple && all_scalar(field.parts)) {
    int place = 0;
    for (const auto& part : field.parts)
      columns.push_back({name + "_" + plain_name(part), keys, place++, part});
  } else {
    columns.push_back({name, keys, -1, field});
  }
}

Json json_of(const cbor::Value& value) {
  if (const auto* number = value.number()) return *number;
  if (const auto* truth = value.truth()) return *truth;
  if (const auto* text = value.text()) return *text;
  if (const auto* bytes = value.bytes()) return Json{{"bytes", to_hex(*bytes)}};
  if (const auto* array = value.array()) {
    Json list = Json::array();
    for (const auto& one : *array) list.push_back(json_of(one));
    return list;
  }
  Json object = Json::object();
  for (const auto& [key, one] : value.map()->pairs())
    object[key.number() ? std::to_string(*key.number()) : *key.text()] = json_of(one);
  return object;
}

/// Nothing for what a record cannot hold: fractions, null.
std::optional<cbor::Value> value_of(const Json& json) {
  if (json.is_boolean()) return cbor::Value(json.get<bool>());
  if (json.is_number_integer()) return cbor::Value(json.get<std::int64_t>());
  if (json.is_string()) return cbor::Value(json.get<std::string>());
  if (json.is_array()) {
    cbor::Array list;
    for (const auto& one : json) {
      auto value = value_of(one);
      if (!value) return std::nullopt;
      list.push_back(std::move(*value));
    }
    return cbor::Value(std::move(list));
  }
  if (!json.is_object()) return std::nullopt;
  cbor::Map map;
  for (const auto& [key, one] : json.items()) {
    auto value = value_of(one);
    if (!value) return std::nullopt;
    const auto number = int_from_text(key);
    map.set(number ? cbor::Value(*number) : cbor::Value(key), std::move(*value));
  }
  return cbor::Value(std::move(map));
}

std::string number_cell(std::int64_t number, const FieldInfo& field) {
  if (field.unit == Unit::day) return to_text(Date{static_cast<std::int32_t>(number)});
  if (field.unit == Unit::instant) return to_text(Instant{number});
  return scaled_to_text(number, unit_info(field.unit).digits);
}

Measure measure_of(const FieldInfo& field) {
  const UnitInfo& unit = unit_info(field.unit);
  return {unit.text, unit.digits, field.min, field.max};
}

std::vector<std::string_view> between_semicolons(std::string_view text) {
  std::vector<std::string_view> parts;
  while (true) {
    const auto end = text.find(';');
    parts.push_back(trimmed(text.substr(0, end)));
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end + 1);
  }
}

std::string words_text(const Words& words) {
  std::string text;
  for (int i = 0; i < words.count; ++i)
    text.append(text.empty() ? "" : ", ").append(words.first[i]);
  return text;
}

std::optional<cbor::Value> number_value(Sheet& sheet, int place, const FieldInfo& field) {
  if (field.unit == Unit::day) {
    const auto day = sheet.date(place);
    return day ? std::optional(cbor::Value(std::int64_t{day->days})) : std::nullopt;
  }
  if (field.unit == Unit::instant) {
    const auto at = sheet.instant(place);
    return at ? std::optional(cbor::Value(at->ms)) : std::nullopt;
  }
  const auto number = sheet.scaled(place, measure_of(field));
  return number ? std::optional(cbor::Value(*number)) : std::nullopt;
}

/// One word of a list or a whole cell: a code, a reference or a number without limits' sentence.
std::optional<cbor::Value> word_value(Sheet& sheet, int place, const RegisterColumn& column,
                                      const FieldInfo& field, std::string_view word,
                                      const ThingOf& thing) {
  if (field.shape == Shape::code) {
    const auto code = field.words.code(word);
    if (!code) sheet.refuse(place, "is not one of " + words_text(field.words) + ".");
    return code ? std::optional(cbor::Value(*code)) : std::nullopt;
  }
  if (field.shape == Shape::id) {
    const auto id = thing(type_pointed_at(column.leaf.name), csv::unguarded(word));
    if (!id) sheet.refuse(place, "names nothing in these files or in the register.");
    return id ? std::optional(cbor::Value(*id)) : std::nullopt;
  }
  const auto number = scaled_from_text(word, unit_info(field.unit).digits);
  if (!number) sheet.refuse(place, "is not a list of numbers between semicolons.");
  return number ? std::optional(cbor::Value(*number)) : std::nullopt;
}

std::optional<cbor::Value> list_value(Sheet& sheet, int place, const RegisterColumn& column,
                                      const ThingOf& thing) {
  cbor::Array list;
  for (const auto word : between_semicolons(sheet.text(place))) {
    auto one = word_value(sheet, place, column, *column.leaf.parts.first, word, thing);
    if (!one) return std::nullopt;
    list.push_back(std::move(*one));
  }
  return cbor::Value(std::move(list));
}

std::optional<cbor::Value> bytes_value(Sheet& sheet, int place) {
  const auto text = sheet.text(place);
  const auto digit = [](char c) {
    constexpr std::string_view digits = "0123456789abcdef";
    return digits.find(c);
  };
  cbor::Bytes bytes;
  for (std::size_t i = 0; i + 1 < text.size(); i += 2) {
    const auto high = digit(text[i]);
    const auto low = digit(text[i + 1]);
    if (high > 15 || low > 15) break;
    bytes.push_back(static_cast<std::uint8_t>(high * 16 + low));
  }
  if (bytes.size() * 2 == text.size()) return cbor::Value(std::move(bytes));
  sheet.refuse(place, "is not hexadecimal, two digits a byte.");
  return std::nullopt;
}

std::optional<cbor::Value> json_value(Sheet& sheet, int place) {
  const auto json = Json::parse(sheet.text(place), nullptr, false);
  auto value = json.is_discarded() ? std::nullopt : value_of(json);
  if (!value) sheet.refuse(place, "is not JSON of whole numbers, texts, lists and keys.");
  return value;
}

}  // namespace

std::vector<RegisterColumn> register_columns(const EntityInfo& type) {
  std::vector<RegisterColumn> columns;
  for (const auto& field : type.fields) add_columns(field, {}, {}, columns);
  return columns;
}

std::string register_file(const EntityInfo& type) {
  if (type.name == "person") return "people.csv";
  if (type.name == "organisation") return "organisation.csv";
  std::string name(type.name);
  std::replace(name.begin(), name.end(), ' ', '_');
  return name.append("s.csv");
}

int type_pointed_at(std::string_view field_name) {
  struct Pointer {
    std::string_view field;
    std::string_view type;
  };
  constexpr Pointer others[] = {{"duty holder", "person"},
                                {"people to tell", "person"},
                                {"from post", "post"},
                                {"to post", "post"},
                                {"part of", "component"},
                                {"moved from", "component"},
                                {"set screw type", "component type"}};
  std::string_view name = field_name;
  for (const auto& one : others)
    if (one.field == field_name) name = one.type;
  for (const EntityInfo* type : all_entities())
    if (type->name == name) return type->type;
  return 0;
}

const cbor::Value* value_at(const cbor::Map& fields, const RegisterColumn& column) {
  const cbor::Map* map = &fields;
  const cbor::Value* value = nullptr;
  for (const int key : column.keys) {
    if (map == nullptr) return nullptr;
    value = map->find(key);
    if (value == nullptr) return nullptr;
    map = value->map();
  }
  if (column.part < 0) return value;
  const auto* parts = value->array();
  const auto place = static_cast<std::size_t>(column.part);
  return parts == nullptr || place >= parts->size() ? nullptr : &(*parts)[place];
}

std::string cell_text(const cbor::Value& value, const FieldInfo& field,
                      const ReferenceOf& reference) {
  if (is_list_of_words(field) && value.array() != nullptr) {
    std::string text;
    for (const auto& one : *value.array())
      text.append(text.empty() ? "" : ";").append(cell_text(one, *field.parts.first, reference));
    return text;
  }
  if (!is_scalar(field)) return json_of(value).dump();
  if (const auto* number = value.number()) {
    if (field.shape != Shape::code) return number_cell(*number, field);
    const auto word = field.words.word(*number);
    return word ? std::string(*word) : std::to_string(*number);
  }
  if (const auto* truth = value.truth()) return *truth ? "yes" : "no";
  if (const auto* text = value.text()) return *text;
  if (field.shape == Shape::id && value.uuid()) return reference(*value.uuid());
  return value.bytes() == nullptr ? json_of(value).dump() : to_hex(*value.bytes());
}

std::optional<cbor::Value> cell_value(Sheet& sheet, int place, const RegisterColumn& column,
                                      const ThingOf& thing) {
  static constexpr Word yes_no[] = {{"yes", 1}, {"no", 0}};
  const FieldInfo& field = column.leaf;
  if (is_list_of_words(field)) return list_value(sheet, place, column, thing);
  switch (field.shape) {
    case Shape::number:
      return number_value(sheet, place, field);
    case Shape::code:
    case Shape::id:
      return word_value(sheet, place, column, field, sheet.text(place), thing);
    case Shape::text:
      return cbor::Value(csv::unguarded(sheet.text(place)));
    case Shape::bytes:
      return bytes_value(sheet, place);
    case Shape::truth: {
      const auto said = sheet.word(place, yes_no);
      return said ? std::optional(cbor::Value(*said == 1)) : std::nullopt;
    }
    default:
      return json_value(sheet, place);
  }
}

bool put_value(cbor::Map& fields, const RegisterColumn& column, cbor::Value value) {
  // Maps are values: the ones on the way are taken out, changed and put back from the inside.
  std::vector<cbor::Map> maps{fields};
  for (std::size_t i = 0; i + 1 < column.keys.size(); ++i) {
    const auto* inner = maps.back().find(column.keys[i]);
    maps.push_back(inner != nullptr && inner->map() != nullptr ? *inner->map() : cbor::Map{});
  }
  if (column.part >= 0) {
    const auto* there = maps.back().find(column.keys.back());
    cbor::Array parts = there != nullptr && there->array() ? *there->array() : cbor::Array{};
    if (parts.size() != static_cast<std::size_t>(column.part)) return false;
    parts.push_back(std::move(value));
    value = cbor::Value(std::move(parts));
  }
  for (std::size_t i = column.keys.size(); i-- > 0;) {
    maps[i].set(column.keys[i], std::move(value));
    value = cbor::Value(maps[i]);
  }
  fields = std::move(maps.front());
  return true;
}

}  // namespace kneerail::exchange
