#pragma once

// The line that stands on every screen while something cannot wait and nobody was told of it by the
// person who found it; and who is to be told, with their numbers. A touch on one of them is a
// record of who was told and when. While no line stands nothing here wakes up.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QTimer>
#include <vector>

#include "mobile/models/findings_model.h"
#include "schema/store/finding_story.h"

class HazardLine : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(QString words READ words NOTIFY changed)  ///< "F-3: nobody told, 40 min"; empty: none
  Q_PROPERTY(bool opened READ opened NOTIFY openedChanged)
  // Of the finding that is told of.
  Q_PROPERTY(
      QString title READ title NOTIFY openedChanged)  ///< "F-3 · split · North Mole, post 118"
  Q_PROPERTY(QString standsWords READ stands_words NOTIFY openedChanged)  ///< "Not made safe"
  Q_PROPERTY(QString toldWords READ told_words NOTIFY openedChanged)      ///< "told RH 10:55"
  Q_PROPERTY(bool writes READ writes NOTIFY openedChanged)

 public:
  enum Role { NameRole = Qt::UserRole + 1, TelephoneRole, ToldRole, SpokenRole };

  /// Both outlive this.
  HazardLine(StoreLink& store, WalkModel& walk, FindingsModel& findings, QObject* parent = nullptr);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  [[nodiscard]] QString words() const { return words_; }
  [[nodiscard]] bool opened() const { return !opened_.is_zero(); }
  [[nodiscard]] QString title() const;
  [[nodiscard]] QString stands_words() const;
  [[nodiscard]] QString told_words() const;
  [[nodiscard]] bool writes() const { return walk_.writable(); }
  /// Wakes up once more, at the next whole minute of the line.
  [[nodiscard]] bool ticks() const { return minute_.isActive(); }

  /// The people to tell of the oldest that nobody was told of.
  Q_INVOKABLE void open();
  Q_INVOKABLE void close();
  /// That one of the list was told now.
  Q_INVOKABLE void tell(int place);
  /// An office was, in words: the register keeps no name of it.
  Q_INVOKABLE void tellOffice(const QString& office);
  /// The finding itself, in the Findings room.
  Q_INVOKABLE void openFinding();

  /// The line as it reads now.
  void read_the_clock();

 signals:
  void changed();
  void openedChanged();

 private:
  struct Person {
    kneerail::PersonToTell known;
    QString name;
    QString telephone;
  };

  [[nodiscard]] std::vector<const kneerail::KeptFinding*> untold() const;
  [[nodiscard]] const kneerail::KeptFinding* open_() const;
  [[nodiscard]] QString told_at(const kneerail::Uuid& person) const;
  void standing_changed();
  void find_people(const kneerail::Uuid& site);
  void write(kneerail::MadeSafe told, const QString& whom);

  StoreLink& store_;
  WalkModel& walk_;
  FindingsModel& findings_;
  QString words_;
  kneerail::Uuid opened_;  ///< zero: none
  std::vector<Person> people_;
  QTimer minute_;
};
