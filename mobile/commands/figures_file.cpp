#include "mobile/commands/figures_file.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <fstream>
#include <optional>
#include <set>
#include <vector>

#include "core/base/text.h"
#include "schema/exchange/csv.h"

namespace kneerail::commands {

namespace {

using forecast::OwnerFigures;
using forecast::SiteFigures;
using forecast::TypeFigures;

constexpr std::string_view money = "money";  // the organisation's currency

struct TypeColumn {
  std::string_view figure;
  std::string_view unit;
  std::optional<double> TypeFigures::*field;
};
constexpr TypeColumn type_columns[] = {{"price", money, &TypeFigures::price},
                                       {"lead_time", "days", &TypeFigures::lead_time_days},
                                       {"hours", "h", &TypeFigures::hours_per_replacement}};

struct SiteColumn {
  std::string_view figure;
  std::string_view unit;
  std::optional<double> SiteFigures::*field;
};
constexpr SiteColumn site_columns[] = {
    {"spare_chance", "%", &SiteFigures::spare_chance},
    {"discount_rate", "%", &SiteFigures::discount_rate},
    {"visit_cost", money, &SiteFigures::cost_of_visit},
    {"hour_cost", money, &SiteFigures::cost_of_hour},
    {"closed_day_cost", money, &SiteFigures::cost_of_closed_day},
    {"visit_every", "years", &SiteFigures::years_between_visits},
    {"strikes_a_year", "strikes", &SiteFigures::strikes_per_year},
    {"strike_hours", "h", &SiteFigures::hours_per_strike}};

class FiguresReader {
 public:
  FiguresReader(const ForecastInput& input, OwnerFigures& figures, std::ostream& notes)
      : input_(input), figures_(figures), notes_(notes) {}

  Result<> read(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    if (!in)
      return fail(Fault::io, "The figures in " + file + " could not be read. Is the file there?");
    csv::Reader rows(in);
    csv::Row row;
    bool headed = false;
    for (;;) {
      const auto more = rows.next(row);
      if (!more) return fail(more.error());
      if (!*more) break;
      if (!row.problem.empty()) return wrong(file, row, row.problem);
      if (!headed) {
        headed = true;
        if (row.fields != std::vector<std::string>{"figure", "of", "value", "unit"})
          return wrong(file, row, "the header must be figure,of,value,unit.");
        continue;
      }
      if (const std::string problem = take(row); !problem.empty()) return wrong(file, row, problem);
    }
    return Done{};
  }

 private:
  static Error wrong(const std::string& file, const csv::Row& row, const std::string& problem) {
    return fail(Fault::invalid_input, file + ", line " + std::to_string(row.line) + ": " + problem +
                                          " Nothing was reckoned; mend the file.");
  }

  /// Empty when the row was taken or noted; else what is wrong with it.
  std::string take(const csv::Row& row) {
    if (row.fields.size() != 4) return "it has not four fields.";
    const auto value = double_from_text(row.fields[2]);
    if (!value || !(*value >= 0)) return "'" + row.fields[2] + "' is no number from 0 up.";
    const std::string& figure = row.fields[0];
    for (const TypeColumn& column : type_columns)
      if (column.figure == figure) return take_of_type(row, column, *value);
    for (const SiteColumn& column : site_columns)
      if (column.figure == figure) return take_of_site(row, column, *value);
    if (figure == "on_order") return take_order(row, *value);
    std::string known = "on_order";
    for (const TypeColumn& column : type_columns) known += ", " + std::string(column.figure);
    for (const SiteColumn& column : site_columns) known += ", " + std::string(column.figure);
    return "'" + figure + "' is no figure. There are: " + known + ".";
  }

  [[nodiscard]] std::string unit_problem(const csv::Row& row, std::string_view unit) const {
    const std::string wanted(unit == money ? std::string_view(figures_.currency) : unit);
    if (row.fields[3] == wanted) return {};
    return "the unit of " + row.fields[0] + " is " +
           (wanted.empty() ? "the organisation's currency, which no record names" : wanted) +
           ", not '" + row.fields[3] + "'.";
  }

