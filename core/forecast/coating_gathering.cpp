#include "core/forecast/coating_gathering.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>
#include <utility>

#include "core/forecast/coating_readings.h"
#include "core/forecast/constants.h"
#include "core/forecast/rust.h"

namespace kneerail::forecast {

namespace {

/// A rate no class has as a mean over 20 years; under the upper end of C1 that is C1 alone.
bool of_no_class(const Part& part, double rate) {
  const bool said_c1 = part.category && *part.category == Category::c1;
  const double least = said_c1 ? constant::rate_of_c1_least : constant::rate_of_class_least;
  return rate < least || rate > constant::rate_of_class_most;
}

void count_if(bool odd, const Part& part, OddParts& parts) {
  if (odd && parts.count++ == 0) parts.first = part.id;
}

/// What parts say of their classes, and which are odd.
void look_at_parts(const Portfolio& portfolio, GatheredCoating& into) {
  for (const CoatingPart& own : into.data.parts) {
    const Part& part = portfolio.parts[static_cast<std::size_t>(own.place)];
    const auto rate = taken_rate(part);
    count_if(part.nominal_coating_um && !thickness_um(part.nominal_coating_um), part,
             into.notes.odd_nominal);
    count_if(part.zinc_rate_um_per_year && !rate, part, into.notes.rate_off_class);
    count_if(rate && of_no_class(part, *rate), part, into.notes.rate_of_no_class);
    const auto& sd = part.zinc_rate_ln_sd;
    if (sd && std::isfinite(*sd) && *sd > 0)
      into.sums[static_cast<std::size_t>(own.site)].rate_ln_sds.add(*sd);
  }
}

/// Sessions that read in each zone.
void count_zone_sessions(CoatingData& data) {
  for (CoatingSite& site : data.sites) {
    std::vector<std::set<std::int32_t>> seen(site.zones.size());
    for (int i = site.first_segment; i < site.first_segment + site.segments; ++i) {
      const Segment& segment = data.segments[static_cast<std::size_t>(i)];
      const CoatingPart& part = data.parts[static_cast<std::size_t>(segment.part)];
      for (int m = segment.first; part.teaches && m < segment.first + segment.count; ++m)
        seen[static_cast<std::size_t>(part.zone)].insert(
            data.means[static_cast<std::size_t>(m)].session);
    }
    for (const auto& sessions : seen)
      site.zone_sessions.push_back(static_cast<std::int32_t>(sessions.size()));
  }
}

/// Habits are looked for where few enough inspectors, and more than one, are named.
void name_inspectors(CoatingData& data) {
  std::set<std::string> names;
  for (const Session& session : data.sessions)
    if (!session.inspector_name.empty()) names.insert(session.inspector_name);
  const auto count = static_cast<int>(names.size());
  if (count < constant::inspectors_least || count > constant::inspectors_most) return;
  data.inspectors.assign(names.begin(), names.end());
  for (Session& session : data.sessions) {
    const auto at = std::ranges::lower_bound(data.inspectors, session.inspector_name);
    if (at != data.inspectors.end() && *at == session.inspector_name)
      session.inspector = static_cast<std::int32_t>(at - data.inspectors.begin());
  }
}

/// "3 parts have WHAT (c17 first): THEN"; nothing without one.
void note_odd(const OddParts& odd, const char* what, const char* then, CoatingData& data) {
  if (odd.count == 0) return;
  const bool one = odd.count == 1;
  data.notes.push_back(std::to_string(odd.count) + (one ? " part has " : " parts have ") + what +
                       " (" + odd.first + (one ? "): " : " first): ") + then);
}

void note_all(const GatheredNotes& notes, CoatingData& data) {
  const auto add = [&](const std::vector<std::string>& lines) {
    data.notes.insert(data.notes.end(), lines.begin(), lines.end());
  };
  add(notes.coarse_days);
  std::vector<std::string> foils = notes.foils;
  std::sort(foils.begin(), foils.end());
  // A visit of two sites is in the portfolios of both.
  foils.erase(std::unique(foils.begin(), foils.end()), foils.end());
  add(foils);
  add(notes.units);
  note_odd(notes.odd_nominal, "a nominal coating that is no thickness",
           "the usual one of its kind is taken", data);
  note_odd(notes.rate_off_class, "a rate that is none or over ten times outside its class",
           "the middle of its class is taken; are class, unit and dates right?", data);
  note_odd(notes.rate_of_no_class, "a rate that no class of air has",
           "are class, unit and dates right?", data);
}

/// Mean of the sds that the parts' rates are given with, over the usual one.
double class_ratio(const std::vector<SiteSums>& sums) {
  CountedSum sds;
  for (const SiteSums& site : sums) sds.add(site.rate_ln_sds);
  if (sds.count == 0) return 1;
  return std::clamp(sds.total / static_cast<double>(sds.count) / constant::class_ln_sd,
                    constant::class_ratio_least, constant::class_ratio_most);
}

void set_known_variances(const std::vector<MeanCounts>& counts, CoatingData& data) {
  for (std::size_t i = 0; i < counts.size(); ++i)
    data.means[i].known_variance =
        data.area_sd_um * data.area_sd_um * counts[i].area_share +
        data.replicate_sd_um * data.replicate_sd_um / counts[i].replicates;
}

std::int32_t size_of(const auto& list) {
  return static_cast<std::int32_t>(list.size());
}

/// Counts the places of a piece from where it comes to stand.
void move_places(const CoatingData& all, CoatingData& piece) {
  for (CoatingSite& site : piece.sites) {
    site.first_part += size_of(all.parts);
    site.first_segment += size_of(all.segments);
    if (site.sessions > 0) site.first_session += size_of(all.sessions);
  }
  for (CoatingPart& part : piece.parts) {
    part.site += size_of(all.sites);
    part.first_segment += size_of(all.segments);
  }
  for (Segment& segment : piece.segments) {
    segment.part += size_of(all.parts);
    segment.first += size_of(all.means);
  }
  for (VisitMean& mean : piece.means) mean.session += size_of(all.sessions);
  for (Session& session : piece.sessions) session.site += size_of(all.sites);
}

template <class T>
void append(std::vector<T>& to, std::vector<T>& from) {
  to.insert(to.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
}

void append(OddParts& to, const OddParts& from) {
  if (to.count == 0) to.first = from.first;
  to.count += from.count;
}

void append(GatheredNotes& to, GatheredNotes& from) {
  append(to.coarse_days, from.coarse_days);
  append(to.foils, from.foils);
  append(to.units, from.units);
  append(to.odd_nominal, from.odd_nominal);
  append(to.rate_off_class, from.rate_off_class);
  append(to.rate_of_no_class, from.rate_of_no_class);
  to.readings += from.readings;
  to.millimetres += from.millimetres;
  to.too_thick += from.too_thick;
}

void append(GatheredCoating& to, GatheredCoating& from) {
  move_places(to.data, from.data);
  append(to.data.sites, from.data.sites);
  append(to.data.parts, from.data.parts);
  append(to.data.segments, from.data.segments);
  append(to.data.means, from.data.means);
  append(to.data.sessions, from.data.sessions);
  append(to.data.left_out, from.data.left_out);
  append(to.counts, from.counts);
  append(to.sums, from.sums);
  append(to.notes, from.notes);
}

/// Room for all, so that no list is copied while it grows.
void make_room(const std::vector<GatheredCoating>& pieces, GatheredCoating& all) {
  std::size_t parts = 0;
  std::size_t segments = 0;
  std::size_t means = 0;
  for (const GatheredCoating& piece : pieces) {
    parts += piece.data.parts.size();
    segments += piece.data.segments.size();
    means += piece.data.means.size();
  }
  all.data.parts.reserve(parts);
  all.data.segments.reserve(segments);
  all.data.means.reserve(means);
  all.counts.reserve(means);
}

}  // namespace

Result<GatheredCoating> gather_coating(const Portfolio& portfolio) {
  const double exponent = portfolio.settings.zinc_path_exponent;
  if (!(exponent >= constant::path_exponent_least && exponent <= 1))
    return fail(Fault::invalid_input,
                "Coating forecast: the path exponent of zinc must lie between 0.5 and 1. Nothing "
                "was computed. Correct the setting; 0.9 is the default.");
  GatheredCoating out;
  CoatingData& data = out.data;
  data.as_of = portfolio.as_of;
  data.path = corrosion::AttackPath(exponent);
  lay_out_parts(portfolio, data);
  out.sums.resize(data.sites.size());
  out.notes.readings =
      std::ranges::count(portfolio.readings, Quantity::coating_um, &Reading::quantity);
  auto readings = used_readings(portfolio, out);
  hold_wrong_units(portfolio, out, readings);
  leave_out_slips(portfolio, out, readings);
  look_at_parts(portfolio, out);
  const auto means = visit_means(readings, data, out.sums);
  build_segments(portfolio, means, day_grades(portfolio, data), data, out.counts);
  count_zone_sessions(data);
  data.segments.shrink_to_fit();
  data.means.shrink_to_fit();
  out.counts.shrink_to_fit();
  return out;
}

GatheredCoating joined(std::vector<GatheredCoating> pieces) {
  std::ranges::sort(pieces, {}, [](const GatheredCoating& piece) {
    return piece.data.sites.empty() ? std::string() : piece.data.sites.front().name;
  });
  GatheredCoating all;
  if (pieces.empty()) return all;
  all.data.as_of = pieces.front().data.as_of;
  all.data.path = pieces.front().data.path;
  make_room(pieces, all);
  for (GatheredCoating& piece : pieces) {
    append(all, piece);
    piece = {};
  }
  return all;
}

Result<CoatingData> estimate_coating(GatheredCoating gathered, std::optional<LearntBefore> known) {
  CoatingData data = std::move(gathered.data);
  if (data.parts.empty())
    return fail(Fault::not_estimable,
                "Coating forecast: no part with a zinc coating, its class or rate known, is in "
                "the portfolio. Nothing was computed. Give the zones their corrosivity class and "
                "the parts their material.");
  name_inspectors(data);
  note_all(gathered.notes, data);
  data.class_ratio = known ? known->class_ratio : class_ratio(gathered.sums);
  estimate_repeats(gathered.sums, data);
  if (known) {
    data.replicate_sd_um = known->replicate_sd_um;
    data.area_sd_um = known->area_sd_um;
  }
  set_known_variances(gathered.counts, data);
  data.rust_chance = known ? known->rust_chance : rust_chance(data);
  note_rust_odds(data);
  note_odd_file(gathered.notes, data);
  std::sort(data.left_out.begin(), data.left_out.end(), [](const LeftOut& a, const LeftOut& b) {
    return std::tie(a.part, a.reading, a.reason) < std::tie(b.part, b.reading, b.reason);
  });
  return data;
}

}  // namespace kneerail::forecast
