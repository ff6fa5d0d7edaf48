// What the forecast of walls needs of a register: what each tube has to carry, from its type, post,
// bay, run and the owner's rules; what is missing in words; and findings of tubes out of shape.

#include <algorithm>

#include "core/forecast/wall/wall_data.h"
#include "core/records/finding.h"
#include "core/records/rule_set.h"
#include "schema/store/portfolio_store.h"
#include "tests/schema/register_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

const Date day_of_finding = date_from_text("2030-03-17").value();  // the fixture's clock

/// What the register is made to say.
struct Says {
  cbor::Map type = {{1, 11}, {2, 1}, {3, 1}, {4, 483}, {5, 40}};
  cbor::Map run = {{1, "Steps"}, {5, 1'100}, {6, 2}};
  cbor::Map post = {{1, "2"}, {2, 2'500}, {6, 1'200}};
  cbor::Map limits = {{limit_key::line_load, cbor::Map{{2, 300}}}};
};

/// A run of three posts, 1.5 and 1.8 m apart, with a rail in its first bay.
struct LoadedSite : MadeRegister {
  Uuid rules = id_of(11, 1);
  Uuid type = id_of(8, 1);
  Uuid loaded = id_of(2, 2);
  Uuid zone = id_of(3, 2);
  Uuid run = id_of(4, 2);
  std::vector<Uuid> posts = {id_of(5, 2), id_of(5, 3), id_of(5, 4)};
  Uuid bay = id_of(6, 2);
  Uuid end_tube = id_of(7, 10);
  Uuid middle_tube = id_of(7, 11);
  Uuid rail = id_of(7, 12);
  Uuid visit = id_of(20, 2);

  explicit LoadedSite(Says says = {}) {
    const Uuid home = site.organisation;
    cbor::Map rule_fields{{1, "Harbour rules"}};
    rule_fields.set(3, std::move(says.limits));
    const auto tube = [&](const Uuid& id, const Uuid& parent, int role) {
      return created(loaded, id, 7, parent,
                     {{1, role}, {2, type}, {5, day_of_finding.days - 3000}});
    };
    save({created(home, rules, 11, home, std::move(rule_fields)),
          created(home, type, 8, home, std::move(says.type)),
          created(home, loaded, 2, home, {{1, "South Mole"}, {6, rules}}),
          created(loaded, zone, 3, loaded, {{1, "Town side"}, {2, 3}}),
          created(loaded, run, 4, zone, std::move(says.run)),
          created(loaded, posts[0], 5, run, {{1, "1"}, {2, 1'000}}),
          created(loaded, posts[1], 5, run, std::move(says.post)),
          created(loaded, posts[2], 5, run, {{1, "3"}, {2, 4'300}}),
          created(loaded, bay, 6, run, {{1, posts[0]}, {2, posts[1]}, {3, 1}}),
          tube(end_tube, posts[0], 1),
          tube(middle_tube, posts[1], 1),
          tube(rail, bay, 3),
          {loaded, 10, loaded, site.person, {{1, 1}}, visit}});
  }

  void save(const std::vector<Entry>& entries) { taken(opened->save(entries)); }

  forecast::Part part(const Uuid& id, int days_later = 400) {
    const auto read =
        taken(read_portfolio(opened->tables(), Date{day_of_finding.days + days_later}));
    const auto found = std::find_if(read.parts.begin(), read.parts.end(),
                                    [&](const auto& one) { return one.id == to_text(id); });
    REQUIRE(found != read.parts.end());
    return *found;
  }

  void find_fault(const Uuid& finding, const Uuid& subject, FindingKind what) {
    save({{loaded,
           Finding::kind,
           subject,
           site.person,
           {{1, visit}, {2, static_cast<int>(what)}, {3, 3}, {4, false}, {7, 1}},
           finding}});
  }
};

std::string why_not(Says says) {
  LoadedSite made(std::move(says));
  const forecast::Part part = made.part(made.middle_tube);
  CHECK_FALSE(part.carries);
  return part.load_not_known;
}

}  // namespace

TEST_CASE("what a tube carries comes from its type, post, bay, run and the owner's rules",
          "[schema][load]") {
  LoadedSite made;
  const forecast::Part middle = made.part(made.middle_tube);
  INFO(middle.load_not_known);
  REQUIRE(middle.carries);
  CHECK(middle.carries->member == structure::Member::post);
  CHECK(middle.carries->as_new.outside_mm == 48.3);
  CHECK(middle.carries->as_new.wall_mm == 4.0);
  CHECK(middle.carries->line_load_kn_per_m == 0.3);
  CHECK(middle.carries->spacing_m == 1.8);  // the wider of its bays
  CHECK(middle.carries->height_m == 1.2);   // its own
  CHECK(middle.carries->yield_mpa == structure::assumed_yield_mpa);
  CHECK(middle.yield_assumed);
  const forecast::Part end = made.part(made.end_tube);
  REQUIRE(end.carries);
  CHECK(end.carries->spacing_m == 1.5);
  CHECK(end.carries->height_m == 1.1);  // the run's
  const forecast::Part rail = made.part(made.rail);
  REQUIRE(rail.carries);
  CHECK(rail.carries->member == structure::Member::rail);
  CHECK(rail.carries->spacing_m == 1.5);
}

TEST_CASE("a strength that the owner set is taken", "[schema][load]") {
  Says says;
  says.type.set(14, 235);
  LoadedSite made(std::move(says));
  const forecast::Part tube = made.part(made.middle_tube);
  REQUIRE(tube.carries);
  CHECK(tube.carries->yield_mpa == 235);
  CHECK_FALSE(tube.yield_assumed);
}

TEST_CASE("what is missing of a tube's load is said and never assumed", "[schema][load]") {
  Says no_class;
  no_class.run = {{1, "Steps"}, {5, 1'100}};
  CHECK(why_not(std::move(no_class)) == "no load class is set for this run");
  Says other_class;
  other_class.run.set(6, 3);
  CHECK(why_not(std::move(other_class)) == "no line load is set for load class 3");
  Says no_load;
  no_load.limits = {{limit_key::zinc_gone, 50}};
  CHECK(why_not(std::move(no_load)) == "no line load is set for load class 2");
  Says no_wall;
  no_wall.type = {{1, 11}, {2, 1}, {3, 1}};
  CHECK(why_not(std::move(no_wall)) == "no diameter and wall are set for its type");
  Says no_height;
  no_height.run = {{1, "Steps"}, {6, 2}};
  no_height.post = {{1, "2"}, {2, 2'500}};
  CHECK(why_not(std::move(no_height)) == "no height is set for this post or run");
  Says no_place;
  no_place.post = {{1, "2"}, {6, 1'200}};
  CHECK(why_not(std::move(no_place)) == "no spacing of posts is known here");
}

TEST_CASE("the wall's row says what is missing, or the least wall it was reckoned to",
          "[schema][load]") {
  const auto tube = [](LoadedSite& made) {
    const auto read = taken(read_portfolio(made.opened->tables(), day_of_finding));
    const auto walls = forecast::prepare_walls(read);
    const auto found = std::find_if(walls.tubes.begin(), walls.tubes.end(), [&](const auto& one) {
      return read.parts[static_cast<std::size_t>(one.place)].id == to_text(made.middle_tube);
    });
    REQUIRE(found != walls.tubes.end());
    return *found;
  };
  Says says;
  says.run = {{1, "Steps"}, {5, 1'100}};
  LoadedSite missing(std::move(says));
  CHECK(tube(missing).why_not ==
        "no wall limit is set, and none can be reckoned: no load class is set for this run");
  LoadedSite whole;
  CHECK(tube(whole).why_not.empty());
  CHECK(tube(whole).limit_reckoned);
  CHECK(tube(whole).limit_mm > 2);
  Says crowded;
  crowded.limits = {{limit_key::line_load, cbor::Map{{2, 3'000}}}};
  LoadedSite weak(std::move(crowded));
  CHECK(tube(weak).why_not == "no reserve; refer to an engineer");
}

TEST_CASE("a finding of a bend, a split or a knock takes a tube out of the wall's forecast",
          "[schema][load]") {
  LoadedSite made;
  CHECK_FALSE(made.part(made.middle_tube).out_of_shape);
  made.find_fault(id_of(30, 1), made.middle_tube, FindingKind::rust);
  CHECK_FALSE(made.part(made.middle_tube).out_of_shape);
  made.find_fault(id_of(30, 2), made.middle_tube, FindingKind::bent);
  CHECK(made.part(made.middle_tube).out_of_shape);
  CHECK_FALSE(made.part(made.middle_tube, -1).out_of_shape);  // as known the day before
  CHECK_FALSE(made.part(made.end_tube).out_of_shape);
  made.find_fault(id_of(30, 3), made.bay, FindingKind::knocked);
  CHECK(made.part(made.rail).out_of_shape);
  made.save({{made.loaded,
              FindingEnded::kind,
              id_of(30, 2),
              made.site.person,
              {{1, static_cast<int>(HowEnded::repaired)}, {4, cbor::Array{}}},
              {}}});
  CHECK_FALSE(made.part(made.middle_tube).out_of_shape);
  made.find_fault(id_of(30, 4), made.end_tube, FindingKind::split);
  CHECK(made.part(made.end_tube).out_of_shape);
  made.save({{made.loaded, 71, id_of(30, 4), made.site.person, {{1, "wrong tube"}}, {}}});
  CHECK_FALSE(made.part(made.end_tube).out_of_shape);
}

TEST_CASE("a tube put up in place of a bent one is projected again", "[schema][load]") {
  LoadedSite made;
  made.save({{made.loaded,
              Finding::kind,
              made.middle_tube,
              made.site.person,
              {{1, made.visit},
               {2, static_cast<int>(FindingKind::bent)},
               {3, 4},
               {4, false},
               {7, 1},
               {98, made.middle_tube}},
              id_of(30, 1)}});
  CHECK(made.part(made.middle_tube).out_of_shape);
  made.world.clock.move_on(100 * 86'400'000LL);
  made.save({{made.loaded,
              40,
              made.middle_tube,
              made.site.person,
              {{1, made.visit}, {2, 3}, {3, made.middle_tube}},
              {}}});
  CHECK_FALSE(made.part(made.middle_tube).out_of_shape);
  CHECK(made.part(made.middle_tube, 99).out_of_shape);  // as known before it was replaced
  CHECK_FALSE(made.part(made.middle_tube, 100).out_of_shape);
}

TEST_CASE("reports issued come with their site and day, as known on the day asked",
          "[schema][load]") {
  LoadedSite made;
  const Date day{day_of_finding.days - 20};
  const auto issue = [&](const Uuid& id, std::optional<Date> on) {
    cbor::Map body{{1, cbor::Array{made.visit}}, {2, cbor::Array{5}}};
    body.set(3, std::vector<std::uint8_t>(32, 7));
    if (on) body.set(4, on->days);
    made.save({{made.loaded, 56, made.loaded, made.site.person, std::move(body), id}});
  };
  issue(id_of(56, 1), std::nullopt);
  issue(id_of(56, 2), day);
  const auto reports = [&](Date as_of) {
    return taken(read_portfolio(made.opened->tables(), as_of)).reports;
  };
  const auto both = reports(day_of_finding);
  REQUIRE(both.size() == 2);
  CHECK(both[0].day == day);
  CHECK(both[1].day == day_of_finding);
  CHECK(both[0].site == to_text(made.loaded));
  CHECK(reports(day).size() == 1);
  made.save({{made.loaded, 71, id_of(56, 2), made.site.person, {{1, "wrong file"}}, {}}});
  CHECK(reports(day).empty());
}
