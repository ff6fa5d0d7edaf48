#pragma once

// DueTagItem: the plate that says when a site is due, as large as the item.

#include "mobile/elevation/drawing_item.h"

class DueTagItem : public DrawingItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(bool soon READ soon WRITE set_soon NOTIFY soonChanged)  ///< within 60 days
  Q_PROPERTY(qreal wordsAt READ words_at NOTIFY wordsAtChanged)      ///< x, px

 public:
  explicit DueTagItem(QQuickItem* parent = nullptr);

  [[nodiscard]] bool soon() const { return soon_; }
  void set_soon(bool soon);
  [[nodiscard]] qreal words_at() const;

 signals:
  void soonChanged();
  void wordsAtChanged();

 protected:
  [[nodiscard]] kneerail::elevation::ShapeList shapes() const override;

 private:
  bool soon_ = false;
};
