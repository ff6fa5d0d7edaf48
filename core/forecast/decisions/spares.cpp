#include "core/forecast/decisions/spares.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <tuple>
#include <vector>

#include "core/base/date.h"
#include "core/base/text.h"
#include "core/forecast/decisions/mean_words.h"
#include "core/forecast/decisions/part_order.h"
#include "core/forecast/words.h"
#include "core/statistics/counts.h"

namespace kneerail::forecast {

namespace {

/// Parts of one type that one depot serves.
struct Served {
  std::vector<std::int32_t> parts;
  std::map<std::string, int> in_seasonal_runs;
  double chance = 0;                 ///< the highest under 1 that one of its sites asks for
  std::set<std::string> sure_sites;  ///< those that ask for 1
};

constexpr double least_said = 0.1;  // of parts that may be past unseen

using DepotAndType = std::pair<std::string, std::string>;

class SpareCounter {
 public:
  SpareCounter(const Replacements& replacements, const OwnerFigures& figures,
               const Workers& workers)
      : replacements_(replacements), figures_(figures), workers_(workers) {
    const Portfolio& portfolio = replacements.portfolio();
    for (const std::int32_t place : parts_in_order(portfolio, {})) {
      const Part& part = portfolio.parts[static_cast<std::size_t>(place)];
      if (part.component_type.empty()) continue;
      Served& served = served_[{part.depot, part.component_type}];
      served.parts.push_back(place);
      if (figures.seasonal_runs.contains(part.run) && !stays_up(part))
        ++served.in_seasonal_runs[part.run];
      if (const auto site = figures.sites.find(part.site); site != figures.sites.end()) {
        const double chance = site->second.spare_chance.value_or(0);
        if (chance < 1)
          served.chance = std::max(served.chance, chance);
        else
          served.sure_sites.insert(part.site);
      }
    }
  }

  Result<std::vector<SpareLine>> run() const {
    std::vector<SpareLine> lines;
    for (const auto& [key, served] : served_) {
      lines.push_back(line(key, served));
      if (workers_.stopped())
        return fail(Fault::cancelled, "Spares: stopped before their end. Nothing was changed.");
    }
    std::stable_sort(lines.begin(), lines.end(), [](const SpareLine& a, const SpareLine& b) {
      return std::tuple(a.depot, -a.expected) < std::tuple(b.depot, -b.expected);
    });
    return lines;
  }

 private:
  /// Its run was struck, and nothing of its type was on the list.
  [[nodiscard]] bool stays_up(const Part& part) const {
    const auto struck = figures_.struck_types.find(part.run);
    return struck != figures_.struck_types.end() && !struck->second.contains(part.component_type);
  }

  [[nodiscard]] SpareLine line(const DepotAndType& key, const Served& served) const {
    SpareLine made;
    made.depot = key.first;
    made.type = key.second;
    made.parts = static_cast<int>(served.parts.size());
    if (const auto shelf = figures_.on_shelf.find(key); shelf != figures_.on_shelf.end())
      made.shelf = static_cast<int>(shelf->second);
    if (const auto ordered = figures_.on_order.find(key); ordered != figures_.on_order.end())
      made.on_order = static_cast<int>(ordered->second);
    const auto type = figures_.types.find(key.second);
    if (type == figures_.types.end() || !type->second.lead_time_days) {
      made.words = "no lead time is set";
      return made;
    }
    count(served, type->second, made);
    if (made.not_answered == made.parts) {
      made.words = "neither a wall nor a grade is reckoned of them";
      return made;
    }
    made.sure_sites = static_cast<int>(served.sure_sites.size());
    if (served.chance <= 0) {
      made.words = made.sure_sites == 0
                       ? "no chance of having the spare is set"
                       : "a chance of 100 % needs more than any number; set one under it";
      return made;
    }
    made.hold = spares_to_hold(made.means, served.chance);
    made.enough = enough_chance(made.means, *made.hold);
    made.order = std::max(0, *made.hold + made.past - made.shelf.value_or(0) - made.on_order);
    made.words = words(made, *type->second.lead_time_days, served.chance);
    return made;
  }

