#include <sys/resource.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <functional>
#include <iterator>
#include <numeric>

#include "schema/exchange/digested_file.h"
#include "schema/exchange/forecast_files.h"
#include "schema/exchange/forecast_join.h"
#include "schema/exchange/shard_block.h"
#include "tests/schema/exchange/fit_in_memory.h"
#include "tests/support/folder.h"
#include "tests/support/joined_world.h"
#include "tests/support/site_split.h"

using namespace kneerail;
using kneerail::test::FitInMemory;
using kneerail::test::Folder;

namespace {

using forecast::Portfolio;

/// The same with other names, so that parts of all sites stand between each other.
Portfolio mixed(Portfolio portfolio) {
  const std::size_t count = portfolio.parts.size();
  const auto digits = std::to_string(count).size();
  for (std::size_t i = 0; i < count; ++i) {
    const std::string number = std::to_string(i * 7919 % count);  // a prime: each number once
    portfolio.parts[i].id = "p" + std::string(digits - number.size(), '0') + number;
  }
  return portfolio;
}

/// Eight sites of different kinds, one much larger than the others, fitted; the fit and its parts
/// in files.
struct World {
  Portfolio portfolio = mixed(forecast::joined_world(21, 6));
  forecast::RunOptions options{.threads = 2, .on = Date{portfolio.as_of.days + 700}};
  forecast::PortfolioFit fit;
  Folder folder;

  World() {
    auto made = forecast::fit_portfolio(portfolio, options);
    REQUIRE(made);
    fit = std::move(*made);
    FitInMemory source(fit, portfolio);
    REQUIRE(write_fit(folder / "fit", source));
  }

  [[nodiscard]] std::string file_of(int part, int of) const {
    return folder / ("part-" + std::to_string(part) + "-of-" + std::to_string(of));
  }

  /// One part of the forecast as a process of its own makes it; how many sites it has.
  std::size_t write(FitSource& source, int part, int of) const {
    const auto sites = sites_of_shard(source.sites(), {.part = part, .of = of});
    auto writer = ShardWriter::create(file_of(part, of), {.key = source.key(),
                                                          .part = part,
                                                          .of = of,
                                                          .as_of = source.as_of(),
                                                          .on = options.on,
                                                          .sites = sites,
                                                          .forecast = source.head()});
    REQUIRE(writer);
    const forecast::SiteSplit split(portfolio);
    for (const std::string& site : sites) {
      const Portfolio own = split.portfolio_of(site);
      const auto of_site = source.fit_of(site);
      REQUIRE(of_site);
      const auto rows = forecast::rows_of(*of_site, own, options);
      REQUIRE(rows);
      REQUIRE((*writer)->add(own, *rows));
    }
    REQUIRE((*writer)->finish());
    return sites.size();
  }

