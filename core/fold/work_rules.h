#pragma once

// What the rules about work share with their neighbours.

#include <cstdint>
#include <optional>
#include <vector>

#include "core/base/id.h"

namespace kneerail::fold {

class Folding;

/// Codes of kind 40 key 2; came_back is ours, for table life.
namespace work_action {
inline constexpr std::int64_t replace = 3;
inline constexpr std::int64_t cut_out = 4;
inline constexpr std::int64_t came_back = 19;
}  // namespace work_action

/// When work was done, ms: its time of inspection, or noon UTC of the day it names when that is
/// another.
std::int64_t work_day_ms(std::int64_t t, std::optional<std::int64_t> day);

enum class Joins { that_count, all };
/// This work and those that are said to be one job with it, however many steps away.
std::vector<Uuid> one_job(Folding& folding, const Uuid& work, Joins joins);

}  // namespace kneerail::fold
