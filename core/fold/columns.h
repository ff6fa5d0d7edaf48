#pragma once

// The columns of every folded table, once, with their places found by name while compiling:
// at(reading_columns, "t"). Three families. `fact` keeps each record but the readings as it came,
// so that every other row can be derived again whatever arrives later. Plain tables show one record
// a row: the same first columns, then the body's fields, then what other records say about it. The
// rest are derived: entity, field_edit, latest, life, disagreement and their like.

#include "core/fold/object_columns.h"
#include "core/fold/visit_columns.h"

namespace kneerail::fold {

enum TableNumber : int {
  table_fact,
  table_change,
  table_clock_segment,
  table_clock_use,
  table_entity,
  table_field_edit,
  table_disagreement,
  table_retirement,
  table_visit,
  table_visit_group,
  table_visit_part,
  table_not_reached,
  table_bay_after,
  table_coverage,
  table_event,
  table_life,
  table_reading,
  table_latest,
  table_finding,
  table_photograph,
  table_told,
  table_closure,
  table_closure_look,
  table_work,
  table_strike,
  table_strike_part,
  table_strike_step,
  table_strike_hours,
  table_instrument_check,
  table_calibration,
  table_doubt,
  table_stock,
  table_stock_move,
  table_person_role,
  table_competence,
  table_read_by,
  table_hold,
  table_next_visit,
  table_report,
  table_object_use,
  table_object_state,
  table_feed_writer,
  table_count
};

/// One record as it came. seen: the visit it belongs to; about: the second thing it names (a
/// strike, a finding, the other visit); hseq and recv absent while unsent.
inline constexpr Column fact_columns[] = {
    {"record", Type::id},      {"kind", Type::number},       {"feed", Type::id},
    {"dev", Type::id},         {"seq", Type::number},        {"l", Type::number},
    {"c", Type::number},       {"w", Type::number},          {"g", Type::number},
    {"who", Type::id},         {"subject", Type::id},        {"about", Type::id, true},
    {"visit", Type::id, true}, {"hseq", Type::number, true}, {"recv", Type::number, true},
    {"flags", Type::number},   {"body", Type::bytes},
};

/// What corrections, voids and settlings say about one record. released: a held record that a
/// settling let through.
inline constexpr Column change_columns[] = {
    {"record", Type::id},
    {"voided_by", Type::id, true},
    {"corrected_by", Type::id, true},
    {"corrected", Type::bytes, true},  // {body key: value} as shown
    {"released_by", Type::id, true},
};

/// offset_ms is added to a record's raw wall clock. lower and upper: the contacts an assumed
/// offset has to stay between.
inline constexpr Column clock_segment_columns[] = {
    {"dev", Type::id},
    {"feed", Type::id},
    {"g", Type::number},
    {"offset_ms", Type::number},
    {"quality", Type::number},
    {"uncertainty_ms", Type::number, true},
    {"lower_ms", Type::number, true},
    {"upper_ms", Type::number, true},
};
/// Which visits have readings of a clock segment.
inline constexpr Column clock_use_columns[] = {
    {"dev", Type::id}, {"feed", Type::id}, {"g", Type::number}, {"visit", Type::id}};

/// type, made_by, role, life_state as the record's codes; life_state absent: nobody said. newer:
/// a program of later date wrote about it. rest: CBOR map {field: value} of the fields without a
/// column.
inline constexpr Column entity_columns[] = {
    {"id", Type::id},
    {"type", Type::number},
    {"feed", Type::id},
    {"parent", Type::id, true},
    {"created_by", Type::id},
    {"created_t", Type::number},
    {"import_reference", Type::text, true},
    {"made_by", Type::number, true},
    {"life_state", Type::number, true},
    {"name", Type::text, true},
    {"code", Type::text, true},
    {"label", Type::text, true},
    {"chainage_mm", Type::number, true},
    {"ord", Type::number, true},
    {"tag", Type::text, true},
    {"role", Type::number, true},
    {"component_type", Type::id, true},
    {"date_in_service", Type::number, true},
    {"coating_nominal_tenth_um", Type::number, true},
    {"part_of", Type::id, true},
    {"retired_by", Type::id, true},  // the record whose "retired" is shown
    {"held", Type::number},
    {"voided_by", Type::id, true},
    {"newer", Type::number},
    {"rest", Type::bytes, true},
};
/// One value that one record gave to one field. superseded: another record that counts names this
/// one as seen.
inline constexpr Column field_edit_columns[] = {
    {"record", Type::id},
    {"field", Type::number},
    {"entity", Type::id},
    {"value", Type::bytes},
    {"eff", Type::number},
    {"l", Type::number},
    {"c", Type::number},
    {"dev", Type::id},
    {"who", Type::id},
    {"t", Type::number},
    {"superseded", Type::number},
    {"counts", Type::number},
};
/// what: see Disagreement in rules.h. records: CBOR array of record ids, ascending. winner: what
/// is shown meanwhile. decision: the settling's code where it named no record.
inline constexpr Column disagreement_columns[] = {
    {"subject", Type::id},          {"what", Type::number},
    {"detail", Type::number},       {"feed", Type::id},
    {"records", Type::bytes},       {"winner", Type::id, true},
    {"settled_by", Type::id, true}, {"decision", Type::number, true},
};
/// Things retired, by themselves or by what they stand in.
inline constexpr Column retirement_columns[] = {
    {"entity", Type::id}, {"retired", Type::id}, {"set_by", Type::id}, {"t", Type::number}};

/// The time one part spends in one place. The first life has the component's id. start_action:
/// 0 first, 3 replace, 4 cut out and weld in, 19 came back from elsewhere or nobody knows. same_as:
/// the life that is current for two replacements of one.
inline constexpr Column life_columns[] = {
    {"component", Type::id},
    {"life", Type::id},
    {"feed", Type::id},
    {"started_t", Type::number, true},
    {"start_action", Type::number},
    {"ended_t", Type::number, true},
    {"life_before", Type::id, true},
    {"same_as", Type::id, true},
    {"component_type", Type::id, true},
    {"coating_nominal_tenth_um", Type::number, true},
    {"doubtful", Type::number},
};

/// v1, v2: grade and degree of rusting (20); sum and count of replicates (21, 23); torque as found
/// and as left, 0.1 N·m (22); load N and deflection 0.1 mm (24); measure and its limit, mm (25);
/// latches and opens away from the drop (26). what: felt (24), what is measured (25), closes by
/// itself (26). original: the body as first written, CBOR, only where a correction shows.
inline constexpr Column reading_columns[] = {
    {"record", Type::id},
    {"kind", Type::number},
    {"subject", Type::id},
    {"visit", Type::id, true},
    {"life", Type::id, true},
    {"who", Type::id},
    {"instrument", Type::id, true},
    {"feed", Type::id},
    {"dev", Type::id},
    {"seq", Type::number},
    {"t", Type::number},
    {"t_quality", Type::number},
    {"v1", Type::number, true},
    {"v2", Type::number, true},
    {"replicates", Type::bytes, true},
    {"spot", Type::number, true},
    {"screw", Type::number, true},
    {"what", Type::number, true},
    {"censoring", Type::number, true},
    {"method", Type::number, true},
    {"wrench_set_tenth_nm", Type::number, true},
    {"how", Type::number, true},
    {"layer", Type::number, true},
    {"under_probe", Type::number, true},
    {"carried", Type::number},
    {"seen_at", Type::number, true},
    {"copied_from", Type::number, true},
    {"held", Type::number},
    {"voided_by", Type::id, true},
    {"corrected_by", Type::id, true},
    {"l", Type::number},
    {"c", Type::number},
    {"w", Type::number},
    {"g", Type::number},
    {"hseq", Type::number, true},
    {"recv", Type::number, true},
    {"flags", Type::number},
    {"rest", Type::bytes, true},
    {"original", Type::bytes, true},
};
/// place: spot or screw, the thing measured for geometry, else 0. For grades: the one that counts.
inline constexpr Column latest_columns[] = {
    {"subject", Type::id}, {"kind", Type::number}, {"place", Type::number},
    {"reading", Type::id}, {"t", Type::number},    {"eff", Type::number},
    {"l", Type::number},   {"c", Type::number},    {"dev", Type::id},
};

/// hazard_state: 0 none, 1 open, 2 made safe, 3 ended. measures: CBOR array of the codes of all
/// that count. not_made_safe: measures were taken but hold nobody, or the last look says gone.
inline constexpr Column finding_own[] = {
    {"visit", Type::id, true},
    {"life", Type::id, true},
    {"what", Type::number, true},
    {"grade", Type::number, true},
    {"hazard", Type::number, true},
    {"text", Type::text, true},
    {"place", Type::bytes, true},
    {"number", Type::number, true},
    {"can_wait", Type::text, true},
    {"hazard_state", Type::number},
    {"hazard_records", Type::bytes, true},
    {"measures", Type::bytes, true},
    {"stands_by", Type::id, true},
    {"look_again_by_ms", Type::number, true},
    {"told_first_t", Type::number, true},
    {"next_record", Type::id, true},
    {"next_step", Type::number, true},
    {"mend_by_day", Type::number, true},
    {"by_whom", Type::bytes, true},
    {"by_whom_words", Type::text, true},
    {"put_off", Type::number, true},
    {"ended_by", Type::id, true},
    {"ended_how", Type::number, true},
    {"ended_on", Type::number, true},
};
inline constexpr auto finding_columns = plain(finding_own);
inline constexpr Column photograph_own[] = {
    {"visit", Type::id, true},          {"sha", Type::bytes, true},
    {"size_bytes", Type::number, true}, {"media_type", Type::number, true},
    {"width", Type::number, true},      {"height", Type::number, true},
    {"preview_sha", Type::bytes, true}, {"preview_bytes", Type::number, true},
    {"marks", Type::bytes, true},       {"taken_ms", Type::number, true},
    {"caption", Type::text, true},      {"photograph_flags", Type::number, true},
    {"marks_by", Type::id, true},
};
inline constexpr auto photograph_columns = plain(photograph_own);
inline constexpr Column told_own[] = {
    {"at_ms", Type::number, true},   {"by_whom", Type::number, true},
    {"said", Type::text, true},      {"how", Type::number, true},
    {"place", Type::text, true},     {"moves", Type::number, true},
    {"picture", Type::bytes, true},  {"open", Type::number},
    {"answered_by", Type::id, true},
};
inline constexpr auto told_columns = plain(told_own);
/// standing: no opening ended it. barrier: it stands, is more than a sign, and was not last seen
/// gone.
inline constexpr Column closure_own[] = {
    {"why", Type::number, true},      {"from_ms", Type::number, true},
    {"until_ms", Type::number, true}, {"by_what", Type::number, true},
    {"about", Type::id, true},        {"look_again_by_ms", Type::number, true},
    {"standing", Type::number},       {"barrier", Type::number},
    {"last_look", Type::id, true},    {"opened_by", Type::id, true},
};
inline constexpr auto closure_columns = plain(closure_own);
inline constexpr Column closure_look_own[] = {{"how", Type::number, true},
                                              {"look_again_by_ms", Type::number, true},
                                              {"note", Type::text, true}};
inline constexpr auto closure_look_columns = plain(closure_look_own);
/// same_as: the one record that stands for all that are said to be one job.
inline constexpr Column work_own[] = {
    {"visit", Type::id, true},
    {"action", Type::number, true},
    {"life_before", Type::id, true},
    {"as_left_tenth_nm", Type::number, true},
    {"instrument", Type::id, true},
    {"new_component_type", Type::id, true},
    {"new_coating_nominal_tenth_um", Type::number, true},
    {"day", Type::number, true},
    {"cost_hundredth", Type::number, true},
    {"screw", Type::number, true},
    {"people", Type::number, true},
    {"minutes", Type::number, true},
    {"finding", Type::id, true},
    {"depot", Type::id, true},
    {"done_by", Type::text, true},
    {"same_part", Type::number, true},
    {"same_as", Type::id, true},
};
inline constexpr auto work_columns = plain(work_own);
/// state: 1 down, 2 opened early, 3 open. missing: CBOR array of [subject, step, screw] still to
/// do. open_bays: CBOR array of bays that are down with nothing that closes them.
inline constexpr Column strike_own[] = {
    {"reason", Type::number, true},
    {"re_erect_by_day", Type::number, true},
    {"gap_closed_by", Type::bytes, true},
    {"components", Type::bytes, true},
    {"state", Type::number},
    {"missing", Type::bytes},
    {"missing_count", Type::number},
    {"open_bays", Type::bytes},
    {"opened_by", Type::id, true},
};
inline constexpr auto strike_columns = plain(strike_own);
inline constexpr Column strike_part_columns[] = {{"component", Type::id}, {"strike", Type::id}};
inline constexpr Column strike_step_own[] = {
    {"strike", Type::id, true},
    {"step", Type::number, true},
    {"as_left_tenth_nm", Type::number, true},
    {"instrument", Type::id, true},
    {"screw", Type::number, true},
    {"stored_at", Type::text, true},
    {"how", Type::number, true},
    {"same_part", Type::number, true},
};
inline constexpr auto strike_step_columns = plain(strike_step_own);
inline constexpr Column strike_hours_own[] = {
    {"people", Type::number, true},
    {"minutes", Type::number, true},
    {"task", Type::bytes, true},
    {"day", Type::number, true},
};
inline constexpr auto strike_hours_columns = plain(strike_hours_own);

inline constexpr Column instrument_check_own[] = {
    {"visit", Type::id, true},         {"what", Type::number, true},
    {"reference", Type::number, true}, {"readings", Type::bytes, true},
    {"in_order", Type::number, true},  {"seen_at", Type::number, true},
};
inline constexpr auto instrument_check_columns = plain(instrument_check_own);
inline constexpr Column calibration_own[] = {
    {"day", Type::number, true},        {"valid_until_day", Type::number, true},
    {"certificate", Type::text, true},  {"certificate_picture", Type::bytes, true},
    {"corrections", Type::bytes, true}, {"as_found", Type::bytes, true},
    {"adjusted", Type::number, true},   {"sent_day", Type::number, true},
    {"done_by", Type::text, true},
};
inline constexpr auto calibration_columns = plain(calibration_own);
inline constexpr Column doubt_own[] = {
    {"from_ms", Type::number, true},
    {"until_ms", Type::number, true},
    {"reason", Type::bytes, true},
    {"suggested_shift", Type::number, true},
};
inline constexpr auto doubt_columns = plain(doubt_own);
/// count: the last counting and every movement after it.
inline constexpr Column stock_columns[] = {{"depot", Type::id},
                                           {"component_type", Type::id},
                                           {"feed", Type::id},
                                           {"count", Type::number},
                                           {"counted_by", Type::id, true}};
inline constexpr Column stock_move_own[] = {{"component_type", Type::id, true},
                                            {"count", Type::number, true},
                                            {"why", Type::number, true},
                                            {"work", Type::id, true},
                                            {"day", Type::number, true}};
inline constexpr auto stock_move_columns = plain(stock_move_own);
inline constexpr Column person_role_own[] = {{"role", Type::number, true},
                                             {"sites", Type::bytes, true},
                                             {"until_day", Type::number, true},
                                             {"taken_by", Type::id, true}};
inline constexpr auto person_role_columns = plain(person_role_own);
inline constexpr Column competence_own[] = {{"for_what", Type::text, true},
                                            {"from_day", Type::number, true},
                                            {"valid_until_day", Type::number, true},
                                            {"certificate", Type::bytes, true}};
inline constexpr auto competence_columns = plain(competence_own);
inline constexpr Column read_by_own[] = {{"shown", Type::bytes, true}};
inline constexpr auto read_by_columns = plain(read_by_own);
inline constexpr Column hold_own[] = {{"why", Type::number, true},
                                      {"note", Type::text, true},
                                      {"standing", Type::number},
                                      {"ended_by", Type::id, true}};
inline constexpr auto hold_columns = plain(hold_own);
/// current: the one agreement that counts for its site.
inline constexpr Column next_visit_own[] = {{"day", Type::number, true},
                                            {"why", Type::number, true},
                                            {"note", Type::text, true},
                                            {"proposed_day", Type::number, true},
                                            {"current", Type::number}};
inline constexpr auto next_visit_columns = plain(next_visit_own);
inline constexpr Column report_own[] = {{"visits", Type::bytes, true},
                                        {"blocks", Type::bytes, true},
                                        {"sha", Type::bytes, true},
                                        {"day", Type::number, true},
                                        {"signed_copy", Type::bytes, true}};
inline constexpr auto report_columns = plain(report_own);

}  // namespace kneerail::fold
