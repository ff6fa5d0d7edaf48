#include "schema/store/portfolio_store.h"

#include <cmath>
#include <set>
#include <string>
#include <utility>

#include "core/corrosion/attack.h"
#include "core/corrosion/category.h"

namespace kneerail {
namespace {

using forecast::Material;
using forecast::Part;
using forecast::PartKind;
using forecast::Quantity;

/// A time during which an instrument is in doubt. No shift: what it read is kept back.
struct Doubt {
  std::int64_t from_ms = 0;
  std::optional<std::int64_t> until_ms;
  std::optional<std::int64_t> shift;
};
using Doubts = std::unordered_map<Uuid, std::vector<Doubt>>;

Result<Doubts> load_doubts(Database& tables) {
  auto rows = tables.prepare(
      "SELECT subject, from_ms, until_ms, suggested_shift FROM doubt "
      "WHERE voided_by IS NULL AND held = 0 ORDER BY record");
  if (!rows) return fail(rows.error());
  Doubts doubts;
  while (true) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return doubts;
    Doubt doubt;
    doubt.from_ms = rows->number(1);
    if (!rows->is_null(2)) doubt.until_ms = rows->number(2);
    if (!rows->is_null(3)) doubt.shift = rows->number(3);
    doubts[rows->uuid(0)].push_back(doubt);
  }
}

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

class Filler {
 public:
  Filler(PortfolioTables& from, forecast::Portfolio& into, Doubts doubts)
      : from_(from), into_(into), doubts_(std::move(doubts)) {}

  Result<> run() {
    return from_.each_reading([this](const ReadingFact& fact) {
      add(fact);
      return Result<>(Done{});
    });
  }

 private:
  void add(const ReadingFact& fact);
  [[nodiscard]] std::string_view reason(const ReadingFact& fact, std::int64_t& shift) const;

  PortfolioTables& from_;
  forecast::Portfolio& into_;
  Doubts doubts_;
};

/// Why a record is kept back; empty when it is not. `shift` is what a doubt proposes to add.
std::string_view Filler::reason(const ReadingFact& fact, std::int64_t& shift) const {
  const Part& part = into_.parts[static_cast<std::size_t>(fact.part)];
  if (fact.is_void) return "void";
  if (fact.is_held) return "held";
  if (const auto found = doubts_.find(fact.instrument);
      found != doubts_.end() && !fact.instrument.is_zero()) {
    for (const auto& doubt : found->second) {
      if (fact.at.ms < doubt.from_ms || (doubt.until_ms && fact.at.ms > *doubt.until_ms)) continue;
      if (!doubt.shift) return "in_doubt";
      shift += *doubt.shift;
    }
  }
  if (const auto code = reason_to_leave_out(part, fact.quantity); !code.empty()) return code;
  return layer_reason(part, fact);
}

void Filler::add(const ReadingFact& fact) {
  std::int64_t shift = 0;
  const auto code = reason(fact, shift);
  const std::string record = to_text(fact.record);
  const double unit = fact.quantity == Quantity::grade     ? 1
                      : fact.quantity == Quantity::wall_mm ? 100
                                                           : 10;
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
    reading.value = static_cast<double>(fact.values[i] + shift) / unit;
    if (fact.wrench_set_tenth_nm)
      reading.wrench_set_nm = static_cast<double>(*fact.wrench_set_tenth_nm) / 10;
    reading.seen = fact.seen;
    into_.readings.push_back(std::move(reading));
  }
}

}  // namespace

std::string_view reason_to_leave_out(const Part& part, Quantity quantity) {
  if (quantity != Quantity::coating_um) return {};
  if (part.material != Material::zinc_coated_steel) return "not_zinc";
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
  if (part.material != Material::zinc_coated_steel) part.first_maintenance_um.reset();
  if (!part.wall_nominal_mm) part.steel_rate_um_per_year.reset();
}

void assume_rate(Part& part, const forecast::Settings& settings) {
  if (part.zinc_rate_um_per_year || !part.category) return;
  part.zinc_rate_um_per_year =
      middle_um(*part.category) *
      corrosion::AttackPath(settings.zinc_path_exponent).first_year_to_mean();
  part.prior_is_category = true;
}

Result<forecast::Portfolio> read_portfolio(Database& tables, Date as_of,
                                           const PortfolioQuestion& question) {
  PortfolioQuestion asked = question;
  asked.as_of = as_of;
  auto from = PortfolioTables::open(tables, asked);
  if (!from) return fail(from.error(), "The register could not be read for the forecast: ");
  auto doubts = load_doubts(tables);
  if (!doubts) return fail(doubts.error());
  forecast::Portfolio portfolio;
  portfolio.as_of = as_of;
  portfolio.settings = question.settings;
  portfolio.limits = (*from)->limits();
  portfolio.parts = (*from)->parts();
  for (auto& part : portfolio.parts) assume_rate(part, question.settings);
  portfolio.visits = (*from)->visits();
  auto works = (*from)->works();
  if (!works) return fail(works.error());
  portfolio.works = std::move(*works);
  if (auto filled = Filler(**from, portfolio, std::move(*doubts)).run(); !filled)
    return fail(filled.error());
  std::set<std::string> aboard;
  for (const auto& part : portfolio.parts) aboard.insert(part.site);
  portfolio.sites_aboard.assign(aboard.begin(), aboard.end());
  for (const auto& limits : portfolio.limits) portfolio.sites_asked.push_back(limits.site);
  return portfolio;
}

}  // namespace kneerail
