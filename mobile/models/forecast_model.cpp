#include "mobile/models/forecast_model.h"

#include <QLocale>
#include <algorithm>
#include <cmath>
#include <utility>

#include "core/records/entities.h"
#include "mobile/models/forecast_words.h"
#include "mobile/models/limit_words.h"
#include "mobile/models/part_words.h"

using kneerail::PartTold;
using kneerail::RunSheet;
using kneerail::SheetPart;
using kneerail::Uuid;
using kneerail::forecast::PartStory;

namespace {

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
  connect(&worker, &ForecastWorker::othersReckoned, this, &ForecastModel::on_reckoned);
  connect(&worker, &ForecastWorker::partTold, this,
          [this](const Uuid& component, const auto& told) {
            const SheetPart* own = part();
            if (own == nullptr || own->id != component) return;
            stale_ = false;
            if (!*told) return say(QString::fromStdString(told->error().message));
            take(**told);
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

const std::vector<Uuid>& ForecastModel::worst_first() const {
  static const std::vector<Uuid> none;
  const auto others = worker_.others();
  return others ? others->worst_first : none;  // the worker holds it until it tells of another
}

QString ForecastModel::worst_words() const {
  const std::size_t parts = worst_first().size();
  if (parts == 0) return {};
  const QLocale locale;
  return tr("%1 of %2")
      .arg(locale.toString(qulonglong{worst_ % parts + 1}), locale.toString(qulonglong{parts}));
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
  const std::vector<Uuid>& parts = worst_first();
  if (parts.empty()) return;
  const Uuid component = parts[worst_ % parts.size()];
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
  take(kneerail::told_of(*known, worker_.others().get(), place->second));
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

void ForecastModel::take(const PartTold& told) {
  const auto known = worker_.reckoning();
  if (told.coating) {
    draw(*told.coating);
  } else {
    drawn_ = false;
    message_ = QString::fromStdString(told.coating.error().message);
    headline_ = tr("Its coating is not reckoned.");
    reason_.clear();
  }
  const QString limits = kneerail::limits_reason(told, known->as_of());
  reason_ = reason_.isEmpty() ? limits : tr("%1 %2").arg(reason_, limits);
  fill_time_left(told);
  emit trendChanged();
  emit shown();
}

void ForecastModel::draw(const PartStory& story) {
  const auto gauge = [this](const std::string& text) { return gauge_name(text); };
  trend_ = kneerail::trend_picture(story, gauge);
  message_.clear();
  drawn_ = true;
  reason_ = kneerail::reason_words(story, gauge);
  headline_ = kneerail::rate_headline(story);
}

void ForecastModel::fill_time_left(const PartTold& told) {
  auto rows = kneerail::limit_rows(told, worker_.reckoning()->as_of());
  if (!told.whole) {
    TimeLeftModel::Row rest;
    rest.name = tr("Structure, torque, grade");
    rest.band =
        worker_.others_trouble().isEmpty() ? tr("Being reckoned.") : worker_.others_trouble();
    rest.spoken = tr("%1: %2").arg(rest.name, rest.band);
    rows << rest;
  }
  time_left_.show(rows);
}

QString ForecastModel::gauge_name(const std::string& text) const {
  for (const auto& instrument : instruments_.all())
    if (instrument.text() == text && !instrument.code.empty())
      return QString::fromStdString(instrument.code);
  return QString::fromStdString(text);
}
