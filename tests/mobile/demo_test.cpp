#include <catch2/catch.hpp>
#include <memory>

#include "mobile/demo/skerrymouth.h"
#include "schema/store/register.h"
#include "tests/mobile/process.h"

using namespace kneerail;
using kneerail::test::Folder;

namespace {

std::unique_ptr<Register> open_to_read(const std::string& folder) {
  auto opened = Register::open({.folder = folder, .mode = Mode::read});
  INFO((opened ? std::string() : opened.error().message));
  REQUIRE(opened);
  return std::move(*opened);
}

demo::Made make(const std::string& folder, std::uint64_t seed) {
  const auto made = demo::make_skerrymouth({.folder = folder, .seed = seed});
  INFO((made ? std::string() : made.error().message));
  REQUIRE(made);
  return *made;
}

/// Skerrymouth, made once for all the sections of a test.
struct Story {
  Folder folder;
  demo::Made made;
  std::unique_ptr<Register> reg;

  Story() {
    made = make(folder / "register", demo::default_seed);
    reg = open_to_read(folder / "register");
  }
  std::int64_t count(const std::string& sql) const {
    const auto number = reg->tables().number(sql);
    INFO(sql << ": " << (number ? std::string() : number.error().message));
    REQUIRE(number);
    return *number;
  }
};

const Story& story() {
  static const Story one;
  return one;
}

std::int64_t count(const std::string& sql) {
  return story().count(sql);
}

std::string run_parts(const std::string& code) {
  return "(SELECT part.id FROM entity AS part JOIN entity AS place ON place.id = part.parent JOIN "
         "entity AS run ON run.id = place.parent WHERE part.type = 7 AND run.code = '" +
         code + "')";
}

}  // namespace

