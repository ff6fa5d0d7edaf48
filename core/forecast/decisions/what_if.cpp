#include "core/forecast/decisions/what_if.h"

#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "core/base/text.h"
#include "core/corrosion/zinc_coating.h"
#include "core/forecast/decisions/part_order.h"
#include "core/forecast/limit_report.h"
#include "core/forecast/predictive.h"

namespace kneerail::forecast {

namespace {

CoatingLife life_of(const Replacements& replacements, const CoatingModel& coating,
                    std::int32_t place, const NewPart& made) {
  const Part& part = replacements.portfolio().parts[static_cast<std::size_t>(place)];
  const Posterior posterior = *replacements.new_coating(place, made);
  const Clock clock{&coating.data.path, 0, true};
  CoatingLife life;
  life.nominal_um = made.nominal_um.value_or(replacements.nominal_um(place));
  life.gone = limit_quantiles(posterior, clock, zinc_gone_um(replacements.portfolio(), part.site));
  if (const auto limit_um = set_limit_um(part.first_maintenance_um))
    life.first_maintenance = limit_quantiles(posterior, clock, *limit_um);
  return life;
}

}  // namespace

Result<Finish> Finish::named(std::string_view words) {
  Finish finish;
  if (words == "iso1461") return finish;
  const auto um = double_from_text(words);
  if (!um || !(*um > 0) || *um > constant::largest_nominal_um)
    return fail(Fault::invalid_input,
                "'" + std::string(words) +
                    "' is no finish: write a least mean zinc thickness in um, as in 85, or "
                    "iso1461. Other finishes have no rate of loss here.");
  finish.given_um_ = *um;
  return finish;
}

std::optional<double> Finish::minimum_um(const Part& part) const {
  if (given_um_) return given_um_;
  const bool tube = part.kind == PartKind::post_tube || part.kind == PartKind::rail_tube;
  if (tube && !part.wall_nominal_mm) return std::nullopt;
  constexpr double thin_casting_mm = 5;
  return tube ? corrosion::least_coating(corrosion::Article::steel, *part.wall_nominal_mm).mean_um
              : corrosion::least_coating(corrosion::Article::casting, thin_casting_mm).mean_um;
}

std::vector<FinishLife> finish_lives(const Replacements& replacements, const CoatingModel& coating,
                                     const std::string& site, const Finish& finish) {
  struct OfRuns {
    FinishLife life;
    std::set<std::string> runs;
  };
  std::map<std::tuple<std::string, PartKind, Exposure, double, double, double>, OfRuns> lives;
  for (const std::int32_t place : parts_in_order(replacements.portfolio(), site)) {
    const Part& part = replacements.portfolio().parts[static_cast<std::size_t>(place)];
    const double nominal_um = replacements.nominal_um(place);
    const auto minimum_um = finish.minimum_um(part);
    if (nominal_um <= 0 || !minimum_um) continue;
    auto& [life, runs] = lives[{part.zone, part.kind, part.exposure, nominal_um, *minimum_um,
                                set_limit_um(part.first_maintenance_um).value_or(0)}];
    ++life.parts;
    if (!runs.insert(part.run).second) continue;
    CoatingLife as_now = life_of(replacements, coating, place, {});
    constexpr std::size_t median = 3;
    if (runs.size() > 1 && as_now.gone[median] >= life.as_now.gone[median]) continue;
    life.zone = part.zone;
    life.kind = part.kind;
    life.exposure = part.exposure;
    life.example = place;
    life.as_now = std::move(as_now);
    life.other = life_of(replacements, coating, place, {minimum_um});
  }
  std::vector<FinishLife> made;
  for (auto& [key, own] : lives) made.push_back(std::move(own.life));
  return made;
}

}  // namespace kneerail::forecast
