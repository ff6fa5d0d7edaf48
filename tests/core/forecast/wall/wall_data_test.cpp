#include "core/forecast/wall/wall_data.h"
#include "core/forecast/wall/wall_words.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

using namespace kneerail;
using namespace kneerail::forecast;
using Catch::Matchers::WithinAbs;

namespace {

struct OneTube {
  Portfolio portfolio;

  OneTube() {
    portfolio.as_of = date_from_civil(2026, 6, 30);
    Part part;
    part.id = "c1";
    part.site = "s1";
    part.kind = PartKind::post_tube;
    part.category = Category::c3;
    part.zinc_rate_um_per_year = 1.2;
    part.installed = date_from_civil(2000, 1, 1);
    part.wall_nominal_mm = 3.2;
    part.wall_limit_mm = 2.56;
    portfolio.parts = {part};
  }
  Part& part() { return portfolio.parts[0]; }

  void visit(const char* id, Date day, const char* gauge = "w1") {
    Visit visit;
    visit.id = id;
    visit.site = "s1";
    visit.day = day;
    visit.wall_gauge = gauge;
    portfolio.visits.push_back(visit);
  }
  void read(std::int16_t spot, double value, Censoring censoring = Censoring::exact) {
    Reading reading;
    reading.id = "m" + std::to_string(portfolio.readings.size());
    reading.visit = static_cast<std::int32_t>(portfolio.visits.size()) - 1;
    reading.quantity = Quantity::wall_mm;
    reading.spot = spot;
    reading.value = value;
    reading.censoring = censoring;
    portfolio.readings.push_back(reading);
  }
  WallTube tube() const { return prepare_walls(portfolio).tubes.at(0); }
};

}  // namespace

TEST_CASE("readings of a day are one mean of places", "[core]") {
  OneTube one;
  one.visit("v1", date_from_civil(2010, 5, 1));
  one.read(3, 3.10);
  one.read(3, 3.14);
  one.read(3, 3.50);  // the middle one counts
  one.read(9, 3.02);
  one.visit("v2", date_from_civil(2012, 5, 1));
  one.read(3, 3.0);
  const WallTube tube = one.tube();
  REQUIRE(tube.readings.size() == 2);
  CHECK_THAT(tube.readings[0].wall_mm, WithinAbs((3.14 + 3.02) / 2, 1e-12));
  CHECK_THAT(tube.readings[0].variance_mm2, WithinAbs(0.0036 / 2 + 0.0009, 1e-12));
  CHECK_THAT(tube.readings[1].variance_mm2, WithinAbs(0.0045, 1e-12));
  CHECK_THAT(tube.start_mm, WithinAbs(0.97 * 3.2, 1e-12));
}

TEST_CASE("the zone's own steel loss wins over the setting", "[core]") {
  OneTube one;
  CHECK(one.tube().ratio_from == RatioFrom::setting);
  CHECK(one.tube().steel_over_zinc == 22);
  CHECK_THAT(one.tube().class_steel_um_per_year, WithinAbs(26.4, 1e-9));
  one.part().steel_rate_um_per_year = 36;
  CHECK(one.tube().ratio_from == RatioFrom::zone);
  CHECK_THAT(one.tube().steel_over_zinc, WithinAbs(30, 1e-9));
}

TEST_CASE("a wall reading that is not used keeps its reason", "[core]") {
  OneTube one;
  one.visit("v0", date_from_civil(1999, 5, 1));
  one.read(1, 3.2);
  one.visit("v1", date_from_civil(2010, 5, 1));
  one.read(1, 3.0, Censoring::at_most);
  one.read(2, 0.2);
  one.read(3, 6.4);
  one.read(4, std::numeric_limits<double>::quiet_NaN());
  one.visit("v2", date_from_civil(2027, 5, 1));
  one.read(1, 3.0);
  one.part().installed = date_from_civil(2000, 1, 1);
  const WallData data = prepare_walls(one.portfolio);
  CHECK(data.tubes[0].readings.empty());
  std::vector<std::string> reasons;
  for (const LeftOut& reading : data.left_out) reasons.push_back(reading.reason);
  CHECK(reasons == std::vector<std::string>{"before_installed", "out_of_range", "out_of_range",
                                            "no_thickness", "after_as_of"});
}

