#include "mobile/demo/strikes.h"

namespace kneerail::demo {

namespace {

namespace kind {
constexpr int visit_opened = 10, hand_load = 24, closure_looked_at = 37, closed = 42,
              strike_opened = 45, strike_step = 46, opened = 47, strike_hours = 48;
}
namespace step {
constexpr int down = 1, back = 2, torque_signed = 3, looked_at = 4;
}
constexpr std::int64_t day_ms = 86'400'000;

const PlannedRun& planned(const Making& making, int run) {
  return making.plan.runs[static_cast<std::size_t>(run)];
}

/// Rails, and every fitting that holds one; tubes and flanges stay in the ground.
std::vector<int> parts_to_strike(const Plan& plan, int run) {
  std::vector<int> parts;
  for (std::size_t i = 0; i < plan.parts.size(); ++i) {
    const PlannedPart& part = plan.parts[i];
    const bool holds_a_rail = part.role == "fitting" && part.up_mm > 100;
    const bool rail = part.role == "top rail" || part.role == "mid-rail";
    if (part.run == run && (rail || holds_a_rail)) parts.push_back(static_cast<int>(i));
  }
  return parts;
}

constexpr const char* strike_hand = "KT";

Uuid open_visit(Making& making, int run, Date day, int visit_kind) {
  making.move_to(day, 7 * 60);
  making.written_by(strike_hand);
  const Uuid& site = making.feed_of_run(run);
  ++making.visits;
  return making.write(kind::visit_opened, site, site,
                      {{1, visit_kind}, {3, cbor::Array{planned(making, run).id}}});
}

void close_visit(Making& making, int run, Date day, const Uuid& visit) {
  making.move_to(day, 16 * 60 + 30);
  making.seal(planned(making, run).site, visit, strike_hand);
}

void hours(Making& making, const Strike& strike, Date day, const char* task, int minutes) {
  making.write(kind::strike_hours, making.feed_of_run(strike.run), strike.id,
               {{1, 4}, {2, minutes}, {3, task}, {4, day.days}});
}

void back_in_place(Making& making, const Strike& strike, int from_another_place) {
  const Uuid& feed = making.feed_of_run(strike.run);
  constexpr int same = 2;
  constexpr int another = 3;
  for (const int part : strike.parts) {
    const Uuid record = making.write(
        kind::strike_step, feed, making.plan.parts[static_cast<std::size_t>(part)].id,
        {{1, strike.id}, {2, step::back}, {8, part == from_another_place ? another : same}});
    if (part == from_another_place) making.lives[static_cast<std::size_t>(part)] = record;
  }
}

void sign_a_screw(Making& making, const Strike& strike, int part, int screw, Date day) {
  const PlannedPart& at = making.plan.parts[static_cast<std::size_t>(part)];
  const auto target =
      making.plan.types[static_cast<std::size_t>(at.type)].row.whole("torque_target_tenth_nm");
  constexpr int moved_tight_now = 2;
  making.write(kind::strike_step, making.feed_of_run(strike.run), at.id,
               {{1, strike.id},
                {2, step::torque_signed},
                {3, target},
                {4, making.instruments.at("wrench_2")},
                {5, screw},
                {7, moved_tight_now}});
  making.weather.tighten(part, screw, day, static_cast<double>(target));
}

void push_the_bays(Making& making, const Strike& strike, const Uuid& visit) {
  const PlannedRun& run = planned(making, strike.run);
  const Uuid& feed = making.feed_of_run(strike.run);
  constexpr int firm = 1;
  for (int i = run.first_bay; i < run.first_bay + run.posts - 1; ++i) {
    const Uuid& bay = making.plan.bays[static_cast<std::size_t>(i)].id;
    making.write(kind::hand_load, feed, bay, {{1, visit}, {2, firm}});
    making.write(kind::strike_step, feed, bay, {{1, strike.id}, {2, step::looked_at}});
  }
}

void open_the_run(Making& making, const Strike& strike, const Uuid& visit) {
  constexpr int pushed_and_looked = 1;
  making.write(kind::opened, making.feed_of_run(strike.run), strike.id,
               {{1, pushed_and_looked}, {2, visit}});
}

}  // namespace

Strike strike(Making& making, int run, Date day) {
  constexpr int strike_visit = 6;
  const Uuid visit = open_visit(making, run, day, strike_visit);
  const Uuid& feed = making.feed_of_run(run);
  Strike made{run, {}, {}, parts_to_strike(making.plan, run)};
  cbor::Array components;
  for (const int part : made.parts) {
    components.emplace_back(making.plan.parts[static_cast<std::size_t>(part)].id);
  }
  constexpr int season = 1;
  constexpr int locked_gate = 3;
  const Date back_by = date_from_civil(civil(day).year + 1, 4, 30);
  made.id =
      making.write(kind::strike_opened, feed, planned(making, run).id,
                   {{1, season}, {2, back_by.days}, {3, locked_gate}, {4, std::move(components)}});
  constexpr int for_a_strike = 7;
  made.closure = making.write(kind::closed, feed, planned(making, run).id,
                              {{1, for_a_strike},
                               {2, noon_utc(day).ms},
                               {4, locked_gate},
                               {5, noon_utc(day).ms + 30 * day_ms},
                               {6, made.id}});
  making.move_to(day, 9 * 60);
  for (const int part : made.parts) {
    making.write(
        kind::strike_step, feed, making.plan.parts[static_cast<std::size_t>(part)].id,
        {{1, made.id}, {2, step::down}, {6, "Fish Quay depot, rack " + planned(making, run).code}});
  }
  hours(making, made, day, "take down", 430);
  close_visit(making, run, day, visit);
  return made;
}

void look_at_closure(Making& making, const Strike& strike, Date day) {
  making.move_to(day, 10 * 60);
  making.written_by("JV");
  constexpr int in_place = 1;
  making.write(kind::closure_looked_at, making.feed_of_run(strike.run), strike.closure,
               {{1, in_place}, {2, noon_utc(day).ms + 60 * day_ms}});
  making.save();
}

void re_erect(Making& making, const Strike& strike, Date day, Reopening how) {
  constexpr int re_erect_visit = 7;
  const Uuid visit = open_visit(making, strike.run, day, re_erect_visit);
  int one_fitting = -1;
  for (const int part : strike.parts) {
    if (making.plan.parts[static_cast<std::size_t>(part)].role == "fitting") one_fitting = part;
  }
  making.move_to(day, 9 * 60);
  back_in_place(making, strike, how == Reopening::a_part_from_store ? one_fitting : -1);
  making.move_to(day, 12 * 60);
  for (const int part : strike.parts) {
    for (int screw = 1; screw <= making.plan.parts[static_cast<std::size_t>(part)].screws;
         ++screw) {
      const bool forgotten = how == Reopening::early && part == one_fitting && screw == 1;
      if (!forgotten) sign_a_screw(making, strike, part, screw, day);
    }
  }
  making.move_to(day, 15 * 60);
  push_the_bays(making, strike, visit);
  open_the_run(making, strike, visit);
  making.save();
  if (how == Reopening::early) {
    making.move_to(day, 16 * 60);
    sign_a_screw(making, strike, one_fitting, 1, day);
    push_the_bays(making, strike, visit);
    open_the_run(making, strike, visit);
  }
  hours(making, strike, day, "put back and sign", 460);
  close_visit(making, strike.run, day, visit);
}

}  // namespace kneerail::demo
