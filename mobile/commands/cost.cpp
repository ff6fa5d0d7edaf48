#include <CLI/CLI.hpp>
#include <memory>

#include "mobile/commands/cautions.h"
#include "mobile/commands/commands.h"
#include "mobile/commands/order_output.h"

namespace kneerail::commands {

namespace {

struct CostOptions {
  AskedForecast asked;
  std::string figures;
  std::string what_if;
  int years = 30;
};

class CostsOfSites {
 public:
  CostsOfSites(const DecisionInput& input, const CostOptions& options)
      : input_(input),
        options_(options),
        workers_{.threads = options.asked.threads},
        replacements_(input.replacements()) {}

  Result<std::vector<SiteCost>> reckon(const forecast::Finish* finish) {
    auto lines = forecast::spares(replacements_, input_.figures, workers_);
    if (!lines) return fail(lines.error());
    lines_ = std::move(*lines);
    std::vector<SiteCost> costs;
    for (const auto& [site, name] : input_.read.places.sites) {
      if (!input_.read.site.empty() && input_.read.site != site) continue;
      auto cost = cost_of(site, finish);
      if (!cost) return fail(cost.error());
      costs.push_back(std::move(*cost));
    }
    return costs;
  }

 private:
  Result<SiteCost> cost_of(const std::string& site, const forecast::Finish* finish) const {
    forecast::LifeCostQuestion question{.site = site, .years = options_.years, .workers = workers_};
    SiteCost made;
    if (auto done = take(question, made.cost); !done) return fail(done.error());
    if (finish == nullptr) return made;
    question.from = forecast::LifeFrom::all_new;
    if (auto done = take(question, made.new_as_now.emplace()); !done) return fail(done.error());
    question.finish = finish;
    if (auto done = take(question, made.new_other.emplace()); !done) return fail(done.error());
    if (const auto* coating = input_.coating_model())
      made.lives = forecast::finish_lives(replacements_, *coating, site, *finish);
    return made;
  }

  Result<> take(const forecast::LifeCostQuestion& question, forecast::LifeCost& into) const {
    auto cost = forecast::life_cost(replacements_, input_.figures, lines_, question);
    if (!cost) return fail(cost.error());
    into = std::move(*cost);
    return Done{};
  }

  const DecisionInput& input_;
  const CostOptions& options_;
  forecast::Workers workers_;
  forecast::Replacements replacements_;
  std::vector<forecast::SpareLine> lines_;
};

Exit life_costs(const CostOptions& options, Console& console) {
  std::optional<forecast::Finish> finish;
  if (!options.what_if.empty()) {
    const auto named = forecast::Finish::named(options.what_if);
    if (!named) return report(named.error(), console);
    finish = *named;
  }
  const auto input =
      decision_input(options.asked, options.figures, ModelsFor::replacements, console);
  if (!input) return report(input.error(), console);
  const auto costs = CostsOfSites(**input, options).reckon(finish ? &*finish : nullptr);
  if (!costs) return report(costs.error(), console);
  const std::string name =
      options.what_if.find_first_not_of("0123456789.") == std::string::npos && finish
          ? options.what_if + " um of zinc"
          : options.what_if;
  const CostView view{**input, *costs, name};
  const auto print = [&](void (*how)(const CostView&, std::ostream&)) {
    return [&view, how](std::ostream& out) -> Result<> {
      how(view, out);
      return Done{};
    };
  };
  return write_outputs(options.asked, console, print(print_costs), print(print_costs_csv),
                       print(print_costs_json));
}

}  // namespace

void add_cost(CLI::App& app, Chosen& chosen) {
  CLI::App* command = app.add_subcommand(
      "cost", "What each site costs over a whole life, and what another finish would change");
  auto options = std::make_shared<CostOptions>();
  add_input_options(*command, options->asked);
  add_output_options(*command, options->asked,
                     "Write a row for each site and case; - for standard output");
  command->add_option("--years", options->years, "How far ahead")
      ->capture_default_str()
      ->check(CLI::Range(1, 100))
      ->type_name("N");
  command
      ->add_option("--what-if", options->what_if,
                   "Another finish: least mean zinc in um, as in 85, or iso1461")
      ->type_name("FINISH");
  add_figures_option(*command, options->figures);
  add_threads_option(*command, options->asked);
  command->footer(std::string(cautions()));
  command->callback([&chosen, options] {
    chosen = [options](Console& console) { return life_costs(*options, console); };
  });
}

}  // namespace kneerail::commands
