#include <QLocale>
#include <algorithm>

#include "mobile/models/run_words.h"
#include "mobile/models/site_sentence.h"
#include "mobile/models/site_words.h"

using kneerail::Exposure;
using kneerail::Particulars;
using kneerail::SiteZone;
using kneerail::Uuid;

namespace {

QString air_of(const SiteZone& zone) {
  kneerail::SiteBand band;
  band.zones = {zone};
  return kneerail::air_words(band);
}

QString category_name(int category) {
  constexpr int extreme = 6;
  return category == extreme ? QStringLiteral("CX") : QStringLiteral("C%1").arg(category);
}

/// The name of one of them; empty: it is none of them.
QString named(const std::vector<std::pair<Uuid, std::string>>& things, const Uuid& id) {
  for (const auto& [thing, name] : things)
    if (thing == id) return QString::fromStdString(name);
  return {};
}

}  // namespace

std::optional<Particulars> SiteSentence::particulars(const Uuid& person) const {
  for (std::size_t i = 0; i < said_.new_people.size(); ++i)
    if (said_.new_people[i].id == person && i < new_particulars_.size()) return new_particulars_[i];
  for (const auto& known : facts_.people) {
    if (known.id != person || !known.particulars) continue;
    const auto bytes = store_.reader().object(*known.particulars);
    const auto read = bytes ? kneerail::particulars_from(*bytes) : bytes.error();
    if (read) return *read;
  }
  return std::nullopt;
}

QString SiteSentence::name_of(const Uuid& person) const {
  if (const auto known = particulars(person)) return QString::fromStdString(known->name);
  for (const auto& known : facts_.people)
    if (known.id == person) return QString::fromStdString(known.initials);
  return tr("not yet received");
}

QString SiteSentence::number_of(const Uuid& person) const {
  const auto known = particulars(person);
  return known && !known->telephone.empty() ? QString::fromStdString(known->telephone)
                                            : tr("no number");
}

QString SiteSentence::ask_title() const {
  switch (ask_.what) {
    case What::owner:
      return tr("Whose rails are these? The name of the owner");
    case What::name:
      return tr("What is the site called?");
    case What::zone_name:
    case What::new_zone:
      return tr("What is the zone called? Sea side, north face");
    case What::new_depot:
      return tr("What is the depot called?");
    case What::somebody_else:
      return tr("Who is told, and the number: Rhona Hale 01632 960106");
    case What::zone:
      for (const SiteZone& one : said_.zones)
        if (one.id == ask_.id) return tr("Zone %1").arg(QString::fromStdString(one.name));
      return {};
    case What::person:
      return tr("%1, %2").arg(name_of(ask_.id), number_of(ask_.id));
    default:
      return {};
  }
}

bool SiteSentence::asks_words() const {
  switch (ask_.what) {
    case What::owner:
    case What::name:
    case What::zone_name:
    case What::new_zone:
    case What::new_depot:
    case What::somebody_else:
      return true;
    default:
      return false;
  }
}

QString SiteSentence::words() const {
  if (ask_.what == What::owner) return QString::fromStdString(said_.owner);
  if (ask_.what == What::name) return QString::fromStdString(said_.name);
  if (ask_.what == What::zone_name)
    for (const SiteZone& one : said_.zones)
      if (one.id == ask_.id) return QString::fromStdString(one.name);
  return {};
}

