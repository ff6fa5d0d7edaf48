// Each room on a small site, upright and across, beside the picture somebody was content with. At
// half its size: that is enough to see what has moved, and keeps the letters' edges out of it.

#include <QTemporaryDir>

#include "core/base/date.h"
#include "mobile/models/finding_pen.h"
#include "tests/mobile/drawing/golden.h"
#include "tests/mobile/made_pictures.h"
#include "tests/mobile/window/ruled_site.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

class Pictures {
 public:
  Pictures(ShownWindow& shown, QSize size) : shown_(shown), size_(size) { shown.resize(size); }

  void check(const std::string& room) {
    shown_.settle();
    const QImage seen = shown_.window().grabWindow().convertToFormat(QImage::Format_RGB32);
    REQUIRE(seen.size() == size_);
    const std::string name =
        room + "-" + std::to_string(size_.width()) + "x" + std::to_string(size_.height());
    check_golden(name, seen.scaled(size_ / 2, Qt::IgnoreAspectRatio, Qt::SmoothTransformation));
  }

 private:
  ShownWindow& shown_;
  QSize size_;
};

}  // namespace

TEST_CASE("each room looks as it did", "[mobile][window][golden]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const Folder folder;
  ShownWindow shown(6, folder.path() / "register");
  Pictures pictures(shown, size);
  pictures.check("room-walk-post");

  CHECK(shown.touch("gradePad"));
  CHECK(shown.touch("grade3"));
  pictures.check("room-walk-grade");

  CHECK(shown.touch("coatingPad"));
  for (const char* reading : {"74", "71", "76"}) shown.type(reading);
  pictures.check("room-walk-coating");

  CHECK(shown.touch("under3"));
  pictures.check("room-walk-rust");

  CHECK(shown.touch("gaugeCell"));
  pictures.check("room-gauge");
  CHECK(shown.touch("checkFoil"));
  for (const char* reading : {"500", "51"}) shown.type(reading);
  pictures.check("room-gauge-foil");
  CHECK(shown.touch("mainAct"));

  CHECK(shown.touch("torquePad"));
  CHECK(shown.touch("wrenchSet"));
  CHECK(shown.touch("moved"));
  CHECK(shown.touch("torqueScale"));
  pictures.check("room-walk-torque");

  CHECK(shown.touch("forecastTag"));
  pictures.check("room-forecast");

  CHECK(shown.touch("sitesTag"));
  pictures.check("room-sites");

  CHECK(shown.touch("walkTag"));
  shown.keys("76\n", 2);
  pictures.check("room-walk-waiting");

  CHECK(shown.touch("throwCell"));
  CHECK(shown.touch("gaugeCell"));
  CHECK(shown.touch("handsKey"));
  CHECK(shown.touch("closeVisitKey"));
  pictures.check("room-close");
}

TEST_CASE("the tablet's own room looks as it did", "[mobile][window][golden]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  ShownWindow shown(4);
  shown.rooms().store().keep_settings({{"cautions_read", 0}}, [](const Result<>&) {});
  shown.settle();
  shown.switch_off();
  shown.switch_on();
  Pictures pictures(shown, size);
  pictures.check("room-first-start");
  CHECK(shown.touch("firstRight"));
  CHECK(shown.touch("sitesTag"));
  CHECK(shown.touch("tabletCell"));
  pictures.check("room-tablet");
  CHECK(shown.touch("measureGlass"));
  pictures.check("room-tablet-card");
}

TEST_CASE("rooms with larger letters look as they did", "[mobile][window][golden]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  ShownWindow shown(6);
  shown.tokens().set_text_scale(1.4);
  Pictures pictures(shown, size);
  pictures.check("room-large-walk-post");
  CHECK(shown.touch("gradePad"));
  CHECK(shown.touch("grade3"));
  pictures.check("room-large-walk-grade");
  CHECK(shown.touch("coatingPad"));
  for (const char* reading : {"74", "71", "76"}) shown.type(reading);
  pictures.check("room-large-walk-coating");
  CHECK(shown.touch("torquePad"));
  pictures.check("room-large-walk-torque");
}

