#include <algorithm>

#include "core/fold/fold.h"
#include "schema/digest.h"
#include "schema/journal/journal.h"
#include "schema/journal/writer.h"
#include "schema/store/cached_tables.h"
#include "schema/store/table_store.h"
#include "schema/store/verify.h"
#include "tests/schema/register_fixture.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

std::vector<JournalRow> rows_of(Register& opened) {
  auto statement = opened.tables().prepare(std::string("SELECT ") + journal_columns +
                                           " FROM journal ORDER BY lid");
  REQUIRE(statement);
  std::vector<JournalRow> rows;
  while (taken(statement->step())) rows.push_back(journal_row(*statement));
  return rows;
}

}  // namespace

TEST_CASE_METHOD(MadeRegister, "a reading sent twice is stored once", "[schema]") {
  Entry entry = coating(site, 1);
  entry.id = opened->mint();
  const Uuid first = taken(opened->save(entry));
  const auto records = counted(*opened, "SELECT count(*) FROM journal");
  CHECK(taken(opened->save(entry)) == first);
  const std::vector<Entry> both = {entry, coating(site, 2), entry};
  const auto ids = taken(opened->save(both));
  CHECK(ids[0] == first);
  CHECK(ids[2] == first);
  CHECK(counted(*opened, "SELECT count(*) FROM journal") == records + 1);
  check_whole(*opened);
}

