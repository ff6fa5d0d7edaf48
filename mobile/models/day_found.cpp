#include "mobile/models/day_found.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <unordered_map>
#include <utility>

#include "core/forecast/decisions/chances.h"
#include "core/forecast/decisions/measure_first.h"
#include "mobile/models/day_words.h"
#include "schema/store/organisation_days.h"
#include "schema/store/visit_plan_store.h"

namespace kneerail {

namespace {

using forecast::DayTask;
using forecast::Limit;
using forecast::LimitForecast;
using forecast::PartOutlook;
using forecast::WhyMeasure;
using Kind = DayLine::Kind;

/// Every thing of the drawings by its identifier.
class Places {
 public:
  explicit Places(const std::vector<RunSheet>& sheets) {
    for (std::size_t r = 0; r < sheets.size(); ++r) {
      const RunSheet& sheet = sheets[r];
      const int run = static_cast<int>(r);
      all_.emplace(sheet.id, TaskAt{run, -1, -1, {}});
      for (std::size_t i = 0; i < sheet.posts.size(); ++i)
        all_.emplace(sheet.posts[i].id, TaskAt{run, static_cast<int>(i), -1, {}});
      for (const SheetBay& bay : sheet.bays) all_.emplace(bay.id, TaskAt{run, bay.from, -1, {}});
      for (std::size_t i = 0; i < sheet.parts.size(); ++i)
        all_.emplace(sheet.parts[i].id, TaskAt{run, sheet.parts[i].post, static_cast<int>(i), {}});
    }
  }
  /// Of the whole site where it stands on no drawing.
  [[nodiscard]] TaskAt of(const Uuid& id) const {
    const auto found = all_.find(id);
    return found == all_.end() ? TaskAt{} : found->second;
  }

 private:
  std::unordered_map<Uuid, TaskAt> all_;
};

class DayFinder {
 public:
  DayFinder(Database& tables, const DayAsked& asked) : tables_(tables), asked_(asked) {}

  Result<DayFound> find() {
    auto days = organisation_days(tables_);
    if (!days) return fail(days.error());
    zone_ = std::move(days->zone);
    day_.day = zone_.day(asked_.now);
    if (auto done = read_site(); !done) return fail(done.error());
    const Places places(day_.sheets);
    add_told(places);
    add_events();
    add_closures(places);
    if (auto done = add_findings(places); !done) return fail(done.error());
    add_looks();
    if (asked_.coatings && asked_.others) {
      add_past_chance(places, true);
      add_readings(places, question(), false);
      add_past_chance(places, false);
      auto every = question();
      every.share_of_a_zone = 1;
      add_readings(places, every, true);
    } else {
      day_.not_reckoned = day_words::not_reckoned();
    }
    add_strikes();
    day_.plan = forecast::DayPlan(std::move(tasks_), day_seconds::stop);
    return std::move(day_);
  }

 private:
  Result<> read_site() {
    auto bands = read_sites(tables_, zone_);
    if (!bands) return fail(bands.error());
    const auto own = std::find_if(bands->begin(), bands->end(),
                                  [&](const SiteBand& band) { return band.id == asked_.site; });
    if (own == bands->end())
      return fail(Fault::not_found, "This site is no longer in the register.");
    const auto as_of = asked_.coatings ? asked_.coatings->as_of() : day_.day;
    auto visits = read_site_visits(tables_, zone_, as_of, *bands);
    if (!visits) return fail(visits.error());
    visits_ = std::move((*visits)[static_cast<std::size_t>(own - bands->begin())]);
    band_ = std::move(*own);
    day_.site = band_.id;
    day_.site_name = band_.name;
    day_.runs = band_.runs;
    for (const SiteRun& run : day_.runs) {
      auto sheet = read_run(tables_, run.id);
      if (!sheet) return fail(sheet.error());
      first_post_.push_back(static_cast<int>(posts_));
      posts_ += sheet->posts.size();
      day_.sheets.push_back(std::move(*sheet));
    }
    auto begins = read_day(tables_, {asked_.site, day_.day, asked_.now, asked_.register_folder});
    if (!begins) return fail(begins.error());
    day_.begins = std::move(*begins);
    return Done{};
  }

  int add_line(DayLine line) {
    day_.lines.push_back(std::move(line));
    return static_cast<int>(day_.lines.size()) - 1;
  }

  void add_task(int line, TaskAt at, int seconds, bool stops = false) {
    const int place =
        at.run < 0 || at.post < 0 ? -1 : first_post_[static_cast<std::size_t>(at.run)] + at.post;
    tasks_.push_back({line, place, seconds, stops});
    day_.at.push_back(std::move(at));
  }

