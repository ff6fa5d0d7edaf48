#include "core/forecast/part_story.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "core/forecast/coating_readings.h"
#include "core/forecast/constants.h"
#include "core/forecast/limit_report.h"
#include "core/forecast/one_part.h"
#include "core/forecast/predictive.h"
#include "core/forecast/preparation.h"
#include "core/forecast/session_report.h"

namespace kneerail::forecast {

namespace {

constexpr int points_per_life = 64;
constexpr double years_ahead_least = 7;
constexpr double years_beyond_last = 3;  // a drawing goes on a little after the last limit
constexpr double years_ahead_most = 60;

class StoryTeller {
 public:
  StoryTeller(const ReportContext& context, int index)
      : context_(context),
        data_(context.model->data),
        own_(data_.parts[static_cast<std::size_t>(index)]),
        index_(index) {}

  PartStory tell() {
    const Part& part = context_.portfolio->parts[static_cast<std::size_t>(own_.place)];
    story_.as_of = data_.as_of;
    story_.usual_um_per_year = std::exp(own_.ln_prior);
    if (part.prior_is_category || !taken_rate(part)) story_.usual_of = part.category;
    add_limits();
    for (int i = 0; i < own_.segments; ++i) add_life(i);
    add_replicates();
    return std::move(story_);
  }

 private:
  [[nodiscard]] const Segment& segment(int i) const {
    return data_.segments[static_cast<std::size_t>(own_.first_segment + i)];
  }

  void add_limits() {
    const Part& part = context_.portfolio->parts[static_cast<std::size_t>(own_.place)];
    for (LimitForecast& row : limit_rows(context_, index_)) {
      const double limit_um = row.limit == Limit::coating_exhausted
                                  ? zinc_gone_um(*context_.portfolio, part.site)
                                  : set_limit_um(part.first_maintenance_um).value_or(0);
      story_.limits.push_back({limit_um, std::move(row)});
    }
  }

  void add_life(int i) {
    const Segment& own = segment(i);
    const bool empty = own.count == 0 && own.start_kind == StartKind::unknown;
    if (empty && i + 1 < own_.segments) return;
    StoryLife life;
    life.start = own.start;
    life.start_kind = own.start_kind;
    life.after_swap = own.after_swap;
    life.begun_by = own.after_swap ? std::nullopt : work_on(own.start, i);
    if (!empty) life.path = path_of(own, i);
    story_.lives.push_back(std::move(life));
    for (int k = own.first; k < own.first + own.count; ++k) add_session(k);
  }

  [[nodiscard]] std::optional<Action> work_on(Date day, int i) const {
    if (i == 0) return std::nullopt;
    for (const Work& work : context_.portfolio->works)
      if (work.part == own_.place && work.day == day && work.action != Action::retorque)
        return work.action;
    return std::nullopt;
  }

  std::vector<StoryPoint> path_of(const Segment& own, int i) const {
    const Posterior posterior = scaled(life_posterior({&data_, &context_.model->effects}, own),
                                       context_.model->back_dated.spread_scale);
    const Clock clock = clock_of(data_, own);
    const double from = years_between(data_.as_of, own.start);
    const double to =
        i + 1 < own_.segments ? years_between(data_.as_of, segment(i + 1).start) : years_ahead();
    std::vector<StoryPoint> path;
    for (int k = 0; k < points_per_life; ++k) {
      const double years = from + (to - from) * k / (points_per_life - 1);
      path.push_back({years, thickness_quantiles_um(posterior, clock, years)});
    }
    return path;
  }

  /// A little further than the coating is likely there, within what anyone plans for.
  [[nodiscard]] double years_ahead() const {
    const LimitForecast& row = story_.limits.front().forecast;
    constexpr std::size_t late = 5;  // 90 %
    const double last = row.answered ? row.years[late] + years_beyond_last : years_ahead_most;
    return std::clamp(last, years_ahead_least, years_ahead_most);
  }

