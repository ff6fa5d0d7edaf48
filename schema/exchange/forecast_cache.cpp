#include "schema/exchange/forecast_cache.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "core/base/archive.h"
#include "core/forecast/part_story.h"
#include "core/forecast/whole/kept_bounds.h"
#include "core/forecast/whole/kept_models.h"
#include "core/forecast/whole/part_inputs.h"
#include "schema/exchange/digested_file.h"
#include "schema/exchange/forecast_files.h"

namespace kneerail {

namespace {

/// More than one part in so many changed: what they share is no longer what it was.
constexpr std::size_t parts_for_one_held = 20;

/// What one part's rows were made from.
struct PartKey {
  std::string id;
  Digest input{};
  Digest place{};     ///< of its site, zone and run, which the fit has a place for
  bool held = false;  ///< reckoned since the fit, with what parts share held
};

template <class Archive, OrConst<PartKey> T>
void fields(Archive& archive, T& key) {
  archive(key.id, key.input, key.place, key.held);
}

/// What stands before the rows and the fit.
struct Head {
  Digest common{};
  Digest sealed{};
  std::vector<PartKey> parts;  ///< ascending by id
  std::string forecast;
};

template <class Archive, OrConst<Head> T>
void fields(Archive& archive, T& head) {
  archive(head.common, head.sealed, head.parts, head.forecast);
}

struct Kept {
  Head head;
  std::string rows;
  std::string fit;
};

/// Nothing where there is none, or it is not whole.
std::optional<Kept> read_kept(const std::filesystem::path& file) {
  auto reader = DigestedReader::open(file, forecast_line("kept 1"));
  if (!reader) return std::nullopt;
  std::array<std::string, 3> blocks;
  for (std::string& block : blocks) {
    auto bytes = reader->block();
    if (!bytes) return std::nullopt;
    block = std::move(*bytes);
  }
  if (!reader->whole()) return std::nullopt;
  Kept kept;
  ByteSource source(blocks[0]);
  source(kept.head);
  if (!source.ok() || !source.at_end()) return std::nullopt;
  kept.rows = std::move(blocks[1]);
  kept.fit = std::move(blocks[2]);
  return kept;
}

bool write_kept(const std::filesystem::path& file, const Kept& kept) {
  auto writer = DigestedWriter::create(file, forecast_line("kept 1"));
  if (!writer) return false;
  return writer->block(archived(kept.head)) && writer->block(kept.rows) &&
         writer->block(kept.fit) && writer->finish();
}

std::vector<PartKey> keys_of(const forecast::Portfolio& portfolio) {
  std::vector<PartKey> keys;
  forecast::each_part_input(portfolio, [&](std::int32_t place, std::string_view bytes) {
    const auto& part = portfolio.parts[static_cast<std::size_t>(place)];
    keys.push_back({part.id, Sha256().add(bytes).finish(),
                    Sha256()
                        .add(std::uint64_t{part.site.size()})
                        .add(part.site)
                        .add(std::uint64_t{part.zone.size()})
                        .add(part.zone)
                        .add(part.run)
                        .finish(),
                    false});
  });
  return keys;
}

Head head_of_inputs(const forecast::Portfolio& portfolio, const Digest& sealed) {
  return {.common = Sha256().add(forecast::common_input(portfolio)).finish(),
          .sealed = sealed,
          .parts = keys_of(portfolio),
          .forecast = {}};
}

/// Whether the rows are of places that there are.
bool are_of_parts(const forecast::ForecastRows& rows, const forecast::Portfolio& portfolio) {
  return std::ranges::all_of(rows.limits, [&](const forecast::LimitForecast& row) {
    return row.part >= 0 && static_cast<std::size_t>(row.part) < portfolio.parts.size();
  });
}

std::optional<forecast::PortfolioFit> fit_kept(const std::string& bytes,
                                               const forecast::Portfolio& portfolio) {
  auto fit = forecast::fit_from_bytes(bytes);
  if (!fit) return std::nullopt;
  if (forecast::WallPaths::there_are(portfolio.settings))
    fit->coating.wall_paths.emplace(portfolio.settings);
  return std::move(*fit);
}

/// What is kept against what the portfolio is now.
class Comparison {
 public:
  Comparison(const Kept& kept, const Head& now) {
    const auto& before = kept.head.parts;
    usable_ = kept.head.common == now.common && before.size() == now.parts.size();
    for (std::size_t i = 0; usable_ && i < before.size(); ++i) {
      usable_ = before[i].id == now.parts[i].id && before[i].place == now.parts[i].place;
      if (before[i].input != now.parts[i].input) changed_.push_back(i);
      held_ += before[i].held ? 1 : 0;
    }
    if (changed_.size() > 1 && changed_.size() * parts_for_one_held > before.size())
      usable_ = false;
    const bool sealed = kept.head.sealed != now.sealed;
    if (sealed && (!changed_.empty() || held_ > 0)) usable_ = false;
  }

