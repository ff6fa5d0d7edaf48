// Photographs and other bytes beside the records: kept before the record that names them, never
// shown when they are not the bytes of their name.

#include "schema/store/object_folder.h"
#include "core/records/photograph.h"
#include "schema/digest.h"
#include "tests/faults/fault_disk.h"
#include "tests/schema/register_fixture.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::tests;
using Catch::Matchers::Contains;

namespace {

cbor::Bytes some_bytes(SplitMix64& random, std::size_t size) {
  cbor::Bytes bytes(size);
  random.fill(bytes);
  return bytes;
}

std::string hex(const Digest& sha) {
  return to_hex(sha);
}

/// A register on a disk in memory, with a photograph of two objects.
struct Pictured {
  faults::FaultDisk disk;
  World world{5};
  const Site site;
  SplitMix64 random{55};
  std::unique_ptr<Register> opened = made(world, "/register", site, &disk.files());
  const cbor::Bytes picture = some_bytes(random, 50'000);
  const cbor::Bytes preview = some_bytes(random, 700);

  std::string place(std::span<const std::uint8_t> bytes) const {
    const std::string name = hex(sha256(bytes));
    return "/register/objects/" + name.substr(0, 2) + "/" + name.substr(2, 2) + "/" + name;
  }
  Entry photograph() const {
    Photograph shot;
    shot.visit = site.visit;
    shot.sha256 = sha256(picture);
    shot.size_bytes = std::ssize(picture);
    shot.preview_sha256 = sha256(preview);
    shot.preview_bytes = std::ssize(preview);
    return {site.site, Photograph::kind, site.components[0], site.person, to_body(shot), {}};
  }
  void take() {
    CHECK(taken(opened->keep_object(picture)) == sha256(picture));
    CHECK(taken(opened->keep_object(preview)) == sha256(preview));
    taken(opened->save(photograph()));
  }
};

}  // namespace

TEST_CASE_METHOD(Pictured, "an object is kept under its SHA-256 and comes back", "[schema]") {
  take();
  CHECK(disk.bytes(place(picture)) == picture);
  CHECK(taken(opened->object(sha256(picture))) == picture);
  const auto report = taken(opened->verify());
  CHECK(report.problems.empty());
  CHECK(report.objects == 2);
  const auto operations = disk.operations();
  CHECK(taken(opened->keep_object(picture)) == sha256(picture));
  CHECK(disk.operations() == operations);  // there already: nothing is written
}

TEST_CASE_METHOD(Pictured, "bytes that are not those of their name are never shown", "[schema]") {
  take();
  auto damaged = picture;
  damaged[1234] = static_cast<std::uint8_t>(damaged[1234] ^ 16);
  disk.set_bytes(place(picture), damaged);
  const auto shown = opened->object(sha256(picture));
  REQUIRE_FALSE(shown);
  CHECK(shown.error().fault == Fault::corrupt);
  const auto report = taken(opened->verify());
  REQUIRE(report.problems.size() == 1);
  CHECK_THAT(report.problems[0], Contains(place(picture)) && Contains("damaged"));
  CHECK(report.objects == 1);

  CHECK(taken(opened->keep_object(picture)) == sha256(picture));  // kept again, it is whole
  CHECK(taken(opened->verify()).problems.empty());
}

TEST_CASE_METHOD(Pictured, "a photograph of this device that is gone is named", "[schema]") {
  taken(opened->keep_object(preview));
  taken(opened->save(photograph()));
  const auto missing = opened->object(sha256(picture));
  REQUIRE_FALSE(missing);
  CHECK(missing.error().fault == Fault::not_found);
  const auto report = taken(opened->verify());
  REQUIRE(report.problems.size() == 1);
  CHECK_THAT(report.problems[0], Contains(place(picture)) && Contains("is not there"));
}

TEST_CASE_METHOD(Pictured, "nothing is kept on a full disk or in a register opened to read",
                 "[schema]") {
  disk.set_room(1'000);
  const auto full = opened->keep_object(picture);
  REQUIRE_FALSE(full);
  CHECK(full.error().fault == Fault::io);
  CHECK_THAT(full.error().message, Contains("The disk is full."));
  disk.set_room(-1);
  opened = taken(Register::open(world.options("/register", Mode::read, &disk.files())));
  const auto refused = opened->keep_object(picture);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().fault == Fault::conflict);
}

TEST_CASE("power lost while a photograph is kept leaves it whole or away", "[schema][property]") {
  int whole = 0;
  int away = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    INFO("seed " << seed);
    faults::FaultDisk disk;
    SplitMix64 random(seed);
    const auto bytes = some_bytes(random, 20'000);
    disk.cut_after(random.between(1, 8));
    const bool kept = ObjectFolder(disk.files(), "/objects").put(bytes).has_value();
    disk.restore_power(seed);
    const ObjectFolder folder(disk.files(), "/objects");
    const auto found = folder.read(sha256(bytes));
    if (kept) REQUIRE(found);
    if (found) CHECK(*found == bytes);
    if (!found) CHECK(found.error().fault == Fault::not_found);
    ++(found ? whole : away);
  }
  CHECK(whole > 5);
  CHECK(away > 5);
}
