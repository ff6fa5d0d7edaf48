#include "mobile/models/visit_close.h"

#include <QLocale>
#include <QPointer>
#include <QQmlEngine>
#include <algorithm>
#include <utility>

#include "mobile/models/forecast_words.h"
#include "mobile/models/part_words.h"
#include "schema/store/organisation_days.h"

using kneerail::Instant;
using kneerail::PostStretch;
using kneerail::Result;
using kneerail::RunSheet;
using kneerail::VisitClosing;
using kneerail::VisitKind;

namespace {

constexpr std::int64_t hour_ms = 3'600'000;
constexpr std::int64_t minute_ms = 60'000;
constexpr std::size_t hazards_shown = 3;

QString kind_words(VisitKind kind) {
  switch (kind) {
    case VisitKind::routine:
      return VisitClose::tr("routine visit");
    case VisitKind::detailed:
      return VisitClose::tr("detailed visit");
    case VisitKind::after_an_event:
      return VisitClose::tr("visit after an event");
    case VisitKind::after_work:
      return VisitClose::tr("visit after work");
    case VisitKind::before_opening:
      return VisitClose::tr("visit before opening");
    case VisitKind::strike:
      return VisitClose::tr("strike");
    case VisitKind::re_erect:
      return VisitClose::tr("re-erecting");
  }
  return {};
}

/// The words of the records; a reason this program does not know is "other".
QString why_words(const std::string& why) {
  if (why == "locked") return VisitClose::tr("locked");
  if (why == "water") return VisitClose::tr("water");
  if (why == "blocked") return VisitClose::tr("blocked");
  if (why == "unsafe") return VisitClose::tr("unsafe");
  if (why == "no time") return VisitClose::tr("no time");
  if (why == "struck") return VisitClose::tr("struck");
  return VisitClose::tr("another reason");
}

int posts_in(const PostStretch& stretch) {
  return stretch.to - stretch.from + 1;
}

}  // namespace

VisitClose::VisitClose(std::filesystem::path folder, WalkModel& walk, kneerail::Clock& clock,
                       QObject* parent)
    : QAbstractListModel(parent), walk_(walk), clock_(clock), reading_(std::move(folder)) {}

VisitClose::~VisitClose() = default;

int VisitClose::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(pictures_.size());
}

QHash<int, QByteArray> VisitClose::roleNames() const {
  return {{NameRole, "name"}, {PictureRole, "picture"},   {FromRole, "from"},    {ToRole, "to"},
          {WhyRole, "why"},   {WhyLinesRole, "whyLines"}, {SpokenRole, "spoken"}};
}

QVariant VisitClose::data(const QModelIndex& index, int role) const {
  const auto run = static_cast<std::size_t>(index.row());
  if (!index.isValid() || run >= pictures_.size()) return {};
  QList<int> from;
  QList<int> to;
  QStringList why;
  for (const auto& skipped : closing_.skipped) {
    if (skipped.posts.run != run) continue;
    from << skipped.posts.from;
    to << skipped.posts.to;
    why << tr("%1 %2").arg(posts_words(skipped.posts), why_words(skipped.why));
  }
  const QString name = QString::fromStdString(closing_.runs[run].name);
  switch (role) {
    case NameRole:
      return name;
    case PictureRole:
      return QVariant::fromValue(pictures_[run].get());
    case FromRole:
      return QVariant::fromValue(from);
    case ToRole:
      return QVariant::fromValue(to);
    case WhyRole:
      return why;
    case WhyLinesRole:
      return why.join(QLatin1Char('\n'));
    case SpokenRole:
      return why.isEmpty() ? name : tr("%1, not reached: %2").arg(name, why.join(tr(", ")));
    default:
      return {};
  }
}

void VisitClose::open() {
  walk_.settle();
  sealed_ = false;
  message_.clear();
  const auto site = walk_.pen().site();
  const auto visit = walk_.pen().visit();
  const Instant now = clock_.now();
  person_ = walk_.person_words();
  reading_.ask<Found>(
      [site, visit, now](kneerail::Database& tables, const auto&) -> Result<Found> {
        auto days = kneerail::organisation_days(tables);
        if (!days) return kneerail::fail(days.error());
        auto closing = kneerail::read_closing(tables, site, visit, now);
        if (!closing) return kneerail::fail(closing.error());
        return Found{std::move(*closing), std::move(days->zone)};
      },
      [this](Result<Found> found) {
        if (found) return take(std::move(*found));
        known_ = false;
        message_ = QString::fromStdString(found.error().message);
        emit changed();
      });
  emit changed();
}

