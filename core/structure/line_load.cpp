#include "core/structure/line_load.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>

namespace kneerail::structure {

namespace {

struct Row {
  std::string_view words;
  double load_kn_per_m;
};
constexpr std::array<Row, 6> table{{{"single family dwelling", 0.36},
                                    {"light access to 600 mm wide", 0.22},
                                    {"light pedestrian routes in industrial buildings", 0.36},
                                    {"offices not susceptible to overcrowding", 0.74},
                                    {"areas with fixed seating", 1.5},
                                    {"susceptible to overcrowding", 3.0}}};

}  // namespace

std::optional<Occupancy> occupancy_from_text(std::string_view words) {
  std::string lower(words);
  std::ranges::transform(lower, lower.begin(), [](unsigned char letter) {
    return static_cast<char>(std::tolower(letter));
  });
  for (std::size_t i = 0; i < table.size(); ++i) {
    if (table[i].words == lower) return static_cast<Occupancy>(i);
  }
  return std::nullopt;
}

double bs6180_line_load_kn_per_m(Occupancy occupancy) {
  return table.at(static_cast<std::size_t>(occupancy)).load_kn_per_m;
}

}  // namespace kneerail::structure