TEST_CASE("no word on a key is broken or over its edge, however large letters are",
          "[mobile][window]") {
  const double scale = GENERATE(1.0, 1.2, 1.4, 1.7);
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  ShownWindow shown(6);
  shown.tokens().set_text_scale(scale);
  shown.resize(size);
  CHECK(shown.labels_on_keys_fit() >= 8);
  for (const char* pad : {"gradePad", "coatingPad", "torquePad", "findingPad"}) {
    CHECK(shown.touch(pad));
    CHECK(shown.labels_on_keys_fit() > 4);
  }
}

TEST_CASE("a prepared day looks as it did, and so do its parts on the walk",
          "[mobile][window][golden]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const bool dark = GENERATE(false, true);
  const std::string theme = dark ? "-dark" : "";
  const Folder folder;
  ShownWindow shown(24, folder.path() / "register");
  shown.tokens().set_dark(dark);
  Pictures pictures(shown, size);
  const WalkedSite& site = shown.site();
  const std::int64_t now_ms = shown.clock().now().ms;
  const auto day = static_cast<std::int32_t>(now_ms / 86'400'000);
  const Uuid old_gauge = id_of(9, 3);
  shown.rooms().store().save(
      {created(site.organisation, old_gauge, 9, site.organisation, {{1, 1}, {2, "B1"}, {3, 10}}),
       {site.organisation, 51, old_gauge, site.person, {{1, day - 380}, {2, day - 15}}, {}},
       {site.organisation, 51, site.gauge, site.person, {{1, day - 30}, {2, day + 335}}, {}},
       {site.site,
        38,
        site.posts[3],
        site.person,
        {{1, now_ms - 3'600'000}, {2, 1}, {3, "rail moves near the ladder"}, {6, true}},
        {}},
       {site.site, 30, site.tees[7], site.person, {{2, 2}, {3, 3}, {4, false}, {7, 1}}, {}}},
      {}, [](const Result<>& saved) { REQUIRE(saved); });
  shown.settle();
  CHECK(shown.touch("sitesTag"));
  CHECK(shown.touch("prepareDay0"));
  CHECK(shown.drag("timeTape", {{0.7, 0.5}, {0.095, 0.5}}));
  pictures.check("room-prepare" + theme);
  CHECK(shown.touch("walkIt"));
  pictures.check("room-walk-chosen" + theme);
}

TEST_CASE("the pages of the register look as they did", "[mobile][window][golden]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280), QSize(1920, 1200));
  const bool dark = GENERATE(false, true);
  const std::string theme = dark ? "-dark" : "";
  const Folder folder;
  ShownWindow shown(6, folder.path() / "register");
  shown.tokens().set_dark(dark);
  Pictures pictures(shown, size);
  CHECK(shown.touch("sitesTag"));
  CHECK(shown.touch("siteName0"));
  if (!dark) pictures.check("room-site-sheet");
  CHECK(shown.touch("layOutRun"));
  CHECK(shown.touch("piece0"));
  CHECK(shown.touch("saySentence"));
  pictures.check("room-register" + theme);
  CHECK(shown.touch("piece2"));
  for (const char* digit : {"digit1", "digit2"}) CHECK(shown.touch(digit));
  if (!dark) pictures.check("room-register-digits");
  CHECK(shown.touch("closePad"));
  shown.touch_drawing(750, 300);
  CHECK(shown.touch("choice0_3"));
  pictures.check("room-register-bay" + theme);
  CHECK(shown.touch("closePad"));
  CHECK(shown.touch("leaveRule"));
  CHECK(shown.touch("changeRun0"));
  shown.touch_drawing(750, 300);
  CHECK(shown.touch("choice0_0"));
  if (!dark) pictures.check("room-change");
}

