#include "schema/store/run_store.h"

#include <algorithm>
#include <map>
#include <utility>

#include "core/records/made_safe.h"
#include "core/records/visit.h"
#include "schema/store/run_layout.h"

namespace kneerail {
namespace {

std::string skipped_words(std::int64_t reason) {
  const bool known = reason >= 1 && reason <= std::ssize(not_reached_words);
  return std::string(known ? not_reached_words[reason - 1] : not_reached_words[6]);
}

class RunReader {
 public:
  RunReader(Database& tables, const Uuid& run, const Uuid& visit) : tables_(tables), visit_(visit) {
    work_.sheet.id = run;
  }

  Result<RunSheet> read() {
    if (auto done = read_layout(tables_, work_); !done) return fail(done.error());
    using Step = Result<> (RunReader::*)();
    for (const Step step :
         {&RunReader::read_grades, &RunReader::read_strikes, &RunReader::read_findings,
          &RunReader::read_closures, &RunReader::read_visit}) {
      if (auto done = (this->*step)(); !done) return fail(done.error());
    }
    set_post_states();
    return std::move(work_.sheet);
  }

 private:
  static SheetGrade grade_of(const Statement& row) {
    SheetGrade grade;
    grade.grade = static_cast<int>(row.number(1));
    grade.record = row.uuid(2);
    grade.visit = row.uuid(3);
    grade.who = row.uuid(4);
    grade.t_ms = row.number(5);
    grade.carried = row.number(6) != 0;
    if (!row.is_null(7)) grade.how = static_cast<HowLooked>(row.number(7));
    return grade;
  }

  Result<> read_grades() {
    const std::string sql =
        "SELECT r.subject, r.v1, r.record, r.visit, r.who, r.t, r.carried, r.how " +
        std::string(parts_of_run) +
        "JOIN latest AS n ON n.subject = part.id AND n.kind = 20 "
        "JOIN reading AS r ON r.record = n.reading WHERE place.parent = ?1";
    auto done = each_row(tables_, sql, {work_.sheet.id}, [&](const Statement& row) -> Result<> {
      SheetPart* part = work_.part_of(row.uuid(0));
      if (part == nullptr) return Done{};
      const SheetGrade grade = grade_of(row);
      (grade.visit == visit_ && !visit_.is_zero() ? part->now : part->last) = grade;
      return Done{};
    });
    if (!done) return done;
    for (SheetPart& part : work_.sheet.parts)
      if (part.now || (part.last && part.last->carried))
        if (auto told = read_earlier_grades(part); !told) return told;
    return Done{};
  }

  /// What counted before this visit, and for how many visits it has been said again as last time.
  Result<> read_earlier_grades(SheetPart& part) {
    bool counting = true;
    std::optional<Uuid> counted;
    return each_row(
        tables_,
        "SELECT subject, v1, record, visit, who, t, carried, how FROM reading WHERE subject = ?1 "
        "AND kind = 20 AND voided_by IS NULL AND held = 0 AND visit IS NOT ?2 "
        "ORDER BY t DESC, record DESC LIMIT 16",
        {part.id, visit_}, [&](const Statement& row) -> Result<> {
          const SheetGrade grade = grade_of(row);
          if (!part.last) part.last = grade;
          counting = counting && grade.carried;
          if (counting && counted != grade.visit) {
            ++part.carried_in_a_row;
            counted = grade.visit;
          }
          return Done{};
        });
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
    for (std::size_t bay = 0; bay < work_.sheet.bays.size(); ++bay) {
      bool any = false;
      bool all = true;
      for (const SheetPart& part : work_.sheet.parts) {
        if (part.bay != static_cast<int>(bay)) continue;
        any = true;
        all = all && part.struck;
      }
      work_.sheet.bays[bay].struck = any && all;
    }
    return done;
  }

  Result<> read_findings() {
    std::map<std::int64_t, int> numbers;
    std::vector<std::pair<std::int64_t, std::string>> writers;
    auto done = each_row(
        tables_,
        "SELECT f.record, f.subject, f.what, f.grade, f.hazard_state, f.visit, f.number, "
        "f.text, f.place, f.measures, w.rest FROM finding AS f LEFT JOIN entity AS w ON w.id = "
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
      found_in_visit_.push_back(finding.part);
    if (!row.is_null(7)) finding.text = row.text(7);
    if (auto done = set_place(finding, row, 8); !done) return done;
    if (auto done = close_bay(finding, row, 9); !done) return done;
    const auto rest = map_in(row, 10);
    if (!rest) return fail(rest.error());
    writers.emplace_back(number, text_in(*rest, person_field::initials));
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

  Result<> read_visit() {
    if (visit_.is_zero()) return Done{};
    auto done =
        each_row(tables_,
                 "SELECT subject, what FROM reading WHERE visit = ?1 AND kind = 24 AND "
                 "voided_by IS NULL AND held = 0",
                 {visit_}, [&](const Statement& row) -> Result<> {
                   if (const auto bay = work_.bays.find(row.uuid(0)); bay != work_.bays.end()) {
                     looked_bays_.push_back(bay->second);
                     // 1 firm, 2 gives, 3 moves, 4 not pushed
                     if (!row.is_null(1) && row.number(1) < 4)
                       work_.sheet.bays[static_cast<std::size_t>(bay->second)].pushed = true;
                   }
                   return Done{};
                 });
    if (!done) return done;
    return each_row(
        tables_,
        "SELECT subject, reason FROM not_reached WHERE visit = ?1 AND voided_by IS NULL "
        "AND held = 0",
        {visit_}, [&](const Statement& row) -> Result<> {
          const std::string words = skipped_words(row.is_null(1) ? 0 : row.number(1));
          const Uuid subject = row.uuid(0);
          for (SheetPost& post : work_.sheet.posts)
            if (post.id == subject || subject == work_.sheet.id) post.skipped_because = words;
          return Done{};
        });
  }

  /// Seen: each of its parts and the bay after it has a look of this visit.
  void set_post_states() {
    for (std::size_t i = 0; i < work_.sheet.posts.size(); ++i) {
      SheetPost& post = work_.sheet.posts[i];
      bool seen = post.parts > 0;
      bool struck = post.parts > 0;
      for (int p = post.first_part; p < post.first_part + post.parts; ++p) {
        const SheetPart& part = work_.sheet.parts[static_cast<std::size_t>(p)];
        seen = seen && (part.now || part.struck || found_on(p));
        struck = struck && (part.struck || part.bay >= 0);
      }
      for (std::size_t b = 0; b < work_.sheet.bays.size(); ++b)
        if (work_.sheet.bays[b].from == static_cast<int>(i) && !work_.sheet.bays[b].struck)
          seen = seen && std::find(looked_bays_.begin(), looked_bays_.end(), static_cast<int>(b)) !=
                             looked_bays_.end();
      if (struck)
        post.state = PostState::struck;
      else if (seen)
        post.state = PostState::seen;
      else if (!post.skipped_because.empty())
        post.state = PostState::skipped;
    }
  }

  [[nodiscard]] bool found_on(int part) const {
    return std::any_of(found_in_visit_.begin(), found_in_visit_.end(),
                       [&](int found) { return found == part; });
  }

  Database& tables_;
  Uuid visit_;
  RunWork work_;
  std::vector<int> looked_bays_;
  std::vector<int> found_in_visit_;
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
