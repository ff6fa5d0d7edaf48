#include "schema/time_zone_file.h"

#include <array>
#include <cstdio>
#include <fstream>
#include <memory>

#include "core/base/text.h"
#include "schema/exchange/portfolio_export.h"
#include "schema/store/organisation_days.h"
#include "schema/store/portfolio_store.h"
#include "tests/schema/register_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

using Bytes = std::vector<std::uint8_t>;

Bytes bytes_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  REQUIRE(in);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// What a program prints, line by line.
std::vector<std::string> printed_by(const std::string& command) {
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> out(::popen(command.c_str(), "r"),
                                                            ::pclose);
  REQUIRE(out);
  std::vector<std::string> lines;
  std::array<char, 512> line{};
  while (std::fgets(line.data(), line.size(), out.get()) != nullptr)
    lines.emplace_back(line.data());
  return lines;
}

struct Said {
  Instant at;
  int offset_s = 0;
  Date day;
};

/// "Europe/Oslo  Sun Mar 30 00:59:59 2031 UT = Sun Mar 30 01:59:59 2031 CET isdst=0 gmtoff=3600"
std::optional<Said> said_in(const std::string& line) {
  constexpr std::string_view months = "JanFebMarAprMayJunJulAugSepOctNovDec";
  char there[8], here[8];
  int day, hour, minute, second, year, local_day, local_year, offset_s;
  const int found = std::sscanf(
      line.c_str(),
      "%*s %*s %7s %d %d:%d:%d %d UT = %*s %7s %d %*d:%*d:%*d %d %*s isdst=%*d gmtoff=%d", there,
      &day, &hour, &minute, &second, &year, here, &local_day, &local_year, &offset_s);
  if (found != 10) return std::nullopt;
  const auto date = [&](const char* month, int y, int d) {
    return date_from_civil(y, static_cast<unsigned>(months.find(month) / 3 + 1),
                           static_cast<unsigned>(d));
  };
  const std::int64_t seconds =
      date(there, year, day).days * std::int64_t{86'400} + hour * 3600 + minute * 60 + second;
  return Said{Instant{seconds * 1000}, offset_s, date(here, local_year, local_day)};
}

std::vector<std::string> zones_on_this_machine() {
  std::vector<std::string> names;
  std::ifstream table(std::filesystem::path(system_zones) / "zone1970.tab");
  for (std::string line; std::getline(table, line);) {
    if (line.empty() || line[0] == '#') continue;
    const auto from = line.find('\t', line.find('\t') + 1) + 1;
    names.push_back(line.substr(from, line.find('\t', from) - from));
  }
  return names;
}

std::string trouble_of(const Bytes& bytes) {
  const auto zone = time_zone_from_tzif(bytes);
  return zone ? std::string() : zone.error().message;
}

}  // namespace