  std::vector<std::filesystem::path> write_all(int of) const {
    auto source = open_fit(folder / "fit");
    REQUIRE(source);
    std::vector<std::filesystem::path> files;
    for (int part = 1; part <= of; ++part) {
      write(**source, part, of);
      files.emplace_back(file_of(part, of));
    }
    return files;
  }
};

std::string text_of(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

void set_text(const std::filesystem::path& file, const std::string& text) {
  std::ofstream(file, std::ios::binary | std::ios::trunc) << text;
}

Error refused(const std::vector<std::filesystem::path>& files, const Portfolio& portfolio) {
  const auto joined = join_shards(files, portfolio);
  REQUIRE_FALSE(joined);
  INFO(joined.error().message);
  CHECK(joined.error().message.find("register is as it was") != std::string::npos);
  return joined.error();
}

bool says(const Error& error, const std::string& words) {
  return error.message.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("a forecast in parts is to the last bit that of one process", "[schema][forecast]") {
  const World world;
  const auto whole = forecast::rows_of(world.fit, world.portfolio, world.options);
  REQUIRE(whole);
  const std::string wanted = forecast::bytes_of(*whole);
  for (const int of : {1, 3, 7, 11}) {
    INFO(of << " parts");
    auto files = world.write_all(of);
    std::reverse(files.begin(), files.end());  // in whatever order they are given
    const auto joined = join_shards(files, world.portfolio);
    REQUIRE(joined);
    CHECK(forecast::bytes_of(joined->rows) == wanted);
    CHECK(forecast::bytes_of(joined->head.forecast) ==
          forecast::bytes_of(forecast::head_of(world.fit)));
    CHECK(joined->head.as_of == world.portfolio.as_of);
    CHECK(joined->head.on == world.options.on);
  }
}

TEST_CASE("every site is in one shard, and the largest alone where it can be", "[schema]") {
  const World world;
  const auto sites = site_inputs(world.portfolio);
  REQUIRE(sites.size() == 8);
  const auto largest = std::ranges::max_element(sites, {}, &SiteInput::parts);
  std::size_t empty = 0;
  for (const int of : {1, 3, 7, 11}) {
    std::vector<std::string> all;
    for (int part = 1; part <= of; ++part) {
      const auto own = sites_of_shard(sites, {.part = part, .of = of});
      all.insert(all.end(), own.begin(), own.end());
      empty += own.empty() ? 1 : 0;
      if (of > 1 && std::ranges::count(own, largest->site) == 1) CHECK(own.size() == 1);
    }
    CHECK(all.size() == sites.size());
    std::ranges::sort(all);
    CHECK(std::ranges::equal(all, sites, {}, {}, &SiteInput::site));
  }
  CHECK(empty == 3);
}

TEST_CASE("a fit in memory and one from its file say the same", "[schema][forecast]") {
  const World world;
  const auto from_file = open_fit(world.folder / "fit");
  REQUIRE(from_file);
  FitInMemory in_memory(world.fit, world.portfolio);
  CHECK((*from_file)->key() == in_memory.key());
  world.write(**from_file, 1, 1);
  const std::string wanted = text_of(world.file_of(1, 1));
  world.write(in_memory, 1, 1);
  CHECK(text_of(world.file_of(1, 1)) == wanted);
}

TEST_CASE("parts that are not one forecast are refused with what to do", "[schema][forecast]") {
  World world;
  auto files = world.write_all(3);
  SECTION("one is missing") {
    files.erase(files.begin() + 1);
    const Error error = refused(files, world.portfolio);
    CHECK(error.fault == Fault::not_found);
    CHECK(says(error, "Part 2 of 3 of the forecast is missing"));
    CHECK(says(error, "--shard 2/3"));
  }
  SECTION("a file is not there") {
    files[2] = world.folder / "nowhere";
    const Error error = refused(files, world.portfolio);
    CHECK(error.fault == Fault::not_found);
    CHECK(says(error, "nowhere"));
  }
  SECTION("one is given twice") {
    files.push_back(files[0]);
    const Error error = refused(files, world.portfolio);
    CHECK(error.fault == Fault::invalid_input);
    CHECK(says(error, "are both part 1 of 3"));
  }
  SECTION("one is given twice, the second a copy of the file") {
    const std::filesystem::path copy = world.folder / "copy";
    std::filesystem::copy_file(files[0], copy);
    files.push_back(copy);
    CHECK(says(refused(files, world.portfolio), "are both part 1 of 3"));
  }
  SECTION("one has sites of another too, for it is of another division") {
    world.write_all(2);
    files = {world.file_of(1, 2), files[0]};
    CHECK(says(refused(files, world.portfolio), "is one of 3 parts"));
  }
  SECTION("one is of another division") {
    world.write_all(7);
    files[2] = world.file_of(3, 7);
    CHECK(says(refused(files, world.portfolio), "is one of 7 parts"));
  }
  SECTION("one is of another forecast: a reading was corrected between them") {
    Portfolio corrected = world.portfolio;
    corrected.readings[0].value += 5;
    FitInMemory other(world.fit, corrected);
    world.write(other, 3, 3);
    const Error error = refused(files, world.portfolio);
    CHECK(error.fault == Fault::invalid_input);
    CHECK(says(error, "of another forecast"));
  }
  SECTION("one asked for another date") {
    world.options.on = Date{world.options.on->days + 1};
    const auto source = open_fit(world.folder / "fit");
    REQUIRE(source);
    world.write(**source, 3, 3);
    CHECK(says(refused(files, world.portfolio), "of another forecast"));
  }
  SECTION("one was made by a program with other models") {
    std::string text = text_of(files[1]);
    const std::string line = forecast_line("part 3");
    REQUIRE(text.starts_with(line));
    text.replace(0, line.size(), "kneerail forecast part 2 of models 1-0123456789abcdef");
    set_text(files[1], text);
    CHECK(says(refused(files, world.portfolio), "written by another version of this program"));
  }
  SECTION("a damaged number of a part is damage, not a part given twice") {
    std::string text = text_of(files[2]);
    const auto number = text.find('\n') + 1 + 8 + Digest{}.size();
    REQUIRE(text[number] == 3);
    text[number] = 2;
    set_text(files[2], text);
    CHECK(says(refused(files, world.portfolio), "cut short or damaged"));
  }
  SECTION("one was made after a reading was kept back") {
    Portfolio later = world.portfolio;
    later.left_out.push_back({"r-held", later.parts[0].id, "held"});
    FitInMemory other(world.fit, later);
    world.write(other, 3, 3);
    CHECK(says(refused(files, world.portfolio), "of another forecast"));
  }
  SECTION("the register has not the parts they speak of") {
    Portfolio other = world.portfolio;
    other.parts[3].id = "another";
    const Error error = refused(files, other);
    CHECK(error.fault == Fault::conflict);
    CHECK(says(error, world.portfolio.parts[3].id));
  }
}

TEST_CASE("a part file cut short or damaged anywhere is refused", "[schema][forecast]") {
  const World world;
  const auto files = world.write_all(1);
  const std::string text = text_of(files[0]);
  const auto fault_of = [&](const std::string& damaged) {
    set_text(files[0], damaged);
    const auto joined = join_shards(files, world.portfolio);
    REQUIRE_FALSE(joined);
    return joined.error().fault;
  };
  for (const double share : {0.0, 0.0001, 0.01, 0.5, 0.9, 0.9999}) {
    const auto length = static_cast<std::size_t>(share * static_cast<double>(text.size()));
    INFO(length << " of " << text.size() << " bytes");
    CHECK(fault_of(text.substr(0, length)) == Fault::corrupt);
  }
  CHECK(fault_of(text.substr(0, text.size() - 1)) == Fault::corrupt);
  CHECK(fault_of(text + "x") == Fault::corrupt);
  for (std::size_t at = 3; at < text.size(); at += text.size() / 23) {
    std::string damaged = text;
    damaged[at] = static_cast<char>(damaged[at] ^ 1);
    INFO("byte " << at);
    CHECK(fault_of(damaged) == Fault::corrupt);
  }
  CHECK(fault_of("component_id,limit\n") == Fault::corrupt);
}

TEST_CASE("a part file that no program of ours wrote is refused", "[schema][forecast]") {
  const World world;
  const auto source = open_fit(world.folder / "fit");
  REQUIRE(source);
  const std::string site = world.portfolio.parts.front().site;
  const std::filesystem::path file = world.folder / "forged";
  const auto refused_when = [&](const std::function<void(Portfolio&)>& forge) {
    auto writer = ShardWriter::create(file, {.key = (*source)->key(),
                                             .as_of = (*source)->as_of(),
                                             .on = world.options.on,
                                             .sites = {site},
                                             .forecast = (*source)->head()});
    REQUIRE(writer);
    Portfolio own = forecast::SiteSplit(world.portfolio).portfolio_of(site);
    const auto rows = forecast::rows_of(*(*source)->fit_of(site), own, world.options);
    REQUIRE(rows);
    forge(own);
    REQUIRE((*writer)->add(own, *rows));
    REQUIRE((*writer)->finish());
    const auto join = ForecastJoin::open({file});
    return !join && join.error().fault == Fault::corrupt;
  };
  CHECK_FALSE(refused_when([](Portfolio&) {}));
  CHECK(refused_when([](Portfolio& own) { own.parts[1].id = own.parts[0].id; }));
  CHECK(refused_when([](Portfolio& own) { own.parts[1].site = "elsewhere"; }));
}

TEST_CASE("rows of a part that is not there are refused", "[schema][forecast]") {
  const World world;
  const auto source = open_fit(world.folder / "fit");
  REQUIRE(source);
  const std::filesystem::path file = world.folder / "forged";
  const forecast::Part& part = world.portfolio.parts.front();
  const auto opens = [&](std::int32_t place) {
    auto writer = DigestedWriter::create(file, shard_line());
    REQUIRE(writer);
    KeptHead head;
    head.key = (*source)->key();
    head.as_of = (*source)->as_of();
    head.sites = {part.site};
    head.forecast = forecast::bytes_of((*source)->head());
    REQUIRE(writer->block(archived(head)));
    forecast::ForecastRows rows;
    rows.limits.emplace_back().part = place;
    std::string bytes;
    ByteSink sink(bytes);
    sink(SiteBlockHead{part.site, {}, 1});
    sink(archived(PartBlock{part, forecast::bytes_of(rows)}));
    REQUIRE(writer->block(bytes));
    REQUIRE(writer->finish());
    return static_cast<bool>(ForecastJoin::open({file}));
  };
  CHECK(opens(0));
  CHECK_FALSE(opens(1));
  CHECK_FALSE(opens(-1));
}

TEST_CASE("a part file that changes while it is read is found", "[schema][forecast]") {
  const World world;
  const auto files = world.write_all(2);
  const auto join = ForecastJoin::open(files);
  REQUIRE(join);
  const auto parts = [&] {
    std::vector<std::string> ids;
    const auto done = (*join)->each_part([&](const JoinedPart& part) -> Result<> {
      ids.push_back(part.part.id);
      return Done{};
    });
    CHECK((done || done.error().fault == Fault::corrupt));
    return std::pair(static_cast<bool>(done), ids);
  };
  const auto [whole, ids] = parts();
  CHECK(whole);
  CHECK(ids.size() == world.portfolio.parts.size());
  CHECK(std::ranges::is_sorted(ids));
  // Parts of the sites stand between each other.
  std::size_t changes = 0;
  for (std::size_t i = 1; i < ids.size(); ++i) {
    const auto site_of = [&](const std::string& id) {
      return std::ranges::find(world.portfolio.parts, id, &forecast::Part::id)->site;
    };
    changes += site_of(ids[i]) != site_of(ids[i - 1]) ? 1 : 0;
  }
  CHECK(changes > 8);  // there are eight
  std::string text = text_of(files[1]);
  text[text.size() - 200] = static_cast<char>(text[text.size() - 200] ^ 1);
  set_text(files[1], text);
  CHECK_FALSE(parts().first);
  set_text(files[1], text.substr(0, text.size() / 2));
  CHECK_FALSE(parts().first);
}

TEST_CASE("a fit file cut short or damaged anywhere is refused", "[schema][forecast]") {
  const World world;
  const std::filesystem::path file = world.folder / "fit";
  const std::string text = text_of(file);
  const auto is_refused = [&](const std::string& damaged) {
    set_text(file, damaged);
    auto source = open_fit(file);
    if (!source) return source.error().fault == Fault::corrupt;
    for (const SiteInput& site : (*source)->sites()) {
      const auto fit = (*source)->fit_of(site.site);
      if (!fit) return fit.error().fault == Fault::corrupt;
    }
    return false;
  };
  for (const double share : {0.0, 0.01, 0.5, 0.99, 0.99999})
    CHECK(is_refused(
        text.substr(0, static_cast<std::size_t>(share * static_cast<double>(text.size())))));
  int found = 0;
  int damages = 0;
  for (std::size_t at = 100; at < text.size() - 40; at += text.size() / 29) {
    std::string damaged = text;
    damaged[at] = static_cast<char>(damaged[at] ^ 4);
    found += is_refused(damaged) ? 1 : 0;
    ++damages;
  }
  CHECK(found == damages);
  const auto nowhere = open_fit(world.folder / "nowhere");
  REQUIRE_FALSE(nowhere);
  CHECK(nowhere.error().fault == Fault::not_found);
}

TEST_CASE("only two numbers say which part of a forecast", "[schema]") {
  const auto number = shard_number("2/7");
  REQUIRE(number);
  CHECK(number->part == 2);
  CHECK(number->of == 7);
  for (const char* text : {"", "2", "/", "2/", "/7", "0/7", "8/7", "-1/7", "2/0", "2/7/9", "a/b"}) {
    INFO(text);
    CHECK_FALSE(shard_number(text));
  }
}

TEST_CASE("parts of the register that no file speaks of are named", "[schema][forecast]") {
  const World world;
  const auto files = world.write_all(3);
  const auto all = join_shards(files, world.portfolio);
  REQUIRE(all);
  CHECK(all->not_in_it.empty());
  Portfolio later = world.portfolio;
  later.parts.push_back(later.parts.front());
  later.parts.back().id = "zz-new";
  const auto joined = join_shards(files, later);
  REQUIRE(joined);
  CHECK(joined->not_in_it ==
        std::vector<std::int32_t>{static_cast<std::int32_t>(later.parts.size()) - 1});
  CHECK(joined->rows.limits.size() == all->rows.limits.size());
}

TEST_CASE("joining holds one part file open at a time", "[schema][forecast]") {
  const World world;
  constexpr int many = 60;
  const auto files = world.write_all(many);
  rlimit before{};
  REQUIRE(::getrlimit(RLIMIT_NOFILE, &before) == 0);
  rlimit few = before;
  few.rlim_cur = 30;
  REQUIRE(::setrlimit(RLIMIT_NOFILE, &few) == 0);
  const auto joined = join_shards(files, world.portfolio);
  REQUIRE(::setrlimit(RLIMIT_NOFILE, &before) == 0);
  INFO((joined ? "" : joined.error().message));
  CHECK(joined);
  // What is said of the whole stands once, not in each.
  const std::string head = forecast::bytes_of(forecast::head_of(world.fit));
  for (const auto& file : files)
    CHECK((text_of(file).find(head) != std::string::npos) == (file == files.front()));
}
