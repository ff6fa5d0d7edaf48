// The Finding pad's model: what the register has after each touch, taken back, put back, and after
// the power is cut.

#include <catch2/catch.hpp>

#include "mobile/models/finding_pen.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

enum What { split = 1, loose = 2, rust = 4, moves = 11 };
enum Did { closed_off = 1, taped = 3, struck = 4, reported = 5, guarded = 6 };

constexpr const char* findings = "SELECT count(*) FROM finding WHERE voided_by IS NULL";
constexpr const char* open_hazards =
    "SELECT count(*) FROM finding WHERE hazard_state = 1 AND ended_by IS NULL";
constexpr const char* safe_hazards =
    "SELECT count(*) FROM finding WHERE hazard_state = 2 AND ended_by IS NULL";
constexpr const char* drafts = "SELECT count(*) FROM draft";
constexpr const char* unfit =
    "SELECT count(*) FROM reading WHERE kind = 20 AND v1 = 5 AND voided_by IS NULL";

FindingPen& at_finding(Walking& walking, int post = 0) {
  walking.walk().choosePart(walking.cross(post));
  walking.walk().openPad(WalkModel::FindingPad);
  REQUIRE(walking.walk().pad() == WalkModel::FindingPad);
  return *walking.walk().finding();
}

}  // namespace

TEST_CASE("what is split is unfit, cannot wait, and is made safe by what holds people back",
          "[mobile][finding]") {
  Walking walking;
  FindingPen& pen = at_finding(walking);
  CHECK(pen.title() == "F-1 · post 118, mid-rail cross");
  CHECK_FALSE(pen.begun());
  CHECK_FALSE(pen.cannot_wait());
  pen.chooseKind(split);
  CHECK(pen.grade() == 5);
  CHECK(pen.cannot_wait());
  CHECK(pen.safe_words() == "Not made safe");
  pen.touchMeasure(taped);
  CHECK(pen.safe_words().startsWith("Not made safe: taped"));
  pen.touchMeasure(struck);  // no key: only a strike writes it
  CHECK(pen.measures() == QList<int>{taped});
  pen.touchMeasure(closed_off);
  CHECK(pen.safe_words().startsWith("Made safe"));
  CHECK(pen.safe_words().endsWith("The bay stays closed on every drawing"));
  CHECK(pen.look_again_words().startsWith("look again by "));
  pen.keep();
  walking.settle();
  CHECK(walking.count(findings) == 1);
  CHECK(walking.count(safe_hazards) == 1);
  CHECK(walking.count(unfit) == 1);
  CHECK(walking.count(drafts) == 0);
  const auto sheet = walking.walk().run()->sheet();
  REQUIRE(sheet->findings.size() == 1);
  CHECK(sheet->findings.front().number == "F-1");
  CHECK(sheet->findings.front().part == walking.cross(0));
  CHECK(sheet->bays.front().closed_off);
  CHECK(sheet->parts[static_cast<std::size_t>(walking.cross(0))].now->grade == 5);
  CHECK(walking.walk().pad() != WalkModel::FindingPad);  // walked on
  CHECK(walking.walk().post_label() == "119");
  CHECK(at_finding(walking, 1).title().startsWith("F-2"));
}

TEST_CASE("kept with nothing done, it says so until something holds", "[mobile][finding]") {
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.chooseKind(moves);
  pen.keep();
  walking.settle();
  CHECK(walking.count(open_hazards) == 1);
  CHECK(walking.walk().run()->sheet()->findings.front().hazard_state == 1);
}

TEST_CASE("a kind proposes the grade, and a grade that was chosen stays", "[mobile][finding]") {
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.chooseKind(rust);
  CHECK(pen.grade() == 3);
  pen.chooseKind(loose);
  CHECK(pen.grade() == 4);
  pen.chooseGrade(2);
  pen.chooseKind(rust);
  CHECK(pen.grade() == 2);
  CHECK_FALSE(pen.cannot_wait());
  pen.chooseKind(split);  // whatever its grade
  CHECK(pen.cannot_wait());
  CHECK(pen.grade() == 2);
}

