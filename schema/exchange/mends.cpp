#include "schema/exchange/mends.h"

#include <algorithm>
#include <span>
#include <utility>

#include "core/base/text.h"
#include "core/records/coating_reading.h"
#include "core/records/condition_grade.h"
#include "core/records/correction.h"
#include "core/records/instrument.h"
#include "core/records/registers.h"
#include "core/records/strike.h"
#include "core/records/torque_reading.h"
#include "core/records/visit.h"
#include "core/records/wall_reading.h"
#include "core/records/work.h"
#include "schema/exchange/import_ids.h"
#include "schema/exchange/portfolio_layout.h"

namespace kneerail::exchange {
namespace {

/// A value that a file says: the kind, or the type of a thing, and its key there.
struct Told {
  int of;
  int key;
  std::string_view column;
  int digits = 0;
  bool shown = true;  ///< a number a person reads; else a code or an identifier
};

constexpr int instrument_key = 2;
constexpr int replicates_key = 3;

constexpr Told told_of_records[] = {
    {ConditionGrade::kind, 2, "value"},
    {ConditionGrade::kind, 5, "how", 0, false},
    {ConditionGrade::kind, key_as_last_time, "carried", 0, false},
    {CoatingReading::kind, instrument_key, "coating_gauge_id", 0, false},
    {CoatingReading::kind, replicates_key, "value", 1},
    {CoatingReading::kind, 8, "surface", 0, false},
    {TorqueReading::kind, instrument_key, "wrench_id", 0, false},
    {TorqueReading::kind, 4, "value", 1},
    {TorqueReading::kind, 5, "censor", 0, false},
    {TorqueReading::kind, 6, "censor", 0, false},
    {TorqueReading::kind, 10, "wrench_set_nm", 1},
    {WallReading::kind, instrument_key, "wall_gauge_id", 0, false},
    {WallReading::kind, replicates_key, "value", 2},
    {InstrumentCheck::kind, 3, "foil_true_um", 1},
    {InstrumentCheck::kind, 4, "foil_read_um", 1},
    {WorkDone::kind, 4, "as_left_nm", 1},
    {WorkDone::kind, 7, "new_nominal_coating_um", 1},
    {StrikeStep::kind, 3, "as_left_nm", 1},
};

constexpr int code_of(EntityType type) {
  return static_cast<int>(type);
}

constexpr Told told_of_things[] = {
    {code_of(EntityType::site), site_field::rule_set, "first_maintenance_um", 0, false},
    {code_of(EntityType::zone), zone_field::corrosivity_category, "corrosivity_category", 0, false},
    {code_of(EntityType::zone), zone_field::first_year_zinc_loss, "zinc_rate_prior_um_per_yr", 3},
    {code_of(EntityType::zone), zone_field::zinc_loss_ln_sd, "zinc_rate_prior_ln_sd", 3},
    {code_of(EntityType::zone), zone_field::first_year_steel_loss, "steel_rate_prior_um_per_yr", 3},
    {code_of(EntityType::zone), zone_field::loss_from, "zinc_rate_prior_um_per_yr", 0, false},
    {code_of(EntityType::component), component_field::role, "kind", 0, false},
    {code_of(EntityType::component), component_field::component_type, "material", 0, false},
    {code_of(EntityType::component), component_field::date_in_service, "install_date", 0, false},
    {code_of(EntityType::component), component_field::coating_nominal, "nominal_coating_um", 1},
    {code_of(EntityType::component), component_field::spots, "reference_areas", 0, false},
    {code_of(EntityType::component), component_field::exposure, "exposure", 0, false},
    {code_of(EntityType::component), component_field::wall_limit, "wall_limit_mm", 2},
};
constexpr Told told_place{code_of(EntityType::component), component_field::place, "chainage_m", 0,
                          false};

std::string text_of(const Told& told, const cbor::Value* value) {
  if (value == nullptr || !told.shown) return {};
  if (const auto* number = value->number()) return scaled_to_text(*number, told.digits);
  std::string text;
  if (const auto* items = value->array())
    for (const auto& item : *items)
      if (item.number() != nullptr)
        text.append(text.empty() ? "" : " ").append(scaled_to_text(*item.number(), told.digits));
  return text;
}

bool equal(const cbor::Value* a, const cbor::Value* b) {
  return a == nullptr || b == nullptr ? a == b : *a == *b;
}

/// Whether `all` holds `part` in its order, and more.
bool adds_to(const cbor::Array& part, const cbor::Array& all) {
  std::size_t at = 0;
  for (const auto& value : all)
    if (at < part.size() && value == part[at]) ++at;
  return at == part.size() && all.size() > part.size();
}

/// Whether a set of replicates may take the place of one that stands. A row may have been kept out
/// where the file has fewer of them than stand, or not all from the first to the last.
bool may_replace(const cbor::Value& standing, const cbor::Value& offered, bool complete) {
  const auto* old = standing.array();
  const auto* now = offered.array();
  if (old == nullptr || now == nullptr) return true;
  return adds_to(*old, *now) || (complete && now->size() >= old->size());
}

std::string_view as_text(const cbor::Bytes& bytes) {
  return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}

/// A mend's id is made of all it says, so that it is known again and made once.
Uuid mend_id(std::string_view what, const Uuid& subject, const cbor::Map& body) {
  return derived_id(what, {to_text(subject), as_text(cbor::encode(cbor::Value(body)))});
}
constexpr std::string_view correction_word = "correction";
constexpr std::string_view set_word = "set";

Uuid without_day(Uuid id) {
  std::fill_n(id.bytes.begin(), 6, std::uint8_t{0});
  return id;
}

std::optional<cbor::Map> map_of(std::span<const std::uint8_t> bytes) {
  const auto value = cbor::decode(bytes);
  return value && value->map() != nullptr ? std::optional(*value->map()) : std::nullopt;
}

std::int64_t number_under(const cbor::Map& map, std::int64_t key) {
  const auto* value = map.find(key);
  return value == nullptr || value->number() == nullptr ? 0 : *value->number();
}

Uuid id_under(const cbor::Map& map, std::int64_t key) {
  const auto* value = map.find(key);
  return value == nullptr ? Uuid{} : value->uuid().value_or(Uuid{});
}

}  // namespace

/// One record or thing: as an import last had it, and as it stands.
struct Mends::Values {
  Record record;
  bool voided = false;
  bool changed = false;  ///< a correction or a set says something of it
  cbor::Map from_file;   ///< body keys; fields of a thing
  cbor::Map shown;
  std::vector<Uuid> corrections;
  std::unordered_map<std::int64_t, std::vector<Uuid>> edits;  ///< that stand, by field

