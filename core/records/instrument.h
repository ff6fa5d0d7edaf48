#pragma once

// Kinds 50, 51 and 52: an instrument is checked, calibrated, in doubt. Numbers are in the record's
// unit for the instrument's kind: 0.1 µm, 0.1 N·m, 0.01 mm, N or mm.

#include <optional>
#include <string>
#include <vector>

#include "core/records/provenance.h"

namespace kneerail {

enum class CheckKind { zero = 1, check_foil, test_block, before_use, after_use };

/// Subject instrument.
struct InstrumentCheck {
  static constexpr int kind = 50;
  std::optional<Uuid> visit;
  CheckKind what = CheckKind::zero;
  std::optional<std::int64_t> reference_value;
  std::vector<std::int64_t> readings;
  bool in_order = true;
  Provenance provenance;
  bool operator==(const InstrumentCheck&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.what);
    each(3, self.reference_value);
    each(4, self.readings);
    each(5, self.in_order);
    Provenance::keys(self.provenance, each);
  }
};

/// What is to be added to a reading at a value.
struct AtAdd {
  std::int64_t at = 0;
  std::int64_t add = 0;
  bool operator==(const AtAdd&) const = default;
  template <class Self, class Each>
  static void parts(Self& self, Each each) {
    each(self.at);
    each(self.add);
  }
};

/// Subject instrument; in the organisation's feed.
struct Calibration {
  static constexpr int kind = 51;
  Date day;
  Date valid_until;
  std::optional<std::string> certificate;
  std::optional<Digest> certificate_picture;
  std::optional<std::vector<AtAdd>> corrections;
  std::optional<std::vector<AtAdd>> as_found;  ///< before any setting
  std::optional<bool> adjusted;
  std::optional<Date> sent;
  std::optional<std::string> by;
  Provenance provenance;
  bool operator==(const Calibration&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.day);
    each(2, self.valid_until);
    each(3, self.certificate);
    each(4, self.certificate_picture);
    each(5, self.corrections);
    each(6, self.as_found);
    each(7, self.adjusted);
    each(8, self.sent);
    each(9, self.by);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject instrument; in the organisation's feed. Covers readings of that time.
struct InstrumentInDoubt {
  static constexpr int kind = 52;
  Instant from;
  std::optional<Instant> until;
  std::string reason;
  std::optional<std::int64_t> suggested_shift;  ///< to add to readings
  Provenance provenance;
  bool operator==(const InstrumentInDoubt&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.from);
    each(2, self.until);
    each(3, self.reason);
    each(4, self.suggested_shift);
    Provenance::keys(self.provenance, each);
  }
};

extern const KindInfo instrument_check_kind;
extern const KindInfo calibration_kind;
extern const KindInfo instrument_in_doubt_kind;

}  // namespace kneerail
