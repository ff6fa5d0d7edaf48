// A whole page of the journal overwritten with garbage: every record that can be proved comes back,
// and what does not is counted exactly, told, and told again by verify.

#include <algorithm>

#include "tests/faults/fault_disk.h"
#include "tests/schema/register_fixture.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::tests;
using Catch::Matchers::Contains;

namespace {

const std::string records = "/register/records.db";
constexpr std::size_t page_bytes = 4096;

enum class Which { first_leaf, middle_leaf, last_leaf, inner };

std::size_t number_at(const faults::Bytes& bytes, std::size_t place, std::size_t width) {
  std::size_t number = 0;
  for (std::size_t i = 0; i < width; ++i) number = number << 8 | bytes[place + i];
  return number;
}

/// The pages of the journal's tree: its root, which is an inner page, then its leaves in order.
std::vector<std::size_t> pages_of_journal(const faults::Bytes& bytes, std::size_t root) {
  const std::size_t start = (root - 1) * page_bytes;
  REQUIRE(bytes[start] == 5);
  std::vector<std::size_t> pages = {root};
  const std::size_t cells = number_at(bytes, start + 3, 2);
  for (std::size_t cell = 0; cell < cells; ++cell) {
    const std::size_t place = number_at(bytes, start + 12 + 2 * cell, 2);
    pages.push_back(number_at(bytes, start + place, 4));
  }
  pages.push_back(number_at(bytes, start + 8, 4));
  return pages;
}

/// Some thousand readings in many leaves.
struct ManyRecords {
  ManyRecords() {
    auto opened = made(world, "/register", site, &disk.files());
    for (int group = 0; group < 6; ++group) {
      std::vector<Entry> entries;
      for (int i = 0; i < 250; ++i) entries.push_back(coating(site, 250 * group + i));
      for (const Uuid& id : taken(opened->save(entries))) kept.push_back(id);
    }
    count = counted(*opened, "SELECT count(*) FROM journal");
    root = static_cast<std::size_t>(
        counted(*opened, "SELECT rootpage FROM sqlite_schema WHERE name = 'journal'"));
    opened.reset();
    pages = pages_of_journal(disk.bytes(records), root);
    REQUIRE(pages.size() > 40);
  }

  /// The page's place in the file and how many records stand on it.
  void overwrite(Which which, std::uint64_t seed, std::size_t bytes_changed) {
    const std::size_t at = which == Which::inner         ? 0
                           : which == Which::first_leaf  ? 1
                           : which == Which::middle_leaf ? pages.size() / 2
                                                         : pages.size() - 1;
    auto bytes = disk.bytes(records);
    const std::size_t start = (pages[at] - 1) * page_bytes;
    on_page = static_cast<std::int64_t>(number_at(bytes, start + 3, 2));
    SplitMix64 random(seed);
    for (std::size_t i = 0; i < bytes_changed; ++i) {
      bytes[start + i] = static_cast<std::uint8_t>(random.between(0, 255));
    }
    disk.set_bytes(records, bytes);
  }

  std::unique_ptr<Register> open() {
    return taken(Register::open(world.options("/register", Mode::write, &disk.files())));
  }

  faults::FaultDisk disk;
  World world;
  const Site site;
  std::vector<Uuid> kept;
  std::int64_t count = 0;
  std::int64_t on_page = 0;
  std::size_t root = 0;
  std::vector<std::size_t> pages;
};

std::string problems_of(Register& opened) {
  std::string all;
  for (const auto& problem : taken(opened.verify()).problems) all += problem + "\n";
  return all;
}

}  // namespace

