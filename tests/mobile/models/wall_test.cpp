// The Wall pad of a walk: a record for each hour of the clock, its words, and what may go wrong.

#include <catch2/catch.hpp>

#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// A walked site whose first post has a tube of 3.2 mm, and a gauge that shows tenths.
class WallWalk {
 public:
  WallWalk() {
    walking_.switch_off();
    const WalkedSite& site = walking_.site();
    walking_.write_down({created(site.organisation, gauge_, 9, site.organisation,
                                 {{1, 3}, {2, "U4"}, {3, 10}, {6, cbor::Array{80, 2'000}}}),
                         created(site.organisation, type_, 8, site.organisation,
                                 {{2, 1}, {3, 1}, {4, 483}, {5, 32}, {12, 1}}),
                         created(site.site, tube_, 7, site.posts[0],
                                 {{1, 1}, {2, type_}, {3, cbor::Array{0, 500}}}),
                         read_last_year(6, {300, 290}), read_last_year(0, {280})});
    walking_.switch_on();
    choose();
  }

  Walking& walking() { return walking_; }
  WalkModel& walk() { return walking_.walk(); }
  WallCheck& wall() { return *walk().wall(); }
  void choose() {
    const auto& parts = walk().run()->sheet()->parts;
    for (std::size_t i = 0; i < parts.size(); ++i)
      if (parts[i].id == tube_) walk().choosePart(static_cast<int>(i));
    walk().openPad(WalkModel::WallPad);
  }
  void type(const QString& digits) {
    for (const QChar digit : digits) wall().digit(digit.digitValue());
    wall().nextSlot();
  }
  QString text(int slot, WallCheck::Role role = WallCheck::TextRole) {
    return wall().data(wall().index(slot), role).toString();
  }
  bool is(int slot, WallCheck::Role role) { return wall().data(wall().index(slot), role).toBool(); }
  std::int64_t records() {
    return walking_.count("SELECT count(*) FROM reading WHERE kind = 23 AND visit IS NOT x'" +
                          to_hex(walking_.site().last_visit) + "' AND voided_by IS NULL");
  }

 private:
  static std::string to_hex(const Uuid& id) {
    constexpr const char* digits = "0123456789abcdef";
    std::string hex;
    for (const std::uint8_t byte : id.bytes) {
      hex += digits[byte >> 4];
      hex += digits[byte & 15];
    }
    return hex;
  }
  [[nodiscard]] Entry read_last_year(int clock, const std::vector<std::int64_t>& values) const {
    cbor::Array replicates;
    for (const std::int64_t value : values) replicates.emplace_back(value);
    const WalkedSite& site = walking_.site();
    return {site.site,
            23,
            tube_,
            site.person,
            {{1, site.last_visit},
             {2, gauge_},
             {3, replicates},
             {4, clock},
             {5, 5920},
             {6, 200},
             {98, tube_}},
            {}};
  }

  Walking walking_;
  Uuid gauge_ = id_of(9, 3);
  Uuid type_ = id_of(8, 3);
  Uuid tube_ = id_of(7, 100);
};

}  // namespace

TEST_CASE("the wall is asked at four hours of the clock", "[mobile][walk]") {
  WallWalk at;
  REQUIRE(at.walk().pad() == WalkModel::WallPad);
  CHECK(at.wall().title() == "Post tube, 200 mm above its base");
  CHECK(at.wall().facts() == "new 3.2 mm · last time 2.8 · owner's limit 2.56");
  CHECK(at.wall().current_slot() == 0);
  CHECK(at.text(0, WallCheck::GhostRole) == "2.8");
  CHECK(at.text(1, WallCheck::GhostRole).isEmpty());
  CHECK(at.text(2, WallCheck::GhostRole) == "2.95");
  CHECK(at.text(1, WallCheck::SpokenRole) == "Wall at 3 o'clock");
  at.wall().digit(2);
  at.wall().digit(9);
  CHECK(at.text(0) == "2.9");  // the gauge shows tenths: no key sets the point
  CHECK_FALSE(at.is(0, WallCheck::KeptRole));
  CHECK(at.walk().undo_words() == "2.9 mm");
  at.wall().nextSlot();
  CHECK_FALSE(at.is(0, WallCheck::KeptRole));  // not before the disk has it
  at.walking().settle();
  CHECK(at.is(0, WallCheck::KeptRole));
  CHECK(at.wall().current_slot() == 1);
  CHECK(at.records() == 1);
}

TEST_CASE("four walls go on to the next part, each its own record", "[mobile][walk]") {
  WallWalk at;
  const int tube = at.walk().run()->part();
  for (const char* value : {"29", "30", "28"}) at.type(value);
  at.walking().settle();
  CHECK(at.walk().run()->part() == tube);
  at.walk().typed("2.83");  // by a gauge that types, finer than its keys
  at.walking().settle();
  CHECK(at.records() == 4);
  CHECK(at.walk().run()->part() != tube);
  at.choose();
  CHECK(at.wall().current_slot() == -1);
  CHECK(at.text(3) == "2.83");
  CHECK(at.is(3, WallCheck::KeptRole));
  const auto rest = at.walking().count(
      "SELECT count(*) FROM reading WHERE kind = 23 AND replicates = x'8119011b'");
  CHECK(rest == 1);  // 283
}

TEST_CASE("a wall is taken back and put back", "[mobile][walk]") {
  WallWalk at;
  at.type("29");
  at.walking().settle();
  at.wall().digit(3);
  at.walk().undo();  // first the digits
  CHECK(at.text(1).isEmpty());
  at.walk().redo();
  CHECK(at.text(1) == "0.3");
  at.walk().undo();
  at.walk().undo();
  at.walking().settle();
  CHECK(at.records() == 0);
  CHECK(at.text(0).isEmpty());
  at.walk().redo();
  at.walking().settle();
  CHECK(at.records() == 1);
  CHECK(at.text(0) == "2.9");
}

TEST_CASE("a thin wall is kept and asked about", "[mobile][walk]") {
  WallWalk at;
  at.type("25");
  at.walking().settle();
  CHECK(at.is(0, WallCheck::KeptRole));
  CHECK(at.wall().under());
  CHECK(at.wall().ask_words() ==
        "Under the owner's limit of 2.56: keep people off it until it is looked at.");
  CHECK_FALSE(at.is(0, WallCheck::LookAgainRole));
  at.type("18");  // under six tenths of 3.2
  at.walking().settle();
  CHECK(at.is(1, WallCheck::LookAgainRole));
  CHECK(at.wall().ask_words() == "Far from its wall when new. Read it once more?");
  CHECK(at.records() == 2);
}

TEST_CASE("a wall that the disk refuses stays on the screen until it has it", "[mobile][walk]") {
  WallWalk at;
  at.walking().disk().set_read_only(true);
  at.type("29");
  at.walking().settle();
  CHECK(at.is(0, WallCheck::NotKeptRole));
  CHECK(at.walk().not_kept());
  at.walk().choosePart(at.walking().tee(1));
  at.choose();
  CHECK(at.text(0) == "2.9");
  CHECK(at.is(0, WallCheck::NotKeptRole));
  at.walking().disk().set_read_only(false);
  at.walk().tryAgain();
  at.walking().settle();
  CHECK(at.is(0, WallCheck::KeptRole));
  CHECK(at.records() == 1);
}

TEST_CASE("a wall that was finished survives a power cut", "[mobile][walk]") {
  WallWalk at;
  at.type("29");
  at.walking().settle();
  at.walking().cut_power(1);
  at.choose();
  CHECK(at.text(0) == "2.9");
  CHECK(at.is(0, WallCheck::KeptRole));
  CHECK(at.wall().current_slot() == 1);
}

TEST_CASE("the wall pad is for tubes, and refuses what is no wall", "[mobile][walk]") {
  WallWalk at;
  at.walk().typed("76");  // by the coating gauge: no wall of a tube of 48.3 mm
  at.walk().typed("25");
  at.walking().settle();
  CHECK(at.records() == 0);
  CHECK(at.walk().waiting_words() == "76 µm and 1 more waiting");
  CHECK(WallCheck::hundredth_mm_of("2,9") == 290);
  CHECK(WallCheck::hundredth_mm_of("50") == 5'000);
  CHECK_FALSE(WallCheck::hundredth_mm_of("50.01"));
  CHECK_FALSE(WallCheck::hundredth_mm_of("-1"));
  CHECK_FALSE(WallCheck::hundredth_mm_of("2.9.1"));
  at.walk().choosePart(at.walking().tee(0));
  CHECK_FALSE(at.walk().wall_offered());
  CHECK(at.walk().pad() != WalkModel::WallPad);
}
