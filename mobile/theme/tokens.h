#pragma once

// Tokens: every size, colour, text size and duration of the screens, by name. Sizes are millimetres
// on the glass, turned into pixels by the screen's density.

#include <QtQml/qqmlregistration.h>
#include <QColor>
#include <QObject>

#include "mobile/theme/palette.h"

class Tokens : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(bool dark READ dark WRITE set_dark NOTIFY themeChanged)
  Q_PROPERTY(qreal pixelsPerMm READ pixels_per_mm WRITE set_pixels_per_mm NOTIFY sizesChanged)
  Q_PROPERTY(QColor paper READ paper NOTIFY themeChanged)
  Q_PROPERTY(QColor ink READ ink NOTIFY themeChanged)

 public:
  explicit Tokens(QObject* parent = nullptr) : QObject(parent) {}

  [[nodiscard]] bool dark() const { return theme_ == kneerail::theme::Theme::dark; }
  void set_dark(bool dark);
  [[nodiscard]] qreal pixels_per_mm() const { return pixels_per_mm_; }
  void set_pixels_per_mm(qreal pixels);
  [[nodiscard]] const kneerail::theme::Palette& palette() const {
    return kneerail::theme::palette(theme_);
  }
  [[nodiscard]] QColor paper() const { return palette().paper; }
  [[nodiscard]] QColor ink() const { return palette().ink; }

 signals:
  void themeChanged();
  void sizesChanged();

 private:
  kneerail::theme::Theme theme_ = kneerail::theme::Theme::light;
  qreal pixels_per_mm_ = 5.88;
};
