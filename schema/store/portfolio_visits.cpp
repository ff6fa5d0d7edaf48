// Visits as a portfolio has them: one row a person and set of instruments. A register keeps a
// visit, the people of it, and the instrument in each reading; the rows are derived.

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "core/records/coating_reading.h"
#include "core/records/wall_reading.h"
#include "schema/store/portfolio_tables.h"
#include "schema/store/run_layout.h"

namespace kneerail {
namespace {

void insert_sorted(std::vector<Uuid>& list, const Uuid& id) {
  const auto place = std::lower_bound(list.begin(), list.end(), id);
  if (place == list.end() || *place != id) list.insert(place, id);
}

}  // namespace

Result<> PortfolioTables::load_visits() {
  if (auto ok = load_visit_parts(); !ok) return ok;
  if (auto ok = load_instruments_of_visits(); !ok) return ok;
  if (auto ok = load_check_foils(); !ok) return ok;
  if (auto ok = load_failed_checks(); !ok) return ok;
  number_visits();
  return Done{};
}

/// Visits and the people of them, whether they measured or not; and readings of a visit that was
/// not received, on the day of its first reading.
Result<> PortfolioTables::load_visit_parts() {
  auto rows = tables_.prepare(
      "SELECT p.visit, p.person, p.feed, coalesce(v.t, p.joined_t) FROM visit_part p "
      "LEFT JOIN visit v ON v.record = p.visit WHERE v.voided_by IS NULL "
      "AND coalesce(v.held, 0) = 0 "
      "UNION SELECT r.visit, r.who, r.feed, coalesce(v.t, min(r.t)) FROM reading r "
      "LEFT JOIN visit v ON v.record = r.visit WHERE r.visit IS NOT NULL GROUP BY r.visit, r.who "
      "ORDER BY 1, 2");
  if (!rows) return fail(rows.error());
  while (true) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return Done{};
    VisitPart part;
    part.visit = rows->uuid(0);
    part.who = rows->uuid(1);
    part.site = rows->uuid(2);
    part.day = zone_.day_of_entry(Instant{rows->number(3)});
    if (!is_known_on(part.day)) continue;
    part.asked = is_asked(part.site);
    auto& of_visit = parts_of_visit_[part.visit];
    if (!of_visit.empty() && visit_parts_[of_visit.back()].who == part.who) {
      VisitPart& before = visit_parts_[of_visit.back()];
      before.asked = before.asked || part.asked;
      auto& of_site = visits_of_site_[part.site];
      if (of_site.empty() || of_site.back() != of_visit.back()) of_site.push_back(of_visit.back());
      continue;
    }
    of_visit.push_back(visit_parts_.size());
    visits_of_site_[part.site].push_back(visit_parts_.size());
    visit_parts_.push_back(std::move(part));
  }
}

PortfolioTables::VisitPart* PortfolioTables::visit_part(const Uuid& visit, const Uuid& who) {
  const auto found = parts_of_visit_.find(visit);
  if (found == parts_of_visit_.end()) return nullptr;
  for (const auto place : found->second)
    if (visit_parts_[place].who == who) return &visit_parts_[place];
  return nullptr;
}

Result<> PortfolioTables::load_instruments_of_visits() {
  return each_row(tables_,
                  "SELECT DISTINCT visit, who, kind, instrument FROM reading "
                  "WHERE kind IN (21, 22, 23) AND visit IS NOT NULL AND instrument IS NOT NULL "
                  "AND voided_by IS NULL AND held = 0",
                  {}, [&](const Statement& row) -> Result<> {
                    VisitPart* part = visit_part(row.uuid(0), row.uuid(1));
                    if (part == nullptr) return Done{};
                    const auto kind = row.number(2);
                    auto& list = kind == CoatingReading::kind ? part->coating_gauges
                                 : kind == WallReading::kind  ? part->wall_gauges
                                                              : part->wrenches;
                    insert_sorted(list, row.uuid(3));
                    return Done{};
                  });
}

/// The check foil nearest before the first reading: the last one of the visit that was not later.
Result<> PortfolioTables::load_check_foils() {
  return each_row(
      tables_,
      "SELECT c.visit, c.who, c.subject, c.reference, c.readings, c.t FROM instrument_check c "
      "WHERE c.what = 2 AND c.reference IS NOT NULL AND c.visit IS NOT NULL "
      "AND c.voided_by IS NULL AND c.held = 0 AND c.t <= coalesce((SELECT min(r.t) FROM reading r "
      "WHERE r.visit = c.visit AND r.who = c.who AND r.kind = 21 AND r.instrument = c.subject), "
      "c.t) ORDER BY c.t, c.record",
      {}, [&](const Statement& row) -> Result<> {
        VisitPart* part = visit_part(row.uuid(0), row.uuid(1));
        auto read = cbor::decode(row.bytes(4));
        if (!read) return fail(read.error());
        if (part == nullptr || read->array() == nullptr || read->array()->empty()) return Done{};
        double sum = 0;
        for (const auto& one : *read->array())
          sum += one.number() == nullptr ? 0 : static_cast<double>(*one.number());
        const double mean = sum / static_cast<double>(read->array()->size());
        const Uuid gauge = row.uuid(2);
        insert_sorted(part->coating_gauges, gauge);
        part->foils[gauge] = {static_cast<double>(row.number(3)) / 10, mean / 10, row.number(5)};
        return Done{};
      });
}

