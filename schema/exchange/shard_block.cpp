#include "schema/exchange/shard_block.h"

#include <algorithm>
#include <numeric>
#include <string_view>
#include <utility>
#include <vector>

#include "schema/exchange/forecast_files.h"

namespace kneerail {

namespace {

std::vector<forecast::ForecastRows> rows_by_part(const forecast::Portfolio& site,
                                                 const forecast::ForecastRows& rows) {
  std::vector<forecast::ForecastRows> by_part(site.parts.size());
  for (const auto& row : rows.limits) {
    auto& own = by_part[static_cast<std::size_t>(row.part)].limits;
    own.push_back(row);
    own.back().part = 0;
  }
  std::vector<std::pair<std::string_view, std::size_t>> places;
  for (std::size_t i = 0; i < site.parts.size(); ++i) places.emplace_back(site.parts[i].id, i);
  std::ranges::sort(places);
  const auto add = [&](const std::vector<forecast::LeftOut>& left_out) {
    for (const auto& one : left_out) {
      const auto at = std::ranges::lower_bound(places, std::string_view(one.part), {},
                                               [](const auto& place) { return place.first; });
      if (at != places.end() && at->first == one.part) by_part[at->second].left_out.push_back(one);
    }
  };
  add(rows.left_out);
  add(site.left_out);
  for (auto& own : by_part) forecast::sort_left_out(own.left_out);
  return by_part;
}

}  // namespace

std::string shard_line() {
  return forecast_line("part 3");
}

std::string site_block(const forecast::Portfolio& site, const forecast::ForecastRows& rows) {
  const auto by_part = rows_by_part(site, rows);
  std::string bytes;
  ByteSink sink(bytes);
  SiteBlockHead head;
  head.site = site.parts.empty() ? std::string() : site.parts.front().site;
  const auto limits = std::ranges::find(site.limits, head.site, &forecast::SiteLimits::site);
  if (limits != site.limits.end()) head.limits = *limits;
  head.parts = site.parts.size();
  sink(head);
  std::vector<std::size_t> order(site.parts.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::sort(
      order, {}, [&](std::size_t i) -> const auto& { return site.parts[i].id; });
  for (const std::size_t i : order)
    sink(archived(PartBlock{site.parts[i], forecast::bytes_of(by_part[i])}));
  return bytes;
}

}  // namespace kneerail
