#include <algorithm>

#include "core/base/text.h"
#include "core/records/kinds.h"
#include "core/records/photograph.h"
#include "core/records/plain_text.h"
#include "core/records/record.h"

namespace kneerail {
namespace {

using Problem = std::optional<std::string>;  // the middle of a sentence; nothing: all is well

Problem problem(const FieldInfo& field, const cbor::Value& value);

std::string named(const FieldInfo& field) {
  return std::string(field.name);
}

Problem number_problem(const FieldInfo& field, const cbor::Value& value) {
  const auto* number = value.number();
  if (number == nullptr) return named(field) + " is not a whole number";
  if (*number >= field.min && *number <= field.max) return std::nullopt;
  return named(field) + " " + quantity_text(*number, field.unit) + " is outside " +
         quantity_text(field.min, field.unit) + " to " + quantity_text(field.max, field.unit);
}

Problem code_problem(const FieldInfo& field, const cbor::Value& value) {
  const auto* number = value.number();
  if (number == nullptr) return named(field) + " is not a code";
  if (field.words.word(*number)) return std::nullopt;
  std::string list;
  for (int i = 0; i < field.words.count; ++i)
    list.append(i == 0                       ? ""
                : i + 1 == field.words.count ? " or "
                                             : ", ")
        .append(field.words.first[i]);
  return named(field) + " " + std::to_string(*number) + " is none of " + list;
}

Problem text_problem(const FieldInfo& field, const cbor::Value& value) {
  const auto* text = value.text();
  if (text == nullptr) return named(field) + " is not text";
  if (const std::string wrong = text_fault(*text); !wrong.empty())
    return named(field) + " holds " + wrong;
  const auto length = static_cast<std::int64_t>(characters(*text));
  if (length <= field.max) return std::nullopt;
  return named(field) + " of " + quantity_text(length, Unit::none) + " characters is longer than " +
         quantity_text(field.max, Unit::none);
}

Problem bytes_problem(const FieldInfo& field, const cbor::Value& value) {
  const auto* bytes = value.bytes();
  if (bytes == nullptr) return named(field) + " is not bytes";
  const auto length = static_cast<std::int64_t>(bytes->size());
  if (length >= field.min && length <= field.max) return std::nullopt;
  return named(field) + " is " + std::to_string(length) + " bytes, not " +
         std::to_string(field.max);
}

Problem list_problem(const FieldInfo& field, const cbor::Value& value) {
  const auto* items = value.array();
  if (items == nullptr) return named(field) + " is not a list";
  const auto length = static_cast<std::int64_t>(items->size());
  if (length < field.min || length > field.max)
    return named(field) + ": " + std::to_string(length) + " in the list, outside " +
           quantity_text(field.min, Unit::none) + " to " + quantity_text(field.max, Unit::none);
  for (const cbor::Value& item : *items) {
    if (auto wrong = problem(*field.parts.first, item)) return named(field) + ": " + *wrong;
  }
  return std::nullopt;
}

Problem tuple_problem(const FieldInfo& field, const cbor::Value& value) {
  const auto* items = value.array();
  if (items == nullptr) return named(field) + " is not a list";
  if (items->size() > field.parts.count) return named(field) + " has too many parts";
  for (std::size_t i = 0; i < field.parts.count; ++i) {
    const FieldInfo& part = field.parts.first[i];
    if (i >= items->size()) {
      if (part.required) return named(field) + ": " + named(part) + " is missing";
      continue;
    }
    if (auto wrong = problem(part, (*items)[i])) return named(field) + ": " + *wrong;
  }
  return std::nullopt;
}

Problem map_problem(const FieldInfo& field, const cbor::Value& value) {
  const auto* map = value.map();
  if (map == nullptr) return named(field) + " is not a map";
  for (const FieldInfo& part : field.parts) {
    const cbor::Value* one = map->find(part.key);
    if (one == nullptr) {
      if (part.required) return named(field) + ": " + named(part) + " is missing";
    } else if (auto wrong = problem(part, *one)) {
      return named(field) + ": " + *wrong;
    }
  }
  return std::nullopt;
}

Problem table_problem(const FieldInfo& field, const cbor::Value& value) {
  const auto* map = value.map();
  if (map == nullptr) return named(field) + " is not a map";
  for (const auto& [key, one] : map->pairs()) {
    if (key.number() == nullptr || *key.number() < 0)
      return named(field) + " has a key that is no whole number";
    if (auto wrong = problem(*field.parts.first, one)) return named(field) + ": " + *wrong;
  }
  return std::nullopt;
}

// The form whose outer shape is the value's tells what is wrong inside.
bool same_outside(const FieldInfo& form, const cbor::Value& value) {
  switch (form.shape) {
    case Shape::number:
    case Shape::code:
      return value.number() != nullptr;
    case Shape::id:
    case Shape::bytes:
      return value.bytes() != nullptr;
    case Shape::list:
    case Shape::tuple:
      return value.array() != nullptr;
    case Shape::map:
    case Shape::table:
      return value.map() != nullptr;
    default:
      return false;
  }
}

Problem one_of_problem(const FieldInfo& field, const cbor::Value& value) {
  for (const FieldInfo& form : field.parts) {
    if (same_outside(form, value)) return problem(form, value);
  }
  return named(field) + " is of none of its forms";
}

Problem mark_problem(const FieldInfo& field, const cbor::Value& value) {
  const auto marks = marks_from(cbor::Array{value});
  if (!marks) return named(field) + " is no shape with points";
  const Mark& mark = marks->front();
  if (mark.shape < MarkShape::circle || mark.shape > MarkShape::number)
    return named(field) + " has a shape that is not known";
  if (mark.points.empty() || mark.points.size() > mark_points_max)
    return named(field) + " has no point, or more than 200";
  for (const MarkPoint& point : mark.points) {
    if (point.x < 0 || point.x > 10'000 || point.y < 0 || point.y > 10'000)
      return named(field) + " has a point outside the picture";
  }
  if (!mark.text) return std::nullopt;
  return text_problem(field::text(0, "text of a mark", mark_text_max), *mark.text);
}

Problem problem(const FieldInfo& field, const cbor::Value& value) {
  switch (field.shape) {
    case Shape::number:
      return number_problem(field, value);
    case Shape::code:
      return code_problem(field, value);
    case Shape::truth:
      return value.truth() != nullptr ? Problem() : named(field) + " is neither yes nor no";
    case Shape::text:
      return text_problem(field, value);
    case Shape::id:
      return value.uuid() ? Problem() : named(field) + " is not an identifier";
    case Shape::bytes:
      return bytes_problem(field, value);
    case Shape::list:
      return list_problem(field, value);
    case Shape::tuple:
      return tuple_problem(field, value);
    case Shape::map:
      return map_problem(field, value);
    case Shape::table:
      return table_problem(field, value);
    case Shape::one_of:
      return one_of_problem(field, value);
    case Shape::mark:
      return mark_problem(field, value);
    case Shape::any:
      break;
  }
  return std::nullopt;
}

Error refused(std::string_view about, const std::string& what) {
  const std::string_view end = ". Nothing was saved.";
  std::string sentence = std::string(about) + ": " + what;
  if (!sentence.ends_with(end)) sentence += end;  // a rule may hand on what a field's check said
  if (sentence[0] >= 'a' && sentence[0] <= 'z')
    sentence[0] = static_cast<char>(sentence[0] - 'a' + 'A');
  return fail(Fault::invalid_input, std::move(sentence));
}

int depth(const cbor::Value& value) {
  int inside = 0;
  if (const auto* items = value.array()) {
    for (const cbor::Value& item : *items) inside = std::max(inside, depth(item));
    return inside + 1;
  }
  if (const auto* map = value.map()) {
    for (const auto& pair : map->pairs()) inside = std::max(inside, depth(pair.second));
    return inside + 1;
  }
  return 0;
}

Problem envelope_problem(const Record& record) {
  constexpr std::int64_t limit = field::two_to_53;
  if (record.kind < 1 || record.kind > 999) return "kind is outside 1 to 999";
  if (record.id.is_zero()) return "id is missing";
  if (record.subject.is_zero()) return "subject is missing";
  if (record.l < 0 || record.l >= limit) return "clock is outside its range";
  if (record.c < 0 || record.c > 65'535) return "clock counter is outside its range";
  if (record.w < -limit || record.w > limit) return "wall clock is outside its range";
  if (record.g < 0 || record.g > 65'535) return "clock segment is outside its range";
  for (const auto& pair : record.body.pairs()) {
    if (pair.first.number() == nullptr || *pair.first.number() < 0)
      return "a body key is no whole number";
    if (depth(pair.second) > cbor::depth_max - 2) return "a field is nested too deep";
  }
  if (encode(record).size() > record_bytes_max) return "it is longer than 65,536 bytes";
  return std::nullopt;
}

Problem body_problem(const KindInfo& kind, const Record& record) {
  for (const FieldInfo& field : kind.fields) {
    if (field.required && !record.body.has(field.key)) return named(field) + " is missing";
  }
  for (const auto& [key, value] : record.body.pairs()) {
    const FieldInfo* field = field_info(kind, *key.number());
    if (field == nullptr) continue;
    if (auto wrong = problem(*field, value)) return wrong;
  }
  if (kind.rule == nullptr) return std::nullopt;
  std::string wrong = kind.rule(record);
  return wrong.empty() ? Problem() : Problem(std::move(wrong));
}

}  // namespace

Result<> check_field(const FieldInfo& field, const cbor::Value& value, std::string_view about) {
  if (auto wrong = problem(field, value)) return refused(about, *wrong);
  return Done{};
}

Result<> check_entity_field(int type, std::int64_t field, const cbor::Value& value) {
  const EntityInfo* entity = entity_info(type);
  const FieldInfo* info = entity != nullptr ? entity->fields.find(field) : nullptr;
  if (info == nullptr) return Done{};
  return check_field(*info, value, entity->name);
}

Result<> check_correction(const Record& correction, int target_kind) {
  const KindInfo* kind = kind_info(target_kind);
  const cbor::Value* values = correction.body.find(1);
  if (kind == nullptr || values == nullptr || values->map() == nullptr) return Done{};
  for (const auto& [key, value] : values->map()->pairs()) {
    const FieldInfo* field = key.number() != nullptr ? field_info(*kind, *key.number()) : nullptr;
    if (field == nullptr) continue;
    if (auto wrong = problem(*field, value)) return refused(kind->name, *wrong);
  }
  return Done{};
}

Result<> check_limits(const Record& record) {
  const KindInfo* kind = kind_info(record.kind);
  const std::string_view about = kind != nullptr ? kind->name : std::string_view("record");
  if (auto wrong = envelope_problem(record)) return refused(about, *wrong);
  if (kind == nullptr) return Done{};
  if (auto wrong = body_problem(*kind, record)) return refused(about, *wrong);
  return Done{};
}

std::vector<std::string> questions(const Record& record) {
  std::vector<std::string> asked;
  const KindInfo* kind = kind_info(record.kind);
  if (kind == nullptr || kind->ask == nullptr || body_problem(*kind, record)) return asked;
  const cbor::Value* confirmed = record.body.find(key_confirmed);
  if (confirmed != nullptr && *confirmed == cbor::Value(true)) return asked;
  kind->ask(record, asked);
  return asked;
}

}  // namespace kneerail