void VisitClose::take(Found found) {
  beginResetModel();
  closing_ = std::move(found.closing);
  zone_ = std::move(found.zone);
  pictures_.clear();
  for (const RunSheet& sheet : closing_.runs) {
    pictures_.push_back(std::make_unique<RunPicture>());
    QQmlEngine::setObjectOwnership(pictures_.back().get(), QQmlEngine::CppOwnership);
    pictures_.back()->show(std::make_shared<const RunSheet>(sheet));
  }
  reckon_asks();
  known_ = true;
  endResetModel();
  emit changed();
}

void VisitClose::seal(const QByteArray& signature) {
  if (!known_ || sealed_ || sealing_) return;
  sealing_ = true;
  entries_ = walk_.pen().entries_kept();
  message_.clear();
  emit changed();
  walk_.pen().seal({signature.begin(), signature.end()},
                   [self = QPointer<VisitClose>(this)](const QString& why_not) {
                     if (!self) return;
                     self->sealing_ = false;
                     self->sealed_ = why_not.isEmpty();
                     self->sealed_at_ = self->clock_.now();
                     self->message_ = why_not;
                     if (self->sealed_) self->walk_.sealed();
                     emit self->changed();
                   });
}

QString VisitClose::time_of(Instant at) const {
  constexpr std::int64_t day_ms = 24 * hour_ms;
  const std::int64_t local_ms = at.ms + 1000LL * zone_.offset_s(at);
  const QTime time =
      QTime::fromMSecsSinceStartOfDay(static_cast<int>((local_ms % day_ms + day_ms) % day_ms));
  return QLocale().toString(time, QStringLiteral("HH:mm"));
}

QString VisitClose::posts_words(const PostStretch& stretch) const {
  const auto& posts = closing_.runs[stretch.run].posts;
  const auto label = [&](int post) {
    return QString::fromStdString(posts[static_cast<std::size_t>(post)].label);
  };
  if (stretch.from == stretch.to) return label(stretch.from);
  return tr("%1 to %2").arg(label(stretch.from), label(stretch.to));
}

QString VisitClose::cell_words() const {
  return known_ ? tr("Close visit %1").arg(closing_.number) : tr("Close the visit");
}

QString VisitClose::title() const {
  if (!known_) return tr("Close the visit");
  const auto day = zone_.day_of_entry(closing_.first);
  return tr("Visit %1 · %2 · %3")
      .arg(closing_.number)
      .arg(QString::fromStdString(closing_.site_name), kneerail::whole_day(day));
}

QString VisitClose::about() const {
  if (!known_) return {};
  QStringList words{person_, kind_words(closing_.kind)};
  QStringList instruments;
  for (const std::string& serial : closing_.instruments)
    instruments << QString::fromStdString(serial);
  words << instruments.join(tr(", "));
  words << tr("%1 to %2").arg(time_of(closing_.first), time_of(closing_.last));
  words.removeAll(QString());
  return words.join(tr(" · "));
}

int VisitClose::most_posts() const {
  int most = 1;
  for (const RunSheet& run : closing_.runs)
    most = std::max(most, static_cast<int>(run.posts.size()));
  return most;
}

QStringList VisitClose::figures() const {
  const QLocale locale;
  return {locale.toString(closing_.posts_seen), locale.toString(closing_.coating_readings),
          locale.toString(closing_.screws_checked), locale.toString(closing_.findings)};
}

QStringList VisitClose::figure_words() const {
  const auto safe = static_cast<int>(closing_.findings_made_safe);
  return {tr("of %Ln post(s) seen", nullptr, static_cast<int>(closing_.posts)),
          closing_.walls_read > 0
              ? tr("coating readings, %Ln wall(s)", nullptr, static_cast<int>(closing_.walls_read))
              : tr("coating readings"),
          tr("screws checked"),
          safe > 0 ? tr("findings, %Ln made safe", nullptr, safe) : tr("findings")};
}

QList<int> VisitClose::grades() const {
  QList<int> counts;
  for (std::size_t grade = 1; grade < closing_.grades.size(); ++grade)
    counts << static_cast<int>(closing_.grades[grade]);
  return counts;
}

QStringList VisitClose::asks() const {
  QStringList words;
  for (const Ask& ask : asks_) words << ask.words;
  return words;
}

QList<int> VisitClose::ask_signs() const {
  QList<int> signs;
  for (const Ask& ask : asks_) signs << ask.sign;
  return signs;
}

