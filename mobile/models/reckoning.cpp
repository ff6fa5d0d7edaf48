#include "mobile/models/reckoning.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "core/forecast/class_report.h"
#include "core/records/entities.h"
#include "schema/store/portfolio_store.h"
#include "schema/store/register_things.h"

namespace kneerail {

namespace {

/// The component of each part: the portfolio knows them by the words people use.
Result<std::vector<Uuid>> components_of(Database& tables, const forecast::Portfolio& portfolio) {
  auto things = load_things(tables, static_cast<int>(EntityType::component));
  if (!things) return fail(things.error());
  std::unordered_map<std::string, Uuid> by_text;
  for (const Thing& thing : things->all()) by_text.emplace(things->text(thing.id), thing.id);
  std::vector<Uuid> components;
  for (const forecast::Part& part : portfolio.parts) components.push_back(by_text[part.id]);
  return components;
}

double earliest_likely_years(const Reckoning& reckoning, const Uuid& component) {
  constexpr std::size_t median = 3;
  double years = std::numeric_limits<double>::infinity();
  for (const auto* row : reckoning.rows_of(component))
    if (row->answered) years = std::min(years, row->years[median]);
  return years;
}

void sort_worst_first(Reckoning& reckoning) {
  std::vector<std::pair<double, Uuid>> order;
  for (const Uuid& component : reckoning.components) {
    const double years = earliest_likely_years(reckoning, component);
    if (years < std::numeric_limits<double>::infinity()) order.emplace_back(years, component);
  }
  std::sort(order.begin(), order.end());
  for (const auto& [years, component] : order) reckoning.worst_first.push_back(component);
}

}  // namespace

std::vector<const forecast::LimitForecast*> Reckoning::rows_of(const Uuid& component) const {
  std::vector<const forecast::LimitForecast*> rows;
  const auto place = part_places.find(component);
  if (place == part_places.end()) return rows;
  const auto first = first_rows.find(place->second);
  if (first == first_rows.end()) return rows;
  for (std::size_t i = first->second; i < forecast.limits.size(); ++i) {
    if (forecast.limits[i].part != place->second) break;
    rows.push_back(&forecast.limits[i]);
  }
  return rows;
}

Result<Reckoning> reckon(Database& tables, Date as_of, const std::atomic<bool>* stop) {
  auto portfolio = read_portfolio(tables, as_of);
  if (!portfolio) return fail(portfolio.error());
  auto components = components_of(tables, *portfolio);
  if (!components) return fail(components.error());
  const forecast::RunOptions options{.stop = stop};
  auto model = forecast::fit_coating_model(*portfolio, options);
  if (!model) return fail(model.error());
  Reckoning out{
      std::move(*portfolio), std::move(*model), {}, std::move(*components), {}, {}, {}, {}};
  auto report = forecast::report_coating(out.model, out.portfolio, options);
  if (!report) return fail(report.error());
  out.forecast = std::move(*report);
  for (std::size_t i = 0; i < out.components.size(); ++i)
    out.part_places.emplace(out.components[i], static_cast<std::int32_t>(i));
  for (std::size_t i = 0; i < out.forecast.limits.size(); ++i)
    out.first_rows.emplace(out.forecast.limits[i].part, i);
  sort_worst_first(out);
  for (const forecast::ZonePace& pace : forecast::zone_paces(out.portfolio, out.model))
    if (pace.is_likely_faster()) out.faster_sites.insert(pace.site);
  return out;
}

Result<forecast::PartStory> story_with_latest(Database& tables, const Reckoning& reckoning,
                                              const Uuid& site, const Uuid& component) {
  PortfolioQuestion question;
  question.sites = {site};
  const auto portfolio = read_portfolio(tables, reckoning.as_of(), question);
  if (!portfolio) return fail(portfolio.error());
  const auto components = components_of(tables, *portfolio);
  if (!components) return fail(components.error());
  const auto at = std::find(components->begin(), components->end(), component);
  if (at == components->end())
    return fail(Fault::not_found, "This part is not in the register yet. Nothing was reckoned.");
  const auto place = static_cast<std::int32_t>(at - components->begin());
  return forecast::story_of_one_part(reckoning.model, forecast::only_part(*portfolio, place));
}

}  // namespace kneerail
