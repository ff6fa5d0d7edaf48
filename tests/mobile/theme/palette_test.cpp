#include "mobile/theme/palette.h"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <string>

namespace kneerail::theme {

namespace {

using Linear = std::array<double, 3>;

Linear linear(const QColor& color) {
  Linear out{};
  const std::array<double, 3> parts = {static_cast<double>(color.redF()),
                                       static_cast<double>(color.greenF()),
                                       static_cast<double>(color.blueF())};
  for (std::size_t i = 0; i < 3; ++i) {
    out[i] = parts[i] <= 0.04045 ? parts[i] / 12.92 : std::pow((parts[i] + 0.055) / 1.055, 2.4);
  }
  return out;
}

/// 1 to 21. Source: WCAG 2.2, definition "contrast ratio".
double contrast(const QColor& one, const QColor& other) {
  const auto luminance = [](const QColor& color) {
    const Linear rgb = linear(color);
    return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
  };
  const double a = luminance(one);
  const double b = luminance(other);
  return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

using Matrix = std::array<std::array<double, 3>, 3>;

constexpr Matrix as_seen = {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
// Full loss of one kind of cone, in linear light. Source: Machado, Oliveira and Fernandes 2009,
// IEEE TVCG 15(6), severity 1.0.
constexpr Matrix protanopia = {{{0.152286, 1.052583, -0.204868},
                                {0.114503, 0.786281, 0.099216},
                                {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix deuteranopia = {{{0.367322, 0.860646, -0.227968},
                                  {0.280085, 0.672501, 0.047413},
                                  {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix tritanopia = {{{1.255528, -0.076749, -0.178779},
                                {-0.078411, 0.930809, 0.147602},
                                {0.004733, 0.691367, 0.303900}}};

/// CIE 1976 L*a*b* of a colour as an eye sees it; white point D65.
std::array<double, 3> lab(const QColor& color, const Matrix& eye) {
  const Linear rgb = linear(color);
  Linear seen{};
  for (std::size_t row = 0; row < 3; ++row) {
    for (std::size_t i = 0; i < 3; ++i) seen[row] += eye[row][i] * rgb[i];
    seen[row] = std::clamp(seen[row], 0.0, 1.0);
  }
  const double x = 0.4124564 * seen[0] + 0.3575761 * seen[1] + 0.1804375 * seen[2];
  const double y = 0.2126729 * seen[0] + 0.7151522 * seen[1] + 0.0721750 * seen[2];
  const double z = 0.0193339 * seen[0] + 0.1191920 * seen[1] + 0.9503041 * seen[2];
  const auto f = [](double t) {
    return t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116;
  };
  const double fx = f(x / 0.95047);
  const double fy = f(y);
  const double fz = f(z / 1.08883);
  return {116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)};
}

double distance(const QColor& one, const QColor& other, const Matrix& eye) {
  const auto a = lab(one, eye);
  const auto b = lab(other, eye);
  return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

double least_of_grades(const Palette& palette, const Matrix& eye) {
  double least = 1e9;
  for (std::size_t a = 0; a < palette.grade.size(); ++a) {
    for (std::size_t b = a + 1; b < palette.grade.size(); ++b) {
      least = std::min(least, distance(palette.grade[a], palette.grade[b], eye));
    }
  }
  return least;
}

}  // namespace

TEST_CASE("the contrasts of the palette are those that it was chosen for", "[theme]") {
  struct Pair {
    QColor Palette::*ink;
    QColor Palette::*ground;
    double light;
    double dark;
  };
  const Pair pairs[] = {{&Palette::ink, &Palette::paper, 17.0, 16.8},
                        {&Palette::ink, &Palette::sheet, 18.3, 14.9},
                        {&Palette::ink, &Palette::shade, 15.5, 14.1},
                        {&Palette::ink2, &Palette::paper, 9.3, 10.6},
                        {&Palette::ink2, &Palette::sheet, 10.0, 9.5},
                        {&Palette::ink2, &Palette::shade, 8.5, 9.0},
                        {&Palette::ink2, &Palette::chalk_light, 8.1, 7.3},
                        {&Palette::chalk, &Palette::paper, 8.5, 11.2},
                        {&Palette::chalk, &Palette::sheet, 9.2, 10.0},
                        {&Palette::act_ink, &Palette::act, 11.9, 10.3},
                        {&Palette::rust, &Palette::paper, 8.0, 8.9},
                        {&Palette::rust, &Palette::sheet, 8.6, 7.9},
                        {&Palette::tape_ink, &Palette::tape, 12.0, 12.5},
                        {&Palette::ink, &Palette::tape_measure, 16.4, 11.2},
                        {&Palette::edge, &Palette::paper, 12.1, 13.7},
                        {&Palette::ghost, &Palette::sheet, 3.7, 5.8},
                        {&Palette::band, &Palette::paper, 3.3, 5.9}};
  int row = 0;
  for (const Pair& pair : pairs) {
    INFO("row " << row++);
    const Palette& light = palette(Theme::light);
    const Palette& dark = palette(Theme::dark);
    CHECK(contrast(light.*pair.ink, light.*pair.ground) == Approx(pair.light).margin(0.06));
    CHECK(contrast(dark.*pair.ink, dark.*pair.ground) == Approx(pair.dark).margin(0.06));
  }
}

TEST_CASE("the glyphs of the grades stand out from what is behind them", "[theme]") {
  const double measured[2][5] = {{13.2, 7.4, 7.2, 11.4, 18.3}, {13.0, 8.7, 10.5, 6.2, 14.1}};
  for (const Theme theme : {Theme::light, Theme::dark}) {
    const Palette& of = palette(theme);
    for (std::size_t grade = 0; grade < 5; ++grade) {
      INFO((theme == Theme::dark ? "dark, grade " : "light, grade ") << grade + 1);
      CHECK(contrast(of.grade[grade], of.sheet) ==
            Approx(measured[theme == Theme::dark ? 1 : 0][grade]).margin(0.06));
    }
  }
}

TEST_CASE("grades, chalk and rust are told apart with any kind of colour vision", "[theme]") {
  constexpr double hard_to_tell = 5;  // CIE 1976
  struct Eye {
    const char* name;
    const Matrix& matrix;
    double light;
    double dark;
  };
  const Eye eyes[] = {{"all cones", as_seen, 16.5, 14.5},
                      {"protanopia", protanopia, 16.6, 10.3},
                      {"deuteranopia", deuteranopia, 13.6, 13.3},
                      {"tritanopia", tritanopia, 16.5, 14.7}};
  for (const Eye& eye : eyes) {
    INFO(eye.name);
    CHECK(least_of_grades(palette(Theme::light), eye.matrix) == Approx(eye.light).margin(0.3));
    CHECK(least_of_grades(palette(Theme::dark), eye.matrix) == Approx(eye.dark).margin(0.3));
    for (const Theme theme : {Theme::light, Theme::dark}) {
      const Palette& of = palette(theme);
      CHECK(distance(of.chalk, of.rust, eye.matrix) > 5 * hard_to_tell);
      CHECK(distance(of.chalk, of.ink, eye.matrix) > 4 * hard_to_tell);
    }
  }
}

}  // namespace kneerail::theme
