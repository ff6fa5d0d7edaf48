#include "core/fold/row_layout.h"

#include <algorithm>

namespace kneerail::fold {

Cell cell_of(const cbor::Value* value, Type type) {
  if (value == nullptr) return {};
  switch (type) {
    case Type::number:
      if (value->number() != nullptr) return *value->number();
      return {};
    case Type::id:
      if (const auto id = value->uuid()) return *id;
      return {};
    case Type::text:
      if (value->text() != nullptr) return *value->text();
      return {};
    case Type::bytes:
      return value->bytes() != nullptr ? *value->bytes() : cbor::encode(*value);
  }
  return {};
}

Cell cell(const std::optional<Uuid>& id) {
  return id ? Cell(*id) : Cell();
}
Cell cell(const std::optional<std::int64_t>& number) {
  return number ? Cell(*number) : Cell();
}

Cell sorted_ids_cell(std::vector<Uuid> ids) {
  std::sort(ids.begin(), ids.end());
  ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
  return cbor::encode(cbor::Value(cbor::Array(ids.begin(), ids.end())));
}

std::vector<Uuid> ids_of(const Cell& list) {
  const auto* bytes = std::get_if<cbor::Bytes>(&list);
  if (bytes == nullptr) return {};
  const auto value = cbor::decode(*bytes);
  return value ? ids_of(*value) : std::vector<Uuid>{};
}

std::int64_t number_of(const Cell& cell, std::int64_t otherwise) {
  const auto* number = std::get_if<std::int64_t>(&cell);
  return number == nullptr ? otherwise : *number;
}

std::optional<std::int64_t> number_at(const Row& row, int column) {
  const auto* number = std::get_if<std::int64_t>(&row[static_cast<std::size_t>(column)]);
  return number == nullptr ? std::nullopt : std::optional(*number);
}

std::optional<Uuid> id_at(const Row& row, int column) {
  const auto* id = std::get_if<Uuid>(&row[static_cast<std::size_t>(column)]);
  return id == nullptr ? std::nullopt : std::optional(*id);
}

namespace {

Cell& in(Row& row, int column) {
  return row[static_cast<std::size_t>(column)];
}
const Cell& in(const Row& row, int column) {
  return row[static_cast<std::size_t>(column)];
}
Uuid id_of(const Cell& cell) {
  return std::get<Uuid>(cell);
}

cbor::Map map_of(const Cell& bytes) {
  const auto* held = std::get_if<cbor::Bytes>(&bytes);
  if (held == nullptr) return {};
  const auto value = cbor::decode(*held);
  return value && value->map() != nullptr ? *value->map() : cbor::Map{};
}

Cell rest_cell(const cbor::Map& rest) {
  return rest.empty() ? Cell() : Cell(cbor::encode(cbor::Value(rest)));
}

const Field* field_of(std::span<const Field> fields, const cbor::Value& key) {
  if (key.number() == nullptr) return nullptr;
  for (const Field& field : fields) {
    if (field.key == *key.number()) return &field;
  }
  return nullptr;
}

/// Puts each field in its column; returns those that have none or do not fit theirs.
cbor::Map fill(Row& row, const cbor::Map& body, std::span<const Field> fields,
               const std::vector<Column>& columns) {
  cbor::Map rest;
  for (const auto& [key, value] : body.pairs()) {
    Cell made;
    const Field* field = field_of(fields, key);
    if (field != nullptr && field->truth) {
      if (value.truth() != nullptr) made = std::int64_t{*value.truth() ? 1 : 0};
    } else if (field != nullptr) {
      made = cell_of(&value, columns[static_cast<std::size_t>(field->column)].type);
    }
    if (std::holds_alternative<std::monostate>(made)) {
      rest.set(key, value);
    } else {
      in(row, field->column) = std::move(made);
    }
  }
  return rest;
}

void zero_the_missing(Row& row, const std::vector<Column>& columns) {
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const bool absent = std::holds_alternative<std::monostate>(row[i]);
    if (absent && !columns[i].optional && columns[i].type == Type::number) row[i] = std::int64_t{0};
  }
}

}  // namespace

Row plain_row(const Fact& fact, const Layout& layout) {
  const std::vector<Column>& columns = tables()[static_cast<std::size_t>(layout.table)].columns;
  Row row(columns.size());
  const Record& record = fact.record();
  in(row, at(plain_start, "record")) = record.id;
  in(row, at(plain_start, "kind")) = std::int64_t{record.kind};
  in(row, at(plain_start, "feed")) = fact.placed.feed;
  in(row, at(plain_start, "subject")) = record.subject;
  in(row, at(plain_start, "who")) = record.who;
  in(row, at(plain_start, "dev")) = fact.placed.device;
  in(row, at(plain_start, "t")) = fact.time.t;
  in(row, at(plain_start, "t_quality")) = std::int64_t{fact.time.quality};
  in(row, at(plain_start, "held")) = std::int64_t{fact.held() ? 1 : 0};
  in(row, at(plain_start, "voided_by")) = cell(fact.change.voided_by);
  in(row, at(plain_start, "corrected_by")) = cell(fact.change.corrected_by);
  row.back() = rest_cell(fill(row, fact.shown, layout.fields, columns));
  zero_the_missing(row, columns);
  return row;
}

