// Damage of every file of a register: it is noticed, what can be mended is mended, what was damaged
// is set aside and not deleted, and what was saved is there.

#include <map>

#include "tests/faults/fault_disk.h"
#include "tests/schema/register_fixture.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::tests;
using Catch::Matchers::Contains;

namespace {

const std::string records = "/register/records.db";
const std::string log_of_records = "/register/records.db-wal";
const std::string copy = "/register/unsent.copy";

/// A register of some hundred records on a disk in memory.
struct Damaged {
  explicit Damaged(std::uint64_t seed) : world(seed), random(seed * 104'729) {
    opened = made(world, "/register", site, &disk.files());
    for (int i = 0; i < 120; ++i) {
      world.clock.move_on(60'000);
      kept.push_back(taken(opened->save(coating(site, i))));
    }
    count = counted(*opened, "SELECT count(*) FROM journal");
  }

  void flip(const std::string& file, std::int64_t from, std::int64_t to) {
    auto bytes = disk.bytes(file);
    const auto place = static_cast<std::size_t>(random.between(from, to - 1));
    bytes[place] = static_cast<std::uint8_t>(bytes[place] ^ (1 << random.between(0, 7)));
    disk.set_bytes(file, std::move(bytes));
  }
  [[nodiscard]] std::int64_t size(const std::string& file) { return std::ssize(disk.bytes(file)); }
  /// The files as they stand while the register is open, as after a battery has died.
  void stop_dead() {
    std::map<std::string, faults::Bytes> stood;
    for (const auto& name : disk.names()) stood[name] = disk.bytes(name);
    opened.reset();
    for (auto& [name, bytes] : stood) disk.set_bytes(name, std::move(bytes));
  }
  void open_again() {
    opened = taken(Register::open(world.options("/register", Mode::write, &disk.files())));
  }
  void check_all_there() {
    for (const auto& note : opened->opening().notes) UNSCOPED_INFO(note);
    for (const Uuid& id : kept) CHECK(holds(*opened, id));
    CHECK(counted(*opened, "SELECT count(*) FROM journal") == count);
  }

  faults::FaultDisk disk;
  World world;
  const Site site;
  SplitMix64 random;
  std::unique_ptr<Register> opened;
  std::vector<Uuid> kept;
  std::int64_t count = 0;
};

std::string all_notes(const Register& opened) {
  std::string text;
  for (const auto& note : opened.opening().notes) text += note + "\n";
  return text;
}

}  // namespace

TEST_CASE("a record changed in the journal is noticed and comes back", "[schema]") {
  Damaged damaged(1);
  taken(damaged.opened->tables().run(
      "UPDATE journal SET bytes = CAST(substr(bytes, 1, 40) || x'00' || substr(bytes, 42) AS BLOB) "
      "WHERE lid = 60"));
  CHECK_FALSE(taken(damaged.opened->verify()).problems.empty());
  damaged.opened.reset();
  damaged.open_again();
  damaged.check_all_there();
  CHECK_THAT(all_notes(*damaged.opened), Contains("The journal was damaged") &&
                                             Contains("set aside as records.db.damaged-1") &&
                                             Contains("1 from the second copy, 0 could not be"));
  CHECK(damaged.disk.exists("/register/records.db.damaged-1"));
  check_whole(*damaged.opened);
}

TEST_CASE("where only a digest was damaged the record itself is kept", "[schema]") {
  Damaged damaged(2);
  taken(damaged.opened->tables().run("UPDATE journal SET digest = zeroblob(32) WHERE lid = 60"));
  damaged.opened.reset();
  REQUIRE(damaged.disk.files().remove(copy));
  damaged.open_again();
  damaged.check_all_there();
  check_whole(*damaged.opened);
}

TEST_CASE("what nobody has any more is told in numbers", "[schema]") {
  Damaged damaged(3);
  taken(damaged.opened->tables().run("UPDATE journal SET bytes = x'00' WHERE lid = 100"));
  damaged.opened.reset();
  REQUIRE(damaged.disk.files().remove(copy));
  damaged.open_again();
  CHECK(counted(*damaged.opened, "SELECT count(*) FROM journal") == damaged.count - 1);
  CHECK(damaged.opened->opening().records_missing == 1);
  CHECK_THAT(all_notes(*damaged.opened), Contains(" 1 could not be read or joined."));
  CHECK(damaged.disk.exists("/register/records.db.damaged-1"));
  taken(damaged.opened->save(coating(damaged.site, 1)));
  const auto problems = taken(damaged.opened->verify()).problems;
  REQUIRE(problems.size() == 1);
  CHECK_THAT(problems[0], Contains("1 record was lost when a damaged file was replaced"));
}

TEST_CASE("a bit flipped anywhere in the register's file loses nothing", "[schema][property]") {
  const auto seed = GENERATE(test::each_seed(1, 100));
  INFO(test::reproduce(seed));
  Damaged damaged(seed);
  damaged.opened.reset();
  damaged.flip(records, 0, damaged.size(records));
  damaged.open_again();
  CHECK(counted(*damaged.opened, "SELECT count(*) FROM journal NOT INDEXED") == damaged.count);
  // Damage in tables or indexes alone is found by comparing with the records, and mended by them.
  if (!taken(damaged.opened->verify()).problems.empty()) taken(damaged.opened->rebuild());
  check_whole(*damaged.opened);
  damaged.check_all_there();
}

TEST_CASE("a damaged log loses nothing", "[schema][property]") {
  const auto seed = GENERATE(test::each_seed(1, 60));
  INFO(test::reproduce(seed));
  Damaged damaged(seed);
  damaged.stop_dead();
  const auto size = damaged.size(log_of_records);
  REQUIRE(size > 0);
  if (seed % 3 == 0) {
    auto bytes = damaged.disk.bytes(log_of_records);
    bytes.resize(static_cast<std::size_t>(damaged.random.between(0, size - 1)));
    damaged.disk.set_bytes(log_of_records, std::move(bytes));
  } else {
    damaged.flip(log_of_records, 0, size);
  }
  damaged.open_again();
  damaged.check_all_there();
  check_whole(*damaged.opened);
}

TEST_CASE("a register's file that is gone comes back from the second copy", "[schema]") {
  Damaged damaged(4);
  damaged.opened.reset();
  SECTION("gone") {
    REQUIRE(damaged.disk.files().remove(records));
  }
  SECTION("empty") {
    damaged.disk.set_bytes(records, {});
  }
  SECTION("not a database") {
    damaged.disk.set_bytes(records, faults::Bytes(5000, 'x'));
  }
  damaged.open_again();
  damaged.check_all_there();
  CHECK(damaged.opened->opening().records_recovered == damaged.count);
  check_whole(*damaged.opened);
}

TEST_CASE("a damaged second copy is set aside and written again", "[schema][property]") {
  const auto seed = GENERATE(test::each_seed(1, 40));
  INFO(test::reproduce(seed));
  Damaged damaged(seed);
  damaged.opened.reset();
  damaged.flip(copy, 0, 12'000);
  damaged.open_again();
  damaged.check_all_there();
  check_whole(*damaged.opened);
  damaged.opened.reset();
  REQUIRE(damaged.disk.files().remove(records));
  damaged.open_again();
  damaged.check_all_there();
}
