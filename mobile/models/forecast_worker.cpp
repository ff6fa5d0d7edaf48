#include "mobile/models/forecast_worker.h"

#include <algorithm>
#include <utility>

#include "schema/store/organisation_days.h"

using kneerail::Database;
using kneerail::Fault;
using kneerail::OtherReckoning;
using kneerail::PartTold;
using kneerail::Reckoning;
using kneerail::Result;
using kneerail::Uuid;

ForecastWorker::ForecastWorker(std::filesystem::path folder, kneerail::Clock& clock,
                               QObject* parent)
    : QObject(parent), clock_(clock), thread_(std::move(folder)) {}

void ForecastWorker::reckon() {
  ++asked_;
  if (stop_) stop_->store(true);
  stop_ = thread_.ask<Known>(
      [now = clock_.now()](Database& tables, const ReadingThread::Stop& stop) -> Result<Known> {
        auto days = kneerail::organisation_days(tables);
        if (!days) return kneerail::fail(days.error());
        auto found = kneerail::reckon(tables, days->zone.day(now), &stop);
        if (!found) return kneerail::fail(found.error());
        return Known(std::make_shared<const Reckoning>(std::move(*found)));
      },
      [this, asked = asked_](const Result<Known>& made) { take(made, asked); });
  emit busyChanged();
}

void ForecastWorker::catch_up() {
  const bool behind = std::any_of(entered_.begin(), entered_.end(),
                                  [this](const auto& entry) { return entry.second == asked_; });
  if (asked_ > 0 && behind) reckon();
}

void ForecastWorker::take(const Result<Known>& made, int asked) {
  if (asked != asked_) return emit busyChanged();  // another one is on its way
  if (made) {
    reckoning_ = *made;
    others_.reset();
    reckon_others();
    // What came before it was asked is in it; what came after may be or not.
    std::erase_if(entered_, [asked](const auto& entry) { return entry.second < asked; });
  }
  trouble_ = made ? QString() : QString::fromStdString(made.error().message);
  emit reckoned();
  emit busyChanged();
}

void ForecastWorker::reckon_others() {
  others_trouble_.clear();
  stop_ = thread_.ask<Others>(
      [known = reckoning_](Database&, const ReadingThread::Stop& stop) -> Result<Others> {
        auto found = kneerail::reckon_others(*known, &stop);
        if (!found) return kneerail::fail(found.error());
        return Others(std::make_shared<const OtherReckoning>(std::move(*found)));
      },
      [this, asked = asked_](const Result<Others>& made) { take_others(made, asked); });
}

void ForecastWorker::take_others(const Result<Others>& made, int asked) {
  if (asked != asked_) return emit busyChanged();
  if (made) others_ = *made;
  others_trouble_ = made ? QString() : QString::fromStdString(made.error().message);
  emit othersReckoned();
  emit busyChanged();
}

void ForecastWorker::tell(const Uuid& site, const Uuid& component) {
  thread_.ask<PartTold>(
      [site, component, known = reckoning_, others = others_](
          Database& tables, const ReadingThread::Stop&) -> Result<PartTold> {
        if (!known) return kneerail::fail(Fault::not_estimable, "Nothing is reckoned yet.");
        return kneerail::told_with_latest(tables, *known, others.get(), site, component);
      },
      [this, component](Result<PartTold> told) {
        emit partTold(component, std::make_shared<const Result<PartTold>>(std::move(told)));
        emit busyChanged();
      });
  emit busyChanged();
}
