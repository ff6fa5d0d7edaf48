#include "core/forecast/decisions/next_visit.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

#include "core/forecast/class_report.h"
#include "core/forecast/coating_readings.h"
#include "core/forecast/decisions/chances.h"
#include "core/forecast/limit_report.h"
#include "core/forecast/limit_words.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

constexpr std::int32_t month_days = 30;
constexpr std::int32_t year_days = 365;
constexpr double hours_of_a_day = 24;

std::string month_and_year(Date day) {
  constexpr std::array<const char*, 12> months{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                               "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  const Civil at = civil(day);
  return concat({months[at.month - 1], " ", std::to_string(at.year)});
}

Date later(Date day, double years) {
  return Date{day.days + static_cast<std::int32_t>(years * days_per_year)};
}

/// When a part comes up to the owner's chance of a structural limit.
struct ComesUp {
  std::int32_t part = -1;
  std::size_t row = 0;
  double years = 0;
  double chance = 0;
};

class VisitPlanner {
 public:
  VisitPlanner(const Portfolio& portfolio, const std::vector<LimitForecast>& rows,
               const std::vector<PartOutlook>& outlooks, const CoatingModel* coating,
               const SiteVisits& visits)
      : portfolio_(portfolio),
        rows_(rows),
        outlooks_(outlooks),
        coating_(coating),
        visits_(visits) {}

  NextVisit plan() {
    made_.site = visits_.site;
    if (visits_.agreed && !(visits_.last_any && *visits_.agreed <= *visits_.last_any))
      made_.agreed = visits_.agreed;
    add_interval();
    add_events();
    add_due_part();
    if (coating_ != nullptr) {
      add_faster();
      add_narrowing();
    }
    auto& proposals = made_.proposals;
    std::stable_sort(proposals.begin(), proposals.end(),
                     [](const VisitProposal& a, const VisitProposal& b) {
                       return std::tuple(a.day, a.why) < std::tuple(b.day, b.why);
                     });
    decide();
    return std::move(made_);
  }

 private:
  void add_interval() {
    if (!visits_.longest_interval_days) {
      made_.not_said.emplace_back("no longest interval is set");
      return;
    }
    if (!visits_.last) {
      const std::string days = std::to_string(*visits_.longest_interval_days);
      add(portfolio_.as_of, VisitReason::longest_interval,
          concat({visits_.last_any ? "nobody has looked at the whole of it yet"
                                   : "nobody has been there yet",
                  ", and the owner's longest interval is ", days, " days"}),
          {.longest_interval_days = visits_.longest_interval_days, .never_visited = true});
      return;
    }
    const Date day{visits_.last->days + *visits_.longest_interval_days};
    add(day, VisitReason::longest_interval,
        concat({"the owner's longest interval, ", std::to_string(*visits_.longest_interval_days),
                " days from the last visit on ", to_text(*visits_.last), ", ends"}),
        {.longest_interval_days = visits_.longest_interval_days});
  }

  void add_events() {
    for (const OpenEvent& event : visits_.events) {
      if (event.day > portfolio_.as_of) {
        add(Date{event.day.days - 1}, VisitReason::event,
            concat({event.what, " of ", to_text(event.day), " lies ahead: a look before it"}),
            {.event = event.what, .event_day = event.day});
        continue;
      }
      if (!event.hours_allowed) {
        made_.not_said.push_back(concat({"no time is set for the visit after a kind of event: ",
                                         event.what, " of ", to_text(event.day)}));
        continue;
      }
      const auto days = static_cast<std::int32_t>(*event.hours_allowed / hours_of_a_day);
      add(Date{event.day.days + days}, VisitReason::event,
          concat({event.what, " of ", to_text(event.day), ", which nobody has come for; ",
                  std::to_string(static_cast<int>(*event.hours_allowed)), " hours are allowed"}),
          {.event = event.what, .event_day = event.day});
    }
  }

  void add_due_part() {
    std::optional<ComesUp> first;
    int already = 0;
    int skipped = 0;
    for (const PartOutlook& outlook : outlooks_) {
      if (!is_here(outlook.part) || outlook.seen_past) continue;
      const auto chance = chance_of(outlook.part);
      if (!chance) {
        skipped += outlook.structural_rows.empty() ? 0 : 1;
        continue;
      }
      const auto up = comes_up(outlook, *chance);
      if (!up) continue;
      already += up->years <= 0 ? 1 : 0;
      if (!first || up->years < first->years) first = up;
    }
    say_chances(skipped);
    if (!first) return;
    const Date day = later(portfolio_.as_of, first->years / 2);
    VisitDetails of{.limit = rows_[first->row].limit,
                    .owners_chance = first->chance,
                    .chance_now = rows_[first->row].p_by[0],
                    .past = already};
    if (first->years > 0) of.comes_up = later(portfolio_.as_of, first->years);
    add(day, VisitReason::due_part, due_words(*first, already), std::move(of));
    made_.proposals.back().part = first->part;
  }

  void say_chances(int skipped) {
    const auto limits =
        std::find_if(portfolio_.limits.begin(), portfolio_.limits.end(),
                     [&](const SiteLimits& own) { return own.site == visits_.site; });
    const bool any =
        limits != portfolio_.limits.end() &&
        std::any_of(limits->chance.begin(), limits->chance.end(),
                    [](const std::optional<double>& chance) { return chance.has_value(); });
    if (!any)
      made_.not_said.emplace_back("no chance is set");
    else if (skipped > 0)
      made_.not_said.push_back(
          concat({"no chance is set for the consequence of ", std::to_string(skipped),
                  skipped == 1 ? " part" : " parts", ", or none is said"}));
  }

  /// The earliest of the part's structural limits; of parts that are there already the first in
  /// order counts, which goes first of all.
  [[nodiscard]] std::optional<ComesUp> comes_up(const PartOutlook& outlook, double chance) const {
    std::optional<ComesUp> first;
    for (const std::size_t row : outlook.structural_rows) {
      const double years = years_to_chance(rows_[row], chance);
      if (!std::isfinite(years) || (first && years >= first->years)) continue;
      first = ComesUp{outlook.part, row, years, chance};
    }
    return first;
  }

  [[nodiscard]] std::string due_words(const ComesUp& first, int already) const {
    const std::string& id = portfolio_.parts[static_cast<std::size_t>(first.part)].id;
    const std::string limit = limit_name(rows_[first.row].limit);
    if (first.years > 0)
      return concat({id, " comes up to the owner's chance of ", chance_words(first.chance), " for ",
                     limit, " on ", to_text(later(portfolio_.as_of, first.years)),
                     ", and half of that time is over"});
    std::string words =
        concat({id, " is past the owner's chance of ", chance_words(first.chance), " for ", limit,
                " already, with ", chance_words(rows_[first.row].p_by[0])});
    if (already > 1)
      words += concat({already == 2 ? "; one more part is"
                                    : "; " + std::to_string(already - 1) + " more parts are",
                       " past theirs"});
    return words;
  }

  void add_faster() {
    if (!visits_.last) return;
    for (const ZonePace& pace : zone_paces(*coating_)) {
      if (pace.site != visits_.site || !pace.is_likely_faster()) continue;
      add(Date{visits_.last->days + year_days}, VisitReason::faster_than_class,
          concat({"zone ", pace.zone, " likely loses zinc faster than its class, ",
                  chance_words(pace.chance_faster), "; a year after the last visit"}),
          {.zone = pace.zone});
      return;
    }
  }

  void add_narrowing() {
    for (const PartOutlook& outlook : outlooks_) {
      if (!is_here(outlook.part) || outlook.seen_past || !has_coating(outlook.part)) continue;
      const auto year = year_that_narrows(portfolio_, *coating_, outlook.part);
      if (!year) return;
      add(later(portfolio_.as_of, *year), VisitReason::narrows_a_rate,
          concat({"one more reading of ",
                  portfolio_.parts[static_cast<std::size_t>(outlook.part)].id,
                  " narrows its rate by a third by then"}));
      made_.proposals.back().part = outlook.part;
      return;
    }
  }

  /// A month is the calendar's where a rule counts in years; hours and the owner's chance count by
  /// the day.
  [[nodiscard]] bool moves(const VisitProposal& proposal) const {
    if (!made_.agreed) return true;
    const bool by_the_day =
        proposal.why == VisitReason::event || proposal.why == VisitReason::due_part;
    return by_the_day ? proposal.day < *made_.agreed
                      : proposal.day.days + month_days <= made_.agreed->days;
  }

  void decide() {
    const auto proposal = std::find_if(made_.proposals.begin(), made_.proposals.end(),
                                       [&](const VisitProposal& one) { return moves(one); });
    if (proposal == made_.proposals.end()) {
      made_.day = made_.agreed;
      made_.words = words_without();
      return;
    }
    made_.day = proposal->day;
    made_.brought_forward = made_.agreed.has_value();
    const std::string reason = proposal->words + ".";
    if (!made_.brought_forward) {
      made_.words = concat({"Proposed: ", reason});
      return;
    }
    const std::string from = month_and_year(*made_.agreed) == month_and_year(proposal->day)
                                 ? to_text(*made_.agreed)
                                 : month_and_year(*made_.agreed);
    made_.words = concat({"Brought forward from ", from, ": ", reason});
    // What brings it forward goes first, before what is as early but moves no day.
    std::rotate(made_.proposals.begin(), proposal, proposal + 1);
  }

  [[nodiscard]] std::string words_without() const {
    if (made_.agreed && *made_.agreed < portfolio_.as_of)
      return concat({"Agreed for ", to_text(*made_.agreed), ", and nobody came."});
    if (made_.agreed) return "As agreed.";
    if (made_.not_said.empty()) return "Nothing asks for a visit.";
    return concat({"No day can be said: ", made_.not_said.front(), "."});
  }

  void add(Date day, VisitReason why, std::string words, VisitDetails of = {}) {
    made_.proposals.push_back({day, why, -1, std::move(words), std::move(of)});
  }

  [[nodiscard]] bool is_here(std::int32_t part) const {
    return portfolio_.parts[static_cast<std::size_t>(part)].site == visits_.site;
  }

  [[nodiscard]] std::optional<double> chance_of(std::int32_t part) const {
    const Part& own = portfolio_.parts[static_cast<std::size_t>(part)];
    for (const SiteLimits& limits : portfolio_.limits)
      if (limits.site == own.site) return owners_chance(limits.chance, own.consequence);
    return std::nullopt;
  }

  [[nodiscard]] bool has_coating(std::int32_t part) {
    if (served_.empty()) served_ = served_index(portfolio_, coating_->data);
    return served_[static_cast<std::size_t>(part)] >= 0;
  }

  const Portfolio& portfolio_;
  const std::vector<LimitForecast>& rows_;
  const std::vector<PartOutlook>& outlooks_;
  const CoatingModel* coating_;
  const SiteVisits& visits_;
  std::vector<std::int32_t> served_;
  NextVisit made_;
};

}  // namespace

