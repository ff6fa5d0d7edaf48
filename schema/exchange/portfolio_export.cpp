#include "schema/exchange/portfolio_export.h"

#include <cmath>
#include <fstream>
#include <functional>
#include <system_error>
#include <tuple>

#include "core/base/text.h"
#include "core/forecast/wall/wall_data.h"
#include "schema/exchange/csv.h"
#include "schema/exchange/portfolio_rows.h"

namespace kneerail::exchange {
namespace {

constexpr std::int64_t rows_between_calls = 20'000;

std::string number_text(const std::optional<double>& value, int digits) {
  if (!value) return {};
  return scaled_to_text(std::llround(*value * std::pow(10.0, digits)), digits);
}

std::string number_text(double value, int digits) {
  return number_text(std::optional(value), digits);
}

/// There are no columns for loads: what they ask of the wall goes out as its limit. Up to the next
/// hundredth, so that nobody is told later than here.
std::string wall_limit_text(const forecast::Part& part) {
  constexpr double hair_mm = 1e-6;
  const auto limit_mm = forecast::governing_wall_mm(part);
  if (!limit_mm) return {};
  return number_text(std::ceil((*limit_mm - hair_mm) * 100) / 100, 2);
}

template <class Code>
std::string_view word(std::span<const Word> words, Code code) {
  return word_of(words, static_cast<int>(code));
}

class Exporter {
 public:
  Exporter(PortfolioTables& from, const ExportOptions& options) : from_(from), options_(options) {}

  Result<std::vector<FileCount>> run();

 private:
  using Fill = std::function<Result<>(csv::Writer&, FileCount&)>;
  Result<> write(std::string_view name, std::span<const SheetColumn> columns, const Fill& fill);
  Result<> settings(csv::Writer& out, FileCount& count);
  Result<> components(csv::Writer& out, FileCount& count);
  Result<> visits(csv::Writer& out, FileCount& count);
  Result<> readings(csv::Writer& out, FileCount& count);
  Result<> works(csv::Writer& out, FileCount& count);
  void reading(csv::Writer& out, const ReadingFact& fact, std::size_t place) const;

