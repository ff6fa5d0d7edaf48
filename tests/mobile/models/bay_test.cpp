// The Bay pad of a walk: a push, heights and gaps beside the owner's rule, a gate, what becomes a
// finding by itself, and what may go wrong.

#include <catch2/catch.hpp>

#include "mobile/models/finding_pen.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr const char* findings = "SELECT count(*) FROM finding WHERE voided_by IS NULL";
constexpr const char* drafts = "SELECT count(*) FROM draft";
constexpr int gate_kind = 3;

/// A walked site whose owner asks for 1,100 mm and gaps of at most 100 mm; its second bay is a
/// gate.
class BayWalk {
 public:
  BayWalk() {
    walking_.switch_off();
    const WalkedSite& site = walking_.site();
    const cbor::Map geometry{{1, cbor::Array{cbor::Array{2, 600, 1'100}}}, {3, 120}, {4, 100}};
    walking_.write_down(
        {set(site.organisation, site.rules, 3, cbor::Map{{11, geometry}, {18, cbor::Map{{1, 2}}}}),
         set(site.site, site.run, 6, 2), set(site.site, site.run, 7, 3'200),
         set(site.site, site.run, 12, 2), set(site.site, site.bays[1], 3, gate_kind)});
    walking_.switch_on();
    walk().chooseBay(0);
  }

  Walking& walking() { return walking_; }
  WalkModel& walk() { return walking_.walk(); }
  BayCheck& bay() { return *walk().bay(); }
  void type(BayCheck::Measure row, const QString& digits) {
    bay().measure(row);
    for (const QChar digit : digits) bay().digit(digit.digitValue());
  }
  void push(Felt felt) {
    bay().push(static_cast<int>(felt));
    walking_.settle();
  }
  QString text(int row, BayCheck::Role role = BayCheck::TextRole) {
    return bay().data(bay().index(row), role).toString();
  }
  bool is(int row, BayCheck::Role role) { return bay().data(bay().index(row), role).toBool(); }
  std::int64_t count(const std::string& what) { return walking_.count(what); }
  std::int64_t records(int kind) {
    return count("SELECT count(*) FROM reading WHERE kind = " + std::to_string(kind) +
                 " AND voided_by IS NULL");
  }

 private:
  static Entry set(const Uuid& feed, const Uuid& thing, int field, cbor::Value value) {
    const cbor::Array change{field, std::move(value), cbor::Array{}};
    return {feed, 2, thing, {}, {{1, cbor::Array{change}}}, {}};
  }

  Walking walking_;
};

}  // namespace

TEST_CASE("a bay is pushed, and the words say what is asked of it", "[mobile][walk]") {
  BayWalk at;
  REQUIRE(at.walk().pad() == WalkModel::BayPad);
  CHECK(at.bay().title() == "Bay 118 to 119 · rails · drop 3.2 m to water");
  CHECK(at.bay().rule_words() == "rule: Harbour");
  CHECK(at.text(BayCheck::Height, BayCheck::LimitRole) == "at least 1,100");
  CHECK(at.text(BayCheck::Gap, BayCheck::LimitRole) == "at most 100");
  CHECK(at.text(BayCheck::GapBelow, BayCheck::LimitRole) == "at most 120");
  CHECK(at.walk().next_bay_words() == "119 to 120");
  CHECK(at.bay().felt() == 0);
  at.push(Felt::firm);
  CHECK(at.bay().felt_words() == "firm");
  CHECK(at.walk().undo_words() == "firm");
  at.push(Felt::firm);  // says nothing new
  CHECK(at.records(HandLoad::kind) == 1);
  CHECK(at.walk().run()->sheet()->bays[0].pushed);
  at.walk().nextBay();
  CHECK(at.walk().run()->bay() == 1);
  CHECK(at.bay().felt() == 0);
  CHECK(at.count(findings) == 0);
}

TEST_CASE("height and gap are records when they are finished", "[mobile][walk]") {
  BayWalk at;
  at.type(BayCheck::Height, "1104");
  CHECK(at.text(BayCheck::Height) == "1104");
  CHECK_FALSE(at.is(BayCheck::Height, BayCheck::KeptRole));
  CHECK(at.walk().undo_words() == "1104 mm");
  at.type(BayCheck::Gap, "98");
  CHECK_FALSE(at.is(BayCheck::Height, BayCheck::KeptRole));  // not before the disk has it
  at.walking().settle();
  CHECK(at.text(BayCheck::Height) == "1,104 mm");
  CHECK(at.is(BayCheck::Height, BayCheck::KeptRole));
  CHECK_FALSE(at.is(BayCheck::Height, BayCheck::OutsideRole));
  CHECK(at.records(Geometry::kind) == 1);
  at.walk().nextBay();
  at.walking().settle();
  CHECK(at.records(Geometry::kind) == 2);
  CHECK(at.count("SELECT count(*) FROM reading WHERE kind = 25 AND what = 1 AND v1 = 1104 AND v2 "
                 "= 1100") == 1);
  CHECK(at.count(findings) == 0);
  at.walk().chooseBay(0);
  CHECK(at.text(BayCheck::Gap) == "98 mm");
}

TEST_CASE("a gap outside the rule is a finding by itself, ringed where it was touched",
          "[mobile][walk]") {
  BayWalk at;
  at.walk().touchBay(0, 900, 420);
  at.type(BayCheck::Gap, "112");
  at.bay().nextSlot();
  at.walking().settle();
  CHECK(at.is(BayCheck::Gap, BayCheck::OutsideRole));
  CHECK(at.bay().asks() == "Gap 112 mm. The chosen rule says at most 100");
  REQUIRE(at.walk().run()->sheet()->findings.size() == 1);
  const SheetFinding found = at.walk().run()->sheet()->findings.front();
  CHECK(found.what == FindingKind::outside_the_rule);
  CHECK(found.text == "Gap 112 mm. The chosen rule says at most 100");
  CHECK(found.bay == 0);
  CHECK(found.along_mm == 900);
  CHECK(found.up_mm == 420);
  CHECK(found.hazard_state == 0);
  CHECK(at.walk().message() == "F-1: Gap 112 mm. The chosen rule says at most 100");
  at.walk().undo();  // number and finding went together, and go together
  at.walking().settle();
  CHECK(at.records(Geometry::kind) == 0);
  CHECK(at.count(findings) == 0);
  CHECK(at.text(BayCheck::Gap).isEmpty());
  at.walk().redo();
  at.walking().settle();
  CHECK(at.records(Geometry::kind) == 1);
  CHECK(at.count(findings) == 1);
}

TEST_CASE("a height under the rule is outside it, and numbers of findings go on",
          "[mobile][walk]") {
  BayWalk at;
  at.type(BayCheck::Height, "1090");
  at.type(BayCheck::GapBelow, "130");
  at.bay().measure(-1);
  at.walking().settle();
  CHECK(at.count("SELECT count(*) FROM finding WHERE number = 1 AND what = 10") == 1);
  CHECK(at.count("SELECT count(*) FROM finding WHERE number = 2 AND what = 10") == 1);
  CHECK(at.bay().asks() == "Height 1,090 mm. The chosen rule says at least 1,100");
}

TEST_CASE("a bay that moves cannot wait, and what was done is asked at once", "[mobile][walk]") {
  BayWalk at;
  at.push(Felt::moves);
  CHECK(at.walk().pad() == WalkModel::FindingPad);
  FindingPen& pen = *at.walk().finding();
  CHECK(pen.kind() == static_cast<int>(FindingKind::moves));
  CHECK(pen.grade() == 5);
  CHECK(pen.cannot_wait());
  pen.touchMeasure(1);
  pen.keep();
  at.walking().settle();
  CHECK(at.walk().pad() == WalkModel::BayPad);
  CHECK(at.count("SELECT count(*) FROM finding WHERE hazard_state = 2 AND grade = 5") == 1);
  CHECK(at.records(HandLoad::kind) == 1);
}

TEST_CASE("a bay that moves is a hazard also after a power cut", "[mobile][walk]") {
  BayWalk at;
  at.push(Felt::moves);
  at.walking().cut_power(3);
  CHECK(at.count("SELECT count(*) FROM finding WHERE hazard_state = 1 AND grade = 5") == 1);
  CHECK(at.records(HandLoad::kind) == 1);
}

TEST_CASE("a bay that gives is a finding once it is left", "[mobile][walk]") {
  BayWalk at;
  at.push(Felt::gives);
  CHECK(at.bay().tightens());
  CHECK(at.count(findings) == 0);
  CHECK(at.count(drafts) == 1);
  at.walk().openPad(WalkModel::TorquePad);  // at its screws the hand is still at the bay
  CHECK(at.walk().part_chosen());
  at.walking().settle();
  CHECK(at.count(findings) == 0);
  SECTION("by the hand that goes on") {
    at.walk().choosePost(2);
    at.walking().settle();
  }
  SECTION("by the end of the walk") {
    at.walk().leave();
    at.walking().settle();
  }
  SECTION("by a power cut") {
    at.walking().cut_power(2);
  }
  CHECK(at.count("SELECT count(*) FROM finding WHERE what = 2 AND grade = 4 AND "
                 "number = 1 AND hazard_state = 0") == 1);
  CHECK(at.count(findings) == 1);
  CHECK(at.count(drafts) == 0);
  at.walk().chooseBay(0);  // it is found once
  at.walk().choosePost(3);
  at.walking().settle();
  CHECK(at.count(findings) == 1);
}

TEST_CASE("screws tightened and a firm second push make no finding", "[mobile][walk]") {
  BayWalk at;
  at.push(Felt::gives);
  const bool tighten = GENERATE(true, false);
  at.walk().openPad(WalkModel::TorquePad);
  at.walking().torque().wrenchIsSet();
  if (tighten) {
    at.walking().torque().clicked();
    at.walking().settle();
  }
  at.walk().chooseBay(0);
  at.push(Felt::firm);
  CHECK(at.bay().felt_words() == "firm");
  CHECK(at.bay().tightens() == !tighten);
  CHECK(at.count(drafts) == (tighten ? 0 : 1));
  at.walk().nextBay();
  at.walking().settle();
  CHECK(at.count(findings) == (tighten ? 0 : 1));
}

TEST_CASE("a push that is taken back gives no finding", "[mobile][walk]") {
  BayWalk at;
  at.push(Felt::gives);
  at.walk().undo();
  at.walking().settle();
  CHECK(at.bay().felt() == 0);
  CHECK(at.count(drafts) == 0);
  at.walk().nextBay();
  at.walking().settle();
  CHECK(at.count(findings) == 0);
}

TEST_CASE("a push and a gap that the disk refuses stay until it has them", "[mobile][walk]") {
  BayWalk at;
  at.walking().disk().set_read_only(true);
  at.push(Felt::firm);
  CHECK(at.bay().felt_not_kept());
  at.type(BayCheck::Gap, "112");
  at.bay().measure(-1);
  at.walking().settle();
  CHECK(at.is(BayCheck::Gap, BayCheck::NotKeptRole));
  CHECK(at.walk().not_kept());
  CHECK(at.walk().message().startsWith("Not kept"));
  at.walk().nextBay();
  at.walk().chooseBay(0);
  CHECK(at.text(BayCheck::Gap) == "112 mm");
  CHECK(at.bay().felt_not_kept());
  at.walking().disk().set_read_only(false);
  at.walk().tryAgain();
  at.walking().settle();
  CHECK(at.is(BayCheck::Gap, BayCheck::KeptRole));
  CHECK_FALSE(at.bay().felt_not_kept());
  CHECK(at.records(Geometry::kind) == 1);
  CHECK(at.records(HandLoad::kind) == 1);
  CHECK(at.count(findings) == 1);
}

TEST_CASE("digits of a gap are taken back and put back", "[mobile][walk]") {
  BayWalk at;
  at.type(BayCheck::Gap, "11");
  at.bay().backspace();
  CHECK(at.text(BayCheck::Gap) == "1");
  at.walk().undo();
  CHECK(at.text(BayCheck::Gap).isEmpty());
  at.walk().redo();
  CHECK(at.text(BayCheck::Gap) == "1");
  at.type(BayCheck::Height, "99999");
  CHECK(at.text(BayCheck::Height) == "9999");  // four digits
}

TEST_CASE("a gate is asked three things and is one record", "[mobile][walk]") {
  BayWalk at;
  at.walk().chooseBay(1);
  REQUIRE(at.bay().is_gate());
  at.bay().answerGate(BayCheck::ClosesByItself, 3);
  at.bay().answerGate(BayCheck::Latches, 1);
  at.walking().settle();
  CHECK(at.count(drafts) == 1);
  CHECK(at.records(GateCheck::kind) == 0);
  at.walking().cut_power(1);  // what was said so far is there
  at.walk().chooseBay(1);
  CHECK(at.bay().closes() == 3);
  CHECK(at.bay().latches() == 1);
  CHECK(at.bay().opens_away() == 0);
  at.bay().answerGate(BayCheck::OpensAway, 1);
  at.walking().settle();
  CHECK(at.count(drafts) == 0);
  CHECK(at.count("SELECT count(*) FROM reading WHERE kind = 26 AND what = 3 AND v1 = 1 AND v2 = "
                 "1 AND voided_by IS NULL") == 1);
  CHECK(at.walk().pad() == WalkModel::BayPad);
  CHECK(at.count(findings) == 0);
}

TEST_CASE("a gate that does not shut proposes a finding", "[mobile][walk]") {
  BayWalk at;
  at.walk().chooseBay(1);
  const bool latches = GENERATE(true, false);
  at.bay().answerGate(BayCheck::ClosesByItself, 2);
  at.bay().answerGate(BayCheck::Latches, latches ? 1 : 2);
  at.bay().answerGate(BayCheck::OpensAway, 1);
  at.walking().settle();
  CHECK(at.walk().pad() == WalkModel::FindingPad);
  FindingPen& pen = *at.walk().finding();
  CHECK(pen.kind() == static_cast<int>(FindingKind::will_not_close));
  CHECK(pen.grade() == (latches ? 4 : 5));
  CHECK(pen.cannot_wait() == !latches);  // nobody is held back by one that does not latch
  pen.keep();
  at.walking().settle();
  CHECK(at.count(findings) == 1);
  CHECK(at.records(GateCheck::kind) == 1);
}

TEST_CASE("a gate's no that was a mistake proposes nothing", "[mobile][walk]") {
  BayWalk at;
  at.walk().chooseBay(1);
  at.bay().answerGate(BayCheck::Latches, 2);
  CHECK(at.walk().finding()->begun());
  at.bay().answerGate(BayCheck::Latches, 1);
  CHECK_FALSE(at.walk().finding()->begun());
}

TEST_CASE("a bay is where the walk comes back to", "[mobile][walk]") {
  BayWalk at;
  at.push(Felt::firm);
  at.walk().choosePost(2);
  at.walk().undo();
  at.walking().settle();
  CHECK(at.walk().run()->bay() == 0);
  CHECK(at.walk().pad() == WalkModel::BayPad);
  CHECK(at.bay().felt() == 0);
}
