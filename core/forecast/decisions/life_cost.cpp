#include "core/forecast/decisions/life_cost.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "core/base/text.h"
#include "core/forecast/decisions/mean_words.h"
#include "core/forecast/decisions/part_order.h"
#include "core/forecast/words.h"
#include "core/statistics/normal.h"

namespace kneerail::forecast {

namespace {

constexpr double hours_of_a_day = 8;

/// Parts that are replaced by the same kind of new part.
struct Renewed {
  std::string type;
  std::string depot;
  std::int32_t example = 0;
  int parts = 0;
  std::vector<double> first;  ///< replacements of what stands there; a row of years for each draw
};

/// Year by year, a row of years for each draw.
struct Renewals {
  std::vector<double> counts;
  bool answered = false;  ///< of a new part something is reckoned
  bool as_now = false;    ///< another finish was asked for, and means nothing for it
};

/// What one replacement takes, and what of it is not known.
struct UnitCost {
  std::optional<double> parts;
  std::optional<double> labour;
  std::optional<double> closure;
  bool waits = true;  ///< false: how long for a spare is not known
};

/// Names each thing that types lack: "labour for 3 of 5 types", "labour" where all do.
class Lacking {
 public:
  void note(const std::string& what, const std::string& type, bool lacks) {
    auto& own = types_[what];
    own.first.insert(type);
    if (lacks) own.second.insert(type);
  }
  void add_to(const std::string& what, std::vector<std::string>& without) const {
    const auto own = types_.find(what);
    if (own == types_.end() || own->second.second.empty()) return;
    const auto& [all, lack] = own->second;
    without.push_back(all.size() == lack.size()
                          ? what
                          : concat({what, " for ", std::to_string(lack.size()), " of ",
                                    std::to_string(all.size()), " types"}));
  }

 private:
  std::map<std::string, std::pair<std::set<std::string>, std::set<std::string>>> types_;
};

class CostCounter {
 public:
  CostCounter(const Replacements& replacements, const OwnerFigures& figures,
              const std::vector<SpareLine>& lines, const LifeCostQuestion& question)
      : replacements_(replacements),
        figures_(figures),
        question_(question),
        years_(static_cast<std::size_t>(question.years)),
        draws_(static_cast<std::size_t>(replacements.draws())),
        costs_(draws_),
        variances_(draws_, 0.0) {
    for (const SpareLine& line : lines) spares_[{line.depot, line.type}] = &line;
    if (const auto site = figures.sites.find(question.site); site != figures.sites.end())
      site_ = site->second;
    for (std::size_t y = 0; y < years_; ++y)
      discount_.push_back(std::pow(1 + site_.discount_rate.value_or(0), -static_cast<double>(y)));
  }

  Result<LifeCost> run() {
    if (!gather()) return fail(Fault::cancelled, "Life cost: stopped before its end.");
    std::vector<const Renewed*> groups;
    for (const auto& [key, group] : groups_) groups.push_back(&group);
    std::vector<Renewals> counts(groups.size());
    for_each_unit(static_cast<int>(groups.size()), question_.workers, [&](int i) {
      counts[static_cast<std::size_t>(i)] = renewals(*groups[static_cast<std::size_t>(i)]);
    });
    if (question_.workers.stopped())
      return fail(Fault::cancelled, "Life cost: stopped before its end.");
    for (std::size_t i = 0; i < groups.size(); ++i) spend(*groups[i], counts[i]);
    add_yearly();
    return finished();
  }

 private:
  /// Sums the first replacements of the parts that stand there, by what they are replaced with.
  bool gather() {
    constexpr std::size_t block = 128;
    const auto order = parts_in_order(replacements_.portfolio(), question_.site);
    std::vector<double> at;
    for (std::size_t y = 0; y <= years_; ++y) at.push_back(static_cast<double>(y));
    std::vector<PartReplacement> made(block);
    for (std::size_t first = 0; first < order.size(); first += block) {
      const std::size_t count = std::min(block, order.size() - first);
      if (question_.from == LifeFrom::as_it_stands)
        for_each_unit(static_cast<int>(count), question_.workers, [&](int i) {
          const auto place = static_cast<std::size_t>(i);
          made[place] = replacements_.of(order[first + place], at);
        });
      if (question_.workers.stopped()) return false;
      for (std::size_t i = 0; i < count; ++i) add(order[first + i], made[i]);
    }
    return true;
  }

