// The visits, readings and works of a portfolio as entries; the things of the register are in
// portfolio_entries.cpp.

#include "core/base/text.h"
#include "core/records/coating_reading.h"
#include "core/records/condition_grade.h"
#include "core/records/instrument.h"
#include "core/records/strike.h"
#include "core/records/torque_reading.h"
#include "core/records/visit.h"
#include "core/records/wall_reading.h"
#include "core/records/work.h"
#include "schema/exchange/import_ids.h"
#include "schema/exchange/portfolio_entries.h"

namespace kneerail::exchange {
namespace {

using forecast::Action;
using forecast::Quantity;
using FileCensoring = forecast::Censoring;

/// A file is copied from paper: it says the day, not the hour.
Provenance seen(Instant at) {
  Provenance from;
  from.copied_from = CopiedFrom::paper;
  from.seen_at = at;
  return from;
}

std::vector<std::int64_t> replicates_of(const std::vector<StagedReading>& set) {
  std::vector<std::int64_t> values;
  for (const auto& one : set) values.push_back(one.row.value);
  return values;
}

TorqueMethod method_of(const ReadingRow& row) {
  switch (row.censoring) {
    case FileCensoring::at_least:
      return TorqueMethod::click_no_movement;
    case FileCensoring::at_most:
      return TorqueMethod::click_moved;
    case FileCensoring::about:
      return row.wrench_set_tenth_nm ? TorqueMethod::click_moved : TorqueMethod::breakaway_read;
    case FileCensoring::exact:
      break;
  }
  return TorqueMethod::breakaway_read;
}

/// Works of kind 40. A strike's signing (46) is apart.
WorkAction work_action(Action action) {
  switch (action) {
    case Action::retorque:
      return WorkAction::retorque;
    case Action::touch_up:
      return WorkAction::touch_up;
    case Action::replace:
      return WorkAction::replace;
    case Action::regalvanise:
      return WorkAction::regalvanise;
    case Action::re_erect:
      break;
  }
  return WorkAction::other;
}

std::optional<int> screw_of(const WorkRow& row) {
  return row.screw > 0 ? std::optional<int>(row.screw) : std::nullopt;
}

StrikeStep strike_step(const WorkRow& row, const Uuid& strike) {
  StrikeStep step;
  step.strike = strike;
  step.step = StrikeStepKind::torque_signed;
  step.as_left_tenth_nm = row.as_left_tenth_nm;
  step.screw = screw_of(row);
  step.provenance = seen(noon_utc(row.day));
  return step;
}

WorkDone work_done(const WorkRow& row) {
  WorkDone work;
  work.action = work_action(row.action);
  work.as_left_tenth_nm = row.as_left_tenth_nm;
  work.new_coating_nominal_tenth_um = row.new_coating_nominal_tenth_um;
  work.day_done = row.day;
  work.screw = screw_of(row);
  work.provenance = seen(noon_utc(row.day));
  return work;
}

ConditionGrade condition_grade(const ReadingRow& row) {
  ConditionGrade grade;
  grade.grade = static_cast<int>(row.value);
  if (row.how != forecast::How::not_said) grade.how = static_cast<HowLooked>(row.how);
  grade.note.as_last_time.set = row.carried;
  return grade;
}

TorqueReading torque_reading(const ReadingRow& row) {
  TorqueReading torque;
  torque.screw = row.spot;
  torque.as_found_tenth_nm = row.value;
  torque.censoring = static_cast<Censoring>(row.censoring);
  torque.method = method_of(row);
  torque.wrench_set_tenth_nm = row.wrench_set_tenth_nm;
  return torque;
}

CoatingReading coating_reading(const std::vector<StagedReading>& set) {
  const ReadingRow& row = set.front().row;
  CoatingReading coating;
  coating.replicates_tenth_um = replicates_of(set);
  coating.spot = row.spot;
  if (row.surface != forecast::Surface::not_said)
    coating.under_probe = static_cast<UnderProbe>(row.surface);
  return coating;
}

WallReading wall_reading(const std::vector<StagedReading>& set) {
  WallReading wall;
  wall.replicates_hundredth_mm = replicates_of(set);
  const int o_clock = set.front().row.spot;
  wall.clock_position = o_clock == 0 ? clock_not_stated : o_clock % 12;
  return wall;
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
  const VisitRow& row = portfolio_.visits[place];
  const bool is_first_row = first_row_of_visit_[place] == place;
  std::vector<Entry> entries{is_first_row ? opened(place) : joined(place)};
  const std::size_t first = first_visit_of_day_[place];
  if (is_first_row && first != place && visit_id(first) != visit_id(place)) {
    SameVisit same;
    same.other_visit = visit_id(first);
    Entry entry = of_visit(place, visit_id(place), same);
    entry.id = derived_id("same visit", {row.id, portfolio_.visits[first].id}, row.day);
    entries.push_back(std::move(entry));
  }
  if (row.foil_true_tenth_um && row.foil_read_tenth_um) entries.push_back(foil(place));
  return entries;
}

/// An entry of a visit's row: its site's feed, its inspector.
template <class Body>
Entry PortfolioEntries::of_visit(std::size_t place, const Uuid& subject, const Body& body) const {
  const VisitRow& row = portfolio_.visits[place];
  Entry entry;
  entry.feed = site_id(row.site);
  entry.kind = Body::kind;
  entry.subject = subject;
  entry.who = row.inspector.empty() ? Uuid{} : id_of_reference("person", row.inspector);
  entry.body = to_body(body);
  return entry;
}

Entry PortfolioEntries::opened(std::size_t place) const {
  const VisitRow& row = portfolio_.visits[place];
  VisitOpened visit;
  visit.kind_of_visit = VisitKind::routine;
  visit.provenance = seen(noon_utc(row.day));
  Entry entry = of_visit(place, site_id(row.site), visit);
  entry.id = visit_id(place);
  return entry;
}

/// A further row of a visit that an earlier row opened: another person, or another gauge.
Entry PortfolioEntries::joined(std::size_t place) const {
  const VisitRow& row = portfolio_.visits[place];
  VisitJoined visit;
  visit.provenance = seen(noon_utc(row.day));
  Entry entry = of_visit(place, visit_id(place), visit);
  entry.id = derived_id("visit joined", {row.id}, row.day);
  return entry;
}

/// In order, for the readings after it were taken with the gauge.
Entry PortfolioEntries::foil(std::size_t place) const {
  const VisitRow& row = portfolio_.visits[place];
  InstrumentCheck foil;
  foil.visit = visit_id(place);
  foil.what = CheckKind::check_foil;
  foil.reference_value = *row.foil_true_tenth_um;
  foil.readings = {*row.foil_read_tenth_um};
  foil.in_order = true;
  foil.provenance = seen(noon_utc(row.day));
  Entry entry =
      of_visit(place, instrument_id(InstrumentKind::coating_gauge, row.coating_gauge), foil);
  entry.id = derived_id("check foil", {row.id}, row.day);
  return entry;
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

/// What every reading says, put to the part of its own that `body` is.
template <class Body>
Entry PortfolioEntries::of_reading(const StagedReading& first, Body body) const {
  const auto place = static_cast<std::size_t>(first.visit);
  const Instant at = first.row.seen_at.value_or(noon_utc(portfolio_.visits[place].day));
  body.visit = visit_id(place);
  body.note.life = life_on(first.component, zone_.day_of_entry(at));
  body.note.provenance = seen(at);
  Entry entry = of_visit(place, component_ids_[static_cast<std::size_t>(first.component)], body);
  entry.id = reading_id(first);
  return entry;
}

Entry PortfolioEntries::reading(const std::vector<StagedReading>& set) const {
  const StagedReading& first = set.front();
  const auto with_instrument = [&](auto body) {
    body.instrument = instrument_of(first);
    return of_reading(first, std::move(body));
  };
  switch (first.row.quantity) {
    case Quantity::coating_um:
      return with_instrument(coating_reading(set));
    case Quantity::wall_mm:
      return with_instrument(wall_reading(set));
    case Quantity::torque_nm:
      return with_instrument(torque_reading(first.row));
    case Quantity::grade:
      break;
  }
  return of_reading(first, condition_grade(first.row));
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
    const Uuid strike = derived_id("strike", {part.run, to_text(row.day)}, row.day);
    entry.kind = StrikeStep::kind;
    entry.body = to_body(strike_step(row, strike));
  } else {
    entry.kind = WorkDone::kind;
    entry.body = to_body(work_done(row));
  }
  return entry;
}

}  // namespace kneerail::exchange
