// The words of the Walk room: where it is, the title block, what is said.

#include <QLocale>
#include <algorithm>

#include "mobile/models/part_words.h"
#include "mobile/models/walk_model.h"

QString WalkModel::site_name() const {
  return QString::fromStdString(sheet().site_name);
}
QString WalkModel::run_name() const {
  return QString::fromStdString(sheet().name);
}

QString WalkModel::post_label() const {
  if (run_.post() < 0) return {};
  return QString::fromStdString(sheet().posts[static_cast<std::size_t>(run_.post())].label);
}

QString WalkModel::part_title() const {
  if (run_.post() < 0) return {};
  if (run_.part() >= 0)
    return tr("%1 · %2").arg(post_label(), kneerail::part_name(sheet(), run_.part()));
  const auto& post = sheet().posts[static_cast<std::size_t>(run_.post())];
  if (run_.bay() >= 0) return kneerail::spoken_bay(sheet(), run_.bay());
  return post.landmark.empty()
             ? tr("Post %1").arg(post_label())
             : tr("Post %1 · %2").arg(post_label(), QString::fromStdString(post.landmark));
}

QString WalkModel::next_words() const {
  const int next = next_part_place();
  if (next >= 0) return kneerail::part_name(sheet(), next);
  return next_post_label().isEmpty() ? QString() : tr("post %1").arg(next_post_label());
}

QString WalkModel::next_post_label() const {
  const int next = run_.post() + 1;
  if (next >= run_.posts()) return {};
  return QString::fromStdString(sheet().posts[static_cast<std::size_t>(next)].label);
}

QString WalkModel::back_post_label() const {
  return postLabelAt(run_.post() - 1);
}

QString WalkModel::postLabelAt(int post) const {
  if (post < 0 || post >= run_.posts()) return {};
  return QString::fromStdString(sheet().posts[static_cast<std::size_t>(post)].label);
}

QString WalkModel::post_about() const {
  const auto order = parts_in_order(run_.post());
  if (order.empty()) return tr("nothing stands here");
  int worst = 0;
  bool all = true;
  for (const int place : order) {
    const auto& last = sheet().parts[static_cast<std::size_t>(place)].last;
    worst = std::max(worst, last ? last->grade : 0);
    all = all && last;
  }
  const QString parts = tr("%n part(s)", nullptr, static_cast<int>(order.size()));
  if (worst == 0) return tr("%1, not graded before").arg(parts);
  if (!all) return tr("%1, not all graded before").arg(parts);
  if (worst > 2) return tr("%1, grade %2 among them last time").arg(parts).arg(worst);
  return tr("%1, all grade 1 or 2 last time").arg(parts);
}

int WalkModel::postOfPart(int part) const {
  const bool there = part >= 0 && part < static_cast<int>(sheet().parts.size());
  return there ? sheet().parts[static_cast<std::size_t>(part)].post : -1;
}

/// Struck posts are not counted: there is nothing to see.
QString WalkModel::run_counts() const {
  const auto& posts = sheet().posts;
  const auto in = [&](kneerail::PostState state) {
    return QLocale().toString(std::count_if(
        posts.begin(), posts.end(), [state](const auto& post) { return post.state == state; }));
  };
  const QString counts = tr("%1 seen · %2 skipped · %3 open")
                             .arg(in(kneerail::PostState::seen), in(kneerail::PostState::skipped),
                                  in(kneerail::PostState::open));
  if (run_.marked().empty()) return counts;
  return tr("%1 · %2 chosen to measure")
      .arg(counts, QLocale().toString(qulonglong{run_.marked().size()}));
}

QString WalkModel::pushed_means() const {
  QStringList words;
  for (const auto& bay : sheet().bays)
    if (bay.from == run_.post() && !bay.struck)
      words << tr("bay %1 to %2 firm too").arg(postLabelAt(bay.from), postLabelAt(bay.to));
  if (!next_post_label().isEmpty()) words << tr("on to %1").arg(next_post_label());
  return words.join(QStringLiteral(" · "));
}

QString WalkModel::gauge_caption() const {
  return check_.caption();
}
QString WalkModel::gauge_words() const {
  return check_.cell_words();
}
bool WalkModel::gauge_old() const {
  return check_.old();
}

QString WalkModel::kept_caption() const {
  if (!writable()) return tr("Read only");
  if (!place_kept_) return tr("Kept, but not where you are");
  const QTime kept = pen_.kept_at();
  return kept.isValid() ? tr("Saved %1").arg(kept.toString(QStringLiteral("HH:mm:ss")))
                        : tr("Kept here");
}

QString WalkModel::kept_words() const {
  return tr("%n entries", nullptr, static_cast<int>(pen_.entries_kept()));
}

QString WalkModel::waiting_words() const {
  if (waiting_.isEmpty()) return {};
  if (waiting_.size() == 1) return tr("%1 µm waiting").arg(waiting_.front());
  return tr("%1 µm and %n more waiting", nullptr, static_cast<int>(waiting_.size()) - 1)
      .arg(waiting_.front());
}

/// Once: what was found and mended, and what was still typed when the machine went off.
QString WalkModel::opening_words() const {
  if (opening_told_) return {};
  QStringList words;
  const kneerail::Opening& opening = store_.opening();
  if (opening.drafts_closed > 0)
    words << tr("%n entry that was being typed is kept.", nullptr,
                static_cast<int>(opening.drafts_closed));
  if (writable())
    for (const std::string& note : opening.notes) words << QString::fromStdString(note);
  else
    words << QString::fromStdString(store_.why_read_only());
  return words.join(' ');
}

QString WalkModel::message() const {
  return pen_.trouble().isEmpty() ? message_ : pen_.trouble();
}
