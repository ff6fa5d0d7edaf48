#include "mobile/models/run_choices.h"

#include <QCoreApplication>
#include <QLocale>
#include <cstdlib>

#include "mobile/models/forecast_words.h"
#include "mobile/models/run_words.h"

namespace kneerail {
namespace {

using layout::Made;
using What = RunAsk::What;

class Choice {
  Q_DECLARE_TR_FUNCTIONS(Choice)
};

/// What is different at that place; nothing where nobody said so.
template <class Change>
const Change& change_of(const std::map<int, Change>& changes, int place) {
  static const Change none;
  const auto found = changes.find(place);
  return found == changes.end() ? none : found->second;
}

/// Made of an option for each value of a list: what it is called, and where it goes.
template <class Value, class List, class Words, class Set>
RunChoices one_of(const QString& caption, const List& values, Value now, Words words, Set set) {
  RunChoices choices{caption, {}};
  for (const Value value : values)
    choices.options.push_back(
        {words(value), value == now, [set, value](NewRun& run) { set(run, value); }});
  return choices;
}

struct Tube {
  std::int64_t diameter_tenth_mm;
  std::int64_t wall_tenth_mm;
  bool operator==(const Tube&) const = default;
};
// Outside diameters of series 1 of ISO 4200 that hands go round, with the walls of the medium and
// heavy tube of EN 10255; from memory.
constexpr std::initializer_list<Tube> tubes = {{337, 32}, {337, 40}, {424, 32}, {424, 40},
                                               {483, 32}, {483, 40}, {603, 36}, {603, 45}};

// What these barriers are built in: common practice, no source.
constexpr std::initializer_list<Made> makes = {
    {System::slip_on, Material::steel, Protection::hot_dip_zinc},
    {System::slip_on, Material::steel, Protection::zinc_plus_paint},
    {System::slip_on, Material::aluminium, Protection::anodised},
    {System::slip_on, Material::aluminium, Protection::bare},
    {System::slip_on, Material::stainless_steel, Protection::bare},
    {System::welded, Material::steel, Protection::paint_on_steel},
    {System::welded, Material::steel, Protection::hot_dip_zinc},
    {System::welded, Material::steel, Protection::zinc_plus_paint},
    {System::welded, Material::aluminium, Protection::bare},
    {System::welded, Material::stainless_steel, Protection::bare}};

constexpr std::initializer_list<BaseKind> bases = {BaseKind::base_flange, BaseKind::wall_flange,
                                                   BaseKind::welded_plate, BaseKind::cast_in,
                                                   BaseKind::socket};

RunChoices zones_of(const NewRun& run, const RunSurroundings& around) {
  RunChoices choices{Choice::tr("In which zone of the site?"), {}};
  if (around.zones.empty())
    choices.caption = Choice::tr("This site has no zone yet: its sheet registers one.");
  for (const SiteZone& zone : around.zones) {
    const Uuid id = zone.id;
    choices.options.push_back({QString::fromStdString(zone.name), id == run.zone,
                               [id](NewRun& changed) { changed.zone = id; }});
  }
  return choices;
}

RunChoices tube_choices(const NewRun& run) {
  return one_of(
      Choice::tr("Which tube?"), tubes, Tube{run.rule.diameter_tenth_mm, run.rule.wall_tenth_mm},
      [](Tube tube) { return tube_words(tube.diameter_tenth_mm, tube.wall_tenth_mm); },
      [](NewRun& changed, Tube tube) {
        changed.rule.diameter_tenth_mm = tube.diameter_tenth_mm;
        changed.rule.wall_tenth_mm = tube.wall_tenth_mm;
      });
}

RunChoices made_choices(const NewRun& run) {
  return one_of(
      Choice::tr("How is it built?"), makes, run.rule.made,
      [](Made made) {
        return Choice::tr("%1, %2").arg(system_words(made), protection_words(made));
      },
      [](NewRun& changed, Made made) { changed.rule.made = made; });
}

std::vector<RunChoices> filling_choices(const NewRun& run) {
  const std::initializer_list<BayKind> kinds = {BayKind::rails, BayKind::mesh_infill};
  const std::initializer_list<bool> boards = {false, true};
  return {one_of(
              Choice::tr("What fills the bays?"), kinds, run.rule.bays,
              [](BayKind kind) {
                return kind == BayKind::rails ? Choice::tr("rails only") : bay_words(kind);
              },
              [](NewRun& changed, BayKind kind) { changed.rule.bays = kind; }),
          one_of(
              Choice::tr("A toe board?"), boards, run.rule.toe_board,
              [](bool board) {
                return board ? Choice::tr("with a toe board") : Choice::tr("no toe board");
              },
              [](NewRun& changed, bool board) { changed.rule.toe_board = board; })};
}

RunChoices sleeve_choices(const NewRun& run) {
  const std::initializer_list<int> every = {0, 1, 2, 3, 4, 5};
  return one_of(
      Choice::tr("Where are the rails joined by sleeve couplings?"), every,
      run.rule.sleeve_every_bays,
      [](int bays) {
        if (bays == 0) return Choice::tr("nowhere");
        return Choice::tr("every %n bay(s)", nullptr, bays);
      },
      [](NewRun& changed, int bays) { changed.rule.sleeve_every_bays = bays; });
}

RunChoices day_choices(const NewRun& run, Date today) {
  RunChoices choices{Choice::tr("Since which day? 3 April 2018: 03042018"), {}};
  choices.options.push_back({Choice::tr("not known"), !run.rule.in_service.has_value(),
                             [](NewRun& changed) { changed.rule.in_service.reset(); }});
  choices.options.push_back({Choice::tr("today"), run.rule.in_service == today,
                             [today](NewRun& changed) { changed.rule.in_service = today; }});
  return choices;
}

template <class Code>
RunChoices code_choices(const QString& caption, int last, std::optional<Code> now,
                        QString (*words)(Code), std::optional<Code> NewRun::*field) {
  RunChoices choices{caption, {}};
  for (int code = 1; code <= last; ++code) {
    const auto value = static_cast<Code>(code);
    choices.options.push_back(
        {words(value), now == value, [field, value](NewRun& changed) { changed.*field = value; }});
  }
  choices.options.push_back(
      {Choice::tr("not known"), !now, [field](NewRun& changed) { (changed.*field).reset(); }});
  return choices;
}

std::vector<RunChoices> piece_choices(RunPiece piece, const NewRun& run,
                                      const RunSurroundings& around, Date today) {
  const std::initializer_list<WhatItDoes> joints = {WhatItDoes::three_way_tee,
                                                    WhatItDoes::adjustable_swivel};
  const std::initializer_list<WhatItDoes> ends = {WhatItDoes::elbow, WhatItDoes::three_way_tee};
  switch (piece) {
    case RunPiece::zone:
      return {zones_of(run, around)};
    case RunPiece::tube:
      return {tube_choices(run)};
    case RunPiece::made:
      return {made_choices(run)};
    case RunPiece::base:
      return {one_of(Choice::tr("What does a post stand on?"), bases, run.rule.base, base_words,
                     [](NewRun& changed, BaseKind base) { changed.rule.base = base; })};
    case RunPiece::joint:
      return {one_of(
          Choice::tr("What holds the rails at a post?"), joints, run.rule.joint,
          [](WhatItDoes does) {
            return does == WhatItDoes::three_way_tee ? Choice::tr("three-way tee and cross")
                                                     : Choice::tr("adjustable swivels");
          },
          [](NewRun& changed, WhatItDoes does) { changed.rule.joint = does; })};
    case RunPiece::end:
      return {one_of(
          Choice::tr("How does the top rail end?"), ends, run.rule.end,
          [](WhatItDoes does) {
            return does == WhatItDoes::elbow ? Choice::tr("elbow")
                                             : Choice::tr("three-way tee and end cap");
          },
          [](NewRun& changed, WhatItDoes does) { changed.rule.end = does; })};
    case RunPiece::filling:
      return filling_choices(run);
    case RunPiece::sleeves:
      return {sleeve_choices(run)};
    case RunPiece::in_service:
      return {day_choices(run, today)};
    case RunPiece::drop:
      return {{Choice::tr("The drop in centimetres"),
               {{Choice::tr("not known"), !run.drop_mm,
                 [](NewRun& changed) { changed.drop_mm.reset(); }}}}};
    case RunPiece::behind:
      return {code_choices(Choice::tr("Who is behind it?"), 5, run.behind, behind_words,
                           &NewRun::behind)};
    case RunPiece::below:
      return {
          code_choices(Choice::tr("What is below?"), 4, run.below, below_words, &NewRun::below)};
    default:
      return {};
  }
}

RunChoices joint_choices(const RunAsk& ask, const NewRun& run) {
  const std::initializer_list<WhatItDoes> fittings = {
      WhatItDoes::three_way_tee, WhatItDoes::corner_tee,        WhatItDoes::cross,
      WhatItDoes::elbow,         WhatItDoes::adjustable_swivel, WhatItDoes::end_cap};
  const layout::JointPlace at{ask.place, ask.rail};
  const auto changed = run.rule.joint_changes.find(at);
  const bool own = changed != run.rule.joint_changes.end();
  RunChoices choices{Choice::tr("What is it here?"), {}};
  choices.options.push_back({Choice::tr("as the rule"), !own,
                             [at](NewRun& edited) { edited.rule.joint_changes.erase(at); }});
  for (const WhatItDoes does : fittings)
    choices.options.push_back(
        {fitting_words(does), own && changed->second == does,
         [at, does](NewRun& edited) { edited.rule.joint_changes[at] = does; }});
  return choices;
}

std::vector<RunChoices> post_choices(const RunAsk& ask, const NewRun& run) {
  const int post = ask.place;
  const layout::PostChange& now = change_of(run.rule.post_changes, post);
  RunChoices stands{Choice::tr("It stands on"), {}};
  stands.options.push_back({Choice::tr("as the rule"), !now.base, [post](NewRun& changed) {
                              changed.rule.post_changes[post].base.reset();
                            }});
  for (const BaseKind base : bases)
    stands.options.push_back({base_words(base), now.base == base, [post, base](NewRun& changed) {
                                changed.rule.post_changes[post].base = base;
                              }});
  RunChoices turns{Choice::tr("Here the run goes"), {}};
  for (const int degrees : {0, 90, -90, 45, -45}) {
    const QString to_left = Choice::tr("%1° left").arg(degrees);
    const QString to_right = Choice::tr("%1° right").arg(-degrees);
    turns.options.push_back({degrees == 0  ? Choice::tr("straight on")
                             : degrees > 0 ? to_left
                                           : to_right,
                             now.turn_degrees == degrees, [post, degrees](NewRun& changed) {
                               changed.rule.post_changes[post].turn_degrees = degrees;
                             }});
  }
  turns.options.push_back(
      {now.landmark.empty() ? Choice::tr("what stands here") : QString::fromStdString(now.landmark),
       !now.landmark.empty(),
       {},
       RunAsk{What::landmark, RunPiece::name, post, 0}});
  return {stands, turns};
}

std::vector<RunChoices> bay_choices(const RunAsk& ask, const NewRun& run) {
  const int bay = ask.place;
  const layout::BayChange& now = change_of(run.rule.bay_changes, bay);
  RunChoices kinds{Choice::tr("This bay has"), {}};
  kinds.options.push_back({Choice::tr("as the rule"), !now.kind,
                           [bay](NewRun& changed) { changed.rule.bay_changes[bay].kind.reset(); }});
  for (const BayKind kind :
       {BayKind::rails, BayKind::mesh_infill, BayKind::gate, BayKind::open_gap})
    kinds.options.push_back({bay_words(kind), now.kind == kind, [bay, kind](NewRun& changed) {
                               changed.rule.bay_changes[bay].kind = kind;
                             }});
  RunChoices more{Choice::tr("and it is"), {}};
  const bool board = now.toe_board.value_or(run.rule.toe_board);
  more.options.push_back({board ? Choice::tr("with a toe board") : Choice::tr("no toe board"),
                          now.toe_board.has_value(), [bay, board](NewRun& changed) {
                            changed.rule.bay_changes[bay].toe_board = !board;
                          }});
  more.options.push_back(
      {Choice::tr("%1 long").arg(metres_words(now.length_mm.value_or(run.rule.spacing_mm))),
       now.length_mm.has_value(),
       {},
       RunAsk{What::length, RunPiece::name, bay, 0}});
  const QString slope = metres_words(std::abs(now.rise_mm));
  more.options.push_back({now.rise_mm == 0  ? Choice::tr("level")
                          : now.rise_mm > 0 ? Choice::tr("rising %1").arg(slope)
                                            : Choice::tr("falling %1").arg(slope),
                          now.rise_mm != 0,
                          {},
                          RunAsk{What::rise, RunPiece::name, bay, 0}});
  return {kinds, more};
}

constexpr std::int64_t mm_in_cm = 10;

std::optional<RunNumber> piece_number(RunPiece piece) {
  const auto length = [](const QString& caption, std::int64_t layout::RunRule::*field) {
    return RunNumber{caption, 4, false, [field](NewRun& run, std::int64_t cm) {
                       run.rule.*field = cm * mm_in_cm;
                       return true;
                     }};
  };
  const auto count = [](const QString& caption, int digits, int layout::RunRule::*field) {
    return RunNumber{caption, digits, false, [field](NewRun& run, std::int64_t number) {
                       run.rule.*field = static_cast<int>(number);
                       return true;
                     }};
  };
  switch (piece) {
    case RunPiece::posts:
      return count(Choice::tr("How many posts?"), 3, &layout::RunRule::posts);
    case RunPiece::first:
      return count(Choice::tr("Which number has the first post?"), 5,
                   &layout::RunRule::first_number);
    case RunPiece::rails:
      return count(Choice::tr("How many rails?"), 1, &layout::RunRule::rails);
    case RunPiece::spacing:
      return length(Choice::tr("How many centimetres from post to post?"),
                    &layout::RunRule::spacing_mm);
    case RunPiece::height:
      return length(Choice::tr("How many centimetres high is the top rail?"),
                    &layout::RunRule::height_mm);
    case RunPiece::drop:
      return RunNumber{{}, 5, false, [](NewRun& run, std::int64_t cm) {
                         run.drop_mm = cm * mm_in_cm;
                         return true;
                       }};
    case RunPiece::in_service:
      return RunNumber{{}, 8, false, [](NewRun& run, std::int64_t typed) {
                         const auto year = static_cast<int>(typed % 10'000);
                         const auto month = static_cast<unsigned>(typed / 10'000 % 100);
                         const auto day = static_cast<unsigned>(typed / 1'000'000);
                         constexpr int first_year = 1800;
                         if (year < first_year) return false;
                         const Date date = date_from_civil(year, month, day);
                         const Civil back = civil(date);
                         if (back.month != month || back.day != day) return false;
                         run.rule.in_service = date;
                         return true;
                       }};
    default:
      return std::nullopt;
  }
}

QString bay_title(const RunAsk& ask, const NewRun& run) {
  const int first = run.rule.first_number + ask.place;
  const QString bay = Choice::tr("Bay %1 to %2").arg(first).arg(first + 1);
  const layout::BayChange& now = change_of(run.rule.bay_changes, ask.place);
  const QString length = metres_words(now.length_mm.value_or(run.rule.spacing_mm));
  if (ask.what == What::length) return Choice::tr("%1 · %2 long").arg(bay, length);
  if (ask.what != What::rise) return bay;
  const QString slope = metres_words(std::abs(now.rise_mm));
  return now.rise_mm < 0 ? Choice::tr("%1 · falls %2").arg(bay, slope)
                         : Choice::tr("%1 · rises %2").arg(bay, slope);
}

}  // namespace

std::vector<RunChoices> choices_of(const RunAsk& ask, const NewRun& run,
                                   const RunSurroundings& around, Date today) {
  switch (ask.what) {
    case What::piece:
      return piece_choices(ask.piece, run, around, today);
    case What::joint:
      return {joint_choices(ask, run)};
    case What::post:
      return post_choices(ask, run);
    case What::bay:
      return bay_choices(ask, run);
    default:
      return {};
  }
}

std::optional<RunNumber> number_of(const RunAsk& ask, const NewRun& run) {
  const int bay = ask.place;
  if (ask.what == What::piece) return piece_number(ask.piece);
  if (ask.what == What::length)
    return RunNumber{Choice::tr("How many centimetres is this bay long? The rule says %1")
                         .arg(run.rule.spacing_mm / mm_in_cm),
                     4, false, [bay](NewRun& changed, std::int64_t cm) {
                       const std::int64_t length_mm = cm * mm_in_cm;
                       auto& own = changed.rule.bay_changes[bay].length_mm;
                       if (length_mm == changed.rule.spacing_mm)
                         own.reset();
                       else
                         own = length_mm;
                       return true;
                     }};
  if (ask.what == What::rise)
    return RunNumber{
        Choice::tr("How many centimetres does it rise to the next post? Under zero it falls"), 4,
        true, [bay](NewRun& changed, std::int64_t cm) {
          changed.rule.bay_changes[bay].rise_mm = cm * mm_in_cm;
          return true;
        }};
  return std::nullopt;
}

std::optional<QString> words_of(const RunAsk& ask, const NewRun& run) {
  if (ask.what == What::piece && ask.piece == RunPiece::name)
    return QString::fromStdString(run.name);
  if (ask.what != What::landmark) return std::nullopt;
  const auto found = run.rule.post_changes.find(ask.place);
  return found == run.rule.post_changes.end() ? QString()
                                              : QString::fromStdString(found->second.landmark);
}

int words_most(const RunAsk& ask) {
  constexpr int name_most = 120;
  constexpr int landmark_most = 40;
  return ask.what == What::landmark ? landmark_most : name_most;
}

void say_words(const RunAsk& ask, NewRun& run, const QString& words) {
  const std::string said = words.simplified().left(words_most(ask)).toStdString();
  if (ask.what == What::landmark)
    run.rule.post_changes[ask.place].landmark = said;
  else
    run.name = said;
}

QString ask_title(const RunAsk& ask, const NewRun& run) {
  const auto post = [&](int place) { return QString::number(run.rule.first_number + place); };
  switch (ask.what) {
    case What::joint:
      return ask.rail == 0 ? Choice::tr("%1 · top rail").arg(post(ask.place))
                           : Choice::tr("%1 · mid-rail %2").arg(post(ask.place)).arg(ask.rail);
    case What::post:
      return Choice::tr("Post %1").arg(post(ask.place));
    case What::bay:
    case What::length:
    case What::rise:
      return bay_title(ask, run);
    case What::landmark:
      return Choice::tr("What stands at post %1?").arg(post(ask.place));
    default:
      return ask.piece == RunPiece::name ? Choice::tr("What is the run called?") : QString();
  }
}

QString count_words(const layout::LaidRun& laid) {
  return Choice::tr("%1 · %2 · %3 · %4 m of rail")
      .arg(Choice::tr("%Ln post(s)", nullptr, static_cast<int>(laid.posts.size())),
           Choice::tr("%Ln bay(s)", nullptr, static_cast<int>(laid.bays.size())),
           Choice::tr("%Ln fitting(s)", nullptr, laid.fittings()),
           QLocale().toString(static_cast<double>(laid.rail_tube_mm()) / 1000, 'f', 1));
}

}  // namespace kneerail
