#pragma once

// The steps between the readings of a portfolio and the segments of the coating model; see
// preparation.h for the whole.

#include <vector>

#include "core/forecast/coating_gathering.h"

namespace kneerail::forecast {

/// One replicate that the model may use.
struct UsedReading {
  std::int32_t part = 0;     ///< place in CoatingData::parts
  std::int32_t session = 0;  ///< place in CoatingData::sessions
  std::int32_t place = 0;    ///< in Portfolio::readings
  std::int16_t spot = 0;
  std::int16_t replicate = 0;
  SeenSurface surface = SeenSurface::nothing;
  double value_um = 0;
};

/// A visit mean with the counts its error variance hangs on.
struct CountedMean {
  std::int32_t part = 0;
  std::int32_t session = 0;
  std::int32_t replicates = 0;
  std::int32_t spots = 0;
  SeenSurface surface = SeenSurface::nothing;  ///< rust where any reading said so
  double thickness_um = 0;
};

/// The worst grade of a part on a day.
struct DayGrade {
  std::int32_t part = 0;  ///< place in CoatingData::parts
  Date day;
  std::int8_t grade = 0;
};

/// What a session is named after: the coating gauge, or who read where none is named.
std::string gauge_name(const Visit& visit);

/// Fills sites, parts, zones with their classes, and runs of `data` with what the model serves.
void lay_out_parts(const Portfolio& portfolio, CoatingData& data);

/// The coating readings of served parts, ascending by part, day, session, spot, replicate, value;
/// fills data.sessions, and data.left_out with every coating reading that is not used.
std::vector<UsedReading> used_readings(const Portfolio& portfolio, GatheredCoating& into);

/// Takes out the readings of sessions whose unit is likely wrong: read against the same parts'
/// other visits, the whole session is off by a factor that one unit has to another. Notes each.
void hold_wrong_units(const Portfolio& portfolio, GatheredCoating& into,
                      std::vector<UsedReading>& readings);

/// Asks about a unit that most of the readings seem to be in, once they are in segments.
void note_odd_file(const GatheredNotes& gathered, CoatingData& data);

/// Takes out single readings in millimetres and those thicker than any coating.
void leave_out_slips(const Portfolio& portfolio, GatheredCoating& into,
                     std::vector<UsedReading>& readings);

/// Median of replicates, mean of spots; fills `sums`, of data.sites, with what repeats tell.
std::vector<CountedMean> visit_means(const std::vector<UsedReading>& readings,
                                     const CoatingData& data, std::vector<SiteSums>& sums);

/// Estimates data.replicate_sd_um and data.area_sd_um.
void estimate_repeats(const std::vector<SiteSums>& sums, CoatingData& data);

/// The grades of served parts, ascending by part and day, each day once.
std::vector<DayGrade> day_grades(const Portfolio& portfolio, const CoatingData& data);

/// Cuts each part's visit means at its works, marks those that read bare metal, and notes the grade
/// of the day beside each; what the error variance hangs on goes to `counts`.
void build_segments(const Portfolio& portfolio, const std::vector<CountedMean>& means,
                    const std::vector<DayGrade>& grades, CoatingData& data,
                    std::vector<MeanCounts>& counts);

/// From the first mean of a segment that reads bare metal on, what follows is no number unless it
/// is zinc again.
void mark_gone(std::vector<VisitMean>& means, const Segment& segment);

/// Place in CoatingData::parts of each part of the portfolio; -1: not served.
std::vector<std::int32_t> served_index(const Portfolio& portfolio, const CoatingData& data);

/// The day a reading was taken.
Date day_of(const Portfolio& portfolio, const Reading& reading);

/// Keeps a reading back with its reason.
void leave_out(const Portfolio& portfolio, std::int32_t reading, const char* reason,
               CoatingData& data);

double median(std::vector<double> values);

}  // namespace kneerail::forecast