// Judge: zdump of the GNU C library (Debian package libc-bin), which prints the second before and
// the second after every change of the offset.
TEST_CASE("offsets and days are those of zdump, on both sides of every change", "[schema]") {
  const auto names = zones_on_this_machine();
  REQUIRE(names.size() > 300);
  std::size_t compared = 0;
  std::size_t after_the_table = 0;
  for (const auto& name : names) {
    const TimeZone zone = taken(read_time_zone(name));
    INFO(name);
    for (const auto& line : printed_by("zdump -v -c 1970,2060 " + name)) {
      const auto said = said_in(line);
      if (!said || civil(utc_day(said->at)).year < 1970) continue;
      if (zone.offset_s(said->at) != said->offset_s || zone.day(said->at) != said->day)
        FAIL(line << "here: " << zone.offset_s(said->at) << " s, " << to_text(zone.day(said->at)));
      ++compared;
      if (civil(utc_day(said->at)).year > 2037) ++after_the_table;
    }
  }
  CHECK(compared > 25'000);
  CHECK(after_the_table > 2'000);
}

TEST_CASE("a leap day begins and ends by the clock of the place", "[schema]") {
  // Judge: date of the GNU coreutils, TZ=Pacific/Auckland date -d @1835391599.
  const TimeZone zone = taken(read_time_zone("Pacific/Auckland"));
  for (const char* time :
       {"2028-02-28T10:59:59Z", "2028-02-28T11:00:00Z", "2028-02-29T10:59:59Z",
        "2028-02-29T11:00:00Z", "2132-02-28T11:00:00Z", "2100-02-28T11:00:00Z"}) {
    const auto at = instant_from_text(time).value();
    const auto lines =
        printed_by("TZ=Pacific/Auckland date +%F -d @" + std::to_string(at.ms / 1000));
    REQUIRE(lines.size() == 1);
    INFO(time);
    CHECK(to_text(zone.day(at)) + "\n" == lines[0]);
  }
}

TEST_CASE("a zone that is not there, or no name of one, says so", "[schema]") {
  const auto message = [](std::string_view name) {
    const auto zone = read_time_zone(name);
    REQUIRE_FALSE(zone.has_value());
    CHECK(zone.error().fault == Fault::not_found);
    return zone.error().message;
  };
  CHECK(message("Europe/Skerrymouth") ==
        "this machine does not know the time zone Europe/Skerrymouth (there is no file "
        "/usr/share/zoneinfo/Europe/Skerrymouth)");
  for (const char* name : {"", "../../etc/passwd", "/etc/localtime", "Europe/", "Europe\\Oslo"})
    CHECK(message(name) == "\"" + std::string(name) + "\" is no time zone");
  CHECK(read_time_zone("Europe").error().fault == Fault::not_found);  // a folder
  CHECK(read_time_zone("Etc/UTC", "/nowhere").has_value());
}

TEST_CASE("a damaged zone file is refused whole", "[schema]") {
  const Bytes whole = bytes_of(std::filesystem::path(system_zones) / "Europe/Oslo");
  REQUIRE(trouble_of(whole).empty());
  SECTION("cut off anywhere") {
    for (std::size_t size = 0; size < whole.size(); ++size)
      CHECK_FALSE(
          trouble_of(Bytes(whole.begin(), whole.begin() + static_cast<long>(size))).empty());
  }
  SECTION("any byte changed neither stops the program nor reads past the end") {
    for (std::size_t place = 0; place < whole.size(); ++place) {
      Bytes changed = whole;
      changed[place] ^= 0xFF;
      if (const auto zone = time_zone_from_tzif(changed)) {
        const int offset_s = zone->offset_s(Instant{1'900'000'000'000});
        CHECK(std::abs(offset_s) < 86'400);
      }
    }
  }
  SECTION("with leap seconds") {
    Bytes leap = whole;
    leap[31] = 1;  // the last byte of leapcnt (RFC 8536, 3.1)
    CHECK(trouble_of(leap).find("counts leap seconds") == 0);
  }
  CHECK(trouble_of({'h', 'e', 'l', 'l', 'o'}) == "is no time zone");
}

TEST_CASE("a file of version 1 has its table and no rule", "[schema]") {
  // Made by hand: one change at 1000 s, to +3600 s, from 0.
  Bytes file = {'T', 'Z', 'i', 'f', 0};
  file.resize(44, 0);
  file[35] = 1;  // timecnt
  file[39] = 2;  // typecnt
  file[43] = 4;  // charcnt
  const Bytes block = {0, 0, 0x03, 0xE8, 1, 0, 0,   0,   0,   0, 0,
                       0, 0, 0x0E, 0x10, 1, 0, 'A', 'B', 'C', 0};
  file.insert(file.end(), block.begin(), block.end());
  const TimeZone zone = taken(time_zone_from_tzif(file));
  CHECK(zone.offset_s(Instant{999'999}) == 0);
  CHECK(zone.offset_s(Instant{1'000'000}) == 3600);
  CHECK(zone.offset_s(Instant{4'000'000'000'000}) == 3600);
}

TEST_CASE("the forecast's days are those of the organisation's zone", "[schema]") {
  // The clock of the fixture stands at 2030-03-17T17:46:40Z: in Auckland that is the 18th, 06:46.
  MadeRegister made;
  const auto day_of = [&] {
    const auto all = taken(read_portfolio(made.opened->tables(), Date{30'000}));
    REQUIRE(all.visits.size() == 1);
    REQUIRE(all.readings.size() == 3);
    CHECK_FALSE(all.readings[0].seen.has_value());
    return to_text(all.visits[0].day);
  };
  taken(made.opened->save(std::vector<Entry>{coating(made.site, 0)}));
  CHECK(day_of() == "2030-03-17");
  const auto name_zone = [&](const char* zone) {
    Entry set{made.site.organisation, 2, made.site.organisation, made.site.person, {}, {}};
    set.body.set(1, cbor::Array{cbor::Array{4, zone, cbor::Array{}}});
    taken(made.opened->save(std::vector<Entry>{set}));
  };
  name_zone("Pacific/Auckland");
  CHECK(day_of() == "2030-03-18");
  CHECK(taken(organisation_days(made.opened->tables())).trouble.empty());
  SECTION("and the exported visit has that date") {
    exchange::ExportOptions options;
    options.folder = made.folder.path() / "out";
    taken(exchange::export_portfolio(made.opened->tables(), options));
    const Bytes visits = bytes_of(options.folder / "visits.csv");
    CHECK(std::string(visits.begin(), visits.end()).find(",2030-03-18,") != std::string::npos);
  }
  SECTION("a zone nobody knows leaves UTC, and says so") {
    name_zone("Pacific/Skerrymouth");
    CHECK(day_of() == "2030-03-17");
    const auto days = taken(organisation_days(made.opened->tables()));
    CHECK(days.name == "UTC");
    CHECK(days.trouble ==
          "Days are those of UTC: this machine does not know the time zone Pacific/Skerrymouth "
          "(there is no file /usr/share/zoneinfo/Pacific/Skerrymouth). Install the package tzdata, "
          "or set the time zone of the organisation again. Nothing that was saved depends on it.");
  }
  SECTION("so does a damaged file") {
    const auto zones = made.folder.path() / "zones";
    std::filesystem::create_directories(zones / "Pacific");
    std::ofstream(zones / "Pacific/Auckland") << "TZif2 and nothing more";
    const auto days = taken(organisation_days(made.opened->tables(), zones));
    CHECK(days.name == "UTC");
    CHECK(days.trouble.find("Days are those of UTC: the time zone file ") == 0);
    CHECK(days.trouble.find("is no time zone") != std::string::npos);
  }
}
