#include "schema/store/finding_story.h"

#include <algorithm>
#include <map>

#include "core/records/entities.h"
#include "core/records/people.h"
#include "core/records/told.h"
#include "schema/store/register_things.h"
#include "schema/store/run_layout.h"

namespace kneerail {

namespace {

using Initials = std::map<Uuid, std::string>;

Result<Initials> all_initials(Database& tables) {
  Initials initials;
  auto done = each_row(tables, "SELECT id, code FROM entity WHERE type = 10", {},
                       [&](const Statement& row) -> Result<> {
                         if (!row.is_null(1)) initials[row.uuid(0)] = row.text(1);
                         return Done{};
                       });
  if (!done) return fail(done.error());
  return initials;
}

std::string of(const Initials& initials, const Uuid& person) {
  const auto at = initials.find(person);
  return at == initials.end() ? std::string() : at->second;
}

std::vector<Uuid> ids_in(const cbor::Map& map, int key) {
  std::vector<Uuid> ids;
  const auto* value = map.find(key);
  if (value == nullptr || value->array() == nullptr) return ids;
  for (const auto& one : *value->array())
    if (const auto id = one.uuid()) ids.push_back(*id);
  return ids;
}

/// One record about a finding.
struct Said {
  int kind = 0;
  Uuid record;
  Uuid who;
  cbor::Map body;

  [[nodiscard]] Instant at() const {
    constexpr int key_when = 3;
    const auto when = kind == MadeSafe::kind ? number_in(body, key_when) : std::nullopt;
    return Instant{when.value_or(record.unix_ms())};
  }
};

void add_made_safe(const Said& said, const Initials& initials, KeptFinding& finding) {
  enum Key : int { key_measures = 1, key_told_to = 2, key_told_in_words = 5 };
  for (const Uuid& person : ids_in(said.body, key_told_to))
    finding.told.push_back({person, of(initials, person), said.at()});
  if (std::string office = text_in(said.body, key_told_in_words); !office.empty())
    finding.told.push_back({std::nullopt, std::move(office), said.at()});
  const auto* measures = said.body.find(key_measures);
  if (measures == nullptr || measures->array() == nullptr) return;
  const bool held =
      std::any_of(measures->array()->begin(), measures->array()->end(), [](const cbor::Value& one) {
        return one.number() != nullptr && static_cast<Measure>(*one.number()) != Measure::reported;
      });
  if (held) finding.safe_since = said.at();
}

void add_next_step(const Said& said, std::optional<Date>& day, KeptFinding& finding) {
  constexpr int key_mend_by = 2;
  const auto by = number_in(said.body, key_mend_by);
  if (!by) return;
  const Date next{static_cast<std::int32_t>(*by)};
  if (day && *day != next) finding.mend_by_before = day;
  day = next;
}

void add_look(const Said& said, KeptFinding& finding) {
  constexpr int key_how = 1;
  const auto how = number_in(said.body, key_how);
  if (how && static_cast<HowItStands>(*how) != HowItStands::not_seen)
    finding.safe_since = said.at();
}

Result<> add_story(Database& tables, const Initials& initials, KeptFinding& finding) {
  std::optional<Date> day;
  return each_row(
      tables,
      "SELECT f.kind, f.record, f.who, f.body FROM fact AS f LEFT JOIN change AS c ON c.record = "
      "f.record WHERE f.subject = ?1 AND f.kind IN (33, 35, 37, 58) AND c.voided_by IS NULL AND "
      "((f.flags & 1) = 0 OR c.released_by IS NOT NULL) ORDER BY f.l, f.c, f.record",
      {finding.record}, [&](const Statement& row) -> Result<> {
        Said said{static_cast<int>(row.number(0)), row.uuid(1), row.uuid(2), {}};
        auto body = map_in(row, 3);
        if (!body) return fail(body.error());
        said.body = std::move(*body);
        if (said.kind == MadeSafe::kind) add_made_safe(said, initials, finding);
        if (said.kind == NextStep::kind) add_next_step(said, day, finding);
        if (said.kind == ClosureLook::kind) add_look(said, finding);
        if (said.kind == ReadBy::kind)
          finding.read.push_back({said.who, of(initials, said.who), said.at()});
        return Done{};
      });
}

}  // namespace

Result<> add_stories(Database& tables, std::vector<KeptFinding>& findings) {
  if (findings.empty()) return Done{};
  const auto initials = all_initials(tables);
  if (!initials) return fail(initials.error());
  for (KeptFinding& finding : findings)
    if (auto done = add_story(tables, *initials, finding); !done) return done;
  return Done{};
}

Result<std::vector<PersonToTell>> people_to_tell(Database& tables, const Uuid& site) {
  std::vector<Uuid> ids;
  auto read = each_row(tables, "SELECT rest FROM entity WHERE id = ?1", {site},
                       [&](const Statement& row) -> Result<> {
                         const auto rest = map_in(row, 0);
                         if (!rest) return fail(rest.error());
                         ids = ids_in(*rest, site_field::people_to_tell);
                         const auto duty_holder = id_in(*rest, site_field::duty_holder);
                         if (ids.empty() && duty_holder) ids.push_back(*duty_holder);
                         return Done{};
                       });
  if (!read) return fail(read.error());
  const auto things = things_among(tables, static_cast<int>(EntityType::person), ids);
  if (!things) return fail(things.error());
  std::vector<PersonToTell> people;
  for (const Uuid& id : ids) {
    const auto at = std::find_if(things->begin(), things->end(),
                                 [&](const Thing& thing) { return thing.id == id; });
    if (at == things->end()) continue;
    PersonToTell person{id, at->code, {}};
    const auto* sha = at->rest.find(person_field::particulars);
    if (sha != nullptr && sha->bytes() != nullptr && sha->bytes()->size() == Digest{}.size()) {
      person.particulars.emplace();
      std::copy(sha->bytes()->begin(), sha->bytes()->end(), person.particulars->begin());
    }
    people.push_back(std::move(person));
  }
  return people;
}

Result<bool> answers_for(Database& tables, const Uuid& person, const Uuid& site, Date day) {
  bool answers = false;
  auto done = each_row(
      tables,
      "SELECT role, sites, until_day FROM person_role WHERE subject = ?1 AND role IN (2, 3) AND "
      "taken_by IS NULL AND voided_by IS NULL AND held = 0",
      {person}, [&](const Statement& row) -> Result<> {
        if (!row.is_null(2) && row.number(2) < day.days) return Done{};
        if (row.is_null(1)) {
          answers = true;
          return Done{};
        }
        const auto sites = cbor::decode(row.bytes(1));
        if (!sites) return fail(sites.error());
        if (sites->array() == nullptr) return Done{};
        for (const auto& one : *sites->array()) answers = answers || one.uuid() == site;
        return Done{};
      });
  if (!done) return fail(done.error());
  return answers;
}

}  // namespace kneerail
