#include "core/forecast/grade/grade_forecast.h"

#include <algorithm>
#include <span>
#include <tuple>

#include "core/forecast/constants.h"
#include "core/forecast/grade/grade_future.h"
#include "core/forecast/grade/grade_words.h"
#include "core/forecast/parallel.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

Limit limit_of(int grade) {
  return static_cast<Limit>(static_cast<int>(Limit::grade_2) + grade - 2);
}

struct OwnersGrade {
  int grade = grade_worst;
  bool set = false;
};

OwnersGrade owners_grade(const Portfolio& portfolio, const std::string& site) {
  for (const SiteLimits& limits : portfolio.limits)
    if (limits.site == site && limits.replace_grade)
      return {std::clamp(*limits.replace_grade, 2, grade_worst), true};
  return {};
}

std::span<const GradeLook> current_looks(const GradeData& data, const GradeSegment& segment) {
  return {data.looks.data() + segment.first, static_cast<std::size_t>(segment.count)};
}

/// What the rows of many parts share.
struct Context {
  const Portfolio& portfolio;
  const RateLayout& layout;
  const RateFit& fit;
  const RateSettings& settings;
  const GradeData& data;
  const GradeLikelihood& likelihood;
  std::optional<Date> by;
};

/// A part's place in the data that speak; its site's in the layout and the fit; the owner's grade
/// there.
struct Which {
  int index;
  int site;
  OwnersGrade owners;
};

/// What both rows of a part have in common.
GradeForecast common_row(const Context& context, const GradePart& part, const GradeFuture& future,
                         const RateNodes& nodes) {
  const GradeSegment& segment =
      context.data.segments[static_cast<std::size_t>(part.first_segment + part.segments - 1)];
  const auto looks = current_looks(context.data, segment);
  GradeForecast row;
  row.part = part.place;
  row.now = future.grades(0);
  row.looks = segment.count;
  if (const auto seen = seen_last(looks)) {
    row.seen = seen->seen;
    row.seen_on = seen->day;
  }
  row.own_share = nodes.own_share;
  row.words =
      grade_basis_words(looks, {.start = segment.start_known, .earlier = part.segments > 1});
  row.flags = grade_flags(looks, part);
  if (const auto words = put_up_later_words(
          context.portfolio.parts[static_cast<std::size_t>(part.place)], context.data.as_of))
    row.flags.push_back(*words);
  return row;
}

