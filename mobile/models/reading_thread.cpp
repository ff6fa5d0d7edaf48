#include "mobile/models/reading_thread.h"

using kneerail::Register;
using kneerail::Result;

ReadingThread::ReadingThread(std::filesystem::path folder, QObject* parent)
    : QObject(parent), folder_(std::move(folder)), there_(new QObject) {
  there_->moveToThread(&thread_);
  connect(&thread_, &QThread::finished, there_, &QObject::deleteLater);
  thread_.start(QThread::LowPriority);
}

ReadingThread::~ReadingThread() {
  thread_.quit();
  thread_.wait();
}

Result<Register*> ReadingThread::reader() {
  if (!reader_) {
    auto opened = Register::open({.folder = folder_, .mode = kneerail::Mode::read});
    if (!opened) return kneerail::fail(opened.error());
    reader_ = std::move(*opened);
  }
  return reader_.get();
}
