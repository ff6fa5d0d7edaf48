#include "core/forecast/grade/grade_words.h"

#include <catch2/catch.hpp>
#include <limits>

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

const double inf = std::numeric_limits<double>::infinity();

struct Seen {
  int grade;
  int year;
  bool fresh = true;
};

std::vector<GradeLook> looks(const std::vector<Seen>& seen) {
  std::vector<GradeLook> all;
  for (const Seen& one : seen) {
    GradeLook look;
    look.day = date_from_civil(one.year, 5, 22);
    look.seen = static_cast<std::int8_t>(one.grade);
    look.fresh = one.fresh;
    all.push_back(look);
  }
  return all;
}

GradeForecast row() {
  GradeForecast made;
  made.years = {1.5, 4.2, 9, 12.6, 20, 30.9, inf};
  made.p_by = {0.02, 0.04, 0.05, 0.124};
  made.now = {0.004, 0.02, 0.712, 0.224, 0.04};
  made.seen = 3;
  made.seen_on = date_from_civil(2025, 5, 22);
  made.words = "own grades and zone";
  return made;
}

}  // namespace

TEST_CASE("each state of knowledge about a grade has its words", "[core][grade]") {
  struct Row {
    std::vector<Seen> seen;
    bool start_known;
    const char* words;
  };
  const std::vector<Row> table{
      {{}, true, "never graded; judged by its zone and age"},
      {{}, false, "never graded, age unknown; judged by its site"},
      {{{2, 2020}}, true, "one grade; speed from its zone"},
      {{{2, 2020}}, false, "one grade; speed from its zone"},
      {{{2, 2020}, {2, 2022, false}}, true, "one grade; speed from its zone"},
      {{{2, 2020, false}}, true, "graded from afar or as last time only; speed from its zone"},
      {{{2, 2014}, {2, 2020}, {2, 2025}}, true, "no change in 11 years"},
      {{{2, 2014}, {2, 2015}, {2, 2025, false}}, true, "no change in 11 months"},
      {{{1, 2014}, {2, 2020}}, true, "own grades and zone"},
      {{{3, 2020}, {2, 2022}},
       true,
       "own grades and zone; graded 3 then 2: one of them is likely off"},
      {{{4, 2020}, {1, 2022}, {1, 2024}},
       true,
       "own grades and zone; graded 4 then 1: replaced without a record?"},
      {{{4, 2020}, {1, 2022}, {3, 2023}, {2, 2024}},
       true,
       "own grades and zone; graded 3 then 2: one of them is likely off"},
  };
  for (const Row& row : table)
    CHECK(grade_basis_words(looks(row.seen), {.start = row.start_known, .earlier = false}) ==
          row.words);
  CHECK(grade_basis_words({}, {.start = true, .earlier = true}) ==
        "not graded since it was renewed; judged by its earlier grades and its age");
  CHECK(grade_basis_words({}, {.start = false, .earlier = true}) ==
        "not graded since it came back; judged by its earlier grades and its site");
  CHECK(grade_basis_words(looks({{2, 2020}}), {.start = true, .earlier = true}) ==
        "one grade; speed from its zone and its earlier grades");
}

TEST_CASE("two people's grades of one day are no change in no time", "[core][grade]") {
  const auto words = [](const std::vector<Seen>& seen) {
    return grade_basis_words(looks(seen), {.start = true, .earlier = false});
  };
  CHECK(words({{3, 2020}, {3, 2020}}) == "one grade; speed from its zone");
  CHECK(words({{4, 2020}, {2, 2020}}) ==
        "own grades and zone; graded 4 and 2 on one day: one of them is likely off");
  CHECK(words({{3, 2020}, {2, 2020}}) == "own grades and zone");
  // The worst of a day counts against the next: no grade came back.
  CHECK(words({{3, 2020}, {2, 2020}, {3, 2024}}) == "own grades and zone");
  CHECK(words({{2, 2020}, {4, 2020}, {2, 2024}}) ==
        "own grades and zone; graded 4 then 2: replaced without a record?");
  auto soon = looks({{3, 2020}, {3, 2020}});
  soon[1].day.days += 12;
  CHECK(grade_basis_words(soon, {.start = true, .earlier = false}) == "no change in under a month");
}

