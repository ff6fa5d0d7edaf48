#pragma once

// What one part's coating has been through and where it goes, for a drawing: the readings of each
// visit, the lives of the coating, the path of its thickness with the 80 % band, and its limits.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/coating_model.h"

namespace kneerail::forecast {

/// One visit's readings of the part.
struct StorySession {
  Date day;
  std::string gauge;
  /// In order of spot and replicate: as read, and put right by the gauge's calibration and doubts.
  std::vector<double> replicates_um;
  double certificate_um = 0;   ///< of that, what the calibration added, the mean of them
  double mean_um = 0;          ///< as the fit took it
  double correction_um = 0;    ///< added to what was read, for the gauge on that day
  bool gauge_was_off = false;  ///< by more than its uncertainty explains
  bool not_in_order = false;   ///< a check of the gauge said so
  bool fits = true;            ///< false: lost most of its weight
  int life = 0;                ///< place in PartStory::lives
};

/// The coating's thickness on one day: 10, 50 and 90 %.
struct StoryPoint {
  double years = 0;  ///< from the as-of date; negative: before it
  std::array<double, 3> thickness_um{};
};

/// A coating from its start to its replacement.
struct StoryLife {
  Date start;
  StartKind start_kind = StartKind::known;
  std::optional<Action> begun_by;  ///< none: as installed, or a replacement nobody recorded
  bool after_swap = false;         ///< begins at a replacement nobody recorded
  std::vector<StoryPoint> path;    ///< to the next life's start; the last one to where it ends
};

struct StoryLimit {
  double limit_um = 0;
  LimitForecast forecast;
};

struct PartStory {
  Date as_of;
  std::vector<StorySession> sessions;  ///< by day
  std::vector<StoryLife> lives;        ///< by start; the last is the one forecast
  double usual_um_per_year = 0;        ///< of its class or zone before any reading, 20-year mean
  std::optional<Category> usual_of;    ///< the class it is of; none: the zone's own
  std::vector<StoryLimit> limits;      ///< exhausted first; only those that are answered or say why
};

/// The story of a part of the fitted portfolio; `part` is its place in Portfolio::parts.
/// Errors: not_estimable for a part the model does not serve, with the reason.
Result<PartStory> part_story(const CoatingModel& model, const Portfolio& portfolio,
                             std::int32_t part);

/// The same of one part again with readings that came after the fit, as forecast_one_part does.
Result<PartStory> story_of_one_part(const CoatingModel& model, const Portfolio& one);

/// The part alone with its readings, the visits they belong to, and its works.
Portfolio only_part(const Portfolio& portfolio, std::int32_t part);

}  // namespace kneerail::forecast
