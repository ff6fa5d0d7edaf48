#include <CLI/CLI.hpp>
#include <memory>

#include "mobile/commands/cautions.h"
#include "mobile/commands/commands.h"
#include "mobile/commands/order_output.h"

namespace kneerail::commands {

namespace {

struct OrderOptions {
  AskedForecast asked;
  int years = 5;
};

Exit order_parts(const OrderOptions& options, Console& console) {
  const auto input = decision_input(options.asked, {}, ModelsFor::replacements, console);
  if (!input) return report(input.error(), console);
  const auto replacements = (*input)->replacements();
  const auto list = forecast::order_list(
      replacements,
      {.site = (*input)->read.site, .years = options.years, .workers = {options.asked.threads}});
  if (!list) return report(list.error(), console);
  const OrderView view{**input, *list};
  const auto print = [&](void (*how)(const OrderView&, std::ostream&)) {
    return [&view, how](std::ostream& out) -> Result<> {
      how(view, out);
      return Done{};
    };
  };
  return write_outputs(options.asked, console, print(print_order), print(print_order_csv),
                       print(print_order_json));
}

}  // namespace

void add_order(CLI::App& app, Chosen& chosen) {
  CLI::App* command = app.add_subcommand(
      "order", "What will have to be replaced, by year, kind and size: the order list");
  auto options = std::make_shared<OrderOptions>();
  add_input_options(*command, options->asked);
  add_output_options(*command, options->asked,
                     "Write a row for each type and year; - for standard output");
  command->add_option("--years", options->years, "How far ahead")
      ->capture_default_str()
      ->check(CLI::Range(1, 50))
      ->type_name("N");
  add_threads_option(*command, options->asked);
  command->footer(std::string(cautions()));
  command->callback([&chosen, options] {
    chosen = [options](Console& console) { return order_parts(*options, console); };
  });
}

}  // namespace kneerail::commands
