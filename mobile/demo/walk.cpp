#include "mobile/demo/walk.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

#include "mobile/demo/photographing.h"

namespace kneerail::demo {

namespace {

namespace kind {
constexpr int visit_opened = 10, visit_joined = 11, not_reached = 12, grade = 20, coating = 21,
              torque = 22, wall = 23, hand_load = 24, geometry = 25, gate_check = 26, finding = 30,
              next_step = 35, instrument_check = 50;
}

constexpr int pushed_and_looked = 1;
constexpr double wrong_eye = 0.02;
constexpr double said_as_last_time = 0.4;
constexpr int carried_most = 2;  ///< in a row, by the rule set
constexpr double screws_checked = 0.10;
constexpr double passed_by = 0.008;

constexpr double at_each_visit = 0.22;
constexpr double at_every_third = 0.70;

double habit(int part) {
  return SplitMix64(static_cast<std::uint64_t>(part) + 1).uniform();
}

/// Sea wall west, post 118: a post where every fitting is measured and every screw
/// is checked at each visit.
bool is_looked_at_closely(const Plan& plan, int place) {
  const PlannedPost& post = plan.posts[static_cast<std::size_t>(place)];
  return post.number == 118 && plan.runs[static_cast<std::size_t>(post.run)].code == "NM-B";
}

/// How often a part is measured, fixed for its life: at each visit, at every third, or never.
bool is_measured(const Plan& plan, int part, int year) {
  const PlannedPart& at = plan.parts[static_cast<std::size_t>(part)];
  if (!plan.is_zinc(at)) return false;
  const bool has_a_model = at.role == "post tube" || at.role == "top rail" ||
                           at.role == "fitting" || at.role == "base fixing";
  if (!has_a_model) return false;
  if (at.role == "fitting" && is_looked_at_closely(plan, at.post)) return true;
  if (habit(part) < at_each_visit) return true;
  const bool seldom_visited = plan.runs[static_cast<std::size_t>(at.run)].code.starts_with("CS");
  return habit(part) < at_every_third && (seldom_visited || (part + year) % 3 == 0);
}

/// One person's way along a run, with the instruments in hand.
class Walker {
 public:
  struct Hands {
    std::string gauge;
    std::string wrench;
    bool measures = true;
  };
  Walker(Making& making, const Visit& visit, Hands hands)
      : making_(making), visit_(visit), hands_(std::move(hands)) {}

  void post(int place) {
    const PlannedPost& post = making_.plan.posts[static_cast<std::size_t>(place)];
    push(place);
    as_last_time_ = chance().happens(said_as_last_time);
    const bool closely = is_looked_at_closely(making_.plan, place);
    for (int part = post.first_part; part < post.first_part + post.parts; ++part) {
      const Seen seen = look(part);
      const bool measured = hands_.measures && is_measured(making_.plan, part, visit_.year);
      const Spots spots = measured ? measure(part) : Spots{};
      write_down(part, seen, spots);
      if (!hands_.measures) continue;
      if (closely)
        check_each_screw(part);
      else if (chance().happens(screws_checked))
        check_a_screw(part);
    }
    if (!hands_.measures) return;
    if (place % 6 == 0 && visit_.year % 2 == 0) measure_wall(place);
    if (place % 40 == 7) measure_height(place);
  }

 private:
  Chance& chance() { return making_.weather.chance(); }

  const PlannedPart& planned(int part) const {
    return making_.plan.parts[static_cast<std::size_t>(part)];
  }

  /// A push on the bay after the post.
  void push(int place) {
    const PlannedPost& post = making_.plan.posts[static_cast<std::size_t>(place)];
    const PlannedRun& run = making_.plan.runs[static_cast<std::size_t>(post.run)];
    const int nth = place - run.first_post;
    if (nth + 1 >= run.posts) return;
    const PlannedBay& bay = making_.plan.bays[static_cast<std::size_t>(run.first_bay + nth)];
    const Uuid& feed = making_.feed_of_run(post.run);
    constexpr int firm = 1;
    making_.write(kind::hand_load, feed, bay.id, {{1, visit_.id}, {2, firm}});
    if (bay.gate) {
      constexpr int yes = 1;
      making_.write(kind::gate_check, feed, bay.id, {{1, visit_.id}, {2, yes}, {3, yes}, {4, yes}});
    }
  }

  /// What an eye makes of it.
  struct Seen {
    int grade = 1;
    bool rust_found = false;
  };
  /// By spot from 1: what the gauge showed there.
  using Spots = std::vector<std::vector<std::int64_t>>;

