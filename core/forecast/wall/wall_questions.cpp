#include "core/forecast/wall/wall_questions.h"

#include "core/forecast/coating_readings.h"
#include "core/forecast/limit_report.h"
#include "core/forecast/limit_words.h"
#include "core/forecast/wall/constants.h"

namespace kneerail::forecast {

namespace {

/// By place of the part: another tube stands there since, and what was read before says nothing of
/// it.
std::vector<std::optional<Date>> unrecorded_swaps(const CoatingModel* coating,
                                                  const Portfolio& portfolio) {
  std::vector<std::optional<Date>> swapped(portfolio.parts.size());
  if (coating == nullptr) return swapped;
  const CoatingData& data = coating->data;
  for (const CoatingPart& part : data.parts) {
    if (part.segments == 0) continue;
    const Segment& now =
        data.segments[static_cast<std::size_t>(part.first_segment + part.segments - 1)];
    if (now.after_swap) swapped[static_cast<std::size_t>(part.place)] = now.start;
  }
  return swapped;
}

}  // namespace

WallQuestions::WallQuestions(const CoatingModel* coating, const Portfolio& portfolio,
                             const WallPaths* kept)
    : coating_(coating),
      portfolio_(portfolio),
      data_(prepare_walls(portfolio, unrecorded_swaps(coating, portfolio))),
      paths_(kept != nullptr && kept->serve(portfolio.settings) ? kept : nullptr) {
  if (paths_ == nullptr && !data_.tubes.empty()) paths_ = &made_.emplace(portfolio.settings);
  if (coating != nullptr) served_ = served_index(portfolio, coating->data);
}

std::optional<std::string> WallQuestions::ask(
    const WallTube& tube, const std::function<void(const AskedWall&)>& answer) const {
  if (!tube.why_not.empty()) return tube.why_not;
  return tube.bare ? ask_bare(tube, answer) : ask_coated(tube, answer);
}

std::optional<std::string> WallQuestions::ask_bare(
    const WallTube& tube, const std::function<void(const AskedWall&)>& answer) const {
  const bool known = tube.stands_since.has_value();
  if (!known && tube.readings.empty()) return "no reading and no installation date";
  const Date start = known ? *tube.stands_since : tube.readings.front().day;
  const double age = years_between(start, data_.as_of);
  const WallQuestion question{.tube = &tube,
                              .coating = nullptr,
                              .clock = {&paths_->steel_attack(), age, known},
                              .hollow_age_now = age,
                              .as_of = data_.as_of,
                              .zinc_path = &paths_->zinc(),
                              .steel_path = &paths_->steel()};
  answer({question});
  return std::nullopt;
}

std::optional<std::string> WallQuestions::ask_coated(
    const WallTube& tube, const std::function<void(const AskedWall&)>& answer) const {
  const std::int32_t index = served_.empty() ? -1 : served_[static_cast<std::size_t>(tube.place)];
  if (index < 0) return "no corrosivity class and no rate of its zone is known";
  const PartView view = view_of({&portfolio_, coating_, nullptr}, index);
  if (!view.posterior) return "no reading and no installation date";
  const double hollow_age = tube.hollow_since
                                ? years_between(*tube.hollow_since, data_.as_of)
                                : view.clock.age_now + wall_constant::unknown_years_before;
  const WallQuestion question{.tube = &tube,
                              .coating = &*view.posterior,
                              .clock = view.clock,
                              .hollow_age_now = hollow_age,
                              .as_of = data_.as_of,
                              .zinc_path = &paths_->zinc(),
                              .steel_path = &paths_->steel()};
  answer({question, view.posterior->own_share, view.clock.start_known || !tube.readings.empty()});
  return std::nullopt;
}

}  // namespace kneerail::forecast
