#pragma once

// Calibrations and doubts of the instruments, read from the tables; void and held ones say nothing.

#include <unordered_map>

#include "core/base/id.h"
#include "core/base/result.h"
#include "core/base/time_zone.h"
#include "core/records/instrument_history.h"
#include "schema/database.h"

namespace kneerail {

class InstrumentHistories {
 public:
  /// Of an instrument of which nothing was said, and of none: empty.
  [[nodiscard]] const InstrumentHistory& of(const Uuid& instrument) const;
  InstrumentHistory& made(const Uuid& instrument) { return all_[instrument]; }

 private:
  std::unordered_map<Uuid, InstrumentHistory> all_;
};

/// Errors: io, corrupt.
Result<InstrumentHistories> instrument_histories(Database& tables);

/// What it takes to show a reading as it counts.
struct ReadingsPutRight {
  InstrumentHistories instruments;
  TimeZone zone;

  /// A reading of that instrument at that time, in the record's unit.
  [[nodiscard]] std::int64_t of(const Uuid& instrument, Instant at, std::int64_t read) const {
    return instruments.of(instrument).put_right({zone.day_of_entry(at), at}, read);
  }
};

/// Errors: io, corrupt.
Result<ReadingsPutRight> readings_put_right(Database& tables);

}  // namespace kneerail
