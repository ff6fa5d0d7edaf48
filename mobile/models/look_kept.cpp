#include "mobile/models/look_kept.h"

#include <QGuiApplication>
#include <QScreen>
#include <cmath>

namespace {

constexpr const char* dark_name = "screen_dark";
constexpr const char* contrast_name = "screen_more_contrast";
constexpr const char* left_name = "screen_left_handed";
constexpr const char* still_name = "screen_less_motion";
constexpr const char* silent_name = "screen_silent";
constexpr const char* text_name = "screen_text_percent";
constexpr const char* glass_name = "screen_pixels_per_m";  // 0: nobody measured it

constexpr double as_drawn_percent = 100;
constexpr double mm_per_m = 1000;

/// What the screen says of itself, where it can be believed.
double said_by_the_screen() {
  const QScreen* screen = qGuiApp == nullptr ? nullptr : QGuiApplication::primaryScreen();
  if (screen == nullptr) return kneerail::theme::drawn_pixels_per_mm;
  constexpr double mm_per_inch = 25.4;
  return kneerail::theme::pixels_per_mm(screen->physicalDotsPerInch() / mm_per_inch,
                                        screen->size());
}

}  // namespace

LookKept::LookKept(StoreLink& store, Tokens& tokens, QObject* parent)
    : QObject(parent), store_(store), tokens_(tokens) {
  restore();
  connect(&tokens, &Tokens::motionChanged, this, &LookKept::keep);
  connect(&tokens, &Tokens::soundsChanged, this, &LookKept::keep);
  connect(&tokens, &Tokens::themeChanged, this, &LookKept::keep);
  connect(&tokens, &Tokens::handChanged, this, &LookKept::keep);
  connect(&tokens, &Tokens::sizesChanged, this, &LookKept::keep);
}

void LookKept::restore() {
  const auto number = [this](const char* name) -> std::int64_t {
    const auto value = kneerail::setting(store_.reader().tables(), name);
    return value ? value->value_or(0) : 0;
  };
  tokens_.set_dark(number(dark_name) != 0);
  tokens_.set_more_contrast(number(contrast_name) != 0);
  tokens_.set_left_handed(number(left_name) != 0);
  tokens_.set_less_motion(number(still_name) != 0);
  tokens_.set_sounds(number(silent_name) == 0);
  tokens_.set_text_scale(static_cast<double>(number(text_name)) / as_drawn_percent);
  const double measured = static_cast<double>(number(glass_name)) / mm_per_m;
  tokens_.set_pixels_per_mm(measured > 0 ? measured : said_by_the_screen());
  tokens_.set_size_measured(measured > 0);
}

void LookKept::keep() {
  if (!store_.writable()) return;
  const double measured = tokens_.size_measured() ? tokens_.pixels_per_mm() : 0;
  store_.keep_settings({{dark_name, tokens_.dark() ? 1 : 0},
                        {contrast_name, tokens_.more_contrast() ? 1 : 0},
                        {left_name, tokens_.left_handed() ? 1 : 0},
                        {still_name, tokens_.less_motion() ? 1 : 0},
                        {silent_name, tokens_.sounds() ? 0 : 1},
                        {text_name, std::llround(tokens_.text_scale() * as_drawn_percent)},
                        {glass_name, std::llround(measured * mm_per_m)}},
                       [](const kneerail::Result<>&) {});
}
