#include "mobile/models/reckoning.h"

#include <algorithm>
#include <utility>

#include "core/records/entities.h"
#include "schema/exchange/forecast_cache.h"
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

/// What is reckoned from, and who is who in it.
Result<> read_input(Database& tables, Date as_of, Reckoning& out) {
  auto portfolio = read_portfolio(tables, as_of);
  if (!portfolio) return fail(portfolio.error());
  auto components = components_of(tables, *portfolio);
  if (!components) return fail(components.error());
  const auto sealed = sealed_visits(tables);
  if (!sealed) return fail(sealed.error());
  out.portfolio = std::move(*portfolio);
  out.components = std::move(*components);
  out.sealed = *sealed;
  for (std::size_t i = 0; i < out.components.size(); ++i)
    out.part_places.emplace(out.components[i], static_cast<std::int32_t>(i));
  return Done{};
}

bool of_coating(const LimitForecast& row) {
  return row.limit == forecast::Limit::coating_exhausted ||
         row.limit == forecast::Limit::coating_first_maintenance;
}

/// `rows` of every limit, each part's together.
OtherReckoning others_of(const Reckoning& known, forecast::OtherModels models,
                         std::vector<LimitForecast> rows) {
  for (LimitForecast& row : rows) row.sentence = {};
  OtherReckoning out{std::move(models), PartRows(std::move(rows)), {}, {}, {}};
  out.read = forecast::limits_read(out.limits.rows);
  out.outlooks = forecast::part_outlooks(known.portfolio, out.limits.rows, out.read);
  for (forecast::PartOutlook& outlook : out.outlooks) {
    outlook.words = {};
    out.worst_first.push_back(known.components[static_cast<std::size_t>(outlook.part)]);
  }
  return out;
}

void take_kept(KeptForecast kept, Begun& begun) {
  begun.coatings.coating = std::move(kept.fit.coating);
  for (const LimitForecast& row : kept.rows.limits)
    if (of_coating(row)) begun.coatings.coating_rows.push_back(row);
  begun.others = others_of(begun.coatings, std::move(kept.fit.others), std::move(kept.rows.limits));
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
  auto begun = reckon_or_kept(tables, as_of, {}, stop);
  if (!begun) return fail(begun.error());
  return std::move(begun->coatings);
}

Result<Begun> reckon_or_kept(Database& tables, Date as_of, const std::filesystem::path& kept_in,
                             const std::atomic<bool>* stop) {
  Begun begun;
  if (auto read = read_input(tables, as_of, begun.coatings); !read) return fail(read.error());
  if (auto kept =
          kept_in.empty() ? std::nullopt : kept_forecast(begun.coatings.portfolio, kept_in)) {
    take_kept(std::move(*kept), begun);
    return begun;
  }
  Reckoning& out = begun.coatings;
  const forecast::RunOptions options{.stop = stop};
  auto coating = forecast::fit_any_coating(out.portfolio, options);
  if (!coating) return fail(coating.error());
  auto said = forecast::report_any_coating(*coating, out.portfolio, options);
  if (!said) return fail(said.error());
  out.coating = std::move(*coating);
  out.coating_rows = std::move(said->limits);
  return begun;
}

Result<OtherReckoning> reckon_others(const Reckoning& known, const std::atomic<bool>* stop,
                                     const std::filesystem::path& kept_in) {
  const forecast::RunOptions options{.stop = stop};
  auto models = forecast::fit_other_limits(known.portfolio, options);
  if (!models) return fail(models.error());
  auto said = forecast::report_other_limits(known.coating, *models, known.portfolio, options);
  if (!said) return fail(said.error());
  auto fit = forecast::fit_of_all(known.coating, std::move(*models));
  auto rows = forecast::rows_said(fit, known.portfolio, known.coating_rows, std::move(*said));
  KeptForecast made{std::move(fit), std::move(rows)};
  // A folder that may not be written costs the next start its time, no more.
  const bool stopped = stop != nullptr && stop->load();
  if (!kept_in.empty() && !stopped)
    keep_forecast(known.portfolio, made, {.file = kept_in, .sealed = known.sealed});
  return others_of(known, std::move(made.fit.others), std::move(made.rows.limits));
}

forecast::NextVisit next_visit_of(const Reckoning* known, const OtherReckoning* others, Date today,
                                  const forecast::SiteVisits& visits) {
  if (known == nullptr) {
    forecast::Portfolio nothing;
    nothing.as_of = today;
    return forecast::next_visit(nothing, {}, {}, nullptr, visits);
  }
  const auto* coating = known->coating.model ? &*known->coating.model : nullptr;
  if (others == nullptr) return forecast::next_visit(known->portfolio, {}, {}, coating, visits);
  return forecast::next_visit(known->portfolio, others->limits.rows, others->outlooks, coating,
                              visits);
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
    for (const LimitForecast& row : known.coating_rows)
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
