#include "mobile/models/findings_model.h"

#include <algorithm>
#include <utility>

#include "core/records/told.h"
#include "mobile/models/finding_words.h"
#include "mobile/picture/photograph_marks.h"
#include "schema/store/finding_story.h"

using kneerail::Database;
using kneerail::Instant;
using kneerail::KeptFinding;
using kneerail::Result;
using kneerail::RunSheet;
using kneerail::Uuid;

namespace {

constexpr std::int64_t day_ms = 24LL * 60 * 60 * 1000;

bool bears_on_findings(int kind) {
  constexpr int first = 30, last = 39, read_by = 58, correction = 70, voided = 71;
  return (kind >= first && kind <= last) || kind == read_by || kind == correction || kind == voided;
}

}  // namespace

FindingsModel::FindingsModel(std::filesystem::path folder, StoreLink& store, WalkModel& walk,
                             QObject* parent)
    : QAbstractListModel(parent),
      store_(store),
      walk_(walk),
      ending_(walk),
      reading_(std::move(folder)) {
  connect(&walk.pen(), &WalkPen::kept, this,
          [this](const Uuid&, const std::vector<kneerail::Entry>& entries) { after(entries); });
  connect(&walk, &WalkModel::writableChanged, this, &FindingsModel::openedChanged);
}

FindingsModel::~FindingsModel() = default;

int FindingsModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(found_.findings.size());
}

QVariant FindingsModel::data(const QModelIndex& index, int role) const {
  const auto row = static_cast<std::size_t>(index.row());
  if (!index.isValid() || row >= found_.findings.size()) return {};
  const KeptFinding& finding = found_.findings[row];
  switch (role) {
    case NumberRole:
      return QString::fromStdString(finding.number);
    case PartRole:
      return place_words(finding);
    case KindRole:
      return what_words(finding);
    case GradeRole:
      return finding.grade;
    case BoardedRole:
      return finding.cannot_wait();
    case PictureRole:
      return QVariant::fromValue(picture_of(row));
    case PreviewRole:
      return finding.photographs.empty() ? QUrl() : object(finding.photographs[0].preview_sha256);
    case MarksRole:
      return finding.photographs.empty() ? QString()
                                         : kneerail::marks_text(finding.photographs[0].marks);
    case DoneRole:
      return done_words(finding);
    case NextRole:
      return next_words(finding);
    case SpokenRole:
      return tr("Finding %1, %2, %3, grade %4, %5")
          .arg(QString::fromStdString(finding.number), place_words(finding), what_words(finding))
          .arg(finding.grade)
          .arg(done_words(finding));
    default:
      return {};
  }
}

QHash<int, QByteArray> FindingsModel::roleNames() const {
  return {{NumberRole, "number"},   {PartRole, "part"},       {KindRole, "kind"},
          {GradeRole, "grade"},     {BoardedRole, "boarded"}, {PictureRole, "picture"},
          {PreviewRole, "preview"}, {MarksRole, "marks"},     {DoneRole, "done"},
          {NextRole, "next"},       {SpokenRole, "tells"}};
}

void FindingsModel::set_run_only(bool only) {
  if (only == run_only_) return;
  run_only_ = only;
  refresh();
  emit changed();
}

void FindingsModel::set_ended_too(bool too) {
  if (too == ended_too_) return;
  ended_too_ = too;
  refresh();
  emit changed();
}

void FindingsModel::after(const std::vector<kneerail::Entry>& entries) {
  const auto bears = [](const kneerail::Entry& entry) { return bears_on_findings(entry.kind); };
  if (std::any_of(entries.begin(), entries.end(), bears)) refresh();
}

void FindingsModel::set_shown(bool shown) {
  if (shown == shown_) return;
  shown_ = shown;
  if (shown) refresh();
  emit changed();
}

/// While the room is not open only what every room says is read again: entering it reads the rest.
void FindingsModel::refresh() {
  const bool only_standing = !shown_;
  const auto sheet = walk_.run()->sheet();
  Asked asked{sheet->site,
              sheet->id,
              run_only_,
              ended_too_,
              {{sheet->id, sheet}},
              walk_.pen().hand().who,
              walk_.pen().today(),
              only_standing};
  if (asked_) asked_->store(true);
  asked_ = reading_.ask<Found>(
      [asked = std::move(asked)](Database& tables, const auto&) { return find(tables, asked); },
      [this, only_standing](Result<Found> found) {
        if (only_standing)
          take_standing(std::move(found));
        else
          take(std::move(found));
      });
}

