#pragma once

// The columns of the tables of objects, and of who has written where; see objects.h.

#include "core/fold/column_places.h"

namespace kneerail::fold {

/// One record that names an object. kind, feed, subject: of the record.
inline constexpr Column object_use_columns[] = {
    {"sha", Type::bytes}, {"record", Type::id},  {"kind", Type::number},
    {"feed", Type::id},   {"subject", Type::id}, {"size_bytes", Type::number, true},
};
/// kind: of the use with the smallest record id; absent while only an erasure names it. erased_by
/// with kept_by absent: out of sight, and its bytes go at erase_on_ms. erased_by with kept_by: the
/// last erasure was without effect, because that hold stood.
inline constexpr Column object_state_columns[] = {
    {"sha", Type::bytes},
    {"kind", Type::number, true},
    {"size_bytes", Type::number, true},
    {"erased_by", Type::id, true},
    {"erase_on_ms", Type::number, true},
    {"kept_by", Type::id, true},
};
/// People who have written in a feed.
inline constexpr Column feed_writer_columns[] = {{"person", Type::id}, {"feed", Type::id}};

}  // namespace kneerail::fold
