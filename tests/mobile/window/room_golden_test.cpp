// Each room on a small site, upright and across, beside the picture somebody was content with. At
// half its size: that is enough to see what has moved, and keeps the letters' edges out of it.

#include "core/base/date.h"
#include "tests/mobile/drawing/golden.h"
#include "tests/mobile/window/shown_window.h"

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
