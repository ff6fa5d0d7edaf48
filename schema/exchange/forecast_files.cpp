// What a forecast is made from, the fit file, and which shard has which sites.

#include "schema/exchange/forecast_files.h"

#include <algorithm>
#include <fstream>
#include <functional>
#include <map>
#include <system_error>
#include <unordered_map>

#include "core/base/archive.h"
#include "core/base/text.h"
#include "core/forecast/whole/fit_by_site.h"
#include "core/forecast/whole/kept_input.h"
#include "core/forecast/whole/part_inputs.h"
#include "schema/exchange/digested_file.h"

namespace kneerail {

template <class Archive, OrConst<SiteInput> T>
void fields(Archive& archive, T& input) {
  archive(input.site, input.parts, input.digest);
}

namespace {

std::string fit_line() {
  return forecast_line("fit 2");
}
constexpr std::size_t length_size = 8;
/// The last block, with the place of the index, and the digest behind it.
constexpr std::size_t tail_size = 2 * length_size + Digest{}.size();

/// Where a site's bytes lie in a fit file.
struct Place {
  std::uint64_t position = 0;  ///< of the block
  Digest digest{};             ///< of its bytes
};

template <class Archive, OrConst<Place> T>
void fields(Archive& archive, T& place) {
  archive(place.position, place.digest);
}

struct Index {
  Date as_of;
  Digest key{};
  std::vector<SiteInput> sites;
  std::vector<Place> places;
  std::string head;
  std::int64_t records = 0;
};

template <class Archive, OrConst<Index> T>
void fields(Archive& archive, T& index) {
  archive(index.as_of, index.key, index.sites, index.places, index.head, index.records);
}

Digest digest_of(std::string_view bytes) {
  return Sha256().add(bytes).finish();
}

/// What was read of a register site by site, fitted.
class FitOfRegister final : public FitSource {
 public:
  FitOfRegister(forecast::SiteFits fits, const forecast::Portfolio& common,
                std::vector<SiteInput> sites, std::int64_t records)
      : fits_(std::move(fits)),
        as_of_(common.as_of),
        sites_(std::move(sites)),
        key_(forecast_key(common, sites_)),
        head_(fits_.head()),
        records_(records) {}

  [[nodiscard]] Date as_of() const override { return as_of_; }
  [[nodiscard]] const Digest& key() const override { return key_; }
  [[nodiscard]] const std::vector<SiteInput>& sites() const override { return sites_; }
  [[nodiscard]] const forecast::ForecastHead& head() const override { return head_; }
  [[nodiscard]] std::int64_t records() const override { return records_; }
  Result<forecast::PortfolioFit> fit_of(const std::string& site) override { return fits_.of(site); }

 private:
  forecast::SiteFits fits_;
  Date as_of_;
  std::vector<SiteInput> sites_;
  Digest key_;
  forecast::ForecastHead head_;
  std::int64_t records_;
};

class FitFile final : public FitSource {
 public:
  FitFile(std::filesystem::path file, std::ifstream in, Index index, forecast::ForecastHead head)
      : file_(std::move(file)),
        in_(std::move(in)),
        index_(std::move(index)),
        head_(std::move(head)) {}

  [[nodiscard]] Date as_of() const override { return index_.as_of; }
  [[nodiscard]] const Digest& key() const override { return index_.key; }
  [[nodiscard]] const std::vector<SiteInput>& sites() const override { return index_.sites; }
  [[nodiscard]] const forecast::ForecastHead& head() const override { return head_; }
  [[nodiscard]] std::int64_t records() const override { return index_.records; }

  Result<forecast::PortfolioFit> fit_of(const std::string& site) override {
    const auto at = std::ranges::lower_bound(index_.sites, site, {}, &SiteInput::site);
    check(at != index_.sites.end() && at->site == site, "a fit is asked for a site it has");
    const Place& place = index_.places[static_cast<std::size_t>(at - index_.sites.begin())];
    const auto bytes = block_at(in_, place.position);
    if (!bytes || digest_of(*bytes) != place.digest) return damaged_file(file_);
    auto fit = forecast::fit_from_bytes(*bytes);
    if (!fit) return damaged_file(file_);
    return fit;
  }

