#include <fstream>
#include <system_error>
#include <utility>

#include "core/fold/columns.h"
#include "core/fold/row_layout.h"
#include "schema/exchange/csv.h"
#include "schema/exchange/import_ids.h"
#include "schema/exchange/register_columns.h"
#include "schema/exchange/register_csv.h"
#include "schema/exchange/register_names.h"

namespace kneerail::exchange {
namespace {

/// Every column of the entity table, in its order. Rows by the name a file calls them, else in the
/// order they were made in: identifiers of imported things are in none.
std::string entity_query() {
  std::string query = "SELECT ";
  bool first = true;
  for (const auto& column : fold::entity_columns) {
    query.append(first ? "" : ", ").append(column.name);
    first = false;
  }
  return query.append(
      " FROM entity WHERE type = ? AND held = 0 AND voided_by IS NULL "
      "ORDER BY import_reference IS NULL, import_reference, parent, ord, id");
}

std::optional<cbor::Value> column_value(const Statement& row, int column) {
  if (row.is_null(column)) return std::nullopt;
  switch (fold::entity_columns[column].type) {
    case fold::Type::number:
      return cbor::Value(row.number(column));
    case fold::Type::id:
      return cbor::Value(row.uuid(column));
    case fold::Type::text:
      return cbor::Value(row.text(column));
    case fold::Type::bytes:
      break;
  }
  return std::nullopt;
}

/// All fields of a thing, those with a column of their own and the rest.
Result<cbor::Map> fields_of(const Statement& row, const EntityInfo& type) {
  constexpr int rest = fold::at(fold::entity_columns, "rest");
  cbor::Map fields;
  if (!row.is_null(rest)) {
    auto decoded = cbor::decode(row.bytes(rest));
    if (!decoded) return fail(decoded.error());
    if (decoded->map() != nullptr) fields = *decoded->map();
  }
  for (const auto& field : type.fields) {
    const int column = fold::entity_column(type.type, field.key);
    if (column < 0) continue;
    if (auto value = column_value(row, column)) fields.set(field.key, std::move(*value));
  }
  return fields;
}

bool is_free_text(const FieldInfo& field) {
  return field.shape == Shape::text || field.shape == Shape::id || field.shape == Shape::list;
}

class RegisterExporter {
 public:
  RegisterExporter(Database& tables, const std::filesystem::path& folder, RegisterNames names)
      : tables_(tables), folder_(folder), names_(std::move(names)) {}

  Result<std::vector<FileCount>> run() {
    for (const EntityInfo* type : all_entities())
      if (auto ok = write(*type); !ok) return fail(ok.error());
    return std::move(counts_);
  }

 private:
  Result<> write(const EntityInfo& type);
  Result<> write_row(csv::Writer& out, const Statement& row, const EntityInfo& type,
                     const std::vector<RegisterColumn>& columns) const;

  Database& tables_;
  const std::filesystem::path& folder_;
  RegisterNames names_;
  std::vector<FileCount> counts_;
};

Result<> RegisterExporter::write_row(csv::Writer& out, const Statement& row, const EntityInfo& type,
                                     const std::vector<RegisterColumn>& columns) const {
  constexpr int parent = fold::at(fold::entity_columns, "parent");
  auto fields = fields_of(row, type);
  if (!fields) return fail(fields.error());
  const auto reference = [this](const Uuid& id) { return names_.reference(id); };
  out.free_text(reference(row.uuid(0)));
  out.free_text(row.is_null(parent) ? std::string() : reference(row.uuid(parent)));
  for (const auto& column : columns) {
    const auto* value = value_at(*fields, column);
    const std::string cell =
        value == nullptr ? std::string() : cell_text(*value, column.leaf, reference);
    is_free_text(column.leaf) ? out.free_text(cell) : out.field(cell);
  }
  out.end_row();
  return Done{};
}

Result<> RegisterExporter::write(const EntityInfo& type) {
  const auto columns = register_columns(type);
  auto rows = tables_.prepare(entity_query());
  if (!rows) return fail(rows.error());
  rows->bind(1, std::int64_t{type.type});
  FileCount count;
  count.file = register_file(type);
  const auto path = folder_ / count.file;
  std::ofstream file;
  csv::Writer out(file);
  while (true) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) break;
    if (count.rows_read++ == 0) {
      file.open(path, std::ios::binary | std::ios::trunc);
      out.field("id").field("parent");
      for (const auto& column : columns) out.field(column.name);
      out.end_row();
    }
    if (auto ok = write_row(out, *rows, type, columns); !ok) return ok;
  }
  if (count.rows_read == 0) return Done{};
  file.flush();
  if (!file) return fail(Fault::io, path.string() + " could not be written. Is the disk full?");
  counts_.push_back(std::move(count));
  return Done{};
}

}  // namespace

Result<std::vector<FileCount>> export_register(Database& tables,
                                               const std::filesystem::path& folder) {
  std::error_code failed;
  std::filesystem::create_directories(folder, failed);
  if (failed) return fail(Fault::io, folder.string() + " could not be made: " + failed.message());
  const auto snapshot = Snapshot::begin(tables);
  if (!snapshot) return fail(snapshot.error(), "The register could not be read: ");
  auto names = RegisterNames::load(tables);
  if (!names) return fail(names.error(), "The register could not be read: ");
  return RegisterExporter(tables, folder, std::move(*names)).run();
}

}  // namespace kneerail::exchange