  Seen look(int part) {
    Seen seen{making_.weather.grade(part, visit_.day)};
    if (chance().happens(wrong_eye)) seen.grade += chance().happens(0.5) ? 1 : -1;
    seen.grade = std::clamp(seen.grade, 1, 4);
    const int before = making_.last_grades[static_cast<std::size_t>(part)];
    seen.rust_found = seen.grade == 4 && before > 0 && before < 4 && chance().happens(0.35);
    return seen;
  }

  /// A coating under half of its nominal is grade 3 however well it looks: where the gauge says so,
  /// and from then on as long as it is that coating.
  bool is_thin(int part, const Spots& spots) {
    const PlannedPart& at = planned(part);
    const double nominal_tenth_um =
        static_cast<double>(making_.plan.types[static_cast<std::size_t>(at.type)]
                                .row.number("nominal_tenth_um")
                                .value_or(0));
    const double half = nominal_tenth_um / 2;
    if (!spots.empty())
      return std::any_of(spots.begin(), spots.end(), [&](const auto& read) {
        const auto sum = std::accumulate(read.begin(), read.end(), std::int64_t{0});
        return static_cast<double>(sum) < half * static_cast<double>(read.size());
      });
    return making_.read_thin[static_cast<std::size_t>(part)] &&
           10 * making_.weather.coating_um(part, visit_.day) < half;
  }

  void write_down(int part, const Seen& seen, const Spots& spots) {
    constexpr int under_half = 3;
    const bool thin = is_thin(part, spots);
    making_.read_thin[static_cast<std::size_t>(part)] = thin;
    const int grade = thin ? std::max(seen.grade, under_half) : seen.grade;
    write_grade(making_, visit_, part, grade, as_last_time_);
    if (seen.rust_found) rust_found(part);
    for (std::size_t i = 0; i < spots.size(); ++i)
      write_coating(making_, visit_, part, static_cast<int>(i) + 1, spots[i], hands_.gauge);
  }

  void rust_found(int part) {
    const PlannedPart& at = planned(part);
    const Uuid& feed = making_.feed_of_part(part);
    constexpr int rust = 4;
    constexpr int paint_flaking = 12;
    const bool zinc = making_.plan.is_zinc(at);
    const Uuid finding = making_.write(
        kind::finding, feed, at.id,
        {{1, visit_.id},
         {2, zinc ? rust : paint_flaking},
         {3, 4},
         {4, false},
         {5, zinc ? "Red rust over most of it, edges still sharp" : "Paint lifts, rust under it"},
         {7, making_.next_finding_number(visit_.site)},
         {8, "Firm when pushed; nothing split or thin to the eye"},
         {98, making_.lives[static_cast<std::size_t>(part)]}});
    photograph(making_, {.finding = finding,
                         .part = part,
                         .what = zinc ? rust : paint_flaking,
                         .grade = 4,
                         .visit = visit_.id});
    constexpr int mend = 3;
    constexpr int order = 4;
    making_.write(kind::next_step, feed, finding,
                  {{1, zinc ? order : mend},
                   {2, visit_.day.days + 270},
                   {5, zinc ? "own crew" : "painting contractor"}});
  }

  Spots measure(int part) {
    const int spots = planned(part).spots == 2 && chance().happens(0.4) ? 2 : 1;
    Spots read;
    for (int spot = 1; spot <= spots; ++spot)
      read.push_back(making_.weather.read_coating(part, spot, hands_.gauge, visit_.day));
    return read;
  }

  void check_a_screw(int part) {
    const int screws = planned(part).screws;
    if (screws > 0) check_screw(part, static_cast<int>(chance().between(1, screws)));
  }

  void check_each_screw(int part) {
    for (int screw = 1; screw <= planned(part).screws; ++screw) check_screw(part, screw);
  }

