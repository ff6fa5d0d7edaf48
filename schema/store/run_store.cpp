#include "schema/store/run_store.h"

#include <algorithm>
#include <map>
#include <utility>

#include "core/records/made_safe.h"
#include "schema/store/organisation_days.h"
#include "schema/store/run_layout.h"
#include "schema/store/run_state.h"

namespace kneerail {
namespace {

class RunReader {
 public:
  RunReader(Database& tables, const Uuid& run, const Uuid& visit) : tables_(tables), visit_(visit) {
    work_.sheet.id = run;
    work_.sheet.visit = visit;
  }

  Result<RunSheet> read() {
    if (auto done = read_layout(tables_, work_); !done) return fail(done.error());
    using Step = Result<> (RunReader::*)();
    for (const Step step :
         {&RunReader::read_grades, &RunReader::read_strikes, &RunReader::read_findings,
          &RunReader::read_closures, &RunReader::read_water, &RunReader::read_visit}) {
      if (auto done = (this->*step)(); !done) return fail(done.error());
    }
    for (int post = 0; post < std::ssize(work_.sheet.posts); ++post)
      set_post_state(work_.sheet, post);
    return std::move(work_.sheet);
  }

 private:
  Result<> read_grades() {
    const std::string sql = "SELECT " + std::string(columns_of_grade) + " " +
                            std::string(parts_of_run) +
                            "JOIN latest AS n ON n.subject = part.id AND n.kind = 20 "
                            "JOIN reading AS r ON r.record = n.reading WHERE place.parent = ?1";
    auto done = each_row(tables_, sql, {work_.sheet.id}, [&](const Statement& row) -> Result<> {
      if (SheetPart* part = work_.part_of(row.uuid(0))) set_grade(*part, row, visit_);
      return Done{};
    });
    if (!done) return done;
    EarlierGrades earlier(tables_, visit_);
    for (SheetPart& part : work_.sheet.parts)
      if (auto told = earlier.read(part); !told) return told;
    return Done{};
  }

  Result<> read_strikes() {
    auto done = each_row(
        tables_,
        "SELECT p.component FROM strike AS s JOIN strike_part AS p ON p.strike = s.record WHERE "
        "s.subject = ?1 AND s.state IN (1, 2) AND s.voided_by IS NULL AND s.held = 0",
        {work_.sheet.id}, [&](const Statement& row) -> Result<> {
          if (SheetPart* part = work_.part_of(row.uuid(0))) part->struck = true;
          return Done{};
        });
    std::vector<char> standing(work_.sheet.bays.size(), 0);  // a part of the bay is not struck
    for (const SheetPart& part : work_.sheet.parts) {
      if (part.bay < 0) continue;
      const auto bay = static_cast<std::size_t>(part.bay);
      if (!part.struck) standing[bay] = 1;
      work_.sheet.bays[bay].struck = true;
    }
    for (std::size_t bay = 0; bay < standing.size(); ++bay)
      if (standing[bay] != 0) work_.sheet.bays[bay].struck = false;
    return done;
  }

  Result<> read_findings() {
    std::map<std::int64_t, int> numbers;
    std::vector<std::pair<std::int64_t, std::string>> writers;
    auto done = each_row(
        tables_,
        "SELECT f.record, f.subject, f.what, f.grade, f.hazard_state, f.visit, f.number, "
        "f.text, f.place, f.measures, w.code FROM finding AS f LEFT JOIN entity AS w ON w.id = "
        "f.who WHERE f.feed = ?1 AND f.ended_by IS NULL AND f.voided_by IS NULL AND f.held = 0 "
        "ORDER BY f.t, f.record",
        {work_.sheet.site}, [&](const Statement& row) -> Result<> {
          const std::int64_t number = row.is_null(6) ? 0 : row.number(6);
          ++numbers[number];
          return add_finding(row, number, writers);
        });
    for (std::size_t i = 0; i < work_.sheet.findings.size(); ++i) {
      const auto& [number, initials] = writers[i];
      work_.sheet.findings[i].number = "F-" + std::to_string(number);
      if (numbers[number] > 1 && !initials.empty())
        work_.sheet.findings[i].number += " " + initials;
    }
    return done;
  }

  Result<> add_finding(const Statement& row, std::int64_t number,
                       std::vector<std::pair<std::int64_t, std::string>>& writers) {
    SheetFinding finding;
    const Uuid subject = row.uuid(1);
    if (const auto part = work_.parts.find(subject); part != work_.parts.end()) {
      finding.part = static_cast<int>(part->second);
      finding.post = work_.sheet.parts[part->second].post;
      finding.bay = work_.sheet.parts[part->second].bay;
    } else if (const auto bay = work_.bays.find(subject); bay != work_.bays.end()) {
      finding.bay = bay->second;
      finding.post = work_.sheet.bays[static_cast<std::size_t>(finding.bay)].from;
    } else if (const auto post = work_.posts.find(subject); post != work_.posts.end()) {
      finding.post = post->second;
    } else if (subject != work_.sheet.id) {
      return Done{};  // of another run
    }
    finding.record = row.uuid(0);
    if (!row.is_null(2)) finding.what = static_cast<FindingKind>(row.number(2));
    finding.grade = row.is_null(3) ? 0 : static_cast<int>(row.number(3));
    finding.hazard_state = static_cast<int>(row.number(4));
    if (finding.part >= 0 && !visit_.is_zero() && row.uuid(5) == visit_)
      work_.sheet.parts[static_cast<std::size_t>(finding.part)].found = true;
    if (!row.is_null(7)) finding.text = row.text(7);
    if (auto done = set_place(finding, row, 8); !done) return done;
    if (auto done = close_bay(finding, row, 9); !done) return done;
    writers.emplace_back(number, row.is_null(10) ? std::string() : std::string(row.text(10)));
    work_.sheet.findings.push_back(std::move(finding));
    return Done{};
  }

