#pragma once

// Rows of the Prepare room: the lines of the day, the instruments, the sites to carry.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QList>
#include <QString>

class PrepareRows : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by PrepareModel")

 public:
  enum Sign { NoSign, Told, Event, Closure, Finding, Look, Coating, Torque, Wall, Grade };
  Q_ENUM(Sign)

  struct Row {
    QString name;    ///< "26 coatings to read", "Coating gauge A2", "North Mole"
    QString where;   ///< "Sea wall west · posts 61 to 79"
    QString why;     ///< a sentence
    QString figure;  ///< "1 h 50", "38 MB"
    QString spoken;  ///< all of it, for who does not see it
    int sign = NoSign;
    int grade = 0;   ///< of a finding
    bool on = true;  ///< done in the time, taken, carried
    bool operator==(const Row&) const = default;
  };
  enum Role {
    NameRole = Qt::UserRole,
    WhereRole,
    WhyRole,
    FigureRole,
    SpokenRole,
    SignRole,
    GradeRole,
    OnRole
  };

  using QAbstractListModel::QAbstractListModel;
  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  /// As many as before stay where they are, so that a list does not jump.
  void show(QList<Row> rows);
  [[nodiscard]] const QList<Row>& rows() const { return rows_; }

 private:
  QList<Row> rows_;
};
