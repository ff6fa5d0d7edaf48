#pragma once

// What calibrations (kind 51) and doubts (kind 52) say about the readings of one instrument. They
// are joined when readings are read, whenever they were written: a reading's record is never
// altered. Numbers are in the record's unit for the instrument's kind.
//
// A calibration holds from its day to the last day it is valid, both counted, and ends when the
// next one begins. Of two of one day the one written later holds. One that has run out is not
// followed by an older one that is still valid: the newer certificate took its place. What was
// found before the instrument was set (key 6) changes no reading; a doubt has to be written.
//
// Between the values of a certificate the addition runs in a straight line; under its lowest and
// over its highest value it stays what it is there, for nothing more is known.

#include <cstdint>
#include <optional>
#include <vector>

#include "core/records/instrument.h"

namespace kneerail {

struct KnownCalibration {
  Date day;
  Date valid_until;
  std::vector<AtAdd> corrections;  ///< in any order; none: nothing to add
  std::int64_t written_ms = 0;
  Uuid record;
};

/// A time, both ends counted, in which an instrument is in doubt. No shift: what it read is not to
/// be used as a number.
struct KnownDoubt {
  Instant from;
  std::optional<Instant> until;
  std::optional<std::int64_t> suggested_shift;
};

/// When a reading was taken; the day is that of the organisation's time zone.
struct ReadAt {
  Date day;
  Instant at;
};

class InstrumentHistory {
 public:
  void add(KnownCalibration calibration);
  void add(KnownDoubt doubt);

  /// What the certificate in force on that day adds to what was read; 0 where none is.
  [[nodiscard]] double certificate_add(Date day, double read) const;
  /// What doubts that cover the time add, together.
  [[nodiscard]] double doubt_add(Instant at) const;
  /// Whether a doubt without a shift covers the time.
  [[nodiscard]] bool in_doubt(Instant at) const;

  /// What was read, put right by both; never under 0 where the reading was not.
  [[nodiscard]] double put_right(const ReadAt& when, double read) const;
  /// The same in whole units, for showing.
  [[nodiscard]] std::int64_t put_right(const ReadAt& when, std::int64_t read) const;

 private:
  std::vector<KnownCalibration> calibrations_;  ///< by day, then as written
  std::vector<KnownDoubt> doubts_;
};

}  // namespace kneerail
