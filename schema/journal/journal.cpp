#include "schema/journal/journal.h"

#include <algorithm>
#include <string>
#include <string_view>

#include "schema/sql_text.h"

namespace kneerail {
namespace {

Result<std::map<std::int64_t, Uuid>> numbered(Database& database, std::string_view sql) {
  auto statement = database.prepare(sql);
  if (!statement) return fail(statement.error());
  std::map<std::int64_t, Uuid> found;
  for (;;) {
    auto more = statement->step();
    if (!more) return fail(more.error());
    if (!*more) return found;
    found[statement->number(0)] = statement->uuid(1);
  }
}

void bind_number(Statement& statement, int place, const std::optional<std::int64_t>& number) {
  if (number) {
    statement.bind(place, *number);
  } else {
    statement.bind_null(place);
  }
}

Digest digest_at(const Statement& statement, int column) {
  Digest digest{};
  const auto bytes = statement.bytes(column);
  if (bytes.size() == digest.size()) std::ranges::copy(bytes, digest.begin());
  return digest;
}

}  // namespace

Digest chain_start(const Uuid& feed, const Uuid& device) {
  return Sha256()
      .add(std::string_view("kneerail chain 1"))
      .add(feed.bytes)
      .add(device.bytes)
      .finish();
}

Digest chain_next(const Digest& before, std::span<const std::uint8_t> record) {
  return Sha256().add(before).add(record).finish();
}

JournalRow journal_row(const Statement& statement) {
  JournalRow row;
  row.lid = statement.number(0);
  row.feed = statement.number(1);
  row.dev = statement.number(2);
  row.seq = statement.number(3);
  row.id = statement.uuid(4);
  const auto bytes = statement.bytes(5);
  row.bytes.assign(bytes.begin(), bytes.end());
  row.digest = digest_at(statement, 6);
  if (!statement.is_null(7)) {
    row.stamp = Stamp{statement.number(7), statement.number(8), statement.number(9)};
  }
  return row;
}

Result<Journal> Journal::open(Database& database) {
  Journal journal(database);
  struct Wanted {
    Statement& place;
    std::string sql;
  };
  const Wanted wanted[] = {
      {journal.holds_, "SELECT 1 FROM journal WHERE id = ? LIMIT 1"},
      {journal.head_,
       "SELECT seq, digest FROM journal WHERE feed = ? AND dev = ? ORDER BY seq DESC LIMIT 1"},
      {journal.append_,
       "INSERT INTO journal (feed, dev, seq, id, bytes, digest, hseq, recv, flags) "
       "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)"},
      {journal.put_feed_,
       "INSERT INTO feed (n, id, l, c, segment) VALUES (?, ?, ?, ?, ?) "
       "ON CONFLICT (n) DO UPDATE SET l = excluded.l, c = excluded.c, segment = excluded.segment"},
      {journal.rows_after_, std::string("SELECT ") + journal_columns +
                                " FROM journal WHERE lid > ? ORDER BY lid LIMIT ?"},
  };
  for (const auto& [place, sql] : wanted) {
    auto statement = database.prepare(sql);
    if (!statement) return fail(statement.error());
    place = std::move(*statement);
  }
  if (auto done = journal.reload(); !done) return fail(done.error());
  return journal;
}

Result<> Journal::reload() {
  auto feeds = numbered(*database_, "SELECT n, id FROM feed");
  if (!feeds) return fail(feeds.error());
  auto devices = numbered(*database_, "SELECT n, id FROM device");
  if (!devices) return fail(devices.error());
  if (!devices->contains(1)) {
    return fail(Fault::corrupt, "The register does not say which device it belongs to.");
  }
  feeds_ = std::move(*feeds);
  devices_ = std::move(*devices);
  return Done{};
}

Result<bool> Journal::holds(const Uuid& record) {
  holds_.bind(1, record);
  auto found = holds_.step();
  holds_.reset();
  return found;
}

Result<std::int64_t> Journal::number_of(std::map<std::int64_t, Uuid>& known, const Uuid& id,
                                        const char* insert) {
  for (const auto& [n, one] : known) {
    if (one == id) return n;
  }
  const std::int64_t n = known.empty() ? 1 : known.rbegin()->first + 1;
  auto statement = database_->prepare(insert);
  if (!statement) return fail(statement.error());
  statement->bind(1, n).bind(2, id);
  if (auto done = statement->run(); !done) return fail(done.error());
  known[n] = id;
  return n;
}

Result<std::int64_t> Journal::feed_number(const Uuid& feed) {
  return number_of(feeds_, feed, "INSERT INTO feed (n, id) VALUES (?, ?)");
}

Result<std::int64_t> Journal::device_number(const Uuid& device) {
  return number_of(devices_, device, "INSERT INTO device (n, id) VALUES (?, ?)");
}

Result<FeedState> Journal::feed_state(const Uuid& feed) {
  FeedState state;
  state.id = feed;
  state.own.digest = chain_start(feed, device());
  auto statement = database_->prepare("SELECT n, l, c, segment FROM feed WHERE id = ?");
  if (!statement) return fail(statement.error());
  statement->bind(1, feed);
  auto row = statement->step();
  if (!row) return fail(row.error());
  if (!*row) {
    state.n = feeds_.empty() ? 1 : feeds_.rbegin()->first + 1;
    return state;
  }
  state.n = statement->number(0);
  state.l = statement->number(1);
  state.c = static_cast<int>(statement->number(2));
  if (!statement->is_null(3)) state.segment = statement->number(3);
  auto own = head(state.n, 1);
  if (!own) return fail(own.error());
  state.own = *own;
  return state;
}

Result<> Journal::put_feed_state(const FeedState& state) {
  put_feed_.bind(1, state.n).bind(2, state.id).bind(3, state.l).bind(4, std::int64_t{state.c});
  bind_number(put_feed_, 5, state.segment);
  if (auto done = put_feed_.run(); !done) return done;
  feeds_[state.n] = state.id;
  return Done{};
}

Result<ChainHead> Journal::head(std::int64_t feed, std::int64_t dev) {
  head_.bind(1, feed).bind(2, dev);
  auto found = head_.step();
  if (!found) return fail(found.error());
  ChainHead head{0, chain_start(feeds_.at(feed), devices_.at(dev))};
  if (*found) head = {head_.number(0), digest_at(head_, 1)};
  head_.reset();
  return head;
}

Result<> Journal::append(const JournalRow& row) {
  append_.bind(1, row.feed).bind(2, row.dev).bind(3, row.seq).bind(4, row.id);
  append_.bind(5, std::span<const std::uint8_t>(row.bytes));
  append_.bind(6, std::span<const std::uint8_t>(row.digest));
  for (int place = 7; place <= 9; ++place) append_.bind_null(place);
  if (row.stamp) {
    append_.bind(7, row.stamp->hseq).bind(8, row.stamp->recv).bind(9, row.stamp->flags);
  }
  return append_.run();
}

Result<std::vector<JournalRow>> Journal::rows_after(std::int64_t lid, int count) {
  rows_after_.bind(1, lid).bind(2, std::int64_t{count});
  std::vector<JournalRow> rows;
  for (;;) {
    auto more = rows_after_.step();
    if (!more) return fail(more.error());
    if (!*more) return rows;
    rows.push_back(journal_row(rows_after_));
  }
}

Result<std::int64_t> Journal::count() {
  return database_->number("SELECT count(*) FROM journal");
}

Result<PlacedRecord> Journal::placed(const JournalRow& row) const {
  auto record = decode_record(row.bytes);
  if (!record) return fail(record.error());
  const auto feed = feeds_.find(row.feed);
  const auto device = devices_.find(row.dev);
  if (feed == feeds_.end() || device == devices_.end()) {
    return fail(Fault::corrupt, "A journal row names a feed or device that is not there.");
  }
  return PlacedRecord{std::move(*record), feed->second, device->second, row.seq, row.stamp};
}

// Steps -------------------------------------------------------------------------------------------

namespace {

Result<std::int64_t> last_step(Database& database) {
  auto there = database.number("SELECT count(*) FROM sqlite_schema WHERE name = 'step'");
  if (!there || *there == 0) return there;
  return database.number("SELECT coalesce(max(n), 0) FROM step");
}

}  // namespace

Result<bool> has_newer_steps(Database& database) {
  auto last = last_step(database);
  if (!last) return fail(last.error());
  return *last > std::ssize(journal_steps());
}

Result<> apply_steps(Database& database) {
  auto last = last_step(database);
  if (!last) return fail(last.error());
  if (*last == 0) {
    if (auto done = database.run("CREATE TABLE IF NOT EXISTS step (n INTEGER PRIMARY KEY) STRICT");
        !done) {
      return done;
    }
  }
  for (std::int64_t n = *last + 1; n <= std::ssize(journal_steps()); ++n) {
    if (auto done = database.run(journal_steps()[static_cast<std::size_t>(n - 1)]); !done) {
      return done;
    }
    if (auto done = database.run("INSERT INTO step (n) VALUES (" + std::to_string(n) + ")");
        !done) {
      return done;
    }
  }
  return Done{};
}

// Settings ----------------------------------------------------------------------------------------

Result<std::optional<std::int64_t>> read_setting(Database& database, std::string_view name) {
  auto statement = database.prepare("SELECT value FROM setting WHERE name = ?");
  if (!statement) return fail(statement.error());
  statement->bind(1, name);
  auto found = statement->step();
  if (!found) return fail(found.error());
  if (!*found) return std::optional<std::int64_t>{};
  return std::optional(statement->number(0));
}

Result<> write_setting(Database& database, std::string_view name, std::int64_t value) {
  auto statement = database.prepare("INSERT OR REPLACE INTO setting (name, value) VALUES (?, ?)");
  if (!statement) return fail(statement.error());
  statement->bind(1, name).bind(2, value);
  return statement->run();
}

}  // namespace kneerail