std::vector<GradeForecast> rows_of(const Context& context, const Which& which) {
  const GradePart& part = context.data.parts[static_cast<std::size_t>(which.index)];
  const RateNodes nodes = rate_nodes(context.layout, context.fit, context.likelihood,
                                     context.settings, which.site, which.index);
  const GradeFuture future(context.data, context.likelihood, nodes, which.index);
  const GradeForecast common = common_row(context, part, future, nodes);
  std::vector<GradeForecast> rows;
  for (const int grade : {which.owners.grade, grade_worst}) {
    if (!rows.empty() && grade == which.owners.grade) continue;
    GradeForecast row = common;
    row.limit = limit_of(grade);
    row.years = future.years_to(grade);
    for (std::size_t i = 0; i < chance_years.size(); ++i)
      row.p_by[i] = future.reached(grade, chance_years[i]);
    if (context.by)
      row.p_on_date = future.reached(grade, years_between(context.data.as_of, *context.by));
    row.sentence = grade_sentence(row, which.owners.set);
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace

std::vector<InspectorHabit> inspector_habits(const GradeModel& model) {
  std::vector<InspectorHabit> habits;
  for (std::size_t i = 0; i < model.data.inspectors.size(); ++i) {
    const std::string& name = model.data.inspectors[i];
    if (name.empty()) continue;
    habits.push_back({name, static_cast<int>(model.counts[i].seen), model.errors[i].up,
                      model.errors[i].down,
                      habit_words(name, model.counts[i], model.errors[i], model.pooled_errors)});
  }
  return habits;
}

std::vector<std::string> grade_notes(const GradeModel& model) {
  std::vector<std::string> notes;
  if (!model.data.looks.empty())
    notes.emplace_back(
        "Grades: the chance leans on how such parts usually go; look at them by interval");
  if (model.fit.largest_move_ln > constant::settled_move_ln)
    notes.emplace_back(
        "Grades: not settled; what sites and zones have in common still moved in the last pass");
  return notes;
}

LimitForecast limit_row(GradeForecast grade) {
  LimitForecast row;
  row.part = grade.part;
  row.limit = grade.limit;
  row.answered = true;
  row.years = grade.years;
  row.p_by = grade.p_by;
  row.p_on = grade.p_on_date;
  row.grades_now = grade.now;
  if (grade.seen && grade.seen_on) row.seen = SeenGrade{*grade.seen, *grade.seen_on};
  row.readings_used = grade.looks;
  row.own_share = grade.own_share;
  row.words = std::move(grade.words);
  row.sentence = std::move(grade.sentence);
  row.flags = std::move(grade.flags);
  return row;
}

int replace_grade(const Portfolio& portfolio, const std::string& site) {
  return owners_grade(portfolio, site).grade;
}

Result<GradeReport> report_grades(const GradeModel& model, const Portfolio& portfolio,
                                  const GradeQuestion& question) {
  const GradeLikelihood likelihood(model.data, model.errors, *model.table);
  const Context context{portfolio,  model.layout, model.fit,  model.settings,
                        model.data, likelihood,   question.by};
  std::vector<std::vector<GradeForecast>> by_part(model.data.parts.size());
  for_each_unit(static_cast<int>(model.data.sites.size()), question.workers, [&](int s) {
    const GradeSite& site = model.data.sites[static_cast<std::size_t>(s)];
    const OwnersGrade owners = owners_grade(portfolio, site.name);
    for (int i = site.first_part; i < site.first_part + site.parts && !question.workers.stopped();
         ++i)
      by_part[static_cast<std::size_t>(i)] = rows_of(context, {i, s, owners});
  });
  if (question.workers.stopped())
    return fail(
        Fault::cancelled,
        "Grade forecast: stopped before its end. The grades are as they were. Ask again for "
        "the whole.");
  GradeReport report;
  for (auto& rows : by_part)
    for (GradeForecast& row : rows) report.rows.push_back(std::move(row));
  std::stable_sort(report.rows.begin(), report.rows.end(),
                   [&](const GradeForecast& a, const GradeForecast& b) {
                     return portfolio.parts[static_cast<std::size_t>(a.part)].id <
                            portfolio.parts[static_cast<std::size_t>(b.part)].id;
                   });
  report.habits = inspector_habits(model);
  report.left_out = model.data.left_out;
  report.rates_per_year = rates_per_year(model);
  report.notes = grade_notes(model);
  return report;
}

Result<GradeReport> forecast_grades(const Portfolio& portfolio, const GradeQuestion& question) {
  if (portfolio.parts.empty())
    return fail(Fault::not_estimable, "Grade forecast: there is no part. Nothing was changed.");
  const auto model = fit_grade_model(portfolio, {.workers = question.workers});
  if (!model) return fail(model.error());
  return report_grades(*model, portfolio, question);
}

Result<std::vector<GradeForecast>> grades_of_one_part(const GradeModel& model, const Portfolio& one,
                                                      std::optional<Date> by) {
  if (one.parts.size() != 1)
    return fail(Fault::invalid_input, "Grade forecast of one part: it asks for one part alone.");
  const auto name = [](const GradeSite& site) -> const std::string& { return site.name; };
  const auto site = std::ranges::lower_bound(model.data.sites, one.parts.front().site, {}, name);
  if (site == model.data.sites.end() || site->name != one.parts.front().site)
    return fail(Fault::not_found, concat({"Site ", one.parts.front().site,
                                          " is not in the forecast yet: reckon it anew."}));
  const auto zone = std::ranges::lower_bound(site->zones, one.parts.front().zone);
  if (zone == site->zones.end() || *zone != one.parts.front().zone)
    return fail(Fault::not_found, concat({"Zone ", one.parts.front().zone,
                                          " is not in the forecast yet: reckon it anew."}));
  GradeData data = prepare_grades(one, model.installed);
  data.parts.front().zone = static_cast<std::int32_t>(zone - site->zones.begin());
  std::vector<GradeErrors> errors;
  for (const std::string& inspector : data.inspectors) {
    const auto known = std::ranges::lower_bound(model.data.inspectors, inspector);
    const bool met = known != model.data.inspectors.end() && *known == inspector;
    errors.push_back(
        met ? model.errors[static_cast<std::size_t>(known - model.data.inspectors.begin())]
            : model.pooled_errors);
  }
  const GradeLikelihood likelihood(data, std::move(errors), *model.table);
  // Of the sites of the fit its own alone.
  const std::ptrdiff_t at = site - model.data.sites.begin();
  RateLayout layout = layout_of_site(model.layout, at);
  layout.parts = grade_layout(data).parts;
  const RateFit fit = fit_of_site(model.fit, at);
  return rows_of({one, layout, fit, model.settings, data, likelihood, by},
                 {0, 0, owners_grade(one, site->name)});
}

}  // namespace kneerail::forecast