namespace {

void put_stamp(Row& row, int hseq, const std::optional<Stamp>& stamp) {
  if (!stamp) return;
  in(row, hseq) = stamp->hseq;
  in(row, hseq + 1) = stamp->recv;
  in(row, hseq + 2) = stamp->flags;
}

std::optional<Stamp> stamp_in(const Row& row, int hseq) {
  const auto number = number_at(row, hseq);
  if (!number) return std::nullopt;
  return Stamp{*number, number_of(in(row, hseq + 1)), number_of(in(row, hseq + 2))};
}

}  // namespace

Row fact_row(const PlacedRecord& placed) {
  const Record& record = placed.record;
  Row row{record.id,
          std::int64_t{record.kind},
          placed.feed,
          placed.device,
          placed.seq,
          record.l,
          std::int64_t{record.c},
          record.w,
          std::int64_t{record.g},
          record.who,
          record.subject,
          cell(about_of(placed)),
          cell(visit_of(record)),
          Cell(),
          Cell(),
          std::int64_t{0},
          cbor::encode(cbor::Value(record.body))};
  put_stamp(row, at(fact_columns, "hseq"), placed.stamp);
  return row;
}

PlacedRecord placed_of_fact(const Row& row) {
  PlacedRecord placed;
  Record& record = placed.record;
  record.id = id_of(in(row, at(fact_columns, "record")));
  record.kind = static_cast<int>(number_of(in(row, at(fact_columns, "kind"))));
  placed.feed = id_of(in(row, at(fact_columns, "feed")));
  placed.device = id_of(in(row, at(fact_columns, "dev")));
  placed.seq = number_of(in(row, at(fact_columns, "seq")));
  record.l = number_of(in(row, at(fact_columns, "l")));
  record.c = static_cast<int>(number_of(in(row, at(fact_columns, "c"))));
  record.w = number_of(in(row, at(fact_columns, "w")));
  record.g = static_cast<int>(number_of(in(row, at(fact_columns, "g"))));
  record.who = id_of(in(row, at(fact_columns, "who")));
  record.subject = id_of(in(row, at(fact_columns, "subject")));
  record.body = map_of(in(row, at(fact_columns, "body")));
  placed.stamp = stamp_in(row, at(fact_columns, "hseq"));
  return placed;
}

cbor::Map rest_of(const Row& entity) {
  const auto* bytes =
      std::get_if<cbor::Bytes>(&entity[static_cast<std::size_t>(at(entity_columns, "rest"))]);
  if (bytes == nullptr) return {};
  const auto value = cbor::decode(*bytes);
  return value && value->map() != nullptr ? *value->map() : cbor::Map{};
}

Row clock_row(const Uuid& dev, const Uuid& feed, std::int64_t g, const ClockOffset& offset) {
  return Row{dev,
             feed,
             g,
             offset.offset_ms,
             std::int64_t{offset.quality},
             cell(offset.uncertainty_ms),
             cell(offset.lower_ms),
             cell(offset.upper_ms)};
}

ClockOffset clock_of(const Row& row) {
  ClockOffset offset;
  offset.offset_ms = number_of(in(row, at(clock_segment_columns, "offset_ms")));
  offset.quality = static_cast<int>(number_of(in(row, at(clock_segment_columns, "quality"))));
  offset.uncertainty_ms = number_at(row, at(clock_segment_columns, "uncertainty_ms"));
  offset.lower_ms = number_at(row, at(clock_segment_columns, "lower_ms"));
  offset.upper_ms = number_at(row, at(clock_segment_columns, "upper_ms"));
  return offset;
}

Row change_row(const Uuid& record, const Change& change) {
  return Row{record, cell(change.voided_by), cell(change.corrected_by), rest_cell(change.corrected),
             cell(change.released_by)};
}

Change change_of(const Row& row) {
  Change change;
  change.voided_by = id_at(row, at(change_columns, "voided_by"));
  change.corrected_by = id_at(row, at(change_columns, "corrected_by"));
  change.corrected = map_of(in(row, at(change_columns, "corrected")));
  change.released_by = id_at(row, at(change_columns, "released_by"));
  return change;
}

}  // namespace kneerail::fold
