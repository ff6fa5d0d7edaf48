#include "schema/database.h"

#include <sqlite3.h>

#include <utility>

namespace kneerail {
namespace {

Fault fault_of(int code) {
  switch (code & 0xff) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return Fault::conflict;
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return Fault::corrupt;
    case SQLITE_INTERRUPT:
      return Fault::cancelled;
    default:
      return Fault::io;
  }
}

std::string sentence(int code) {
  if (code == SQLITE_IOERR_SHMSIZE) code = SQLITE_FULL;  // no room for the log's index
  switch (code & 0xff) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return "The register is busy: another program is writing it. This step was not done; try "
             "again in a moment.";
    case SQLITE_FULL:
      return "The disk is full. This step was not done and what was saved before is untouched; "
             "make room and try again.";
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return "The register cannot be written: its file or folder is read-only. This step was not "
             "done.";
    case SQLITE_NOTADB:
      return "The file is not a register, or its first page is damaged. It was left as it is.";
    case SQLITE_CORRUPT:
      return "The register's file is damaged. `kneerail rebuild` sets it aside and brings back "
             "what "
             "it and the second copy hold.";
    case SQLITE_CANTOPEN:
      return "The register's file could not be opened.";
    case SQLITE_INTERRUPT:
      return "Stopped before the end. This step was not done.";
    default:
      return "The register's file could not be read or written. This step was not done.";
  }
}

Error error_of(int code, sqlite3* database) {
  std::string message = sentence(code);
  message += " (SQLite " + std::to_string(code);
  if (database != nullptr) message += std::string(", ") + sqlite3_errmsg(database);
  return fail(fault_of(code), message + ")");
}

}  // namespace

// Statement ---------------------------------------------------------------------------------------

Statement::Statement(Statement&& other) noexcept
    : database_(std::exchange(other.database_, nullptr)),
      statement_(std::exchange(other.statement_, nullptr)) {}

Statement& Statement::operator=(Statement&& other) noexcept {
  if (this != &other) {
    sqlite3_finalize(statement_);
    database_ = std::exchange(other.database_, nullptr);
    statement_ = std::exchange(other.statement_, nullptr);
  }
  return *this;
}

Statement::~Statement() {
  sqlite3_finalize(statement_);
}

Statement& Statement::bind(int place, std::int64_t value) {
  check(sqlite3_bind_int64(statement_, place, value) == SQLITE_OK, "a parameter has its place");
  return *this;
}

Statement& Statement::bind(int place, double value) {
  check(sqlite3_bind_double(statement_, place, value) == SQLITE_OK, "a parameter has its place");
  return *this;
}

namespace {

/// What SQLite is to do with the bytes it is given.
using Keeping = sqlite3_destructor_type;

void bind_text(sqlite3_stmt* statement, int place, std::string_view text, Keeping keeping) {
  const char* data = text.data() == nullptr ? "" : text.data();
  const int code = sqlite3_bind_text64(statement, place, data, text.size(), keeping, SQLITE_UTF8);
  check(code == SQLITE_OK, "a parameter has its place");
}

void bind_bytes(sqlite3_stmt* statement, int place, std::span<const std::uint8_t> bytes,
                Keeping keeping) {
  const int code = bytes.empty()
                       ? sqlite3_bind_zeroblob(statement, place, 0)
                       : sqlite3_bind_blob64(statement, place, bytes.data(), bytes.size(), keeping);
  check(code == SQLITE_OK, "a parameter has its place");
}

}  // namespace

Statement& Statement::bind(int place, std::string_view text) {
  bind_text(statement_, place, text, SQLITE_TRANSIENT);
  return *this;
}

Statement& Statement::bind(int place, std::span<const std::uint8_t> bytes) {
  bind_bytes(statement_, place, bytes, SQLITE_TRANSIENT);
  return *this;
}

Statement& Statement::bind_in_place(int place, std::string_view text) {
  bind_text(statement_, place, text, SQLITE_STATIC);
  return *this;
}

Statement& Statement::bind_in_place(int place, std::span<const std::uint8_t> bytes) {
  bind_bytes(statement_, place, bytes, SQLITE_STATIC);
  return *this;
}

