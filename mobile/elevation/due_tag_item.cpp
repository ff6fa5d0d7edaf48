#include "mobile/elevation/due_tag_item.h"

#include "mobile/elevation/sign_shapes.h"

namespace elevation = kneerail::elevation;

DueTagItem::DueTagItem(QQuickItem* parent) : DrawingItem(parent) {
  connect(this, &QQuickItem::heightChanged, this, &DueTagItem::wordsAtChanged);
}

void DueTagItem::set_soon(bool soon) {
  if (soon == soon_) return;
  soon_ = soon;
  redraw();
  emit soonChanged();
}

qreal DueTagItem::words_at() const {
  return height() * static_cast<qreal>(elevation::due_tag_words);
}

elevation::ShapeList DueTagItem::shapes() const {
  elevation::ShapeList list;
  const elevation::Point size{static_cast<float>(width()), static_cast<float>(height())};
  if (size.x < size.y || size.y <= 0) return list;
  elevation::add_due_tag(list, {{}, size, drawn(2), soon_}, tokens().palette());
  return list;
}
