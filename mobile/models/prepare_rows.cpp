#include "mobile/models/prepare_rows.h"

#include <utility>

int PrepareRows::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant PrepareRows::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rows_.size()) return {};
  const Row& row = rows_[index.row()];
  switch (role) {
    case NameRole:
      return row.name;
    case WhereRole:
      return row.where;
    case WhyRole:
      return row.why;
    case FigureRole:
      return row.figure;
    case SpokenRole:
      return row.spoken;
    case SignRole:
      return row.sign;
    case GradeRole:
      return row.grade;
    case OnRole:
      return row.on;
    default:
      return {};
  }
}

QHash<int, QByteArray> PrepareRows::roleNames() const {
  return {{NameRole, "name"},     {WhereRole, "where"},   {WhyRole, "why"},
          {FigureRole, "figure"}, {SpokenRole, "spoken"}, {SignRole, "sign"},
          {GradeRole, "grade"},   {OnRole, "on"}};
}

void PrepareRows::show(QList<Row> rows) {
  if (rows.size() != rows_.size()) {
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
    return;
  }
  for (int i = 0; i < rows.size(); ++i) {
    if (rows[i] == rows_[i]) continue;
    rows_[i] = std::move(rows[i]);
    emit dataChanged(index(i), index(i));
  }
}
