#include "schema/journal/start_checks.h"

#include <algorithm>
#include <map>
#include <utility>
#include <vector>

#include "schema/journal/draft.h"
#include "schema/journal/rescue.h"
#include "schema/store/saving.h"

namespace kneerail {
namespace {

constexpr std::size_t batch = 2000;

std::string numbered(std::int64_t count, const char* one, const char* many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

/// Records gathered until a batch is worth a transaction; drafts as the frames leave them.
class Comparison {
 public:
  /// `only_drafts`: the records stand under other numbers than the journal's, and are in it.
  Comparison(RegisterState& state, bool only_drafts) : state_(state), only_drafts_(only_drafts) {}

  /// False stops the reading; the reason is in error().
  bool take(std::span<const CopyFrame> group) {
    for (const auto& frame : group) {
      if (frame.type == CopyFrame::Type::record) {
        if (!only_drafts_) take_record(frame);
      } else {
        take_draft(frame);
      }
      if (error_) return false;
    }
    return waiting_.size() < batch || append();
  }

  bool append() {
    if (waiting_.empty()) return true;
    if (auto done = append_again(state_, waiting_); !done) {
      error_ = done.error();
      return false;
    }
    appended_ += std::ssize(waiting_);
    waiting_.clear();
    return true;
  }

  [[nodiscard]] const std::optional<Error>& error() const { return error_; }
  [[nodiscard]] std::int64_t appended() const { return appended_; }
  [[nodiscard]] std::int64_t unjoined() const { return unjoined_; }
  [[nodiscard]] const std::vector<Draft>& drafts() const { return drafts_; }

 private:
  void take_record(const CopyFrame& frame) {
    auto head = heads_.find(frame.feed);
    if (head == heads_.end()) {
      auto feed = state_.journal->feed_state(frame.feed);
      if (!feed) {
        error_ = feed.error();
        return;
      }
      head = heads_.emplace(frame.feed, feed->own.seq).first;
    }
    if (frame.seq <= head->second) return;
    if (frame.seq != head->second + 1 || !decode_record(frame.bytes)) {
      ++unjoined_;
      return;
    }
    head->second = frame.seq;
    waiting_.push_back(frame);
  }

  void take_draft(const CopyFrame& frame) {
    auto draft = decode_draft(frame.bytes);
    if (!draft) return;
    std::erase_if(drafts_, [&](const Draft& one) { return same_place(one, *draft); });
    if (frame.type == CopyFrame::Type::draft) drafts_.push_back(std::move(*draft));
  }

  RegisterState& state_;
  bool only_drafts_;
  std::map<Uuid, std::int64_t> heads_;
  std::vector<CopyFrame> waiting_;
  std::vector<Draft> drafts_;
  std::optional<Error> error_;
  std::int64_t appended_ = 0;
  std::int64_t unjoined_ = 0;
};

Result<> put_drafts(RegisterState& state, const std::vector<Draft>& drafts, bool only_these) {
  auto held = read_drafts(*state.database);
  // A draft that cannot be read any more stands in the way of nothing: the second copy's count.
  const std::vector<Draft> before = held ? std::move(*held) : std::vector<Draft>{};
  auto transaction = Transaction::begin(*state.database);
  if (!transaction) return fail(transaction.error());
  for (const auto& draft : before) {
    const bool stays = !only_these || std::ranges::any_of(drafts, [&](const Draft& one) {
      return same_place(one, draft);
    });
    if (stays) continue;
    if (auto done = erase_draft(*state.database, draft); !done) return done;
  }
  for (const auto& draft : drafts) {
    if (auto done = put_draft(*state.database, draft); !done) return done;
  }
  return transaction->commit();
}

/// Runs of sequence numbers, one after the other; frames come in their order.
struct Runs {
  std::vector<std::pair<std::int64_t, std::int64_t>> all;

  void add(std::int64_t seq) {
    if (!all.empty() && seq == all.back().second + 1) {
      all.back().second = seq;
    } else if (!contains(seq)) {
      all.emplace_back(seq, seq);
    }
  }
  [[nodiscard]] bool contains(std::int64_t seq) const {
    return std::ranges::any_of(
        all, [&](const auto& run) { return run.first <= seq && seq <= run.second; });
  }
  [[nodiscard]] std::int64_t count_behind(std::int64_t seq) const {
    std::int64_t count = 0;
    for (const auto& [first, last] : all) {
      count += std::max<std::int64_t>(0, last - std::max(first - 1, seq));
    }
    return count;
  }
};

/// The second copy written anew under another name and put in place when it is whole.
Result<std::int64_t> write_copy(RegisterState& state) {
  std::filesystem::path beside = state.places.copy();
  beside += ".new";
  if (state.files->exists(beside)) {
    if (auto done = state.files->remove(beside); !done) return fail(done.error());
  }
  auto copy = SecondCopy::open(*state.files, beside, state.journal->device());
  if (!copy) return fail(copy.error());
  auto statement = state.database->prepare(
      "SELECT feed, seq, bytes FROM journal WHERE hseq IS NULL AND dev = 1 ORDER BY lid");
  if (!statement) return fail(statement.error());
  std::vector<CopyFrame> group;
  std::int64_t written = 0;
  for (bool more = true; more;) {
    auto row = statement->step();
    if (!row) return fail(row.error());
    more = *row;
    if (more) {
      const auto bytes = statement->bytes(2);
      group.push_back({CopyFrame::Type::record,
                       state.journal->feeds().at(statement->number(0)),
                       statement->number(1),
                       {bytes.begin(), bytes.end()}});
      ++written;
    }
    if (group.empty() || (more && group.size() < batch)) continue;
    if (auto done = copy->append(group); !done) return fail(done.error());
    group.clear();
  }
  auto drafts = read_drafts(*state.database);
  if (!drafts) return fail(drafts.error());
  for (const auto& draft : *drafts) {
    const CopyFrame frame{CopyFrame::Type::draft, draft.feed, 0, encode(draft)};
    if (auto done = copy->append(std::span(&frame, 1)); !done) return fail(done.error());
  }
  // What could not be read or joined in the old one may still be wanted: it is not deleted.
  const auto aside = free_name_beside(*state.files, state.places.copy());
  if (auto done = state.files->rename(state.places.copy(), aside); !done) return fail(done.error());
  if (auto done = state.files->rename(beside, state.places.copy()); !done) {
    return fail(done.error());
  }
  state.copy = std::move(*copy);
  return written;
}

}  // namespace

std::filesystem::path free_name_beside(Files& files, const std::filesystem::path& path) {
  for (int n = 1;; ++n) {
    std::filesystem::path name = path;
    name += ".damaged-" + std::to_string(n);
    if (!files.exists(name)) return name;
  }
}

std::optional<std::string> damage_of_file(Database& database) {
  auto statement = database.prepare("PRAGMA quick_check(1)");
  if (!statement) return statement.error().message;
  auto row = statement->step();
  if (!row) return row.error().message;
  if (statement->text(0) == "ok") return std::nullopt;
  return std::string(statement->text(0));
}

std::optional<std::string> damage_of_unsent(Database& database, const Journal& journal) {
  auto statement = database.prepare(
      std::string("SELECT ") + journal_columns +
      " FROM journal INDEXED BY journal_unsent WHERE hseq IS NULL ORDER BY feed, dev, seq");
  auto before =
      database.prepare("SELECT digest FROM journal WHERE feed = ? AND dev = ? AND seq = ?");
  if (!statement) return statement.error().message;
  if (!before) return before.error().message;
  JournalRow last;
  for (;;) {
    auto more = statement->step();
    if (!more) return more.error().message;
    if (!*more) return std::nullopt;
    JournalRow row = journal_row(*statement);
    if (!journal.feeds().contains(row.feed) || !journal.devices().contains(row.dev)) {
      return "a record names a feed or device that is not there";
    }
    Digest digest = last.digest;
    if (row.seq == 1) {
      digest = chain_start(journal.feeds().at(row.feed), journal.devices().at(row.dev));
    } else if (last.feed != row.feed || last.dev != row.dev || last.seq + 1 != row.seq) {
      before->bind(1, row.feed).bind(2, row.dev).bind(3, row.seq - 1);
      auto found = before->step();
      if (!found) return found.error().message;
      if (!*found) return "record " + std::to_string(row.seq - 1) + " of a chain is missing";
      std::ranges::copy(before->bytes(0).first(digest.size()), digest.begin());
      before->reset();
    }
    // The column id is not under the digest; the record it was taken from is.
    if (std::ranges::search(std::span(row.bytes).first(std::min<std::size_t>(row.bytes.size(), 24)),
                            row.id.bytes)
            .empty()) {
      return "record " + std::to_string(row.seq) + " of a chain stands under another id";
    }
    if (chain_next(digest, row.bytes) != row.digest) {
      return "the digest of record " + std::to_string(row.seq) + " of a chain does not fit";
    }
    last = std::move(row);
  }
}

Result<> open_copy(RegisterState& state) {
  auto copy = SecondCopy::open(*state.files, state.places.copy(), state.identity.device);
  if (!copy && copy.error().fault == Fault::corrupt) {
    const auto aside = free_name_beside(*state.files, state.places.copy());
    if (auto done = state.files->rename(state.places.copy(), aside); !done) return done;
    state.note("The second copy of unsent records was damaged and set aside as " +
               aside.filename().string() + ".");
    copy = SecondCopy::open(*state.files, state.places.copy(), state.identity.device);
  }
  if (!copy) return fail(copy.error());
  state.copy = std::move(*copy);
  return Done{};
}

Result<> compare_with_copy(RegisterState& state) {
  auto old_numbers = read_setting(*state.database, copy_numbers_setting);
  if (!old_numbers) return fail(old_numbers.error());
  Comparison comparison(state, old_numbers->value_or(0) != 0);
  auto reading =
      state.copy->read([&](std::span<const CopyFrame> group) { return comparison.take(group); });
  if (!reading) return fail(reading.error());
  if (!comparison.error()) comparison.append();
  if (comparison.error()) return *comparison.error();
  state.opening.records_recovered += comparison.appended();
  if (comparison.appended() > 0) {
    state.note(numbered(comparison.appended(), "record was", "records were") +
               " missing in the register and came back from the second copy.");
  }
  if (comparison.unjoined() > 0) {
    state.note(numbered(comparison.unjoined(), "record", "records") +
               " of the second copy could not be joined: what was written before is missing. "
               "They stay in the second copy.");
  }
  if (reading->frames == 0 && comparison.drafts().empty())
    return Done{};  // a new file says nothing
  return put_drafts(state, comparison.drafts(), reading->damaged == 0);
}

Result<CopyCheck> check_copy(SecondCopy& copy, Database& database, Journal& journal) {
  CopyCheck check;
  std::map<Uuid, Runs> runs;
  auto reading = copy.read([&](std::span<const CopyFrame> group) {
    for (const auto& frame : group) {
      if (frame.type == CopyFrame::Type::record) runs[frame.feed].add(frame.seq);
    }
    return true;
  });
  if (!reading) return fail(reading.error());
  check.damaged = reading->damaged;
  for (const auto& [feed, of_feed] : runs) {
    auto state = journal.feed_state(feed);
    if (!state) return fail(state.error());
    check.beyond += of_feed.count_behind(state->own.seq);
  }
  auto statement = database.prepare(
      "SELECT feed, seq FROM journal INDEXED BY journal_unsent WHERE hseq IS NULL AND dev = 1");
  if (!statement) return fail(statement.error());
  for (;;) {
    auto more = statement->step();
    if (!more) return fail(more.error());
    if (!*more) return check;
    const auto feed = journal.feeds().find(statement->number(0));
    if (feed == journal.feeds().end() || !runs[feed->second].contains(statement->number(1))) {
      ++check.lacking;
    }
  }
}

Result<> mend_copy(RegisterState& state) {
  auto old_numbers = read_setting(*state.database, copy_numbers_setting);
  if (!old_numbers) return fail(old_numbers.error());
  auto check = check_copy(*state.copy, *state.database, *state.journal);
  if (!check) return fail(check.error());
  if (check->lacking > 0 || check->damaged > 0 || old_numbers->value_or(0) != 0) {
    auto written = write_copy(state);
    if (!written) return fail(written.error());
    if (*old_numbers) {
      auto done = write_setting(*state.database, copy_numbers_setting, 0);
      if (!done) return done;
    }
    state.note("The second copy of unsent records was not whole; it was written again with " +
               numbered(*written, "record", "records") + "; the old one was set aside.");
    return Done{};
  }
  if (state.copy->is_empty()) return Done{};
  auto unsent = state.database->number("SELECT count(*) FROM journal WHERE hseq IS NULL");
  auto drafts = state.database->number("SELECT count(*) FROM draft");
  if (!unsent) return fail(unsent.error());
  if (!drafts) return fail(drafts.error());
  if (*unsent > 0 || *drafts > 0) return Done{};
  return state.copy->start_anew();
}

}  // namespace kneerail
