// Part files of a forecast: written site by site, and put together again in memory.

#include <algorithm>
#include <unordered_map>

#include "schema/exchange/digested_file.h"
#include "schema/exchange/forecast_files.h"
#include "schema/exchange/forecast_join.h"
#include "schema/exchange/shard_block.h"

namespace kneerail {

namespace {

class ShardFile final : public ShardWriter {
 public:
  explicit ShardFile(DigestedWriter writer) : writer_(std::move(writer)) {}

  Result<> add(const forecast::Portfolio& site, const forecast::ForecastRows& rows) override {
    return writer_.block(site_block(site, rows));
  }
  Result<> finish() override { return writer_.finish(); }

 private:
  DigestedWriter writer_;
};

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

Result<JoinedShards> join_shards(const std::vector<std::filesystem::path>& files,
                                 const forecast::Portfolio& portfolio) {
  const auto join = ForecastJoin::open(files);
  if (!join) return fail(join.error());
  std::unordered_map<std::string_view, std::int32_t> places;
  for (std::size_t i = 0; i < portfolio.parts.size(); ++i)
    places.emplace(portfolio.parts[i].id, static_cast<std::int32_t>(i));
  std::vector<char> seen(portfolio.parts.size(), 0);
  JoinedShards joined{(*join)->head(), {}, {}};
  const auto done = (*join)->each_part([&](const JoinedPart& part) -> Result<> {
    const auto place = places.find(part.part.id);
    if (place == places.end()) return unknown_part(part.part.id);
    seen[static_cast<std::size_t>(place->second)] = 1;
    for (const auto& row : part.rows.limits) {
      joined.rows.limits.push_back(row);
      joined.rows.limits.back().part = place->second;
    }
    joined.rows.left_out.insert(joined.rows.left_out.end(), part.rows.left_out.begin(),
                                part.rows.left_out.end());
    return Done{};
  });
  if (!done) return fail(done.error());
  for (std::size_t i = 0; i < seen.size(); ++i)
    if (seen[i] == 0) joined.not_in_it.push_back(static_cast<std::int32_t>(i));
  return joined;
}

}  // namespace kneerail
