#include "mobile/models/hazard_line.h"

#include <algorithm>
#include <utility>

#include "core/records/made_safe.h"
#include "core/records/particulars.h"
#include "mobile/models/finding_words.h"
#include "mobile/models/part_words.h"

using kneerail::HazardState;
using kneerail::KeptFinding;
using kneerail::MadeSafe;
using kneerail::Measure;
using kneerail::Uuid;

namespace {

constexpr std::int64_t minute_ms = 60'000;

}  // namespace

HazardLine::HazardLine(StoreLink& store, WalkModel& walk, FindingsModel& findings, QObject* parent)
    : QAbstractListModel(parent), store_(store), walk_(walk), findings_(findings) {
  minute_.setSingleShot(true);
  minute_.setTimerType(Qt::VeryCoarseTimer);
  connect(&minute_, &QTimer::timeout, this, &HazardLine::read_the_clock);
  connect(&findings_, &FindingsModel::standingChanged, this, &HazardLine::standing_changed);
  connect(&walk_, &WalkModel::titleChanged, this, &HazardLine::read_the_clock);
  connect(&walk_, &WalkModel::writableChanged, this, &HazardLine::openedChanged);
}

std::vector<const KeptFinding*> HazardLine::untold() const {
  std::vector<const KeptFinding*> all;
  const Uuid who = walk_.pen().hand().who;
  for (const KeptFinding& one : findings_.standing())
    if (one.told.empty() && one.who == who) all.push_back(&one);
  return all;
}

void HazardLine::read_the_clock() {
  const auto all = untold();
  QString words;
  if (all.empty()) {
    minute_.stop();
  } else {
    const KeptFinding& oldest = *all.front();
    const QString number = QString::fromStdString(oldest.number);
    const std::int64_t age_ms = std::max<std::int64_t>(0, walk_.pen().now().ms - oldest.found_ms);
    const QString which =
        all.size() == 1
            ? number
            : tr("%1 and %n more", nullptr, static_cast<int>(all.size()) - 1).arg(number);
    words = kneerail::nobody_told(which, age_ms / minute_ms);
    minute_.start(static_cast<int>(minute_ms - age_ms % minute_ms));
  }
  if (words == words_) return;
  words_ = words;
  emit changed();
}

void HazardLine::standing_changed() {
  read_the_clock();
  if (!opened()) return;
  if (open_() == nullptr) return close();
  emit dataChanged(index(0), index(std::max(0, rowCount() - 1)));
  emit openedChanged();
}

const KeptFinding* HazardLine::open_() const {
  const auto& all = findings_.standing();
  const auto at = std::find_if(all.begin(), all.end(),
                               [this](const KeptFinding& one) { return one.record == opened_; });
  return at == all.end() ? nullptr : &*at;
}

void HazardLine::open() {
  const auto all = untold();
  if (all.empty()) return;
  opened_ = all.front()->record;
  find_people(all.front()->site);
  emit openedChanged();
}

void HazardLine::close() {
  opened_ = {};
  emit openedChanged();
}

/// A few small objects, read when a person asks for them.
void HazardLine::find_people(const Uuid& site) {
  beginResetModel();
  people_.clear();
  if (auto known = kneerail::people_to_tell(store_.reader().tables(), site))
    for (kneerail::PersonToTell& one : *known) {
      Person person{std::move(one), {}, {}};
      person.name = QString::fromStdString(person.known.initials);
      if (person.known.particulars)
        if (const auto bytes = store_.reader().object(*person.known.particulars))
          if (const auto kept = kneerail::particulars_from(*bytes)) {
            person.name = QString::fromStdString(kept->name);
            person.telephone = QString::fromStdString(kept->telephone);
          }
      people_.push_back(std::move(person));
    }
  endResetModel();
}

int HazardLine::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(people_.size());
}

QVariant HazardLine::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const Person& person = people_[static_cast<std::size_t>(index.row())];
  const QString told = told_at(person.known.id);
  switch (role) {
    case NameRole:
      return person.name;
    case TelephoneRole:
      return person.telephone.isEmpty() ? tr("no number in the register") : person.telephone;
    case ToldRole:
      return told;
    case SpokenRole:
      return told.isEmpty() ? tr("%1, %2, not told").arg(person.name, person.telephone)
                            : tr("%1, %2, %3").arg(person.name, person.telephone, told);
    default:
      return {};
  }
}

QHash<int, QByteArray> HazardLine::roleNames() const {
  return {
      {NameRole, "name"}, {TelephoneRole, "telephone"}, {ToldRole, "told"}, {SpokenRole, "tells"}};
}

/// "told 10:55"; empty: not yet.
QString HazardLine::told_at(const Uuid& person) const {
  const KeptFinding* finding = open_();
  if (finding == nullptr) return {};
  for (auto one = finding->told.rbegin(); one != finding->told.rend(); ++one)
    if (one->person == person)
      return tr("told %1").arg(walk_.pen().local(one->at).time().toString(QStringLiteral("HH:mm")));
  return {};
}

QString HazardLine::title() const {
  const KeptFinding* finding = open_();
  if (finding == nullptr) return {};
  QStringList words{QString::fromStdString(finding->number), kneerail::finding_name(finding->what)};
  const auto sheet = walk_.run()->sheet();
  if (sheet->id == finding->run) {
    words << QString::fromStdString(sheet->name);
    if (const QString place = kneerail::place_words(*sheet, finding->subject); !place.isEmpty())
      words << place;
  }
  return words.join(tr(" · "));
}

QString HazardLine::stands_words() const {
  const KeptFinding* finding = open_();
  return finding == nullptr ? QString() : findings_.done_words(*finding);
}

QString HazardLine::told_words() const {
  const KeptFinding* finding = open_();
  if (finding == nullptr) return {};
  return kneerail::told_words(finding->told, walk_.pen());
}

void HazardLine::tell(int place) {
  if (place < 0 || place >= rowCount()) return;
  const Person& person = people_[static_cast<std::size_t>(place)];
  MadeSafe told;
  told.told_to = {person.known.id};
  write(std::move(told), person.name);
}

void HazardLine::tellOffice(const QString& office) {
  MadeSafe told;
  told.told_to_in_words = office.toStdString();
  write(std::move(told), office);
}

/// To tell is to report: it holds nobody back, and it is no look at what does.
void HazardLine::write(MadeSafe told, const QString& whom) {
  const KeptFinding* finding = open_();
  if (finding == nullptr || !writes()) return;
  WalkPen& pen = walk_.pen();
  told.measures = {Measure::reported};
  told.when = pen.now();
  WalkPen::Act act;
  act.words = tr("%1 told").arg(whom);
  act.component = finding->subject;
  act.entries.push_back(pen.entry_by({finding->site, {}, pen.hand().who}, MadeSafe::kind,
                                     finding->record, to_body(told)));
  pen.write(std::move(act));
}

void HazardLine::openFinding() {
  if (const KeptFinding* finding = open_()) findings_.open_at_its_run(*finding);
  close();
}
