#include "core/records/kinds.h"

#include <algorithm>
#include <array>

#include "core/records/body.h"
#include "core/records/coating_reading.h"
#include "core/records/condition_grade.h"
#include "core/records/correction.h"
#include "core/records/device.h"
#include "core/records/entities.h"
#include "core/records/finding.h"
#include "core/records/gate_check.h"
#include "core/records/geometry.h"
#include "core/records/hand_load.h"
#include "core/records/housekeeping.h"
#include "core/records/instrument.h"
#include "core/records/made_safe.h"
#include "core/records/office.h"
#include "core/records/people.h"
#include "core/records/photograph.h"
#include "core/records/registers.h"
#include "core/records/strike.h"
#include "core/records/told.h"
#include "core/records/torque_reading.h"
#include "core/records/visit.h"
#include "core/records/wall_reading.h"
#include "core/records/work.h"

namespace kneerail {
namespace {

constexpr const KindInfo* kinds[] = {
    &create_kind,
    &set_kind,
    &event_kind,
    &visit_opened_kind,
    &visit_joined_kind,
    &not_reached_kind,
    &sealed_kind,
    &same_visit_kind,
    &condition_grade_kind,
    &coating_reading_kind,
    &torque_reading_kind,
    &wall_reading_kind,
    &hand_load_kind,
    &geometry_kind,
    &gate_check_kind,
    &finding_kind,
    &photograph_kind,
    &marks_set_kind,
    &made_safe_kind,
    &finding_ended_kind,
    &next_step_kind,
    &hazard_raised_kind,
    &closure_look_kind,
    &told_kind,
    &told_answered_kind,
    &work_done_kind,
    &same_work_kind,
    &closed_kind,
    &strike_opened_kind,
    &strike_step_kind,
    &opened_kind,
    &strike_hours_kind,
    &instrument_check_kind,
    &calibration_kind,
    &instrument_in_doubt_kind,
    &stock_moved_kind,
    &report_issued_kind,
    &next_visit_agreed_kind,
    &read_by_kind,
    &role_given_kind,
    &role_taken_kind,
    &device_enrolled_kind,
    &device_revoked_kind,
    &competence_kind,
    &correction_kind,
    &voided_kind,
    &settled_kind,
    &clock_kind,
    &object_erased_kind,
    &hold_kind,
    &hold_ended_kind,
    &chain_continued_kind,
};

constexpr const EntityInfo* entities[] = {
    &organisation_entity, &site_entity,   &zone_entity,      &run_entity,
    &post_entity,         &bay_entity,    &component_entity, &component_type_entity,
    &instrument_entity,   &person_entity, &rule_set_entity,  &depot_entity,
};

using namespace field;
constexpr FieldInfo copied_from = code(key_copied_from, "copied from", copied_from_words);
constexpr FieldInfo seen_at = instant(key_seen_at, "seen at");
constexpr FieldInfo typed_in = code(key_typed_in, "typed in", typed_in_words);
constexpr FieldInfo as_last_time = truth(key_as_last_time, "as last time");
constexpr FieldInfo life = id(key_life, "life");
constexpr FieldInfo confirmed = truth(key_confirmed, "confirmed");

}  // namespace

const KindInfo* kind_info(int kind) {
  for (const KindInfo* info : kinds) {
    if (info->kind == kind) return info;
  }
  return nullptr;
}

std::span<const KindInfo* const> all_kinds() {
  return kinds;
}

std::vector<const FieldInfo*> common_fields(const KindInfo& kind) {
  std::vector<const FieldInfo*> common;
  if (kind.time_key != 0) common.push_back(&copied_from);
  if (kind.time_key == key_seen_at) common.push_back(&seen_at);
  common.push_back(&typed_in);
  if (kind.reading) common.insert(common.end(), {&as_last_time, &life});
  common.push_back(&confirmed);
  return common;
}

const FieldInfo* field_info(const KindInfo& kind, std::int64_t key) {
  if (const FieldInfo* own = kind.fields.find(key)) return own;
  switch (key) {
    case key_copied_from:
      return kind.time_key != 0 ? &copied_from : nullptr;
    case key_seen_at:
      return kind.time_key == key_seen_at ? &seen_at : nullptr;
    case key_typed_in:
      return &typed_in;
    case key_as_last_time:
      return kind.reading ? &as_last_time : nullptr;
    case key_life:
      return kind.reading ? &life : nullptr;
    case key_confirmed:
      return &confirmed;
    default:
      return nullptr;
  }
}

const EntityInfo* entity_info(int type) {
  return type >= 1 && type <= static_cast<int>(std::size(entities)) ? entities[type - 1] : nullptr;
}

std::span<const EntityInfo* const> all_entities() {
  return entities;
}

namespace body_detail {
Error unreadable(int kind, int key, bool missing) {
  const KindInfo* info = kind_info(kind);
  const FieldInfo* field = info != nullptr ? field_info(*info, key) : nullptr;
  return fail(Fault::corrupt,
              (info != nullptr ? std::string(info->name) : "kind " + std::to_string(kind)) + ": " +
                  (field != nullptr ? std::string(field->name) : "key " + std::to_string(key)) +
                  (missing ? " is missing." : " is of another type."));
}
}  // namespace body_detail

}  // namespace kneerail
