#include "mobile/models/prepared_kept.h"

#include <algorithm>
#include <string>
#include <unordered_map>

#include "mobile/models/id_settings.h"

namespace kneerail {

namespace {

constexpr std::size_t most_parts = 100'000;

using Values = std::unordered_map<std::string, std::int64_t>;

Values values_of(Database& tables) {
  Values values;
  auto rows = tables.prepare(
      "SELECT name, value FROM setting WHERE name >= 'prepared_' AND name < 'prepared`'");
  if (!rows) return values;
  for (;;) {
    const auto row = rows->step();
    if (!row || !*row) return values;
    values.emplace(rows->text(0), rows->number(1));
  }
}

std::string name_of(const char* what, std::size_t place) {
  return std::string("prepared_") + what + "_" + std::to_string(place);
}

}  // namespace

PreparedDay prepared_day(Database& tables) {
  const Values values = values_of(tables);
  const auto read = [&](const std::string& name) {
    const auto found = values.find(name);
    return found == values.end() ? 0 : found->second;
  };
  const auto count = [&](const char* name) {
    return std::clamp<std::int64_t>(read(name), 0, most_parts);
  };
  PreparedDay day;
  day.site = id_of_settings("prepared_site", read);
  day.at_ms = read("prepared_at");
  day.minutes = static_cast<int>(std::clamp<std::int64_t>(read("prepared_minutes"), 0, 24 * 60));
  const auto parts = static_cast<std::size_t>(count("prepared_parts"));
  for (std::size_t i = 0; i < parts; ++i)
    day.parts.push_back(
        {id_of_settings(name_of("part", i), read), static_cast<ToRead>(read(name_of("what", i)))});
  const auto carried = static_cast<std::size_t>(count("prepared_carried"));
  for (std::size_t i = 0; i < carried; ++i)
    day.carried.push_back(id_of_settings(name_of("carry", i), read));
  return day;
}

Settings settings_of(const PreparedDay& day) {
  Settings settings{{"prepared_at", day.at_ms},
                    {"prepared_minutes", day.minutes},
                    {"prepared_parts", static_cast<std::int64_t>(day.parts.size())},
                    {"prepared_carried", static_cast<std::int64_t>(day.carried.size())}};
  add_id(settings, "prepared_site", day.site);
  for (std::size_t i = 0; i < day.parts.size(); ++i) {
    add_id(settings, name_of("part", i), day.parts[i].component);
    settings.emplace_back(name_of("what", i), static_cast<std::int64_t>(day.parts[i].what));
  }
  for (std::size_t i = 0; i < day.carried.size(); ++i)
    add_id(settings, name_of("carry", i), day.carried[i]);
  return settings;
}

std::vector<int> still_to_read(Database& tables, const PreparedDay& day, const RunSheet& sheet) {
  std::vector<int> places;
  if (day.site != sheet.site || day.parts.empty()) return places;
  std::unordered_map<Uuid, int> at;
  for (const ChosenPart& chosen : day.parts) at.emplace(chosen.component, -1);
  for (std::size_t i = 0; i < sheet.parts.size(); ++i)
    if (const auto chosen = at.find(sheet.parts[i].id); chosen != at.end())
      chosen->second = static_cast<int>(i);
  auto read_since = tables.prepare(
      "SELECT 1 FROM reading WHERE subject = ?1 AND kind = ?2 AND t >= ?3 AND voided_by IS NULL "
      "AND held = 0 LIMIT 1");
  if (!read_since) return places;
  for (const ChosenPart& chosen : day.parts) {
    const int place = at.at(chosen.component);
    if (place < 0) continue;
    read_since->reset();
    read_since->bind(1, chosen.component);
    read_since->bind(2, static_cast<std::int64_t>(chosen.what));
    read_since->bind(3, day.at_ms);
    const auto found = read_since->step();
    if (found && !*found) places.push_back(place);
  }
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end()), places.end());
  return places;
}

}  // namespace kneerail
