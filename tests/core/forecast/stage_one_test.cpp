// Stage 1 against a slow, obvious judge: every unknown of every site in one dense vector, V of each
// segment built and inverted as a matrix, generalised least squares repeated until it stands still.

#include "core/forecast/stage_one.h"

#include <Eigen/Dense>
#include <catch2/catch.hpp>
#include <cmath>

#include "core/forecast/preparation.h"
#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

class DenseLeastSquares {
 public:
  DenseLeastSquares(const CoatingData& data, const Spreads& spreads, double drift_um)
      : data_(data), spreads_(spreads), drift_um_(drift_um) {
    int next = 0;
    for (const CoatingSite& site : data.sites) {
      first_.push_back(next);
      next += core_layout(site).size() + run_unknowns * static_cast<int>(site.runs.size());
    }
    globals_ = next;
    estimate_ = Vector::Zero(next + global_count + static_cast<int>(data.inspectors.size()));
    for (int kind = 0; kind < kind_count; ++kind)
      estimate_(globals_ + global_start_ratio + kind) = constant::start_ratio_first;
  }

  void pass() {
    const auto n = estimate_.size();
    Matrix left = Matrix::Zero(n, n);
    Vector right = Vector::Zero(n);
    add_priors(left, right);
    for (const Segment& segment : data_.segments)
      if (segment.count > 0) add_segment(segment, left, right);
    covariance = left.inverse();
    estimate_ = covariance * right;
  }

  [[nodiscard]] const Vector& estimate() const { return estimate_; }
  [[nodiscard]] int core(std::size_t site, int place) const { return first_[site] + place; }
  [[nodiscard]] int run(std::size_t site, int run, int unknown) const {
    return first_[site] + core_layout(data_.sites[site]).size() + run_unknowns * run + unknown;
  }
  [[nodiscard]] int global(int place) const { return globals_ + place; }
  [[nodiscard]] int habit(int inspector) const { return globals_ + global_count + inspector; }

  Matrix covariance;

 private:
  void prior(Matrix& left, Vector& right, int place, double mean, double sd) const {
    left(place, place) += 1 / (sd * sd);
    right(place) += mean / (sd * sd);
  }

  void add_priors(Matrix& left, Vector& right) const {
    prior(left, right, global(global_overall), 0, constant::overall_sd);
    prior(left, right, global(global_spray), constant::spray_mean, constant::spray_sd);
    prior(left, right, global(global_sheltered), constant::sheltered_mean, constant::sheltered_sd);
    for (int kind = 0; kind < kind_count; ++kind) {
      prior(left, right, global(global_kind + kind), 0, constant::kind_sd);
      prior(left, right, global(global_start_ratio + kind), constant::start_ratio_mean,
            constant::start_ratio_sd);
    }
    for (int a = 0; a < static_cast<int>(data_.inspectors.size()); ++a)
      prior(left, right, habit(a), 0, spreads_.habit_um);
    for (std::size_t s = 0; s < data_.sites.size(); ++s) add_site_priors(s, left, right);
  }

  void add_site_priors(std::size_t s, Matrix& left, Vector& right) const {
    const CoatingSite& site = data_.sites[s];
    const CoreLayout layout = core_layout(site);
    for (int i = 0; i < site.sessions; ++i) {
      const int b = core(s, layout.offset(i));
      const int g = core(s, layout.gain(i));
      prior(left, right, g, 0, spreads_.gain);
      for (const Foil& foil :
           data_.sessions[static_cast<std::size_t>(site.first_session + i)].foils) {
        Vector row = Vector::Zero(left.rows());
        row(b) = 1;
        row(g) = foil.true_um;
        left += row * row.transpose() / (constant::foil_sd_um * constant::foil_sd_um);
        right +=
            row * (foil.read_um - foil.true_um) / (constant::foil_sd_um * constant::foil_sd_um);
      }
    }
    add_offset_priors(s, left);
    prior(left, right, core(s, layout.site()), 0, spreads_.site);
    for (int z = 0; z < layout.zones; ++z)
      prior(left, right, core(s, layout.zone(z)), 0, spreads_.zone);
    for (int r = 0; r < static_cast<int>(site.runs.size()); ++r) {
      prior(left, right, run(s, r, 0), 0, spreads_.run);
      prior(left, right, run(s, r, 1), 0, spreads_.batch);
      for (int group = 0; group < 3; ++group)
        prior(left, right, run(s, r, 2 + group), 0, spreads_.run_kind);
    }
  }

