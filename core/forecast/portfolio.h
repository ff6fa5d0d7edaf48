#pragma once

// The whole input of the forecast, in double with the unit in the name; what is not known has no
// value. Filled from the tables (schema/store/portfolio_store) or from a folder of CSV files
// (schema/exchange). Rates are means over the first 20 years: a first-year rate of ISO 9223 times
// H(20)/20 (see attack.h); never converted again here.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/structure/least_wall.h"

namespace kneerail::forecast {

enum class PartKind {
  post_tube,
  rail_tube,
  fitting,
  base_fixing,
  weld,
  cut_edge,
  welded_section,
  toe_board,
  infill,
  gate
};
enum class Material { zinc_coated_steel, painted_steel, aluminium, stainless, bare_steel };
enum class Exposure { unknown, open, sheltered, spray };
enum class Category { c1, c2, c3, c4, c5, cx };
enum class Quantity { coating_um, wall_mm, torque_nm, grade };
enum class Censoring { exact, about, at_least, at_most };
enum class Surface { not_said, zinc, dull, rust, paint };
enum class How { not_said, pushed, near, afar, picture };
enum class Action { replace, regalvanise, touch_up, retorque, re_erect };

/// Owner-settable numbers of the forecast, with their defaults.
struct Settings {
  double zinc_path_exponent = 0.9;    ///< b of H(t) = t^b, 0.813 to 1
  double steel_path_exponent = 0.75;  ///< 0.523 to 1
  double steel_over_zinc = 22;
  double horizon_years = 5;
};

/// The owner's rule set as it bears on one site. Absent: not set, and the words say so.
struct SiteLimits {
  std::string site;
  std::optional<double> zinc_gone_um;
  std::optional<int> replace_grade;
  /// The chance at which a limit counts as reached, by consequence of the run (1 high, 2 medium,
  /// 3 low; [0] is not used).
  std::array<std::optional<double>, 4> chance = {};
};

struct Part {
  std::string id;
  std::string site;
  std::string zone;
  std::string run;
  double chainage_m = 0;
  PartKind kind = PartKind::fitting;
  Material material = Material::zinc_coated_steel;
  bool painted = false;  ///< zinc plus paint
  Exposure exposure = Exposure::unknown;
  std::optional<Category> category;
  std::optional<double> zinc_rate_um_per_year;  ///< 20-year mean before any reading
  bool prior_is_category = false;
  std::optional<double> zinc_rate_ln_sd;  ///< shown, not used by the fit
  std::optional<Date> installed;
  std::optional<double> nominal_coating_um;
  std::optional<double> first_maintenance_um;
  int reference_areas = 1;
  std::optional<double> wall_nominal_mm;
  std::optional<double> wall_limit_mm;
  std::optional<double> steel_rate_um_per_year;  ///< 20-year mean
  std::optional<double> torque_target_nm;
  std::optional<double> torque_minimum_nm;
  /// What the tube has to carry, where the owner said so: its least wall is reckoned from this, and
  /// governs where wall_limit_mm is not larger.
  std::optional<structure::LoadedTube> carries;
  bool yield_assumed = false;  ///< nobody said of which steel it is: taken as the weakest
  /// Why a tube has no `carries`, in words: "no load class is set for this run"; empty: not asked.
  std::string load_not_known;
  bool out_of_shape = false;  ///< dented, oval or holed: its wall no longer tells its strength
  int screws = 0;             ///< set screws of a fitting; 0: not said
  std::string component_type;
  std::string depot;
  int consequence = 0;  ///< 0 not said, 1 high, 2 medium, 3 low
};

/// The day a part was put up; none where nobody knows, or where it is said to be after the as-of
/// date: what stands there already cannot be new.
inline std::optional<Date> put_up(const Part& part, Date as_of) {
  return part.installed && *part.installed <= as_of ? part.installed : std::nullopt;
}

struct Visit {
  std::string id;
  std::string site;
  Date day;
  std::string inspector;
  std::string coating_gauge;  ///< empty: none named
  std::string wall_gauge;
  std::string wrench;
  std::optional<double> foil_true_um;
  std::optional<double> foil_read_um;
  /// A check of the coating gauge was not in order, and no later one put that right before it read.
  bool gauge_not_in_order = false;
};

/// One replicate. Parts and visits are places in the portfolio's vectors.
struct Reading {
  std::string id;
  std::int32_t part = 0;
  std::int32_t visit = 0;
  Quantity quantity = Quantity::coating_um;
  std::int16_t spot = 0;  ///< 1 ... (A = 1); torque: the screw; wall: the clock position; 0: none
  std::int16_t replicate = 1;
  Censoring censoring = Censoring::exact;
  Surface surface = Surface::not_said;
  How how = How::not_said;
  bool carried = false;        ///< a grade said again as last time
  double value = 0;            ///< put right by certificate and doubts of its instrument
  double certificate_add = 0;  ///< what its instrument's calibration added to it
  std::optional<double> wrench_set_nm;
  std::optional<Date>
      seen;  ///< where the reading has a time of its own, its day; else the visit's holds
};

struct Work {
  std::int32_t part = 0;
  Date day;
  Action action = Action::retorque;
  std::optional<double> new_nominal_coating_um;
  std::optional<double> as_left_nm;
  std::int16_t screw = 0;  ///< 0: all screws of the part
  bool same_part_unsure =
      false;  ///< came back from a strike and it was not said that it is the same part
};

/// A reading that was kept back, with the reason code (void, held, in_doubt, paint_alone,
/// layers_together, not_zinc, no_coating_model, unit_mm, too_large, ...).
struct LeftOut {
  std::string reading;
  std::string part;
  std::string reason;
};

/// A report that was issued of a site.
struct IssuedReport {
  std::string site;
  Date day;
};

struct Portfolio {
  Date as_of;
  Settings settings;
  std::vector<SiteLimits> limits;
  std::vector<Part> parts;    ///< ascending by id
  std::vector<Visit> visits;  ///< ascending by id
  std::vector<Reading> readings;
  std::vector<Work> works;
  std::vector<LeftOut> left_out;
  std::vector<IssuedReport> reports;  ///< by site, then day
  std::vector<std::string> sites_asked;
  std::vector<std::string> sites_aboard;
};

}  // namespace kneerail::forecast
