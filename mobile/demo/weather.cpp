#include "mobile/demo/weather.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/result.h"
#include "core/corrosion/attack.h"
#include "core/corrosion/category.h"

namespace kneerail::demo {

namespace {

// The invented world: ISO 9224 attack with exponent 0.9, rates about the middle of the class.
constexpr double path_exponent = 0.9;
constexpr double part_rate_ln_sd = 0.28;
constexpr double part_start_sd = 0.12;
constexpr double run_batch_sd = 0.06;
constexpr double start_over_nominal = 1.12;
constexpr double replicate_sd_um = 2.2;
constexpr double spot_sd_um = 2.5;
constexpr double day_bias_sd_um = 1.1;
constexpr double day_gain_sd = 0.007;
constexpr double foil_um = 50;

const corrosion::AttackPath& path() {
  static const corrosion::AttackPath zinc(path_exponent);
  return zinc;
}

/// Middle of the class, as a mean of 20 years, um a year.
double class_rate(const std::string& word) {
  using corrosion::CorrosivityCategory;
  for (const auto category :
       {CorrosivityCategory::c2, CorrosivityCategory::c3, CorrosivityCategory::c4,
        CorrosivityCategory::c5, CorrosivityCategory::cx}) {
    if (corrosion::to_text(category) != word) continue;
    const auto middle = corrosion::middle_first_year_um(corrosion::Metal::zinc, category);
    check(middle.has_value(), "a class of zinc has no middle");
    return *middle * path().first_year_to_mean();
  }
  check(false, "Skerrymouth has no zone of that class");
  return 0;
}

/// As a coating gauge shows it: whole micrometres, in 0.1 um.
std::int64_t shown_tenth_um(double value_um) {
  return 10 * std::llround(value_um);
}

}  // namespace

double Chance::normal() {
  const double radius = std::sqrt(-2 * std::log(1 - stream_.uniform()));
  return radius * std::cos(2 * std::numbers::pi * stream_.uniform());
}

Weather::Weather(const Plan& plan, std::uint64_t seed) : plan_(plan), chance_(seed) {
  for (std::size_t run = 0; run < plan.runs.size(); ++run) {
    batch_.push_back(run_batch_sd * chance_.normal());
  }
  for (std::size_t i = 0; i < plan.parts.size(); ++i) {
    const int part = static_cast<int>(i);
    const PlannedRun& run = plan.runs[static_cast<std::size_t>(plan.parts[i].run)];
    Coat coat;
    coat.since = run.in_service;
    coat.start_um = fresh_start(part);
    coat.rate_um_per_year = group_rate(part) * std::exp(part_rate_ln_sd * chance_.normal());
    coats_.push_back(coat);
    inside_.push_back(0.012 * std::exp(0.7 * chance_.normal()));
  }
}

double Weather::group_rate(int part) const {
  const PlannedRun& run =
      plan_.runs[static_cast<std::size_t>(plan_.parts[static_cast<std::size_t>(part)].run)];
  const PlannedZone& zone = plan_.zones[static_cast<std::size_t>(run.zone)];
  return class_rate(zone.row.text("category")) * zone.row.real("true_over_class") *
         run.row.real("true_over_zone");
}

double Weather::fresh_start(int part) {
  const PlannedPart& at = plan_.parts[static_cast<std::size_t>(part)];
  const TableRow& type = plan_.types[static_cast<std::size_t>(at.type)].row;
  const double nominal_um = static_cast<double>(type.number("nominal_tenth_um").value_or(0)) / 10;
  const double ratio = start_over_nominal + batch_[static_cast<std::size_t>(at.run)] +
                       part_start_sd * chance_.normal();
  return nominal_um * std::max(0.7, ratio);
}

double Weather::coating_um(int part, Date day) const {
  const Coat& coat = coats_[static_cast<std::size_t>(part)];
  const double age = years_between(coat.since, day);
  return std::max(0.0,
                  coat.start_um - coat.rate_um_per_year * path().effective_age(std::max(0.0, age)));
}

int Weather::grade(int part, Date day) const {
  const PlannedPart& at = plan_.parts[static_cast<std::size_t>(part)];
  if (!plan_.is_zinc(at)) {
    const Coat& coat = coats_[static_cast<std::size_t>(part)];
    const double age = years_between(coat.since, day);
    const bool painted = plan_.runs[static_cast<std::size_t>(at.run)].finish == "paint";
    if (!painted) return age > 6 ? 2 : 1;
    // Paint goes first at cut edges and welds; inside_ stands for how early.
    const double edge = at.role == "cut edge" || at.role == "weld" ? 1.5 : 1.0;
    return std::clamp(
        1 + static_cast<int>(edge * inside_[static_cast<std::size_t>(part)] * age * 7), 1, 4);
  }
  const Coat& coat = coats_[static_cast<std::size_t>(part)];
  const double share = coating_um(part, day) / coat.start_um;
  // Red rust comes through where the zinc is all but gone (grade 3); before that it is dull.
  if (share > 0.72) return 1;
  if (share > 0.08) return 2;
  const double gone_a_year_ago = coating_um(part, Date{day.days - 700});
  return gone_a_year_ago > 0 ? 3 : 4;
}

void Weather::replace(int part, Date day) {
  Coat& coat = coats_[static_cast<std::size_t>(part)];
  coat.since = day;
  coat.start_um = fresh_start(part);
  coat.rate_um_per_year = group_rate(part) * std::exp(part_rate_ln_sd * chance_.normal());
}

void Weather::regalvanise(int part, Date day) {
  Coat& coat = coats_[static_cast<std::size_t>(part)];
  coat.since = day;
  coat.start_um = fresh_start(part);
}

void Weather::touch_up(int part, Date day) {
  Coat& coat = coats_[static_cast<std::size_t>(part)];
  coat.since = day;
  coat.start_um = 110 + 15 * chance_.normal();
}

const Weather::Offset& Weather::offset(const std::string& gauge, int site, Date day) {
  const std::string key = gauge + "/" + std::to_string(site) + "/" + to_text(day);
  const auto found = offsets_.find(key);
  if (found != offsets_.end()) return found->second;
  Offset offset{day_bias_sd_um * chance_.normal(), day_gain_sd * chance_.normal()};
  const Civil when = civil(day);
  if (gauge == "gauge_b" && when.year == drift_year) {
    offset.bias_um += 5.0 + 1.3 * static_cast<double>(when.month - 4);
  }
  return offsets_.emplace(key, offset).first->second;
}

std::vector<std::int64_t> Weather::read_coating(int part, int spot, const std::string& gauge,
                                                Date day) {
  const Offset day_offset = offset(
      gauge,
      plan_.runs[static_cast<std::size_t>(plan_.parts[static_cast<std::size_t>(part)].run)].site,
      day);
  const double left_um = coating_um(part, day);
  const double here_um = left_um + spot_sd_um * chance_.normal() + (spot > 1 ? 1.0 : 0.0);
  std::vector<std::int64_t> readings;
  for (int i = 0; i < 3; ++i) {
    double shown = 0;
    if (left_um < 2) {  // rust under the probe: a little is shown, never nothing
      shown = 2.5 + 1.2 * chance_.normal();
    } else {
      shown =
          here_um * (1 + day_offset.gain) + day_offset.bias_um + replicate_sd_um * chance_.normal();
    }
    readings.push_back(std::clamp<std::int64_t>(shown_tenth_um(shown), 10, 2900));
  }
  return readings;
}

std::vector<std::int64_t> Weather::read_foil(const std::string& gauge, int site, Date day) {
  const Offset day_offset = offset(gauge, site, day);
  std::vector<std::int64_t> readings;
  for (int i = 0; i < 3; ++i) {
    readings.push_back(shown_tenth_um(foil_um * (1 + day_offset.gain) + day_offset.bias_um +
                                      0.8 * chance_.normal()));
  }
  return readings;
}

std::vector<std::int64_t> Weather::read_wall(int part, Date day) {
  const PlannedPart& at = plan_.parts[static_cast<std::size_t>(part)];
  const auto nominal = plan_.types[static_cast<std::size_t>(at.type)].row.whole("wall_tenth_mm");
  const Date since = plan_.runs[static_cast<std::size_t>(at.run)].in_service;
  const double lost_mm =
      inside_[static_cast<std::size_t>(part)] * std::max(0.0, years_between(since, day) - 3);
  const double left = static_cast<double>(nominal) / 10 + 0.05 - lost_mm;
  std::vector<std::int64_t> readings;
  for (int i = 0; i < 3; ++i) {
    readings.push_back(std::max<std::int64_t>(20, std::llround(100 * left + 3 * chance_.normal())));
  }
  return readings;
}

Weather::Screw& Weather::screw(int part, int number) {
  const auto found = screws_.find({part, number});
  if (found != screws_.end()) return found->second;
  const PlannedPart& at = plan_.parts[static_cast<std::size_t>(part)];
  const auto target = static_cast<double>(
      plan_.types[static_cast<std::size_t>(at.type)].row.whole("torque_target_tenth_nm"));
  Screw screw;
  screw.since = date_from_civil(2017, 10, 1);
  screw.torque_tenth_nm = target * (1 + 0.05 * chance_.normal());
  screw.slackening = 0.06 * std::exp(0.6 * chance_.normal());
  return screws_.emplace(std::pair{part, number}, screw).first->second;
}

double Weather::torque_tenth_nm(int part, int number, Date day) {
  const Screw& at = screw(part, number);
  const double years = std::max(0.0, years_between(at.since, day));
  return at.torque_tenth_nm * std::exp(-at.slackening * std::pow(years, 0.6));
}

void Weather::tighten(int part, int number, Date day, double to_tenth_nm) {
  Screw& at = screw(part, number);
  at.since = day;
  at.torque_tenth_nm = to_tenth_nm * (1 + 0.02 * chance_.normal());
}

}  // namespace kneerail::demo
