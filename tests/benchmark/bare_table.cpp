#include "tests/benchmark/bare_table.h"

namespace kneerail::benchmark {

Result<std::unique_ptr<BareTable>> BareTable::open(const std::filesystem::path& file) {
  auto database =
      Database::open({.path = file.string(), .access = Database::Access::create, .vfs = {}});
  if (!database) return fail(database.error());
  std::unique_ptr<BareTable> table(new BareTable(std::move(*database)));
  auto made = table->database_.run(
      "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;"
      "CREATE TABLE bare (n INTEGER PRIMARY KEY, bytes BLOB NOT NULL) STRICT;");
  if (!made) return fail(made.error());
  auto insert = table->database_.prepare("INSERT INTO bare (bytes) VALUES (?)");
  if (!insert) return fail(insert.error());
  table->insert_ = std::move(*insert);
  return table;
}

Result<> BareTable::insert(std::span<const std::uint8_t> bytes) {
  return insert_.bind(1, bytes).run();
}

}  // namespace kneerail::benchmark
