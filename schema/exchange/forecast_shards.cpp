// Part files of a forecast: written site by site, and put together again.

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <unordered_map>

#include "core/base/archive.h"
#include "schema/exchange/digested_file.h"
#include "schema/exchange/forecast_files.h"

namespace kneerail {

namespace {

std::string shard_line() {
  return forecast_line("part 2");
}

/// What stands in a part file before its rows; what is said of the whole, in part 1 alone.
struct KeptHead {
  Digest key{};
  std::int32_t part = 1;
  std::int32_t of = 1;
  Date as_of;
  std::optional<Date> on;
  std::vector<std::string> sites;
  std::string forecast;
  std::int64_t records = 0;
};

template <class Archive, OrConst<KeptHead> T>
void fields(Archive& archive, T& head) {
  archive(head.key, head.part, head.of, head.as_of, head.on, head.sites, head.forecast,
          head.records);
}

/// The rows of a site, with the ids of its parts by place.
struct KeptRows {
  std::vector<std::string> parts;
  std::string rows;
};

template <class Archive, OrConst<KeptRows> T>
void fields(Archive& archive, T& rows) {
  archive(rows.parts, rows.rows);
}

class ShardFile final : public ShardWriter {
 public:
  explicit ShardFile(DigestedWriter writer) : writer_(std::move(writer)) {}

  Result<> add(const forecast::Portfolio& site, const forecast::ForecastRows& rows) override {
    KeptRows kept;
    for (const auto& part : site.parts) kept.parts.push_back(part.id);
    forecast::ForecastRows with_all = rows;
    with_all.left_out.insert(with_all.left_out.end(), site.left_out.begin(), site.left_out.end());
    kept.rows = forecast::bytes_of(with_all);
    return writer_.block(archived(kept));
  }
  Result<> finish() override { return writer_.finish(); }

 private:
  DigestedWriter writer_;
};

/// A part file and what it says of itself.
struct Opened {
  std::filesystem::path file;
  KeptHead head;
};

Result<KeptHead> read_head(DigestedReader& reader, const std::filesystem::path& file) {
  const auto bytes = reader.block();
  if (!bytes) return fail(bytes.error());
  ByteSource source(*bytes);
  KeptHead head;
  source(head);
  constexpr std::int32_t most_parts = 100'000;
  const bool numbered = 1 <= head.part && head.part <= head.of && head.of <= most_parts;
  if (!source.ok() || !source.at_end() || !numbered) return damaged_file(file);
  return head;
}

/// The head of a file that is whole: what a damaged one says of itself is not heard.
Result<Opened> look_at(const std::filesystem::path& file) {
  auto reader = DigestedReader::open(file, shard_line());
  if (!reader) return fail(reader.error());
  auto head = read_head(*reader, file);
  while (head && !reader->at_end())
    if (auto skipped = reader->block(); !skipped) return fail(skipped.error());
  if (!head) return fail(head.error());
  if (auto ok = reader->whole(); !ok) return fail(ok.error());
  return Opened{file, std::move(*head)};
}

std::string nothing_joined() {
  return " Nothing was joined; the register is as it was.";
}

/// That all are of one forecast, each part once, none missing.
Result<> check_shards(const std::vector<Opened>& shards) {
  const Opened& first = shards.front();
  std::map<std::int32_t, const Opened*> by_part;
  for (const Opened& shard : shards) {
    if (shard.head.key != first.head.key || shard.head.on != first.head.on)
      return fail(Fault::invalid_input,
                  shard.file.string() + " is of another forecast than " + first.file.string() +
                      ": the register, the day or the program has changed between them." +
                      nothing_joined() + " Reckon all parts again from one fit.");
    if (shard.head.of != first.head.of)
      return fail(Fault::invalid_input, shard.file.string() + " is one of " +
                                            std::to_string(shard.head.of) + " parts and " +
                                            first.file.string() + " one of " +
                                            std::to_string(first.head.of) + "." + nothing_joined() +
                                            " Join parts of one division only.");
    const auto [at, is_new] = by_part.emplace(shard.head.part, &shard);
    if (!is_new)
      return fail(Fault::invalid_input, shard.file.string() + " and " + at->second->file.string() +
                                            " are both part " + std::to_string(shard.head.part) +
                                            " of " + std::to_string(shard.head.of) + "." +
                                            nothing_joined() + " Give each part once.");
  }
  for (std::int32_t part = 1; part <= first.head.of; ++part)
    if (!by_part.contains(part))
      return fail(Fault::not_found,
                  "Part " + std::to_string(part) + " of " + std::to_string(first.head.of) +
                      " of the forecast is missing." + nothing_joined() + " Make it with --shard " +
                      std::to_string(part) + "/" + std::to_string(first.head.of) + ".");
  return Done{};
}

Result<std::vector<Opened>> look_at_all(const std::vector<std::filesystem::path>& files) {
  check(!files.empty(), "there is a part file to join");
  std::vector<Opened> shards;
  for (const auto& file : files) {
    auto shard = look_at(file);
    if (!shard) return fail(shard.error());
    shards.push_back(std::move(*shard));
  }
  if (auto ok = check_shards(shards); !ok) return fail(ok.error());
  return shards;
}

/// Gives rows of part files their places in the register.
class RowTaker {
 public:
  explicit RowTaker(const forecast::Portfolio& portfolio) : seen_(portfolio.parts.size(), 0) {
    for (std::size_t i = 0; i < portfolio.parts.size(); ++i)
      places_.emplace(portfolio.parts[i].id, static_cast<std::int32_t>(i));
  }

