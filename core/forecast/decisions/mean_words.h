#pragma once

// Mean numbers of things in words.

#include <string>

#include "core/base/text.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

/// "0.0031", "0.45", "3.2"; from 10 on "170": no digit that the band about it makes idle.
inline std::string mean_words(double mean) {
  constexpr double whole_from = 9.95;
  return mean < whole_from ? two_digits(mean) : fixed(mean, 0);
}

}  // namespace kneerail::forecast