  void add_session(int place) {
    const VisitMean& mean = data_.means[static_cast<std::size_t>(place)];
    const auto session = static_cast<std::size_t>(mean.session);
    StorySession told;
    told.day = mean.day;
    told.gauge = data_.sessions[session].gauge;
    told.mean_um = mean.thickness_um;
    told.correction_um =
        -session_correction(data_, context_.model->effects, mean.session, mean.thickness_um)
             .mean_um;
    told.gauge_was_off = !(*context_.sessions)[session].words.empty();
    told.not_in_order = data_.sessions[session].not_in_order;
    told.fits = mean.weight >= constant::odd_reading_weight;
    told.life = static_cast<int>(story_.lives.size()) - 1;
    story_.sessions.push_back(std::move(told));
  }

  /// The replicates, beside the means that the fit made of them.
  void add_replicates() {
    std::vector<std::tuple<std::int16_t, std::int16_t, const Reading*, StorySession*>> found;
    for (const Reading& reading : context_.portfolio->readings) {
      if (reading.part != own_.place || reading.quantity != Quantity::coating_um) continue;
      const Visit& visit = context_.portfolio->visits[static_cast<std::size_t>(reading.visit)];
      const Date day = reading.seen.value_or(visit.day);
      for (StorySession& session : story_.sessions)
        if (session.day == day && session.gauge == gauge_name(visit))
          found.emplace_back(reading.spot, reading.replicate, &reading, &session);
    }
    std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
      return std::tie(std::get<0>(a), std::get<1>(a)) < std::tie(std::get<0>(b), std::get<1>(b));
    });
    for (const auto& [spot, replicate, reading, session] : found) {
      session->replicates_um.push_back(reading->value);
      session->certificate_um += reading->certificate_add;
    }
    for (StorySession& session : story_.sessions)
      if (!session.replicates_um.empty())
        session.certificate_um /= static_cast<double>(session.replicates_um.size());
  }

  const ReportContext& context_;
  const CoatingData& data_;
  const CoatingPart& own_;
  int index_;
  PartStory story_;
};

int index_of(const CoatingModel& model, std::int32_t place) {
  for (std::size_t i = 0; i < model.data.parts.size(); ++i)
    if (model.data.parts[i].place == place) return static_cast<int>(i);
  return -1;
}

Result<PartStory> tell(const CoatingModel& model, const Portfolio& portfolio, std::int32_t part) {
  const auto sessions = session_reports(model);
  const ReportContext context{&portfolio, &model, &sessions};
  return StoryTeller(context, index_of(model, part)).tell();
}

Error not_served(const Part& part) {
  return fail(Fault::not_estimable, why_not_served(part));
}

}  // namespace

Result<PartStory> part_story(const CoatingModel& model, const Portfolio& portfolio,
                             std::int32_t part) {
  const Part& own = portfolio.parts[static_cast<std::size_t>(part)];
  if (!why_not_served(own).empty()) return not_served(own);
  return tell(model, portfolio, part);
}

Result<PartStory> story_of_one_part(const CoatingModel& model, const Portfolio& one) {
  if (one.parts.size() == 1 && !why_not_served(one.parts[0]).empty())
    return not_served(one.parts[0]);
  const auto own = model_of_one_part(model, one);
  if (!own) return fail(own.error());
  return tell(*own, one, 0);
}

Portfolio only_part(const Portfolio& portfolio, std::int32_t part) {
  Portfolio one;
  one.as_of = portfolio.as_of;
  one.settings = portfolio.settings;
  one.limits = portfolio.limits;
  one.parts = {portfolio.parts[static_cast<std::size_t>(part)]};
  one.visits = portfolio.visits;
  for (const Reading& reading : portfolio.readings)
    if (reading.part == part) one.readings.push_back(reading);
  for (const Work& work : portfolio.works)
    if (work.part == part) one.works.push_back(work);
  for (Reading& reading : one.readings) reading.part = 0;
  for (Work& work : one.works) work.part = 0;
  one.sites_asked = portfolio.sites_asked;
  one.sites_aboard = portfolio.sites_aboard;
  return one;
}

}  // namespace kneerail::forecast
