#include "mobile/models/run_sentence.h"

#include <QCoreApplication>
#include <algorithm>
#include <memory>
#include <utility>

#include "mobile/elevation/scale_steps.h"
#include "mobile/models/part_words.h"
#include "mobile/models/run_words.h"
#include "schema/store/organisation_days.h"

using kneerail::NewRun;
using kneerail::Result;
using kneerail::RunAsk;
using kneerail::RunPiece;
using kneerail::Uuid;

namespace {

constexpr std::size_t undo_most = 200;

/// The number after the highest of the site's labels that are numbers.
int next_number(const std::vector<std::string>& labels) {
  int highest = 0;
  for (const std::string& label : labels)
    highest = std::max(highest, QString::fromStdString(label).toInt());
  return std::min(highest + 1, kneerail::layout::most::first_number);
}

}  // namespace

RunSentence::RunSentence(StoreLink& store, kneerail::Clock& clock, kneerail::Random& random,
                         std::function<Uuid()> who, QObject* parent)
    : SaidSentence(parent), store_(store), clock_(clock), random_(random), who_(std::move(who)) {}

void RunSentence::begin(const Uuid& site) {
  kneerail::Database& tables = store_.reader().tables();
  auto around = kneerail::read_surroundings(tables, site);
  if (!around) {
    message_ = QString::fromStdString(around.error().message);
    emit changed();
    return;
  }
  if (auto days = kneerail::organisation_days(tables)) zone_ = std::move(days->zone);
  around_ = std::move(*around);
  history_.clear();
  message_.clear();
  not_kept_ = false;
  auto left = kneerail::kept_draft(tables, site);
  NewRun said = left ? std::move(*left) : NewRun();
  if (!left) {
    said.run = mint();
    said.site = site;
    said.rule.first_number = next_number(around_.labels);
    if (around_.zones.size() == 1) said.zone = around_.zones.front().id;
  }
  open_ = true;
  ask_ = {};
  set_said(std::move(said));
  emit drawn();
}

QString RunSentence::site_name() const {
  return QString::fromStdString(around_.site_name);
}

Uuid RunSentence::mint() {
  std::array<std::uint8_t, 10> chance{};
  random_.fill(chance);
  return kneerail::uuid7(clock_.now().ms, chance);
}

kneerail::Date RunSentence::today() const {
  return zone_.day(clock_.now());
}

QString RunSentence::count_words() const {
  return kneerail::count_words(laid_);
}

QString RunSentence::length_words() const {
  if (laid_.posts.empty()) return {};
  return tr("Whole run, %1").arg(kneerail::metres_words(laid_.posts.back().chainage_mm));
}

QString RunSentence::ask_title() const {
  const auto& sheet = *run_.sheet();
  if (run_.part() >= 0) {
    const auto& part = sheet.parts[static_cast<std::size_t>(run_.part())];
    return tr("%1 · %2").arg(
        QString::fromStdString(sheet.posts[static_cast<std::size_t>(part.post)].label),
        kneerail::part_name(sheet, run_.part()));
  }
  return kneerail::ask_title(ask_, said_);
}

void RunSentence::ask(const RunAsk& ask) {
  drop_typed();
  ask_ = ask;
  forget_typed();
  const bool on_drawing = ask.what != RunAsk::What::nothing && ask.what != RunAsk::What::piece;
  if (!on_drawing) run_.choose_post(-1);
  show();
}

/// What was typed and did not fit goes, and that is said.
void RunSentence::drop_typed() {
  if (!odd_) return;
  odd_ = false;
  message_ = tr("%1 was typed and does not fit: the run stands as it was.").arg(typed_);
}

void RunSentence::forget_typed() {
  typed_.clear();
  fresh_ = true;
  noted_ = false;
}

void RunSentence::note_for_undo() {
  history_.push_back(said_);
  if (history_.size() > undo_most) history_.erase(history_.begin());
}

void RunSentence::choosePiece(int piece) {
  if (piece < 0 || piece >= kneerail::run_pieces) return;
  const RunAsk wanted{RunAsk::What::piece, static_cast<RunPiece>(piece), -1, 0};
  ask(wanted == ask_ ? RunAsk{} : wanted);
}

void RunSentence::nextPiece() {
  if (ask_.what != RunAsk::What::piece) return closePad();
  int next = static_cast<int>(ask_.piece) + 1;
  while (next < kneerail::run_pieces && !kneerail::has_piece(static_cast<RunPiece>(next), said_))
    ++next;
  if (next >= kneerail::run_pieces) return closePad();
  ask({RunAsk::What::piece, static_cast<RunPiece>(next), -1, 0});
}

