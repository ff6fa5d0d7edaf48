// What a person reads when something is refused or questioned, and what fields must be together.

#include <catch2/catch.hpp>

#include "core/records/coating_reading.h"
#include "core/records/condition_grade.h"
#include "core/records/correction.h"
#include "core/records/finding.h"
#include "core/records/made_safe.h"
#include "core/records/plain_text.h"
#include "core/records/registers.h"
#include "core/records/torque_reading.h"

using namespace kneerail;

namespace {

Uuid some_id(std::uint8_t last) {
  Uuid id;
  id.bytes[0] = 1;
  id.bytes[15] = last;
  return id;
}

template <class Fields>
Record saved(const Fields& fields) {
  Record record = record_of(fields, some_id(2));
  record.id = some_id(1);
  return record;
}

template <class Fields>
std::string said(const Fields& fields) {
  const auto result = check_limits(saved(fields));
  return result ? "" : result.error().message;
}

TorqueReading click(TorqueMethod method, Censoring censoring) {
  TorqueReading reading;
  reading.visit = some_id(3);
  reading.instrument = some_id(4);
  reading.method = method;
  reading.censoring = censoring;
  reading.as_found_tenth_nm = 250;
  reading.wrench_set_tenth_nm = 250;
  return reading;
}

Record tube_type(int diameter_tenth_mm, int wall_tenth_mm) {
  Create create;
  create.type = EntityType::component_type;
  create.parent = some_id(5);
  create.fields.set(component_type_field::tube_diameter, diameter_tenth_mm);
  create.fields.set(component_type_field::tube_wall, wall_tenth_mm);
  Record record = record_of(create, some_id(1));
  record.id = some_id(1);
  return record;
}

}  // namespace

TEST_CASE("a refusal says what, the value, the range, and that nothing was saved", "[core]") {
  CoatingReading reading;
  reading.visit = some_id(3);
  reading.instrument = some_id(4);
  reading.replicates_tenth_um = {841, 25'005};
  CHECK(said(reading) ==
        "Coating thickness: replicates: replicate 2,500.5 µm is outside 0 µm to 2,000 µm. "
        "Nothing was saved.");
  ConditionGrade grade;
  grade.visit = some_id(3);
  grade.how = static_cast<HowLooked>(9);
  CHECK(said(grade) ==
        "Condition grade: how 9 is none of pushed and looked, looked near, looked from afar or "
        "from a picture. Nothing was saved.");
}

TEST_CASE("a click always says what the wrench was set at, and is never exact", "[core]") {
  CHECK(said(click(TorqueMethod::click_no_movement, Censoring::at_least)).empty());
  CHECK(said(click(TorqueMethod::click_moved, Censoring::about)).empty());
  CHECK(said(click(TorqueMethod::click_moved, Censoring::at_most)).empty());
  CHECK(said(click(TorqueMethod::breakaway_read, Censoring::exact)).empty());
  CHECK_FALSE(said(click(TorqueMethod::click_no_movement, Censoring::exact)).empty());
  CHECK_FALSE(said(click(TorqueMethod::click_moved, Censoring::exact)).empty());
  for (const auto method : {TorqueMethod::click_no_movement, TorqueMethod::click_moved}) {
    auto reading =
        click(method, method == TorqueMethod::click_moved ? Censoring::about : Censoring::at_least);
    reading.wrench_set_tenth_nm.reset();
    CHECK(said(reading).find("set at") != std::string::npos);
  }
  auto seized = click(TorqueMethod::breakaway_read, Censoring::not_measurable);
  CHECK_FALSE(said(seized).empty());
  seized.as_found_tenth_nm.reset();
  CHECK(said(seized).empty());
}

TEST_CASE("a hazard is ended with a note and on something", "[core]") {
  FindingEnded ended;
  CHECK(said(ended).empty());
  ended.hazards = {some_id(9)};
  CHECK_FALSE(said(ended).empty());
  ended.note = "new tee, tight";
  CHECK_FALSE(said(ended).empty());
  ended.on_what = EndedOn::seen_and_pushed;
  CHECK(said(ended).empty());
  ended.note = "  ";
  CHECK_FALSE(said(ended).empty());
}

TEST_CASE("a wall that does not fit in its tube is refused", "[core]") {
  CHECK(check_limits(tube_type(483, 32)));
  CHECK(check_limits(tube_type(401, 200)));
  const auto refused = check_limits(tube_type(400, 200));
  REQUIRE_FALSE(refused);
  CHECK(refused.error().message ==
        "Create: a wall of 20 mm does not fit in a tube of 40 mm. Nothing was saved.");
}

TEST_CASE("a closure for a strike names the strike", "[core]") {
  Closed closed;
  closed.why = WhyClosed::strike;
  CHECK_FALSE(said(closed).empty());
  closed.belongs_to = some_id(9);
  CHECK(said(closed).empty());
}

TEST_CASE("what is unlikely is asked once, and confirmed with one answer", "[core]") {
  CoatingReading reading;
  reading.visit = some_id(3);
  reading.instrument = some_id(4);
  reading.replicates_tenth_um = {841, 860, 835};
  CHECK(questions(saved(reading)).empty());
  reading.replicates_tenth_um = {3'050, 3'010};
  CHECK(questions(saved(reading)) ==
        std::vector<std::string>{"A coating of 305 µm is thicker than 300 µm. Keep?"});
  reading.note.provenance.confirmed.set = true;
  CHECK(questions(saved(reading)).empty());
}

TEST_CASE("a correction keeps to the limits of what it corrects", "[core]") {
  Correction correction;
  correction.reason = "typed wrongly";
  correction.values.set(2, 6);
  CHECK_FALSE(check_correction(saved(correction), 20));
  correction.values.set(2, 5);
  CHECK(check_correction(saved(correction), 20));
}

TEST_CASE("text is counted in characters and refused when it cannot be normal form C", "[core]") {
  CHECK(characters("Stufe µ 水") == 9);
  CHECK(text_fault("two\nlines, caf\xC3\xA9").empty());
  CHECK_FALSE(text_fault("cafe\xCC\x81").empty());
  CHECK_FALSE(text_fault("a\r").empty());
  CHECK_FALSE(text_fault("a\x7F").empty());
  CHECK_FALSE(text_fault("5 \xE2\x84\xA6").empty());
  CHECK_FALSE(text_fault("\xC3").empty());
  CHECK(text_fault("q\xCC\x81").empty());  // no single character for it
}
