// The gauge's cell of the title block: its zero, its check foil, and a number nobody waited for.

#include "tests/mobile/window/shown_window.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr int posts = 4;

}  // namespace

TEST_CASE("the gauge is zeroed at its cell, and read on a foil", "[mobile][window]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  ShownWindow shown(posts);
  shown.resize(size);
  CHECK(shown.text_of("gaugeCell") == "zero it soon");
  CHECK(shown.touch("gaugeCell"));
  CHECK(shown.text_of("gaugeFacts").contains("zero it soon"));
  CHECK(shown.touch("zeroGauge"));
  CHECK(shown.text_of("mainAct") == "Back");
  CHECK(shown.touch("digit0"));
  CHECK(shown.text_of("mainAct") == "Keep");  // a number that is begun is one
  CHECK(shown.touch("mainAct"));
  CHECK(shown.text_of("gaugeCell") == "0 min ago");
  CHECK(shown.find("zeroGauge") == nullptr);
  CHECK(shown.count("SELECT count(*) FROM instrument_check WHERE what = 1") == 1);

  CHECK(shown.touch("gaugeCell"));
  CHECK(shown.touch("checkFoil"));
  shown.type("500");
  shown.keys("51\n", 2);  // the gauge types it
  shown.type("52");
  CHECK(shown.text_of("checkSlot1") == "51");
  CHECK(shown.touch("undo"));
  CHECK(shown.text_of("checkSlot2").isEmpty());
  CHECK(shown.touch("mainAct"));
  CHECK(shown.count("SELECT count(*) FROM instrument_check WHERE what = 2 AND reference = 500") ==
        1);
  CHECK(shown.find("checkSlot0") == nullptr);

  CHECK(shown.touch("undo"));  // the foil's record
  CHECK(shown.count("SELECT count(*) FROM instrument_check WHERE what = 2 AND voided_by IS NULL") ==
        0);
}

TEST_CASE("another room keeps what the gauge read", "[mobile][window]") {
  ShownWindow shown(posts);
  CHECK(shown.touch("gaugeCell"));
  CHECK(shown.touch("zeroGauge"));
  CHECK(shown.touch("sign"));
  CHECK(shown.touch("digit1"));
  CHECK(shown.touch("sitesTag"));
  CHECK(shown.count("SELECT count(*) FROM instrument_check WHERE what = 1") == 1);
  CHECK(shown.touch("walkTag"));
  CHECK(shown.find("zeroGauge") == nullptr);
}

TEST_CASE("a number that waits is thrown away by one touch", "[mobile][window]") {
  ShownWindow shown(posts);
  shown.keys("76\n", 2);
  CHECK(shown.touch("throwCell"));
  CHECK(shown.find("throwCell") == nullptr);
  CHECK(shown.find("messageBar") == nullptr);
  CHECK(shown.touch("barAct"));
  CHECK(shown.text_of("gaugeCell").contains("76 µm"));
  CHECK(shown.touch("throwCell"));
  CHECK(shown.touch("undo"));
  CHECK(shown.text_of("gaugeCell").contains("76 µm"));
}