  /// A place is counted from its post, or from the post before its bay.
  Result<> set_place(SheetFinding& finding, const Statement& row, int column) {
    std::int64_t from_mm = 0;
    if (row.is_null(column)) return Done{};
    if (finding.post >= 0)
      from_mm = work_.sheet.posts[static_cast<std::size_t>(finding.post)].chainage_mm;
    auto value = cbor::decode(row.bytes(column));
    if (!value) return fail(value.error());
    if (value->array() == nullptr || value->array()->size() != 2) return Done{};
    const auto* along = (*value->array())[0].number();
    const auto* up = (*value->array())[1].number();
    if (along != nullptr) finding.along_mm = from_mm + *along;
    if (up != nullptr) finding.up_mm = *up;
    return Done{};
  }

  /// A hazard that was closed off closes its bay, or the one after its post. Measures that hold
  /// nobody leave it open.
  Result<> close_bay(SheetFinding& finding, const Statement& row, int column) {
    if (finding.hazard_state == 0 || row.is_null(column)) return Done{};
    auto value = cbor::decode(row.bytes(column));
    if (!value) return fail(value.error());
    if (value->array() == nullptr) return Done{};
    for (const auto& measure : *value->array()) {
      finding.not_made_safe = finding.hazard_state == 1;
      if (measure.number() == nullptr || *measure.number() != static_cast<int>(Measure::closed_off))
        continue;
      for (SheetBay& bay : work_.sheet.bays)
        if (&bay - work_.sheet.bays.data() == finding.bay ||
            (finding.bay < 0 && bay.from == finding.post))
          bay.closed_off = true;
    }
    return Done{};
  }

  Result<> read_closures() {
    return each_row(
        tables_,
        "SELECT subject FROM closure WHERE feed = ?1 AND standing = 1 AND barrier = 1 AND "
        "voided_by IS NULL AND held = 0",
        {work_.sheet.site}, [&](const Statement& row) -> Result<> {
          const Uuid subject = row.uuid(0);
          for (SheetBay& bay : work_.sheet.bays)
            if (bay.id == subject || subject == work_.sheet.id) bay.closed_off = true;
          return Done{};
        });
  }

  /// Of this run; of its site where that has no other run, for decks differ.
  Result<> read_water() {
    auto done = each_row(
        tables_,
        "SELECT what, from_ms, rest FROM event WHERE what IN (1, 2) AND (subject = ?1 OR (subject "
        "= ?2 AND (SELECT count(*) FROM entity WHERE type = 4 AND feed = ?2) = 1)) AND "
        "from_ms IS NOT NULL AND voided_by IS NULL AND held = 0 ORDER BY from_ms DESC, record DESC",
        {work_.sheet.id, work_.sheet.site},
        [&](const Statement& row) -> Result<> { return add_water(row); });
    return done;
  }

  Result<> add_water(const Statement& row) {
    constexpr int mark_key = 6;
    auto& water = work_.sheet.water;
    const auto what = static_cast<EventKind>(row.number(0));
    for (const SheetWaterMark& newer : water)
      if (newer.what == what) return Done{};
    const auto rest = map_in(row, 2);
    if (!rest) return fail(rest.error());
    const auto* mark = rest->find(mark_key);
    if (mark == nullptr || mark->array() == nullptr || mark->array()->size() != 2) return Done{};
    const auto* up_mm = (*mark->array())[1].number();
    if (up_mm == nullptr) return Done{};
    const auto days = organisation_days(tables_);
    if (!days) return fail(days.error());
    water.push_back({what, *up_mm, days->zone.day({row.number(1)})});
    return Done{};
  }

  Result<> read_visit() {
    if (visit_.is_zero()) return Done{};
    auto done =
        each_row(tables_,
                 "SELECT subject, what FROM reading WHERE visit = ?1 AND kind = 24 AND "
                 "voided_by IS NULL AND held = 0",
                 {visit_}, [&](const Statement& row) -> Result<> {
                   if (const auto bay = work_.bays.find(row.uuid(0)); bay != work_.bays.end())
                     add_look(work_.sheet.bays[static_cast<std::size_t>(bay->second)], row);
                   return Done{};
                 });
    if (!done) return done;
    return each_row(
        tables_,
        "SELECT subject, reason FROM not_reached WHERE visit = ?1 AND voided_by IS NULL "
        "AND held = 0 ORDER BY t, record",
        {visit_}, [&](const Statement& row) -> Result<> {
          const Uuid subject = row.uuid(0);
          if (const auto post = work_.posts.find(subject); post != work_.posts.end())
            add_skip(work_.sheet.posts[static_cast<std::size_t>(post->second)], row);
          if (subject == work_.sheet.id)
            for (SheetPost& post : work_.sheet.posts) add_skip(post, row);
          return Done{};
        });
  }

  Database& tables_;
  Uuid visit_;
  RunWork work_;
};

}  // namespace

Result<RunSheet> read_run(Database& tables, const Uuid& run, const Uuid& visit) {
  return RunReader(tables, run, visit).read();
}

Result<Uuid> site_of_run(Database& tables, const Uuid& run) {
  std::optional<Uuid> site;
  auto done = each_row(tables, "SELECT feed FROM entity WHERE id = ?1 AND type = 4", {run},
                       [&](const Statement& row) -> Result<> {
                         site = row.uuid(0);
                         return Done{};
                       });
  if (!done) return fail(done.error());
  if (!site) return fail(Fault::not_found, "This run is not in the register.");
  return *site;
}

}  // namespace kneerail