  /// The wrench is set to eight tenths of the target: it clicks and nothing moves, or it moves
  /// first, and then the screw is left at that value.
  void check_screw(int part, int screw) {
    const PlannedPart& at = planned(part);
    const auto target =
        making_.plan.types[static_cast<std::size_t>(at.type)].row.whole("torque_target_tenth_nm");
    const std::int64_t set_at = target * 8 / 10;
    const double torque = making_.weather.torque_tenth_nm(part, screw, visit_.day);
    constexpr int about = 1, at_least = 2, at_most = 3;
    constexpr int no_movement = 1, moved = 2;
    cbor::Map body{{1, visit_.id}, {2, making_.instruments.at(hands_.wrench)}, {3, screw}};
    if (torque >= static_cast<double>(set_at)) {
      body.set(4, set_at);
      body.set(5, at_least);
      body.set(6, no_movement);
    } else {
      const bool shown = chance().happens(0.6);
      body.set(4, shown ? static_cast<std::int64_t>(5 * std::llround(torque / 5)) : set_at);
      body.set(5, shown ? about : at_most);
      body.set(6, moved);
      body.set(7, set_at);
      making_.weather.tighten(part, screw, visit_.day, static_cast<double>(set_at));
    }
    body.set(8, target);
    body.set(10, set_at);
    body.set(98, making_.lives[static_cast<std::size_t>(part)]);
    making_.write(kind::torque, making_.feed_of_part(part), at.id, std::move(body));
  }

  void measure_wall(int place) {
    const int part = making_.plan.part_at(place, "post tube");
    const PlannedRun& run = making_.plan.runs[static_cast<std::size_t>(planned(part).run)];
    if (run.finish == "aluminium") return;
    constexpr int six_o_clock = 6;
    cbor::Array readings;
    for (const std::int64_t value : making_.weather.read_wall(part, visit_.day)) {
      readings.emplace_back(value);
    }
    making_.write(kind::wall, making_.feed_of_part(part), planned(part).id,
                  {{1, visit_.id},
                   {2, making_.instruments.at("wall_1")},
                   {3, std::move(readings)},
                   {4, six_o_clock},
                   {5, 5920},
                   {6, 150},
                   {98, making_.lives[static_cast<std::size_t>(part)]}});
  }

  void measure_height(int place) {
    const PlannedPost& post = making_.plan.posts[static_cast<std::size_t>(place)];
    const std::int64_t required =
        making_.plan.runs[static_cast<std::size_t>(post.run)].row.whole("height_mm");
    constexpr int rail_height = 1;
    making_.write(kind::geometry, making_.feed_of_run(post.run), post.id,
                  {{1, visit_.id},
                   {2, rail_height},
                   {3, required + chance().between(2, 14)},
                   {4, required},
                   {5, making_.rule_set}});
  }

