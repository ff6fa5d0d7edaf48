#include "core/statistics/mixed_model.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/statistics/minimise.h"

namespace kneerail::statistics {

namespace {

using Matrix = Eigen::MatrixXd;
using RowMatrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
using Vector = Eigen::VectorXd;
using Eigen::Index;

/// The problem with X replaced by an orthonormal Q of it, y by what ordinary least squares leaves,
/// and the columns of Z brought to a root mean square of one: the same optimum, fewer digits lost.
struct Prepared {
  Index n = 0, p = 0, q = 0;
  Matrix R;        ///< X = Q R
  Vector least;    ///< ordinary least squares, in Q's coordinates
  Vector z_scale;  ///< q
  double yy = 0;   ///< squared residual y
  struct Group {
    Matrix zz;  ///< q by q
    Matrix zx;  ///< q by p
    Vector zy;  ///< q
  };
  std::vector<Group> groups;
};

Result<> check_data(const MixedData& data) {
  const std::size_t n = data.y.size();
  const auto finite = [](double value) { return std::isfinite(value); };
  if (n == 0 || data.fixed.empty() || data.fixed.size() % n || data.random.empty() ||
      data.random.size() % n || data.group.size() != n) {
    return fail(Fault::invalid_input, "The columns of the model are not of one length.");
  }
  if (!std::ranges::all_of(data.group, [&](int g) { return g >= 0 && g < data.groups; })) {
    return fail(Fault::invalid_input, "A row of the model belongs to no group.");
  }
  if (!std::ranges::all_of(data.y, finite) || !std::ranges::all_of(data.fixed, finite) ||
      !std::ranges::all_of(data.random, finite)) {
    return fail(Fault::invalid_input, "A value of the model is not a finite number.");
  }
  if (data.groups < 2) {
    return fail(Fault::not_estimable, "One group alone cannot show how groups differ.");
  }
  const std::size_t q = data.random.size() / n;
  if (n <= data.fixed.size() / n + q * (q + 1) / 2) {
    return fail(Fault::not_estimable, "Too few values for a model with groups.");
  }
  return Done{};
}

Result<Prepared> prepare(const MixedData& data) {
  Prepared result;
  result.n = static_cast<Index>(data.y.size());
  result.p = static_cast<Index>(data.fixed.size()) / result.n;
  result.q = static_cast<Index>(data.random.size()) / result.n;
  const Matrix X = Eigen::Map<const RowMatrix>(data.fixed.data(), result.n, result.p);
  Matrix Z = Eigen::Map<const RowMatrix>(data.random.data(), result.n, result.q);
  const Vector y = Eigen::Map<const Vector>(data.y.data(), result.n);

  const Eigen::HouseholderQR<Matrix> qr(X);
  const Matrix Q = qr.householderQ() * Matrix::Identity(result.n, result.p);
  result.R = qr.matrixQR().topRows(result.p).triangularView<Eigen::Upper>();
  const Vector diagonal = result.R.diagonal().cwiseAbs();
  if (diagonal.minCoeff() <= 1e-12 * diagonal.maxCoeff()) {
    return fail(Fault::not_estimable, "Columns of the model depend on each other.");
  }
  result.z_scale = Z.colwise().norm().transpose() / std::sqrt(static_cast<double>(result.n));
  if (result.z_scale.minCoeff() == 0) {
    return fail(Fault::not_estimable, "A column of the groups' part is zero throughout.");
  }
  Z = Z * result.z_scale.cwiseInverse().asDiagonal();
  result.least = Q.transpose() * y;
  const Vector left = y - Q * result.least;
  result.yy = left.squaredNorm();

  const Prepared::Group empty{Matrix::Zero(result.q, result.q), Matrix::Zero(result.q, result.p),
                              Vector::Zero(result.q)};
  result.groups.assign(static_cast<std::size_t>(data.groups), empty);
  for (Index row = 0; row < result.n; ++row) {
    auto& group =
        result.groups[static_cast<std::size_t>(data.group[static_cast<std::size_t>(row)])];
    group.zz += Z.row(row).transpose() * Z.row(row);
    group.zx += Z.row(row).transpose() * Q.row(row);
    group.zy += Z.row(row).transpose() * left(row);
  }
  return result;
}

Matrix lower_triangle(std::span<const double> theta, Index q) {
  Matrix L = Matrix::Zero(q, q);
  std::size_t next = 0;
  for (Index column = 0; column < q; ++column) {
    for (Index row = column; row < q; ++row) L(row, column) = theta[next++];
  }
  return L;
}

/// What follows from one L: V = I + Z L L' Z'.
struct Profile {
  Eigen::LLT<Matrix> xvx;  ///< Q' V^-1 Q
  Vector shift;            ///< generalised least squares minus ordinary, in Q's coordinates
  double sum_of_squares = 0;
  double log_det_v = 0;
  bool defined = false;
};

Profile profile(const Prepared& data, const Matrix& L) {
  Matrix xvx = Matrix::Identity(data.p, data.p);
  Vector xvy = Vector::Zero(data.p);  // Q' times what least squares left is zero
  double yvy = data.yy;
  Profile result;
  for (const auto& group : data.groups) {
    const Eigen::LLT<Matrix> M(Matrix::Identity(data.q, data.q) + L.transpose() * group.zz * L);
    if (M.info() != Eigen::Success) return result;
    const Matrix wx = M.matrixL().solve(L.transpose() * group.zx);
    const Vector wy = M.matrixL().solve(L.transpose() * group.zy);
    xvx.noalias() -= wx.transpose() * wx;
    xvy.noalias() -= wx.transpose() * wy;
    yvy -= wy.squaredNorm();
    result.log_det_v += 2 * M.matrixLLT().diagonal().array().log().sum();
  }
  result.xvx.compute(xvx);
  if (result.xvx.info() != Eigen::Success) return result;
  result.shift = result.xvx.solve(xvy);
  result.sum_of_squares = yvy - result.shift.dot(xvy);
  result.defined = result.sum_of_squares > 0;
  return result;
}

double degrees(const Prepared& data, Criterion criterion) {
  return static_cast<double>(criterion == Criterion::reml ? data.n - data.p : data.n);
}

double minus_two_log_likelihood(const Prepared& data, const Profile& at, Criterion criterion) {
  if (!at.defined) return std::numeric_limits<double>::infinity();
  const double df = degrees(data, criterion);
  double value = at.log_det_v + df * (1 + std::log(2 * std::numbers::pi * at.sum_of_squares / df));
  if (criterion == Criterion::reml) {
    value += 2 * at.xvx.matrixLLT().diagonal().array().log().sum();
    value += 2 * data.R.diagonal().array().abs().log().sum();
  }
  return value;
}

/// A diagonal entry of L that might as well be zero is zero: Sigma is then on its edge.
bool to_the_edge(const Prepared& data, Criterion criterion, std::vector<double>& theta,
                 double best) {
  bool singular = false;
  std::size_t place = 0;
  for (Index column = 0; column < data.q; ++column) {
    const std::size_t diagonal = place;
    place += static_cast<std::size_t>(data.q - column);
    if (std::abs(theta[diagonal]) > 1e-4) continue;
    std::vector<double> edge = theta;
    edge[diagonal] = 0;
    const double value =
        minus_two_log_likelihood(data, profile(data, lower_triangle(edge, data.q)), criterion);
    if (value <= best + 1e-7) {
      theta = edge;
      singular = true;
    }
  }
  return singular;
}

void put(std::vector<double>& out, const RowMatrix& values) {
  out.assign(values.data(), values.data() + values.size());
}

MixedFit finish(const Prepared& data, std::span<const double> theta, Criterion criterion) {
  const Matrix L = lower_triangle(theta, data.q);
  const Profile at = profile(data, L);
  MixedFit fit;
  fit.criterion = minus_two_log_likelihood(data, at, criterion);
  fit.residual_variance = at.sum_of_squares / degrees(data, criterion);
  const auto R = data.R.triangularView<Eigen::Upper>();
  put(fit.fixed, R.solve(data.least + at.shift));
  const Matrix root = R.solve(Matrix(at.xvx.matrixU().solve(Matrix::Identity(data.p, data.p))));
  const Matrix covariance = fit.residual_variance * root * root.transpose();
  put(fit.fixed_covariance, covariance);
  put(fit.fixed_errors, covariance.diagonal().cwiseSqrt());

  const Matrix unscaled = data.z_scale.cwiseInverse().asDiagonal() * L;
  put(fit.random_covariance, fit.residual_variance * unscaled * unscaled.transpose());
  RowMatrix deviations(static_cast<Index>(data.groups.size()), data.q);
  for (Index g = 0; g < deviations.rows(); ++g) {
    const auto& group = data.groups[static_cast<std::size_t>(g)];
    const Eigen::LLT<Matrix> M(Matrix::Identity(data.q, data.q) + L.transpose() * group.zz * L);
    const Vector spherical = M.solve(L.transpose() * (group.zy - group.zx * at.shift));
    deviations.row(g) = (unscaled * spherical).transpose();
  }
  put(fit.deviations, deviations);
  return fit;
}

}  // namespace

Result<MixedFit> fit_mixed_model(const MixedData& data, Criterion criterion) {
  if (auto fits = check_data(data); !fits) return fail(fits.error());
  const auto prepared = prepare(data);
  if (!prepared) return fail(prepared.error());
  if (!(prepared->yy > 0)) {
    return fail(Fault::not_estimable, "The values lie on a line without any scatter.");
  }
  std::vector<double> start;
  for (Index column = 0; column < prepared->q; ++column) {
    for (Index row = column; row < prepared->q; ++row) start.push_back(row == column ? 1 : 0);
  }
  const auto objective = [&](std::span<const double> theta) {
    return minus_two_log_likelihood(
        *prepared, profile(*prepared, lower_triangle(theta, prepared->q)), criterion);
  };
  auto lowest = minimise(objective, std::move(start));
  const bool singular = to_the_edge(*prepared, criterion, lowest.at, lowest.value);
  MixedFit fit = finish(*prepared, lowest.at, criterion);
  fit.singular = singular;
  fit.settled = lowest.settled;
  return fit;
}

}  // namespace kneerail::statistics
