#pragma once

// Torque readings as the set-screw model sees them: fittings with their screws, screws with their
// tightenings (from one restart to the next), tightenings with the readings found in between.
//
// The clock of a screw restarts at retorque, re_erect, replace and, where an as-left torque is
// recorded, regalvanise; for the screw named or, with none named, for all screws of the part. A
// wrench that clicked without movement restarts nothing. A reading on the day of a restart was
// found before it. A screw exists when a reading or a work names it or the register counts it; a
// part with none of these has one.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/forecast/portfolio.h"
#include "core/forecast/start_dates.h"

namespace kneerail::forecast {

enum class TorqueFound {
  clicked,  ///< held at least that much
  moved,    ///< moved at about that much
  free      ///< moved under that much, no mark
};

struct FoundTorque {
  Date day;
  TorqueFound found = TorqueFound::clicked;
  double torque_nm = 0;
  std::optional<double> wrench_set_nm;  ///< what the wrench clicks at
};

struct Tightening {
  double as_left_nm = 0;  ///< 0: neither recorded nor a target known; it teaches nothing
  int strikes = 0;        ///< re-erected so many times since the part was new
  bool started = true;    ///< false: the day is not known, `starts` are equally likely
  std::vector<Date> starts;
  std::vector<FoundTorque> readings;  ///< by day
};

struct Screw {
  std::int16_t number = 0;              ///< 0: not said which
  std::vector<Tightening> tightenings;  ///< by start; the last one is the current one
};

struct Fitting {
  std::int32_t place = 0;  ///< in Portfolio::parts
  std::int32_t zone = 0;   ///< within the site
  std::int32_t run = 0;    ///< within the site
  std::optional<double> target_nm;
  std::vector<Screw> screws;
  int readings = 0;  ///< used, of all tightenings
};

struct ScrewSite {
  std::string name;
  std::int32_t first_fitting = 0;
  std::int32_t fittings = 0;
  std::vector<std::string> zones;
  std::vector<std::string> runs;
  std::vector<char> zone_measured;  ///< 1: a screw of the zone moved at a reading
};

/// A click value with its share among the commonest ones.
struct UsualSetting {
  double torque_nm = 0;
  double share = 0;
};

struct ScrewData {
  Date as_of;
  std::vector<ScrewSite> sites;
  std::vector<Fitting> fittings;             ///< by site, then part id
  std::vector<UsualSetting> usual_settings;  ///< sum of shares 1; empty: nothing ever clicked
  std::vector<LeftOut> left_out;
  int readings = 0;
  int without_setting = 0;  ///< moved readings whose wrench setting is not recorded
};

/// Whether the part gets a row: a fitting, or another fixing with a torque target, minimum or
/// reading. Welds, cut edges, toe boards, infill and gates are judged by their grade.
bool has_set_screws(const Part& part);

/// Reasons of readings left out: after_as_of, before_installed, day_of_restart, no_torque (not a
/// number, negative), no_torque_target (as-left torque unknown).
ScrewData gather_tightenings(const Portfolio& portfolio);
/// The same, where the dates that stand in for unknown ones are those of another portfolio.
ScrewData gather_tightenings(const Portfolio& portfolio, const InstalledDates& installed);
/// What was gathered of many portfolios, none with a site of another, as of one. Places of parts in
/// their portfolios stay as they are.
ScrewData joined(std::vector<ScrewData> pieces);

}  // namespace kneerail::forecast
