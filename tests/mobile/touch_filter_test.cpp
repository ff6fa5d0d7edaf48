#include "mobile/elevation/touch_filter.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <initializer_list>

namespace kneerail::elevation {

namespace {

using What = Gesture::What;

/// Glass of 10 pixels in a millimetre, cells of 20 mm side by side.
class Glass {
 public:
  Glass() { filter_.set_pixels_per_mm(10); }

  Glass& points(std::int64_t t_ms, std::initializer_list<TouchPoint> down) {
    return keep(filter_.points(std::span(down.begin(), down.size()), t_ms, pointer));
  }
  Glass& at(std::int64_t t_ms, double x_mm, double y_mm = 0) {
    return points(t_ms, {{1, x_mm * 10, y_mm * 10}});
  }
  Glass& up(std::int64_t t_ms) { return points(t_ms, {}); }
  Glass& wait_until(std::int64_t t_ms) { return keep(filter_.time(t_ms)); }
  Glass& take_away() {
    filter_.taken_away();
    return *this;
  }
  Glass& turn() {
    filter_.cancel();
    return *this;
  }

  std::vector<What> said() const {
    std::vector<What> what;
    for (const Gesture& gesture : gestures) what.push_back(gesture.what);
    return what;
  }

  Pointer pointer = Pointer::finger;
  double cells_shifted_px = 0;
  std::vector<Gesture> gestures;

 private:
  Glass& keep(const std::vector<Gesture>& more) {
    gestures.insert(gestures.end(), more.begin(), more.end());
    return *this;
  }

