#include "mobile/elevation/grade_sign.h"

#include <QPainter>
#include <algorithm>

#include "mobile/elevation/grade_glyph.h"
#include "mobile/elevation/shape_painter.h"

namespace elevation = kneerail::elevation;

GradeGlyph::GradeGlyph(QQuickItem* parent)
    : PaintedItem(parent), own_tokens_(std::make_unique<Tokens>()) {
  connect(this, &GradeGlyph::lookChanged, this, &GradeGlyph::look_again);
  look_again();
}

GradeGlyph::~GradeGlyph() = default;

const Tokens& GradeGlyph::tokens() const {
  return tokens_ != nullptr ? *tokens_ : *own_tokens_;
}

void GradeGlyph::componentComplete() {
  PaintedItem::componentComplete();
  Tokens* tokens = Tokens::of(*this);
  if (tokens_ == nullptr && tokens != nullptr) use_tokens(tokens);
}

void GradeGlyph::use_tokens(Tokens* tokens) {
  if (tokens_ != nullptr) tokens_->disconnect(this);
  tokens_ = tokens;
  connect(tokens, &Tokens::themeChanged, this, &GradeGlyph::look_again);
  connect(tokens, &Tokens::sizesChanged, this, &GradeGlyph::look_again);
  look_again();
}

void GradeGlyph::look_again() {
  const qreal side = 2 * (radius_ + tokens().drawn(elevation::glyph_ground_drawn));
  setImplicitSize(side, side);
  update();
}

elevation::ShapeList GradeGlyph::shapes() const {
  elevation::ShapeList list;
  const elevation::Point middle{static_cast<float>(width() / 2), static_cast<float>(height() / 2)};
  const auto radius = static_cast<float>(radius_);
  const bool own = ink_.alpha() == 0;
  if (ground_) {
    const auto beyond = static_cast<float>(tokens().drawn(elevation::glyph_ground_drawn));
    list.disc(middle, radius + beyond, tokens().sheet());
  }
  if (grade_ > 0) {
    const int grade = std::min(grade_, 5);
    const QColor& color = tokens().palette().grade[static_cast<std::size_t>(grade - 1)];
    elevation::add_grade(list, middle, radius, grade, own ? color : ink_);
    return list;
  }
  elevation::add_open_grade(list, middle, radius, own ? tokens().ink2() : ink_,
                            static_cast<float>(tokens().drawn(1)));
  if (last_time_ > 0) {
    elevation::add_last_grade(list, middle, radius, last_time_, own ? tokens().ghost() : ink_);
  }
  return list;
}

void GradeGlyph::paint(QPainter* painter) {
  elevation::paint(*painter, shapes(), tokens().text_family());
}
