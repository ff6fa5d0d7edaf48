#pragma once

// What a sentence of keys shows: its pieces, and the choices of the one that is open.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QStringList>
#include <vector>

/// One key for each piece.
class SentencePieces : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by a room's model")

 public:
  struct Piece {
    QString text;
    QString under;
    bool said = true;   ///< false: nobody has said it yet
    bool here = false;  ///< its choices are open
    bool odd = false;   ///< what is typed does not fit; the sentence stands as it was
    bool used = true;   ///< false: this sentence has no such piece
    bool operator==(const Piece&) const = default;
  };
  enum Role { TextRole = Qt::UserRole, UnderRole, SaidRole, HereRole, OddRole, UsedRole };

  using QAbstractListModel::QAbstractListModel;
  void show(std::vector<Piece> pieces);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<Piece> pieces_;
};

/// One caption with its keys for each group.
class SentenceChoices : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by a room's model")

 public:
  struct Group {
    QString caption;
    QStringList names;
    int now = -1;
    bool operator==(const Group&) const = default;
  };
  /// Wide: a name that takes half a row.
  enum Role { CaptionRole = Qt::UserRole, NamesRole, NowRole, WideRole };

  using QAbstractListModel::QAbstractListModel;
  /// Keys that say the same stay, so that a finger or the focus stays on them.
  void show(std::vector<Group> groups);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<Group> groups_;
};
