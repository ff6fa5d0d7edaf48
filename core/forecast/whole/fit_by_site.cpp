#include "core/forecast/whole/fit_by_site.h"

#include <algorithm>

#include "core/base/result.h"

namespace kneerail::forecast {

FitBySite::FitBySite(InstalledDates installed) : installed_(std::move(installed)) {}

Result<> FitBySite::add(const std::string& site, const Portfolio& portfolio) {
  check(std::ranges::all_of(portfolio.parts, [&](const Part& part) { return part.site == site; }),
        "a site is handed over alone");
  auto coating = gather_coating(portfolio);
  if (!coating) return fail(coating.error());
  ScrewData screws = gather_tightenings(portfolio, installed_);
  GradeData grades = prepare_grades(portfolio, installed_);
  parts_ += portfolio.parts.size();
  LeftOutOfSite& left_out = left_out_[site];
  left_out.coating = std::exchange(coating->data.left_out, {});
  left_out.screws = std::exchange(screws.left_out, {});
  left_out.grades = std::exchange(grades.left_out, {});
  for (auto* list : {&left_out.coating, &left_out.screws, &left_out.grades}) sort_left_out(*list);
  coating_.push_back(std::move(*coating));
  screws_.push_back(std::move(screws));
  grades_.push_back(std::move(grades));
  return Done{};
}

Result<SiteFits> FitBySite::fit(const RunOptions& options) && {
  if (parts_ == 0)
    return fail(Fault::not_estimable, "Forecast: there is no part. Nothing was changed.");
  const Workers workers{.threads = options.threads, .stop = options.stop};
  auto data = estimate_coating(joined(std::move(coating_)));
  auto coating = coating_or_why(data ? fit_coating_data(std::move(*data), options)
                                     : Result<CoatingModel>(fail(data.error())));
  if (!coating) return fail(coating.error());
  auto screws = fit_screw_data(installed_, joined(std::move(screws_)), workers);
  if (!screws) return fail(screws.error());
  auto grades =
      fit_grade_data(std::move(installed_), joined(std::move(grades_)), {.workers = workers});
  if (!grades) return fail(grades.error());
  return SiteFits(fit_of_all(std::move(*coating), {std::move(*screws), std::move(*grades)}),
                  std::move(left_out_));
}

PortfolioFit SiteFits::of(const std::string& site) const {
  PortfolioFit own = fit_of_site(all_, site, [](std::int32_t place) { return place; });
  const auto left_out = left_out_.find(site);
  if (left_out == left_out_.end()) return own;
  if (own.coating.model) own.coating.model->data.left_out = left_out->second.coating;
  own.others.screws.data.left_out = left_out->second.screws;
  own.others.grades.data.left_out = left_out->second.grades;
  return own;
}

}  // namespace kneerail::forecast
