// The register is checked behind what is shown: nothing asked meanwhile is lost, and what the
// checks change is told.

#include <QCoreApplication>
#include <QSignalSpy>
#include <atomic>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

#include "mobile/screens/rooms.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

std::unique_ptr<StoreLink> open_behind(SiteFolder& folder) {
  return taken(StoreLink::open(folder.options(), StoreLink::Checks::behind));
}

/// Last year's readings asked for at once; what was answered.
std::optional<Result<>> answer_to_entries(StoreLink& link, const WalkedSite& site) {
  std::optional<Result<>> answer;
  link.save(site.last_year(), std::nullopt, [&answer](const Result<>& told) { answer = told; });
  CHECK_FALSE(answer);
  link.settle();
  QCoreApplication::processEvents();
  return answer;
}

std::int64_t readings(StoreLink& link) {
  return taken(link.reader().tables().number("SELECT count(*) FROM reading"));
}

}  // namespace

TEST_CASE("what is asked while the register is checked is kept", "[mobile][models]") {
  SiteFolder folder(false);
  const auto link = open_behind(folder);
  const QSignalSpy checked(link.get(), &StoreLink::checked);
  CHECK(link->writable());
  CHECK(readings(*link) == 0);
  const auto answer = answer_to_entries(*link, folder.site());
  REQUIRE(answer);
  CHECK(*answer);
  CHECK(readings(*link) > 0);
  REQUIRE(checked.size() == 1);
  CHECK(checked[0][0].toBool());
}

TEST_CASE("what the checks mend is told, and what was asked is kept", "[mobile][models]") {
  SiteFolder folder(false);
  std::ofstream(folder.path() / "unsent.copy", std::ios::trunc) << "not what stood here";
  const auto link = open_behind(folder);
  const QSignalSpy checked(link.get(), &StoreLink::checked);
  const auto answer = answer_to_entries(*link, folder.site());
  REQUIRE(answer);
  CHECK(*answer);
  REQUIRE(checked.size() == 1);
  CHECK_FALSE(checked[0][0].toBool());
  CHECK(link->writable());
  CHECK_FALSE(link->opening().notes.empty());
}

TEST_CASE("a register in use elsewhere is found out behind and refuses", "[mobile][models]") {
  SiteFolder folder(false);
  const auto elsewhere = taken(Register::open(folder.options()));
  const auto link = open_behind(folder);
  const QSignalSpy checked(link.get(), &StoreLink::checked);
  const auto answer = answer_to_entries(*link, folder.site());
  REQUIRE(answer);
  REQUIRE_FALSE(*answer);
  CHECK(answer->error().message == link->why_read_only());
  CHECK(readings(*link) == 0);
  REQUIRE(checked.size() == 1);
  CHECK_FALSE(checked[0][0].toBool());
  CHECK_FALSE(link->writable());
}

TEST_CASE("what was typed into a register in use elsewhere stays on the screen",
          "[mobile][models]") {
  SiteFolder folder(true);
  const auto elsewhere = taken(Register::open(folder.options()));
  const auto rooms = taken(Rooms::open(folder.options(), StoreLink::Checks::behind));
  WalkModel& walk = rooms->walk();
  walk.open(folder.site().run, folder.site().tees.front());
  walk.chooseGrade(3);
  rooms->store().settle();
  QCoreApplication::processEvents();
  CHECK_FALSE(rooms->store().writable());
  CHECK(walk.not_kept());
  CHECK_FALSE(rooms->may_be_made_again());
}

TEST_CASE("digits of a number that is not finished stay on the screen too", "[mobile][models]") {
  SiteFolder folder(true);
  const auto elsewhere = taken(Register::open(folder.options()));
  const auto rooms = taken(Rooms::open(folder.options(), StoreLink::Checks::behind));
  WalkModel& walk = rooms->walk();
  walk.open(folder.site().run, folder.site().tees.front());
  walk.openPad(WalkModel::CoatingPad);
  walk.coating()->digit(7);
  REQUIRE(walk.writable());
  const QSignalSpy told(&walk, &WalkModel::writableChanged);
  rooms->store().check();
  rooms->store().settle();
  QCoreApplication::processEvents();
  CHECK_FALSE(walk.writable());
  CHECK(told.size() == 1);
  CHECK_FALSE(rooms->may_be_made_again());
  CHECK(walk.message().contains("stays on this screen"));
  walk.coating()->digit(4);  // the keys are gone
  walk.coating()->backspace();
  CHECK(walk.coating()->pending() == "7");
}

TEST_CASE("a draft that waits is closed before anything is read", "[mobile][models]") {
  SiteFolder folder(false);
  {
    auto opened = taken(Register::open(folder.options()));
    const Entry grade = folder.site().last_year().back();
    taken(opened->save_draft({grade.feed, grade.kind, grade.subject, 0, grade.who, grade.body}));
  }
  const auto link = open_behind(folder);
  CHECK(link->opening().drafts_closed == 1);
}

TEST_CASE("the checks behind begin when they are called for", "[mobile][models]") {
  SiteFolder folder(false);
  const auto link = open_behind(folder);
  const QSignalSpy checked(link.get(), &StoreLink::checked);
  link->settle();  // nothing was asked: nothing to wait for
  CHECK(checked.empty());
  link->check();
  link->settle();
  REQUIRE(checked.size() == 1);
  CHECK(checked[0][0].toBool());
}

