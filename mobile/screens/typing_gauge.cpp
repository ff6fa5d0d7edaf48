#include "mobile/screens/typing_gauge.h"

#include <QGuiApplication>
#include <QKeyEvent>
#include <utility>

namespace {

constexpr int rest_ms = 2 * TypingGauge::burst_gap_ms;  // then it was a person

bool of_a_number(const QString& text) {
  return text.size() == 1 && (text[0].isDigit() || text[0] == '.' || text[0] == ',');
}

bool ends_a_number(int key) {
  return key == Qt::Key_Return || key == Qt::Key_Enter;
}

}  // namespace

TypingGauge::TypingGauge(QObject* parent) : QObject(parent) {
  rest_.setSingleShot(true);
  rest_.setInterval(rest_ms);
  connect(&rest_, &QTimer::timeout, this, &TypingGauge::pass_on);
  qGuiApp->installEventFilter(this);
}

bool TypingGauge::eventFilter(QObject* watched, QEvent* event) {
  if (passing_on_ || event->type() != QEvent::KeyPress) return false;
  auto* window = qobject_cast<QWindow*>(watched);
  return window != nullptr && take(*window, *static_cast<QKeyEvent*>(event));
}

bool TypingGauge::take(QWindow& window, const QKeyEvent& event) {
  if (!held_.empty() && event.timestamp() - held_.back().at_ms >= burst_gap_ms) pass_on();
  if (ends_a_number(event.key()) && !held_.empty()) {
    QString number;
    for (const Key& key : std::exchange(held_, {})) number += key.text;
    rest_.stop();
    emit typed(number.replace(',', '.'));
    return true;
  }
  const bool held = of_a_number(event.text()) && !event.isAutoRepeat() &&
                    (event.modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
  if (!held) {
    pass_on();
    return false;
  }
  window_ = &window;
  held_.push_back({event.key(), event.modifiers(), event.text(), event.timestamp()});
  rest_.start();
  return true;
}

/// They were a person's: each goes to the window, pressed and released.
void TypingGauge::pass_on() {
  rest_.stop();
  const std::vector<Key> keys = std::exchange(held_, {});
  if (window_ == nullptr) return;
  passing_on_ = true;
  for (const Key& key : keys) {
    for (const auto type : {QEvent::KeyPress, QEvent::KeyRelease}) {
      QKeyEvent event(type, key.key, key.modifiers, key.text);
      event.setTimestamp(key.at_ms);
      QCoreApplication::sendEvent(window_, &event);
    }
  }
  passing_on_ = false;
}
