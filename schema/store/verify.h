#pragma once

// Whether a register is whole: the file, the chains, the second copy, and the tables against a
// fresh fold in a temporary file.

#include <string>
#include <vector>

#include "schema/store/rebuild.h"
#include "schema/store/state.h"

namespace kneerail {

struct TableSum {
  std::int64_t rows = 0;
  Digest digest{};
};

/// One a folded table, in the fold's order: SHA-256 over its rows in key order. Errors: io,
/// corrupt.
Result<std::vector<TableSum>> table_sums(Database& database);
/// SHA-256 over all of them, hexadecimal.
Result<std::string> digest_of_tables(Database& database);

/// Every chain from its first record. Adds a sentence for each break. Returns how many chains.
Result<std::int64_t> check_chains(Database& database, const Journal& journal,
                                  const Progress& progress, std::vector<std::string>& problems);

Result<VerifyReport> verify_register(RegisterState& state, const Progress& progress);

}  // namespace kneerail
