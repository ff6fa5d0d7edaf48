// What can lie in the place of a register, or stand in its way: each is told in a plain sentence,
// and nothing is overwritten.

#include <sys/mount.h>
#include <sys/stat.h>
#include <unistd.h>

#include <fstream>

#include "schema/exchange/reading_staging.h"
#include "tests/faults/child.h"
#include "tests/faults/fault_disk.h"
#include "tests/schema/register_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;
using Catch::Matchers::Contains;

namespace {

std::string content_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

void write_content(const std::filesystem::path& path, const std::string& content) {
  std::ofstream(path, std::ios::binary) << content;
}

Error refused(const Register::Options& options) {
  auto opened = Register::open(options);
  REQUIRE_FALSE(opened);
  return opened.error();
}

/// A mount of the kind asked for, where the machine allows it.
class Mount {
 public:
  Mount(const std::filesystem::path& place, bool small_disk) : place_(place) {
    if (small_disk) {
      made_ = ::mount("tmpfs", place.c_str(), "tmpfs", 0, "size=12m") == 0;
      return;
    }
    made_ = ::mount(place.c_str(), place.c_str(), nullptr, MS_BIND, nullptr) == 0;
    if (made_ &&
        ::mount(nullptr, place.c_str(), nullptr, MS_BIND | MS_REMOUNT | MS_RDONLY, nullptr) != 0) {
      ::umount(place.c_str());
      made_ = false;
    }
  }
  Mount(const Mount&) = delete;
  Mount& operator=(const Mount&) = delete;
  ~Mount() {
    if (made_) ::umount2(place_.c_str(), MNT_DETACH);
  }
  [[nodiscard]] bool is_there() const { return made_; }

 private:
  std::filesystem::path place_;
  bool made_ = false;
};

void expect_looked_at_only(const Register::Options& options, const Site& site) {
  auto opened = taken(Register::open(options));
  CHECK_FALSE(opened->opening().writable);
  REQUIRE(opened->opening().notes.size() == 1);
  CHECK_THAT(opened->opening().notes[0],
             Contains("is read-only here. It can be looked at; nothing can be entered."));
  CHECK(counted(*opened, "SELECT count(*) FROM reading") == 1);
  auto saved = opened->save(coating(site, 2));
  REQUIRE_FALSE(saved);
  CHECK_THAT(saved.error().message, Contains("reading only. Nothing was saved."));
}

}  // namespace

TEST_CASE("a read-only folder shows its register and takes no entry", "[schema]") {
  World world;
  const Site site;
  faults::FaultDisk disk;
  taken(made(world, "/register", site, &disk.files())->save(coating(site, 1)));
  const auto before = disk.bytes("/register/records.db");
  disk.set_read_only(true);
  expect_looked_at_only(world.options("/register", Mode::write, &disk.files()), site);
  CHECK(disk.bytes("/register/records.db") == before);
  CHECK_THAT(refused(world.options("/register2", Mode::write, &disk.files())).message,
             Contains("There is no register here."));
}

TEST_CASE("a read-only folder of this machine does too", "[schema]") {
  Folder folder;
  World world;
  const Site site;
  taken(made(world, folder.path(), site)->save(coating(site, 1)));
  if (::geteuid() != 0) {
    ::chmod(folder.path().c_str(), 0500);
    expect_looked_at_only(world.options(folder.path(), Mode::write), site);
    ::chmod(folder.path().c_str(), 0700);
    return;
  }
  const Mount mount(folder.path(), false);
  if (!mount.is_there()) {
    WARN("no mounts here; the disk in memory has shown it");
    return;
  }
  expect_looked_at_only(world.options(folder.path(), Mode::write), site);
}

TEST_CASE("no folder, an empty folder: there is no register", "[schema]") {
  Folder folder;
  World world;
  for (const auto mode : {Mode::write, Mode::read}) {
    for (const auto& place : {folder.path(), folder.path() / "none"}) {
      const auto error = refused(world.options(place, mode));
      CHECK(error.fault == Fault::not_found);
      CHECK(error.message == place.string() + ": There is no register here.");
    }
  }
}