TEST_CASE("a wall that a gauge could not read is a bound with its words, not left out", "[core]") {
  OneTube one;
  one.visit("v1", date_from_civil(2010, 5, 1));
  one.read(1, 1.2, Censoring::at_most);
  one.read(2, 1.0, Censoring::at_most);
  one.read(3, 2.9, Censoring::at_least);
  one.visit("v2", date_from_civil(2015, 5, 1));
  one.read(1, 2.6, Censoring::at_most);
  const WallData data = prepare_walls(one.portfolio);
  CHECK(data.left_out.empty());
  const WallTube& tube = data.tubes[0];
  REQUIRE(tube.bounds.size() == 3);
  CHECK(tube.bounds[0].wall_mm == 2.9);
  CHECK_FALSE(tube.bounds[0].at_most);
  CHECK(tube.bounds[1].wall_mm == 1.0);  // the tighter of the day
  CHECK(tube.last_look() == date_from_civil(2015, 5, 1));
  const auto flags = reading_flags(tube);
  REQUIRE(flags.size() == 3);
  CHECK(flags[0] ==
        "read as over 2.90 mm on 2010-05-01, which its gauge could not read: taken as a bound");
  CHECK(flags[1] ==
        "read as under 1.00 mm on 2010-05-01, which its gauge could not read: taken as a bound; "
        "look at it: it is at or under its limit; refer to an engineer");
  CHECK(flags[2] ==
        "read as under 2.60 mm on 2015-05-01, which its gauge could not read: taken as a bound; "
        "look at it");
  // Under zinc renewed since, "at least" tells nothing of the wall that stands there now.
  Work work;
  work.day = date_from_civil(2012, 1, 1);
  work.action = Action::regalvanise;
  one.portfolio.works = {work};
  const WallData after = prepare_walls(one.portfolio);
  CHECK(after.tubes[0].bounds.size() == 1);
  REQUIRE(after.tubes[0].bounds_before_zinc.size() == 1);
  CHECK(after.tubes[0].bounds_before_zinc[0].wall_mm == 1.0);
  REQUIRE(after.left_out.size() == 1);
  CHECK(after.left_out[0].reason == "bound_before_zinc");
}

TEST_CASE("new zinc makes no tube thicker than it was read to be at most", "[core]") {
  OneTube one;
  one.part().wall_limit_mm = 2.4;
  one.visit("v1", date_from_civil(2019, 5, 1));
  one.read(1, 2.0, Censoring::at_most);
  Work work;
  work.day = date_from_civil(2020, 1, 1);
  work.action = Action::regalvanise;
  one.portfolio.works = {work};
  const WallTube tube = one.tube();
  CHECK(tube.start_mm == 2.0);
  CHECK(tube.bounds.empty());
  CHECK(prepare_walls(one.portfolio).left_out.empty());
  const auto flags = reading_flags(tube);
  REQUIRE(flags.size() == 1);
  CHECK(flags[0] ==
        "read as under 2.00 mm on 2019-05-01, which its gauge could not read: taken as a bound; "
        "look at it: it is at or under its limit; refer to an engineer");
  // The mean that was read before the zinc stays where it is the thinner.
  one.read(2, 1.8);
  one.read(3, 1.8);
  CHECK(one.tube().start_mm < 1.8);
}

TEST_CASE("a thin place among thick ones is kept and told of", "[core]") {
  OneTube one;
  one.part().wall_limit_mm = 2.0;
  one.visit("v1", date_from_civil(2020, 5, 1));
  for (const auto place : std::initializer_list<std::int16_t>{3, 6, 9}) one.read(place, 3.0);
  one.read(12, 1.9);
  one.visit("v2", date_from_civil(2024, 5, 1));
  for (const auto place : std::initializer_list<std::int16_t>{3, 6, 9, 12}) one.read(place, 2.72);
  WallTube tube = one.tube();
  REQUIRE(tube.readings.size() == 2);
  CHECK(tube.readings[0].wall_mm > 2.7);  // the mean stays what it was
  REQUIRE(tube.thin.size() == 1);
  CHECK(tube.thin[0].day == date_from_civil(2020, 5, 1));
  CHECK(tube.thin[0].wall_mm == 1.9);
  CHECK(tube.thin[0].chance == Approx(0.932).margin(0.005));  // 0.1 mm under, sd 0.067
  CHECK(reading_flags(tube) ==
        std::vector<std::string>{"a place read on 2020-05-01 (1.90 mm) is at or under its limit: "
                                 "refer to an engineer"});
  one.visit("v3", date_from_civil(2025, 5, 1));
  one.read(12, 1.4);
  one.visit("v4", date_from_civil(2026, 5, 1));
  one.read(12, 2.0);
  tube = one.tube();
  REQUIRE(tube.thin.size() == 3);
  CHECK(tube.thin[1].chance == 0.999);
  CHECK(tube.thin[2].chance == 0.5);
  CHECK(reading_flags(tube).at(0) ==
        "a place read on 2025-05-01 (1.40 mm) is at or under its limit: refer to an engineer");
  CHECK(reading_flags(tube).at(1) ==
        "a place read on 2026-05-01 (2.00 mm) is at or under its limit: refer to an engineer; so "
        "it was on 3 days");
}

