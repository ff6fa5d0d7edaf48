#include "tests/core/forecast/wall/made_walls.h"

#include <algorithm>
#include <cmath>

#include "core/base/world.h"
#include "core/corrosion/attack.h"
#include "core/statistics/normal.h"

namespace kneerail::forecast {

namespace {

constexpr double nominal_mm = 3.2;
constexpr double class_steel = 2.970 * 22;
constexpr double never_years = 1000;

struct Life {
  double start_mm;
  double zinc_end_years;  ///< from the as-of date
  double steel;           ///< um per year, mean of 20 years
  double inside;
  double inside_from_years;  ///< from the as-of date
};

class Maker {
 public:
  Maker(const Made& made, const WallRecipe& recipe)
      : made_(made), recipe_(recipe), random_(recipe.seed) {}

  MadeWalls make() {
    out_.portfolio = made_.portfolio;
    for (std::size_t i = 0; i < out_.portfolio.parts.size(); ++i) {
      out_.wall_years.push_back(never_years);
      out_.open.push_back(false);
      const PartKind kind = out_.portfolio.parts[i].kind;
      if (kind == PartKind::post_tube || kind == PartKind::rail_tube) add(i);
    }
    return std::move(out_);
  }

 private:
  double normal(double sd) {
    return sd * statistics::normal_quantile((random_.uniform() + 1e-12) / (1 + 2e-12));
  }

  void add(std::size_t place) {
    Part& part = out_.portfolio.parts[place];
    const Truth& truth = made_.truth[place];
    part.wall_nominal_mm = nominal_mm;
    part.wall_limit_mm = recipe_.limit_share * nominal_mm;
    part.steel_rate_um_per_year = class_steel;
    Life life{};
    life.start_mm = nominal_mm * (0.97 + normal(0.025));
    life.zinc_end_years = truth.exhausted_years;
    life.steel = 22 * truth.rate_um_per_year * std::exp(normal(0.35));
    const double age = path_zinc_.age(truth.start_um / truth.rate_um_per_year);
    const double start_years = truth.exhausted_years - age;
    const bool open = part.kind == PartKind::post_tube && random_.uniform() < recipe_.open_posts;
    out_.open[place] = open;
    life.inside = life.steel * (open ? 0.3 + 0.6 * random_.uniform() : 0.03);
    life.inside_from_years = start_years + (open ? 5 * random_.uniform() : 0);
    read(place, life, start_years);
    out_.wall_years[place] = years_to_limit(life, *part.wall_limit_mm);
  }

  double wall_mm(const Life& life, double years) const {
    const double outside = path_steel_.effective_age(std::max(0.0, years - life.zinc_end_years));
    const double inside = path_steel_.effective_age(std::max(0.0, years - life.inside_from_years));
    return life.start_mm - (life.steel * outside + life.inside * inside) / 1000;
  }

  void read(std::size_t place, const Life& life, double start_years) {
    const auto visits = static_cast<std::int32_t>(out_.portfolio.visits.size());
    for (std::int32_t v = 0; v < visits; ++v) {
      const Visit& visit = out_.portfolio.visits[static_cast<std::size_t>(v)];
      const double years = years_between(out_.portfolio.as_of, visit.day);
      if (visit.site != out_.portfolio.parts[place].site || years <= start_years) continue;
      if (random_.uniform() >= recipe_.measured) continue;
      const double shared = normal(0.03);
      for (std::int16_t spot = 1; spot <= 2; ++spot) {
        Reading reading;
        reading.id = "w" + std::to_string(1'000'000 + out_.portfolio.readings.size());
        reading.part = static_cast<std::int32_t>(place);
        reading.visit = v;
        reading.quantity = Quantity::wall_mm;
        reading.spot = spot;
        reading.value = std::round(100 * (wall_mm(life, years) + shared + normal(0.06))) / 100;
        if (reading.value > 0.5) out_.portfolio.readings.push_back(reading);
      }
    }
  }

  double years_to_limit(const Life& life, double limit_mm) const {
    double low = -60;
    double high = never_years;
    while (high - low > 1e-4) {
      const double middle = (low + high) / 2;
      (wall_mm(life, middle) <= limit_mm ? high : low) = middle;
    }
    return high;
  }

  const Made& made_;
  WallRecipe recipe_;
  SplitMix64 random_;
  MadeWalls out_;
  corrosion::AttackPath path_zinc_{0.9};
  corrosion::AttackPath path_steel_{0.75};
};

}  // namespace

MadeWalls made_walls(const Made& made, const WallRecipe& recipe) {
  return Maker(made, recipe).make();
}

}  // namespace kneerail::forecast