  /// How many types bear the name; a reference is one type's alone.
  [[nodiscard]] std::ptrdiff_t types_named(const std::string& of) const {
    if (of.empty() || figures_.types.contains(of)) return 0;
    return std::count_if(figures_.types.begin(), figures_.types.end(),
                         [&](const auto& one) { return one.second.name == of; });
  }

  [[nodiscard]] std::optional<std::string> type_of(const std::string& of) const {
    if (figures_.types.contains(of)) return of;
    for (const auto& [reference, type] : figures_.types)
      if (of == reference || (!of.empty() && of == type.name)) return reference;
    for (const forecast::Part& part : input_.portfolio.parts)
      if (!of.empty() && part.component_type == of) return of;
    return std::nullopt;
  }

  std::string take_of_type(const csv::Row& row, const TypeColumn& column, double value) {
    if (auto problem = unit_problem(row, column.unit); !problem.empty()) return problem;
    if (types_named(row.fields[1]) > 1)
      return "more than one component type is called '" + row.fields[1] +
             "': write the reference of the one that is meant.";
    const auto type = type_of(row.fields[1]);
    if (!type) return "there is no component type '" + row.fields[1] + "' in the register.";
    fill(row, figures_.types[*type].*column.field, value);
    return {};
  }

  std::string take_of_site(const csv::Row& row, const SiteColumn& column, double value) {
    if (auto problem = unit_problem(row, column.unit); !problem.empty()) return problem;
    if (column.unit == "%" && value > 100) return "'" + row.fields[2] + "' is over 100 %.";
    if (column.unit == "%") value /= 100;
    bool found = false;
    for (const auto& [reference, name] : input_.places.sites) {
      if (!row.fields[1].empty() && row.fields[1] != reference && row.fields[1] != name) continue;
      found = true;
      fill(row, figures_.sites[reference].*column.field, value);
    }
    return found ? std::string() : "there is no site '" + row.fields[1] + "' in the register.";
  }

  std::string take_order(const csv::Row& row, double value) {
    if (auto problem = unit_problem(row, "pieces"); !problem.empty()) return problem;
    constexpr double most = 1'000'000;
    if (value > most || std::floor(value) != value)
      return "'" + row.fields[2] + "' is no whole number of pieces up to 1,000,000.";
    if (types_named(row.fields[1]) > 1)
      return "more than one component type is called '" + row.fields[1] +
             "': write the reference of the one that is meant.";
    const auto type = type_of(row.fields[1]);
    if (!type) return "there is no component type '" + row.fields[1] + "' in the register.";
    std::set<std::string> depots;
    for (const forecast::Part& part : input_.portfolio.parts)
      if (part.component_type == *type) depots.insert(part.depot);
    if (depots.size() > 1)
      return "more than one depot keeps '" + row.fields[1] +
             "': which of them ordered is not said.";
    for (const std::string& depot : depots)
      figures_.on_order[{depot, *type}] = static_cast<std::int64_t>(value);
    return {};
  }

  void fill(const csv::Row& row, std::optional<double>& figure, double value) {
    if (!figure) {
      figure = value;
      return;
    }
    notes_ << "Line " << row.line << ": " << row.fields[0] << " of "
           << (row.fields[1].empty() ? "a site" : row.fields[1])
           << " is there already; this one is not used.\n";
  }

  const ForecastInput& input_;
  OwnerFigures& figures_;
  std::ostream& notes_;
};

}  // namespace

Result<> add_figures_of(const std::string& file, const ForecastInput& input,
                        forecast::OwnerFigures& figures, std::ostream& notes) {
  OwnerFigures made = figures;
  if (auto done = FiguresReader(input, made, notes).read(file); !done) return done;
  figures = std::move(made);
  return Done{};
}

}  // namespace kneerail::commands
