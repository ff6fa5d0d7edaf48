#include "mobile/models/reckoning.h"

#include <algorithm>
#include <utility>

#include "core/forecast/class_report.h"
#include "core/records/entities.h"
#include "schema/store/portfolio_store.h"
#include "schema/store/register_things.h"

namespace kneerail {

namespace {

using forecast::LimitForecast;

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

/// `read`: limits of which some part had a reading; the part's own may be the first.
void add_outlook(const forecast::Portfolio& portfolio, std::set<forecast::Limit> read,
                 PartTold& told) {
  read.merge(forecast::limits_read(told.rows));
  const auto outlooks = forecast::part_outlooks(portfolio, told.rows, read);
  if (!outlooks.empty()) told.outlook = outlooks.front();
}

/// The coating's story, where there is a model that tells it.
template <class Tell>
Result<forecast::PartStory> story_of(const Reckoning& known, const Tell& tell) {
  if (known.coating.model) return tell(*known.coating.model);
  return fail(Fault::not_estimable, known.coating.why_none);
}

}  // namespace

PartRows::PartRows(std::vector<LimitForecast> all) : rows(std::move(all)) {
  for (std::size_t i = 0; i < rows.size(); ++i) first_.emplace(rows[i].part, i);
}

std::vector<LimitForecast> PartRows::of(std::int32_t part) const {
  std::vector<LimitForecast> own;
  const auto first = first_.find(part);
  if (first == first_.end()) return own;
  for (std::size_t i = first->second; i < rows.size() && rows[i].part == part; ++i)
    own.push_back(rows[i]);
  return own;
}

Result<Reckoning> reckon(Database& tables, Date as_of, const std::atomic<bool>* stop) {
  auto portfolio = read_portfolio(tables, as_of);
  if (!portfolio) return fail(portfolio.error());
  auto components = components_of(tables, *portfolio);
  if (!components) return fail(components.error());
  const forecast::RunOptions options{.stop = stop};
  auto coating = forecast::fit_any_coating(*portfolio, options);
  if (!coating) return fail(coating.error());
  auto said = forecast::report_any_coating(*coating, *portfolio, options);
  if (!said) return fail(said.error());
  Reckoning out;
  out.portfolio = std::move(*portfolio);
  out.coating = std::move(*coating);
  out.forecast = std::move(*said);
  out.components = std::move(*components);
  for (std::size_t i = 0; i < out.components.size(); ++i)
    out.part_places.emplace(out.components[i], static_cast<std::int32_t>(i));
  if (!out.coating.model) return out;
  for (const forecast::ZonePace& pace : forecast::zone_paces(*out.coating.model))
    if (pace.is_likely_faster()) out.faster_sites.insert(pace.site);
  return out;
}

Result<OtherReckoning> reckon_others(const Reckoning& known, const std::atomic<bool>* stop) {
  const forecast::RunOptions options{.stop = stop};
  auto models = forecast::fit_other_limits(known.portfolio, options);
  if (!models) return fail(models.error());
  auto said = forecast::report_other_limits(known.coating, *models, known.portfolio, options);
  if (!said) return fail(said.error());
  std::vector<LimitForecast> rows = std::move(said->rows);
  rows.insert(rows.end(), known.forecast.limits.begin(), known.forecast.limits.end());
  std::stable_sort(rows.begin(), rows.end(), [](const LimitForecast& a, const LimitForecast& b) {
    return std::pair(a.part, a.limit) < std::pair(b.part, b.limit);
  });
  for (LimitForecast& row : rows) row.sentence = {};
  OtherReckoning out{std::move(*models), PartRows(std::move(rows)), {}, {}};
  out.read = forecast::limits_read(out.limits.rows);
  for (const auto& outlook : forecast::part_outlooks(known.portfolio, out.limits.rows, out.read))
    out.worst_first.push_back(known.components[static_cast<std::size_t>(outlook.part)]);
  return out;
}

PartTold told_of(const Reckoning& known, const OtherReckoning* others, std::int32_t part) {
  PartTold told{story_of(known,
                         [&](const forecast::CoatingModel& model) {
                           return forecast::part_story(model, known.portfolio, part);
                         }),
                {},
                others != nullptr,
                {}};
  if (others == nullptr) {
    for (const LimitForecast& row : known.forecast.limits)
      if (row.part == part) told.rows.push_back(row);
    return told;
  }
  told.rows = others->limits.of(part);
  add_outlook(known.portfolio, others->read, told);
  return told;
}

Result<PartTold> told_with_latest(Database& tables, const Reckoning& known,
                                  const OtherReckoning* others, const Uuid& site,
                                  const Uuid& component) {
  PortfolioQuestion question;
  question.sites = {site};
  const auto portfolio = read_portfolio(tables, known.as_of(), question);
  if (!portfolio) return fail(portfolio.error());
  const auto components = components_of(tables, *portfolio);
  if (!components) return fail(components.error());
  const auto at = std::find(components->begin(), components->end(), component);
  if (at == components->end())
    return fail(Fault::not_found, "This part is not in the register yet. Nothing was reckoned.");
  const auto one =
      forecast::only_part(*portfolio, static_cast<std::int32_t>(at - components->begin()));
  auto rows =
      forecast::all_limits_of_one_part(known.coating, others ? &others->models : nullptr, one);
  if (!rows) return fail(rows.error());
  PartTold told{story_of(known,
                         [&](const forecast::CoatingModel& model) {
                           return forecast::story_of_one_part(model, one);
                         }),
                std::move(*rows),
                others != nullptr,
                {}};
  if (others != nullptr) add_outlook(one, others->read, told);
  return told;
}

}  // namespace kneerail
