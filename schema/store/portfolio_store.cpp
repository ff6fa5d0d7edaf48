#include "schema/store/portfolio_store.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <set>
#include <string>
#include <utility>

#include "core/corrosion/attack.h"
#include "core/corrosion/category.h"
#include "schema/store/instrument_store.h"

namespace kneerail {
namespace {

using forecast::Part;
using forecast::PartKind;
using forecast::Quantity;

double middle_um(forecast::Category category) {
  return corrosion::middle_first_year_um(corrosion::Metal::zinc,
                                         static_cast<corrosion::CorrosivityCategory>(category))
      .value_or(0);
}

std::string_view layer_reason(const Part& part, const ReadingFact& fact) {
  enum : std::int64_t { together = 1, zinc_alone = 2, paint_alone = 3 };
  if (fact.quantity != Quantity::coating_um) return {};
  if (fact.layer == paint_alone) return "paint_alone";
  if (part.painted && fact.layer != zinc_alone) return "layers_together";
  return {};
}

double units_of(Quantity quantity) {
  if (quantity == Quantity::grade) return 1;
  return quantity == Quantity::wall_mm ? 100 : 10;
}

/// Readings are put right by what is known of their instruments: certificates and doubts.
class Filler {
 public:
  Filler(PortfolioTables& from, forecast::Portfolio& into, const InstrumentHistories& instruments)
      : from_(from), into_(into), instruments_(instruments) {}

  Result<> run() {
    auto done = from_.each_reading([this](const ReadingFact& fact) {
      add(fact);
      return Result<>(Done{});
    });
    into_.visits = from_.visits();
    put_foils_right();
    order_visits();
    return done;
  }

 private:
  void put_foils_right();
  void order_visits();
  void add(const ReadingFact& fact);
  void put_right(const ReadingFact& fact, std::int64_t read, forecast::Reading& reading) const;
  [[nodiscard]] std::string_view reason(const ReadingFact& fact) const;

  PortfolioTables& from_;
  forecast::Portfolio& into_;
  const InstrumentHistories& instruments_;
};

/// A foil tells what is left of the gauge's error: the same addition as to its readings.
void Filler::put_foils_right() {
  for (const FoilFact& foil : from_.foils()) {
    forecast::Visit& visit = into_.visits[static_cast<std::size_t>(foil.visit)];
    constexpr double units = 10;
    visit.foil_read_um =
        instruments_.of(foil.gauge).put_right({visit.day, foil.at}, *visit.foil_read_um * units) /
        units;
  }
}

/// Those that readings asked for late stand behind the others.
void Filler::order_visits() {
  const auto by_id = [&](std::size_t a, std::size_t b) {
    return into_.visits[a].id < into_.visits[b].id;
  };
  if (std::ranges::is_sorted(into_.visits, {}, &forecast::Visit::id)) return;
  std::vector<std::size_t> order(into_.visits.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), by_id);
  std::vector<forecast::Visit> visits;
  std::vector<std::int32_t> places(order.size());
  for (const std::size_t from : order) {
    places[from] = static_cast<std::int32_t>(visits.size());
    visits.push_back(std::move(into_.visits[from]));
  }
  into_.visits = std::move(visits);
  for (forecast::Reading& reading : into_.readings)
    reading.visit = places[static_cast<std::size_t>(reading.visit)];
}

/// Why a record is kept back; empty when it is not.
std::string_view Filler::reason(const ReadingFact& fact) const {
  const Part& part = into_.parts[static_cast<std::size_t>(fact.part)];
  if (fact.is_void) return "void";
  if (fact.is_held) return "held";
  if (instruments_.of(fact.instrument).in_doubt(fact.at)) return "in_doubt";
  if (const auto code = reason_to_leave_out(part, fact.quantity); !code.empty()) return code;
  return layer_reason(part, fact);
}

void Filler::put_right(const ReadingFact& fact, std::int64_t read,
                       forecast::Reading& reading) const {
  const InstrumentHistory& instrument = instruments_.of(fact.instrument);
  const double units = units_of(fact.quantity);
  const ReadAt when{fact.day, fact.at};
  const auto as_read = static_cast<double>(read);
  reading.value = instrument.put_right(when, as_read) / units;
  reading.certificate_add = instrument.certificate_add(fact.day, as_read) / units;
  if (fact.wrench_set_tenth_nm)
    reading.wrench_set_nm =
        instrument.put_right(when, static_cast<double>(*fact.wrench_set_tenth_nm)) / units;
}

void Filler::add(const ReadingFact& fact) {
  const auto code = reason(fact);
  const std::string record = to_text(fact.record);
  for (std::size_t i = 0; i < fact.values.size(); ++i) {
    const std::string id = record + "." + std::to_string(i + 1);
    if (!code.empty()) {
      into_.left_out.push_back(
          {id, into_.parts[static_cast<std::size_t>(fact.part)].id, std::string(code)});
      continue;
    }
    forecast::Reading reading;
    reading.id = id;
    reading.part = fact.part;
    reading.visit = fact.visit;
    reading.quantity = fact.quantity;
    reading.spot = fact.spot;
    reading.replicate = static_cast<std::int16_t>(i + 1);
    reading.censoring = fact.censoring;
    reading.surface = fact.surface;
    reading.how = fact.how;
    reading.carried = fact.carried;
    put_right(fact, fact.values[i], reading);
    reading.seen = fact.seen;
    into_.readings.push_back(std::move(reading));
  }
}

}  // namespace