TEST_CASE("that it can wait needs a sentence, which is kept with it", "[mobile][finding]") {
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.chooseKind(split);
  pen.touchMeasure(closed_off);
  pen.itCanWait("   ");
  CHECK(pen.why_it_can_wait().isEmpty());
  CHECK(pen.measures().size() == 1);
  pen.itCanWait(QString("x").repeated(10'000));
  CHECK(pen.why_it_can_wait().size() == pen.why_most());
  pen.itCanWait("  The rail behind\nit holds ");
  CHECK(pen.why_it_can_wait() == "The rail behind it holds");
  CHECK(pen.measures().isEmpty());
  const bool cut = GENERATE(false, true);
  if (cut) {
    walking.settle();
    walking.cut_power(3);
  } else {
    pen.keep();
    walking.settle();
  }
  CHECK(
      walking.count("SELECT count(*) FROM finding WHERE can_wait = 'The rail behind it holds' AND "
                    "hazard = 0 AND grade = 5") == 1);
  CHECK(walking.count(open_hazards) == 0);
}

TEST_CASE("going on to another part keeps what was begun, and nothing of what was not",
          "[mobile][finding]") {
  Walking walking;
  FindingPen& pen = at_finding(walking);
  walking.walk().choosePart(walking.tee(0));
  walking.settle();
  CHECK(walking.count(findings) == 0);
  at_finding(walking, 1);
  pen.chooseKind(loose);
  walking.walk().choosePart(walking.tee(0));
  walking.settle();
  CHECK(walking.count(findings) == 1);
  CHECK(walking.count(drafts) == 0);
  CHECK(walking.walk().run()->part() == walking.tee(0));
}

TEST_CASE("each touch is taken back by one, and put back", "[mobile][finding]") {
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.chooseKind(split);
  pen.touchMeasure(closed_off);
  walking.settle();
  CHECK(walking.count(drafts) == 2);
  CHECK(walking.walk().undo_words() == "closed off");
  walking.walk().undo();
  walking.settle();
  CHECK(pen.measures().isEmpty());
  CHECK(walking.count(drafts) == 1);
  walking.walk().undo();
  walking.settle();
  CHECK_FALSE(pen.begun());
  CHECK(walking.count(drafts) == 0);
  walking.walk().redo();
  walking.walk().redo();
  walking.settle();
  CHECK(pen.kind() == split);
  CHECK(pen.measures() == QList<int>{closed_off});
  CHECK(walking.count(drafts) == 2);
  CHECK(walking.count(findings) == 0);
}

TEST_CASE("a finding that cannot wait is taken back as raised by mistake, and put back whole",
          "[mobile][finding]") {
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.chooseKind(split);
  pen.touchMeasure(guarded);
  pen.keep();
  walking.settle();
  const std::int64_t entries = walking.walk().pen().entries_kept();
  CHECK(walking.walk().undo_words() == "F-1");
  walking.walk().undo();
  walking.settle();
  constexpr int by_mistake = 4;
  CHECK(walking.count("SELECT count(*) FROM finding WHERE ended_how = " +
                      std::to_string(by_mistake) + " AND hazard_state = 3") == 1);
  CHECK(walking.count(unfit) == 0);
  CHECK(walking.walk().run()->sheet()->findings.empty());
  walking.walk().redo();
  walking.settle();
  CHECK(walking.count(safe_hazards) == 1);
  CHECK(walking.count(unfit) == 1);
  CHECK(walking.walk().run()->sheet()->findings.size() == 1);
  // What the screen counts is what the next start counts.
  const std::int64_t counted = walking.walk().pen().entries_kept();
  CHECK(counted == entries + 1);
  walking.switch_off();
  walking.switch_on();
  CHECK(walking.walk().pen().entries_kept() == counted);
}

TEST_CASE("power cut after any touch of a finding: what was said is a record",
          "[mobile][finding][trouble]") {
  constexpr int touches_most = 5;
  const int touches = GENERATE(range(0, touches_most + 1));
  INFO("after touch " << touches);
  Walking walking;
  FindingPen& pen = at_finding(walking);
  const auto touch = [&](int place) {
    if (place == 0) pen.chooseGrade(4);
    if (place == 1) pen.chooseKind(split);
    if (place == 2) pen.touchMeasure(reported);
    if (place == 3) pen.touchMeasure(closed_off);
    if (place == 4) pen.keep();
    walking.settle();
  };
  for (int i = 0; i < touches; ++i) touch(i);
  walking.cut_power(static_cast<std::uint64_t>(touches) + 1);
  CHECK(walking.count(findings) == (touches > 0 ? 1 : 0));
  CHECK(walking.count(drafts) == 0);
  CHECK(walking.count("SELECT count(*) FROM fact WHERE kind = 33") == (touches > 2 ? 1 : 0));
  CHECK(walking.count(open_hazards) == (touches == 2 || touches == 3 ? 1 : 0));
  CHECK(walking.count(safe_hazards) == (touches > 3 ? 1 : 0));
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 20 AND v1 = 4 AND voided_by IS "
                      "NULL") == (touches > 0 ? 1 : 0));
  if (touches > 0) {
    REQUIRE(walking.walk().run()->sheet()->findings.size() == 1);
    CHECK(walking.walk().run()->sheet()->findings.front().part == walking.cross(0));
  }
}

