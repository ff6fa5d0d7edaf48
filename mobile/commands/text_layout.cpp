#include "mobile/commands/text_layout.h"

#include "core/base/text.h"

namespace kneerail::commands {

void print_wrapped(const std::string& text, const std::string& indent, std::ostream& out) {
  constexpr std::size_t width = 96;
  std::size_t from = 0;
  while (from < text.size()) {
    std::size_t end = text.size();
    if (end - from > width - indent.size()) {
      end = text.rfind(' ', from + width - indent.size());
      if (end == std::string::npos || end <= from) end = text.find(' ', from);
      if (end == std::string::npos) end = text.size();
    }
    out << indent << text.substr(from, end - from) << "\n";
    from = end + 1;
  }
}

std::string place_words(const Places& places, const std::string& part) {
  const auto found = places.parts.find(part);
  if (found == places.parts.end()) return part;
  const PartPlace& place = found->second;
  std::string words = place.site + " · " + place.run;
  if (!place.post.empty()) words += " · post " + place.post;
  words += " at " + fixed(place.chainage_m, 1) + " m · " + place.part;
  return words;
}

std::string range_words(int low, int high) {
  return low == high ? std::to_string(low) : std::to_string(low) + " to " + std::to_string(high);
}

}  // namespace kneerail::commands
