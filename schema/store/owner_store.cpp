#include "schema/store/owner_store.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "core/base/text.h"
#include "core/records/entities.h"
#include "core/records/rule_set.h"
#include "core/records/strike.h"
#include "core/records/work.h"
#include "schema/store/register_things.h"
#include "schema/store/run_layout.h"

namespace kneerail {
namespace {

using forecast::OwnerFigures;
using forecast::SiteFigures;
using forecast::TypeFigures;

constexpr double hundredths = 100;
constexpr double minutes_of_an_hour = 60;

std::optional<double> over(std::optional<std::int64_t> value, double unit) {
  if (!value) return std::nullopt;
  return static_cast<double>(*value) / unit;
}

/// "tube, 48.3 × 4.0 mm".
std::string kind_and_size(const Thing& type) {
  using namespace component_type_field;
  std::string words;
  if (const auto what = type.number(what_it_does))
    words = word_of_code(EntityType::component_type, what_it_does, *what);
  const auto diameter = over(type.number(tube_diameter), 10);
  const auto wall = over(type.number(tube_wall), 10);
  if (!diameter && !wall) return words;
  if (!words.empty()) words += ", ";
  if (diameter) words += fixed(*diameter, 1);
  if (wall) words += (diameter ? " × " : "wall ") + fixed(*wall, 1);
  return words + " mm";
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t middle = values.size() / 2;
  return values.size() % 2 != 0 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
}

struct Struck {
  Uuid site;
  std::int64_t t = 0;
  std::unordered_set<Uuid> parts;
  std::unordered_map<Uuid, std::int64_t> back;  ///< when each part came back
};

class OwnerReader {
 public:
  OwnerReader(Database& tables, const TimeZone& zone, Date as_of)
      : tables_(tables), zone_(zone), as_of_(as_of) {}

  Result<OwnerFigures> read() {
    using Step = Result<> (OwnerReader::*)();
    for (const Step step :
         {&OwnerReader::read_things, &OwnerReader::read_currency, &OwnerReader::read_sites,
          &OwnerReader::read_stock, &OwnerReader::read_strikes, &OwnerReader::read_steps,
          &OwnerReader::read_works, &OwnerReader::read_strike_hours})
      if (auto done = (this->*step)(); !done)
        return fail(done.error(), "Reading the owner's figures: ");
    return std::move(figures_);
  }

 private:
  [[nodiscard]] Date day(std::int64_t t) const { return zone_.day_of_entry(Instant{t}); }
  [[nodiscard]] bool is_known(std::int64_t t) const { return day(t) <= as_of_; }

  Result<> read_things() {
    const std::pair<Things*, EntityType> wanted[] = {
        {&sites_, EntityType::site},    {&zones_, EntityType::zone},
        {&runs_, EntityType::run},      {&types_, EntityType::component_type},
        {&depots_, EntityType::depot},  {&components_, EntityType::component},
        {&rules_, EntityType::rule_set}};
    for (const auto& [things, type] : wanted) {
      auto loaded = load_things(tables_, static_cast<int>(type));
      if (!loaded) return fail(loaded.error());
      *things = std::move(*loaded);
    }
    for (const Thing& type : types_.all()) {
      using namespace component_type_field;
      TypeFigures& own = figures_.types[types_.text(type.id)];
      own.name = type.name;
      own.kind_and_size = kind_and_size(type);
      own.price = over(type.number(price), hundredths);
      own.lead_time_days = over(type.number(lead_time), 1);
    }
    for (const Thing& depot : depots_.all())
      figures_.depots[depots_.text(depot.id)] = depot.name.empty() ? depot.text() : depot.name;
    for (const Thing& run : runs_.all()) {
      const auto* seasonal = run.rest.find(run_field::seasonal);
      if (seasonal != nullptr && seasonal->truth() != nullptr && *seasonal->truth())
        figures_.seasonal_runs.insert(runs_.text(run.id));
    }
    return Done{};
  }

  Result<> read_currency() {
    auto made = things_of_type(tables_, static_cast<int>(EntityType::organisation));
    if (!made) return fail(made.error());
    for (const Thing& organisation : *made) {
      const auto* currency = organisation.rest.find(organisation_field::currency);
      if (currency != nullptr && currency->text() != nullptr) figures_.currency = *currency->text();
    }
    return Done{};
  }

