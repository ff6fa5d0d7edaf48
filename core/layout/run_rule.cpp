#include "core/layout/run_rule.h"

#include <cstdlib>

namespace kneerail::layout {
namespace {

std::string metres(std::int64_t mm) {
  const std::string rest = std::to_string(1000 + mm % 1000);
  return std::to_string(mm / 1000) + "." + rest.substr(1, 2) + " m";
}

Error refused(const std::string& sentence) {
  return fail(Fault::invalid_input, sentence + " Nothing was changed.");
}

Result<> check_numbers(const RunRule& rule) {
  if (rule.posts < least::posts || rule.posts > most::posts)
    return refused("A run has 2 to 999 posts, not " + std::to_string(rule.posts) + ".");
  if (rule.first_number < 0 || rule.first_number > most::first_number)
    return refused("Posts are numbered from 0 to 99999, not from " +
                   std::to_string(rule.first_number) + ".");
  if (rule.spacing_mm < least::spacing_mm || rule.spacing_mm > most::spacing_mm)
    return refused("Posts stand 0.10 m to 20.00 m apart, not " + metres(rule.spacing_mm) + ".");
  if (rule.height_mm < least::height_mm || rule.height_mm > most::height_mm)
    return refused("A rail is 0.30 m to 5.00 m high, not " + metres(rule.height_mm) + ".");
  if (rule.rails < least::rails || rule.rails > most::rails)
    return refused("A run has 1 to 6 rails, not " + std::to_string(rule.rails) + ".");
  if (rule.sleeve_every_bays < 0)
    return refused("Sleeve couplings are set every so many bays, or not at all.");
  if (!wall_fits(rule.diameter_tenth_mm, rule.wall_tenth_mm))
    return refused("The wall of the tube does not fit into its diameter.");
  return Done{};
}

Result<> check_changes(const RunRule& rule) {
  for (const auto& [post, change] : rule.post_changes)
    if (std::abs(change.turn_degrees) > 179)
      return refused("A run turns by less than 180 degrees at a post.");
  for (const auto& [bay, change] : rule.bay_changes) {
    const std::int64_t length_mm = change.length_mm.value_or(rule.spacing_mm);
    if (length_mm < least::spacing_mm || length_mm > most::spacing_mm)
      return refused("A bay is 0.10 m to 20.00 m long, not " + metres(length_mm) + ".");
    if (std::abs(change.rise_mm) >= length_mm)
      return refused("A bay of " + metres(length_mm) + " cannot rise or fall " +
                     metres(std::abs(change.rise_mm)) + ".");
  }
  return Done{};
}

/// Chainage is kept up to 10 km.
Result<> check_length(const RunRule& rule) {
  std::int64_t length_mm = (rule.posts - 1) * rule.spacing_mm;
  for (const auto& [bay, change] : rule.bay_changes)
    if (bay + 1 < rule.posts)
      length_mm += change.length_mm.value_or(rule.spacing_mm) - rule.spacing_mm;
  constexpr std::int64_t most_mm = 10'000'000;
  if (length_mm > most_mm)
    return refused("A run is at most 10 km long; this would be " + metres(length_mm) +
                   ". Lay it out as two.");
  return Done{};
}

}  // namespace

Result<> check_rule(const RunRule& rule) {
  if (auto fits = check_numbers(rule); !fits) return fits;
  if (auto fits = check_changes(rule); !fits) return fits;
  return check_length(rule);
}

}  // namespace kneerail::layout
