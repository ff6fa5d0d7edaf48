#include "tests/support/site_split.h"

#include <algorithm>
#include <string_view>

namespace kneerail::forecast {

SiteSplit::SiteSplit(const Portfolio& portfolio) : portfolio_(portfolio) {
  place_in_site_.resize(portfolio.parts.size());
  std::map<std::string_view, const std::string*> site_of_id;
  for (std::size_t i = 0; i < portfolio.parts.size(); ++i) {
    const Part& part = portfolio.parts[i];
    Lists& own = sites_[part.site];
    place_in_site_[i] = static_cast<std::int32_t>(own.parts.size());
    own.parts.push_back(static_cast<std::int32_t>(i));
    if (!portfolio.left_out.empty()) site_of_id.emplace(part.id, &part.site);
  }
  const auto lists_of = [&](std::int32_t part) -> Lists& {
    return sites_[portfolio.parts[static_cast<std::size_t>(part)].site];
  };
  for (std::size_t i = 0; i < portfolio.readings.size(); ++i)
    lists_of(portfolio.readings[i].part).readings.push_back(static_cast<std::int32_t>(i));
  for (std::size_t i = 0; i < portfolio.works.size(); ++i)
    lists_of(portfolio.works[i].part).works.push_back(static_cast<std::int32_t>(i));
  for (std::size_t i = 0; i < portfolio.left_out.size(); ++i) {
    const auto found = site_of_id.find(portfolio.left_out[i].part);
    if (found != site_of_id.end())
      sites_[*found->second].left_out.push_back(static_cast<std::int32_t>(i));
  }
}

Portfolio SiteSplit::portfolio_of(const std::string& site) const {
  Portfolio own;
  own.as_of = portfolio_.as_of;
  own.settings = portfolio_.settings;
  for (const SiteLimits& limits : portfolio_.limits)
    if (limits.site == site) own.limits.push_back(limits);
  own.sites_asked = own.sites_aboard = {site};
  const auto found = sites_.find(site);
  if (found == sites_.end()) return own;
  const Lists& lists = found->second;
  const auto copied = [](const auto& from, const std::vector<std::int32_t>& places, auto& to) {
    to.reserve(places.size());
    for (const std::int32_t place : places) to.push_back(from[static_cast<std::size_t>(place)]);
  };
  copied(portfolio_.parts, lists.parts, own.parts);
  copied(portfolio_.readings, lists.readings, own.readings);
  copied(portfolio_.works, lists.works, own.works);
  copied(portfolio_.left_out, lists.left_out, own.left_out);
  std::map<std::int32_t, std::int32_t> visits;
  for (const Reading& reading : own.readings) visits.emplace(reading.visit, 0);
  for (auto& [from, to] : visits) {
    to = static_cast<std::int32_t>(own.visits.size());
    own.visits.push_back(portfolio_.visits[static_cast<std::size_t>(from)]);
  }
  for (Reading& reading : own.readings) {
    reading.part = place_in_site_[static_cast<std::size_t>(reading.part)];
    reading.visit = visits.at(reading.visit);
  }
  for (Work& work : own.works) work.part = place_in_site_[static_cast<std::size_t>(work.part)];
  return own;
}

PortfolioFit SiteSplit::fit_of(const PortfolioFit& fit, const std::string& site) const {
  PortfolioFit own = fit_of_site(fit, site, [&](std::int32_t place) {
    return place_in_site_[static_cast<std::size_t>(place)];
  });
  own.others.grades.data.left_out = left_out_of(fit.others.grades.data.left_out, site);
  own.others.screws.data.left_out = left_out_of(fit.others.screws.data.left_out, site);
  if (fit.coating.model)
    own.coating.model->data.left_out = left_out_of(fit.coating.model->data.left_out, site);
  return own;
}

std::vector<LeftOut> SiteSplit::left_out_of(const std::vector<LeftOut>& by_part,
                                            const std::string& site) const {
  std::vector<LeftOut> own;
  const auto found = sites_.find(site);
  if (found == sites_.end()) return own;
  for (const std::int32_t place : found->second.parts) {
    const auto [first, last] = std::ranges::equal_range(
        by_part, portfolio_.parts[static_cast<std::size_t>(place)].id, {}, &LeftOut::part);
    own.insert(own.end(), first, last);
  }
  return own;
}

std::vector<std::pair<std::string, std::int64_t>> SiteSplit::sites() const {
  std::vector<std::pair<std::string, std::int64_t>> sites;
  for (const auto& [name, lists] : sites_)
    sites.emplace_back(name, static_cast<std::int64_t>(lists.parts.size()));
  return sites;
}

}  // namespace kneerail::forecast
