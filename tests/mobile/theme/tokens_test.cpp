#include "mobile/theme/tokens.h"

#include <QFontMetricsF>
#include <QMetaProperty>
#include <catch2/catch.hpp>
#include <cmath>
#include <string>

#include "mobile/theme/fonts.h"

namespace {

double channel(double value) {
  return value <= 0.03928 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

/// Relative luminance, 0 black to 1 white. Source: WCAG 2.2, definition "relative luminance".
double luminance(const QColor& colour) {
  return 0.2126 * channel(colour.redF()) + 0.7152 * channel(colour.greenF()) +
         0.0722 * channel(colour.blueF());
}

/// 1 to 21. Source: WCAG 2.2, definition "contrast ratio".
double contrast(const QColor& one, const QColor& other) {
  const double a = luminance(one);
  const double b = luminance(other);
  return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

QColor named(const Tokens& tokens, const char* name) {
  const QVariant value = tokens.property(name);
  REQUIRE(value.isValid());
  return value.value<QColor>();
}

}  // namespace

TEST_CASE("all text has a contrast of seven in both themes", "[mobile][theme]") {
  struct Pair {
    const char* ink;
    const char* ground;
  };
  const Pair pairs[] = {
      {"ink", "paper"},       {"ink", "sheet"},      {"ink", "shade"},       {"ink", "press"},
      {"ink", "tapeMeasure"}, {"ink", "chalkLight"}, {"ink2", "paper"},      {"ink2", "sheet"},
      {"ink2", "shade"},      {"ink2", "press"},     {"ink2", "chalkLight"}, {"chalk", "paper"},
      {"chalk", "sheet"},     {"actInk", "act"},     {"rust", "paper"},      {"rust", "sheet"},
      {"tapeInk", "tape"},    {"paper", "ink"},      {"sheet", "chalk"}};
  Tokens tokens;
  for (const bool dark : {false, true}) {
    tokens.set_dark(dark);
    for (const Pair& pair : pairs) {
      INFO(pair.ink << " on " << pair.ground << (dark ? ", dark" : ", light"));
      CHECK(contrast(named(tokens, pair.ink), named(tokens, pair.ground)) >= 7.0);
    }
  }
}

TEST_CASE("lines that carry meaning have a contrast of three", "[mobile][theme]") {
  Tokens tokens;
  for (const bool dark : {false, true}) {
    tokens.set_dark(dark);
    INFO((dark ? "dark" : "light"));
    CHECK(contrast(tokens.edge(), tokens.paper()) >= 3.0);
    CHECK(contrast(tokens.edge(), tokens.sheet()) >= 3.0);
    CHECK(contrast(tokens.ghost(), tokens.sheet()) >= 3.0);
    CHECK(contrast(tokens.band(), tokens.paper()) >= 3.0);
    for (const QColor& grade : tokens.palette().grade) {
      CHECK(contrast(grade, tokens.sheet()) >= 3.0);
    }
  }
}

TEST_CASE("more contrast makes second text ink and the last visit second text", "[mobile][theme]") {
  Tokens tokens;
  tokens.set_more_contrast(true);
  CHECK(tokens.ink2() == tokens.ink());
  CHECK(tokens.ghost() == tokens.palette().ink2);
}

TEST_CASE("keys keep their millimetres on every glass", "[mobile][theme]") {
  Tokens tokens;
  for (const double density : {3.78, 5.88, 8.83}) {
    tokens.set_pixels_per_mm(density);
    CHECK(tokens.touch_target() / density >= 10.99);
    CHECK(tokens.digit_key_width() / density >= 19.9);
    CHECK(tokens.digit_key_height() / density >= 18.9);
    CHECK(tokens.main_act_height() / density >= 13.0);
    CHECK(tokens.gap() / density == Approx(1.4));
  }
}

TEST_CASE("text grows in four steps and keys do not", "[mobile][theme]") {
  Tokens tokens;
  const double key = tokens.digit_key_height();
  const int steps[] = {18, 22, 25, 31};
  int place = 0;
  for (const double scale : {1.0, 1.2, 1.4, 1.7}) {
    tokens.set_text_scale(scale);
    CHECK(tokens.body_text() == steps[place++]);
    CHECK(tokens.digit_key_height() == key);
  }
  tokens.set_text_scale(1.33);
  CHECK(tokens.text_scale() == 1.4);
  CHECK(tokens.caption_text() >= 15);
}

TEST_CASE("less motion sets every movement to nothing and leaves waits", "[mobile][theme]") {
  Tokens tokens;
  CHECK(tokens.part_glide_time() == 180);
  tokens.set_less_motion(true);
  for (const char* name :
       {"dotDropTime", "partGlideTime", "postGlideTime", "boardTime", "undoTime", "homeTime"}) {
    CHECK(tokens.property(name).toInt() == 0);
  }
  CHECK(tokens.ink_bar_time() == 10'000);
}

TEST_CASE("every size and colour of the tokens is a real one", "[mobile][theme]") {
  const Tokens tokens;
  const QMetaObject* meta = tokens.metaObject();
  for (int place = meta->propertyOffset(); place < meta->propertyCount(); ++place) {
    const QMetaProperty property = meta->property(place);
    const QVariant value = property.read(&tokens);
    INFO(property.name());
    if (value.metaType() == QMetaType::fromType<QColor>()) CHECK(value.value<QColor>().isValid());
    if (value.metaType() == QMetaType::fromType<qreal>()) CHECK(value.toReal() > 0);
    if (value.metaType() == QMetaType::fromType<int>()) CHECK(value.toInt() > 0);
  }
}

TEST_CASE("the letters of the screens are not all of one width", "[mobile][theme]") {
  const kneerail::theme::Fonts& fonts = kneerail::theme::fonts();
  INFO(fonts.missing_package.toStdString());
  REQUIRE(fonts.missing_package.isEmpty());
  for (const QFont::Weight weight : {QFont::Normal, QFont::Bold}) {
    QFont font(fonts.text);
    font.setPixelSize(100);
    font.setWeight(weight);
    const QFontMetricsF metrics(font);
    CHECK(metrics.horizontalAdvance(QLatin1Char('i')) <
          metrics.horizontalAdvance(QLatin1Char('m')) / 2);
    for (const char digit : {'0', '1', '7'}) {
      CHECK(metrics.horizontalAdvance(QLatin1Char(digit)) == Approx(65).margin(1.5));
    }
  }
  CHECK(Tokens().text_family() == fonts.text);
}
