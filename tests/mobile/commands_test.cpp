#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

#include "mobile/commands/commands.h"
#include "tests/mobile/process.h"
#include "tests/mobile/small_portfolio.h"

using namespace kneerail::test;
namespace files = std::filesystem;

namespace {

constexpr const char* never_wait = "Never wait for a projection";

bool has(const std::string& text, const std::string& wanted) {
  return text.find(wanted) != std::string::npos;
}

std::vector<std::string> forecast_words(const std::string& data, const std::string& csv) {
  return {"forecast", "--data", data, "--as-of", "2026-06-30", "--csv", csv};
}

/// A small portfolio, imported.
struct Imported {
  Folder folder;
  std::string data = folder / "register";
  Ended ended;

  Imported() {
    write_small_portfolio(folder, "in");
    ended = run_kneerail({"import", folder / "in", "--data", data});
  }
};

}  // namespace

TEST_CASE("without a command the program says what it can do", "[mobile]") {
  const Ended ended = run_kneerail({});
  CHECK(ended.code == 2);
  for (const char* command : {"import", "forecast", "visits", "order", "spares", "cost", "export",
                              "verify", "rebuild", "demo"}) {
    CHECK(has(ended.out, command));
  }
  CHECK(has(ended.out, never_wait));
}

TEST_CASE("the version is told and nothing else done", "[mobile]") {
  const Ended ended = run_kneerail({"--version"});
  CHECK(ended.code == 0);
  CHECK(ended.out.starts_with("kneerail "));
}

TEST_CASE("what is not understood is said, with exit code 2", "[mobile]") {
  for (const std::vector<std::string>& words :
       {std::vector<std::string>{"forcast"},
        {"forecast"},
        {"verify", "--data"},
        {"demo", "--data", "x", "--seed", "many"},
        {"forecast", "--data", "x", "--best", "3"},
        {"forecast", "--data", "x", "--as-of", "30.06.2026"},
        {"forecast", "--data", "x", "--worst", "-3"},
        {"help", "forcast"}}) {
    const Ended ended = run_kneerail(words);
    INFO(words.back());
    CHECK(ended.code == 2);
    CHECK_FALSE(ended.err.empty());
    CHECK_FALSE(files::exists("x"));
  }
}

TEST_CASE("the help of each command that computes carries the cautions", "[mobile]") {
  for (const char* command : {"forecast", "demo"}) {
    INFO(command);
    const Ended by_help = run_kneerail({"help", command});
    CHECK(by_help.code == 0);
    CHECK(has(by_help.out, "it does not certify"));
    CHECK(has(by_help.out, never_wait));
    const Ended by_option = run_kneerail({command, "--help"});
    CHECK(by_option.code == 0);
    CHECK(has(by_option.out, never_wait));
  }
  for (const char* command : {"import", "export", "verify", "rebuild", "help"}) {
    const Ended ended = run_kneerail({"help", command});
    INFO(command);
    CHECK(ended.code == 0);
    CHECK(has(ended.out, command));
  }
}

TEST_CASE("a folder without a register is told plainly and left as it is", "[mobile]") {
  const Folder folder;
  const std::string data = folder.path().string();
  for (const std::vector<std::string>& words :
       {std::vector<std::string>{"forecast", "--data", data},
        {"verify", "--data", data},
        {"rebuild", "--data", data},
        {"export", folder / "out", "--data", data}}) {
    const Ended ended = run_kneerail(words);
    INFO(words[0] << ": " << ended.err);
    CHECK(ended.code == 2);
    CHECK(has(ended.err, "no register"));
    CHECK(has(ended.err, "kneerail import"));
    CHECK(ended.out.empty());
    CHECK(files::is_empty(folder.path()));
  }
}

