#pragma once

// The rows of a journal straight from the pages of a damaged register, past SQLite: its trees may
// lead nowhere while the leaves are whole. A page is 4096 bytes; a leaf of a table begins with 13
// and holds cells of
//
//   payload length, row number, payload      (the lengths and numbers as variable-length integers)
//
// and a payload too long for its page goes on in a chain of others. A row is known by the types of
// its columns. Whether it is true is for the caller to say: the digests do.
// Source: the SQLite documentation, "Database File Format", sections 1.6, 2.1, 4.2.

#include <filesystem>
#include <functional>

#include "schema/journal/files.h"
#include "schema/journal/journal.h"

namespace kneerail {

/// Every row that looks like one of a journal, in the register's file and in its log, by row
/// number; some may come twice, and rows of garbage may be among them. Errors: io.
Result<> read_journal_pages(Files& files, const std::filesystem::path& records,
                            const std::function<void(const JournalRow&)>& take);

}  // namespace kneerail
