#include <algorithm>
#include <numeric>

#include "core/fold/row_layout.h"

// The rows of table reading, in both directions: a row keeps the whole record, so that a correction
// that comes later can be applied to what was first written.

namespace kneerail::fold {

namespace {

constexpr int visit_at = at(reading_columns, "visit");
constexpr int instrument_at = at(reading_columns, "instrument");
constexpr int v1_at = at(reading_columns, "v1");
constexpr int v2_at = at(reading_columns, "v2");
constexpr int replicates_at = at(reading_columns, "replicates");
constexpr int spot_at = at(reading_columns, "spot");
constexpr int screw_at = at(reading_columns, "screw");
constexpr int what_at = at(reading_columns, "what");

constexpr Field common_fields[] = {
    {1, visit_at},
    {98, at(reading_columns, "life")},
    {97, at(reading_columns, "carried"), true},
    {94, at(reading_columns, "seen_at")},
    {93, at(reading_columns, "copied_from")},
};
constexpr Field grade_fields[] = {
    {2, v1_at}, {3, v2_at}, {4, spot_at}, {5, at(reading_columns, "how")}};
constexpr Field coating_fields[] = {{2, instrument_at},
                                    {3, replicates_at},
                                    {4, spot_at},
                                    {7, at(reading_columns, "layer")},
                                    {8, at(reading_columns, "under_probe")}};
constexpr Field torque_fields[] = {{2, instrument_at},
                                   {3, screw_at},
                                   {4, v1_at},
                                   {5, at(reading_columns, "censoring")},
                                   {6, at(reading_columns, "method")},
                                   {7, v2_at},
                                   {10, at(reading_columns, "wrench_set_tenth_nm")}};
constexpr Field wall_fields[] = {{2, instrument_at}, {3, replicates_at}, {4, spot_at}};
constexpr Field hand_load_fields[] = {{2, what_at}, {3, v1_at}, {4, v2_at}, {7, instrument_at}};
constexpr Field geometry_fields[] = {{2, what_at}, {3, v1_at}, {4, v2_at}, {6, instrument_at}};
constexpr Field gate_fields[] = {{2, what_at}, {3, v1_at}, {4, v2_at}};

std::span<const Field> own_fields(int kind) {
  switch (kind) {
    case kind::grade:
      return grade_fields;
    case kind::coating:
      return coating_fields;
    case kind::torque:
      return torque_fields;
    case kind::wall:
      return wall_fields;
    case kind::hand_load:
      return hand_load_fields;
    case kind::geometry:
      return geometry_fields;
    case kind::gate_check:
      return gate_fields;
    default:
      return {};
  }
}

const Field* field_of(int kind, std::int64_t key) {
  for (const Field& field : own_fields(kind)) {
    if (field.key == key) return &field;
  }
  for (const Field& field : common_fields) {
    if (field.key == key) return &field;
  }
  return nullptr;
}

Cell& in(Row& row, int place) {
  return row[static_cast<std::size_t>(place)];
}
const Cell& in(const Row& row, int place) {
  return row[static_cast<std::size_t>(place)];
}

/// The cell a field's value makes; absent where it does not fit, so that it stays in `rest`.
Cell fitted(const Field& field, const cbor::Value& value) {
  if (field.truth) return value.truth() == nullptr ? Cell() : std::int64_t{*value.truth() ? 1 : 0};
  if (field.column != replicates_at) {
    return cell_of(&value, reading_columns[static_cast<std::size_t>(field.column)].type);
  }
  return value.array() == nullptr ? Cell() : Cell(cbor::encode(value));
}

/// Sum and count, never a rounded mean.
void put_sum(Row& row, const cbor::Map& body) {
  const std::vector<std::int64_t> numbers = numbers_in(body, 3);
  if (numbers.empty()) return;
  in(row, v1_at) = std::accumulate(numbers.begin(), numbers.end(), std::int64_t{0});
  in(row, v2_at) = static_cast<std::int64_t>(numbers.size());
}

void fill_body(Row& row, const Fact& reading) {
  const int kind = reading.kind();
  cbor::Map rest;
  for (const auto& [key, value] : reading.shown.pairs()) {
    const Field* field = key.number() == nullptr ? nullptr : field_of(kind, *key.number());
    Cell made = field == nullptr ? Cell() : fitted(*field, value);
    if (std::holds_alternative<std::monostate>(made)) {
      rest.set(key, value);
    } else {
      in(row, field->column) = std::move(made);
    }
  }
  if (kind == kind::coating || kind == kind::wall) put_sum(row, reading.shown);
  if (!rest.empty()) in(row, at(reading_columns, "rest")) = cbor::encode(cbor::Value(rest));
  if (reading.change.corrected_by) {
    in(row, at(reading_columns, "original")) = cbor::encode(cbor::Value(reading.record().body));
  }
}

std::optional<cbor::Map> map_at(const Row& row, int place) {
  const auto* bytes = std::get_if<cbor::Bytes>(&in(row, place));
  if (bytes == nullptr) return std::nullopt;
  const auto value = cbor::decode(*bytes);
  return value && value->map() != nullptr ? std::optional(*value->map()) : std::nullopt;
}

void take_field(cbor::Map& body, const Field& field, const Cell& cell) {
  if (const auto* number = std::get_if<std::int64_t>(&cell)) {
    if (!field.truth) {
      body.set(field.key, *number);
    } else if (*number != 0) {
      body.set(field.key, true);
    }
  } else if (const auto* id = std::get_if<Uuid>(&cell)) {
    body.set(field.key, *id);
  } else if (const auto* bytes = std::get_if<cbor::Bytes>(&cell)) {
    if (auto list = cbor::decode(*bytes)) body.set(field.key, *std::move(list));
  }
}

cbor::Map original_body(const Row& row, int kind) {
  if (const auto original = map_at(row, at(reading_columns, "original"))) return *original;
  cbor::Map body = map_at(row, at(reading_columns, "rest")).value_or(cbor::Map{});
  for (const Field& field : own_fields(kind)) take_field(body, field, in(row, field.column));
  for (const Field& field : common_fields) take_field(body, field, in(row, field.column));
  return body;
}

}  // namespace

Row reading_row(const Fact& reading) {
  const Record& record = reading.record();
  const PlacedRecord& placed = reading.placed;
  Row row(std::size(reading_columns));
  in(row, at(reading_columns, "record")) = record.id;
  in(row, at(reading_columns, "kind")) = std::int64_t{record.kind};
  in(row, at(reading_columns, "subject")) = record.subject;
  in(row, at(reading_columns, "who")) = record.who;
  in(row, at(reading_columns, "feed")) = placed.feed;
  in(row, at(reading_columns, "dev")) = placed.device;
  in(row, at(reading_columns, "seq")) = placed.seq;
  in(row, at(reading_columns, "t")) = reading.time.t;
  in(row, at(reading_columns, "t_quality")) = std::int64_t{reading.time.quality};
  in(row, at(reading_columns, "carried")) = std::int64_t{0};
  in(row, at(reading_columns, "held")) = std::int64_t{reading.held() ? 1 : 0};
  in(row, at(reading_columns, "voided_by")) = cell(reading.change.voided_by);
  in(row, at(reading_columns, "corrected_by")) = cell(reading.change.corrected_by);
  in(row, at(reading_columns, "l")) = record.l;
  in(row, at(reading_columns, "c")) = std::int64_t{record.c};
  in(row, at(reading_columns, "w")) = record.w;
  in(row, at(reading_columns, "g")) = std::int64_t{record.g};
  in(row, at(reading_columns, "flags")) = placed.stamp ? placed.stamp->flags : std::int64_t{0};
  if (placed.stamp) {
    in(row, at(reading_columns, "hseq")) = placed.stamp->hseq;
    in(row, at(reading_columns, "recv")) = placed.stamp->recv;
  }
  fill_body(row, reading);
  return row;
}

PlacedRecord placed_of_reading(const Row& row) {
  const auto number = [&row](int place) { return number_of(in(row, place)); };
  PlacedRecord placed;
  Record& record = placed.record;
  record.id = std::get<Uuid>(in(row, at(reading_columns, "record")));
  record.kind = static_cast<int>(number(at(reading_columns, "kind")));
  record.subject = std::get<Uuid>(in(row, at(reading_columns, "subject")));
  record.who = std::get<Uuid>(in(row, at(reading_columns, "who")));
  placed.feed = std::get<Uuid>(in(row, at(reading_columns, "feed")));
  placed.device = std::get<Uuid>(in(row, at(reading_columns, "dev")));
  placed.seq = number(at(reading_columns, "seq"));
  record.l = number(at(reading_columns, "l"));
  record.c = static_cast<int>(number(at(reading_columns, "c")));
  record.w = number(at(reading_columns, "w"));
  record.g = static_cast<int>(number(at(reading_columns, "g")));
  if (const auto hseq = number_at(row, at(reading_columns, "hseq"))) {
    placed.stamp =
        Stamp{*hseq, number(at(reading_columns, "recv")), number(at(reading_columns, "flags"))};
  }
  record.body = original_body(row, record.kind);
  return placed;
}

std::int64_t place_of_reading(const Row& row) {
  switch (number_of(in(row, at(reading_columns, "kind")))) {
    case kind::coating:
    case kind::wall:
      return number_of(in(row, spot_at));
    case kind::torque:
      return number_of(in(row, screw_at));
    case kind::geometry:
      return number_of(in(row, what_at));
    default:
      return 0;
  }
}

MergeKey key_of_reading(const Row& row) {
  MergeKey key;
  key.l = number_of(in(row, at(reading_columns, "l")));
  key.eff = std::min(key.l, number_at(row, at(reading_columns, "recv")).value_or(key.l));
  key.c = number_of(in(row, at(reading_columns, "c")));
  key.dev = std::get<Uuid>(in(row, at(reading_columns, "dev")));
  key.record = std::get<Uuid>(in(row, at(reading_columns, "record")));
  return key;
}

}  // namespace kneerail::fold
