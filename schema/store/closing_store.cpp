#include "schema/store/closing_store.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "core/records/entities.h"
#include "core/records/instrument.h"
#include "schema/store/register_things.h"
#include "schema/store/run_layout.h"
#include "schema/store/visit_store.h"

namespace kneerail {
namespace {

constexpr int by_eye_least = 10;  // posts; fewer are no stretch
constexpr std::int64_t hour_ms = 3'600'000;

/// Stretches of posts of which `is` is true.
template <class Is, class Take>
void for_each_stretch(const RunSheet& sheet, Is is, Take take) {
  const int posts = static_cast<int>(sheet.posts.size());
  for (int from = 0; from < posts; ++from) {
    if (!is(from)) continue;
    int to = from;
    while (to + 1 < posts && is(to + 1)) ++to;
    take(from, to);
    from = to;
  }
}

class ClosingReader {
 public:
  ClosingReader(Database& tables, const Uuid& site, const Uuid& visit, Instant now)
      : tables_(tables), site_(site), now_(now) {
    made_.visit = visit;
  }

  Result<VisitClosing> read() {
    for (const auto step :
         {&ClosingReader::read_visit, &ClosingReader::read_runs, &ClosingReader::read_looks,
          &ClosingReader::count_readings, &ClosingReader::count_findings,
          &ClosingReader::read_hazards, &ClosingReader::read_zeros, &ClosingReader::read_digest})
      if (auto done = (this->*step)(); !done) return fail(done.error());
    for (std::size_t run = 0; run < made_.runs.size(); ++run) look_over(run);
    return std::move(made_);
  }

 private:
  Result<> read_visit() {
    bool found = false;
    auto done = each_row(
        tables_,
        "SELECT kind_of_visit, name, first_t, last_t, (SELECT count(*) FROM visit AS other WHERE "
        "other.subject = visit.subject AND other.voided_by IS NULL AND other.held = 0 AND "
        "other.merged_into IS NULL AND (other.t, other.record) <= (visit.t, visit.record)) "
        "FROM visit WHERE record = ?1",
        {made_.visit}, [&](const Statement& row) -> Result<> {
          found = true;
          if (!row.is_null(0)) made_.kind = static_cast<VisitKind>(row.number(0));
          if (!row.is_null(1)) made_.name = std::string(row.text(1));
          made_.first = Instant{row.number(2)};
          made_.last = Instant{row.number(3)};
          made_.number = static_cast<int>(row.number(4));
          return Done{};
        });
    if (!done) return done;
    if (!found) return fail(Fault::not_found, "Nothing was entered in this visit yet.");
    return Done{};
  }

  Result<> read_runs() {
    auto runs = things_of_type(tables_, static_cast<int>(EntityType::run));
    if (!runs) return fail(runs.error());
    std::erase_if(*runs, [&](const Thing& run) { return run.feed != site_; });
    std::stable_sort(runs->begin(), runs->end(), [](const Thing& a, const Thing& b) {
      const auto place = [](const Thing& run) {
        return std::tuple(run.number(run_field::order).value_or(0), run.name);
      };
      return place(a) < place(b);
    });
    for (const Thing& run : *runs) {
      auto sheet = read_run(tables_, run.id, made_.visit);
      if (!sheet) return fail(sheet.error());
      made_.site_name = sheet->site_name;
      made_.runs.push_back(std::move(*sheet));
    }
    return Done{};
  }

  /// What the visit's rows of coverage say beyond the sheets.
  Result<> read_looks() {
    return each_row(
        tables_,
        "SELECT post, first_t, last_t, bays, bays_pushed, coatings + torques + walls, since_fresh "
        "FROM coverage WHERE visit = ?1",
        {made_.visit}, [&](const Statement& row) -> Result<> {
          Look look{row.number(1), row.number(2), false};
          look.by_eye = row.number(3) > 0 && row.number(4) == 0 && row.number(5) == 0;
          looks_.emplace(row.uuid(0), look);
          const auto fresh = cbor::decode(row.bytes(6));
          if (!fresh || fresh->array() == nullptr) return Done{};
          for (const cbor::Value& one : *fresh->array())
            if (one.array() != nullptr && one.array()->size() == 2 &&
                (*one.array())[1].number() != nullptr && *(*one.array())[1].number() >= 2)
              ++made_.parts_without_fresh_look;
          return Done{};
        });
  }

