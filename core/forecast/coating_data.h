#pragma once

// The portfolio as the coating model sees it: sites with their sessions, zones, runs and parts;
// parts with their segments (from one new start of the coating to the next); segments with their
// visit means. Everything lies in order of identifiers, so that sums are the same whatever the
// order of the input.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/corrosion/attack.h"
#include "core/forecast/portfolio.h"

namespace kneerail::forecast {

/// What was seen where a thickness was read.
enum class SeenSurface : std::int8_t { nothing, zinc, rust };

/// The mean of a part's readings in one session.
struct VisitMean {
  Date day;
  std::int32_t session = 0;  ///< place in CoatingData::sessions
  double thickness_um = 0;
  double effective_age = 0;   ///< years since the segment's start, as the path counts them
  double known_variance = 0;  ///< of areas not measured and of replicates, um^2
  double weight = 1;          ///< under 1: does not fit
  float ln_rust_odds = 0;     ///< that it was read on rust, before the part's other readings
  bool gone = false;          ///< the gauge read bare metal: thickness below 7 um, no number
  std::int8_t grade = 0;      ///< the worst of the part on that day; 0: none
  SeenSurface surface = SeenSurface::nothing;
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
  bool first_coating = false;       ///< shares the batch of its run
  bool after_swap = false;          ///< begins at a replacement nobody recorded
  bool may_be_rust = false;         ///< has a reading that may be of rust
  std::int16_t over_rust = 0;       ///< so many of its last visits were read on rust: no numbers
  std::int16_t over_rust_next = 0;  ///< the next best such count ...
  float next_share = 0;             ///< ... and how likely it is beside the best
  std::int32_t visible = 0;         ///< visit means the fit may see; the rest are hidden from it
};

/// Whether the visit mean at a place in CoatingData::means is one of its segment's read on rust.
inline bool read_on_rust(const Segment& segment, std::int32_t place) {
  return place >= segment.first + segment.count - segment.over_rust;
}

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
  std::string inspector_name;   ///< empty: none named, or several
  std::int32_t inspector = -1;  ///< place in CoatingData::inspectors; -1: habits are not looked for
  bool not_in_order = false;    ///< a check of the gauge said so (portfolio.h, Visit)
};

/// The class that a zone's parts name.
struct ZoneClass {
  Category category = Category::c1;
  double ln_upper_over_prior = 0;  ///< its upper bound over the prior rate, like with like
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
  std::vector<std::int32_t> zone_sessions;             ///< sessions that read in each zone
  std::vector<std::optional<ZoneClass>> zone_classes;  ///< of the first part that names one
  std::vector<std::string> runs;
};

struct CoatingData {
  Date as_of;
  corrosion::AttackPath path{0.9};
  double replicate_sd_um = 0;
  double area_sd_um = 0;
  /// How well the classes' rates are known, over what the first spreads of site and zone stand for.
  double class_ratio = 1;
  std::array<double, 6> rust_chance{};  ///< by grade, as far as grades tell of the thickness here
  std::vector<std::string> inspectors;  ///< those whose habits are looked for; sorted
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
