#include <CLI/CLI.hpp>
#include <memory>

#include "mobile/commands/cautions.h"
#include "mobile/commands/commands.h"
#include "mobile/commands/order_output.h"

namespace kneerail::commands {

namespace {

Exit next_visits(const AskedForecast& asked, Console& console) {
  const auto input = decision_input(asked, {}, ModelsFor::every_limit, console);
  if (!input) return report(input.error(), console);
  const forecast::Portfolio& portfolio = (*input)->read.portfolio;
  const forecast::RunOptions options{.threads = asked.threads};
  auto coating = forecast::report_any_coating((*input)->coating, portfolio, options);
  if (!coating) return report(coating.error(), console);
  const auto others =
      forecast::report_other_limits((*input)->coating, *(*input)->others, portfolio, options);
  if (!others) return report(others.error(), console);
  std::vector<forecast::LimitForecast> rows = std::move(coating->limits);
  rows.insert(rows.end(), others->rows.begin(), others->rows.end());
  const auto outlooks = forecast::part_outlooks(portfolio, rows);
  std::vector<forecast::NextVisit> visits;
  for (const forecast::SiteVisits& site : (*input)->visits) {
    if (!(*input)->read.site.empty() && (*input)->read.site != site.site) continue;
    visits.push_back(
        forecast::next_visit(portfolio, rows, outlooks, (*input)->coating_model(), site));
  }
  const VisitsView view{**input, visits};
  const auto print = [&](void (*how)(const VisitsView&, std::ostream&)) {
    return [&view, how](std::ostream& out) -> Result<> {
      how(view, out);
      return Done{};
    };
  };
  return write_outputs(asked, console, print(print_visits), print(print_visits_csv),
                       print(print_visits_json));
}

}  // namespace

void add_visits(CLI::App& app, Chosen& chosen) {
  CLI::App* command = app.add_subcommand("visits", "When to come to each site again, and why");
  auto asked = std::make_shared<AskedForecast>();
  add_input_options(*command, *asked);
  add_output_options(*command, *asked, "Write a row for each site; - for standard output");
  add_threads_option(*command, *asked);
  command->footer(std::string(cautions()));
  command->callback([&chosen, asked] {
    chosen = [asked](Console& console) { return next_visits(*asked, console); };
  });
}

}  // namespace kneerail::commands
