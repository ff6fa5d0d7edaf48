#include "schema/exchange/reading_staging.h"

#include <system_error>
#include <utility>

namespace kneerail::exchange {
namespace {

constexpr std::string_view staging_table = R"(
  PRAGMA journal_mode = OFF;
  PRAGMA synchronous = OFF;
  CREATE TABLE reading (
    line INTEGER NOT NULL PRIMARY KEY,
    id TEXT NOT NULL,
    component INTEGER NOT NULL,
    visit INTEGER NOT NULL,
    quantity INTEGER NOT NULL,
    spot INTEGER NOT NULL,
    replicate INTEGER NOT NULL,
    record BLOB NOT NULL,  -- zero: the identifier names none
    value INTEGER NOT NULL,
    censoring INTEGER NOT NULL,
    wrench_set INTEGER,    -- NULL: not known
    seen_at INTEGER,       -- NULL: the visit's date holds
    carried INTEGER NOT NULL,
    how INTEGER NOT NULL,
    surface INTEGER NOT NULL
  ) STRICT;
  BEGIN;)";

constexpr std::string_view insert_reading =
    "INSERT INTO reading(line, id, component, visit, quantity, spot, replicate, record, value, "
    "censoring, wrench_set, seen_at, carried, how, surface) "
    "VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)";

constexpr std::string_view readings_of_visit =
    "SELECT line, id, component, visit, quantity, spot, replicate, record, value, censoring, "
    "wrench_set, seen_at, carried, how, surface FROM reading WHERE visit = ? "
    "ORDER BY visit, component, quantity, spot, record, replicate";

constexpr std::string_view same_identifier =
    "SELECT r.line, d.first_line, r.id FROM (SELECT id, min(line) AS first_line FROM reading "
    "GROUP BY id HAVING count(*) > 1) d JOIN reading r ON r.id = d.id "
    "WHERE r.line <> d.first_line ORDER BY r.line";

constexpr std::string_view same_place =
    "SELECT r.line, d.first_line, r.id FROM (SELECT visit, component, quantity, spot, record, "
    "replicate, min(line) AS first_line FROM reading "
    "GROUP BY visit, component, quantity, spot, record, replicate HAVING count(*) > 1) d "
    "JOIN reading r USING (visit, component, quantity, spot, record, replicate) "
    "WHERE r.line <> d.first_line ORDER BY r.line";

void bind_or_null(Statement& statement, int place, const std::optional<std::int64_t>& value) {
  value ? statement.bind(place, *value) : statement.bind_null(place);
}

std::int64_t wide(auto code) {
  return static_cast<std::int64_t>(code);
}

}  // namespace

namespace {

/// With what SQLite lays beside it, which is left over where the disk was full.
void remove_file(const std::filesystem::path& file) {
  if (file.empty()) return;
  for (const char* part : {"", "-wal", "-shm", "-journal"}) {
    std::filesystem::path one = file;
    one += part;
    std::error_code ignored;  // a file left over is written anew the next time
    std::filesystem::remove(one, ignored);
  }
}

}  // namespace

ReadingStaging::ReadingStaging(std::filesystem::path file, Database database)
    : file_(std::move(file)), database_(std::move(database)) {}

ReadingStaging::~ReadingStaging() {
  insert_.reset();
  of_visit_.reset();
  database_.reset();
  remove_file(file_);
}

Result<std::unique_ptr<ReadingStaging>> ReadingStaging::open(std::filesystem::path file) {
  remove_file(file);
  auto database = Database::open({.path = file.empty() ? std::string(":memory:") : file.string(),
                                  .access = Database::Access::create,
                                  .vfs = {}});
  if (!database) {
    remove_file(file);
    return fail(database.error(), "The readings could not be set aside: ");
  }
  std::unique_ptr<ReadingStaging> staging(
      new ReadingStaging(std::move(file), std::move(*database)));
  if (auto ready = staging->prepare(); !ready)
    return fail(ready.error(), "The readings could not be set aside: ");
  return staging;
}

