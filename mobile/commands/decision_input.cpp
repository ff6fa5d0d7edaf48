#include "mobile/commands/decision_input.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>

#include "mobile/commands/figures_file.h"
#include "schema/store/owner_store.h"
#include "schema/store/visit_plan_store.h"

namespace kneerail::commands {

std::string DecisionInput::type_words(const std::string& type) const {
  const auto found = figures.types.find(type);
  if (found == figures.types.end()) return type;
  const auto& own = found->second;
  if (own.name.empty()) return own.kind_and_size.empty() ? type : own.kind_and_size;
  return own.kind_and_size.empty() ? own.name : own.name + " (" + own.kind_and_size + ")";
}

std::string DecisionInput::site_name(const std::string& site) const {
  const auto found = read.places.sites.find(site);
  return found == read.places.sites.end() ? site : found->second;
}

Result<std::unique_ptr<DecisionInput>> decision_input(const AskedForecast& asked,
                                                      const std::string& figures_file,
                                                      ModelsFor what, Console& console) {
  auto made = std::make_unique<DecisionInput>();
  auto read = read_forecast_input(
      asked, console, [&](Database& tables, const ForecastInput& input) -> Result<> {
        auto figures = read_owner_figures(tables, input.days.zone, input.portfolio.as_of);
        if (!figures) return fail(figures.error());
        made->figures = std::move(*figures);
        auto visits = read_site_visits(tables, input.days.zone, input.portfolio.as_of);
        if (!visits) return fail(visits.error());
        made->visits = std::move(*visits);
        return Done{};
      });
  if (!read) return fail(read.error());
  made->read = std::move(*read);
  if (!figures_file.empty())
    if (auto added = add_figures_of(figures_file, made->read, made->figures, console.err); !added)
      return fail(added.error());
  if (console.err_is_terminal) console.err << "Reckoning ..." << std::flush;
  const auto& portfolio = made->read.portfolio;
  auto coating = forecast::fit_any_coating(portfolio, {.threads = asked.threads});
  if (!coating) return fail(coating.error());
  made->coating = std::move(*coating);
  if (what == ModelsFor::every_limit) {
    auto others = forecast::fit_other_limits(portfolio, {.threads = asked.threads});
    if (!others) return fail(others.error());
    made->others.emplace(std::move(*others));
  } else {
    auto grades = forecast::fit_grade_model(portfolio, {.workers = {.threads = asked.threads}});
    if (!grades) return fail(grades.error());
    made->grades.emplace(std::move(*grades));
  }
  for (const forecast::Reading& reading : portfolio.readings) {
    made->graded = made->graded || reading.quantity == forecast::Quantity::grade;
    made->walls_read = made->walls_read || reading.quantity == forecast::Quantity::wall_mm;
  }
  if (console.err_is_terminal) console.err << "\r             \r" << std::flush;
  return made;
}

void add_figures_option(CLI::App& command, std::string& file) {
  command
      .add_option("--figures", file,
                  "CSV of what the register has no record of: figure,of,value,unit")
      ->type_name("FILE");
}

std::string money_words(double amount, const std::string& currency) {
  double unit = 1;
  while (std::abs(amount) / unit >= 999.5) unit *= 10;
  const auto rounded = static_cast<std::int64_t>(std::llround(amount / unit) * std::llround(unit));
  return (currency.empty() ? "" : currency + " ") + with_commas(rounded);
}

}  // namespace kneerail::commands
