#pragma once

// Makes pictures ready on a thread of its own, one after the other, so that no touch waits for one.

#include <QObject>
#include <QThreadPool>
#include <functional>

#include "mobile/picture/prepared_picture.h"

class PictureIntake : public QObject {
  Q_OBJECT

 public:
  using Told = std::function<void(kneerail::Result<kneerail::PreparedPicture>)>;

  explicit PictureIntake(QObject* parent = nullptr);
  /// Waits for the picture that is being made and tells of none: finish() comes before it where
  /// none may be lost.
  ~PictureIntake() override;

  /// `told` on this object's thread.
  void take(const QString& path, Told told);
  /// Waits for all that were asked, and tells of them.
  void finish();
  [[nodiscard]] bool busy() const { return asked_ > 0; }

 signals:
  void busyChanged();

 private:
  QThreadPool pool_;
  int asked_ = 0;
};
