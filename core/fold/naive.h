#pragma once

// The judge: every row from a plain reading of the rules over all records at once, in memory, with
// no index, no increment and no care for speed. Shared with the other fold, and so not judged by
// it: which body field stands in which column (row_layout), the merge key, what a record is about,
// the arithmetic of a time from an offset, which keys a correction may touch, which measures hold
// people back, and what may have been seen where no base list says so (rules.h, finding_rules.h).

#include <map>
#include <set>

#include "core/fold/finding_rules.h"
#include "core/fold/row_layout.h"
#include "core/fold/work_rules.h"

namespace kneerail::fold::naive {

using Facts = std::vector<const Fact*>;

/// All records, each once, in order of (t, key), and the rows that later families read.
struct World {
  std::vector<Fact> facts;
  TableStore& store;
  std::map<Uuid, Row> entities;
  std::map<Uuid, Uuid> retired_by;                  ///< entity to the record that retired it itself
  std::map<std::pair<Uuid, int>, Uuid> edit_shown;  ///< entity and field to the record shown
  std::map<Uuid, std::int64_t> strike_state;
  std::map<Uuid, Uuid> strike_opened_by;
  std::set<std::pair<Uuid, Uuid>> writers;  ///< people and the feeds they have written in
  std::set<Uuid> barriers;                  ///< runs and bays with a closure that holds people

  explicit World(TableStore& rows) : store(rows) {}

  [[nodiscard]] Facts of_kind(int kind) const;
  /// Of one kind about one subject, in order of (t, key).
  [[nodiscard]] Facts of(int kind, const Uuid& subject) const;
  /// The same, only those neither void nor held.
  [[nodiscard]] Facts counting(int kind, const Uuid& subject) const;
  [[nodiscard]] const Fact* find(const Uuid& id) const;
  [[nodiscard]] std::optional<Uuid> parent_of(const Uuid& entity) const;
  /// The entity, what it stands in, and so on up.
  [[nodiscard]] std::vector<Uuid> upwards(const Uuid& entity) const;
  void put(int table, Row row) const { store.put(table, std::move(row)); }
};

const Fact* largest_key(const Facts& facts);
bool contains(const std::vector<Uuid>& ids, const Uuid& id);

/// What stands against each other about one subject.
struct Clash {
  Uuid subject;
  int what;
  std::int64_t detail;
  Uuid feed;
  std::vector<Uuid> records;
  std::optional<Uuid> winner;
  std::vector<Uuid> settled_on{};  ///< subjects whose settlings count; the subject when empty
};
/// Writes the row; returns the record that is shown.
std::optional<Uuid> clash(const World& world, const Clash& clash);
/// The last settling of one of the subjects that names all these records.
const Fact* settling(const World& world, const std::vector<Uuid>& subjects,
                     const std::vector<Uuid>& records);

/// Groups of ids that counting records of a kind say are one; each id with the smallest of its
/// group.
std::map<Uuid, Uuid> ones(const World& world, int kind);

std::vector<Fact> facts_of(std::span<const PlacedRecord> placed, TableStore& store);
void put_changes(World& world);
void put_register(World& world);
void put_retirements(World& world);
void put_visits(World& world);
void put_readings(World& world);
void put_coverage(World& world);
void put_lives(World& world);
void put_strikes(World& world);
void put_closures(World& world);
void put_gaps(World& world);
void put_findings(World& world);
void put_plain(World& world);
void put_stock(World& world);
void put_writers(World& world, std::span<const PlacedRecord> arrived);
void put_objects(World& world);

}  // namespace kneerail::fold::naive
