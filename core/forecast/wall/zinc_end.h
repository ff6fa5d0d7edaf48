#pragma once

// When the zinc of one way ends, as a chance of its age: the root of predictive.h at 0 um. Many
// thousand are asked for in a tube's row, of a dozen ways of its zinc; so each way's chance is laid
// on a curve once and read from there.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/forecast/predictive.h"
#include "core/forecast/wall/wall_paths.h"
#include "core/statistics/normal_table.h"

namespace kneerail::forecast {

/// One way the zinc may go; its start is normal.
struct ZincWay {
  double weight = 0;
  double um_per_year = 0;  ///< 0: bare
  double start_um = 0;
  double start_variance = 0;  ///< um^2
  double ahead = 1;           ///< loss after the as-of date, times
};

class ZincEnd {
 public:
  /// `coating` null: bare steel, whose zinc ends at age 0.
  ZincEnd(const Clock& clock, const PathTable* zinc_path, const Posterior* coating);

  /// Age at which the coating is at 0 um, the start at its mean; 0 for bare steel.
  [[nodiscard]] double age(const ZincWay& zinc) const;
  /// An age at which it is there with a chance no greater than that of `sds` under the mean.
  [[nodiscard]] double age_before(const ZincWay& zinc, double sds) const;
  /// Chance that it is there at an age.
  [[nodiscard]] double gone_chance(const ZincWay& zinc, double age_years) const;

  enum class Side { before_now, after_now };
  struct Rise {
    double chance;
    double slope;  ///< per year
  };
  /// The same with its slope, by the law of one side of the as-of date; ages above 0.
  [[nodiscard]] Rise rise(const ZincWay& zinc, double age_years, Side side) const;

  [[nodiscard]] double age_now() const { return age_now_; }
  /// No age under it has a chance.
  [[nodiscard]] double earliest_age() const;

 private:
  struct Lost {
    double over_start_um;  ///< lost, less the start
    double variance;
  };
  [[nodiscard]] double age_of_loss(const ZincWay& zinc, double lost_um) const;
  [[nodiscard]] Lost lost(const ZincWay& zinc, double effective_age) const;
  [[nodiscard]] double effective(double age_years) const {
    return path_ != nullptr ? path_->effective_age(age_years) : age_years;
  }

  const statistics::NormalTable& normal_ = statistics::normal_table();
  const PathTable* path_;  ///< null: start not known, age counts one to one
  double age_now_;
  double now_;  ///< effective
  double excess_um2_;
};

/// ZincEnd::gone_chance of several ways from cubic pieces; rising as it does. To 5e-5, and to 1e-3
/// near age 0, where a path is steep, of a start so unsure that no zinc is likely then.
class GoneCurves {
 public:
  GoneCurves(const ZincEnd& end, const std::vector<ZincWay>& zincs);

  /// Whether there is any chance at that age.
  [[nodiscard]] bool may_be_gone(std::size_t zinc, double age_years) const {
    return age_years > curves_[zinc].first_age;
  }

  [[nodiscard]] double chance(std::size_t zinc, double age_years) const {
    const Curve& curve = curves_[zinc];
    const double x = std::clamp((age_years - curve.first_age) * curve.per_year, 0.0, curve.last);
    if (x == curve.last && !curve.sure) return end_.gone_chance(curve.zinc, age_years);
    const auto i = static_cast<std::size_t>(x);
    const Piece& piece = pieces_[curve.first_piece + i];
    const double t = x - static_cast<double>(i);
    return piece.value + t * (piece.slope + t * (piece.square + t * piece.cube));
  }

 private:
  struct Piece {
    double value;
    double slope;
    double square;
    double cube;
  };
  struct Curve {
    ZincWay zinc;
    double first_age;  ///< where the first piece begins, which is 0 throughout
    double per_year;   ///< pieces
    double last;       ///< piece, from where the chance is 1; the first has number 0
    bool sure;         ///< or else that it is not laid out from there
    std::size_t first_piece;
  };

  [[nodiscard]] Curve laid_out(const ZincWay& zinc) const;
  void fill(const Curve& curve);

  ZincEnd end_;
  std::vector<Curve> curves_;
  std::vector<Piece> pieces_;
};

}  // namespace kneerail::forecast