  void add(std::int32_t part, const PartReplacement& made) {
    const Part& own = replacements_.portfolio().parts[static_cast<std::size_t>(part)];
    Renewed& group = groups_[replacements_.new_part_key(part)];
    if (group.parts == 0) {
      group.type = own.component_type;
      group.depot = own.depot;
      group.example = part;
      group.first.assign(draws_ * years_, 0.0);
    }
    ++group.parts;
    if (question_.from == LifeFrom::all_new) return;
    not_answered_ += made.why == ReplacedFor::nothing ? 1 : 0;
    if (!made.past) may_be_past_ += made.reached.by.front();
    for (std::size_t d = 0; d < draws_; ++d) {
      double* first = &group.first[d * years_];
      if (made.past) {
        first[0] += 1;
        continue;
      }
      const double* by = &made.reached.drawn[d * (years_ + 1)];
      constexpr double surely_past = 1 - 1e-9;
      const double ahead = 1 - std::min(by[0], surely_past);
      for (std::size_t y = 0; y < years_; ++y) first[y] += std::max(0.0, by[y + 1] - by[y]) / ahead;
    }
  }

  /// Replacements year by year, those of replacements among them; a row of years for each draw.
  Renewals renewals(const Renewed& group) const {
    // Whole years for what is put up today, half years for what comes in the middle of one.
    std::vector<double> at;
    for (std::size_t h = 0; h <= 2 * years_; ++h) at.push_back(static_cast<double>(h) / 2);
    NewPart made;
    const auto& parts = replacements_.portfolio().parts;
    if (question_.finish != nullptr)
      made.nominal_um =
          question_.finish->minimum_um(parts[static_cast<std::size_t>(group.example)]);
    const PartReplacement fresh = replacements_.of_new(group.example, made, at);
    std::vector<double> counts(draws_ * years_);
    for (std::size_t d = 0; d < draws_; ++d) {
      const double* by = &fresh.reached.drawn[d * at.size()];
      double* count = &counts[d * years_];
      for (std::size_t y = 0; y < years_; ++y) {
        count[y] = group.first[d * years_ + y];
        if (question_.from == LifeFrom::all_new)
          count[y] = group.parts * (by[2 * y + 2] - by[2 * y]);
        for (std::size_t s = 0; s < y; ++s)
          count[y] += count[s] * (by[2 * (y - s) + 1] - by[2 * (y - s) - 1]);
      }
    }
    const bool as_now = question_.finish != nullptr &&
                        (!made.nominal_um || replacements_.nominal_um(group.example) <= 0);
    return {std::move(counts), fresh.why != ReplacedFor::nothing, as_now};
  }

  UnitCost unit_cost(const Renewed& group) const {
    UnitCost unit;
    const auto type = figures_.types.find(group.type);
    if (type == figures_.types.end()) return unit;
    const TypeFigures& own = type->second;
    unit.parts = own.price;
    if (!own.hours_per_replacement) return unit;
    if (site_.cost_of_hour) unit.labour = *own.hours_per_replacement * *site_.cost_of_hour;
    if (!site_.cost_of_closed_day) return unit;
    double days = *own.hours_per_replacement / hours_of_a_day;
    const auto wait = days_waited(group, own);
    unit.waits = wait.has_value();
    unit.closure = (days + wait.value_or(0)) * *site_.cost_of_closed_day;
    return unit;
  }

  /// Days that a replacement waits for its part, where those before it in the lead time took all:
  /// with what lies on the shelf, else with what the owner means to hold.
  std::optional<double> days_waited(const Renewed& group, const TypeFigures& type) const {
    const auto line = spares_.find({group.depot, group.type});
    if (line == spares_.end() || !type.lead_time_days) return std::nullopt;
    const SpareLine& spare = *line->second;
    const auto held = spare.shelf ? spare.shelf : spare.hold;
    if (!held) return std::nullopt;
    return *type.lead_time_days * (1 - enough_chance(spare.means, *held - 1));
  }

  void spend(const Renewed& group, const Renewals& made) {
    const std::vector<double>& counts = made.counts;
    if (question_.from == LifeFrom::all_new && !made.answered) not_answered_ += group.parts;
    const UnitCost unit = unit_cost(group);
    lacking_.note("the price", group.type, !unit.parts);
    lacking_.note("labour", group.type, !unit.labour);
    lacking_.note("closures", group.type, !unit.closure);
    lacking_.note("the wait for a spare", group.type, unit.closure && !unit.waits);
    parts_ += group.parts;
    if (made.as_now) as_now_ += group.parts;
    const double each = unit.parts.value_or(0) + unit.labour.value_or(0) + unit.closure.value_or(0);
    for (std::size_t d = 0; d < draws_; ++d) {
      double present = 0;
      for (std::size_t y = 0; y < years_; ++y) {
        const double count = counts[d * years_ + y];
        present += count * discount_[y];
        variances_[d] += count * each * each * discount_[y] * discount_[y];
        replacements_sum_ += counts[d * years_ + y] / static_cast<double>(draws_);
      }
      costs_[d].parts += present * unit.parts.value_or(0);
      costs_[d].labour += present * unit.labour.value_or(0);
      costs_[d].closures += present * unit.closure.value_or(0);
    }
  }

