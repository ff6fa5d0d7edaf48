#pragma once

// What the program says of itself before it is used: the cautions, which its person reads once, the
// version, where the register lies, and in which language all of it is said.

#include <QtQml/qqmlregistration.h>
#include <QList>
#include <QObject>
#include <QString>
#include <filesystem>

#include "mobile/models/store_link.h"
#include "mobile/theme/language.h"

class ThisTablet : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(bool cautionsRead READ cautions_read NOTIFY cautionsReadChanged)
  Q_PROPERTY(QList<QString> cautions READ cautions CONSTANT)  ///< a sentence each
  Q_PROPERTY(QString cautionWords READ caution_words CONSTANT)
  Q_PROPERTY(QList<QString> about READ about CONSTANT)          ///< a line each
  Q_PROPERTY(QList<QString> languages READ languages CONSTANT)  ///< each by its own name
  Q_PROPERTY(int language READ language CONSTANT)               ///< of languages; of the words now

 public:
  /// The link outlives this.
  ThisTablet(std::filesystem::path folder, StoreLink& store, QObject* parent = nullptr);

  [[nodiscard]] bool cautions_read() const { return cautions_read_; }
  [[nodiscard]] static QList<QString> cautions();
  [[nodiscard]] static QString caution_words();
  [[nodiscard]] QList<QString> about() const;

  [[nodiscard]] static QList<QString> languages() { return kneerail::language_names(); }
  [[nodiscard]] int language() const;
  /// Of what this device remembers, by nothing else than a number; of_machine: nobody chose.
  static kneerail::Language chosen_language(kneerail::Database& tables);

  /// A person has them before the eyes and goes on. Remembered by this device; where the register
  /// can only be read they are shown again at the next start.
  Q_INVOKABLE void readCautions();
  /// Once it is remembered the screens are made again with its words. Nothing that was typed is
  /// lost by it: that is on the disk. Not on a register that can only be read.
  Q_INVOKABLE void chooseLanguage(int language);

 signals:
  void cautionsReadChanged();
  void languageChosen();

 private:
  std::filesystem::path folder_;
  StoreLink& store_;
  bool cautions_read_ = false;
};
