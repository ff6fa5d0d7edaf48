#include "core/forecast/grade/chain_table.h"

#include <algorithm>
#include <cmath>

#include "core/base/result.h"

namespace kneerail::forecast {

namespace {

constexpr double points_per_unit = 50;
constexpr double step = 1 / points_per_unit;
constexpr double least_s = 1e-4;
constexpr double ln_least_s = -9.210340371976182736;
constexpr double most_s = 2000;
constexpr int terms = 13;
constexpr double largest_norm = 0.25;

using Square = std::array<std::array<double, grade_count>, grade_count>;

/// Of two upper triangular matrices.
Square product(const Square& a, const Square& b) {
  Square out{};
  for (std::size_t i = 0; i < grade_count; ++i)
    for (std::size_t k = i; k < grade_count; ++k)
      for (std::size_t j = k; j < grade_count; ++j) out[i][j] += a[i][k] * b[k][j];
  return out;
}

Square generator(const GradeRates& rates) {
  Square Q{};
  for (std::size_t k = 0; k < rates.size(); ++k) {
    Q[k][k] = -rates[k];
    Q[k][k + 1] = rates[k];
  }
  return Q;
}

Square exponential(const Square& Q, double s) {
  double norm = 0;
  for (std::size_t k = 0; k < grade_count; ++k) norm = std::max(norm, 2 * s * std::abs(Q[k][k]));
  int halvings = 0;
  for (; norm > largest_norm; norm /= 2) ++halvings;
  const double t = std::ldexp(s, -halvings);
  Square P{};
  Square power{};
  for (std::size_t i = 0; i < grade_count; ++i) P[i][i] = power[i][i] = 1;
  for (int n = 1; n <= terms; ++n) {
    power = product(power, Q);
    for (std::size_t i = 0; i < grade_count; ++i)
      for (std::size_t j = i; j < grade_count; ++j) {
        power[i][j] *= t / n;
        P[i][j] += power[i][j];
      }
  }
  for (int n = 0; n < halvings; ++n) P = product(P, P);
  return P;
}

}  // namespace

ChainTable::ChainTable(const GradeRates& rates) {
  check(std::ranges::all_of(rates, [](double rate) { return rate > 0 && std::isfinite(rate); }),
        "rates of the grades above 0");
  const Square Q = generator(rates);
  const auto count = static_cast<std::size_t>(std::ceil(std::log(most_s / least_s) / step)) + 1;
  points_.resize(count);
  nothing_ = {};
  for (std::size_t i = 0, row = 0; i < grade_count; row += grade_count - i, ++i)
    nothing_.value[row] = 1;
  for (std::size_t n = 0; n < count; ++n) {
    const double s = least_s * std::exp(step * static_cast<double>(n));
    const Square P = exponential(Q, s);
    const Square change = product(P, Q);
    std::size_t entry = 0;
    points_[n] = {};
    for (std::size_t i = 0; i < grade_count; ++i)
      for (std::size_t j = i; j < grade_count; ++j, ++entry) {
        points_[n].value[entry] = P[i][j];
        points_[n].slope[entry] = step * s * change[i][j];
      }
  }
}

double ChainTable::Place::at(std::size_t entry) const {
  return std::max(0.0, of_left * left->value[entry] + of_right * right->value[entry] +
                           of_left_slope * left->slope[entry] +
                           of_right_slope * right->slope[entry]);
}

ChainTable::Place ChainTable::place_of(double ln_s) const {
  const double place = (ln_s - ln_least_s) * points_per_unit;
  if (!(place > 0)) {  // on the line from P(0) to the first point
    const double share = std::exp(ln_s - ln_least_s);
    return {&nothing_, &points_.front(), 1 - share, share, 0, 0};
  }
  const auto last = static_cast<double>(points_.size() - 1);
  if (place >= last) return {&points_.back(), &points_.back(), 1, 0, 0, 0};
  const auto n = static_cast<std::size_t>(place);
  const double u = place - static_cast<double>(n);
  const double v = 1 - u;
  return {&points_[n],         &points_[n + 1], v * v * (1 + 2 * u),
          u * u * (1 + 2 * v), u * v * v,       -u * u * v};
}

ChainTable::Entries ChainTable::at(double ln_s) const {
  const Place place = place_of(ln_s);
  Entries out;
  for (std::size_t entry = 0; entry < entries; ++entry) out[entry] = place.at(entry);
  return out;
}

double ChainTable::reached(double ln_s, int grade, const GradeChances& state) const {
  const Place place = place_of(ln_s);
  const auto worst = static_cast<std::size_t>(grade - 1);
  double chance = 0;
  std::size_t row = 0;  // the entry of (i, i)
  for (std::size_t i = 0; i < grade_count; row += grade_count - i, ++i) {
    if (i >= worst) {
      chance += state[i];
      continue;
    }
    double own = 0;
    for (std::size_t j = worst; j < grade_count; ++j) own += place.at(row + j - i);
    chance += state[i] * own;
  }
  return chance;
}

void ChainTable::advance(double ln_s, GradeChances& state) const {
  const Entries P = at(ln_s);
  GradeChances out{};
  std::size_t entry = 0;
  for (std::size_t i = 0; i < grade_count; ++i)
    for (std::size_t j = i; j < grade_count; ++j, ++entry) out[j] += state[i] * P[entry];
  state = out;
}

void ChainTable::go_back(double ln_s, GradeChances& column) const {
  const Entries P = at(ln_s);
  GradeChances out{};
  std::size_t entry = 0;
  for (std::size_t i = 0; i < grade_count; ++i)
    for (std::size_t j = i; j < grade_count; ++j, ++entry) out[i] += P[entry] * column[j];
  column = out;
}

GradeChances ChainTable::from_new(double ln_s) const {
  const Place place = place_of(ln_s);
  GradeChances out;
  for (std::size_t j = 0; j < grade_count; ++j) out[j] = place.at(j);
  return out;
}

}  // namespace kneerail::forecast
