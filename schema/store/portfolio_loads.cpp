// What each tube has to carry, for the forecast of walls: from its type, its post or bay, its run
// and the owner's rule set. What one of them does not say is said in words, never assumed, but for
// the steel of a tube: the weakest of its kind is on the safe side. Tubes with a finding that tells
// of a dent, a bend or a hole are marked; they are not projected.

#include <algorithm>
#include <string>

#include "core/records/entities.h"
#include "core/records/finding.h"
#include "core/records/rule_set.h"
#include "schema/store/portfolio_tables.h"

namespace kneerail {
namespace {

using forecast::PartKind;

bool is_steel_tube(const forecast::Part& part) {
  using forecast::Material;
  const bool tube = part.kind == PartKind::post_tube || part.kind == PartKind::rail_tube;
  return tube && part.material != Material::aluminium && part.material != Material::stainless;
}

double metres(std::int64_t mm) {
  return static_cast<double>(mm) / 1000;
}

}  // namespace

void PortfolioTables::find_post_spacings() {
  std::unordered_map<Uuid, std::vector<std::pair<std::int64_t, Uuid>>> posts_of_run;
  for (const Thing& post : posts_.all())
    if (post.chainage_mm) posts_of_run[post.parent].emplace_back(*post.chainage_mm, post.id);
  for (auto& [run, posts] : posts_of_run) {
    std::sort(posts.begin(), posts.end());
    for (std::size_t i = 1; i < posts.size(); ++i) {
      const std::int64_t apart = posts[i].first - posts[i - 1].first;
      for (const Uuid& post : {posts[i - 1].second, posts[i].second}) {
        std::int64_t& widest = spacing_of_post_mm_[post];
        widest = std::max(widest, apart);
      }
    }
  }
}

std::optional<std::int64_t> PortfolioTables::spacing_mm(const Thing& component) const {
  if (const Thing* bay = bays_.find(component.parent)) {
    const Thing* from = posts_.find(bay->id_field(bay_field::from_post).value_or(Uuid{}));
    const Thing* to = posts_.find(bay->id_field(bay_field::to_post).value_or(Uuid{}));
    if (from == nullptr || to == nullptr || !from->chainage_mm || !to->chainage_mm)
      return std::nullopt;
    return std::abs(*to->chainage_mm - *from->chainage_mm);
  }
  const auto found = spacing_of_post_mm_.find(component.parent);
  if (found == spacing_of_post_mm_.end()) return std::nullopt;
  return found->second;
}

std::optional<double> PortfolioTables::line_load_kn_per_m(const Thing& site,
                                                          std::int64_t use_class) const {
  const auto* loads = rule_value(site, limit_key::line_load);
  if (loads == nullptr || loads->map() == nullptr) return std::nullopt;
  const auto* one = loads->map()->find(use_class);
  if (one == nullptr || one->number() == nullptr) return std::nullopt;
  return static_cast<double>(*one->number()) / 1000;
}

std::string PortfolioTables::load_of(const Thing& site, const Thing& component,
                                     structure::LoadedTube& tube) const {
  const Thing* type = types_.find(component.component_type.value_or(Uuid{}));
  if (type == nullptr) return "no type is set for this tube";
  const auto diameter = type->number(component_type_field::tube_diameter);
  const auto wall = type->number(component_type_field::tube_wall);
  if (!diameter || !wall) return "no diameter and wall are set for its type";
  if (type->number(component_type_field::material) == static_cast<int>(Material::cast_iron))
    return "cast iron is not checked";
  tube.as_new = {static_cast<double>(*diameter) / 10, static_cast<double>(*wall) / 10};
  const Thing* post = posts_.find(component.parent);
  const Thing* bay = bays_.find(component.parent);
  const Thing* run = runs_.find(post ? post->parent : bay ? bay->parent : Uuid{});
  if (run == nullptr) return "its run is not known";
  const auto use_class = run->number(run_field::use_class);
  if (!use_class) return "no load class is set for this run";
  const auto load = line_load_kn_per_m(site, *use_class);
  if (!load) return "no line load is set for load class " + std::to_string(*use_class);
  tube.line_load_kn_per_m = *load;
  const auto spacing = spacing_mm(component);
  if (!spacing || *spacing <= 0) return "no spacing of posts is known here";
  tube.spacing_m = metres(*spacing);
  auto height = post ? post->number(post_field::height) : std::nullopt;
  if (!height) height = run->number(run_field::required_height);
  if (tube.member == structure::Member::post && (!height || *height <= 0))
    return "no height is set for this post or run";
  tube.height_m = metres(height.value_or(0));
  const auto yield = type->number(component_type_field::yield_strength);
  tube.yield_mpa = yield ? static_cast<double>(*yield) : structure::assumed_yield_mpa;
  return {};
}

void PortfolioTables::set_load(const Thing& site, const Thing& component,
                               forecast::Part& part) const {
  if (!is_steel_tube(part)) return;
  structure::LoadedTube tube;
  tube.member =
      part.kind == PartKind::post_tube ? structure::Member::post : structure::Member::rail;
  part.load_not_known = load_of(site, component, tube);
  if (!part.load_not_known.empty()) return;
  part.carries = tube;
  const Thing* type = types_.find(component.component_type.value_or(Uuid{}));
  part.yield_assumed = !type->number(component_type_field::yield_strength);
}

/// Of a tube itself, or of its post or bay; until the finding has ended or the tube was replaced.
Result<> PortfolioTables::mark_out_of_shape() {
  auto rows = tables_.prepare(
      "SELECT f.subject, f.t, f.ended_by, l.ended_t FROM finding f LEFT JOIN life l ON l.component "
      "= "
      "f.subject AND l.life = f.life WHERE f.what IN (?, ?, ?) AND f.voided_by IS NULL AND "
      "f.held = 0 ORDER BY f.record");
  if (!rows) return fail(rows.error());
  int place = 0;
  for (const FindingKind kind : {FindingKind::split, FindingKind::bent, FindingKind::knocked})
    rows->bind(++place, static_cast<std::int64_t>(kind));
  while (true) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return Done{};
    const auto known = [&](std::int64_t ms) {
      return is_known_on(zone_.day_of_entry(Instant{ms}));
    };
    if (!known(rows->number(1))) continue;
    if (!rows->is_null(2) && known(rows->uuid(2).unix_ms())) continue;
    if (!rows->is_null(3) && known(rows->number(3))) continue;
    bent_.insert(rows->uuid(0));
  }
}

bool PortfolioTables::is_out_of_shape(const Thing& component) const {
  return bent_.contains(component.id) || bent_.contains(component.parent);
}

}  // namespace kneerail
