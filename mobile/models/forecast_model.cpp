#include "mobile/models/forecast_model.h"

#include <QLocale>
#include <algorithm>
#include <cmath>
#include <utility>

#include "core/records/entities.h"
#include "mobile/models/forecast_words.h"
#include "mobile/models/part_words.h"

using kneerail::RunSheet;
using kneerail::SheetPart;
using kneerail::Uuid;
using kneerail::forecast::PartStory;

namespace {

constexpr double bar_years = 15;  // a full bar
constexpr double soon_years = 5;

/// The run a part stands in: its post's or its bay's.
kneerail::Result<Uuid> run_of(kneerail::Database& tables, const Uuid& component) {
  auto row = tables.prepare(
      "SELECT place.parent FROM entity AS part JOIN entity AS place ON place.id = part.parent "
      "WHERE part.id = ?1");
  if (!row) return kneerail::fail(row.error());
  row->bind(1, component);
  auto found = row->step();
  if (!found) return kneerail::fail(found.error());
  if (!*found || row->is_null(0))
    return kneerail::fail(kneerail::Fault::not_found, "The run of this part has not arrived.");
  return row->uuid(0);
}

}  // namespace

ForecastModel::ForecastModel(kneerail::Register& reader, ForecastWorker& worker, QObject* parent)
    : QObject(parent), reader_(reader), worker_(worker) {
  auto instruments =
      load_things(reader.tables(), static_cast<int>(kneerail::EntityType::instrument));
  if (instruments) instruments_ = std::move(*instruments);
  connect(&worker, &ForecastWorker::reckoned, this, &ForecastModel::on_reckoned);
  connect(&worker, &ForecastWorker::busyChanged, this, &ForecastModel::busyChanged);
  connect(&worker, &ForecastWorker::storyTold, this, [this](const Uuid& told, const auto& story) {
    if (const SheetPart* own = part(); own != nullptr && own->id == told) take_story(*story);
  });
  connect(&run_, &RunPicture::chosenChanged, this, &ForecastModel::show_part);
  show_part();
}

const SheetPart* ForecastModel::part() const {
  if (run_.part() < 0) return nullptr;
  return &run_.sheet()->parts[static_cast<std::size_t>(run_.part())];
}

QString ForecastModel::site_name() const {
  return QString::fromStdString(run_.sheet()->site_name);
}

QString ForecastModel::run_name() const {
  return QString::fromStdString(run_.sheet()->name);
}

QString ForecastModel::post_label() const {
  if (run_.post() < 0) return {};
  return QString::fromStdString(run_.sheet()->posts[static_cast<std::size_t>(run_.post())].label);
}

QString ForecastModel::part_name() const {
  return run_.part() < 0 ? QString() : kneerail::part_name(*run_.sheet(), run_.part());
}

QString ForecastModel::reckoned_on() const {
  const auto known = worker_.reckoning();
  return known ? kneerail::whole_day(known->as_of()) : QString();
}

QString ForecastModel::worst_words() const {
  const auto known = worker_.reckoning();
  if (!known || known->worst_first.empty()) return {};
  const QLocale locale;
  return tr("%1 of %2")
      .arg(locale.toString(qulonglong{worst_ % known->worst_first.size() + 1}),
           locale.toString(qulonglong{known->worst_first.size()}));
}

void ForecastModel::show(const Uuid& run, const Uuid& component) {
  show_run(run);
  const auto& parts = run_.sheet()->parts;
  const auto at = std::find_if(parts.begin(), parts.end(),
                               [&](const SheetPart& own) { return own.id == component; });
  if (at == parts.end()) return;
  const int place = static_cast<int>(at - parts.begin());
  if (run_.part() == place)
    show_part();
  else
    run_.choose_part(place);
}

void ForecastModel::show_run(const Uuid& run) {
  auto sheet = read_run(reader_.tables(), run, visit_);
  if (!sheet) return say(QString::fromStdString(sheet.error().message));
  run_.show(std::make_shared<const RunSheet>(std::move(*sheet)));
}

void ForecastModel::entered(const Uuid& component) {
  worker_.entered(component);
  const SheetPart* own = part();
  if (own != nullptr && own->id == component) ask_again();
}

/// What is drawn does not know the last readings: hollow until the worker has told of them.
void ForecastModel::ask_again() {
  stale_ = true;
  time_left_.make_stale();
  emit shown();
  worker_.tell(run_.sheet()->site, part()->id);
}

void ForecastModel::choosePart(int part) {
  if (part >= 0) run_.choose_part(part);
}

