#include "schema/exchange/portfolio_folder.h"

#include <algorithm>
#include <unordered_map>
#include <utility>

#include "schema/exchange/portfolio_entries.h"
#include "schema/store/portfolio_store.h"

namespace kneerail::exchange {
namespace {

std::optional<double> divided(const std::optional<std::int64_t>& number, double by) {
  if (!number) return std::nullopt;
  return static_cast<double>(*number) / by;
}

/// What a zone or site says holds for each of its parts, also those whose row left it empty.
forecast::Part part_of(const ComponentRow& row, const ZoneRow& zone, const SiteRow& site,
                       const forecast::Settings& settings) {
  forecast::Part part;
  part.id = row.id;
  part.site = row.site;
  part.zone = row.zone;
  part.run = row.run;
  part.chainage_m = static_cast<double>(row.chainage_mm) / 1000;
  part.kind = row.kind;
  part.material = row.material;
  part.exposure = row.exposure;
  part.category = zone.category;
  part.zinc_rate_um_per_year = zone.zinc_rate_um_per_year;
  part.prior_is_category = zone.zinc_rate_um_per_year && zone.category &&
                           is_category_rate(*zone.zinc_rate_um_per_year, *zone.category, settings);
  part.zinc_rate_ln_sd = divided(zone.zinc_rate_ln_sd_thousandth, 1000);
  part.installed = row.installed;
  part.nominal_coating_um = divided(row.coating_nominal_tenth_um, 10);
  part.first_maintenance_um = divided(site.first_maintenance_tenth_um, 10);
  part.reference_areas = static_cast<int>(row.reference_areas);
  part.wall_nominal_mm = divided(row.wall_nominal_tenth_mm, 10);
  part.wall_limit_mm = divided(row.wall_limit_hundredth_mm, 100);
  part.steel_rate_um_per_year = zone.steel_rate_um_per_year;
  part.torque_target_nm = divided(row.torque_target_tenth_nm, 10);
  part.torque_minimum_nm = divided(row.torque_minimum_tenth_nm, 10);
  part.component_type = type_reference(row);
  take_off_unused(part);
  assume_rate(part, settings);
  return part;
}

forecast::Visit visit_of(const VisitRow& row) {
  return {row.id,
          row.site,
          row.day,
          row.inspector,
          row.coating_gauge,
          row.wall_gauge,
          row.wrench,
          divided(row.foil_true_tenth_um, 10),
          divided(row.foil_read_tenth_um, 10)};
}

double unit_of(forecast::Quantity quantity) {
  const int digits = quantity_digits(quantity);
  return digits == 2 ? 100 : digits == 1 ? 10 : 1;
}

class FolderReader {
 public:
  FolderReader(CheckedPortfolio& from, FolderPortfolio& into, const TimeZone& zone)
      : from_(from), into_(into.portfolio), zone_(zone) {}

  Result<> run();

 private:
  void add_parts();
  void add_limits();
  void add_visits();
  void add_works();
  Result<> add_readings();
  void add_reading(const StagedReading& staged, std::int32_t visit);