  void add_told(const Places& places) {
    for (const OpenTold& told : day_.begins.told) {
      const TaskAt at = places.of(told.subject);
      add_task(add_line({Kind::told, at.run, day_words::told_by(told.by_whom),
                         day_words::told(told, zone_), 0}),
               at, day_seconds::told);
    }
  }

  /// They take no time of their own: the look at every post takes more.
  void add_events() {
    for (const forecast::OpenEvent& event : visits_.events)
      add_task(add_line({Kind::event, -1, day_words::event_name(event),
                         day_words::event(event, day_.day), 0}),
               {}, 0);
  }

  void add_closures(const Places& places) {
    for (const ClosureToLookAt& closure : day_.begins.closures) {
      const TaskAt at = places.of(closure.subject);
      add_task(add_line({Kind::closure, at.run, day_words::closure_name(),
                         day_words::closure(closure.look_again_by, zone_), 0}),
               at, day_seconds::closure);
    }
  }

  Result<> add_findings(const Places& places) {
    auto findings = read_findings(tables_, {.site = asked_.site});
    if (!findings) return fail(findings.error());
    for (const KeptFinding& finding : *findings) {
      if (finding.ended_how) continue;
      const TaskAt at = places.of(finding.subject);
      add_task(add_line({Kind::finding, at.run, day_words::finding_name(finding),
                         day_words::finding(finding, asked_.now, zone_), finding.grade}),
               at, day_seconds::finding);
    }
    return Done{};
  }

  [[nodiscard]] bool closed_today(int run) const {
    const Uuid& id = day_.runs[static_cast<std::size_t>(run)].id;
    const auto& none = day_.begins.no_access;
    return std::any_of(none.begin(), none.end(),
                       [&](const AccessHours& own) { return own.run == id; });
  }

  void add_looks() {
    const int seconds =
        visits_.events.empty() ? day_seconds::by_eye : day_seconds::each_part_by_eye;
    for (std::size_t r = 0; r < day_.sheets.size(); ++r) {
      const int run = static_cast<int>(r);
      if (closed_today(run)) continue;
      const auto& posts = day_.sheets[r].posts;
      int line = -1;
      for (std::size_t i = 0; i < posts.size(); ++i) {
        if (posts[i].state == PostState::struck) continue;
        if (line < 0) line = add_line({Kind::look, run, {}, day_words::look(visits_.last_any), 0});
        add_task(line, {run, static_cast<int>(i), -1, {}}, seconds);
        ++day_.posts;
      }
    }
  }

  [[nodiscard]] bool may_be_read(const TaskAt& at) const {
    return at.part >= 0 && !closed_today(at.run) && !part_at(at).struck;
  }
  [[nodiscard]] const SheetPart& part_at(const TaskAt& at) const {
    return day_.sheets[static_cast<std::size_t>(at.run)].parts[static_cast<std::size_t>(at.part)];
  }
  [[nodiscard]] const Uuid& component_of(std::int32_t part) const {
    return asked_.coatings->components[static_cast<std::size_t>(part)];
  }

  /// One line for each kind in a run, made when its first task comes.
  int line_of(Kind kind, int run, const QString& why) {
    const auto [found, fresh] = lines_.emplace(std::pair(kind, run), -1);
    if (fresh) found->second = add_line({kind, run, {}, why, 0});
    return found->second;
  }

  /// The limit by which a part is past the owner's chance today.
  [[nodiscard]] std::optional<std::pair<std::size_t, double>> past(const PartOutlook& own) const {
    if (own.seen_past || !own.due || !own.due_row || *own.due > asked_.coatings->as_of()) return {};
    const auto& part = asked_.coatings->portfolio.parts[static_cast<std::size_t>(own.part)];
    const auto chance = band_.chance.at(static_cast<std::size_t>(
        part.consequence >= 1 && part.consequence <= 3 ? part.consequence : 0));
    if (!chance) return {};
    return std::pair(*own.due_row, *chance);
  }

  /// Structural limits only: what is said of a coating is in the readings.
  void add_past_chance(const Places& places, bool likely) {
    constexpr double as_likely_as_not = 0.5;
    for (const PartOutlook& outlook : asked_.others->outlooks) {
      const auto over = past(outlook);
      if (!over) continue;
      const LimitForecast& row = asked_.others->limits.rows[over->first];
      if (row.limit == Limit::coating_exhausted || row.limit == Limit::coating_first_maintenance)
        continue;
      if ((row.p_by[0] >= as_likely_as_not) != likely) continue;
      TaskAt at = places.of(component_of(outlook.part));
      if (!may_be_read(at)) continue;
      const QString why = day_words::past_chance(row.limit, over->second, row.p_by[0]);
      add_past(std::move(at), row.limit, likely, why);
    }
  }

