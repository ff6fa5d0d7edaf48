#pragma once

// The paths of zinc and of steel (core/corrosion/attack.h) as tables, for answers that ask for
// thousands of ages.

#include <cstddef>
#include <vector>

#include "core/corrosion/attack.h"
#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

/// h(t) and its inverse from a table of equal steps: many are asked for in each chance.
class PathTable {
 public:
  explicit PathTable(const corrosion::AttackPath& path);

  /// Ages below 0 count one to one, beyond the table by the path's own line.
  [[nodiscard]] double effective_age(double age_years) const {
    if (age_years <= 0) return age_years;
    if (age_years < years) return between(effective_, age_years);
    return effective_.back() + slope_ * (age_years - years);
  }
  [[nodiscard]] double age(double effective_age_years) const {
    if (effective_age_years <= 0) return effective_age_years;
    if (effective_age_years < years) return between(age_, effective_age_years);
    return age_.back() + (effective_age_years - years) / slope_;
  }
  /// Of effective age, at an age.
  [[nodiscard]] double slope(double age_years) const;

 private:
  static constexpr double years = 500;
  static constexpr double steps_per_year = 20;

  [[nodiscard]] static double between(const std::vector<double>& table, double at_years) {
    const double at = at_years * steps_per_year;
    const auto i = static_cast<std::size_t>(at);
    const double share = at - static_cast<double>(i);
    return table[i] + share * (table[i + 1] - table[i]);
  }

  std::vector<double> effective_;
  std::vector<double> age_;
  double slope_;  ///< of effective age, past the table
};

/// The tables of both paths. They depend on the exponents alone, and to make them takes as long as
/// the answer of a few tubes: who asks again and again keeps them.
class WallPaths {
 public:
  explicit WallPaths(const Settings& settings);
  /// Whether the settings have exponents that a path can have.
  [[nodiscard]] static bool there_are(const Settings& settings);
  /// Whether they are those of the settings.
  [[nodiscard]] bool serve(const Settings& settings) const;

  [[nodiscard]] const PathTable& zinc() const { return zinc_; }
  [[nodiscard]] const PathTable& steel() const { return steel_; }
  [[nodiscard]] const corrosion::AttackPath& steel_attack() const { return steel_attack_; }

 private:
  corrosion::AttackPath zinc_attack_;
  corrosion::AttackPath steel_attack_;
  PathTable zinc_;
  PathTable steel_;
};

}  // namespace kneerail::forecast
