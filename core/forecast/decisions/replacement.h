#pragma once

// When a part has to be replaced: its wall is down to the limit or its true grade is that at which
// its owner replaces, whichever chance is larger (they are dependent, so never multiplied),
//   F(y) = max(P(wall limit by y), P(grade G by y))
// of each year, with the parts' shared effects drawn in common (common_draws.h), for sums over
// parts. A part that is past is known to be so: seen at the grade its owner replaces at or a worse
// one (acted on as seen, whatever the model says), or as likely as not past by now. For a new part
// put up today in the same place the same, from the shared effects alone: what a replacement does
// next, and what another finish would do.
//
// Limits: set screws are tightened, not replaced for being loose; what a strike breaks is counted
// elsewhere (spares.h).

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/forecast/coating_model.h"
#include "core/forecast/decisions/common_draws.h"
#include "core/forecast/grade/grade_model.h"
#include "core/forecast/wall/wall_questions.h"

namespace kneerail::forecast {

/// Chances at the years asked, by themselves and in each draw.
struct DrawnChances {
  std::vector<double> by;     ///< one for each of the years
  std::vector<double> drawn;  ///< a row of years for each draw
};

/// What governs a replacement at the last of the years asked.
enum class ReplacedFor { nothing, wall, grade };

struct PartReplacement {
  bool past = false;              ///< known to be past, or as likely as not
  std::optional<Date> seen_past;  ///< seen last, on that day, at the grade to replace at or a worse
  DrawnChances reached;           ///< F; 0 for all years where no limit is answered
  ReplacedFor why = ReplacedFor::nothing;
  std::string wall_not_said;  ///< of a tube that stands there: why no wall is reckoned
};

/// A new part in the place of another.
struct NewPart {
  std::optional<double> nominal_um = {};  ///< of its zinc; none: as the part that stands there
};

class Replacements {
 public:
  /// The models fitted to that portfolio, null where none could be. All outlive this.
  Replacements(const Portfolio& portfolio, const CoatingModel* coating, const GradeModel* grades,
               int draws = draw_count);
  ~Replacements();
  Replacements(const Replacements&) = delete;
  Replacements& operator=(const Replacements&) = delete;

  [[nodiscard]] const Portfolio& portfolio() const { return portfolio_; }
  [[nodiscard]] int draws() const { return draws_; }

  /// Of a part by its place in the portfolio; years from the as-of date, rising. Safe from many
  /// threads.
  [[nodiscard]] PartReplacement of(std::int32_t part, std::span<const double> years) const;

  /// The same of a new part put up there today.
  [[nodiscard]] PartReplacement of_new(std::int32_t part, const NewPart& made,
                                       std::span<const double> years) const;
  /// The coating of such a part; nothing where the model does not serve it.
  [[nodiscard]] std::optional<Posterior> new_coating(std::int32_t part, const NewPart& made) const;

  /// Of the zinc that stands there now, um; 0 where the model does not serve it.
  [[nodiscard]] double nominal_um(std::int32_t part) const;

  /// Parts of one key share everything that a new part is reckoned from.
  [[nodiscard]] std::string new_part_key(std::int32_t part) const;

 private:
  class Inside;
  const Portfolio& portfolio_;
  int draws_;
  std::unique_ptr<const Inside> inside_;
};

}  // namespace kneerail::forecast