  /// The block that begins there; nothing where the file ends before it does.
  static std::optional<std::string> block_at(std::ifstream& in, std::uint64_t position) {
    in.seekg(0, std::ios::end);
    const auto size = static_cast<std::uint64_t>(in.tellg());
    std::string length(length_size, '\0');
    in.seekg(static_cast<std::streamoff>(position));
    in.read(length.data(), length_size);
    if (!in || length_of(length) > size - position) return std::nullopt;
    std::string bytes(static_cast<std::size_t>(length_of(length)), '\0');
    in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    if (!in) return std::nullopt;
    return bytes;
  }

 private:
  std::filesystem::path file_;
  std::ifstream in_;
  Index index_;
  forecast::ForecastHead head_;
};

/// The index at the end of a fit file; nothing where it is not whole.
std::optional<Index> index_of(std::ifstream& in, std::uint64_t size) {
  if (size < fit_line().size() + 1 + tail_size) return std::nullopt;
  const auto tail = FitFile::block_at(in, size - tail_size);
  if (!tail || tail->size() != length_size || length_of(*tail) > size - tail_size)
    return std::nullopt;
  const auto block = FitFile::block_at(in, length_of(*tail));
  if (!block || block->size() < Digest{}.size()) return std::nullopt;
  const std::string_view bytes(block->data(), block->size() - Digest{}.size());
  const Digest digest = digest_of(bytes);
  if (!std::equal(digest.begin(), digest.end(), block->end() - Digest{}.size(),
                  [](std::uint8_t a, char b) { return a == static_cast<std::uint8_t>(b); }))
    return std::nullopt;
  ByteSource source(bytes);
  Index index;
  source(index);
  // They are looked up by name; adjacent_find: none stands before one that is not after it.
  const bool ascending = std::ranges::adjacent_find(index.sites, std::ranges::greater_equal(),
                                                    &SiteInput::site) == index.sites.end();
  if (!source.ok() || !source.at_end() || index.places.size() != index.sites.size() || !ascending)
    return std::nullopt;
  return index;
}

/// What was left out of each site's readings, in an order of its own: rows say it too.
void add_left_out(const forecast::Portfolio& portfolio,
                  const std::function<void(const std::string& site, std::string_view bytes)>& add) {
  if (portfolio.left_out.empty()) return;
  std::unordered_map<std::string_view, const std::string*> site_of_part;
  for (const auto& part : portfolio.parts) site_of_part.emplace(part.id, &part.site);
  auto left_out = portfolio.left_out;
  forecast::sort_left_out(left_out);
  for (const auto& one : left_out) {
    const auto site = site_of_part.find(one.part);
    if (site == site_of_part.end()) continue;
    add(*site->second, archived(one));
  }
}

}  // namespace

std::string forecast_line(std::string_view kind) {
  return "kneerail forecast " + std::string(kind) + " of models " +
         std::string(forecast::model_version());
}

Result<std::int64_t> records_of(Database& tables) {
  auto rows = tables.prepare("SELECT count(*) FROM fact");
  if (!rows) return fail(rows.error());
  if (const auto row = rows->step(); !row) return fail(row.error());
  return rows->number(0);
}

std::vector<SiteInput> site_inputs(const forecast::Portfolio& portfolio) {
  struct Sum {
    std::int64_t parts = 0;
    Sha256 digest;
  };
  std::map<std::string, Sum> sums;
  forecast::each_part_input(portfolio, [&](std::int32_t part, std::string_view bytes) {
    Sum& sum = sums[portfolio.parts[static_cast<std::size_t>(part)].site];
    ++sum.parts;
    sum.digest.add(std::uint64_t{bytes.size()}).add(bytes);
  });
  add_left_out(portfolio, [&](const std::string& site, std::string_view bytes) {
    sums[site].digest.add(std::uint64_t{bytes.size()}).add(bytes);
  });
  std::vector<SiteInput> inputs;
  for (auto& [site, sum] : sums) inputs.push_back({site, sum.parts, sum.digest.finish()});
  return inputs;
}

Digest forecast_key(const forecast::Portfolio& portfolio, const std::vector<SiteInput>& inputs) {
  Sha256 digest;
  digest.add(forecast::common_input(portfolio));
  for (const SiteInput& input : inputs)
    digest.add(std::uint64_t{input.site.size()}).add(input.site).add(input.digest);
  return digest.finish();
}

Result<std::unique_ptr<FitSource>> fit_register(std::unique_ptr<PortfolioSites> register_sites,
                                                const forecast::RunOptions& options,
                                                std::int64_t records) {
  forecast::FitBySite fit(register_sites->installed());
  forecast::Portfolio common;
  std::vector<SiteInput> inputs;
  for (const std::string& site : register_sites->names()) {
    const auto portfolio = register_sites->read(site);
    if (!portfolio) return fail(portfolio.error());
    if (auto ok = fit.add(site, *portfolio); !ok) return fail(ok.error());
    for (SiteInput& input : site_inputs(*portfolio)) inputs.push_back(std::move(input));
    common.as_of = portfolio->as_of;
    common.settings = portfolio->settings;
  }
  register_sites.reset();
  auto fits = std::move(fit).fit(options);
  if (!fits) return fail(fits.error());
  return std::unique_ptr<FitSource>(
      new FitOfRegister(std::move(*fits), common, std::move(inputs), records));
}

Result<> write_fit(const std::filesystem::path& file, FitSource& fit) {
  auto writer = DigestedWriter::create(file, fit_line());
  if (!writer) return fail(writer.error());
  Index index;
  index.as_of = fit.as_of();
  index.records = fit.records();
  index.sites = fit.sites();
  index.key = fit.key();
  index.head = forecast::bytes_of(fit.head());
  for (const SiteInput& site : index.sites) {
    const auto own = fit.fit_of(site.site);
    if (!own) return fail(own.error());
    const std::string bytes = forecast::bytes_of(*own);
    index.places.push_back({writer->position(), digest_of(bytes)});
    if (auto ok = writer->block(bytes); !ok) return ok;
  }
  std::string bytes;
  ByteSink sink(bytes);
  sink(index);
  sink(digest_of(bytes));
  const std::uint64_t position = writer->position();
  if (auto ok = writer->block(bytes); !ok) return ok;
  if (auto ok = writer->block(length_bytes(position)); !ok) return ok;
  return writer->finish();
}

std::optional<ShardNumber> shard_number(std::string_view text) {
  const auto slash = text.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  const auto part = int_from_text(text.substr(0, slash));
  const auto of = int_from_text(text.substr(slash + 1));
  constexpr std::int64_t most = 100'000;
  if (!part || !of || *of < 1 || *of > most || *part < 1 || *part > *of) return std::nullopt;
  return ShardNumber{static_cast<int>(*part), static_cast<int>(*of)};
}

std::vector<std::string> sites_of_shard(const std::vector<SiteInput>& sites, ShardNumber shard) {
  std::vector<const SiteInput*> order;
  for (const SiteInput& site : sites) order.push_back(&site);
  std::stable_sort(order.begin(), order.end(),
                   [](const auto* a, const auto* b) { return a->parts > b->parts; });
  std::vector<std::int64_t> parts(static_cast<std::size_t>(shard.of), 0);
  std::vector<std::string> own;
  for (const SiteInput* site : order) {
    const auto least = std::min_element(parts.begin(), parts.end());
    *least += site->parts;
    if (least - parts.begin() == shard.part - 1) own.push_back(site->site);
  }
  std::sort(own.begin(), own.end());
  return own;
}

Result<std::unique_ptr<FitSource>> open_fit(const std::filesystem::path& file) {
  // The line at its head says whose file it is; digests of the index and of each site keep it.
  if (const auto reader = DigestedReader::open(file, fit_line()); !reader)
    return fail(reader.error());
  std::error_code failed;
  const std::uint64_t size = std::filesystem::file_size(file, failed);
  std::ifstream in(file, std::ios::binary);
  if (failed || !in) return damaged_file(file);
  auto index = index_of(in, size);
  if (!index) return damaged_file(file);
  auto head = forecast::head_from_bytes(index->head);
  if (!head) return damaged_file(file);
  return std::unique_ptr<FitSource>(
      new FitFile(file, std::move(in), std::move(*index), std::move(*head)));
}

}  // namespace kneerail