/// On the reading thread. Of the run that is walked the drawing is at hand.
Result<FindingsModel::Found> FindingsModel::find(Database& tables, Asked asked) {
  Found found;
  auto standing = kneerail::hazards_standing(tables);
  if (!standing) return kneerail::fail(standing.error());
  found.standing = std::move(*standing);
  if (asked.only_standing || asked.site.is_zero()) return found;
  auto all = read_findings(tables, {asked.site, asked.ended_too});
  if (!all) return kneerail::fail(all.error());
  if (asked.run_only)
    std::erase_if(*all, [&](const KeptFinding& finding) { return finding.run != asked.run; });
  found.findings = std::move(*all);
  auto ended = kneerail::findings_ended(tables, asked.site);
  if (!ended) return kneerail::fail(ended.error());
  found.ended = *ended;
  auto looked = kneerail::last_look_at(tables, asked.run);
  if (!looked) return kneerail::fail(looked.error());
  found.last_look = *looked;
  auto answers = kneerail::answers_for(tables, asked.who, asked.site, asked.today);
  if (!answers) return kneerail::fail(answers.error());
  found.answers = *answers;
  found.sheets = std::move(asked.sheets);
  for (const KeptFinding& finding : found.findings) {
    if (finding.run.is_zero() || found.sheets.contains(finding.run)) continue;
    auto sheet = read_run(tables, finding.run);
    if (sheet)
      found.sheets[finding.run] = std::make_shared<const RunSheet>(std::move(*sheet));
    else if (sheet.error().fault != kneerail::Fault::not_found)
      return kneerail::fail(sheet.error());
  }
  return found;
}

void FindingsModel::take_standing(Result<Found> found) {
  if (!found) return;
  found_.standing = std::move(found->standing);
  emit changed();
  emit standingChanged();
}

void FindingsModel::take(Result<Found> found) {
  if (!found && found.error().fault == kneerail::Fault::cancelled) return;
  beginResetModel();
  pictures_.clear();
  trouble_ = found ? QString() : QString::fromStdString(found.error().message);
  if (found) found_ = std::move(*found);
  known_ = true;
  endResetModel();
  if (const KeptFinding* finding = open_()) choose_in(place_, *finding);
  show_ending();
  emit changed();
  emit openedChanged();
  emit standingChanged();
}

const RunSheet* FindingsModel::sheet_of(const KeptFinding& finding) const {
  const auto at = found_.sheets.find(finding.run);
  return at == found_.sheets.end() ? nullptr : at->second.get();
}

RunPicture* FindingsModel::picture_of(std::size_t place) const {
  auto& picture = pictures_[place];
  if (!picture) {
    picture = std::make_unique<RunPicture>();
    choose_in(*picture, found_.findings[place]);
  }
  return picture.get();
}

void FindingsModel::choose_in(RunPicture& picture, const KeptFinding& finding) const {
  const auto at = found_.sheets.find(finding.run);
  if (at == found_.sheets.end()) return;
  picture.show(at->second);
  if (!picture.choose(finding.subject) && !at->second->posts.empty()) picture.choose_post(0);
}

QUrl FindingsModel::object(const kneerail::Digest& sha) const {
  return QUrl::fromLocalFile(QString::fromStdString(store_.object_place(sha)));
}

const KeptFinding* FindingsModel::open_() const {
  const auto at = std::find_if(found_.findings.begin(), found_.findings.end(),
                               [this](const KeptFinding& one) { return one.record == opened_; });
  return opened_.is_zero() || at == found_.findings.end() ? nullptr : &*at;
}

int FindingsModel::opened() const {
  const KeptFinding* finding = open_();
  return finding == nullptr ? -1 : static_cast<int>(finding - found_.findings.data());
}

void FindingsModel::open(int place) {
  if (place < 0 || place >= rowCount()) return;
  const KeptFinding& finding = found_.findings[static_cast<std::size_t>(place)];
  opened_ = finding.record;
  later_.reset();
  choose_in(place_, finding);
  show_ending();
  emit openedChanged();
  emit openedFinding();
}

