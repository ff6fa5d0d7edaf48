// What decisions need of the owner, read from a small register.

#include "schema/store/owner_store.h"

#include "schema/store/visit_plan_store.h"
#include "tests/schema/register_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// The fixture's site with a depot, a type with price and lead time, rules and a seasonal run.
struct Owned {
  MadeRegister made;
  Site site;
  Uuid rules = id_of(11, 1);
  Uuid depot = id_of(12, 1);
  Uuid tee = id_of(8, 1);
  Uuid slip = id_of(2, 9);
  Uuid pier = id_of(4, 9);

  Owned() {
    const cbor::Map limits{{7, cbor::Array{cbor::Array{2, 4, 365}, cbor::Array{2, 3, 700}}},
                           {12, 950},
                           {15, 30},
                           {16, cbor::Map{{1, 45'000}, {3, 90'000}}}};
    save(created(site.organisation, rules, 11, site.organisation, {{1, "Harbour"}, {3, limits}}));
    save(created(site.organisation, depot, 12, site.organisation, {{1, "Quay"}}));
    save(created(site.organisation, tee, 8, site.organisation,
                 {{1, 1}, {4, 483}, {5, 40}, {9, 1420}, {10, 21}, {11, "Tee 48"}}));
    save(created(site.organisation, id_of(8, 2), 8, site.organisation, {{1, 6}}));
    save(created(site.organisation, slip, 2, site.organisation,
                 {{1, "Slip"}, {6, rules}, {9, depot}}));
    const Uuid zone = id_of(3, 9);
    save(created(slip, zone, 3, slip, {{1, "Slip"}, {2, 4}}));
    save(created(slip, pier, 4, zone, {{1, "Pier"}, {6, 2}, {8, true}}));
    save(created(slip, id_of(5, 90), 5, pier, {{1, "1"}, {2, 0}}));
    for (std::uint32_t i = 0; i < 6; ++i)
      save(created(slip, part(i), 7, id_of(5, 90), {{1, 5}, {2, tee}, {4, 2}}));
  }

  static Uuid part(std::uint32_t n) { return id_of(7, 90 + n); }
  Uuid save(const Entry& entry) { return taken(made.opened->save(entry)); }
  Uuid says(const Uuid& feed, int kind, const Uuid& subject, cbor::Map body) {
    made.world.clock.move_on(60'000);
    return save({feed, kind, subject, site.person, std::move(body), {}});
  }
  Uuid replace(std::uint32_t n, std::int64_t people, std::int64_t minutes) {
    return says(slip, 40, part(n), {{2, 3}, {13, people}, {14, minutes}});
  }
  forecast::OwnerFigures figures() {
    const Date today = utc_day(Instant{made.world.clock.wall_ms});
    return figures({}, today);
  }
  forecast::OwnerFigures figures(const TimeZone& zone, Date as_of) {
    return taken(read_owner_figures(made.opened->tables(), zone, as_of));
  }
};

}  // namespace

TEST_CASE("prices, lead times, costs and chances are the records' own", "[schema][owner]") {
  Owned own;
  const auto figures = own.figures();
  const auto& tee = figures.types.at(to_text(own.tee));
  CHECK(tee.name == "Tee 48");
  CHECK(tee.kind_and_size == "three-way tee, 48.3 × 4.0 mm");
  CHECK(tee.price == 14.2);
  CHECK(tee.lead_time_days == 21);
  CHECK_FALSE(tee.hours_per_replacement);
  const auto& bare = figures.types.at(to_text(id_of(8, 2)));
  CHECK_FALSE(bare.price);
  CHECK_FALSE(bare.lead_time_days);
  const auto& slip = figures.sites.at(to_text(own.slip));
  CHECK(slip.spare_chance == 0.95);
  CHECK(slip.discount_rate == 0.03);
  CHECK(slip.cost_of_visit == 450);
  CHECK_FALSE(slip.cost_of_hour);
  CHECK(slip.cost_of_closed_day == 900);
  CHECK(*slip.years_between_visits == Approx(365 / 365.25));
  CHECK_FALSE(slip.strikes_per_year);
  CHECK(figures.depots.at(to_text(own.depot)) == "Quay");
  CHECK(figures.seasonal_runs == std::set<std::string>{to_text(own.pier)});
  CHECK(figures.on_shelf.empty());
}