  Result<> take(const std::filesystem::path& file, forecast::ForecastRows& all) {
    auto reader = DigestedReader::open(file, shard_line());
    if (!reader) return fail(reader.error());
    if (auto head = reader->block(); !head) return fail(head.error());
    while (!reader->at_end()) {
      const auto bytes = reader->block();
      if (!bytes) return fail(bytes.error());
      if (auto ok = take_site(file, *bytes, all); !ok) return ok;
    }
    return reader->whole();
  }

  [[nodiscard]] std::vector<std::int32_t> not_seen() const {
    std::vector<std::int32_t> places;
    for (std::size_t i = 0; i < seen_.size(); ++i)
      if (seen_[i] == 0) places.push_back(static_cast<std::int32_t>(i));
    return places;
  }

 private:
  Result<> take_site(const std::filesystem::path& file, std::string_view bytes,
                     forecast::ForecastRows& all) {
    ByteSource source(bytes);
    KeptRows kept;
    source(kept);
    auto rows = forecast::rows_from_bytes(kept.rows);
    if (!source.ok() || !source.at_end() || !rows) return damaged_file(file);
    std::vector<std::int32_t> places;
    for (const std::string& part : kept.parts) {
      const auto place = places_.find(part);
      if (place == places_.end())
        return fail(Fault::conflict, file.string() + " speaks of part " + part +
                                         ", which this register does not have." + nothing_joined() +
                                         " Is it the register the parts were made from?");
      places.push_back(place->second);
      seen_[static_cast<std::size_t>(place->second)] = 1;
    }
    for (auto& row : rows->limits) {
      const auto at = static_cast<std::size_t>(row.part);
      if (at >= places.size()) return damaged_file(file);
      row.part = places[at];
      all.limits.push_back(std::move(row));
    }
    all.left_out.insert(all.left_out.end(), rows->left_out.begin(), rows->left_out.end());
    return Done{};
  }

  std::unordered_map<std::string, std::int32_t> places_;
  std::vector<char> seen_;
};

ShardHead shown(const KeptHead& kept, forecast::ForecastHead forecast) {
  return {kept.key,   kept.part,           kept.of,     kept.as_of, kept.on,
          kept.sites, std::move(forecast), kept.records};
}

}  // namespace

Result<std::unique_ptr<ShardWriter>> ShardWriter::create(const std::filesystem::path& file,
                                                         const ShardHead& head) {
  auto writer = DigestedWriter::create(file, shard_line());
  if (!writer) return fail(writer.error());
  const KeptHead kept{head.key,
                      head.part,
                      head.of,
                      head.as_of,
                      head.on,
                      head.sites,
                      head.part == 1 ? forecast::bytes_of(head.forecast) : std::string(),
                      head.records};
  if (auto ok = writer->block(archived(kept)); !ok) return fail(ok.error());
  return std::unique_ptr<ShardWriter>(new ShardFile(std::move(*writer)));
}

Result<Date> joined_as_of(const std::vector<std::filesystem::path>& files) {
  check(!files.empty(), "there is a part file to join");
  auto reader = DigestedReader::open(files.front(), shard_line());
  if (!reader) return fail(reader.error());
  const auto head = read_head(*reader, files.front());
  if (!head) return fail(head.error());
  return head->as_of;
}

Result<JoinedShards> join_shards(const std::vector<std::filesystem::path>& files,
                                 const forecast::Portfolio& portfolio) {
  const auto shards = look_at_all(files);
  if (!shards) return fail(shards.error());
  const auto first = std::ranges::find(*shards, 1, [](const Opened& one) { return one.head.part; });
  auto forecast = forecast::head_from_bytes(first->head.forecast);
  if (!forecast) return damaged_file(first->file);
  JoinedShards joined{shown(first->head, std::move(*forecast)), {}, {}};
  for (const Opened& shard : *shards)
    joined.head.records = std::min(joined.head.records, shard.head.records);
  RowTaker taker(portfolio);
  for (const Opened& shard : *shards)
    if (auto ok = taker.take(shard.file, joined.rows); !ok) return fail(ok.error());
  joined.not_in_it = taker.not_seen();
  std::stable_sort(joined.rows.limits.begin(), joined.rows.limits.end(),
                   [&](const auto& a, const auto& b) {
                     const auto& one = portfolio.parts[static_cast<std::size_t>(a.part)].id;
                     const auto& other = portfolio.parts[static_cast<std::size_t>(b.part)].id;
                     return std::tie(one, a.limit) < std::tie(other, b.limit);
                   });
  forecast::sort_left_out(joined.rows.left_out);
  return joined;
}

}  // namespace kneerail
