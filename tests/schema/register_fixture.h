#pragma once

// A small register for tests: one organisation, one site with a post and three components, one
// visit, and readings of them without end. The clock moves one second at each look.

#include <catch2/catch.hpp>
#include <filesystem>
#include <string>
#include <vector>

#include "core/base/world.h"
#include "schema/journal/files.h"
#include "schema/store/register.h"
#include "tests/support/folder.h"

namespace kneerail::tests {

class SteadyClock final : public Clock {
 public:
  Instant now() override { return {wall_ms}; }
  std::int64_t monotonic_ms() override { return since_boot_ms; }
  void move_on(std::int64_t ms) {
    wall_ms += ms;
    since_boot_ms += ms;
  }
  std::int64_t wall_ms = 1'900'000'000'000;
  std::int64_t since_boot_ms = 60'000;
};

using test::Folder;

/// The world a register is opened in.
struct World {
  explicit World(std::uint64_t seed = 1) : random(seed) {}

  Register::Options options(const std::filesystem::path& folder, Mode mode,
                            Files* files = nullptr) {
    return {folder, mode, &clock, &random, files};
  }
  SteadyClock clock;
  SplitMix64 random;
};

template <class T>
T taken(Result<T> result) {
  INFO((result ? std::string() : result.error().message));
  REQUIRE(result.has_value());
  return std::move(*result);
}

inline Uuid id_of(std::uint8_t kind, std::uint32_t number) {
  Uuid id;
  id.bytes = {0x01, 0x90, 0, 0, 0, 0, 0x70, 0, 0x80, kind};
  for (std::size_t i = 0; i < 4; ++i) {
    id.bytes[15 - i] = static_cast<std::uint8_t>(number >> (8 * i));
  }
  return id;
}

/// The ids of what every test's register holds.
struct Site {
  Uuid organisation = id_of(1, 1);
  Uuid site = id_of(2, 1);
  Uuid zone = id_of(3, 1);
  Uuid run = id_of(4, 1);
  Uuid post = id_of(5, 1);
  std::vector<Uuid> components = {id_of(7, 1), id_of(7, 2), id_of(7, 3)};
  Uuid gauge = id_of(9, 1);
  Uuid person = id_of(10, 1);
  Uuid visit = id_of(20, 1);
};

inline Entry created(const Uuid& feed, const Uuid& id, int type, const Uuid& parent,
                     cbor::Map fields) {
  Entry entry{feed, 1, {}, {}, {}, id};
  entry.body.set(1, type);
  if (!parent.is_zero()) entry.body.set(2, parent);
  entry.body.set(3, std::move(fields));
  return entry;
}

inline std::vector<Entry> entries_of(const Site& site) {
  std::vector<Entry> entries = {
      created(site.organisation, site.organisation, 1, {}, {{1, "Skerrymouth Harbour"}}),
      created(site.organisation, site.person, 10, site.organisation, {{2, "MO"}}),
      created(site.organisation, site.gauge, 9, site.organisation, {{1, 1}, {2, "G-104"}}),
      created(site.organisation, site.site, 2, site.organisation, {{1, "North Mole"}}),
      created(site.site, site.zone, 3, site.site, {{1, "Sea side"}, {2, 4}}),
      created(site.site, site.run, 4, site.zone, {{1, "Ferry Slip"}}),
      created(site.site, site.post, 5, site.run, {{1, "118"}, {2, 236'000}}),
  };
  for (const Uuid& component : site.components) {
    entries.push_back(created(site.site, component, 7, site.post, {{1, 5}, {4, 2}}));
  }
  entries.push_back({site.site, 10, site.site, site.person, {{1, 1}}, site.visit});
  return entries;
}

/// Three replicates of the coating of one of the components.
inline Entry coating(const Site& site, std::int64_t number) {
  const auto place = static_cast<std::size_t>(number) % site.components.size();
  const std::int64_t um = 700 + number % 300;
  return {site.site,
          21,
          site.components[place],
          site.person,
          {{1, site.visit},
           {2, site.gauge},
           {3, cbor::Array{um, um + 12, um - 7}},
           {4, 1},
           {98, site.components[place]}},
          {}};
}

/// A finding that is still being typed.
inline Draft finding_draft(const Site& site, std::int64_t place, int grade) {
  const auto component = static_cast<std::size_t>(place) % site.components.size();
  return {site.site, 30,          site.components[component],
          place,     site.person, {{1, site.visit}, {2, 1}, {3, grade}}};
}

inline std::unique_ptr<Register> made(World& world, const std::filesystem::path& folder,
                                      const Site& site, Files* files = nullptr) {
  auto opened = taken(Register::open(world.options(folder, Mode::create, files)));
  const auto entries = entries_of(site);
  taken(opened->save(entries));
  return opened;
}

/// A register with the site in it, in a folder of its own: what most tests begin with.
struct MadeRegister {
  Folder folder;
  World world;
  const Site site;
  std::unique_ptr<Register> opened = made(world, folder.path(), site);

  void reopen() {
    opened.reset();
    opened = taken(Register::open(world.options(folder.path(), Mode::write)));
  }
};

inline std::int64_t counted(Register& opened, const std::string& sql) {
  return taken(opened.tables().number(sql));
}

inline bool holds(Register& opened, const Uuid& record) {
  auto statement = opened.tables().prepare("SELECT count(*) FROM journal WHERE id = ?");
  REQUIRE(statement);
  statement->bind(1, record);
  return taken(statement->step()) && statement->number(0) == 1;
}

/// Nothing that a full check finds.
inline void check_whole(Register& opened) {
  const auto report = taken(opened.verify());
  for (const auto& problem : report.problems) UNSCOPED_INFO(problem);
  CHECK(report.problems.empty());
  CHECK(report.records == counted(opened, "SELECT count(*) FROM journal"));
}

}  // namespace kneerail::tests
