#include "mobile/models/walk_model.h"

#include <algorithm>
#include <utility>

#include "mobile/models/finding_pen.h"
#include "mobile/models/part_words.h"
#include "schema/store/run_again.h"

using kneerail::PostState;
using kneerail::Role;
using kneerail::RunSheet;
using kneerail::SheetPart;
using kneerail::Uuid;

WalkModel::WalkModel(StoreLink& store, kneerail::Clock& clock, kneerail::Random& random,
                     QObject* parent)
    : QObject(parent),
      store_(store),
      pen_(store, clock, random),
      coating_(pen_),
      torque_(pen_),
      wall_(pen_),
      check_(pen_),
      finding_(std::make_unique<FindingPen>(pen_)),
      bay_(pen_, *finding_) {
  connect(&run_, &RunPicture::chosenChanged, this, &WalkModel::chosen);
  connect(&pen_, &WalkPen::kept, this, &WalkModel::on_kept);
  connect(&pen_, &WalkPen::undoChanged, this, &WalkModel::undoChanged);
  connect(&pen_, &WalkPen::takenBack, this, &WalkModel::go_to);
  connect(&pen_, &WalkPen::givenUp, this, [this](const Uuid& component) {
    go_to(component);
    coating_.reload();
    torque_.refresh();
    wall_.refresh();
    bay_.show(sheet(), {run_.bay(), run_.post()});
    emit whereChanged();
    emit messageChanged();
  });
  connect(&coating_, &CoatingSet::setChanged, this, &WalkModel::undoChanged);
  connect(&coating_, &CoatingSet::setChanged, this, &WalkModel::messageChanged);
  connect(&pen_, &WalkPen::troubleChanged, this, [this] {
    emit messageChanged();
    if (pen_.waits()) emit felt(QStringLiteral("notKept"));
  });
  connect(&coating_, &CoatingSet::replicateKept, this, [this](bool far) {
    emit felt(far ? QStringLiteral("far") : QStringLiteral("kept"));
    emit messageChanged();
    emit titleChanged();
  });
  connect(&coating_, &CoatingSet::full, this, [this] {
    full_at_ms_ = pen_.monotonic_ms();
    was_full_ = true;
    emit felt(QStringLiteral("partDone"));
    nextPart();
  });
  connect(&torque_, &TorqueCheck::lastScrewDone, this, &WalkModel::nextPart);
  listen_to_wall();
  listen_to_check();
  listen_to_finding();
  listen_to_bay();
  connect(&store_, &StoreLink::checked, this, &WalkModel::checks_done);
  prepared_ = kneerail::prepared_day(store_.reader().tables());
}

WalkModel::~WalkModel() = default;

/// Whether it can be written is known now. Where it cannot, keys go and what is typed stays.
void WalkModel::checks_done() {
  if (!writable() && holds_typed())
    say(tr("Read only: %1 What was typed stays on this screen, and nowhere else.")
            .arg(QString::fromStdString(store_.why_read_only())));
  emit writableChanged();
  emit whereChanged();
  emit titleChanged();
  emit padChanged();
  check_.refresh();
}

bool WalkModel::not_kept() const {
  return pen_.waits() || coating_.has_not_kept() || check_.has_not_kept() ||
         finding_->has_not_kept();
}

bool WalkModel::holds_typed() const {
  return not_kept() || torque_.moving() || !coating_.pending().isEmpty() ||
         !wall_.pending().isEmpty() || !bay_.pending().isEmpty() || !check_.pending().isEmpty();
}

void WalkModel::open(const Uuid& run, const Uuid& component) {
  leave();
  const auto site = site_of_run(store_.reader().tables(), run);
  if (!site) return say(QString::fromStdString(site.error().message));
  if (auto begun = pen_.begin(*site); !begun)
    return say(QString::fromStdString(begun.error().message));
  if (!read_sheet(run)) return;
  message_ = opening_words();
  if (!opening_told_) find_waiting();
  opening_told_ = true;
  if (!run_.choose(component)) choosePost(first_open_post());
  emit titleChanged();
  emit messageChanged();
}

/// A run that was read ahead is in the visit that goes on, or before the first entry of a new one.
kneerail::Result<RunSheet> WalkModel::run_now(const Uuid& run) {
  auto ahead = store_.take_walked_last();
  if (ahead && ahead->id == run && ahead->visit == (pen_.visit_opened() ? pen_.visit() : Uuid{})) {
    ahead->visit = pen_.visit();
    return std::move(*ahead);
  }
  return read_run(store_.reader().tables(), run, pen_.visit());
}

bool WalkModel::read_sheet(const Uuid& run) {
  show_sheet(run_now(run));
  show_on_pads();
  return !sheet_behind_;
}

void WalkModel::show_sheet(kneerail::Result<RunSheet> read) {
  sheet_behind_ = !read;
  if (!read) return say(QString::fromStdString(read.error().message));
  run_.show(std::make_shared<const RunSheet>(std::move(*read)));
  mark_chosen();
}