std::vector<SiteSentence::Piece> SiteSentence::pieces_now() const {
  std::vector<Piece> pieces;
  const auto add = [&](Ask ask, const QString& text, const QString& under, bool said) {
    pieces.push_back({ask, {text, under, said, ask == ask_, false, true}});
  };
  if (facts_.organisation.is_zero())
    add({What::owner, {}},
        said_.owner.empty() ? tr("whose rails") : QString::fromStdString(said_.owner),
        tr("the owner"), !said_.owner.empty());
  add({What::name, {}}, said_.name.empty() ? tr("a name") : name(), tr("name of the site"),
      !said_.name.empty());
  for (const SiteZone& one : said_.zones)
    add({What::zone, one.id}, QString::fromStdString(one.name),
        one.category == 0 ? tr("air not known") : air_of(one), true);
  add({What::new_zone, {}}, said_.zones.empty() ? tr("a zone") : tr("one more zone"),
      tr("of like exposure"), false);
  QString depot = said_.depot ? named(facts_.depots, *said_.depot) : QString();
  if (depot.isEmpty() && said_.depot) depot = named(said_.new_depots, *said_.depot);
  add({What::depot, {}}, depot.isEmpty() ? tr("no depot") : depot, tr("depot"), !depot.isEmpty());
  const QString rules = said_.rule_set ? named(facts_.rule_sets, *said_.rule_set) : QString();
  add({What::rule_set, {}}, rules.isEmpty() ? tr("no rule set") : rules, tr("limits it is held to"),
      !rules.isEmpty());
  for (const Uuid& person : said_.people)
    add({What::person, person}, name_of(person), tr("told, %1").arg(number_of(person)), true);
  add({What::new_person, {}}, said_.people.empty() ? tr("nobody") : tr("one more"), tr("to tell"),
      false);
  return pieces;
}

std::vector<SiteSentence::Choices> SiteSentence::zone_choices() {
  const Uuid id = ask_.id;
  const SiteZone now = zone(id) == nullptr ? SiteZone() : *zone(id);
  const auto edit = [this, id](const std::function<void(SiteZone&)>& change) {
    if (SiteZone* one = zone(id)) change(*one);
    changed_by_hand();
  };
  Choices air{tr("Corrosivity of the air, ISO 9223"), {}};
  constexpr int categories = 6;
  for (int category = 1; category <= categories; ++category)
    air.options.push_back({category_name(category), now.category == category, [edit, category] {
                             edit([category](SiteZone& one) { one.category = category; });
                           }});
  Choices exposures{tr("It is"), {}};
  for (const Exposure exposure : {Exposure::open, Exposure::sheltered, Exposure::spray,
                                  Exposure::immersed_at_times, Exposure::de_icing_salt}) {
    SiteZone other;
    other.exposure = exposure;
    exposures.options.push_back({air_of(other), now.exposure == exposure, [edit, exposure] {
                                   edit([exposure](SiteZone& one) { one.exposure = exposure; });
                                 }});
  }
  exposures.options.push_back({tr("another name"), false, [this, id] {
                                 ask({What::zone_name, id});
                               }});
  return {air, exposures};
}

std::vector<SiteSentence::Choices> SiteSentence::depot_choices() {
  Choices depots{tr("Which depot keeps it?"), {}};
  for (const auto* list : {&facts_.depots, &said_.new_depots})
    for (const auto& [id, name] : *list) {
      const Uuid depot = id;
      depots.options.push_back({QString::fromStdString(name), said_.depot == depot, [this, depot] {
                                  said_.depot = depot;
                                  changed_by_hand();
                                }});
    }
  depots.options.push_back({tr("another depot"), false, [this] { ask({What::new_depot, {}}); }});
  return {depots};
}

std::vector<SiteSentence::Choices> SiteSentence::rule_choices() {
  Choices rules{facts_.rule_sets.empty()
                    ? tr("There is no rule set in the register: nothing can be held to one yet.")
                    : tr("Which limits is it held to?"),
                {}};
  for (const auto& [id, name] : facts_.rule_sets) {
    const Uuid rule_set = id;
    rules.options.push_back(
        {QString::fromStdString(name), said_.rule_set == rule_set, [this, rule_set] {
           said_.rule_set = rule_set;
           changed_by_hand();
         }});
  }
  return {rules};
}

