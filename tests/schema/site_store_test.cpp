// What the list of sites shows, read from a small register.

#include "schema/store/site_store.h"

#include "tests/schema/register_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// The fixture's site grown to a run of four posts 2 m apart, under an owner's rules.
struct Grown {
  MadeRegister made;
  Site site;
  Uuid rules = id_of(11, 1);
  Uuid harbour = id_of(2, 9);
  Uuid pier = id_of(4, 9);
  std::vector<Uuid> posts;
  std::vector<Uuid> bays;

  Grown() {
    const cbor::Map limits{
        {7, cbor::Array{cbor::Array{2, 4, 365}, cbor::Array{1, 4, 730}, cbor::Array{2, 3, 700}}},
        {14, cbor::Map{{1, 50}, {3, 250}}}};
    save(created(site.organisation, rules, 11, site.organisation, {{1, "Harbour"}, {3, limits}}));
    save(created(site.organisation, harbour, 2, site.organisation, {{1, "Ferry"}, {6, rules}}));
    const Uuid zone = id_of(3, 9);
    save(created(harbour, zone, 3, harbour, {{1, "Slip"}, {2, 4}, {3, 3}}));
    save(created(harbour, pier, 4, zone, {{1, "Pier"}, {5, 1100}, {6, 2}, {9, 1}, {15, 1}}));
    save(created(harbour, id_of(4, 8), 4, zone, {{1, "Apron"}, {6, 9}, {9, 0}}));
    for (std::uint32_t i = 0; i < 4; ++i) {
      posts.push_back(id_of(5, 90 + i));
      save(created(
          harbour, posts[i], 5, pier,
          {{1, std::to_string(i + 1)}, {2, 6000 + 2000 * std::int64_t{i}}, {3, std::int64_t{i}}}));
    }
    for (std::uint32_t i = 0; i < 4; ++i)
      save(created(harbour, part(i), 7, posts[i], {{1, 5}, {3, cbor::Array{0, 1100}}, {4, 2}}));
    for (std::uint32_t i = 0; i < 3; ++i) {
      bays.push_back(id_of(6, 90 + i));
      save(created(harbour, bays[i], 6, pier, {{1, posts[i]}, {2, posts[i + 1]}, {3, 1}}));
      save(created(harbour, rail(i), 7, bays[i], {{1, 4}, {3, cbor::Array{1000, 550}}}));
    }
  }

  static Uuid part(std::uint32_t n) { return id_of(7, 90 + n); }
  static Uuid rail(std::uint32_t n) { return id_of(7, 190 + n); }
  Uuid save(const Entry& entry) { return taken(made.opened->save(entry)); }
  Uuid says(int kind, const Uuid& subject, cbor::Map body) {
    made.world.clock.move_on(60'000);
    return save({harbour, kind, subject, site.person, std::move(body), {}});
  }
  Uuid grade(const Uuid& visit, const Uuid& of, int grade) {
    return says(20, of, {{1, visit}, {2, grade}, {98, of}});
  }
  SiteBand band() {
    auto bands = taken(read_sites(made.opened->tables(), {}));
    for (SiteBand& own : bands)
      if (own.id == harbour) return std::move(own);
    FAIL("the site is not among the bands");
    return {};
  }
};

}  // namespace

TEST_CASE("a register without a site has no bands", "[schema][sites]") {
  Folder folder;
  World world;
  auto opened = taken(Register::open(world.options(folder.path(), Mode::create)));
  CHECK(taken(read_sites(opened->tables(), {})).empty());
}

