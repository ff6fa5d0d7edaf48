#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/mobile/process.h"
#include "tests/mobile/small_portfolio.h"

using namespace kneerail::test;
namespace files = std::filesystem;

namespace {

bool has(const std::string& text, const std::string& wanted) {
  return text.find(wanted) != std::string::npos;
}

void replace_all(std::string& text, const std::string& from, const std::string& to) {
  for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
}

/// The small portfolio once more under other names: another site of the same owner.
void write_another_site(const Folder& folder, const std::string& name) {
  write_small_portfolio(folder, name);
  for (const char* file : {"components.csv", "visits.csv", "readings.csv", "interventions.csv"}) {
    std::string text = file_text(folder / (name + "/" + file));
    const auto body = text.find('\n');
    std::string rows = text.substr(body);
    for (const auto& [from, to] : {std::pair{",s1,", ",s2,"},
                                   {",z1,", ",z2,"},
                                   {",r1,", ",r2,"},
                                   {"\nc", "\nd"},
                                   {"\nv", "\nw"},
                                   {",v", ",w"}})
      replace_all(rows, from, to);
    for (int part = 1; part <= 8; ++part)
      replace_all(rows, ",c" + std::to_string(part) + ",", ",d" + std::to_string(part) + ",");
    if (std::string(file) == "readings.csv") replace_all(rows, "\n", "\nn");
    if (rows.ends_with("\nn")) rows.pop_back();
    folder.write(name + "/" + file, text.substr(0, body) + rows);
  }
}

/// A small portfolio, imported, and the forecast command on it.
struct Imported {
  Folder folder;
  std::string data = folder / "register";

  Imported() {
    write_small_portfolio(folder, "in");
    REQUIRE(run_kneerail({"import", folder / "in", "--data", data}).code == 0);
  }
  [[nodiscard]] Ended forecast(std::vector<std::string> words) const {
    words.insert(words.begin(), {"forecast", "--data", data});
    return run_kneerail(words);
  }
  [[nodiscard]] Ended shard(const std::string& number, const std::string& into) const {
    return forecast({"--fit", folder / "fit", "--shard", number, "--into", folder / into});
  }
};

}  // namespace

TEST_CASE("a forecast in parts gives the file that one process gives", "[mobile]") {
  const Imported in;
  const std::vector<std::string> asked{"--as-of", "2026-06-30", "--on", "2030-01-01"};
  auto whole_words = asked;
  whole_words.insert(whole_words.end(), {"--csv", in.folder / "whole.csv"});
  REQUIRE(in.forecast(whole_words).code == 0);
  const std::string whole = file_text(in.folder / "whole.csv");
  CHECK(has(lines_of(whole).front(), ",flags,p_on"));
  const Ended fit = in.forecast({"--as-of", "2026-06-30", "--fit", in.folder / "fit"});
  INFO(fit.err);
  REQUIRE(fit.code == 0);
  // Two sites' worth of shards for one site: one of them is empty.
  for (const char* number : {"1/2", "2/2"}) {
    const Ended part = in.forecast({"--fit", in.folder / "fit", "--on", "2030-01-01", "--shard",
                                    number, "--into", in.folder / std::string(1, number[0])});
    INFO(part.err);
    CHECK(part.code == 0);
  }
  const Ended joined =
      in.forecast({"--join", in.folder / "2", in.folder / "1", "--csv", in.folder / "joined.csv"});
  INFO(joined.err);
  REQUIRE(joined.code == 0);
  CHECK(file_text(in.folder / "joined.csv") == whole);
  SECTION("a shard without a fit makes its own") {
    auto words = asked;
    words.insert(words.end(), {"--shard", "1/1", "--into", in.folder / "all"});
    REQUIRE(in.forecast(words).code == 0);
    REQUIRE(in.forecast({"--join", in.folder / "all", "--csv", in.folder / "again.csv"}).code == 0);
    CHECK(file_text(in.folder / "again.csv") == whole);
  }
}

