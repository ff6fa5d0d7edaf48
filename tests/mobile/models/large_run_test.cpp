// A walk of a long run: what a step and an entry cost does not grow with it. Work is counted in the
// steps of SQLite's own machine, so that it is the same on a busy machine.

#include <catch2/catch.hpp>

#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// The work of the screens' reader, taken while it is walked.
struct Work {
  std::int64_t open = 0;
  std::int64_t post_to_post = 0;  ///< ten posts on
  std::int64_t grades = 0;        ///< of ten tees
  std::int64_t readings = 0;      ///< full sets on ten tees
};

/// A fifth more, and a few statements: pages lie otherwise in a larger file.
std::int64_t about(std::int64_t work) {
  return work + work / 5 + 1000;
}

/// Runs beside the walked one, with so many parts in all.
std::vector<Entry> other_runs(const WalkedSite& site, std::size_t parts) {
  std::vector<Entry> all;
  constexpr int posts_of_run = 500;
  constexpr std::uint32_t parts_of_post = 10;
  constexpr std::uint32_t free_ids = 1'000'000;  // the walked site's are below
  for (std::uint32_t post = 0; post * parts_of_post < parts; ++post) {
    const std::uint32_t n = free_ids + post;
    const Uuid run = id_of(4, free_ids + post / posts_of_run);
    if (post % posts_of_run == 0)
      all.push_back(created(site.site, run, 4, site.zone, {{1, "Wall"}, {5, 1100}}));
    const std::int64_t along_mm = 1500 * (post % posts_of_run);
    all.push_back(created(site.site, id_of(5, n), 5, run, {{1, "1"}, {2, along_mm}}));
    for (std::uint32_t part = 0; part < parts_of_post; ++part)
      all.push_back(created(site.site, id_of(7, parts_of_post * n + part), 7, id_of(5, n),
                            {{1, 5}, {2, site.tee_type}, {4, 2}}));
  }
  return all;
}

class Costs {
 public:
  /// A run of so many posts, in a register of so many parts at least.
  explicit Costs(int posts, std::size_t parts = 0) : walking_(posts) {
    const std::size_t own = 2 * static_cast<std::size_t>(posts);
    if (parts > own) {
      walking_.switch_off();
      walking_.write_down(other_runs(walking_.site(), parts - own));
      walking_.switch_on();
    }
    walking_.store().reader().tables().watch(&watch_);
    work_.open = work_of([&] { walking_.walk().open(walking_.site().run); });
  }
  ~Costs() { walking_.store().reader().tables().watch(nullptr); }
  Costs(const Costs&) = delete;
  Costs& operator=(const Costs&) = delete;

  /// Ten posts from this one on.
  Work walk_from(int first) {
    work_.post_to_post = work_of([&] {
      walking_.walk().choosePost(first);
      for (int i = 0; i < 10; ++i) walking_.walk().stepPost(1);
    });
    work_.grades = work_of([&] {
      for (int i = 0; i < 10; ++i) grade(first + i);
    });
    work_.readings = work_of([&] {
      for (int i = 0; i < 10; ++i) read_coating(first + i);
    });
    return work_;
  }
  Walking& walking() { return walking_; }

 private:
  template <class Do>
  std::int64_t work_of(Do touch) {
    const std::int64_t before = watch_.steps;
    touch();
    walking_.settle();
    return watch_.steps - before;
  }
  void grade(int post) {
    walking_.walk().choosePart(place_of_tee(post));
    walking_.walk().chooseGrade(2);
    walking_.settle();
    REQUIRE(walking_.walk().grade_now() == 2);
  }
  void read_coating(int post) {
    walking_.walk().choosePart(place_of_tee(post));
    for (int slot = 0; slot < CoatingSet::slot_count; ++slot) walking_.type("74");
    walking_.settle();
  }
  /// A post's own parts stand bottom up: the cross, then the tee.
  [[nodiscard]] int place_of_tee(int post) {
    const auto sheet = walking_.walk().run()->sheet();
    return sheet->posts.at(static_cast<std::size_t>(post)).first_part + 1;
  }

  Watch watch_{.every = 1};
  Walking walking_;
  Work work_;
};

}  // namespace

TEST_CASE("a step and an entry cost the same on a run ten times as long", "[mobile][walk]") {
  Costs small(40);
  Costs large(400);
  const Work of_small = small.walk_from(20);
  const Work of_large = large.walk_from(200);
  CHECK(of_small.grades > 0);
  CHECK(of_large.open < 12 * of_small.open);
  CHECK(of_large.post_to_post <= about(of_small.post_to_post));
  CHECK(of_large.grades <= about(of_small.grades));
  CHECK(of_large.readings <= about(of_small.readings));
}

TEST_CASE("the hundredth entry of a visit costs what the first ones do", "[mobile][walk]") {
  Costs measured(140);
  const Work first = measured.walk_from(0);
  for (int from = 10; from < 110; from += 10) measured.walk_from(from);
  const Work last = measured.walk_from(120);
  CHECK(last.grades <= about(first.grades));
  CHECK(last.readings <= about(first.readings));
}

TEST_CASE("a register of 100,000 parts is opened, walked and entered", "[.slow][mobile][walk]") {
  constexpr int longest_posts = 6'600;  // as many as a run of 10 km has
  Costs small(40);
  Costs large(longest_posts, 100'000);
  CHECK(large.walking().count("SELECT count(*) FROM entity WHERE type = 7") >= 100'000);
  REQUIRE(large.walking().walk().run()->sheet()->parts.size() == 2 * longest_posts);
  const Work of_small = small.walk_from(20);
  const Work of_large = large.walk_from(3'300);
  CHECK(of_large.open < 500 * of_small.open);  // 165 times the posts, which are sorted
  CHECK(of_large.post_to_post <= about(of_small.post_to_post));
  CHECK(of_large.grades <= about(of_small.grades));
  CHECK(of_large.readings <= about(of_small.readings));
  CHECK(large.walking().recorded(3'303) == std::vector<std::int64_t>(5, 740));
}
