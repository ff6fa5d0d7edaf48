// Readings stay as they were written; what is reckoned and shown follows the calibrations.

#include "schema/store/portfolio_store.h"
#include "schema/store/visit_store.h"
#include "tests/schema/register_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// The clock of the fixture stands at 2030-03-17.
const Date day_of_reading = date_from_text("2030-03-17").value();

void save(MadeRegister& made, const Entry& entry) {
  taken(made.opened->save(std::vector<Entry>{entry}));
}

/// By the person of the site, in the organisation's feed.
Entry said(const Site& site, int kind, const Uuid& subject, cbor::Map body) {
  return {site.organisation, kind, subject, site.person, std::move(body), {}};
}

Entry calibration(const Site& site, Date from, cbor::Array corrections) {
  cbor::Map body{{1, from.days}, {2, from.days + 365}};
  body.set(5, std::move(corrections));
  return said(site, 51, site.gauge, std::move(body));
}

struct Read {
  std::vector<double> values_um;
  double certificate_um = 0;
};
Read forecast_values(Register& opened) {
  const auto all = taken(read_portfolio(opened.tables(), Date{day_of_reading.days + 400}));
  Read read;
  for (const auto& one : all.readings) {
    read.values_um.push_back(one.value);
    read.certificate_um = one.certificate_add;
  }
  return read;
}

std::vector<std::int64_t> shown(MadeRegister& made) {
  Database& tables = made.opened->tables();
  const Uuid& part = made.site.components[0];
  const auto last = taken(
      last_coating(tables, {part, part, 1}, id_of(20, 99), taken(readings_put_right(tables))));
  REQUIRE(last.has_value());
  return last->replicates_tenth_um;
}

std::string raw(Register& opened) {
  auto row = taken(opened.tables().prepare(
      "SELECT group_concat(hex(replicates) || v1) FROM reading WHERE kind = 21"));
  REQUIRE(taken(row.step()));
  return std::string(row.text(0));
}

}  // namespace

TEST_CASE("a calibration written later changes what its time's readings count",
          "[schema][calibration]") {
  MadeRegister made;
  save(made, coating(made.site, 0));  // 70.0, 71.2, 69.3 um
  const std::string as_written = raw(*made.opened);
  REQUIRE(forecast_values(*made.opened).values_um == std::vector{70.0, 71.2, 69.3});

  // By hand: at 50.0 um take 1.0 off, at 90.0 um take 3.0 off; at 70.0 that is
  // -1.0 - 2.0 * 20.0 / 40.0 = -2.0; at 71.2 -1.0 - 2.0 * 21.2 / 40.0 = -2.06; at 69.3 -1.965.
  save(made, calibration(made.site, Date{day_of_reading.days - 30},
                         cbor::Array{cbor::Array{500, -10}, cbor::Array{900, -30}}));
  const Read read = forecast_values(*made.opened);
  REQUIRE(read.values_um.size() == 3);
  CHECK(read.values_um[0] == Approx(68.0));
  CHECK(read.values_um[1] == Approx(69.14));
  CHECK(read.values_um[2] == Approx(67.335));
  CHECK(read.certificate_um == Approx(-1.965));
  CHECK(shown(made) == std::vector<std::int64_t>{680, 691, 673});
  CHECK(raw(*made.opened) == as_written);

  SECTION("another one, of a day after the reading, does not") {
    save(made,
         calibration(made.site, Date{day_of_reading.days + 1}, cbor::Array{cbor::Array{500, 300}}));
    CHECK(forecast_values(*made.opened).values_um[0] == Approx(68.0));
  }
  SECTION("one of the very day does") {
    save(made, calibration(made.site, day_of_reading, cbor::Array{cbor::Array{500, 15}}));
    CHECK(forecast_values(*made.opened).values_um[0] == Approx(71.5));
    CHECK(shown(made) == std::vector<std::int64_t>{715, 727, 708});
  }
}

TEST_CASE("a calibration that was corrected or taken back counts as it is now",
          "[schema][calibration]") {
  MadeRegister made;
  save(made, coating(made.site, 0));
  Entry entry = calibration(made.site, day_of_reading, cbor::Array{cbor::Array{500, -10}});
  entry.id = id_of(51, 1);
  save(made, entry);
  REQUIRE(forecast_values(*made.opened).values_um[0] == Approx(69.0));
  SECTION("its numbers were misread") {
    cbor::Map corrected;
    corrected.set(5, cbor::Array{cbor::Array{500, 10}});
    cbor::Map body{{2, "the sign was misread"}, {3, cbor::Array{}}};
    body.set(1, corrected);
    save(made, said(made.site, 70, *entry.id, body));
    CHECK(forecast_values(*made.opened).values_um[0] == Approx(71.0));
  }
  SECTION("it was of another gauge") {
    cbor::Map body;
    body.set(1, "of another gauge");
    save(made, said(made.site, 71, *entry.id, body));
    CHECK(forecast_values(*made.opened).values_um[0] == Approx(70.0));
  }
}

