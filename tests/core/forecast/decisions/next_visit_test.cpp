// The day somebody is to come again, and the sentence for each reason.

#include "core/forecast/decisions/next_visit.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "core/forecast/limit_report.h"
#include "core/forecast/limit_words.h"
#include "tests/core/forecast/decisions/rows.h"
#include "tests/core/forecast/decisions/sharing_parts.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;
using namespace kneerail::tests;

namespace {

const Date today = date_from_civil(2026, 6, 30);

Portfolio quay(int parts) {
  Portfolio made;
  made.as_of = today;
  made.limits.push_back({.site = "quay", .zinc_gone_um = {}, .replace_grade = {}, .chance = {}});
  made.limits.back().chance[1] = 0.05;
  for (int i = 0; i < parts; ++i) {
    Part part;
    part.id = "p" + std::to_string(i);
    part.site = "quay";
    part.consequence = 1;
    made.parts.push_back(part);
  }
  return made;
}

SiteVisits visits_of(std::optional<Date> agreed = {}) {
  SiteVisits visits;
  visits.site = "quay";
  visits.last = visits.last_any = date_from_civil(2026, 5, 12);
  visits.longest_interval_days = 365;
  visits.agreed = agreed;
  return visits;
}

/// A grade 5 that has a chance of 5 % in so many years.
LimitForecast grade(double years, std::int32_t part) {
  auto row = row_of({years, 1.2 * years, 2 * years, 3 * years, 4 * years, 5 * years, 6 * years},
                    {0.001, 0.002, 0.003, 0.004}, Limit::grade_5, part);
  return row;
}

NextVisit planned(const Portfolio& portfolio, const std::vector<LimitForecast>& rows,
                  const SiteVisits& visits) {
  return next_visit(portfolio, rows, part_outlooks(portfolio, rows), nullptr, visits);
}

}  // namespace

TEST_CASE("each reason for a visit has its day and its sentence", "[forecast]") {
  auto flooded = visits_of();
  flooded.events = {{"flood", date_from_civil(2026, 6, 29), 48}};
  auto stormy = visits_of();
  stormy.events = {{"storm", date_from_civil(2026, 6, 29), {}}};
  auto crowded = visits_of();
  crowded.events = {{"crowd", date_from_civil(2026, 8, 15), {}}};
  auto past = grade(6, 0);
  past.p_by = {0.2, 0.3, 0.4, 0.6};
  auto past_too = grade(6, 1);
  past_too.p_by = {0.1, 0.3, 0.4, 0.6};
  struct Case {
    const char* name;
    std::vector<LimitForecast> rows;
    SiteVisits visits;
    Date day;
    std::string words;
  };
  const std::vector<Case> cases{
      {"longest interval",
       {},
       visits_of(),
       date_from_civil(2027, 5, 12),
       "Proposed: the owner's longest interval, 365 days from the last visit on 2026-05-12, ends."},
      {"brought forward by it",
       {},
       visits_of(date_from_civil(2031, 8, 4)),
       date_from_civil(2027, 5, 12),
       "Brought forward from Aug 2031: the owner's longest interval, 365 days from the last visit "
       "on 2026-05-12, ends."},
      {"a day or two are the calendar's",
       {},
       visits_of(date_from_civil(2027, 6, 1)),
       date_from_civil(2027, 6, 1),
       "As agreed."},
      {"agreed earlier",
       {},
       visits_of(date_from_civil(2026, 9, 1)),
       date_from_civil(2026, 9, 1),
       "As agreed."},
      {"after a flood",
       {},
       flooded,
       date_from_civil(2026, 7, 1),
       "Proposed: flood of 2026-06-29, which nobody has come for; 48 hours are allowed."},
      {"before a crowd",
       {},
       crowded,
       date_from_civil(2026, 8, 14),
       "Proposed: crowd of 2026-08-15 lies ahead: a look before it."},
      {"a part half way to the owner's chance",
       {grade(1, 0)},
       visits_of(),
       date_from_civil(2026, 12, 29),
       "Proposed: p0 comes up to the owner's chance of 5 % for condition grade 5 on 2027-06-30, "
       "and half of that time is over."},
      {"a part past the owner's chance",
       {past},
       visits_of(date_from_civil(2027, 3, 1)),
       today,
       "Brought forward from Mar 2027: p0 is past the owner's chance of 5 % for condition grade 5 "
       "already, with 20 %."},
      {"two of them",
       {past, past_too},
       visits_of(),
       today,
       "Proposed: p0 is past the owner's chance of 5 % for condition grade 5 already, with 20 %; "
       "one more part is past theirs."},
  };
  for (const Case& one : cases) {
    INFO(one.name);
    const NextVisit visit = planned(quay(2), one.rows, one.visits);
    CHECK(visit.day == one.day);
    CHECK(visit.words == one.words);
  }
  CHECK(planned(quay(1), {}, stormy).not_said ==
        std::vector<std::string>{
            "no time is set for the visit after a kind of event: storm of 2026-06-29"});
}

