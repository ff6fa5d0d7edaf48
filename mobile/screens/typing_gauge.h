#pragma once

// A gauge that types like a keyboard: digits less than 30 ms apart that end with Enter. Nobody
// types so fast, so such a burst is one number for the walk, whatever has the focus. Digits that
// turn out to be a person's go on to the window as they were. Times are those of the events.

#include <QObject>
#include <QPointer>
#include <QString>
#include <QTimer>
#include <QWindow>
#include <vector>

class QKeyEvent;

class TypingGauge : public QObject {
  Q_OBJECT

 public:
  static constexpr int burst_gap_ms = 30;

  /// Looks at the keys of every window while it lives.
  explicit TypingGauge(QObject* parent = nullptr);

 signals:
  void typed(const QString& number);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Key {
    int key = 0;
    Qt::KeyboardModifiers modifiers;
    QString text;
    quint64 at_ms = 0;
  };

  bool take(QWindow& window, const QKeyEvent& event);
  void pass_on();

  std::vector<Key> held_;
  QPointer<QWindow> window_;
  QTimer rest_;
  bool passing_on_ = false;
};
