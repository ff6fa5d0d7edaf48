#include "schema/store/rebuild.h"

#include <future>
#include <memory>
#include <string>

#include "core/fold/fold.h"
#include "schema/store/behind_tables.h"

namespace kneerail {
namespace {

constexpr int batch = 2000;
constexpr std::size_t cells_max =
    600'000;  // 36 to 60 MB with their keys; as much again may be on its way down

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

/// The journal page by page. The next one is read on the tables' thread while this one is folded.
class PagesAhead {
 public:
  PagesAhead(Journal& journal, BehindTables& thread) : journal_(journal), thread_(thread) {
    ask(0);
  }

  Result<std::vector<JournalRow>> next() {
    auto rows = coming_.get();
    if (rows && !rows->empty()) ask(rows->back().lid);
    return rows;
  }

 private:
  using Reading = std::packaged_task<Result<std::vector<JournalRow>>()>;

  void ask(std::int64_t lid) {
    const auto reading = std::make_shared<Reading>(
        [&journal = journal_, lid] { return journal.rows_after(lid, batch); });
    coming_ = reading->get_future();
    thread_.run_first([reading] { (*reading)(); });
  }

  Journal& journal_;
  BehindTables& thread_;
  std::future<Result<std::vector<JournalRow>>> coming_;
};

void take_page(const Journal& journal, const std::vector<JournalRow>& rows, fold::Batch& whole,
               Folding& folding) {
  for (const auto& row : rows) {
    auto placed = journal.placed(row);
    if (placed) {
      whole.add(*placed);
      ++folding.records;
    } else {
      ++folding.unreadable;
    }
  }
  whole.settle();
}

}  // namespace

Result<Folding> fold_journal(Journal& journal, SqlTables& empty_tables, const Progress& progress) {
  auto all = journal.count();
  if (!all) return fail(all.error());
  BehindTables behind(empty_tables);
  CachedTables cache(behind, Below::is_empty);
  // A row that stands for many records is made once, at the end.
  fold::Batch whole(cache, nullptr, fold::Batch::Begins::empty);
  Folding folding;
  PagesAhead pages(journal, behind);
  for (;;) {
    auto rows = pages.next();
    if (!rows) return fail(rows.error());
    if (rows->empty()) break;
    take_page(journal, *rows, whole, folding);
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
  behind.wait();
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