TEST_CASE("where no place is said each reading counts as one of its own", "[core]") {
  OneTube one;
  one.part().wall_limit_mm = 2.0;
  one.visit("v1", date_from_civil(2020, 5, 1));
  for (const double wall_mm : {3.0, 3.0, 1.9}) one.read(0, wall_mm);
  REQUIRE(one.tube().thin.size() == 1);
  CHECK(one.tube().thin[0].wall_mm == 1.9);
}

TEST_CASE("the wall of a tube of no known age is less sure", "[core]") {
  OneTube one;
  const double sure = one.tube().start_sd_mm;
  one.part().installed.reset();
  CHECK(one.tube().start_sd_mm > 1.5 * sure);
  CHECK(one.tube().start_mm == Approx(0.97 * 3.2));
}

TEST_CASE("a replaced tube begins anew", "[core]") {
  OneTube one;
  one.visit("v1", date_from_civil(2010, 5, 1));
  one.read(1, 2.7);
  one.visit("v2", date_from_civil(2020, 5, 1));
  one.read(1, 3.1);
  Work work;
  work.day = date_from_civil(2015, 1, 1);
  work.action = Action::replace;
  one.portfolio.works = {work};
  const WallData data = prepare_walls(one.portfolio);
  REQUIRE(data.tubes[0].readings.size() == 1);
  CHECK(data.tubes[0].readings[0].wall_mm == 3.1);
  CHECK(data.tubes[0].hollow_since == work.day);
  REQUIRE(data.left_out.size() == 1);
  CHECK(data.left_out[0].reason == "before_renewed");
  // A replacement that nobody recorded is as good.
  one.portfolio.works.clear();
  const WallData unrecorded = prepare_walls(one.portfolio, {work.day});
  REQUIRE(unrecorded.tubes[0].readings.size() == 1);
  CHECK(unrecorded.tubes[0].hollow_since == work.day);
}

TEST_CASE("zinc renewed does not put back the steel that had gone", "[core]") {
  OneTube one;
  Work work;
  work.day = date_from_civil(2015, 1, 1);
  work.action = Action::regalvanise;
  const double as_new_sd = one.tube().start_sd_mm;
  one.portfolio.works = {work};
  CHECK(one.tube().start_sd_mm > as_new_sd);
  one.visit("v1", date_from_civil(2008, 5, 1));
  one.read(1, 2.6);
  one.visit("v2", date_from_civil(2014, 1, 1));
  one.read(1, 2.5);
  const WallData data = prepare_walls(one.portfolio);
  const WallTube& tube = data.tubes[0];
  CHECK(data.left_out.empty());
  CHECK(tube.readings.empty());
  REQUIRE(tube.before_zinc.size() == 2);
  // A year at 26.4 um may have gone by the dip, or nothing.
  const double half_mm = 0.0132;
  CHECK_THAT(tube.start_mm, WithinAbs(2.5 - half_mm, 1e-4));
  CHECK_THAT(tube.start_sd_mm, WithinAbs(std::hypot(std::sqrt(0.0045), half_mm), 1e-4));
  one.visit("v3", date_from_civil(2020, 1, 1));
  one.read(1, 2.48);
  CHECK(one.tube().readings.size() == 1);
  CHECK(one.tube().start_mm == tube.start_mm);
}

TEST_CASE("a wall that seems to grow is left out, not the low one", "[core]") {
  OneTube one;
  one.visit("v1", date_from_civil(2020, 5, 1));
  one.read(1, 2.65);
  one.visit("v2", date_from_civil(2024, 5, 1));
  one.read(1, 2.90);  // 0.25 mm: within 3 sds of a difference, 0.285 mm
  one.visit("v3", date_from_civil(2026, 5, 1));
  one.read(1, 3.10);
  const WallData data = prepare_walls(one.portfolio);
  const WallTube& tube = data.tubes[0];
  REQUIRE(tube.readings.size() == 2);
  CHECK(tube.readings.back().wall_mm == 2.90);
  REQUIRE(data.left_out.size() == 1);
  CHECK(data.left_out[0].reading == "m2");
  CHECK(data.left_out[0].reason == "rises");
  REQUIRE(tube.odd.size() == 1);
  CHECK(tube.odd[0].wall_mm == 3.10);
  REQUIRE(tube.odd[0].thinner);
  CHECK(tube.odd[0].thinner->wall_mm == 2.65);
}

