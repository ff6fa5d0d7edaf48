// Which restart starts which clock, and which readings are not used.

#include "core/forecast/screws/tightenings.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

const Date installed = date_from_civil(2010, 1, 1);

Date year(int number) {
  return date_from_civil(number, 1, 1);
}

/// One fitting, target 39, minimum 27, put up in 2010.
struct OneFitting {
  Portfolio portfolio;

  OneFitting() {
    portfolio.as_of = date_from_civil(2026, 6, 30);
    Part part;
    part.id = "c1";
    part.site = "s1";
    part.zone = "z1";
    part.run = "r1";
    part.installed = installed;
    part.torque_target_nm = 39;
    part.torque_minimum_nm = 27;
    portfolio.parts = {part};
  }

  void read(Date day, double torque_nm, Censoring censoring = Censoring::about,
            std::int16_t screw = 1) {
    Visit visit;
    visit.id = "v" + std::to_string(100 + portfolio.visits.size());
    visit.site = "s1";
    visit.day = day;
    Reading reading;
    reading.id = "r" + std::to_string(100 + portfolio.readings.size());
    reading.visit = static_cast<std::int32_t>(portfolio.visits.size());
    reading.quantity = Quantity::torque_nm;
    reading.spot = screw;
    reading.censoring = censoring;
    reading.value = torque_nm;
    portfolio.visits.push_back(visit);
    portfolio.readings.push_back(reading);
  }

  void work(Date day, Action action, std::optional<double> as_left_nm = {},
            std::int16_t screw = 0) {
    Work work;
    work.day = day;
    work.action = action;
    work.as_left_nm = as_left_nm;
    work.screw = screw;
    portfolio.works.push_back(work);
  }

  [[nodiscard]] ScrewData gather() const { return gather_tightenings(portfolio); }
};

std::vector<std::size_t> readings_by_tightening(const Screw& screw) {
  std::vector<std::size_t> counts;
  for (const Tightening& tightening : screw.tightenings)
    counts.push_back(tightening.readings.size());
  return counts;
}

}  // namespace

TEST_CASE("a reading on the day of a re-torque was found before it", "[core][screw]") {
  OneFitting one;
  one.read(year(2014), 27, Censoring::at_least);
  one.read(year(2016), 24);
  one.work(year(2016), Action::retorque, 38);
  one.read(year(2020), 30);
  const ScrewData data = one.gather();
  const Screw& screw = data.fittings.at(0).screws.at(0);
  CHECK(readings_by_tightening(screw) == std::vector<std::size_t>{2, 1});
  CHECK(screw.tightenings[0].as_left_nm == 39);
  CHECK(screw.tightenings[0].starts == std::vector<Date>{installed});
  CHECK(screw.tightenings[1].as_left_nm == 38);
  CHECK(screw.tightenings[1].starts == std::vector<Date>{year(2016)});
  CHECK(data.sites.at(0).zone_measured == std::vector<char>{1});
}

TEST_CASE("works restart the clock of the screw they name, or of all", "[core][screw]") {
  OneFitting one;
  one.read(year(2012), 30, Censoring::at_least, 1);
  one.read(year(2012), 30, Censoring::at_least, 2);
  SECTION("one screw") {
    one.work(year(2015), Action::retorque, 39, 2);
    const ScrewData data = one.gather();
    const auto& screws = data.fittings.at(0).screws;
    REQUIRE(screws.size() == 2);
    CHECK(screws[0].tightenings.size() == 1);
    CHECK(screws[1].tightenings.size() == 2);
  }
  SECTION("all screws") {
    one.work(year(2015), Action::replace);
    const ScrewData data = one.gather();
    for (const Screw& screw : data.fittings.at(0).screws) {
      CHECK(screw.tightenings.size() == 2);
      CHECK(screw.tightenings.back().as_left_nm == 39);
    }
  }
  SECTION("galvanised again counts only with a torque as left, a touch-up never") {
    one.work(year(2015), Action::regalvanise);
    one.work(year(2016), Action::touch_up, 39);
    one.work(year(2017), Action::regalvanise, 37);
    const ScrewData data = one.gather();
    for (const Screw& screw : data.fittings.at(0).screws) {
      REQUIRE(screw.tightenings.size() == 2);
      CHECK(screw.tightenings.back().as_left_nm == 37);
    }
  }
  SECTION("two works of one day are one restart") {
    one.work(year(2015), Action::retorque);
    one.work(year(2015), Action::retorque, 36);
    CHECK(one.gather().fittings.at(0).screws.at(0).tightenings.size() == 2);
    CHECK(one.gather().fittings.at(0).screws.at(0).tightenings.back().as_left_nm == 36);
  }
}

