#include <catch2/catch.hpp>
#include <sstream>

#include "mobile/commands/console.h"

using namespace kneerail;
using namespace kneerail::commands;

TEST_CASE("counts are written with commas and the right word", "[mobile]") {
  CHECK(with_commas(0) == "0");
  CHECK(with_commas(999) == "999");
  CHECK(with_commas(1000) == "1,000");
  CHECK(with_commas(1234567) == "1,234,567");
  CHECK(with_commas(-1234) == "-1,234");
  CHECK(counted(1, "post", "posts") == "1 post");
  CHECK(counted(620, "post", "posts") == "620 posts");
}

TEST_CASE("long work shows its counts on a terminal only", "[mobile]") {
  std::ostringstream out;
  std::ostringstream err;
  Console console{out, err};
  SECTION("piped: nothing") {
    Progress progress(console, "Folded");
    CHECK(progress(10, 100));
    CHECK(progress(100, 100));
    progress.clear();
    CHECK(err.str().empty());
  }
  SECTION("on a terminal: the last count, then an empty line") {
    console.err_is_terminal = true;
    Progress progress(console, "Folded");
    CHECK(progress(1000, 2000));
    CHECK(progress(2000, 2000));
    CHECK(err.str() == "\rFolded 1,000 of 2,000\rFolded 2,000 of 2,000");
    progress.clear();
    CHECK(err.str().ends_with("\r"));
  }
  CHECK(out.str().empty());
}

TEST_CASE("work stops when a person asks for it", "[mobile]") {
  std::ostringstream out;
  std::ostringstream err;
  bool pressed = false;
  Console console{out, err, false, [&] { return pressed; }};
  Progress progress(console, "Imported");
  CHECK(progress(1, 0));
  pressed = true;
  CHECK_FALSE(progress(2, 0));
}

TEST_CASE("how a command ends follows from what went wrong", "[mobile]") {
  std::ostringstream out;
  std::ostringstream err;
  Console console{out, err};
  CHECK(report(fail(Fault::invalid_input, "a"), console) == Exit::misuse);
  CHECK(report(fail(Fault::not_found, "b"), console) == Exit::misuse);
  CHECK(report(fail(Fault::not_estimable, "c"), console) == Exit::findings);
  CHECK(report(fail(Fault::cancelled, "d"), console) == Exit::findings);
  CHECK(report(fail(Fault::io, "e"), console) == Exit::machine);
  CHECK(report(fail(Fault::conflict, "f"), console) == Exit::machine);
  CHECK(report(fail(Fault::corrupt, "g"), console) == Exit::machine);
  CHECK(err.str() == "a\nb\nc\nd\ne\nf\ng\n");
  CHECK(out.str().empty());
}
