#include "mobile/demo/stories.h"

#include <algorithm>
#include <limits>
#include <string>
#include <utility>

#include "mobile/demo/photographing.h"

namespace kneerail::demo {

namespace {

namespace kind {
constexpr int set = 2, event = 9, told = 38, told_answered = 39, work = 40, closed = 42,
              opened = 47, calibration = 51, stock_moved = 55, next_visit = 57, finding = 30;
}
namespace action {
constexpr int touch_up = 2, replace = 3, cut_out = 4, regalvanise = 5, repaint = 6;
}
constexpr std::int64_t day_ms = 86'400'000;

}  // namespace

int Stories::worst_fitting(std::string_view run, Date day, bool measured_each_time) const {
  const int wanted = making_.plan.run(run);
  int worst = -1;
  double least_um = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < making_.plan.parts.size(); ++i) {
    const int part = static_cast<int>(i);
    const PlannedPart& at = making_.plan.parts[i];
    if (at.run != wanted || at.role != "fitting" || !making_.plan.is_zinc(at)) continue;
    if (measured_each_time && !is_measured_each_time(part)) continue;
    if (std::find(renewed_.begin(), renewed_.end(), part) != renewed_.end()) continue;
    const double left_um = making_.weather.coating_um(part, day);
    if (left_um < least_um) {
      least_um = left_um;
      worst = part;
    }
  }
  check(worst >= 0, "a run of Skerrymouth has no fitting to wear");
  return worst;
}

Uuid Stories::work(int part, int done, Date day, const Uuid& finding) {
  const PlannedPart& at = making_.plan.parts[static_cast<std::size_t>(part)];
  cbor::Map body{{2, done}, {9, day.days}, {13, 2}, {14, 45}, {17, "own crew"}};
  const Uuid& life = making_.lives[static_cast<std::size_t>(part)];
  if (!life.is_zero()) body.set(3, life);
  if (done == action::replace) {
    const TableRow& type = making_.plan.types[static_cast<std::size_t>(at.type)].row;
    body.set(4, type.whole("torque_target_tenth_nm"));
    body.set(7, type.whole("nominal_tenth_um"));
    body.set(16, making_.depot);
  }
  if (!finding.is_zero()) body.set(15, finding);
  return making_.write(kind::work, making_.feed_of_part(part), at.id, std::move(body));
}

Uuid Stories::replace(int part, Date day, const Uuid& finding) {
  const Uuid record = work(part, action::replace, day, finding);
  making_.lives[static_cast<std::size_t>(part)] = record;
  making_.weather.replace(part, day);
  making_.last_grades[static_cast<std::size_t>(part)] = 1;
  renewed_.push_back(part);
  const PlannedPart& at = making_.plan.parts[static_cast<std::size_t>(part)];
  const auto target =
      making_.plan.types[static_cast<std::size_t>(at.type)].row.whole("torque_target_tenth_nm");
  for (int screw = 1; screw <= at.screws; ++screw) {
    making_.weather.tighten(part, screw, day, static_cast<double>(target));
  }
  return record;
}

void Stories::replace_worst_fitting(std::string_view run, Date day) {
  making_.move_to(day, 10 * 60);
  making_.written_by("RH");
  replace(worst_fitting(run, day, true), day, {});
  making_.save();
}

void Stories::swap_unrecorded(std::string_view run, Date day) {
  const int part = worst_fitting(run, day, true);
  making_.weather.replace(part, day);
  renewed_.push_back(part);
}

void Stories::regalvanise_run(std::string_view run_code, Date from, Date until) {
  const int run = making_.plan.run(run_code);
  const Uuid& feed = making_.feed_of_run(run);
  const Uuid& subject = making_.plan.runs[static_cast<std::size_t>(run)].id;
  making_.move_to(from, 8 * 60);
  making_.written_by("RH");
  constexpr int for_work = 3;
  constexpr int mesh = 2;
  const Uuid closure = making_.write(kind::closed, feed, subject,
                                     {{1, for_work},
                                      {2, noon_utc(from).ms},
                                      {3, noon_utc(until).ms},
                                      {4, mesh},
                                      {5, noon_utc(from).ms + 7 * day_ms}});
  making_.save();
  making_.move_to(until, 11 * 60);
  constexpr int same_part = 2;
  making_.write(kind::work, feed, subject,
                {{2, action::regalvanise},
                 {8, "SKM-21-LI-B"},
                 {9, until.days},
                 {17, "galvanizing works"},
                 {19, same_part}});
  for (std::size_t i = 0; i < making_.plan.parts.size(); ++i) {
    if (making_.plan.parts[i].run != run) continue;
    making_.weather.regalvanise(static_cast<int>(i), until);
    making_.last_grades[i] = 1;
  }
  making_.move_to(until, 15 * 60);
  making_.written_by("JV");
  constexpr int pushed_and_looked = 1;
  making_.write(kind::opened, feed, closure, {{1, pushed_and_looked}});
  making_.save();
}

