#pragma once

// What the drawings have in common: they are sized and coloured by Tokens, and draw a list of
// shapes that is made anew only when something in it changes.

#include <QPointer>
#include <QQuickItem>
#include <memory>

#include "mobile/elevation/shapes.h"
#include "mobile/theme/tokens.h"

class DrawingItem : public QQuickItem {
  Q_OBJECT

 public:
  explicit DrawingItem(QQuickItem* parent = nullptr);
  ~DrawingItem() override;

  /// Tests without an engine hand in the tokens; otherwise they are the engine's own.
  void use_tokens(Tokens* tokens);
  /// How often the drawing was brought to the glass.
  [[nodiscard]] int paints() const { return paints_; }

 protected:
  void componentComplete() override;
  QSGNode* updatePaintNode(QSGNode* old, UpdatePaintNodeData* data) override;
  void geometryChange(const QRectF& now, const QRectF& before) override;

  /// Of the engine, or plain ones where there is none.
  [[nodiscard]] const Tokens& tokens() const;
  /// A size in the pixels the drawings were made in: 5.88 to a millimetre.
  [[nodiscard]] double drawn_px(double pixels) const;
  [[nodiscard]] float drawn(double pixels) const { return static_cast<float>(drawn_px(pixels)); }

  virtual void tokens_changed(bool sizes);
  /// What is drawn, from the item's own corner moved by `offset`.
  [[nodiscard]] virtual kneerail::elevation::ShapeList shapes() const { return {}; }
  [[nodiscard]] virtual QPointF offset() const { return {}; }
  /// Something in the shapes has changed; moving them needs only update().
  void redraw();

  int paints_ = 0;

 private:
  QPointer<Tokens> tokens_;
  std::unique_ptr<Tokens> own_tokens_;
  bool dirty_ = true;
  kneerail::elevation::ShapeList painted_;  ///< what the painter draws again and again
};
