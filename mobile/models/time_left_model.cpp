#include "mobile/models/time_left_model.h"

#include <utility>

int TimeLeftModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant TimeLeftModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rows_.size()) return {};
  const Row& row = rows_[index.row()];
  switch (role) {
    case NameRole:
      return row.name;
    case FigureRole:
      return row.figure;
    case BandRole:
      return row.band;
    case SpokenRole:
      return row.spoken;
    case MarkRole:
      return row.mark;
    case FirstRole:
      return row.first;
    case TimedRole:
      return row.timed;
    case ShareRole:
      return row.share;
    case SoonRole:
      return row.soon;
    case StaleRole:
      return row.stale;
    default:
      return {};
  }
}

QHash<int, QByteArray> TimeLeftModel::roleNames() const {
  return {{NameRole, "name"}, {FigureRole, "figure"}, {BandRole, "band"},   {SpokenRole, "spoken"},
          {MarkRole, "mark"}, {FirstRole, "first"},   {TimedRole, "timed"}, {ShareRole, "share"},
          {SoonRole, "soon"}, {StaleRole, "stale"}};
}

void TimeLeftModel::show(QList<Row> rows) {
  beginResetModel();
  rows_ = std::move(rows);
  endResetModel();
}

void TimeLeftModel::make_stale() {
  if (rows_.isEmpty()) return;
  for (Row& row : rows_) row.stale = true;
  emit dataChanged(index(0), index(static_cast<int>(rows_.size()) - 1), {StaleRole});
}