TEST_CASE("hours of a replacement come from five works or none", "[schema][owner]") {
  Owned own;
  for (std::uint32_t i = 0; i < 4; ++i) own.replace(i, 2, 30 + 30 * std::int64_t{i});
  CHECK_FALSE(own.figures().types.at(to_text(own.tee)).hours_per_replacement);
  own.replace(4, 2, 150);
  const auto figures = own.figures();
  const auto& tee = figures.types.at(to_text(own.tee));
  CHECK(tee.works_behind_hours == 5);
  CHECK(tee.hours_per_replacement == 3);  // median of 1, 2, 3, 4, 5
}

TEST_CASE("the shelf is what was counted and moved since", "[schema][owner]") {
  Owned own;
  own.says(own.site.organisation, 55, own.depot, {{1, own.tee}, {2, 7}, {3, 5}});
  own.says(own.site.organisation, 55, own.depot, {{1, own.tee}, {2, -2}, {3, 2}});
  CHECK(own.figures().on_shelf.at({to_text(own.depot), to_text(own.tee)}) == 5);
}

TEST_CASE("strikes tell what they break and take", "[schema][owner]") {
  Owned own;
  cbor::Array parts;
  for (std::uint32_t i = 0; i < 6; ++i) parts.emplace_back(Owned::part(i));
  const Uuid strike = own.says(own.slip, 45, own.pier, {{1, 1}, {4, std::move(parts)}});
  own.replace(2, 2, 60);                                                  // while down
  own.says(own.slip, 46, Owned::part(0), {{1, strike}, {2, 2}, {8, 2}});  // the same
  own.says(own.slip, 46, Owned::part(1), {{1, strike}, {2, 2}, {8, 3}});  // another one
  own.says(own.slip, 46, Owned::part(2), {{1, strike}, {2, 2}, {8, 2}});
  own.replace(0, 2, 60);  // long back
  own.says(own.slip, 48, strike, {{1, 4}, {2, 90}});
  own.says(own.slip, 48, strike, {{1, 2}, {2, 60}});
  const auto figures = own.figures();
  const auto& tee = figures.types.at(to_text(own.tee));
  CHECK(tee.struck == 6);
  CHECK(tee.replaced_at_re_erecting == 2);
  CHECK(figures.struck_types ==
        std::map<std::string, std::set<std::string>>{{to_text(own.pier), {to_text(own.tee)}}});
  CHECK(figures.sites.at(to_text(own.slip)).strikes_per_year == 1);
  CHECK(figures.sites.at(to_text(own.slip)).hours_per_strike == 8);
}

TEST_CASE("strikes and works are known from their day where the organisation is",
          "[schema][owner]") {
  Owned own;
  const Date day = utc_day(Instant{own.made.world.clock.wall_ms});
  own.says(own.slip, 45, own.pier, {{1, 1}, {4, cbor::Array{Owned::part(0)}}});  // 17:47 UTC
  const auto east = TimeZone::from(10 * 3600, {}, {});
  REQUIRE(east);
  const auto strikes = [&](const TimeZone& zone, Date as_of) {
    return own.figures(zone, as_of).sites.at(to_text(own.slip)).strikes_per_year;
  };
  CHECK(strikes({}, day) == 1);
  CHECK_FALSE(strikes(*east, day));  // there it is the next morning
  CHECK(strikes(*east, Date{day.days + 1}) == 1);
  for (std::uint32_t i = 1; i < 6; ++i)
    own.says(own.slip, 40, Owned::part(i), {{2, 3}, {9, day.days - 10}, {13, 1}, {14, 60}});
  const auto behind = [&](Date as_of) {
    return own.figures({}, as_of).types.at(to_text(own.tee)).works_behind_hours;
  };
  CHECK(behind(Date{day.days - 11}) == 0);
  CHECK(behind(Date{day.days - 10}) == 5);  // done then, entered today
}

