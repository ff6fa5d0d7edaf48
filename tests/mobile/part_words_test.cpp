#include "mobile/models/part_words.h"

#include <catch2/catch.hpp>

#include "tests/mobile/made_run.h"

namespace kneerail {

namespace {

std::string words(const QString& text) {
  return text.toStdString();
}

std::vector<std::string> names_of_post(const RunSheet& sheet, int post) {
  std::vector<std::string> names;
  const SheetPost& at = sheet.posts[static_cast<std::size_t>(post)];
  for (int i = at.first_part; i < at.first_part + at.parts; ++i) {
    names.push_back(words(part_name(sheet, i)));
  }
  return names;
}

}  // namespace

TEST_CASE("a part is called by its kind and the rail it stands at", "[words]") {
  using Names = std::vector<std::string>;
  CHECK(
      names_of_post(tests::made_run({.posts = 9, .sleeve_every_bays = 0}), 3) ==
      Names{"post tube", "base flange", "mid-rail cross", "top-rail tee", "mid-rail", "top rail"});
  CHECK(names_of_post(tests::made_run({.posts = 9, .rails = 3, .rail_spacing_mm = 450}), 1) ==
        Names{"post tube", "base flange", "mid-rail 2 cross", "mid-rail 1 cross", "top-rail tee",
              "mid-rail 2", "mid-rail 1", "top rail", "top-rail sleeve"});
  CHECK(names_of_post(tests::made_run({.posts = 9, .welded = true}), 3) ==
        Names{"post tube", "anchor bolts", "mid-rail weld", "top-rail weld", "welded section"});
}

TEST_CASE("a screen reader hears post, part, grade, finding and what is open", "[words]") {
  RunSheet sheet = tests::made_run({.posts = 9, .first_label = 115});
  const int part = sheet.findings.at(0).part;
  SheetPart& cross = sheet.parts[static_cast<std::size_t>(part)];
  cross.now.reset();
  cross.last->grade = 3;
  CHECK(words(spoken_part(sheet, part)) ==
        "Post 118, top-rail tee, grade 3, rust begins, finding F-2, not yet graded this visit");
  cross.now = cross.last;
  cross.now->grade = 4;
  cross.finish = Finish::aluminium;
  CHECK(words(spoken_part(sheet, part)) ==
        "Post 118, top-rail tee, grade 4, pits spread, finding F-2");
  CHECK(words(spoken_post(sheet, 3)) == "Post 118, open");
  CHECK(words(spoken_bay(sheet, 5)) == "Bay 120 to 121, closed off");
}

}  // namespace kneerail
