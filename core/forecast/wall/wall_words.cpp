#include "core/forecast/wall/wall_words.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

#include "core/base/text.h"
#include "core/forecast/wall/constants.h"
#include "core/forecast/words.h"
#include "core/structure/least_wall.h"

namespace kneerail::forecast {

namespace {

std::string founded_on(const WallTube& tube, const WallForecast& row) {
  switch (row.readings_used) {
    case 0:
      if (!tube.before_zinc.empty())
        return concat({"wall last read on ", to_text(tube.before_zinc.back().day),
                       ", before its zinc was renewed"});
      if (!tube.bounds.empty() || !tube.bounds_before_zinc.empty())
        return "wall read as a bound only";
      return "wall not measured; reckoned from its nominal";
    case 1:
      return "one wall reading";
    case 2:
      return "two wall readings";
    default:
      return concat({std::to_string(row.readings_used), " wall readings"});
  }
}

std::string steel_from(const WallTube& tube) {
  if (tube.ratio_from == RatioFrom::zone) return "steel from the zone's own loss";
  return concat({"steel reckoned as ", fixed(tube.steel_over_zinc, 0), " times zinc"});
}

std::string odd_words(const WallTube& tube, const OddWall& odd) {
  const std::string read =
      concat({"read ", fixed(odd.wall_mm, 2), " mm on ", to_text(odd.day), ", not used: "});
  if (!odd.thinner && odd.wall_mm > tube.limit_mm) return read + "look at it";
  if (!odd.thinner)
    return read + "look at it; if it is right it is under its limit: refer to an engineer";
  return concat({read, fixed(odd.thinner->wall_mm, 2), " mm was read on ",
                 to_text(odd.thinner->day), ", and no wall grows: look at it"});
}

constexpr std::string_view under_limit = ": it is at or under its limit; refer to an engineer";

std::string bound_words(const WallTube& tube, const WallBound& bound) {
  std::string words =
      concat({"read as ", bound.at_most ? "under " : "over ", fixed(bound.wall_mm, 2), " mm on ",
              to_text(bound.day), ", which its gauge could not read: taken as a bound"});
  if (bound.at_most) words += "; look at it";
  if (bound.at_most && bound.wall_mm <= tube.limit_mm) words += under_limit;
  return words;
}

std::string thin_words(const ThinPlace& thin) {
  return concat({"a place read on ", to_text(thin.day), " (", fixed(thin.wall_mm, 2),
                 " mm) is at or under its limit: refer to an engineer"});
}

/// Of the places read under the limit the thinnest, and the last; of all of them how many days.
void add_thin_flags(const WallTube& tube, std::vector<std::string>& flags) {
  std::vector<const ThinPlace*> read;
  for (const ThinPlace& thin : tube.thin)
    if (!thin.is_bound) read.push_back(&thin);
  if (read.empty()) return;
  const auto thinnest = std::min_element(
      read.begin(), read.end(),
      [](const ThinPlace* a, const ThinPlace* b) { return a->wall_mm < b->wall_mm; });
  flags.push_back(thin_words(**thinnest));
  if (*thinnest != read.back()) flags.push_back(thin_words(*read.back()));
  if (read.size() > 2)
    flags.back() += concat({"; so it was on ", std::to_string(read.size()), " days"});
}

/// Two digits, never more wall than was reckoned.
std::string rounded_down(double wall_mm) {
  return fixed(std::floor(100 * wall_mm + 1e-6) / 100, 2);
}

std::string rounded_up(double wall_mm) {
  return fixed(std::ceil(100 * wall_mm - 1e-6) / 100, 2);
}

std::string limit_mm(const WallTube& tube) {
  return fixed(tube.limit_mm, 2);
}

}  // namespace

std::string wall_words(const WallTube& tube, const WallForecast& row, bool painted) {
  std::string words = founded_on(tube, row);
  if (!row.has_years) words += "; age not known: chances at dates only";
  words += concat({"; ", steel_from(tube), "; the inside leans on how such tubes usually go"});
  if (tube.limit_reckoned) words += "; limit reckoned from tube, spacing, height, load and steel";
  if (tube.least_wall_mm > 0 && tube.yield_assumed)
    words += concat({"; its steel is not said: taken as ", fixed(structure::assumed_yield_mpa, 0),
                     " MPa, the weakest of such tubes"});
  if (tube.least_wall_mm <= 0 && !tube.load_not_known.empty())
    words += concat({"; not checked against its load: ", tube.load_not_known});
  if (painted) words += "; reckoned as bare zinc, on the safe side";
  return words;
}

std::string wall_sentence(const WallTube& tube, const WallForecast& row) {
  std::string sentence;
  if (row.has_years)
    sentence = concat({"Wall down to ", limit_mm(tube), " mm ", life_with_band(row.years), ". "});
  else
    sentence = concat({"Chance that the wall is down to ", limit_mm(tube),
                       " mm: ", chance_words(row.p_by[0]), " now, ", chance_words(row.p_by[3]),
                       " within 5 years. "});
  if (!tube.bare)
    sentence += concat(
        {"Chance that its zinc is gone by now ", chance_words(row.zinc_gone_now), "; then steel"});
  else
    sentence += "Steel";
  const bool measured = row.readings_used > 0 || !tube.before_zinc.empty();
  sentence += concat({" loses about ", fixed(row.steel_um_per_year[1], 0),
                      " um a year (80 %: ", fixed(row.steel_um_per_year[0], 0), " to ",
                      fixed(row.steel_um_per_year[2], 0), ") from outside. Chance that it rusts ",
                      "inside too ", chance_words(row.open_chance), ". Wall now about ",
                      rounded_down(row.wall_now_mm), " mm", measured ? "." : ", not measured."});
  if (tube.least_wall_mm > 0)
    sentence += concat({" By a screening check it carries its load down to ",
                        rounded_up(tube.least_wall_mm), " mm."});
  for (const std::string& flag : row.flags) sentence += concat({" Note: ", flag, "."});
  return sentence;
}

std::vector<std::string> reading_flags(const WallTube& tube) {
  std::vector<std::string> flags;
  add_thin_flags(tube, flags);
  for (const auto* bounds : {&tube.bounds_before_zinc, &tube.bounds})
    for (const WallBound& bound : *bounds) flags.push_back(bound_words(tube, bound));
  for (const OddWall& odd : tube.odd) flags.push_back(odd_words(tube, odd));
  return flags;
}

std::vector<std::string> wall_flags(const WallTube& tube, const WallForecast& row) {
  std::vector<std::string> flags;
  if (tube.ratio_from == RatioFrom::zone && tube.steel_over_zinc > 0 && !tube.bare &&
      (tube.steel_over_zinc < wall_constant::plain_ratio_least ||
       tube.steel_over_zinc > wall_constant::plain_ratio_most))
    flags.push_back(
        concat({"steel loss is ", fixed(tube.steel_over_zinc, 0), " times the zinc loss: check"}));
  if (tube.owner_limit_mm > 0 && tube.least_wall_mm > tube.owner_limit_mm)
    flags.push_back(concat({"the limit set for it, ", fixed(tube.owner_limit_mm, 2),
                            " mm, is under the least wall that carries its load, ",
                            rounded_up(tube.least_wall_mm),
                            " mm, and that one is taken: refer to an engineer"}));
  if (row.readings_used > 0 && row.open_chance > wall_constant::open_words_chance)
    flags.push_back("likely rusts from inside: look into the hollow and clear its drain");
  return flags;
}

}  // namespace kneerail::forecast
