// What the Forecast room says and draws of one part.

#include <QImage>
#include <QPainter>
#include <catch2/catch.hpp>
#include <limits>

#include "core/forecast/part_story.h"
#include "mobile/models/forecast_words.h"
#include "mobile/models/trend_picture.h"
#include "mobile/screens/trend_painter.h"
#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

QString as_written(const std::string& name) {
  return QString::fromStdString(name);
}

PartStory story_of(const Made& made, std::int32_t part) {
  const auto model = fit_coating_model(made.portfolio, {.threads = 1});
  REQUIRE(model);
  auto story = part_story(*model, made.portfolio, part);
  REQUIRE(story);
  return std::move(*story);
}

QImage painted(const TrendPicture& picture, bool stale) {
  QImage image(800, 500, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  TrendLook look;
  look.palette = theme::palette(theme::Theme::light);
  look.stale = stale;
  paint_trend(painter, image.rect(), picture, look);
  return image;
}

int pixels_of(const QImage& image, const QColor& color) {
  int count = 0;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x) count += image.pixel(x, y) == color.rgb() ? 1 : 0;
  return count;
}

}  // namespace

TEST_CASE("time left is whole years rounded down, months under two years", "[mobile][forecast]") {
  CHECK(time_words(-0.5) == "reached");
  CHECK(time_words(0.02) == "under 1 m");
  CHECK(time_words(0.9) == "10 m");
  CHECK(time_words(1.0) == "1 y");
  CHECK(time_words(1.49) == "1 y 5 m");
  CHECK(time_words(2.0) == "2 y");
  CHECK(time_words(6.99) == "6 y");
  CHECK(time_words(15) == "over 15 y");
  CHECK(time_words(std::numeric_limits<double>::infinity()) == "over 15 y");
  CHECK(band_words({1, 2.2, 2.5, 3, 3.4, 3.9, 4}) == "2 y to 3 y");
  CHECK(band_words({-2, -1, 0, 1, 2, 40, 50}) == "reached to over 15 y");
}

TEST_CASE("what a calibration added to the readings is said", "[mobile][forecast]") {
  // The certificate in force on the last day takes 1.2 and 1.8 um off in turn.
  Made made = made_portfolio({.seed = 11});
  auto& readings = made.portfolio.readings;
  const auto of_part = [](const Reading& one) {
    return one.part == 0 && one.quantity == Quantity::coating_um;
  };
  const auto last = std::find_if(readings.rbegin(), readings.rend(), of_part);
  REQUIRE(last != readings.rend());
  const std::int32_t visit = last->visit;
  int turn = 0;
  double sum = 0;
  for (Reading& one : readings)
    if (of_part(one) && one.visit == visit)
      sum += one.certificate_add = turn++ % 2 == 0 ? -1.2 : -1.8;
  const double mean = sum / turn;
  const PartStory story = story_of(made, 0);
  const auto& day = made.portfolio.visits[static_cast<std::size_t>(visit)].day;
  int put_right = 0;
  for (const StorySession& session : story.sessions) {
    CHECK(session.certificate_um == (session.day == day ? Approx(mean) : Approx(0)));
    put_right += session.day == day ? 1 : 0;
  }
  CHECK(put_right == 1);
  const QString said = reason_words(story, as_written);
  CHECK(said.count("The calibration of gauge") == 1);
  CHECK(said.contains("adds " + signed_figure(mean) + " µm to the readings of " +
                      month_and_year(day)));
}

TEST_CASE("a rate is called other than its class only where its band leaves it",
          "[mobile][forecast]") {
  PartStory story;
  story.limits.push_back({});
  auto& row = story.limits.front().forecast;
  row.answered = true;
  row.readings_used = 5;
  row.rate_um_per_year = {7.9, 9.2, 10.6};
  story.usual_of = Category::c5;
  const auto says = [&](double usual) {
    story.usual_um_per_year = usual;
    return rate_headline(story);
  };
  CHECK(says(8) == "Losing 9.2 µm a year (7.9 to 10.6), about the pace of class C5.");
  CHECK(says(7) == "Losing 9.2 µm a year (7.9 to 10.6), faster than class C5.");
  CHECK(says(4.6) == "Losing 9.2 µm a year (7.9 to 10.6), twice the pace of class C5.");
  CHECK(says(30) == "Losing 9.2 µm a year (7.9 to 10.6), well under the pace of class C5.");
  story.usual_of.reset();
  CHECK(says(7) ==
        "Losing 9.2 µm a year (7.9 to 10.6), faster than what its zone is said to lose.");
  row.readings_used = 1;
  CHECK(says(7) == "One visit only. Its zone says 9.2 µm a year (7.9 to 10.6).");
  row.answered = false;
  CHECK(says(7) == "No rate yet.");
}