TEST_CASE("a site of one post has a run without length", "[schema][sites]") {
  MadeRegister made;
  const auto bands = taken(read_sites(made.opened->tables(), {}));
  REQUIRE(bands.size() == 1);
  CHECK(bands[0].name == "North Mole");
  REQUIRE(bands[0].runs.size() == 1);
  CHECK(bands[0].runs[0].length_mm == 0);
  CHECK(bands[0].runs[0].posts == 1);
  CHECK(bands[0].parts == 3);
  CHECK(bands[0].runs[0].grades == GradeCounts{3, 0, 0, 0, 0, 0});
  CHECK_FALSE(bands[0].next_agreed);
  const Date day_utc = utc_day(Instant{made.world.clock.wall_ms});  // at 17:46
  CHECK(bands[0].last_visit == day_utc);
  const auto seven_hours_east = taken(TimeZone::from(7 * 3'600, {}, {}));
  CHECK(taken(read_sites(made.opened->tables(), seven_hours_east))[0].last_visit ==
        Date{day_utc.days + 1});
}

TEST_CASE("a band counts what stands in each run, and how it was graded last", "[schema][sites]") {
  Grown own;
  SiteBand band = own.band();
  CHECK(band.posts == 4);
  CHECK(band.parts == 7);
  CHECK(band.fittings == 4);
  CHECK(band.runs[1].fittings == 4);
  CHECK_FALSE(band.last_visit);
  REQUIRE(band.runs.size() == 2);
  CHECK(band.runs[0].name == "Apron");
  CHECK(band.runs[0].posts == 0);
  CHECK(band.runs[1].length_mm == 6000);
  REQUIRE(band.zones.size() == 1);
  CHECK(band.zones[0].category == 4);
  CHECK(band.zones[0].exposure == Exposure::spray);

  const Uuid visit = own.says(10, own.harbour, {{1, 1}});
  own.grade(visit, Grown::part(0), 2);
  own.grade(visit, Grown::part(1), 4);
  const Uuid wrong = own.grade(visit, Grown::part(1), 3);
  own.grade(visit, Grown::rail(2), 5);
  own.says(4, Grown::part(3), {{1, 1}});
  band = own.band();
  INFO("grade record " << to_text(wrong));
  CHECK(band.runs[1].grades[2] == 1);
  CHECK(band.runs[1].grades[5] == 1);
  CHECK(band.runs[1].grades[3] + band.runs[1].grades[4] == 1);
  CHECK(band.last_visit == utc_day(Instant{own.made.world.clock.wall_ms - 60'000}));
}

TEST_CASE("the owner's interval is that of a run's use and air", "[schema][sites]") {
  Grown own;
  const SiteBand band = own.band();
  CHECK(band.runs[1].longest_interval_days == 365);
  CHECK_FALSE(band.runs[0].longest_interval_days);
  CHECK(band.chance[static_cast<std::size_t>(Consequence::high)] == Approx(0.05));
  CHECK_FALSE(band.chance[static_cast<std::size_t>(Consequence::medium)]);
  CHECK(band.runs[1].consequence == Consequence::high);
}

TEST_CASE("the agreement that counts is the last one", "[schema][sites]") {
  Grown own;
  own.says(57, own.harbour, {{1, 22'000}, {2, 1}});
  own.says(57, own.harbour, {{1, 22'100}, {2, 1}});
  CHECK(own.band().next_agreed == Date{22'100});
}

TEST_CASE("a run that is down says what is still to be put back", "[schema][sites]") {
  Grown own;
  const Uuid strike = own.says(
      45, own.pier,
      {{1, 1}, {2, 22'050}, {4, cbor::Array{Grown::part(1), Grown::part(2), Grown::rail(1)}}});
  SiteBand band = own.band();
  REQUIRE(band.strikes.size() == 1);
  CHECK(band.strikes[0].run_name == "Pier");
  CHECK(band.strikes[0].re_erect_by == Date{22'050});
  CHECK(band.strikes[0].posts_to_put_back == 2);
  CHECK(band.strikes[0].screws_to_sign == 4);
  CHECK_FALSE(band.strikes[0].gap_open);
  own.says(46, Grown::rail(1), {{1, strike}, {2, 1}});
  CHECK(own.band().strikes[0].gap_open);
  for (std::uint32_t n = 1; n < 3; ++n) own.says(46, Grown::part(n), {{1, strike}, {2, 2}});
  band = own.band();
  REQUIRE(band.strikes.size() == 1);
  CHECK(band.strikes[0].posts_to_put_back == 0);
  CHECK(band.strikes[0].screws_to_sign == 4);
}

TEST_CASE("a bay that is closed twice over is one closed bay", "[schema][sites]") {
  Grown own;
  const Uuid visit = own.says(10, own.harbour, {{1, 1}});
  own.says(42, own.bays[0], {{1, 3}, {2, own.made.world.clock.wall_ms}, {4, 1}});
  const Uuid finding = own.says(30, own.bays[0], {{1, visit}, {2, 4}, {3, 5}, {4, true}, {7, 1}});
  SiteBand band = own.band();
  CHECK(band.bays_closed == 1);
  CHECK(band.hazards_open == 1);
  own.says(33, finding, {{1, cbor::Array{1}}});
  band = own.band();
  CHECK(band.bays_closed == 1);
  CHECK(band.hazards_open == 0);
}

TEST_CASE("a small elevation keeps rails and rust, and no other part", "[schema][sites]") {
  Grown own;
  const Uuid visit = own.says(10, own.harbour, {{1, 1}});
  own.grade(visit, Grown::part(0), 2);
  own.grade(visit, Grown::part(3), 4);
  own.says(30, Grown::part(1), {{1, visit}, {2, 4}, {3, 3}, {4, false}, {7, 2}});
  const RunSheet band = taken(read_band(own.made.opened->tables(), own.pier));
  CHECK(band.posts.size() == 4);
  CHECK(band.bays.size() == 3);
  REQUIRE(band.parts.size() == 2);
  CHECK(band.parts[0].role == Role::mid_rail);
  CHECK(band.parts[1].id == Grown::part(3));
  CHECK(band.parts[1].post == 3);
  REQUIRE(band.findings.size() == 1);
  CHECK(band.findings[0].post == 1);
  CHECK(read_band(own.made.opened->tables(), id_of(4, 77)).error().fault == Fault::not_found);
}
