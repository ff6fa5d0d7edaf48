#pragma once

// The parts in view as a list: where each is drawn and what it is called, for screen readers and
// the focus. Rectangles are in pixels from the run's beginning on the deck, so that panning moves
// one parent and not every item.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QRectF>
#include <QString>
#include <memory>
#include <vector>

#include "mobile/elevation/run_view.h"
#include "schema/store/run_store.h"

class VisibleParts : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the ElevationView")
  Q_PROPERTY(int count READ count NOTIFY countChanged)

 public:
  enum Role { part_role = Qt::UserRole + 1, rect_role, name_role };

  explicit VisibleParts(QObject* parent = nullptr) : QAbstractListModel(parent) {}

  /// Lists what `view` shows; `marked` are places of parts that were chosen to be measured. Says
  /// nothing when it lists what it listed.
  void show(std::shared_ptr<const kneerail::RunSheet> sheet,
            const kneerail::elevation::RunView& view, const std::vector<int>& marked = {});

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;
  [[nodiscard]] int count() const { return static_cast<int>(rows_.size()); }

 signals:
  void countChanged();

 private:
  struct Row {
    int part = -1;
    QRectF rect;
    QString name;
    bool operator==(const Row&) const = default;
  };

  [[nodiscard]] std::vector<Row> rows_in(const kneerail::elevation::RunView& view,
                                         const std::vector<int>& marked) const;

  std::shared_ptr<const kneerail::RunSheet> sheet_;
  std::vector<Row> rows_;
};
