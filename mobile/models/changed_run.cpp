#include "mobile/models/changed_run.h"

#include <algorithm>
#include <array>
#include <memory>
#include <utility>

#include "mobile/models/run_words.h"
#include "schema/store/run_store.h"

using kneerail::BayKind;
using kneerail::Result;
using kneerail::Uuid;
using kneerail::layout::RunChange;

namespace {

constexpr std::int64_t mm_in_cm = 10;
constexpr int digits_most = 4;

}  // namespace

ChangedRun::ChangedRun(StoreLink& store, kneerail::Clock& clock, kneerail::Random& random,
                       std::function<Uuid()> who, QObject* parent)
    : SaidSentence(parent), store_(store), clock_(clock), random_(random), who_(std::move(who)) {}

Uuid ChangedRun::mint() {
  std::array<std::uint8_t, 10> chance{};
  random_.fill(chance);
  return kneerail::uuid7(clock_.now().ms, chance);
}

void ChangedRun::begin(const Uuid& run) {
  run_id_ = run;
  message_.clear();
  not_kept_ = false;
  bay_ = post_ = -1;
  act_ = Act::nothing;
  change_.reset();
  open_ = read();
  show();
}

bool ChangedRun::read() {
  auto standing = kneerail::read_standing(store_.reader().tables(), run_id_);
  auto drawn = kneerail::read_run(store_.reader().tables(), run_id_);
  if (!standing || !drawn) {
    message_ = QString::fromStdString(standing ? drawn.error().message : standing.error().message);
    return false;
  }
  sheet_ = std::move(*standing);
  run_.show(std::make_shared<const kneerail::RunSheet>(std::move(*drawn)));
  return true;
}

QString ChangedRun::run_name() const {
  return QString::fromStdString(run_.sheet()->name);
}

QString ChangedRun::label(int post) const {
  const auto& posts = sheet_.standing.posts;
  if (post < 0 || static_cast<std::size_t>(post) >= posts.size()) return {};
  return QString::fromStdString(posts[static_cast<std::size_t>(post)].label);
}

QString ChangedRun::ask_title() const {
  if (change_) return sentence();
  if (post_ >= 0) return tr("Post %1").arg(label(post_));
  return bay_ < 0 ? QString()
                  : tr("Between %1 and %2").arg(label(changed_from()), label(changed_to()));
}

int ChangedRun::changed_from() const {
  return bay_ < 0 ? post_ : sheet_.standing.bays[static_cast<std::size_t>(bay_)].from;
}

int ChangedRun::changed_to() const {
  return bay_ < 0 ? post_ : sheet_.standing.bays[static_cast<std::size_t>(bay_)].to;
}

QString ChangedRun::number_caption() const {
  const int before = act_ == Act::move ? post_ - 1 : changed_from();
  return before < 0 ? tr("How many centimetres from the beginning?")
                    : tr("How many centimetres after %1?").arg(label(before));
}

void ChangedRun::chooseBay(int bay) {
  const auto& drawn = run_.sheet()->bays;
  if (bay < 0 || static_cast<std::size_t>(bay) >= drawn.size()) return;
  const Uuid id = drawn[static_cast<std::size_t>(bay)].id;
  const auto& bays = sheet_.standing.bays;
  const auto at =
      std::find_if(bays.begin(), bays.end(), [&](const auto& one) { return one.id == id; });
  if (at == bays.end()) return;
  takeBack();
  pad_ = true;
  bay_ = static_cast<int>(at - bays.begin());
  run_.choose_bay(bay);
  show();
}

void ChangedRun::choosePost(int post) {
  if (post < 0 || static_cast<std::size_t>(post) >= sheet_.standing.posts.size()) return;
  takeBack();
  pad_ = true;
  post_ = post;
  run_.choose_post(post);
  show();
}

void ChangedRun::choosePart(int part) {
  const auto& parts = run_.sheet()->parts;
  if (part < 0 || static_cast<std::size_t>(part) >= parts.size()) return;
  const auto& touched = parts[static_cast<std::size_t>(part)];
  if (touched.bay >= 0) return chooseBay(touched.bay);
  choosePost(touched.post);
}

void ChangedRun::stepPost(int direction) {
  if (run_.posts() == 0) return;
  const int from = run_.post();
  choosePost(std::clamp(from < 0 ? 0 : from + direction, 0, run_.posts() - 1));
}

void ChangedRun::choose(int group, int option) {
  if (group != 0 || option < 0 || static_cast<std::size_t>(option) >= offered_.size()) return;
  act_ = offered_[static_cast<std::size_t>(option)];
  typed_.clear();
  say();
}

void ChangedRun::digit(int digit) {
  if (!asks_number() || digit < 0 || digit > 9 || typed_.size() >= digits_most) return;
  typed_ += QString::number(digit);
  say();
}

void ChangedRun::erase() {
  typed_.chop(1);
  say();
}

void ChangedRun::nextPiece() {
  closePad();
}

void ChangedRun::closePad() {
  if (!change_) return takeBack();
  pad_ = false;
  show();
}

void ChangedRun::takeBack() {
  pad_ = false;
  bay_ = post_ = -1;
  act_ = Act::nothing;
  typed_.clear();
  change_.reset();
  message_.clear();
  show();
}

void ChangedRun::leave() {
  takeBack();
  open_ = false;
  emit changed();
}

