#include "core/statistics/normal_table.h"

#include "core/statistics/normal.h"

namespace kneerail::statistics {

NormalTable::NormalTable() {
  for (std::size_t i = 0; i < points_.size(); ++i) {
    const double x = static_cast<double>(i) / steps_per_unit - reach;
    points_[i] = {normal_cdf(x), normal_density(x) / steps_per_unit};
  }
}

const NormalTable& normal_table() {
  static const NormalTable table;
  return table;
}

}  // namespace kneerail::statistics
