// The words of the Findings room.

#include <QLocale>
#include <algorithm>

#include "mobile/models/finding_words.h"
#include "mobile/models/findings_model.h"
#include "mobile/models/forecast_words.h"
#include "mobile/models/part_words.h"
#include "mobile/picture/photograph_marks.h"

using kneerail::HazardState;
using kneerail::HowEnded;
using kneerail::Instant;
using kneerail::KeptFinding;
using kneerail::NextStepKind;
using kneerail::RunSheet;

QString FindingsModel::day_and_time(Instant at) const {
  const QDateTime local = walk_.pen().local(at);
  return tr("%1 %2").arg(QLocale().toString(local.date(), tr("d MMM yyyy")),
                         local.time().toString(QStringLiteral("HH:mm")));
}

QString FindingsModel::site_name() const {
  return walk_.site_name();
}

QString FindingsModel::count_words() const {
  const auto& all = found_.findings;
  const auto open =
      std::count_if(all.begin(), all.end(), [](const KeptFinding& one) { return !one.ended_how; });
  const auto waits = std::count_if(all.begin(), all.end(),
                                   [](const KeptFinding& one) { return one.cannot_wait(); });
  return waits == 0 ? tr("%1 open").arg(open) : tr("%1 open, %2 cannot wait").arg(open).arg(waits);
}

QString FindingsModel::empty_words() const {
  if (!known_ || !trouble_.isEmpty()) return trouble_;
  return run_only_ ? tr("Nothing found on this run.") : tr("Nothing found at this site.");
}

QString FindingsModel::last_look() const {
  if (!known_) return {};
  if (!found_.last_look) return tr("Nobody has looked yet.");
  return tr("Last look %1")
      .arg(QLocale().toString(walk_.pen().local(*found_.last_look).date(), tr("d MMM yyyy")));
}

QString FindingsModel::ended_words() const {
  return tr("%n at this site", nullptr, static_cast<int>(found_.ended));
}

QString FindingsModel::not_safe_count() const {
  const auto open = not_safe();
  if (open.empty()) return {};
  if (open.size() == 1)
    return tr("%1 cannot wait").arg(QString::fromStdString(open.front()->number));
  return tr("%n cannot wait", nullptr, static_cast<int>(open.size()));
}

QString FindingsModel::not_safe_words() const {
  return not_safe().empty() ? QString() : tr("Not made safe");
}

QString FindingsModel::place_words(const KeptFinding& finding) const {
  const RunSheet* sheet = sheet_of(finding);
  if (sheet == nullptr) return tr("no longer on the drawing");
  const QString place = kneerail::place_words(*sheet, finding.subject);
  return place.isEmpty() ? QString::fromStdString(sheet->name) : place;
}

QString FindingsModel::what_words(const KeptFinding& finding) const {
  const QString kind = kneerail::finding_name(finding.what);
  return finding.text.empty() ? kind : QString::fromStdString(finding.text);
}

/// What was done; where nothing is asked to be done, what is next.
QString FindingsModel::done_words(const KeptFinding& finding) const {
  if (finding.ended_how) {
    const QString day =
        QLocale().toString(walk_.pen().local(*finding.ended_at).date(), tr("d MMM yyyy"));
    const QString ended = tr("%1 %2").arg(kneerail::ended_name(*finding.ended_how), day);
    return finding.ended_on ? tr("%1, %2").arg(ended, kneerail::ended_on_name(*finding.ended_on))
                            : ended;
  }
  QStringList done;
  for (const kneerail::Measure measure : finding.measures) done << kneerail::measure_name(measure);
  const QString since = finding.safe_since ? day_and_time(*finding.safe_since) : QString();
  if (finding.is_gone()) return tr("not made safe: %1, gone %2").arg(done.join(tr(", ")), since);
  if (finding.hazard == HazardState::open)
    return done.isEmpty() ? tr("not made safe")
                          : tr("not made safe: %1 %2").arg(done.join(tr(", ")), since);
  if (finding.hazard == HazardState::made_safe) return tr("%1 %2").arg(done.join(tr(", ")), since);
  if (!finding.why_it_can_wait.empty())
    return tr("can wait: %1").arg(QString::fromStdString(finding.why_it_can_wait));
  if (!finding.next) return tr("what is next is not said");
  return mend_words(finding);
}

/// What is next; a mending that was put off with both days and why.
QString FindingsModel::mend_words(const KeptFinding& finding) const {
  if (!finding.next) return tr("not mended");
  if (*finding.next != NextStepKind::mend || !finding.mend_by)
    return kneerail::next_step_name(*finding.next);
  const QString day = kneerail::whole_day(*finding.mend_by);
  if (!finding.mend_by_before || !finding.put_off) return tr("mend by %1").arg(day);
  return tr("mend by %1, put off from %2: %3")
      .arg(day, kneerail::whole_day(*finding.mend_by_before),
           kneerail::put_off_name(*finding.put_off));
}