std::string_view reason_to_leave_out(const Part& part, Quantity quantity) {
  if (quantity != Quantity::coating_um) return {};
  if (part.material != forecast::Material::zinc_coated_steel) return "not_zinc";
  switch (part.kind) {
    case PartKind::post_tube:
    case PartKind::rail_tube:
    case PartKind::fitting:
    case PartKind::base_fixing:
      return {};
    default:
      return "no_coating_model";
  }
}

bool is_category_rate(double mean_um_per_year, forecast::Category category,
                      const forecast::Settings& settings) {
  const double middle = middle_um(category);
  const double factor = corrosion::AttackPath(settings.zinc_path_exponent).first_year_to_mean();
  const auto near = [&](double wanted) {
    return std::abs(mean_um_per_year - wanted) <= 0.01 * wanted;
  };
  return near(middle) || near(middle * factor);
}

void take_off_unused(Part& part) {
  if (part.material != forecast::Material::zinc_coated_steel) part.first_maintenance_um.reset();
  if (!part.wall_nominal_mm) part.steel_rate_um_per_year.reset();
}

void assume_rate(Part& part, const forecast::Settings& settings) {
  if (part.zinc_rate_um_per_year || !part.category) return;
  part.zinc_rate_um_per_year =
      middle_um(*part.category) *
      corrosion::AttackPath(settings.zinc_path_exponent).first_year_to_mean();
  part.prior_is_category = true;
}

namespace {

/// Of what is asked of the tables, but for reports.
Result<forecast::Portfolio> portfolio_of(PortfolioTables& from, Date as_of,
                                         const PortfolioQuestion& question,
                                         const InstrumentHistories& instruments) {
  forecast::Portfolio portfolio;
  portfolio.as_of = as_of;
  portfolio.settings = question.settings;
  portfolio.limits = from.limits();
  portfolio.parts = from.parts();
  for (auto& part : portfolio.parts) assume_rate(part, question.settings);
  auto works = from.works();
  if (!works) return fail(works.error());
  portfolio.works = std::move(*works);
  if (!question.readings)
    portfolio.visits = from.visits();
  else if (auto filled = Filler(from, portfolio, instruments).run(); !filled)
    return fail(filled.error());
  std::set<std::string> aboard;
  for (const auto& part : portfolio.parts) aboard.insert(part.site);
  portfolio.sites_aboard.assign(aboard.begin(), aboard.end());
  for (const auto& limits : portfolio.limits) portfolio.sites_asked.push_back(limits.site);
  return portfolio;
}

constexpr const char* not_read = "The register could not be read for the forecast: ";

}  // namespace