TEST_CASE_METHOD(ManyRecords, "a page of garbage loses no more than stood on it", "[schema]") {
  const auto which =
      GENERATE(Which::first_leaf, Which::middle_leaf, Which::last_leaf, Which::inner);
  const auto seed = GENERATE(test::each_seed(1, 4));
  INFO(test::reproduce(seed) << ", page " << static_cast<int>(which));
  overwrite(which, seed, seed % 2 == 0 ? 3000 : page_bytes);
  SECTION("with the second copy nothing is lost") {
    auto opened = open();
    for (const auto& note : opened->opening().notes) UNSCOPED_INFO(note);
    CHECK(counted(*opened, "SELECT count(*) FROM journal") == count);
    CHECK(opened->opening().records_missing == 0);
    CHECK(opened->opening().records_recovered <= (which == Which::inner ? 0 : on_page + 1));
    for (const Uuid& id : kept) CHECK(holds(*opened, id));
    CHECK(problems_of(*opened).empty());
  }
  SECTION("without it the rest is kept and what is lost is counted") {
    REQUIRE(disk.files().remove("/register/unsent.copy"));
    auto opened = open();
    const auto left = counted(*opened, "SELECT count(*) FROM journal");
    const auto missing = opened->opening().records_missing;
    for (const auto& note : opened->opening().notes) UNSCOPED_INFO(note);
    CHECK(left + missing == count);
    CHECK(missing <= (which == Which::inner ? 0 : on_page + 1));
    CHECK_THAT(opened->opening().notes.at(0),
               Contains(std::to_string(missing) + " could not be read or joined."));
    const auto told = std::to_string(missing) + " records were lost when a damaged file";
    if (missing > 0) CHECK_THAT(problems_of(*opened), Contains(told));
    taken(opened->save(coating(site, 5000)));
    const auto with_it = counted(*opened, "SELECT count(*) FROM journal");
    opened.reset();
    opened = open();
    CHECK(opened->opening().notes.empty());
    CHECK(opened->opening().records_missing == 0);
    CHECK(counted(*opened, "SELECT count(*) FROM journal") == with_it);
    const auto problems = taken(opened->verify()).problems;
    CHECK(problems.size() == (missing > 0 ? 1 : 0));
    if (missing > 0) CHECK_THAT(problems.at(0), Contains(told));
  }
}

TEST_CASE_METHOD(ManyRecords, "a second copy that has some of the lost ones fills them in",
                 "[schema]") {
  const auto copy = std::string("/register/unsent.copy");
  auto bytes = disk.bytes(copy);
  const auto id = kept[kept.size() / 2].bytes;
  const auto found = std::ranges::search(bytes, id);
  REQUIRE_FALSE(found.empty());
  *found.begin() ^= 1;  // one frame of those on the middle leaf
  disk.set_bytes(copy, bytes);
  overwrite(Which::middle_leaf, 3, page_bytes);
  auto opened = open();
  for (const auto& note : opened->opening().notes) UNSCOPED_INFO(note);
  const auto missing = opened->opening().records_missing;
  CHECK(counted(*opened, "SELECT count(*) FROM journal") + missing == count);
  CHECK(missing <= 1);
  opened.reset();
  opened = open();
  CHECK(opened->opening().notes.empty());
  opened.reset();
  REQUIRE(disk.files().remove(records));
  opened = open();
  CHECK(counted(*opened, "SELECT count(*) FROM journal") + missing == count);
}

TEST_CASE_METHOD(ManyRecords, "rows are read from the pages where the first page is gone",
                 "[schema]") {
  REQUIRE(disk.files().remove("/register/unsent.copy"));
  auto bytes = disk.bytes(records);
  std::fill_n(bytes.begin(), page_bytes, std::uint8_t{'x'});
  disk.set_bytes(records, bytes);
  auto opened = open();
  for (const auto& note : opened->opening().notes) UNSCOPED_INFO(note);
  CHECK(counted(*opened, "SELECT count(*) FROM journal") == count);
  for (const Uuid& id : kept) CHECK(holds(*opened, id));
  CHECK(problems_of(*opened).empty());
  CHECK_THAT(opened->opening().notes.at(0), Contains("more may be missing."));
}

TEST_CASE_METHOD(ManyRecords, "a rescue cut off before the second copy's turn goes on",
                 "[schema]") {
  REQUIRE(disk.files().remove("/register/unsent.copy"));
  overwrite(Which::middle_leaf, 2, page_bytes);
  std::int64_t left = 0;
  {
    auto opened = open();
    left = counted(*opened, "SELECT count(*) FROM journal");
    // As a machine that stopped between the two leaves it.
    taken(opened->tables().run(
        "INSERT OR REPLACE INTO setting (name, value) VALUES ('copy_numbers_old', 1)"));
  }
  auto opened = open();
  CHECK(counted(*opened, "SELECT count(*) FROM journal") == left);
  opened.reset();
  opened = open();
  CHECK(opened->opening().notes.empty());
}