/// What was chosen when the day was prepared and has not been read since.
void WalkModel::mark_chosen() {
  run_.mark(still_to_read(store_.reader().tables(), prepared_, sheet()));
}

void WalkModel::prepare(const kneerail::PreparedDay& day) {
  prepared_ = day;
  if (!opened()) return;
  mark_chosen();
  emit whereChanged();
}

/// Only what they touch, as long as the sheet has everything before them.
void WalkModel::read_again_after(const std::vector<kneerail::Entry>& entries) {
  kneerail::Database& tables = store_.reader().tables();
  if (sheet_behind_ || sheet().visit != pen_.visit())
    return show_sheet(read_run(tables, sheet().id, pen_.visit()));
  const auto touched = touched_by(tables, sheet(), entries);
  if (!touched) return show_sheet(kneerail::fail(touched.error()));
  if (!touched->none()) show_sheet(read_again(tables, sheet(), *touched));
}

int WalkModel::first_open_post() const {
  const auto& posts = sheet().posts;
  const auto open = std::find_if(posts.begin(), posts.end(), [](const kneerail::SheetPost& post) {
    return post.state == PostState::open;
  });
  return open == posts.end() ? 0 : static_cast<int>(open - posts.begin());
}

const SheetPart* WalkModel::part() const {
  return run_.part() < 0 ? nullptr : &sheet().parts[static_cast<std::size_t>(run_.part())];
}

void WalkModel::show_on_pads() {
  kneerail::Database& tables = store_.reader().tables();
  coating_.show(part(), tables);
  torque_.show(part(), tables);
  wall_.show(part(), part() == nullptr ? QString() : kneerail::part_name(sheet(), run_.part()),
             tables);
  bay_.show(sheet(), {run_.bay(), run_.post()});
}

void WalkModel::chosen() {
  const SheetPart* own = part();
  show_on_pads();
  finding_->show(sheet(), run_.part(), run_.bay(), run_.post());
  Pad wanted = plain_pad();
  if (own != nullptr)
    if (const auto used = pads_used_.find(own->role); used != pads_used_.end())
      wanted = used->second;
  if (wanted == CoatingPad && !coating_.offered()) wanted = GradePad;
  if (wanted == TorquePad && !torque_.offered()) wanted = GradePad;
  if (wanted == WallPad && !wall_.offered()) wanted = GradePad;
  pad_ = wanted;
  emit whereChanged();
  emit padChanged();
}

void WalkModel::set_pad(Pad pad) {
  if (pad == pad_) return;
  if (pad_ == FindingPad) finding_->close();
  pad_ = pad;
  if (pad == FindingPad)
    finding_->open();
  else if (const SheetPart* own = part(); own != nullptr && pad != PostPad && pad != BayPad)
    pads_used_[own->role] = pad;
  emit padChanged();
}

void WalkModel::set_place_kept(bool kept) {
  if (kept == place_kept_) return;
  place_kept_ = kept;
  emit titleChanged();
}

void WalkModel::set_shown(bool shown) {
  if (shown == shown_) return;
  shown_ = shown;
  emit padChanged();
}

/// Of the chosen post, from the top down; -1: none has such a pad.
int WalkModel::first_part_with(Pad pad) const {
  for (const int place : parts_in_order(run_.post())) {
    const SheetPart& own = sheet().parts[static_cast<std::size_t>(place)];
    if (pad == CoatingPad && !coating_.offered_on(own)) continue;
    if (pad == TorquePad && !torque_.offered_on(own)) continue;
    if (pad == WallPad && !wall_.offered_on(own)) continue;
    return place;
  }
  return -1;
}

bool WalkModel::coating_offered() const {
  return part_chosen() ? coating_.offered() : first_part_with(CoatingPad) >= 0;
}

bool WalkModel::torque_offered() const {
  return part_chosen() ? torque_.offered() : first_part_with(TorquePad) >= 0;
}

bool WalkModel::wall_offered() const {
  return part_chosen() ? wall_.offered() : first_part_with(WallPad) >= 0;
}

bool WalkModel::offers(Pad pad) const {
  if (!writable()) return false;
  if (pad == CoatingPad) return coating_offered();
  if (pad == TorquePad) return torque_offered();
  if (pad == WallPad) return wall_offered();
  if (pad == FindingPad) return opened();
  if (pad == BayPad) return bay_.offered();
  return pad == GradePad && (part_chosen() || first_part_with(GradePad) >= 0);
}

void WalkModel::openPad(Pad pad) {
  if (pad == PostPad) return choosePost(run_.post());
  if (!offers(pad)) return;
  if (!part_chosen() && pad != FindingPad && pad != BayPad) run_.choose_part(first_part_with(pad));
  set_pad(pad);
}

