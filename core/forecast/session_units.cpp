// A gauge set to thousandths of an inch, or a session typed in millimetres, is off by the same
// factor on every part: seen against the same parts' other visits.

#include <algorithm>
#include <cmath>
#include <set>
#include <string_view>

#include "core/forecast/coating_readings.h"
#include "core/forecast/constants.h"
#include "core/forecast/preparation.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

/// What one session reads on its parts against their other visits.
struct Ratios {
  std::vector<double> ln_ratio;       ///< over the median of the part's other visits
  std::vector<double> own_oddness;    ///< |ln| of the reading over the nominal thickness
  std::vector<double> other_oddness;  ///< the same of the other visits
};

struct PartVisit {
  std::int32_t session;
  double value_um;
};

double usual_um(const Part& part) {
  return thickness_um(part.nominal_coating_um).value_or(constant::nominal_fitting_um);
}

void add_part(const std::vector<PartVisit>& visits, double nominal_um, std::vector<Ratios>& all) {
  if (visits.size() < 2) return;
  for (std::size_t i = 0; i < visits.size(); ++i) {
    std::vector<double> others;
    for (std::size_t j = 0; j < visits.size(); ++j)
      if (j != i) others.push_back(visits[j].value_um);
    const double other = median(std::move(others));
    if (visits[i].value_um <= 0 || other <= 0) continue;
    Ratios& ratios = all[static_cast<std::size_t>(visits[i].session)];
    ratios.ln_ratio.push_back(std::log(visits[i].value_um / other));
    ratios.own_oddness.push_back(std::abs(std::log(visits[i].value_um / nominal_um)));
    ratios.other_oddness.push_back(std::abs(std::log(other / nominal_um)));
  }
}

std::vector<Ratios> session_ratios(const Portfolio& portfolio, const CoatingData& data,
                                   const std::vector<UsedReading>& readings) {
  std::vector<Ratios> all(data.sessions.size());
  std::vector<PartVisit> visits;
  for (std::size_t i = 0; i < readings.size();) {
    std::size_t end = i;
    double total = 0;
    while (end < readings.size() && readings[end].part == readings[i].part &&
           readings[end].session == readings[i].session)
      total += readings[end++].value_um;
    visits.push_back({readings[i].session, total / static_cast<double>(end - i)});
    if (end == readings.size() || readings[end].part != readings[i].part) {
      const auto& part = data.parts[static_cast<std::size_t>(readings[i].part)];
      add_part(visits, usual_um(portfolio.parts[static_cast<std::size_t>(part.place)]), all);
      visits.clear();
    }
    i = end;
  }
  return all;
}

/// Off by a factor between units; and of two sessions that differ by one, the odder.
bool wrong_unit(const Ratios& ratios) {
  if (ratios.ln_ratio.size() < constant::unit_parts_least) return false;
  const double middle = median(ratios.ln_ratio);
  const bool a_unit =
      std::any_of(constant::unit_factors.begin(), constant::unit_factors.end(), [&](double factor) {
        return std::abs(middle - std::log(factor)) < constant::unit_distance_ln;
      });
  if (!a_unit) return false;
  std::vector<double> off;
  for (const double ratio : ratios.ln_ratio) off.push_back(std::abs(ratio - middle));
  return median(std::move(off)) < constant::unit_spread_ln &&
         median(ratios.own_oddness) > median(ratios.other_oddness);
}

/// Most of the readings kept back as slips of the unit: a slip of the whole file, not of a hand.
void note_slips(std::int64_t slips, std::string_view looks, std::int64_t readings,
                CoatingData& data) {
  if (2 * slips <= readings) return;
  data.notes.push_back(
      concat({std::to_string(slips), " of ", std::to_string(readings), " coating readings look ",
              looks, "; kept back, none corrected. Which unit is the file in?"}));
}

/// ln of each segment's first reading over what its class and age lead to expect, where that is
/// thick enough to tell.
std::vector<double> first_over_expected(const CoatingData& data) {
  std::vector<double> out;
  for (const Segment& segment : data.segments) {
    if (segment.count == 0 || segment.start_kind == StartKind::touched_up) continue;
    const VisitMean& first = data.means[static_cast<std::size_t>(segment.first)];
    const CoatingPart& part = data.parts[static_cast<std::size_t>(segment.part)];
    const double expected =
        segment.start_kind == StartKind::unknown
            ? constant::unknown_start_ratio * segment.nominal_um
            : segment.nominal_um - std::exp(part.ln_prior) * first.effective_age;
    if (first.thickness_um > 0 && expected > constant::unit_expected_share * segment.nominal_um)
      out.push_back(std::log(first.thickness_um / expected));
  }
  return out;
}

}  // namespace

void hold_wrong_units(const Portfolio& portfolio, GatheredCoating& into,
                      std::vector<UsedReading>& readings) {
  CoatingData& data = into.data;
  const auto all = session_ratios(portfolio, data, readings);
  std::set<std::int32_t> held;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!wrong_unit(all[i])) continue;
    held.insert(static_cast<std::int32_t>(i));
    const Session& session = data.sessions[i];
    into.notes.units.push_back(
        "site " + data.sites[static_cast<std::size_t>(session.site)].name +
        ": all readings of gauge " + session.gauge + " on " + to_text(session.day) +
        " look as if in another unit; held back. Which unit was the gauge set to?");
  }
  std::erase_if(readings, [&](const UsedReading& reading) {
    const bool out = held.contains(reading.session);
    if (out) leave_out(portfolio, reading.place, "session_unit", data);
    return out;
  });
}

void note_odd_file(const GatheredNotes& gathered, CoatingData& data) {
  note_slips(gathered.millimetres, "like millimetres", gathered.readings, data);
  note_slips(gathered.too_thick, "thicker than any coating", gathered.readings, data);
  std::vector<double> ratios = first_over_expected(data);
  if (ratios.size() < constant::unit_parts_least) return;
  const double middle = median(ratios);
  if (std::abs(middle - std::log(1 / 25.4)) >= constant::unit_distance_ln) return;
  for (double& ratio : ratios) ratio = std::abs(ratio - middle);
  if (median(std::move(ratios)) < constant::unit_spread_ln)
    data.notes.push_back(
        "all coating readings look like thousandths of an inch; reckoned as they are written, none "
        "corrected. Which unit is the file in?");
}

}  // namespace kneerail::forecast
