#include "schema/exchange/checked_portfolio.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>
#include <unordered_set>
#include <utility>

#include "core/base/text.h"
#include "schema/exchange/slips.h"

namespace kneerail::exchange {
namespace {

constexpr std::int64_t rows_between_calls = 5'000;
constexpr Measure coating_um{"µm", 1, 0, 20'000};

std::string line_text(std::int64_t line) {
  return "line " + std::to_string(line);
}

/// Identifiers of one file: where each stands, and which were refused and on which line.
struct Known {
  std::unordered_map<std::string, std::int32_t> places;
  std::unordered_map<std::string, std::int64_t> refused;
  std::int64_t unread_line = 0;  ///< of the first row whose identifier could not be read; 0: none

  /// The place, or a sentence why there is none.
  [[nodiscard]] std::optional<std::int32_t> find(const std::string& id) const {
    const auto found = places.find(id);
    return found == places.end() ? std::nullopt : std::optional(found->second);
  }
  [[nodiscard]] std::string missing(const std::string& id, std::string_view file) const {
    const auto found = refused.find(id);
    if (found == refused.end() && unread_line > 0)
      return "is not in " + std::string(file) + ", where a row could not be read: see " +
             line_text(unread_line) + ".";
    if (found == refused.end()) return "is not in " + std::string(file) + ".";
    return "is left out: see " + std::string(file) + ", " + line_text(found->second) + ".";
  }
};

class Checker {
 public:
  Checker(const std::filesystem::path& folder, const Progress& progress)
      : folder_(folder), progress_(progress), all_(std::make_unique<CheckedPortfolio>()) {
    constexpr std::string_view names[] = {portfolio_file, components_file, visits_file,
                                          readings_file, interventions_file};
    for (std::size_t i = 0; i < file_count; ++i) all_->files[i].file = names[i];
  }

  Result<std::unique_ptr<CheckedPortfolio>> run(const std::filesystem::path& staging);

 private:
  using Take = std::function<Result<bool>(Sheet&)>;  ///< false: the row is left out

  Result<> each(FileNumber number, std::span<const SheetColumn> columns, const Take& take);
  Result<> open_staging(const std::filesystem::path& staging);
  Result<bool> take_setting(Sheet& sheet);
  Result<bool> take_component(Sheet& sheet);
  Result<bool> take_visit(Sheet& sheet);
  Result<bool> take_reading(Sheet& sheet);
  Result<bool> take_work(Sheet& sheet);
  bool fits_zone(Sheet& sheet, const ComponentRow& row);
  bool fits_run(Sheet& sheet, const ComponentRow& row);
  bool fits_site(Sheet& sheet, const ComponentRow& row);
  void note_unread(FileNumber number, std::int64_t line);
  bool is_reading_possible(Sheet& sheet, const ReadingRow& row, const ComponentRow& part);
  void note_millimetres(Sheet& sheet, const ReadingRow& row);
  Result<> settle_readings();
  template <class Row>
  static void sort(std::vector<Row>& rows, Known& known);

  const std::filesystem::path& folder_;
  const Progress& progress_;
  std::unique_ptr<CheckedPortfolio> all_;
  Known components_;
  Known visits_;
  std::unordered_map<std::string, std::size_t> sites_;
  std::unordered_map<std::string, std::size_t> zones_;
  std::unordered_map<std::string, std::size_t> runs_;
  std::unordered_map<std::string, std::int64_t> works_;
  std::array<std::int64_t, file_count> unread_lines_{};  ///< by file: the first such row
};

Result<> Checker::each(FileNumber number, std::span<const SheetColumn> columns, const Take& take) {
  FileCount& count = all_->files[number];
  const auto path = folder_ / count.file;
  std::error_code unseen;
  if (number != components_number && !std::filesystem::exists(path, unseen)) return Done{};
  const auto bytes = static_cast<std::int64_t>(std::filesystem::file_size(path, unseen));
  auto opened = Sheet::open(path, columns, all_->bad);
  if (!opened) return fail(opened.error());
  Sheet& sheet = **opened;
  for (const auto& name : sheet.unknown_columns())
    all_->notes.push_back(count.file + ": the column " + name + " is not known and was kept out.");
  while (true) {
    auto more = sheet.next();
    if (!more) return fail(more.error());
    if (!*more) break;
    auto taken = take(sheet);
    if (!taken) return fail(taken.error());
    if (!*taken) ++count.left_out;
    if (progress_ && sheet.rows() % rows_between_calls == 0 &&
        !progress_(sheet.bytes_done(), bytes, "checking " + count.file))
      return fail(Fault::cancelled, "Stopped while checking " + count.file +
                                        ". Nothing was imported; import again when you like.");
  }
  count.rows_read = sheet.rows();
  count.left_out += sheet.unreadable();
  if (sheet.unreadable() > 0) note_unread(number, sheet.first_unreadable_line());
  return Done{};
}

void Checker::note_unread(FileNumber number, std::int64_t line) {
  std::int64_t& first = unread_lines_[number];
  first = first == 0 ? line : std::min(first, line);
}

Result<bool> Checker::take_setting(Sheet& sheet) {
  const auto key = sheet.text(0);
  if (key == "as_of_date") {
    all_->as_of = sheet.date(1);
  } else if (key == "zinc_gone_um") {
    all_->zinc_gone_tenth_um = sheet.scaled(1, coating_um);
  } else if (key == "replace_grade") {
    all_->replace_grade = sheet.whole(1, 2, 5);
  } else if (key != "shape" && key != "seed" && key != "components") {
    all_->notes.push_back(std::string(portfolio_file) + ": the key " + std::string(key) +
                          " is not known and was kept out.");
  }
  return sheet.row_is_good();
}

/// Two rows of one zone, run or site must say the same; the first one said counts.
template <class Value>
bool same_or_first(Sheet& sheet, int column, std::optional<Value>& said,
                   const std::optional<Value>& row, const std::string& where) {
  if (!row) return true;
  if (!said) {
    said = row;
    return true;
  }
  if (*said == *row) return true;
  sheet.refuse(column, "differs from " + where + ".");
  return false;
}

bool Checker::fits_site(Sheet& sheet, const ComponentRow& row) {
  const auto [found, is_new] = sites_.try_emplace(row.site, all_->sites.size());
  if (is_new) all_->sites.push_back({row.site, {}, row.line});
  SiteRow& site = all_->sites[found->second];
  constexpr int first_maintenance_column = 13;
  return same_or_first(
      sheet, first_maintenance_column, site.first_maintenance_tenth_um,
      row.first_maintenance_tenth_um,
      "the first maintenance of site " + site.id + " said before (a site has one)");
}

bool Checker::fits_zone(Sheet& sheet, const ComponentRow& row) {
  enum : int { site_column = 1, category_column = 8, zinc_column, sd_column, steel_column = 17 };
  const auto [found, is_new] = zones_.try_emplace(row.zone, all_->zones.size());
  if (is_new) {
    ZoneRow zone;
    zone.id = row.zone;
    zone.site = row.site;
    zone.line = row.line;
    all_->zones.push_back(zone);
  }
  ZoneRow& zone = all_->zones[found->second];
  const std::string where = "zone " + zone.id + " on " + line_text(zone.line);
  if (zone.site != row.site) {
    sheet.refuse(site_column, "is another site than that of " + where + ", " + zone.site + ".");
    return false;
  }
  return same_or_first(sheet, category_column, zone.category, row.category, where) &&
         same_or_first(sheet, zinc_column, zone.zinc_rate_um_per_year, row.zinc_rate_um_per_year,
                       where) &&
         same_or_first(sheet, sd_column, zone.zinc_rate_ln_sd_thousandth,
                       row.zinc_rate_ln_sd_thousandth, where) &&
         same_or_first(sheet, steel_column, zone.steel_rate_um_per_year, row.steel_rate_um_per_year,
                       where);
}

bool Checker::fits_run(Sheet& sheet, const ComponentRow& row) {
  const auto [found, is_new] = runs_.try_emplace(row.run, all_->runs.size());
  if (is_new) all_->runs.push_back({row.run, row.zone, row.line});
  const RunRow& run = all_->runs[found->second];
  if (run.zone == row.zone) return true;
  constexpr int zone_column = 2;
  sheet.refuse(zone_column, "is another zone than that of run " + run.id + " on " +
                                line_text(run.line) + ", " + run.zone + ".");
  return false;
}

Result<bool> Checker::take_component(Sheet& sheet) {
  ComponentRow row = component_row(sheet);
  constexpr int id_column = 0;
  if (const auto known = components_.find(row.id)) {
    sheet.refuse(id_column, "stands on " +
                                line_text(all_->components[static_cast<std::size_t>(*known)].line) +
                                " already.");
    return false;
  }
  const bool good =
      sheet.row_is_good() && fits_zone(sheet, row) && fits_run(sheet, row) && fits_site(sheet, row);
  if (!good) {
    if (row.id.empty()) note_unread(components_number, row.line);
    components_.refused.try_emplace(row.id, row.line);
    return false;
  }
  components_.places.emplace(row.id, static_cast<std::int32_t>(all_->components.size()));
  all_->components.push_back(std::move(row));
  return true;
}

Result<bool> Checker::take_visit(Sheet& sheet) {
  VisitRow row = visit_row(sheet);
  enum : int { id_column, site_column };
  if (const auto known = visits_.find(row.id)) {
    sheet.refuse(id_column, "stands on " +
                                line_text(all_->visits[static_cast<std::size_t>(*known)].line) +
                                " already.");
    return false;
  }
  if (!row.site.empty() && !sites_.contains(row.site))
    sheet.refuse(site_column,
                 "no component of " + std::string(components_file) + " stands at this site.");
  if (!sheet.row_is_good()) {
    if (row.id.empty()) note_unread(visits_number, row.line);
    visits_.refused.try_emplace(row.id, row.line);
    return false;
  }
  visits_.places.emplace(row.id, static_cast<std::int32_t>(all_->visits.size()));
  all_->visits.push_back(std::move(row));
  return true;
}

bool Checker::is_reading_possible(Sheet& sheet, const ReadingRow& row, const ComponentRow& part) {
  enum : int { spot_column = 4, value_column = 6 };
  if (row.quantity == forecast::Quantity::wall_mm && part.wall_nominal_tenth_mm &&
      row.value > *part.wall_nominal_tenth_mm * 20) {
    sheet.refuse(value_column, "a wall of " + scaled_to_text(row.value, 2) +
                                   " mm does not fit a tube with one of " +
                                   scaled_to_text(*part.wall_nominal_tenth_mm, 1) + " mm." +
                                   tenth_meant(sheet.text(value_column), {"mm", 2, 1, 5'000}));
    return false;
  }
  if (row.quantity == forecast::Quantity::coating_um && sheet.text(spot_column).empty() &&
      part.reference_areas > 1) {
    sheet.refuse(spot_column, "which of the " + std::to_string(part.reference_areas) +
                                  " reference areas of " + part.id + " was measured?");
    return false;
  }
  return true;
}

/// Remembers a coating refused as finer than the unit whose thousandfold is a likely coating.
void Checker::note_millimetres(Sheet& sheet, const ReadingRow& row) {
  if (row.quantity != forecast::Quantity::coating_um || all_->millimetres.size() >= 100'000) return;
  constexpr int value_column = 6;
  const auto value = double_from_text(sheet.text(value_column));
  if (value && *value > 0 && *value < 0.3 && *value * 1000 >= 10)
    all_->millimetres.emplace_back(row.id, row.component);
}

Result<bool> Checker::take_reading(Sheet& sheet) {
  enum : int { component_column = 1, visit_column };
  StagedReading staged;
  staged.row = reading_row(sheet);
  const ReadingRow& row = staged.row;
  if (!sheet.row_is_good()) note_millimetres(sheet, row);
  const auto component = components_.find(row.component);
  const auto visit = visits_.find(row.visit);
  if (!component && !row.component.empty())
    sheet.refuse(component_column, components_.missing(row.component, components_file));
  if (!visit && !row.visit.empty())
    sheet.refuse(visit_column, visits_.missing(row.visit, visits_file));
  if (!sheet.row_is_good() || !component || !visit) return false;
  const ComponentRow& part = all_->components[static_cast<std::size_t>(*component)];
  const VisitRow& of = all_->visits[static_cast<std::size_t>(*visit)];
  if (part.site != of.site) {
    sheet.refuse(visit_column, "is a visit of site " + of.site + ", and " + part.id +
                                   " stands at site " + part.site + ".");
    return false;
  }
  if (!is_reading_possible(sheet, row, part)) return false;
  staged.component = *component;
  staged.visit = *visit;
  if (const auto place = record_place(row.id)) staged.record = place->record;
  if (auto kept = all_->readings->add(staged); !kept) return fail(kept.error());
  return true;
}

Result<bool> Checker::take_work(Sheet& sheet) {
  constexpr int component_column = 0;
  CheckedWork work;
  work.row = work_row(sheet);
  const WorkRow& row = work.row;
  const auto component = components_.find(row.component);
  if (!component && !row.component.empty())
    sheet.refuse(component_column, components_.missing(row.component, components_file));
  if (!sheet.row_is_good() || !component) return false;
  const std::string key = row.component + '\n' + to_text(row.day) + '\n' +
                          std::to_string(static_cast<int>(row.action)) + '\n' +
                          std::to_string(row.screw);
  if (const auto [first, is_new] = works_.try_emplace(key, row.line); !is_new) {
    sheet.refuse_row("the same work stands on " + line_text(first->second) + " already.");
    return false;
  }
  work.component = *component;
  all_->works.push_back(std::move(work));
  return true;
}

template <class Row>
void Checker::sort(std::vector<Row>& rows, Known& known) {
  std::sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return a.id < b.id; });
  for (std::size_t i = 0; i < rows.size(); ++i)
    known.places[rows[i].id] = static_cast<std::int32_t>(i);
}

Result<> Checker::settle_readings() {
  return all_->readings->settle([this](const ReadingStaging::Twice& twice) {
    FileCount& count = all_->files[readings_number];
    ++count.left_out;
    if (twice.same_id)
      all_->bad.add({count.file, twice.line, "reading_id", twice.id,
                     "stands on " + line_text(twice.first_line) + " already."});
    else
      all_->bad.add(
          {count.file,
           twice.line,
           "replicate",
           {},
           "this replicate of this spot stands on " + line_text(twice.first_line) + " already."});
  });
}

Result<> Checker::open_staging(const std::filesystem::path& staging) {
  auto opened = ReadingStaging::open(staging);
  if (!opened) return fail(opened.error());
  all_->readings = std::move(*opened);
  return Done{};
}

Result<std::unique_ptr<CheckedPortfolio>> Checker::run(const std::filesystem::path& staging) {
  static constexpr SheetColumn settings[] = {{"key"}, {"value"}};
  const auto with = [this](Result<bool> (Checker::*take)(Sheet&)) {
    return [this, take](Sheet& sheet) { return (this->*take)(sheet); };
  };
  if (auto ok = open_staging(staging); !ok) return fail(ok.error());
  if (auto ok = each(portfolio_number, settings, with(&Checker::take_setting)); !ok)
    return fail(ok.error());
  if (auto ok = each(components_number, component_columns(), with(&Checker::take_component)); !ok)
    return fail(ok.error());
  sort(all_->components, components_);
  components_.unread_line = unread_lines_[components_number];
  if (auto ok = each(visits_number, visit_columns(), with(&Checker::take_visit)); !ok)
    return fail(ok.error());
  sort(all_->visits, visits_);
  visits_.unread_line = unread_lines_[visits_number];
  if (auto ok = each(readings_number, reading_columns(), with(&Checker::take_reading)); !ok)
    return fail(ok.error());
  if (auto ok = settle_readings(); !ok) return fail(ok.error());
  if (auto ok = each(interventions_number, work_columns(), with(&Checker::take_work)); !ok)
    return fail(ok.error());
  std::sort(all_->works.begin(), all_->works.end(), [](const CheckedWork& a, const CheckedWork& b) {
    const auto key = [](const CheckedWork& w) {
      return std::tuple(w.component, w.row.day, w.row.action, w.row.screw);
    };
    return key(a) < key(b);
  });
  all_->bad.sort();
  return std::move(all_);
}

}  // namespace

Result<std::unique_ptr<CheckedPortfolio>> check_portfolio(const std::filesystem::path& folder,
                                                          const std::filesystem::path& staging,
                                                          const Progress& progress) {
  return Checker(folder, progress).run(staging);
}

}  // namespace kneerail::exchange
