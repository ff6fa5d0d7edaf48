#include <catch2/catch.hpp>

#include "mobile/demo/skerrymouth.h"
#include "mobile/photograph/drawn_photograph.h"
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

demo::Made make(const demo::Options& options) {
  const auto made = demo::make_skerrymouth(options);
  INFO((made ? std::string() : made.error().message));
  REQUIRE(made);
  return *made;
}

std::int64_t number(Register& reg, const char* sql) {
  const auto found = reg.tables().number(sql);
  INFO(sql);
  REQUIRE(found);
  return *found;
}

}  // namespace

TEST_CASE("each finding of Skerrymouth has a photograph, and each photograph its object",
          "[mobile][.slow]") {
  const Folder folder;
  const auto with = make({.folder = folder / "with", .draw = photograph::drawn});
  const auto reg = open_to_read(folder / "with");
  CHECK(with.photographs > 15);
  CHECK(number(*reg, "SELECT count(*) FROM photograph") == with.photographs);
  // One was raised by mistake: there was nothing to photograph.
  CHECK(number(*reg,
               "SELECT count(*) FROM finding AS f WHERE NOT EXISTS (SELECT 1 FROM photograph "
               "AS p WHERE p.subject = f.record)") == 1);
  CHECK(number(*reg, "SELECT count(DISTINCT sha) FROM photograph") == with.photographs);
  CHECK(number(*reg,
               "SELECT count(*) FROM photograph AS p JOIN finding AS f ON f.record = "
               "p.subject WHERE (f.grade = 5) <> (p.marks IS NOT NULL)") == 0);

  auto rows =
      reg->tables().prepare("SELECT sha, size_bytes, preview_sha, preview_bytes FROM photograph");
  REQUIRE(rows);
  for (auto more = rows->step(); more && *more; more = rows->step()) {
    for (const int column : {0, 2}) {
      std::array<std::uint8_t, 32> sha{};
      std::copy_n(rows->bytes(column).begin(), sha.size(), sha.begin());
      const auto bytes = reg->object(sha);
      REQUIRE(bytes);
      CHECK(std::ssize(*bytes) == rows->number(column + 1));
    }
  }
  const auto checked = reg->verify();
  REQUIRE(checked);
  CHECK(checked->problems.empty());
  // And of each person a name and a number.
  CHECK(checked->objects == 2 * with.photographs + number(*reg,
                                                          "SELECT count(*) FROM object_use "
                                                          "WHERE kind = 1"));
  CHECK(number(*reg, "SELECT count(*) FROM object_use WHERE kind = 1") == 5);

  // The rest of the story is the same without them.
  const auto without = make({.folder = folder / "without"});
  CHECK(without.photographs == 0);
  CHECK(without.records + with.photographs == with.records);
  const auto other = open_to_read(folder / "without");
  for (const char* sum : {"SELECT sum(v1) FROM reading", "SELECT sum(t) FROM reading",
                          "SELECT count(*) FROM finding", "SELECT sum(last_t) FROM visit"})
    CHECK(number(*reg, sum) == number(*other, sum));
}
