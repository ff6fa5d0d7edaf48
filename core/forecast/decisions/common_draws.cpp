#include "core/forecast/decisions/common_draws.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "core/base/world.h"
#include "core/forecast/dense_inside.h"
#include "core/statistics/normal.h"

namespace kneerail::forecast {

namespace {

std::uint64_t fnv1a(std::string_view text) {
  std::uint64_t hash = 14'695'981'039'346'656'037u;
  for (const char letter : text) {
    hash ^= static_cast<unsigned char>(letter);
    hash *= 1'099'511'628'211u;
  }
  return hash;
}

/// Standard normal numbers of one effect, one for each draw.
class Stream {
 public:
  Stream(std::uint64_t seed, std::initializer_list<std::string_view> names) : draws_(0) {
    std::string key;
    for (const std::string_view name : names) {
      key += name;
      key += '\0';
    }
    draws_ = SplitMix64(SplitMix64(seed ^ fnv1a(key)).next());
  }

  double next() {
    constexpr double step = 1.0 / 9'007'199'254'740'992.0;  // 2^-53
    constexpr int bits = 53;
    return statistics::normal_quantile((static_cast<double>(draws_.next() >> (64 - bits)) + 0.5) *
                                       step);
  }

 private:
  SplitMix64 draws_;
};

/// Lower root of a covariance; an effect that is known exactly, or is a sum of others, has a column
/// of nothing.
Matrix root_of(Matrix covariance) {
  const Eigen::Index n = covariance.rows();
  Matrix root = Matrix::Zero(n, n);
  const double least = 1e-12 * std::max(1e-300, covariance.diagonal().cwiseAbs().maxCoeff());
  for (Eigen::Index j = 0; j < n; ++j) {
    const double pivot = covariance(j, j) - root.row(j).head(j).squaredNorm();
    if (pivot <= least) continue;
    root(j, j) = std::sqrt(pivot);
    for (Eigen::Index i = j + 1; i < n; ++i)
      root(i, j) = (covariance(i, j) - root.row(i).head(j).dot(root.row(j).head(j))) / root(j, j);
  }
  return root;
}

Matrix square(const std::vector<double>& values) {
  const auto n = static_cast<Eigen::Index>(std::lround(std::sqrt(values.size())));
  return Eigen::Map<const Matrix>(values.data(), n, n);
}

void fill_row(Stream stream, Eigen::Index row, Matrix& into) {
  for (Eigen::Index d = 0; d < into.cols(); ++d) into(row, d) = stream.next();
}

std::vector<double> rows_of(const Matrix& matrix) {
  return {matrix.data(), matrix.data() + matrix.size()};
}

/// The runs of a site, each given the site's other effects: with those known, runs tell nothing of
/// each other.
std::vector<double> runs_given(const SharedSite& site, const Matrix& covariance,
                               const Matrix& drawn, const std::string& model, std::uint64_t seed) {
  const auto runs = static_cast<Eigen::Index>(site.runs.size());
  if (runs == 0) return {};
  const Eigen::Map<const Matrix> cross(site.run_cross.data(), runs, covariance.rows());
  const Matrix reach = covariance.ldlt().solve(cross.transpose()).transpose();
  Matrix of_runs(runs, drawn.cols());
  for (Eigen::Index r = 0; r < runs; ++r) {
    const auto place = static_cast<std::size_t>(r);
    fill_row(Stream(seed, {model, "run", site.name, site.runs[place]}), r, of_runs);
    const double rest = site.run_variance[place] - reach.row(r).dot(cross.row(r));
    of_runs.row(r) *= std::sqrt(std::max(0.0, rest));
  }
  of_runs.noalias() += reach * drawn;
  return rows_of(of_runs);
}

double ln_density(const MovedPrior& prior, double at, double shift) {
  const double off = at - prior.centre - shift;
  const double square = off * off / prior.variance;
  if (prior.tail <= 2) return -square / 2;
  return -(prior.tail + 1) / 2 * std::log1p(square / (prior.tail - 2));
}

/// Until every draw sums to 1 and each node's mean over the draws is its own weight. Where a part's
/// own spread is a tenth of what is shared it takes some fifty rounds, where it is a twentieth some
/// hundreds; most parts are there after a dozen.
void balance(std::span<const WeighedNode> nodes, std::size_t draws, std::vector<double>& weights) {
  constexpr int least_rounds = 12;
  constexpr int most_rounds = 2000;
  constexpr double settled = 1e-4;  // of all the weight, off its node
  const std::size_t count = nodes.size();
  std::vector<double> mean(count);
  const auto normalise = [&] {
    std::fill(mean.begin(), mean.end(), 0.0);
    for (double* row = weights.data(); row != weights.data() + draws * count; row += count) {
      double sum = 0;
      for (std::size_t k = 0; k < count; ++k) sum += row[k];
      for (std::size_t k = 0; sum > 0 && k < count; ++k) mean[k] += row[k] /= sum;
    }
  };
  normalise();
  for (int round = 0; round < most_rounds; ++round) {
    double off = 0;
    for (std::size_t k = 0; k < count; ++k)
      off += std::abs(nodes[k].weight - mean[k] / static_cast<double>(draws));
    if (round >= least_rounds && !(off > settled)) return;
    for (std::size_t k = 0; k < count; ++k)
      mean[k] = mean[k] > 0 ? nodes[k].weight * static_cast<double>(draws) / mean[k] : 0;
    for (std::size_t d = 0; d < draws; ++d)
      for (std::size_t k = 0; k < count; ++k) weights[d * count + k] *= mean[k];
    normalise();
  }
}

}  // namespace

SharedModel shared_of(const CoatingModel& model) {
  SharedModel shared{"coating", global_count, {}, {}};
  const auto& globals = model.effects.global_covariance;
  shared.global_covariance.assign(globals.begin(), globals.end());
  for (std::size_t s = 0; s < model.data.sites.size(); ++s) {
    const CoatingSite& site = model.data.sites[s];
    const SiteEffects& effects = model.effects.sites[s];
    const CoreLayout layout = core_layout(site);
    const auto all = static_cast<std::size_t>(layout.with_globals());
    // Sessions come first in the core and move no rate.
    const auto from = static_cast<std::size_t>(layout.site());
    SharedSite own{site.name, site.zones, site.runs, {}, {}, {}};
    for (std::size_t i = from; i < all; ++i)
      for (std::size_t j = from; j < all; ++j)
        own.covariance.push_back(effects.covariance[i * all + j]);
    for (std::size_t r = 0; r < site.runs.size(); ++r) {
      const std::size_t row = r * run_unknowns + run_rate;
      for (std::size_t j = from; j < all; ++j)
        own.run_cross.push_back(effects.run_cross[row * all + j]);
      own.run_variance.push_back(effects.run_covariance[row * run_unknowns + run_rate]);
    }
    shared.sites.push_back(std::move(own));
  }
  return shared;
}

SharedModel shared_of(const GradeModel& model) {
  SharedModel shared{
      "grade", static_cast<int>(model.layout.globals.size()), model.fit.global_covariance, {}};
  for (std::size_t s = 0; s < model.data.sites.size(); ++s) {
    const GradeSite& site = model.data.sites[s];
    shared.sites.push_back({site.name, site.zones, {}, model.fit.sites[s].covariance, {}, {}});
  }
  return shared;
}

CommonDraws::CommonDraws(const SharedModel& model, int draws, std::uint64_t seed) : draws_(draws) {
  const Eigen::Index globals = model.globals;
  const Matrix covariance = square(model.global_covariance);
  Matrix z(globals, draws);
  for (Eigen::Index g = 0; g < globals; ++g)
    fill_row(Stream(seed, {model.name, "global", std::to_string(g)}), g, z);
  const Matrix shared = root_of(covariance) * z;
  globals_ = rows_of(shared);
  const Eigen::LDLT<Matrix> factor(covariance);
  for (const SharedSite& site : model.sites) {
    const Matrix own = square(site.covariance);
    const Eigen::Index count = own.rows() - globals;
    const Matrix cross = own.topRightCorner(count, globals);
    const Matrix reach = factor.solve(cross.transpose()).transpose();
    Matrix noise(count, draws);
    fill_row(Stream(seed, {model.name, "site", site.name}), 0, noise);
    for (Eigen::Index i = 1; i < count; ++i)
      fill_row(Stream(seed,
                      {model.name, "zone", site.name, site.zones[static_cast<std::size_t>(i - 1)]}),
               i, noise);
    Matrix drawn(own.rows(), draws);
    drawn.topRows(count) =
        reach * shared +
        root_of(own.topLeftCorner(count, count) - reach * cross.transpose()) * noise;
    drawn.bottomRows(globals) = shared;
    sites_.push_back(
        {rows_of(drawn.topRows(count)), runs_given(site, own, drawn, model.name, seed)});
  }
}

std::vector<double> CommonDraws::shifts(const SharedGroup& group) const {
  const auto count = static_cast<std::size_t>(draws_);
  std::vector<double> sum(count, 0.0);
  const auto add = [&](const std::vector<double>& rows, int row) {
    const double* from = &rows[static_cast<std::size_t>(row) * count];
    for (std::size_t d = 0; d < count; ++d) sum[d] += from[d];
  };
  const Site& site = sites_[static_cast<std::size_t>(group.site)];
  add(site.own, 0);
  add(site.own, 1 + group.zone);
  for (const int global : group.globals) add(globals_, global);
  if (group.run >= 0) add(site.runs, group.run);
  return sum;
}

std::vector<double> zone_shifts(const ZoneShift& shift, int draws, std::uint64_t seed) {
  Stream stream(seed, {shift.of, "zone", shift.site, shift.zone});
  std::vector<double> shifts;
  for (int d = 0; d < draws; ++d) shifts.push_back(shift.sd * stream.next());
  return shifts;
}

std::vector<double> weights_in_draws(std::span<const WeighedNode> nodes, const MovedPrior& prior,
                                     std::span<const double> shifts) {
  const std::size_t count = nodes.size();
  std::vector<double> weights(count * shifts.size());
  std::vector<double> ln(count);
  for (std::size_t d = 0; d < shifts.size(); ++d) {
    for (std::size_t k = 0; k < count; ++k) ln[k] = ln_density(prior, nodes[k].at, shifts[d]);
    const double top = *std::max_element(ln.begin(), ln.end());
    for (std::size_t k = 0; k < count; ++k)
      weights[d * count + k] = nodes[k].weight * std::exp(ln[k] - top);
  }
  balance(nodes, shifts.size(), weights);
  return weights;
}

}  // namespace kneerail::forecast
