#pragma once

// The grade glyph for QML, on keys and in lists: the same geometry as on the drawings. Painted with
// smooth edges under every renderer, because keys stand still.

#include <QtQml/qqmlregistration.h>
#include <QColor>
#include <QPointer>
#include <memory>

#include "mobile/controls/painted_item.h"
#include "mobile/elevation/shapes.h"
#include "mobile/theme/tokens.h"

class GradeGlyph : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(int grade MEMBER grade_ NOTIFY lookChanged)         ///< 0: not yet graded
  Q_PROPERTY(int lastTime MEMBER last_time_ NOTIFY lookChanged)  ///< in it, while not yet graded
  Q_PROPERTY(qreal radius MEMBER radius_ NOTIFY lookChanged)  ///< px, of the glyph without ground
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY lookChanged)  ///< transparent: the grade's own colour
  Q_PROPERTY(bool ground MEMBER ground_ NOTIFY lookChanged)  ///< a disc of sheet behind it

 public:
  explicit GradeGlyph(QQuickItem* parent = nullptr);
  ~GradeGlyph() override;

  /// Tests without an engine hand in the tokens; otherwise they are the engine's own.
  void use_tokens(Tokens* tokens);
  void paint(QPainter* painter) override;

 signals:
  void lookChanged();

 protected:
  void componentComplete() override;

 private:
  [[nodiscard]] const Tokens& tokens() const;
  [[nodiscard]] kneerail::elevation::ShapeList shapes() const;
  void look_again();

  QPointer<Tokens> tokens_;
  std::unique_ptr<Tokens> own_tokens_;
  int grade_ = 0;
  int last_time_ = 0;
  qreal radius_ = 21;
  QColor ink_ = Qt::transparent;
  bool ground_ = true;
};