  void add_past(TaskAt at, Limit limit, bool likely, const QString& why) {
    const SheetPart& part = part_at(at);
    ToRead what = ToRead::grade;
    Kind kind = Kind::bad_grade;
    int seconds = day_seconds::by_eye;
    if (limit == Limit::torque_minimum) {
      what = ToRead::torque;
      kind = Kind::loose_screws;
      seconds = day_seconds::screw * std::max(1, part.screws);
    } else if (limit == Limit::wall_limit) {
      what = ToRead::wall;
      kind = Kind::thin_wall;
      seconds = day_seconds::wall_set;
    }
    at.chosen = {part.id, what};
    const int line = line_of(likely ? kind : Kind::past_chance, at.run, why);
    add_task(line, std::move(at), seconds, what != ToRead::grade);
  }

  [[nodiscard]] forecast::MeasureQuestion question() const {
    forecast::MeasureQuestion asked;
    asked.site = visits_.site;
    if (visits_.longest_interval_days)
      asked.years_of_two_visits = 2 * *visits_.longest_interval_days / days_per_year;
    return asked;
  }

  /// First the share of each zone that the rule gives, later the rest for who has more time.
  void add_readings(const Places& places, const forecast::MeasureQuestion& asked, bool if_time) {
    const auto& known = *asked_.coatings;
    for (const LimitForecast& row : known.coating_rows) {
      int& read = readings_[row.part];
      read = std::max(read, row.readings_used);
      double& near = chance_[row.part];
      near = std::max(near, forecast::chance_within(row, asked.years_of_two_visits));
    }
    for (const forecast::ToMeasure& own :
         forecast::measure_first(known.portfolio, known.coating_rows, asked)) {
      if (!measured_.insert(own.part).second) continue;
      TaskAt at = places.of(component_of(own.part));
      if (!may_be_read(at)) continue;
      const Kind kind = if_time ? Kind::if_time : kind_of(own);
      const int line = line_of(kind, at.run, why_read(own, kind));
      at.chosen = {part_at(at).id, ToRead::coating};
      add_task(line, std::move(at), day_seconds::coating_set, true);
    }
  }

  [[nodiscard]] Kind kind_of(const forecast::ToMeasure& own) const {
    if (own.why == WhyMeasure::run_never_measured) return Kind::never_measured;
    if (own.why == WhyMeasure::ties_a_gauge) return Kind::ties_a_gauge;
    return readings_.at(own.part) <= 1 ? Kind::read_once : Kind::open_and_near;
  }

  [[nodiscard]] QString why_read(const forecast::ToMeasure& own, Kind kind) const {
    return day_words::read(kind, readings_.at(own.part), chance_.at(own.part));
  }

  /// The screws that have to be signed before a run that is down is open again.
  void add_strikes() {
    for (const SiteStrike& strike : band_.strikes) {
      const auto run = std::find_if(day_.runs.begin(), day_.runs.end(),
                                    [&](const SiteRun& own) { return own.id == strike.run; });
      if (run == day_.runs.end() || strike.screws_to_sign == 0) continue;
      const int place = static_cast<int>(run - day_.runs.begin());
      if (closed_today(place)) continue;
      const int line = add_line({Kind::re_erect, place, {}, day_words::strike(strike), 0});
      for (std::int64_t i = 0; i < strike.screws_to_sign; ++i)
        add_task(line, {place, -1, -1, {}}, day_seconds::screw);
    }
  }

  Database& tables_;
  const DayAsked& asked_;
  TimeZone zone_;
  SiteBand band_;
  forecast::SiteVisits visits_;
  std::vector<int> first_post_;  ///< of each run, counted over all
  std::size_t posts_ = 0;
  std::vector<DayTask> tasks_;
  std::map<std::pair<Kind, int>, int> lines_;
  std::set<std::int32_t> measured_;
  std::unordered_map<std::int32_t, int> readings_;   ///< of parts, by place in the portfolio
  std::unordered_map<std::int32_t, double> chance_;  ///< of a coating limit within two visits
  DayFound day_;
};

}  // namespace

std::optional<int> DayFound::access_minutes() const {
  const auto& open = begins.access;
  if (open.empty() || open.size() + begins.no_access.size() < runs.size()) return {};
  int from = 24 * 60;
  int to = 0;
  for (const AccessHours& own : open) {
    from = std::min(from, own.from_minutes);
    to = std::max(to, own.to_minutes);
  }
  return to - from;
}

Result<DayFound> find_day(Database& tables, const DayAsked& asked) {
  return DayFinder(tables, asked).find();
}

}  // namespace kneerail
