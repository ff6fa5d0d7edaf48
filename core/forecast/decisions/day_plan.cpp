#include "core/forecast/decisions/day_plan.h"

#include <algorithm>
#include <unordered_set>
#include <utility>

namespace kneerail::forecast {

DayPlan::DayPlan(std::vector<DayTask> tasks, int stop_seconds) : tasks_(std::move(tasks)) {
  std::unordered_set<int> stopped_at;
  std::int64_t seconds = 0;
  for (const DayTask& task : tasks_) {
    seconds += task.seconds;
    if (task.stops && stopped_at.insert(task.place).second) seconds += stop_seconds;
    until_.push_back(seconds);
    stops_.push_back(static_cast<int>(stopped_at.size()));
  }
}

std::size_t DayPlan::fit(std::int64_t seconds) const {
  return static_cast<std::size_t>(std::upper_bound(until_.begin(), until_.end(), seconds) -
                                  until_.begin());
}

std::int64_t DayPlan::seconds_of(std::size_t tasks) const {
  return tasks == 0 ? 0 : until_[tasks - 1];
}

std::int64_t DayPlan::seconds_at(std::size_t task) const {
  return seconds_of(task + 1) - seconds_of(task);
}

std::vector<LineDone> DayPlan::lines(std::size_t done) const {
  std::vector<LineDone> lines;
  for (std::size_t i = 0; i < tasks_.size(); ++i) {
    const auto line = static_cast<std::size_t>(tasks_[i].line);
    if (line >= lines.size()) lines.resize(line + 1);
    ++lines[line].all;
    if (i >= done) continue;
    ++lines[line].done;
    lines[line].seconds += seconds_at(i);
  }
  return lines;
}

int DayPlan::stops(std::size_t done) const {
  return done == 0 ? 0 : stops_[done - 1];
}

}  // namespace kneerail::forecast
