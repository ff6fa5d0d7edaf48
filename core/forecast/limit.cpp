#include "core/forecast/limit.h"

namespace kneerail::forecast {

std::string to_text(Limit limit) {
  switch (limit) {
    case Limit::coating_exhausted:
      return "coating_exhausted";
    case Limit::coating_first_maintenance:
      return "coating_first_maintenance";
    case Limit::wall_limit:
      return "wall_limit";
    case Limit::torque_minimum:
      return "torque_minimum";
    case Limit::grade_2:
      return "grade_2";
    case Limit::grade_3:
      return "grade_3";
    case Limit::grade_4:
      return "grade_4";
    case Limit::grade_5:
      return "grade_5";
  }
  return {};
}

}  // namespace kneerail::forecast
