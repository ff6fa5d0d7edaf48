#include "schema/store/wall_store.h"

#include <algorithm>

#include "schema/store/run_layout.h"

namespace kneerail {

Result<std::vector<LastWall>> last_walls(Database& tables, const WallQuestion& question) {
  enum : int { sound = 5, height = 6, inside = 7 };
  std::vector<LastWall> last;
  auto done = each_row(
      tables,
      "SELECT spot, visit, replicates, rest FROM reading WHERE subject = ?1 AND kind = 23 AND "
      "life IS ?2 AND voided_by IS NULL AND held = 0 ORDER BY t DESC, record DESC",
      {question.part, question.life}, [&](const Statement& row) -> Result<> {
        const Uuid visit = row.uuid(1);
        if (question.visit ? visit != *question.visit : visit == question.not_of_visit)
          return Done{};
        const int clock = row.is_null(0) ? clock_not_stated : static_cast<int>(row.number(0));
        const bool newer = std::any_of(last.begin(), last.end(), [&](const LastWall& wall) {
          return wall.clock_position == clock;
        });
        if (newer) return Done{};
        const auto rest = map_in(row, 3);
        if (!rest) return fail(rest.error());
        LastWall wall{clock, numbers_in(row, 2), {}, number_in(*rest, height), {}};
        if (const auto speed = number_in(*rest, sound))
          wall.sound_m_per_s = static_cast<int>(*speed);
        if (const auto* hollow = rest->find(inside); hollow != nullptr)
          if (const auto* truth = hollow->truth()) wall.inside_the_hollow = *truth;
        last.push_back(std::move(wall));
        return Done{};
      });
  if (!done) return fail(done.error());
  std::sort(last.begin(), last.end(), [](const LastWall& a, const LastWall& b) {
    return a.clock_position < b.clock_position;
  });
  return last;
}

}  // namespace kneerail
