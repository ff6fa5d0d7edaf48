#include "schema/store/finding_store.h"

#include <algorithm>
#include <limits>
#include <map>
#include <tuple>

#include "core/fold/finding_rules.h"
#include "core/records/entities.h"
#include "schema/store/finding_story.h"
#include "schema/store/run_layout.h"

namespace kneerail {

namespace {

constexpr std::string_view columns =
    "SELECT f.record, f.subject, f.what, f.grade, f.hazard_state, f.hazard_records, f.number, "
    "f.text, f.can_wait, f.t, f.measures, f.stands_by, f.look_again_by_ms, f.next_step, "
    "f.mend_by_day, f.ended_how, f.ended_by, w.code, s.type, s.parent, p.parent, b.body, f.feed, "
    "f.who, f.life, f.put_off, f.ended_on "
    "FROM finding AS f LEFT JOIN entity AS w ON w.id = f.who LEFT JOIN entity AS s ON s.id = "
    "f.subject LEFT JOIN entity AS p ON p.id = s.parent LEFT JOIN fact AS b ON b.record = "
    "f.stands_by WHERE f.voided_by IS NULL AND f.held = 0 ";
enum Column : int {
  record,
  subject,
  what,
  grade,
  hazard_state,
  hazards,
  number,
  text,
  can_wait,
  found,
  measures,
  stands_by,
  look_again,
  next_step,
  mend_by,
  ended_how,
  ended_by,
  writer,
  subject_type,
  subject_parent,
  place_parent,
  stands_body,
  feed,
  who,
  life,
  put_off,
  ended_on
};

Result<cbor::Array> array_in(const Statement& row, int column) {
  if (row.is_null(column)) return cbor::Array{};
  auto value = cbor::decode(row.bytes(column));
  if (!value) return fail(value.error());
  return value->array() == nullptr ? cbor::Array{} : *value->array();
}

std::string text_of(const Statement& row, int column) {
  return row.is_null(column) ? std::string() : std::string(row.text(column));
}

std::optional<Instant> instant_of(const Statement& row, int column) {
  return row.is_null(column) ? std::nullopt : std::optional(Instant{row.number(column)});
}

/// Of a part its post's or bay's.
Uuid run_of(const Statement& row) {
  enum Type : std::int64_t { run = 4, post, bay, component };
  if (row.is_null(subject_type)) return {};
  switch (row.number(subject_type)) {
    case run:
      return row.uuid(subject);
    case post:
    case bay:
      return row.is_null(subject_parent) ? Uuid{} : row.uuid(subject_parent);
    case component:
      return row.is_null(place_parent) ? Uuid{} : row.uuid(place_parent);
    default:
      return {};
  }
}

/// The moment that was said, else the one its record was written at.
std::optional<Instant> stands_since(const Statement& row) {
  constexpr std::int64_t when_key = 3;
  if (row.is_null(stands_by)) return {};
  if (!row.is_null(stands_body)) {
    const auto body = cbor::decode(row.bytes(stands_body));
    const auto* map = body ? body->map() : nullptr;
    const auto* when = map == nullptr ? nullptr : map->find(when_key);
    if (when != nullptr && when->number() != nullptr) return Instant{*when->number()};
  }
  return Instant{row.uuid(stands_by).unix_ms()};
}

Result<KeptFinding> finding_of(const Statement& row) {
  KeptFinding finding;
  finding.record = row.uuid(record);
  finding.subject = row.uuid(subject);
  finding.run = run_of(row);
  finding.site = row.uuid(feed);
  finding.who = row.uuid(who);
  if (!row.is_null(life)) finding.life = row.uuid(life);
  if (!row.is_null(what)) finding.what = static_cast<FindingKind>(row.number(what));
  if (!row.is_null(grade)) finding.grade = static_cast<int>(row.number(grade));
  finding.hazard = static_cast<HazardState>(row.number(hazard_state));
  finding.text = text_of(row, text);
  finding.why_it_can_wait = text_of(row, can_wait);
  finding.found_ms = row.number(found);
  finding.look_again_by = instant_of(row, look_again);
  finding.safe_since = stands_since(row);
  if (!row.is_null(next_step)) finding.next = static_cast<NextStepKind>(row.number(next_step));
  if (!row.is_null(mend_by)) finding.mend_by = Date{static_cast<std::int32_t>(row.number(mend_by))};
  if (!row.is_null(put_off)) finding.put_off = static_cast<WhyPutOff>(row.number(put_off));
  if (!row.is_null(ended_on)) finding.ended_on = static_cast<EndedOn>(row.number(ended_on));
  if (!row.is_null(ended_how)) finding.ended_how = static_cast<HowEnded>(row.number(ended_how));
  if (!row.is_null(ended_by)) finding.ended_at = Instant{row.uuid(ended_by).unix_ms()};
  const auto done = array_in(row, measures);
  if (!done) return fail(done.error());
  for (const auto& one : *done)
    if (one.number() != nullptr) finding.measures.push_back(static_cast<Measure>(*one.number()));
  const auto named = array_in(row, hazards);
  if (!named) return fail(named.error());
  for (const auto& one : *named)
    if (const auto id = one.uuid()) finding.hazards.push_back(*id);
  return finding;
}

Result<std::vector<KeptFinding>> findings_where(Database& tables, std::string_view condition,
                                                const std::vector<Uuid>& given) {
  struct Numbered {
    std::int64_t number = 0;
    std::string initials;
  };
  std::vector<KeptFinding> all;
  std::vector<Numbered> numbers;
  std::map<std::int64_t, int> times;
  auto read = each_row(tables, std::string(columns) + std::string(condition), given,
                       [&](const Statement& row) -> Result<> {
                         auto finding = finding_of(row);
                         if (!finding) return fail(finding.error());
                         all.push_back(std::move(*finding));
                         numbers.push_back({
                             row.is_null(number) ? 0 : row.number(number),
                             text_of(row, writer),
                         });
                         ++times[numbers.back().number];
                         return Done{};
                       });
  if (!read) return fail(read.error());
  for (std::size_t i = 0; i < all.size(); ++i) {
    all[i].number = "F-" + std::to_string(numbers[i].number);
    if (times[numbers[i].number] > 1 && !numbers[i].initials.empty())
      all[i].number += " " + numbers[i].initials;
  }
  return all;
}

Digest digest_in(const Statement& row, int column) {
  Digest digest{};
  const auto bytes = row.bytes(column);
  if (bytes.size() == digest.size()) std::copy(bytes.begin(), bytes.end(), digest.begin());
  return digest;
}

Result<> add_photographs(Database& tables, KeptFinding& finding) {
  return each_row(
      tables,
      "SELECT record, sha, preview_sha, marks FROM photograph WHERE subject = ?1 AND "
      "voided_by IS NULL AND held = 0 AND sha IS NOT NULL AND preview_sha IS NOT NULL "
      "AND NOT EXISTS (SELECT 1 FROM object_state AS o WHERE o.sha = photograph.sha AND "
      "o.erased_by IS NOT NULL AND o.kept_by IS NULL) ORDER BY t DESC, record DESC",
      {finding.record}, [&](const Statement& row) -> Result<> {
        KeptPhotograph photograph{row.uuid(0), digest_in(row, 1), digest_in(row, 2), {}};
        if (!row.is_null(3)) {
          auto value = cbor::decode(row.bytes(3));
          if (!value) return fail(value.error());
          auto marks = marks_from(*value);
          if (!marks) return fail(marks.error());
          photograph.marks = std::move(*marks);
        }
        finding.photographs.push_back(std::move(photograph));
        return Done{};
      });
}

/// Not made safe, made safe, the rest by the day it is to be mended by and the grade; ended last.
auto hangs(const KeptFinding& finding) {
  constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max();
  const bool ended = finding.ended_how.has_value();
  const int rank = ended                                      ? 3
                   : finding.hazard == HazardState::open      ? 0
                   : finding.hazard == HazardState::made_safe ? 1
                                                              : 2;
  const std::int64_t due = finding.mend_by ? std::int64_t{finding.mend_by->days} : never;
  return std::tuple(rank, ended ? -finding.ended_at->ms : 0, due, -finding.grade, finding.found_ms,
                    finding.record);
}

}  // namespace

bool KeptFinding::is_gone() const {
  std::vector<std::int64_t> codes;
  for (const Measure measure : measures) codes.push_back(static_cast<std::int64_t>(measure));
  return hazard == HazardState::open && fold::hold_people_back(codes, false);
}

Result<std::int64_t> last_finding_number(Database& tables, const Uuid& site, const Uuid& person) {
  std::int64_t last = 0;
  auto done =
      each_row(tables, "SELECT coalesce(max(number), 0) FROM finding WHERE feed = ?1 AND who = ?2",
               {site, person}, [&](const Statement& row) -> Result<> {
                 last = row.number(0);
                 return Done{};
               });
  if (!done) return fail(done.error());
  return last;
}

Result<std::vector<KeptFinding>> read_findings(Database& tables, const FindingsAsked& asked) {
  auto all = findings_where(
      tables, asked.ended_too ? "AND f.feed = ?1" : "AND f.feed = ?1 AND f.ended_by IS NULL",
      {asked.site});
  if (!all) return all;
  if (auto done = add_stories(tables, *all); !done) return fail(done.error());
  for (KeptFinding& finding : *all)
    if (auto done = add_photographs(tables, finding); !done) return fail(done.error());
  std::sort(all->begin(), all->end(),
            [](const auto& one, const auto& other) { return hangs(one) < hangs(other); });
  return all;
}

Result<std::int64_t> findings_ended(Database& tables, const Uuid& site) {
  std::int64_t count = 0;
  auto done = each_row(tables,
                       "SELECT count(*) FROM finding WHERE feed = ?1 AND ended_by IS NOT NULL AND "
                       "voided_by IS NULL AND held = 0",
                       {site}, [&](const Statement& row) -> Result<> {
                         count = row.number(0);
                         return Done{};
                       });
  if (!done) return fail(done.error());
  return count;
}

Result<std::optional<Instant>> last_look_at(Database& tables, const Uuid& run) {
  std::optional<Instant> last;
  auto done = each_row(tables,
                       "SELECT max(c.last_t) FROM coverage AS c JOIN entity AS e ON e.id = c.post "
                       "WHERE e.parent = ?1 AND e.type = 5",
                       {run}, [&](const Statement& row) -> Result<> {
                         last = instant_of(row, 0);
                         return Done{};
                       });
  if (!done) return fail(done.error());
  return last;
}

Result<std::vector<KeptFinding>> hazards_standing(Database& tables) {
  auto all = findings_where(
      tables, "AND f.hazard_state IN (1, 2) AND f.ended_by IS NULL ORDER BY f.t, f.record", {});
  if (!all) return all;
  if (auto done = add_stories(tables, *all); !done) return fail(done.error());
  return all;
}

}  // namespace kneerail
