#include "tests/portfolio/physics.h"

#include <algorithm>

namespace kneerail::portfolio_test {

namespace {

constexpr double patch_start_sd = 0.07;  // of a patch's start, over the part's
constexpr double days_a_year = 365.25;

int year_of(Date day) {
  return std::clamp(civil(day).year - first_year, 0, weather_years - 1);
}

}  // namespace

Weather::Weather(Draw& draw) {
  constexpr double ln_sd = 0.18;
  constexpr double carried_over = 0.4;
  double last = 0;
  for (double& factor : factor_) {
    last = carried_over * last + draw.normal(ln_sd * std::sqrt(1 - carried_over * carried_over));
    factor = std::exp(last - ln_sd * ln_sd / 2);
  }
}

double Weather::effective_years(const corrosion::AttackPath& path, Date start, Date day) const {
  double sum = 0;
  double before = 0;
  Date from = start;
  while (from < day) {
    const Date next = std::min(day, date_from_civil(civil(from).year + 1, 1, 1));
    const double age = path.effective_age(years_between(start, next));
    sum += (age - before) * factor_[static_cast<std::size_t>(year_of(from))];
    before = age;
    from = next;
  }
  return sum;
}

Coating coating(Draw& draw, Date start, double start_um, double rate_um_per_year, double face_sd) {
  Coating out;
  out.start = start;
  out.start_um = start_um;
  out.rate_um_per_year = rate_um_per_year;
  out.face_sd = face_sd;
  for (double& patch : out.patch_start_um) patch = start_um * (1 + draw.normal(patch_start_sd));
  for (double& face : out.patch_face) face = draw.factor(face_sd);
  return out;
}

double effective_years(const Place& place, const Coating& coating, Date day) {
  const double plain = place.weather->effective_years(place.path, coating.start, day);
  if (day <= coating.gives_way) return plain;
  const double held = place.weather->effective_years(place.path, coating.start, coating.gives_way);
  constexpr double faster = 3;
  return held + faster * (plain - held);
}

double mean_um(const Place& place, const Coating& coating, Date day) {
  return coating.start_um - coating.rate_um_per_year * effective_years(place, coating, day);
}

double patch_um(const Place& place, const Coating& coating, int patch, Date day) {
  const auto i = static_cast<std::size_t>(patch);
  return coating.patch_start_um[i] -
         coating.rate_um_per_year * coating.patch_face[i] * effective_years(place, coating, day);
}

double places_um(const Place& place, const Coating& coating, int patches, Date day) {
  double sum = 0;
  for (int patch = 0; patch < patches; ++patch) sum += patch_um(place, coating, patch, day);
  return sum / patches;
}

double rusted_share(const Place& place, const Coating& coating, Date day) {
  const double loss = coating.rate_um_per_year * effective_years(place, coating, day);
  const double sd = std::hypot(patch_start_sd * coating.start_um, coating.face_sd * loss);
  return statistics::normal_cdf((loss - coating.start_um) / sd);
}

double wall_mm(const Place& place, const Wall& wall, Date zinc_gone, Date day) {
  const corrosion::AttackPath steel(0.75);
  const double outside = place.weather->effective_years(steel, zinc_gone, day);
  const double inside =
      steel.effective_age(std::max(0.0, (day.days - wall.inside_from.days) / days_a_year));
  return wall.nominal_mm -
         (wall.outside_um_per_year * outside + wall.inside_um_per_year * inside) / 1000;
}

}  // namespace kneerail::portfolio_test
