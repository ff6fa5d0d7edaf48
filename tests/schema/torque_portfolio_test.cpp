// What the forecast of set screws needs of a register: readings with the wrench's setting, the
// restarts of each screw's clock, how many screws there are, and the owner's rules.

#include <algorithm>

#include "core/forecast/screws/screw_forecast.h"
#include "core/records/rule_set.h"
#include "core/records/torque_reading.h"
#include "schema/store/portfolio_store.h"
#include "tests/schema/register_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// The clock of the fixture stands at 2030-03-17.
const Date day_of_reading = date_from_text("2030-03-17").value();

/// A second site under a rule set, with one fitting of two screws.
struct RuledSite : MadeRegister {
  Uuid rules = id_of(11, 1);
  Uuid type = id_of(8, 1);
  Uuid ruled = id_of(2, 2);
  Uuid zone = id_of(3, 2);
  Uuid run = id_of(4, 2);
  Uuid post = id_of(5, 2);
  Uuid fitting = id_of(7, 9);
  Uuid wrench = id_of(9, 2);
  Uuid visit = id_of(20, 2);
  Uuid strike = id_of(45, 1);

  RuledSite() {
    const Uuid home = site.organisation;
    cbor::Map limits;
    limits.set(limit_key::torque_share_least, 700);
    limits.set(limit_key::limit_chance, cbor::Map{{1, 50}, {2, 100}});
    cbor::Map rule_fields{{1, "Harbour rules"}};
    rule_fields.set(3, std::move(limits));
    save({created(home, rules, 11, home, std::move(rule_fields)),
          created(home, type, 8, home, {{1, 5}, {2, 1}, {3, 1}, {6, 400}}),
          created(home, wrench, 9, home, {{1, 2}, {2, "T-7"}}),
          created(home, ruled, 2, home, {{1, "South Mole"}, {6, rules}}),
          created(ruled, zone, 3, ruled, {{1, "Town side"}, {2, 3}}),
          created(ruled, run, 4, zone, {{1, "Steps"}, {15, 2}}),
          created(ruled, post, 5, run, {{1, "1"}, {2, 1000}}),
          created(ruled, fitting, 7, post,
                  {{1, 5}, {2, type}, {4, 2}, {5, day_of_reading.days - 3000}}),
          {ruled, 10, ruled, site.person, {{1, 1}}, visit}});
  }

  void save(const std::vector<Entry>& entries) { taken(opened->save(entries)); }

  /// A torque check of one screw, 0.1 N m; as_left 0: nothing was tightened.
  void check(int screw, int found, Censoring censoring, int as_left) {
    cbor::Map body{{1, visit},
                   {2, wrench},
                   {3, screw},
                   {4, found},
                   {5, static_cast<int>(censoring)},
                   {6, censoring == Censoring::at_least ? 1 : 2}};
    if (as_left > 0) body.set(7, as_left);
    body.set(10, 300);
    body.set(98, fitting);
    save({{ruled, 22, fitting, site.person, std::move(body), {}}});
  }

  forecast::Portfolio portfolio() {
    auto read = taken(read_portfolio(opened->tables(), Date{day_of_reading.days + 400}));
    std::erase_if(read.limits, [&](const auto& own) { return own.site != to_text(ruled); });
    return read;
  }
};

const forecast::Part& fitting_of(const forecast::Portfolio& portfolio, const Uuid& id) {
  const auto found = std::find_if(portfolio.parts.begin(), portfolio.parts.end(),
                                  [&](const auto& part) { return part.id == to_text(id); });
  REQUIRE(found != portfolio.parts.end());
  return *found;
}

}  // namespace

