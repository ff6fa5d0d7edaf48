#pragma once

// What a forecast says, as bytes (core/base/archive.h).

#include "core/forecast/grade/grade_forecast.h"
#include "core/forecast/whole/kept_input.h"

namespace kneerail::forecast {

template <class Archive, OrConst<ChanceAt> T>
void fields(Archive& archive, T& at) {
  archive(at.chance, at.years);
}

template <class Archive, OrConst<SeenGrade> T>
void fields(Archive& archive, T& seen) {
  archive(seen.grade, seen.day);
}

template <class Archive, OrConst<LimitForecast> T>
void fields(Archive& archive, T& row) {
  archive(row.part, row.limit, row.answered, row.has_years, row.years, row.grades_now, row.seen,
          row.later, row.p_by, row.p_on, row.readings_used, row.own_share, row.rate_um_per_year,
          row.start_um, row.now_um, row.session_correction_um, row.words, row.sentence, row.flags);
}

template <class Archive, OrConst<TrackRecord> T>
void fields(Archive& archive, T& record) {
  archive(record.site, record.horizon, record.stratum, record.issued, record.readings,
          record.sessions, record.inside_50, record.inside_80, record.inside_90,
          record.spread_scale, record.words);
}

template <class Archive, OrConst<SessionReport> T>
void fields(Archive& archive, T& session) {
  archive(session.site, session.gauge, session.day, session.offset_um, session.gain, session.words);
}

template <class Archive, OrConst<InspectorHabit> T>
void fields(Archive& archive, T& habit) {
  archive(habit.inspector, habit.grades, habit.up, habit.down, habit.words);
}

}  // namespace kneerail::forecast