void RunSentence::digit(int digit) {
  if (!number_ || digit < 0 || digit > 9) return;
  QString digits = fresh_ ? QString() : typed_;
  const bool under = digits.startsWith(QLatin1Char('-'));
  if (digits.size() - (under ? 1 : 0) >= number_->digits) return;
  typed_ = digits + QString::number(digit);
  take_typed();
}

void RunSentence::sign() {
  if (!signs()) return;
  if (fresh_) typed_.clear();
  if (typed_.startsWith(QLatin1Char('-')))
    typed_.remove(0, 1);
  else
    typed_.prepend(QLatin1Char('-'));
  take_typed();
}

void RunSentence::erase() {
  if (!number_ || typed_.isEmpty()) return;
  typed_.chop(1);
  take_typed();
}

/// The sentence takes what is typed as soon as a run can be laid out by it.
void RunSentence::take_typed() {
  fresh_ = false;
  bool is_number = false;
  const auto number = typed_.toLongLong(&is_number);
  NewRun tried = said_;
  message_.clear();
  odd_ = !typed_.isEmpty();
  if (is_number && number_->set(tried, number)) {
    const auto fits = kneerail::layout::check_rule(tried.rule);
    odd_ = !fits;
    if (!fits) message_ = QString::fromStdString(fits.error().message);
  }
  if (odd_ || !is_number) return show();
  if (!std::exchange(noted_, true)) note_for_undo();
  set_said(std::move(tried));
}

void RunSentence::edit(const std::function<void(NewRun&)>& change) {
  NewRun tried = said_;
  change(tried);
  const auto fits = kneerail::layout::check_rule(tried.rule);
  message_ = fits ? QString() : QString::fromStdString(fits.error().message);
  odd_ = false;
  if (!fits || tried == said_) return show();
  note_for_undo();
  forget_typed();
  set_said(std::move(tried));
}

void RunSentence::choose(int group, int option) {
  if (group < 0 || static_cast<std::size_t>(group) >= offered_.size()) return;
  const auto& options = offered_[static_cast<std::size_t>(group)].options;
  if (option < 0 || static_cast<std::size_t>(option) >= options.size()) return;
  const kneerail::RunOption chosen = options[static_cast<std::size_t>(option)];
  if (chosen.asks) return ask(*chosen.asks);
  edit(chosen.set);
}

void RunSentence::say(const QString& words) {
  if (!asks_words()) return;
  const RunAsk asked = ask_;
  ask_ = asked.what == RunAsk::What::landmark
             ? RunAsk{RunAsk::What::post, RunPiece::name, asked.place, 0}
             : RunAsk{};
  edit([&](NewRun& run) { kneerail::say_words(asked, run, words); });
}

void RunSentence::choosePart(int part) {
  if (part < 0 || static_cast<std::size_t>(part) >= places_.size()) return;
  const auto& laid = laid_.parts[static_cast<std::size_t>(places_[static_cast<std::size_t>(part)])];
  RunAsk asks{RunAsk::What::post, RunPiece::name, laid.post, 0};
  if (laid.bay >= 0) asks.what = RunAsk::What::bay;
  if (laid.rail >= 0 && laid.role == kneerail::Role::fitting) {
    asks.what = RunAsk::What::joint;
    asks.rail = laid.rail;
  }
  run_.choose_part(part);
  ask(asks);
}

void RunSentence::choosePost(int post) {
  if (post < 0 || post >= run_.posts()) return;
  run_.choose_post(post);
  ask({RunAsk::What::post, RunPiece::name, post, 0});
}

void RunSentence::chooseBay(int bay) {
  if (bay < 0 || static_cast<std::size_t>(bay) >= laid_.bays.size()) return;
  run_.choose_bay(bay);
  ask({RunAsk::What::bay, RunPiece::name, bay, 0});
}

void RunSentence::stepPost(int direction) {
  if (run_.posts() == 0) return;
  const int from = run_.post();
  choosePost(std::clamp(from < 0 ? 0 : from + direction, 0, run_.posts() - 1));
}

void RunSentence::closePad() {
  ask({});
}

void RunSentence::undo() {
  if (history_.empty()) return;
  NewRun before = std::move(history_.back());
  history_.pop_back();
  forget_typed();
  odd_ = false;
  message_.clear();
  set_said(std::move(before));
}

void RunSentence::set_said(NewRun said) {
  said_ = std::move(said);
  draw();
  remember();
  show();
}