TEST_CASE("two sites in parts give the CSV and JSON of one process", "[mobile]") {
  const Imported in;
  write_another_site(in.folder, "pier");
  REQUIRE(run_kneerail({"import", in.folder / "pier", "--data", in.data}).code == 0);
  REQUIRE(in.forecast({"--as-of", "2026-06-30", "--csv", in.folder / "whole.csv"}).code == 0);
  const std::string whole = file_text(in.folder / "whole.csv");
  REQUIRE(has(whole, "\nd8,"));
  const std::vector<std::string> s2{"--site", "s2", "--csv", in.folder / "site.csv"};
  const auto with = [](std::vector<std::string> words, const std::vector<std::string>& more) {
    words.insert(words.end(), more.begin(), more.end());
    return words;
  };
  REQUIRE(in.forecast(with({"--as-of", "2026-06-30"}, s2)).code == 0);
  const std::string site = file_text(in.folder / "site.csv");
  CHECK_FALSE(has(site, "\nc8,"));
  REQUIRE(in.forecast({"--as-of", "2026-06-30", "--inspectors", "--json", in.folder / "whole.json"})
              .code == 0);
  const std::string json = file_text(in.folder / "whole.json");
  CHECK(nlohmann::json::parse(json).dump(1) + "\n" == json);
  REQUIRE(in.forecast({"--as-of", "2026-06-30", "--fit", in.folder / "fit"}).code == 0);
  for (const int of : {1, 2}) {
    std::vector<std::string> join{"--join"};
    for (int part = 1; part <= of; ++part) {
      const std::string name = "part-" + std::to_string(part);
      const Ended made = in.shard(std::to_string(part) + "/" + std::to_string(of), name);
      INFO(made.err);
      REQUIRE(made.code == 0);
      CHECK(has(made.err, of == 1 ? "16 parts of the register" : "8 parts of the register"));
      join.push_back(in.folder / name);
    }
    const Ended joined = in.forecast(with(join, {"--csv", in.folder / "joined.csv", "--json",
                                                 in.folder / "joined.json", "--inspectors"}));
    INFO(joined.err);
    REQUIRE(joined.code == 0);
    CHECK(file_text(in.folder / "joined.csv") == whole);
    CHECK(file_text(in.folder / "joined.json") == json);
    REQUIRE(in.forecast(with(join, s2)).code == 0);
    CHECK(file_text(in.folder / "site.csv") == site);
    const Ended nowhere = in.forecast(with(join, {"--csv", "-", "--site", "s3"}));
    CHECK(nowhere.code == 2);
    CHECK(has(nowhere.err, "There is no site 's3'"));
  }
}