Result<> ReadingStaging::prepare() {
  if (auto made = database_->run(staging_table); !made) return made;
  auto insert = database_->prepare(insert_reading);
  if (!insert) return fail(insert.error());
  insert_ = std::move(*insert);
  return Done{};
}

Result<> ReadingStaging::add(const StagedReading& reading) {
  const ReadingRow& row = reading.row;
  insert_->bind(1, row.line)
      .bind(2, std::string_view(row.id))
      .bind(3, wide(reading.component))
      .bind(4, wide(reading.visit))
      .bind(5, wide(row.quantity))
      .bind(6, wide(row.spot))
      .bind(7, wide(row.replicate))
      .bind(8, reading.record)
      .bind(9, row.value)
      .bind(10, wide(row.censoring));
  bind_or_null(*insert_, 11, row.wrench_set_tenth_nm);
  bind_or_null(*insert_, 12, row.seen_at ? std::optional(row.seen_at->ms) : std::nullopt);
  insert_->bind(13, wide(row.carried)).bind(14, wide(row.how)).bind(15, wide(row.surface));
  ++count_;
  return insert_->run();
}

Result<> ReadingStaging::take_out(std::string_view sql, bool same_id,
                                  const std::function<void(const Twice&)>& told) {
  auto twice = database_->prepare(sql);
  if (!twice) return fail(twice.error());
  std::vector<std::int64_t> lines;
  while (true) {
    auto more = twice->step();
    if (!more) return fail(more.error());
    if (!*more) break;
    told({twice->number(0), twice->number(1), std::string(twice->text(2)), same_id});
    lines.push_back(twice->number(0));
  }
  auto out = database_->prepare("DELETE FROM reading WHERE line = ?");
  if (!out) return fail(out.error());
  for (const auto line : lines) {
    out->bind(1, line);
    if (auto gone = out->run(); !gone) return gone;
    --count_;
  }
  return Done{};
}

Result<> ReadingStaging::settle(const std::function<void(const Twice&)>& told) {
  if (auto by_id = database_->run("CREATE INDEX reading_by_id ON reading(id)"); !by_id)
    return by_id;
  if (auto out = take_out(same_identifier, true, told); !out) return out;
  if (auto by_place =
          database_->run("DROP INDEX reading_by_id; CREATE INDEX reading_by_place ON "
                         "reading(visit, component, quantity, spot, record, replicate)");
      !by_place)
    return by_place;
  if (auto out = take_out(same_place, false, told); !out) return out;
  if (auto kept = database_->run("COMMIT"); !kept) return kept;
  auto of_visit = database_->prepare(readings_of_visit);
  if (!of_visit) return fail(of_visit.error());
  of_visit_ = std::move(*of_visit);
  return Done{};
}

Result<> ReadingStaging::begin_visit(std::int32_t visit) {
  of_visit_->reset();
  of_visit_->bind(1, wide(visit));
  return Done{};
}

Result<bool> ReadingStaging::next(StagedReading& reading) {
  auto more = of_visit_->step();
  if (!more) return fail(more.error());
  if (!*more) return false;
  const Statement& from = *of_visit_;
  reading.component = static_cast<std::int32_t>(from.number(2));
  reading.visit = static_cast<std::int32_t>(from.number(3));
  reading.record = from.uuid(7);
  ReadingRow& row = reading.row;
  row.line = from.number(0);
  row.id = from.text(1);
  row.quantity = static_cast<forecast::Quantity>(from.number(4));
  row.spot = static_cast<std::int16_t>(from.number(5));
  row.replicate = static_cast<std::int16_t>(from.number(6));
  row.value = from.number(8);
  row.censoring = static_cast<forecast::Censoring>(from.number(9));
  row.wrench_set_tenth_nm = from.is_null(10) ? std::nullopt : std::optional(from.number(10));
  row.seen_at = from.is_null(11) ? std::nullopt : std::optional(Instant{from.number(11)});
  row.carried = from.number(12) != 0;
  row.how = static_cast<forecast::How>(from.number(13));
  row.surface = static_cast<forecast::Surface>(from.number(14));
  return true;
}

}  // namespace kneerail::exchange
