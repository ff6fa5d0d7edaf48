#include "tests/core/fold/random_records.h"

#include <array>
#include <map>

#include "core/fold/rules.h"
#include "tests/core/fold/records_at_hand.h"

namespace kneerail::fold::test {

namespace {

// Subjects. Entities have fixed ids so that a reference may come before its target.
const Uuid site = id(10);
const Uuid run = id(20);
const std::array posts{id(30), id(31)};
const Uuid bay = id(40);
const std::array components{id(50), id(51), id(52)};
const Uuid type = id(60);
const Uuid depot = id(70);
const Uuid person_subject = id(80);
const std::array people{id(80), id(81)};
const std::array visits{id(100), id(101), id(102)};
const Uuid feed = id(1);
const Uuid other_feed = id(2);
const std::array objects{cbor::Bytes(32, 1), cbor::Bytes(32, 2)};

class Generator {
 public:
  /// One family of kinds comes more often than the others, so that its rules meet.
  explicit Generator(SplitMix64& random) : random_(random), theme_(random.between(0, 9)) {}

  PlacedRecord next() {
    if (chance(20)) return create();
    const std::int64_t family = chance(50) ? theme_ : roll(0, 9);
    switch (family) {
      case 0:
        return set();
      case 1:
        return reading();
      case 2:
        return finding_kind();
      case 3:
        return work_kind();
      case 4:
        return strike_kind();
      case 5:
        return visit_kind();
      case 6:
        return other_kind();
      case 7:
        return clock_kind();
      case 8:
        return object_kind();
      default:
        return change_kind();
    }
  }

 private:
  std::int64_t roll(std::int64_t low, std::int64_t high) { return random_.between(low, high); }
  bool chance(std::int64_t percent) { return roll(1, 100) <= percent; }
  template <class All>
  auto one_of(const All& all) {
    return all[static_cast<std::size_t>(roll(0, static_cast<std::int64_t>(all.size()) - 1))];
  }

  Uuid entity() {
    const std::array all{site,          run,           posts[0],      posts[1], bay,
                         components[0], components[1], components[2], type};
    return one_of(all);
  }
  Uuid component() { return components[static_cast<std::size_t>(roll(0, chance(70) ? 0 : 2))]; }

