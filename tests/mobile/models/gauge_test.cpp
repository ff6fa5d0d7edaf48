// The gauge by itself: its zero, its check foil, and numbers that nobody waited for.

#include <QSignalSpy>
#include <catch2/catch.hpp>

#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr std::int64_t minute_ms = 60'000;
constexpr const char* checks =
    "SELECT count(*) FROM instrument_check WHERE what = 1 AND voided_by IS NULL";

GaugeCheck& check(Walking& walking) {
  return *walking.walk().check();
}

void press(Walking& walking, const QString& digits) {
  for (const QChar digit : digits) check(walking).digit(digit.digitValue());
  check(walking).nextSlot();
  walking.settle();
}

QString slot(Walking& walking, int slot, GaugeCheck::Role role = GaugeCheck::TextRole) {
  return check(walking).data(check(walking).index(slot), role).toString();
}

/// Reading and reference of the newest check, 0.1 um.
std::vector<std::int64_t> newest(Walking& walking, int what) {
  std::vector<std::int64_t> values;
  auto rows = walking.store().reader().tables().prepare(
      "SELECT reference, readings FROM instrument_check WHERE what = ?1 AND voided_by IS NULL "
      "ORDER BY t DESC, record DESC LIMIT 1");
  REQUIRE(rows);
  rows->bind(1, std::int64_t{what});
  if (!taken(rows->step())) return values;
  values.push_back(rows->is_null(0) ? -1 : rows->number(0));
  const cbor::Value list = taken(cbor::decode(rows->bytes(1)));
  for (const auto& value : *list.array()) values.push_back(*value.number());
  return values;
}

}  // namespace

TEST_CASE("a zero is a record, and its age counts from there", "[mobile][gauge]") {
  Walking walking;
  CHECK(walking.walk().gauge_old());
  CHECK(walking.walk().gauge_words() == "zero it soon");
  CHECK(check(walking).facts().startsWith("No zero of it is on record"));
  check(walking).begin(GaugeCheck::Zero);
  CHECK(check(walking).title() == "Gauge A2 · zero");
  check(walking).sign();
  press(walking, "2");
  CHECK(slot(walking, 0) == "-2");
  CHECK(walking.count("SELECT count(*) FROM draft") == 1);
  CHECK(walking.count(checks) == 0);
  check(walking).keep();
  walking.settle();
  CHECK(check(walking).what() == GaugeCheck::Nothing);
  CHECK(newest(walking, 1) == std::vector<std::int64_t>{-1, -20});
  CHECK(walking.count("SELECT count(*) FROM draft") == 0);
  CHECK_FALSE(walking.walk().gauge_old());
  walking.clock().move_on(70 * minute_ms);
  CHECK(walking.walk().gauge_words() == "1 h 10 min ago");
  CHECK(check(walking).facts() == "Zeroed or checked 1 h 10 min ago. Good for 4 hours.");
  CHECK(walking.walk().pen().entries_kept() == 1);
  walking.clock().move_on(171 * minute_ms);  // the rule set says 4 h
  CHECK(walking.walk().gauge_old());

  walking.walk().undo();
  walking.settle();
  CHECK(walking.count(checks) == 0);
  CHECK(check(walking).facts().startsWith("No zero of it is on record"));
  walking.walk().redo();
  walking.settle();
  CHECK(walking.count(checks) == 1);
}

TEST_CASE("a foil's value is typed once", "[mobile][gauge]") {
  Walking walking;
  check(walking).begin(GaugeCheck::Foil);
  CHECK_FALSE(check(walking).typed("51"));  // a reading says nothing before the foil's value
  check(walking).digit(5);
  check(walking).digit(0);
  CHECK(slot(walking, 0) == "5.0");  // with its tenth
  press(walking, "8");
  CHECK(slot(walking, 0) == "50.8");
  press(walking, "51");
  CHECK(check(walking).typed("52"));
  walking.settle();
  CHECK(check(walking).data(check(walking).index(2), GaugeCheck::KeptRole).toBool());
  CHECK(check(walking).summary() == "mean 51.5 µm");
  check(walking).keep();
  walking.settle();
  CHECK(newest(walking, 2) == std::vector<std::int64_t>{508, 510, 520});
  CHECK(check(walking).foil_words() == "foil of 50.8 µm");
  CHECK_FALSE(walking.walk().gauge_old());

  check(walking).begin(GaugeCheck::Foil);
  CHECK(slot(walking, 0) == "50.8");
  CHECK(check(walking).typed("50"));
  check(walking).keep();
  walking.settle();
  CHECK(newest(walking, 2) == std::vector<std::int64_t>{508, 500});
}

