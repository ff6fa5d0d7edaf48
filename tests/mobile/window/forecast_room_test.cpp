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
  REQUIRE(rows.size() == 4);  // maintenance, zinc, torque, grade
  for (int row = 0; row < 2; ++row) {
    const QString n = QString::number(row);
    REQUIRE(rows[row].timed);
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

TEST_CASE("every limit of a part has its row, and the one that comes first its mark",
          "[mobile][window]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const Folder folder;
  ShownWindow shown(6, folder.path() / "register");
  shown.resize(size);
  shown.touch_drawing(0, 1100);
  CHECK(shown.touch("forecastTag"));
  const auto& rows = shown.rooms().forecast().time_left()->rows();
  QStringList names;
  int first = 0;
  for (int row = 0; row < rows.size(); ++row) {
    INFO(rows[row].spoken.toStdString());
    names << rows[row].name;
    first += rows[row].first ? 1 : 0;
    const QString n = QString::number(row);
    CHECK((shown.find("timeMark" + n) != nullptr) == !rows[row].mark.isEmpty());  // seen
    CHECK((shown.find("timeBar" + n) != nullptr) == rows[row].timed);
    // Nothing stands over the keys or off the glass.
    const QRectF band = on_the_glass(shown, "timeBand" + n);
    CHECK(band.bottom() <= size.height());
    CHECK_FALSE(band.intersects(on_the_glass(shown, "nextPost")));
    CHECK_FALSE(band.intersects(on_the_glass(shown, "walkHere")));
    if (row > 0)
      CHECK(band.top() >= on_the_glass(shown, "timeBand" + QString::number(row - 1)).bottom());
  }
  CHECK(names.join("; ").toStdString() ==
        "First maintenance; Zinc gone; Torque under minimum; Grade 5");
  CHECK(first == 1);
}
