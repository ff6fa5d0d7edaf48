#include "tests/mobile/walking.h"

#include <QCoreApplication>
#include <sstream>

namespace kneerail::tests {
namespace {

constexpr std::int64_t year_ms = 365LL * 24 * 60 * 60 * 1000;
constexpr std::int64_t bay_mm = 1500;
const std::filesystem::path folder = "/register";

}  // namespace

WalkedSite::WalkedSite(int post_count) {
  for (int i = 0; i < post_count; ++i) {
    const auto n = static_cast<std::uint32_t>(i);
    posts.push_back(id_of(5, n));
    tees.push_back(id_of(7, 2 * n));
    crosses.push_back(id_of(7, 2 * n + 1));
    if (i > 0) bays.push_back(id_of(6, n));
  }
}

std::vector<Entry> WalkedSite::things() const {
  const cbor::Map limits{{2, 300}, {3, 800}, {9, 4}, {18, cbor::Map{{1, 2}, {2, 3}}}};
  const auto fitting = [&](const Uuid& id, int what) {
    return created(organisation, id, 8, organisation,
                   {{1, what}, {2, 1}, {3, 1}, {6, 240}, {7, 140}, {12, 1}});
  };
  std::vector<Entry> all = {
      created(organisation, organisation, 1, {}, {{1, "Skerrymouth Harbour"}}),
      created(organisation, person, 10, organisation, {{2, "MO"}}),
      {organisation, 60, person, {}, {{1, 1}}, id_of(60, 1)},
      created(organisation, gauge, 9, organisation,
              {{1, 1}, {2, "A2"}, {3, 10}, {6, cbor::Array{0, 15'000}}}),
      created(organisation, wrench, 9, organisation, {{1, 2}, {2, "W7"}}),
      created(organisation, rules, 11, organisation, {{1, "Harbour"}, {3, limits}}),
      fitting(tee_type, 1),
      fitting(cross_type, 3),
      created(organisation, site, 2, organisation, {{1, "North Mole"}, {6, rules}}),
      created(site, zone, 3, site, {{1, "Sea side"}, {2, 4}}),
      created(site, run, 4, zone, {{1, "Ferry Slip"}, {5, 1100}}),
  };
  for (std::size_t i = 0; i < posts.size(); ++i) {
    const auto n = static_cast<std::int64_t>(i);
    all.push_back(created(site, posts[i], 5, run,
                          {{1, std::to_string(118 + n)}, {2, n * bay_mm}, {3, n}, {6, 1100}}));
    all.push_back(created(
        site, tees[i], 7, posts[i],
        {{1, 5}, {2, tee_type}, {3, cbor::Array{0, 1100}}, {4, 3}, {10, cbor::Array{1, 2}}}));
    all.push_back(created(site, crosses[i], 7, posts[i],
                          {{1, 5}, {2, cross_type}, {3, cbor::Array{0, 550}}, {4, 2}}));
  }
  for (std::size_t i = 0; i < bays.size(); ++i)
    all.push_back(created(site, bays[i], 6, run, {{1, posts[i]}, {2, posts[i + 1]}, {3, 1}}));
  return all;
}

std::vector<Entry> WalkedSite::last_year() const {
  std::vector<Entry> all = {{site, 10, site, person, {{1, 1}}, last_visit}};
  cbor::Array replicates;
  for (const std::int64_t value : last_year_tenth_um) replicates.emplace_back(value);
  for (std::size_t i = 0; i < tees.size(); ++i) {
    for (const Uuid& part : {tees[i], crosses[i]})
      all.push_back({site, 20, part, person, {{1, last_visit}, {2, 1}, {98, part}}, {}});
    all.push_back({site,
                   21,
                   tees[i],
                   person,
                   {{1, last_visit}, {2, gauge}, {3, replicates}, {4, 1}, {98, tees[i]}},
                   {}});
  }
  return all;
}

Walking::Walking(int posts, std::uint64_t seed)
    : world_(seed), chance_(seed * 7919 + 1), site_(posts) {
  world_.clock.wall_ms -= year_ms;
  {
    auto opened = taken(Register::open(world_.options(folder, Mode::create, &disk_.files())));
    taken(opened->save(site_.things()));
    taken(opened->save(site_.last_year()));
  }
  world_.clock.move_on(year_ms);
  switch_on();
}

SiteFolder::SiteFolder(bool last_year) {
  auto made = taken(Register::open(options(Mode::create)));
  taken(made->save(site_.things()));
  if (last_year) taken(made->save(site_.last_year()));
}

Walking::~Walking() {
  switch_off();
}

void Walking::switch_on() {
  store_ = taken(StoreLink::open(world_.options(folder, Mode::write, &disk_.files())));
  walk_ = std::make_unique<WalkModel>(*store_, world_.clock, chance_);
  walk_->open(site_.run);
  settle();
}

void Walking::switch_off() {
  walk_.reset();
  store_.reset();
}

void Walking::cut_power(std::uint64_t seed) {
  disk_.cut_after(0);
  switch_off();
  disk_.restore_power(seed);
  switch_on();
}

void Walking::write_down(const std::vector<Entry>& entries) {
  auto opened = taken(Register::open(world_.options(folder, Mode::write, &disk_.files())));
  taken(opened->save(entries));
}

void Walking::settle() {
  // An answer may ask for more; three rounds are one more than any touch needs.
  for (int round = 0; round < 3; ++round) {
    store_->settle();
    QCoreApplication::processEvents();
  }
}

void Walking::type(const QString& digits) {
  for (const QChar digit : digits) coating().digit(digit.digitValue());
  coating().nextSlot();
}

QString Walking::slot(int slot, CoatingSet::Role role) {
  return coating().data(coating().index(slot), role).toString();
}

bool Walking::slot_is(int slot, CoatingSet::Role role) {
  return coating().data(coating().index(slot), role).toBool();
}

int Walking::place_of(const std::vector<Uuid>& parts, int post) const {
  const auto sheet = walk_->run()->sheet();
  for (std::size_t i = 0; i < sheet->parts.size(); ++i)
    if (sheet->parts[i].id == parts.at(static_cast<std::size_t>(post))) return static_cast<int>(i);
  return -1;
}

std::int64_t Walking::count(const std::string& sql) {
  return taken(store_->reader().tables().number(sql));
}

RunSheet Walking::read_whole() {
  return taken(read_run(store_->reader().tables(), site_.run, walk_->pen().visit()));
}

std::vector<std::int64_t> Walking::recorded(int post) {
  std::vector<std::int64_t> values;
  auto rows = store_->reader().tables().prepare(
      "SELECT replicates FROM reading WHERE kind = 21 AND subject = ?1 AND visit IS NOT ?2 AND "
      "voided_by IS NULL ORDER BY dev, seq");
  REQUIRE(rows);
  rows->bind(1, site_.tees.at(static_cast<std::size_t>(post))).bind(2, site_.last_visit);
  while (taken(rows->step())) {
    const cbor::Value list = taken(cbor::decode(rows->bytes(0)));
    for (const auto& value : *list.array()) values.push_back(*value.number());
  }
  return values;
}

std::string Walking::standing() {
  std::ostringstream out;
  const auto say = [&](const char* sql) {
    auto rows = store_->reader().tables().prepare(sql);
    REQUIRE(rows);
    rows->bind(1, site_.last_visit);
    while (taken(rows->step())) {
      for (int column = 0; column < 6; ++column)
        out << (rows->is_null(column) ? std::string("-") : rows->text(column)) << ' ';
      out << '\n';
    }
  };
  say("SELECT 'grade', hex(subject), r.kind, v1, carried, how FROM reading AS r WHERE kind IN (20, "
      "24) AND visit IS NOT ?1 AND voided_by IS NULL AND held = 0 ORDER BY subject, v1, carried");
  say("SELECT 'value', hex(subject), kind, hex(replicates), screw, v1 FROM reading WHERE kind IN "
      "(21, 22) AND visit IS NOT ?1 AND voided_by IS NULL AND held = 0 ORDER BY subject, kind, "
      "screw, replicates");
  say("SELECT 'skipped', hex(subject), reason, 0, 0, 0 FROM not_reached WHERE voided_by IS NULL "
      "AND visit IS NOT ?1 ORDER BY subject, reason");
  say("SELECT 'draft', hex(subject), kind, place, hex(body), ?1 IS NULL FROM draft ORDER BY "
      "subject, kind, place");
  return out.str();
}

}  // namespace kneerail::tests