TEST_CASE("a file that is no register is left as it is", "[schema]") {
  Folder folder;
  World world;
  const auto file = folder.path() / "records.db";
  SECTION("text") {
    write_content(file, "name;chainage\n" + std::string(9000, 'x'));
  }
  SECTION("a database of something else") {
    auto other = taken(Database::open({file.string(), Database::Access::create, ""}));
    taken(other.run("CREATE TABLE invoice (number INTEGER)"));
  }
  const auto before = content_of(file);
  for (const auto mode : {Mode::create, Mode::write, Mode::read}) {
    const auto error = refused(world.options(folder.path(), mode));
    CHECK(error.fault == Fault::invalid_input);
    CHECK(error.message ==
          file.string() + ": This file is not a Kneerail register. It was left as it is.");
    CHECK(content_of(file) == before);
  }
  CHECK_FALSE(std::filesystem::exists(folder.path() / "identity"));
}

TEST_CASE_METHOD(MadeRegister, "a reader calls a damaged register damaged", "[schema]") {
  opened.reset();
  const auto file = folder.path() / "records.db";
  const auto aside = folder.path() / GENERATE("identity", "unsent.copy");
  std::filesystem::remove(aside);  // either of the two tells that it was a register
  std::string how =
      "damaged. `kneerail rebuild` sets it aside and brings back what it and the second "
      "copy hold.";
  SECTION("text in its place") {
    write_content(file, "name;chainage\n" + std::string(9000, 'x'));
  }
  SECTION("garbage from its tenth page on") {
    auto content = content_of(file);
    SplitMix64 random(5);
    for (std::size_t i = 40'000; i < content.size(); ++i) {
      content[i] = static_cast<char>(random.between(0, 255));
    }
    write_content(file, content);
  }
  SECTION("empty") {
    write_content(file, "");
    how =
        "empty. `kneerail rebuild` sets it aside and brings back what it and the second copy hold.";
  }
  SECTION("gone") {
    std::filesystem::remove(file);
    how = "missing. `kneerail rebuild` makes it again from what the second copy holds.";
  }
  const auto error = refused(world.options(folder.path(), Mode::read));
  CHECK(error.fault == Fault::corrupt);
  CHECK(error.message == folder.path().string() + ": The register's file is " + how);
}

TEST_CASE("a register of a newer program is left as it is", "[schema]") {
  Folder folder;
  World world;
  const Site site;
  made(world, folder.path(), site).reset();
  const auto file = folder.path() / "records.db";
  {
    auto newer = taken(Database::open({file.string(), Database::Access::write, ""}));
    SECTION("with a step of the journal that is not known") {
      taken(newer.run("INSERT INTO step (n) VALUES (99)"));
    }
    SECTION("with other tables") {
      taken(newer.run("PRAGMA user_version = 9999"));
    }
  }
  const auto before = content_of(file);
  for (const auto mode : {Mode::create, Mode::write, Mode::read}) {
    const auto error = refused(world.options(folder.path(), mode));
    CHECK(error.fault == Fault::invalid_input);
    CHECK(error.message == folder.path().string() +
                               ": This register was written by a newer Kneerail. Update this "
                               "program to open it; nothing was changed.");
    CHECK(content_of(file) == before);
  }
}

TEST_CASE_METHOD(MadeRegister, "tables of an older program are made again", "[schema]") {
  const auto digest = taken(opened->table_digest());
  const auto records = counted(*opened, "SELECT count(*) FROM journal");
  taken(opened->tables().run("PRAGMA user_version = 0; DROP TABLE reading; CREATE TABLE old (a)"));
  opened.reset();
  const auto error = refused(world.options(folder.path(), Mode::read));
  CHECK_THAT(error.message, Contains("Open it once for writing"));
  opened = taken(Register::open(world.options(folder.path(), Mode::write)));
  REQUIRE(opened->opening().notes.size() == 1);
  CHECK(opened->opening().notes[0] == "The tables were made again from " + std::to_string(records) +
                                          " records: this program folds them in a new way.");
  CHECK(taken(opened->table_digest()) == digest);
  CHECK(counted(*opened, "SELECT count(*) FROM sqlite_schema WHERE name = 'old'") == 0);
}

