// Reading again only what entries touch gives the sheet that reading everything gives.

#include <catch2/catch.hpp>

#include "schema/store/run_again.h"
#include "schema/store/run_store.h"
#include "tests/schema/register_fixture.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr std::uint32_t posts = 5;
constexpr std::uint32_t parts_of_post = 3;
const Uuid last_visit = id_of(20, 7);

/// A run of five posts with a bay between each two, in the register of all tests.
class Run {
 public:
  explicit Run(std::uint64_t seed) : chance_(seed) {
    std::vector<Entry> all;
    for (std::uint32_t post = 0; post < posts; ++post) {
      const std::int64_t place = post;
      all.push_back(created(site().site, id_of(5, 10 + post), 5, site().run,
                            {{1, std::to_string(post)}, {2, 1500 * place}, {3, place + 1}}));
      for (std::uint32_t part = 0; part < parts_of_post; ++part) {
        const std::int64_t up_mm = 300 * part;
        all.push_back(created(site().site, part_id(post, part), 7, id_of(5, 10 + post),
                              {{1, 5}, {3, cbor::Array{0, up_mm}}, {4, 2}}));
      }
      if (post > 0)
        all.push_back(created(site().site, id_of(6, post), 6, site().run,
                              {{1, id_of(5, 9 + post)}, {2, id_of(5, 10 + post)}, {3, 1}}));
    }
    all.push_back({site().site, 10, site().site, site().person, {{1, 1}}, last_visit});
    taken(made_.opened->save(all));
  }

  [[nodiscard]] const Site& site() const { return made_.site; }
  Database& tables() { return made_.opened->tables(); }
  RunSheet read() { return taken(read_run(tables(), site().run, site().visit)); }

  /// One to four entries as a walk or another hand makes them, on the disk.
  std::vector<Entry> enter() {
    std::vector<Entry> entries;
    const std::uint64_t count = 1 + below(4);
    for (std::uint64_t i = 0; i < count; ++i) entries.push_back(any());
    taken(made_.opened->save(entries));
    made_.world.clock.move_on(static_cast<std::int64_t>(below(100'000)));
    for (const Entry& entry : entries)
      if (entry.kind != 71) may_be_void_.push_back(*entry.id);
    return entries;
  }

 private:
  static Uuid part_id(std::uint32_t post, std::uint32_t part) {
    return id_of(7, 10 + parts_of_post * post + part);
  }
  std::uint64_t below(std::uint64_t end) { return chance_.next() % end; }
  Uuid any_part() {
    return part_id(static_cast<std::uint32_t>(below(posts)),
                   static_cast<std::uint32_t>(below(parts_of_post)));
  }
  Uuid any_post() { return id_of(5, 10 + static_cast<std::uint32_t>(below(posts))); }
  Uuid any_bay() { return id_of(6, 1 + static_cast<std::uint32_t>(below(posts - 1))); }

  Entry entry(int kind, const Uuid& subject, cbor::Map body) {
    return {site().site, kind, subject, site().person, std::move(body), id_of(40, ++records_)};
  }

  Entry any() {
    const Uuid visit = below(3) == 0 ? last_visit : site().visit;
    switch (below(12)) {
      case 0:
      case 1:
      case 2:
        return grade(visit);
      case 3:
      case 4:
        return entry(24, any_bay(), {{1, visit}, {2, static_cast<std::int64_t>(1 + below(4))}});
      case 5:
        return entry(12, below(5) == 0 ? site().run : any_post(),
                     {{1, visit}, {2, static_cast<std::int64_t>(1 + below(7))}});
      case 6: {
        const Uuid part = any_part();
        return entry(21, part,
                     {{1, visit},
                      {2, site().gauge},
                      {3, cbor::Array{std::int64_t{700}}},
                      {4, 1},
                      {98, part}});
      }
      case 7:
        return entry(30, any_part(),
                     {{1, visit},
                      {2, 1},
                      {3, static_cast<std::int64_t>(1 + below(5))},
                      {4, below(2) == 0},
                      {7, 1}});
      default:
        if (may_be_void_.empty()) return grade(visit);
        return entry(71, may_be_void_[below(may_be_void_.size())], {{1, "taken back"}});
    }
  }

  Entry grade(const Uuid& visit) {
    const Uuid part = any_part();
    cbor::Map body{{1, visit}, {2, static_cast<std::int64_t>(1 + below(5))}, {98, part}};
    if (below(2) == 0) body.set(97, true);  // as last time
    return entry(20, part, std::move(body));
  }

  SplitMix64 chance_;
  MadeRegister made_;
  std::uint32_t records_ = 0;
  std::vector<Uuid> may_be_void_;
};

}  // namespace

TEST_CASE("what entries touch, read again, gives the sheet that is read whole",
          "[schema][property]") {
  const auto seed = GENERATE(test::each_seed(1, 60));
  INFO(test::reproduce(seed));
  Run run(seed);
  RunSheet sheet = run.read();
  REQUIRE(sheet.parts.size() == 15 + run.site().components.size());
  int in_part = 0;
  for (int step = 0; step < 40; ++step) {
    const auto entries = run.enter();
    const RunTouched touched = taken(touched_by(run.tables(), sheet, entries));
    if (!touched.none()) sheet = taken(read_again(run.tables(), sheet, touched));
    in_part += touched.all ? 0 : 1;
    REQUIRE(sheet == run.read());
  }
  CHECK(in_part > 10);  // most of them are not read whole
}

TEST_CASE("a coating reading touches nothing on the sheet, a grade its part alone", "[schema]") {
  Run run(1);
  const RunSheet sheet = run.read();
  const Uuid part = sheet.parts[4].id;
  const Entry coating{run.site().site, 21, part, run.site().person, {}, id_of(41, 1)};
  CHECK(taken(touched_by(run.tables(), sheet, {coating})).none());
  const Entry grade{run.site().site, 20, part, run.site().person, {}, id_of(41, 2)};
  const RunTouched touched = taken(touched_by(run.tables(), sheet, {grade}));
  CHECK(touched.parts == std::vector<int>{4});
  CHECK((touched.bays.empty() && touched.posts.empty() && !touched.all));
  const Entry unknown{run.site().site, 40, part, run.site().person, {}, id_of(41, 3)};
  CHECK(taken(touched_by(run.tables(), sheet, {unknown})).all);
}
