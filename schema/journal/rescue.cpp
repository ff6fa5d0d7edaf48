#include "schema/journal/rescue.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "core/fold/fold.h"
#include "schema/journal/draft.h"
#include "schema/journal/joiner.h"
#include "schema/journal/journal_pages.h"
#include "schema/journal/start_checks.h"
#include "schema/store/rebuild.h"

namespace kneerail {
namespace {

constexpr std::int64_t commit_every = 2000;

std::map<std::int64_t, Uuid> numbers_of(Database& database, const char* sql) {
  std::map<std::int64_t, Uuid> found;
  auto statement = database.prepare(sql);
  if (!statement) return found;
  for (;;) {
    auto more = statement->step();
    if (!more || !*more) return found;
    found[statement->number(0)] = statement->uuid(1);
  }
}

void copy_drafts_and_settings(Database& from, Database& to) {
  if (auto drafts = read_drafts(from)) {
    for (const auto& draft : *drafts) (void)put_draft(to, draft);
  }
  for (const char* name : {"segment", "segment_boot", "segment_base_ms", "segment_monotonic_ms",
                           records_missing_setting}) {
    auto value = read_setting(from, name);
    if (value && *value) (void)write_setting(to, name, **value);
  }
}

/// Whether SQLite comes to every row: they are numbered 1, 2, 3 ... without a gap.
bool reads_through(Database& old) {
  auto statement =
      old.prepare(std::string("SELECT ") + journal_columns + " FROM journal ORDER BY lid");
  if (!statement) return false;
  for (std::int64_t lid = 1;; ++lid) {
    auto more = statement->step();
    if (!more) return false;
    if (!*more) return lid > 1;
    if (journal_row(*statement).lid != lid) return false;
  }
}

/// Rows on their way to the joiner, their small numbers for feed and device made names.
class OldRows {
 public:
  OldRows(Database* old, const Uuid& own_device, Joiner& joiner) : joiner_(joiner) {
    if (old != nullptr) {
      feeds_ = numbers_of(*old, "SELECT n, id FROM feed");
      devices_ = numbers_of(*old, "SELECT n, id FROM device");
    }
    const auto [own, is_new] = devices_.try_emplace(1, own_device);
    another_device_ = own->second != own_device;
  }

  /// Whether feeds are known that rows belong to; where not, their names are among the records.
  [[nodiscard]] bool knows_feeds() const { return !feeds_.empty(); }

  void note_created(const JournalRow& row) {
    auto record = decode_record(row.bytes);
    if (!record || record->kind != 1) return;
    const auto* type = record->body.find(1);
    if (type != nullptr && (*type == cbor::Value(1) || *type == cbor::Value(2))) {
      created_.push_back(record->id);
    }
  }

  void take(const JournalRow& row) {
    if (another_device_) return;
    const auto device = devices_.find(row.dev);
    if (device == devices_.end()) return;
    if (!feeds_.contains(row.feed)) find_feed(row, device->second);
    const auto feed = feeds_.find(row.feed);
    if (feed != feeds_.end()) joiner_.take(feed->second, device->second, row);
  }

  /// How many rows each chain had, from the index that is there to keep them apart; nothing where
  /// that one is damaged too.
  [[nodiscard]] std::optional<std::map<ChainName, std::int64_t>> ends(Database& old) const {
    auto statement = old.prepare(
        "SELECT feed, dev, seq FROM journal INDEXED BY sqlite_autoindex_journal_1 "
        "ORDER BY feed, dev, seq");
    if (!statement) return std::nullopt;
    std::map<ChainName, std::int64_t> ends;
    for (;;) {
      auto more = statement->step();
      if (!more) return std::nullopt;
      if (!*more) return ends;
      const auto feed = feeds_.find(statement->number(0));
      const auto device = devices_.find(statement->number(1));
      if (feed == feeds_.end() || device == devices_.end()) return std::nullopt;
      if (statement->number(2) != ++ends[{feed->second, device->second}]) return std::nullopt;
    }
  }

