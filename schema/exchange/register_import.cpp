#include <algorithm>
#include <array>
#include <memory>
#include <unordered_map>
#include <utility>

#include "core/base/text.h"
#include "core/records/registers.h"
#include "schema/exchange/import_ids.h"
#include "schema/exchange/portfolio_entries.h"
#include "schema/exchange/register_columns.h"
#include "schema/exchange/register_csv.h"
#include "schema/exchange/register_names.h"

namespace kneerail::exchange {
namespace {

constexpr std::size_t entries_together = 4'000;
constexpr int id_column = 0;
constexpr int parent_column = 1;

/// What stands in what comes after it.
constexpr EntityType order_of_files[] = {
    EntityType::organisation, EntityType::depot,  EntityType::component_type,
    EntityType::rule_set,     EntityType::person, EntityType::instrument,
    EntityType::site,         EntityType::zone,   EntityType::run,
    EntityType::post,         EntityType::bay,    EntityType::component};

struct RowEntry {
  std::size_t file;  ///< place in the report
  std::int64_t line;
  Entry entry;
};

class RegisterImporter {
 public:
  RegisterImporter(Register& into, const ImportOptions& options, RegisterNames names)
      : register_(into), options_(options), names_(std::move(names)) {}

  Result<ImportReport> run();

 private:
  using Each = std::function<void(Sheet&)>;
  Result<> each_row(const EntityInfo& type, const std::vector<RegisterColumn>& columns,
                    BadRows& bad, FileCount* count, const Each& each);
  Result<> name_things(const EntityInfo& type);
  Result<> read_things(const EntityInfo& type);
  void take_row(Sheet& sheet, const EntityInfo& type, const std::vector<RegisterColumn>& columns);
  Uuid row_id(Sheet& sheet, const EntityInfo& type, const std::vector<RegisterColumn>& columns);
  std::optional<Uuid> parent_of(Sheet& sheet, const EntityInfo& type);
  std::optional<cbor::Map> fields_of(Sheet& sheet, const std::vector<RegisterColumn>& columns);
  void check_tube(Sheet& sheet, const EntityInfo& type, const cbor::Map& fields);
  Result<> write();
  Result<> flush(std::size_t from, std::size_t to);