TEST_CASE("a folder of readings goes in and remaining life comes out", "[mobile]") {
  const Imported in;
  INFO(in.ended.out << in.ended.err);
  REQUIRE(in.ended.code == 0);
  SECTION("piped, nothing is written over itself") {
    CHECK_FALSE(has(in.ended.out + in.ended.err, "\r"));
  }
  SECTION("importing the same folder again changes nothing") {
    const Ended again = run_kneerail({"import", in.folder / "in", "--data", in.data});
    CHECK(again.code == 0);
    const Ended verified = run_kneerail({"verify", "--data", in.data});
    INFO(verified.out << verified.err);
    CHECK(verified.code == 0);
  }
  SECTION("the CSV has a row for each part and limit, seven rising quantiles") {
    const Ended ended = run_kneerail(forecast_words(in.data, "-"));
    INFO(ended.err);
    REQUIRE(ended.code == 0);
    const auto lines = lines_of(ended.out);
    int coatings = 0;
    for (std::size_t i = 1; i < lines.size(); ++i) {
      const auto cells = cells_of(lines[i]);
      REQUIRE(cells.size() == 30);
      if (!cells[1].starts_with("coating")) continue;
      ++coatings;
      for (std::size_t q = 3; q < 9; ++q) CHECK(std::stod(cells[q - 1]) <= std::stod(cells[q]));
    }
    CHECK(coatings == 16);
    CHECK(cells_of(lines[1])[0] == "c1");
  }
  SECTION("the CSV has the chances of each fitting's screws, no quantiles") {
    const auto lines = lines_of(run_kneerail(forecast_words(in.data, "-")).out);
    int screws = 0;
    for (const std::string& line : lines) {
      const auto cells = cells_of(line);
      if (cells[1] != "torque_minimum") continue;
      ++screws;
      for (std::size_t q = 2; q < 9; ++q) CHECK(cells[q].empty());
      for (std::size_t h = 10; h < 13; ++h) CHECK(std::stod(cells[h - 1]) <= std::stod(cells[h]));
      CHECK(std::stod(cells[12]) > 0);
      CHECK(cells[13] == "5");
    }
    CHECK(screws == 8);
  }
  SECTION("the text lists the fastest part first") {
    const Ended ended =
        run_kneerail({"forecast", "--data", in.data, "--as-of", "2026-06-30", "--worst", "3"});
    INFO(ended.err);
    REQUIRE(ended.code == 0);
    const auto first = lines_of(ended.out)[4];
    INFO(ended.out);
    CHECK(has(ended.out, "Coatings, worst first: 3 of 8 parts"));
    CHECK(has(ended.out, "(80 %: "));
    CHECK(has(ended.out, never_wait));
  }
  SECTION("as many parts as are asked for stand in every list") {
    const std::vector<std::string> words{"forecast", "--data", in.data, "--as-of", "2026-06-30"};
    auto more = words;
    more.insert(more.end(), {"--worst", "7"});
    CHECK(has(run_kneerail(more).out, "Set screws, worst first: 7 of 8 fittings"));
    CHECK(has(run_kneerail(words).out, "Set screws, worst first: 5 of 8 fittings"));
  }
}

TEST_CASE("the things of a register go out as files and in again", "[mobile]") {
  const Imported in;
  REQUIRE(in.ended.code == 0);
  const Ended out = run_kneerail({"export", in.folder / "out", "--register", "--data", in.data});
  INFO(out.err);
  REQUIRE(out.code == 0);
  const std::string other = in.folder / "other";
  const Ended back = run_kneerail({"import", in.folder / "out", "--register", "--data", other});
  INFO(back.out << back.err);
  REQUIRE(back.code == 0);
  REQUIRE(run_kneerail({"export", in.folder / "again", "--register", "--data", other}).code == 0);
  for (const std::string file : {"/sites.csv", "/runs.csv", "/posts.csv", "/components.csv"}) {
    INFO(file);
    const std::string first = file_text(in.folder / "out" + file);
    CHECK_FALSE(first.empty());
    CHECK(first == file_text(in.folder / "again" + file));
  }
}

