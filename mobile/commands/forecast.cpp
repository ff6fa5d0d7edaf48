#include <CLI/CLI.hpp>
#include <memory>
#include <optional>

#include "core/forecast/all_limits.h"
#include "mobile/commands/cautions.h"
#include "mobile/commands/commands.h"
#include "mobile/commands/forecast_input.h"
#include "mobile/commands/forecast_output.h"

namespace kneerail::commands {

namespace {

struct ForecastOptions {
  AskedForecast asked;
  std::optional<std::size_t> worst;
  bool track_record = false;
  bool inspectors = false;
  std::optional<double> measure_first;
};

Exit forecast_register(const ForecastOptions& options, Console& console) {
  const auto input = read_forecast_input(options.asked, console);
  if (!input) return report(input.error(), console);
  if (console.err_is_terminal) console.err << "Reckoning ..." << std::flush;
  // The bands are scaled by the owner's own back-dated readings, so these are always reckoned.
  const auto made =
      forecast::forecast_all_limits(input->portfolio, {.threads = options.asked.threads});
  if (console.err_is_terminal) console.err << "\r             \r" << std::flush;
  if (!made) return report(made.error(), console);
  ForecastView view{input->portfolio, made->all,     input->places,
                    input->site,      options.worst, options.track_record};
  view.years_between_visits = options.measure_first;
  if (options.inspectors) view.inspectors = made->inspectors;
  const auto print = [&](void (*how)(const ForecastView&, std::ostream&)) {
    return [&view, how](std::ostream& out) { how(view, out); };
  };
  return write_outputs(options.asked, console, print(print_text), print(print_csv),
                       print(print_json));
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
  add_input_options(*command, options->asked);
  add_outputs(*command, *options);
  add_threads_option(*command, options->asked);
  command->footer(std::string(model_in_a_sentence()) + "\n" + std::string(cautions()));
  command->callback([&chosen, options] {
    chosen = [options](Console& console) { return forecast_register(*options, console); };
  });
}

}  // namespace kneerail::commands
