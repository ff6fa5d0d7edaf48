// The visits, readings and works of a portfolio as entries; the things of the register are in
// portfolio_entries.cpp.

#include "core/base/text.h"
#include "schema/exchange/entry_keys.h"
#include "schema/exchange/import_ids.h"
#include "schema/exchange/portfolio_entries.h"

namespace kneerail::exchange {
namespace {

using forecast::Action;
using forecast::Censoring;
using forecast::Quantity;

enum SeenKey : int { key_copied_from = 93, key_seen_at = 94, key_as_last_time = 97, key_life = 98 };

int kind_of(Quantity quantity) {
  switch (quantity) {
    case Quantity::grade:
      return kind_grade;
    case Quantity::coating_um:
      return kind_coating;
    case Quantity::torque_nm:
      return kind_torque;
    case Quantity::wall_mm:
      return kind_wall;
  }
  return kind_grade;
}

/// A file is copied from paper: it says the day, not the hour.
void set_seen(cbor::Map& body, Instant at) {
  body.set(key_copied_from, copied_from_paper);
  body.set(key_seen_at, at.ms);
}

cbor::Value replicates_of(const std::vector<StagedReading>& set) {
  cbor::Array values;
  for (const auto& one : set) values.emplace_back(one.row.value);
  return values;
}

void set_torque(cbor::Map& body, const ReadingRow& row) {
  enum : int { screw = 3, as_found = 4, censoring = 5, method = 6, wrench_set = 10 };
  enum : int { clicked_still = 1, clicked_moved = 2, value_read = 3 };
  body.set(screw, std::int64_t{row.spot});
  body.set(as_found, row.value);
  body.set(censoring, static_cast<int>(row.censoring));
  const auto set = row.wrench_set_tenth_nm;
  int how = value_read;
  if (row.censoring == Censoring::at_least) how = clicked_still;
  if (row.censoring == Censoring::at_most) how = clicked_moved;
  if (row.censoring == Censoring::about && set) how = clicked_moved;
  body.set(method, how);
  if (set) body.set(wrench_set, *set);
}

/// Works of kind 40. A strike's signing (46) is apart.
int action_code(Action action) {
  switch (action) {
    case Action::retorque:
      return 1;
    case Action::touch_up:
      return 2;
    case Action::replace:
      return 3;
    case Action::regalvanise:
      return 5;
    case Action::re_erect:
      break;
  }
  return 9;
}

cbor::Map strike_step_body(const WorkRow& row, const Uuid& strike) {
  enum : int { strike_key = 1, step = 2, as_left = 3, screw = 5 };
  constexpr int torque_signed = 3;
  cbor::Map body;
  body.set(strike_key, strike);
  body.set(step, torque_signed);
  if (row.as_left_tenth_nm) body.set(as_left, *row.as_left_tenth_nm);
  if (row.screw > 0) body.set(screw, std::int64_t{row.screw});
  return body;
}

cbor::Map work_body(const WorkRow& row) {
  enum : int { action = 2, as_left = 4, new_nominal = 7, day_done = 9, screw = 12 };
  cbor::Map body;
  body.set(action, action_code(row.action));
  if (row.as_left_tenth_nm) body.set(as_left, *row.as_left_tenth_nm);
  if (row.new_coating_nominal_tenth_um) body.set(new_nominal, *row.new_coating_nominal_tenth_um);
  body.set(day_done, std::int64_t{row.day.days});
  if (row.screw > 0) body.set(screw, std::int64_t{row.screw});
  return body;
}

Uuid work_id(const WorkRow& row) {
  return derived_id("work",
                    {row.component, to_text(row.day),
                     word_of(action_words(), static_cast<int>(row.action)), spot_text(row.screw)},
                    row.day);
}

}  // namespace

Uuid PortfolioEntries::visit_id(std::size_t place) const {
  const VisitRow& row = portfolio_.visits[place];
  if (const auto part = record_place(row.id)) return part->record;
  if (const auto own = uuid_from_text(row.id)) return *own;
  return derived_id("visit", {row.id}, row.day);
}

/// One visit a row. Rows of one site and day are said to be the same visit, so that the worst of
/// their grades counts, as of two people who walk together.
std::vector<Entry> PortfolioEntries::visit(std::size_t place) const {
  constexpr int routine = 1;
  const VisitRow& row = portfolio_.visits[place];
  std::vector<Entry> entries;
  Entry opened;
  opened.feed = site_id(row.site);
  opened.kind = kind_visit;
  opened.subject = opened.feed;
  opened.who = row.inspector.empty() ? Uuid{} : id_of_reference("person", row.inspector);
  opened.id = visit_id(place);
  opened.body.set(1, routine);
  set_seen(opened.body, noon_utc(row.day));
  if (first_row_of_visit_[place] != place) {
    entries.push_back(joined(place, opened));
    if (row.foil_true_tenth_um && row.foil_read_tenth_um) entries.push_back(foil(place, opened));
    return entries;
  }
  entries.push_back(opened);
  const std::size_t first = first_visit_of_day_[place];
  if (first != place && visit_id(first) != *opened.id) {
    Entry same = opened;
    same.kind = kind_same_visit;
    same.subject = *opened.id;
    same.id = derived_id("same visit", {row.id, portfolio_.visits[first].id}, row.day);
    same.body = cbor::Map{{1, visit_id(first)}};
    entries.push_back(std::move(same));
  }
  if (row.foil_true_tenth_um && row.foil_read_tenth_um) entries.push_back(foil(place, opened));
  return entries;
}

/// A further row of a visit that an earlier row opened: another person, or another gauge.
Entry PortfolioEntries::joined(std::size_t place, const Entry& opened) const {
  Entry joined = opened;
  joined.kind = kind_visit_joined;
  joined.subject = *opened.id;
  joined.id =
      derived_id("visit joined", {portfolio_.visits[place].id}, portfolio_.visits[place].day);
  joined.body = cbor::Map{};
  set_seen(joined.body, noon_utc(portfolio_.visits[place].day));
  return joined;
}

/// In order, for the readings after it were taken with the gauge.
Entry PortfolioEntries::foil(std::size_t place, const Entry& opened) const {
  enum : int { visit = 1, what = 2, reference = 3, readings = 4, in_order = 5 };
  constexpr int check_foil = 2;
  const VisitRow& row = portfolio_.visits[place];
  Entry foil = opened;
  foil.kind = kind_instrument_check;
  foil.subject = instrument_id(InstrumentKind::coating_gauge, row.coating_gauge);
  foil.id = derived_id("check foil", {row.id}, row.day);
  foil.body = cbor::Map{};
  foil.body.set(visit, *opened.id);
  foil.body.set(what, check_foil);
  foil.body.set(reference, *row.foil_true_tenth_um);
  foil.body.set(readings, cbor::Array{*row.foil_read_tenth_um});
  foil.body.set(in_order, true);
  set_seen(foil.body, noon_utc(row.day));
  return foil;
}

/// The life of a part on a day: that of its last replacement before it. A reading on the day of a
/// replacement is of the old part.
Uuid PortfolioEntries::life_on(std::int32_t component, Date day) const {
  const auto place = static_cast<std::size_t>(component);
  Uuid life = component_ids_[place];
  for (std::size_t i = works_from_[place]; i < works_from_[place + 1]; ++i) {
    const WorkRow& row = portfolio_.works[i].row;
    if (row.day >= day) break;
    if (row.action == Action::replace) life = work_id(row);
  }
  return life;
}

Uuid PortfolioEntries::instrument_of(const StagedReading& reading) const {
  const VisitRow& visit = portfolio_.visits[static_cast<std::size_t>(reading.visit)];
  switch (reading.row.quantity) {
    case Quantity::coating_um:
      return instrument_id(InstrumentKind::coating_gauge, visit.coating_gauge);
    case Quantity::wall_mm:
      return instrument_id(InstrumentKind::wall_gauge, visit.wall_gauge);
    case Quantity::torque_nm:
      return instrument_id(InstrumentKind::torque_wrench, visit.wrench);
    case Quantity::grade:
      break;
  }
  return {};
}

Uuid PortfolioEntries::reading_id(const StagedReading& first) const {
  const bool one_value =
      first.row.quantity == Quantity::grade || first.row.quantity == Quantity::torque_nm;
  if (!first.record.is_zero() && !(one_value && first.row.replicate > 1)) return first.record;
  const VisitRow& visit = portfolio_.visits[static_cast<std::size_t>(first.visit)];
  const std::string& component =
      portfolio_.components[static_cast<std::size_t>(first.component)].id;
  return derived_id("reading",
                    {word_of(quantity_words(), static_cast<int>(first.row.quantity)), component,
                     visit.id, std::to_string(first.row.spot),
                     one_value ? std::to_string(first.row.replicate) : std::string()},
                    visit.day);
}

cbor::Map PortfolioEntries::reading_body(const std::vector<StagedReading>& set) const {
  enum : int { visit = 1, grade = 2, grade_how = 5 };
  enum : int { instrument = 2, replicates = 3, spot = 4, under_probe = 8 };
  constexpr std::int64_t clock_not_stated = 12;
  const StagedReading& first = set.front();
  const ReadingRow& row = first.row;
  cbor::Map body;
  body.set(visit, visit_id(static_cast<std::size_t>(first.visit)));
  if (row.quantity == Quantity::grade) {
    body.set(grade, row.value);
    if (row.how != forecast::How::not_said) body.set(grade_how, static_cast<int>(row.how));
    if (row.carried) body.set(key_as_last_time, true);
    return body;
  }
  body.set(instrument, instrument_of(first));
  if (row.quantity == Quantity::torque_nm) {
    set_torque(body, row);
    return body;
  }
  body.set(replicates, replicates_of(set));
  if (row.quantity == Quantity::wall_mm) {
    body.set(spot, row.spot == 0 ? clock_not_stated : std::int64_t{row.spot % 12});
    return body;
  }
  body.set(spot, std::int64_t{row.spot});
  if (row.surface != forecast::Surface::not_said)
    body.set(under_probe, static_cast<int>(row.surface));
  return body;
}

Entry PortfolioEntries::reading(const std::vector<StagedReading>& set) const {
  const StagedReading& first = set.front();
  const VisitRow& visit = portfolio_.visits[static_cast<std::size_t>(first.visit)];
  const Instant seen = first.row.seen_at.value_or(noon_utc(visit.day));
  Entry entry;
  entry.feed = site_id(visit.site);
  entry.kind = kind_of(first.row.quantity);
  entry.subject = component_ids_[static_cast<std::size_t>(first.component)];
  entry.who = visit.inspector.empty() ? Uuid{} : id_of_reference("person", visit.inspector);
  entry.id = reading_id(first);
  entry.body = reading_body(set);
  entry.body.set(key_life, life_on(first.component, utc_day(seen)));
  set_seen(entry.body, seen);
  return entry;
}

/// A re-erected part was signed again after a strike of which the file says nothing else: the
/// signing names the strike of its run and day, and no strike is opened, so none stays open.
Entry PortfolioEntries::work(const CheckedWork& work) const {
  const auto place = static_cast<std::size_t>(work.component);
  const ComponentRow& part = portfolio_.components[place];
  const WorkRow& row = work.row;
  Entry entry;
  entry.feed = site_id(part.site);
  entry.subject = component_ids_[place];
  entry.id = work_id(row);
  if (row.action == Action::re_erect) {
    entry.kind = kind_strike_step;
    const Uuid strike = derived_id("strike", {part.run, to_text(row.day)}, row.day);
    entry.body = strike_step_body(row, strike);
  } else {
    entry.kind = kind_work;
    entry.body = work_body(row);
  }
  set_seen(entry.body, noon_utc(row.day));
  return entry;
}

}  // namespace kneerail::exchange
