// The register is checked behind what is shown: nothing asked meanwhile is lost, and what the
// checks change is told.

#include <QCoreApplication>
#include <QSignalSpy>
#include <catch2/catch.hpp>
#include <fstream>

#include "mobile/models/store_link.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// The walked site in a folder of the machine, closed.
struct Closed {
  Folder folder;
  World world{1};
  WalkedSite site{4};

  Closed() {
    auto made = taken(Register::open(options(Mode::create)));
    taken(made->save(site.things()));
  }
  [[nodiscard]] Register::Options options(Mode mode = Mode::write) {
    return world.options(folder.path() / "register", mode);
  }
  [[nodiscard]] std::unique_ptr<StoreLink> open_behind() {
    return taken(StoreLink::open(options(), StoreLink::Checks::behind));
  }
};

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
  Closed closed;
  const auto link = closed.open_behind();
  const QSignalSpy checked(link.get(), &StoreLink::checked);
  CHECK(link->writable());
  CHECK(readings(*link) == 0);
  const auto answer = answer_to_entries(*link, closed.site);
  REQUIRE(answer);
  CHECK(*answer);
  CHECK(readings(*link) > 0);
  REQUIRE(checked.size() == 1);
  CHECK(checked[0][0].toBool());
}

TEST_CASE("what the checks mend is told, and what was asked is kept", "[mobile][models]") {
  Closed closed;
  std::ofstream(closed.folder.path() / "register/unsent.copy", std::ios::trunc)
      << "not what stood here";
  const auto link = closed.open_behind();
  const QSignalSpy checked(link.get(), &StoreLink::checked);
  const auto answer = answer_to_entries(*link, closed.site);
  REQUIRE(answer);
  CHECK(*answer);
  REQUIRE(checked.size() == 1);
  CHECK_FALSE(checked[0][0].toBool());
  CHECK(link->writable());
  CHECK_FALSE(link->opening().notes.empty());
}

TEST_CASE("a register in use elsewhere is found out behind and refuses", "[mobile][models]") {
  Closed closed;
  const auto elsewhere = taken(Register::open(closed.options()));
  const auto link = closed.open_behind();
  const QSignalSpy checked(link.get(), &StoreLink::checked);
  const auto answer = answer_to_entries(*link, closed.site);
  REQUIRE(answer);
  REQUIRE_FALSE(*answer);
  CHECK(answer->error().message == link->why_read_only());
  CHECK(readings(*link) == 0);
  REQUIRE(checked.size() == 1);
  CHECK_FALSE(checked[0][0].toBool());
  CHECK_FALSE(link->writable());
}

TEST_CASE("a draft that waits is closed before anything is read", "[mobile][models]") {
  Closed closed;
  {
    auto opened = taken(Register::open(closed.options()));
    const Entry grade = closed.site.last_year().back();
    taken(opened->save_draft({grade.feed, grade.kind, grade.subject, 0, grade.who, grade.body}));
  }
  const auto link = closed.open_behind();
  CHECK(link->opening().drafts_closed == 1);
}