TEST_CASE("export, import and forecast again give the same file", "[mobile]") {
  const Imported in;
  REQUIRE(in.ended.code == 0);
  const std::string first = in.folder / "first.csv";
  const std::string second = in.folder / "second.csv";
  REQUIRE(run_kneerail(forecast_words(in.data, first)).code == 0);
  const Ended out = run_kneerail({"export", in.folder / "out", "--data", in.data});
  INFO(out.err);
  REQUIRE(out.code == 0);
  const std::string other = in.folder / "other";
  const Ended back = run_kneerail({"import", in.folder / "out", "--data", other});
  INFO(back.out << back.err);
  REQUIRE(back.code == 0);
  REQUIRE(run_kneerail(forecast_words(other, second)).code == 0);
  CHECK_FALSE(file_text(first).empty());
  CHECK(file_text(first) == file_text(second));
}

TEST_CASE("rows kept out are named, and nothing comes in without a word", "[mobile]") {
  const Folder folder;
  const std::string data = folder / "register";
  write_small_portfolio(folder, "in", "900,c3,v2,coating_um,A,4,0.072,exact\n");
  const Ended refused = run_kneerail({"import", folder / "in", "--data", data});
  CHECK(refused.code == 1);
  CHECK(has(refused.out + refused.err, "readings.csv"));
  CHECK(has(refused.out + refused.err, "0.072"));
  CHECK(run_kneerail({"forecast", "--data", data, "--as-of", "2026-06-30"}).code != 0);
  const Ended taken = run_kneerail({"import", folder / "in", "--data", data, "--good-rows"});
  INFO(taken.out << taken.err);
  CHECK(taken.code == 1);
  CHECK(has(taken.out + taken.err, "0.072"));
  CHECK(run_kneerail({"forecast", "--data", data, "--as-of", "2026-06-30"}).code == 0);
}

TEST_CASE("tables made again are the same tables", "[mobile]") {
  const Imported in;
  REQUIRE(in.ended.code == 0);
  const std::string before = run_kneerail(forecast_words(in.data, "-")).out;
  const Ended ended = run_kneerail({"rebuild", "--data", in.data});
  INFO(ended.err);
  CHECK(ended.code == 0);
  CHECK(has(ended.out, "No record was touched"));
  CHECK(run_kneerail(forecast_words(in.data, "-")).out == before);
}

TEST_CASE("an import that was stopped is whole and goes on when it is run again", "[mobile]") {
  const Folder folder;
  const std::string data = folder / "register";
  const std::string in = folder / "in";
  write_small_portfolio(folder, "in");
  int stops = 0;
  int code = 1;
  for (int patience = 1; code == 1 && patience < 1000; ++patience) {
    std::ostringstream out;
    std::ostringstream err;
    int asked = 0;
    kneerail::commands::Console console{out, err, false, [&] { return ++asked >= patience; }};
    const char* const words[] = {"kneerail", "import", in.c_str(), "--data", data.c_str()};
    code = kneerail::commands::run(5, words, console);
    INFO("stopped at call " << patience << ": " << out.str() << err.str());
    if (code != 1) break;
    ++stops;
    CHECK(err.str() == "Stopped; what was imported is whole; run again to go on.\n");
    CHECK(run_kneerail({"verify", "--data", data}).code == 0);
  }
  CHECK(stops > 0);
  REQUIRE(code == 0);
  const std::string other = folder / "other";
  REQUIRE(run_kneerail({"import", in, "--data", other}).code == 0);
  CHECK(run_kneerail(forecast_words(data, "-")).out ==
        run_kneerail(forecast_words(other, "-")).out);
}

TEST_CASE("a forecast that cannot be written is told, with exit code 3", "[mobile]") {
  const Imported in;
  REQUIRE(in.ended.code == 0);
  for (const char* file : {"/dev/full", "/nowhere/at/all.csv"}) {
    const Ended ended = run_kneerail(forecast_words(in.data, file));
    INFO(file << ": " << ended.err);
    CHECK(ended.code == 3);
    CHECK(has(ended.err, "could not be written"));
    CHECK(has(ended.err, "The register is as it was"));
  }
}

