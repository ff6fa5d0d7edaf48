#pragma once

// The forecast of the two coating limits for a whole portfolio: remaining life with its
// uncertainty, and the reason in words. Model: each part starts with a coating thickness and loses
// it at its own positive rate; parts in the same run, zone and site lend each other knowledge, and
// every day's gauge has its own offset shared by all it measured.
//
// Steps: preparation.h (what is read), stage_one.h and shared_effects.h (what parts share), rust.h
// (which readings are of rust), swaps.h (replacements nobody recorded), back_dated.h (how wide the
// bands must be), posterior.h and predictive.h (one part). Units: um, years, um a year over the
// first 20 years. Source: ISO 9223 and 9224:2012 for classes and the path of attack; the model and
// its numbers (constants.h) were chosen on invented portfolios with known truth.
//
// Limits: the date is that of the average of the places measured, first rust comes earlier; parts
// that stand in water nobody recorded are foretold too late until they are measured; a gauge that
// drifts at all visits of a site cannot be told from zinc that does; what was built to be kept on
// the safe side is a little wide where gauges, grades and records are good.

#include <array>
#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/limit.h"
#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

/// The chances of which a row gives the years.
inline constexpr std::array<double, 7> quantile_levels{0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95};
/// The years after the as-of date of which a row gives the chance.
inline constexpr std::array<double, 4> chance_years{0, 1, 2, 5};

/// A chance and the years from the as-of date until it is reached.
struct ChanceAt {
  double chance = 0;
  double years = 0;
};

/// A grade as somebody saw it.
struct SeenGrade {
  int grade = 0;
  Date day;
};

/// The time to one limit for one part. Years count from the as-of date; negative: already past;
/// inf: no upper bound.
struct LimitForecast {
  std::int32_t part = 0;  ///< place in Portfolio::parts
  Limit limit = Limit::coating_exhausted;
  bool answered = false;
  bool has_years = true;  ///< false: only chances by date are said, `years` and rates are not
  std::array<double, 7> years{};  ///< 5, 10, 25, 50, 75, 90, 95 %; never falling
  /// Of a grade's row: chances of true grades 1 to 5 now; such a row has no rates and thicknesses.
  std::optional<std::array<double, 5>> grades_now;
  std::optional<SeenGrade> seen;  ///< of a grade's row: what counts as seen last
  std::vector<ChanceAt> later;    ///< of a row without years: what is known beyond `p_by`, rising
  std::array<double, 4>
      p_by{};  ///< chance the limit is reached by the as-of date, 1, 2 and 5 years after
  std::optional<double> p_on;  ///< by the date asked, where one was
  int readings_used = 0;       ///< visit means of the current segment
  double own_share = 0;  ///< share of the rate's information from the part's own readings, 0 to 1
  std::array<double, 3> rate_um_per_year{};  ///< 10, 50, 90 %; 20-year mean
  double start_um = 0;
  double now_um = 0;                 ///< median coating on the as-of date
  double session_correction_um = 0;  ///< of the last reading
  std::string words;                 ///< how well founded, in plain words
  std::string sentence;  ///< the reason: life with its 80 % interval, rate, class, neighbours, what
                         ///< was corrected
  std::vector<std::string> flags;
};

/// One row of the back-dated forecast: readings hidden from a date on, against what had been said
/// of them.
struct TrackRecord {
  std::string site;     ///< "all" for the whole
  std::string horizon;  ///< "all", "to 2 yr", "2 to 5 yr", "over 5 yr"
  /// Parts by what had been read of them before: "all", "no reading before", "1 reading before",
  /// "2 to 3 readings before", "4 and more readings before". Only one of this and `horizon`
  /// divides.
  std::string stratum = "all";
  std::optional<Date> issued =
      {};  ///< day of the report that is judged; none: a back-dated forecast
  int readings = 0;
  int sessions = 0;
  double inside_50 = 0;
  double inside_80 = 0;
  double inside_90 = 0;
  double spread_scale = 1;
  std::string words;
};

struct SessionReport {
  std::string site;
  std::string gauge;
  Date day;
  double offset_um = 0;  ///< at 50 um
  double gain = 0;
  std::string words;  ///< of the offset; empty: nothing to say
  /// Of a check of the gauge that was not in order; its readings count all the same, with what the
  /// foil says of them. Empty: none was.
  std::string check_words;
};

struct CoatingForecast {
  std::vector<LimitForecast> limits;  ///< by part id, then limit
  std::vector<TrackRecord> track_record;
  std::vector<SessionReport> sessions;
  std::vector<LeftOut> left_out;  ///< with those of the portfolio
  std::vector<std::string>
      notes;  ///< about a zone, a site or the whole: "zone z4 likely faster than C4", "not settled"
  double largest_move = 0;  ///< of a site or zone effect in the last pass, ln units
};

struct RunOptions {
  int threads = 0;  ///< 0: as many as the machine has
  int passes = 0;   ///< 0: 30 up to 20,000 parts, else 10
  bool track_record = true;
  std::optional<Date> on = {};  ///< a date to give the chance for, not before the as-of date
  /// Set from any thread, it ends the run at the next part or site. None: the run cannot be
  /// stopped.
  const std::atomic<bool>* stop = nullptr;
};

/// Errors: not_estimable (no part that the model serves), with the reason in words; cancelled when
/// it was stopped.
/// The same portfolio gives the same digits whatever the order of its rows and the number of
/// threads.
Result<CoatingForecast> forecast_coating(const Portfolio& portfolio,
                                         const RunOptions& options = {});

}  // namespace kneerail::forecast