TEST_CASE("rules that cannot speak say what is missing", "[forecast]") {
  Portfolio portfolio = quay(1);
  portfolio.limits.front().chance[1].reset();
  SiteVisits visits = visits_of();
  visits.longest_interval_days.reset();
  const NextVisit nothing = planned(portfolio, {grade(1, 0)}, visits);
  CHECK_FALSE(nothing.day);
  CHECK(nothing.words == "No day can be said: no longest interval is set.");
  CHECK(nothing.not_said ==
        std::vector<std::string>{"no longest interval is set", "no chance is set"});
}

TEST_CASE("a site with an interval that nobody has visited is due now", "[forecast]") {
  SiteVisits visits = visits_of();
  visits.last.reset();
  NextVisit visit = planned(quay(1), {}, visits);
  CHECK(visit.day == today);
  CHECK(visit.words ==
        "Proposed: nobody has looked at the whole of it yet, and the owner's longest interval is "
        "365 days.");
  visits.last_any.reset();
  visit = planned(quay(1), {}, visits);
  CHECK(visit.day == today);
  CHECK(visit.words ==
        "Proposed: nobody has been there yet, and the owner's longest interval is 365 days.");
}

TEST_CASE("a day agreed that was kept hides no reason to come", "[forecast]") {
  auto past = grade(6, 0);
  past.p_by = {0.2, 0.3, 0.4, 0.6};
  const NextVisit kept = planned(quay(1), {past}, visits_of(date_from_civil(2026, 5, 12)));
  CHECK_FALSE(kept.agreed);
  CHECK(kept.day == today);
  CHECK(kept.words.rfind("Proposed: p0 is past the owner's chance", 0) == 0);
  const NextVisit missed = planned(quay(1), {}, visits_of(date_from_civil(2026, 6, 1)));
  CHECK(missed.day == date_from_civil(2026, 6, 1));
  CHECK(missed.words == "Agreed for 2026-06-01, and nobody came.");
}

TEST_CASE("hours and the owner's chance move a day agreed by any lead", "[forecast]") {
  auto visits = visits_of(date_from_civil(2026, 7, 24));
  visits.events = {{"flood", date_from_civil(2026, 6, 29), 48}};
  const NextVisit flooded = planned(quay(1), {}, visits);
  CHECK(flooded.day == date_from_civil(2026, 7, 1));
  CHECK(flooded.words ==
        "Brought forward from 2026-07-24: flood of 2026-06-29, which nobody has come for; 48 "
        "hours are allowed.");
  auto past = grade(6, 0);
  past.p_by = {0.2, 0.3, 0.4, 0.6};
  // The interval ended a day ago, which is the calendar's; the part is what moves the day.
  visits = visits_of(date_from_civil(2026, 7, 3));
  visits.longest_interval_days = 48;
  const NextVisit visit = planned(quay(1), {past}, visits);
  CHECK(visit.day == today);
  CHECK(visit.brought_forward);
  REQUIRE(visit.proposals.size() == 2);
  CHECK(visit.proposals.front().why == VisitReason::due_part);
}