std::vector<SiteSentence::Choices> SiteSentence::people_choices() {
  const auto& told = said_.people;
  if (ask_.what == What::person) {
    const Uuid id = ask_.id;
    return {{tr("When something cannot wait"),
             {{tr("is told"), true, [this] { closePad(); }}, {tr("is not told"), false, [this, id] {
                                                                std::erase(said_.people, id);
                                                                ask_ = {};
                                                                changed_by_hand();
                                                              }}}}};
  }
  Choices people{tr("Who else is told when something cannot wait?"), {}};
  for (const auto& person : facts_.people) {
    const Uuid id = person.id;
    if (std::find(told.begin(), told.end(), id) != told.end()) continue;
    people.options.push_back({name_of(id), false, [this, id] {
                                said_.people.push_back(id);
                                ask_ = {};
                                changed_by_hand();
                              }});
  }
  people.options.push_back({tr("somebody else"), false, [this] {
                              ask({What::somebody_else, {}});
                            }});
  return {people};
}

std::vector<SiteSentence::Choices> SiteSentence::choices_now() {
  switch (ask_.what) {
    case What::zone:
      return zone_choices();
    case What::depot:
      return depot_choices();
    case What::rule_set:
      return rule_choices();
    case What::person:
    case What::new_person:
      return people_choices();
    default:
      return {};
  }
}

void SiteSentence::show() {
  offered_ = choices_now();
  std::vector<SentenceChoices::Group> groups;
  for (const Choices& choice : offered_) {
    SentenceChoices::Group group{choice.caption, {}, -1};
    for (const Option& option : choice.options) {
      if (option.now) group.now = static_cast<int>(group.names.size());
      group.names << option.words;
    }
    groups.push_back(std::move(group));
  }
  choices_.show(std::move(groups));
  std::vector<SentencePieces::Piece> pieces;
  asked_by_.clear();
  for (const Piece& piece : pieces_now()) {
    asked_by_.push_back(piece.ask);
    pieces.push_back(piece.words);
  }
  pieces_.show(std::move(pieces));
  emit changed();
}

QStringList SiteSentence::zone_lines() const {
  QStringList lines;
  if (!facts_.there) return lines;
  for (const SiteZone& one : facts_.there->zones) {
    const QString name = QString::fromStdString(one.name);
    const auto rate =
        std::find_if(facts_.rates.begin(), facts_.rates.end(),
                     [&](const kneerail::SheetRate& said) { return said.zone == one.id; });
    if (rate == facts_.rates.end()) {
      lines << tr("%1: %2. No rate of its own: the middle of its class holds.")
                   .arg(name, air_of(one));
      continue;
    }
    const QString um =
        QLocale().toString(static_cast<double>(rate->first_year_zinc_nm) / 1000, 'f', 2);
    lines << tr("%1: %2. Zinc loses %3 µm in its first year.").arg(name, air_of(one), um);
  }
  return lines;
}

QStringList SiteSentence::run_names() const {
  QStringList names;
  for (const auto& run : facts_.runs) names << QString::fromStdString(run.name);
  return names;
}

QStringList SiteSentence::run_lines() const {
  QStringList lines;
  for (const auto& run : facts_.runs) {
    QStringList words{QString::fromStdString(run.zone)};
    if (run.height_mm) words << tr("%1 high").arg(kneerail::metres_words(*run.height_mm));
    words << (run.drop_mm ? tr("drop %1").arg(kneerail::metres_words(*run.drop_mm))
                          : tr("drop not known"));
    if (run.below) words << tr("%1 below").arg(kneerail::below_words(*run.below));
    if (run.behind) words << tr("%1 behind it").arg(kneerail::behind_words(*run.behind));
    if (run.seasonal) words << tr("struck for a season");
    if (!run.access_note.empty()) words << QString::fromStdString(run.access_note);
    lines << words.join(tr(" · "));
  }
  return lines;
}

QStringList SiteSentence::people_lines() const {
  QStringList lines;
  if (!facts_.there) return lines;
  for (const Uuid& person : facts_.there->people)
    lines << tr("%1, %2").arg(name_of(person), number_of(person));
  if (lines.isEmpty()) lines << tr("Nobody is named to be told when something cannot wait.");
  return lines;
}

QString SiteSentence::rule_line() const {
  const auto& site = facts_.there;
  const QString rules =
      site && site->rule_set ? named(facts_.rule_sets, *site->rule_set) : QString();
  return rules.isEmpty() ? tr("No rule set: nothing here is held to a limit.")
                         : tr("Held to %1.").arg(rules);
}
