#pragma once

#include <string>

#include "tests/mobile/process.h"

namespace kneerail::test {

/// A portfolio of one zone, one run and eight fittings, measured on five days with one gauge; no
/// chance in it. `extra_reading` is put after the readings as it stands.
void write_small_portfolio(const Folder& folder, const std::string& name,
                           const std::string& extra_reading = {});

}  // namespace kneerail::test
