#pragma once

// A visit as it is walked: opened, joined, gauges checked, then post by post what was pushed, seen
// and measured, with the findings of the day.

#include <array>
#include <functional>
#include <string>
#include <vector>

#include "mobile/demo/making.h"

namespace kneerail::demo {

enum class VisitKind {
  routine = 1,
  detailed = 2,
  after_event = 3,
  after_work = 4,
  before_opening = 5,
  strike = 6,
  re_erect = 7
};

struct Round {
  int site = 0;
  Date day;
  VisitKind kind = VisitKind::detailed;
  std::array<std::string, 2> people;  ///< the second may be empty
  std::array<std::string, 2> gauges;  ///< of the two people
  std::vector<int> runs;              ///< in walking order
  std::vector<int> second_day;        ///< runs walked on the day after
  Uuid event;                         ///< what asked for it, or zero
};

struct Visit {
  Uuid id;
  int site = 0;
  Date day;
  int year = 0;
};

/// Called at each post, after its parts were looked at, with whoever stands there as the writer.
using AtPost = std::function<void(const Visit&, int post)>;

Visit walk(Making& making, const Round& round, const AtPost& at_post);

/// Whether a part belongs to those that are measured at each detailed visit.
bool is_measured_each_time(int part);

/// A gauge held on bare steel before it measures (kind 50); of no visit where that is zero.
void zero_gauge(Making& making, int site, const std::string& gauge, const Uuid& visit);

/// One grade of a part (kind 20); as last time where that may be said of it.
void write_grade(Making& making, const Visit& visit, int part, int grade,
                 bool as_last_time = false);
/// One set of three coating readings (kind 21); returns the record's id.
Uuid write_coating(Making& making, const Visit& visit, int part, int spot,
                   std::vector<std::int64_t> tenth_um, const std::string& gauge);

}  // namespace kneerail::demo
