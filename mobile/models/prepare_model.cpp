#include "mobile/models/prepare_model.h"

#include <algorithm>
#include <utility>

#include "mobile/models/day_words.h"

using kneerail::Database;
using kneerail::DayFound;
using kneerail::DayLine;
using kneerail::PreparedDay;
using kneerail::Result;
using kneerail::Uuid;
using kneerail::forecast::LineDone;
namespace words = kneerail::day_words;

namespace {

constexpr int usual_minutes = 330;
constexpr int by_the_day = -1;  // until the day is found
constexpr int longest_minutes = 480;
constexpr int minute = 60;

int sign_of(DayLine::Kind kind) {
  switch (kind) {
    case DayLine::Kind::told:
      return PrepareRows::Told;
    case DayLine::Kind::event:
      return PrepareRows::Event;
    case DayLine::Kind::closure:
      return PrepareRows::Closure;
    case DayLine::Kind::finding:
      return PrepareRows::Finding;
    case DayLine::Kind::look:
      return PrepareRows::Look;
    case DayLine::Kind::loose_screws:
    case DayLine::Kind::re_erect:
      return PrepareRows::Torque;
    case DayLine::Kind::thin_wall:
      return PrepareRows::Wall;
    case DayLine::Kind::bad_grade:
      return PrepareRows::Grade;
    case DayLine::Kind::past_chance:
      return PrepareRows::Torque;
    default:
      return PrepareRows::Coating;
  }
}

int sign_of(kneerail::InstrumentKind kind) {
  switch (kind) {
    case kneerail::InstrumentKind::coating_gauge:
      return PrepareRows::Coating;
    case kneerail::InstrumentKind::torque_wrench:
      return PrepareRows::Torque;
    default:
      return PrepareRows::Wall;
  }
}

}  // namespace

PrepareModel::PrepareModel(std::filesystem::path folder, StoreLink& store, ForecastWorker& worker,
                           kneerail::Clock& clock, QObject* parent)
    : QObject(parent),
      folder_(std::move(folder)),
      store_(store),
      worker_(worker),
      clock_(clock),
      reading_(folder_) {
  connect(&worker, &ForecastWorker::othersReckoned, this, [this] {
    if (!site_.is_zero()) refresh();
  });
}

PrepareModel::~PrepareModel() = default;

void PrepareModel::prepare(const Uuid& site) {
  const bool another = site != site_;
  site_ = site;
  if (another) {
    const PreparedDay before = kneerail::prepared_day(store_.reader().tables());
    const bool same = before.site == site;
    minutes_ = same && before.minutes > 0 ? before.minutes : by_the_day;
    carries_ = before.carried;
    if (!same || carries_.empty()) {
      std::erase(carries_, site);
      carries_.push_back(site);
    }
    known_ = false;
    day_ = {};
    done_ = 0;
    emit found();
  }
  refresh();
}

void PrepareModel::refresh() {
  if (site_.is_zero()) return;
  const kneerail::DayAsked asked{site_, clock_.now(), folder_, worker_.reckoning(),
                                 worker_.others()};
  reading_.ask<DayFound>(
      [asked](Database& tables, const auto&) { return kneerail::find_day(tables, asked); },
      [this, site = site_](Result<DayFound> made) {
        if (site != site_) return;  // another one is on its way
        trouble_ = made ? QString() : QString::fromStdString(made.error().message);
        if (made) return take(std::move(*made));
        emit found();
      });
}

void PrepareModel::take(DayFound made) {
  day_ = std::move(made);
  known_ = true;
  runs_.show(day_.runs);
  for (const kneerail::RunSheet& sheet : day_.sheets) runs_.show_drawing(sheet.id, sheet);
  if (minutes_ < 0) minutes_ = usual();
  minutes_ = std::min(minutes_, most_minutes());
  show_beside();
  emit found();
  choose();
}

int PrepareModel::most_minutes() const {
  return std::min(longest_minutes, day_.access_minutes().value_or(longest_minutes));
}

/// What is asked for, where a usual day does for it.
int PrepareModel::usual() const {
  const auto& tasks = day_.plan.tasks();
  const auto asked = std::find_if(tasks.begin(), tasks.end(), [&](const auto& task) {
    return day_.lines[static_cast<std::size_t>(task.line)].kind == DayLine::Kind::if_time;
  });
  const std::int64_t seconds =
      day_.plan.seconds_of(static_cast<std::size_t>(asked - tasks.begin()));
  constexpr std::int64_t step = std::int64_t{step_minutes} * minute;
  return std::min(usual_minutes, static_cast<int>((seconds + step - 1) / step) * step_minutes);
}

