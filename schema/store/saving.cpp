#include "schema/store/saving.h"

#include <algorithm>
#include <set>
#include <utility>

#include "core/fold/columns.h"
#include "core/fold/fold.h"
#include "core/records/hybrid_clock.h"
#include "schema/journal/draft.h"

namespace kneerail {
namespace {

constexpr int kind_create = 1;
constexpr int kind_grade = 20;
constexpr int kind_finding = 30;
constexpr int kind_clock = 80;
/// The rows of the walk so far stay at hand for the next entry: at most about 20 MB.
constexpr std::size_t kept_cells_max = 200'000;
constexpr std::int64_t room_low_bytes = std::int64_t{8} << 20;

/// One record with its place, before anything is written.
struct Planned {
  Record record;
  JournalRow row;
};

struct Plan {
  std::vector<Planned> records;
  std::map<Uuid, FeedState> feeds;  ///< as they will stand
  std::vector<Uuid> ids;            ///< one an entry, in order
};

Error not_writable(const RegisterState& state) {
  return fail(Fault::conflict,
              state.places.folder.string() +
                  ": The register was opened for reading only. Nothing was saved.");
}

Result<FeedState*> feed_of(RegisterState& state, Plan& plan, const Uuid& feed) {
  if (auto planned = plan.feeds.find(feed); planned != plan.feeds.end()) return &planned->second;
  if (auto known = state.feeds.find(feed); known != state.feeds.end()) {
    return &plan.feeds.emplace(feed, known->second).first->second;
  }
  auto read = state.journal->feed_state(feed);
  if (!read) return fail(read.error());
  // Several feeds may be new in one transaction: each takes the next number that none has.
  const auto taken = [&](const auto& planned) { return planned.second.n == read->n; };
  while (std::ranges::any_of(plan.feeds, taken)) ++read->n;
  return &plan.feeds.emplace(feed, std::move(*read)).first->second;
}

/// The hybrid clock's next reading for an own entry: never behind the wall clock, never twice the
/// same.
void tick(FeedState& feed, std::int64_t wall_ms) {
  const auto next = own_entry({feed.l, feed.c}, std::max<std::int64_t>(0, wall_ms));
  feed.l = next.l;
  feed.c = next.c;
}

Result<> place(RegisterState& state, FeedState& feed, Record record, Plan& plan) {
  const std::int64_t wall_ms = state.clock->now().ms;
  tick(feed, wall_ms);
  record.l = feed.l;
  record.c = feed.c;
  record.w = wall_ms - feed.l;
  record.g = static_cast<int>(state.segment.g);
  if (auto ok = check_limits(record); !ok) return ok;
  Planned planned;
  planned.row.bytes = encode(record);
  if (planned.row.bytes.size() > record_bytes_max) {
    return fail(Fault::invalid_input,
                "The entry is longer than a record may be. Nothing was saved.");
  }
  feed.own.seq += 1;
  feed.own.digest = chain_next(feed.own.digest, planned.row.bytes);
  planned.row.feed = feed.n;
  planned.row.dev = 1;
  planned.row.seq = feed.own.seq;
  planned.row.id = record.id;
  planned.row.digest = feed.own.digest;
  planned.record = std::move(record);
  plan.records.push_back(std::move(planned));
  return Done{};
}

Result<> tell_segment(RegisterState& state, FeedState& feed, Plan& plan) {
  if (feed.segment == state.segment.g) return Done{};
  feed.segment = state.segment.g;
  Record record;
  record.kind = kind_clock;
  record.id = mint_id(state);
  record.subject = state.journal->device();
  record.body = state.segment.told(*state.clock);
  return place(state, feed, std::move(record), plan);
}

Result<> plan_entry(RegisterState& state, const Entry& entry, std::set<Uuid>& given, Plan& plan) {
  if (entry.id) {
    auto held = state.journal->holds(*entry.id);
    if (!held) return fail(held.error());
    if (*held || !given.insert(*entry.id).second) {
      plan.ids.push_back(*entry.id);
      return Done{};
    }
  }
  if (entry.feed.is_zero()) {
    return fail(Fault::invalid_input, "The entry names no site or organisation.");
  }
  auto feed = feed_of(state, plan, entry.feed);
  if (!feed) return fail(feed.error());
  if (auto told = tell_segment(state, **feed, plan); !told) return told;
  Record record;
  record.kind = entry.kind;
  record.id = entry.id ? *entry.id : mint_id(state);
  record.who = entry.who;
  record.subject = entry.kind == kind_create && entry.subject.is_zero() ? record.id : entry.subject;
  record.body = entry.body;
  plan.ids.push_back(record.id);
  return place(state, **feed, std::move(record), plan);
}

Result<Plan> plan_entries(RegisterState& state, std::span<const Entry> entries) {
  state.segment.look(*state.clock);
  Plan plan;
  plan.records.reserve(entries.size() + 2);
  std::set<Uuid> given;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (auto done = plan_entry(state, entries[i], given, plan); !done) {
      const std::string which = entries.size() == 1 ? "" : "Entry " + std::to_string(i + 1) + ": ";
      return fail(done.error(), which);
    }
  }
  return plan;
}

std::vector<CopyFrame> frames_of(const Plan& plan, const Draft* ended) {
  std::map<std::int64_t, Uuid> feeds;
  for (const auto& [id, feed] : plan.feeds) feeds[feed.n] = id;
  std::vector<CopyFrame> frames;
  frames.reserve(plan.records.size() + 1);
  for (const auto& planned : plan.records) {
    frames.push_back(
        {CopyFrame::Type::record, feeds.at(planned.row.feed), planned.row.seq, planned.row.bytes});
  }
  if (ended != nullptr) {
    frames.push_back({CopyFrame::Type::draft_ended, ended->feed, 0, encode(*ended)});
  }
  return frames;
}

Result<> write_rows(RegisterState& state, const Plan& plan, const Draft* ended) {
  for (const auto& [id, feed] : plan.feeds) {
    if (auto done = state.journal->put_feed_state(feed); !done) return done;
  }
  if (!state.segment.stored) {
    if (auto done = state.segment.write(*state.database); !done) return done;
  }
  fold::Batch batch(*state.cache);  // rows that stand for many of these records are made once
  for (const auto& planned : plan.records) {
    if (auto done = state.journal->append(planned.row); !done) return done;
    batch.add({planned.record, state.journal->feeds().at(planned.row.feed), state.journal->device(),
               planned.row.seq, std::nullopt});
  }
  batch.finish();
  if (ended != nullptr) {
    if (auto done = erase_draft(*state.database, *ended); !done) return done;
  }
  state.cache->flush();
  if (auto error = state.cache->error()) return *error;
  return Done{};
}

/// What was read and prepared for a transaction that did not happen.
void forget_refused(RegisterState& state) {
  state.copy->take_back();
  state.cache->forget();
  state.tables->forget_error();
  state.segment.stored = false;
  // Where even this fails the next save reads what it needs and fails with its own sentence.
  (void)state.journal->reload();
}

/// How long the log grows before a commit brings it home. A saved reading writes about nine pages
/// and most of them change at the next one again: 4,000 pages (16 MB) make every 400th of them wait
/// for that, and write each page into the file once for many. Large transactions do so even more.
void set_log(RegisterState& state, std::size_t records) {
  constexpr std::size_t large = 500;
  const int wanted = records >= large ? 20'000 : 4'000;
  if (wanted == state.log_pages) return;
  const auto pragma = "PRAGMA wal_autocheckpoint=" + std::to_string(wanted);
  if (state.database->run(pragma)) state.log_pages = wanted;
}

Result<> write_plan(RegisterState& state, const Plan& plan, const Draft* ended) {
  const auto frames = frames_of(plan, ended);
  if (frames.empty()) return Done{};
  // On its way to the disk while the rows are made, and there before they are committed.
  if (auto copied = state.copy->start_append(frames); !copied) return copied;
  set_log(state, plan.records.size());
  const auto in_transaction = [&]() -> Result<> {
    auto transaction = Transaction::begin(*state.database);
    if (!transaction) return fail(transaction.error());
    if (auto done = write_rows(state, plan, ended); !done) return done;
    if (auto copied = state.copy->sync(); !copied) return copied;
    return transaction->commit();
  };
  if (auto done = in_transaction(); !done) {
    forget_refused(state);
    return done;
  }
  state.cache->make_room(kept_cells_max);
  for (const auto& [id, feed] : plan.feeds) state.feeds.insert_or_assign(id, feed);
  return Done{};
}

/// The ballast goes when the disk is full, so that what a person is just typing still fits.
bool freed_room(RegisterState& state) {
  const auto& spare = state.places.spare();
  if (state.files->free_bytes(state.places.folder) >= room_low_bytes) return false;
  if (!state.files->exists(spare) || !state.files->remove(spare)) return false;
  state.note("The disk is full. The register's reserve was freed; make room soon.");
  return true;
}

template <class Action>
Result<> with_reserve(RegisterState& state, const Action& action) {
  auto done = action();
  if (done || done.error().fault != Fault::io || !freed_room(state)) return done;
  return action();
}

void remember_new_feeds(RegisterState& state) {
  const auto known = state.identity.feeds.size();
  for (const auto& [n, id] : state.journal->feeds()) {
    if (std::ranges::find(state.identity.feeds, id) == state.identity.feeds.end()) {
      state.identity.feeds.push_back(id);
    }
  }
  if (state.identity.feeds.size() == known) return;
  // The list helps a rescue only; a save that is on disk is not undone for it.
  (void)write_identity(*state.files, state.places.identity(), state.identity);
}

}  // namespace