TEST_CASE_METHOD(MadeRegister, "a register from before coverage folds its journal again",
                 "[schema]") {
  taken(opened->save(
      {site.site, 20, site.components[0], site.person, {{1, site.visit}, {2, 2}}, {}}));
  REQUIRE(counted(*opened, "SELECT count(*) FROM coverage WHERE grades > 0") == 1);
  const auto digest = taken(opened->table_digest());
  // The tables as they were in fold version 1.
  taken(
      opened->tables().run("PRAGMA user_version = 1; DROP TABLE coverage; DROP TABLE bay_after; "
                           "DROP INDEX fact_by_visit; DROP INDEX reading_by_visit; "
                           "ALTER TABLE visit DROP COLUMN first_t; "
                           "ALTER TABLE visit DROP COLUMN last_t; "
                           "ALTER TABLE visit DROP COLUMN sealed_t; "
                           "ALTER TABLE visit_part DROP COLUMN sealed_t"));
  reopen();
  CHECK(taken(opened->table_digest()) == digest);
  CHECK(counted(*opened, "SELECT count(*) FROM coverage WHERE grades > 0") == 1);
}

TEST_CASE("a register that another program has open can only be read", "[schema]") {
  Folder folder;
  World world;
  const Site site;
  made(world, folder.path(), site).reset();
  {
    faults::Child other(
        {std::string(KNEERAIL_BIN_DIR) + "/save-loop", folder.path().string(), "hold"});
    REQUIRE(other.line() == "open");
    for (const auto mode : {Mode::create, Mode::write}) {
      const auto error = refused(world.options(folder.path(), mode));
      CHECK(error.fault == Fault::conflict);
      CHECK(error.message == folder.path().string() +
                                 ": Another Kneerail has this register open. Close it there, or "
                                 "open it here for reading only.");
    }
    auto reader = taken(Register::open(world.options(folder.path(), Mode::read)));
    CHECK(reader->organisation() == site.organisation);
  }
  auto opened = taken(Register::open(world.options(folder.path(), Mode::write)));
  CHECK(opened->opening().notes.empty());
}