TEST_CASE("parts whose consequence has no chance are counted", "[forecast]") {
  Portfolio portfolio = quay(3);
  portfolio.parts[1].consequence = 2;
  portfolio.parts[2].consequence = 0;
  const auto said = planned(portfolio, {grade(3, 0), grade(1, 1), grade(1, 2)}, visits_of());
  CHECK(said.not_said == std::vector<std::string>{
                             "no chance is set for the consequence of 2 parts, or none is said"});
  CHECK(planned(quay(1), {}, visits_of()).not_said.empty());  // set, and nothing to ask it of
}

TEST_CASE("a part seen at grade 5 asks for work, not for another look", "[forecast]") {
  auto seen = grade(1, 0);
  seen.seen = SeenGrade{5, date_from_civil(2026, 5, 12)};
  const NextVisit visit = planned(quay(2), {seen, grade(3, 1)}, visits_of());
  REQUIRE(visit.proposals.size() == 2);
  CHECK(visit.proposals[1].part == 1);
  CHECK(visit.day == date_from_civil(2027, 5, 12));
}

TEST_CASE("a site of another name moves nothing", "[forecast]") {
  SiteVisits visits = visits_of();
  visits.site = "mole";
  auto past = grade(6, 0);
  past.p_by = {0.2, 0.3, 0.4, 0.6};
  CHECK(planned(quay(1), {past}, visits).day == date_from_civil(2027, 5, 12));
}

TEST_CASE("a reading narrows a rate by a third in the first year that it can", "[forecast]") {
  const auto seed = test::seed_or(11);
  INFO(test::reproduce(seed));
  const Fitted fitted(sharing_parts(seed, {.sites = 1, .zones = 1, .runs = 3, .days = 3}));
  const CoatingModel& model = *fitted.coating;
  int found = 0;
  for (std::int32_t part = 0; part < static_cast<std::int32_t>(fitted.portfolio.parts.size());
       ++part) {
    const auto year = year_that_narrows(fitted.portfolio, model, part);
    if (!year) continue;
    ++found;
    // The same by the words of the rule: the variance of ln rate times (loss since)^2 over errors.
    for (std::size_t i = 0; i < model.data.parts.size(); ++i) {
      if (model.data.parts[i].place != part) continue;
      const PartView view = view_of({&fitted.portfolio, &model, nullptr}, static_cast<int>(i));
      const Centre centre = centre_of(*view.posterior);
      if (view.segment->count == 0) continue;
      const VisitMean& last =
          model.data.means[static_cast<std::size_t>(view.segment->first + view.segment->count - 1)];
      const double rate = std::exp(centre.ln_rate);
      const double error = mean_variance(last, model.effects.spreads, rate * last.effective_age) +
                           std::pow(model.effects.spreads.offset_um, 2);
      const auto ratio = [&](int d) {
        const double lost =
            rate * (view.clock.effective(view.clock.age_now + d) - last.effective_age);
        return 1 + centre.variance * lost * lost / error;
      };
      CHECK(ratio(*year) >= 2.25);
      if (*year > 1) CHECK(ratio(*year - 1) < 2.25);
    }
  }
  CHECK(found > 3);
}

TEST_CASE("a zone faster than its class asks for a visit within a year", "[forecast]") {
  const auto seed = test::seed_or(12);
  INFO(test::reproduce(seed));
  const Fitted fitted(
      sharing_parts(seed, {.sites = 2, .zones = 2, .runs = 3, .rate_over_class = 4}));
  SiteVisits visits = visits_of();
  visits.site = fitted.portfolio.parts.front().site;
  visits.longest_interval_days.reset();
  const NextVisit visit = next_visit(fitted.portfolio, {}, {}, &*fitted.coating, visits);
  REQUIRE(visit.proposals.size() == 1);
  CHECK(visit.proposals.front().why == VisitReason::faster_than_class);
  CHECK(visit.day == date_from_civil(2027, 5, 12));
  CHECK(visit.words.find("likely loses zinc faster than its class") != std::string::npos);
}
