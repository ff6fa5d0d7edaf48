#pragma once

// What visits have of things, counted: table coverage keeps the tally of each visit and post, so
// that one more reading is added to it and nothing is counted again.

#include <array>
#include <cstdint>
#include <map>
#include <optional>

#include "core/fold/coverage.h"

namespace kneerail::fold {

/// What was seen of one thing, bits of a number.
using LookBits = std::int64_t;

struct Tally {
  std::array<std::int64_t, counted_kinds.size()> counts{};
  std::map<Uuid, LookBits> looks;
  std::optional<std::int64_t> first_t;
  std::optional<std::int64_t> last_t;

  [[nodiscard]] bool empty() const { return !first_t; }
  [[nodiscard]] LookBits look(const Uuid& thing) const;
  void count(std::int64_t kind, std::int64_t t);
  void take(const Tally& other);
};

/// A row of table reading.
void take_reading(const Row& row, Tally& tally);
/// Any other record that is counted.
void take_fact(const Fact& fact, Tally& tally);

/// The tally that a row of coverage was made from.
Tally tally_of(const Row& coverage);
/// Its counts, span and looks.
void put_tally(const Tally& tally, Row& coverage);

}  // namespace kneerail::fold