TEST_CASE("a click without movement restarts nothing", "[core][screw]") {
  OneFitting one;
  for (int number = 2012; number < 2020; ++number) one.read(year(number), 27, Censoring::at_least);
  const ScrewData data = one.gather();
  CHECK(readings_by_tightening(data.fittings.at(0).screws.at(0)) == std::vector<std::size_t>{8});
  CHECK(data.sites.at(0).zone_measured == std::vector<char>{0});
}

TEST_CASE("strikes are counted since the part was new", "[core][screw]") {
  OneFitting one;
  one.work(year(2012), Action::re_erect, 39);
  one.work(year(2013), Action::re_erect, 39);
  one.work(year(2014), Action::retorque, 39);
  one.work(year(2015), Action::replace, 39);
  one.work(year(2016), Action::re_erect, 39);
  std::vector<int> strikes;
  const ScrewData data = one.gather();
  for (const Tightening& tightening : data.fittings.at(0).screws.at(0).tightenings)
    strikes.push_back(tightening.strikes);
  CHECK(strikes == std::vector<int>{0, 1, 2, 2, 0, 1});
}

TEST_CASE("torque readings that are not used are named with their reason", "[core][screw]") {
  OneFitting one;
  std::string reason;
  SECTION("before it was there") {
    one.read(year(2009), 27);
    reason = "before_installed";
  }
  SECTION("after the forecast's day") {
    one.read(year(2027), 27);
    reason = "after_as_of";
  }
  SECTION("on the day it was put up") {
    one.read(installed, 39);
    reason = "day_of_restart";
  }
  SECTION("not a number") {
    one.read(year(2015), std::numeric_limits<double>::quiet_NaN());
    reason = "no_torque";
  }
  SECTION("without end") {
    one.read(year(2015), std::numeric_limits<double>::infinity());
    reason = "no_torque";
  }
  SECTION("under zero") {
    one.read(year(2015), -4);
    reason = "no_torque";
  }
  SECTION("nothing says what it was left at") {
    one.portfolio.parts.front().torque_target_nm.reset();
    one.read(year(2015), 24);
    reason = "no_torque_target";
  }
  const ScrewData data = one.gather();
  REQUIRE(data.left_out.size() == 1);
  CHECK(data.left_out[0].reason == reason);
  CHECK(data.left_out[0].reading == "r100");
  CHECK(data.fittings.at(0).readings == 0);
}

TEST_CASE("a start nobody knows is one of its neighbours' dates", "[core][screw]") {
  OneFitting one;
  one.portfolio.parts.front().installed.reset();
  for (int i = 0; i < 10; ++i) {
    Part other = one.portfolio.parts.front();
    other.id = "d" + std::to_string(i);
    other.kind = PartKind::rail_tube;
    other.torque_target_nm.reset();
    other.torque_minimum_nm.reset();
    other.installed = year(2000 + i);
    one.portfolio.parts.push_back(other);
  }
  one.read(year(2009), 27);
  const ScrewData data = one.gather();
  REQUIRE(data.fittings.size() == 1);
  const Tightening& first = data.fittings[0].screws.at(0).tightenings.at(0);
  CHECK_FALSE(first.started);
  // Nine dates are more than 30 days before the first reading.
  CHECK(first.starts ==
        std::vector<Date>{year(2000), year(2002), year(2004), year(2006), year(2008)});
}

TEST_CASE("what has no set screws gets no row of them", "[core][screw]") {
  Part part;
  part.kind = PartKind::post_tube;
  CHECK_FALSE(has_set_screws(part));
  part.kind = PartKind::fitting;
  CHECK(has_set_screws(part));
  part.kind = PartKind::base_fixing;
  CHECK_FALSE(has_set_screws(part));
  part.torque_minimum_nm = 27;
  CHECK(has_set_screws(part));
  part.kind = PartKind::weld;
  CHECK_FALSE(has_set_screws(part));
}
