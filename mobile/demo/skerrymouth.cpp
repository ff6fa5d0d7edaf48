#include "mobile/demo/skerrymouth.h"

#include <algorithm>
#include <string>
#include <vector>

#include "mobile/demo/founding.h"
#include "mobile/demo/making.h"
#include "mobile/demo/stories.h"
#include "mobile/demo/strikes.h"
#include "mobile/demo/walk.h"

namespace kneerail::demo {

namespace {

constexpr int first_year = 2018;
constexpr int last_year = 2026;

/// What happens on which day; done in order of days.
class Agenda {
 public:
  Agenda(Making& making, Stories& stories) : making_(making), stories_(stories) {}

  void fill() {
    for (int year = first_year; year <= last_year; ++year) {
      visits_of(year);
      if (year < last_year)
        winter("FS-A", year, year == 2021 ? Reopening::early : Reopening::in_order);
      if (year >= 2021 && year < last_year) {
        winter("FS-B", year, year == 2023 ? Reopening::a_part_from_store : Reopening::in_order);
      }
      if (year < last_year) {
        const Date day = date_from_civil(year, 11, 20);
        on(day, [this, day] { stories_.calibrate(day); });
      }
    }
    works();
    hazards();
    words_of_others();
    const Date before = Date{as_of().days - 1};
    on(before, [this, before] { stories_.count_the_shelf(before); });
    on(as_of(), [this] { stories_.begin_day("NM", as_of()); });
  }

  void live_through() {
    std::stable_sort(deeds_.begin(), deeds_.end(),
                     [](const Deed& a, const Deed& b) { return a.day < b.day; });
    for (const Deed& deed : deeds_) {
      if (making_.error()) return;
      deed.act();
    }
  }

 private:
  struct Deed {
    Date day;
    std::function<void()> act;
  };

  void on(Date day, std::function<void()> act) { deeds_.push_back({day, std::move(act)}); }

  void visits_of(int year) {
    visit("FS", date_from_civil(year, 4, 26), {"KT", "MO"}, {});
    visit("NM", date_from_civil(year, 5, 11), {"MO", "JV"}, {"NM-C", "NM-D", "NM-E"});
    visit("LI", date_from_civil(year, 5, 24), {"JV", "KT"}, {});
    if (year % 2 == 0) visit("CS", date_from_civil(year, 6, 7), {"KT", "JV"}, {});
  }

  /// A detailed visit within five days from the first; the gauges change hands each year.
  void visit(std::string_view site_code, Date first, std::array<std::string, 2> people,
             const std::vector<std::string_view>& second_day) {
    const int site = making_.plan.site(site_code);
    Round round;
    round.site = site;
    round.day =
        Date{first.days + static_cast<std::int32_t>(making_.weather.chance().between(0, 4))};
    round.people = std::move(people);
    const bool odd = civil(first).year % 2 == 1;
    round.gauges = {odd ? "gauge_b" : "gauge_a", odd ? "gauge_a" : "gauge_b"};
    for (int run = 0; run < static_cast<int>(making_.plan.runs.size()); ++run) {
      const PlannedRun& planned = making_.plan.runs[static_cast<std::size_t>(run)];
      if (planned.site != site) continue;
      const bool later =
          std::find(second_day.begin(), second_day.end(), planned.code) != second_day.end();
      (later ? round.second_day : round.runs).push_back(run);
    }
    const Date next = date_from_civil(civil(first).year + (site_code == "CS" ? 2 : 1),
                                      civil(first).month, civil(first).day);
    on(round.day, [this, round, next] {
      const Visit made =
          walk(making_, round, [this](const Visit& at, int post) { stories_.at_post(at, post); });
      stories_.agree_next_visit(round.site, made.day, next);
    });
  }

  void winter(std::string_view run_code, int year, Reopening how) {
    const int run = making_.plan.run(run_code);
    const bool first = run_code == "FS-A";
    const Date down = date_from_civil(year, 11, first ? 4U : 5U);
    const Date look = date_from_civil(year + 1, 1, 15);
    const Date back = date_from_civil(year + 1, 4, first ? 13U : 14U);
    const std::size_t place = strikes_.size();
    strikes_.emplace_back();
    on(down, [this, run, down, place] { strikes_[place] = strike(making_, run, down); });
    on(look, [this, look, place] { look_at_closure(making_, strikes_[place], look); });
    on(back, [this, back, place, how] { re_erect(making_, strikes_[place], back, how); });
  }

  void replaced(std::string_view run, Date day) {
    on(day, [this, run, day] { stories_.replace_worst_fitting(run, day); });
  }

