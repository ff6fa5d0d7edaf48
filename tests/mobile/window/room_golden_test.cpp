// Each room on a small site, upright and across, beside the picture somebody was content with. At
// half its size: that is enough to see what has moved, and keeps the letters' edges out of it.

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

  CHECK(shown.touch("torquePad"));
  CHECK(shown.touch("wrenchSet"));
  CHECK(shown.touch("moved"));
  CHECK(shown.touch("torqueScale"));
  pictures.check("room-walk-torque");

  CHECK(shown.touch("forecastTag"));
  pictures.check("room-forecast");

  CHECK(shown.touch("sitesTag"));
  pictures.check("room-sites");
}
