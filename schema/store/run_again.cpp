#include "schema/store/run_again.h"

#include <algorithm>
#include <set>

#include "core/fold/rules.h"
#include "schema/store/run_layout.h"
#include "schema/store/run_state.h"

namespace kneerail {

namespace {

namespace kind = fold::kind;

template <class Thing>
int place_of(const std::vector<Thing>& things, const Uuid& id) {
  const auto at = std::find_if(things.begin(), things.end(),
                               [&](const Thing& thing) { return thing.id == id; });
  return at == things.end() ? -1 : static_cast<int>(at - things.begin());
}

class Touching {
 public:
  Touching(Database& tables, const RunSheet& sheet) : tables_(tables), sheet_(sheet) {}

  Result<> add(int what, const Uuid& subject) {
    switch (what) {
      case kind::visit_opened:
      case kind::coating:
      case kind::torque:
      case kind::wall:
      case kind::geometry:
      case kind::gate_check:
      case kind::instrument_check:
        return Done{};
      case kind::grade:
        return add_place(touched_.parts, place_of(sheet_.parts, subject));
      case kind::hand_load:
        return add_place(touched_.bays, place_of(sheet_.bays, subject));
      case kind::not_reached:
        if (subject == sheet_.id) touched_.all = true;
        return add_place(touched_.posts, place_of(sheet_.posts, subject));
      case kind::voided:
        return add_voided(subject);
      default:
        touched_.all = true;
        return Done{};
    }
  }
  [[nodiscard]] RunTouched take() { return std::move(touched_); }

 private:
  static Result<> add_place(std::vector<int>& places, int place) {
    if (place >= 0) places.push_back(place);  // else of another run
    return Done{};
  }

  Result<> add_voided(const Uuid& record) {
    bool found = false;
    auto done = each_row(tables_,
                         "SELECT kind, subject FROM reading WHERE record = ?1 UNION ALL "
                         "SELECT kind, subject FROM not_reached WHERE record = ?1",
                         {record}, [&](const Statement& row) {
                           found = true;
                           return add(static_cast<int>(row.number(0)), row.uuid(1));
                         });
    if (!found) touched_.all = true;
    return done;
  }

  Database& tables_;
  const RunSheet& sheet_;
  RunTouched touched_;
};

Result<> read_part(Database& tables, SheetPart& part, const Uuid& visit) {
  part.now.reset();
  part.last.reset();
  part.carried_in_a_row = 0;
  const std::string sql = "SELECT " + std::string(columns_of_grade) +
                          " FROM latest AS n JOIN reading AS r ON r.record = n.reading "
                          "WHERE n.subject = ?1 AND n.kind = 20";
  auto done = each_row(tables, sql, {part.id}, [&](const Statement& row) -> Result<> {
    set_grade(part, row, visit);
    return Done{};
  });
  return done ? EarlierGrades(tables, visit).read(part) : done;
}

Result<> read_bay(Database& tables, SheetBay& bay, const Uuid& visit) {
  bay.looked = bay.pushed = false;
  if (visit.is_zero()) return Done{};
  return each_row(tables,
                  "SELECT subject, what FROM reading WHERE subject = ?1 AND visit = ?2 AND "
                  "kind = 24 AND voided_by IS NULL AND held = 0",
                  {bay.id, visit}, [&](const Statement& row) -> Result<> {
                    add_look(bay, row);
                    return Done{};
                  });
}

/// What was said of the run is said of each of its posts.
Result<> read_post(Database& tables, SheetPost& post, const RunSheet& sheet) {
  post.skipped_because.clear();
  if (sheet.visit.is_zero()) return Done{};
  return each_row(tables,
                  "SELECT subject, reason FROM not_reached WHERE subject IN (?1, ?2) AND "
                  "visit = ?3 AND voided_by IS NULL AND held = 0 ORDER BY t, record",
                  {post.id, sheet.id, sheet.visit}, [&](const Statement& row) -> Result<> {
                    add_skip(post, row);
                    return Done{};
                  });
}

}  // namespace

Result<RunTouched> touched_by(Database& tables, const RunSheet& sheet,
                              const std::vector<Entry>& entered) {
  Touching touching(tables, sheet);
  for (const Entry& entry : entered)
    if (auto done = touching.add(entry.kind, entry.subject); !done) return fail(done.error());
  return touching.take();
}

Result<RunSheet> read_again(Database& tables, const RunSheet& before, const RunTouched& touched) {
  if (touched.all) return read_run(tables, before.id, before.visit);
  RunSheet sheet = before;
  std::set<int> posts(touched.posts.begin(), touched.posts.end());
  for (const int place : touched.parts) {
    SheetPart& part = sheet.parts[static_cast<std::size_t>(place)];
    if (auto done = read_part(tables, part, sheet.visit); !done) return fail(done.error());
    posts.insert(part.post);
  }
  for (const int place : touched.bays) {
    SheetBay& bay = sheet.bays[static_cast<std::size_t>(place)];
    if (auto done = read_bay(tables, bay, sheet.visit); !done) return fail(done.error());
    posts.insert(bay.from);
  }
  for (const int place : touched.posts) {
    SheetPost& post = sheet.posts[static_cast<std::size_t>(place)];
    if (auto done = read_post(tables, post, sheet); !done) return fail(done.error());
  }
  for (const int post : posts) set_post_state(sheet, post);
  return sheet;
}

}  // namespace kneerail
