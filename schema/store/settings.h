#pragma once

// What this device remembers for its own screens: where the walker was, which hand. A local table
// of the register file; never sent, never folded, in no digest.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "schema/store/register.h"

namespace kneerail {

using Settings = std::vector<std::pair<std::string, std::int64_t>>;

/// Nothing when it was never set. Errors: io.
Result<std::optional<std::int64_t>> setting(Database& tables, std::string_view name);

/// All of them or none, on the disk when it returns. Only on the thread that owns the register.
/// Errors: conflict (opened read-only), io.
Result<> keep_settings(Register& opened, const Settings& settings);

}  // namespace kneerail