  [[nodiscard]] bool is_thing() const { return record.kind == Create::kind; }
};

Result<Mends> Mends::prepare(Database& tables) {
  Mends mends;
  const std::pair<Statement Mends::*, std::string_view> statements[] = {
      {&Mends::journal_, "SELECT bytes FROM journal WHERE id = ? ORDER BY lid LIMIT 1"},
      {&Mends::change_, "SELECT voided_by, corrected_by, corrected FROM change WHERE record = ?"},
      {&Mends::corrections_,
       "SELECT record, body FROM fact WHERE subject = ? AND kind = 70 ORDER BY l, c, record"},
      {&Mends::edits_,
       "SELECT record, field, value, superseded FROM field_edit WHERE entity = ? AND counts = 1 "
       "ORDER BY eff, l, c, dev"},
      {&Mends::entity_, "SELECT parent, chainage_mm, rest FROM entity WHERE id = ?"}};
  for (const auto& [member, sql] : statements) {
    auto ready = tables.prepare(sql);
    if (!ready) return fail(ready.error());
    mends.*member = std::move(*ready);
  }
  auto visits = tables.prepare("SELECT record FROM visit");
  if (!visits) return fail(visits.error());
  while (true) {
    auto more = visits->step();
    if (!more) return fail(more.error());
    if (!*more) break;
    mends.visits_.emplace(without_day(visits->uuid(0)), visits->uuid(0));
  }
  return mends;
}

Result<std::optional<Date>> Mends::other_day(const Uuid& visit) {
  const auto found = visits_.find(without_day(visit));
  if (found == visits_.end() || found->second == visit) return std::optional<Date>{};
  return std::optional(utc_day({found->second.unix_ms()}));
}

Result<bool> Mends::read(const Uuid& id, Values& values) {
  journal_.reset();
  journal_.bind(1, id);
  auto there = journal_.step();
  if (!there || !*there) {
    journal_.reset();
    return there;
  }
  auto record = decode_record(journal_.bytes(0));
  journal_.reset();
  if (!record) return fail(record.error());
  values.record = std::move(*record);
  if (!values.is_thing()) {
    values.from_file = values.shown = values.record.body;
    if (auto ok = read_corrections(id, values); !ok) return fail(ok.error());
    return true;
  }
  const auto* fields = values.record.body.find(3);
  if (fields != nullptr && fields->map() != nullptr)
    values.from_file = values.shown = *fields->map();
  if (auto ok = read_edits(id, values); !ok) return fail(ok.error());
  return true;
}

Result<> Mends::read_corrections(const Uuid& id, Values& values) {
  change_.reset();
  change_.bind(1, id);
  auto changed = change_.step();
  if (!changed) return fail(changed.error());
  if (!*changed) return Done{};
  values.voided = !change_.is_null(0);
  if (change_.is_null(1)) return Done{};
  values.changed = true;
  if (const auto corrected = map_of(change_.bytes(2)))
    for (const auto& [key, value] : corrected->pairs()) values.shown.set(key, value);
  corrections_.reset();
  corrections_.bind(1, id);
  while (true) {
    auto more = corrections_.step();
    if (!more) return fail(more.error());
    if (!*more) return Done{};
    const Uuid record = corrections_.uuid(0);
    const auto body = map_of(corrections_.bytes(1));
    values.corrections.push_back(record);
    if (!body || record != mend_id(correction_word, id, *body)) continue;
    if (const auto* said = body->find(1); said != nullptr && said->map() != nullptr)
      for (const auto& [key, value] : said->map()->pairs()) values.from_file.set(key, value);
  }
}

Result<bool> Mends::is_import_set(const Uuid& id) {
  journal_.reset();
  journal_.bind(1, id);
  auto there = journal_.step();
  if (!there || !*there) return there;
  const auto record = decode_record(journal_.bytes(0));
  journal_.reset();
  return record && record->kind == Set::kind &&
         id == mend_id(set_word, record->subject, record->body);
}

Result<> Mends::read_edits(const Uuid& id, Values& values) {
  edits_.reset();
  edits_.bind(1, id);
  while (true) {
    auto more = edits_.step();
    if (!more) return fail(more.error());
    if (!*more) return Done{};
    const Uuid record = edits_.uuid(0);
    const std::int64_t field = edits_.number(1);
    auto value = cbor::decode(edits_.bytes(2));
    if (!value) return fail(value.error());
    if (edits_.number(3) == 0) values.edits[field].push_back(record);
    if (record == id) continue;
    values.changed = true;
    auto from_import = is_import_set(record);
    if (!from_import) return fail(from_import.error());
    if (*from_import) values.from_file.set(field, *value);
    if (edits_.number(3) == 0) values.shown.set(field, std::move(*value));
  }
}

Result<std::int64_t> Mends::post_mm(const Uuid& post) {
  entity_.reset();
  entity_.bind(1, post);
  auto there = entity_.step();
  if (!there) return fail(there.error());
  return *there ? entity_.number(1) : 0;
}

Result<std::optional<PlaceOnRun>> Mends::place_of(const Uuid& parent, std::int64_t along_mm) {
  entity_.reset();
  entity_.bind(1, parent);
  auto there = entity_.step();
  if (!there) return fail(there.error());
  if (!*there) return std::optional<PlaceOnRun>{};
  PlaceOnRun place{entity_.uuid(0), entity_.number(1) + along_mm};
  if (!entity_.is_null(1)) return std::optional(place);
  const cbor::Map rest = map_of(entity_.bytes(2)).value_or(cbor::Map{});
  const auto from = post_mm(id_under(rest, bay_field::from_post));
  const auto to = post_mm(id_under(rest, bay_field::to_post));
  if (!from || !to) return fail(from ? to.error() : from.error());
  place.chainage_mm = bay_middle_mm(*from, *to) + along_mm;
  return std::optional(place);
}

/// A part does not move to another post or bay. Where it stands in another, because posts were
/// added between, it is the same place as long as run and chainage are.
Result<> Mends::compare_place(const Offer& offer, const Values& values, Standing& standing) {
  if (!offer.place || id_under(offer.entry.body, 2) == id_under(values.record.body, 2))
    return Done{};
  const auto* along = values.shown.find(component_field::place);
  const bool has_along = along != nullptr && along->array() != nullptr && !along->array()->empty();
  const auto* along_mm = has_along ? along->array()->front().number() : nullptr;
  auto place = place_of(id_under(values.record.body, 2), along_mm == nullptr ? 0 : *along_mm);
  if (!place) return fail(place.error());
  if (!*place) return Done{};
  if ((*place)->run != offer.place->run)
    standing.differences.push_back(
        {"run_id", {}, "in the register this part stands in another run, and stays there."});
  else if ((*place)->chainage_mm != offer.place->chainage_mm)
    standing.differences.push_back({"chainage_m", scaled_to_text(offer.place->chainage_mm, 3),
                                    "in the register this part stands at " +
                                        scaled_to_text((*place)->chainage_mm, 3) +
                                        " m, and stays there."});
  return Done{};
}

namespace {

/// Why a value is not taken over.
std::string reason_of(const Told& told, const cbor::Value* shown, const cbor::Value* offered,
                      bool both_changed) {
  const std::string there = text_of(told, shown);
  std::string reason =
      there.empty() ? "the register says something else" : "the register has " + there;
  if (shown == nullptr) reason = "the register does not say it";
  reason += both_changed ? ", corrected there since the last import; which is right?"
            : offered == nullptr
                ? "; an import does not take a value away."
                : "; fewer of them, or some between missing, do not take their place.";
  return reason;
}

/// Puts a value that differs where it belongs: to what is mended, or to what a person answers.
void compare_value(const Told& told, const cbor::Map& from_file, const cbor::Map& shown,
                   const cbor::Map& offered, bool complete, Standing& standing, cbor::Map& mended) {
  const cbor::Value* file_had = from_file.find(told.key);
  const cbor::Value* stands = shown.find(told.key);
  const cbor::Value* now = offered.find(told.key);
  if (equal(now, stands)) return;
  if (equal(now, file_had)) {
    standing.changed_since = true;
    return;
  }
  const bool both_changed = !equal(stands, file_had);
  const cbor::Value no(false);
  if (now == nullptr && told.key == key_as_last_time) now = &no;
  if (!both_changed && now != nullptr &&
      (stands == nullptr || may_replace(*stands, *now, complete))) {
    mended.set(told.key, *now);
    return;
  }
  standing.differences.push_back(
      {std::string(told.column), text_of(told, now), reason_of(told, stands, now, both_changed)});
}

Entry mend(const Offer& offer, int kind, std::string_view word, cbor::Map body) {
  Entry entry;
  entry.feed = offer.entry.feed;
  entry.kind = kind;
  entry.subject = *offer.entry.id;
  entry.id = mend_id(word, entry.subject, body);
  entry.body = std::move(body);
  return entry;
}

Entry correction(const Offer& offer, const cbor::Map& mended, const std::vector<Uuid>& seen) {
  Correction made;
  made.values = mended;
  made.reason = "Mended in the imported file.";
  made.base = seen;
  return mend(offer, Correction::kind, correction_word, to_body(made));
}

}  // namespace

void Mends::compare_record(const Offer& offer, const Values& values, Standing& standing) {
  cbor::Map mended;
  const int kind = offer.entry.kind;
  // What a file names has no day in its identifier; an instrument of the register's own has another
  // one than the same name in a file.
  const bool own_instrument = id_under(values.shown, instrument_key).unix_ms() != 0;
  for (const Told& told : told_of_records)
    if (told.of == kind && !(own_instrument && told.column.ends_with("_id")))
      compare_value(told, values.from_file, values.shown, offer.entry.body, offer.complete,
                    standing, mended);
  if (!mended.empty()) standing.mend = correction(offer, mended, values.corrections);
}

Result<> Mends::compare_thing(const Offer& offer, const Values& values, Standing& standing) {
  const auto* fields = offer.entry.body.find(3);
  const bool has_fields = fields != nullptr && fields->map() != nullptr;
  const cbor::Map offered = has_fields ? *fields->map() : cbor::Map{};
  const auto type = number_under(values.record.body, 1);
  cbor::Map mended;
  const auto compare_one = [&](const Told& told) {
    compare_value(told, values.from_file, values.shown, offered, true, standing, mended);
  };
  for (const Told& told : told_of_things)
    if (told.of == type) compare_one(told);
  if (offer.place && id_under(offer.entry.body, 2) == id_under(values.record.body, 2))
    compare_one(told_place);
  if (auto ok = compare_place(offer, values, standing); !ok) return ok;
  Set set;
  for (const auto& [key, value] : mended.pairs()) {
    const auto seen = values.edits.find(*key.number());
    set.changes.push_back(
        {static_cast<int>(*key.number()), value,
         seen == values.edits.end() ? std::vector<Uuid>{*offer.entry.id} : seen->second});
  }
  if (!set.changes.empty()) standing.mend = mend(offer, Set::kind, set_word, to_body(set));
  return Done{};
}

Result<Standing> Mends::compare(const Offer& offer) {
  Standing standing;
  Values values;
  auto there = read(*offer.entry.id, values);
  if (!there) return fail(there.error());
  standing.there = *there;
  if (!*there || values.voided || values.record.kind != offer.entry.kind) return standing;
  Result<> compared = Done{};
  if (!values.is_thing())
    compare_record(offer, values, standing);
  else if (number_under(values.record.body, 5) == static_cast<int>(MadeBy::import))
    compared = compare_thing(offer, values, standing);
  if (!compared) return fail(compared.error());
  return standing;
}

}  // namespace kneerail::exchange