TEST_CASE("Skerrymouth holds what was promised of it", "[mobile][.slow]") {
  SECTION("four sites, 620 posts, about 2,500 fittings, eight years of visits") {
    CHECK(count("SELECT count(*) FROM entity WHERE type = 2") == 4);
    CHECK(count("SELECT count(*) FROM entity WHERE type = 5") == 620);
    const std::int64_t fittings = count("SELECT count(*) FROM entity WHERE type = 7 AND role = 5");
    CHECK(fittings >= 2400);
    CHECK(fittings <= 2600);
    CHECK(fittings == story().made.fittings);
    CHECK(count("SELECT (max(t) - min(t)) / 31557600000 FROM visit") == 8);
    CHECK(count("SELECT count(*) FROM visit") == story().made.visits);
    CHECK(story().made.records > 30'000);
    CHECK(story().made.records < 95'000);
  }
  SECTION("every visit is closed by a seal of each who took part; nothing came after") {
    CHECK(count("SELECT count(*) FROM visit WHERE complete = 0") == 0);
    CHECK(count("SELECT count(*) FROM visit_part") ==
          count("SELECT count(*) FROM fact WHERE kind = 13"));
    CHECK(count("SELECT sum(after_seal) + sum(sealed_again) FROM visit_part") == 0);
  }
  SECTION("three inspectors, two coating gauges, everything before its last day") {
    CHECK(count("SELECT count(DISTINCT who) FROM reading WHERE kind = 21") == 3);
    CHECK(count("SELECT count(DISTINCT instrument) FROM reading WHERE kind = 21") == 2);
    CHECK(count("SELECT max(t) FROM reading") < noon_utc(demo::as_of()).ms);
    CHECK(count("SELECT max(t) FROM reading") > noon_utc(Date{demo::as_of().days - 45}).ms);
  }
  SECTION("a dozen replaced fittings, each with a life of its own") {
    CHECK(count("SELECT count(*) FROM work WHERE action = 3") == 12);
    CHECK(count("SELECT count(*) FROM life WHERE start_action = 3") == 12);
    CHECK(count("SELECT count(*) FROM reading JOIN life ON life.life = reading.life WHERE "
                "life.start_action = 3 AND reading.kind = 21") > 12);
  }
  SECTION("one run re-galvanised, closed for it and opened after a look") {
    CHECK(count("SELECT count(*) FROM work JOIN entity ON entity.id = work.subject WHERE "
                "work.action = 5 AND entity.code = 'LI-B'") == 1);
    CHECK(count("SELECT count(*) FROM closure WHERE why = 3 AND standing = 1") == 0);
  }
  SECTION("one run of aluminium, measured by mistake twice") {
    CHECK(count("SELECT count(*) FROM reading WHERE kind = 21 AND subject IN " +
                run_parts("CS-D")) == 2);
    CHECK(count("SELECT count(*) FROM reading WHERE kind = 20 AND subject IN " +
                run_parts("CS-D")) > 100);
  }
  SECTION("a welded stretch under paint, one section cut out and welded in") {
    CHECK(count("SELECT count(*) FROM reading WHERE kind = 21 AND subject IN " +
                run_parts("NM-D")) == 0);
    CHECK(count("SELECT count(*) FROM work WHERE action = 4") == 1);
  }
}

TEST_CASE("what went wrong at Skerrymouth is in its tables", "[mobile][.slow]") {
  SECTION("struck every winter, opened again, nothing missing") {
    CHECK(count("SELECT count(*) FROM strike") == 13);
    CHECK(count("SELECT count(*) FROM strike WHERE state = 3") == 13);
    CHECK(count("SELECT sum(missing_count) FROM strike") == 0);
    CHECK(count("SELECT count(*) FROM strike_step WHERE step = 3") > 1000);
    CHECK(count("SELECT count(*) FROM closure WHERE why = 7") == 13);
    CHECK(count("SELECT count(*) FROM closure WHERE why = 7 AND standing = 1") == 0);
    CHECK(count("SELECT count(*) FROM strike_hours") == 26);
  }
  SECTION("one fitting came back from another place: a doubtful life") {
    CHECK(count("SELECT count(*) FROM life WHERE doubtful = 1") == 1);
  }
  SECTION("hazards made safe and ended; one stands") {
    CHECK(count("SELECT count(*) FROM finding WHERE hazard_state = 3") == 5);
    CHECK(count("SELECT count(*) FROM finding WHERE hazard_state = 2") == 1);
    CHECK(count("SELECT count(*) FROM finding WHERE hazard_state = 1") == 0);
    CHECK(count("SELECT count(*) FROM finding JOIN entity ON entity.id = finding.subject JOIN "
                "entity AS post ON post.id = entity.parent WHERE post.label = '118' AND "
                "finding.what = 1 AND finding.grade = 5 AND finding.ended_how = 2") == 1);
    CHECK(count("SELECT count(*) FROM closure_look") > 10);
  }
  SECTION("findings that can wait have a next step") {
    CHECK(count("SELECT count(*) FROM finding WHERE hazard_state = 0 AND next_step IS NOT NULL") >
          5);
  }
  SECTION("what others told was looked at; the last is open") {
    CHECK(count("SELECT count(*) FROM told") == 4);
    CHECK(count("SELECT count(*) FROM told WHERE open = 1") == 1);
  }
  SECTION("one slip of the pen was corrected, one made void") {
    CHECK(count("SELECT count(*) FROM reading WHERE corrected_by IS NOT NULL") == 1);
    CHECK(count("SELECT count(*) FROM reading WHERE voided_by IS NOT NULL") == 1);
  }
  SECTION("two grades of one fitting on one visit are a disagreement") {
    CHECK(count("SELECT count(*) FROM disagreement") >= 1);
  }
  SECTION("a run carries its new name") {
    CHECK(count("SELECT count(*) FROM entity WHERE type = 4 AND name = 'Harbour walk'") == 1);
    CHECK(count("SELECT count(*) FROM entity WHERE type = 4 AND name = 'Quay walk'") == 0);
  }
  SECTION("screws, walls, hands and rulers have their readings") {
    CHECK(count("SELECT count(*) FROM reading WHERE kind = 22") > 1000);
    CHECK(count("SELECT count(DISTINCT censoring) FROM reading WHERE kind = 22") == 3);
    CHECK(count("SELECT count(*) FROM reading WHERE kind = 23") > 100);
    CHECK(count("SELECT count(*) FROM reading WHERE kind = 24 AND what = 3") == 2);
    CHECK(count("SELECT count(*) FROM reading WHERE kind = 25") > 10);
    CHECK(count("SELECT count(*) FROM not_reached") > 5);
  }
  SECTION("the gauge that drifted was found out at its calibration") {
    CHECK(count("SELECT count(*) FROM calibration WHERE as_found IS NOT NULL") == 1);
  }
  SECTION("the register is whole") {
    const auto checked = story().reg->verify();
    REQUIRE(checked);
    CHECK(checked->problems.empty());
    CHECK(checked->records >= story().made.records);
  }
}

TEST_CASE("a day at Sea wall west begins with what earlier visits left", "[mobile][.slow]") {
  const std::string posts =
      "(SELECT post.id FROM entity AS post JOIN entity AS run ON run.id = post.parent WHERE "
      "post.type = 5 AND run.code = 'NM-B')";
  const std::string fittings =
      "(SELECT part.id FROM entity AS part JOIN entity AS post ON post.id = part.parent WHERE "
      "part.type = 7 AND part.role = 5 AND post.label = '118' AND post.id IN " +
      posts + ")";
  SECTION("each fitting of post 118 was measured at every yearly visit since it is there") {
    const auto fewest =
        "SELECT min(visits) FROM (SELECT count(DISTINCT reading.visit) AS visits FROM reading JOIN "
        "life ON life.life = reading.life WHERE life.start_action = 0 AND reading.kind = 21 AND "
        "reading.subject IN " +
        fittings + " GROUP BY reading.subject)";
    CHECK(count("SELECT count(DISTINCT subject) FROM reading WHERE kind = 21 AND subject IN " +
                fittings) == count("SELECT count(*) FROM entity WHERE id IN " + fittings));
    CHECK(count(fewest) >= 7);
    CHECK(count("SELECT count(*) FROM (SELECT subject FROM reading WHERE kind = 21 AND subject "
                "IN " +
                fittings + " GROUP BY subject HAVING count(DISTINCT visit) = 9)") >= 3);
  }
  SECTION("each of its screws was checked in the last visit, against a target") {
    CHECK(count("SELECT count(*) FROM reading WHERE kind = 22 AND subject IN " + fittings +
                " AND visit = (SELECT visit FROM reading WHERE kind = 20 AND subject IN " +
                fittings + " ORDER BY t DESC LIMIT 1)") == 8);
    CHECK(count("SELECT count(*) FROM reading WHERE kind = 22 AND rest IS NULL AND subject IN " +
                fittings) == 0);  // the target at the time stands there
  }
  SECTION("one target has a tenth of a newton metre") {
    CHECK(count("SELECT count(*) FROM reading WHERE kind = 22 AND wrench_set_tenth_nm = 108") > 0);
  }
  SECTION("most posts may be said to be as last time, and not all") {
    // Of the grades of a part: the last is 1 or 2, and it was not carried the last two times.
    const std::string parts =
        "(SELECT part.id, part.parent AS post FROM entity AS part WHERE part.type = 7 AND "
        "part.parent IN " +
        posts + ")";
    const std::string to_look_at =
        "SELECT count(DISTINCT post) FROM " + parts +
        " AS part WHERE (SELECT v1 FROM reading WHERE kind = 20 AND subject = part.id ORDER BY t "
        "DESC, record DESC LIMIT 1) > 2 OR (SELECT sum(carried) FROM (SELECT carried FROM reading "
        "WHERE kind = 20 AND subject = part.id ORDER BY t DESC, record DESC LIMIT 2)) = 2";
    const std::int64_t looked_at = count(to_look_at);
    INFO(looked_at << " of 150 posts have to be looked at afresh");
    CHECK(looked_at < 75);
    CHECK(looked_at > 5);
  }
  SECTION("no part is graded better than the coating that was read on it that day") {
    auto rows = story().reg->tables().prepare(
        "SELECT read.replicates, kind.coating_nominal_tenth_um, (SELECT max(v1) FROM reading AS "
        "grade WHERE grade.kind = 20 AND grade.subject = read.subject AND grade.visit = "
        "read.visit) "
        "FROM reading AS read JOIN entity AS part ON part.id = read.subject JOIN entity AS kind ON "
        "kind.id = part.component_type WHERE read.kind = 21 AND read.voided_by IS NULL AND "
        "read.corrected_by IS NULL AND kind.coating_nominal_tenth_um > 0");
    REQUIRE(rows);
    int thin = 0;
    int looks_better = 0;
    for (auto more = rows->step(); more && *more; more = rows->step()) {
      const auto read = cbor::decode(rows->bytes(0));
      REQUIRE(read);
      std::int64_t sum = 0;
      for (const auto& one : *read->array()) sum += *one.number();
      if (2 * sum >= rows->number(1) * std::ssize(*read->array()) || rows->is_null(2)) continue;
      ++thin;
      looks_better += rows->number(2) < 3 ? 1 : 0;
    }
    INFO(thin << " readings under half of their nominal");
    CHECK(thin > 500);
    CHECK(looks_better == 0);
  }
  SECTION("both coating gauges were zeroed on the last day") {
    CHECK(count("SELECT count(DISTINCT subject) FROM instrument_check WHERE what = 1 AND t > " +
                std::to_string(noon_utc(demo::as_of()).ms - 43'200'000)) == 2);
  }
}

TEST_CASE("the same seed makes the same register, another seed another", "[mobile][.slow]") {
  const Folder folder;
  const demo::Made made = make(folder / "first", 4711);
  make(folder / "again", 4711);
  make(folder / "other", 4712);
  const auto digest = [&](const char* name) {
    const auto one = open_to_read(folder / name)->table_digest();
    REQUIRE(one);
    return *one;
  };
  INFO("seeds 4711 and 4712");
  CHECK(digest("first") == digest("again"));
  CHECK(digest("first") != digest("other"));
  CHECK(made.posts == 620);
}

TEST_CASE("the demo is not made over a register that is there", "[mobile][.slow]") {
  const Folder folder;
  std::int64_t told = 0;
  const auto stop_at_once = [&](std::int64_t records) {
    told = records;
    return false;
  };
  const auto stopped = demo::make_skerrymouth({.folder = folder / "register"}, stop_at_once);
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().fault == Fault::cancelled);
  CHECK(told > 0);
  const auto second = demo::make_skerrymouth({.folder = folder / "register"});
  REQUIRE_FALSE(second);
  CHECK(second.error().fault == Fault::invalid_input);
  CHECK(second.error().message.find("Nothing was changed") != std::string::npos);
}
