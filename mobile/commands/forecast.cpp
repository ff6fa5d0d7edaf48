#include <CLI/CLI.hpp>
#include <fstream>
#include <optional>

#include "core/forecast/all_limits.h"
#include "mobile/commands/cautions.h"
#include "mobile/commands/commands.h"
#include "mobile/commands/forecast_output.h"
#include "mobile/commands/open_register.h"
#include "schema/machine.h"
#include "schema/store/organisation_days.h"
#include "schema/store/portfolio_store.h"

namespace kneerail::commands {

namespace {

struct ForecastOptions {
  std::string folder;
  std::string as_of;
  std::string csv;
  std::string json;
  std::string site;
  std::optional<std::size_t> worst;
  bool track_record = false;
  bool inspectors = false;
  std::optional<double> measure_first;
  int threads = 0;
};

/// The site people mean by a name, a code or an identifier. Errors: not_found, with the names there
/// are.
Result<std::string> site_of(const std::string& asked, const Places& places) {
  if (asked.empty()) return std::string();
  std::string known;
  for (const auto& [id, name] : places.sites) {
    if (asked == id || asked == name) return id;
    known += (known.empty() ? "" : ", ") + name;
  }
  return fail(Fault::not_found,
              "There is no site '" + asked + "' in this register. There is: " + known + ".");
}

using Print = void (*)(const ForecastView&, std::ostream&);

/// Prints to a file, or to standard output for "-".
Exit print_to(const std::string& file, const ForecastView& view, Print print, Console& console) {
  if (file == "-") {
    print(view, console.out);
    return Exit::done;
  }
  std::ofstream out(file, std::ios::binary);
  print(view, out);
  out.close();
  if (!out) {
    return report(fail(Fault::io, "The forecast could not be written to " + file +
                                      ". Is the folder there and writable, and is there room? The "
                                      "register is as it was."),
                  console);
  }
  console.err << "Written to " << file << ".\n";
  return Exit::done;
}

Exit print(const ForecastOptions& options, const ForecastView& view, Console& console) {
  if (options.csv.empty() && options.json.empty()) {
    print_text(view, console.out);
    return Exit::done;
  }
  if (!options.csv.empty()) {
    if (const Exit ended = print_to(options.csv, view, print_csv, console); ended != Exit::done) {
      return ended;
    }
  }
  if (options.json.empty()) return Exit::done;
  return print_to(options.json, view, print_json, console);
}

/// Whether the outputs asked for can be made, before anything is reckoned.
Result<> check_outputs(const ForecastOptions& options) {
  if (options.csv == "-" && options.json == "-")
    return fail(Fault::invalid_input,
                "--csv - and --json - both ask for standard output. Give one of them a file.");
  for (const std::string& file : {options.csv, options.json}) {
    if (file.empty() || file == "-") continue;
    if (auto ok = check_outside(file, options.folder); !ok) return ok;
  }
  return Done{};
}

Exit forecast_register(const ForecastOptions& options, Console& console) {
  auto opened = open_register({.folder = options.folder, .mode = Mode::read}, console);
  if (!opened) return report(opened.error(), console);
  if (const auto ok = check_outputs(options); !ok) return report(ok.error(), console);
  Database& tables = (*opened)->tables();
  std::optional snapshot = Snapshot::begin(tables);
  if (!*snapshot) return report(snapshot->error(), console);
  const auto places = read_places(tables);
  if (!places) return report(places.error(), console);
  const auto site = site_of(options.site, *places);
  if (!site) return report(site.error(), console);
  const auto days = organisation_days(tables);
  if (!days) return report(days.error(), console);
  const Date as_of =
      options.as_of.empty() ? days->zone.day(MachineClock().now()) : *date_from_text(options.as_of);
  const auto portfolio = read_portfolio(tables, as_of);
  if (!portfolio) return report(portfolio.error(), console);
  snapshot.reset();  // reckoning takes its time, and the register's log would grow meanwhile
  if (console.err_is_terminal) console.err << "Reckoning ..." << std::flush;
  // The bands are scaled by the owner's own back-dated readings, so these are always reckoned.
  const auto made = forecast::forecast_all_limits(*portfolio, {.threads = options.threads});
  if (console.err_is_terminal) console.err << "\r             \r" << std::flush;
  if (!made) return report(made.error(), console);
  ForecastView view{*portfolio, made->all, *places, *site, options.worst, options.track_record};
  view.years_between_visits = options.measure_first;
  if (options.inspectors) view.inspectors = made->inspectors;
  return print(options, view, console);
}

void add_outputs(CLI::App& command, ForecastOptions& options) {
  command
      .add_option("--csv", options.csv,
                  "Write a row for each part and limit; - for standard output")
      ->type_name("FILE");
  command.add_option("--json", options.json, "The same and more as JSON; - for standard output")
      ->type_name("FILE");
  command.add_option("--site", options.site, "Show this site only; all sites still teach it")
      ->type_name("NAME");
  command
      .add_option(
          "--worst", options.worst,
          "How many parts each list of the text has; 20 coatings and 5 of every other unless given")
      ->check(CLI::NonNegativeNumber)
      ->type_name("N");
  command.add_flag("--track-record", options.track_record,
                   "The whole table of hidden readings against what had been said of them");
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
  add_data_option(*command, options->folder);
  command->add_option("--as-of", options->as_of, "Forecast from this day on; today if not given")
      ->type_name("DATE")
      ->check([](const std::string& text) {
        return date_from_text(text) ? std::string()
                                    : "'" + text + "' is no date: write it as 2026-06-30";
      });
  add_outputs(*command, *options);
  command->add_option("--threads", options->threads, "0: as many as the machine has")
      ->capture_default_str()
      ->check(CLI::Range(0, 256))
      ->type_name("N");
  command->footer(std::string(model_in_a_sentence()) + "\n" + std::string(cautions()));
  command->callback([&chosen, options] {
    chosen = [options](Console& console) { return forecast_register(*options, console); };
  });
}

}  // namespace kneerail::commands