void Stories::touch_up(std::string_view run, int count, Date day) {
  making_.move_to(day, 10 * 60);
  making_.written_by("KT");
  for (int i = 0; i < count; ++i) {
    const int part = worst_fitting(run, day, true);
    work(part, action::touch_up, day, {});
    making_.weather.touch_up(part, day);
    renewed_.push_back(part);
  }
  making_.save();
}

void Stories::repaint_run(std::string_view run_code, Date day) {
  const int run = making_.plan.run(run_code);
  making_.move_to(day, 14 * 60);
  making_.written_by("RH");
  making_.write(kind::work, making_.feed_of_run(run),
                making_.plan.runs[static_cast<std::size_t>(run)].id,
                {{2, action::repaint}, {9, day.days}, {17, "painting contractor"}});
  making_.save();
}

void Stories::cut_out_section(std::string_view run_code, Date day) {
  const PlannedRun& run = making_.plan.runs[static_cast<std::size_t>(making_.plan.run(run_code))];
  const int post = run.first_post + 11;
  const int section = making_.plan.part_at(post, "welded section");
  const Uuid& feed = making_.feed_of_part(section);
  const Uuid& bay = making_.plan.bays[static_cast<std::size_t>(run.first_bay + 11)].id;
  const Uuid& subject = making_.plan.parts[static_cast<std::size_t>(section)].id;
  making_.move_to(day, 9 * 60);
  making_.written_by("MO");
  constexpr int rust_weeping = 5;
  const Uuid finding = making_.write(kind::finding, feed, subject,
                                     {{2, rust_weeping},
                                      {3, 4},
                                      {4, false},
                                      {5, "Rust weeps from the drain hole after rain"},
                                      {7, making_.next_finding_number(run.site)},
                                      {8, "Firm; a bay is closed for the work tomorrow"}});
  photograph(making_, {.finding = finding, .part = section, .what = rust_weeping});
  constexpr int for_work = 3;
  constexpr int boards = 1;
  const std::int64_t noon_ms = noon_utc(day).ms;
  const Uuid closure = making_.write(
      kind::closed, feed, bay,
      {{1, for_work}, {2, noon_ms}, {4, boards}, {5, noon_ms + 3 * day_ms}, {6, finding}});
  making_.save();
  making_.move_to(Date{day.days + 2}, 15 * 60);
  const Uuid done = making_.write(kind::work, feed, subject,
                                  {{2, action::cut_out},
                                   {3, making_.lives[static_cast<std::size_t>(section)]},
                                   {9, day.days + 2},
                                   {15, finding},
                                   {17, "welding contractor"},
                                   {20, "Fish Quay depot, cage 2"}});
  for (std::size_t i = 0; i < making_.plan.parts.size(); ++i) {
    if (making_.plan.parts[i].whole == section) making_.lives[i] = Uuid{};
  }
  making_.lives[static_cast<std::size_t>(section)] = done;
  constexpr int pushed_and_looked = 1;
  making_.write(kind::opened, feed, closure, {{1, pushed_and_looked}});
  making_.save();
}

void Stories::rename_run(std::string_view run_code, std::string_view name, Date day) {
  const PlannedRun& run = making_.plan.runs[static_cast<std::size_t>(making_.plan.run(run_code))];
  making_.move_to(day, 9 * 60);
  making_.written_by("RH");
  constexpr int name_field = 1;
  making_.write(kind::set, making_.feed_of_run(making_.plan.run(run_code)), run.id,
                {{1, cbor::Array{cbor::Array{name_field, name, cbor::Array{run.id}}}}});
  making_.save();
}

