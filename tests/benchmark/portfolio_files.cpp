#include "tests/benchmark/portfolio_files.h"

#include <array>
#include <cmath>
#include <fstream>

#include "core/base/text.h"
#include "tests/support/made_portfolio.h"

namespace kneerail::benchmark {

namespace {

using forecast::Portfolio;

constexpr int run_parts = 25;

std::string day_or_nothing(const std::optional<Date>& day) {
  return day ? to_text(*day) : "";
}

std::string tenths_or_nothing(const std::optional<double>& value) {
  return value ? fixed(*value, 1) : "";
}

void write_components(std::ostream& out, const Portfolio& portfolio) {
  constexpr std::array kinds{"post_tube", "rail_tube", "fitting", "base_fixing"};
  out << "component_id,site_id,zone_id,run_id,chainage_m,kind,material,exposure,"
         "corrosivity_category,zinc_rate_prior_um_per_yr,install_date,nominal_coating_um,"
         "first_maintenance_um,reference_areas\n";
  int place = 0;
  for (const auto& part : portfolio.parts) {
    out << part.id << ',' << part.site << ',' << part.zone << ',' << part.run << ','
        << fixed(2.0 * (place++ % run_parts), 1) << ','
        << kinds.at(static_cast<std::size_t>(part.kind)) << ",zinc_coated_steel,open,C4,"
        << shortest(*part.zinc_rate_um_per_year) << ',' << day_or_nothing(part.installed) << ','
        << tenths_or_nothing(part.nominal_coating_um) << ','
        << tenths_or_nothing(part.first_maintenance_um) << ",1\n";
  }
}

void write_visits(std::ostream& out, const Portfolio& portfolio) {
  out << "visit_id,site_id,date,inspector_id,coating_gauge_id,foil_true_um,foil_read_um\n";
  for (const auto& visit : portfolio.visits) {
    out << visit.id << ',' << visit.site << ',' << to_text(visit.day) << ',' << visit.inspector
        << ',' << visit.coating_gauge << ',' << tenths_or_nothing(visit.foil_true_um) << ','
        << tenths_or_nothing(visit.foil_read_um) << '\n';
  }
}

void write_readings(std::ostream& out, const Portfolio& portfolio, int count) {
  out << "reading_id,component_id,visit_id,quantity,spot,replicate,value,censor\n";
  for (int i = 0; i < count; ++i) {
    const auto& reading = portfolio.readings[static_cast<std::size_t>(i)];
    out << reading.id << ',' << portfolio.parts[static_cast<std::size_t>(reading.part)].id << ','
        << portfolio.visits[static_cast<std::size_t>(reading.visit)].id << ",coating_um,"
        << reading.spot << ',' << reading.replicate << ',' << fixed(reading.value, 1) << ",exact\n";
  }
}

/// Enough parts for so many readings: each has about 25 from ten days of three replicates.
Portfolio made(std::uint64_t seed, int readings) {
  forecast::Recipe recipe;
  recipe.seed = seed;
  recipe.parts = run_parts;
  recipe.runs = 10;
  recipe.zones = 4;
  recipe.days = 10;
  recipe.measured = 1;
  const int site_parts = recipe.parts * recipe.runs * recipe.zones;
  recipe.sites = 1 + readings / (site_parts * 24);
  return forecast::made_portfolio(recipe).portfolio;
}

}  // namespace

Result<PortfolioFiles> write_portfolio_files(const std::filesystem::path& folder,
                                             std::uint64_t seed, int readings) {
  const Portfolio portfolio = made(seed, readings);
  const int count = std::min(readings, static_cast<int>(portfolio.readings.size()));
  std::filesystem::create_directories(folder);
  std::ofstream settings(folder / "portfolio.csv");
  settings << "key,value\nas_of_date," << to_text(portfolio.as_of) << "\n";
  std::ofstream components(folder / "components.csv");
  write_components(components, portfolio);
  std::ofstream visits(folder / "visits.csv");
  write_visits(visits, portfolio);
  std::ofstream rows(folder / "readings.csv");
  write_readings(rows, portfolio, count);
  if (!settings.flush() || !components.flush() || !visits.flush() || !rows.flush()) {
    return fail(Fault::io, folder.string() + ": the generated files cannot be written.");
  }
  return PortfolioFiles{.parts = static_cast<int>(portfolio.parts.size()), .readings = count};
}

}  // namespace kneerail::benchmark
