#include "mobile/models/forecast_worker.h"

#include <utility>

#include "schema/store/organisation_days.h"

using kneerail::Fault;
using kneerail::Reckoning;
using kneerail::Register;
using kneerail::Result;
using kneerail::Uuid;
using kneerail::forecast::PartStory;

ForecastWorker::ForecastWorker(std::filesystem::path folder, kneerail::Clock& clock,
                               QObject* parent)
    : QObject(parent), folder_(std::move(folder)), clock_(clock), there_(new QObject) {
  there_->moveToThread(&thread_);
  connect(&thread_, &QThread::finished, there_, &QObject::deleteLater);
  thread_.start(QThread::LowPriority);
}

ForecastWorker::~ForecastWorker() {
  thread_.quit();
  thread_.wait();
}

Result<Register*> ForecastWorker::reader() {
  if (!reader_) {
    auto opened = Register::open({.folder = folder_, .mode = kneerail::Mode::read});
    if (!opened) return kneerail::fail(opened.error());
    reader_ = std::move(*opened);
  }
  return reader_.get();
}

void ForecastWorker::reckon() {
  ++asked_;
  emit busyChanged();
  QMetaObject::invokeMethod(there_, [this, now = clock_.now()] {
    const auto made = [&]() -> Result<Known> {
      auto opened = reader();
      if (!opened) return kneerail::fail(opened.error());
      auto days = kneerail::organisation_days((*opened)->tables());
      if (!days) return kneerail::fail(days.error());
      auto found = kneerail::reckon((*opened)->tables(), days->zone.day(now));
      if (!found) return kneerail::fail(found.error());
      return Known(std::make_shared<const Reckoning>(std::move(*found)));
    }();
    QMetaObject::invokeMethod(this, [this, made] { take(made); });
  });
}

void ForecastWorker::take(const Result<Known>& made) {
  if (made) reckoning_ = *made;
  trouble_ = made ? QString() : QString::fromStdString(made.error().message);
  emit reckoned();
  ended();
}

void ForecastWorker::tell(const Uuid& site, const Uuid& component) {
  ++asked_;
  emit busyChanged();
  QMetaObject::invokeMethod(there_, [this, site, component, known = reckoning_] {
    const auto tell = [&]() -> Result<PartStory> {
      if (!known) return kneerail::fail(Fault::not_estimable, "Nothing is reckoned yet.");
      auto opened = reader();
      if (!opened) return kneerail::fail(opened.error());
      return kneerail::story_with_latest((*opened)->tables(), *known, site, component);
    };
    auto story = std::make_shared<const Result<PartStory>>(tell());
    QMetaObject::invokeMethod(this, [this, component, story] {
      emit storyTold(component, story);
      ended();
    });
  });
}

void ForecastWorker::ended() {
  --asked_;
  emit busyChanged();
}