  Making& making_;
  const Visit& visit_;
  Hands hands_;
  bool as_last_time_ = false;  ///< what stands at this post is said to be as last time
};

void check_instruments(Making& making, const Visit& visit, const std::string& gauge) {
  const Uuid& feed = making.plan.sites[static_cast<std::size_t>(visit.site)].id;
  constexpr int check_foil = 2;
  zero_gauge(making, visit.site, gauge, visit.id);
  // In the season in which gauge B drifted its foil lay in the depot: nobody could have known.
  if (gauge == "gauge_b" && visit.year == drift_year) return;
  cbor::Array readings;
  for (const std::int64_t value : making.weather.read_foil(gauge, visit.site, visit.day)) {
    readings.emplace_back(value);
  }
  making.write(kind::instrument_check, feed, making.instruments.at(gauge),
               {{1, visit.id}, {2, check_foil}, {3, 500}, {4, std::move(readings)}, {5, true}});
}

Visit open_visit(Making& making, const Round& round) {
  Visit visit{{}, round.site, round.day, civil(round.day).year};
  const Uuid& site = making.plan.sites[static_cast<std::size_t>(round.site)].id;
  cbor::Array runs;
  for (const int run : round.runs) {
    runs.emplace_back(making.plan.runs[static_cast<std::size_t>(run)].id);
  }
  for (const int run : round.second_day) {
    runs.emplace_back(making.plan.runs[static_cast<std::size_t>(run)].id);
  }
  constexpr int dry = 1;
  cbor::Map body{{1, static_cast<int>(round.kind)}};
  body.set(3, std::move(runs));
  body.set(4, cbor::Array{dry, making.weather.chance().between(1, 5),
                          making.weather.chance().between(60, 190)});
  if (!round.event.is_zero()) body.set(5, round.event);
  making.move_to(round.day, 7 * 60 + 45);
  making.written_by(round.people[0]);
  visit.id = making.write(kind::visit_opened, site, site, std::move(body));
  if (!round.people[1].empty()) {
    making.written_by(round.people[1]);
    making.write(kind::visit_joined, site, visit.id, {{1, "measure"}});
  }
  ++making.visits;
  return visit;
}

void pass_by(Making& making, const Visit& visit, int place) {
  const PlannedPost& post = making.plan.posts[static_cast<std::size_t>(place)];
  constexpr int locked = 1;
  constexpr int no_time = 5;
  making.write(kind::not_reached, making.feed_of_run(post.run), post.id,
               {{1, visit.id}, {2, making.weather.chance().between(locked, no_time)}});
}

void walk_runs(Making& making, const Visit& visit, const Round& round, const std::vector<int>& runs,
               const AtPost& at_post) {
  const int people = round.people[1].empty() ? 1 : 2;
  for (int i = 0; i < people && round.kind == VisitKind::detailed; ++i) {
    making.written_by(round.people[static_cast<std::size_t>(i)]);
    check_instruments(making, visit, round.gauges[static_cast<std::size_t>(i)]);
  }
  std::int64_t minute = 8 * 60;
  for (const int place : runs) {
    const PlannedRun& run = making.plan.runs[static_cast<std::size_t>(place)];
    for (int i = 0; i < people; ++i) {
      const auto who = static_cast<std::size_t>(i);
      making.written_by(round.people[who]);
      Walker walker(
          making, visit,
          {round.gauges[who], i == 0 ? "wrench_1" : "wrench_2", round.kind == VisitKind::detailed});
      for (int n = i * run.posts / people; n < (i + 1) * run.posts / people; ++n) {
        making.move_to(visit.day, minute += 2);
        if (making.weather.chance().happens(passed_by)) {
          pass_by(making, visit, run.first_post + n);
        } else {
          walker.post(run.first_post + n);
        }
        at_post(visit, run.first_post + n);
      }
    }
    making.save();
  }
}

/// Back at the van, each seals what they did.
void close_visit(Making& making, const Visit& visit, const Round& round) {
  making.move_to(visit.day, 16 * 60 + 30);
  for (const std::string& person : round.people) {
    if (!person.empty()) making.seal(visit.site, visit.id, person);
  }
}

/// The life the writer believed current; left out where nobody could say.
void set_life(const Making& making, int part, cbor::Map& body) {
  const Uuid& life = making.lives[static_cast<std::size_t>(part)];
  if (!life.is_zero()) body.set(98, life);
}

}  // namespace

void zero_gauge(Making& making, int site, const std::string& gauge, const Uuid& visit) {
  constexpr int zero = 1;
  const std::int64_t shown = 10 * (making.weather.chance().between(-4, 6) / 5);
  cbor::Map body{{2, zero}, {3, 0}, {4, cbor::Array{shown}}, {5, true}};
  if (!visit.is_zero()) body.set(1, visit);
  making.write(kind::instrument_check, making.plan.sites[static_cast<std::size_t>(site)].id,
               making.instruments.at(gauge), std::move(body));
}

bool is_measured_each_time(int part) {
  return habit(part) < at_each_visit;
}

void write_grade(Making& making, const Visit& visit, int part, int grade, bool as_last_time) {
  int& last = making.last_grades[static_cast<std::size_t>(part)];
  cbor::Map body{{1, visit.id}, {2, grade}, {5, pushed_and_looked}};
  set_life(making, part, body);
  int& carried = making.carried[static_cast<std::size_t>(part)];
  const bool carries = as_last_time && grade == last && grade <= 2 && carried < carried_most;
  carried = carries ? carried + 1 : 0;
  if (carries) body.set(97, true);
  last = grade;
  making.write(kind::grade, making.feed_of_part(part),
               making.plan.parts[static_cast<std::size_t>(part)].id, std::move(body));
}

Uuid write_coating(Making& making, const Visit& visit, int part, int spot,
                   std::vector<std::int64_t> tenth_um, const std::string& gauge) {
  cbor::Array readings;
  for (const std::int64_t value : tenth_um) readings.emplace_back(value);
  return making.write(kind::coating, making.feed_of_part(part),
                      making.plan.parts[static_cast<std::size_t>(part)].id,
                      {{1, visit.id},
                       {2, making.instruments.at(gauge)},
                       {3, std::move(readings)},
                       {4, spot},
                       {98, making.lives[static_cast<std::size_t>(part)]}});
}

Visit walk(Making& making, const Round& round, const AtPost& at_post) {
  Visit visit = open_visit(making, round);
  walk_runs(making, visit, round, round.runs, at_post);
  if (!round.second_day.empty()) {
    visit.day = Date{round.day.days + 1};
    making.move_to(visit.day, 7 * 60 + 45);
    walk_runs(making, visit, round, round.second_day, at_post);
  }
  making.save();
  close_visit(making, visit, round);
  return visit;
}

}  // namespace kneerail::demo
