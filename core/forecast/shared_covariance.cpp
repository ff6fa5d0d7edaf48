#include "core/forecast/shared_covariance.h"

namespace kneerail::forecast {

Combination session_combination(const CoreLayout& layout, int session, double thickness_um) {
  Combination c;
  c.add(layout.offset(session), 1);
  c.add(layout.gain(session), gain_thickness_um(thickness_um));
  return c;
}

Combination rate_combination(const GroupTerms& terms) {
  Combination c;
  for (int i = 0; i < terms.rate_terms; ++i) c.add(terms.rate[static_cast<std::size_t>(i)], 1);
  c.run[run_rate] = 1;
  return c;
}

Combination start_combination(const GroupTerms& terms) {
  Combination c;
  if (terms.start < 0) return c;
  c.add(terms.start, terms.start_scale_um);
  if (terms.batch) {
    c.run[run_batch] = terms.start_scale_um;
    c.run[static_cast<std::size_t>(terms.kind_group)] = terms.start_scale_um;
  }
  return c;
}

double SharedCovariance::estimate(const Combination& c) const {
  double sum = 0;
  for (int i = 0; i < c.terms; ++i) {
    const auto k = static_cast<std::size_t>(i);
    sum += c.coefficient[k] * site_.core[static_cast<std::size_t>(c.place[k])];
  }
  for (std::size_t i = 0; i < run_unknowns; ++i)
    sum += c.run[i] * site_.runs[run_ * run_unknowns + i];
  return sum;
}

double SharedCovariance::with_run(std::size_t run_row, const Combination& c) const {
  const double* cross = &site_.run_cross[(run_ * run_unknowns + run_row) * size_];
  double sum = 0;
  for (int i = 0; i < c.terms; ++i) {
    const auto k = static_cast<std::size_t>(i);
    sum += c.coefficient[k] * cross[c.place[k]];
  }
  const double* own = &site_.run_covariance[(run_ * run_unknowns + run_row) * run_unknowns];
  for (std::size_t i = 0; i < run_unknowns; ++i) sum += c.run[i] * own[i];
  return sum;
}

double SharedCovariance::covariance(const Combination& a, const Combination& b) const {
  double sum = 0;
  for (int i = 0; i < a.terms; ++i) {
    const auto k = static_cast<std::size_t>(i);
    const double* row = &site_.covariance[static_cast<std::size_t>(a.place[k]) * size_];
    double inner = 0;
    for (int j = 0; j < b.terms; ++j) {
      const auto m = static_cast<std::size_t>(j);
      inner += b.coefficient[m] * row[b.place[m]];
    }
    for (std::size_t r = 0; r < run_unknowns; ++r)
      if (b.run[r] != 0)
        inner += b.run[r] * site_.run_cross[(run_ * run_unknowns + r) * size_ +
                                            static_cast<std::size_t>(a.place[k])];
    sum += a.coefficient[k] * inner;
  }
  for (std::size_t r = 0; r < run_unknowns; ++r)
    if (a.run[r] != 0) sum += a.run[r] * with_run(r, b);
  return sum;
}

}  // namespace kneerail::forecast
