#pragma once

// The portfolio as the coating model sees it: sites with their sessions, zones, runs and parts;
// parts with their segments (from one new start of the coating to the next); segments with their
// visit means. Everything lies in order of identifiers, so that sums are the same whatever the
// order of the input.

#include <cstdint>
#include <string>
#include <vector>

#include "core/corrosion/attack.h"
#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

/// The mean of a part's readings in one session.
struct VisitMean {
  Date day;
  std::int32_t session = 0;  ///< place in CoatingData::sessions
  double thickness_um = 0;
  double effective_age = 0;   ///< years since the segment's start, as the path counts them
  double known_variance = 0;  ///< of areas not measured and of replicates, um^2
  double weight = 1;          ///< under 1: does not fit
  bool gone = false;          ///< the gauge read bare metal: thickness below 7 um, no number
};

enum class StartKind { known, unknown, touched_up };

/// A coating from its start to its replacement.
struct Segment {
  std::int32_t part = 0;   ///< place in CoatingData::parts
  std::int32_t first = 0;  ///< place in CoatingData::means
  std::int32_t count = 0;
  Date start;  ///< unknown start: the first visit
  double nominal_um = 0;
  StartKind start_kind = StartKind::known;
  bool first_coating = false;  ///< shares the batch of its run
  bool after_swap = false;     ///< begins at a replacement nobody recorded
  std::int32_t visible = 0;    ///< visit means the fit may see; the rest are hidden from it
};

struct CoatingPart {
  std::int32_t place = 0;  ///< in Portfolio::parts
  std::int32_t site = 0;
  std::int32_t zone = 0;  ///< within the site
  std::int32_t run = 0;   ///< within the site
  std::int8_t kind = 0;   ///< PartKind up to base_fixing
  Exposure exposure = Exposure::unknown;
  bool teaches = true;  ///< its readings tell about its zone; false under paint
  double ln_prior = 0;  ///< ln of the class's 20-year mean rate, um per year
  std::int32_t first_segment = 0;
  std::int32_t segments = 0;  ///< the last one is the current one
};

struct Foil {
  double true_um = 0;
  double read_um = 0;
};

/// One gauge on one day at one site.
struct Session {
  std::int32_t site = 0;
  Date day;
  std::string gauge;  ///< or "inspector NAME" where no gauge is named
  std::vector<Foil> foils;
};

/// Ranges into the vectors of CoatingData, and the names of what lies within the site.
struct CoatingSite {
  std::string name;
  std::int32_t first_part = 0;
  std::int32_t parts = 0;
  std::int32_t first_segment = 0;
  std::int32_t segments = 0;
  std::int32_t first_session = 0;
  std::int32_t sessions = 0;
  std::vector<std::string> zones;
  std::vector<std::int32_t> zone_sessions;  ///< sessions that read in each zone
  std::vector<std::string> runs;
};

struct CoatingData {
  Date as_of;
  corrosion::AttackPath path{0.9};
  double replicate_sd_um = 0;
  double area_sd_um = 0;
  std::vector<CoatingSite> sites;
  std::vector<CoatingPart> parts;  ///< by site, then id
  std::vector<Segment> segments;   ///< by part, then start
  std::vector<VisitMean> means;    ///< by segment, then day and session
  std::vector<Session> sessions;   ///< by site, day, gauge
  std::vector<LeftOut> left_out;
  std::vector<std::string> notes;
};

/// Age at a day counted from the segment's start, as the model counts it.
inline double effective_age(const CoatingData& data, const Segment& segment, Date day) {
  const double age = years_between(segment.start, day);
  return segment.start_kind == StartKind::unknown ? age : data.path.effective_age(age);
}

}  // namespace kneerail::forecast