/// A mending ends the life its part is in now, where it has that part.
void FindingsModel::show_ending() {
  const KeptFinding* finding = open_();
  std::optional<Uuid> life;
  if (finding != nullptr)
    if (const RunSheet* sheet = sheet_of(*finding))
      for (const auto& part : sheet->parts)
        if (part.id == finding->subject) life = part.life;
  ending_.show(finding, life);
}

void FindingsModel::close() {
  opened_ = {};
  later_.reset();
  show_ending();
  emit openedChanged();
}

std::vector<const KeptFinding*> FindingsModel::not_safe() const {
  std::vector<const KeptFinding*> open;
  for (const KeptFinding& one : found_.standing)
    if (one.hazard == kneerail::HazardState::open) open.push_back(&one);
  return open;
}

void FindingsModel::openNotSafe() {
  if (const auto open = not_safe(); !open.empty()) open_at_its_run(*open.front());
}

void FindingsModel::open_at_its_run(const KeptFinding& finding) {
  opened_ = finding.record;
  emit openedFinding();
  if (!finding.run.is_zero() && walk_.run()->sheet()->id != finding.run)
    emit walkWanted(finding.run, finding.subject);
  refresh();
}

void FindingsModel::walkThere() {
  const KeptFinding* finding = open_();
  if (finding != nullptr && !finding->run.is_zero())
    emit walkWanted(finding->run, finding->subject);
}

template <class Fields>
void FindingsModel::write(const QString& words, const Fields& fields) {
  const KeptFinding* finding = open_();
  if (finding == nullptr || !walk_.writable()) return;
  WalkPen& pen = walk_.pen();
  WalkPen::Act act;
  act.words = tr("%1: %2").arg(QString::fromStdString(finding->number), words);
  act.component = finding->subject;
  act.entries.push_back(pen.entry_by({finding->site, {}, pen.hand().who}, Fields::kind,
                                     finding->record, to_body(fields)));
  pen.write(std::move(act));
}

void FindingsModel::setNext(int step, int days) {
  constexpr int steps = 5;
  const KeptFinding* finding = open_();
  if (finding == nullptr || step < 1 || step > steps) return;
  kneerail::NextStep next;
  next.what = static_cast<kneerail::NextStepKind>(step);
  later_.reset();
  if (next.what == kneerail::NextStepKind::mend) {
    next.mend_by = kneerail::Date{walk_.pen().today().days + days};
    if (finding->mend_by && *finding->mend_by < *next.mend_by) {
      later_ = next.mend_by;
      return emit openedChanged();
    }
  }
  write(kneerail::next_step_name(next.what), next);
}

void FindingsModel::putOff(int why) {
  const auto day = std::exchange(later_, std::nullopt);
  if (day && why >= 1 && why <= static_cast<int>(kneerail::WhyPutOff::other)) {
    kneerail::NextStep next;
    next.what = kneerail::NextStepKind::mend;
    next.mend_by = day;
    next.put_off = static_cast<kneerail::WhyPutOff>(why);
    write(tr("put off"), next);
  }
  emit openedChanged();
}

void FindingsModel::readIt() {
  const KeptFinding* finding = open_();
  if (finding == nullptr || !asks_to_read()) return;
  kneerail::ReadBy read;
  read.shown = {finding->record};
  for (const auto& photograph : finding->photographs) read.shown.push_back(photograph.record);
  write(tr("read"), read);
}

void FindingsModel::addMeasure(int measure) {
  const KeptFinding* finding = open_();
  const auto code = static_cast<kneerail::Measure>(measure);
  if (finding == nullptr || !finding->cannot_wait()) return;
  if (measures().contains(measure) && !finding->is_gone()) return;
  const Instant now = walk_.pen().now();
  kneerail::MadeSafe safe;
  safe.measures = {code};
  safe.when = now;
  safe.look_again_by = Instant{now.ms + day_ms};
  write(kneerail::measure_name(code), safe);
}

void FindingsModel::looked(int how) {
  if (how < 1 || how > 3 || !asks_whether_it_stands()) return;
  kneerail::ClosureLook look;
  look.how = static_cast<kneerail::HowItStands>(how);
  if (look.how != kneerail::HowItStands::gone)
    look.look_again_by = Instant{walk_.pen().now().ms + day_ms};
  write(kneerail::closure_name(look.how), look);
}