TEST_CASE("what was seen stands beside what is likely now", "[core][grade]") {
  GradeForecast one = row();
  CHECK(grade_now_words(one) == "seen 3 on 2025-05-22; likely 3 (71 %), 4 (22 %)");
  one.now = {0, 0, 0.004, 0.001, 0.995};
  CHECK(grade_now_words(one) == "seen 3 on 2025-05-22; likely 5 (over 99 %)");
  one.seen.reset();
  one.now = {0.5, 0.4, 0.08, 0.015, 0.005};
  CHECK(grade_now_words(one) == "never graded; likely 1 (50 %), 2 (40 %)");
}

TEST_CASE("a grade forecast is one sentence from its own numbers", "[core][grade]") {
  GradeForecast one = row();
  CHECK(grade_sentence(one, true) ==
        "Seen 3 on 2025-05-22; likely 3 (71 %), 4 (22 %). Grade 5 within 5 years: 12 %; in about "
        "12 years (80 %: 4 to 30 years). Own grades and zone.");
  CHECK(grade_sentence(one, false) ==
        "Seen 3 on 2025-05-22; likely 3 (71 %), 4 (22 %). Grade 5 within 5 years: 12 %; in about "
        "12 years (80 %: 4 to 30 years). Own grades and zone. No grade is set; reckoned to grade "
        "5.");
  one.limit = Limit::grade_4;
  CHECK(grade_sentence(one, true) ==
        "Seen 3 on 2025-05-22; likely 3 (71 %), 4 (22 %). Grade 4 or worse within 5 years: 12 %; "
        "in about 12 years (80 %: 4 to 30 years). Own grades and zone.");
  one.limit = Limit::grade_3;
  CHECK(grade_sentence(one, true) ==
        "Seen 3 on 2025-05-22; likely 3 (71 %), 4 (22 %). Grade 3 or worse was seen: act on it. "
        "Own grades and zone.");
  one = row();
  one.words = "own grades and zone; graded 4 then 2: replaced without a record?";
  CHECK(grade_sentence(one, true).ends_with("4 then 2: replaced without a record?"));
  one = row();
  one.seen.reset();
  one.words = "never graded, age unknown; judged by its site";
  one.years = {3, 6, 12, 26, 60, inf, inf};
  CHECK(
      grade_sentence(one, true) ==
      "Never graded, age unknown; judged by its site. Likely 3 (71 %), 4 (22 %). Grade 5 within 5 "
      "years: 12 %; in about 26 years (80 %: 6 years to no upper bound).");
}

TEST_CASE("a grade 5 that was seen is acted on, whatever the model says", "[core][grade]") {
  GradePart part;
  CHECK(grade_flags(looks({{3, 2020}}), part).empty());
  CHECK(grade_flags(looks({{3, 2020}, {5, 2022}}), part) ==
        std::vector<std::string>{"grade 5 seen on 2022-05-22: act on it"});
  CHECK(grade_flags(looks({{5, 2022}, {3, 2022}}), part) ==
        std::vector<std::string>{"grade 5 seen on 2022-05-22: act on it"});
  part.graded_before_start = true;
  CHECK(grade_flags(looks({{3, 2020}}), part) ==
        std::vector<std::string>{"graded before its date of installation: is the date right?"});
  part.graded_before_start = false;
  CHECK(grade_flags(looks({{3, 2020, false}}), part) ==
        std::vector<std::string>{"grade of 2020-05-22 is no fresh look: said as last time, from "
                                 "afar or from a picture"});
}

TEST_CASE("an inspector's habit is told only where it is more than chance", "[core][grade]") {
  const GradeErrors all{0.04, 0.05};
  const auto words = [&](double ups, double downs, double of, double up, double down) {
    return habit_words("I2", {of, of, of, ups, downs}, {up, down}, all);
  };
  CHECK(words(60, 15, 300, 0.165, 0.05) == "I2 grades high: 1 in 6");
  CHECK(words(12, 60, 300, 0.04, 0.2) == "I2 grades low: 1 in 5");
  CHECK(words(60, 60, 300, 0.165, 0.2) == "I2 grades high: 1 in 6; and low: 1 in 5");
  CHECK(words(14, 15, 300, 0.045, 0.05).empty());
  CHECK(words(1, 0, 6, 0.07, 0.05).empty());  // one of six is no habit
}