TEST_CASE("a check that is not in order makes no zero young", "[mobile][gauge]") {
  Walking walking;
  check(walking).begin(GaugeCheck::Zero);
  press(walking, "9");
  check(walking).sayInOrder(false);
  check(walking).keep();
  walking.settle();
  CHECK(walking.count("SELECT count(*) FROM instrument_check WHERE in_order = 0") == 1);
  CHECK(walking.walk().gauge_old());
  CHECK(walking.walk().message().contains("not in order"));
}

TEST_CASE("a gauge that is further off than its stated error is not in order", "[mobile][gauge]") {
  Walking walking;
  walking.switch_off();
  const WalkedSite& site = walking.site();
  // A gauge whose serial comes first is the one in the hand.
  walking.write_down({created(site.organisation, id_of(9, 7), 9, site.organisation,
                              {{1, 1}, {2, "A1"}, {3, 10}, {4, 20}})});
  walking.switch_on();
  check(walking).begin(GaugeCheck::Zero);
  press(walking, "2");
  CHECK(check(walking).in_order());
  CHECK(check(walking).summary() == "mean 2.0 µm · within its 2.0");
  check(walking).chooseSlot(0);
  press(walking, "3");
  CHECK_FALSE(check(walking).in_order());
  check(walking).sayInOrder(true);  // a person's word stands
  CHECK(check(walking).in_order());
}

TEST_CASE("a power cut in the middle of a check loses no reading", "[mobile][gauge]") {
  const std::uint64_t seed = GENERATE(1, 2, 3);
  INFO("seed " << seed);
  Walking walking;
  check(walking).begin(GaugeCheck::Foil);
  press(walking, "508");
  press(walking, "51");
  walking.cut_power(seed);
  CHECK(newest(walking, 2) == std::vector<std::int64_t>{508, 510});
  CHECK_FALSE(walking.walk().gauge_old());
}

TEST_CASE("what is typed in a check can be taken back and put back", "[mobile][gauge]") {
  Walking walking;
  check(walking).begin(GaugeCheck::Zero);
  press(walking, "1");
  check(walking).digit(2);
  CHECK(walking.walk().undo_words() == "2");
  walking.walk().undo();
  CHECK(walking.walk().undo_words() == "1");
  walking.walk().undo();
  walking.settle();
  CHECK(slot(walking, 0).isEmpty());
  CHECK(walking.count("SELECT count(*) FROM draft") == 0);
  walking.walk().redo();
  walking.settle();
  CHECK(slot(walking, 0) == "1");
  CHECK(walking.count("SELECT count(*) FROM draft") == 1);
}

TEST_CASE("a zero that could not be written stays, and is tried again", "[mobile][gauge]") {
  Walking walking;
  check(walking).begin(GaugeCheck::Zero);
  walking.disk().set_read_only(true);
  press(walking, "0");
  CHECK(walking.walk().not_kept());
  CHECK(check(walking).data(check(walking).index(0), GaugeCheck::NotKeptRole).toBool());
  walking.disk().set_read_only(false);
  walking.walk().tryAgain();
  walking.settle();
  CHECK_FALSE(walking.walk().not_kept());
  check(walking).keep();
  walking.settle();
  CHECK(walking.count(checks) == 1);
}

TEST_CASE("a number that waits can be thrown away, and comes back", "[mobile][gauge]") {
  Walking walking;
  walking.walk().typed("76");
  walking.walk().typed("81");
  walking.settle();
  CHECK(walking.walk().waiting_words() == "76 µm and 1 more waiting");
  QSignalSpy thrown(&walking.walk(), &WalkModel::thrownAway);
  walking.walk().throwAwayWaiting();
  walking.settle();
  CHECK(thrown.takeLast() == QVariantList{"76 µm"});
  CHECK(walking.walk().waiting_words() == "81 µm waiting");
  walking.walk().undo();
  walking.settle();
  CHECK(walking.walk().waiting_words() == "76 µm and 1 more waiting");
  walking.walk().redo();
  walking.walk().throwAwayWaiting();
  walking.settle();
  CHECK(walking.walk().waiting_words().isEmpty());
  walking.switch_off();
  walking.switch_on();
  CHECK(walking.walk().waiting_words().isEmpty());
  CHECK(walking.count("SELECT count(*) FROM reading WHERE kind = 21") == 4);
}

TEST_CASE("a number that waits needs a part to go to", "[mobile][gauge]") {
  Walking walking;
  walking.walk().typed("76");
  walking.walk().takeWaiting();
  CHECK(walking.walk().message() == "First touch the part it was read on.");
  walking.walk().choosePart(walking.tee(0));
  walking.walk().takeWaiting();
  CHECK(walking.slot(0) == "76");
  CHECK(walking.walk().waiting_words().isEmpty());
}
