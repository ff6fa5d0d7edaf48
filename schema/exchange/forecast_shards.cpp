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

constexpr std::string_view shard_line = "kneerail forecast part 1";

/// What stands in a part file before its rows.
struct KeptHead {
  Digest key{};
  std::int32_t part = 1;
  std::int32_t of = 1;
  Date as_of;
  std::optional<Date> on;
  std::vector<std::string> sites;
  std::string forecast;
};

template <class Archive, OrConst<KeptHead> T>
void fields(Archive& archive, T& head) {
  archive(head.key, head.part, head.of, head.as_of, head.on, head.sites, head.forecast);
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

template <class T>
std::string written(const T& value) {
  std::string bytes;
  ByteSink sink(bytes);
  sink(value);
  return bytes;
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
    return writer_.block(written(kept));
  }
  Result<> finish() override { return writer_.finish(); }

 private:
  DigestedWriter writer_;
};

/// One part file as it is read.
struct Opened {
  std::filesystem::path file;
  DigestedReader reader;
  ShardHead head;
};

Result<Opened> open_shard(const std::filesystem::path& file) {
  auto reader = DigestedReader::open(file, shard_line);
  if (!reader) return fail(reader.error());
  const auto bytes = reader->block();
  if (!bytes) return fail(bytes.error());
  ByteSource source(*bytes);
  KeptHead kept;
  source(kept);
  auto head = forecast::head_from_bytes(kept.forecast);
  if (!source.ok() || !head) return damaged_file(file);
  return Opened{file, std::move(*reader),
                ShardHead{kept.key, kept.part, kept.of, kept.as_of, kept.on, std::move(kept.sites),
                          std::move(*head)}};
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

Result<std::vector<Opened>> open_shards(const std::vector<std::filesystem::path>& files) {
  check(!files.empty(), "there is a part file to join");
  std::vector<Opened> shards;
  for (const auto& file : files) {
    auto shard = open_shard(file);
    if (!shard) return fail(shard.error());
    shards.push_back(std::move(*shard));
  }
  if (auto ok = check_shards(shards); !ok) return fail(ok.error());
  return shards;
}

using PartPlaces = std::unordered_map<std::string, std::int32_t>;

Result<> take_rows(Opened& shard, const PartPlaces& places, forecast::ForecastRows& all) {
  while (!shard.reader.at_end()) {
    const auto bytes = shard.reader.block();
    if (!bytes) return fail(bytes.error());
    ByteSource source(*bytes);
    KeptRows kept;
    source(kept);
    auto rows = forecast::rows_from_bytes(kept.rows);
    if (!source.ok() || !rows) return damaged_file(shard.file);
    for (auto& row : rows->limits) {
      const auto at = static_cast<std::size_t>(row.part);
      if (at >= kept.parts.size()) return damaged_file(shard.file);
      const auto place = places.find(kept.parts[at]);
      if (place == places.end())
        return fail(Fault::conflict, shard.file.string() + " speaks of part " + kept.parts[at] +
                                         ", which this register does not have." + nothing_joined() +
                                         " Is it the register the parts were made from?");
      row.part = place->second;
      all.limits.push_back(std::move(row));
    }
    all.left_out.insert(all.left_out.end(), rows->left_out.begin(), rows->left_out.end());
  }
  return shard.reader.whole();
}

}  // namespace

Result<std::unique_ptr<ShardWriter>> ShardWriter::create(const std::filesystem::path& file,
                                                         const ShardHead& head) {
  auto writer = DigestedWriter::create(file, shard_line);
  if (!writer) return fail(writer.error());
  const KeptHead kept{head.key,
                      head.part,
                      head.of,
                      head.as_of,
                      head.on,
                      head.sites,
                      forecast::bytes_of(head.forecast)};
  if (auto ok = writer->block(written(kept)); !ok) return fail(ok.error());
  return std::unique_ptr<ShardWriter>(new ShardFile(std::move(*writer)));
}

Result<Date> joined_as_of(const std::vector<std::filesystem::path>& files) {
  const auto shards = open_shards(files);
  if (!shards) return fail(shards.error());
  return shards->front().head.as_of;
}

Result<JoinedShards> join_shards(const std::vector<std::filesystem::path>& files,
                                 const forecast::Portfolio& portfolio) {
  auto opened = open_shards(files);
  if (!opened) return fail(opened.error());
  std::vector<Opened>& shards = *opened;
  PartPlaces places;
  for (std::size_t i = 0; i < portfolio.parts.size(); ++i)
    places.emplace(portfolio.parts[i].id, static_cast<std::int32_t>(i));
  JoinedShards joined;
  joined.head = shards.front().head;
  for (Opened& shard : shards)
    if (auto ok = take_rows(shard, places, joined.rows); !ok) return fail(ok.error());
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
