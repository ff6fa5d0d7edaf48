#include "schema/journal/rescue.h"

#include <algorithm>
#include <functional>
#include <map>
#include <utility>

#include "core/fold/fold.h"
#include "schema/journal/draft.h"
#include "schema/journal/start_checks.h"
#include "schema/store/rebuild.h"

namespace kneerail {
namespace {

constexpr std::int64_t commit_every = 2000;

/// This device's records by feed and sequence, from the second copy.
using Copied = std::map<std::pair<Uuid, std::int64_t>, cbor::Bytes>;

/// Reads rows of a damaged journal, around the places that cannot be read.
class DamagedJournal {
 public:
  static std::optional<DamagedJournal> open(Database& database) {
    auto statement = database.prepare(std::string("SELECT ") + journal_columns +
                                      " FROM journal WHERE lid BETWEEN ? AND ? ORDER BY lid");
    if (!statement) return std::nullopt;
    return DamagedJournal(std::move(*statement));
  }

  using Take = std::function<void(const JournalRow&)>;

  void read(std::int64_t from, std::int64_t to, const Take& take) {
    while (from <= to && questions_ < questions_max) {
      ++questions_;
      statement_.bind(1, from).bind(2, to);
      std::int64_t last = from - 1;
      bool whole = true;
      for (;;) {
        auto more = statement_.step();
        if (!more) whole = false;
        if (!more || !*more) break;
        const JournalRow row = journal_row(statement_);
        last = row.lid;
        take(row);
      }
      if (whole || last + 1 > to) return;
      from = last + 1;
      if (from == to) return;  // this very row
      const std::int64_t middle = from + (to - from) / 2;
      read(from, middle, take);
      from = middle + 1;
    }
  }

 private:
  static constexpr int questions_max = 200'000;
  explicit DamagedJournal(Statement statement) : statement_(std::move(statement)) {}
  Statement statement_;
  int questions_ = 0;
};

/// Puts records behind each other as long as their digests fit, and fills what is missing from the
/// second copy.
class Joiner {
 public:
  Joiner(Journal& journal, Database& database, const Copied& copied)
      : journal_(journal), database_(database), copied_(copied) {}

  void take(const Uuid& feed, const Uuid& device, JournalRow row) {
    Chain& chain = chains_[{feed, device}];
    if (chain.head.seq == 0 && !chain.begun) {
      chain.head.digest = chain_start(feed, device);
      chain.begun = true;
    }
    settle_doubt(feed, device, chain, &row);
    while (row.seq > chain.head.seq + 1 && fill(feed, device, chain)) {
    }
    if (row.seq <= chain.head.seq) return;
    if (row.seq > chain.head.seq + 1) {
      ++unjoined;
    } else if (chain_next(chain.head.digest, row.bytes) == row.digest) {
      append(feed, device, chain, std::move(row));
      ++from_journal;
    } else {
      chain.doubtful = std::move(row);
    }
  }

  void finish() {
    for (auto& [place, chain] : chains_) settle_doubt(place.first, place.second, chain, nullptr);
    for (const auto& [place, bytes] : copied_) {
      Chain& chain = chains_[{place.first, journal_.device()}];
      if (chain.head.seq == 0 && !chain.begun) {
        chain.head.digest = chain_start(place.first, journal_.device());
        chain.begun = true;
      }
      if (place.second == chain.head.seq + 1) fill(place.first, journal_.device(), chain);
    }
    if (transaction_ && !error) {
      if (auto done = transaction_->commit(); !done) error = done.error();
    }
    transaction_.reset();
  }

  std::int64_t from_journal = 0;
  std::int64_t from_copy = 0;
  std::int64_t unjoined = 0;
  std::optional<Error> error;

 private:
  struct Chain {
    ChainHead head;
    bool begun = false;
    std::optional<JournalRow> doubtful;  ///< bytes or digest damaged: the next row tells
  };

  /// The next record of this device's chain from the second copy.
  bool fill(const Uuid& feed, const Uuid& device, Chain& chain) {
    if (device != journal_.device()) return false;
    const auto found = copied_.find({feed, chain.head.seq + 1});
    if (found == copied_.end()) return false;
    auto record = decode_record(found->second);
    if (!record) return false;
    JournalRow row;
    row.seq = chain.head.seq + 1;
    row.id = record->id;
    row.bytes = found->second;
    append(feed, device, chain, std::move(row));
    ++from_copy;
    return true;
  }

  void settle_doubt(const Uuid& feed, const Uuid& device, Chain& chain, const JournalRow* next) {
    if (!chain.doubtful) return;
    JournalRow row = std::move(*chain.doubtful);
    chain.doubtful.reset();
    const Digest with = chain_next(chain.head.digest, row.bytes);
    if (next != nullptr && next->seq == row.seq + 1 &&
        chain_next(with, next->bytes) == next->digest) {
      append(feed, device, chain, std::move(row));  // only its digest was damaged
      ++from_journal;
    } else if (!fill(feed, device, chain)) {
      ++unjoined;
    }
  }

