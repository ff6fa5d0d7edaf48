// The power goes between any two writes. Whatever was said to be saved is there afterwards, nothing
// half a transaction, every chain whole, and the tables are what the records say.

#include <catch2/catch.hpp>
#include <optional>
#include <vector>

#include "tests/faults/fault_disk.h"
#include "tests/schema/register_fixture.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

const std::filesystem::path folder = "/register";

/// One disk through many cuts, and what its owner was told.
class Life {
 public:
  explicit Life(std::uint64_t seed) : world_(seed), random_(seed * 7919) {
    auto opened = made(world_, folder, site_, &disk_.files());
  }

  /// Works until the power goes, then looks at what is there.
  void work_and_cut() {
    auto opened = open();
    disk_.cut_after(random_.between(1, 60));
    while (!disk_.is_off()) act(*opened);
    opened.reset();
    disk_.restore_power(random_.next());
    if (random_.between(0, 3) == 0) cut_while_opening();
    opened = open();
    judge(*opened);
  }

  [[nodiscard]] std::size_t kept() const { return kept_.size(); }

 private:
  std::unique_ptr<Register> open() {
    world_.clock.move_on(1000);
    return taken(Register::open(world_.options(folder, Mode::write, &disk_.files())));
  }

  void cut_while_opening() {
    disk_.cut_after(random_.between(1, 25));
    auto opened = Register::open(world_.options(folder, Mode::write, &disk_.files()));
    if (opened) opened->reset();
    disk_.restore_power(random_.next());
  }

  void act(Register& opened) {
    world_.clock.move_on(random_.between(1, 3000));
    switch (random_.between(0, 4)) {
      case 0:
        return save_together(opened);
      case 1:
        return touch_draft(opened);
      case 2:
        return close_draft(opened);
      default:
        if (auto id = opened.save(coating(site_, ++number_))) kept_.push_back(*id);
    }
  }

  void save_together(Register& opened) {
    std::vector<Entry> entries;
    std::vector<Uuid> ids;
    for (std::int64_t i = random_.between(2, 6); i > 0; --i) {
      entries.push_back(coating(site_, ++number_));
      entries.back().id = opened.mint();
      ids.push_back(*entries.back().id);
    }
    groups_.push_back(ids);
    if (opened.save(entries)) kept_.insert(kept_.end(), ids.begin(), ids.end());
  }

  void touch_draft(Register& opened) {
    ++number_;
    const Draft draft = finding_draft(site_, number_, 3);
    if (opened.save_draft(draft)) drafted_.push_back(draft);
  }

  void close_draft(Register& opened) {
    auto drafts = taken(opened.drafts());
    if (drafts.empty()) return;
    if (auto id = opened.close_draft(drafts.front())) kept_.push_back(*id);
  }

  void judge(Register& opened) {
    for (const Uuid& id : kept_) CHECK(holds(opened, id));
    for (const auto& group : groups_) {
      const bool first = holds(opened, group.front());
      for (const Uuid& id : group) CHECK(holds(opened, id) == first);
    }
    // Every draft that was kept has become a finding by now, once.
    CHECK(taken(opened.drafts()).empty());
    CHECK(counted(opened, "SELECT count(*) FROM finding") >= std::ssize(drafted_));
    check_whole(opened);
  }

  faults::FaultDisk disk_;
  World world_;
  Site site_;
  SplitMix64 random_;
  std::int64_t number_ = 0;
  std::vector<Uuid> kept_;
  std::vector<std::vector<Uuid>> groups_;
  std::vector<Draft> drafted_;
};

void live(std::uint64_t seed, int cuts) {
  INFO(test::reproduce(seed));
  Life life(seed);
  for (int cut = 1; cut <= cuts; ++cut) {
    INFO("cut " << cut);
    life.work_and_cut();
  }
  CHECK(life.kept() > 0);
}

}  // namespace

TEST_CASE("power lost between any two writes loses no saved entry", "[faults][property]") {
  live(GENERATE(test::each_seed(1, 20)), 10);
}

TEST_CASE("2,000 cuts lose no saved entry", "[faults][property][.slow]") {
  live(GENERATE(test::each_seed(1001, 1100)), 20);
}