Uuid mint_id(RegisterState& state) {
  std::array<std::uint8_t, 10> bytes{};
  state.random->fill(bytes);
  return uuid7(std::max<std::int64_t>(0, state.clock->now().ms), bytes);
}

Result<std::vector<Uuid>> save_entries(RegisterState& state, std::span<const Entry> entries,
                                       const Draft* ended) {
  if (!state.opening.writable) return not_writable(state);
  auto plan = plan_entries(state, entries);
  if (!plan) return fail(plan.error());
  auto done = with_reserve(state, [&] { return write_plan(state, *plan, ended); });
  if (!done) return fail(done.error(), "Not saved. ");
  remember_new_feeds(state);
  return std::move(plan->ids);
}

Result<> save_draft_touch(RegisterState& state, const Draft& draft) {
  if (!state.opening.writable) return not_writable(state);
  const CopyFrame frame{CopyFrame::Type::draft, draft.feed, 0, encode(draft)};
  if (frame.bytes.size() > record_bytes_max) {
    return fail(Fault::invalid_input,
                "The entry is longer than a record may be. Nothing was saved.");
  }
  auto done = with_reserve(state, [&]() -> Result<> {
    if (auto copied = state.copy->start_append(std::span(&frame, 1)); !copied) return copied;
    const auto in_transaction = [&]() -> Result<> {
      auto transaction = Transaction::begin(*state.database);
      if (!transaction) return fail(transaction.error());
      if (auto put = put_draft(*state.database, draft); !put) return put;
      if (auto copied = state.copy->sync(); !copied) return copied;
      return transaction->commit();
    };
    auto kept = in_transaction();
    if (!kept) forget_refused(state);
    return kept;
  });
  if (!done) return fail(done.error(), "Not saved. ");
  return Done{};
}