TEST_CASE("what cannot be joined, or is no longer so, is told", "[mobile]") {
  const Imported in;
  REQUIRE(in.forecast({"--as-of", "2026-06-30", "--fit", in.folder / "fit"}).code == 0);
  REQUIRE(in.shard("1/2", "one").code == 0);
  SECTION("a part is missing") {
    const Ended ended = in.forecast({"--join", in.folder / "one"});
    CHECK(ended.code == 2);
    CHECK(has(ended.err, "Part 2 of 2 of the forecast is missing"));
    CHECK(has(ended.err, "--shard 2/2"));
  }
  SECTION("the register changed after the fit") {
    write_small_portfolio(in.folder, "more", "9999,c1,v5,coating_um,A,4,61.0,exact\n");
    REQUIRE(run_kneerail({"import", in.folder / "more", "--data", in.data}).code == 0);
    const Ended ended = in.shard("1/1", "late");
    CHECK(ended.code != 0);
    CHECK(has(ended.err, "is not as it was when the fit was made"));
    CHECK_FALSE(files::exists(in.folder / "late"));
  }
  SECTION("another day than the fit's is asked") {
    const Ended ended = in.forecast({"--as-of", "2026-07-01", "--fit", in.folder / "fit", "--shard",
                                     "1/1", "--into", in.folder / "late"});
    CHECK(ended.code != 0);
    CHECK(has(ended.err, "The fit is of 2026-06-30"));
  }
  SECTION("options that do not go together") {
    CHECK(has(in.forecast({"--shard", "1/2"}).err, "--into"));
    CHECK(has(in.forecast({"--into", "x"}).err, "--shard"));
    CHECK(has(in.forecast({"--join", "x", "--fit", "y"}).err, "--join"));
    CHECK(has(in.forecast({"--shard", "3/2", "--into", "x"}).err, "write it as 2/7"));
    CHECK_FALSE(files::exists("x"));
  }
  SECTION("an option that a part, a fit or a join has no use for is refused") {
    const auto refused = [&](std::vector<std::string> words, const std::string& option) {
      words.push_back(option);
      if (option != "--inspectors" && option != "--afresh" && option != "--track-record")
        words.push_back(option == "--on" || option == "--as-of" ? "2035-01-01"
                        : option == "--csv" || option == "--json" || option == "--site"
                            ? in.folder / "never"
                            : "3");
      const Ended ended = in.forecast(words);
      INFO(option << ": " << ended.err);
      CHECK(ended.code == 2);
      CHECK(has(ended.err, option + " does not go with it"));
      CHECK(has(ended.err, "register is as it was"));
      CHECK_FALSE(files::exists(in.folder / "never"));
    };
    REQUIRE(in.shard("1/1", "all").code == 0);
    for (const char* option : {"--as-of", "--on", "--afresh"})
      refused({"--join", in.folder / "all"}, option);
    const auto shown = {"--csv",          "--json",          "--site",       "--worst",
                        "--track-record", "--measure-first", "--inspectors", "--afresh"};
    for (const char* option : shown) {
      refused({"--fit", in.folder / "never"}, option);
      refused({"--shard", "1/1", "--into", in.folder / "never"}, option);
    }
    refused({"--fit", in.folder / "never"}, "--on");
  }
  SECTION("a part is not written over its fit") {
    const std::string fit = file_text(in.folder / "fit");
    const Ended ended = in.shard("1/1", "./fit");
    CHECK(ended.code == 2);
    CHECK(has(ended.err, "is the file of the fit itself"));
    CHECK(file_text(in.folder / "fit") == fit);
  }
  SECTION("nothing is written into the register's folder") {
    const Ended ended = in.forecast({"--fit", in.data + "/fit"});
    CHECK(ended.code == 2);
    CHECK_FALSE(files::exists(in.data + "/fit"));
  }
}

TEST_CASE("a joined forecast says all that the whole one says", "[mobile]") {
  const Imported in;
  REQUIRE(
      in.forecast({"--as-of", "2022-01-01", "--shard", "1/1", "--into", in.folder / "all"}).code ==
      0);
  const Ended whole = in.forecast({"--as-of", "2022-01-01", "--measure-first", "3"});
  const Ended joined = in.forecast({"--join", in.folder / "all", "--measure-first", "3"});
  INFO(joined.err);
  REQUIRE(whole.code == 0);
  CHECK(has(whole.out, "After 2022-01-01, and left out: 1 visit with"));
  CHECK(joined.out == whole.out);
  CHECK(joined.err.empty());
}

TEST_CASE("a joined forecast says what came to the register since", "[mobile]") {
  const Imported in;
  REQUIRE(in.forecast({"--as-of", "2026-06-30", "--fit", in.folder / "fit"}).code == 0);
  write_another_site(in.folder, "pier");
  const Ended imported = run_kneerail({"import", in.folder / "pier", "--data", in.data});
  INFO(imported.out << imported.err);
  REQUIRE(imported.code == 0);
  REQUIRE(in.shard("1/1", "all").code == 0);
  const Ended joined = in.forecast({"--join", in.folder / "all", "--json", in.folder / "json"});
  INFO(joined.err);
  CHECK(joined.code == 0);
  for (const std::string& said : {joined.err, file_text(in.folder / "json")}) {
    CHECK(has(said, "Not in this forecast: 8 parts that came to the register after it was fitted"));
    CHECK(has(said, "s2: 8"));
    CHECK(has(said, "records came to the register after this was fitted"));
    CHECK(has(said, "Make the fit again"));
  }
}