/// From the post before; the middle of the bay where nothing is typed.
std::int64_t ChangedRun::typed_mm() const {
  const auto& posts = sheet_.standing.posts;
  if (!typed_.isEmpty()) return typed_.toLongLong() * mm_in_cm;
  if (act_ == Act::move) {
    const auto post = static_cast<std::size_t>(post_);
    return posts[post].chainage_mm - (post_ == 0 ? 0 : posts[post - 1].chainage_mm);
  }
  const auto& bay = sheet_.standing.bays[static_cast<std::size_t>(bay_)];
  return (posts[static_cast<std::size_t>(bay.to)].chainage_mm -
          posts[static_cast<std::size_t>(bay.from)].chainage_mm) /
         2;
}

Result<RunChange> ChangedRun::change_now() const {
  const auto& standing = sheet_.standing;
  switch (act_) {
    case Act::insert:
      return kneerail::layout::insert_post(standing, bay_, typed_mm(), sheet_.labels);
    case Act::move: {
      const auto before = static_cast<std::size_t>(std::max(post_ - 1, 0));
      const std::int64_t from_mm = post_ == 0 ? 0 : standing.posts[before].chainage_mm;
      return kneerail::layout::move_post(standing, post_, from_mm + typed_mm());
    }
    case Act::retire:
      return kneerail::layout::retire_post(standing, post_);
    case Act::gate:
      return kneerail::layout::change_bay(standing, bay_, BayKind::gate);
    case Act::rails:
      return kneerail::layout::change_bay(standing, bay_, BayKind::rails);
    case Act::mesh:
      return kneerail::layout::change_bay(standing, bay_, BayKind::mesh_infill);
    default:
      return kneerail::layout::change_bay(standing, bay_, BayKind::open_gap);
  }
}

/// What was said becomes a change, or says why it cannot be one.
void ChangedRun::say() {
  change_.reset();
  auto change = change_now();
  message_ = change ? QString() : QString::fromStdString(change.error().message);
  if (change) change_ = std::move(*change);
  show();
}

QString ChangedRun::sentence() const {
  if (!change_) return tr("Touch a bay or a post and say what becomes of it.");
  switch (act_) {
    case Act::insert:
      return tr("Post %1 comes in, %2 after %3.")
          .arg(QString::fromStdString(change_->posts.front().label),
               kneerail::metres_words(typed_mm()), label(changed_from()));
    case Act::move:
      return tr("Post %1 moves to %2 along the run.")
          .arg(label(changed_from()), kneerail::metres_words(change_->moved.front().chainage_mm));
    case Act::retire:
      return tr("Post %1 is taken out.").arg(label(changed_from()));
    default:
      break;
  }
  const BayKind kind = change_->kinds.front().kind;
  return tr("Between %1 and %2 comes: %3.")
      .arg(label(changed_from()), label(changed_to()), kneerail::bay_words(kind));
}

QString ChangedRun::means() const {
  if (!change_) return tr("Nothing is changed until you keep it.");
  if (change_->retired.empty()) return tr("Nothing is taken out.");
  return tr("%n thing(s) taken out: what was read on them stays in the register.", nullptr,
            static_cast<int>(change_->retired.size()));
}

void ChangedRun::show() {
  offered_.clear();
  SentenceChoices::Group group;
  const auto offer = [&](Act act, const QString& words) {
    if (act == act_) group.now = static_cast<int>(offered_.size());
    offered_.push_back(act);
    group.names << words;
  };
  if (bay_ >= 0) {
    const BayKind now = sheet_.standing.bays[static_cast<std::size_t>(bay_)].kind;
    group.caption = tr("What comes here?");
    offer(Act::insert, tr("a post"));
    if (now != BayKind::gate) offer(Act::gate, kneerail::bay_words(BayKind::gate));
    if (now != BayKind::rails) offer(Act::rails, kneerail::bay_words(BayKind::rails));
    if (now != BayKind::mesh_infill) offer(Act::mesh, kneerail::bay_words(BayKind::mesh_infill));
    if (now != BayKind::open_gap) offer(Act::gap, kneerail::bay_words(BayKind::open_gap));
  } else if (post_ >= 0) {
    group.caption = tr("What becomes of it?");
    offer(Act::move, tr("it moves"));
    offer(Act::retire, tr("it is taken out"));
  }
  std::vector<SentenceChoices::Group> groups;
  if (pad_) groups.push_back(std::move(group));
  choices_.show(std::move(groups));
  emit changed();
}

void ChangedRun::keep() {
  if (keeping_ || !open_ || !can_keep()) return;
  auto entries = kneerail::entries_of(*change_, sheet_, store_.reader().tables(), who_(),
                                      [this] { return mint(); });
  if (!entries) return answered(kneerail::fail(entries.error()));
  keeping_ = true;
  store_.save(std::move(*entries), {}, [this](const Result<>& saved) { answered(saved); });
}

void ChangedRun::answered(const Result<>& saved) {
  keeping_ = false;
  not_kept_ = !saved;
  if (!saved) {
    message_ = tr("Not kept: %1 What was said stays here.")
                   .arg(QString::fromStdString(saved.error().message));
    return show();
  }
  takeBack();
  if (!read()) return show();
  show();
  emit kept(run_id_);
}