  void append(const Uuid& feed, const Uuid& device, Chain& chain, JournalRow row) {
    if (error) return;
    const auto note = [&](const auto& result) {
      if (!result && !error) error = result.error();
      return result.has_value();
    };
    if (!transaction_) {
      auto begun = Transaction::begin(database_);
      if (!note(begun)) return;
      transaction_.emplace(std::move(*begun));
    }
    auto feed_number = journal_.feed_number(feed);
    auto device_number = journal_.device_number(device);
    if (!note(feed_number) || !note(device_number)) return;
    if (auto record = decode_record(row.bytes)) row.id = record->id;  // its column may be damaged
    row.feed = *feed_number;
    row.dev = *device_number;
    row.digest = chain_next(chain.head.digest, row.bytes);
    chain.head = {row.seq, row.digest};
    if (!note(journal_.append(row))) return;
    if (++appended_ % commit_every != 0) return;
    if (note(transaction_->commit())) transaction_.reset();
  }

  Journal& journal_;
  Database& database_;
  const Copied& copied_;
  std::map<std::pair<Uuid, Uuid>, Chain> chains_;
  std::optional<Transaction> transaction_;
  std::int64_t appended_ = 0;
};

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

std::int64_t last_lid(Database& database) {
  if (auto last = database.number("SELECT coalesce(max(lid), 0) FROM journal")) return *last;
  auto other =
      database.number("SELECT coalesce(max(lid), 0) FROM journal INDEXED BY journal_by_id");
  return other ? *other : 0;
}

void copy_drafts_and_settings(Database& from, Database& to) {
  if (auto drafts = read_drafts(from)) {
    for (const auto& draft : *drafts) (void)put_draft(to, draft);
  }
  for (const char* name : {"segment", "segment_boot", "segment_base_ms", "segment_monotonic_ms"}) {
    auto value = read_setting(from, name);
    if (value && *value) (void)write_setting(to, name, **value);
  }
}

void read_damaged(Database& old, const Uuid& own_device, Joiner& joiner) {
  const auto feeds = numbers_of(old, "SELECT n, id FROM feed");
  const auto devices = numbers_of(old, "SELECT n, id FROM device");
  auto rows = DamagedJournal::open(old);
  if (!rows || !devices.contains(1) || devices.at(1) != own_device) return;
  rows->read(1, last_lid(old), [&](const JournalRow& row) {
    const auto feed = feeds.find(row.feed);
    const auto device = devices.find(row.dev);
    if (feed == feeds.end() || device == devices.end()) {
      ++joiner.unjoined;
      return;
    }
    joiner.take(feed->second, device->second, row);
  });
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

Result<Copied> read_copied(RegisterState& state) {
  Copied copied;
  auto reading = state.copy->read([&](std::span<const CopyFrame> group) {
    for (const auto& frame : group) {
      if (frame.type == CopyFrame::Type::record) copied[{frame.feed, frame.seq}] = frame.bytes;
    }
    return true;
  });
  if (!reading) return fail(reading.error());
  return copied;
}

struct Made {
  std::int64_t from_journal = 0;
  std::int64_t from_copy = 0;
  std::int64_t unjoined = 0;
};

/// The new register under its other name, complete when it returns.
Result<Made> make_beside(RegisterState& state, const Copied& copied) {
  const auto path = beside(state.places);
  if (auto done = remove_database(*state.files, path); !done) return fail(done.error());
  auto made = make_database(*state.files, path, state.identity.device);
  if (!made) return fail(made.error());
  auto journal = Journal::open(**made);
  if (!journal) return fail(journal.error());
  Joiner joiner(*journal, **made, copied);
  if (state.files->exists(state.places.records())) {
    auto old = Database::open(
        {state.places.records().string(), Database::Access::read, state.files->sqlite_layer()});
    if (old) {
      read_damaged(*old, state.identity.device, joiner);
      copy_drafts_and_settings(*old, **made);
    }
  }
  joiner.finish();
  if (joiner.error) return *joiner.error;
  state.database = std::move(*made);
  state.journal = std::move(*journal);
  state.attach_tables();
  if (auto done = restore_clocks(state); !done) return fail(done.error());
  auto folded = rebuild_tables(state, {});
  state.close_database();  // writes the log into the file
  if (!folded) return fail(folded.error());
  return Made{joiner.from_journal, joiner.from_copy, joiner.unjoined};
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
  auto opened =
      Database::open({state.places.records().string(), access, state.files->sqlite_layer()});
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
  auto copied = read_copied(state);
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
  state.note(told + std::to_string(made->from_journal) + " records from the old file, " +
             std::to_string(made->from_copy) + " from the second copy, " +
             std::to_string(made->unjoined) + " could not be read or joined.");
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
