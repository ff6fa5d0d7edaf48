#pragma once

// What each tube's wall is reckoned from: its coating's posterior, the clocks of its zinc and of
// its hollow, and the tables of both paths. For its row (wall_forecast.h), and for whoever needs
// more of it than the row.

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/forecast/coating_model.h"
#include "core/forecast/wall/wall_law.h"
#include "core/forecast/wall/wall_paths.h"

namespace kneerail::forecast {

/// The question of one tube and what its answer keeps of its coating. What it points to is gone
/// after the call that brought it.
struct AskedWall {
  const WallQuestion& question;
  double own_share = 0;   ///< of its coating's rate; 0: bare
  bool has_years = true;  ///< false: neither its age nor its wall is known
};

class WallQuestions {
 public:
  /// `coating` is the model fitted to that portfolio, or null where it serves no part. All outlive
  /// this. `kept` null, or of other exponents: tables are made where there is a tube.
  WallQuestions(const CoatingModel* coating, const Portfolio& portfolio,
                const WallPaths* kept = nullptr);
  WallQuestions(const WallQuestions&) = delete;
  WallQuestions& operator=(const WallQuestions&) = delete;

  [[nodiscard]] const WallData& data() const { return data_; }
  [[nodiscard]] const Portfolio& portfolio() const { return portfolio_; }

  /// Calls `answer` once with the question of a tube of data(); or returns why there is none, in
  /// words. Safe from many threads.
  std::optional<std::string> ask(const WallTube& tube,
                                 const std::function<void(const AskedWall&)>& answer) const;

 private:
  std::optional<std::string> ask_bare(const WallTube& tube,
                                      const std::function<void(const AskedWall&)>& answer) const;
  std::optional<std::string> ask_coated(const WallTube& tube,
                                        const std::function<void(const AskedWall&)>& answer) const;

  const CoatingModel* coating_;
  const Portfolio& portfolio_;
  WallData data_;
  std::optional<WallPaths> made_;
  const WallPaths* paths_;  ///< null: there is no tube
  std::vector<std::int32_t> served_;
};

}  // namespace kneerail::forecast
