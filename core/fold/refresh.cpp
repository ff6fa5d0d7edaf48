#include "core/fold/folding.h"
#include "core/fold/work_rules.h"

// Which rows each kind of record has a part in.

namespace kneerail::fold {

namespace {

void ask_subject(Folding& folding, Stage stage, const Record& record) {
  folding.ask({.stage = stage, .a = record.subject});
}

void refresh_visit_kind(Folding& folding, const PlacedRecord& placed) {
  const Record& record = placed.record;
  const Uuid visit = visit_of(record).value_or(record.id);
  switch (record.kind) {
    case kind::visit_opened:
    case kind::visit_joined:
    case kind::sealed:
      folding.ask({.stage = Stage::visit_part, .a = visit, .b = record.who, .c = placed.device});
      break;
    case kind::same_visit:
      ask_subject(folding, Stage::visit_group, record);
      if (const auto other = about_of(placed)) {
        folding.ask({.stage = Stage::visit_group, .a = *other});
      }
      break;
    default:
      break;
  }
}

void refresh_finding_kind(Folding& folding, const PlacedRecord& placed) {
  const Record& record = placed.record;
  switch (record.kind) {
    case kind::finding:
      folding.ask({.stage = Stage::finding, .a = record.id});
      ask_subject(folding, Stage::seen_after, record);
      break;
    case kind::marks_set:
    case kind::told_answered:
      ask_subject(folding, Stage::plain, record);
      break;
    case kind::closure_look:
      ask_subject(folding, Stage::closure, record);
      ask_subject(folding, Stage::finding, record);
      break;
    case kind::made_safe:
    case kind::finding_ended:
    case kind::next_step:
    case kind::hazard_raised:
      ask_subject(folding, Stage::finding, record);
      break;
    default:
      break;
  }
}

void refresh_work_kind(Folding& folding, const PlacedRecord& placed) {
  const Record& record = placed.record;
  switch (record.kind) {
    case kind::work:
      ask_lives(folding, record.subject);
      ask_subject(folding, Stage::seen_after, record);
      folding.touch(record.subject);
      break;
    case kind::same_work:
      for (const Uuid& work : one_job(folding, record.subject, Joins::all)) {
        folding.ask({.stage = Stage::plain, .a = work});
        ask_lives_of_work(folding, work);
      }
      break;
    case kind::closed:
      folding.ask({.stage = Stage::closure, .a = record.id});
      break;
    case kind::opened:
      ask_subject(folding, Stage::strike, record);
      ask_subject(folding, Stage::closure, record);
      break;
    case kind::strike_opened:
      folding.ask({.stage = Stage::strike, .a = record.id});
      break;
    case kind::strike_step:
      if (const auto strike = about_of(placed)) {
        folding.ask({.stage = Stage::strike, .a = *strike});
      }
      ask_lives(folding, record.subject);
      ask_subject(folding, Stage::seen_after, record);
      folding.touch(record.subject);
      break;
    default:
      break;
  }
}

void refresh_office_kind(Folding& folding, const PlacedRecord& placed) {
  const Record& record = placed.record;
  switch (record.kind) {
    case kind::stock_moved:
      if (const auto type = about_of(placed)) {
        folding.ask({.stage = Stage::stock, .a = record.subject, .b = *type});
      }
      break;
    case kind::next_visit:
      ask_subject(folding, Stage::next_visits, record);
      break;
    case kind::role_taken:
      for (const Uuid& given : ids_in(record.body, 1)) {
        folding.ask({.stage = Stage::plain, .a = given});
      }
      break;
    case kind::hold:
      ask_erased_objects(folding);
      break;
    case kind::hold_ended:
      ask_subject(folding, Stage::plain, record);
      ask_erased_objects(folding);
      break;
    case kind::clock:
      folding.ask({.stage = Stage::segments, .a = placed.device, .b = placed.feed});
      break;
    case kind::settled:
      ask_subject(folding, Stage::change, record);
      resettle(folding, record.subject);
      break;
    case kind::correction:
    case kind::voided:
      ask_subject(folding, Stage::change, record);
      break;
    default:
      break;
  }
}

}  // namespace

void refresh(Folding& folding, const PlacedRecord& placed) {
  ask_seen(folding, placed.record);
  refresh_but_coverage(folding, placed);
}

void refresh_but_coverage(Folding& folding, const PlacedRecord& placed) {
  const Record& record = placed.record;
  if (layout_of(record.kind) != nullptr) folding.ask({.stage = Stage::plain, .a = record.id});
  ask_after_seal(folding, placed);
  if (record.kind == kind::create || record.kind == kind::set ||
      record.kind >= kind::must_understand_min) {
    ask_subject(folding, Stage::entity, record);
  }
  refresh_visit_kind(folding, placed);
  refresh_finding_kind(folding, placed);
  refresh_work_kind(folding, placed);
  refresh_office_kind(folding, placed);
  note_objects(folding, placed);
}

void resettle(Folding& folding, const Uuid& subject) {
  folding.ask({.stage = Stage::entity, .a = subject});
  folding.ask({.stage = Stage::seen_after, .a = subject});
  ask_lives(folding, subject);
  folding.ask({.stage = Stage::latest, .a = subject, .n = kind::grade});
  folding.ask({.stage = Stage::next_visits, .a = subject});
  for (const Row& row : folding.rows_of_key(table_stock, {subject})) {
    folding.ask({.stage = Stage::stock,
                 .a = subject,
                 .b = id_in(row, at(stock_columns, "component_type"))});
  }
  const auto entity = folding.row(table_entity, {subject});
  if (entity) {
    for (const int column : {at(entity_columns, "tag"), at(entity_columns, "import_reference")}) {
      const auto* text = std::get_if<std::string>(&in(*entity, column));
      if (text == nullptr) continue;
      const bool tag = column == at(entity_columns, "tag");
      folding.ask({.stage = tag ? Stage::tag : Stage::twice, .text = *text});
    }
  }
  const auto fact = folding.row(table_fact, {subject});
  if (!fact) return;
  const PlacedRecord placed = placed_of_fact(*fact);
  if (placed.record.kind != kind::settled) refresh(folding, placed);
}

}  // namespace kneerail::fold
