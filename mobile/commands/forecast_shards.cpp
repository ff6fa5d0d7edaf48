#include "mobile/commands/forecast_shards.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <system_error>

#include "core/base/id.h"
#include "core/records/entities.h"
#include "mobile/commands/console.h"
#include "schema/store/portfolio_store.h"
#include "schema/store/register_things.h"

namespace kneerail::commands {

namespace {

using SiteReader = std::function<Result<forecast::Portfolio>(const std::string& site)>;

Error changed(const std::string& site) {
  return fail(Fault::conflict,
              "Site " + site +
                  " is not as it was when the fit was made: something was entered, corrected, kept "
                  "back or taken away since. No part was written; the register is as it was. Make "
                  "the fit again, and all parts with it.");
}

/// The sites of one part as the register has them, found to be those that were fitted.
class RegisterSites {
 public:
  static Result<std::unique_ptr<RegisterSites>> read(Database& tables, const FitSource& source,
                                                     const std::vector<std::string>& sites) {
    std::unique_ptr<RegisterSites> made(new RegisterSites);
    if (sites.empty()) return made;
    const auto things = load_things(tables, static_cast<int>(EntityType::site));
    if (!things) return fail(things.error());
    std::map<std::string, Uuid> ids;
    for (const Thing& thing : things->all()) ids.emplace(things->text(thing.id), thing.id);
    PortfolioQuestion question;
    for (const std::string& site : sites) {
      const auto id = ids.find(site);
      if (id == ids.end()) return changed(site);
      question.sites.push_back(id->second);
    }
    auto portfolio = read_portfolio(tables, source.as_of(), question);
    if (!portfolio) return fail(portfolio.error());
    made->portfolio_ = std::move(*portfolio);
    if (auto ok = made->check_same(source, sites); !ok) return fail(ok.error());
    made->split_.emplace(made->portfolio_);
    return made;
  }

  [[nodiscard]] forecast::Portfolio site(const std::string& name) const {
    return split_->portfolio_of(name);
  }

 private:
  RegisterSites() = default;

  [[nodiscard]] Result<> check_same(const FitSource& source,
                                    const std::vector<std::string>& sites) const {
    const auto inputs = site_inputs(portfolio_);
    for (const std::string& site : sites) {
      const auto wanted = std::ranges::find(source.sites(), site, &SiteInput::site);
      const auto now = std::ranges::find(inputs, site, &SiteInput::site);
      if (wanted == source.sites().end() || now == inputs.end() || now->digest != wanted->digest)
        return changed(site);
    }
    return Done{};
  }

  forecast::Portfolio portfolio_;
  std::optional<forecast::SiteSplit> split_;
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
                                                   .forecast = source.head(),
                                                   .records = source.records()});
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

std::vector<std::string> given_options(const CLI::App& command) {
  std::vector<std::string> given;
  for (const CLI::Option* option : command.get_options())
    if (option->count() > 0) given.push_back(option->get_name());
  return given;
}

namespace {

/// A fit in one file and a part in another.
bool same_file(const std::string& one, const std::string& other) {
  std::error_code failed;
  if (std::filesystem::equivalent(one, other, failed)) return true;
  return std::filesystem::absolute(one).lexically_normal() ==
         std::filesystem::absolute(other).lexically_normal();
}

/// What each of the three takes beside itself, and what it does in words.
struct Takes {
  const char* name;
  const char* does;
  std::set<std::string> options;
};
Takes takes_of(const ShardOptions& options) {
  if (!options.join.empty())
    return {"--join",
            "shows the parts as they were reckoned",
            {"--data", "--join", "--csv", "--json", "--site", "--worst", "--track-record",
             "--inspectors", "--measure-first", "--threads"}};
  if (!options.shard.empty())
    return {"--shard",
            "writes a part and shows nothing",
            {"--data", "--as-of", "--on", "--fit", "--shard", "--into", "--threads"}};
  return {"--fit",
          "writes what all sites share and shows nothing",
          {"--data", "--as-of", "--fit", "--threads"}};
}

}  // namespace

Result<> check_together(const ShardOptions& options, const std::vector<std::string>& given) {
  const auto refused = [](const std::string& why) {
    return fail(Fault::invalid_input, why + " Nothing was reckoned; the register is as it was.");
  };
  if (options.shard.empty() != options.into.empty())
    return refused("--shard K/N and --into FILE go together.");
  if (!options.join.empty() && !(options.shard.empty() && options.fit.empty()))
    return refused("--join puts parts together and takes neither --shard nor --fit.");
  if (options.join.empty() && options.shard.empty() && options.fit.empty()) return Done{};
  const Takes takes = takes_of(options);
  for (const std::string& option : given)
    if (!takes.options.contains(option))
      return refused(std::string(takes.name) + " " + takes.does + ": " + option +
                     " does not go with it. Leave it out.");
  if (!options.fit.empty() && !options.into.empty() && same_file(options.fit, options.into))
    return refused("--into " + options.into +
                   " is the file of the fit itself. Give the part a file of its own.");
  return Done{};
}

Result<> check_date_comes(std::optional<Date> on, Date as_of) {
  if (!on || *on >= as_of) return Done{};
  return fail(Fault::invalid_input, "--on " + to_text(*on) + " is before " + to_text(as_of) +
                                        ", the day the forecast is from. Nothing was reckoned; the "
                                        "register is as it was. Ask for a later date, or forecast "
                                        "from an earlier day with --as-of.");
}

Result<> write_fit_of(const ReadPortfolio& read, const HowReckoned& how, const std::string& file) {
  const auto fit = forecast::fit_portfolio(read.portfolio, {.threads = how.threads});
  if (!fit) return fail(fit.error());
  return write_fit(file, *fit, read.portfolio, read.records);
}

Result<std::int64_t> write_shard(const ReadPortfolio& read, const HowReckoned& how,
                                 const ShardOptions& options) {
  const auto fit = forecast::fit_portfolio(read.portfolio, {.threads = how.threads});
  if (!fit) return fail(fit.error());
  const auto source = fit_in_memory(*fit, read.portfolio, read.records);
  const forecast::SiteSplit split(read.portfolio);
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
  const auto sites = RegisterSites::read(
      tables, **source, sites_of_shard((*source)->sites(), *shard_number(options.shard)));
  if (!sites) return fail(sites.error());
  return write_sites(
      **source,
      [&](const std::string& site) -> Result<forecast::Portfolio> { return (*sites)->site(site); },
      how, options);
}

std::vector<std::string> not_in_join(const JoinedShards& joined, const ReadPortfolio& read,
                                     const Places& places) {
  std::vector<std::string> sentences;
  const std::string again = " Make the fit again, and all parts with it.";
  std::map<std::string, std::int64_t> of_site;
  for (const std::int32_t place : joined.not_in_it)
    ++of_site[read.portfolio.parts[static_cast<std::size_t>(place)].site];
  std::string sites;
  for (const auto& [site, parts] : of_site) {
    const auto name = places.sites.find(site);
    sites += (sites.empty() ? "" : ", ") + (name == places.sites.end() ? site : name->second) +
             ": " + with_commas(parts);
  }
  const auto missing = static_cast<std::int64_t>(joined.not_in_it.size());
  if (missing > 0)
    sentences.push_back("Not in this forecast: " + counted(missing, "part", "parts") +
                        " that came to the register after it was fitted (" + sites + ")." + again);
  if (const std::int64_t later = read.records - joined.head.records; later > 0)
    sentences.push_back(counted(later, "record", "records") +
                        " came to the register after this was fitted, and what they say is not in "
                        "it." +
                        again);
  return sentences;
}

}  // namespace kneerail::commands