  /// Offsets lie about their inspectors' habits, and those of one gauge go on from day to day.
  void add_offset_priors(std::size_t s, Matrix& left) const {
    const CoatingSite& site = data_.sites[s];
    const auto session = [&](int i) -> const Session& {
      return data_.sessions[static_cast<std::size_t>(site.first_session + i)];
    };
    const auto years = [&](int i) {
      int first = 0;
      while (session(first).gauge != session(i).gauge) ++first;
      return years_between(session(first).day, session(i).day);
    };
    Matrix spread = Matrix::Zero(site.sessions, site.sessions);
    Matrix about = Matrix::Zero(site.sessions, left.cols());
    for (int i = 0; i < site.sessions; ++i) {
      about(i, core(s, core_layout(site).offset(i))) = 1;
      if (session(i).inspector >= 0) about(i, habit(session(i).inspector)) = -1;
      spread(i, i) = spreads_.offset_um * spreads_.offset_um;
    }
    for (int i = 0; i < site.sessions; ++i)
      for (int j = 0; j < site.sessions; ++j)
        if (session(i).gauge == session(j).gauge)
          spread(i, j) += drift_um_ * drift_um_ * std::min(years(i), years(j));
    left += about.transpose() * spread.inverse() * about;
  }

  void add_segment(const Segment& segment, Matrix& left, Vector& right) const {
    const CoatingPart& part = data_.parts[static_cast<std::size_t>(segment.part)];
    const auto s = static_cast<std::size_t>(part.site);
    const CoreLayout layout = core_layout(data_.sites[s]);
    Vector rate = Vector::Zero(estimate_.size());
    for (const int place :
         {core(s, layout.site()), core(s, layout.zone(part.zone)), run(s, part.run, 0),
          global(global_overall), global(global_kind + part.kind)})
      rate(place) = 1;
    if (part.exposure == Exposure::spray) rate(global(global_spray)) = 1;
    if (part.exposure == Exposure::sheltered) rate(global(global_sheltered)) = 1;
    Vector start = Vector::Zero(estimate_.size());
    double given = 0.8 * segment.nominal_um;
    double start_sd = 0.30 * segment.nominal_um;
    if (segment.start_kind == StartKind::known) {
      given = 0;
      start_sd = spreads_.start * segment.nominal_um;
      start(global(global_start_ratio + part.kind)) = segment.nominal_um;
      if (segment.first_coating) {
        start(run(s, part.run, 1)) = segment.nominal_um;
        start(run(s, part.run, 2 + std::max(0, part.kind - 1))) = segment.nominal_um;
      }
    }
    const double over_class = rate.dot(estimate_);
    const double m = std::exp(part.ln_prior + over_class);
    const double c = given + start.dot(estimate_);
    Matrix x = Matrix::Zero(segment.count, estimate_.size());
    Matrix v = Matrix::Zero(segment.count, segment.count);
    Vector z(segment.count);
    Vector h(segment.count);
    for (int j = 0; j < segment.count; ++j) {
      const VisitMean& mean = data_.means[static_cast<std::size_t>(segment.first + j)];
      h(j) = mean.effective_age;
      x.row(j) = (start - m * h(j) * rate).transpose();
      const int session = mean.session - data_.sites[s].first_session;
      x(j, core(s, layout.offset(session))) = 1;
      x(j, core(s, layout.gain(session))) = std::clamp(c - m * h(j), 0.0, 200.0);
      z(j) = mean.thickness_um + m * h(j) * (1 - over_class) - given;
      v(j, j) = spreads_.rest_um * spreads_.rest_um + mean.known_variance +
                std::pow(spreads_.spots * m * h(j), 2);
    }
    v += start_sd * start_sd * Matrix::Ones(segment.count, segment.count);
    v += spreads_.rate * spreads_.rate * m * m * h * h.transpose();
    const Matrix inverse = v.inverse();
    left += x.transpose() * inverse * x;
    right += x.transpose() * inverse * z;
  }

  const CoatingData& data_;
  Spreads spreads_;
  double drift_um_;
  std::vector<int> first_;
  int globals_ = 0;
  Vector estimate_;
};

CoatingData small_data() {
  Made made = made_portfolio({.seed = 7, .sites = 2, .zones = 2, .runs = 2, .parts = 6, .days = 4});
  for (std::size_t i = 0; i < made.portfolio.parts.size(); i += 5)
    made.portfolio.parts[i].exposure = i % 2 == 0 ? Exposure::spray : Exposure::sheltered;
  for (std::size_t i = 0; i < made.portfolio.visits.size(); ++i)
    made.portfolio.visits[i].inspector = i % 3 == 0 ? "i1" : "i2";
  auto data = prepare_coating(made.portfolio);
  REQUIRE(data);
  REQUIRE(data->inspectors.size() == 2);
  for (VisitMean& mean : data->means) mean.gone = false;  // numbers all: plain least squares
  return std::move(*data);
}

}  // namespace

