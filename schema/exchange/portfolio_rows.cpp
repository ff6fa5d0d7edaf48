#include "schema/exchange/portfolio_rows.h"

#include <array>

#include "core/base/text.h"
#include "schema/exchange/slips.h"

namespace kneerail::exchange {
namespace {

using namespace forecast;

namespace component {
enum : int {
  id,
  site,
  zone,
  run,
  chainage,
  kind,
  material,
  exposure,
  category,
  zinc_rate,
  zinc_sd,
  installed,
  nominal,
  first_maintenance,
  areas,
  wall_nominal,
  wall_limit,
  steel_rate,
  target,
  minimum
};
}
namespace visit {
enum : int { id, site, date, inspector, gauge, wall_gauge, wrench, foil_true, foil_read };
}
namespace reading {
enum : int {
  id,
  component,
  visit,
  quantity,
  spot,
  replicate,
  value,
  censor,
  wrench_set,
  seen_at,
  carried,
  how,
  surface
};
}
namespace work {
enum : int { component, date, action, new_nominal, as_left, spot };
}

template <class Code>
constexpr Word word(std::string_view text, Code code) {
  return {text, static_cast<int>(code)};
}

constexpr Measure chainage_m{"m", 3, 0, 10'000'000};
constexpr Measure coating_um{"µm", 1, 0, 20'000};
constexpr Measure tube_wall_mm{"mm", 1, 5, 200};
constexpr Measure wall_mm{"mm", 2, 1, 5'000};
constexpr Measure torque_nm{"N·m", 1, 0, 5'000};
constexpr Measure ln_spread{"", 3, 0, 3'000};
constexpr Measure grade{"", 0, 1, 5};
constexpr double rate_max_um_per_year = 450;  // under 1,000 in the first year, whatever the factor
constexpr std::int64_t spots_max = 16;
constexpr std::int64_t replicates_max = 30;

constexpr Word yes_no_words[] = {{"1", 1}, {"0", 0}};

Measure measure_of(Quantity quantity) {
  switch (quantity) {
    case Quantity::coating_um:
      return coating_um;
    case Quantity::wall_mm:
      return wall_mm;
    case Quantity::torque_nm:
      return torque_nm;
    case Quantity::grade:
      return grade;
  }
  return grade;
}

template <class Code>
std::optional<Code> coded(Sheet& sheet, int column, std::span<const Word> words) {
  const auto code = sheet.word(column, words);
  if (!code) return std::nullopt;
  return static_cast<Code>(*code);
}

std::optional<std::int64_t> spot_number(std::string_view text) {
  if (text.size() == 1 && text[0] >= 'A' && text[0] <= 'P') return text[0] - 'A' + 1;
  const auto number = int_from_text(text);
  if (!number || *number < 1 || *number > spots_max) return std::nullopt;
  return number;
}

std::optional<std::int64_t> clock_number(std::string_view text) {
  constexpr std::string_view quarters = "ABCD";
  constexpr std::int64_t hours[] = {12, 3, 6, 9};
  if (text.size() == 1)
    if (const auto place = quarters.find(text[0]); place != std::string_view::npos)
      return hours[place];
  const auto number = int_from_text(text);
  if (!number || *number < 1 || *number > 12) return std::nullopt;
  return number;
}

std::int16_t reading_spot(Sheet& sheet, Quantity quantity) {
  const auto text = sheet.text(reading::spot);
  if (quantity == Quantity::grade) {
    if (!text.empty()) sheet.refuse(reading::spot, "a grade is of the whole part; leave it empty.");
    return 0;
  }
  if (text.empty()) return quantity == Quantity::wall_mm ? 0 : 1;
  const auto number = quantity == Quantity::wall_mm ? clock_number(text) : spot_number(text);
  if (!number)
    sheet.refuse(reading::spot, quantity == Quantity::wall_mm
                                    ? "is no clock position: A, B, C, D or an hour 1 to 12."
                                    : "is no spot: A to P, or 1 to 16.");
  return static_cast<std::int16_t>(number.value_or(0));
}

/// Wall over its nominal and lowest torque over its target: the two numbers of one part that must
/// stand in one order.
void check_pairs(Sheet& sheet, const ComponentRow& row) {
  if (row.wall_nominal_tenth_mm && row.wall_limit_hundredth_mm &&
      *row.wall_limit_hundredth_mm > *row.wall_nominal_tenth_mm * 10)
    sheet.refuse(component::wall_limit, "is over the nominal wall of " +
                                            scaled_to_text(*row.wall_nominal_tenth_mm, 1) +
                                            " mm. Are the two exchanged?");
  if (row.torque_target_tenth_nm && row.torque_minimum_tenth_nm &&
      *row.torque_minimum_tenth_nm > *row.torque_target_tenth_nm)
    sheet.refuse(component::minimum, "is over the target of " +
                                         scaled_to_text(*row.torque_target_tenth_nm, 1) +
                                         " N·m. Are the two exchanged?");
}

void read_life(Sheet& sheet, ComponentRow& row) {
  row.installed = sheet.date(component::installed);
  row.coating_nominal_tenth_um = sheet.scaled(component::nominal, coating_um);
  row.first_maintenance_tenth_um = sheet.scaled(component::first_maintenance, coating_um);
  row.reference_areas = sheet.whole(component::areas, 1, spots_max).value_or(1);
  row.wall_nominal_tenth_mm = sheet.scaled(component::wall_nominal, tube_wall_mm);
  row.wall_limit_hundredth_mm = sheet.scaled(component::wall_limit, wall_mm);
  row.torque_target_tenth_nm = sheet.scaled(component::target, torque_nm);
  row.torque_minimum_tenth_nm = sheet.scaled(component::minimum, torque_nm);
}

/// A click says at least or at most what the wrench was set to, so the set value is known then.
void read_torque(Sheet& sheet, ReadingRow& row) {
  const auto set = sheet.scaled(reading::wrench_set, torque_nm);
  row.censoring =
      coded<Censoring>(sheet, reading::censor, censoring_words()).value_or(Censoring::exact);
  const bool click = row.censoring == Censoring::at_least || row.censoring == Censoring::at_most;
  if (row.quantity == Quantity::torque_nm) {
    row.wrench_set_tenth_nm = !set && click ? std::optional(row.value) : set;
  } else if (row.censoring != Censoring::exact) {
    sheet.refuse(reading::censor, "only a torque can be a bound; write exact.");
  }
}

}  // namespace

std::span<const SheetColumn> component_columns() {
  static constexpr SheetColumn columns[] = {{"component_id"},
                                            {"site_id"},
                                            {"zone_id"},
                                            {"run_id"},
                                            {"chainage_m"},
                                            {"kind"},
                                            {"material"},
                                            {"exposure", false},
                                            {"corrosivity_category", false},
                                            {"zinc_rate_prior_um_per_yr", false},
                                            {"zinc_rate_prior_ln_sd", false},
                                            {"install_date", false},
                                            {"nominal_coating_um", false},
                                            {"first_maintenance_um", false},
                                            {"reference_areas", false},
                                            {"wall_nominal_mm", false},
                                            {"wall_limit_mm", false},
                                            {"steel_rate_prior_um_per_yr", false},
                                            {"torque_target_nm", false},
                                            {"torque_minimum_nm", false}};
  return columns;
}

std::span<const SheetColumn> visit_columns() {
  static constexpr SheetColumn columns[] = {{"visit_id"},
                                            {"site_id"},
                                            {"date"},
                                            {"inspector_id", false},
                                            {"coating_gauge_id", false},
                                            {"wall_gauge_id", false},
                                            {"wrench_id", false},
                                            {"foil_true_um", false},
                                            {"foil_read_um", false}};
  return columns;
}

std::span<const SheetColumn> reading_columns() {
  static constexpr SheetColumn columns[] = {
      {"reading_id"},           {"component_id"},     {"visit_id"},       {"quantity"},
      {"spot", false},          {"replicate", false}, {"value"},          {"censor", false},
      {"wrench_set_nm", false}, {"seen_at", false},   {"carried", false}, {"how", false},
      {"surface", false}};
  return columns;
}

std::span<const SheetColumn> work_columns() {
  static constexpr SheetColumn columns[] = {
      {"component_id"},      {"date"},       {"action"}, {"new_nominal_coating_um", false},
      {"as_left_nm", false}, {"spot", false}};
  return columns;
}

std::span<const Word> kind_words() {
  static constexpr Word words[] = {word("post_tube", PartKind::post_tube),
                                   word("rail_tube", PartKind::rail_tube),
                                   word("fitting", PartKind::fitting),
                                   word("base_fixing", PartKind::base_fixing),
                                   word("weld", PartKind::weld),
                                   word("cut_edge", PartKind::cut_edge),
                                   word("welded_section", PartKind::welded_section),
                                   word("toe_board", PartKind::toe_board),
                                   word("infill", PartKind::infill),
                                   word("gate", PartKind::gate)};
  return words;
}

std::span<const Word> material_words() {
  static constexpr Word words[] = {
      word("zinc_coated_steel", Material::zinc_coated_steel),
      word("painted_steel", Material::painted_steel), word("aluminium", Material::aluminium),
      word("stainless", Material::stainless), word("bare_steel", Material::bare_steel)};
  return words;
}

std::span<const Word> exposure_words() {
  static constexpr Word words[] = {word("unknown", Exposure::unknown), word("open", Exposure::open),
                                   word("sheltered", Exposure::sheltered),
                                   word("spray", Exposure::spray)};
  return words;
}

std::span<const Word> category_words() {
  static constexpr Word words[] = {word("C1", Category::c1), word("C2", Category::c2),
                                   word("C3", Category::c3), word("C4", Category::c4),
                                   word("C5", Category::c5), word("CX", Category::cx)};
  return words;
}

std::span<const Word> quantity_words() {
  static constexpr Word words[] = {
      word("coating_um", Quantity::coating_um), word("wall_mm", Quantity::wall_mm),
      word("torque_nm", Quantity::torque_nm), word("grade", Quantity::grade)};
  return words;
}

std::span<const Word> censoring_words() {
  static constexpr Word words[] = {word("exact", Censoring::exact), word("about", Censoring::about),
                                   word("at_least", Censoring::at_least),
                                   word("at_most", Censoring::at_most)};
  return words;
}

std::span<const Word> how_words() {
  static constexpr Word words[] = {word("pushed", How::pushed), word("near", How::near),
                                   word("afar", How::afar),     word("picture", How::picture),
                                   word("looked", How::near),   word("from afar", How::afar)};
  return words;
}

std::span<const Word> surface_words() {
  static constexpr Word words[] = {word("zinc", Surface::zinc), word("dull", Surface::dull),
                                   word("rust", Surface::rust), word("paint", Surface::paint)};
  return words;
}

std::span<const Word> action_words() {
  static constexpr Word words[] = {
      word("replace", Action::replace), word("regalvanise", Action::regalvanise),
      word("touch_up", Action::touch_up), word("retorque", Action::retorque),
      word("re_erect", Action::re_erect)};
  return words;
}

std::string_view word_of(std::span<const Word> words, int code) {
  for (const auto& one : words)
    if (one.code == code) return one.text;
  return {};
}

std::string spot_text(std::int64_t spot) {
  if (spot < 1) return {};
  return spot <= spots_max ? std::string(1, static_cast<char>('A' + spot - 1))
                           : std::to_string(spot);
}

std::string clock_text(std::int64_t o_clock) {
  switch (o_clock) {
    case 12:
      return "A";
    case 3:
      return "B";
    case 6:
      return "C";
    case 9:
      return "D";
    default:
      return o_clock < 1 ? std::string() : std::to_string(o_clock);
  }
}

int quantity_digits(Quantity quantity) {
  return measure_of(quantity).digits;
}

ComponentRow component_row(Sheet& sheet) {
  ComponentRow row;
  row.line = sheet.line();
  row.id = sheet.identifier(component::id);
  row.site = sheet.identifier(component::site);
  row.zone = sheet.identifier(component::zone);
  row.run = sheet.identifier(component::run);
  if (sheet.present(component::chainage))
    row.chainage_mm = sheet.scaled(component::chainage, chainage_m).value_or(0);
  if (sheet.present(component::kind))
    row.kind = coded<PartKind>(sheet, component::kind, kind_words()).value_or(row.kind);
  if (sheet.present(component::material))
    row.material =
        coded<Material>(sheet, component::material, material_words()).value_or(row.material);
  row.exposure =
      coded<Exposure>(sheet, component::exposure, exposure_words()).value_or(Exposure::unknown);
  row.category = coded<Category>(sheet, component::category, category_words());
  row.zinc_rate_um_per_year = sheet.real(component::zinc_rate, 0, rate_max_um_per_year);
  row.zinc_rate_ln_sd_thousandth = sheet.scaled(component::zinc_sd, ln_spread);
  row.steel_rate_um_per_year = sheet.real(component::steel_rate, 0, rate_max_um_per_year);
  read_life(sheet, row);
  check_pairs(sheet, row);
  return row;
}

VisitRow visit_row(Sheet& sheet) {
  VisitRow row;
  row.line = sheet.line();
  row.id = sheet.identifier(visit::id);
  row.site = sheet.identifier(visit::site);
  if (sheet.present(visit::date)) row.day = sheet.date(visit::date).value_or(Date{});
  row.inspector = sheet.identifier_or_none(visit::inspector);
  row.coating_gauge = sheet.identifier_or_none(visit::gauge);
  row.wall_gauge = sheet.identifier_or_none(visit::wall_gauge);
  row.wrench = sheet.identifier_or_none(visit::wrench);
  row.foil_true_tenth_um = sheet.scaled(visit::foil_true, coating_um);
  row.foil_read_tenth_um = sheet.scaled(visit::foil_read, coating_um);
  const bool has_true = !sheet.text(visit::foil_true).empty();
  if (has_true != !sheet.text(visit::foil_read).empty())
    sheet.refuse(has_true ? visit::foil_read : visit::foil_true,
                 "a check foil needs both its own thickness and what the gauge read on it.");
  return row;
}

ReadingRow reading_row(Sheet& sheet) {
  ReadingRow row;
  row.line = sheet.line();
  row.id = sheet.identifier(reading::id);
  row.component = sheet.identifier(reading::component);
  row.visit = sheet.identifier(reading::visit);
  if (!sheet.present(reading::quantity)) return row;
  const auto quantity = coded<Quantity>(sheet, reading::quantity, quantity_words());
  if (!quantity) return row;
  row.quantity = *quantity;
  row.spot = reading_spot(sheet, *quantity);
  row.replicate =
      static_cast<std::int16_t>(sheet.whole(reading::replicate, 1, replicates_max).value_or(1));
  if (sheet.present(reading::value))
    row.value = sheet.scaled(reading::value, measure_of(*quantity)).value_or(0);
  read_torque(sheet, row);
  row.seen_at = sheet.instant(reading::seen_at);
  row.carried = sheet.word(reading::carried, yes_no_words).value_or(0) == 1;
  row.how = coded<How>(sheet, reading::how, how_words()).value_or(How::not_said);
  row.surface =
      coded<Surface>(sheet, reading::surface, surface_words()).value_or(Surface::not_said);
  return row;
}

WorkRow work_row(Sheet& sheet) {
  WorkRow row;
  row.line = sheet.line();
  row.component = sheet.identifier(work::component);
  if (sheet.present(work::date)) row.day = sheet.date(work::date).value_or(Date{});
  if (sheet.present(work::action))
    row.action = coded<Action>(sheet, work::action, action_words()).value_or(row.action);
  row.new_coating_nominal_tenth_um = sheet.scaled(work::new_nominal, coating_um);
  row.as_left_tenth_nm = sheet.scaled(work::as_left, torque_nm);
  if (const auto text = sheet.text(work::spot); !text.empty()) {
    const auto screw = spot_number(text);
    if (!screw) sheet.refuse(work::spot, "is no screw: A to P, or 1 to 16.");
    row.screw = static_cast<std::int16_t>(screw.value_or(0));
  }
  return row;
}

std::optional<RecordPlace> record_place(std::string_view identifier) {
  constexpr std::size_t uuid_length = 36;
  if (identifier.size() < uuid_length + 2 || identifier[uuid_length] != '.') return std::nullopt;
  const auto record = uuid_from_text(identifier.substr(0, uuid_length));
  const auto place = int_from_text(identifier.substr(uuid_length + 1));
  if (!record || !place || *place < 1 || *place > replicates_max) return std::nullopt;
  return RecordPlace{*record, static_cast<int>(*place)};
}

}  // namespace kneerail::exchange