/// Gauges whose check was not in order, where no later one that was came before they read. A check
/// outside of a visit is of whoever used the gauge at that site on that day.
Result<> PortfolioTables::load_failed_checks() {
  const auto failed = tables_.number("SELECT count(*) FROM instrument_check WHERE in_order = 0");
  if (!failed) return fail(failed.error());
  if (*failed == 0) return Done{};
  return each_row(
      tables_,
      "SELECT p.visit, p.who, c.subject, c.t, c.visit IS NULL FROM instrument_check c JOIN (SELECT "
      "visit, who, feed, instrument, min(t) AS first FROM reading WHERE kind = 21 AND visit IS NOT "
      "NULL AND voided_by IS NULL AND held = 0 GROUP BY visit, who, instrument) p ON "
      "p.instrument = c.subject AND (c.visit = p.visit AND c.who = p.who OR c.visit IS NULL AND "
      "c.feed = p.feed) "
      "WHERE c.in_order = 0 AND c.voided_by IS NULL AND c.held = 0 AND NOT EXISTS (SELECT 1 FROM "
      "instrument_check n WHERE n.subject = c.subject AND n.in_order = 1 AND n.voided_by IS NULL "
      "AND n.held = 0 AND n.t > c.t AND n.t <= p.first)",
      {}, [&](const Statement& row) -> Result<> {
        VisitPart* part = visit_part(row.uuid(0), row.uuid(1));
        if (part == nullptr) return Done{};
        const bool outside = row.number(4) != 0;
        if (outside && zone_.day_of_entry(Instant{row.number(3)}) != part->day) return Done{};
        part->not_in_order.insert(row.uuid(2));
        return Done{};
      });
}

/// Rows stand in the order of what people call a person and an instrument. Identifiers are others
/// in a register that the files were imported into, and the grades of a visit, which carry no
/// instrument, would change rows.
std::vector<std::size_t> PortfolioTables::order_by_name() {
  const auto by = [](const Things& things) {
    return [&things](const Uuid& a, const Uuid& b) {
      return std::pair(things.text(a), a) < std::pair(things.text(b), b);
    };
  };
  std::vector<std::size_t> order(visit_parts_.size());
  for (std::size_t i = 0; i < order.size(); ++i) {
    order[i] = i;
    VisitPart& part = visit_parts_[i];
    for (auto* list : {&part.coating_gauges, &part.wall_gauges, &part.wrenches})
      std::sort(list->begin(), list->end(), by(instruments_));
  }
  const auto by_person = by(people_);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const VisitPart& one = visit_parts_[a];
    const VisitPart& other = visit_parts_[b];
    return one.visit != other.visit ? one.visit < other.visit : by_person(one.who, other.who);
  });
  return order;
}

/// Gives every person's part of a visit its rows: the n-th holds the n-th gauge and wrench. They
/// are numbered over all sites, so that a visit of two is called the same whichever is asked.
void PortfolioTables::number_visits() {
  std::map<Uuid, std::size_t> rows_of_visit;
  for (const std::size_t p : order_by_name()) {
    VisitPart& part = visit_parts_[p];
    part.rows.resize(std::max({std::size_t{1}, part.coating_gauges.size(), part.wall_gauges.size(),
                               part.wrenches.size()}));
    std::size_t& rows = rows_of_visit[part.visit];
    part.rows_before = rows;
    rows += part.rows.size();
  }
  for (VisitPart& part : visit_parts_) part.of_several = rows_of_visit[part.visit] > 1;
}

forecast::Visit PortfolioTables::row_of_visit(const VisitPart& part, std::size_t row) const {
  forecast::Visit visit;
  visit.id = to_text(part.visit);
  if (part.of_several) visit.id += "." + std::to_string(part.rows_before + row + 1);
  visit.site = sites_.text(part.site);
  visit.day = part.day;
  visit.inspector = people_.text(part.who);
  const auto named = [&](const std::vector<Uuid>& list) {
    return row < list.size() ? instruments_.text(list[row]) : std::string();
  };
  visit.coating_gauge = named(part.coating_gauges);
  visit.wall_gauge = named(part.wall_gauges);
  visit.wrench = named(part.wrenches);
  if (row >= part.coating_gauges.size()) return visit;
  const Uuid& gauge = part.coating_gauges[row];
  visit.gauge_not_in_order = part.not_in_order.contains(gauge);
  if (const auto foil = part.foils.find(gauge); foil != part.foils.end()) {
    visit.foil_true_um = foil->second.true_um;
    visit.foil_read_um = foil->second.read_um;
  }
  return visit;
}

/// The rows of those asked, ascending by id.
void PortfolioTables::make_visits() {
  struct Made {
    forecast::Visit visit;
    VisitPart* part;
    std::size_t row;
  };
  std::vector<Made> all;
  const auto add = [&](VisitPart& part) {
    for (std::size_t row = 0; part.asked && row < part.rows.size(); ++row)
      all.push_back({row_of_visit(part, row), &part, row});
  };
  if (!site_by_site_)
    for (VisitPart& part : visit_parts_) add(part);
  else
    for (const Uuid& site : sites_asked_)
      for (const std::size_t p : visits_of_site_[site]) add(visit_parts_[p]);
  std::sort(all.begin(), all.end(),
            [](const Made& a, const Made& b) { return a.visit.id < b.visit.id; });
  for (Made& made : all) place_row(*made.part, made.row, std::move(made.visit));
}

void PortfolioTables::place_row(VisitPart& part, std::size_t row, forecast::Visit visit) {
  const auto place = static_cast<std::int32_t>(visits_.size());
  part.rows[row] = place;
  if (visit.foil_read_um) {
    const Uuid& gauge = part.coating_gauges[row];
    foils_.push_back({place, gauge, Instant{part.foils[gauge].t}});
  }
  visits_.push_back(std::move(visit));
}

void PortfolioTables::ask_late(VisitPart& part) {
  part.asked = true;
  asked_late_.push_back(&part);
  for (std::size_t row = 0; row < part.rows.size(); ++row)
    place_row(part, row, row_of_visit(part, row));
}

}  // namespace kneerail
