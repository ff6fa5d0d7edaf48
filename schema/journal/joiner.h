#pragma once

// Records of a damaged journal put behind each other again. A record is taken where the chain's
// digest shows that it is what was written, or where the second copy holds it. Where some are lost
// for good, what this device wrote after them and the hub has not got is bound to the chain anew,
// under the next numbers: ids and bytes stay. The first record behind such a gap cannot be proved
// and counts as lost too.

#include <cstdint>
#include <map>
#include <optional>
#include <utility>

#include "schema/journal/journal.h"

namespace kneerail {

/// A feed and a device.
using ChainName = std::pair<Uuid, Uuid>;
/// This device's records by feed and sequence, from the second copy.
using Copied = std::map<std::pair<Uuid, std::int64_t>, cbor::Bytes>;

class Joiner {
 public:
  /// All three outlive it. `journal` and `database` are the new ones, empty.
  Joiner(Journal& journal, Database& database, const Copied& copied)
      : journal_(journal), database_(database), copied_(copied) {}

  /// The next row of the damaged journal. Rows of garbage do no harm.
  void take(const Uuid& feed, const Uuid& device, const JournalRow& row);
  /// What only the second copy holds, and the last commit.
  void finish();

  /// The last number of each chain as it was numbered before, as far as it is proved.
  [[nodiscard]] std::map<ChainName, std::int64_t> ends() const;

  std::int64_t from_journal = 0;
  std::int64_t from_copy = 0;
  bool renumbered = false;  ///< some stand under other numbers than in the second copy
  std::optional<Error> error;

 private:
  struct Chain {
    ChainHead head;                     ///< in the new journal
    ChainHead old;                      ///< in the damaged one
    std::optional<JournalRow> pending;  ///< not proved yet: the next row tells
    bool begun = false;
  };

  Chain& chain_of(const ChainName& name);
  bool join_through_copy(const ChainName& name, Chain& chain, const JournalRow& row);
  bool join_through_pending(const ChainName& name, Chain& chain, const JournalRow& row);
  bool fill(const ChainName& name, Chain& chain, std::int64_t seq);
  void accept(const ChainName& name, Chain& chain, const JournalRow& row);
  void append(const ChainName& name, Chain& chain, JournalRow row);

  Journal& journal_;
  Database& database_;
  const Copied& copied_;
  std::map<ChainName, Chain> chains_;
  std::optional<Transaction> transaction_;
  std::int64_t appended_ = 0;
};

}  // namespace kneerail