  [[nodiscard]] const cbor::Map* limits_of(const Thing& site) const {
    const auto id = site.id_field(site_field::rule_set);
    const Thing* rules = id ? rules_.find(*id) : nullptr;
    if (rules == nullptr) return nullptr;
    if (const auto from = rules->number(rule_set_field::in_force_from); from && *from > as_of_.days)
      return nullptr;
    const auto* limits = rules->rest.find(rule_set_field::limits);
    return limits == nullptr ? nullptr : limits->map();
  }

  Result<> read_sites() {
    for (const Thing& site : sites_.all()) {
      SiteFigures& own = figures_.sites[sites_.text(site.id)];
      const cbor::Map* limits = limits_of(site);
      if (limits == nullptr) continue;
      constexpr double tenth_percents = 1000;
      own.spare_chance = over(number_in(*limits, limit_key::spare_chance), tenth_percents);
      own.discount_rate = over(number_in(*limits, limit_key::discount_rate), tenth_percents);
      if (const auto* costs = limits->find(limit_key::costs);
          costs != nullptr && costs->map() != nullptr) {
        own.cost_of_visit = over(number_in(*costs->map(), 1), hundredths);
        own.cost_of_hour = over(number_in(*costs->map(), 2), hundredths);
        own.cost_of_closed_day = over(number_in(*costs->map(), 3), hundredths);
      }
      own.years_between_visits = over(shortest_interval(site, *limits), days_per_year);
    }
    return Done{};
  }

  /// Of the longest intervals of its runs, by their use and their zones' air.
  [[nodiscard]] std::optional<std::int64_t> shortest_interval(const Thing& site,
                                                              const cbor::Map& limits) const {
    std::optional<std::int64_t> shortest;
    for (const Thing& run : runs_.all()) {
      const Thing* zone = run.feed == site.id ? zones_.find(run.parent) : nullptr;
      if (zone == nullptr) continue;
      const auto use = run.number(run_field::use_class);
      const auto air = zone->number(zone_field::corrosivity_category);
      const auto days = use && air ? longest_interval_days(limits, *use, *air) : std::nullopt;
      if (days) shortest = std::min(*days, shortest.value_or(*days));
    }
    return shortest;
  }

  Result<> read_stock() {
    return each_row(tables_, "SELECT depot, component_type, count FROM stock", {},
                    [&](const Statement& row) -> Result<> {
                      figures_.on_shelf[{depots_.text(row.uuid(0)), types_.text(row.uuid(1))}] =
                          std::max<std::int64_t>(0, row.number(2));
                      return Done{};
                    });
  }

  Result<> read_strikes() {
    std::unordered_map<Uuid, std::int64_t> first;
    std::unordered_map<Uuid, std::int64_t> count;
    auto done = each_row(tables_,
                         "SELECT record, feed, t, components, subject FROM strike WHERE voided_by "
                         "IS NULL AND held = 0 "
                         "ORDER BY t, record",
                         {}, [&](const Statement& row) -> Result<> {
                           if (!is_known(row.number(2))) return Done{};
                           Struck strike{row.uuid(1), row.number(2), {}, {}};
                           if (!row.is_null(3)) {
                             const auto listed = cbor::decode(row.bytes(3));
                             if (!listed) return fail(listed.error());
                             if (listed->array() != nullptr)
                               for (const cbor::Value& part : *listed->array())
                                 if (const auto id = part.uuid()) strike.parts.insert(*id);
                           }
                           for (const Uuid& part : strike.parts) {
                             if (TypeFigures* type = type_of(part)) ++type->struck;
                             if (const std::string name = type_name(part); !name.empty())
                               figures_.struck_types[runs_.text(row.uuid(4))].insert(name);
                           }
                           first.try_emplace(strike.site, strike.t);
                           ++count[strike.site];
                           strikes_.emplace(row.uuid(0), std::move(strike));
                           return Done{};
                         });
    if (!done) return done;
    for (const auto& [site, strikes] : count) {
      const double years = years_between(day(first[site]), as_of_);
      figures_.sites[sites_.text(site)].strikes_per_year =
          static_cast<double>(strikes) / std::max(1.0, std::ceil(years));
    }
    return Done{};
  }