void ForecastModel::nextPost(int step) {
  const RunSheet& sheet = *run_.sheet();
  const SheetPart* own = part();
  const int post = run_.post() + step;
  if (own == nullptr || post < 0 || post >= run_.posts()) return;
  const auto& next = sheet.posts[static_cast<std::size_t>(post)];
  int best = -1;
  for (int i = next.first_part; i < next.first_part + next.parts; ++i) {
    const SheetPart& other = sheet.parts[static_cast<std::size_t>(i)];
    if (other.role != own->role) continue;
    const auto away = [&](int place) {
      return std::abs(sheet.parts[static_cast<std::size_t>(place)].up_mm - own->up_mm);
    };
    if (best < 0 || away(i) < away(best)) best = i;
  }
  if (best >= 0) run_.choose_part(best);
}

void ForecastModel::nextWorst() {
  const auto known = worker_.reckoning();
  if (!known || known->worst_first.empty()) return;
  const Uuid component = known->worst_first[worst_ % known->worst_first.size()];
  ++worst_;
  const auto run = run_of(reader_.tables(), component);
  if (!run) return say(QString::fromStdString(run.error().message));
  show(*run, component);
}

void ForecastModel::walkHere() {
  if (const SheetPart* own = part()) emit walkWanted(run_.sheet()->id, own->id);
}

void ForecastModel::on_reckoned() {
  stale_ = false;
  show_part();
}

void ForecastModel::show_part() {
  const SheetPart* own = part();
  const auto known = worker_.reckoning();
  if (!known && worker_.busy()) return say(tr("Reckoning the register."));
  if (!known && !worker_.trouble().isEmpty()) return say(worker_.trouble());
  if (own == nullptr)
    return say(run_.posts() > 0          ? tr("Touch a part on the drawing.")
               : worst_words().isEmpty() ? tr("Choose a part in Walk.")
                                         : tr("Choose a part in Walk, or begin with the worst."));
  if (!known) return say(tr("Nothing is reckoned yet."));
  const auto place = known->part_places.find(own->id);
  if (place == known->part_places.end()) {
    say(tr("This part is newer than the reckoning."));
    return worker_.tell(run_.sheet()->site, own->id);
  }
  stale_ = false;
  take_story(kneerail::forecast::part_story(known->model, known->portfolio, place->second));
  if (worker_.entered_since(own->id)) ask_again();
}

void ForecastModel::say(const QString& message) {
  message_ = message;
  headline_.clear();
  reason_.clear();
  drawn_ = false;
  time_left_.show({});
  emit trendChanged();
  emit shown();
}

void ForecastModel::take_story(const Story& story) {
  stale_ = false;
  if (!story) return say(QString::fromStdString(story.error().message));
  const auto gauge = [this](const std::string& text) { return gauge_name(text); };
  trend_ = kneerail::trend_picture(*story, gauge);
  message_.clear();
  drawn_ = true;
  reason_ = kneerail::reason_words(*story, gauge);
  headline_ = kneerail::rate_headline(*story);
  fill_time_left(*story);
  emit trendChanged();
  emit shown();
}

void ForecastModel::fill_time_left(const PartStory& story) {
  QList<TimeLeftModel::Row> rows;
  for (const auto& limit : story.limits) {
    const auto& told = limit.forecast;
    TimeLeftModel::Row row;
    row.name = kneerail::limit_name(told.limit);
    if (told.answered) {
      constexpr std::size_t median = 3;
      row.figure = kneerail::time_words(told.years[median]);
      row.band = kneerail::band_words(told.years);
      if (row.band == row.figure && told.years[median] <= 0)
        row.band = tr("since about %1")
                       .arg(std::floor(kneerail::calendar_year(story.as_of) + told.years[median]));
      row.share = std::clamp(told.years[median] / bar_years, 0.0, 1.0);
      row.soon = told.years[median] < soon_years;
    } else {
      row.band = QString::fromStdString(told.words);
    }
    // First maintenance comes before the zinc is gone.
    if (told.limit == kneerail::forecast::Limit::coating_first_maintenance)
      rows.prepend(row);
    else
      rows.append(row);
  }
  time_left_.show(rows);
}

QString ForecastModel::gauge_name(const std::string& text) const {
  constexpr int serial = 2;
  for (const auto& instrument : instruments_.all()) {
    if (instrument.text() != text) continue;
    const auto* found = instrument.rest.find(serial);
    if (found != nullptr && found->text() != nullptr) return QString::fromStdString(*found->text());
  }
  return QString::fromStdString(text);
}