TEST_CASE("a date that is asked is answered for every limit", "[mobile]") {
  const Imported in;
  const Ended text = in.forecast({"--as-of", "2026-06-30", "--on", "2031-06-30"});
  INFO(text.out << text.err);
  REQUIRE(text.code == 0);
  CHECK(has(text.out, "; by 2031-06-30: "));
  CHECK(has(text.out, " By 2031-06-30: "));
  const Ended csv = in.forecast({"--as-of", "2026-06-30", "--on", "2031-06-30", "--csv", "-"});
  const auto lines = lines_of(csv.out);
  REQUIRE(lines.size() > 8);
  constexpr std::size_t p_now = 9;
  constexpr std::size_t p_5y = 12;
  for (std::size_t i = 1; i < lines.size(); ++i) {
    const auto cells = cells_of(lines[i]);
    if (cells[p_now].empty()) continue;
    INFO(lines[i]);
    // Five years of 365.25 days end a day or so after that date.
    CHECK(std::stod(cells.back()) <= std::stod(cells[p_5y]) + 0.001);
    CHECK(std::stod(cells.back()) >= std::stod(cells[p_now]));
  }
  SECTION("a date that has been is refused") {
    const Ended ended = in.forecast({"--as-of", "2026-06-30", "--on", "2026-06-29"});
    CHECK(ended.code == 2);
    CHECK(has(ended.err, "--on 2026-06-29 is before 2026-06-30"));
    CHECK(ended.out.empty());
  }
  SECTION("what is no date is refused") {
    const Ended ended = in.forecast({"--on", "next spring"});
    CHECK(ended.code == 2);
    CHECK(has(ended.err, "'next spring' is no date"));
  }
}

TEST_CASE("visits after the day it is from are listed as left out", "[mobile]") {
  const Imported in;
  const Ended ended = in.forecast({"--as-of", "2020-01-01"});
  INFO(ended.out << ended.err);
  REQUIRE(ended.code == 0);
  CHECK(has(ended.out, "After 2020-01-01, and left out: 2 visits with 64 readings"));
  CHECK(has(ended.out, "  2021-05-01, "));
  CHECK(has(ended.out, "  2024-05-01, "));
  CHECK_FALSE(has(ended.out, "  2018-05-01, "));
  const Ended all = in.forecast({"--as-of", "2026-06-30"});
  CHECK_FALSE(has(all.out, "and left out"));
}

TEST_CASE("what was reckoned is kept beside the register", "[mobile]") {
  const Imported in;
  const std::vector<std::string> words{"--as-of", "2026-06-30", "--csv", "-"};
  const Ended first = in.forecast(words);
  REQUIRE(first.code == 0);
  CHECK(files::exists(in.data + "/forecast.kept"));
  CHECK(in.forecast(words).out == first.out);
  write_small_portfolio(in.folder, "more", "9999,c1,v5,coating_um,A,4,31.0,exact\n");
  REQUIRE(run_kneerail({"import", in.folder / "more", "--data", in.data}).code == 0);
  const Ended one_changed = in.forecast(words);
  INFO(one_changed.err);
  CHECK(has(one_changed.err, "1 part changed since all was fitted"));
  const auto before = lines_of(first.out);
  const auto after = lines_of(one_changed.out);
  REQUIRE(after.size() == before.size());
  for (std::size_t i = 1; i < after.size(); ++i)
    if (cells_of(after[i]).front() != "c1") CHECK(after[i] == before[i]);
  CHECK(one_changed.out != first.out);
  auto afresh = words;
  afresh.emplace_back("--afresh");
  const Ended fitted = in.forecast(afresh);
  CHECK_FALSE(has(fitted.err, "changed since"));
  CHECK(fitted.out != one_changed.out);
  CHECK(in.forecast(words).out == fitted.out);
  CHECK(run_kneerail({"verify", "--data", in.data}).code == 0);
}