void RunSentence::draw() {
  auto laid = kneerail::layout::lay_out(said_.rule);
  kneerail::check(laid.has_value(), "a sentence that was taken lays out a run");
  laid_ = std::move(*laid);
  auto drawn = kneerail::sheet_of(laid_, said_.run, said_.rule.height_mm);
  places_ = std::move(drawn.laid);
  drawn.sheet.name = said_.name;
  drawn.sheet.site_name = around_.site_name;
  const bool chosen = run_.part() >= 0;
  const int post = run_.post();
  run_.show(std::make_shared<const kneerail::RunSheet>(std::move(drawn.sheet)));
  if (post >= run_.posts()) {
    run_.choose_post(-1);
    if (ask_.what != RunAsk::What::piece) ask_ = {};
  } else if (chosen && ask_.what == RunAsk::What::joint) {
    const auto at = std::find_if(places_.begin(), places_.end(), [&](int place) {
      const auto& part = laid_.parts[static_cast<std::size_t>(place)];
      return part.post == ask_.place && part.rail == ask_.rail &&
             part.role == kneerail::Role::fitting;
    });
    run_.choose_part(at == places_.end() ? -1 : static_cast<int>(at - places_.begin()));
  } else if (chosen || run_.bay() >= 0) {
    // The part that was touched may be another one now; its post or bay is the same.
    if (ask_.what == RunAsk::What::post || post < 0)
      run_.choose_post(post);
    else
      run_.choose_bay(std::min(post, static_cast<int>(laid_.bays.size()) - 1));
  }
}

/// The keys say what is said; the pad what is asked.
void RunSentence::show() {
  offered_ = kneerail::choices_of(ask_, said_, around_, today());
  number_ = kneerail::number_of(ask_, said_);
  std::vector<SentenceChoices::Group> groups;
  for (const auto& choice : offered_) {
    SentenceChoices::Group group{choice.caption, {}, -1};
    for (const auto& option : choice.options) {
      if (option.now) group.now = static_cast<int>(group.names.size());
      group.names << option.words;
    }
    groups.push_back(std::move(group));
  }
  choices_.show(std::move(groups));
  std::vector<SentencePieces::Piece> pieces;
  for (int i = 0; i < kneerail::run_pieces; ++i) {
    const auto piece = static_cast<RunPiece>(i);
    const bool here = ask_.what == RunAsk::What::piece && ask_.piece == piece;
    auto words = kneerail::piece_words(piece, said_, around_);
    if (here && odd_) words.text = typed_;
    pieces.push_back({words.text, words.under, words.said, here, here && odd_,
                      kneerail::has_piece(piece, said_)});
  }
  pieces_.show(std::move(pieces));
  emit changed();
}

void RunSentence::remember() {
  if (!store_.writable()) return;
  store_.keep_settings(kneerail::draft_settings(said_), [this](const Result<>& saved) {
    if (saved) return;
    message_ = tr("Not remembered, should the tablet go off: %1")
                   .arg(QString::fromStdString(saved.error().message));
    emit changed();
  });
}

qreal RunSentence::scaleFor(qreal room_mm) const {
  using kneerail::elevation::scale_steps;
  for (const double scale : scale_steps)
    if (scale >= 20 && static_cast<double>(said_.rule.height_mm) / scale <= room_mm) return scale;
  return scale_steps.back();
}

qreal RunSentence::centreFor(qreal seen_mm) const {
  constexpr qreal before_mm = 400;
  return std::max<qreal>(seen_mm / 2 - before_mm, 0);
}

void RunSentence::leave() {
  drop_typed();
  open_ = false;
  ask_ = {};
  emit changed();
}

void RunSentence::keep() {
  if (keeping_ || !open_ || !store_.writable()) return;
  drop_typed();
  auto around = kneerail::read_surroundings(store_.reader().tables(), said_.site);
  if (around) around_ = std::move(*around);
  auto entries = kneerail::entries_of(said_, around_, who_(), [this] { return mint(); });
  if (!entries) {
    not_kept_ = false;
    message_ = QString::fromStdString(entries.error().message);
    return show();
  }
  keeping_ = true;
  store_.save(std::move(*entries), {}, [this](const Result<>& saved) { answered(saved); });
}

void RunSentence::answered(const Result<>& saved) {
  keeping_ = false;
  not_kept_ = !saved;
  if (!saved) {
    message_ = tr("Not kept: %1 The sentence stays here.")
                   .arg(QString::fromStdString(saved.error().message));
    return show();
  }
  store_.keep_settings(kneerail::no_draft(said_.site), [](const Result<>&) {});
  open_ = false;
  ask_ = {};
  message_.clear();
  const Uuid site = said_.site;
  const Uuid run = said_.run;
  emit changed();
  emit kept(site, run);
}