  [[nodiscard]] bool usable() const { return usable_; }
  [[nodiscard]] const std::vector<std::size_t>& changed() const { return changed_; }
  [[nodiscard]] std::int64_t held() const { return held_; }

 private:
  bool usable_ = false;
  std::vector<std::size_t> changed_;  ///< places in the keys
  std::int64_t held_ = 0;
};

class CacheWork {
 public:
  CacheWork(const forecast::Portfolio& portfolio, const forecast::RunOptions& options,
            const CacheQuestion& question)
      : portfolio_(portfolio),
        options_(options),
        question_(question),
        now_(head_of_inputs(portfolio, question.sealed)) {}

  Result<CachedForecast> run() {
    auto kept = question_.afresh ? std::nullopt : read_kept(question_.file);
    if (kept) {
      const Comparison comparison(*kept, now_);
      if (comparison.usable() && (!options_.on || comparison.changed().empty()))
        if (auto made = from_kept(std::move(*kept), comparison)) return std::move(*made);
    }
    return all_again();
  }

 private:
  Result<CachedForecast> all_again() {
    const auto fit = forecast::fit_portfolio(portfolio_, options_);
    if (!fit) return fail(fit.error());
    auto rows = forecast::rows_of(*fit, portfolio_, options_);
    if (!rows) return fail(rows.error());
    const auto head = forecast::head_of(*fit);
    CachedForecast out;
    out.reckoned = {.fitted = true, .parts = count(), .held = 0};
    // The chances by a date asked are said once: what is kept has none.
    if (!options_.on) out.kept = keep(head, *rows, forecast::bytes_of(*fit));
    out.made = forecast::put_together(head, std::move(*rows), portfolio_.left_out);
    return out;
  }

  /// Nothing where what is kept cannot be used after all.
  std::optional<Result<CachedForecast>> from_kept(Kept kept, const Comparison& comparison) {
    auto head = forecast::head_from_bytes(kept.head.forecast);
    auto rows = forecast::rows_from_bytes(kept.rows);
    if (!head || !rows || !are_of_parts(*rows, portfolio_)) return std::nullopt;
    CachedForecast out;
    out.kept = true;
    out.reckoned.held = comparison.held();
    for (std::size_t i = 0; i < now_.parts.size(); ++i)
      now_.parts[i].held = kept.head.parts[i].held;
    if (options_.on && comparison.held() > 0) return std::nullopt;
    if (options_.on || !comparison.changed().empty()) {
      const auto fit = fit_kept(kept.fit, portfolio_);
      if (!fit) return std::nullopt;
      auto again = options_.on ? on_date(*fit) : with_changed(*fit, comparison, *rows);
      if (!again) return Result<CachedForecast>(fail(again.error()));
      *rows = std::move(*again);
      out.reckoned.parts =
          options_.on ? count() : static_cast<std::int64_t>(comparison.changed().size());
      if (!options_.on) {
        out.reckoned.held = std::ranges::count(now_.parts, true, &PartKey::held);
        out.kept = keep(*head, *rows, std::move(kept.fit));
      }
    }
    out.made = forecast::put_together(*head, std::move(*rows), portfolio_.left_out);
    return Result<CachedForecast>(std::move(out));
  }

  Result<forecast::ForecastRows> on_date(const forecast::PortfolioFit& fit) const {
    return forecast::rows_of(fit, portfolio_, options_);
  }