  Result<> count_readings() {
    std::set<std::string> serials;
    auto done = each_row(
        tables_,
        "SELECT r.kind, r.subject, r.screw, r.replicates, e.code FROM reading AS r LEFT JOIN "
        "entity AS e ON e.id = r.instrument WHERE r.visit = ?1 AND r.kind IN (21, 22, 23) AND "
        "r.voided_by IS NULL AND r.held = 0",
        {made_.visit}, [&](const Statement& row) -> Result<> {
          enum : int { coating = 21, torque = 22 };
          const std::int64_t kind = row.number(0);
          if (!row.is_null(4)) serials.emplace(row.text(4));
          if (kind == coating)
            made_.coating_readings += static_cast<std::int64_t>(numbers_in(row, 3).size());
          else if (kind == torque)
            screws_.emplace(row.uuid(1), row.is_null(2) ? 0 : row.number(2));
          else
            ++made_.walls_read;
          return Done{};
        });
    made_.screws_checked = std::ssize(screws_);
    made_.instruments.assign(serials.begin(), serials.end());
    return done;
  }

  Result<> count_findings() {
    auto done = each_row(tables_,
                         "SELECT count(*), coalesce(sum(hazard_state = 2), 0) FROM finding WHERE "
                         "visit = ?1 AND voided_by IS NULL AND held = 0",
                         {made_.visit}, [&](const Statement& row) -> Result<> {
                           made_.findings = row.number(0);
                           made_.findings_made_safe = row.number(1);
                           return Done{};
                         });
    if (!done) return done;
    return each_row(tables_,
                    "SELECT count(*) FROM photograph WHERE visit = ?1 AND voided_by IS NULL AND "
                    "held = 0",
                    {made_.visit}, [&](const Statement& row) -> Result<> {
                      made_.photographs = row.number(0);
                      return Done{};
                    });
  }

  Result<> read_hazards() {
    std::set<Uuid> told;
    auto done = each_row(tables_,
                         "SELECT record, told_first_t, look_again_by_ms FROM finding WHERE feed = "
                         "?1 AND hazard_state IN (1, 2) AND voided_by IS NULL AND held = 0",
                         {site_}, [&](const Statement& row) -> Result<> {
                           if (!row.is_null(1)) told.insert(row.uuid(0));
                           if (!row.is_null(2) && row.number(2) < now_.ms) ++made_.closures_past;
                           return Done{};
                         });
    if (!done) return done;
    for (const RunSheet& run : made_.runs)
      for (const SheetFinding& finding : run.findings) {
        if (finding.hazard_state != 1 && finding.hazard_state != 2) continue;
        OpenHazard hazard{finding.number,
                          {},
                          finding.what,
                          finding.hazard_state == 2,
                          told.contains(finding.record)};
        if (finding.post >= 0)
          hazard.post = run.posts[static_cast<std::size_t>(finding.post)].label;
        if (!hazard.made_safe || !hazard.told) made_.hazards.push_back(std::move(hazard));
      }
    return each_row(tables_,
                    "SELECT look_again_by_ms FROM closure WHERE feed = ?1 AND standing = 1 AND "
                    "look_again_by_ms NOT NULL AND voided_by IS NULL AND held = 0",
                    {site_}, [&](const Statement& row) -> Result<> {
                      if (row.number(0) < now_.ms) ++made_.closures_past;
                      return Done{};
                    });
  }

