#include "core/forecast/decisions/measure_first.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "core/forecast/decisions/chances.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

bool of_coating(const LimitForecast& row) {
  return row.answered &&
         (row.limit == Limit::coating_exhausted || row.limit == Limit::coating_first_maintenance);
}

/// What one part's coating rows say of the worth of reading it.
struct Candidate {
  std::int32_t part = 0;
  double open = 1;    ///< share of the rate's variance that its own readings leave open
  double chance = 0;  ///< of a limit within two visits
  bool measured = false;
  [[nodiscard]] double worth() const { return open * chance; }
};

class Chooser {
 public:
  Chooser(const Portfolio& portfolio, const std::vector<LimitForecast>& rows,
          const MeasureQuestion& question)
      : portfolio_(portfolio), question_(question) {
    for (const LimitForecast& row : rows) {
      if (!of_coating(row) || part_of(row.part).site != question.site) continue;
      Candidate& own = candidates_[part_of(row.part).id];
      own.part = row.part;
      own.open = 1 - row.own_share;
      own.chance = std::max(own.chance, chance_within(row, question.years_of_two_visits));
      own.measured = own.measured || row.readings_used > 0;
    }
  }

  std::vector<ToMeasure> chosen() {
    add_open_and_near();
    add_runs_never_measured();
    add_ties();
    return std::move(chosen_);
  }

 private:
  [[nodiscard]] const Part& part_of(std::int32_t part) const {
    return portfolio_.parts[static_cast<std::size_t>(part)];
  }

  void add_open_and_near() {
    std::vector<const Candidate*> order;
    std::map<std::string, std::size_t> in_zone;
    for (const auto& [id, candidate] : candidates_) {
      order.push_back(&candidate);
      ++in_zone[part_of(candidate.part).zone];
    }
    std::stable_sort(order.begin(), order.end(), [](const Candidate* a, const Candidate* b) {
      return a->worth() > b->worth();
    });
    std::map<std::string, std::size_t> taken;
    for (const Candidate* candidate : order) {
      const std::string& zone = part_of(candidate->part).zone;
      const double most =
          std::ceil(question_.share_of_a_zone * static_cast<double>(in_zone[zone]) - 1e-9);
      if (static_cast<double>(taken[zone]) >= most || candidate->worth() <= 0) continue;
      ++taken[zone];
      add(candidate->part, WhyMeasure::open_and_near, candidate->worth(),
          chance_words(candidate->chance) + " to reach a coating limit in two visits, and " +
              chance_words(candidate->open) + " of its rate still open");
    }
  }

  void add_runs_never_measured() {
    std::map<std::string, std::int32_t> first_of;
    std::set<std::string> measured;
    for (const auto& [id, candidate] : candidates_) {
      const std::string& run = part_of(candidate.part).run;
      if (candidate.measured || taken_.contains(candidate.part)) measured.insert(run);
      first_of.emplace(run, candidate.part);
    }
    for (const auto& [run, part] : first_of)
      if (!measured.contains(run))
        add(part, WhyMeasure::run_never_measured, 0, "nobody has measured a part of its run");
  }

  /// The part that a gauge measured most often: the best tie between its days.
  void add_ties() {
    std::map<std::string, std::map<std::string, std::set<std::int32_t>>> visits_of;
    for (const Reading& reading : portfolio_.readings) {
      const Visit& visit = portfolio_.visits[static_cast<std::size_t>(reading.visit)];
      const std::string& id = part_of(reading.part).id;
      if (reading.quantity != Quantity::coating_um || visit.coating_gauge.empty()) continue;
      if (candidates_.contains(id)) visits_of[visit.coating_gauge][id].insert(reading.visit);
    }
    for (const auto& [gauge, by_part] : visits_of) {
      const bool tied = std::any_of(by_part.begin(), by_part.end(), [&](const auto& own) {
        return taken_.contains(candidates_.at(own.first).part);
      });
      if (tied) continue;
      const auto best =
          std::max_element(by_part.begin(), by_part.end(), [](const auto& a, const auto& b) {
            return std::tuple(a.second.size(), b.first) < std::tuple(b.second.size(), a.first);
          });
      add(candidates_.at(best->first).part, WhyMeasure::ties_a_gauge, 0,
          "gauge " + gauge + " has measured it before");
    }
  }

  void add(std::int32_t part, WhyMeasure why, double worth, std::string words) {
    if (taken_.insert(part).second) chosen_.push_back({part, why, worth, std::move(words)});
  }

  const Portfolio& portfolio_;
  const MeasureQuestion& question_;
  std::map<std::string, Candidate> candidates_;  ///< by the part's identifier
  std::set<std::int32_t> taken_;
  std::vector<ToMeasure> chosen_;
};

}  // namespace

std::vector<ToMeasure> measure_first(const Portfolio& portfolio,
                                     const std::vector<LimitForecast>& rows,
                                     const MeasureQuestion& question) {
  return Chooser(portfolio, rows, question).chosen();
}

}  // namespace kneerail::forecast
