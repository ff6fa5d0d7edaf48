#pragma once

// The entry that is still being typed: on disk, but not yet a record. One a subject, kind and spot
// or screw of a feed.

#include <string>
#include <vector>

#include "core/base/result.h"
#include "schema/database.h"
#include "schema/store/register.h"

namespace kneerail {

/// The bytes of a draft in the second copy.
cbor::Bytes encode(const Draft& draft);
/// Errors: corrupt.
Result<Draft> decode_draft(std::span<const std::uint8_t> bytes);

bool same_place(const Draft& one, const Draft& other);

/// Rows of the table draft. Errors: io, corrupt.
Result<> put_draft(Database& database, const Draft& draft);
Result<> erase_draft(Database& database, const Draft& draft);
Result<std::vector<Draft>> read_drafts(Database& database);

}  // namespace kneerail