  Register& register_;
  const ImportOptions& options_;
  RegisterNames names_;
  Uuid organisation_;
  std::vector<RowEntry> entries_;
  std::unordered_map<Uuid, std::int64_t> lines_;  ///< of things named in the files
  ImportReport report_;
};

std::vector<SheetColumn> sheet_columns(const std::vector<RegisterColumn>& columns) {
  std::vector<SheetColumn> all{{"id"}, {"parent", false}};
  for (const auto& column : columns) all.push_back({column.name, false});
  return all;
}

Result<> RegisterImporter::each_row(const EntityInfo& type,
                                    const std::vector<RegisterColumn>& columns, BadRows& bad,
                                    FileCount* count, const Each& each) {
  const auto path = options_.folder / register_file(type);
  std::error_code unseen;
  if (!std::filesystem::exists(path, unseen)) return Done{};
  const auto wanted = sheet_columns(columns);
  auto opened = Sheet::open(path, wanted, bad);
  if (!opened) return fail(opened.error());
  Sheet& sheet = **opened;
  while (true) {
    auto more = sheet.next();
    if (!more) return fail(more.error());
    if (!*more) break;
    each(sheet);
  }
  if (count == nullptr) return Done{};
  count->rows_read = sheet.rows();
  count->left_out += sheet.unreadable();
  for (const auto& name : sheet.unknown_columns())
    report_.notes.push_back(count->file + ": the column " + name +
                            " is not known and was kept out.");
  return Done{};
}

/// An instrument's name counts with its kind: a gauge and a wrench may bear the same.
Uuid RegisterImporter::row_id(Sheet& sheet, const EntityInfo& type,
                              const std::vector<RegisterColumn>& columns) {
  std::optional<InstrumentKind> kind;
  if (type.type == static_cast<int>(EntityType::instrument))
    for (std::size_t i = 0; i < columns.size(); ++i)
      if (columns[i].keys.front() == instrument_field::kind)
        if (const auto code = columns[i].leaf.words.code(sheet.text(static_cast<int>(i) + 2)))
          kind = static_cast<InstrumentKind>(*code);
  return id_of_thing(type.name, kind, csv::unguarded(sheet.text(id_column)));
}

/// First pass: every thing has its name before any is pointed at.
Result<> RegisterImporter::name_things(const EntityInfo& type) {
  const auto columns = register_columns(type);
  BadRows unheard;  // the second pass tells
  return each_row(type, columns, unheard, nullptr, [&](Sheet& sheet) {
    const std::string reference = csv::unguarded(sheet.text(id_column));
    if (reference.empty()) return;
    const Uuid id = row_id(sheet, type, columns);
    if (type.type == static_cast<int>(EntityType::organisation) && organisation_.is_zero())
      organisation_ = id;
    if (names_.find(id) == nullptr)
      names_.add(id, {type.type, {}, uuid_from_text(reference) ? std::string() : reference});
  });
}

/// The thing it stands in; the sentence is at the sheet when there is none.
std::optional<Uuid> RegisterImporter::parent_of(Sheet& sheet, const EntityInfo& type) {
  if (type.parent.empty()) return Uuid{};
  if (type.parent == "organisation") return organisation_;
  if (!sheet.present(parent_column)) return std::nullopt;
  const std::string reference = csv::unguarded(sheet.text(parent_column));
  for (const EntityInfo* other : all_entities()) {
    if (type.parent.find(other->name) == std::string_view::npos) continue;
    const auto found = names_.thing(other->type, reference);
    const auto* named = found ? names_.find(*found) : nullptr;
    if (named != nullptr && named->type == other->type) return found;
  }
  sheet.refuse(parent_column,
               "is no " + std::string(type.parent) + " of these files or of the register.");
  return std::nullopt;
}

std::optional<cbor::Map> RegisterImporter::fields_of(Sheet& sheet,
                                                     const std::vector<RegisterColumn>& columns) {
  const auto thing = [this](int type, std::string_view reference) {
    return names_.thing(type, reference);
  };
  cbor::Map fields;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const int place = static_cast<int>(i) + 2;
    if (sheet.text(place).empty()) continue;
    auto value = cell_value(sheet, place, columns[i], thing);
    if (value && !put_value(fields, columns[i], std::move(*value)))
      sheet.refuse(place, "stands without the part before it.");
  }
  return sheet.row_is_good() ? std::optional(std::move(fields)) : std::nullopt;
}

/// A wall is less than half of its tube.
void RegisterImporter::check_tube(Sheet& sheet, const EntityInfo& type, const cbor::Map& fields) {
  if (type.type != static_cast<int>(EntityType::component_type)) return;
  const auto* diameter = fields.find(component_type_field::tube_diameter);
  const auto* wall = fields.find(component_type_field::tube_wall);
  if (diameter == nullptr || wall == nullptr || *wall->number() * 2 < *diameter->number()) return;
  const std::string tenth = scaled_to_text(*wall->number(), 2);
  sheet.refuse_row("a wall of " + scaled_to_text(*wall->number(), 1) +
                   " mm does not fit in a tube of " + scaled_to_text(*diameter->number(), 1) +
                   " mm. Was " + tenth + " meant?");
}

void RegisterImporter::take_row(Sheet& sheet, const EntityInfo& type,
                                const std::vector<RegisterColumn>& columns) {
  FileCount& count = report_.files.back();
  const std::string reference = sheet.identifier(id_column);
  const Uuid id = row_id(sheet, type, columns);
  const auto parent = parent_of(sheet, type);
  auto fields = fields_of(sheet, columns);
  if (fields) check_tube(sheet, type, *fields);
  if (const auto [first, is_new] = lines_.try_emplace(id, sheet.line());
      !is_new && !reference.empty())
    sheet.refuse(id_column, "stands on line " + std::to_string(first->second) + " already.");
  if (!sheet.row_is_good() || !parent || !fields) {
    ++count.left_out;
    return;
  }
  const auto* stands_in = names_.find(*parent);
  const bool in_site = type.feed == FeedOf::site && stands_in != nullptr;
  const bool is_site = type.type == static_cast<int>(EntityType::site);
  Entry entry;
  entry.feed = in_site ? stands_in->feed : organisation_;
  entry.kind = Create::kind;
  entry.id = id;
  Create made;
  made.type = static_cast<EntityType>(type.type);
  if (!parent->is_zero()) made.parent = *parent;
  made.fields = std::move(*fields);
  if (!uuid_from_text(reference)) made.import_reference = reference;
  made.made_by = MadeBy::import;
  entry.body = to_body(made);
  Record record;
  record.kind = entry.kind;
  record.id = record.subject = id;
  record.body = entry.body;
  if (auto ok = check_limits(record); !ok) {
    sheet.refuse_row(ok.error().message);
    ++count.left_out;
    return;
  }
  names_.add(id, {type.type, is_site ? id : entry.feed,
                  uuid_from_text(reference) ? std::string() : reference});
  entries_.push_back({report_.files.size() - 1, sheet.line(), std::move(entry)});
}

Result<> RegisterImporter::read_things(const EntityInfo& type) {
  FileCount count;
  count.file = register_file(type);
  report_.files.push_back(count);
  const auto columns = register_columns(type);
  return each_row(type, columns, report_.bad, &report_.files.back(),
                  [&](Sheet& sheet) { take_row(sheet, type, columns); });
}

Result<> RegisterImporter::flush(std::size_t from, std::size_t to) {
  auto there = register_.tables().prepare("SELECT 1 FROM journal WHERE id = ?");
  if (!there) return fail(there.error());
  std::vector<Entry> fresh;
  for (std::size_t i = from; i < to; ++i) {
    there->reset();
    there->bind(1, *entries_[i].entry.id);
    auto found = there->step();
    if (!found) return fail(found.error());
    FileCount& count = report_.files[entries_[i].file];
    ++(*found ? count.already_there : count.records_made);
    if (!*found) fresh.push_back(entries_[i].entry);
  }
  there->reset();
  if (!fresh.empty())
    if (auto saved = register_.save(fresh); !saved)
      return fail(saved.error(),
                  "Import stopped; what was written before these rows stays and is whole. ");
  return Done{};
}

Result<> RegisterImporter::write() {
  for (std::size_t from = 0; from < entries_.size(); from += entries_together) {
    const std::size_t to = std::min(from + entries_together, entries_.size());
    if (auto ok = flush(from, to); !ok) return ok;
    if (options_.progress &&
        !options_.progress(static_cast<std::int64_t>(to),
                           static_cast<std::int64_t>(entries_.size()), "writing"))
      return fail(Fault::cancelled, "Stopped after " + std::to_string(to) + " of " +
                                        std::to_string(entries_.size()) +
                                        " things. What was written stays and is whole; import "
                                        "again to complete it.");
  }
  return Done{};
}

Result<ImportReport> RegisterImporter::run() {
  organisation_ = register_.organisation();
  const bool has_none = organisation_.is_zero();
  for (const auto type : order_of_files)
    if (auto ok = name_things(*entity_info(static_cast<int>(type))); !ok) return fail(ok.error());
  const Uuid own = derived_id("organisation", {options_.organisation_name});
  if (organisation_.is_zero()) organisation_ = own;
  for (const auto type : order_of_files)
    if (auto ok = read_things(*entity_info(static_cast<int>(type))); !ok) return fail(ok.error());
  // A register is of one organisation: that of a file is taken only where there is none.
  if (!has_none)
    std::erase_if(entries_, [this](const RowEntry& row) {
      return row.file == 0 && *row.entry.id != organisation_;
    });
  const bool in_a_file = std::any_of(entries_.begin(), entries_.end(),
                                     [](const RowEntry& row) { return row.file == 0; });
  // One that an import made is offered again, and counted as already there.
  if (organisation_ == own && !in_a_file) {
    Entry made = PortfolioEntries::organisation(own, options_.organisation_name);
    entries_.insert(entries_.begin(), {0, 0, std::move(made)});
  }
  report_.bad.sort();
  report_.imported = report_.bad.none() || options_.good_rows;
  if (report_.imported)
    if (auto ok = write(); !ok) return fail(ok.error());
  std::erase_if(report_.files, [](const FileCount& file) { return file.rows_read == 0; });
  return std::move(report_);
}

}  // namespace

Result<ImportReport> import_register(Register& into, const ImportOptions& options) {
  std::error_code unseen;
  if (!std::filesystem::is_directory(options.folder, unseen))
    return fail(Fault::not_found,
                "There is no folder " + options.folder.string() + ". Nothing was imported.");
  auto names = RegisterNames::load(into.tables());
  if (!names) return fail(names.error());
  return RegisterImporter(into, options, std::move(*names)).run();
}

}  // namespace kneerail::exchange