void WalkModel::on_kept(const Uuid& component, const std::vector<kneerail::Entry>& entries) {
  if (component == grade_asked_of_) grade_asked_ = 0;
  read_again_after(entries);
  torque_.kept(entries);
  show_on_pads();
  finding_->show(sheet(), run_.part(), run_.bay(), run_.post());
  coating_.reload();
  emit whereChanged();
  emit titleChanged();
  emit messageChanged();
  emit entered(component);
}

void WalkModel::leave() {
  coating_.close();
  torque_.close();
  wall_.close();
  check_.close();
  bay_.close();
  finding_->close();
}

/// What was taken back or put back is what the hand is at again.
void WalkModel::go_to(const Uuid& component) {
  run_.choose(component);
}

void WalkModel::choosePart(int part) {
  if (part >= 0 && part < static_cast<int>(sheet().parts.size())) run_.choose_part(part);
}

void WalkModel::choosePost(int post) {
  if (post >= 0 && post < run_.posts()) run_.choose_post(post);
}

/// From the top rail down, then the bay after it. What is struck is not there.
std::vector<int> WalkModel::parts_in_order(int post) const {
  std::vector<int> order;
  if (post < 0 || post >= run_.posts()) return order;
  const auto& at = sheet().posts[static_cast<std::size_t>(post)];
  for (int i = at.first_part; i < at.first_part + at.parts; ++i)
    if (!sheet().parts[static_cast<std::size_t>(i)].struck) order.push_back(i);
  std::stable_sort(order.begin(), order.end(), [this](int a, int b) {
    const auto& one = sheet().parts[static_cast<std::size_t>(a)];
    const auto& other = sheet().parts[static_cast<std::size_t>(b)];
    if ((one.bay >= 0) != (other.bay >= 0)) return one.bay < 0;
    return one.up_mm > other.up_mm;
  });
  return order;
}

/// The part after the chosen one at its post; -1 at its last.
int WalkModel::next_part_place() const {
  const auto order = parts_in_order(run_.post());
  if (run_.part() < 0) return order.empty() ? -1 : order.front();
  const auto here = std::find(order.begin(), order.end(), run_.part());
  if (here == order.end() || here + 1 == order.end()) return -1;
  return *(here + 1);
}

void WalkModel::nextPart() {
  coating_.close();
  torque_.close();
  wall_.close();
  const int next = next_part_place();
  if (next >= 0) return run_.choose_part(next);
  if (run_.post() + 1 >= run_.posts()) return;
  const auto order = parts_in_order(run_.post() + 1);
  emit felt(QStringLiteral("postDone"));
  if (order.empty())
    run_.choose_post(run_.post() + 1);
  else
    run_.choose_part(order.front());
}

void WalkModel::stepPart(int step) {
  const auto order = parts_in_order(run_.post());
  const auto here = std::find(order.begin(), order.end(), run_.part());
  if (order.empty()) return;
  if (here == order.end()) return run_.choose_part(step > 0 ? order.front() : order.back());
  const auto place = here - order.begin() + step;
  if (place >= 0 && place < static_cast<std::ptrdiff_t>(order.size()))
    run_.choose_part(order[static_cast<std::size_t>(place)]);
}

void WalkModel::stepPost(int step) {
  choosePost(run_.post() + step);
}

void WalkModel::askForecast() {
  if (const SheetPart* own = part()) return emit forecastWanted(sheet().id, own->id);
  if (run_.post() < 0) return;
  const auto parts = parts_in_order(run_.post());
  if (!parts.empty())
    emit forecastWanted(sheet().id, sheet().parts[static_cast<std::size_t>(parts.front())].id);
}

QString WalkModel::undo_words() const {
  for (const QString& pending :
       {check_.pending(), coating_.pending(), wall_.pending(), bay_.pending()})
    if (!pending.isEmpty()) return pending;
  return pen_.undo_words();
}

void WalkModel::undo() {
  if (!writable()) return;
  const QString words = undo_words();
  if (words.isEmpty()) return;
  bool in_log = false;
  run_.set_taking_back(true);
  if (!check_.pending().isEmpty())
    check_.take_back_pending();
  else if (!coating_.pending().isEmpty())
    coating_.take_back_pending();
  else if (!wall_.pending().isEmpty())
    wall_.take_back_pending();
  else if (!bay_.pending().isEmpty())
    bay_.take_back_pending();
  else
    in_log = pen_.undo();
  run_.set_taking_back(false);
  emit felt(QStringLiteral("undone"));
  emit takenBack(words, in_log);
}

void WalkModel::redo() {
  run_.set_taking_back(true);
  pen_.redo();
  run_.set_taking_back(false);
}

void WalkModel::tryAgain() {
  pen_.try_again();
  coating_.try_again();
  check_.try_again();
  emit messageChanged();
}

void WalkModel::dismissMessage() {
  say({});
}

void WalkModel::say(const QString& message) {
  message_ = message;
  emit messageChanged();
}