TEST_CASE("what a part's own readings carry is never all and never nothing", "[mobile][forecast]") {
  CHECK(chance_words(0) == "under 1 %");
  CHECK(chance_words(0.0049) == "under 1 %");
  CHECK(chance_words(0.01) == "1 %");
  CHECK(chance_words(0.994) == "99 %");
  CHECK(chance_words(0.996) == "over 99 %");
  CHECK(chance_words(1) == "over 99 %");
  PartStory story;
  story.lives.push_back({});
  story.limits.push_back({});
  auto& row = story.limits.front().forecast;
  row.answered = true;
  row.readings_used = 9;
  row.own_share = 0.9999;
  CHECK(reason_words(story, as_written).contains("Its own readings carry over 99 % of the rate"));
}

TEST_CASE("a day on which the gauge's check was not in order is named", "[mobile][forecast]") {
  Made made = made_portfolio({.seed = 13});
  const auto reading = std::find_if(
      made.portfolio.readings.begin(), made.portfolio.readings.end(),
      [](const Reading& one) { return one.part == 0 && one.quantity == Quantity::coating_um; });
  REQUIRE(reading != made.portfolio.readings.end());
  Visit& visit = made.portfolio.visits[static_cast<std::size_t>(reading->visit)];
  CHECK_FALSE(reason_words(story_of(made, 0), as_written).contains("not in order"));
  visit.gauge_not_in_order = true;
  CHECK(reason_words(story_of(made, 0), as_written)
            .contains("A check of gauge " + as_written(visit.coating_gauge) +
                      " was not in order on " + whole_day(visit.day)));
}

TEST_CASE("a part newer than the reckoning is held against its own class", "[mobile][forecast]") {
  Made made = made_portfolio({.seed = 21});
  made.portfolio.parts[4].category = Category::c2;
  made.portfolio.parts[4].prior_is_category = true;
  const auto model = fit_coating_model(made.portfolio, {.threads = 1});
  REQUIRE(model);
  const auto story = story_of_one_part(*model, only_part(made.portfolio, 4));
  REQUIRE(story);
  CHECK(story->usual_of == Category::c2);
}

TEST_CASE("the trend shows every reading, and crosses its limits when they are reached",
          "[mobile][forecast]") {
  const Made made = made_portfolio({.seed = 22});
  const PartStory story = story_of(made, 3);
  const TrendPicture picture = trend_picture(story, as_written);
  qsizetype dots = 0;
  for (const auto& day : picture.dots) dots += day.values.size();
  std::size_t readings = 0;
  for (const auto& session : story.sessions) readings += session.replicates_um.size();
  REQUIRE(readings > 0);
  CHECK(static_cast<std::size_t>(dots) == readings);
  CHECK(picture.from < picture.dots.first().year);
  CHECK(picture.to > picture.now);
  for (const auto& limit : picture.limits)
    for (const auto& told : story.limits)
      if (told.limit_um == limit.value)
        CHECK(limit.middle == Approx(calendar_year(story.as_of) + told.forecast.years[3]));
  CHECK(calendar_year(date_from_civil(2031, 1, 1)) == Approx(2031));
  CHECK(calendar_year(date_from_civil(2024, 7, 2)) == Approx(2024.5).margin(0.001));
}

TEST_CASE("a day on which the gauge was off is marked, and its readings stand where they were put",
          "[mobile][forecast]") {
  const Made made = made_portfolio({.seed = 23, .drift_um = 14});
  for (std::int32_t part = 0; part < 12; ++part) {
    const PartStory story = story_of(made, part);
    const TrendPicture picture = trend_picture(story, as_written);
    for (std::size_t i = 0; i < story.sessions.size(); ++i) {
      const auto& session = story.sessions[i];
      const auto& dots = picture.dots[static_cast<qsizetype>(i)];
      CHECK(dots.put_right == session.gauge_was_off);
      if (!session.gauge_was_off || session.replicates_um.empty()) continue;
      CHECK_FALSE(picture.drifts.isEmpty());
      CHECK(dots.values.first() == Approx(session.replicates_um[0] + session.correction_um));
      return;
    }
  }
  FAIL("no session of a gauge 14 um off was seen to be off");
}

TEST_CASE("a stale trend is hollow until it is reckoned again", "[mobile][forecast]") {
  const Made made = made_portfolio({.seed = 24});
  TrendPicture picture = trend_picture(story_of(made, 3), as_written);
  auto& limit = picture.limits.last();
  limit.crossed = true;
  limit.low = picture.now + 1;
  limit.middle = picture.now + 2;
  limit.high = picture.now + 4;
  const QColor rust = theme::palette(theme::Theme::light).rust;
  const int fresh = pixels_of(painted(picture, false), rust);
  const int stale = pixels_of(painted(picture, true), rust);
  CHECK(fresh > stale + 100);
  CHECK(stale > 0);
}