// Drafts ------------------------------------------------------------------------------------------

namespace {

Result<std::int64_t> next_finding_number(RegisterState& state, const Draft& draft) {
  auto statement = state.database->prepare(
      "SELECT coalesce(max(number), 0) + 1 FROM finding WHERE feed = ? AND who = ?");
  if (!statement) return fail(statement.error());
  statement->bind(1, draft.feed).bind(2, draft.who);
  auto row = statement->step();
  if (!row) return fail(row.error());
  return statement->number(0);
}

Result<bool> is_component(RegisterState& state, const Uuid& subject) {
  constexpr std::int64_t component = 7;
  auto row = state.tables->row(fold::table_entity, std::vector<fold::Cell>{subject});
  if (auto error = state.tables->error()) return *error;
  if (!row) return false;
  const auto& type = (*row)[static_cast<std::size_t>(fold::at(fold::entity_columns, "type"))];
  return type == fold::Cell(component);
}

}  // namespace

Result<std::vector<Entry>> entries_of(RegisterState& state, const Draft& draft, Closing closing) {
  enum Key : int {
    key_visit = 1,
    key_what,
    key_grade,
    key_hazard,
    key_number = 7,
    key_can_wait = 8
  };
  constexpr int what_other = 13;
  Entry entry{draft.feed, draft.kind, draft.subject, draft.who, draft.body, {}};
  if (const auto* id = draft.body.find(draft_key_id)) entry.id = id->uuid();
  entry.body.erase(draft_key_id);
  if (draft.kind != kind_finding) return std::vector{std::move(entry)};
  // Copies: what find() points at moves when a field is set.
  const auto value = [&](int key) -> std::optional<cbor::Value> {
    const auto* found = draft.body.find(key);
    return found == nullptr ? std::nullopt : std::optional(*found);
  };
  const auto grade = value(key_grade);
  const auto visit = value(key_visit);
  if (closing == Closing::at_start && grade) {
    if (grade == cbor::Value(5) && !value(key_can_wait)) entry.body.set(key_hazard, true);
    if (!entry.body.has(key_what)) entry.body.set(key_what, what_other);
  }
  if (!entry.body.has(key_hazard)) entry.body.set(key_hazard, false);
  if (!entry.body.has(key_number)) {
    auto number = next_finding_number(state, draft);
    if (!number) return fail(number.error());
    entry.body.set(key_number, *number);
  }
  std::vector<Entry> entries{entry};
  auto on_component = is_component(state, draft.subject);
  if (!on_component) return fail(on_component.error());
  if (*on_component && visit && grade) {
    Entry graded{draft.feed, kind_grade, draft.subject, draft.who, {}, {}};
    graded.body.set(key_visit, *visit);
    graded.body.set(2, *grade);
    entries.push_back(std::move(graded));
  }
  return entries;
}

