#include "core/fold/row_layout.h"

#include <array>

namespace kneerail::fold {

namespace {

constexpr Field visit_fields[] = {{1, at(visit_columns, "kind_of_visit")},
                                  {2, at(visit_columns, "name")},
                                  {3, at(visit_columns, "runs")},
                                  {4, at(visit_columns, "conditions")},
                                  {5, at(visit_columns, "event")}};
constexpr Field not_reached_fields[] = {{1, at(not_reached_columns, "visit")},
                                        {2, at(not_reached_columns, "reason")},
                                        {3, at(not_reached_columns, "note")}};
constexpr Field event_fields[] = {{1, at(event_columns, "what")},
                                  {2, at(event_columns, "from_ms")},
                                  {3, at(event_columns, "until_ms")},
                                  {5, at(event_columns, "note")},
                                  {7, at(event_columns, "told")}};
constexpr Field finding_fields[] = {
    {1, at(finding_columns, "visit")},        {98, at(finding_columns, "life")},
    {2, at(finding_columns, "what")},         {3, at(finding_columns, "grade")},
    {4, at(finding_columns, "hazard"), true}, {5, at(finding_columns, "text")},
    {6, at(finding_columns, "place")},        {7, at(finding_columns, "number")},
    {8, at(finding_columns, "can_wait")}};
constexpr Field photograph_fields[] = {
    {1, at(photograph_columns, "visit")},       {2, at(photograph_columns, "sha")},
    {3, at(photograph_columns, "size_bytes")},  {4, at(photograph_columns, "media_type")},
    {5, at(photograph_columns, "width")},       {6, at(photograph_columns, "height")},
    {7, at(photograph_columns, "preview_sha")}, {8, at(photograph_columns, "preview_bytes")},
    {9, at(photograph_columns, "marks")},       {10, at(photograph_columns, "taken_ms")},
    {11, at(photograph_columns, "caption")},    {12, at(photograph_columns, "photograph_flags")}};
constexpr Field told_fields[] = {
    {1, at(told_columns, "at_ms")},  {2, at(told_columns, "by_whom")},
    {3, at(told_columns, "said")},   {4, at(told_columns, "how")},
    {5, at(told_columns, "place")},  {6, at(told_columns, "moves"), true},
    {7, at(told_columns, "picture")}};
constexpr Field closure_fields[] = {{1, at(closure_columns, "why")},
                                    {2, at(closure_columns, "from_ms")},
                                    {3, at(closure_columns, "until_ms")},
                                    {4, at(closure_columns, "by_what")},
                                    {5, at(closure_columns, "look_again_by_ms")},
                                    {6, at(closure_columns, "about")}};
constexpr Field closure_look_fields[] = {{1, at(closure_look_columns, "how")},
                                         {2, at(closure_look_columns, "look_again_by_ms")},
                                         {3, at(closure_look_columns, "note")}};
constexpr Field work_fields[] = {{1, at(work_columns, "visit")},
                                 {2, at(work_columns, "action")},
                                 {3, at(work_columns, "life_before")},
                                 {4, at(work_columns, "as_left_tenth_nm")},
                                 {5, at(work_columns, "instrument")},
                                 {6, at(work_columns, "new_component_type")},
                                 {7, at(work_columns, "new_coating_nominal_tenth_um")},
                                 {9, at(work_columns, "day")},
                                 {11, at(work_columns, "cost_hundredth")},
                                 {12, at(work_columns, "screw")},
                                 {13, at(work_columns, "people")},
                                 {14, at(work_columns, "minutes")},
                                 {15, at(work_columns, "finding")},
                                 {16, at(work_columns, "depot")},
                                 {17, at(work_columns, "done_by")},
                                 {19, at(work_columns, "same_part")}};
constexpr Field strike_fields[] = {{1, at(strike_columns, "reason")},
                                   {2, at(strike_columns, "re_erect_by_day")},
                                   {3, at(strike_columns, "gap_closed_by")},
                                   {4, at(strike_columns, "components")}};
constexpr Field strike_step_fields[] = {{1, at(strike_step_columns, "strike")},
                                        {2, at(strike_step_columns, "step")},
                                        {3, at(strike_step_columns, "as_left_tenth_nm")},
                                        {4, at(strike_step_columns, "instrument")},
                                        {5, at(strike_step_columns, "screw")},
                                        {6, at(strike_step_columns, "stored_at")},
                                        {7, at(strike_step_columns, "how")},
                                        {8, at(strike_step_columns, "same_part")}};
constexpr Field strike_hours_fields[] = {{1, at(strike_hours_columns, "people")},
                                         {2, at(strike_hours_columns, "minutes")},
                                         {3, at(strike_hours_columns, "task")},
                                         {4, at(strike_hours_columns, "day")}};
constexpr Field instrument_check_fields[] = {{1, at(instrument_check_columns, "visit")},
                                             {2, at(instrument_check_columns, "what")},
                                             {3, at(instrument_check_columns, "reference")},
                                             {4, at(instrument_check_columns, "readings")},
                                             {5, at(instrument_check_columns, "in_order"), true},
                                             {94, at(instrument_check_columns, "seen_at")}};
constexpr Field calibration_fields[] = {{1, at(calibration_columns, "day")},
                                        {2, at(calibration_columns, "valid_until_day")},
                                        {3, at(calibration_columns, "certificate")},
                                        {4, at(calibration_columns, "certificate_picture")},
                                        {5, at(calibration_columns, "corrections")},
                                        {6, at(calibration_columns, "as_found")},
                                        {7, at(calibration_columns, "adjusted"), true},
                                        {8, at(calibration_columns, "sent_day")},
                                        {9, at(calibration_columns, "done_by")}};
constexpr Field doubt_fields[] = {{1, at(doubt_columns, "from_ms")},
                                  {2, at(doubt_columns, "until_ms")},
                                  {3, at(doubt_columns, "reason")},
                                  {4, at(doubt_columns, "suggested_shift")}};
constexpr Field stock_move_fields[] = {{1, at(stock_move_columns, "component_type")},
                                       {2, at(stock_move_columns, "count")},
                                       {3, at(stock_move_columns, "why")},
                                       {4, at(stock_move_columns, "work")},
                                       {5, at(stock_move_columns, "day")}};
constexpr Field person_role_fields[] = {{1, at(person_role_columns, "role")},
                                        {2, at(person_role_columns, "sites")},
                                        {3, at(person_role_columns, "until_day")}};
constexpr Field competence_fields[] = {{1, at(competence_columns, "for_what")},
                                       {2, at(competence_columns, "from_day")},
                                       {3, at(competence_columns, "valid_until_day")},
                                       {4, at(competence_columns, "certificate")}};
constexpr Field read_by_fields[] = {{1, at(read_by_columns, "shown")}};
constexpr Field hold_fields[] = {{1, at(hold_columns, "why")}, {2, at(hold_columns, "note")}};
constexpr Field next_visit_fields[] = {{1, at(next_visit_columns, "day")},
                                       {2, at(next_visit_columns, "why")},
                                       {3, at(next_visit_columns, "note")},
                                       {4, at(next_visit_columns, "proposed_day")}};
constexpr Field report_fields[] = {{1, at(report_columns, "visits")},
                                   {2, at(report_columns, "blocks")},
                                   {3, at(report_columns, "sha")},
                                   {4, at(report_columns, "day")},
                                   {5, at(report_columns, "signed_copy")}};

struct KindLayout {
  int kind;
  Layout layout;
};

constexpr KindLayout layouts[] = {
    {kind::event, {table_event, event_fields}},
    {kind::visit_opened, {table_visit, visit_fields}},
    {kind::not_reached, {table_not_reached, not_reached_fields}},
    {kind::finding, {table_finding, finding_fields}},
    {kind::photograph, {table_photograph, photograph_fields}},
    {kind::closure_look, {table_closure_look, closure_look_fields}},
    {kind::told, {table_told, told_fields}},
    {kind::work, {table_work, work_fields}},
    {kind::closed, {table_closure, closure_fields}},
    {kind::strike_opened, {table_strike, strike_fields}},
    {kind::strike_step, {table_strike_step, strike_step_fields}},
    {kind::strike_hours, {table_strike_hours, strike_hours_fields}},
    {kind::instrument_check, {table_instrument_check, instrument_check_fields}},
    {kind::calibration, {table_calibration, calibration_fields}},
    {kind::doubt, {table_doubt, doubt_fields}},
    {kind::stock_moved, {table_stock_move, stock_move_fields}},
    {kind::report, {table_report, report_fields}},
    {kind::next_visit, {table_next_visit, next_visit_fields}},
    {kind::read_by, {table_read_by, read_by_fields}},
    {kind::role_given, {table_person_role, person_role_fields}},
    {kind::competence, {table_competence, competence_fields}},
    {kind::hold, {table_hold, hold_fields}},
};

}  // namespace

const Layout* layout_of(int kind) {
  for (const KindLayout& one : layouts) {
    if (one.kind == kind) return &one.layout;
  }
  return nullptr;
}

int entity_column(int type, std::int64_t field) {
  struct Placed {
    int type;
    std::int64_t field;
    int column;
  };
  constexpr auto column = [](std::string_view name) consteval {
    return at(entity_columns, name);
  };
  constexpr Placed placed[] = {
      {1, 1, column("name")},
      {2, 1, column("name")},
      {2, 2, column("code")},
      {2, 7, column("life_state")},
      {3, 1, column("name")},
      {3, 6, column("life_state")},
      {4, 1, column("name")},
      {4, 2, column("code")},
      {4, 9, column("ord")},
      {4, 10, column("life_state")},
      {5, 1, column("label")},
      {5, 2, column("chainage_mm")},
      {5, 3, column("ord")},
      {5, 4, column("tag")},
      {5, 8, column("life_state")},
      {6, 5, column("life_state")},
      {7, 1, column("role")},
      {7, 2, column("component_type")},
      {7, 5, column("date_in_service")},
      {7, 6, column("coating_nominal_tenth_um")},
      {7, 8, column("life_state")},
      {7, 9, column("tag")},
      {7, 12, column("part_of")},
      {8, 8, column("coating_nominal_tenth_um")},
      {8, 11, column("name")},
      {9, 2, column("code")},
      {9, 5, column("life_state")},
      {10, 2, column("code")},
      {10, 3, column("life_state")},
      {11, 1, column("name")},
      {12, 1, column("name")},
      {12, 3, column("life_state")},
  };
  for (const Placed& one : placed) {
    if (one.type == type && one.field == field) return one.column;
  }
  return -1;
}

}  // namespace kneerail::fold
