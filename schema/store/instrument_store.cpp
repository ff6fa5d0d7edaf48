#include "schema/store/instrument_store.h"

#include <utility>

#include "schema/store/organisation_days.h"
#include "schema/store/run_layout.h"

namespace kneerail {
namespace {

/// [[at, add]] in a column; a pair that is none is passed over, as in any record of a later
/// program.
Result<std::vector<AtAdd>> pairs_in(const Statement& row, int column) {
  std::vector<AtAdd> pairs;
  if (row.is_null(column)) return pairs;
  const auto value = cbor::decode(row.bytes(column));
  if (!value) return fail(value.error());
  if (value->array() == nullptr) return pairs;
  for (const auto& each : *value->array()) {
    const auto* pair = each.array();
    if (pair == nullptr || pair->size() != 2) continue;
    const auto* at = (*pair)[0].number();
    const auto* add = (*pair)[1].number();
    if (at != nullptr && add != nullptr) pairs.push_back({*at, *add});
  }
  return pairs;
}

Result<> add_calibrations(Database& tables, InstrumentHistories& histories) {
  return each_row(tables,
                  "SELECT subject, day, valid_until_day, corrections, t, record FROM calibration "
                  "WHERE day IS NOT NULL AND voided_by IS NULL AND held = 0",
                  {}, [&](const Statement& row) -> Result<> {
                    KnownCalibration known;
                    known.day = Date{static_cast<std::int32_t>(row.number(1))};
                    known.valid_until =
                        row.is_null(2) ? known.day : Date{static_cast<std::int32_t>(row.number(2))};
                    auto corrections = pairs_in(row, 3);
                    if (!corrections) return fail(corrections.error());
                    known.corrections = std::move(*corrections);
                    known.written_ms = row.number(4);
                    known.record = row.uuid(5);
                    histories.made(row.uuid(0)).add(std::move(known));
                    return Done{};
                  });
}

Result<> add_doubts(Database& tables, InstrumentHistories& histories) {
  return each_row(tables,
                  "SELECT subject, from_ms, until_ms, suggested_shift FROM doubt "
                  "WHERE from_ms IS NOT NULL AND voided_by IS NULL AND held = 0 ORDER BY record",
                  {}, [&](const Statement& row) -> Result<> {
                    KnownDoubt doubt{Instant{row.number(1)}, {}, {}};
                    if (!row.is_null(2)) doubt.until = Instant{row.number(2)};
                    if (!row.is_null(3)) doubt.suggested_shift = row.number(3);
                    histories.made(row.uuid(0)).add(doubt);
                    return Done{};
                  });
}

}  // namespace

const InstrumentHistory& InstrumentHistories::of(const Uuid& instrument) const {
  static const InstrumentHistory nothing_said;
  const auto found = all_.find(instrument);
  return found == all_.end() ? nothing_said : found->second;
}

Result<InstrumentHistories> instrument_histories(Database& tables) {
  InstrumentHistories histories;
  if (auto added = add_calibrations(tables, histories); !added) return fail(added.error());
  if (auto added = add_doubts(tables, histories); !added) return fail(added.error());
  return histories;
}

Result<ReadingsPutRight> readings_put_right(Database& tables) {
  auto instruments = instrument_histories(tables);
  if (!instruments) return fail(instruments.error());
  auto days = organisation_days(tables);
  if (!days) return fail(days.error());
  return ReadingsPutRight{std::move(*instruments), std::move(days->zone)};
}

}  // namespace kneerail