void PrepareModel::set_minutes(int minutes) {
  const int kept = std::clamp(minutes, 0, most_minutes());
  if (kept == minutes_) return;
  minutes_ = kept;
  choose();
}

/// As many tasks from the front as fit: one search, and a count for each line.
void PrepareModel::choose() {
  done_ = day_.plan.fit(std::int64_t{minutes_} * minute);
  mark_runs();
  show_lines();
  emit chosenChanged();
}

void PrepareModel::mark_runs() const {
  std::vector<std::vector<int>> marked(day_.runs.size());
  for (std::size_t i = 0; i < done_; ++i) {
    const kneerail::TaskAt& at = day_.at[i];
    if (at.chosen) marked[static_cast<std::size_t>(at.run)].push_back(at.part);
  }
  for (std::size_t run = 0; run < marked.size(); ++run) {
    std::sort(marked[run].begin(), marked[run].end());
    runs_.picture(run).mark(std::move(marked[run]));
  }
}

void PrepareModel::show_lines() {
  const std::vector<LineDone> done = day_.plan.lines(done_);
  QList<PrepareRows::Row> rows;
  for (std::size_t line = 0; line < done.size(); ++line) rows << row_of(line, done[line]);
  lines_.show(std::move(rows));
}

PrepareRows::Row PrepareModel::row_of(std::size_t line, const LineDone& done) const {
  const DayLine& own = day_.lines[line];
  PrepareRows::Row row;
  row.on = done.done > 0;
  row.name = words::what(own, row.on ? done.done : done.all);
  row.where = words::where(day_, line, done_) + words::hours(day_, own.run);
  row.why = own.why;
  if (row.on && done.done < done.all)
    row.why = tr("%1 %Ln more left out.", nullptr, done.all - done.done).arg(own.why);
  row.figure = row.on ? words::time(done.seconds) : tr("left out");
  if (own.kind == DayLine::Kind::event) row.figure.clear();
  row.sign = sign_of(own.kind);
  row.grade = own.grade;
  row.spoken = tr("%1, %2. %3 %4").arg(row.name, row.where, row.why, row.figure);
  return row;
}

/// What does not hang on the time: instruments and sites.
void PrepareModel::show_beside() {
  QList<PrepareRows::Row> instruments;
  for (const kneerail::DayInstrument& own : day_.begins.instruments) {
    PrepareRows::Row row;
    row.name = words::instrument_name(own);
    row.why = words::instrument(own, day_.day);
    row.on = own.to_take(day_.day);
    row.sign = sign_of(own.kind);
    row.figure = row.on ? tr("take") : tr("leave");
    row.spoken = tr("%1, %2, %3").arg(row.name, row.why, row.figure);
    instruments << row;
  }
  instruments_.show(std::move(instruments));
  QList<PrepareRows::Row> sites;
  for (const kneerail::SiteOnDisk& own : day_.begins.sites) {
    PrepareRows::Row row;
    row.name = QString::fromStdString(own.name);
    row.figure = words::size(own.bytes);
    row.on = std::find(carries_.begin(), carries_.end(), own.site) != carries_.end();
    row.spoken = row.on ? tr("%1, carried, %2").arg(row.name, row.figure)
                        : tr("%1, not carried, %2").arg(row.name, row.figure);
    sites << row;
  }
  carried_.show(std::move(sites));
  emit carryChanged();
}

void PrepareModel::carry(int site) {
  const auto& sites = day_.begins.sites;
  if (site < 0 || site >= static_cast<int>(sites.size())) return;
  const Uuid& id = sites[static_cast<std::size_t>(site)].site;
  if (std::erase(carries_, id) == 0) carries_.push_back(id);
  show_beside();
}

std::int64_t PrepareModel::carried_bytes() const {
  std::int64_t bytes = 0;
  for (const kneerail::SiteOnDisk& own : day_.begins.sites)
    if (std::find(carries_.begin(), carries_.end(), own.site) != carries_.end()) bytes += own.bytes;
  return bytes;
}

PreparedDay PrepareModel::chosen() const {
  PreparedDay day{day_.site, clock_.now().ms, minutes_, {}, carries_};
  for (std::size_t i = 0; i < done_; ++i)
    if (day_.at[i].chosen) day.parts.push_back(*day_.at[i].chosen);
  return day;
}

void PrepareModel::walkIt() {
  if (!known_) return;
  const PreparedDay day = chosen();
  store_.keep_settings(kneerail::settings_of(day), [this, day](const Result<>& done) {
    if (!done)
      return say(tr("Not kept: %1 What is chosen stands on this screen alone.")
                     .arg(QString::fromStdString(done.error().message)));
    say({});
    emit kept(day);
    lead_to(0);
  });
}

