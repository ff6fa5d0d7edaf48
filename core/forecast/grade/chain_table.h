#pragma once

// P(s) = exp(s Q) of a condition that goes 1 -> 2 -> 3 -> 4 -> 5 and never back: q_k the rate at
// which grade k is left, s the time those rates are multiplied by (years when q is per year; a part
// of speed e^x after t years has s = e^x t). Q is bidiagonal: -q_k on the diagonal, q_k beside it,
// grade 5 is left by nobody (Kalbfleisch and Lawless 1985, J. Am. Stat. Assoc. 80, 863-871, for
// such chains seen now and then).
//
// A table over ln s from 1e-4 to 2000 in steps of 0.02, by scaling and squaring (norm at most 0.25,
// 13 Taylor terms; Moler and Van Loan 2003, SIAM Rev. 45, method 3) with the exact derivative
// dP/d ln s = s P Q; between the points cubic Hermite, which keeps rows summing to 1. No closed
// form, so equal rates are no trouble. Largest error of an entry: under 6e-9 times the square of
// the largest rate, from 1e-4 down, where P is linear in s (a test compares with uniformization).
// Above 2000 P stays as it is there.

#include <array>
#include <vector>

namespace kneerail::forecast {

inline constexpr std::size_t grade_count = 5;

/// Chances of grades 1 to 5, or sums over them.
using GradeChances = std::array<double, grade_count>;
/// Rates at which grades 1 to 4 are left.
using GradeRates = std::array<double, grade_count - 1>;

class ChainTable {
 public:
  /// Rates above 0, at most about 50: above 1e-4 times 2000 the chain must have had its time.
  explicit ChainTable(const GradeRates& rates);

  /// The chances after: state P(s), in place. `ln_s` may be -inf (no time).
  void advance(double ln_s, GradeChances& state) const;

  /// P(s) times a column, in place: what a chance at the end means at the start.
  void go_back(double ln_s, GradeChances& column) const;

  /// Chance that `state` has reached `grade` (2 to 5) or worse after P(s).
  [[nodiscard]] double reached(double ln_s, int grade, const GradeChances& state) const;

  /// The row of grade 1: the chances of a part that began new.
  [[nodiscard]] GradeChances from_new(double ln_s) const;

 private:
  static constexpr std::size_t entries =
      16;  ///< the 15 on and above the diagonal, by rows, and one spare
  using Entries = std::array<double, entries>;
  struct Point {
    Entries value;
    Entries slope;  ///< for a step of the table
  };
  /// Where a time lies in the table and the four weights of its Hermite polynomial.
  struct Place {
    const Point* left;
    const Point* right;
    double of_left, of_right, of_left_slope, of_right_slope;
    [[nodiscard]] double at(std::size_t entry) const;
  };
  [[nodiscard]] Place place_of(double ln_s) const;
  [[nodiscard]] Entries at(double ln_s) const;

  Point nothing_;  ///< P(0), with the slope of the first point's line
  std::vector<Point> points_;
};

}  // namespace kneerail::forecast
