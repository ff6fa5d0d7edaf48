#include "mobile/picture/picture_intake.h"

#include <QCoreApplication>
#include <QMetaObject>
#include <memory>
#include <utility>

using Made = kneerail::Result<kneerail::PreparedPicture>;

PictureIntake::PictureIntake(QObject* parent) : QObject(parent) {
  pool_.setMaxThreadCount(1);
  pool_.setThreadPriority(QThread::LowPriority);
}

PictureIntake::~PictureIntake() {
  pool_.clear();
  pool_.waitForDone();
}

void PictureIntake::finish() {
  pool_.waitForDone();
  QCoreApplication::sendPostedEvents(this, QEvent::MetaCall);
}

void PictureIntake::take(const QString& path, Told told) {
  ++asked_;
  emit busyChanged();
  pool_.start([this, path, told = std::move(told)] {
    auto made = std::make_shared<Made>(kneerail::prepare_picture(path));
    QMetaObject::invokeMethod(
        this,
        [this, made, told] {
          --asked_;
          told(std::move(*made));
          emit busyChanged();
        },
        Qt::QueuedConnection);
  });
}
