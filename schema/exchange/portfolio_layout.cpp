#include "schema/exchange/portfolio_layout.h"

#include <algorithm>
#include <cstdlib>
#include <unordered_map>

namespace kneerail::exchange {
namespace {

using forecast::PartKind;

bool belongs_to_bay(PartKind kind) {
  return kind == PartKind::rail_tube || kind == PartKind::toe_board || kind == PartKind::infill ||
         kind == PartKind::gate;
}

void sort_posts(RunPlan& run) {
  const auto before = [](const PostPlan& a, const PostPlan& b) {
    return a.chainage_mm < b.chainage_mm;
  };
  const auto same = [](const PostPlan& a, const PostPlan& b) {
    return a.chainage_mm == b.chainage_mm;
  };
  std::sort(run.posts.begin(), run.posts.end(), before);
  run.posts.erase(std::unique(run.posts.begin(), run.posts.end(), same), run.posts.end());
}

/// A run of which no post tube is listed: posts where its parts begin, at least two metres apart.
void assume_posts(std::vector<std::int64_t>& parts_mm, RunPlan& run) {
  constexpr std::int64_t apart_mm = 2'000;
  std::sort(parts_mm.begin(), parts_mm.end());
  for (const auto mm : parts_mm)
    if (run.posts.empty() || mm > run.posts.back().chainage_mm + apart_mm)
      run.posts.push_back({mm});
  if (run.posts.empty()) run.posts.push_back({0});
}

/// The post that stands nearest; of two as near, the first.
std::int32_t nearest_post(const RunPlan& run, std::int64_t chainage_mm) {
  const auto next =
      std::lower_bound(run.posts.begin(), run.posts.end(), chainage_mm,
                       [](const PostPlan& post, std::int64_t mm) { return post.chainage_mm < mm; });
  const auto at = static_cast<std::int32_t>(next - run.posts.begin());
  if (next == run.posts.end()) return at - 1;
  if (at == 0) return 0;
  const auto before = chainage_mm - run.posts[static_cast<std::size_t>(at) - 1].chainage_mm;
  return next->chainage_mm - chainage_mm < before ? at : at - 1;
}

void place(const ComponentRow& part, const RunPlan& run, Placement& placement) {
  const auto& posts = run.posts;
  const auto mm = part.chainage_mm;
  placement.in_bay = belongs_to_bay(part.kind) && posts.size() > 1 &&
                     mm >= posts.front().chainage_mm && mm <= posts.back().chainage_mm;
  if (!placement.in_bay) {
    placement.parent = nearest_post(run, mm);
    placement.along_mm = mm - posts[static_cast<std::size_t>(placement.parent)].chainage_mm;
    return;
  }
  std::size_t bay = 0;
  while (bay + 2 < posts.size() && posts[bay + 1].chainage_mm <= mm) ++bay;
  placement.parent = static_cast<std::int32_t>(bay);
  placement.along_mm = mm - bay_middle_mm(posts[bay].chainage_mm, posts[bay + 1].chainage_mm);
}

}  // namespace

std::int64_t bay_middle_mm(std::int64_t from_mm, std::int64_t to_mm) {
  return from_mm + (to_mm - from_mm) / 2;
}

Layout lay_out(const CheckedPortfolio& portfolio) {
  Layout layout;
  layout.runs.resize(portfolio.runs.size());
  layout.placements.resize(portfolio.components.size());
  std::unordered_map<std::string, std::int32_t> runs;
  for (std::size_t i = 0; i < portfolio.runs.size(); ++i)
    runs[portfolio.runs[i].id] = static_cast<std::int32_t>(i);
  std::vector<std::vector<std::int64_t>> parts_mm(portfolio.runs.size());
  for (std::size_t i = 0; i < portfolio.components.size(); ++i) {
    const ComponentRow& part = portfolio.components[i];
    const auto run = static_cast<std::size_t>(runs[part.run]);
    layout.placements[i].run = static_cast<std::int32_t>(run);
    if (part.kind == PartKind::post_tube) layout.runs[run].posts.push_back({part.chainage_mm});
    parts_mm[run].push_back(part.chainage_mm);
  }
  for (std::size_t run = 0; run < layout.runs.size(); ++run) {
    if (layout.runs[run].posts.empty()) assume_posts(parts_mm[run], layout.runs[run]);
    sort_posts(layout.runs[run]);
  }
  for (std::size_t i = 0; i < portfolio.components.size(); ++i) {
    auto& placement = layout.placements[i];
    place(portfolio.components[i], layout.runs[static_cast<std::size_t>(placement.run)], placement);
  }
  return layout;
}

}  // namespace kneerail::exchange