TEST_CASE("a wall read thicker than any new tube, or far too thin, is held out to look at",
          "[core]") {
  OneTube one;
  one.visit("v1", date_from_civil(2020, 5, 1));
  one.read(1, 3.50);
  one.visit("v2", date_from_civil(2024, 5, 1));
  one.read(1, 3.56);
  one.read(2, 0.45);
  one.read(3, 0.40);
  const WallTube tube = one.tube();
  REQUIRE(tube.readings.size() == 1);
  CHECK(tube.readings[0].wall_mm == 3.50);
  REQUIRE(tube.odd.size() == 1);
  CHECK(tube.odd[0].wall_mm == 0.40);
}

TEST_CASE("a tube said to be put up after the as-of date is of no known age", "[core]") {
  OneTube one;
  one.part().installed = date_from_civil(2030, 1, 1);
  one.visit("v1", date_from_civil(2020, 5, 1));
  one.read(1, 2.9);
  CHECK_FALSE(one.tube().stands_since);
  CHECK_FALSE(one.tube().hollow_since);
  CHECK(one.tube().readings.size() == 1);
}

TEST_CASE("bare steel of no known age begins with its first reading", "[core]") {
  OneTube one;
  one.part().material = Material::bare_steel;
  one.visit("v1", date_from_civil(2024, 5, 1));
  one.read(1, 2.6);
  CHECK_THAT(one.tube().start_mm, WithinAbs(0.97 * 3.2, 1e-12));
  one.part().installed.reset();
  CHECK(one.tube().start_mm == 2.6);
  CHECK(one.tube().start_sd_mm > 1);
}

TEST_CASE("where no model serves the wall the words say so", "[core]") {
  OneTube one;
  one.part().material = Material::painted_steel;
  CHECK(one.tube().why_not == "steel under paint: measure the wall");
  one.part().material = Material::aluminium;
  CHECK(one.tube().why_not == "no loss rate for this metal");
  one.part().material = Material::stainless;
  CHECK(one.tube().why_not == "no loss rate for this metal");
  one.part().material = Material::zinc_coated_steel;
  CHECK(one.tube().why_not.empty());
  one.part().out_of_shape = true;
  CHECK(one.tube().why_not == "dented, oval or holed: not projected; refer to an engineer");
  one.part().out_of_shape = false;
  one.part().wall_limit_mm.reset();
  CHECK(one.tube().why_not == "no wall limit is set");
  one.part().wall_limit_mm = 3.2;
  CHECK(one.tube().why_not == "no reserve; refer to an engineer");
  one.part().wall_limit_mm = 2.56;
  one.part().category.reset();
  one.part().zinc_rate_um_per_year.reset();
  CHECK(one.tube().why_not == "no corrosivity class and no rate of its zone is known");
  one.part().kind = PartKind::fitting;
  CHECK(prepare_walls(one.portfolio).tubes.empty());
}

TEST_CASE("a limit that is not set is reckoned from what the tube carries", "[core]") {
  OneTube one;
  one.part().wall_limit_mm.reset();
  structure::LoadedTube carries{.as_new = {.outside_mm = 48.3, .wall_mm = 3.2},
                                .line_load_kn_per_m = 0.36,
                                .spacing_m = 1.5,
                                .height_m = 1.1,
                                .yield_mpa = 235};
  one.part().carries = carries;
  CHECK_THAT(one.tube().limit_mm, WithinAbs(2.573345038997913, 1e-9));
  CHECK(one.tube().limit_reckoned);
  one.part().wall_limit_mm = 2.8;  // the larger governs
  CHECK(one.tube().limit_mm == 2.8);
  CHECK_FALSE(one.tube().limit_reckoned);
  one.part().wall_limit_mm = 0.7 * 3.2;
  CHECK_THAT(one.tube().limit_mm, WithinAbs(2.573345038997913, 1e-9));
  CHECK(one.tube().limit_reckoned);
  one.visit("v1", date_from_civil(2024, 5, 1));
  one.read(1, 2.5);  // over the owner's share, under what carries the load
  CHECK(reading_flags(one.tube()).size() == 1);
  // A tube that does not pass when new has no reserve, whatever limit was set.
  one.part().carries->line_load_kn_per_m = 0.74;
  CHECK(one.tube().why_not == "no reserve; refer to an engineer");
  one.part().wall_limit_mm.reset();
  CHECK(one.tube().why_not == "no reserve; refer to an engineer");
}