TEST_CASE_METHOD(MadeRegister, "entries are saved together or not at all", "[schema]") {
  const auto records = counted(*opened, "SELECT count(*) FROM journal");
  const auto digest = taken(opened->table_digest());
  std::vector<Entry> entries = {coating(site, 1), coating(site, 2)};
  entries[1].body.set(3, cbor::Array{20'001});  // thicker than 2 mm
  const auto refused = opened->save(entries);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().fault == Fault::invalid_input);
  CHECK(refused.error().message.starts_with("Entry 2: "));
  CHECK(counted(*opened, "SELECT count(*) FROM journal") == records);
  CHECK(taken(opened->table_digest()) == digest);
  reopen();
  CHECK(counted(*opened, "SELECT count(*) FROM journal") == records);
}

TEST_CASE_METHOD(MadeRegister, "an unfinished entry outlives the program and becomes a record",
                 "[schema]") {
  const auto grades = counted(*opened, "SELECT count(*) FROM reading WHERE kind = 20");
  const Draft first = finding_draft(site, 0, 3);
  Draft second = finding_draft(site, 1, 2);
  taken(opened->save_draft(first));
  taken(opened->save_draft(second));
  second.body.set(3, 5);  // a second touch: it is a hazard now
  taken(opened->save_draft(second));
  CHECK(taken(opened->drafts()).size() == 2);
  CHECK(counted(*opened, "SELECT count(*) FROM finding") == 0);

  reopen();
  CHECK(opened->opening().drafts_closed == 2);
  CHECK(taken(opened->drafts()).empty());
  CHECK(counted(*opened, "SELECT count(*) FROM finding WHERE grade = 3 AND hazard = 0") == 1);
  CHECK(counted(*opened,
                "SELECT count(*) FROM finding WHERE grade = 5 AND hazard = 1 "
                "AND hazard_state = 1") == 1);
  // A finding on a part comes with the part's grade.
  CHECK(counted(*opened, "SELECT count(*) FROM reading WHERE kind = 20") == grades + 2);
  check_whole(*opened);
}

TEST_CASE_METHOD(MadeRegister, "an entry with too little to be a record stays unfinished",
                 "[schema]") {
  taken(opened->save_draft({site.site, 21, site.components[0], 1, site.person, {{1, site.visit}}}));
  reopen();
  CHECK(opened->opening().drafts_closed == 0);
  CHECK(taken(opened->drafts()).size() == 1);
  REQUIRE(opened->opening().notes.size() == 1);
  CHECK(opened->opening().notes[0] == "1 entry was not finished; it can be gone on with.");
}

TEST_CASE_METHOD(MadeRegister, "tables made again are the same, byte for byte", "[schema]") {
  for (int i = 0; i < 200; ++i) {
    world.clock.move_on(i % 50 == 0 ? 86'400'000 : 60'000);
    taken(opened->save(coating(site, i)));
  }
  const auto digest = taken(opened->table_digest());
  const auto records = counted(*opened, "SELECT count(*) FROM journal");

  const auto stopped = opened->rebuild([](std::int64_t, std::int64_t) { return false; });
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().fault == Fault::cancelled);
  CHECK(taken(opened->table_digest()) == digest);

  CHECK(taken(opened->rebuild()) == records);
  CHECK(taken(opened->table_digest()) == digest);
  taken(opened->save(coating(site, 1000)));
  check_whole(*opened);
}

TEST_CASE_METHOD(MadeRegister, "each record is bound to the one before it", "[schema]") {
  for (int i = 0; i < 20; ++i) taken(opened->save(coating(site, i)));
  // Reckoned here once more, as the format says it.
  std::map<std::int64_t, Digest> digests;
  for (const auto& row : rows_of(*opened)) {
    auto feed = opened->tables().prepare("SELECT id FROM feed WHERE n = ?");
    REQUIRE(feed);
    feed->bind(1, row.feed);
    REQUIRE(taken(feed->step()));
    std::vector<std::uint8_t> bytes;
    if (row.seq == 1) {
      const std::string_view start = "kneerail chain 1";
      bytes.assign(start.begin(), start.end());
      const Uuid feed_id = feed->uuid(0);
      const Uuid device = opened->device();
      bytes.insert(bytes.end(), feed_id.bytes.begin(), feed_id.bytes.end());
      bytes.insert(bytes.end(), device.bytes.begin(), device.bytes.end());
      digests[row.feed] = sha256(bytes);
    }
    bytes.assign(digests[row.feed].begin(), digests[row.feed].end());
    bytes.insert(bytes.end(), row.bytes.begin(), row.bytes.end());
    digests[row.feed] = sha256(bytes);
    CHECK(row.digest == digests[row.feed]);
  }
  CHECK(digests.size() == 2);
}

TEST_CASE_METHOD(MadeRegister, "tables do not depend on the order of arrival",
                 "[schema][property]") {
  for (int i = 0; i < 60; ++i) {
    world.clock.move_on(3'600'000);
    taken(opened->save(coating(site, i)));
    if (i % 10 == 0) {
      taken(opened->save_draft(finding_draft(site, i, 1 + i % 5)));
      taken(opened->close_draft(finding_draft(site, i, 1 + i % 5)));
    }
  }
  const auto digest = taken(opened->table_digest());
  auto journal = taken(Journal::open(opened->tables()));
  auto rows = rows_of(*opened);
  const auto seed = GENERATE(test::each_seed(1, 10));
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  for (std::size_t i = rows.size(); i > 1; --i) {
    std::swap(rows[i - 1], rows[static_cast<std::size_t>(random.between(0, std::int64_t(i) - 1))]);
  }
  auto other = taken(Database::open({":memory:", Database::Access::create, ""}));
  REQUIRE(create_tables(other, Indexes::now));
  SqlTables tables(other);
  for (const auto& row : rows) fold::add(taken(journal.placed(row)), tables);
  REQUIRE_FALSE(tables.error());
  CHECK(taken(digest_of_tables(other)) == digest);
}

TEST_CASE_METHOD(MadeRegister, "the clock is told before the first record of a stretch",
                 "[schema]") {
  const auto told = [&] {
    return counted(*opened,
                   "SELECT count(*) FROM journal WHERE id IN "
                   "(SELECT record FROM fact WHERE kind = 80)");
  };
  CHECK(told() == 2);  // one in each feed
  CHECK(taken(decode_record(rows_of(*opened).front().bytes)).kind == 80);
  world.clock.move_on(86'400'000);
  taken(opened->save(coating(site, 1)));
  CHECK(told() == 2);
  world.clock.wall_ms += 26 * 3'600'000;  // set by hand
  taken(opened->save(coating(site, 2)));
  CHECK(told() == 3);
  const auto rows = rows_of(*opened);
  const auto clock = taken(decode_record(rows[rows.size() - 2].bytes));
  const auto reading = taken(decode_record(rows.back().bytes));
  CHECK(clock.kind == 80);
  CHECK(*clock.body.find(5) == cbor::Value(2));  // a jump
  CHECK(reading.g == clock.g);
  CHECK(reading.l + reading.w == world.clock.wall_ms);

  opened.reset();  // the program starts again, the machine did not
  opened = taken(Register::open(world.options(folder.path(), Mode::write)));
  taken(opened->save(coating(site, 3)));
  CHECK(told() == 3);
  opened.reset();
  world.clock.since_boot_ms = 5000;
  opened = taken(Register::open(world.options(folder.path(), Mode::write)));
  taken(opened->save(coating(site, 4)));
  CHECK(told() == 4);
  check_whole(*opened);
}

TEST_CASE("a reader sees what was saved while the writer goes on", "[schema]") {
  Folder folder;
  World world;
  const Site site;
  auto writer = made(world, folder.path(), site);
  auto reader = taken(Register::open(world.options(folder.path(), Mode::read)));
  CHECK_FALSE(reader->opening().writable);
  const auto before = counted(*reader, "SELECT count(*) FROM reading");
  taken(writer->save(coating(site, 1)));
  CHECK(counted(*reader, "SELECT count(*) FROM reading") == before + 1);
  CHECK(taken(reader->table_digest()) == taken(writer->table_digest()));
  const auto refused = reader->save(coating(site, 2));
  REQUIRE_FALSE(refused);
  CHECK(refused.error().fault == Fault::conflict);
  CHECK(taken(reader->verify()).problems.empty());
}

TEST_CASE("one thread writes, and who asked gets the result", "[schema]") {
  Folder folder;
  World world;
  const Site site;
  std::vector<Uuid> ids;
  {
    Writer writer(made(world, folder.path(), site));
    std::vector<std::future<Result<std::vector<Uuid>>>> asked;
    for (int i = 0; i < 50; ++i) asked.push_back(writer.save({coating(site, i)}));
    std::promise<std::size_t> told;
    writer.save({coating(site, 50), coating(site, 51)}, [&](Result<std::vector<Uuid>> saved) {
      told.set_value(saved ? saved->size() : 0);
    });
    for (auto& one : asked) ids.push_back(taken(one.get()).front());
    CHECK(told.get_future().get() == 2);
    CHECK(writer.save_draft(finding_draft(site, 1, 2)).get().has_value());
    CHECK(writer.close_draft(finding_draft(site, 1, 2)).get().has_value());
    (void)writer.save({coating(site, 52)});  // asked for, not waited for
  }
  auto opened = taken(Register::open(world.options(folder.path(), Mode::write)));
  for (const Uuid& id : ids) CHECK(holds(*opened, id));
  CHECK(counted(*opened, "SELECT count(*) FROM reading WHERE kind = 21") == 53);
}
