#pragma once

// Where the walker was, as this device remembers it: run, post or part, the pad, and who walks with
// what. Not part of any record.

#include "schema/store/settings.h"

namespace kneerail {

struct PlaceKept {
  Uuid run;     ///< zero: nobody walked here
  Uuid at;      ///< part, else bay, else post
  Uuid person;  ///< zero: the first
  Uuid gauge;
  Uuid wrench;
  int pad = 0;
  bool operator==(const PlaceKept&) const = default;
};

/// What cannot be read is as if it had never been kept.
PlaceKept place_kept(Database& tables);

Settings settings_of(const PlaceKept& place);

}  // namespace kneerail