void Stories::storm(Date day) {
  const Uuid& site = making_.plan.sites[static_cast<std::size_t>(making_.plan.site("NM"))].id;
  const int west = making_.plan.run("NM-B");
  const Uuid& subject = making_.plan.runs[static_cast<std::size_t>(west)].id;
  making_.move_to(day, 15 * 60);
  making_.written_by("RH");
  constexpr int for_storm = 1, locked_gate = 3, storm_came = 6;
  const std::int64_t noon_ms = noon_utc(day).ms;
  const Uuid event = making_.write(kind::event, site, site,
                                   {{1, storm_came},
                                    {2, noon_ms},
                                    {3, noon_ms + day_ms},
                                    {5, "North-easterly, spray and timber over the mole"}});
  const Uuid closure = making_.write(
      kind::closed, site, subject,
      {{1, for_storm}, {2, noon_ms}, {4, locked_gate}, {5, noon_ms + day_ms}, {6, event}});
  making_.save();
  Round round;
  round.site = making_.plan.site("NM");
  round.day = Date{day.days + 2};
  round.kind = VisitKind::after_event;
  round.people = {"MO", ""};
  round.runs = {west, making_.plan.run("NM-C")};
  round.event = event;
  walk(making_, round, [](const Visit&, int) {});
  constexpr int pushed_and_looked = 1;
  making_.write(kind::opened, site, closure, {{1, pushed_and_looked}});
  making_.save();
}

void Stories::count_the_shelf(Date day) {
  constexpr std::pair<std::string_view, int> shelf[] = {{"tube", 2},   {"tee", 3},    {"cross", 0},
                                                        {"sleeve", 1}, {"corner", 1}, {"cap", 10}};
  constexpr int counted = 5;
  making_.move_to(day, 8 * 60);
  making_.written_by("RH");
  for (const auto& [code, count] : shelf)
    for (const PlannedType& type : making_.plan.types)
      if (type.code == code)
        making_.write(kind::stock_moved, making_.organisation, making_.depot,
                      {{1, type.id}, {2, count}, {3, counted}, {5, day.days}});
  making_.save();
}

void Stories::told(std::string_view site, int post_number, Date day, std::string_view text,
                   int answer) {
  const int post = making_.plan.post(site, post_number);
  const Uuid& feed = making_.feed_of_run(making_.plan.posts[static_cast<std::size_t>(post)].run);
  const Uuid& subject = making_.plan.posts[static_cast<std::size_t>(post)].id;
  making_.move_to(day, 14 * 60);
  making_.written_by("RH");
  constexpr int by_public = 1, by_telephone = 1;
  const Uuid told = making_.write(kind::told, feed, subject,
                                  {{1, noon_utc(day).ms + 2 * 3'600'000},
                                   {2, by_public},
                                   {3, text},
                                   {4, by_telephone},
                                   {6, true}});
  if (answer > 0) {
    making_.move_to(day, 17 * 60);
    making_.written_by("JV");
    cbor::Map body{{1, answer}};
    constexpr int looked_finding = 1;
    if (answer == looked_finding) {
      constexpr int loose = 2;
      const Uuid finding =
          making_.write(kind::finding, feed, subject,
                        {{2, loose},
                         {3, 3},
                         {4, false},
                         {5, "End cap gone, rail firm"},
                         {7, making_.next_finding_number(making_.plan.site(site))}});
      const int part = making_.plan.part_at(post, "fitting", 1);
      photograph(making_, {.finding = finding, .part = part, .what = loose, .grade = 3});
      body.set(2, finding);
    }
    making_.write(kind::told_answered, feed, told, std::move(body));
  }
  making_.save();
}

void Stories::calibrate(Date day) {
  making_.move_to(day, 9 * 60);
  making_.written_by("RH");
  for (const char* gauge : {"gauge_a", "gauge_b"}) {
    cbor::Map body{{1, day.days},
                   {2, day.days + 365},
                   {3, "SKM-CAL-" + std::to_string(civil(day).year)},
                   {9, "Skerrymouth test house"}};
    const bool drifted = civil(day).year == drift_year && std::string_view(gauge) == "gauge_b";
    if (drifted) body.set(6, cbor::Array{cbor::Array{500, -90}});
    body.set(7, drifted);
    making_.write(kind::calibration, making_.organisation, making_.instruments.at(gauge),
                  std::move(body));
  }
  making_.save();
}

void Stories::begin_day(std::string_view site, Date day) {
  making_.move_to(day, 7 * 60 + 20);
  making_.written_by("MO");
  for (const char* gauge : {"gauge_a", "gauge_b"})
    zero_gauge(making_, making_.plan.site(site), gauge, {});
  making_.save();
}

void Stories::agree_next_visit(int site, Date day, Date next) {
  const Uuid& feed = making_.plan.sites[static_cast<std::size_t>(site)].id;
  making_.move_to(day, 17 * 60);
  making_.written_by("RH");
  constexpr int longest_interval = 1;
  making_.write(kind::next_visit, feed, feed,
                {{1, next.days}, {2, longest_interval}, {3, "Agreed when the visit was closed"}});
  making_.save();
}

}  // namespace kneerail::demo