TEST_CASE("an event stays open until somebody came for it", "[schema][owner]") {
  Owned own;
  const auto visits = [&] {
    const Date today = utc_day(Instant{own.made.world.clock.wall_ms});
    for (auto& site : taken(read_site_visits(own.made.opened->tables(), {}, today)))
      if (site.site == to_text(own.slip)) return site;
    FAIL("the site is not among those read");
    return forecast::SiteVisits{};
  };
  CHECK_FALSE(visits().last);
  CHECK(visits().longest_interval_days == 365);
  const std::int64_t now = own.made.world.clock.wall_ms;
  const Uuid flood = own.says(own.slip, 9, own.slip, {{1, 2}, {2, now}});
  REQUIRE(visits().events.size() == 1);
  CHECK(visits().events[0].what == "flood");
  CHECK(visits().events[0].day == utc_day(Instant{now}));
  CHECK_FALSE(visits().events[0].hours_allowed);
  own.says(own.slip, 10, own.slip, {{1, 1}});  // routine, not closed: not for the event
  CHECK(visits().events.size() == 1);
  own.says(own.slip, 10, own.slip, {{1, 3}, {5, flood}});
  CHECK(visits().events.empty());
  const std::int64_t ahead = own.made.world.clock.wall_ms + 20 * 86'400'000LL;
  const Uuid crowd = own.says(own.slip, 9, own.pier, {{1, 4}, {2, ahead}});
  REQUIRE(visits().events.size() == 1);
  CHECK(visits().events[0].what == "crowd");
  own.says(own.slip, 10, own.slip, {{1, 3}, {5, crowd}});  // the look before it
  CHECK(visits().events.empty());
  own.made.world.clock.move_on(21 * 86'400'000LL);
  CHECK(visits().events.size() == 1);  // it has been, and nobody came since
  own.says(own.slip, 10, own.slip, {{1, 3}});
  CHECK(visits().events.empty());
  CHECK(visits().last_any == utc_day(Instant{own.made.world.clock.wall_ms}));
  CHECK(visits().last == utc_day(Instant{now}));  // the routine one
}

namespace {

forecast::SiteVisits visits_of(Owned& own, const Uuid& at, Date as_of) {
  for (auto& site : taken(read_site_visits(own.made.opened->tables(), {}, as_of)))
    if (site.site == to_text(at)) return site;
  FAIL("the site is not among those read");
  return {};
}

}  // namespace

TEST_CASE("only a look at the whole begins the interval of the whole anew", "[schema][owner]") {
  Owned own;
  const Uuid mole = id_of(4, 10);
  own.save(created(own.slip, mole, 4, id_of(3, 9), {{1, "Mole"}, {6, 2}}));
  const auto now = [&] { return utc_day(Instant{own.made.world.clock.wall_ms}); };
  own.says(own.slip, 10, own.slip, {{1, 1}});
  const Date whole = now();
  own.made.world.clock.move_on(100 * 86'400'000LL);
  own.says(own.slip, 10, own.slip, {{1, 6}});  // a strike
  CHECK(visits_of(own, own.slip, now()).last == whole);
  CHECK(visits_of(own, own.slip, now()).last_any == now());
  own.says(own.slip, 10, own.slip, {{1, 1}, {3, cbor::Array{own.pier}}});  // of one of two runs
  const Date pier = now();
  CHECK(visits_of(own, own.slip, now()).last == whole);
  own.made.world.clock.move_on(86'400'000LL);
  own.says(own.slip, 10, own.slip, {{1, 1}, {3, cbor::Array{mole}}});  // and of the other
  CHECK(visits_of(own, own.slip, now()).last == pier);
}

TEST_CASE("rules and answers of later than the day asked are not known on it", "[schema][owner]") {
  Owned own;
  const auto now = [&] { return utc_day(Instant{own.made.world.clock.wall_ms}); };
  const Uuid rules = id_of(11, 2);
  const Uuid mole = id_of(2, 10);
  own.save(created(own.site.organisation, rules, 11, own.site.organisation,
                   {{1, "Later"},
                    {3, cbor::Map{{13, cbor::Map{{2, 48}}}}},
                    {4, std::int64_t{now().days} + 10}}));
  own.save(
      created(own.site.organisation, mole, 2, own.site.organisation, {{1, "Mole"}, {6, rules}}));
  const std::int64_t began = own.made.world.clock.wall_ms;
  const Date asked = now();
  own.says(mole, 9, mole, {{1, 2}, {2, began}});
  own.made.world.clock.move_on(20 * 86'400'000LL);
  own.says(mole, 10, mole, {{1, 3}});
  CHECK(visits_of(own, mole, now()).events.empty());
  const auto before = visits_of(own, mole, asked);
  REQUIRE(before.events.size() == 1);
  CHECK_FALSE(before.events[0].hours_allowed);
  const auto since = visits_of(own, mole, Date{asked.days + 10});
  REQUIRE(since.events.size() == 1);
  CHECK(since.events[0].hours_allowed == 48.0);
}
