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
    : QObject(parent),
      clock_(clock),
      kept_in_(folder / "forecast.kept"),
      thread_(std::move(folder)) {}

void ForecastWorker::reckon() {
  ++asked_;
  if (stop_) stop_->store(true);
  stop_ = thread_.ask<Made>(
      [now = clock_.now(), kept_in = kept_in_](Database& tables,
                                               const ReadingThread::Stop& stop) -> Result<Made> {
        auto days = kneerail::organisation_days(tables);
        if (!days) return kneerail::fail(days.error());
        auto found = kneerail::reckon_or_kept(tables, days->zone.day(now), kept_in, &stop);
        if (!found) return kneerail::fail(found.error());
        Made made{std::make_shared<const Reckoning>(std::move(found->coatings)), nullptr};
        if (found->others)
          made.others = std::make_shared<const OtherReckoning>(std::move(*found->others));
        return made;
      },
      [this, asked = asked_](const Result<Made>& made) { take(made, asked); });
  emit busyChanged();
}

void ForecastWorker::catch_up() {
  const bool behind = std::any_of(entered_.begin(), entered_.end(),
                                  [this](const auto& entry) { return entry.second == asked_; });
  if (asked_ > 0 && behind) reckon();
}

void ForecastWorker::take(const Result<Made>& made, int asked) {
  if (asked != asked_) return emit busyChanged();  // another one is on its way
  if (made) {
    reckoning_ = made->known;
    others_ = made->others;
    others_trouble_.clear();
    if (!others_) reckon_others();
    // What came before it was asked is in it; what came after may be or not.
    std::erase_if(entered_, [asked](const auto& entry) { return entry.second < asked; });
  }
  trouble_ = made ? QString() : QString::fromStdString(made.error().message);
  emit reckoned();
  if (made && others_) emit othersReckoned();
  emit busyChanged();
}

void ForecastWorker::reckon_others() {
  stop_ = thread_.ask<Others>(
      [known = reckoning_, kept_in = kept_in_](Database&,
                                               const ReadingThread::Stop& stop) -> Result<Others> {
        auto found = kneerail::reckon_others(*known, &stop, kept_in);
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