// Again -------------------------------------------------------------------------------------------

Result<> append_again(RegisterState& state, std::span<const CopyFrame> records) {
  auto transaction = Transaction::begin(*state.database);
  if (!transaction) return fail(transaction.error());
  for (const auto& frame : records) {
    auto record = decode_record(frame.bytes);
    if (!record) return fail(record.error());
    auto feed = state.journal->feed_state(frame.feed);
    if (!feed) return fail(feed.error());
    feed->own.seq += 1;
    feed->own.digest = chain_next(feed->own.digest, frame.bytes);
    feed->l = std::max(feed->l, record->l);
    if (feed->l == record->l) feed->c = std::max(feed->c, record->c);
    if (record->kind == kind_clock) feed->segment = record->g;
    if (auto done = state.journal->put_feed_state(*feed); !done) return done;
    const JournalRow row{0,           feed->n,          1,           feed->own.seq, record->id,
                         frame.bytes, feed->own.digest, std::nullopt};
    if (auto done = state.journal->append(row); !done) return done;
    fold::add({*record, frame.feed, state.journal->device(), row.seq, std::nullopt}, *state.cache);
    state.segment.g = std::max<std::int64_t>(state.segment.g, record->g);
  }
  state.cache->flush();
  if (auto error = state.cache->error()) return *error;
  auto done = transaction->commit();
  state.cache->forget();
  return done;
}

}  // namespace kneerail
