#include "mobile/theme/tokens.h"

#include <QFontDatabase>
#include <QGuiApplication>
#include <QStringList>
#include <cmath>

namespace {

/// The family itself, or the system's own when it is not on this machine; then `missing` takes the
/// package that brings it.
QString family_or_system(const QString& family, const QString& package, QStringList& missing) {
  if (QFontDatabase::hasFamily(family)) return family;
  if (!missing.contains(package)) missing.append(package);
  return QFontDatabase::systemFont(QFontDatabase::GeneralFont).family();
}

}  // namespace

Tokens::Tokens(QObject* parent) : QObject(parent) {
  if (qGuiApp == nullptr) return;  // fonts are looked up with a screen only
  QStringList missing;
  text_family_ = family_or_system(QStringLiteral("B612"), QStringLiteral("fonts-b612"), missing);
  digest_family_ =
      family_or_system(QStringLiteral("B612 Mono"), QStringLiteral("fonts-b612"), missing);
  if (!missing.isEmpty()) {
    missing_fonts_ = tr("A font is missing. Letters come from another one until the package %1 is "
                        "installed.")
                         .arg(missing.join(QStringLiteral(", ")));
  }
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
