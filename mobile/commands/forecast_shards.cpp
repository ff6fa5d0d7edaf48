#include "mobile/commands/forecast_shards.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <system_error>

#include "mobile/commands/console.h"
#include "mobile/commands/forecast_input.h"
#include "schema/machine.h"
#include "schema/store/organisation_days.h"
#include "schema/store/portfolio_store.h"

namespace kneerail::commands {

namespace {

Error changed(const std::string& site) {
  return fail(Fault::conflict,
              "Site " + site +
                  " is not as it was when the fit was made: something was entered, corrected, kept "
                  "back or taken away since. No part was written; the register is as it was. Make "
                  "the fit again, and all parts with it.");
}

/// A site as the register has it, found to be as it was fitted.
Result<forecast::Portfolio> same_site(PortfolioSites& sites, const FitSource& source,
                                      const std::string& site) {
  if (!sites.has(site)) return changed(site);
  auto portfolio = sites.read(site);
  if (!portfolio) return portfolio;
  const auto wanted = std::ranges::find(source.sites(), site, &SiteInput::site);
  const auto now = site_inputs(*portfolio);
  if (wanted == source.sites().end() || now.size() != 1 || now.front().digest != wanted->digest)
    return changed(site);
  return portfolio;
}

Result<> same_day(const HowReckoned& how, const FitSource& source) {
  if (!how.as_of || *how.as_of == source.as_of()) return Done{};
  return fail(Fault::conflict, "The fit is of " + to_text(source.as_of()) + ", and " +
                                   to_text(*how.as_of) +
                                   " is asked. No part was written; the register is as it was. "
                                   "Leave out --as-of, or make the fit of that day.");
}

/// Reads and fits the register, from the day asked or today.
Result<std::unique_ptr<FitSource>> fit_of(Database& tables, const HowReckoned& how) {
  const auto days = organisation_days(tables);
  if (!days) return fail(days.error());
  const Date as_of = how.as_of.value_or(days->zone.day(MachineClock().now()));
  if (auto ok = check_date_comes(how.on, as_of); !ok) return fail(ok.error());
  auto sites = PortfolioSites::open(tables, as_of);
  if (!sites) return fail(sites.error());
  const auto records = records_of(tables);
  if (!records) return fail(records.error());
  return fit_register(std::move(*sites), {.threads = how.threads}, *records);
}

Result<std::int64_t> write_sites(PortfolioSites& register_sites, FitSource& source,
                                 const HowReckoned& how, const ShardOptions& options) {
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
    const auto portfolio = same_site(register_sites, source, site);
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

Result<> write_fit_of(Database& tables, const HowReckoned& how, const std::string& file) {
  const auto fit = fit_of(tables, how);
  return fit ? write_fit(file, **fit) : fail(fit.error());
}

Result<std::int64_t> write_shard(Database& tables, const HowReckoned& how,
                                 const ShardOptions& options) {
  const auto source = options.fit.empty() ? fit_of(tables, how) : open_fit(options.fit);
  if (!source) return fail(source.error());
  if (auto ok = same_day(how, **source); !ok) return fail(ok.error());
  if (auto ok = check_date_comes(how.on, (*source)->as_of()); !ok) return fail(ok.error());
  const auto sites = PortfolioSites::open(tables, (*source)->as_of());
  if (!sites) return fail(sites.error());
  return write_sites(**sites, **source, how, options);
}

std::vector<std::string> not_in_join(const MissingOfJoin& missing,
                                     const std::map<std::string, std::string>& sites) {
  std::vector<std::string> sentences;
  const std::string again = " Make the fit again, and all parts with it.";
  std::int64_t parts = 0;
  std::string names;
  for (const auto& [site, of_site] : missing.parts) {
    const auto name = sites.find(site);
    names += (names.empty() ? "" : ", ") + (name == sites.end() ? site : name->second) + ": " +
             with_commas(of_site);
    parts += of_site;
  }
  if (parts > 0)
    sentences.push_back("Not in this forecast: " + counted(parts, "part", "parts") +
                        " that came to the register after it was fitted (" + names + ")." + again);
  if (missing.records > 0)
    sentences.push_back(counted(missing.records, "record", "records") +
                        " came to the register after this was fitted, and what they say is not in "
                        "it." +
                        again);
  return sentences;
}

Result<JoinAsStream> open_join(Database& tables, const ShardOptions& options,
                               const std::string& site) {
  auto join = ForecastJoin::open(options.parts());
  if (!join) return fail(join.error());
  const ShardHead& head = (*join)->head();
  const auto sites = PortfolioSites::open(tables, head.as_of);
  if (!sites) return fail(sites.error());
  const auto titles = (*sites)->titles();
  auto asked = site_of(site, titles);
  if (!asked) return fail(asked.error());
  auto missing = (*join)->not_in_it(**sites);
  if (!missing) return fail(missing.error());
  const auto records = records_of(tables);
  if (!records) return fail(records.error());
  auto later = visits_after(tables, head.as_of);
  if (!later) return fail(later.error());
  auto unknown = not_in_join({std::move(*missing), *records - head.records}, titles);
  return JoinAsStream{std::move(*join), std::move(*asked), std::move(*later), std::move(unknown)};
}

Result<> each_piece(const JoinAsStream& join, const ForecastView& head,
                    const std::function<void(const ForecastView&)>& each) {
  forecast::Portfolio one = head.portfolio;
  one.parts.resize(1);
  forecast::CoatingForecast rows;
  ForecastView piece{one, rows, head.places, head.site};
  piece.on = head.on;
  piece.limits_read = &join.parts->limits_read();
  return join.parts->each_part([&](const JoinedPart& part) -> Result<> {
    one.parts.front() = part.part;
    one.limits.clear();
    if (part.limits) one.limits.push_back(*part.limits);
    rows.limits = part.rows.limits;
    rows.left_out = part.rows.left_out;
    each(piece);
    return Done{};
  });
}

}  // namespace kneerail::commands
