#include "core/forecast/grade/grade_data.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <utility>

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

Date day(int year) {
  return date_from_civil(year, 6, 1);
}

/// One part in one site, put up in 2000, with grades by two people.
struct One {
  Portfolio portfolio;

  One() {
    portfolio.as_of = date_from_civil(2026, 6, 30);
    for (const char* id : {"c1", "c2", "c3"}) {
      Part part;
      part.id = id;
      part.site = "s1";
      part.zone = "z1";
      part.installed = day(2000);
      portfolio.parts.push_back(part);
    }
    portfolio.parts[1].installed = day(2004);
    portfolio.parts[2].installed = day(2008);
  }
  void grade(int year, double value, const char* inspector = "a", How how = How::not_said,
             bool carried = false) {
    Visit visit;
    visit.id = "v" + std::to_string(portfolio.visits.size());
    visit.site = "s1";
    visit.day = day(year);
    visit.inspector = inspector;
    portfolio.visits.push_back(visit);
    Reading reading;
    reading.id = "r" + std::to_string(portfolio.readings.size());
    reading.quantity = Quantity::grade;
    reading.visit = static_cast<std::int32_t>(portfolio.visits.size()) - 1;
    reading.value = value;
    reading.how = how;
    reading.carried = carried;
    portfolio.readings.push_back(reading);
  }
  void work(int year, Action action, bool unsure = false) {
    portfolio.works.push_back({0, day(year), action, {}, {}, 0, unsure});
  }
  [[nodiscard]] GradeData data() const {
    return prepare_grades(portfolio, InstalledDates(portfolio));
  }
};

std::vector<int> seen_in(const GradeData& data, const GradeSegment& segment) {
  std::vector<int> seen;
  for (int i = segment.first; i < segment.first + segment.count; ++i)
    seen.push_back(data.looks[static_cast<std::size_t>(i)].seen);
  return seen;
}

}  // namespace

TEST_CASE("replacing and regalvanising begin anew, touching up and re-torquing do not",
          "[core][grade]") {
  One one;
  for (const int year : {2005, 2010, 2015, 2020}) one.grade(year, 1 + (year - 2005) / 5);
  one.work(2007, Action::touch_up);
  one.work(2008, Action::retorque);
  one.work(2012, Action::replace);
  one.work(2017, Action::regalvanise);
  const GradeData data = one.data();
  REQUIRE(data.parts[0].segments == 3);
  CHECK(seen_in(data, data.segments[0]) == std::vector<int>{1, 2});
  CHECK(data.segments[0].starts == std::vector<Date>{day(2000)});
  CHECK(seen_in(data, data.segments[1]) == std::vector<int>{3});
  CHECK(data.segments[1].starts == std::vector<Date>{day(2012)});
  CHECK(seen_in(data, data.segments[2]) == std::vector<int>{4});
  CHECK(data.segments[2].start_known);
}

TEST_CASE("a grade of the day of the work is as found", "[core][grade]") {
  One one;
  one.grade(2012, 5);
  one.work(2012, Action::replace);
  one.work(2012, Action::re_erect, true);
  const GradeData data = one.data();
  REQUIRE(data.parts[0].segments == 2);
  CHECK(seen_in(data, data.segments[0]) == std::vector<int>{5});
  CHECK(data.segments[1].count == 0);
  CHECK(data.segments[1].starts == std::vector<Date>{day(2012)});  // new holds, whatever was struck
}

TEST_CASE("who comes back from a strike unsaid has an unknown start", "[core][grade]") {
  One one;
  one.grade(2010, 2);
  one.grade(2020, 3);
  one.work(2015, Action::re_erect, false);
  CHECK(one.data().parts[0].segments == 1);
  one.work(2016, Action::re_erect, true);
  const GradeData data = one.data();
  REQUIRE(data.parts[0].segments == 2);
  CHECK_FALSE(data.segments[1].start_known);
  CHECK(data.segments[1].starts.size() == 5);
}

TEST_CASE("an unknown start is one of the site's dates, or years before", "[core][grade]") {
  One one;
  one.portfolio.parts[0].installed.reset();
  one.grade(2010, 2);
  GradeData data = one.data();
  CHECK_FALSE(data.segments[0].start_known);
  CHECK(data.segments[0].starts.size() == 5);
  for (const Date start : data.segments[0].starts)
    CHECK((start == day(2004) || start == day(2008)));
  one.portfolio.parts[1].installed.reset();
  one.portfolio.parts[2].installed.reset();
  data = one.data();
  REQUIRE(data.segments[0].starts.size() == 4);
  CHECK(std::abs(years_between(data.segments[0].starts[0], day(2010)) - 20) < 0.01);
  CHECK(std::abs(std::exp(data.segments[0].ln_ages[3]) - 2) < 0.01);
}

TEST_CASE("a grade before the installation makes its date doubtful", "[core][grade]") {
  One one;
  one.grade(1998, 2);
  const GradeData data = one.data();
  CHECK(data.parts[0].graded_before_start);
  CHECK_FALSE(data.segments[0].start_known);
}

TEST_CASE("of several grades of one visit the worst fresh one counts", "[core][grade]") {
  One one;
  one.grade(2010, 2);
  one.grade(2010, 3);
  one.grade(2010, 5, "a", How::afar);
  one.grade(2010, 1, "b");
  const GradeData data = one.data();
  CHECK(seen_in(data, data.segments[0]) == std::vector<int>{3, 1});
  CHECK(data.inspectors == std::vector<std::string>{"a", "b"});
  CHECK(std::isinf(data.looks[1].ln_years));
  CHECK(data.looks[1].unbroken == 1);
}

TEST_CASE("what was carried on, or seen from afar, is no fresh look", "[core][grade]") {
  One one;
  one.grade(2010, 2, "a", How::pushed);
  one.grade(2012, 2, "a", How::near, true);
  one.grade(2014, 2, "a", How::afar);
  one.grade(2016, 2, "a", How::picture);
  one.grade(2018, 2);
  std::vector<bool> fresh;
  for (const GradeLook& look : one.data().looks) fresh.push_back(look.fresh);
  CHECK(fresh == std::vector<bool>{true, false, false, false, true});
}

TEST_CASE("a reading's own day counts before its visit's", "[core][grade]") {
  One one;
  one.grade(2010, 2);
  one.portfolio.readings[0].seen = day(2011);
  CHECK(one.data().looks[0].day == day(2011));
}

TEST_CASE("what counts as seen is the worst since the last fresh look", "[core][grade]") {
  One one;
  const auto seen = [&] {
    const GradeData data = one.data();
    const auto last = seen_last(data.looks);
    REQUIRE(last);
    return std::pair(static_cast<int>(last->seen), last->day);
  };
  CHECK_FALSE(seen_last({}));
  one.grade(2010, 3, "a", How::afar);
  CHECK(seen() == std::pair(3, day(2010)));
  one.grade(2012, 5, "a");
  one.grade(2012, 3, "b");  // sorted after a: of one day the worst counts
  CHECK(seen() == std::pair(5, day(2012)));
  one.grade(2014, 3, "b", How::not_said, true);  // said as last time: no new look
  CHECK(seen() == std::pair(5, day(2012)));
  one.grade(2016, 2, "b");
  CHECK(seen() == std::pair(2, day(2016)));
  one.grade(2018, 4, "a", How::picture);  // worse from a picture is not lost either
  CHECK(seen() == std::pair(4, day(2018)));
}