  void works() {
    for (const Date day : {date_from_civil(2020, 10, 6), date_from_civil(2022, 10, 4),
                           date_from_civil(2024, 11, 6)}) {
      replaced("NM-B", day);
    }
    replaced("NM-C", date_from_civil(2023, 10, 10));
    replaced("NM-C", date_from_civil(2025, 10, 7));
    replaced("FS-A", date_from_civil(2021, 5, 20));
    replaced("FS-A", date_from_civil(2023, 5, 23));
    replaced("FS-B", date_from_civil(2025, 5, 21));
    replaced("FS-C", date_from_civil(2022, 9, 13));
    replaced("LI-C", date_from_civil(2020, 9, 8));
    replaced("NM-E", date_from_civil(2024, 10, 8));
    const Date swap_nm = date_from_civil(2022, 10, 12);
    const Date swap_fs = date_from_civil(2021, 7, 5);
    on(swap_nm, [this, swap_nm] { stories_.swap_unrecorded("NM-C", swap_nm); });
    on(swap_fs, [this, swap_fs] { stories_.swap_unrecorded("FS-C", swap_fs); });
    const Date taken = date_from_civil(2021, 9, 6);
    const Date returned = date_from_civil(2021, 9, 24);
    on(taken, [this, taken, returned] { stories_.regalvanise_run("LI-B", taken, returned); });
    const Date brush = date_from_civil(2023, 6, 15);
    on(brush, [this, brush] { stories_.touch_up("FS-C", 4, brush); });
    const Date paint = date_from_civil(2019, 7, 3);
    on(paint, [this, paint] { stories_.repaint_run("NM-D", paint); });
    const Date cut = date_from_civil(2023, 3, 8);
    on(cut, [this, cut] { stories_.cut_out_section("NM-D", cut); });
    const Date named = date_from_civil(2024, 2, 14);
    on(named, [this, named] { stories_.rename_run("NM-A", "Harbour walk", named); });
  }

  void hazards() {
    for (const auto& [site, look, end] :
         {std::tuple{"FS", date_from_civil(2023, 5, 3), date_from_civil(2023, 5, 9)},
          std::tuple{"LI", date_from_civil(2024, 6, 1), date_from_civil(2024, 6, 5)},
          std::tuple{"NM", date_from_civil(2025, 5, 19), date_from_civil(2025, 5, 22)}}) {
      on(look, [this, site = site, look = look] { stories_.look_at_hazards(site, look); });
      on(end, [this, site = site, end = end] { stories_.end_hazards(site, end); });
    }
    const Date last_look = date_from_civil(2026, 6, 26);
    on(last_look, [this, last_look] { stories_.look_at_hazards("NM", last_look); });
    const Date found = date_from_civil(2022, 7, 12);
    on(found, [this, found] {
      stories_.raise_hazard_later("LI-C", found, date_from_civil(2022, 8, 2),
                                  date_from_civil(2022, 8, 9));
    });
    const Date storm = date_from_civil(2024, 1, 21);
    on(storm, [this, storm] { stories_.storm(storm); });
  }

  void words_of_others() {
    constexpr int looked_finding = 1, looked_nothing = 2, not_found = 4, open = 0;
    tell("NM", 30, date_from_civil(2021, 7, 14), "The rail by the second stair rattles",
         looked_nothing);
    tell("FS", 91, date_from_civil(2023, 2, 21), "A bracket has come off on the ramp",
         looked_finding);
    tell("NM", 1, date_from_civil(2025, 8, 2), "Something loose near the blue boat", not_found);
    tell("NM", 101, date_from_civil(2026, 6, 24), "The middle rail turns in the hand", open);
  }

  void tell(std::string_view site, int post, Date day, std::string_view text, int answer) {
    on(day,
       [this, site, post, day, text, answer] { stories_.told(site, post, day, text, answer); });
  }

  Making& making_;
  Stories& stories_;
  std::vector<Deed> deeds_;
  std::vector<Strike> strikes_;
};

Made counts(const Making& making) {
  Made made;
  made.sites = static_cast<std::int64_t>(making.plan.sites.size());
  made.posts = static_cast<std::int64_t>(making.plan.posts.size());
  made.parts = static_cast<std::int64_t>(making.plan.parts.size());
  made.fittings = std::count_if(making.plan.parts.begin(), making.plan.parts.end(),
                                [](const PlannedPart& part) { return part.role == "fitting"; });
  made.visits = making.visits;
  made.photographs = making.photographs();
  made.records = making.records();
  return made;
}

}  // namespace

Date as_of() {
  return date_from_civil(2026, 6, 30);
}

Result<Made> make_skerrymouth(const Options& options,
                              const std::function<bool(std::int64_t)>& progress) {
  DemoClock clock(noon_utc(date_from_civil(2018, 4, 2)));
  SplitMix64 identifiers(options.seed ^ 0x5EED0F1D5ULL);
  auto opened = Register::open(
      {.folder = options.folder, .mode = Mode::create, .clock = &clock, .random = &identifiers});
  if (!opened) return opened.error();
  if (!(*opened)->organisation().is_zero()) {
    return fail(Fault::invalid_input,
                "There is a register in " + options.folder.string() +
                    " already. Nothing was changed. Give another folder for the "
                    "demo.");
  }
  Making making({**opened, clock, options.seed, options.draw}, progress);
  Stories stories(making);
  found(making);
  Agenda agenda(making, stories);
  agenda.fill();
  agenda.live_through();
  if (making.error()) return *making.error();
  return counts(making);
}

}  // namespace kneerail::demo
