// Findings that cannot wait: raised, made safe, looked at again, ended; and the slips of the pen.

#include <algorithm>
#include <string>

#include "mobile/demo/photographing.h"
#include "mobile/demo/stories.h"

namespace kneerail::demo {

namespace {

namespace kind {
constexpr int hand_load = 24, gate_check = 26, finding = 30, made_safe = 33, ended = 34,
              next_step = 35, hazard_raised = 36, looked_at = 37, read_by = 58, correction = 70,
              void_it = 71;
}
namespace measure {
constexpr int closed_off = 1, propped = 2, taped = 3, reported = 5, guarded = 6;
}
namespace what {
constexpr int split = 1, moves = 11, will_not_close = 14, rust = 4;
}
namespace action {
constexpr int replace = 3, re_fix_base = 8, other = 9;
}
namespace how_ended {
constexpr int repaired = 1, replaced = 2, by_mistake = 4;
}
constexpr std::int64_t hour_ms = 3'600'000;

struct PostDay {
  const char* site;
  int number;
  int year;
};

bool is_at(const Making& making, const Visit& visit, int post, const PostDay& when) {
  return visit.year == when.year && making.plan.site(when.site) == visit.site &&
         making.plan.posts[static_cast<std::size_t>(post)].number == when.number;
}

const PlannedBay& bay_after(const Plan& plan, int post) {
  const PlannedRun& run =
      plan.runs[static_cast<std::size_t>(plan.posts[static_cast<std::size_t>(post)].run)];
  return plan.bays[static_cast<std::size_t>(run.first_bay + post - run.first_post)];
}

}  // namespace

void Stories::at_post(const Visit& visit, int post) {
  const auto here = [&](const PostDay& when) { return is_at(making_, visit, post, when); };
  if (here({"NM", 118, 2025})) split_cross(visit, post);
  if (here({"FS", 90, 2023})) loose_bay(visit, post, false);
  if (here({"NM", 87, 2026})) loose_bay(visit, post, true);
  if (here({"LI", 131, 2024})) gate_will_not_close(visit, post);
  if (here({"NM", 20, 2019})) raised_by_mistake(visit, post);
  if (here({"NM", 75, 2024})) mistyped(visit, post, ThenWhat::corrected);
  if (here({"NM", 90, 2023})) mistyped(visit, post, ThenWhat::void_it);
  if (here({"FS", 100, 2024})) mistyped(visit, post, ThenWhat::nothing);
  if (here({"CS", 97, 2020}) || here({"CS", 98, 2020})) measured_aluminium(visit, post);
  if (here({"NM", 140, 2026})) two_grades(visit, post);
}

Uuid Stories::raise(const Visit& visit, int part, const Found& found) {
  const Uuid finding = making_.write(kind::finding, making_.feed_of_part(part), found.subject,
                                     {{1, visit.id},
                                      {2, found.what},
                                      {3, found.grade},
                                      {4, true},
                                      {5, found.text},
                                      {6, cbor::Array{0, 650}},
                                      {7, making_.next_finding_number(visit.site)}});
  photograph(making_, {.finding = finding,
                       .part = part,
                       .what = found.what,
                       .grade = found.grade,
                       .visit = visit.id,
                       .caption = found.text});
  make_safe(visit, finding, part, found.measures, 10 * 60 + 51);
  return finding;
}

void Stories::make_safe(const Visit& visit, const Uuid& finding, int part, cbor::Array measures,
                        std::int64_t minute) {
  const std::int64_t then_ms = noon_utc(visit.day).ms + (minute - 12 * 60) * 60'000;
  making_.write(kind::made_safe, making_.feed_of_part(part), finding,
                {{1, std::move(measures)},
                 {2, cbor::Array{making_.people.at("RH")}},
                 {3, then_ms},
                 {5, "harbour office"},
                 {6, then_ms + 24 * hour_ms}});
}

void Stories::split_cross(const Visit& visit, int post) {
  const int part = making_.plan.part_at(post, "fitting", 2);
  const Uuid& subject = making_.plan.parts[static_cast<std::size_t>(part)].id;
  const Uuid finding = raise(visit, part,
                             {.subject = subject,
                              .what = what::split,
                              .text = "Split along the socket, opens under hand load",
                              .measures = {measure::closed_off, measure::reported}});
  write_grade(making_, visit, part, 5);
  hazards_.push_back({finding, visit.site, part, action::replace, how_ended::replaced, false});
}

void Stories::loose_bay(const Visit& visit, int post, bool stays) {
  const PlannedBay& bay = bay_after(making_.plan, post);
  const int part = making_.plan.part_at(post, "base fixing");
  const Uuid& feed = making_.feed_of_part(part);
  constexpr int moves = 3;
  making_.write(kind::hand_load, feed, bay.id, {{1, visit.id}, {2, moves}, {3, 200}, {4, 260}});
  // Tape first, which holds nobody; boards an hour later.
  const Uuid finding = raise(visit, part,
                             {.subject = bay.id,
                              .what = what::moves,
                              .text = "Bay moves 26 mm under a push; anchor turns in its hole",
                              .measures = {measure::taped}});
  make_safe(visit, finding, part, {measure::propped, measure::closed_off}, 11 * 60 + 50);
  if (stays) {
    constexpr int mend = 3;
    making_.write(kind::next_step, feed, finding,
                  {{1, mend}, {2, visit.day.days + 60}, {5, "own crew, after the part is in"}});
  }
  hazards_.push_back({finding, visit.site, part, action::re_fix_base, how_ended::repaired, stays});
}

void Stories::gate_will_not_close(const Visit& visit, int post) {
  const PlannedBay& bay = bay_after(making_.plan, post);
  const int part = making_.plan.part_at(post, "gate");
  constexpr int yes = 1, no = 2;
  making_.write(kind::gate_check, making_.feed_of_part(part), bay.id,
                {{1, visit.id}, {2, no}, {3, no}, {4, yes}});
  const Uuid finding = raise(visit, part,
                             {.subject = bay.id,
                              .what = what::will_not_close,
                              .grade = 4,
                              .text = "Gate stands open: hinge seized, latch does not reach",
                              .measures = {measure::guarded}});
  hazards_.push_back({finding, visit.site, part, action::other, how_ended::repaired, false});
}

void Stories::raised_by_mistake(const Visit& visit, int post) {
  const int part = making_.plan.part_at(post, "fitting", 1);
  const Uuid& feed = making_.feed_of_part(part);
  const Uuid finding =
      making_.write(kind::finding, feed, making_.plan.posts[static_cast<std::size_t>(post)].id,
                    {{1, visit.id},
                     {2, what::moves},
                     {3, 3},
                     {4, true},
                     {7, making_.next_finding_number(visit.site)}});
  constexpr int seen = 2;
  making_.write(kind::ended, feed, finding,
                {{1, how_ended::by_mistake},
                 {3, "Wrong post chosen; this one is firm"},
                 {4, cbor::Array{finding}},
                 {5, seen}});
}

void Stories::mistyped(const Visit& visit, int post, ThenWhat then) {
  const int part = making_.plan.part_at(post, "fitting", 1);
  const Uuid record = write_coating(making_, visit, part, 1, {6100, 6100, 6200}, "gauge_a");
  const Uuid& feed = making_.feed_of_part(part);
  if (then == ThenWhat::corrected) {
    making_.write(kind::correction, feed, record,
                  {{1, cbor::Map{{3, cbor::Array{610, 610, 620}}}},
                   {2, "A nought too many"},
                   {3, cbor::Array{record}}});
  } else if (then == ThenWhat::void_it) {
    making_.write(kind::void_it, feed, record, {{1, "Probe was on a weld bead"}});
  }
}

void Stories::measured_aluminium(const Visit& visit, int post) {
  const int part = making_.plan.part_at(post, "post tube");
  write_coating(making_, visit, part, 1, {190, 190, 180}, "gauge_b");
}

void Stories::two_grades(const Visit& visit, int post) {
  const int part = making_.plan.part_at(post, "fitting", 2);
  const std::string first = making_.writer();
  const int grade = making_.last_grades[static_cast<std::size_t>(part)];
  making_.written_by(first == "MO" ? "JV" : "MO");
  write_grade(making_, visit, part, grade >= 3 ? grade - 1 : grade + 1);
  making_.written_by(first);
}

void Stories::look_at_hazards(std::string_view site, Date day) {
  making_.move_to(day, 8 * 60 + 10);
  for (const Hazard& hazard : hazards_) {
    if (hazard.site != making_.plan.site(site)) continue;
    const Uuid& feed = making_.feed_of_part(hazard.part);
    making_.written_by("JV");
    constexpr int in_place = 1;
    making_.write(kind::looked_at, feed, hazard.finding,
                  {{1, in_place}, {2, noon_utc(day).ms + 24 * hour_ms}});
    making_.written_by("RH");
    making_.write(kind::read_by, feed, hazard.finding, {{1, cbor::Array{hazard.finding}}});
  }
  making_.save();
}

void Stories::end_hazards(std::string_view site, Date day) {
  making_.move_to(day, 13 * 60);
  std::vector<Hazard> left;
  for (const Hazard& hazard : hazards_) {
    if (hazard.site != making_.plan.site(site) || hazard.stays) {
      left.push_back(hazard);
      continue;
    }
    making_.written_by("JV");
    const Uuid done = hazard.action == action::replace
                          ? replace(hazard.part, day, hazard.finding)
                          : work(hazard.part, hazard.action, day, hazard.finding);
    constexpr int seen_and_pushed = 1;
    making_.write(kind::ended, making_.feed_of_part(hazard.part), hazard.finding,
                  {{1, hazard.how},
                   {2, done},
                   {3, "Pushed after the work: firm"},
                   {4, cbor::Array{hazard.finding}},
                   {5, seen_and_pushed}});
  }
  hazards_ = std::move(left);
  making_.save();
}

void Stories::raise_hazard_later(std::string_view run, Date found, Date raised, Date ended) {
  const int part = worst_fitting(run, found, false);
  const Uuid& feed = making_.feed_of_part(part);
  const int site = making_.plan.runs[static_cast<std::size_t>(making_.plan.run(run))].site;
  making_.move_to(found, 11 * 60);
  making_.written_by("KT");
  const Uuid finding =
      making_.write(kind::finding, feed, making_.plan.parts[static_cast<std::size_t>(part)].id,
                    {{2, what::rust},
                     {3, 4},
                     {4, false},
                     {5, "Screw head rusted round, does not turn"},
                     {7, making_.next_finding_number(site)},
                     {8, "The other screw is tight"}});
  photograph(making_, {.finding = finding, .part = part, .what = what::rust});
  making_.save();
  making_.move_to(raised, 16 * 60);
  const Uuid hazard =
      making_.write(kind::hazard_raised, feed, finding, {{2, "The other screw has gone as well"}});
  making_.write(kind::made_safe, feed, finding,
                {{1, cbor::Array{measure::propped, measure::guarded}},
                 {3, noon_utc(raised).ms + 4 * hour_ms},
                 {6, noon_utc(raised).ms + 28 * hour_ms}});
  making_.save();
  making_.move_to(ended, 10 * 60);
  constexpr int seen_and_pushed = 1;
  const Uuid done = work(part, action::other, ended, finding);
  making_.write(kind::ended, feed, finding,
                {{1, how_ended::repaired},
                 {2, done},
                 {3, "Both screws drilled out and set new"},
                 {4, cbor::Array{hazard}},
                 {5, seen_and_pushed}});
  making_.save();
}

}  // namespace kneerail::demo
