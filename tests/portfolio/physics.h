#pragma once

// How metal goes in the invented world: years of weather, patches of zinc, rust in spots, walls.

#include <array>
#include <vector>

#include "core/corrosion/attack.h"
#include "tests/portfolio/draw.h"

namespace kneerail::portfolio_test {

inline constexpr int first_year = 1980;
inline constexpr int weather_years = 230;

/// A site's factor on the loss of each calendar year.
class Weather {
 public:
  explicit Weather(Draw& draw);
  /// Effective years between two days, in a metal of that path whose age counts from `start`.
  [[nodiscard]] double effective_years(const corrosion::AttackPath& path, Date start,
                                       Date day) const;

 private:
  std::array<double, weather_years> factor_{};
};

inline constexpr int patches_most = 3;

/// A coating from its start on.
struct Coating {
  Date start;
  double start_um = 0;
  double rate_um_per_year = 0;  ///< 20-year mean
  double face_sd = 0;           ///< ln, of patches
  std::array<double, patches_most> patch_start_um{};
  std::array<double, patches_most> patch_face{};
  bool paint = false;         ///< touched up
  Date gives_way{1'000'000};  ///< the day from which paint is lost three times as fast
};

Coating coating(Draw& draw, Date start, double start_um, double rate_um_per_year, double face_sd);

/// Where the coating stands and what wears it.
struct Place {
  const Weather* weather;
  corrosion::AttackPath path{0.9};
};

/// Effective years of the coating's loss by a day.
double effective_years(const Place& place, const Coating& coating, Date day);

/// Mean thickness over all patches, not cut off at 0.
double mean_um(const Place& place, const Coating& coating, Date day);

/// Of one patch, not cut off at 0; rust under the gauge where it is below.
double patch_um(const Place& place, const Coating& coating, int patch, Date day);

/// Mean of the first so many patches, the places where the part is read: what a forecast dates.
double places_um(const Place& place, const Coating& coating, int patches, Date day);

/// Share of the surface whose zinc is gone.
double rusted_share(const Place& place, const Coating& coating, Date day);

/// Steel under it: from outside once the zinc of the mean is gone, from inside on its own.
struct Wall {
  double nominal_mm = 0;
  double outside_um_per_year = 0;  ///< 20-year mean
  double inside_um_per_year = 0;
  Date inside_from;
};
double wall_mm(const Place& place, const Wall& wall, Date zinc_gone, Date day);

/// The first day, within 150 years of `from`, on which `left(day)` is not above 0; none: the last.
template <class Left>
Date day_when_gone(Date from, const Left& left) {
  constexpr int step_days = 365;
  constexpr int days_most = 150 * 365;
  Date before = from;
  for (int days = step_days; days <= days_most; days += step_days) {
    const Date day{from.days + days};
    if (left(day) <= 0) {
      Date low = before;
      Date high = day;
      while (high.days - low.days > 1) {
        const Date middle{low.days + (high.days - low.days) / 2};
        (left(middle) <= 0 ? high : low) = middle;
      }
      return high;
    }
    before = day;
  }
  return Date{from.days + days_most};
}

}  // namespace kneerail::portfolio_test
