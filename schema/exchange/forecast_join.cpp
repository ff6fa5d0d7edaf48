#include "schema/exchange/forecast_join.h"

#include <algorithm>
#include <fstream>
#include <queue>
#include <tuple>
#include <utility>

#include "core/forecast/decisions/part_outlook.h"
#include "schema/exchange/digested_file.h"
#include "schema/exchange/shard_block.h"

namespace kneerail {

namespace {

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

std::string nothing_joined() {
  return " Nothing was joined; the register is as it was.";
}

ShardHead shown(const KeptHead& kept, forecast::ForecastHead forecast) {
  return {kept.key,   kept.part,           kept.of,     kept.as_of, kept.on,
          kept.sites, std::move(forecast), kept.records};
}

/// What one part's bytes say; nothing where they say nothing.
std::optional<JoinedPart> part_from_bytes(std::string_view bytes) {
  ByteSource source(bytes);
  PartBlock block;
  source(block);
  if (!source.ok() || !source.at_end()) return std::nullopt;
  auto rows = forecast::rows_from_bytes(block.rows);
  const auto of_it = [](const forecast::LimitForecast& row) { return row.part == 0; };
  if (!rows || !std::ranges::all_of(rows->limits, of_it)) return std::nullopt;
  return JoinedPart{std::move(block.part), {}, std::move(*rows)};
}

constexpr std::size_t length_size = 8;

}  // namespace

Error unknown_part(const std::string& id) {
  return fail(Fault::conflict, "The forecast speaks of part " + id +
                                   ", which this register does not have." + nothing_joined() +
                                   " Is it the register the parts were made from?");
}

Result<Date> joined_as_of(const std::vector<std::filesystem::path>& files) {
  check(!files.empty(), "there is a part file to join");
  auto reader = DigestedReader::open(files.front(), shard_line());
  if (!reader) return fail(reader.error());
  const auto head = read_head(*reader, files.front());
  if (!head) return fail(head.error());
  return head->as_of;
}

struct ForecastJoin::Looked {
  std::filesystem::path file;
  KeptHead head;
  std::vector<std::pair<std::string, SitePlace>> sites;
};

/// That all are of one forecast, each part once, none missing.
Result<> ForecastJoin::check_shards(const std::vector<Looked>& shards) {
  const Looked& first = shards.front();
  std::map<std::int32_t, const Looked*> by_part;
  for (const Looked& shard : shards) {
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

/// Reads a site's parts one after the other.
class ForecastJoin::Cursor {
 public:
  explicit Cursor(const SitePlace& place) : place_(&place) {}

  [[nodiscard]] const JoinedPart& part() const { return part_; }

  /// False at the end. Errors: corrupt.
  Result<bool> next() {
    if (at_ == place_->size) {
      if (digest_.finish() != place_->digest) return damaged_file(place_->file);
      return false;
    }
    const auto length = take(length_size);
    if (!length) return damaged_file(place_->file);
    const std::uint64_t size = length_of(*length);
    if (size > place_->size - at_) return damaged_file(place_->file);
    const auto bytes = take(static_cast<std::size_t>(size));
    auto part = bytes ? part_from_bytes(*bytes) : std::nullopt;
    if (!part) return damaged_file(place_->file);
    part_ = std::move(*part);
    part_.limits = place_->limits;
    return true;
  }

 private:
  /// The next so many bytes; nothing where the file ends before.
  std::optional<std::string> take(std::size_t size) {
    if (buffer_.size() - used_ < size && !fill(size)) return std::nullopt;
    std::string bytes = buffer_.substr(used_, size);
    used_ += size;
    at_ += size;
    digest_.add(bytes);
    return bytes;
  }

  bool fill(std::size_t size) {
    constexpr std::uint64_t at_once = 8192;
    buffer_.erase(0, used_);
    used_ = 0;
    const std::uint64_t from = at_ + buffer_.size();
    const auto more = std::min(std::max<std::uint64_t>(size, at_once), place_->size - from);
    std::ifstream in(place_->file, std::ios::binary);
    in.seekg(static_cast<std::streamoff>(place_->first + from));
    const std::size_t before = buffer_.size();
    buffer_.resize(before + static_cast<std::size_t>(more));
    in.read(buffer_.data() + before, static_cast<std::streamsize>(more));
    return in && buffer_.size() >= size;
  }

  const SitePlace* place_;
  std::uint64_t at_ = 0;  ///< bytes taken
  std::string buffer_;
  std::size_t used_ = 0;  ///< of the buffer
  Sha256 digest_;
  JoinedPart part_;
};

Result<> ForecastJoin::look_at_site(Looked& looked, std::uint64_t first, std::string_view bytes) {
  ByteSource source(bytes);
  SiteBlockHead head;
  source(head);
  if (!source.ok()) return damaged_file(looked.file);
  const std::size_t before = archived(head).size();
  std::string id;
  for (std::uint64_t i = 0; i < head.parts; ++i) {
    std::string own;
    source(own);
    const auto part = source.ok() ? part_from_bytes(own) : std::nullopt;
    if (!part || part->part.site != head.site || (i > 0 && part->part.id <= id))
      return damaged_file(looked.file);
    id = part->part.id;
    limits_read_.merge(forecast::limits_read(part->rows.limits));
    for (const auto& row : part->rows.limits)
      screws_answered_ =
          screws_answered_ || (row.limit == forecast::Limit::torque_minimum && row.answered);
  }
  if (!source.at_end()) return damaged_file(looked.file);
  looked.sites.emplace_back(head.site,
                            SitePlace{looked.file, first + before, bytes.size() - before,
                                      Sha256().add(bytes.substr(before)).finish(), head.limits});
  return Done{};
}

/// A file that is whole: what a damaged one says is not heard.
Result<ForecastJoin::Looked> ForecastJoin::look_at(const std::filesystem::path& file) {
  auto reader = DigestedReader::open(file, shard_line());
  if (!reader) return fail(reader.error());
  auto head = read_head(*reader, file);
  if (!head) return fail(head.error());
  Looked looked{file, std::move(*head), {}};
  while (!reader->at_end()) {
    const std::uint64_t first = reader->position() + length_size;
    const auto bytes = reader->block();
    if (!bytes) return fail(bytes.error());
    if (auto ok = look_at_site(looked, first, *bytes); !ok) return fail(ok.error());
  }
  if (auto ok = reader->whole(); !ok) return fail(ok.error());
  return looked;
}

Result<std::unique_ptr<ForecastJoin>> ForecastJoin::open(
    const std::vector<std::filesystem::path>& files) {
  check(!files.empty(), "there is a part file to join");
  std::unique_ptr<ForecastJoin> join(new ForecastJoin);
  std::vector<Looked> shards;
  for (const auto& file : files) {
    auto looked = join->look_at(file);
    if (!looked) return fail(looked.error());
    shards.push_back(std::move(*looked));
  }
  if (auto ok = check_shards(shards); !ok) return fail(ok.error());
  const auto first = std::ranges::find(shards, 1, [](const Looked& one) { return one.head.part; });
  auto forecast = forecast::head_from_bytes(first->head.forecast);
  if (!forecast) return damaged_file(first->file);
  join->head_ = shown(first->head, std::move(*forecast));
  for (Looked& shard : shards) {
    join->head_.records = std::min(join->head_.records, shard.head.records);
    for (auto& site : shard.sites)
      if (!join->sites_.insert(std::move(site)).second) return damaged_file(shard.file);
  }
  return join;
}

Result<std::map<std::string, std::int64_t>> ForecastJoin::not_in_it(PortfolioSites& sites) const {
  std::map<std::string, std::int64_t> missing;
  for (const std::string& name : sites.names()) {
    const auto own = sites.part_ids(name);
    if (!own) return fail(own.error());
    auto parts = static_cast<std::int64_t>(own->size());
    if (const auto place = sites_.find(name); place != sites_.end()) {
      Cursor cursor(place->second);
      for (auto more = cursor.next();; more = cursor.next()) {
        if (!more) return fail(more.error());
        if (!*more) break;
        const std::string& id = cursor.part().part.id;
        if (!std::ranges::binary_search(*own, id)) return unknown_part(id);
        --parts;
      }
    }
    if (parts > 0) missing[name] = parts;
  }
  for (const auto& [name, place] : sites_) {
    if (sites.has(name)) continue;
    Cursor cursor(place);
    if (const auto more = cursor.next(); !more) return fail(more.error());
    return unknown_part(cursor.part().part.id);
  }
  return missing;
}

Result<> ForecastJoin::each_part(const std::function<Result<>(const JoinedPart&)>& each) const {
  std::vector<Cursor> cursors;
  for (const auto& [name, place] : sites_) cursors.emplace_back(place);
  const auto later = [&](std::size_t a, std::size_t b) {
    return std::tie(cursors[a].part().part.id, a) > std::tie(cursors[b].part().part.id, b);
  };
  std::priority_queue<std::size_t, std::vector<std::size_t>, decltype(later)> waiting(later);
  const auto advance = [&](std::size_t site) -> Result<> {
    const auto more = cursors[site].next();
    if (!more) return fail(more.error());
    if (*more) waiting.push(site);
    return Done{};
  };
  for (std::size_t site = 0; site < cursors.size(); ++site)
    if (auto ok = advance(site); !ok) return ok;
  while (!waiting.empty()) {
    const std::size_t site = waiting.top();
    waiting.pop();
    if (auto ok = each(cursors[site].part()); !ok) return ok;
    if (auto ok = advance(site); !ok) return ok;
  }
  return Done{};
}

}  // namespace kneerail