  void count(const Served& served, const TypeFigures& type, SpareLine& made) const {
    const std::array<double, 2> years{0, std::max(0.0, *type.lead_time_days) / days_per_year};
    std::vector<PartReplacement> reached(served.parts.size());
    for_each_unit(made.parts, workers_, [&](int i) {
      const auto place = static_cast<std::size_t>(i);
      reached[place] = replacements_.of(served.parts[place], years);
    });
    int largest = 0;
    for (const auto& [run, parts] : served.in_seasonal_runs) largest = std::max(largest, parts);
    made.by_strike = (2.0 + static_cast<double>(type.replaced_at_re_erecting)) /
                     (100.0 + static_cast<double>(type.struck)) * largest;
    made.means.assign(static_cast<std::size_t>(replacements_.draws()), made.by_strike);
    for (const PartReplacement& part : reached) {
      made.past += part.past ? 1 : 0;
      made.not_answered += part.why == ReplacedFor::nothing ? 1 : 0;
      made.by_grade_alone += part.why == ReplacedFor::grade && !part.wall_not_said.empty() ? 1 : 0;
      if (part.past || part.why == ReplacedFor::nothing) continue;
      made.may_be_past += part.reached.by.front();
      for (std::size_t d = 0; d < made.means.size(); ++d) {
        constexpr double surely_past = 1 - 1e-9;
        const double now = std::min(part.reached.drawn[2 * d], surely_past);
        made.means[d] += (part.reached.drawn[2 * d + 1] - now) / (1 - now);
      }
    }
    for (const double mean : made.means)
      made.expected += mean / static_cast<double>(made.means.size());
  }

  /// "0.8 expected in the 21 days until one comes; 3 are enough with 97 %, the owner's chance is
  /// 95 %".
  static std::string words(const SpareLine& made, double lead_time_days, double chance) {
    std::string said = concat({mean_words(made.expected), " expected in the ",
                               fixed(lead_time_days, 0), " days until one comes"});
    if (made.by_strike > 0)
      said += concat({", of which ", mean_words(made.by_strike), " by a strike"});
    said +=
        concat({"; ", std::to_string(*made.hold), *made.hold == 1 ? " is" : " are", " enough with ",
                chance_words(made.enough), ", the owner's chance is ", chance_words(chance)});
    if (made.sure_sites > 0)
      said += concat({"; the 100 % asked for at ", std::to_string(made.sure_sites),
                      made.sure_sites == 1 ? " of its sites is" : " of its sites are",
                      " left out, as no number is enough for it"});
    if (made.past > 0)
      said += concat({"; besides ", std::to_string(made.past), " to be replaced now, which ",
                      made.past == 1 ? "is" : "are", " in the order"});
    if (made.may_be_past >= least_said)
      said += concat({"; about ", mean_words(made.may_be_past),
                      " more may be past already, unseen, and are not"});
    const std::string parts = std::to_string(made.parts);
    if (made.not_answered > 0)
      said += concat(
          {"; ", std::to_string(made.not_answered), " of ", parts, " parts are not reckoned"});
    if (made.by_grade_alone > 0)
      said += concat(
          {"; ", std::to_string(made.by_grade_alone), " of ", parts, " go by their grade alone"});
    return said;
  }

  const Replacements& replacements_;
  const OwnerFigures& figures_;
  Workers workers_;
  std::map<DepotAndType, Served> served_;
};

}  // namespace

double enough_chance(std::span<const double> means, int held) {
  double sum = 0;
  for (const double mean : means) sum += statistics::poisson_cdf(held, mean);
  return means.empty() ? 1 : sum / static_cast<double>(means.size());
}

int spares_to_hold(std::span<const double> means, double chance) {
  if (means.empty()) return 0;
  const double largest = *std::max_element(means.begin(), means.end());
  // Past this no sum of doubles gets any nearer to 1.
  const double most = largest + 40 * std::sqrt(largest) + 100;
  std::vector<double> sums(means.size(), 0.0);
  for (int held = 0;; ++held) {
    double all = 0;
    for (std::size_t d = 0; d < means.size(); ++d) {
      sums[d] += statistics::poisson_chance(held, means[d]);
      all += std::min(1.0, sums[d]);
    }
    if (all / static_cast<double>(means.size()) >= chance || held >= most) return held;
  }
}

Result<std::vector<SpareLine>> spares(const Replacements& replacements, const OwnerFigures& figures,
                                      const Workers& workers) {
  return SpareCounter(replacements, figures, workers).run();
}

}  // namespace kneerail::forecast