  /// A record of one of these kinds that is there; sometimes one that is not.
  Uuid made(std::initializer_list<int> kinds) {
    std::vector<Uuid> all;
    for (const int kind : kinds) {
      for (const Uuid& one : made_[kind]) all.push_back(one);
    }
    if (all.empty() || chance(5)) return id(7'000 + static_cast<std::uint64_t>(roll(0, 3)));
    return one_of(all);
  }

  cbor::Array some_of(int kind) {
    cbor::Array list;
    for (const Uuid& one : made_[kind]) {
      if (chance(40)) list.push_back(one);
    }
    return list;
  }

  PlacedRecord placed(int kind, const Uuid& subject, cbor::Map body, const Uuid& own_id = Uuid{}) {
    PlacedRecord one;
    const std::int64_t device = roll(0, 2);
    one.feed = feed;
    one.device = id(900 + static_cast<std::uint64_t>(device));
    one.seq = ++seq_[device];
    Record& record = one.record;
    record.kind = kind;
    record.id = own_id.is_zero() ? id(10'000 + static_cast<std::uint64_t>(++count_)) : own_id;
    record.l = morning + roll(0, 20) * hour;
    record.c = static_cast<int>(roll(0, 2));
    record.w = chance(80) ? 0 : roll(-30, 30) * hour;
    record.g = static_cast<int>(roll(1, chance(60) ? 1 : 3));
    record.who = chance(5) ? Uuid{} : one_of(people);
    record.subject = subject;
    record.body = std::move(body);
    if (kind == kind::opened && chance(50)) record.l += 20 * hour;
    if (chance(10)) record.body.set(94, morning + roll(-5, 25) * hour);
    if (chance(60)) {
      ++hseq_;
      one.stamp = Stamp{hseq_, morning + roll(0, 20) * hour + hseq_, chance(8) ? 1 : 0};
    }
    made_[kind].push_back(record.id);
    return one;
  }

  PlacedRecord create();
  PlacedRecord set();
  PlacedRecord reading();
  PlacedRecord finding_kind();
  PlacedRecord work_kind();
  PlacedRecord strike_kind();
  PlacedRecord visit_kind();
  PlacedRecord change_kind();
  PlacedRecord other_kind();
  PlacedRecord clock_kind();
  PlacedRecord object_kind();
  cbor::Value field_value(std::int64_t field);

  SplitMix64& random_;
  std::int64_t theme_;
  std::map<std::int64_t, std::int64_t> seq_;
  std::map<int, std::vector<Uuid>> made_;
  std::map<Uuid, bool> created_;
  std::int64_t count_ = 0;
  std::int64_t hseq_ = 0;
  Uuid target_{};  ///< last corrected, voided or settled
};

struct Made {
  Uuid entity;
  int type;
  Uuid parent;
  cbor::Map fields;
};

PlacedRecord Generator::create() {
  const std::array all{
      Made{site, 2, id(2), {{1, "North"}, {7, 1}}},
      Made{run, 4, site, {{1, "Slip East"}}},
      Made{posts[0], 5, run, {{1, "117"}, {4, "K7F3"}}},
      Made{posts[1], 5, run, {{1, "118"}, {4, "K7F3"}}},
      Made{bay, 6, run, {{1, posts[0]}, {2, posts[1]}}},
      Made{components[0], 7, posts[0], {{1, 5}, {2, type}, {4, 1}, {5, 18'000}, {6, 850}}},
      Made{components[1], 7, bay, {{1, 3}, {9, "K7F3"}}},
      Made{components[2], 7, posts[1], {{1, 5}, {4, 2}, {12, components[0]}}},
      Made{type, 8, id(2), {{6, 390}, {7, 240}, {8, 700}}},
  };
  const Made& made = one_of(all);
  if (created_[made.entity]) return reading();
  created_[made.entity] = true;
  cbor::Map body{{1, made.type}, {2, made.parent}, {3, made.fields}};
  if (chance(40)) body.set(4, "118");
  return placed(kind::create, made.entity, std::move(body), made.entity);
}

cbor::Value Generator::field_value(std::int64_t field) {
  switch (field) {
    case 1:
    case 4:
    case 9:
      return chance(50) ? cbor::Value("K7F3") : cbor::Value("other");
    case 2:
    case 12:
      return chance(50) ? type : components[0];
    default:
      return field == 3 ? roll(3, 4) : roll(1, 2);
  }
}

PlacedRecord Generator::set() {
  const Uuid subject = entity();
  cbor::Array edits;
  const std::int64_t edited = roll(1, 2);
  for (std::int64_t i = 0; i < edited; ++i) {
    const std::array<std::int64_t, 10> fields{1, 2, 3, 4, 5, 7, 8, 9, 10, 12};
    const std::int64_t field = one_of(fields);
    if (subject == bay && chance(50)) {
      edits.push_back(cbor::Array{1, one_of(posts), some_of(kind::set)});
      continue;
    }
    cbor::Array bases = some_of(kind::set);
    if (chance(50)) bases.push_back(subject);
    edits.push_back(cbor::Array{field, field_value(field), bases});
  }
  return placed(kind::set, subject, {{1, edits}});
}

PlacedRecord Generator::reading() {
  cbor::Map body{{1, one_of(visits)}};
  if (chance(30)) body.set(98, component());
  switch (roll(0, 5)) {
    case 0:
    case 1:
      body.set(2, roll(1, 5));
      if (chance(20)) body.set(97, true);
      if (chance(40)) body.set(5, roll(1, 4));
      return placed(kind::grade, component(), body);
    case 2:
      body.set(2, id(95));
      body.set(3, cbor::Array{roll(700, 900), roll(700, 900)});
      body.set(4, roll(1, 2));
      return placed(kind::coating, component(), body);
    case 3:
      body.set(3, roll(1, 2));
      body.set(4, roll(100, 400));
      body.set(5, roll(0, 4));
      return placed(kind::torque, component(), body);
    case 4:
      body.set(2, roll(1, 4));
      return placed(kind::hand_load, chance(80) ? bay : posts[0], body);
    default:
      body.set(2, roll(1, 3));
      body.set(3, roll(900, 1'200));
      return placed(kind::geometry, run, body);
  }
}

PlacedRecord Generator::finding_kind() {
  const std::array subjects{components[0], bay, posts[0], run};
  switch (roll(0, 9)) {
    case 0:
    case 1:
      return placed(kind::finding, one_of(subjects),
                    {{1, one_of(visits)}, {2, 1}, {3, 5}, {4, chance(70)}, {7, 3}});
    case 2:
    case 3: {
      cbor::Map body{{1, cbor::Array{roll(1, 7), roll(1, 7)}}};
      if (chance(40)) body.set(3, morning + roll(0, 20) * hour);
      if (chance(40)) body.set(5, "harbour office");
      if (chance(40)) body.set(6, morning + roll(0, 40) * hour);
      return placed(kind::made_safe, made({kind::finding}), body);
    }
    case 4:
    case 5: {
      cbor::Array ended = some_of(kind::finding);
      for (const cbor::Value& raised : some_of(kind::hazard_raised)) ended.push_back(raised);
      return placed(kind::finding_ended, made({kind::finding}), {{1, 1}, {4, ended}, {5, 1}});
    }
    case 6:
      return placed(kind::hazard_raised, made({kind::finding}), {{2, "again"}});
    case 7:
      return placed(kind::next_step, made({kind::finding}), {{1, roll(1, 5)}, {2, roll(1, 9)}});
    case 8: {
      cbor::Map body{{1, roll(1, 4)}};
      if (chance(50)) body.set(2, morning + roll(0, 40) * hour);
      return placed(kind::closure_look, made({kind::finding, kind::closed}), body);
    }
    default:
      if (chance(50)) return placed(kind::told, bay, {{1, morning}, {2, 1}, {3, "it moves"}});
      return placed(kind::told_answered, made({kind::told}), {{1, 2}});
  }
}

PlacedRecord Generator::work_kind() {
  if (chance(20)) {
    return placed(kind::same_work, made({kind::work}), {{1, made({kind::work})}});
  }
  cbor::Map body{{2, roll(2, 5)}};
  if (chance(60)) body.set(3, chance(60) ? component() : made({kind::work}));
  if (chance(30)) body.set(1, one_of(visits));
  if (chance(20)) body.set(6, type);
  if (chance(20)) body.set(7, roll(700, 900));
  if (chance(20)) body.set(9, morning / 86'400'000 + roll(-2, 2));
  if (chance(20)) body.set(19, roll(1, 3));
  return placed(kind::work, component(), body);
}

PlacedRecord Generator::strike_kind() {
  switch (roll(0, 7)) {
    case 0: {
      cbor::Array parts{chance(50) ? components[0] : components[1]};
      if (chance(40)) parts = {components[0], components[1]};
      return placed(kind::strike_opened, run, {{1, 1}, {4, parts}});
    }
    case 1:
      if (chance(50)) return placed(kind::hand_load, bay, {{1, visits[0]}, {2, 1}});
      return placed(kind::strike_step, bay, {{1, made({kind::strike_opened})}, {2, 4}});
    case 2:
    case 3:
    case 4: {
      cbor::Map body{{1, made({kind::strike_opened})}, {2, roll(1, 3)}};
      if (chance(30)) body.set(5, 1);
      if (chance(30)) body.set(7, roll(1, 4));
      if (chance(40)) body.set(3, roll(200, 300));
      if (chance(15)) body.set(8, roll(1, 3));
      return placed(kind::strike_step, component(), body);
    }
    case 5: {
      cbor::Map body{{1, roll(1, 8)}, {2, morning}, {4, roll(3, 6)}};
      if (chance(50)) body.set(6, made({kind::strike_opened}));
      return placed(kind::closed, chance(50) ? bay : run, body);
    }
    default:
      return placed(kind::opened, made({kind::strike_opened, kind::closed}), {{1, roll(1, 4)}});
  }
}

PlacedRecord Generator::visit_kind() {
  switch (roll(0, 5)) {
    case 4: {
      const std::array subjects{components[0], components[1], bay, posts[0], run};
      return placed(kind::not_reached, one_of(subjects), {{1, one_of(visits)}, {2, roll(1, 7)}});
    }
    case 5:
      return reading();
    case 0:
      for (const Uuid& visit : visits) {
        if (created_[visit]) continue;
        created_[visit] = true;
        return placed(kind::visit_opened, site, {{1, 1}, {6, cbor::Array{roll(0, 9), 2}}}, visit);
      }
      [[fallthrough]];
    case 1:
      return placed(kind::visit_joined, one_of(visits), {{7, "1.0"}});
    case 2:
      return placed(kind::sealed, one_of(visits), {{1, 1}, {2, roll(1, 6)}});
    default:
      return placed(kind::same_visit, one_of(visits), {{1, one_of(visits)}});
  }
}

PlacedRecord Generator::change_kind() {
  const bool again = !target_.is_zero() && chance(40);
  const Uuid target =
      again ? target_
            : made({kind::grade,      kind::coating,       kind::torque,        kind::set,
                    kind::create,     kind::finding,       kind::made_safe,     kind::work,
                    kind::closed,     kind::strike_step,   kind::strike_opened, kind::hand_load,
                    kind::told,       kind::hazard_raised, kind::finding_ended, kind::settled,
                    kind::correction, kind::opened,        kind::same_visit,    kind::same_work,
                    kind::next_visit, kind::closure_look,  kind::stock_moved,   kind::marks_set,
                    kind::hold_ended, kind::object_erased, kind::hold,          kind::photograph});
  target_ = target;
  switch (roll(0, 4)) {
    case 0:
    case 1: {
      const std::array<std::int64_t, 8> keys{1, 2, 3, 4, 5, 7, 94, 97};
      cbor::Map values{{one_of(keys), chance(70) ? cbor::Value(roll(1, 5)) : cbor::Value(true)}};
      if (chance(30)) values.set(2, roll(1, 5));
      return placed(kind::correction, target,
                    {{1, values}, {2, "typed wrong"}, {3, some_of(kind::correction)}});
    }
    case 2:
      return placed(kind::voided, target, {{1, "wrong part"}});
    default: {
      cbor::Array named;
      std::vector<Uuid> all;
      for (const auto& [kind, ids] : made_) {
        for (const Uuid& one : ids) {
          if (!chance(80)) continue;
          named.push_back(one);
          all.push_back(one);
        }
      }
      const cbor::Value decision =
          all.empty() || chance(50) ? cbor::Value(roll(1, 3)) : cbor::Value(one_of(all));
      return placed(kind::settled, chance(60) ? component() : target, {{1, named}, {2, decision}});
    }
  }
}

PlacedRecord Generator::other_kind() {
  switch (roll(0, 9)) {
    case 0:
      return placed(kind::next_visit, site, {{1, roll(20'000, 20'002)}, {2, 1}});
    case 1:
    case 2:
      return placed(kind::stock_moved, depot, {{1, type}, {2, roll(1, 9)}, {3, roll(4, 5)}});
    case 3:
      return placed(kind::role_given, person_subject, {{1, roll(1, 4)}});
    case 4:
      return placed(kind::role_taken, person_subject, {{1, some_of(kind::role_given)}});
    case 5:
      return placed(kind::hold, chance(50) ? site : made({kind::hold}), {{1, 1}});
    case 6:
      return placed(kind::hold_ended, made({kind::hold}), {{1, "settled"}});
    case 7:
      if (made_[kind::photograph].empty()) {
        cbor::Map body{{2, one_of(objects)}, {3, roll(1, 9)}, {7, cbor::Bytes{1, 2}}, {9, "a"}};
        if (chance(50)) body.set(1, one_of(visits));
        return placed(kind::photograph, chance(50) ? run : bay, body);
      }
      [[fallthrough]];
    case 8:
      return placed(kind::marks_set, made({kind::photograph}),
                    {{1, cbor::Array{roll(1, 3)}}, {2, some_of(kind::marks_set)}});
    default:
      return clock_kind();
  }
}

PlacedRecord Generator::clock_kind() {
  cbor::Map body{{1, roll(1, 3)},
                 {2, roll(1, 2)},
                 {3, roll(0, 5) * hour},
                 {4, morning + roll(-30, 30) * hour},
                 {5, 1}};
  if (chance(50)) body.set(6, morning + roll(0, 20) * hour);
  if (chance(50)) body.set(7, roll(10, 500));
  return placed(kind::clock, id(900), body);
}

/// Objects, what erases them and what keeps them, in either feed and weeks apart.
PlacedRecord Generator::object_kind() {
  PlacedRecord one;
  switch (roll(0, 6)) {
    case 0:
      one = placed(kind::photograph, chance(50) ? run : bay,
                   {{2, one_of(objects)}, {3, roll(1, 9)}, {7, one_of(objects)}, {8, roll(1, 9)}});
      break;
    case 1:
      one = placed(kind::set, one_of(people),
                   {{1, cbor::Array{cbor::Array{1, one_of(objects), cbor::Array{}}}}});
      break;
    case 2:
      one = placed(kind::hold, site, {{1, roll(1, 4)}});
      break;
    case 3:
      one = placed(kind::hold_ended, made({kind::hold}), {{1, "settled"}});
      break;
    case 4:
      one = placed(kind::correction, made({kind::photograph}),
                   {{1, cbor::Map{{2, one_of(objects)}}}, {3, cbor::Array{}}});
      break;
    default:
      one = placed(kind::object_erased, site, {{1, one_of(objects)}, {2, roll(1, 3)}});
  }
  if (chance(40)) one.feed = other_feed;
  if (one.stamp) one.stamp->recv += roll(0, 2) * 14 * 24 * hour;
  return one;
}

}  // namespace

std::vector<PlacedRecord> random_records(SplitMix64& random, int count) {
  Generator generator(random);
  std::vector<PlacedRecord> records;
  for (int i = 0; i < count; ++i) records.push_back(generator.next());
  return records;
}

}  // namespace kneerail::fold::test