  /// Visits and strikes, the same in every draw.
  void add_yearly() {
    double a_year_each = 0;
    for (const double one : discount_) a_year_each += one;
    if (site_.cost_of_visit && site_.years_between_visits && *site_.years_between_visits > 0)
      visits_ = a_year_each / *site_.years_between_visits * *site_.cost_of_visit;
    if (site_.strikes_per_year && site_.hours_per_strike && site_.cost_of_hour)
      strikes_ =
          a_year_each * *site_.strikes_per_year * *site_.hours_per_strike * *site_.cost_of_hour;
    for (CostShares& cost : costs_) {
      cost.visits = visits_.value_or(0);
      cost.strikes = strikes_.value_or(0);
    }
  }

  LifeCost finished() {
    LifeCost out;
    out.site = question_.site;
    out.years = question_.years;
    out.parts = parts_;
    out.not_answered = not_answered_;
    out.as_now = as_now_;
    out.may_be_past = may_be_past_;
    out.replacements = replacements_sum_;
    for (const CostShares& cost : costs_) {
      const double share = 1.0 / static_cast<double>(draws_);
      out.mean.parts += cost.parts * share;
      out.mean.labour += cost.labour * share;
      out.mean.closures += cost.closures * share;
      out.mean.visits += cost.visits * share;
      out.mean.strikes += cost.strikes * share;
    }
    out.p10 = quantile(0.1);
    out.p50 = quantile(0.5);
    out.p90 = quantile(0.9);
    for (const char* what : {"the price", "labour", "closures", "the wait for a spare"})
      lacking_.add_to(what, out.without);
    if (!visits_) out.without.emplace_back("visits");
    if (site_.strikes_per_year && !strikes_) out.without.emplace_back("strikes");
    if (!site_.discount_rate) out.without.emplace_back("discounting");
    out.words = words(out);
    return out;
  }

  /// Of the mixture over the draws, each a normal by its mean and variance, at least 0.
  [[nodiscard]] double quantile(double level) const {
    double low = 0;
    double high = 1;
    for (std::size_t d = 0; d < draws_; ++d)
      high = std::max(high, costs_[d].sum() + 10 * std::sqrt(variances_[d]));
    constexpr int halvings = 60;
    for (int i = 0; i < halvings; ++i) {
      const double middle = (low + high) / 2;
      double chance = 0;
      for (std::size_t d = 0; d < draws_; ++d) {
        const double sd = std::sqrt(variances_[d]);
        const double off = middle - costs_[d].sum();
        chance += sd > 0 ? statistics::normal_cdf(off / sd) : off >= 0 ? 1 : 0;
      }
      (chance < level * static_cast<double>(draws_) ? low : high) = middle;
    }
    return (low + high) / 2;
  }

  /// "over 30 years, at 3 % a year; without labour for 3 of 5 types".
  [[nodiscard]] std::string words(const LifeCost& made) const {
    std::string said = concat({"over ", std::to_string(made.years), " years"});
    if (site_.discount_rate)
      said += concat({", at ", fixed(*site_.discount_rate * 100, 1), " % a year"});
    for (std::size_t i = 0; i < made.without.size(); ++i)
      said += concat({i == 0 ? "; without " : ", ", made.without[i]});
    if (made.not_answered > 0)
      said += concat({"; ", std::to_string(made.not_answered), " of ", std::to_string(made.parts),
                      " parts are not reckoned"});
    constexpr double least_said = 0.1;
    if (made.may_be_past >= least_said)
      said += concat({"; about ", mean_words(made.may_be_past),
                      " may be past already, unseen, and are not in it"});
    return said;
  }

  const Replacements& replacements_;
  const OwnerFigures& figures_;
  const LifeCostQuestion& question_;
  std::size_t years_;
  std::size_t draws_;
  SiteFigures site_;
  std::vector<double> discount_;
  std::map<std::pair<std::string, std::string>, const SpareLine*> spares_;
  std::map<std::string, Renewed> groups_;
  Lacking lacking_;
  std::vector<CostShares> costs_;
  std::vector<double> variances_;  ///< of each draw's sum, by the chance of each replacement
  std::optional<double> visits_;
  std::optional<double> strikes_;
  int parts_ = 0;
  int not_answered_ = 0;
  int as_now_ = 0;
  double may_be_past_ = 0;
  double replacements_sum_ = 0;
};

}  // namespace

Result<LifeCost> life_cost(const Replacements& replacements, const OwnerFigures& figures,
                           const std::vector<SpareLine>& lines, const LifeCostQuestion& question) {
  constexpr int years_most = 100;
  if (question.years < 1 || question.years > years_most)
    return fail(Fault::invalid_input,
                "Life cost: it reaches 1 to 100 years ahead. Nothing was reckoned.");
  return CostCounter(replacements, figures, lines, question).run();
}

}  // namespace kneerail::forecast