  TouchFilter filter_{[this](double x_px, double) {
    return static_cast<std::int64_t>(std::floor((x_px + cells_shifted_px) / 200));
  }};
};

using Said = std::vector<What>;

}  // namespace

TEST_CASE("a finger down and up in one cell is a touch where it went down", "[touch]") {
  Glass glass;
  glass.at(0, 5, 7).at(60, 6, 7).up(120);
  REQUIRE(glass.said() == Said{What::touch});
  CHECK(glass.gestures[0].x_px == 50);
  CHECK(glass.gestures[0].y_px == 70);
}

TEST_CASE("a drop that stays under 40 ms is no touch, a mouse click that short is", "[touch]") {
  CHECK(Glass().at(0, 5).up(39).said().empty());
  CHECK(Glass().at(0, 5).up(40).said() == Said{What::touch});
  Glass mouse;
  mouse.pointer = Pointer::mouse;
  CHECK(mouse.at(0, 5).up(5).said() == Said{What::touch});
}

TEST_CASE("a finger that stays over 1.5 s holds, and holds once", "[touch]") {
  CHECK(Glass().at(0, 5).up(1500).said() == Said{What::touch});
  CHECK(Glass().at(0, 5).up(1501).said() == Said{What::hold});
  CHECK(Glass().at(0, 5).wait_until(1500).said().empty());
  CHECK(Glass().at(0, 5).wait_until(1501).up(1600).said() == Said{What::hold});
}

TEST_CASE("a finger that comes up in the next cell touched neither", "[touch]") {
  CHECK(Glass().at(0, 19).at(50, 21).up(100).said().empty());
  Glass moved;
  moved.at(0, 19).cells_shifted_px = 50;
  CHECK(moved.up(100).said().empty());
}

TEST_CASE("a finger that moves 4 mm drags from where it went down", "[touch]") {
  Glass glass;
  glass.at(0, 5).at(100, 8.9).at(200, 9).at(900, 11).up(1200);
  REQUIRE(glass.said() == Said{What::pan, What::pan});
  CHECK(glass.gestures[0].dx_px == Approx(40));
  CHECK(glass.gestures[1].dx_px == Approx(20));
}

TEST_CASE("a quick drag is a swipe, a slow one or one that stopped is not", "[touch]") {
  Glass quick;
  quick.at(0, 50).at(30, 42).at(60, 34).at(90, 26).up(95);
  REQUIRE(quick.gestures.back().what == What::swipe);
  CHECK(quick.gestures.back().direction == 1);
  Glass back;
  back.at(0, 26).at(30, 34).at(60, 42).at(90, 50).up(95);
  CHECK(back.gestures.back().direction == -1);
  CHECK(Glass().at(0, 50).at(300, 42).at(600, 34).at(900, 26).up(905).said().back() == What::pan);
  CHECK(Glass().at(0, 50).at(30, 42).at(60, 34).at(90, 26).up(300).said().back() == What::pan);
  CHECK(Glass().at(0, 50, 0).at(30, 44, 8).at(60, 38, 16).up(65).said().back() == What::pan);
}

TEST_CASE("two fingers pan and pinch together", "[touch]") {
  Glass glass;
  glass.points(0, {{1, 100, 100}});
  glass.points(20, {{1, 100, 100}, {2, 200, 100}});
  glass.points(40, {{1, 90, 110}, {2, 240, 110}});
  glass.points(60, {{2, 240, 110}}).up(80);
  REQUIRE(glass.said() == Said{What::pinch, What::settle});
  CHECK(glass.gestures[0].factor == Approx(1.5));
  CHECK(glass.gestures[0].x_px == Approx(165));
  CHECK(glass.gestures[0].dx_px == Approx(15));
  CHECK(glass.gestures[0].dy_px == Approx(10));
}

TEST_CASE("three points are rain: nothing counts until 400 ms after they have gone", "[touch]") {
  Glass glass;
  glass.points(0, {{1, 50, 0}});
  glass.points(50, {{1, 50, 0}, {2, 300, 0}, {3, 500, 0}});
  glass.points(90, {{1, 50, 0}}).up(100);
  CHECK(glass.said() == Said{What::palm});
  CHECK(glass.at(400, 5).up(550).said() == Said{What::palm});  // went down in the rest
  CHECK(glass.at(600, 5).up(700).said() == Said{What::palm, What::touch});
}

TEST_CASE("a point wider than 30 mm is a palm", "[touch]") {
  CHECK(Glass().points(0, {{1, 50, 0, 300}}).up(100).said() == Said{What::touch});
  CHECK(Glass().points(0, {{1, 50, 0, 301}}).up(100).said() == Said{What::palm});
  CHECK(Glass().at(0, 5).points(50, {{1, 50, 0, 400}}).up(100).said() == Said{What::palm});
}

TEST_CASE("ten touches in 100 ms are rain drops", "[touch]") {
  Glass glass;
  for (std::int64_t n = 0; n < 10; ++n) glass.at(n * 10, 5).up(n * 10 + 9);
  CHECK(glass.said().empty());
}

TEST_CASE("what touches while the window turns counts for nothing, what comes after does",
          "[touch]") {
  Glass glass;
  glass.at(0, 5).turn().at(60, 5).up(120);
  CHECK(glass.said().empty());
  CHECK(glass.at(200, 5).up(300).said() == Said{What::touch});
}

TEST_CASE("a touch that is taken away says nothing, and a rest goes on", "[touch]") {
  Glass glass;
  glass.at(0, 5).take_away().at(500, 5).up(600);
  CHECK(glass.said() == Said{What::touch});
  Glass rain;
  rain.points(0, {{1, 50, 0}, {2, 300, 0}, {3, 500, 0}}).take_away();
  CHECK(rain.at(300, 5).up(380).said() == Said{What::palm});
  CHECK(rain.at(401, 5).up(500).said() == Said{What::palm, What::touch});
}

TEST_CASE("another finger in the place of the first is no drag", "[touch]") {
  Glass glass;
  glass.points(0, {{1, 50, 0}}).points(50, {{2, 500, 0}}).up(100);
  CHECK(glass.said().empty());
}

}  // namespace kneerail::elevation
