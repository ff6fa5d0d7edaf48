#pragma once

#include <string_view>

namespace kneerail::commands {

/// What the product says of itself wherever it shows a computed figure: in the help of each command
/// that computes, and at the foot of what it prints. A paragraph of lines under 80 characters, a
/// line feed at its end.
std::string_view cautions();

/// The model of the forecast in one sentence, in the same layout.
std::string_view model_in_a_sentence();

}  // namespace kneerail::commands