void VisitClose::reckon_asks() {
  asks_.clear();
  ask_hazards();
  ask_posts();
  ask_readings();
  if (asks_.empty()) add(NoSign, tr("Nothing is left open."));
}

void VisitClose::ask_hazards() {
  const auto& hazards = closing_.hazards;
  for (std::size_t i = 0; i < std::min(hazards.size(), hazards_shown); ++i) {
    const auto& hazard = hazards[i];
    const QString number = QString::fromStdString(hazard.number);
    const QString where = hazard.post.empty()
                              ? number
                              : tr("%1 post %2").arg(number, QString::fromStdString(hazard.post));
    const QString what = kneerail::finding_word(hazard.what);
    const QString which = what.isEmpty() ? where : tr("%1, %2").arg(where, what);
    if (!hazard.made_safe)
      add(Board, hazard.told ? tr("%1: not made safe.").arg(which)
                             : tr("%1: not made safe. Nobody told yet.").arg(which));
    else
      add(Board, tr("%1: made safe. Nobody told yet.").arg(which));
  }
  if (hazards.size() > hazards_shown)
    add(Board, tr("%n more finding(s) that cannot wait.", nullptr,
                  static_cast<int>(hazards.size() - hazards_shown)));
  if (closing_.closures_past > 0)
    add(Board, tr("%n closure(s) should have been looked at by now.", nullptr,
                  static_cast<int>(closing_.closures_past)));
}

void VisitClose::ask_posts() {
  int open = 0;
  for (const PostStretch& stretch : closing_.open) open += posts_in(stretch);
  if (open > 0) {
    const PostStretch& first = closing_.open.front();
    add(Hollow,
        tr("%Ln post(s) without a look and without a reason, first %1 on %2.", nullptr, open)
            .arg(posts_words(first), QString::fromStdString(closing_.runs[first.run].name)));
  }
  int skipped = 0;
  for (const auto& stretch : closing_.skipped) skipped += posts_in(stretch.posts);
  if (skipped > 0)
    add(Hollow,
        tr("%Ln post(s) not reached: reasons given. They stay open and due.", nullptr, skipped));
  if (closing_.parts_without_fresh_look > 0)
    add(Hollow, tr("%Ln part(s) had no fresh look for two visits or more.", nullptr,
                   static_cast<int>(closing_.parts_without_fresh_look)));
}

void VisitClose::ask_readings() {
  for (const auto& stretch : closing_.by_eye)
    add(NoSign, tr("Posts %1 by eye: %2 s each.")
                    .arg(posts_words(stretch.posts))
                    .arg(stretch.seconds_each));
  for (const auto& zero : closing_.old_zeros) {
    const QString serial = QString::fromStdString(zero.serial);
    const auto count = static_cast<int>(zero.readings);
    if (zero.oldest_ms == 0)
      add(NoSign,
          tr("Gauge %1 was never zeroed: %Ln reading set(s) have a wider error.", nullptr, count)
              .arg(serial));
    else
      add(NoSign, tr("Gauge %1, zero %2 h %3 min old: %Ln reading set(s) have a wider error.",
                     nullptr, count)
                      .arg(serial)
                      .arg(zero.oldest_ms / hour_ms)
                      .arg(zero.oldest_ms % hour_ms / minute_ms));
  }
}

QString VisitClose::seal_words() const {
  const auto pictures = static_cast<int>(closing_.photographs);
  const std::int64_t count = sealing_ || sealed_ ? entries_ : walk_.pen().entries_kept();
  const QString entries = tr("%Ln entries", nullptr, static_cast<int>(count));
  const QString fixed =
      pictures > 0 ? tr("%1 and %2").arg(entries, tr("%Ln photograph(s)", nullptr, pictures))
                   : entries;
  return tr("Fixes %1 under one digest. Later changes are added as corrections, with both values "
            "shown. Nothing is taken away.")
      .arg(fixed);
}

QString VisitClose::digest() const {
  const QString hex = QString::fromStdString(closing_.digest);
  if (hex.size() < 16) return {};
  return tr("%1 %2 · %3 %4").arg(hex.mid(0, 4), hex.mid(4, 4), hex.mid(8, 4), hex.mid(12, 4));
}

QString VisitClose::signed_by() const {
  if (sealed_) return tr("%1 · sealed %2").arg(person_, time_of(sealed_at_));
  return tr("%1 · %2").arg(person_, time_of(clock_.now()));
}
