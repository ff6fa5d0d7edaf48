// What a fit that somebody else wrote, or that was damaged with its digest made anew, can do to who
// reads it: be refused. Worth running under AddressSanitizer.

#include <catch2/catch.hpp>
#include <functional>
#include <limits>
#include <string>
#include <vector>

#include "core/base/world.h"
#include "core/forecast/whole/kept_bounds.h"
#include "core/forecast/whole/kept_models.h"
#include "tests/support/joined_world.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

struct Kept {
  Portfolio world = joined_world(23);
  std::string bytes;
  Kept() {
    const auto fit = fit_portfolio(world, {.threads = 1});
    REQUIRE(fit);
    bytes = bytes_of(*fit);
  }
};
const Kept& kept() {
  static const Kept made;
  return made;
}

PortfolioFit read() {
  auto fit = fit_from_bytes(kept().bytes);
  REQUIRE(fit);
  return std::move(*fit);
}

struct Forgery {
  const char* what;
  std::function<void(PortfolioFit&)> forge;
};

constexpr std::int32_t far = std::numeric_limits<std::int32_t>::max();

CoatingModel& coating(PortfolioFit& fit) {
  return *fit.coating.model;
}

std::vector<Forgery> of_coatings() {
  return {
      {"site's parts", [](auto& fit) { coating(fit).data.sites[0].parts = far; }},
      {"site's segments", [](auto& fit) { coating(fit).data.sites[0].first_segment = -1; }},
      {"site's sessions", [](auto& fit) { ++coating(fit).data.sites.back().sessions; }},
      {"site's zones", [](auto& fit) { coating(fit).data.sites[0].zones.pop_back(); }},
      {"site's classes", [](auto& fit) { coating(fit).data.sites[0].zone_classes.clear(); }},
      {"class of a zone",
       [](auto& fit) {
         coating(fit).data.sites[0].zone_classes[0] = ZoneClass{static_cast<Category>(6), 0.4};
       }},
      {"site's runs", [](auto& fit) { coating(fit).data.sites[0].runs.clear(); }},
      {"part's site", [](auto& fit) { coating(fit).data.parts[3].site = 1000; }},
      {"part of another site",
       [](auto& fit) {
         coating(fit).data.parts.front().site = coating(fit).data.parts.back().site;
       }},
      {"part of no site",
       [](auto& fit) { coating(fit).data.parts.push_back(coating(fit).data.parts.back()); }},
      {"part's zone", [](auto& fit) { coating(fit).data.parts[3].zone = -1; }},
      {"part's run", [](auto& fit) { coating(fit).data.parts[3].run = far; }},
      {"part's kind", [](auto& fit) { coating(fit).data.parts[3].kind = 4; }},
      {"part without a segment", [](auto& fit) { coating(fit).data.parts[3].segments = 0; }},
      {"part's segments", [](auto& fit) { coating(fit).data.parts[3].first_segment = far; }},
      {"part's exposure",
       [](auto& fit) { coating(fit).data.parts[3].exposure = static_cast<Exposure>(4); }},
      {"segment's part", [](auto& fit) { coating(fit).data.segments[2].part = -7; }},
      {"segment's means", [](auto& fit) { coating(fit).data.segments[2].count = far; }},
      {"segment's first mean", [](auto& fit) { coating(fit).data.segments[2].first = -1; }},
      {"readings over rust", [](auto& fit) { coating(fit).data.segments[2].over_rust = 3000; }},
      {"the next best", [](auto& fit) { coating(fit).data.segments[2].over_rust_next = -1; }},
      {"visible means", [](auto& fit) { coating(fit).data.segments[2].visible = far; }},
      {"kind of start",
       [](auto& fit) { coating(fit).data.segments[2].start_kind = static_cast<StartKind>(-1); }},
      {"mean's session", [](auto& fit) { coating(fit).data.means[0].session = far; }},
      {"mean of another site",
       [](auto& fit) {
         coating(fit).data.means[0].session =
             static_cast<std::int32_t>(coating(fit).data.sessions.size()) - 1;
       }},
      {"mean's grade", [](auto& fit) { coating(fit).data.means[0].grade = 6; }},
      {"mean's surface",
       [](auto& fit) { coating(fit).data.means[0].surface = static_cast<SeenSurface>(9); }},
      {"session's site", [](auto& fit) { coating(fit).data.sessions[0].site = 99; }},
      {"session's inspector", [](auto& fit) { coating(fit).data.sessions[0].inspector = 99; }},
      {"effects of a site", [](auto& fit) { coating(fit).effects.sites.pop_back(); }},
      {"core of a site", [](auto& fit) { coating(fit).effects.sites[0].core.pop_back(); }},
      {"covariance", [](auto& fit) { coating(fit).effects.sites[0].covariance.clear(); }},
      {"runs", [](auto& fit) { coating(fit).effects.sites[0].runs.clear(); }},
      {"runs' covariance", [](auto& fit) { coating(fit).effects.sites[0].run_cross.pop_back(); }},
      {"batches", [](auto& fit) { coating(fit).effects.sites[0].run_covariance.clear(); }},
      {"drifts of gauges", [](auto& fit) { coating(fit).effects.sites[0].drift_um.clear(); }},
      {"habits", [](auto& fit) { coating(fit).effects.habits_um.push_back(0); }},
      {"reports of sessions", [](auto& fit) { fit.sessions.pop_back(); }},
  };
}