TEST_CASE("a torque check comes to the forecast with its screw, bound and wrench setting",
          "[schema][torque]") {
  RuledSite made;
  made.check(1, 300, Censoring::at_least, 0);
  made.check(2, 220, Censoring::about, 400);
  const auto portfolio = made.portfolio();
  REQUIRE(portfolio.readings.size() == 2);
  for (const auto& reading : portfolio.readings) {
    CHECK(reading.quantity == forecast::Quantity::torque_nm);
    CHECK(reading.wrench_set_nm == 30.0);
    CHECK(portfolio.visits[static_cast<std::size_t>(reading.visit)].wrench == to_text(made.wrench));
    CHECK(reading.spot == (reading.value == 22 ? 2 : 1));
    CHECK(reading.censoring ==
          (reading.value == 22 ? forecast::Censoring::about : forecast::Censoring::at_least));
  }
  // A click restarts nothing; a screw tightened after it moved starts again.
  REQUIRE(portfolio.works.size() == 1);
  CHECK(portfolio.works[0].action == forecast::Action::retorque);
  CHECK(portfolio.works[0].screw == 2);
  CHECK(portfolio.works[0].as_left_nm == 40.0);
  CHECK(portfolio.works[0].day == day_of_reading);
}

TEST_CASE("screws, lowest torque and chance of the owner come from the register",
          "[schema][torque]") {
  RuledSite made;
  const auto portfolio = made.portfolio();
  const forecast::Part& part = fitting_of(portfolio, made.fitting);
  CHECK(part.screws == 2);
  CHECK(part.torque_target_nm == 40.0);
  CHECK(part.torque_minimum_nm == 28.0);
  CHECK(part.consequence == 2);
  REQUIRE(portfolio.limits.size() == 1);
  CHECK_FALSE(portfolio.limits[0].chance[0]);
  CHECK(portfolio.limits[0].chance[1] == 0.05);
  CHECK(portfolio.limits[0].chance[2] == 0.1);
  CHECK_FALSE(portfolio.limits[0].chance[3]);
}

TEST_CASE("re-torque, strike and replacement of a register restart the clocks",
          "[schema][torque]") {
  RuledSite made;
  const auto day = [](int before) { return day_of_reading.days - before; };
  made.save({{made.ruled,
              40,
              made.fitting,
              made.site.person,
              {{2, 1}, {4, 390}, {9, day(900)}, {12, 1}},
              {}},
             {made.ruled, 40, made.fitting, made.site.person, {{2, 3}, {9, day(500)}}, {}},
             {made.ruled, 40, made.fitting, made.site.person, {{2, 7}, {9, day(300)}}, {}},
             {made.ruled,
              45,
              made.run,
              made.site.person,
              {{1, 1}, {4, cbor::Array{made.fitting}}},
              made.strike},
             {made.ruled,
              46,
              made.fitting,
              made.site.person,
              {{1, made.strike}, {2, 3}, {3, 380}, {5, 2}, {7, 2}},
              {}}});
  const auto portfolio = made.portfolio();
  const auto data = forecast::gather_tightenings(portfolio);
  const auto fitting =
      std::find_if(data.fittings.begin(), data.fittings.end(), [&](const auto& own) {
        return portfolio.parts[static_cast<std::size_t>(own.place)].id == to_text(made.fitting);
      });
  REQUIRE(fitting != data.fittings.end());
  std::vector<double> first;
  for (const auto& tightening : fitting->screws[0].tightenings)
    first.push_back(tightening.as_left_nm);
  CHECK(first == std::vector<double>{40, 39, 40});
  std::vector<double> second;
  for (const auto& tightening : fitting->screws[1].tightenings)
    second.push_back(tightening.as_left_nm);
  CHECK(second == std::vector<double>{40, 40, 38});
  CHECK(fitting->screws[1].tightenings.back().strikes == 1);
}

TEST_CASE("a register's fitting is given the date to tighten it again", "[schema][torque]") {
  RuledSite made;
  made.check(1, 220, Censoring::about, 400);
  made.check(2, 300, Censoring::at_least, 0);
  const auto portfolio = made.portfolio();
  const auto report = taken(forecast::forecast_screws(portfolio));
  const auto row = std::find_if(report.fittings.begin(), report.fittings.end(),
                                [](const auto& own) { return own.answered; });
  REQUIRE(row != report.fittings.end());
  CHECK(portfolio.parts[static_cast<std::size_t>(row->part)].id == to_text(made.fitting));
  CHECK(row->screws == 2);
  CHECK(row->readings_used == 2);
  REQUIRE(row->retorque_by);
  CHECK(row->sentence.find("when the chance reaches 10 %") != std::string::npos);
}