  Result<forecast::ForecastRows> with_changed(const forecast::PortfolioFit& fit,
                                              const Comparison& comparison,
                                              const forecast::ForecastRows& before) {
    std::vector<char> changed(portfolio_.parts.size(), 0);
    for (const std::size_t i : comparison.changed()) changed[i] = 1;
    forecast::ForecastRows rows;
    for (const auto& row : before.limits)
      if (changed[static_cast<std::size_t>(row.part)] == 0) rows.limits.push_back(row);
    for (const auto& left : before.left_out) {
      const auto key = std::ranges::lower_bound(now_.parts, left.part, {}, &PartKey::id);
      const bool known = key != now_.parts.end() && key->id == left.part;
      if (!known || changed[static_cast<std::size_t>(key - now_.parts.begin())] == 0)
        rows.left_out.push_back(left);
    }
    for (const std::size_t i : comparison.changed()) {
      now_.parts[i].held = true;
      const auto place = static_cast<std::int32_t>(i);
      auto again = forecast::rows_of_one_part(fit, forecast::only_part(portfolio_, place));
      if (!again) return fail(again.error());
      for (auto& row : again->limits) {
        row.part = place;
        rows.limits.push_back(std::move(row));
      }
      rows.left_out.insert(rows.left_out.end(), again->left_out.begin(), again->left_out.end());
    }
    sort_rows(rows);
    forecast::sort_left_out(rows.left_out);
    return rows;
  }

  void sort_rows(forecast::ForecastRows& rows) const {
    std::stable_sort(rows.limits.begin(), rows.limits.end(), [&](const auto& a, const auto& b) {
      const auto& one = portfolio_.parts[static_cast<std::size_t>(a.part)].id;
      const auto& other = portfolio_.parts[static_cast<std::size_t>(b.part)].id;
      return std::tie(one, a.limit) < std::tie(other, b.limit);
    });
  }

  bool keep(const forecast::ForecastHead& head, const forecast::ForecastRows& rows,
            std::string fit) {
    now_.forecast = forecast::bytes_of(head);
    return write_kept(question_.file, {now_, forecast::bytes_of(rows), std::move(fit)});
  }

  [[nodiscard]] std::int64_t count() const {
    return static_cast<std::int64_t>(portfolio_.parts.size());
  }

  const forecast::Portfolio& portfolio_;
  const forecast::RunOptions& options_;
  const CacheQuestion& question_;
  Head now_;  ///< its parts in the order of the portfolio
};

}  // namespace

Result<Digest> sealed_visits(Database& tables) {
  auto rows = tables.prepare(
      "SELECT visit, person, dev, last_seq FROM visit_part WHERE sealed IS NOT NULL "
      "ORDER BY visit, person, dev");
  if (!rows) return fail(rows.error());
  Sha256 digest;
  for (;;) {
    const auto row = rows->step();
    if (!row) return fail(row.error());
    if (!*row) return digest.finish();
    digest.add(rows->bytes(0)).add(rows->bytes(1)).add(rows->bytes(2));
    digest.add(static_cast<std::uint64_t>(rows->number(3)));
  }
}

Result<CachedForecast> cached_forecast(const forecast::Portfolio& portfolio,
                                       const forecast::RunOptions& options,
                                       const CacheQuestion& question) {
  check(std::ranges::is_sorted(portfolio.parts, {}, &forecast::Part::id),
        "the parts of a portfolio to be kept are in the order of their ids");
  return CacheWork(portfolio, options, question).run();
}

std::optional<KeptForecast> kept_forecast(const forecast::Portfolio& portfolio,
                                          const std::filesystem::path& file) {
  const auto kept = read_kept(file);
  if (!kept) return std::nullopt;
  const Comparison comparison(*kept, head_of_inputs(portfolio, kept->head.sealed));
  if (!comparison.usable() || !comparison.changed().empty() || comparison.held() > 0)
    return std::nullopt;
  auto fit = fit_kept(kept->fit, portfolio);
  auto rows = forecast::rows_from_bytes(kept->rows);
  if (!fit || !forecast::within(*fit, portfolio.parts.size()) || !rows ||
      !are_of_parts(*rows, portfolio))
    return std::nullopt;
  return KeptForecast{std::move(*fit), std::move(*rows)};
}

bool keep_forecast(const forecast::Portfolio& portfolio, const KeptForecast& made,
                   const CacheQuestion& question) {
  Head head = head_of_inputs(portfolio, question.sealed);
  head.forecast = forecast::bytes_of(forecast::head_of(made.fit));
  return write_kept(question.file,
                    {std::move(head), forecast::bytes_of(made.rows), forecast::bytes_of(made.fit)});
}

}  // namespace kneerail
