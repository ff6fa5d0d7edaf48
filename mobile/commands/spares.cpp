#include <CLI/CLI.hpp>
#include <memory>

#include "mobile/commands/cautions.h"
#include "mobile/commands/commands.h"
#include "mobile/commands/order_output.h"

namespace kneerail::commands {

namespace {

struct SparesOptions {
  AskedForecast asked;
  std::string figures;
};

Exit spares_to_hold(const SparesOptions& options, Console& console) {
  const auto input =
      decision_input(options.asked, options.figures, ModelsFor::replacements, console);
  if (!input) return report(input.error(), console);
  const auto lines = forecast::spares((*input)->replacements(), (*input)->figures,
                                      {.threads = options.asked.threads});
  if (!lines) return report(lines.error(), console);
  const SparesView view{**input, *lines};
  const auto print = [&](void (*how)(const SparesView&, std::ostream&)) {
    return [&view, how](std::ostream& out) -> Result<> {
      how(view, out);
      return Done{};
    };
  };
  return write_outputs(options.asked, console, print(print_spares), print(print_spares_csv),
                       print(print_spares_json));
}

}  // namespace

void add_spares(CLI::App& app, Chosen& chosen) {
  CLI::App* command =
      app.add_subcommand("spares", "How many spares of each type to hold at each depot");
  auto options = std::make_shared<SparesOptions>();
  add_input_options(*command, options->asked);
  add_file_options(*command, options->asked,
                   "Write a row for each depot and type; - for standard output");
  add_figures_option(*command, options->figures);
  add_threads_option(*command, options->asked);
  command->footer(std::string(cautions()));
  command->callback([&chosen, options] {
    chosen = [options](Console& console) { return spares_to_hold(*options, console); };
  });
}

}  // namespace kneerail::commands