TEST_CASE("a register that was read ahead is the one that is shown", "[mobile][models]") {
  SiteFolder folder(true);
  const auto link = taken(StoreLink::open(folder.options(), StoreLink::Checks::behind,
                                          StoreLink::read_ahead(folder.options())));
  CHECK(readings(*link) > 0);
  link->check();
  link->settle();
  CHECK(link->writable());
}

TEST_CASE("a register that cannot be read ahead is the error of opening it", "[mobile][models]") {
  SiteFolder folder(false);
  auto options = folder.options();
  options.folder = folder.path() / "elsewhere";
  const auto link =
      StoreLink::open(options, StoreLink::Checks::behind, StoreLink::read_ahead(options));
  REQUIRE_FALSE(link);
  CHECK_THAT(link.error().message, Catch::Contains("There is no register here"));
}

namespace {

/// Somebody walked to a tee and gave it a grade.
void walk_to_a_tee(SiteFolder& folder) {
  const auto rooms = taken(Rooms::open(folder.options()));
  rooms->walk().open(folder.site().run, folder.site().tees[1]);
  rooms->walk().chooseGrade(3);
  rooms->place().keep();
}

std::unique_ptr<Rooms> open_ahead(const Register::Options& options) {
  auto rooms =
      taken(Rooms::open(options, StoreLink::Checks::behind, StoreLink::read_ahead(options)));
  REQUIRE(rooms->place().restore());
  return rooms;
}

RunSheet read_whole(Rooms& rooms) {
  WalkModel& walk = rooms.walk();
  return taken(
      read_run(rooms.store().reader().tables(), walk.run()->sheet()->id, walk.pen().visit()));
}

}  // namespace

TEST_CASE("the run that was walked last is read ahead, for one who asks", "[mobile][models]") {
  SiteFolder folder(true);
  walk_to_a_tee(folder);
  const auto link = taken(StoreLink::open(folder.options(), StoreLink::Checks::behind,
                                          StoreLink::read_ahead(folder.options())));
  const auto ahead = link->take_walked_last();
  REQUIRE(ahead);
  CHECK(ahead->id == folder.site().run);
  CHECK_FALSE(ahead->visit.is_zero());
  CHECK_FALSE(link->take_walked_last());
}

TEST_CASE("the walk goes on from what was read ahead", "[mobile][models]") {
  SiteFolder folder(true);
  walk_to_a_tee(folder);
  const auto rooms = open_ahead(folder.options());
  CHECK(*rooms->walk().run()->sheet() == read_whole(*rooms));
  CHECK(rooms->walk().grade_now() == 3);
  rooms->walk().chooseGrade(4);
  rooms->store().settle();
  QCoreApplication::processEvents();
  CHECK(*rooms->walk().run()->sheet() == read_whole(*rooms));
  rooms->walk().open(folder.site().run);
  CHECK(*rooms->walk().run()->sheet() == read_whole(*rooms));
}

TEST_CASE("on another day the run read ahead is before the first entry", "[mobile][models]") {
  SiteFolder folder(true);
  walk_to_a_tee(folder);
  auto options = folder.options();
  SteadyClock tomorrow;
  constexpr std::int64_t day_ms = 24LL * 60 * 60 * 1000;
  tomorrow.move_on(day_ms);
  options.clock = &tomorrow;
  const auto rooms = open_ahead(options);
  CHECK(*rooms->walk().run()->sheet() == read_whole(*rooms));
  CHECK(rooms->walk().grade_now() == 0);
  CHECK(rooms->walk().last_grade() == 3);
}

TEST_CASE("closing leaves off checks that nothing waits for", "[mobile][models]") {
  SiteFolder folder(true);
  const std::string copy = (folder.path() / "unsent.copy").string();
  const auto rooms_open = [&] {
    return taken(Rooms::open(folder.options(), StoreLink::Checks::behind));
  };
  {
    const auto rooms = rooms_open();
    rooms->walk().open(folder.site().run, folder.site().tees.front());
    const QSignalSpy checked(&rooms->store(), &StoreLink::checked);
    rooms->store().check();
    rooms->store().close();
    QCoreApplication::processEvents();
    CHECK(checked.empty());
  }
  // Nothing was set aside, nothing is open any more, and the next opening finds all.
  CHECK_FALSE(std::filesystem::exists(copy + ".damaged-1"));
  const auto again = taken(Register::open(folder.options()));
  CHECK(again->opening().writable);
  CHECK(again->opening().notes.empty());
  CHECK(taken(again->verify()).problems.empty());
}

TEST_CASE("closing waits for the checks where an entry waits for them", "[mobile][models]") {
  SiteFolder folder(false);
  {
    const auto link = open_behind(folder);
    link->save(folder.site().last_year(), std::nullopt, [](const Result<>&) {});
    link->close();
  }
  const auto again = taken(Register::open(folder.options()));
  CHECK(taken(again->tables().number("SELECT count(*) FROM reading")) > 0);
}

TEST_CASE("a check that is stopped mends nothing, whatever it has seen", "[mobile][models]") {
  SiteFolder folder(true);
  const std::atomic<bool> stop = true;
  auto options = folder.options();
  options.stop = &stop;
  const auto stopped = Register::open(options);
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().fault == Fault::cancelled);
  CHECK_FALSE(std::filesystem::exists(folder.path() / "records.db.damaged-1"));
  const auto again = taken(Register::open(folder.options()));
  CHECK(again->opening().notes.empty());
}