Result<forecast::Portfolio> read_portfolio(Database& tables, Date as_of,
                                           const PortfolioQuestion& question) {
  const auto snapshot = Snapshot::begin(tables);
  if (!snapshot) return fail(snapshot.error(), not_read);
  PortfolioQuestion asked = question;
  asked.as_of = as_of;
  auto from = PortfolioTables::open(tables, asked);
  if (!from) return fail(from.error(), not_read);
  const auto instruments = instrument_histories(tables);
  if (!instruments) return fail(instruments.error());
  auto portfolio = portfolio_of(**from, as_of, question, *instruments);
  if (!portfolio) return portfolio;
  auto reports = (*from)->reports();
  if (!reports) return fail(reports.error());
  portfolio->reports = std::move(*reports);
  return portfolio;
}

Result<std::unique_ptr<PortfolioSites>> PortfolioSites::open(Database& tables, Date as_of,
                                                             const PortfolioQuestion& question) {
  auto snapshot = Snapshot::begin(tables);
  if (!snapshot) return fail(snapshot.error(), not_read);
  PortfolioQuestion asked = question;
  asked.as_of = as_of;
  auto from = PortfolioTables::open_for_sites(tables, asked);
  if (!from) return fail(from.error(), not_read);
  auto instruments = instrument_histories(tables);
  if (!instruments) return fail(instruments.error());
  std::unique_ptr<PortfolioSites> made(new PortfolioSites(
      std::move(*snapshot), as_of, asked, std::move(*from), std::move(*instruments)));
  if (auto ok = made->find_components(tables); !ok) return fail(ok.error(), not_read);
  return made;
}

/// Parts by site, and the days they were put up. Roles outside of these are of no part.
Result<> PortfolioSites::find_components(Database& tables) {
  auto rows = tables.prepare(
      "SELECT feed, id, role BETWEEN 1 AND 12, date_in_service FROM entity WHERE type = 7 AND "
      "held = 0 AND voided_by IS NULL AND NOT EXISTS (SELECT 1 FROM retirement r WHERE r.entity = "
      "entity.id)");
  if (!rows) return fail(rows.error());
  std::map<Uuid, std::vector<Date>> installed;
  while (true) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) break;
    const Uuid site = rows->uuid(0);
    components_[site].push_back(rows->uuid(1));
    if (rows->number(2) == 0 || rows->is_null(3)) continue;
    const Date day{static_cast<std::int32_t>(rows->number(3))};
    if (day <= as_of_) installed[site].push_back(day);
  }
  const Things& known = tables_->sites();
  for (const Thing& site : known.all()) components_[site.id];
  for (const auto& [site, ids] : components_) ids_.emplace(known.text(site), site);
  std::map<std::string, std::vector<Date>> by_name;
  for (auto& [site, dates] : installed) by_name[known.text(site)] = std::move(dates);
  installed_ = forecast::InstalledDates(std::move(by_name));
  return Done{};
}

std::vector<std::string> PortfolioSites::names() const {
  std::vector<std::string> names;
  for (const auto& [name, id] : ids_) names.push_back(name);
  return names;
}

std::map<std::string, std::string> PortfolioSites::titles() const {
  std::map<std::string, std::string> titles;
  for (const auto& [name, id] : ids_) {
    const Thing* site = tables_->sites().find(id);
    titles[name] = site == nullptr || site->name.empty() ? name : site->name;
  }
  return titles;
}

Result<std::vector<std::string>> PortfolioSites::part_ids(const std::string& site) {
  const auto id = ids_.find(site);
  check(id != ids_.end(), "a site of the register is asked");
  return tables_->part_ids(components_[id->second]);
}

Result<forecast::Portfolio> PortfolioSites::read(const std::string& site) {
  const auto id = ids_.find(site);
  check(id != ids_.end(), "a site of the register is asked");
  if (auto ok = tables_->turn_to(id->second, components_[id->second]); !ok)
    return fail(ok.error(), not_read);
  return portfolio_of(*tables_, as_of_, question_, instruments_);
}

}  // namespace kneerail
