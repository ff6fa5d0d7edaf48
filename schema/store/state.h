#pragma once

// What an open register consists of. Register is the door; the files of this folder each do one of
// its jobs on this state.

#include <atomic>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "schema/digest.h"
#include "schema/journal/files.h"
#include "schema/journal/identity.h"
#include "schema/journal/journal.h"
#include "schema/journal/second_copy.h"
#include "schema/journal/segment.h"
#include "schema/machine.h"
#include "schema/store/cached_tables.h"
#include "schema/store/object_folder.h"
#include "schema/store/register.h"
#include "schema/store/table_store.h"

namespace kneerail {

/// The files of a register folder.
struct Places {
  explicit Places(std::filesystem::path folder_of_register)
      : folder(std::move(folder_of_register)) {}
  std::filesystem::path folder;
  [[nodiscard]] std::filesystem::path records() const { return folder / "records.db"; }
  [[nodiscard]] std::filesystem::path copy() const { return folder / "unsent.copy"; }
  [[nodiscard]] std::filesystem::path identity() const { return folder / "identity"; }
  [[nodiscard]] std::filesystem::path objects() const { return objects_of(folder); }
  [[nodiscard]] std::filesystem::path lock() const { return folder / "lock"; }
  [[nodiscard]] std::filesystem::path spare() const { return folder / "spare"; }
};

struct RegisterState {
  explicit RegisterState(std::filesystem::path folder) : places(std::move(folder)) {}

  Places places;
  std::unique_ptr<Files> own_files;  ///< where the caller gave none
  MachineClock own_clock;
  SecureRandom own_random;
  Files* files = nullptr;
  Clock* clock = nullptr;
  Random* random = nullptr;
  int cache_kib = Database::usual_cache_kib;
  const std::atomic<bool>* stop = nullptr;  ///< of the start checks; only while it is opened

  std::unique_ptr<FolderLock> lock;
  std::unique_ptr<Database> database;  ///< behind a pointer: journal and tables keep its address
  std::optional<Journal> journal;
  std::optional<SecondCopy> copy;
  std::unique_ptr<SqlTables> tables;
  std::unique_ptr<CachedTables> cache;
  Identity identity;
  ClockSegment segment;
  std::map<Uuid, FeedState> feeds;  ///< own clock and chain head of the feeds written to so far
  Opening opening;
  int log_pages = 0;  ///< the log's length that was asked for; 0: SQLite's own

  /// Statements over the tables, after they were opened or made anew.
  void attach_tables() {
    cache.reset();
    tables = std::make_unique<SqlTables>(*database);
    cache = std::make_unique<CachedTables>(*tables, Below::has_rows);
  }
  void close_database() {
    cache.reset();
    tables.reset();
    journal.reset();
    database.reset();
    log_pages = 0;
  }
  void note(std::string sentence) { opening.notes.push_back(std::move(sentence)); }
};

}  // namespace kneerail
