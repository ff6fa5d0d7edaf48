// The first start, the cautions, and how the screen looks in its person's hands.

#include <sstream>

#include "mobile/commands/cautions.h"
#include "mobile/elevation/elevation_item.h"
#include "tests/mobile/window/shown_window.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// As it is when nobody has used this tablet yet.
void start_first(ShownWindow& shown) {
  shown.rooms().store().keep_settings({{"cautions_read", 0}}, [](const Result<>&) {});
  shown.settle();
  shown.switch_off();
  shown.switch_on();
  shown.settle();
}

std::string without_breaks(std::string_view text) {
  std::istringstream words{std::string(text)};
  std::string all;
  for (std::string word; words >> word;) all += (all.empty() ? "" : " ") + word;
  return all;
}

}  // namespace

TEST_CASE("nobody walks before the cautions were before the eyes", "[mobile][window]") {
  ShownWindow shown;
  start_first(shown);
  CHECK(shown.find("walkTag") == nullptr);
  CHECK(shown.find("sitesTag") == nullptr);
  QQuickItem* cautions = shown.find("cautions");
  REQUIRE(cautions != nullptr);
  CHECK(cautions->height() > 0);
  CHECK(cautions->mapRectToScene(cautions->boundingRect()).bottom() <= shown.window().height());
  shown.cut_power(1);
  CHECK(shown.find("walkTag") == nullptr);

  CHECK(shown.touch("firstLeft"));
  CHECK(shown.tokens().left_handed());
  CHECK(shown.find("walkTag") != nullptr);
  shown.settle();
  shown.cut_power(1);
  CHECK(shown.find("firstLeft") == nullptr);
  CHECK(shown.tokens().left_handed());
}

TEST_CASE("screens and commands give the same cautions", "[mobile][window]") {
  CHECK(ThisTablet::caution_words().toStdString() == without_breaks(commands::cautions()));
}

TEST_CASE("a register nobody can write shows the cautions at each start", "[mobile][window]") {
  ShownWindow shown;
  start_first(shown);
  shown.disk().set_read_only(true);
  CHECK(shown.touch("firstRight"));
  CHECK(shown.find("walkTag") != nullptr);
  shown.settle();
  shown.disk().set_read_only(false);
  shown.cut_power(1);
  CHECK(shown.find("firstRight") != nullptr);
}

TEST_CASE("letters and contrast are as they were left", "[mobile][window]") {
  ShownWindow shown;
  CHECK(shown.touch("sitesTag"));
  CHECK(shown.touch("tabletCell"));
  CHECK(shown.touch("letters2"));
  CHECK(shown.touch("contrast1"));
  CHECK(shown.tokens().text_scale() == 1.4);
  CHECK(shown.tokens().ink2() == shown.tokens().ink());
  shown.settle();
  shown.cut_power(1);
  CHECK(shown.tokens().text_scale() == 1.4);
  CHECK(shown.tokens().more_contrast());
}

TEST_CASE("a card on the glass makes drawings true to scale", "[mobile][window]") {
  ShownWindow shown;
  const auto scale_text = [&] {
    auto* drawing = qobject_cast<ElevationItem*>(shown.find("elevation"));
    REQUIRE(drawing != nullptr);
    return drawing->short_scale_text();
  };
  CHECK(scale_text() == "about 1:25");
  const double before = shown.tokens().pixels_per_mm();
  CHECK(shown.touch("sitesTag"));
  CHECK(shown.touch("tabletCell"));
  CHECK(shown.touch("measureGlass"));
  CHECK(shown.touch("cardWider"));
  CHECK(shown.touch("cardWider"));
  CHECK(shown.touch("cardNarrower"));
  const double measured = shown.tokens().pixels_per_mm();
  CHECK(measured == Approx(before * 1.005).epsilon(1e-4));
  CHECK(shown.touch("cardDone"));
  CHECK(shown.touch("leaveTablet"));
  CHECK(shown.touch("walkTag"));
  CHECK(scale_text() == "1:25");
  shown.cut_power(1);
  CHECK(shown.tokens().pixels_per_mm() == Approx(measured).margin(0.001));
  CHECK(scale_text() == "1:25");
}

TEST_CASE("F1 shows the cautions from every room and leads back", "[mobile][window]") {
  ShownWindow shown;
  for (const char* tag : {"walkTag", "findingsTag", "forecastTag"}) {
    CHECK(shown.touch(tag));
    QTest::keyClick(&shown.window(), Qt::Key_F1);
    shown.settle();
    CHECK(shown.find("cautions") != nullptr);
    CHECK(shown.touch("leaveTablet"));
    CHECK(shown.find("cautions") == nullptr);
    CHECK(shown.find(tag)->property("here").toBool());
  }
}
