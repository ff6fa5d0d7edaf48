#pragma once

// What the program says of itself before it is used: the cautions, which its person reads once, the
// version, and where the register lies.

#include <QtQml/qqmlregistration.h>
#include <QList>
#include <QObject>
#include <QString>
#include <filesystem>

#include "mobile/models/store_link.h"

class ThisTablet : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(bool cautionsRead READ cautions_read NOTIFY cautionsReadChanged)
  Q_PROPERTY(QList<QString> cautions READ cautions CONSTANT)  ///< a sentence each
  Q_PROPERTY(QString cautionWords READ caution_words CONSTANT)
  Q_PROPERTY(QList<QString> about READ about CONSTANT)  ///< a line each

 public:
  /// The link outlives this.
  ThisTablet(std::filesystem::path folder, StoreLink& store, QObject* parent = nullptr);

  [[nodiscard]] bool cautions_read() const { return cautions_read_; }
  [[nodiscard]] static QList<QString> cautions();
  [[nodiscard]] static QString caution_words();
  [[nodiscard]] QList<QString> about() const;

  /// A person has them before the eyes and goes on. Remembered by this device; where the register
  /// can only be read they are shown again at the next start.
  Q_INVOKABLE void readCautions();

 signals:
  void cautionsReadChanged();

 private:
  std::filesystem::path folder_;
  StoreLink& store_;
  bool cautions_read_ = false;
};