TEST_CASE("a full disk refuses the entry, says so and loses nothing", "[schema]") {
  World world;
  const Site site;
  faults::FaultDisk disk;
  auto opened = made(world, "/register", site, &disk.files());
  REQUIRE(disk.exists("/register/spare"));
  std::vector<Uuid> kept;
  disk.set_room(20'000);
  Result<Uuid> saved = opened->save(coating(site, 1));
  std::int64_t number = 1;
  for (; saved && disk.exists("/register/spare"); saved = opened->save(coating(site, ++number))) {
    kept.push_back(*saved);
  }
  // The reserve went for the entry that did not fit, and that entry was saved.
  REQUIRE(saved);
  kept.push_back(*saved);
  REQUIRE(opened->opening().notes.size() == 1);
  CHECK(opened->opening().notes[0] ==
        "The disk is full. The register's reserve was freed; make room soon.");

  disk.set_room(0);
  while ((saved = opened->save(coating(site, ++number)))) kept.push_back(*saved);
  CHECK(saved.error().fault == Fault::io);
  CHECK_THAT(saved.error().message, Contains("Not saved. "));
  CHECK_THAT(saved.error().message, Contains("The disk is full."));
  const auto draft = opened->save_draft(finding_draft(site, 1, 2));
  REQUIRE_FALSE(draft);
  CHECK_THAT(draft.error().message, Contains("The disk is full."));

  disk.set_room(-1);
  kept.push_back(taken(opened->save(coating(site, ++number))));
  for (const Uuid& id : kept) CHECK(holds(*opened, id));
  CHECK(counted(*opened, "SELECT count(*) FROM reading") == std::ssize(kept));
  check_whole(*opened);
}

TEST_CASE("a full disk of this machine does too", "[schema]") {
  Folder folder;
  World world;
  const Site site;
  const Mount mount(folder.path(), true);
  if (!mount.is_there()) {
    WARN("no mounts here; the disk in memory has shown it");
    return;
  }
  auto opened = made(world, folder.path(), site);
  const std::string bulk(400, 'x');
  std::vector<Uuid> kept;
  Result<std::vector<Uuid>> saved = fail(Fault::io, "");
  for (std::int64_t number = 0;;) {
    std::vector<Entry> entries;
    while (entries.size() < 500) entries.push_back(coating(site, ++number));
    saved = opened->save(entries);
    if (!saved) break;
    kept.insert(kept.end(), saved->begin(), saved->end());
    REQUIRE(number < 200'000);
  }
  CHECK(saved.error().fault == Fault::io);
  CHECK_THAT(saved.error().message, Contains("The disk is full."));
  REQUIRE_FALSE(kept.empty());
  CHECK(counted(*opened, "SELECT count(*) FROM reading") == std::ssize(kept));
}

TEST_CASE("a register on a full disk can be looked at", "[schema]") {
  Folder folder;
  World world;
  const Site site;
  const Mount mount(folder.path(), true);
  if (!mount.is_there()) {
    WARN("no mounts here");
    return;
  }
  auto opened = made(world, folder.path(), site);
  taken(opened->save(coating(site, 1)));
  const auto log = folder.path() / "records.db-wal";
  const bool with_log = GENERATE(false, true);  // as a battery that died leaves it
  const std::string logged = content_of(log);
  const std::string file = content_of(folder.path() / "records.db");
  REQUIRE_FALSE(logged.empty());
  opened.reset();
  if (with_log) {
    write_content(log, logged);
    write_content(folder.path() / "records.db", file);
  }
  std::string bulk(std::size_t{1} << 20, 'x');
  for (std::ofstream out(folder.path() / "bulk"); !bulk.empty();) {
    if (!out.write(bulk.data(), std::ssize(bulk)).flush()) {
      out.clear();
      bulk.resize(bulk.size() / 2);
    }
  }
  auto reader = taken(Register::open(world.options(folder.path(), Mode::read)));
  CHECK(counted(*reader, "SELECT count(*) FROM reading") == 1);
  check_whole(*reader);
  reader.reset();
  CHECK(content_of(log) == (with_log ? logged : std::string()));  // nothing was written
  CHECK_THAT(refused(world.options(folder.path(), Mode::write)).message,
             Contains("The disk is full."));
  // With a little room, the readings that an import sets aside leave nothing behind either.
  for (int pages = 0; pages < 20; ++pages) {
    const auto size = std::filesystem::file_size(folder.path() / "bulk");
    std::filesystem::resize_file(folder.path() / "bulk", size - 4096);
    (void)exchange::ReadingStaging::open(folder.path() / "import-staging").has_value();
    for (const auto& left : std::filesystem::directory_iterator(folder.path())) {
      CHECK_FALSE(left.path().filename().string().starts_with("import-staging"));
    }
  }
  std::filesystem::remove(folder.path() / "bulk");
  opened = taken(Register::open(world.options(folder.path(), Mode::write)));
  CHECK(counted(*opened, "SELECT count(*) FROM reading") == 1);
}

TEST_CASE_METHOD(MadeRegister, "a missing or damaged identity is made again", "[schema]") {
  const Uuid device = opened->device();
  opened.reset();
  const auto file = folder.path() / "identity";
  std::string how = "missing";
  SECTION("missing") {
    std::filesystem::remove(file);
  }
  SECTION("missing with the second copy") {
    std::filesystem::remove(file);
    std::filesystem::remove(folder.path() / "unsent.copy");
  }
  SECTION("damaged") {
    auto content = content_of(file);
    content[20] = static_cast<char>(content[20] ^ 4);
    write_content(file, content);
    how = "damaged";
  }
  opened = taken(Register::open(world.options(folder.path(), Mode::write)));
  CHECK(opened->device() == device);
  REQUIRE_FALSE(opened->opening().notes.empty());
  CHECK_THAT(opened->opening().notes[0], Contains("The identity file was " + how));
  CHECK((how == "damaged") == std::filesystem::exists(folder.path() / "identity.damaged-1"));
  check_whole(*opened);
  opened.reset();
  CHECK(taken(Register::open(world.options(folder.path(), Mode::write)))->opening().notes.empty());
}
