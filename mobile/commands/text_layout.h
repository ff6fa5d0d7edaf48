#pragma once

#include <ostream>
#include <string>

#include "schema/store/place_store.h"

namespace kneerail::commands {

/// Breaks at spaces so that no line is longer than the text of a person's terminal.
void print_wrapped(const std::string& text, const std::string& indent, std::ostream& out);

/// "North Mole · Sea wall east · post 172 at 8.0 m · fitting, sleeve coupling"; the identifier of a
/// part whose place is not known.
std::string place_words(const Places& places, const std::string& part);

/// "1 to 3", "3" where both are the same.
std::string range_words(int low, int high);

}  // namespace kneerail::commands
