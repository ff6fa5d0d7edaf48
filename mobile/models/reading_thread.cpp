#include "mobile/models/reading_thread.h"

#include "mobile/models/store_link.h"

using kneerail::Database;
using kneerail::Fault;
using kneerail::Register;
using kneerail::Result;

ReadingThread::ReadingThread(std::filesystem::path folder, QObject* parent)
    : QObject(parent), folder_(std::move(folder)), there_(new QObject) {
  there_->moveToThread(&thread_);
  connect(&thread_, &QThread::finished, there_, &QObject::deleteLater);
}

void ReadingThread::begin() {
  if (!thread_.isRunning()) thread_.start(QThread::LowPriority);
}

ReadingThread::~ReadingThread() {
  if (!thread_.isRunning()) delete there_;  // nothing was ever asked
  for (const auto& stop : asked_) stop->store(true);
  thread_.quit();
  thread_.wait();
}

Result<Database*> ReadingThread::watched(const Stop& stop) {
  if (stop) return kneerail::fail(Fault::cancelled, "It was left off before it began.");
  if (!reader_) {
    auto opened = Register::open(
        {.folder = folder_, .mode = kneerail::Mode::read, .cache_kib = StoreLink::cache_kib});
    if (!opened) return kneerail::fail(opened.error());
    reader_ = std::move(*opened);
  }
  watch_.stop = &stop;
  reader_->tables().watch(&watch_);
  return &reader_->tables();
}
