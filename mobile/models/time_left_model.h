#pragma once

// Time left to each limit that is reckoned, one row a limit.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QList>
#include <QString>

class TimeLeftModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by ForecastModel")

 public:
  struct Row {
    QString name;        ///< "First maintenance"
    QString figure;      ///< "3 y", or a chance, "18 %"; empty where there is none
    QString band;        ///< "2 y to 3 y", the day of a chance, or why there is none
    QString spoken;      ///< all of it, for who does not see it
    QString mark;        ///< "comes first" of the part's limits, "close behind"; mostly empty
    bool first = false;  ///< that it comes first
    bool timed = false;  ///< a time is left, so there is a bar
    double share = 0;    ///< of the bar that is filled, 0 to 1
    bool soon = false;   ///< drawn in rust
    bool stale = false;  ///< drawn hollow until it is new
  };
  enum Role {
    NameRole = Qt::UserRole,
    FigureRole,
    BandRole,
    SpokenRole,
    MarkRole,
    FirstRole,
    TimedRole,
    ShareRole,
    SoonRole,
    StaleRole
  };

  using QAbstractListModel::QAbstractListModel;
  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  void show(QList<Row> rows);
  void make_stale();
  [[nodiscard]] const QList<Row>& rows() const { return rows_; }

 private:
  QList<Row> rows_;
};