  CheckedPortfolio& from_;
  forecast::Portfolio& into_;
  const TimeZone& zone_;
  std::vector<std::int32_t> visit_places_;  ///< -1: after the day asked
};

void FolderReader::add_parts() {
  std::unordered_map<std::string, const ZoneRow*> zones;
  std::unordered_map<std::string, const SiteRow*> sites;
  for (const auto& zone : from_.zones) zones[zone.id] = &zone;
  for (const auto& site : from_.sites) sites[site.id] = &site;
  into_.parts.reserve(from_.components.size());
  for (const auto& row : from_.components)
    into_.parts.push_back(part_of(row, *zones[row.zone], *sites[row.site], into_.settings));
}

void FolderReader::add_limits() {
  for (const auto& site : from_.sites) {
    forecast::SiteLimits limits{site.id, divided(from_.zinc_gone_tenth_um, 10), {}};
    if (from_.replace_grade) limits.replace_grade = static_cast<int>(*from_.replace_grade);
    into_.limits.push_back(std::move(limits));
    into_.sites_asked.push_back(site.id);
  }
  std::sort(into_.limits.begin(), into_.limits.end(),
            [](const auto& a, const auto& b) { return a.site < b.site; });
  std::sort(into_.sites_asked.begin(), into_.sites_asked.end());
  into_.sites_aboard = into_.sites_asked;
}

void FolderReader::add_visits() {
  for (const auto& row : from_.visits) {
    const bool known = row.day <= into_.as_of;
    visit_places_.push_back(known ? static_cast<std::int32_t>(into_.visits.size()) : -1);
    if (known) into_.visits.push_back(visit_of(row));
  }
}

void FolderReader::add_works() {
  for (const auto& work : from_.works) {
    const WorkRow& row = work.row;
    if (row.day > into_.as_of) continue;
    into_.works.push_back({work.component, row.day, row.action,
                           divided(row.new_coating_nominal_tenth_um, 10),
                           divided(row.as_left_tenth_nm, 10), row.screw, false});
  }
}

void FolderReader::add_reading(const StagedReading& staged, std::int32_t visit) {
  const ReadingRow& row = staged.row;
  const forecast::Part& part = into_.parts[static_cast<std::size_t>(staged.component)];
  const Date visit_day = into_.visits[static_cast<std::size_t>(visit)].day;
  const Date day = row.seen_at ? zone_.day_of_entry(*row.seen_at) : visit_day;
  if (day > into_.as_of) return;
  if (const auto reason = reason_to_leave_out(part, row.quantity); !reason.empty()) {
    into_.left_out.push_back({row.id, part.id, std::string(reason)});
    return;
  }
  forecast::Reading reading;
  reading.id = row.id;
  reading.part = staged.component;
  reading.visit = visit;
  reading.quantity = row.quantity;
  reading.spot = row.spot;
  reading.replicate = row.replicate;
  reading.censoring = row.censoring;
  reading.surface = row.surface;
  reading.how = row.how;
  reading.carried = row.carried;
  reading.value = static_cast<double>(row.value) / unit_of(row.quantity);
  reading.wrench_set_nm = divided(row.wrench_set_tenth_nm, 10);
  if (day != visit_day) reading.seen = day;
  into_.readings.push_back(std::move(reading));
}

Result<> FolderReader::add_readings() {
  into_.readings.reserve(static_cast<std::size_t>(from_.readings->count()));
  for (std::size_t place = 0; place < from_.visits.size(); ++place) {
    if (visit_places_[place] < 0) continue;
    auto begun = from_.readings->begin_visit(static_cast<std::int32_t>(place));
    if (!begun) return begun;
    StagedReading staged;
    while (true) {
      auto more = from_.readings->next(staged);
      if (!more) return fail(more.error());
      if (!*more) break;
      add_reading(staged, visit_places_[place]);
    }
  }
  return Done{};
}

Result<> FolderReader::run() {
  add_parts();
  add_limits();
  add_visits();
  add_works();
  for (const auto& [reading, part] : from_.millimetres)
    into_.left_out.push_back({reading, part, "unit_mm"});
  return add_readings();
}

Date last_day(const CheckedPortfolio& portfolio) {
  Date day;
  for (const auto& visit : portfolio.visits) day = std::max(day, visit.day);
  return day;
}

}  // namespace

Result<FolderPortfolio> read_portfolio_folder(const std::filesystem::path& folder,
                                              std::optional<Date> as_of,
                                              const forecast::Settings& settings,
                                              const TimeZone& zone) {
  auto checked = check_portfolio(folder, {});
  if (!checked) return fail(checked.error());
  CheckedPortfolio& from = **checked;
  FolderPortfolio made;
  made.portfolio.settings = settings;
  made.portfolio.as_of = as_of ? *as_of : from.as_of.value_or(last_day(from));
  if (auto read = FolderReader(from, made, zone).run(); !read) return fail(read.error());
  made.bad = std::move(from.bad);
  made.files.assign(from.files.begin(), from.files.end());
  made.notes = std::move(from.notes);
  return made;
}

}  // namespace kneerail::exchange
