#include "mobile/models/site_sentence.h"

#include <QTimeZone>
#include <algorithm>
#include <array>
#include <utility>

using kneerail::Digest;
using kneerail::Particulars;
using kneerail::Result;
using kneerail::SiteZone;
using kneerail::Uuid;

namespace {

/// "Rhona Hale 01632 960106": what is at the end and could be dialled is the number.
struct NameAndNumber {
  QString name;
  QString number;
};

NameAndNumber name_and_number(const QString& words) {
  const auto in_number = [](QChar sign) {
    return sign.isDigit() || sign.isSpace() || QStringLiteral("+-/()").contains(sign);
  };
  qsizetype from = words.size();
  while (from > 0 && in_number(words[from - 1])) --from;
  return {words.left(from).simplified(), words.mid(from).simplified()};
}

/// The first letters of the name's words, at most six.
QString initials_of(const QString& name) {
  constexpr qsizetype most = 6;
  QString initials;
  for (const QString& word : name.split(QLatin1Char(' '), Qt::SkipEmptyParts))
    initials += word.front().toUpper();
  return initials.left(most);
}

}  // namespace

SiteSentence::SiteSentence(StoreLink& store, kneerail::Clock& clock, kneerail::Random& random,
                           std::function<Uuid()> who, QObject* parent)
    : SaidSentence(parent), store_(store), clock_(clock), random_(random), who_(std::move(who)) {}

Uuid SiteSentence::mint() {
  std::array<std::uint8_t, 10> chance{};
  random_.fill(chance);
  return kneerail::uuid7(clock_.now().ms, chance);
}

void SiteSentence::show_site(const Uuid& site) {
  const bool same = site.is_zero() ? is_new() : said_.id == site;
  if (differs_ && same) {  // it was left and not kept
    open_ = true;
    return show();
  }
  auto facts = kneerail::read_site_facts(store_.reader().tables(), site);
  message_.clear();
  if (facts) return open(std::move(*facts));
  message_ = QString::fromStdString(facts.error().message);
  emit changed();
}

void SiteSentence::begin() {
  show_site({});
}

void SiteSentence::open(kneerail::SiteFacts facts) {
  facts_ = std::move(facts);
  said_ = facts_.there.value_or(kneerail::SaidSite());
  if (!facts_.there) {
    said_.id = mint();
    if (facts_.depots.size() == 1) said_.depot = facts_.depots.front().first;
    if (facts_.rule_sets.size() == 1) said_.rule_set = facts_.rule_sets.front().first;
  }
  new_particulars_.clear();
  ask_ = {};
  differs_ = false;
  not_kept_ = false;
  open_ = true;
  show();
}

SiteZone* SiteSentence::zone(const Uuid& id) {
  const auto found = std::find_if(said_.zones.begin(), said_.zones.end(),
                                  [&](const SiteZone& one) { return one.id == id; });
  return found == said_.zones.end() ? nullptr : &*found;
}

void SiteSentence::ask(const Ask& ask) {
  ask_ = ask;
  show();
}

void SiteSentence::choosePiece(int piece) {
  if (piece < 0 || static_cast<std::size_t>(piece) >= asked_by_.size() || !writable()) return;
  const Ask wanted = asked_by_[static_cast<std::size_t>(piece)];
  ask(wanted == ask_ ? Ask() : wanted);
}

void SiteSentence::closePad() {
  ask({});
}

void SiteSentence::choose(int group, int option) {
  if (group < 0 || static_cast<std::size_t>(group) >= offered_.size()) return;
  const auto& options = offered_[static_cast<std::size_t>(group)].options;
  if (option < 0 || static_cast<std::size_t>(option) >= options.size()) return;
  const std::function<void()> act = options[static_cast<std::size_t>(option)].act;
  act();
}

void SiteSentence::changed_by_hand() {
  differs_ = true;
  message_.clear();
  show();
}

void SiteSentence::say(const QString& words) {
  const QString said = words.simplified().left(words_most());
  const std::string text = said.toStdString();
  const Ask asked = std::exchange(ask_, Ask());
  if (said.isEmpty()) return show();
  switch (asked.what) {
    case What::owner:
      said_.owner = text;
      break;
    case What::name:
      said_.name = text;
      break;
    case What::zone_name:
      if (SiteZone* named = zone(asked.id)) named->name = text;
      ask_ = {What::zone, asked.id};
      break;
    case What::new_zone:
      said_.zones.push_back({mint(), text, 0, kneerail::Exposure::unknown});
      ask_ = {What::zone, said_.zones.back().id};
      break;
    case What::new_depot:
      said_.new_depots.assign(1, {mint(), text});
      said_.depot = said_.new_depots.back().first;
      break;
    case What::somebody_else:
      say_somebody(said);
      break;
    default:
      return show();
  }
  changed_by_hand();
}

void SiteSentence::say_somebody(const QString& words) {
  const NameAndNumber somebody = name_and_number(words);
  if (somebody.name.isEmpty()) return;
  Particulars particulars{somebody.name.toStdString(), somebody.number.toStdString(), {}};
  random_.fill(particulars.chance);
  said_.new_people.push_back({mint(), initials_of(somebody.name).toStdString(), {}});
  new_particulars_.push_back(std::move(particulars));
  said_.people.push_back(said_.new_people.back().id);
}

void SiteSentence::leave() {
  open_ = false;
  ask_ = {};
  emit changed();
}

void SiteSentence::walkRun(int run) {
  if (run < 0 || static_cast<std::size_t>(run) >= facts_.runs.size()) return;
  emit runWanted(facts_.runs[static_cast<std::size_t>(run)].id);
}

void SiteSentence::changeRun(int run) {
  if (run < 0 || static_cast<std::size_t>(run) >= facts_.runs.size()) return;
  emit changeWanted(facts_.runs[static_cast<std::size_t>(run)].id);
}

void SiteSentence::layOut() {
  if (is_new()) return;
  emit layOutWanted(said_.id);
}

/// Names and numbers go first, under their digests; then everything that names them.
void SiteSentence::keep() {
  if (keeping_ || !open_ || !writable() || !differs_) return;
  if (auto fits = entries(); !fits) {
    message_ = QString::fromStdString(fits.error().message);
    return show();
  }
  std::vector<kneerail::cbor::Bytes> objects;
  for (const Particulars& one : new_particulars_) objects.push_back(kneerail::to_bytes(one));
  keeping_ = true;
  store_.keep_objects(std::move(objects), [this](const auto& kept) { save(kept); });
}

Result<std::vector<kneerail::Entry>> SiteSentence::entries() {
  const kneerail::SiteWriter writer{who_(), QTimeZone::systemTimeZoneId().toStdString(),
                                    [this] { return mint(); }};
  return kneerail::entries_of(said_, facts_, store_.reader().tables(), writer);
}

void SiteSentence::save(const Result<std::vector<Digest>>& kept_objects) {
  if (!kept_objects) return answered(kneerail::fail(kept_objects.error()));
  for (std::size_t i = 0; i < kept_objects->size(); ++i)
    said_.new_people[i].particulars = (*kept_objects)[i];
  auto made = entries();
  if (!made) return answered(kneerail::fail(made.error()));
  store_.save(std::move(*made), {}, [this](const Result<>& saved) { answered(saved); });
}

void SiteSentence::answered(const Result<>& saved) {
  keeping_ = false;
  if (!saved) {
    not_kept_ = true;
    message_ = tr("Not kept: %1 What was said stays here.")
                   .arg(QString::fromStdString(saved.error().message));
    return show();
  }
  const Uuid site = said_.id;
  differs_ = false;
  show_site(site);
  emit kept(site);
}
