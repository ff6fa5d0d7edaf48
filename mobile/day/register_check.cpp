#include "mobile/day/register_check.h"

#include "core/fold/rules.h"
#include "core/records/instrument.h"

namespace kneerail::day {

namespace {

std::string joined(const std::vector<std::int64_t>& numbers) {
  std::string text;
  for (const std::int64_t number : numbers) {
    if (!text.empty()) text += ", ";
    text += std::to_string(number);
  }
  return text;
}

/// What stands in the row of table reading, as it was entered.
Result<std::vector<std::int64_t>> values_in(const Statement& row, int kind) {
  if (kind == fold::kind::grade) return std::vector{row.number(0)};
  std::vector<std::int64_t> values;
  if (kind == fold::kind::torque) return values;
  const auto list = cbor::decode(row.bytes(1));
  if (!list || list->array() == nullptr) {
    return fail(Fault::corrupt, "A reading in the register has no list of numbers.");
  }
  for (const cbor::Value& one : *list->array()) values.push_back(*one.number() / 10);
  return values;
}

/// A finding of that subject that could not wait and was made safe.
Result<bool> finding_is_there(Register& store, const Entered& entered) {
  auto rows = store.tables().prepare(
      "SELECT count(*) FROM finding WHERE subject = ? AND hazard_state = 2 AND voided_by IS NULL "
      "AND held = 0");
  if (!rows) return fail(rows.error());
  rows->bind(1, entered.part);
  const auto any = rows->step();
  if (!any) return fail(any.error());
  return *any && rows->number(0) > 0;
}

Result<bool> seal_is_there(Register& store, const Entered& entered) {
  auto rows = store.tables().prepare(
      "SELECT count(*) FROM visit_part WHERE visit = ? AND sealed NOT NULL AND after_seal = 0");
  if (!rows) return fail(rows.error());
  rows->bind(1, entered.part);
  const auto any = rows->step();
  if (!any) return fail(any.error());
  return *any && rows->number(0) == 1;
}

/// The gauge's last check is a zero, read as it was entered.
Result<bool> zero_is_there(Register& store, const Entered& entered) {
  auto rows = store.tables().prepare(
      "SELECT what, readings FROM instrument_check WHERE subject = ? AND held = 0 AND voided_by "
      "IS NULL ORDER BY t DESC, record DESC LIMIT 1");
  if (!rows) return fail(rows.error());
  rows->bind(1, entered.part);
  const auto any = rows->step();
  if (!any) return fail(any.error());
  if (!*any || rows->number(0) != static_cast<int>(CheckKind::zero)) return false;
  const auto values = values_in(*rows, entered.kind);
  if (!values) return fail(values.error());
  return *values == entered.values;
}

/// The last push of a bay is the one that was entered.
Result<bool> push_is_there(Register& store, const Entered& entered) {
  auto rows = store.tables().prepare(
      "SELECT what FROM reading WHERE subject = ? AND kind = 24 AND held = 0 AND voided_by IS NULL "
      "ORDER BY t DESC, seq DESC LIMIT 1");
  if (!rows) return fail(rows.error());
  rows->bind(1, entered.part);
  const auto any = rows->step();
  if (!any) return fail(any.error());
  return *any && entered.values == std::vector{rows->number(0)};
}

}  // namespace

Result<bool> is_there(Register& store, const Entered& entered) {
  if (entered.kind == fold::kind::instrument_check) return zero_is_there(store, entered);
  if (entered.kind == fold::kind::sealed) return seal_is_there(store, entered);
  if (entered.kind == fold::kind::hand_load) return push_is_there(store, entered);
  if (entered.kind == fold::kind::finding) return finding_is_there(store, entered);
  constexpr auto held = static_cast<std::int64_t>(Censoring::at_least);
  auto rows = store.tables().prepare(
      "SELECT v1, replicates, censoring FROM reading WHERE subject = ? AND kind = ? AND held = 0 "
      "AND voided_by IS NULL ORDER BY t DESC, seq DESC LIMIT ?");
  if (!rows) return fail(rows.error());
  // A set that went on after a restart is two records; a wall has one for each hour of the clock.
  const std::int64_t newest = entered.kind == fold::kind::wall      ? 4
                              : entered.kind == fold::kind::coating ? 2
                                                                    : 1;
  rows->bind(1, entered.part).bind(2, std::int64_t{entered.kind}).bind(3, newest);
  for (;;) {
    const auto any = rows->step();
    if (!any) return fail(any.error());
    if (!*any) return false;
    const auto values = values_in(*rows, entered.kind);
    if (!values) return fail(values.error());
    const bool fits = entered.kind != fold::kind::torque || rows->number(2) == held;
    if (fits && *values == entered.values) return true;
  }
}

std::string words(const Entered& entered) {
  switch (entered.kind) {
    case fold::kind::grade:
      return "grade " + joined(entered.values);
    case fold::kind::coating:
      return "coating " + joined(entered.values) + " µm";
    case fold::kind::wall:
      return "wall " + joined(entered.values) + " tenths of a mm";
    case fold::kind::hand_load:
      return "pushed, firm";
    case fold::kind::finding:
      return "split, closed off";
    case fold::kind::sealed:
      return "signed and sealed";
    case fold::kind::instrument_check:
      return "zero " + joined(entered.values) + " µm";
    default:
      return "torque: the wrench clicked, the screw held";
  }
}

}  // namespace kneerail::day