  /// For each gauge, how many of its readings came when its zero was too old.
  Result<> read_zeros() {
    const auto rules = walk_rules(tables_, site_);
    if (!rules) return fail(rules.error());
    std::map<Uuid, std::vector<std::int64_t>> zeros;
    auto done = each_row(tables_,
                         "SELECT subject, t FROM instrument_check WHERE what IN (1, 2) AND "
                         "in_order = 1 AND voided_by IS NULL AND held = 0 ORDER BY t",
                         {}, [&](const Statement& row) -> Result<> {
                           zeros[row.uuid(0)].push_back(row.number(1));
                           return Done{};
                         });
    if (!done) return done;
    auto gauges = things_of_type(tables_, static_cast<int>(EntityType::instrument));
    if (!gauges) return fail(gauges.error());
    std::map<Uuid, OldZero> old;
    done = each_row(
        tables_,
        "SELECT instrument, t FROM reading WHERE visit = ?1 AND kind = 21 AND instrument NOT NULL "
        "AND voided_by IS NULL AND held = 0 ORDER BY t",
        {made_.visit}, [&](const Statement& row) -> Result<> {
          const Uuid id = row.uuid(0);
          const auto gauge = std::find_if(gauges->begin(), gauges->end(),
                                          [&](const Thing& thing) { return thing.id == id; });
          if (gauge == gauges->end()) return Done{};
          const auto hours = gauge->number(instrument_field::zero_good_for);
          const auto allowed = hours ? hours : rules->check_good_for_hours;
          if (!allowed) return Done{};
          const auto& own = zeros[id];
          const auto after = std::upper_bound(own.begin(), own.end(), row.number(1));
          const std::int64_t age = after == own.begin() ? 0 : row.number(1) - *(after - 1);
          if (after != own.begin() && age <= *allowed * hour_ms) return Done{};
          OldZero& zero = old[id];
          zero.serial = gauge->code;
          ++zero.readings;
          zero.oldest_ms = age;
          return Done{};
        });
    if (!done) return done;
    for (auto& [id, zero] : old) made_.old_zeros.push_back(std::move(zero));
    return Done{};
  }

  Result<> read_digest() {
    return each_row(tables_,
                    "SELECT lower(hex(j.digest)) FROM journal AS j JOIN feed AS f ON f.n = j.feed "
                    "WHERE f.id = ?1 AND j.dev = 1 ORDER BY j.seq DESC LIMIT 1",
                    {site_}, [&](const Statement& row) -> Result<> {
                      made_.digest = std::string(row.text(0));
                      return Done{};
                    });
  }

  void look_over(std::size_t place) {
    const RunSheet& run = made_.runs[place];
    const auto state = [&](int post) { return run.posts[static_cast<std::size_t>(post)].state; };
    for (const SheetPart& part : run.parts)
      if (part.now && part.now->grade >= 1 && part.now->grade <= 5)
        ++made_.grades[static_cast<std::size_t>(part.now->grade)];
    for (const SheetPost& post : run.posts) {
      made_.posts += post.state == PostState::struck ? 0 : 1;
      made_.posts_seen += post.state == PostState::seen ? 1 : 0;
    }
    for_each_stretch(
        run, [&](int post) { return state(post) == PostState::open; },
        [&](int from, int to) {
          made_.open.push_back({place, from, to});
        });
    add_skipped(place);
    const auto by_eye = [&](int post) {
      const auto look = looks_.find(run.posts[static_cast<std::size_t>(post)].id);
      return state(post) == PostState::seen && look != looks_.end() && look->second.by_eye;
    };
    for_each_stretch(run, by_eye, [&](int from, int to) {
      if (to - from + 1 < by_eye_least) return;
      std::int64_t first = looks_.at(run.posts[static_cast<std::size_t>(from)].id).first_ms;
      std::int64_t last = first;
      for (int post = from; post <= to; ++post) {
        const Look& look = looks_.at(run.posts[static_cast<std::size_t>(post)].id);
        first = std::min(first, look.first_ms);
        last = std::max(last, look.last_ms);
      }
      made_.by_eye.push_back({{place, from, to}, (last - first) / 1000 / (to - from)});
    });
  }

  /// A stretch ends where the reason changes.
  void add_skipped(std::size_t place) {
    const RunSheet& run = made_.runs[place];
    for (int post = 0; post < static_cast<int>(run.posts.size()); ++post) {
      const SheetPost& own = run.posts[static_cast<std::size_t>(post)];
      if (own.state != PostState::skipped) continue;
      SkippedStretch* last = made_.skipped.empty() ? nullptr : &made_.skipped.back();
      if (last != nullptr && last->posts.run == place && last->posts.to == post - 1 &&
          last->why == own.skipped_because)
        last->posts.to = post;
      else
        made_.skipped.push_back({{place, post, post}, own.skipped_because});
    }
  }

  struct Look {
    std::int64_t first_ms = 0;
    std::int64_t last_ms = 0;
    bool by_eye = false;
  };

  Database& tables_;
  Uuid site_;
  Instant now_;
  VisitClosing made_;
  std::map<Uuid, Look> looks_;  ///< by post
  std::set<std::pair<Uuid, std::int64_t>> screws_;
};

}  // namespace

Result<VisitClosing> read_closing(Database& tables, const Uuid& site, const Uuid& visit,
                                  Instant now) {
  return ClosingReader(tables, site, visit, now).read();
}

}  // namespace kneerail
