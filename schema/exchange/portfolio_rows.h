#pragma once

// The rows of a portfolio folder as they stand in its files: components.csv, visits.csv,
// readings.csv, interventions.csv. Whole numbers in the unit of the record they become; what is not
// known has no value. One reading of a row serves the import into a register and the forecast
// straight from the folder.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/forecast/portfolio.h"
#include "schema/exchange/sheet.h"

namespace kneerail::exchange {

inline constexpr std::string_view portfolio_file = "portfolio.csv";
inline constexpr std::string_view components_file = "components.csv";
inline constexpr std::string_view visits_file = "visits.csv";
inline constexpr std::string_view readings_file = "readings.csv";
inline constexpr std::string_view interventions_file = "interventions.csv";

struct ComponentRow {
  std::string id;
  std::string site;
  std::string zone;
  std::string run;
  std::int64_t chainage_mm = 0;
  forecast::PartKind kind = forecast::PartKind::fitting;
  forecast::Material material = forecast::Material::zinc_coated_steel;
  forecast::Exposure exposure = forecast::Exposure::unknown;
  std::optional<forecast::Category> category;
  std::optional<double> zinc_rate_um_per_year;  ///< 20-year mean
  std::optional<std::int64_t> zinc_rate_ln_sd_thousandth;
  std::optional<Date> installed;
  std::optional<std::int64_t> coating_nominal_tenth_um;
  std::optional<std::int64_t> first_maintenance_tenth_um;
  std::int64_t reference_areas = 1;
  std::optional<std::int64_t> wall_nominal_tenth_mm;
  std::optional<std::int64_t> wall_limit_hundredth_mm;
  std::optional<double> steel_rate_um_per_year;  ///< 20-year mean
  std::optional<std::int64_t> torque_target_tenth_nm;
  std::optional<std::int64_t> torque_minimum_tenth_nm;
  std::int64_t line = 0;
};

struct VisitRow {
  std::string id;
  std::string site;
  Date day;
  std::string inspector;      ///< empty: not named
  std::string coating_gauge;  ///< empty: none named
  std::string wall_gauge;
  std::string wrench;
  std::optional<std::int64_t> foil_true_tenth_um;
  std::optional<std::int64_t> foil_read_tenth_um;
  std::int64_t line = 0;
};

struct ReadingRow {
  std::string id;
  std::string component;
  std::string visit;
  forecast::Quantity quantity = forecast::Quantity::grade;
  /// Reference area or screw from 1; o'clock 1 to 12 of a wall reading; 0: none said.
  std::int16_t spot = 0;
  std::int16_t replicate = 1;
  std::int64_t value = 0;  ///< 0.1 µm, 0.01 mm, 0.1 N·m or the grade
  forecast::Censoring censoring = forecast::Censoring::exact;
  std::optional<std::int64_t> wrench_set_tenth_nm;
  std::optional<Instant> seen_at;
  bool carried = false;
  forecast::How how = forecast::How::not_said;
  forecast::Surface surface = forecast::Surface::not_said;
  std::int64_t line = 0;
};

struct WorkRow {
  std::string component;
  Date day;
  forecast::Action action = forecast::Action::retorque;
  std::optional<std::int64_t> new_coating_nominal_tenth_um;
  std::optional<std::int64_t> as_left_tenth_nm;
  std::int16_t screw = 0;  ///< 0: all screws of the part
  std::int64_t line = 0;
};

/// The columns of each file, in the order of the enumerations of portfolio_rows.cpp, which is the
/// order they are exported in.
std::span<const SheetColumn> component_columns();
std::span<const SheetColumn> visit_columns();
std::span<const SheetColumn> reading_columns();
std::span<const SheetColumn> work_columns();

std::span<const Word> kind_words();
std::span<const Word> material_words();
std::span<const Word> exposure_words();
std::span<const Word> category_words();
std::span<const Word> quantity_words();
std::span<const Word> censoring_words();
std::span<const Word> how_words();
std::span<const Word> surface_words();
std::span<const Word> action_words();
/// The first word with that code; empty when there is none.
std::string_view word_of(std::span<const Word> words, int code);

/// "A" for 1, "B" for 2 ...
std::string spot_text(std::int64_t spot);
/// "A" to "D" for 12, 3, 6 and 9 o'clock, else the hour; empty for 0.
std::string clock_text(std::int64_t o_clock);

/// Digits after the point of a quantity's unit in the record.
int quantity_digits(forecast::Quantity quantity);

/// Each reads the row the sheet stands on. Whatever is wrong with it has been noted there:
/// row_is_good() tells.
ComponentRow component_row(Sheet& sheet);
VisitRow visit_row(Sheet& sheet);
ReadingRow reading_row(Sheet& sheet);
WorkRow work_row(Sheet& sheet);

/// A reading's identifier as this program writes it: the record's own id and the place in its list
/// of replicates ("0190...-....3"). Nothing for an identifier made elsewhere.
struct RecordPlace {
  Uuid record;
  int place = 1;
};
std::optional<RecordPlace> record_place(std::string_view identifier);

}  // namespace kneerail::exchange
