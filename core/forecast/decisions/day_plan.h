#pragma once

// What fits into the time there is at a site. Tasks come in the order in which they go first; as
// many from the front are done as there is time for, so more time never takes a task away again.
// Everything that depends on the time alone is reckoned once: another time costs a search.

#include <cstdint>
#include <vector>

namespace kneerail::forecast {

struct DayTask {
  int line = 0;   ///< which line of the plan counts it, from 0
  int place = 0;  ///< the post it is at, from 0; tasks at one post may share a stop
  int seconds = 0;
  bool stops = false;  ///< an instrument is taken out, once at each post
};

/// How much of a line is done.
struct LineDone {
  int done = 0;
  int all = 0;
  std::int64_t seconds = 0;  ///< of what is done
};

class DayPlan {
 public:
  DayPlan() = default;
  DayPlan(std::vector<DayTask> tasks, int stop_seconds);

  /// How many tasks from the front fit.
  [[nodiscard]] std::size_t fit(std::int64_t seconds) const;
  /// What the first so many take.
  [[nodiscard]] std::int64_t seconds_of(std::size_t tasks) const;
  [[nodiscard]] const std::vector<DayTask>& tasks() const { return tasks_; }
  /// By line, with the first so many tasks done.
  [[nodiscard]] std::vector<LineDone> lines(std::size_t done) const;
  /// Posts at which an instrument is taken out among the first so many.
  [[nodiscard]] int stops(std::size_t done) const;

 private:
  [[nodiscard]] std::int64_t seconds_at(std::size_t task) const;

  std::vector<DayTask> tasks_;
  std::vector<std::int64_t> until_;  ///< seconds up to and with each task
  std::vector<int> stops_;           ///< likewise
};

}  // namespace kneerail::forecast
