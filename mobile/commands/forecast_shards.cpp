#include "mobile/commands/forecast_shards.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <functional>

#include "core/base/id.h"
#include "core/records/entities.h"
#include "schema/exchange/forecast_files.h"
#include "schema/store/portfolio_store.h"
#include "schema/store/register_things.h"

namespace kneerail::commands {

namespace {

using SiteReader = std::function<Result<forecast::Portfolio>(const std::string& site)>;

/// Reads one site of the register, and looks whether it is still the one that was fitted.
class RegisterSites {
 public:
  RegisterSites(Database& tables, FitSource& source, const Things& sites)
      : tables_(tables), source_(source), sites_(sites) {}

  Result<forecast::Portfolio> operator()(const std::string& site) const {
    PortfolioQuestion question;
    for (const Thing& thing : sites_.all())
      if (sites_.text(thing.id) == site) question.sites.push_back(thing.id);
    if (question.sites.empty()) return changed(site);
    auto portfolio = read_portfolio(tables_, source_.as_of(), question);
    if (!portfolio) return fail(portfolio.error());
    const auto inputs = site_inputs(*portfolio);
    const auto wanted = std::ranges::lower_bound(source_.sites(), site, {}, &SiteInput::site);
    if (inputs.size() != 1 || inputs[0].digest != wanted->digest) return changed(site);
    return portfolio;
  }

 private:
  static Error changed(const std::string& site) {
    return fail(Fault::conflict,
                "Site " + site +
                    " is not as it was when the fit was made: something was entered, corrected or "
                    "taken away since. No part was written; the register is as it was. Make the "
                    "fit again, and all parts with it.");
  }

  Database& tables_;
  FitSource& source_;
  const Things& sites_;
};

Result<> same_day(const HowReckoned& how, const FitSource& source) {
  if (!how.as_of || *how.as_of == source.as_of()) return Done{};
  return fail(Fault::conflict, "The fit is of " + to_text(source.as_of()) + ", and " +
                                   to_text(*how.as_of) +
                                   " is asked. No part was written; the register is as it was. "
                                   "Leave out --as-of, or make the fit of that day.");
}

Result<std::int64_t> write_sites(FitSource& source, const SiteReader& read, const HowReckoned& how,
                                 const ShardOptions& options) {
  const ShardNumber number = *shard_number(options.shard);
  const auto sites = sites_of_shard(source.sites(), number);
  auto writer = ShardWriter::create(options.into, {.key = source.key(),
                                                   .part = number.part,
                                                   .of = number.of,
                                                   .as_of = source.as_of(),
                                                   .on = how.on,
                                                   .sites = sites,
                                                   .forecast = source.head()});
  if (!writer) return fail(writer.error());
  std::int64_t parts = 0;
  for (const std::string& site : sites) {
    const auto portfolio = read(site);
    if (!portfolio) return fail(portfolio.error());
    const auto fit = source.fit_of(site);
    if (!fit) return fail(fit.error());
    const auto rows = forecast::rows_of(*fit, *portfolio, {.threads = how.threads, .on = how.on});
    if (!rows) return fail(rows.error());
    if (auto ok = (*writer)->add(*portfolio, *rows); !ok) return fail(ok.error());
    parts += static_cast<std::int64_t>(portfolio->parts.size());
  }
  if (auto ok = (*writer)->finish(); !ok) return fail(ok.error());
  return parts;
}

}  // namespace

void add_shard_options(CLI::App& command, ShardOptions& options) {
  command
      .add_option("--fit", options.fit,
                  "What all sites share: written to FILE, or with --shard read from it")
      ->type_name("FILE");
  command
      .add_option("--shard", options.shard,
                  "Reckon the K-th of N parts of the sites only, and write it with --into")
      ->type_name("K/N")
      ->check([](const std::string& text) {
        return shard_number(text) ? std::string()
                                  : "'" + text + "' is no part of a forecast: write it as 2/7";
      });
  command.add_option("--into", options.into, "The file of the part")->type_name("FILE");
  command.add_option("--join", options.join, "Put all parts of a forecast together and show it")
      ->type_name("FILES");
}

Result<> check_together(const ShardOptions& options) {
  const auto refused = [](const char* why) {
    return fail(Fault::invalid_input, std::string(why) + " Nothing was reckoned.");
  };
  if (options.shard.empty() != options.into.empty())
    return refused("--shard K/N and --into FILE go together.");
  if (!options.join.empty() && !(options.shard.empty() && options.fit.empty()))
    return refused("--join puts parts together and takes neither --shard nor --fit.");
  return Done{};
}

Result<> check_date_comes(std::optional<Date> on, Date as_of) {
  if (!on || *on >= as_of) return Done{};
  return fail(Fault::invalid_input, "--on " + to_text(*on) + " is before " + to_text(as_of) +
                                        ", the day the forecast is from. Nothing was reckoned; the "
                                        "register is as it was. Ask for a later date, or forecast "
                                        "from an earlier day with --as-of.");
}

Result<> write_fit_of(const forecast::Portfolio& portfolio, const HowReckoned& how,
                      const std::string& file) {
  const auto fit = forecast::fit_portfolio(portfolio, {.threads = how.threads});
  if (!fit) return fail(fit.error());
  return write_fit(file, *fit, portfolio);
}

Result<std::int64_t> write_shard(const forecast::Portfolio& portfolio, const HowReckoned& how,
                                 const ShardOptions& options) {
  const auto fit = forecast::fit_portfolio(portfolio, {.threads = how.threads});
  if (!fit) return fail(fit.error());
  const auto source = fit_in_memory(*fit, portfolio);
  const forecast::SiteSplit split(portfolio);
  return write_sites(
      *source,
      [&](const std::string& site) -> Result<forecast::Portfolio> {
        return split.portfolio_of(site);
      },
      how, options);
}

Result<std::int64_t> write_shard_of_fit(Database& tables, const HowReckoned& how,
                                        const ShardOptions& options) {
  const auto source = open_fit(options.fit);
  if (!source) return fail(source.error());
  if (auto ok = same_day(how, **source); !ok) return fail(ok.error());
  if (auto ok = check_date_comes(how.on, (*source)->as_of()); !ok) return fail(ok.error());
  const auto things = load_things(tables, static_cast<int>(EntityType::site));
  if (!things) return fail(things.error());
  return write_sites(**source, RegisterSites(tables, **source, *things), how, options);
}

}  // namespace kneerail::commands
