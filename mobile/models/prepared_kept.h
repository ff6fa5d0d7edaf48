#pragma once

// The day that was prepared last, as this device remembers it: where, for how long, and which parts
// were chosen to be measured. Not part of any record. A part stays chosen until something was read
// of it after the choice.

#include <cstdint>
#include <vector>

#include "core/base/date.h"
#include "schema/store/run_store.h"
#include "schema/store/settings.h"

namespace kneerail {

/// What is to be read of a part, by the kinds of the records.
enum class ToRead { grade = 20, coating = 21, torque = 22, wall = 23 };

struct ChosenPart {
  Uuid component;
  ToRead what = ToRead::coating;
  bool operator==(const ChosenPart&) const = default;
};

struct PreparedDay {
  Uuid site;  ///< zero: none was prepared
  std::int64_t at_ms = 0;
  int minutes = 0;
  std::vector<ChosenPart> parts;
  std::vector<Uuid> carried;  ///< sites to carry
  bool operator==(const PreparedDay&) const = default;
};

/// What cannot be read is as if it had never been kept.
PreparedDay prepared_day(Database& tables);
Settings settings_of(const PreparedDay& day);

/// Places in the sheet of chosen parts of which nothing has been read since, ascending.
std::vector<int> still_to_read(Database& tables, const PreparedDay& day, const RunSheet& sheet);

}  // namespace kneerail