TEST_CASE("what stood where a forecast is written is kept until the new one is whole", "[mobile]") {
  const Imported in;
  REQUIRE(in.ended.code == 0);
  const std::string file = in.folder / "rows.csv";
  const std::string link = in.folder / "link.csv";
  const std::string kept = in.folder / "kept.csv";
  std::ofstream(file) << "of last year\n";
  files::create_hard_link(file, kept);
  files::create_symlink(file, link);
  REQUIRE(run_kneerail(forecast_words(in.data, link)).code == 0);
  CHECK(file_text(kept) == "of last year\n");  // nothing was written into the old file
  CHECK(files::is_symlink(link));
  CHECK(file_text(file) == run_kneerail(forecast_words(in.data, "-")).out);
  for (const auto& one : files::directory_iterator(files::path(file).parent_path()))
    CHECK_FALSE(has(one.path().filename().string(), "unfinished"));
}

TEST_CASE("nothing that is asked for is written over the register", "[mobile]") {
  const Imported in;
  REQUIRE(in.ended.code == 0);
  const std::string link = in.folder / "link";
  files::create_directory_symlink(in.data, link);
  files::create_symlink(in.data + "/records.db", in.folder / "one.csv");
  const std::string before = file_text(in.data + "/records.db");
  const auto here = files::relative(in.data).string();
  for (const std::string& file :
       {in.data + "/records.db", in.data + "/unsent.copy", in.data + "/new.csv",
        in.data + "/../register/records.db", link + "/records.db", here + "/records.db",
        in.folder / "one.csv"}) {
    INFO(file);
    for (const char* option : {"--csv", "--json"}) {
      const Ended ended =
          run_kneerail({"forecast", "--data", in.data, "--as-of", "2026-06-30", option, file});
      CHECK(ended.code == 2);
      CHECK(has(ended.err, "is in the folder of the register"));
    }
  }
  for (const std::string& folder : {in.data, in.data + "/", in.data + "/out", link})
    CHECK(run_kneerail({"export", folder, "--data", in.data}).code == 2);
  CHECK(file_text(in.data + "/records.db") == before);
  CHECK_FALSE(files::exists(in.data + "/new.csv"));
  CHECK_FALSE(files::exists(in.data + "/components.csv"));
  CHECK(run_kneerail({"verify", "--data", in.data}).code == 0);
  const Ended both = run_kneerail({"forecast", "--data", in.data, "--csv", "-", "--json", "-"});
  CHECK(both.code == 2);
  CHECK(both.out.empty());
  // Beside it, with a name that begins alike, is another place.
  CHECK(run_kneerail(forecast_words(in.data, in.data + "-forecast.csv")).code == 0);
}

TEST_CASE("an import that is refused leaves no register behind", "[mobile]") {
  const Folder folder;
  write_small_portfolio(folder, "bad", "x9,c1,v1,coating_um,A,9,7O.0,exact");
  files::create_directory(folder / "empty");
  files::create_directory(folder / "mine");
  folder.write("mine/note.txt", "keep me");
  const auto refused = [&](const std::string& from, const std::string& data) {
    const Ended ended = run_kneerail({"import", folder / from, "--data", folder / data});
    INFO(ended.out << ended.err);
    CHECK((ended.code == 1 || ended.code == 2));
  };
  for (const char* from : {"bad", "empty"}) {
    refused(from, "register");
    CHECK_FALSE(files::exists(folder / "register"));
    refused(from, "mine");
    CHECK(std::distance(files::directory_iterator(folder / "mine"), {}) == 1);
    CHECK(file_text(folder / "mine/note.txt") == "keep me");
  }
  // A register that was there stays as it was.
  write_small_portfolio(folder, "in");
  REQUIRE(run_kneerail({"import", folder / "in", "--data", folder / "register"}).code == 0);
  refused("bad", "register");
  CHECK(run_kneerail({"verify", "--data", folder / "register"}).code == 0);
}
