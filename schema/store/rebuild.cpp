#include "schema/store/rebuild.h"

#include <string>

#include "core/fold/fold.h"

namespace kneerail {
namespace {

constexpr int batch = 2000;
constexpr std::size_t cells_max = 1'000'000;  // 60 to 100 MB with their keys

Error stopped() {
  return fail(Fault::cancelled, "Stopped before the end. The tables stay as they were.");
}

Result<> make_tables(RegisterState& state, Folding& folding, const Progress& progress) {
  if (auto done = drop_tables(*state.database); !done) return done;
  if (auto done = create_tables(*state.database, Indexes::later); !done) return done;
  SqlTables tables(*state.database, Indexes::later);
  auto folded = fold_journal(*state.journal, tables, progress);
  if (!folded) return fail(folded.error());
  folding = *folded;
  tables.finish_indexes();
  if (auto error = tables.error()) return *error;
  return state.database->run("PRAGMA user_version = " + std::to_string(fold::fold_version));
}

}  // namespace

Result<Folding> fold_journal(Journal& journal, SqlTables& empty_tables, const Progress& progress) {
  CachedTables cache(empty_tables, Below::is_empty);
  auto all = journal.count();
  if (!all) return fail(all.error());
  Folding folding;
  // A row that stands for many records is made once, at the end.
  fold::Batch whole(cache, nullptr, fold::Batch::Begins::empty);
  for (std::int64_t lid = 0;;) {
    auto rows = journal.rows_after(lid, batch);
    if (!rows) return fail(rows.error());
    if (rows->empty()) break;
    for (const auto& row : *rows) {
      auto placed = journal.placed(row);
      if (placed) {
        whole.add(*placed);
        ++folding.records;
      } else {
        ++folding.unreadable;
      }
    }
    whole.settle();
    lid = rows->back().lid;
    cache.make_room(cells_max);
    if (auto error = cache.error()) return *error;
    if (progress && !progress(folding.records + folding.unreadable, *all)) return stopped();
  }
  while (whole.make(batch)) {
    cache.make_room(cells_max);
    if (auto error = cache.error()) return *error;
    if (progress && !progress(*all, *all)) return stopped();
  }
  cache.flush();
  if (auto error = cache.error()) return *error;
  return folding;
}

Result<Folding> rebuild_tables(RegisterState& state, const Progress& progress) {
  state.cache.reset();
  state.tables.reset();  // its statements would hold the tables that are about to go
  Folding folding;
  const auto in_transaction = [&]() -> Result<> {
    auto transaction = Transaction::begin(*state.database);
    if (!transaction) return fail(transaction.error());
    if (auto done = make_tables(state, folding, progress); !done) return done;
    return transaction->commit();
  };
  auto done = in_transaction();
  state.attach_tables();
  if (!done) return fail(done.error());
  // The log has grown by the whole of the tables; given back where no reader is in the way.
  (void)state.database->run("PRAGMA wal_checkpoint(TRUNCATE)");
  return folding;
}

}  // namespace kneerail
