#pragma once

// Draws one part's coating along the years: readings with their replicates, the path and its band,
// limits as lines, crossings as bars, works where history starts again, times in which a gauge was
// off hatched.

#include <QtQml/qqmlregistration.h>

#include "mobile/controls/painted_item.h"
#include "mobile/models/forecast_model.h"
#include "mobile/theme/tokens.h"

class TrendView : public PaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(ForecastModel* model READ model WRITE set_model NOTIFY modelChanged)
  Q_PROPERTY(Tokens* tokens READ tokens WRITE set_tokens NOTIFY tokensChanged)

 public:
  explicit TrendView(QQuickItem* parent = nullptr);

  [[nodiscard]] ForecastModel* model() const { return model_; }
  void set_model(ForecastModel* model);
  [[nodiscard]] Tokens* tokens() const { return tokens_; }
  void set_tokens(Tokens* tokens);

  void paint(QPainter* painter) override;

 signals:
  void modelChanged();
  void tokensChanged();

 private:
  ForecastModel* model_ = nullptr;  ///< owned by the program
  Tokens* tokens_ = nullptr;        ///< owned by the engine
};
