#include "mobile/theme/tokens.h"

#include <QGuiApplication>
#include <QLocale>
#include <QQmlEngine>
#include <cmath>

#include "mobile/theme/fonts.h"

Tokens::Tokens(QObject* parent) : QObject(parent) {
  if (qGuiApp == nullptr) return;  // fonts are looked up with a screen only
  const kneerail::theme::Fonts& fonts = kneerail::theme::fonts();
  text_family_ = fonts.text;
  digest_family_ = fonts.digest;
  if (fonts.missing_package.isEmpty()) return;
  missing_fonts_ = tr("A font is missing. Letters come from another one until the package %1 is "
                      "installed.")
                       .arg(fonts.missing_package);
}

Tokens* Tokens::of(const QObject& item) {
  QQmlEngine* engine = qmlEngine(&item);
  if (engine == nullptr) return nullptr;
  return engine->singletonInstance<Tokens*>(qmlTypeId("Kneerail.Ui", 1, 0, "Tokens"));
}

void Tokens::set_dark(bool dark) {
  if (dark == this->dark()) return;
  theme_ = dark ? kneerail::theme::Theme::dark : kneerail::theme::Theme::light;
  emit themeChanged();
}

void Tokens::set_more_contrast(bool more) {
  if (more == more_contrast_) return;
  more_contrast_ = more;
  emit themeChanged();
}

void Tokens::set_left_handed(bool left) {
  if (left == left_handed_) return;
  left_handed_ = left;
  emit handChanged();
}

void Tokens::set_less_motion(bool less) {
  if (less == less_motion_) return;
  less_motion_ = less;
  emit motionChanged();
}

void Tokens::set_sounds(bool sounds) {
  if (sounds == sounds_) return;
  sounds_ = sounds;
  emit soundsChanged();
}

void Tokens::set_sound_is_there(bool there) {
  if (there == sound_is_there_) return;
  sound_is_there_ = there;
  emit soundsChanged();
}

void Tokens::set_text_scale(qreal scale) {
  qreal nearest = 1;
  for (const qreal offered : {1.0, 1.2, 1.4, 1.7}) {
    if (std::abs(offered - scale) < std::abs(nearest - scale)) nearest = offered;
  }
  if (qFuzzyCompare(nearest, text_scale_)) return;
  text_scale_ = nearest;
  emit sizesChanged();
}

void Tokens::set_pixels_per_mm(qreal pixels) {
  if (pixels <= 0 || qFuzzyCompare(pixels, pixels_per_mm_)) return;
  pixels_per_mm_ = pixels;
  emit sizesChanged();
}

bool Tokens::words_grow() const {
  const QLocale::Language language = QLocale().language();
  return text_scale_ > 1 || (language != QLocale::English && language != QLocale::C);
}

void Tokens::set_size_measured(bool measured) {
  if (measured == size_measured_) return;
  size_measured_ = measured;
  emit sizesChanged();
}