TEST_CASE("power cut inside any write of a finding: what was kept is there once",
          "[mobile][finding][trouble]") {
  struct Kept {
    bool draft = false;  ///< the disk had the kind before the next touch
    bool whole = false;
  };
  const auto all = [](Walking& walking) {
    FindingPen& pen = at_finding(walking);
    pen.chooseKind(split);
    walking.settle();
    const bool draft = !walking.walk().not_kept();
    pen.touchMeasure(closed_off);
    pen.keep();
    walking.settle();
    return Kept{draft, walking.walk().pad() != WalkModel::FindingPad};
  };
  std::int64_t writes = 0;
  {
    Walking walking;
    const std::int64_t before = walking.disk().operations();
    CHECK(all(walking).whole);
    writes = walking.disk().operations() - before;
  }
  REQUIRE(writes > 5);
  int drafts_kept = 0, kept_whole = 0;
  for (std::int64_t cut = 1; cut <= writes + 1; ++cut) {
    INFO("cut after write " << cut << " of " << writes);
    Walking walking;
    walking.disk().cut_after(cut);
    const Kept kept = all(walking);
    walking.cut_power(static_cast<std::uint64_t>(cut));
    const std::int64_t found = walking.count(findings);
    CHECK(found <= 1);
    CHECK(walking.count("SELECT count(*) FROM fact WHERE kind = 33") <= 1);
    if (kept.draft) CHECK(found == 1);
    if (kept.whole) CHECK(walking.count(safe_hazards) == 1);
    drafts_kept += kept.draft ? 1 : 0;
    kept_whole += kept.whole ? 1 : 0;
  }
  CHECK(drafts_kept > kept_whole);
  CHECK(kept_whole > 0);
}

TEST_CASE("on a disk that is full a finding stays on the screen until it is kept",
          "[mobile][finding][trouble]") {
  Walking walking;
  FindingPen& pen = at_finding(walking);
  walking.disk().set_read_only(true);
  pen.chooseKind(split);
  walking.settle();
  CHECK(walking.walk().not_kept());
  CHECK(walking.walk().message().startsWith("Not kept"));
  CHECK(pen.kind() == split);
  walking.disk().set_read_only(false);
  walking.walk().tryAgain();
  walking.settle();
  CHECK_FALSE(walking.walk().not_kept());
  CHECK(walking.count(drafts) == 1);
  walking.disk().set_read_only(true);
  pen.touchMeasure(closed_off);
  pen.keep();
  walking.settle();
  CHECK(walking.walk().not_kept());
  CHECK(walking.count(findings) == 0);
  walking.disk().set_read_only(false);
  walking.walk().tryAgain();
  walking.settle();
  CHECK(walking.count(safe_hazards) == 1);
  CHECK(walking.count(drafts) == 0);
  CHECK_FALSE(walking.walk().not_kept());
}

TEST_CASE("a touch the disk refused is put again with the next one, and no seal goes before it",
          "[mobile][finding][trouble]") {
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.chooseKind(split);
  walking.settle();
  walking.disk().set_read_only(true);
  pen.touchMeasure(closed_off);
  walking.settle();
  walking.disk().set_read_only(false);
  CHECK(walking.walk().not_kept());
  SECTION("another draft that is kept hides nothing") {
    walking.walk().pen().save_draft({walking.site().site, 22, walking.site().tees[2], 1, {}, {}},
                                    {});
    walking.settle();
    CHECK(walking.walk().not_kept());
    CHECK(walking.walk().message().startsWith("Not kept"));
    QString why_not;
    walking.walk().pen().seal({}, [&](const QString& why) { why_not = why; });
    CHECK(why_not.startsWith("Something is not kept yet"));
    walking.walk().tryAgain();
  }
  SECTION("the next touch") {
    pen.chooseGrade(4);
  }
  walking.settle();
  CHECK_FALSE(walking.walk().not_kept());
  walking.cut_power(5);
  CHECK(walking.count(safe_hazards) == 1);
}

