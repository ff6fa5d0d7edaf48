#include "mobile/models/trend_picture.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "mobile/models/forecast_words.h"

namespace kneerail {

namespace {

using forecast::PartStory;

constexpr double years_before_first_reading = 1;
constexpr double years_after_crossing = 1.5;
constexpr double years_ahead_least = 5;
constexpr double years_ahead_most = 25;
constexpr double room_for_words = 1.2;   // over the highest reading
constexpr double drift_half_year = 0.3;  // drawn either side of a session that was off
constexpr double drift_joins_years = 1.2;

class TrendWords {
  Q_DECLARE_TR_FUNCTIONS(TrendWords)
};

QString begun_words(const forecast::StoryLife& life) {
  const QString when = month_and_year(life.start);
  if (life.after_swap) return TrendWords::tr("replaced? about %1").arg(when);
  if (!life.begun_by) return {};
  switch (*life.begun_by) {
    case forecast::Action::touch_up:
      return TrendWords::tr("touched up %1").arg(when);
    case forecast::Action::regalvanise:
      return TrendWords::tr("re-galvanised %1").arg(when);
    case forecast::Action::re_erect:
      return TrendWords::tr("re-erected %1, same part not sure").arg(when);
    default:
      return TrendWords::tr("replaced %1").arg(when);
  }
}

class Drawing {
 public:
  Drawing(const PartStory& story, const std::function<QString(const std::string&)>& gauge)
      : story_(story), gauge_(gauge) {
    picture_.now = calendar_year(story.as_of);
  }

  TrendPicture draw() {
    for (const auto& session : story_.sessions) add_dots(session);
    add_drifts();
    for (const auto& limit : story_.limits) add_limit(limit);
    set_axis();
    for (std::size_t i = 0; i < story_.lives.size(); ++i) add_life(i);
    set_top();
    return std::move(picture_);
  }

 private:
  void add_dots(const forecast::StorySession& session) {
    TrendPicture::Dots dots;
    dots.year = calendar_year(session.day);
    dots.put_right = session.gauge_was_off;
    dots.current = session.life + 1 == static_cast<int>(story_.lives.size());
    const double shift = session.gauge_was_off ? session.correction_um : 0;
    for (const double value : session.replicates_um) dots.values << std::max(0.0, value + shift);
    picture_.dots << dots;
  }

  void add_drifts() {
    const forecast::StorySession* before = nullptr;
    for (const auto& session : story_.sessions) {
      if (!session.gauge_was_off) continue;
      const double year = calendar_year(session.day);
      const bool goes_on = before != nullptr && before->gauge == session.gauge &&
                           year - calendar_year(before->day) < drift_joins_years;
      if (goes_on)
        picture_.drifts.last().to = year + drift_half_year;
      else
        picture_.drifts << TrendPicture::Drift{
            year - drift_half_year, year + drift_half_year,
            TrendWords::tr("gauge %1 was off: put right, %2 µm")
                .arg(gauge_(session.gauge), signed_figure(session.correction_um))};
      before = &session;
    }
  }

  void add_limit(const forecast::StoryLimit& told) {
    const auto& row = told.forecast;
    if (!row.answered) return;
    TrendPicture::Limit limit;
    limit.value = told.limit_um;
    limit.last = row.limit == forecast::Limit::coating_exhausted;
    limit.label = (limit.last ? TrendWords::tr("zinc gone, %1 µm")
                              : TrendWords::tr("first maintenance, %1 µm"))
                      .arg(told.limit_um, 0, 'f', 0);
    constexpr std::size_t p10 = 1;
    constexpr std::size_t p50 = 3;
    constexpr std::size_t p90 = 5;
    limit.crossed = std::isfinite(row.years[p10]);
    limit.low = picture_.now + row.years[p10];
    limit.middle = picture_.now + row.years[p50];
    limit.high = picture_.now + row.years[p90];
    picture_.limits << limit;
  }

  void set_axis() {
    const double first = picture_.dots.isEmpty()
                             ? calendar_year(story_.lives.back().start)
                             : picture_.dots.first().year - years_before_first_reading;
    picture_.from = std::floor(std::min(first, picture_.now - 1));
    double last = picture_.now + years_ahead_least;
    for (const auto& limit : picture_.limits)
      if (std::isfinite(limit.high)) last = std::max(last, limit.high + years_after_crossing);
    picture_.to = std::ceil(std::min(last, picture_.now + years_ahead_most));
  }

  void add_life(std::size_t i) {
    const auto& told = story_.lives[i];
    TrendPicture::Life life;
    life.current = i + 1 == story_.lives.size();
    life.start = calendar_year(told.start);
    if (i > 0) life.begun = begun_words(told);
    for (const auto& point : told.path)
      life.path << TrendPicture::Point{picture_.now + point.years, point.thickness_um[0],
                                       point.thickness_um[1], point.thickness_um[2]};
    picture_.lives << life;
  }

  void set_top() {
    constexpr double step = 20;
    double most = step * 2;
    for (const auto& dots : picture_.dots)
      for (const double value : dots.values) most = std::max(most, value);
    for (const auto& life : picture_.lives)
      for (const auto& point : life.path)
        if (point.year >= picture_.from && point.year <= picture_.to)
          most = std::max(most, point.middle);
    picture_.top = std::ceil(most * room_for_words / step) * step;
  }

  const PartStory& story_;
  const std::function<QString(const std::string&)>& gauge_;
  TrendPicture picture_;
};

}  // namespace

double calendar_year(Date day) {
  const Civil on = civil(day);
  const Date first = date_from_civil(on.year, 1, 1);
  const Date next = date_from_civil(on.year + 1, 1, 1);
  return on.year + static_cast<double>(day.days - first.days) / (next.days - first.days);
}

TrendPicture trend_picture(const PartStory& story,
                           const std::function<QString(const std::string&)>& gauge) {
  return Drawing(story, gauge).draw();
}

}  // namespace kneerail
