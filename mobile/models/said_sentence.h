#pragma once

// What every sentence of keys is to the screen: pieces that are touched, and a pad that asks what
// the open one can be: choices, digits, or words.

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include "mobile/models/sentence_lists.h"

class SaidSentence : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(SentencePieces* pieces READ pieces CONSTANT)
  Q_PROPERTY(SentenceChoices* choices READ choices CONSTANT)
  Q_PROPERTY(bool asks READ asks NOTIFY changed)  ///< something is asked: the pad is up
  Q_PROPERTY(QString askTitle READ ask_title NOTIFY changed)
  Q_PROPERTY(bool asksNumber READ asks_number NOTIFY changed)
  Q_PROPERTY(bool signs READ signs NOTIFY changed)  ///< it may be under zero
  Q_PROPERTY(QString numberCaption READ number_caption NOTIFY changed)
  Q_PROPERTY(bool asksWords READ asks_words NOTIFY changed)
  Q_PROPERTY(QString words READ words NOTIFY changed)       ///< that stand there
  Q_PROPERTY(int wordsMost READ words_most NOTIFY changed)  ///< characters that are kept
  Q_PROPERTY(QString message READ message NOTIFY changed)
  Q_PROPERTY(bool notKept READ not_kept NOTIFY changed)

 public:
  using QObject::QObject;

  [[nodiscard]] SentencePieces* pieces() { return &pieces_; }
  [[nodiscard]] SentenceChoices* choices() { return &choices_; }
  [[nodiscard]] virtual bool asks() const = 0;
  [[nodiscard]] virtual QString ask_title() const = 0;
  [[nodiscard]] virtual bool asks_number() const { return false; }
  [[nodiscard]] virtual bool signs() const { return false; }
  [[nodiscard]] virtual QString number_caption() const { return {}; }
  [[nodiscard]] virtual bool asks_words() const { return false; }
  [[nodiscard]] virtual QString words() const { return {}; }
  [[nodiscard]] virtual int words_most() const { return 120; }
  [[nodiscard]] QString message() const { return message_; }
  [[nodiscard]] bool not_kept() const { return not_kept_; }

  Q_INVOKABLE virtual void choosePiece(int piece) = 0;
  Q_INVOKABLE virtual void digit(int digit) { Q_UNUSED(digit) }
  Q_INVOKABLE virtual void sign() {}
  Q_INVOKABLE virtual void erase() {}
  Q_INVOKABLE virtual void nextPiece() { closePad(); }
  Q_INVOKABLE virtual void choose(int group, int option) = 0;
  Q_INVOKABLE virtual void say(const QString& words) { Q_UNUSED(words) }
  Q_INVOKABLE virtual void closePad() = 0;
  Q_INVOKABLE virtual void keep() = 0;
  Q_INVOKABLE void dismissMessage() {
    message_.clear();
    not_kept_ = false;
    emit changed();
  }

 signals:
  void changed();

 protected:
  SentencePieces pieces_;
  SentenceChoices choices_;
  QString message_;
  bool not_kept_ = false;
};
