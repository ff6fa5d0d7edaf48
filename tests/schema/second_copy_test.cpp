// What verify says of the second copy: it is read, and whatever is wrong with it is told, also
// where the register is opened for reading only.

#include "schema/journal/second_copy.h"

#include "tests/faults/fault_disk.h"
#include "tests/schema/register_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;
using Catch::Matchers::Contains;

namespace {

const std::string copy = "/register/unsent.copy";

/// Sixty readings, and then nobody at work.
struct Kept {
  Kept() {
    auto opened = made(world, "/register", site, &disk.files());
    for (int i = 0; i < 60; ++i) taken(opened->save(coating(site, i)));
  }

  std::unique_ptr<Register> open(Mode mode) {
    return taken(Register::open(world.options("/register", mode, &disk.files())));
  }
  std::string problems() {
    std::string all;
    for (const auto& problem : taken(open(Mode::read)->verify()).problems) all += problem + "\n";
    return all;
  }

  faults::FaultDisk disk;
  World world;
  const Site site;
};

}  // namespace

TEST_CASE_METHOD(Kept, "verify tells a second copy that is missing or damaged", "[schema]") {
  REQUIRE(problems().empty());
  SECTION("missing") {
    REQUIRE(disk.files().remove(copy));
    CHECK(problems() ==
          "The second copy of unsent records (unsent.copy) is missing. It is written again when "
          "the register is next opened for writing.\n");
    CHECK_FALSE(disk.exists(copy));
  }
  SECTION("empty") {
    disk.set_bytes(copy, {});
    CHECK_THAT(problems(), Contains("The head of the second copy is damaged."));
    CHECK(disk.bytes(copy).empty());
  }
  SECTION("overwritten") {
    auto bytes = disk.bytes(copy);
    SplitMix64 random(7);
    for (std::size_t i = 0; i < 10'000; ++i) {
      bytes[i] = static_cast<std::uint8_t>(random.between(0, 255));
    }
    disk.set_bytes(copy, bytes);
    CHECK_THAT(problems(), Contains("The head of the second copy is damaged."));
  }
  SECTION("cut short") {
    auto bytes = disk.bytes(copy);
    bytes.resize(4000);
    disk.set_bytes(copy, bytes);
    CHECK_THAT(problems(), Contains("The second copy lacks ") && Contains(" unsent records."));
  }
  SECTION("one frame changed") {
    auto bytes = disk.bytes(copy);
    bytes[3000] = static_cast<std::uint8_t>(bytes[3000] ^ 1);
    disk.set_bytes(copy, bytes);
    CHECK_THAT(problems(), Contains("The second copy is damaged in 1 place.") &&
                               Contains("The second copy lacks 1 unsent record."));
  }
  SECTION("another device's") {
    faults::FaultDisk other_disk;
    World other(2);
    made(other, "/register", site, &other_disk.files()).reset();
    disk.set_bytes(copy, other_disk.bytes(copy));
    CHECK_THAT(problems(), Contains("This second copy is another device's."));
  }
  open(Mode::write).reset();
  CHECK(problems().empty());
}

TEST_CASE_METHOD(Kept, "a draft's damaged frame is written again too", "[schema]") {
  const auto with_draft = [&](int grade) {
    taken(open(Mode::write)->save_draft(finding_draft(site, 1, grade)));
  };
  with_draft(2);
  const auto before = disk.bytes(copy);
  with_draft(3);
  auto bytes = disk.bytes(copy);
  std::size_t first = 0;
  while (bytes[first] == before[first]) ++first;
  taken(open(Mode::write)->save(coating(site, 61)));
  bytes = disk.bytes(copy);
  bytes[first + 20] = static_cast<std::uint8_t>(bytes[first + 20] ^ 1);
  disk.set_bytes(copy, bytes);
  CHECK_THAT(problems(), Contains("The second copy is damaged in 1 place."));
  open(Mode::write).reset();
  CHECK(problems().empty());
}

TEST_CASE_METHOD(Kept, "verify tells records that only the second copy holds", "[schema]") {
  const auto file = disk.bytes("/register/records.db");
  {
    auto opened = open(Mode::write);
    for (int i = 0; i < 3; ++i) taken(opened->save(coating(site, 100 + i)));
  }
  disk.set_bytes("/register/records.db", file);
  CHECK_THAT(problems(),
             Contains("The second copy holds 3 records that are missing in the register."));
  open(Mode::write).reset();
  CHECK(problems().empty());
}

TEST_CASE_METHOD(Kept, "a writer's newest frames are no damage", "[schema]") {
  auto writer = open(Mode::write);
  auto reader = open(Mode::read);
  taken(writer->save(coating(site, 200)));
  // Frames are on disk before their records; such a one, by itself.
  auto ahead = taken(SecondCopy::open(disk.files(), copy, writer->device()));
  const CopyFrame frame{CopyFrame::Type::record, site.site, 1000, {1, 2, 3}};
  taken(ahead.append(std::span(&frame, 1)));
  for (const auto& problem : taken(reader->verify()).problems) UNSCOPED_INFO(problem);
  CHECK(taken(reader->verify()).problems.empty());
}
