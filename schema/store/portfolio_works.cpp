// Works and readings of a portfolio from the tables.

#include <algorithm>
#include <span>
#include <tuple>

#include "core/records/coating_reading.h"
#include "core/records/torque_reading.h"
#include "core/records/wall_reading.h"
#include "core/records/work.h"
#include "schema/store/portfolio_tables.h"

namespace kneerail {
namespace {

using forecast::Action;
using forecast::Quantity;

std::optional<double> tenth(const Statement& row, int column) {
  if (row.is_null(column)) return std::nullopt;
  return static_cast<double>(row.number(column)) / 10;
}

/// Repaint, clean, re-fix base and other change nothing the forecast reckons with.
std::optional<Action> action_of(std::int64_t code) {
  switch (static_cast<WorkAction>(code)) {
    case WorkAction::retorque:
      return Action::retorque;
    case WorkAction::touch_up:
      return Action::touch_up;
    case WorkAction::replace:
    case WorkAction::cut_out_and_weld_in:
      return Action::replace;
    case WorkAction::regalvanise:
      return Action::regalvanise;
    default:
      return std::nullopt;
  }
}

Quantity quantity_of(std::int64_t kind) {
  switch (kind) {
    case CoatingReading::kind:
      return Quantity::coating_um;
    case TorqueReading::kind:
      return Quantity::torque_nm;
    case WallReading::kind:
      return Quantity::wall_mm;
    default:
      return Quantity::grade;
  }
}

/// Twelve o'clock is 0 in a record and 12 to people; 12 in a record is "not stated".
std::int16_t o_clock(std::int64_t position) {
  if (position == clock_not_stated) return 0;
  return static_cast<std::int16_t>(position == 0 ? 12 : position);
}

/// The numbers of a record in order; nothing where there is none to use.
std::vector<std::int64_t> values_of(const Statement& row, Quantity quantity, int v1,
                                    int replicates) {
  std::vector<std::int64_t> values;
  const bool one = quantity == Quantity::grade || quantity == Quantity::torque_nm;
  if (one) {
    if (!row.is_null(v1)) values.push_back(row.number(v1));
    return values;
  }
  const auto list = cbor::decode(row.bytes(replicates));
  if (!list || (*list).array() == nullptr) return values;
  for (const auto& item : *(*list).array())
    if (const auto* number = item.number()) values.push_back(*number);
  return values;
}

}  // namespace

void PortfolioTables::add_work(const Uuid& subject, const forecast::Work& work,
                               std::vector<forecast::Work>& works) const {
  if (!is_known_on(work.day)) return;
  const auto add = [&](std::int32_t part) {
    works.push_back(work);
    works.back().part = part;
  };
  if (const auto part = part_places_.find(subject); part != part_places_.end()) add(part->second);
  if (const auto of = parts_of_run_.find(subject); of != parts_of_run_.end())
    for (const auto part : of->second) add(part);
}

/// In the order of records either way.
Result<Statement> PortfolioTables::prepare_of_subjects(std::string_view columns,
                                                       std::string_view table,
                                                       std::string_view that) {
  std::string sql = "SELECT " + std::string(columns) + " FROM ";
  const std::string rest = " WHERE " + std::string(that) + " ORDER BY record";
  if (!site_by_site_) return tables_.prepare(sql + std::string(table) + rest);
  auto rows = tables_.prepare(std::string(with_given) + sql + "given CROSS JOIN " +
                              std::string(table) + " ON subject = given.asked" + rest);
  if (rows) rows->bind_in_place(1, std::span(subjects_));
  return rows;
}

Result<> PortfolioTables::add_works(std::vector<forecast::Work>& works) {
  auto rows = prepare_of_subjects(
      "subject, action, day, t, new_coating_nominal_tenth_um, as_left_tenth_nm, screw", "work",
      "voided_by IS NULL AND held = 0 AND (same_as IS NULL OR same_as = record)");
  if (!rows) return fail(rows.error());
  while (true) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return Done{};
    const auto action = action_of(rows->number(1));
    if (!action) continue;
    forecast::Work work;
    work.action = *action;
    work.day = rows->is_null(2) ? zone_.day_of_entry(Instant{rows->number(3)})
                                : Date{static_cast<std::int32_t>(rows->number(2))};
    work.new_nominal_coating_um = tenth(*rows, 4);
    work.as_left_nm = tenth(*rows, 5);
    work.screw = static_cast<std::int16_t>(rows->is_null(6) ? 0 : rows->number(6));
    add_work(rows->uuid(0), work, works);
  }
}

/// A torque signed at a re-erecting; "will not tighten" signs nothing.
Result<> PortfolioTables::add_strike_steps(std::vector<forecast::Work>& works) {
  auto rows =
      prepare_of_subjects("subject, t, as_left_tenth_nm, screw, same_part", "strike_step",
                          "step = 3 AND voided_by IS NULL AND held = 0 AND coalesce(how, 0) <> 4");
  if (!rows) return fail(rows.error());
  while (true) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return Done{};
    forecast::Work work;
    work.action = Action::re_erect;
    work.day = zone_.day_of_entry(Instant{rows->number(1)});
    work.as_left_nm = tenth(*rows, 2);
    work.screw = static_cast<std::int16_t>(rows->is_null(3) ? 0 : rows->number(3));
    work.same_part_unsure = !rows->is_null(4) && (rows->number(4) == 1 || rows->number(4) == 3);
    add_work(rows->uuid(0), work, works);
  }
}