TEST_CASE("a bay looks as it did: pushed, measured, a gate", "[mobile][window][golden]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const bool dark = GENERATE(false, true);
  ShownWindow shown(6);
  give_rules(shown);
  shown.tokens().set_dark(dark);
  const std::string theme = dark ? "-dark" : "";
  Pictures pictures(shown, size);
  shown.touch_drawing(900, 300);
  CHECK(shown.touch("measure0Key"));
  shown.type("1104");  // then the gap
  for (const char* digit : {"digit1", "digit1", "digit2"}) CHECK(shown.touch(digit));
  if (!dark) pictures.check("room-walk-bay-typed");
  CHECK(shown.touch("toPush"));
  CHECK(shown.touch("felt2"));
  CHECK(shown.touch("putAway"));
  pictures.check("room-walk-bay" + theme);
  if (dark) return;
  CHECK(shown.touch("mainAct"));
  CHECK(shown.touch("putAway"));
  CHECK(shown.touch("gate2answer1"));
  CHECK(shown.touch("gate3answer1"));
  pictures.check("room-walk-gate");
}

TEST_CASE("a run that was under water shows how high", "[mobile][window][golden]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  ShownWindow shown(4);
  const WalkedSite& site = shown.site();
  constexpr int flood = 2;
  const cbor::Array place{515'000'000, -21'000'000};
  const std::int64_t from_ms = date_from_civil(2030, 2, 9).days * 86'400'000LL;
  const cbor::Map body{{1, flood}, {2, from_ms}, {6, cbor::Array{place, 340}}};
  shown.rooms().store().save({{site.site, 9, site.run, site.person, body, {}}}, {},
                             [](const Result<>& saved) { REQUIRE(saved); });
  shown.settle();
  shown.switch_off();
  shown.switch_on();
  Pictures(shown, size).check("room-walk-flood");
  CHECK(shown.find("elevation")->property("waterWords").toString() ==
        "flood mark 9 Feb 2030, 0.34 m above the deck");
}

TEST_CASE("a finding looks as it did, on the pad and hung on the rail",
          "[mobile][window][golden]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const bool dark = GENERATE(false, true);
  const std::string theme = dark ? "-dark" : "";
  const Folder folder;
  const QTemporaryDir camera;
  put_file(camera.path(), "a.jpg", camera_jpeg({800, 600}, 1));
  ShownWindow shown(6, folder.path() / "register");
  shown.tokens().set_dark(dark);
  FindingPen& pen = *shown.walk().finding();
  const auto wait = [&] {
    while (pen.reads_picture() || pen.pictures()->busy()) {
      QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
      shown.rooms().store().settle();
    }
    shown.settle_pictures();
  };
  pen.pictures()->set_folder(camera.path());
  Pictures pictures(shown, size);
  shown.touch_drawing(0, 1100);
  CHECK(shown.touch("findingPad"));
  wait();
  CHECK(shown.touch("kind4"));
  if (!dark) pictures.check("room-finding-first");
  CHECK(shown.touch("picture0"));
  wait();
  CHECK(shown.touch("pictureMarks"));
  CHECK(shown.touch("kind1"));
  CHECK(shown.touch("measure1"));
  CHECK(shown.touch("measure3"));
  wait();
  pictures.check("room-finding" + theme);
  CHECK(shown.touch("keepFinding"));
  shown.touch_drawing(1500, 550);
  CHECK(shown.touch("findingPad"));
  CHECK(shown.touch("kind2"));
  CHECK(shown.touch("keepFinding"));
  CHECK(shown.touch("findingsTag"));
  wait();
  pictures.check("room-findings" + theme);
  CHECK(shown.touch("finding0"));
  wait();
  if (!dark) pictures.check("room-findings-open");
  CHECK(shown.touch("stands2"));
  CHECK(shown.touch("walkTag"));
  if (!dark) pictures.check("room-walk-not-safe");
}