TEST_CASE("a check foil is put right with its gauge's readings", "[schema][calibration]") {
  // Else the fit would find the gauge's error a second time. A foil of 75.0 um was read as 78.0;
  // the certificate takes 2.0 off at every value.
  MadeRegister made;
  Entry foil = said(made.site, 50, made.site.gauge,
                    {{1, made.site.visit}, {2, 2}, {3, 750}, {4, cbor::Array{780}}, {5, true}});
  foil.feed = made.site.site;
  save(made, foil);
  save(made, coating(made.site, 0));
  save(made, calibration(made.site, day_of_reading, cbor::Array{cbor::Array{500, -20}}));
  const auto all = taken(read_portfolio(made.opened->tables(), Date{day_of_reading.days + 1}));
  REQUIRE(all.visits.size() == 1);
  CHECK(all.visits[0].foil_true_um.value_or(0) == Approx(75.0));
  CHECK(all.visits[0].foil_read_um.value_or(0) == Approx(76.0));
  REQUIRE(all.readings.size() == 3);
  CHECK(all.readings[0].value == Approx(68.0));
}

TEST_CASE("a doubt's shift is added, and without one the readings are kept back",
          "[schema][calibration]") {
  MadeRegister made;
  save(made, coating(made.site, 0));
  const std::int64_t from_ms = noon_utc(day_of_reading).ms - 86'400'000;
  cbor::Map doubt{{1, from_ms}, {3, "came back reading high"}};
  SECTION("with a shift") {
    doubt.set(4, -70);
    save(made, said(made.site, 52, made.site.gauge, doubt));
    CHECK(forecast_values(*made.opened).values_um[0] == Approx(63.0));
    CHECK(shown(made)[0] == 630);
  }
  SECTION("without") {
    save(made, said(made.site, 52, made.site.gauge, doubt));
    const auto all = taken(read_portfolio(made.opened->tables(), Date{day_of_reading.days + 1}));
    CHECK(all.readings.empty());
    REQUIRE(all.left_out.size() == 3);
    CHECK(all.left_out[0].reason == "in_doubt");
    CHECK(shown(made)[0] == 700);
  }
}

TEST_CASE("what a gauge read after a check that was not in order is kept and marked",
          "[schema][calibration]") {
  MadeRegister made;
  const auto check = [&](int what, bool in_order, const Uuid& visit) {
    cbor::Map body{{2, what}, {4, cbor::Array{what == 1 ? 30 : 780}}, {5, in_order}};
    if (what == 2) body.set(3, 500);
    if (!visit.is_zero()) body.set(1, visit);
    Entry entry = said(made.site, 50, made.site.gauge, std::move(body));
    entry.feed = made.site.site;
    save(made, entry);
    made.world.clock.move_on(1000);
  };
  const auto read = [&] {
    save(made, coating(made.site, 0));
    made.world.clock.move_on(1000);
  };
  const auto marked = [&] {
    const auto all = taken(read_portfolio(made.opened->tables(), Date{day_of_reading.days + 1}));
    REQUIRE(all.visits.size() == 1);
    CHECK(all.readings.size() == 3);
    CHECK(all.left_out.empty());
    return all.visits[0].gauge_not_in_order;
  };
  SECTION("a foil of the visit") {
    check(2, false, made.site.visit);
    read();
    CHECK(marked());
  }
  SECTION("a zero of that day, outside of the visit") {
    check(1, false, {});
    read();
    CHECK(marked());
  }
  SECTION("after use") {
    read();
    CHECK_FALSE(marked());
    check(5, false, made.site.visit);
    CHECK(marked());
  }
  SECTION("zeroed again and in order before it read") {
    check(2, false, made.site.visit);
    check(1, true, made.site.visit);
    read();
    CHECK_FALSE(marked());
  }
  SECTION("in order again only after it read") {
    check(2, false, made.site.visit);
    read();
    check(2, true, made.site.visit);
    CHECK(marked());
  }
}