TEST_CASE("what was taken back while the disk refused is gone after all",
          "[mobile][finding][trouble]") {
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.chooseKind(split);
  pen.touchMeasure(closed_off);
  walking.settle();
  walking.disk().set_read_only(true);
  pen.touchMeasure(closed_off);
  walking.settle();
  walking.disk().set_read_only(false);
  pen.keep();
  walking.walk().tryAgain();
  walking.settle();
  CHECK(walking.count(drafts) == 0);
  walking.cut_power(7);
  CHECK(walking.count(open_hazards) == 1);
  CHECK(walking.count(safe_hazards) == 0);
}

TEST_CASE("a sentence that is still being typed is never lost", "[mobile][finding][trouble]") {
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.chooseKind(split);
  pen.touchMeasure(taped);
  pen.writeWhy();
  REQUIRE(pen.writes_why());
  pen.typeWhy("The rail behind hold");
  pen.typeWhy("The rail behind holds");
  walking.settle();
  const QString way = GENERATE("keep", "another part", "another room", "power cut", "left");
  INFO(way.toStdString());
  if (way == "keep") pen.keep();
  if (way == "another part") walking.walk().choosePart(walking.tee(2));
  if (way == "another room") walking.walk().leave();
  if (way == "power cut") walking.cut_power(3);
  if (way == "left") pen.leaveWhy();
  walking.settle();
  const std::string of_finding = "SELECT count(*) FROM finding WHERE can_wait ";
  if (way == "left") {
    CHECK(pen.measures() == QList<int>{taped});
    CHECK(walking.count(drafts) == 2);
    pen.keep();
    walking.settle();
    CHECK(walking.count(of_finding + "IS NULL AND hazard = 1") == 1);
    return;
  }
  // Half a sentence lets nothing wait: the hazard hangs until the person says that it can.
  CHECK(walking.count(of_finding + "= 'The rail behind holds' AND hazard = " +
                      (way == "power cut" ? "1" : "0")) == 1);
  CHECK(walking.count(drafts) == 0);
  CHECK_FALSE(walking.walk().finding()->writes_why());
}

TEST_CASE("a finding that could not be kept leaves no number on the empty pad",
          "[mobile][finding][trouble]") {
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.chooseKind(rust);
  walking.disk().set_read_only(true);
  pen.keep();
  walking.settle();
  CHECK(walking.walk().not_kept());
  CHECK(pen.title() == "post 118, mid-rail cross");
  pen.chooseKind(loose);
  CHECK(pen.title().startsWith("F-2 · "));
}

TEST_CASE("taking back goes to the bay it is about", "[mobile][finding]") {
  Walking walking;
  walking.walk().chooseBay(1);
  walking.walk().openPad(WalkModel::FindingPad);
  walking.walk().finding()->chooseKind(rust);
  walking.walk().finding()->keep();
  walking.settle();
  walking.walk().choosePost(3);
  walking.walk().undo();
  walking.settle();
  CHECK(walking.walk().run()->bay() == 1);
  walking.walk().open(walking.site().run, walking.site().bays[2]);
  CHECK(walking.walk().run()->bay() == 2);
}

TEST_CASE("posts and bays have findings too, which give no part a grade", "[mobile][finding]") {
  Walking walking;
  walking.walk().chooseBay(0);
  walking.walk().openPad(WalkModel::FindingPad);
  FindingPen& pen = *walking.walk().finding();
  CHECK(pen.title() == "F-1 · bay 118 to 119");
  pen.chooseKind(moves);
  pen.touchMeasure(closed_off);
  pen.keep();
  walking.settle();
  CHECK(walking.walk().run()->sheet()->bays.front().closed_off);
  CHECK(walking.count(unfit) == 0);
  walking.walk().choosePost(1);
  walking.walk().openPad(WalkModel::FindingPad);
  CHECK(pen.title() == "F-2 · post 119");
  pen.chooseKind(rust);
  pen.keep();
  walking.settle();
  CHECK(walking.count(findings) == 2);
  CHECK(walking.walk().pad() == WalkModel::PostPad);
}