TEST_CASE("stage 1 with Gaussian weights agrees with dense generalised least squares",
          "[core][reference]") {
  CoatingData data = small_data();
  SharedEffects start = first_effects(data);
  start.spreads.gain = 0.01;
  // Once as in a fit, once with the parts' own rates and the sessions all but off.
  const bool off = GENERATE(false, true);
  if (off) {
    start.spreads.rate = 1e-6;
    start.spreads.offset_um = 1e-4;
    start.spreads.gain = 1e-6;
  }
  const double drift_um = off ? 1e-5 : 0.7;
  for (SiteEffects& site : start.sites) site.drift_um.assign(site.drift_um.size(), drift_um);
  DenseLeastSquares dense(data, start.spreads, drift_um);
  constexpr int passes = 40;
  for (int i = 0; i < passes; ++i) dense.pass();
  const SharedEffects fitted = fit_shared_effects(
      data, start, {.passes = passes, .move_spreads = false, .move_weights = false});
  REQUIRE(fitted.computed);
  CHECK(fitted.largest_move_ln < 1e-9);
  const auto near = [](double value) { return Approx(value).margin(1e-6).epsilon(1e-6); };
  for (int g = 0; g < global_count; ++g) {
    CHECK(fitted.globals[static_cast<std::size_t>(g)] == near(dense.estimate()(dense.global(g))));
    for (int k = 0; k < global_count; ++k)
      CHECK(fitted.global_covariance[static_cast<std::size_t>(g * global_count + k)] ==
            near(dense.covariance(dense.global(g), dense.global(k))));
  }
  for (std::size_t a = 0; a < data.inspectors.size(); ++a) {
    const int place = dense.habit(static_cast<int>(a));
    CHECK(fitted.habits_um[a] == near(dense.estimate()(place)));
    CHECK(fitted.habit_variance[a] == near(dense.covariance(place, place)));
  }
  for (std::size_t s = 0; s < data.sites.size(); ++s) {
    const CoreLayout layout = core_layout(data.sites[s]);
    const SiteEffects& site = fitted.sites[s];
    const int n = layout.with_globals();
    const auto place = [&](int i) {
      return i < layout.size() ? dense.core(s, i) : dense.global(i - layout.size());
    };
    for (int i = 0; i < n; ++i) {
      CHECK(site.core[static_cast<std::size_t>(i)] == near(dense.estimate()(place(i))));
      for (int j = 0; j < n; ++j)
        CHECK(site.covariance[static_cast<std::size_t>(i * n + j)] ==
              near(dense.covariance(place(i), place(j))));
    }
    for (int r = 0; r < static_cast<int>(data.sites[s].runs.size()); ++r)
      for (int u = 0; u < run_unknowns; ++u) {
        const auto row = static_cast<std::size_t>(r * run_unknowns + u);
        CHECK(site.runs[row] == near(dense.estimate()(dense.run(s, r, u))));
        for (int j = 0; j < n; ++j)
          CHECK(site.run_cross[row * static_cast<std::size_t>(n) + static_cast<std::size_t>(j)] ==
                near(dense.covariance(dense.run(s, r, u), place(j))));
        for (int w = 0; w < run_unknowns; ++w)
          CHECK(site.run_covariance[row * run_unknowns + static_cast<std::size_t>(w)] ==
                near(dense.covariance(dense.run(s, r, u), dense.run(s, r, w))));
      }
  }
}

TEST_CASE("weights fall where a reading does not fit, and spreads come near the world's",
          "[core][property]") {
  const auto seed = GENERATE(3u, 4u, 5u);
  INFO("seed " << seed);
  Made made = made_portfolio({.seed = seed, .sites = 4});
  // The third day of a part that was read on five or more, its start known.
  std::int32_t part = 0;
  std::int32_t visit = 0;
  const auto& readings = made.portfolio.readings;
  for (std::size_t i = 12; i + 8 < readings.size(); ++i) {
    const auto& own = made.portfolio.parts[static_cast<std::size_t>(readings[i].part)];
    if (readings[i - 6].part != readings[i].part || readings[i + 8].part != readings[i].part ||
        !own.installed || readings[i].value < 40)
      continue;
    part = readings[i].part;
    visit = readings[i].visit;
    break;
  }
  for (Reading& reading : made.portfolio.readings)
    if (reading.part == part && reading.visit == visit) reading.value += 40;
  auto data = prepare_coating(made.portfolio);
  REQUIRE(data);
  const SharedEffects fitted = fit_shared_effects(*data, first_effects(*data), {.passes = 30});
  // True: rate 0.3, start 0.13, rest 2 um, from 288 parts; the prior's weight is 4 of them.
  CHECK(fitted.spreads.rate == Approx(0.30).margin(0.06));
  CHECK(fitted.spreads.start == Approx(0.13).margin(0.03));
  CHECK(fitted.spreads.rest_um == Approx(2.0).margin(0.4));
  int light = 0;
  for (const Segment& segment : data->segments)
    for (int i = segment.first; i < segment.first + segment.count; ++i)
      if (data->parts[static_cast<std::size_t>(segment.part)].place == part &&
          data->means[static_cast<std::size_t>(i)].weight < 0.3)
        ++light;
  CHECK(light == 1);
}
