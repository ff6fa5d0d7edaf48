// What stands where in the Forecast room.

#include "tests/mobile/window/shown_window.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

QRectF on_the_glass(ShownWindow& shown, const QString& name) {
  QQuickItem* item = shown.find(name);
  INFO(name.toStdString());
  REQUIRE(item != nullptr);
  return item->mapRectToScene({0, 0, item->width(), item->height()});
}

}  // namespace

TEST_CASE("the bars of time left stand under each other, each as long as its years",
          "[mobile][window]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const Folder folder;
  ShownWindow shown(6, folder.path() / "register");
  shown.resize(size);
  shown.touch_drawing(0, 1100);
  CHECK(shown.touch("forecastTag"));
  const auto& rows = shown.rooms().forecast().time_left()->rows();
  REQUIRE(rows.size() == 2);
  for (int row = 0; row < 2; ++row) {
    const QString n = QString::number(row);
    const QRectF bar = on_the_glass(shown, "timeBar" + n);
    const QRectF fill = on_the_glass(shown, "timeFill" + n);
    CHECK(fill.left() == Approx(bar.left()));
    CHECK(fill.width() == Approx(bar.width() * rows[row].share));
    CHECK(rows[row].share > 0);
    CHECK_FALSE(on_the_glass(shown, "timeBand" + n).intersects(bar));
  }
  const QRectF upper = on_the_glass(shown, "timeBar0");
  const QRectF lower = on_the_glass(shown, "timeBar1");
  CHECK(upper.left() == lower.left());
  CHECK(upper.width() == lower.width());
  CHECK(upper.bottom() < lower.top());
  CHECK(rows[0].share <= rows[1].share);  // maintenance comes before the zinc is gone
}
