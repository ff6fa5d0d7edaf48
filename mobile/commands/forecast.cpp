#include <CLI/CLI.hpp>
#include <memory>
#include <optional>

#include "core/forecast/all_limits.h"
#include "core/forecast/issued_reports.h"
#include "mobile/commands/cautions.h"
#include "mobile/commands/commands.h"
#include "mobile/commands/forecast_input.h"
#include "mobile/commands/forecast_output.h"
#include "mobile/commands/forecast_shards.h"
#include "mobile/commands/open_register.h"
#include "schema/exchange/forecast_cache.h"
#include "schema/exchange/forecast_files.h"
#include "schema/store/later_visits.h"

namespace kneerail::commands {

namespace {

struct ForecastOptions {
  AskedForecast asked;
  std::optional<std::size_t> worst;
  bool track_record = false;
  bool inspectors = false;
  std::optional<double> measure_first;
  std::string on;
  bool afresh = false;
  ShardOptions shards;
  std::vector<std::string> given;  ///< names of the options on the command line

  [[nodiscard]] HowReckoned how() const {
    return {date_from_text(asked.as_of), date_from_text(on), asked.threads};
  }
};

Exit written(const ForecastOptions& options, const Result<std::int64_t>& parts, Console& console) {
  if (!parts) return report(parts.error(), console);
  console.err << "Part " << options.shards.shard << " of the forecast, "
              << counted(*parts, "part", "parts") << " of the register, written to "
              << options.shards.into << ".\n";
  return Exit::done;
}

/// A fit or a part where one is asked: the register is read site by site.
Exit write_for_batch(const ForecastOptions& options, Console& console) {
  auto opened = open_register({.folder = options.asked.folder, .mode = Mode::read}, console);
  if (!opened) return report(opened.error(), console);
  if (auto ok = check_outputs(options.asked); !ok) return report(ok.error(), console);
  Database& tables = (*opened)->tables();
  if (!options.shards.shard.empty())
    return written(options, write_shard(tables, options.how(), options.shards), console);
  const auto done = write_fit_of(tables, options.how(), options.shards.fit);
  if (!done) return report(done.error(), console);
  console.err << "What all sites share is written to " << options.shards.fit << ".\n";
  return Exit::done;
}

/// What was read, what is said of it, and the date it was asked for.
struct Said {
  ForecastInput input;
  forecast::AllLimits made;
  std::optional<Date> on;
  std::vector<LaterVisit> later = {};
  std::optional<std::vector<forecast::TrackRecord>> reports = {};
  std::vector<std::string> report_notes = {};
};

/// What is read beside the forecast's input, at the same moment.
Result<> read_beside(Database& tables, const ForecastInput& read, std::vector<LaterVisit>& later,
                     std::int64_t& records) {
  auto visits = visits_after(tables, read.portfolio.as_of);
  if (!visits) return fail(visits.error());
  later = std::move(*visits);
  const auto count = records_of(tables);
  if (!count) return fail(count.error());
  records = *count;
  return Done{};
}

/// Parts of a forecast put together. Of the register parts and names are read; readings only for
/// what to measure first, which looks at each.
Result<Said> join_parts(const ForecastOptions& options, Console& console) {
  const auto as_of = joined_as_of(options.shards.parts());
  if (!as_of) return fail(as_of.error());
  AskedForecast asked = options.asked;
  asked.as_of = to_text(*as_of);
  asked.readings = options.measure_first.has_value();
  std::vector<LaterVisit> later;
  std::int64_t records = 0;
  auto input = read_forecast_input(asked, console,
                                   [&](Database& tables, const ForecastInput& read) -> Result<> {
                                     return read_beside(tables, read, later, records);
                                   });
  if (!input) return fail(input.error());
  auto joined = join_shards(options.shards.parts(), input->portfolio);
  if (!joined) return fail(joined.error());
  MissingOfJoin missing{{}, records - joined->head.records};
  for (const std::int32_t place : joined->not_in_it)
    ++missing.parts[input->portfolio.parts[static_cast<std::size_t>(place)].site];
  const auto unknown = not_in_join(missing, input->places.sites);
  auto made = forecast::put_together(joined->head.forecast, std::move(joined->rows), {});
  for (const std::string& sentence : unknown) {
    console.err << sentence << "\n";
    made.all.notes.push_back(sentence);
  }
  return Said{std::move(*input), std::move(made), joined->head.on, std::move(later)};
}

Exit show(const ForecastOptions& options, const Said& said, Console& console) {
  ForecastView view{said.input.portfolio, said.made.all, said.input.places,
                    said.input.site,      options.worst, options.track_record};
  view.years_between_visits = options.measure_first;
  view.on = said.on;
  view.later_visits = said.later;
  view.reports = said.reports;
  view.report_notes = said.report_notes;
  if (options.inspectors) view.inspectors = said.made.inspectors;
  const auto print = [&](void (*how)(const ForecastView&, std::ostream&)) {
    return [&view, how](std::ostream& out) -> Result<> {
      how(view, out);
      return Done{};
    };
  };
  return write_outputs(options.asked, console, print(print_text), print(print_csv),
                       print(print_json));
}

/// Parts of a forecast put together as CSV and JSON, with one part's rows in memory at a time.
Exit write_joined(const ForecastOptions& options, Console& console) {
  auto opened = open_register({.folder = options.asked.folder, .mode = Mode::read}, console);
  if (!opened) return report(opened.error(), console);
  if (auto ok = check_outputs(options.asked); !ok) return report(ok.error(), console);
  const auto join = open_join((*opened)->tables(), options.shards, options.asked.site);
  if (!join) return report(join.error(), console);
  opened->reset();
  const ShardHead& head = join->parts->head();
  forecast::Portfolio portfolio;
  portfolio.as_of = head.as_of;
  forecast::CoatingForecast said;
  said.notes = forecast::notes_of(head.forecast, join->parts->screws_answered());
  said.sessions = head.forecast.sessions;
  said.track_record = head.forecast.track_record;
  for (const std::string& sentence : join->unknown) {
    console.err << sentence << "\n";
    said.notes.push_back(sentence);
  }
  const Places nowhere;
  ForecastView view{portfolio, said, nowhere, join->site};
  view.on = head.on;
  view.later_visits = join->later;
  if (options.inspectors) view.inspectors = head.forecast.inspectors;
  const ForecastPieces pieces = [&](const std::function<void(const ForecastView&)>& each) {
    return each_piece(*join, view, each);
  };
  const auto print =
      [&](Result<> (*how)(const ForecastView&, const ForecastPieces&, std::ostream&)) {
        return [&, how](std::ostream& out) { return how(view, pieces, out); };
      };
  return write_outputs(options.asked, console, {}, print(print_csv), print(print_json));
}

/// Where not all was fitted anew and a part differs from the fit.
void say_how_much(const Reckoned& reckoned, Console& console) {
  if (reckoned.held == 0) return;
  console.err << counted(reckoned.held, "part", "parts")
              << " changed since all was fitted, and reckoned with what parts shared then. All is "
                 "fitted again when a visit is sealed, or with --afresh.\n";
}

Exit forecast_register(const ForecastOptions& options, Console& console) {
  const ShardOptions& shards = options.shards;
  if (const auto ok = check_together(shards, options.given); !ok)
    return report(ok.error(), console);
  if (!shards.join.empty()) {
    if (!options.asked.csv.empty() || !options.asked.json.empty())
      return write_joined(options, console);
    const auto said = join_parts(options, console);
    return said ? show(options, *said, console) : report(said.error(), console);
  }
  if (!shards.shard.empty() || !shards.fit.empty()) return write_for_batch(options, console);
  std::vector<LaterVisit> later;
  CacheQuestion cache{.file = std::filesystem::path(options.asked.folder) / "forecast.kept",
                      .sealed = {},
                      .afresh = options.afresh};
  std::int64_t records = 0;
  auto input = read_forecast_input(
      options.asked, console, [&](Database& tables, const ForecastInput& read) -> Result<> {
        if (auto ok = check_date_comes(options.how().on, read.portfolio.as_of); !ok) return ok;
        const auto sealed = sealed_visits(tables);
        if (!sealed) return fail(sealed.error());
        cache.sealed = *sealed;
        return read_beside(tables, read, later, records);
      });
  if (!input) return report(input.error(), console);
  if (console.err_is_terminal) console.err << "Reckoning ..." << std::flush;
  // The bands are scaled by the owner's own back-dated readings, so these are always reckoned.
  auto made = cached_forecast(input->portfolio,
                              {.threads = options.asked.threads, .on = options.how().on}, cache);
  if (console.err_is_terminal) console.err << "\r             \r" << std::flush;
  if (!made) return report(made.error(), console);
  say_how_much(made->reckoned, console);
  Said said{std::move(*input), std::move(made->made), options.how().on, std::move(later)};
  if (options.track_record) {
    auto judged =
        forecast::judge_issued_reports(said.input.portfolio, {.threads = options.asked.threads});
    if (!judged && judged.error().fault != Fault::not_estimable)
      return report(judged.error(), console);
    said.reports = judged ? std::move(judged->rows) : std::vector<forecast::TrackRecord>();
    if (judged) said.report_notes = std::move(judged->notes);
  }
  return show(options, said, console);
}

void add_outputs(CLI::App& command, ForecastOptions& options) {
  add_output_options(command, options.asked,
                     "Write a row for each part and limit; - for standard output");
  command
      .add_option(
          "--worst", options.worst,
          "How many parts each list of the text has; 20 coatings and 5 of every other unless given")
      ->check(CLI::NonNegativeNumber)
      ->type_name("N");
  command.add_flag(
      "--track-record", options.track_record,
      "The whole table of hidden readings against what had been said of them, and of reports "
      "issued earlier against what was read since");
  command
      .add_option("--measure-first", options.measure_first,
                  "Which parts to measure first, where a visit comes every so many years")
      ->check(CLI::Range(0.25, 25.0))
      ->type_name("YEARS");
  command.add_flag("--inspectors", options.inspectors,
                   "How each inspector's grades lie against everybody's; for who leads them");
}

}  // namespace

void add_forecast(CLI::App& app, Chosen& chosen) {
  CLI::App* command = app.add_subcommand(
      "forecast",
      "Remaining life of zinc coatings, chances of loose screws and bad grades, worst first");
  auto options = std::make_shared<ForecastOptions>();
  add_input_options(*command, options->asked);
  command
      ->add_option("--on", options->on,
                   "Say of each limit too how likely it is reached by that day")
      ->type_name("DATE")
      ->check(why_no_date);
  command->add_flag("--afresh", options->afresh,
                    "Fit and reckon all again, also what has not changed since it was reckoned");
  add_shard_options(*command, options->shards);
  add_outputs(*command, *options);
  add_threads_option(*command, options->asked);
  command->footer(std::string(model_in_a_sentence()) + "\n" + std::string(cautions()));
  command->callback([&chosen, options, command] {
    options->given = given_options(*command);
    options->asked.written = {options->shards.fit, options->shards.into};
    chosen = [options](Console& console) { return forecast_register(*options, console); };
  });
}

}  // namespace kneerail::commands
