#pragma once

// The journal: every record of this folder, exactly as it was written, bound to the one before it
// in its chain by a digest.
//
//   d(0) = SHA-256( "kneerail chain 1" || feed || device )
//   d(n) = SHA-256( d(n-1) || record(n) )
//
// So a record cannot be moved to another place, feed or device, nor changed, without it showing.

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "core/records/record.h"
#include "schema/database.h"
#include "schema/digest.h"

namespace kneerail {

Digest chain_start(const Uuid& feed, const Uuid& device);
Digest chain_next(const Digest& before, std::span<const std::uint8_t> record);

struct ChainHead {
  std::int64_t seq = 0;  ///< 0: no record yet
  Digest digest{};
};

/// What this device knows of a feed: table feed.
struct FeedState {
  std::int64_t n = 0;  ///< its number here
  Uuid id;
  std::int64_t l = 0;  ///< hybrid clock
  int c = 0;
  std::optional<std::int64_t> segment;  ///< clock segment last told in this feed
  ChainHead own;                        ///< head of this device's chain
};

struct JournalRow {
  std::int64_t lid = 0;
  std::int64_t feed = 0;  ///< number in table feed
  std::int64_t dev = 0;   ///< number in table device
  std::int64_t seq = 0;
  Uuid id;
  cbor::Bytes bytes;
  Digest digest{};
  std::optional<Stamp> stamp;
};

/// Errors of every call: io, corrupt.
class Journal {
 public:
  /// This device is device number 1. `database` outlives the journal.
  static Result<Journal> open(Database& database);

  [[nodiscard]] const Uuid& device() const { return devices_.at(1); }
  [[nodiscard]] const std::map<std::int64_t, Uuid>& devices() const { return devices_; }
  [[nodiscard]] const std::map<std::int64_t, Uuid>& feeds() const { return feeds_; }

  Result<bool> holds(const Uuid& record);
  /// As it stands in the table; where the feed is not known yet, a new one with the next number.
  Result<FeedState> feed_state(const Uuid& feed);
  Result<> put_feed_state(const FeedState& state);
  /// The number of a feed or device, given when it is new.
  Result<std::int64_t> feed_number(const Uuid& feed);
  Result<std::int64_t> device_number(const Uuid& device);
  Result<ChainHead> head(std::int64_t feed, std::int64_t dev);
  /// The row's lid is given by the table.
  Result<> append(const JournalRow& row);
  /// At most `count` rows behind a lid, in order of arrival.
  Result<std::vector<JournalRow>> rows_after(std::int64_t lid, int count);
  Result<std::int64_t> count();
  /// Reads feeds and devices again, after a rollback.
  Result<> reload();

  /// The row as the fold takes it. Errors: corrupt.
  Result<PlacedRecord> placed(const JournalRow& row) const;

 private:
  explicit Journal(Database& database) : database_(&database) {}
  Result<std::int64_t> number_of(std::map<std::int64_t, Uuid>& known, const Uuid& id,
                                 const char* insert);

  Database* database_;
  std::map<std::int64_t, Uuid> feeds_;
  std::map<std::int64_t, Uuid> devices_;
  Statement holds_, head_, append_, put_feed_, rows_after_;
};

/// A journal row from columns lid, feed, dev, seq, id, bytes, digest, hseq, recv, flags.
JournalRow journal_row(const Statement& statement);
inline constexpr const char* journal_columns =
    "lid, feed, dev, seq, id, bytes, digest, hseq, recv, flags";

/// Applies the numbered steps that are missing. Errors: invalid_input (made by a newer program;
/// nothing was changed), io.
Result<> apply_steps(Database& database);
/// Whether a newer program wrote the register, from its steps.
Result<bool> has_newer_steps(Database& database);

Result<std::optional<std::int64_t>> read_setting(Database& database, std::string_view name);
Result<> write_setting(Database& database, std::string_view name, std::int64_t value);

}  // namespace kneerail
