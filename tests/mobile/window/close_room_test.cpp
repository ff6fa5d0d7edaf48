// Closing a visit on the real window: signed with a finger, sealed with a slide.

#include "tests/mobile/window/shown_window.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

const std::vector<QPointF> a_name{{0.2, 0.5}, {0.3, 0.2}, {0.4, 0.6}, {0.6, 0.4}};

/// Along the slide, as shares of the sleeve that stands at its left end.
std::vector<QPointF> slide(double widths) {
  std::vector<QPointF> along;
  for (int i = 0; i <= 12; ++i) along.emplace_back(0.5 + widths * i / 12, 0.5);
  return along;
}

class CloseRoom {
 public:
  CloseRoom() : shown_(4, folder_.path() / "register") {
    CHECK(shown_.touch("pushed"));
    CHECK(shown_.touch("runCell"));
    CHECK(shown_.touch("closeVisitKey"));
  }
  ShownWindow& shown() { return shown_; }
  std::int64_t seals() {
    return shown_.count("SELECT count(*) FROM visit_part WHERE sealed NOT NULL");
  }

 private:
  Folder folder_;
  ShownWindow shown_;
};

}  // namespace

TEST_CASE("a visit is signed and sealed: a name and a slide", "[mobile][window][close]") {
  CloseRoom room;
  ShownWindow& shown = room.shown();
  CHECK(shown.text_of("closeTitle").startsWith("Visit 2 · North Mole"));
  CHECK(shown.find("wipe") == nullptr);
  CHECK(shown.drag("signature", a_name));
  CHECK(shown.find("wipe") != nullptr);
  CHECK(shown.drag("sealSleeve", slide(4)));
  CHECK(room.seals() == 1);
  CHECK(shown.text_of("closeMessage").isEmpty());
  CHECK(shown.count("SELECT count(*) FROM object_use") == 1);  // the name
  CHECK(shown.touch("leaveClose"));
  CHECK(shown.find("pushed") != nullptr);
  CHECK(shown.walk().undo_words().isEmpty());
}

TEST_CASE("a sleeve that is let go before its end seals nothing", "[mobile][window][close]") {
  CloseRoom room;
  ShownWindow& shown = room.shown();
  CHECK(shown.drag("sealSleeve", slide(1)));
  CHECK(room.seals() == 0);
  CHECK(shown.touch("sealSleeve"));  // a touch is no slide
  CHECK(room.seals() == 0);
  CHECK(shown.touch("leaveClose"));
  CHECK(shown.find("closeTitle") == nullptr);
  CHECK_FALSE(shown.walk().undo_words().isEmpty());
}

TEST_CASE("a name is wiped and written again", "[mobile][window][close]") {
  CloseRoom room;
  ShownWindow& shown = room.shown();
  CHECK(shown.drag("signature", a_name));
  CHECK(shown.touch("wipe"));
  CHECK(shown.find("wipe") == nullptr);
  CHECK(shown.drag("signature", a_name));
  CHECK(shown.drag("sealSleeve", slide(4)));
  CHECK(room.seals() == 1);
}
