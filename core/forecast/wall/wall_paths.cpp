#include "core/forecast/wall/wall_paths.h"

#include <algorithm>

#include "core/forecast/constants.h"

namespace kneerail::forecast {

PathTable::PathTable(const corrosion::AttackPath& path) {
  const auto steps = static_cast<std::size_t>(years * steps_per_year);
  for (std::size_t i = 0; i <= steps; ++i) {
    const double at = static_cast<double>(i) / steps_per_year;
    effective_.push_back(path.effective_age(at));
    age_.push_back(path.age(at));
  }
  slope_ = path.effective_age(years + 1) - path.effective_age(years);
}

double PathTable::slope(double age_years) const {
  if (age_years <= 0) return 1;
  if (age_years >= years) return slope_;
  const auto i = static_cast<std::size_t>(age_years * steps_per_year);
  return (effective_[i + 1] - effective_[i]) * steps_per_year;
}

bool WallPaths::there_are(const Settings& settings) {
  const auto good = [](double exponent) {
    return exponent >= constant::path_exponent_least && exponent <= 1;
  };
  return good(settings.zinc_path_exponent) && good(settings.steel_path_exponent);
}

WallPaths::WallPaths(const Settings& settings)
    : zinc_attack_(settings.zinc_path_exponent),
      steel_attack_(settings.steel_path_exponent),
      zinc_(zinc_attack_),
      steel_(steel_attack_) {}

bool WallPaths::serve(const Settings& settings) const {
  return zinc_attack_.exponent() == settings.zinc_path_exponent &&
         steel_attack_.exponent() == settings.steel_path_exponent;
}

}  // namespace kneerail::forecast