/// A torque reading that says what it was left at is a re-torque too.
Result<> PortfolioTables::add_retorques(std::vector<forecast::Work>& works) {
  auto rows =
      prepare_of_subjects("subject, t, v2, screw", "reading",
                          "kind = 22 AND v2 IS NOT NULL AND voided_by IS NULL AND held = 0");
  if (!rows) return fail(rows.error());
  while (true) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return Done{};
    forecast::Work work;
    work.day = zone_.day_of_entry(Instant{rows->number(1)});
    work.as_left_nm = tenth(*rows, 2);
    work.screw = static_cast<std::int16_t>(rows->is_null(3) ? 0 : rows->number(3));
    add_work(rows->uuid(0), work, works);
  }
}

Result<std::vector<forecast::Work>> PortfolioTables::works() {
  std::vector<forecast::Work> works;
  if (auto ok = add_works(works); !ok) return fail(ok.error());
  if (auto ok = add_strike_steps(works); !ok) return fail(ok.error());
  if (auto ok = add_retorques(works); !ok) return fail(ok.error());
  std::stable_sort(works.begin(), works.end(), [](const auto& a, const auto& b) {
    return std::tuple(a.part, a.day, a.action, a.screw) <
           std::tuple(b.part, b.day, b.action, b.screw);
  });
  return works;
}

namespace {
// Columns of the query below.
enum : int {
  at_record,
  at_kind,
  at_subject,
  at_visit,
  at_who,
  at_instrument,
  at_t,
  at_v1,
  at_censoring,
  at_replicates,
  at_spot,
  at_screw,
  at_layer,
  at_under_probe,
  at_how,
  at_carried,
  at_wrench_set,
  at_held,
  at_voided,
  at_seen_at
};
constexpr std::string_view reading_columns =
    "record, kind, subject, visit, who, instrument, t, v1, censoring, replicates, spot, "
    "screw, layer, under_probe, how, carried, wrench_set_tenth_nm, held, voided_by, seen_at";
}  // namespace

/// False for what is not of this portfolio: another site, after the day asked, not measurable.
bool PortfolioTables::reading_fact(const Statement& row, ReadingFact& fact) {
  const auto part = part_places_.find(row.uuid(at_subject));
  VisitPart* of = visit_part(row.uuid(at_visit), row.uuid(at_who));
  fact.at = Instant{row.number(at_t)};
  fact.day = zone_.day_of_entry(fact.at);
  if (part == part_places_.end() || of == nullptr || !is_known_on(fact.day)) return false;
  if (site_by_site_ && !of->asked) ask_late(*of);
  if (!of->asked) return false;
  if (!row.is_null(at_censoring) &&
      row.number(at_censoring) == static_cast<int>(Censoring::not_measurable))
    return false;
  fact.record = row.uuid(at_record);
  fact.part = part->second;
  fact.quantity = quantity_of(row.number(at_kind));
  fact.instrument = row.is_null(at_instrument) ? Uuid{} : row.uuid(at_instrument);
  const auto& list = fact.quantity == Quantity::wall_mm     ? of->wall_gauges
                     : fact.quantity == Quantity::torque_nm ? of->wrenches
                                                            : of->coating_gauges;
  fact.visit =
      fact.quantity == Quantity::grade ? of->rows.front() : of->row_of(list, fact.instrument);
  const auto code = [&](int column) { return row.is_null(column) ? 0 : row.number(column); };
  fact.spot = static_cast<std::int16_t>(code(at_spot));
  if (fact.quantity == Quantity::wall_mm) fact.spot = o_clock(code(at_spot));
  if (fact.quantity == Quantity::torque_nm) fact.spot = static_cast<std::int16_t>(code(at_screw));
  if (fact.quantity == Quantity::grade) fact.spot = 0;
  fact.censoring = static_cast<forecast::Censoring>(code(at_censoring));
  fact.surface = static_cast<forecast::Surface>(code(at_under_probe));
  fact.how = static_cast<forecast::How>(fact.quantity == Quantity::grade ? code(at_how) : 0);
  fact.carried = code(at_carried) != 0;
  fact.wrench_set_tenth_nm =
      row.is_null(at_wrench_set) ? std::nullopt : std::optional(row.number(at_wrench_set));
  fact.values = values_of(row, fact.quantity, at_v1, at_replicates);
  fact.seen = fact.day == of->day ? std::nullopt : std::optional(fact.day);
  fact.layer = row.is_null(at_layer) ? std::nullopt : std::optional(row.number(at_layer));
  fact.is_held = code(at_held) != 0;
  fact.is_as_stated = !row.is_null(at_seen_at);
  fact.is_void = !row.is_null(at_voided);
  return true;
}

Result<> PortfolioTables::each_reading(const std::function<Result<>(const ReadingFact&)>& each) {
  auto rows = prepare_of_subjects(reading_columns, "reading",
                                  "kind IN (20, 21, 22, 23) AND visit IS NOT NULL");
  if (!rows) return fail(rows.error());
  ReadingFact fact;
  while (true) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return Done{};
    if (!reading_fact(*rows, fact)) continue;
    if (auto ok = each(fact); !ok) return ok;
  }
}

Result<std::vector<forecast::IssuedReport>> PortfolioTables::reports() {
  auto rows = tables_.prepare(
      "SELECT subject, day, t FROM report WHERE voided_by IS NULL AND held = 0 ORDER BY record");
  if (!rows) return fail(rows.error());
  std::vector<forecast::IssuedReport> reports;
  while (true) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) break;
    const Date day = rows->is_null(1) ? zone_.day_of_entry(Instant{rows->number(2)})
                                      : Date{static_cast<std::int32_t>(rows->number(1))};
    const Uuid site = rows->uuid(0);
    if (is_asked(site) && is_known_on(day)) reports.push_back({sites_.text(site), day});
  }
  std::sort(reports.begin(), reports.end(), [](const auto& a, const auto& b) {
    return std::tie(a.site, a.day) < std::tie(b.site, b.day);
  });
  return reports;
}

}  // namespace kneerail
