#include "core/statistics/minimise.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace kneerail::statistics {

namespace {

using Point = std::vector<double>;

struct Corner {
  Point at;
  double value;
};

/// from + factor (to - from)
Point along(const Point& from, const Point& to, double factor) {
  Point result(from.size());
  for (std::size_t i = 0; i < from.size(); ++i) result[i] = from[i] + factor * (to[i] - from[i]);
  return result;
}

class Simplex {
 public:
  Simplex(const Objective& objective, const MinimiseOptions& options)
      : objective_(objective), options_(options) {}

  /// Walks until all corners are as high as each other.
  Corner walk(const Point& start, double step) {
    corners_.assign(1, corner(start));
    for (std::size_t i = 0; i < start.size(); ++i) {
      Point moved = start;
      moved[i] += step;
      corners_.push_back(corner(std::move(moved)));
    }
    sort();
    while (evaluations_ < options_.evaluations_max && !flat()) {
      improve();
      sort();
    }
    return corners_.front();
  }

  [[nodiscard]] int evaluations() const { return evaluations_; }
  double value(const Point& at) {
    ++evaluations_;
    return objective_(at);
  }

 private:
  Corner corner(Point at) {
    const double height = value(at);
    return {std::move(at), height};
  }

  void sort() {
    std::ranges::stable_sort(corners_, {}, [](const Corner& c) { return c.value; });
  }

  [[nodiscard]] bool flat() const {
    return corners_.back().value - corners_.front().value <= 0.01 * options_.tolerance;
  }

  /// Replaces the highest corner, or draws all towards the lowest.
  void improve() {
    const Point centre = centre_of_lower();
    Corner& worst = corners_.back();
    const Corner reflected = corner(along(worst.at, centre, 2));
    if (reflected.value < corners_.front().value) {
      Corner further = corner(along(worst.at, centre, 3));
      worst = further.value < reflected.value ? std::move(further) : reflected;
      return;
    }
    if (reflected.value < corners_[corners_.size() - 2].value) {
      worst = reflected;
      return;
    }
    const bool outside = reflected.value < worst.value;
    Corner nearer = corner(along(worst.at, centre, outside ? 1.5 : 0.5));
    if (nearer.value < std::min(reflected.value, worst.value)) {
      worst = std::move(nearer);
      return;
    }
    for (std::size_t i = 1; i < corners_.size(); ++i) {
      corners_[i] = corner(along(corners_[0].at, corners_[i].at, 0.5));
    }
  }

  [[nodiscard]] Point centre_of_lower() const {
    Point centre(corners_[0].at.size(), 0.0);
    for (std::size_t c = 0; c + 1 < corners_.size(); ++c) {
      for (std::size_t i = 0; i < centre.size(); ++i) centre[i] += corners_[c].at[i];
    }
    for (double& value : centre) value /= static_cast<double>(corners_.size() - 1);
    return centre;
  }

  const Objective& objective_;
  const MinimiseOptions& options_;
  std::vector<Corner> corners_;
  int evaluations_ = 0;
};

/// Gradient and second derivatives by central differences about the lowest point so far.
struct Slopes {
  Eigen::VectorXd gradient;
  Eigen::MatrixXd hessian;
};

Slopes slopes(Simplex& simplex, const Corner& low) {
  const auto n = static_cast<Eigen::Index>(low.at.size());
  Slopes result{Eigen::VectorXd(n), Eigen::MatrixXd(n, n)};
  const auto step = [&](Eigen::Index i) {
    return 1e-4 * std::max(1.0, std::abs(low.at[static_cast<std::size_t>(i)]));
  };
  const auto at = [&](Eigen::Index i, double si, Eigen::Index j, double sj) {
    Point moved = low.at;
    moved[static_cast<std::size_t>(i)] += si;
    moved[static_cast<std::size_t>(j)] += sj;
    return simplex.value(moved);
  };
  for (Eigen::Index i = 0; i < n; ++i) {
    const double h = step(i);
    const double up = at(i, h, i, 0);
    const double down = at(i, -h, i, 0);
    result.gradient(i) = (up - down) / (2 * h);
    result.hessian(i, i) = (up - 2 * low.value + down) / (h * h);
    for (Eigen::Index j = 0; j < i; ++j) {
      const double k = step(j);
      const double mixed =
          (at(i, h, j, k) - at(i, h, j, -k) - at(i, -h, j, k) + at(i, -h, j, -k)) / (4 * h * k);
      result.hessian(i, j) = result.hessian(j, i) = mixed;
    }
  }
  return result;
}

/// One Newton step; false when it would not go down by more than rounding.
bool newton_step(Simplex& simplex, Corner& low, double slack) {
  const Slopes found = slopes(simplex, low);
  const Eigen::LDLT<Eigen::MatrixXd> solver(found.hessian);
  if (!found.hessian.allFinite() || !solver.isPositive()) return false;
  const Eigen::VectorXd move = solver.solve(found.gradient);
  if (!move.allFinite()) return false;
  Point next = low.at;
  for (std::size_t i = 0; i < next.size(); ++i) next[i] -= move(static_cast<Eigen::Index>(i));
  const double value = simplex.value(next);
  if (!(value <= low.value + slack)) return false;
  const bool lower = value < low.value;
  low = {std::move(next), value};
  return lower;
}

}  // namespace

Minimum minimise(const Objective& objective, std::vector<double> start,
                 const MinimiseOptions& options) {
  Simplex simplex(objective, options);
  Corner low = simplex.walk(start, options.first_step);
  bool settled = false;
  double step = options.first_step;
  while (!settled && simplex.evaluations() < options.evaluations_max) {
    step *= 0.5;
    const Corner again = simplex.walk(low.at, step);
    settled = low.value - again.value <= options.tolerance;
    if (again.value <= low.value) low = again;
  }
  // Near the bottom the simplex sees only rounding; the derivatives still see where it lies.
  for (int i = 0; i < 4; ++i) {
    if (!newton_step(simplex, low, 1e-13 * std::abs(low.value))) break;
  }
  return {
      .at = low.at, .value = low.value, .evaluations = simplex.evaluations(), .settled = settled};
}

}  // namespace kneerail::statistics