Statement& Statement::bind(int place, const Uuid& id) {
  return bind(place, std::span<const std::uint8_t>(id.bytes));
}

Statement& Statement::bind_null(int place) {
  check(sqlite3_bind_null(statement_, place) == SQLITE_OK, "a parameter has its place");
  return *this;
}

Result<bool> Statement::step() {
  const int code = sqlite3_step(statement_);
  if (code == SQLITE_ROW) return true;
  if (code == SQLITE_DONE) {
    sqlite3_reset(statement_);
    return false;
  }
  Error error = error_of(sqlite3_extended_errcode(database_), database_);
  sqlite3_reset(statement_);
  return error;
}

Result<> Statement::run() {
  for (;;) {
    auto more = step();
    if (!more) return fail(more.error());
    if (!*more) return Done{};
  }
}

void Statement::reset() {
  sqlite3_reset(statement_);
}

bool Statement::is_null(int column) const {
  return sqlite3_column_type(statement_, column) == SQLITE_NULL;
}

std::int64_t Statement::number(int column) const {
  return sqlite3_column_int64(statement_, column);
}

double Statement::real(int column) const {
  return sqlite3_column_double(statement_, column);
}

std::string_view Statement::text(int column) const {
  const auto* data = reinterpret_cast<const char*>(sqlite3_column_text(statement_, column));
  if (data == nullptr) return {};
  return {data, static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

std::span<const std::uint8_t> Statement::bytes(int column) const {
  const auto* data = static_cast<const std::uint8_t*>(sqlite3_column_blob(statement_, column));
  if (data == nullptr) return {};
  return {data, static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

Uuid Statement::uuid(int column) const {
  const auto found = bytes(column);
  Uuid id;
  if (found.size() == id.bytes.size()) std::copy(found.begin(), found.end(), id.bytes.begin());
  return id;
}

// Database ----------------------------------------------------------------------------------------

namespace {

Result<> configure(sqlite3* database, const Database::Options& options) {
  sqlite3_extended_result_codes(database, 1);
  sqlite3_busy_timeout(database, 2000);
  sqlite3_db_config(database, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
  sqlite3_db_config(database, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
  sqlite3_limit(database, SQLITE_LIMIT_ATTACHED, 0);
  std::string text;
  if (options.alone) {
    text = "PRAGMA locking_mode=EXCLUSIVE;";  // before anything is read
    sqlite3_db_config(database, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, nullptr);  // nor is written
  }
  text += "PRAGMA foreign_keys=OFF; PRAGMA cache_size=-" + std::to_string(options.cache_kib) + ";";
  if (options.access == Database::Access::create)
    text += "PRAGMA page_size=4096; PRAGMA journal_mode=WAL;";
  if (options.access == Database::Access::read) text += "PRAGMA query_only=ON;";
  text += "PRAGMA synchronous=FULL; SELECT count(*) FROM sqlite_schema;";
  const int code = sqlite3_exec(database, text.c_str(), nullptr, nullptr, nullptr);
  if (code != SQLITE_OK) return error_of(sqlite3_extended_errcode(database), database);
  return Done{};
}

}  // namespace

Result<Database> Database::open(const Options& options) {
  int flags = SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_PRIVATECACHE | SQLITE_OPEN_URI;
  const bool writable = options.access == Access::write || options.alone;
  if (options.access == Access::read && !options.alone) flags |= SQLITE_OPEN_READONLY;
  if (writable) flags |= SQLITE_OPEN_READWRITE;
  if (options.access == Access::create) flags |= SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
  sqlite3* opened = nullptr;
  const int code = sqlite3_open_v2(options.path.c_str(), &opened, flags,
                                   options.vfs.empty() ? nullptr : options.vfs.c_str());
  Database database(opened);  // closes it on every way out
  if (code != SQLITE_OK) return fail(error_of(code, opened), options.path + ": ");
  if (auto ok = configure(opened, options); !ok) {
    return fail(ok.error(), options.path + ": ");
  }
  return database;
}

Database::Database(Database&& other) noexcept
    : database_(std::exchange(other.database_, nullptr)),
      begin_(std::exchange(other.begin_, std::nullopt)),
      commit_(std::exchange(other.commit_, std::nullopt)) {}

Database& Database::operator=(Database&& other) noexcept {
  if (this != &other) {
    begin_ = std::exchange(other.begin_, std::nullopt);
    commit_ = std::exchange(other.commit_, std::nullopt);
    sqlite3_close_v2(database_);
    database_ = std::exchange(other.database_, nullptr);
  }
  return *this;
}

Database::~Database() {
  begin_.reset();
  commit_.reset();
  sqlite3_close_v2(database_);
}

Result<Statement> Database::prepare(std::string_view sql) {
  sqlite3_stmt* made = nullptr;
  const int code = sqlite3_prepare_v3(database_, sql.data(), static_cast<int>(sql.size()),
                                      SQLITE_PREPARE_PERSISTENT, &made, nullptr);
  if (code != SQLITE_OK) return error_of(sqlite3_extended_errcode(database_), database_);
  return Statement(database_, made);
}

Result<> Database::run(std::string_view sql) {
  const std::string text(sql);
  if (sqlite3_exec(database_, text.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK) {
    return error_of(sqlite3_extended_errcode(database_), database_);
  }
  return Done{};
}

Result<> Database::run_kept(std::optional<Statement>& place, std::string_view sql) {
  if (!place) {
    auto made = prepare(sql);
    if (!made) return fail(made.error());
    place = std::move(*made);
  }
  return place->run();
}

Result<std::int64_t> Database::number(std::string_view sql) {
  auto statement = prepare(sql);
  if (!statement) return fail(statement.error());
  auto row = statement->step();
  if (!row) return fail(row.error());
  if (!*row) return fail(Fault::not_found, "There is no such row in the register.");
  return statement->number(0);
}

void Database::watch(Watch* watch) {
  const auto look = [](void* at) {
    auto& own = *static_cast<Watch*>(at);
    own.steps += own.every;
    return own.stop != nullptr && own.stop->load(std::memory_order_relaxed) ? 1 : 0;
  };
  sqlite3_progress_handler(database_, watch == nullptr ? 0 : watch->every, look, watch);
}

std::int64_t Database::changes() const {
  return sqlite3_changes64(database_);
}

// Snapshot ----------------------------------------------------------------------------------------

Result<Snapshot> Snapshot::begin(Database& database) {
  if (sqlite3_get_autocommit(database.handle()) == 0) return Snapshot(nullptr);
  if (auto begun = database.run("BEGIN"); !begun) return fail(begun.error());
  Snapshot snapshot(&database);
  // It is taken by the first reading.
  if (auto read = database.number("SELECT count(*) FROM sqlite_schema"); !read) {
    return fail(read.error());
  }
  return snapshot;
}

Snapshot::Snapshot(Snapshot&& other) noexcept
    : database_(std::exchange(other.database_, nullptr)) {}

Snapshot::~Snapshot() {
  if (database_ != nullptr && sqlite3_get_autocommit(database_->handle()) == 0) {
    sqlite3_exec(database_->handle(), "COMMIT", nullptr, nullptr, nullptr);
  }
}

// Transaction -------------------------------------------------------------------------------------

Result<Transaction> Transaction::begin(Database& database) {
  auto begun = database.run_kept(database.begin_, "BEGIN IMMEDIATE");
  if (!begun) return fail(begun.error());
  return Transaction(&database);
}

Transaction::Transaction(Transaction&& other) noexcept
    : database_(std::exchange(other.database_, nullptr)) {}

Transaction::~Transaction() {
  // Some faults (disk full, damage) have rolled back already; a second rollback is refused and
  // changes nothing.
  if (database_ != nullptr && sqlite3_get_autocommit(database_->handle()) == 0) {
    sqlite3_exec(database_->handle(), "ROLLBACK", nullptr, nullptr, nullptr);
  }
}

Result<> Transaction::commit() {
  check(database_ != nullptr, "a transaction is committed once");
  if (auto done = database_->run_kept(database_->commit_, "COMMIT"); !done) {
    return fail(done.error());
  }
  database_ = nullptr;
  return Done{};
}

}  // namespace kneerail
