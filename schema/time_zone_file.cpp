#include "schema/time_zone_file.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

namespace kneerail {
namespace {

constexpr std::size_t header_size = 44;
constexpr std::size_t file_size_most = 1 << 20;  // the largest known is under 4 kB

Error damaged(std::string_view reason) {
  return fail(Fault::corrupt, std::string(reason));
}

std::int64_t big_endian(std::span<const std::uint8_t> bytes) {
  std::uint64_t value = bytes[0] >= 0x80 ? ~std::uint64_t{0} : 0;
  for (const std::uint8_t byte : bytes) value = value << 8 | byte;
  return static_cast<std::int64_t>(value);
}

/// RFC 8536, 3.1: the six counts of a header, in their order in the file.
struct Counts {
  std::size_t ut_marks, standard_marks, leap_seconds, times, types, letters;

  [[nodiscard]] std::size_t size(std::size_t time_size) const {
    return times * (time_size + 1) + types * 6 + letters + leap_seconds * (time_size + 4) +
           standard_marks + ut_marks;
  }
};

Result<Counts> counts_of(std::span<const std::uint8_t> bytes) {
  static constexpr std::uint8_t magic[] = {'T', 'Z', 'i', 'f'};
  if (bytes.size() < header_size || !std::equal(std::begin(magic), std::end(magic), bytes.begin()))
    return damaged("is no time zone");
  std::size_t counts[6];
  for (std::size_t i = 0; i < 6; ++i) {
    const auto count = big_endian(bytes.subspan(20 + 4 * i, 4));
    if (count < 0 || count > static_cast<std::int64_t>(file_size_most))
      return damaged("is damaged");
    counts[i] = static_cast<std::size_t>(count);
  }
  const Counts all{counts[0], counts[1], counts[2], counts[3], counts[4], counts[5]};
  if (all.types == 0) return damaged("is damaged: it has no offset");
  if (all.leap_seconds != 0)
    return damaged(
        "counts leap seconds, which the register does not: choose the zone of the same "
        "name without \"right/\"");
  return all;
}

/// RFC 8536, 3.2: the times, which type each begins, and the types' offsets.
struct Table {
  std::int32_t first_offset_s = 0;
  std::vector<TimeZone::Transition> transitions;
};

Result<Table> table_of(std::span<const std::uint8_t> block, const Counts& counts,
                       std::size_t time_size) {
  if (block.size() < counts.size(time_size)) return damaged("is damaged: it ends too soon");
  const auto kinds = block.subspan(counts.times * time_size, counts.times);
  const auto types = block.subspan(counts.times * (time_size + 1), counts.types * 6);
  const auto offset = [&](std::size_t type) {
    return static_cast<std::int32_t>(big_endian(types.subspan(type * 6, 4)));
  };
  Table table;
  table.first_offset_s = offset(0);
  for (std::size_t i = 0; i < counts.times; ++i) {
    if (kinds[i] >= counts.types) return damaged("is damaged: a change names no offset");
    table.transitions.push_back(
        {big_endian(block.subspan(i * time_size, time_size)), offset(kinds[i])});
  }
  return table;
}

/// RFC 8536, 3.3: a rule between two line feeds; empty: none.
Result<std::optional<YearlyRule>> footer(std::span<const std::uint8_t> bytes) {
  if (bytes.size() < 2 || bytes.front() != '\n')
    return damaged("is damaged: its last line is missing");
  const auto text = bytes.subspan(1);
  const auto end = std::find(text.begin(), text.end(), '\n');
  if (end == text.end()) return damaged("is damaged: its last line is cut off");
  if (end == text.begin()) return std::optional<YearlyRule>();
  const auto rule = yearly_rule_from_text(std::string(text.begin(), end));
  if (!rule) return damaged("is damaged: its last line is no rule");
  return rule;
}

Result<TimeZone> zone_of(Table table, std::optional<YearlyRule> rule) {
  auto zone = TimeZone::from(table.first_offset_s, std::move(table.transitions), rule);
  if (!zone) return damaged("is damaged: " + zone.error().message);
  return zone;
}

bool is_zone_name(std::string_view name) {
  const auto belongs = [](char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ||
           std::string_view("_+-/").find(c) != std::string_view::npos;
  };
  return !name.empty() && name.size() <= 64 && name.front() != '/' && name.back() != '/' &&
         std::all_of(name.begin(), name.end(), belongs);
}

}  // namespace

Result<TimeZone> time_zone_from_tzif(std::span<const std::uint8_t> bytes) {
  const auto first = counts_of(bytes);
  if (!first) return fail(first.error());
  const std::uint8_t version = bytes[4];
  auto rest = bytes.subspan(header_size);
  if (version == 0) {
    auto table = table_of(rest, *first, 4);
    if (!table) return fail(table.error());
    return zone_of(std::move(*table), {});
  }
  if (rest.size() < first->size(4)) return damaged("is damaged: it ends too soon");
  rest = rest.subspan(first->size(4));
  const auto second = counts_of(rest);
  if (!second) return fail(second.error());
  rest = rest.subspan(header_size);
  auto table = table_of(rest, *second, 8);
  if (!table) return fail(table.error());
  const auto rule = footer(rest.subspan(second->size(8)));
  if (!rule) return fail(rule.error());
  return zone_of(std::move(*table), *rule);
}

Result<TimeZone> read_time_zone(std::string_view name, const std::filesystem::path& folder) {
  if (name == "UTC" || name == "Etc/UTC") return TimeZone();
  const std::string shown(name);
  if (!is_zone_name(name)) return fail(Fault::not_found, "\"" + shown + "\" is no time zone");
  const auto path = folder / shown;
  std::error_code failed;
  if (!std::filesystem::is_regular_file(path, failed))
    return fail(Fault::not_found, "this machine does not know the time zone " + shown +
                                      " (there is no file " + path.string() + ")");
  std::ifstream in(path, std::ios::binary);
  std::vector<std::uint8_t> bytes(file_size_most + 1);
  in.read(reinterpret_cast<char*>(bytes.data()), static_cast<std::streamsize>(bytes.size()));
  if (!in.is_open() || in.bad())
    return fail(Fault::io, "the time zone " + shown + " could not be read from " + path.string());
  bytes.resize(static_cast<std::size_t>(in.gcount()));
  auto zone = bytes.size() > file_size_most ? Result<TimeZone>(damaged("is too large"))
                                            : time_zone_from_tzif(bytes);
  if (!zone)
    return fail(zone.error().fault,
                "the time zone file " + path.string() + " " + zone.error().message);
  return zone;
}

}  // namespace kneerail