QString FindingsModel::read_words(const KeptFinding& finding) const {
  QStringList all;
  for (const auto& one : finding.read)
    all << tr("%1 %2").arg(QString::fromStdString(one.initials), day_and_time(one.at));
  return all.isEmpty() ? QString() : tr("read by %1").arg(all.join(tr(", ")));
}

QString FindingsModel::next_words(const KeptFinding& finding) const {
  if (finding.ended_how) return {};
  QStringList words;
  if (finding.hazard == HazardState::made_safe && finding.look_again_by) {
    const bool past = finding.look_again_by->ms < walk_.pen().now().ms;
    words << (past && finding.safe_since
                  ? tr("closure not seen since %1").arg(day_and_time(*finding.safe_since))
                  : tr("look again by %1").arg(day_and_time(*finding.look_again_by)));
  }
  if (finding.cannot_wait() || !finding.why_it_can_wait.empty())
    words << mend_words(finding);
  else
    words << tr("found %1")
                 .arg(QLocale().toString(walk_.pen().local({finding.found_ms}).date(),
                                         tr("d MMM yyyy")));
  if (const QString read = read_words(finding); !read.isEmpty()) words << read;
  return words.join(tr(" · "));
}

QString FindingsModel::stands_words() const {
  const KeptFinding* finding = open_();
  if (finding == nullptr) return {};
  QStringList lines{done_words(*finding), kneerail::told_words(finding->told, walk_.pen()),
                    next_words(*finding)};
  lines.removeAll(QString());
  return lines.join('\n');
}

QString FindingsModel::read_words() const {
  const KeptFinding* finding = open_();
  return finding == nullptr ? QString() : read_words(*finding);
}

bool FindingsModel::asks_to_read() const {
  const KeptFinding* finding = open_();
  if (finding == nullptr || !found_.answers || !walk_.writable()) return false;
  const kneerail::Uuid who = walk_.pen().hand().who;
  return std::none_of(finding->read.begin(), finding->read.end(),
                      [&](const auto& one) { return one.person == who; });
}

bool FindingsModel::ended() const {
  const KeptFinding* finding = open_();
  return finding != nullptr && finding->ended_how.has_value();
}

QString FindingsModel::title() const {
  const KeptFinding* finding = open_();
  return finding == nullptr
             ? QString()
             : tr("%1 · %2").arg(QString::fromStdString(finding->number), place_words(*finding));
}

QString FindingsModel::kind_words() const {
  const KeptFinding* finding = open_();
  return finding == nullptr ? QString() : kneerail::finding_name(finding->what);
}

QString FindingsModel::said_words() const {
  const KeptFinding* finding = open_();
  return finding == nullptr ? QString() : QString::fromStdString(finding->text);
}

int FindingsModel::grade() const {
  const KeptFinding* finding = open_();
  return finding == nullptr ? 0 : finding->grade;
}

bool FindingsModel::boarded() const {
  const KeptFinding* finding = open_();
  return finding != nullptr && finding->cannot_wait();
}

bool FindingsModel::not_held() const {
  const KeptFinding* finding = open_();
  return finding != nullptr && finding->hazard == HazardState::open;
}

QString FindingsModel::done_words() const {
  const KeptFinding* finding = open_();
  return finding == nullptr ? QString() : done_words(*finding);
}

QString FindingsModel::next_words() const {
  const KeptFinding* finding = open_();
  return finding == nullptr ? QString() : next_words(*finding);
}

QUrl FindingsModel::photograph() const {
  const KeptFinding* finding = open_();
  return finding == nullptr || finding->photographs.empty()
             ? QUrl()
             : object(finding->photographs.front().sha256);
}

QString FindingsModel::marks() const {
  const KeptFinding* finding = open_();
  return finding == nullptr || finding->photographs.empty()
             ? QString()
             : kneerail::marks_text(finding->photographs.front().marks);
}

int FindingsModel::next_step() const {
  const KeptFinding* finding = open_();
  return finding == nullptr || !finding->next ? 0 : static_cast<int>(*finding->next);
}

QList<int> FindingsModel::measures() const {
  QList<int> codes;
  const KeptFinding* finding = open_();
  if (finding == nullptr) return codes;
  for (const kneerail::Measure measure : finding->measures) codes << static_cast<int>(measure);
  return codes;
}

bool FindingsModel::asks_whether_it_stands() const {
  const KeptFinding* finding = open_();
  return finding != nullptr && finding->cannot_wait() && !finding->measures.empty();
}
