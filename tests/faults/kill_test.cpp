// The program is killed (kill -9) at random moments while it saves. Everything it had said to be
// kept is there, and the register is whole.

#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <set>
#include <string>
#include <vector>

#include "tests/faults/child.h"
#include "tests/faults/loop_entries.h"
#include "tests/schema/register_fixture.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

struct Told {
  std::vector<Uuid> records;
  std::set<std::string> drafts;  ///< "draft 12": the finding's text

  void take(const std::string& line) {
    if (line.starts_with("record ")) {
      const auto id = uuid_from_text(line.substr(7));
      REQUIRE(id);
      records.push_back(*id);
    } else if (line.starts_with("draft ")) {
      drafts.insert(line);
    }
  }
};

/// Lets the program save for a while that the seed decides, kills it, and gathers what it had said.
void save_and_kill(const std::filesystem::path& folder, SplitMix64& random, Told& told) {
  faults::Child child({std::string(KNEERAIL_BIN_DIR) + "/save-loop", folder.string(),
                       std::to_string(random.between(1, 1'000'000))});
  for (std::int64_t lines = random.between(0, 120); lines > 0; --lines) {
    const auto line = child.line();
    REQUIRE(line);
    told.take(*line);
  }
  // Not always right behind a line: the next save has got somewhere by then.
  volatile std::int64_t spin = random.between(0, 400'000);
  while (spin > 0) spin = spin - 1;
  child.kill();
  while (const auto line = child.line()) told.take(*line);
}

void judge(Register& opened, const Told& told) {
  for (const Uuid& id : told.records) CHECK(holds(opened, id));
  auto statement = opened.tables().prepare("SELECT count(*) FROM finding WHERE text = ?");
  REQUIRE(statement);
  for (const auto& text : told.drafts) {
    INFO(text);
    statement->bind(1, std::string_view(text));
    REQUIRE(taken(statement->step()));
    CHECK(statement->number(0) >= 1);
    statement->reset();
  }
  CHECK(taken(opened.drafts()).empty());
  check_whole(opened);
}

void kill_rounds(std::uint64_t seed, int rounds) {
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  Folder folder;
  Told told;
  for (int round = 1; round <= rounds; ++round) {
    INFO("round " << round);
    save_and_kill(folder.path(), random, told);
    World world(seed + static_cast<std::uint64_t>(round));
    Register::Options options;
    options.folder = folder.path();
    options.mode = Mode::create;
    auto opened = taken(Register::open(options));
    judge(*opened, told);
  }
  CHECK(told.records.size() > static_cast<std::size_t>(rounds));
}

}  // namespace

TEST_CASE("a program killed while it saves loses nothing it had kept", "[faults]") {
  kill_rounds(test::seed_or(11), 20);
}

TEST_CASE("200 killed programs lose nothing they had kept", "[faults][.slow]") {
  kill_rounds(GENERATE(test::each_seed(21, 30)), 20);
}