std::optional<int> year_that_narrows(const Portfolio& portfolio, const CoatingModel& coating,
                                     std::int32_t part) {
  constexpr int longest = 10;
  constexpr double a_third = 2.25;  // (3/2)^2: the variance by which the sd falls to two thirds
  const auto served = served_index(portfolio, coating.data);
  const std::int32_t index = served[static_cast<std::size_t>(part)];
  if (index < 0) return std::nullopt;
  const PartView view = view_of({&portfolio, &coating, nullptr}, index);
  if (!view.posterior) return std::nullopt;
  const Spreads& spreads = coating.effects.spreads;
  const Centre centre = centre_of(*view.posterior);
  const double rate = std::exp(centre.ln_rate);
  double last = 0;
  VisitMean mean;
  if (view.segment->count > 0) {
    mean =
        coating.data.means[static_cast<std::size_t>(view.segment->first + view.segment->count) - 1];
    last = mean.effective_age;
  } else {
    mean.known_variance = coating.data.replicate_sd_um * coating.data.replicate_sd_um / 3;
  }
  const double error =
      mean_variance(mean, spreads, rate * last) + spreads.offset_um * spreads.offset_um;
  for (int d = 1; d <= longest; ++d) {
    const double lost = rate * (view.clock.effective(view.clock.age_now + d) - last);
    if (1 + centre.variance * lost * lost / error >= a_third) return d;
  }
  return std::nullopt;
}

NextVisit next_visit(const Portfolio& portfolio, const std::vector<LimitForecast>& rows,
                     const std::vector<PartOutlook>& outlooks, const CoatingModel* coating,
                     const SiteVisits& visits) {
  return VisitPlanner(portfolio, rows, outlooks, coating, visits).plan();
}

}  // namespace kneerail::forecast