 private:
  /// A chain's first record is bound to the name of its feed: an organisation's or a site's id.
  void find_feed(const JournalRow& row, const Uuid& device) {
    if (row.seq != 1) return;
    for (const Uuid& name : created_) {
      if (chain_next(chain_start(name, device), row.bytes) != row.digest) continue;
      feeds_[row.feed] = name;
      return;
    }
  }

  Joiner& joiner_;
  std::map<std::int64_t, Uuid> feeds_;
  std::map<std::int64_t, Uuid> devices_;
  std::vector<Uuid> created_;  ///< organisations and sites
  bool another_device_ = false;
};

/// How many rows there were, from an index that agrees with itself: numbers go from 1 to their
/// count.
std::optional<std::int64_t> count_by_index(Database& old) {
  auto count = old.number("SELECT count(*) FROM journal INDEXED BY journal_by_id");
  auto last = old.number(
      "SELECT coalesce(max(n), 0) FROM "
      "(SELECT lid AS n, id FROM journal INDEXED BY journal_by_id ORDER BY id)");
  if (!count || !last || *count != *last) return std::nullopt;
  return *count;
}

std::int64_t sum_of(const std::map<ChainName, std::int64_t>& ends) {
  std::int64_t sum = 0;
  for (const auto& [chain, end] : ends) sum += end;
  return sum;
}

/// How many records there have been, as far as the old file and the second copy show it.
std::int64_t expected_records(Database* old, const OldRows& rows, const Joiner& joiner,
                              const Copied& copied, const Uuid& own_device) {
  auto known = joiner.ends();
  for (const auto& [place, bytes] : copied) {
    std::int64_t& end = known[{place.first, own_device}];
    end = std::max(end, place.second);
  }
  if (old == nullptr) return sum_of(known);
  if (const auto by_chain = rows.ends(*old)) {
    for (const auto& [chain, end] : *by_chain) known[chain] = std::max(known[chain], end);
    return sum_of(known);
  }
  return std::max(sum_of(known), count_by_index(*old).value_or(0));
}

/// Reads what is left of the old journal, by SQLite where it comes to every row, else page by page.
Result<> read_damaged(RegisterState& state, Database* old, OldRows& rows) {
  if (old == nullptr || !reads_through(*old)) {
    if (!rows.knows_feeds()) {
      auto done = read_journal_pages(*state.files, state.places.records(),
                                     [&](const JournalRow& row) { rows.note_created(row); });
      if (!done) return done;
    }
    return read_journal_pages(*state.files, state.places.records(),
                              [&](const JournalRow& row) { rows.take(row); });
  }
  auto statement =
      old->prepare(std::string("SELECT ") + journal_columns + " FROM journal ORDER BY lid");
  if (!statement) return fail(statement.error());
  for (;;) {
    auto more = statement->step();
    if (!more) return fail(more.error());
    if (!*more) return Done{};
    rows.take(journal_row(*statement));
  }
}

/// The highest clock and segment of each feed, from the records themselves.
Result<> restore_clocks(RegisterState& state) {
  std::map<std::int64_t, FeedState> states;
  std::int64_t segment = 0;
  for (std::int64_t lid = 0;;) {
    auto rows = state.journal->rows_after(lid, static_cast<int>(commit_every));
    if (!rows) return fail(rows.error());
    if (rows->empty()) break;
    lid = rows->back().lid;
    for (const auto& row : *rows) {
      auto placed = state.journal->placed(row);
      if (!placed) continue;
      FeedState& feed = states[row.feed];
      if (std::pair(placed->record.l, placed->record.c) > std::pair(feed.l, feed.c)) {
        feed.l = placed->record.l;
        feed.c = placed->record.c;
      }
      if (row.dev == 1) segment = std::max<std::int64_t>(segment, placed->record.g);
    }
  }
  for (auto& [n, feed] : states) {
    feed.n = n;
    feed.id = state.journal->feeds().at(n);
    if (auto done = state.journal->put_feed_state(feed); !done) return done;
  }
  auto known = read_setting(*state.database, "segment");
  if (!known) return fail(known.error());
  return write_setting(*state.database, "segment", std::max(segment, known->value_or(0)));
}

std::filesystem::path beside(const Places& places) {
  std::filesystem::path path = places.records();
  path += ".new";
  return path;
}

/// A database file, then its log. A log left at the old place would be taken for the new file's:
/// complete_rescue() looks for one.
Result<> move_database(Files& files, const std::filesystem::path& from,
                       const std::filesystem::path& to) {
  for (const char* part : {"", "-wal", "-shm"}) {
    std::filesystem::path one = from;
    one += part;
    std::filesystem::path other = to;
    other += part;
    if (!files.exists(one)) continue;
    if (auto done = files.rename(one, other); !done) return done;
  }
  return Done{};
}

Result<> remove_database(Files& files, const std::filesystem::path& path) {
  for (const char* part : {"-wal", "-shm", "-journal", ""}) {
    std::filesystem::path one = path;
    one += part;
    if (!files.exists(one)) continue;
    if (auto done = files.remove(one); !done) return done;
  }
  return Done{};
}

/// `is_whole`: nothing in it is damaged, and something is in it.
Result<Copied> read_copied(RegisterState& state, bool& is_whole) {
  Copied copied;
  auto reading = state.copy->read([&](std::span<const CopyFrame> group) {
    for (const auto& frame : group) {
      if (frame.type == CopyFrame::Type::record) copied[{frame.feed, frame.seq}] = frame.bytes;
    }
    return true;
  });
  if (!reading) return fail(reading.error());
  is_whole = reading->damaged == 0 && !copied.empty();
  return copied;
}

struct Made {
  std::int64_t from_journal = 0;
  std::int64_t from_copy = 0;
  std::int64_t missing = 0;
  bool old_read = false;  ///< the old file says how many records there were
};

/// Joins what the old file and the second copy hold into the new, empty journal.
Result<Made> join(RegisterState& state, const Copied& copied, Database& into, Journal& journal) {
  Joiner joiner(journal, into, copied);
  std::optional<Database> old;
  const bool was_there = state.files->exists(state.places.records());
  if (was_there) {
    auto opened = Database::open(
        {state.places.records().string(), Database::Access::read, state.files->sqlite_layer()});
    if (opened) old = std::move(*opened);
  }
  Database* const readable = old ? &*old : nullptr;
  OldRows rows(readable, state.identity.device, joiner);
  if (was_there) {
    if (auto done = read_damaged(state, readable, rows); !done) return fail(done.error());
  }
  joiner.finish();
  if (joiner.error) return *joiner.error;
  if (old) copy_drafts_and_settings(*old, into);
  const auto kept = joiner.from_journal + joiner.from_copy;
  const auto expected = expected_records(readable, rows, joiner, copied, state.identity.device);
  Made made{joiner.from_journal, joiner.from_copy, std::max<std::int64_t>(0, expected - kept),
            readable != nullptr};
  auto before = read_setting(into, records_missing_setting);
  if (!before) return fail(before.error());
  if (auto done = write_setting(into, records_missing_setting, before->value_or(0) + made.missing);
      !done) {
    return fail(done.error());
  }
  if (!joiner.renumbered) return made;
  if (auto done = write_setting(into, copy_numbers_setting, 1); !done) return fail(done.error());
  return made;
}

/// The new register under its other name, complete when it returns.
Result<Made> make_beside(RegisterState& state, const Copied& copied) {
  const auto path = beside(state.places);
  if (auto done = remove_database(*state.files, path); !done) return fail(done.error());
  auto database = make_database(*state.files, path, state.identity.device);
  if (!database) return fail(database.error());
  auto journal = Journal::open(**database);
  if (!journal) return fail(journal.error());
  auto made = join(state, copied, **database, *journal);
  if (!made) return made;
  state.database = std::move(*database);
  state.journal = std::move(*journal);
  state.attach_tables();
  if (auto done = restore_clocks(state); !done) return fail(done.error());
  auto folded = rebuild_tables(state, {});
  state.close_database();  // writes the log into the file
  if (!folded) return fail(folded.error());
  return made;
}

}  // namespace

Result<std::unique_ptr<Database>> make_database(Files& files, const std::filesystem::path& path,
                                                const Uuid& device) {
  auto opened = Database::open({path.string(), Database::Access::create, files.sqlite_layer()});
  if (!opened) return fail(opened.error());
  auto database = std::make_unique<Database>(std::move(*opened));
  auto transaction = Transaction::begin(*database);
  if (!transaction) return fail(transaction.error());
  if (auto done = apply_steps(*database); !done) return fail(done.error());
  if (auto done = create_tables(*database, Indexes::now); !done) return fail(done.error());
  auto own = database->prepare("INSERT INTO device (n, id) VALUES (1, ?)");
  if (!own) return fail(own.error());
  own->bind(1, device);
  if (auto done = own->run(); !done) return fail(done.error());
  const std::string marks = "PRAGMA user_version = " + std::to_string(fold::fold_version) +
                            "; PRAGMA application_id = " + std::to_string(register_application_id);
  if (auto done = database->run(marks); !done) return fail(done.error());
  if (auto done = transaction->commit(); !done) return fail(done.error());
  return database;
}

Result<> attach_database(RegisterState& state, Database::Access access) {
  auto opened = Database::open({.path = state.places.records().string(),
                                .access = access,
                                .vfs = state.files->sqlite_layer(),
                                .cache_kib = state.cache_kib});
  if (!opened) return fail(opened.error());
  state.database = std::make_unique<Database>(std::move(*opened));
  auto journal = Journal::open(*state.database);
  if (!journal) return fail(journal.error());
  state.journal = std::move(*journal);
  state.attach_tables();
  return Done{};
}

Result<> rescue(RegisterState& state, const std::string& reason) {
  state.close_database();
  bool copy_is_whole = false;
  auto copied = read_copied(state, copy_is_whole);
  if (!copied) return fail(copied.error());
  auto made = make_beside(state, *copied);
  if (!made) return fail(made.error());
  std::string told = reason;
  const bool was_there = state.files->exists(state.places.records());
  const auto aside = free_name_beside(*state.files, state.places.records());
  if (auto done = move_database(*state.files, state.places.records(), aside); !done) return done;
  if (was_there) {
    told += " It was set aside as " + aside.filename().string() + " and a new one was made: ";
  } else {
    told += " A new one was made: ";
  }
  if (auto done = move_database(*state.files, beside(state.places), state.places.records());
      !done) {
    return done;
  }
  state.opening.records_recovered += made->from_copy;
  state.opening.records_missing += made->missing;
  state.note(told + std::to_string(made->from_journal) + " records from the old file, " +
             std::to_string(made->from_copy) + " from the second copy, " +
             std::to_string(made->missing) + " could not be read or joined." +
             (made->old_read || copy_is_whole
                  ? ""
                  : " Neither file says how many there were: more may be missing."));
  return attach_database(state, Database::Access::write);
}

Result<> complete_rescue(RegisterState& state) {
  const auto path = beside(state.places);
  if (!state.files->exists(path)) return Done{};
  if (state.files->exists(state.places.records())) return remove_database(*state.files, path);
  const auto aside = free_name_beside(*state.files, state.places.records());
  if (auto done = move_database(*state.files, state.places.records(), aside); !done) return done;
  return move_database(*state.files, path, state.places.records());
}

}  // namespace kneerail
