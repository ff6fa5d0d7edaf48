// The wall forecast against a world of its own with known truth, in which hollows rust from inside.

#include <catch2/catch.hpp>
#include <cmath>

#include "core/forecast/wall/wall_forecast.h"
#include "tests/core/forecast/wall/made_walls.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

struct Tally {
  int answered = 0;
  int inside_80 = 0;
  int inside_50 = 0;
  int due = 0;        ///< truly within 10 years
  int told_late = 0;  ///< of those, 5 % quantile after the truth
  double said_open = 0;
  double said_closed = 0;
  int open = 0;
  int closed = 0;
};

void add(const MadeWalls& made, Tally& tally) {
  const auto forecast = forecast_walls(made.portfolio, {.threads = 1, .track_record = false});
  REQUIRE(forecast);
  for (const WallForecast& row : forecast->tubes) {
    if (!row.answered || !row.has_years) continue;
    const auto place = static_cast<std::size_t>(row.part);
    const double truth = made.wall_years[place];
    ++tally.answered;
    tally.inside_80 += row.years[1] <= truth && truth <= row.years[5];
    tally.inside_50 += row.years[2] <= truth && truth <= row.years[4];
    if (truth > 0 && truth <= 10) {
      ++tally.due;
      tally.told_late += row.years[0] > truth;
    }
    if (made.portfolio.parts[place].kind != PartKind::post_tube) continue;
    (made.open[place] ? tally.said_open : tally.said_closed) += row.open_chance;
    ++(made.open[place] ? tally.open : tally.closed);
  }
}

double share(int part, int whole) {
  return static_cast<double>(part) / std::max(1, whole);
}

}  // namespace

TEST_CASE("where hollows rust from inside the bands hold and few are told late",
          "[core][property]") {
  Tally read;
  Tally unread;
  for (const std::uint64_t seed : test::seeds(1, 3)) {
    INFO(test::reproduce(seed));
    const Made made = made_portfolio({.seed = seed, .days = 8});
    add(made_walls(made, {.seed = seed}), read);
    add(made_walls(made, {.seed = seed, .measured = 0}), unread);
  }
  INFO("read " << read.answered << ": 80 % " << share(read.inside_80, read.answered) << ", 50 % "
               << share(read.inside_50, read.answered) << ", due " << read.due << ", late "
               << read.told_late << "; hollows that rust said " << read.said_open / read.open
               << ", others " << read.said_closed / read.closed);
  INFO("unread " << unread.answered << ": 80 % " << share(unread.inside_80, unread.answered)
                 << ", 50 % " << share(unread.inside_50, unread.answered) << ", due " << unread.due
                 << ", late " << unread.told_late);
  REQUIRE(read.answered > 150);
  // Broad on purpose: an alarm, not a mark.
  CHECK(share(read.inside_80, read.answered) > 0.70);
  CHECK(share(read.inside_80, read.answered) < 0.93);
  CHECK(share(unread.inside_80, unread.answered) > 0.65);
  REQUIRE(read.due > 10);
  CHECK(share(read.told_late, read.due) < 0.15);
  CHECK(share(unread.told_late, unread.due) < 0.15);
  // Readings tell a hollow that rusts from one that does not.
  CHECK(read.said_open / read.open > read.said_closed / read.closed + 0.2);
}
