#pragma once

// What a forecast says, as bytes (core/base/archive.h).

#include "core/forecast/grade/grade_forecast.h"
#include "core/forecast/whole/kept_input.h"

namespace kneerail::forecast {

constexpr Limit last_of(Limit) {
  return Limit::grade_5;
}

template <class Archive, OrConst<ChanceAt> T>
void fields(Archive& archive, T& at) {
  auto& [chance, years] = at;
  archive(chance, years);
}

template <class Archive, OrConst<SeenGrade> T>
void fields(Archive& archive, T& seen) {
  auto& [grade, day] = seen;
  archive(grade, day);
}

template <class Archive, OrConst<LimitForecast> T>
void fields(Archive& archive, T& row) {
  auto& [part, limit, answered, has_years, years, grades_now, seen, later, p_by, p_on,
         readings_used, own_share, rate_um_per_year, start_um, now_um, session_correction_um, words,
         sentence, flags] = row;
  archive(part, limit, answered, has_years, years, grades_now, seen, later, p_by, p_on,
          readings_used, own_share, rate_um_per_year, start_um, now_um, session_correction_um,
          words, sentence, flags);
}

template <class Archive, OrConst<TrackRecord> T>
void fields(Archive& archive, T& record) {
  auto& [site, horizon, stratum, issued, readings, sessions, inside_50, inside_80, inside_90,
         spread_scale, words] = record;
  archive(site, horizon, stratum, issued, readings, sessions, inside_50, inside_80, inside_90,
          spread_scale, words);
}

template <class Archive, OrConst<SessionReport> T>
void fields(Archive& archive, T& session) {
  auto& [site, gauge, day, offset_um, gain, words, check_words] = session;
  archive(site, gauge, day, offset_um, gain, words, check_words);
}

template <class Archive, OrConst<InspectorHabit> T>
void fields(Archive& archive, T& habit) {
  auto& [inspector, grades, up, down, words] = habit;
  archive(inspector, grades, up, down, words);
}

}  // namespace kneerail::forecast