void PrepareModel::openLine(int line) {
  const auto& tasks = day_.plan.tasks();
  for (std::size_t i = 0; i < tasks.size(); ++i)
    if (tasks[i].line == line) return lead_to(i);
}

void PrepareModel::openRun(int run) {
  if (run < 0 || run >= static_cast<int>(day_.runs.size())) return;
  emit walkWanted(day_.runs[static_cast<std::size_t>(run)].id, {});
}

/// To where a task is done; of one that is nowhere on a drawing to the first that is.
void PrepareModel::lead_to(std::size_t task) {
  while (task < day_.at.size() && day_.at[task].run < 0) ++task;
  if (task >= day_.at.size()) return openRun(0);
  const kneerail::TaskAt& at = day_.at[task];
  const kneerail::RunSheet& sheet = day_.sheets[static_cast<std::size_t>(at.run)];
  Uuid subject;
  if (at.part >= 0)
    subject = sheet.parts[static_cast<std::size_t>(at.part)].id;
  else if (at.post >= 0)
    subject = sheet.posts[static_cast<std::size_t>(at.post)].id;
  emit walkWanted(sheet.id, subject);
}

void PrepareModel::putAway() {
  say({});
}

void PrepareModel::say(const QString& message) {
  if (message == message_) return;
  message_ = message;
  emit messageChanged();
}

QString PrepareModel::site_name() const {
  return QString::fromStdString(day_.site_name);
}

QString PrepareModel::day_words() const {
  return known_ ? words::day(day_.day) : QString();
}

QString PrepareModel::access_words() const {
  return known_ ? words::access(day_) : QString();
}

QString PrepareModel::take_words() const {
  return known_ ? words::to_take(day_.begins, day_.day) : QString();
}

QString PrepareModel::time_words() const {
  if (minutes_ < 0) return {};
  return words::time(std::int64_t{minutes_} * minute);
}

QString PrepareModel::posts_words() const {
  if (!known_) return {};
  int looked = 0;
  const auto done = day_.plan.lines(done_);
  for (std::size_t i = 0; i < done.size(); ++i)
    if (day_.lines[i].kind == DayLine::Kind::look) looked += done[i].done;
  if (looked < day_.posts)
    return tr("%L1 of %Ln post(s) looked at, the rest not reached", nullptr, day_.posts)
        .arg(looked);
  const int full = day_.plan.stops(done_);
  return full == 0
             ? tr("%Ln post(s) by eye", nullptr, day_.posts)
             : tr("%L1 of %Ln post(s) with an instrument, the rest by eye", nullptr, day_.posts)
                   .arg(full);
}

QString PrepareModel::left_out_words() const {
  if (!known_) return {};
  if (!day_.not_reckoned.isEmpty()) return day_.not_reckoned;
  const auto& tasks = day_.plan.tasks();
  int first = 0;
  int posts = 0;
  int readings = 0;
  int screws = 0;
  for (std::size_t i = done_; i < tasks.size(); ++i) {
    const DayLine::Kind kind = day_.lines[static_cast<std::size_t>(tasks[i].line)].kind;
    if (kind <= DayLine::Kind::finding)
      ++first;
    else if (kind == DayLine::Kind::look)
      ++posts;
    else if (kind == DayLine::Kind::re_erect)
      ++screws;
    else if (kind != DayLine::Kind::if_time)
      ++readings;
  }
  QStringList out;
  if (first > 0) out << tr("%Ln thing(s) that come first", nullptr, first);
  if (posts > 0) out << tr("%Ln post(s) to look at", nullptr, posts);
  if (readings > 0) out << tr("%Ln part(s) to measure", nullptr, readings);
  if (screws > 0) out << tr("%Ln screw(s) to sign", nullptr, screws);
  if (!out.isEmpty()) return tr("Left out: %1.").arg(out.join(tr(", ")));
  const std::int64_t over = std::int64_t{minutes_} * minute - day_.plan.seconds_of(done_);
  return done_ < tasks.size()
             ? tr("Nothing that is asked for is left out.")
             : tr("Nothing is left out; %1 to spare.").arg(words::time(over - over % minute));
}

QString PrepareModel::chosen_words() const {
  const auto count =
      std::count_if(day_.at.begin(), day_.at.begin() + static_cast<std::ptrdiff_t>(done_),
                    [](const kneerail::TaskAt& at) { return at.chosen.has_value(); });
  return tr("%Ln part(s) to measure", nullptr, static_cast<int>(count));
}

QString PrepareModel::carry_words() const {
  return known_ ? words::size(carried_bytes()) : QString();
}