  Result<> read_steps() {
    return each_row(
        tables_,
        "SELECT strike, subject, t, same_part FROM strike_step WHERE step = 2 AND voided_by IS "
        "NULL AND held = 0 ORDER BY t, record",
        {}, [&](const Statement& row) -> Result<> {
          const auto strike = row.is_null(0) ? strikes_.end() : strikes_.find(row.uuid(0));
          if (strike == strikes_.end() || !is_known(row.number(2))) return Done{};
          strike->second.back[row.uuid(1)] = row.number(2);
          if (!row.is_null(3) && row.number(3) == static_cast<int>(SamePart::from_another_place))
            if (TypeFigures* type = type_of(row.uuid(1))) ++type->replaced_at_re_erecting;
          return Done{};
        });
  }

  Result<> read_works() {
    std::unordered_map<std::string, std::vector<double>> hours;
    auto done = each_row(
        tables_,
        "SELECT subject, action, t, people, minutes, day FROM work WHERE action IN (3, 4) AND "
        "voided_by IS NULL AND held = 0 AND same_as IS NULL ORDER BY record",
        {}, [&](const Statement& row) -> Result<> {
          const Uuid part = row.uuid(0);
          const bool known =
              row.is_null(5) ? is_known(row.number(2)) : row.number(5) <= as_of_.days;
          TypeFigures* type = known ? type_of(part) : nullptr;
          if (type == nullptr) return Done{};
          if (replaced_while_down(part, row.number(2))) ++type->replaced_at_re_erecting;
          if (!row.is_null(3) && !row.is_null(4))
            hours[type_name(part)].push_back(static_cast<double>(row.number(3) * row.number(4)) /
                                             minutes_of_an_hour);
          return Done{};
        });
    if (!done) return done;
    constexpr std::size_t works_least = 5;
    for (auto& [name, taken] : hours) {
      if (taken.size() < works_least) continue;
      figures_.types[name].works_behind_hours = static_cast<int>(taken.size());
      figures_.types[name].hours_per_replacement = median(std::move(taken));
    }
    return Done{};
  }

  [[nodiscard]] bool replaced_while_down(const Uuid& part, std::int64_t t) const {
    return std::any_of(strikes_.begin(), strikes_.end(), [&](const auto& one) {
      const auto back = one.second.back.find(part);
      return one.second.parts.contains(part) && back != one.second.back.end() &&
             one.second.t <= t && t <= back->second;
    });
  }

  Result<> read_strike_hours() {
    std::unordered_map<Uuid, double> hours;
    auto done =
        each_row(tables_,
                 "SELECT subject, people, minutes FROM strike_hours WHERE voided_by IS "
                 "NULL AND held = 0 ORDER BY record",
                 {}, [&](const Statement& row) -> Result<> {
                   if (!row.is_null(1) && !row.is_null(2))
                     hours[row.uuid(0)] +=
                         static_cast<double>(row.number(1) * row.number(2)) / minutes_of_an_hour;
                   return Done{};
                 });
    if (!done) return done;
    std::unordered_map<Uuid, std::pair<double, int>> by_site;
    for (const auto& [id, strike] : strikes_) {
      const auto taken = hours.find(id);
      if (taken == hours.end()) continue;
      by_site[strike.site].first += taken->second;
      ++by_site[strike.site].second;
    }
    for (const auto& [site, sum] : by_site)
      figures_.sites[sites_.text(site)].hours_per_strike = sum.first / sum.second;
    return Done{};
  }

  [[nodiscard]] std::string type_name(const Uuid& component) const {
    const Thing* part = components_.find(component);
    return part == nullptr || !part->component_type ? std::string()
                                                    : types_.text(*part->component_type);
  }

  TypeFigures* type_of(const Uuid& component) {
    const auto type = figures_.types.find(type_name(component));
    return type == figures_.types.end() ? nullptr : &type->second;
  }

  Database& tables_;
  const TimeZone& zone_;
  Date as_of_;
  Things sites_, zones_, runs_, types_, depots_, components_, rules_;
  std::map<Uuid, Struck> strikes_;  ///< by record
  OwnerFigures figures_;
};

}  // namespace

Result<OwnerFigures> read_owner_figures(Database& tables, const TimeZone& zone, Date as_of) {
  return OwnerReader(tables, zone, as_of).read();
}

}  // namespace kneerail
