#pragma once

// The peer of everything that is stored: one SQLite table of bare bytes, as durable as the register
// (write-ahead log, synchronous FULL), with nothing checked, chained, copied or folded.

#include <filesystem>
#include <memory>
#include <span>

#include "schema/database.h"

namespace kneerail::benchmark {

class BareTable {
 public:
  static Result<std::unique_ptr<BareTable>> open(const std::filesystem::path& file);
  Result<> begin() { return database_.run("BEGIN IMMEDIATE"); }
  Result<> commit() { return database_.run("COMMIT"); }
  /// One row; a transaction of its own unless one was begun.
  Result<> insert(std::span<const std::uint8_t> bytes);

 private:
  explicit BareTable(Database database) : database_(std::move(database)) {}
  Database database_;
  Statement insert_;
};

}  // namespace kneerail::benchmark
