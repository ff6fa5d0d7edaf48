#include "mobile/elevation/run_line_item.h"

#include <catch2/catch.hpp>

#include "mobile/elevation/band_item.h"
#include "mobile/elevation/tape_item.h"
#include "tests/mobile/shown_elevation.h"

namespace kneerail::tests {

namespace {

/// A run line under an elevation, in one window.
class ShownLine : public ShownElevation {
 public:
  ShownLine() : ShownElevation(made_run({.posts = 151, .first_label = 1}), {876, 672}) {
    item->setSize({876, 580});
    line->setParent(&window);
    line->setParentItem(window.contentItem());
    line->use_tokens(&tokens);
    line->setPosition({0, 580});
    line->setSize({876, 92});
    line->set_picture(&picture);
    line->set_view(item);
    picture.choose_post(117);
    frame();
  }

  [[nodiscard]] QPoint post_at(int post) const { return {qRound(line->xOfPost(post)), 630}; }

  RunLineItem* line = new RunLineItem;
};

}  // namespace

TEST_CASE("a finger on the run line takes the elevation along and says the post", "[line]") {
  ShownLine shown;
  QSignalSpy dragged(shown.line, &RunLineItem::draggedTo);
  QSignalSpy touched(shown.line, &RunLineItem::postTouched);
  shown.press({shown.post_at(20)}, 2000);
  CHECK(shown.item->centre_chainage() == Approx(20 * 1500).margin(750));
  shown.move({shown.post_at(60)}, 2100);
  CHECK(shown.item->centre_chainage() == Approx(60 * 1500).margin(750));
  shown.release({shown.post_at(60)}, 2200);
  CHECK(dragged.count() == 2);
  REQUIRE(touched.count() == 1);
  CHECK(touched[0][0].toInt() == 60);
}

TEST_CASE("a post that was seen meanwhile is solid on the line", "[line]") {
  ShownLine shown;
  RunSheet sheet = made_run({.posts = 151, .first_label = 1});
  const int open = 115;
  REQUIRE(sheet.posts[open].state == PostState::open);
  const auto post_is_solid = [&] {
    shown.frame();
    return shown.window.grabWindow().pixelColor(qRound(shown.line->xOfPost(open)), 580 + 51) ==
           shown.tokens.ink();
  };
  CHECK_FALSE(post_is_solid());
  sheet.posts[open].state = PostState::seen;
  shown.show(sheet);
  CHECK(post_is_solid());
}

TEST_CASE("a stretch that is marked stands behind its posts, from either end", "[line]") {
  ShownLine shown;
  const auto ground_at = [&](int post) {
    return shown.window.grabWindow().pixelColor(qRound(shown.line->xOfPost(post)), 580 + 10);
  };
  CHECK(ground_at(15) != shown.tokens.chalk_light());
  shown.line->set_stretch_from(20);
  shown.line->set_stretch_to(10);
  shown.frame();
  CHECK(ground_at(15) == shown.tokens.chalk_light());
  CHECK(ground_at(20) == shown.tokens.chalk_light());
  CHECK(ground_at(40) != shown.tokens.chalk_light());
}

TEST_CASE("the run line speaks as a slider", "[line]") {
  ShownLine shown;
  CHECK(shown.line->open() > 0);
  CHECK(shown.line->spoken_name() == QString("post 118 of 151, %1 open").arg(shown.line->open()));
  QSignalSpy touched(shown.line, &RunLineItem::postTouched);
  shown.line->stepPost(1);
  shown.line->stepPost(-1);
  REQUIRE(touched.count() == 2);
  CHECK(touched[0][0].toInt() == 118);
  CHECK(touched[1][0].toInt() == 116);
}

TEST_CASE("the window on the run line is as wide as the elevation's view", "[line]") {
  ShownLine shown;
  const QRectF window = shown.line->window_rect();
  CHECK(window.center().x() == Approx(shown.line->xOfPost(117)).margin(1));
  const double post_px = shown.line->xOfPost(1) - shown.line->xOfPost(0);
  const double view_mm = shown.item->right_chainage() - shown.item->left_chainage();
  CHECK(window.width() == Approx(view_mm / 1500 * post_px).margin(1));
}

TEST_CASE("panning the elevation does not draw the run line again", "[line]") {
  ShownLine shown;
  for (int n = 0; n < 4; ++n) shown.frame();
  const int paints = shown.line->paints();
  shown.item->set_centre_chainage(100000);
  shown.frame();
  CHECK(shown.line->paints() == paints);
}

TEST_CASE("a run line of nothing and of one post can be touched", "[line]") {
  ShownLine shown;
  shown.show(RunSheet{});
  shown.press({{300, 630}}, 2000);
  shown.release({{300, 630}}, 2100);
  CHECK(shown.line->spoken_name() == "no post");
  shown.show(made_run({.posts = 1}));
  shown.press({{300, 630}}, 3000);
  shown.release({{300, 630}}, 3100);
  CHECK(shown.line->spoken_name() == "post 1 of 1, 0 open");
}

TEST_CASE("bands of two runs are as long as their runs at one scale", "[line]") {
  Tokens tokens;
  RunPicture longer;
  RunPicture shorter;
  longer.show(std::make_shared<RunSheet>(made_run({.posts = 61})));
  shorter.show(std::make_shared<RunSheet>(made_run({.posts = 31})));
  RunBandItem one;
  RunBandItem two;
  for (RunBandItem* band : {&one, &two}) {
    band->use_tokens(&tokens);
    band->set_pixels_per_metre(4);
  }
  one.set_picture(&longer);
  two.set_picture(&shorter);
  CHECK(one.implicitWidth() - two.implicitWidth() == Approx(30 * 1.5 * 4));
  CHECK(one.spoken_name() == "Made wall, 61 posts");
}

TEST_CASE("the tape moves with the elevation without being made again", "[line]") {
  ShownElevation shown(made_run({.posts = 151}));
  auto* tape = new TapeItem;
  tape->setParent(&shown.window);
  tape->setParentItem(shown.window.contentItem());
  tape->use_tokens(&shown.tokens);
  tape->setSize({876, 38});
  tape->set_view(shown.item);
  shown.item->set_centre_chainage(100000);
  shown.frame();
  // The thick tick of 100 m stands in the middle, ink on yellow.
  const auto ink_at = [&](int x_px) {
    return shown.window.grabWindow().pixelColor(x_px, 30).lightness() < 100;
  };
  CHECK(ink_at(438));
  shown.item->set_centre_chainage(100000 - 100 / shown.item->view().scale());
  shown.frame();
  CHECK(ink_at(538));
}

}  // namespace kneerail::tests