std::vector<Forgery> of_grades() {
  return {
      {"site's parts", [](auto& fit) { fit.others.grades.data.sites[0].parts = far; }},
      {"part's site", [](auto& fit) { fit.others.grades.data.parts[1].site = -1; }},
      {"part of another site",
       [](auto& fit) {
         auto& parts = fit.others.grades.data.parts;
         parts.front().site = parts.back().site;
       }},
      {"part's zone", [](auto& fit) { fit.others.grades.data.parts[1].zone = 50; }},
      {"part without a segment", [](auto& fit) { fit.others.grades.data.parts[1].segments = 0; }},
      {"part's kind",
       [](auto& fit) { fit.others.grades.data.parts[1].kind = static_cast<PartKind>(77); }},
      {"part's material",
       [](auto& fit) { fit.others.grades.data.parts[1].material = static_cast<Material>(5); }},
      {"segment's looks", [](auto& fit) { fit.others.grades.data.segments[1].count = far; }},
      {"segment without a start",
       [](auto& fit) { fit.others.grades.data.segments[1].starts.clear(); }},
      {"look's inspector", [](auto& fit) { fit.others.grades.data.looks[0].inspector = 1000; }},
      {"look's grade", [](auto& fit) { fit.others.grades.data.looks[0].seen = 0; }},
      {"look's worse grade", [](auto& fit) { fit.others.grades.data.looks[0].seen = 6; }},
      {"layout's parts", [](auto& fit) { fit.others.grades.layout.parts.pop_back(); }},
      {"layout's site", [](auto& fit) { fit.others.grades.layout.sites[0].zones = far; }},
      {"layout's runs", [](auto& fit) { fit.others.grades.layout.sites[0].runs = -1; }},
      {"layout's zone", [](auto& fit) { fit.others.grades.layout.parts[1].zone = -1; }},
      {"layout's terms", [](auto& fit) { fit.others.grades.layout.parts[1].global_terms = 9; }},
      {"layout's global", [](auto& fit) { fit.others.grades.layout.parts[1].globals[0] = 100; }},
      {"nodes", [](auto& fit) { fit.others.grades.settings.nodes = -5; }},
      {"endless nodes", [](auto& fit) { fit.others.grades.settings.nodes = far; }},
      {"effects", [](auto& fit) { fit.others.grades.fit.sites[0].core.clear(); }},
      {"globals", [](auto& fit) { fit.others.grades.fit.globals.clear(); }},
      {"globals' covariance", [](auto& fit) { fit.others.grades.fit.global_covariance.clear(); }},
      {"ratios", [](auto& fit) { fit.others.grades.fit.own.pop_back(); }},
      {"errors", [](auto& fit) { fit.others.grades.errors.clear(); }},
      {"counts", [](auto& fit) { fit.others.grades.counts.clear(); }},
  };
}

std::vector<Forgery> of_screws() {
  return {
      {"site's fittings", [](auto& fit) { fit.others.screws.data.sites[0].fittings = far; }},
      {"zones measured", [](auto& fit) { fit.others.screws.data.sites[0].zone_measured.clear(); }},
      {"fitting's zone", [](auto& fit) { fit.others.screws.data.fittings[0].zone = 9; }},
      {"fitting's run", [](auto& fit) { fit.others.screws.data.fittings[0].run = -1; }},
      {"screw never tightened",
       [](auto& fit) { fit.others.screws.data.fittings[0].screws[0].tightenings.clear(); }},
      {"tightening without a start",
       [](auto& fit) {
         fit.others.screws.data.fittings[0].screws[0].tightenings[0].starts.clear();
       }},
      {"layout's run", [](auto& fit) { fit.others.screws.layout.parts[0].run = far; }},
      {"effects of runs", [](auto& fit) { fit.others.screws.fit.sites[0].runs.clear(); }},
      {"wear", [](auto& fit) { fit.others.screws.fit.own.clear(); }},
      {"effects", [](auto& fit) { fit.others.screws.fit.sites.clear(); }},
  };
}

}  // namespace

TEST_CASE("a forged fit is refused, whatever it is forged in", "[forecast]") {
  REQUIRE(fits_together(read()));
  for (const auto& list : {of_coatings(), of_grades(), of_screws()})
    for (const Forgery& forgery : list) {
      INFO(forgery.what);
      PortfolioFit fit = read();
      forgery.forge(fit);
      CHECK_FALSE(fit_from_bytes(bytes_of(fit)));
    }
}

TEST_CASE("a fit of parts that the register lacks gives no rows", "[forecast]") {
  for (int which = 0; which < 3; ++which) {
    PortfolioFit fit = read();
    (which == 0   ? coating(fit).data.parts[0].place
     : which == 1 ? fit.others.grades.data.parts[0].place
                  : fit.others.screws.data.fittings[0].place) = far;
    const auto again = fit_from_bytes(bytes_of(fit));
    REQUIRE(again);
    const auto rows = rows_of(*again, kept().world, {.threads = 1});
    REQUIRE_FALSE(rows);
    CHECK(rows.error().fault == Fault::corrupt);
  }
}

TEST_CASE("rows of a limit that there is not are refused", "[forecast]") {
  ForecastRows rows;
  rows.limits.emplace_back().limit = Limit::grade_5;
  CHECK(rows_from_bytes(bytes_of(rows)));
  rows.limits[0].limit = static_cast<Limit>(8);
  CHECK_FALSE(rows_from_bytes(bytes_of(rows)));
  rows.limits[0].limit = static_cast<Limit>(-1);
  CHECK_FALSE(rows_from_bytes(bytes_of(rows)));
}

TEST_CASE("bytes changed by chance are refused or reckoned with", "[forecast][property]") {
  const auto seed = GENERATE(test::each_seed(1, 40));
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  std::string bytes = kept().bytes;
  for (int i = 0; i < 3; ++i)
    bytes[random.next() % bytes.size()] = static_cast<char>(random.next());
  const auto fit = fit_from_bytes(bytes);
  if (!fit) return;
  const auto rows = rows_of(*fit, kept().world, {.threads = 1});
  CHECK((rows || !rows.error().message.empty()));
}
