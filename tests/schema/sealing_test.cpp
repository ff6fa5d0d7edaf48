// Seals: what they count and sign, and that nothing under one can be changed unnoticed.

#include "schema/store/sealing.h"
#include "core/records/visit.h"
#include "schema/digest.h"
#include "schema/journal/identity.h"
#include "schema/journal/journal.h"
#include "tests/schema/register_fixture.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::tests;
using Catch::Matchers::Contains;

namespace {

struct Visited : MadeRegister {
  const Uuid second = id_of(10, 2);

  Visited() {
    taken(opened->save(created(site.organisation, second, 10, site.organisation, {{2, "JV"}})));
    taken(opened->save(Entry{site.site, 11, site.visit, second, {}, {}}));
    for (int i = 0; i < 12; ++i) taken(opened->save(coating(site, i)));
    Entry of_second = coating(site, 20);
    of_second.who = second;
    taken(opened->save(of_second));
    taken(opened->save(
        Entry{site.site, 12, site.components[1], site.person, {{1, site.visit}, {2, 2}}, {}}));
  }
  Uuid seal(const Uuid& person) {
    return taken(opened->seal({.site = site.site, .visit = site.visit, .person = person}));
  }
  JournalRow row_of(const Uuid& record) {
    auto rows = opened->tables().prepare(std::string("SELECT ") + journal_columns +
                                         " FROM journal WHERE id = ?");
    REQUIRE(rows);
    rows->bind(1, record);
    REQUIRE(taken(rows->step()));
    return journal_row(*rows);
  }
  Sealed sealed(const Uuid& record) {
    return taken(from_body<Sealed>(taken(decode_record(row_of(record).bytes)).body));
  }
  /// Puts other bytes in a record's place and makes all digests from there on anew, as someone who
  /// knows the format would.
  void forge(const Uuid& record, const cbor::Bytes& bytes) {
    const JournalRow changed = row_of(record);
    auto rows = opened->tables().prepare(
        std::string("SELECT ") + journal_columns +
        " FROM journal WHERE feed = ? AND dev = ? AND seq >= ? ORDER BY seq");
    REQUIRE(rows);
    rows->bind(1, changed.feed).bind(2, changed.dev).bind(3, changed.seq - 1);
    std::vector<JournalRow> chain;
    while (taken(rows->step())) chain.push_back(journal_row(*rows));
    for (std::size_t i = 1; i < chain.size(); ++i) {
      if (chain[i].id == record) chain[i].bytes = bytes;
      chain[i].digest = chain_next(chain[i - 1].digest, chain[i].bytes);
      auto update =
          opened->tables().prepare("UPDATE journal SET bytes = ?, digest = ? WHERE lid = ?");
      REQUIRE(update);
      update->bind(1, chain[i].bytes).bind(2, chain[i].digest).bind(3, chain[i].lid);
      taken(update->step());
    }
  }
  std::string problems() {
    std::string all;
    for (const auto& problem : taken(opened->verify()).problems) all += problem + "\n";
    return all;
  }
};

}  // namespace

TEST_CASE_METHOD(Visited, "a seal counts what that person did and signs the chain", "[schema]") {
  const auto head = row_of(taken(opened->save(coating(site, 30))));
  const Uuid id = seal(site.person);
  const Sealed body = sealed(id);
  CHECK(body.last_seq == head.seq);
  CHECK(body.chain_digest == head.digest);
  CHECK(body.first_seq == row_of(site.visit).seq);
  CHECK(body.count_by_kind == std::map<std::int64_t, std::int64_t>{{10, 1}, {12, 1}, {21, 13}});
  CHECK(body.not_reached_count == 1);

  // The signed text once more, as the format says it.
  std::vector<std::uint8_t> text;
  const auto add = [&](const auto& bytes) { text.insert(text.end(), bytes.begin(), bytes.end()); };
  add(std::string_view("kneerail seal 1"));
  add(site.site.bytes);
  add(opened->device().bytes);
  add(site.visit.bytes);
  add(std::array<std::uint8_t, 8>{0, 0, 0, 0, 0, 0, 0, static_cast<std::uint8_t>(head.seq)});
  add(head.digest);
  const auto files = machine_files();
  const Identity identity = taken(read_identity(*files, folder.path() / "identity"));
  const SigningKey key = signing_key(identity.signing_secret);
  CHECK(is_signed(key.shown, text, body.signature));
  text.back() ^= 1;
  CHECK_FALSE(is_signed(key.shown, text, body.signature));
  check_whole(*opened);
}

TEST_CASE_METHOD(Visited, "a visit is complete when everybody who joined has sealed", "[schema]") {
  const std::string complete = "SELECT complete FROM visit";
  seal(site.person);
  CHECK(counted(*opened, complete) == 0);
  const Uuid other = seal(second);
  CHECK(counted(*opened, complete) == 1);
  CHECK(sealed(other).count_by_kind == std::map<std::int64_t, std::int64_t>{{11, 1}, {21, 1}});
  CHECK(counted(*opened, "SELECT sum(after_seal) FROM visit_part") == 0);

  taken(opened->save(coating(site, 31)));
  CHECK(counted(*opened, "SELECT sum(after_seal) FROM visit_part") == 1);
  seal(site.person);
  CHECK(counted(*opened, "SELECT sum(sealed_again) FROM visit_part") == 1);
  CHECK(counted(*opened, "SELECT sum(after_seal) FROM visit_part") == 0);
  check_whole(*opened);
}

TEST_CASE_METHOD(Visited, "who has no part in a visit cannot seal it", "[schema]") {
  const auto records = counted(*opened, "SELECT count(*) FROM journal");
  const auto refused =
      opened->seal({.site = site.site, .visit = site.visit, .person = id_of(10, 9)});
  REQUIRE_FALSE(refused);
  CHECK(refused.error().fault == Fault::not_found);
  CHECK_THAT(refused.error().message, Contains("Nothing was sealed"));
  CHECK(counted(*opened, "SELECT count(*) FROM journal") == records);
}

TEST_CASE_METHOD(Visited, "a sealed record that was changed with its whole chain shows",
                 "[schema]") {
  const Uuid target = taken(opened->save(coating(site, 40)));
  seal(site.person);
  CHECK(problems().empty());
  SplitMix64 chance(40);
  Record record = taken(decode_record(row_of(target).bytes));
  record.body.set(3, cbor::Array{900 + chance.between(1, 99)});
  forge(target, encode(record));
  CHECK_THAT(problems(), Contains("does not fit the records it closes"));
}

TEST_CASE_METHOD(Visited, "a seal made to fit without the device's key shows", "[schema]") {
  const Uuid target = taken(opened->save(coating(site, 40)));
  const Uuid id = seal(site.person);
  Record record = taken(decode_record(row_of(target).bytes));
  record.body.set(3, cbor::Array{950});
  forge(target, encode(record));
  Record forged = taken(decode_record(row_of(id).bytes));
  Sealed body = sealed(id);
  body.chain_digest = row_of(target).digest;
  forged.body = to_body(body);
  forge(id, encode(forged));
  CHECK_THAT(problems(), Contains("signature that is not this device's"));
  CHECK_THAT(problems(), !Contains("does not fit the records it closes"));
}
