#pragma once

// What a finger, a mouse, a keyboard or a screen reader presses: keys, slots, tags, cells. It
// answers at touch down; a finger that leaves it takes the press back, and may return.

#include <QtQml/qqmlregistration.h>
#include <QQuickItem>

class TouchItem : public QQuickItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QString text MEMBER text_ NOTIFY textChanged)  ///< what stands on it
  Q_PROPERTY(bool pressed READ pressed NOTIFY pressedChanged)
  /// It has the focus by keyboard, so the focus has to be seen.
  Q_PROPERTY(bool visualFocus READ visual_focus NOTIFY visualFocusChanged)

 public:
  explicit TouchItem(QQuickItem* parent = nullptr);

  [[nodiscard]] bool pressed() const { return pressed_; }
  [[nodiscard]] bool visual_focus() const { return visual_focus_; }
  /// The one act of a screen reader, called by its name.
  Q_INVOKABLE void accessiblePressAction();

 signals:
  void textChanged();
  void pressedChanged();
  void visualFocusChanged();
  void clicked();

 protected:
  void touchEvent(QTouchEvent* event) override;
  void touchUngrabEvent() override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void mouseUngrabEvent() override;
  void keyPressEvent(QKeyEvent* event) override;
  void keyReleaseEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void itemChange(ItemChange change, const ItemChangeData& data) override;

 private:
  /// What holds it down. While one does, no other presses it.
  enum class By { nothing, finger, mouse, keyboard };

  void take_point(const QEventPoint& point);
  void press(By by);
  void release(bool inside);
  void cancel();
  void set_pressed(bool pressed);
  void set_visual_focus(bool visual);

  QString text_;
  By by_ = By::nothing;
  int finger_ = 0;  ///< id of the finger that holds it down
  bool pressed_ = false;
  bool visual_focus_ = false;
};
