#include "mobile/screens/trend_view.h"

#include "mobile/screens/trend_painter.h"

using kneerail::TrendLook;

TrendView::TrendView(QQuickItem* parent) : PaintedItem(parent) {}

void TrendView::set_model(ForecastModel* model) {
  if (model == model_) return;
  if (model_ != nullptr) disconnect(model_, nullptr, this, nullptr);
  model_ = model;
  if (model_ != nullptr) {
    connect(model_, &ForecastModel::trendChanged, this, [this] { update(); });
    connect(model_, &ForecastModel::shown, this, [this] { update(); });
  }
  emit modelChanged();
  update();
}

void TrendView::set_tokens(Tokens* tokens) {
  if (tokens == tokens_) return;
  if (tokens_ != nullptr) disconnect(tokens_, nullptr, this, nullptr);
  tokens_ = tokens;
  if (tokens_ != nullptr) {
    connect(tokens_, &Tokens::themeChanged, this, [this] { update(); });
    connect(tokens_, &Tokens::sizesChanged, this, [this] { update(); });
  }
  emit tokensChanged();
  update();
}

void TrendView::paint(QPainter* painter) {
  if (model_ == nullptr || tokens_ == nullptr || !model_->drawn()) return;
  TrendLook look;
  look.palette = tokens_->palette();
  look.palette.ink2 = tokens_->ink2();
  look.unit = tokens_->hair_stroke();
  look.text = QFont(tokens_->text_family());
  look.text.setPixelSize(tokens_->small_text());
  look.bold = look.text;
  look.bold.setBold(true);
  look.stale = model_->stale();
  paint_trend(*painter, QRectF(0, 0, width(), height()), model_->trend(), look);
}