  PortfolioTables& from_;
  const ExportOptions& options_;
  std::vector<FileCount> counts_;
};

Result<> Exporter::write(std::string_view name, std::span<const SheetColumn> columns,
                         const Fill& fill) {
  const auto path = options_.folder / name;
  const auto unsaved = [&path] {
    return fail(Fault::io, path.string() + " could not be written. Is the disk full?");
  };
  std::ofstream file(path, std::ios::binary | std::ios::trunc);
  if (!file) return unsaved();
  csv::Writer out(file);
  for (const auto& column : columns) out.field(column.name);
  out.end_row();
  FileCount count;
  count.file = name;
  if (auto ok = fill(out, count); !ok) return ok;
  file.flush();
  if (!file) return unsaved();
  counts_.push_back(std::move(count));
  return Done{};
}

/// Limits are written when all sites of the file agree.
Result<> Exporter::settings(csv::Writer& out, FileCount& count) {
  const auto row = [&](std::string_view key, std::string_view value) {
    out.field(key).field(value).end_row();
    ++count.rows_read;
  };
  if (options_.as_of) row("as_of_date", to_text(*options_.as_of));
  const auto& limits = from_.limits();
  bool same_gone = !limits.empty();
  bool same_grade = !limits.empty();
  for (const auto& site : limits) {
    same_gone = same_gone && site.zinc_gone_um == limits.front().zinc_gone_um;
    same_grade = same_grade && site.replace_grade == limits.front().replace_grade;
  }
  if (same_gone && limits.front().zinc_gone_um)
    row("zinc_gone_um", number_text(limits.front().zinc_gone_um, 1));
  if (same_grade && limits.front().replace_grade)
    row("replace_grade", std::to_string(*limits.front().replace_grade));
  return Done{};
}

Result<> Exporter::components(csv::Writer& out, FileCount& count) {
  for (const auto& part : from_.parts()) {
    out.free_text(part.id).free_text(part.site).free_text(part.zone).free_text(part.run);
    out.field(number_text(part.chainage_m, 3)).field(word(kind_words(), part.kind));
    out.field(word(material_words(), part.material)).field(word(exposure_words(), part.exposure));
    out.field(part.category ? word(category_words(), *part.category) : std::string_view{});
    out.field(number_text(part.zinc_rate_um_per_year, 3));
    out.field(number_text(part.zinc_rate_ln_sd, 3));
    out.field(part.installed ? to_text(*part.installed) : std::string());
    out.field(number_text(part.nominal_coating_um, 1));
    out.field(number_text(part.first_maintenance_um, 1));
    out.field(std::to_string(part.reference_areas));
    out.field(number_text(part.wall_nominal_mm, 1)).field(wall_limit_text(part));
    out.field(number_text(part.steel_rate_um_per_year, 3));
    out.field(number_text(part.torque_target_nm, 1)).field(number_text(part.torque_minimum_nm, 1));
    out.end_row();
    ++count.rows_read;
  }
  return Done{};
}

Result<> Exporter::visits(csv::Writer& out, FileCount& count) {
  for (const auto& visit : from_.visits()) {
    out.free_text(visit.id).free_text(visit.site).field(to_text(visit.day));
    out.free_text(visit.inspector).free_text(visit.coating_gauge).free_text(visit.wall_gauge);
    out.free_text(visit.wrench);
    out.field(number_text(visit.foil_true_um, 1)).field(number_text(visit.foil_read_um, 1));
    out.end_row();
    ++count.rows_read;
  }
  return Done{};
}

void Exporter::reading(csv::Writer& out, const ReadingFact& fact, std::size_t place) const {
  const auto& visit = from_.visits()[static_cast<std::size_t>(fact.visit)];
  const std::string number = std::to_string(place + 1);
  out.field(to_text(fact.record) + "." + number);
  out.free_text(from_.parts()[static_cast<std::size_t>(fact.part)].id).free_text(visit.id);
  out.field(word(quantity_words(), fact.quantity));
  out.field(fact.quantity == forecast::Quantity::wall_mm ? clock_text(fact.spot)
                                                         : spot_text(fact.spot));
  out.field(number);
  out.field(scaled_to_text(fact.values[place], quantity_digits(fact.quantity)));
  out.field(word(censoring_words(), fact.censoring));
  out.field(fact.wrench_set_tenth_nm ? scaled_to_text(*fact.wrench_set_tenth_nm, 1)
                                     : std::string());
  const bool is_of_its_own = fact.at != noon_utc(visit.day) && (fact.seen || fact.is_as_stated);
  out.field(is_of_its_own ? to_text(fact.at) : std::string());
  const bool grade = fact.quantity == forecast::Quantity::grade;
  out.field(!grade ? "" : fact.carried ? "1" : "0");
  out.field(word(how_words(), fact.how)).field(word(surface_words(), fact.surface));
  out.end_row();
}

Result<> Exporter::readings(csv::Writer& out, FileCount& count) {
  std::int64_t next_call = rows_between_calls;
  return from_.each_reading([&](const ReadingFact& fact) -> Result<> {
    if (fact.is_void || fact.is_held) return Done{};
    for (std::size_t place = 0; place < fact.values.size(); ++place) reading(out, fact, place);
    count.rows_read += static_cast<std::int64_t>(fact.values.size());
    if (count.rows_read < next_call) return Done{};
    next_call += rows_between_calls;
    if (options_.progress && !options_.progress(count.rows_read, 0, "writing readings.csv"))
      return fail(Fault::cancelled, "Stopped: readings.csv is not complete. Export again.");
    return Done{};
  });
}

/// A part's works of one day, action and screw are one row: the last one written.
Result<> Exporter::works(csv::Writer& out, FileCount& count) {
  auto works = from_.works();
  if (!works) return fail(works.error());
  const auto key = [](const forecast::Work& work) {
    return std::tuple(work.part, work.day, work.action, work.screw);
  };
  for (std::size_t i = 0; i < works->size(); ++i) {
    const auto& work = (*works)[i];
    if (i + 1 < works->size() && key((*works)[i + 1]) == key(work)) continue;
    out.free_text(from_.parts()[static_cast<std::size_t>(work.part)].id);
    out.field(to_text(work.day)).field(word(action_words(), work.action));
    out.field(number_text(work.new_nominal_coating_um, 1)).field(number_text(work.as_left_nm, 1));
    out.field(spot_text(work.screw));
    out.end_row();
    ++count.rows_read;
  }
  return Done{};
}

Result<std::vector<FileCount>> Exporter::run() {
  std::error_code failed;
  std::filesystem::create_directories(options_.folder, failed);
  if (failed)
    return fail(Fault::io, options_.folder.string() + " could not be made: " + failed.message());
  static constexpr SheetColumn keys[] = {{"key"}, {"value"}};
  using Part = Result<> (Exporter::*)(csv::Writer&, FileCount&);
  const std::tuple<std::string_view, std::span<const SheetColumn>, Part> files[] = {
      {portfolio_file, keys, &Exporter::settings},
      {components_file, component_columns(), &Exporter::components},
      {visits_file, visit_columns(), &Exporter::visits},
      {readings_file, reading_columns(), &Exporter::readings},
      {interventions_file, work_columns(), &Exporter::works}};
  for (const auto& [name, columns, part] : files) {
    const auto fill = [this, part = part](csv::Writer& out, FileCount& count) {
      return (this->*part)(out, count);
    };
    if (auto ok = write(name, columns, fill); !ok) return fail(ok.error());
  }
  return std::move(counts_);
}

}  // namespace

Result<std::vector<FileCount>> export_portfolio(Database& tables, const ExportOptions& options) {
  const auto snapshot = Snapshot::begin(tables);
  if (!snapshot) return fail(snapshot.error(), "The register could not be read: ");
  auto from = PortfolioTables::open(
      tables, {.as_of = options.as_of, .sites = options.sites, .settings = {}});
  if (!from) return fail(from.error(), "The register could not be read: ");
  return Exporter(**from, options).run();
}

}  // namespace kneerail::exchange
