#pragma once

// What becomes of one part: the chances of its grades on any day, mixed over the nodes of its
// speed.
//   P(grade G or worse by a day) = sum_k w_k sum_j alpha_jk sum_{g >= G} P_jg(e^{x_k} (day - last))
// w_k the weight of speed node k, alpha_jk that of true grade j just after the last look. A part
// never graded goes from its start, or from each of its likely starts with equal weight. No
// replacement without a record is assumed ahead.

#include <array>
#include <vector>

#include "core/forecast/grade/chain_table.h"
#include "core/forecast/grade/grade_model.h"

namespace kneerail::forecast {

class GradeFuture {
 public:
  /// Of a part of the data; `likelihood` at the fitted parameters.
  GradeFuture(const GradeData& data, const GradeLikelihood& likelihood, const RateNodes& nodes,
              int part);

  /// Chance that grade `grade` (2 to 5) or worse is reached by so many years after the as-of day.
  [[nodiscard]] double reached(int grade, double years) const;

  /// Chances of the true grade so many years after the as-of day.
  [[nodiscard]] GradeChances grades(double years) const;

  /// Years from the as-of day by which `grade` or worse is reached with chances 5, 10, 25, 50, 75,
  /// 90 and 95 %, never falling; inf beyond 300 years. What was past that chance at the last look
  /// gets its day: when it happened before, nobody saw. By bisection, to a day.
  [[nodiscard]] std::array<double, 7> years_to(int grade) const;

 private:
  struct Node {
    double x;
    double weight;
    GradeChances state;
  };
  [[nodiscard]] double quantile(int grade, double chance, double from) const;

  const ChainTable* table_;
  std::vector<Node> nodes_;
  std::vector<double> from_years_;  ///< days the states are of, from the as-of day, ascending
};

}  // namespace kneerail::forecast
