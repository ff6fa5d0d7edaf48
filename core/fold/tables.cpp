#include "core/fold/tables.h"

#include "core/fold/columns.h"

namespace kneerail::fold {

const int fold_version = 5;

namespace {

Table table(std::string_view name, int keys, std::span<const Column> columns,
            std::vector<Index> indexes = {}) {
  return Table{name, keys, {columns.begin(), columns.end()}, std::move(indexes)};
}

/// One record a row, found by its subject too.
Table plain_table(std::string_view name, std::string_view index, std::span<const Column> columns) {
  return table(name, 1, columns, {{index, {at(plain_start, "subject")}}});
}

std::vector<Table> register_tables() {
  return {
      table("fact", 1, fact_columns,
            {{"fact_by_subject", {at(fact_columns, "subject"), at(fact_columns, "kind")}},
             {"fact_by_about", {at(fact_columns, "about"), at(fact_columns, "kind")}},
             {"fact_by_visit", {at(fact_columns, "visit"), at(fact_columns, "subject")}},
             {"fact_by_segment",
              {at(fact_columns, "dev"), at(fact_columns, "feed"), at(fact_columns, "g")}}}),
      table("change", 1, change_columns),
      table("clock_segment", 3, clock_segment_columns),
      table("clock_use", 4, clock_use_columns),
      table("entity", 1, entity_columns,
            {{"entity_by_parent", {at(entity_columns, "parent"), at(entity_columns, "type")}},
             {"entity_by_tag", {at(entity_columns, "tag")}},
             {"entity_by_component_type", {at(entity_columns, "component_type")}},
             {"entity_by_part_of", {at(entity_columns, "part_of")}},
             {"entity_by_import_reference", {at(entity_columns, "import_reference")}}}),
      table("field_edit", 2, field_edit_columns,
            {{"field_edit_by_entity",
              {at(field_edit_columns, "entity"), at(field_edit_columns, "field")}}}),
      table("disagreement", 3, disagreement_columns),
      table("retirement", 1, retirement_columns),
  };
}

std::vector<Table> visit_tables() {
  return {
      plain_table("visit", "visit_by_subject", visit_columns),
      table("visit_group", 1, visit_group_columns),
      table("visit_part", 3, visit_part_columns),
      plain_table("not_reached", "not_reached_by_subject", not_reached_columns),
      table("bay_after", 2, bay_after_columns),
      table("coverage", 2, coverage_columns,
            {{"coverage_by_post", {at(coverage_columns, "post")}}}),
      plain_table("event", "event_by_subject", event_columns),
      table("life", 2, life_columns),
      table("reading", 1, reading_columns,
            {{"reading_by_subject",
              {at(reading_columns, "subject"), at(reading_columns, "kind"),
               at(reading_columns, "t")}},
             {"reading_by_visit", {at(reading_columns, "visit"), at(reading_columns, "subject")}}}),
      table("latest", 3, latest_columns),
      table("finding", 1, finding_columns,
            {{"finding_by_subject", {at(finding_columns, "subject")}},
             {"finding_by_writer",
              {at(finding_columns, "feed"), at(finding_columns, "who"),
               at(finding_columns, "number")}}}),
      plain_table("photograph", "photograph_by_subject", photograph_columns),
      plain_table("told", "told_by_subject", told_columns),
      plain_table("closure", "closure_by_subject", closure_columns),
      plain_table("closure_look", "closure_look_by_subject", closure_look_columns),
  };
}

std::vector<Table> work_tables() {
  return {
      plain_table("work", "work_by_subject", work_columns),
      plain_table("strike", "strike_by_subject", strike_columns),
      table("strike_part", 2, strike_part_columns),
      plain_table("strike_step", "strike_step_by_subject", strike_step_columns),
      plain_table("strike_hours", "strike_hours_by_subject", strike_hours_columns),
      plain_table("instrument_check", "instrument_check_by_subject", instrument_check_columns),
      plain_table("calibration", "calibration_by_subject", calibration_columns),
      plain_table("doubt", "doubt_by_subject", doubt_columns),
      table("stock", 2, stock_columns),
      plain_table("stock_move", "stock_move_by_subject", stock_move_columns),
      plain_table("person_role", "person_role_by_subject", person_role_columns),
      plain_table("competence", "competence_by_subject", competence_columns),
      plain_table("read_by", "read_by_by_subject", read_by_columns),
      table("hold", 1, hold_columns,
            {{"hold_by_subject", {at(hold_columns, "subject")}},
             {"hold_by_feed", {at(hold_columns, "feed")}}}),
      plain_table("next_visit", "next_visit_by_subject", next_visit_columns),
      plain_table("report", "report_by_subject", report_columns),
  };
}

std::vector<Table> object_tables() {
  return {
      table("object_use", 2, object_use_columns,
            {{"object_use_by_kind", {at(object_use_columns, "kind")}}}),
      table("object_state", 1, object_state_columns),
      table("feed_writer", 2, feed_writer_columns),
  };
}

std::vector<Table> all_tables() {
  std::vector<Table> all = register_tables();
  for (Table& one : visit_tables()) all.push_back(std::move(one));
  for (Table& one : work_tables()) all.push_back(std::move(one));
  for (Table& one : object_tables()) all.push_back(std::move(one));
  check(all.size() == table_count, "every folded table has its number");
  return all;
}

}  // namespace

const std::vector<Table>& tables() {
  static const std::vector<Table> all = all_tables();
  return all;
}

}  // namespace kneerail::fold
