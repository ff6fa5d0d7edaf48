#include "schema/store/standing_run.h"

#include <algorithm>
#include <unordered_map>

#include "schema/store/register_things.h"
#include "schema/store/run_layout.h"

namespace kneerail {
namespace {

constexpr std::string_view in_service =
    " held = 0 AND voided_by IS NULL AND NOT EXISTS (SELECT 1 FROM retirement r WHERE r.entity = "
    "entity.id)";

class Reading {
 public:
  Reading(Database& tables, const Uuid& run) : tables_(tables) { sheet_.run = run; }

  Result<StandingSheet> read() {
    using Step = Result<> (Reading::*)();
    for (const Step step : {&Reading::read_head, &Reading::read_posts, &Reading::read_bays,
                            &Reading::read_parts, &Reading::read_labels, &Reading::read_gate_type})
      if (auto done = (this->*step)(); !done) return fail(done.error());
    return std::move(sheet_);
  }

 private:
  Result<> read_head() {
    auto done = each_row(tables_, "SELECT feed FROM entity WHERE id = ?1 AND type = 4",
                         {sheet_.run}, [&](const Statement& row) -> Result<> {
                           sheet_.site = row.uuid(0);
                           return Done{};
                         });
    if (!done) return done;
    if (sheet_.site.is_zero()) return fail(Fault::not_found, "This run is not in the register.");
    return each_row(tables_, "SELECT feed FROM entity WHERE id = ?1", {sheet_.site},
                    [&](const Statement& row) -> Result<> {
                      sheet_.organisation = row.uuid(0);
                      return Done{};
                    });
  }

  Result<> read_posts() {
    const std::string sql =
        "SELECT id, label, chainage_mm, ord FROM entity WHERE parent = ?1 AND type = 5 AND" +
        std::string(in_service) + " ORDER BY ord, chainage_mm, id";
    return each_row(tables_, sql, {sheet_.run}, [&](const Statement& row) -> Result<> {
      layout::StandingPost post;
      post.id = row.uuid(0);
      post.label = row.text(1);
      post.chainage_mm = row.is_null(2) ? 0 : row.number(2);
      post.order = row.is_null(3) ? 0 : row.number(3);
      posts_.emplace(post.id, static_cast<int>(sheet_.standing.posts.size()));
      sheet_.standing.posts.push_back(std::move(post));
      return Done{};
    });
  }

  Result<> read_bays() {
    const std::string sql = "SELECT id, rest FROM entity WHERE parent = ?1 AND type = 6 AND" +
                            std::string(in_service) + " ORDER BY id";
    auto done = each_row(tables_, sql, {sheet_.run}, [&](const Statement& row) -> Result<> {
      const auto rest = map_in(row, 1);
      if (!rest) return fail(rest.error());
      const auto from = posts_.find(id_in(*rest, bay_field::from_post).value_or(Uuid()));
      const auto to = posts_.find(id_in(*rest, bay_field::to_post).value_or(Uuid()));
      if (from == posts_.end() || to == posts_.end()) return Done{};
      layout::StandingBay bay;
      bay.id = row.uuid(0);
      bay.from = std::min(from->second, to->second);
      bay.to = std::max(from->second, to->second);
      bay.kind = static_cast<BayKind>(number_in(*rest, bay_field::kind).value_or(1));
      bay.rails = static_cast<int>(number_in(*rest, bay_field::rails_count).value_or(0));
      sheet_.standing.bays.push_back(bay);
      return Done{};
    });
    auto& bays = sheet_.standing.bays;
    std::stable_sort(bays.begin(), bays.end(),
                     [](const auto& a, const auto& b) { return a.from < b.from; });
    for (std::size_t i = 0; i < bays.size(); ++i) bays_.emplace(bays[i].id, static_cast<int>(i));
    return done;
  }

  Result<> read_parts() {
    const std::string sql =
        "SELECT part.id, part.parent, part.role, part.component_type, part.part_of, part.rest " +
        std::string(parts_of_run) +
        "WHERE place.parent = ?1 AND part.held = 0 AND part.voided_by IS NULL AND NOT EXISTS "
        "(SELECT 1 FROM retirement r WHERE r.entity = part.id) ORDER BY part.id";
    return each_row(tables_, sql, {sheet_.run}, [&](const Statement& row) -> Result<> {
      const auto rest = map_in(row, 5);
      if (!rest) return fail(rest.error());
      layout::StandingPart part;
      part.id = row.uuid(0);
      const auto post = posts_.find(row.uuid(1));
      const auto bay = bays_.find(row.uuid(1));
      if (post != posts_.end()) part.post = post->second;
      if (bay != bays_.end()) part.bay = bay->second;
      if (part.post < 0 && part.bay < 0) return Done{};
      if (!row.is_null(2)) part.role = static_cast<Role>(row.number(2));
      if (!row.is_null(3)) part.type = row.uuid(3);
      if (!row.is_null(4)) part.part_of = row.uuid(4);
      part.screws = static_cast<int>(number_in(*rest, component_field::screws_count).value_or(0));
      set_place(part, *rest);
      sheet_.standing.parts.push_back(part);
      return Done{};
    });
  }

  static void set_place(layout::StandingPart& part, const cbor::Map& rest) {
    const cbor::Value* place = rest.find(component_field::place);
    if (place == nullptr || place->array() == nullptr || place->array()->size() != 2) return;
    if (const auto* along = (*place->array())[0].number()) part.along_mm = *along;
    if (const auto* up = (*place->array())[1].number()) part.up_mm = *up;
  }

  Result<> read_labels() {
    return each_row(tables_,
                    "SELECT label FROM entity WHERE feed = ?1 AND type = 5 AND label IS NOT NULL",
                    {sheet_.site}, [&](const Statement& row) -> Result<> {
                      sheet_.labels.emplace_back(row.text(0));
                      return Done{};
                    });
  }

  Result<> read_gate_type() {
    auto types = things_of_type(tables_, static_cast<int>(EntityType::component_type));
    if (!types) return fail(types.error());
    for (const Thing& type : *types) {
      const bool leaf = type.number(component_type_field::what_it_does) ==
                            static_cast<int>(WhatItDoes::welded_section) &&
                        !type.number(component_type_field::tube_diameter);
      if (leaf && sheet_.gate_type.is_zero()) sheet_.gate_type = type.id;
    }
    return Done{};
  }

  Database& tables_;
  StandingSheet sheet_;
  std::unordered_map<Uuid, int> posts_;
  std::unordered_map<Uuid, int> bays_;
};

}  // namespace

Result<StandingSheet> read_standing(Database& tables, const Uuid& run) {
  return Reading(tables, run).read();
}

Result<std::vector<Uuid>> seen_values(Database& tables, const Uuid& thing, int field) {
  auto rows = tables.prepare(
      "SELECT record FROM field_edit WHERE entity = ?1 AND field = ?2 AND superseded = 0 ORDER BY "
      "record");
  if (!rows) return fail(rows.error());
  rows->bind(1, thing).bind(2, std::int64_t{field});
  std::vector<Uuid> records;
  for (;;) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return records;
    records.push_back(rows->uuid(0));
  }
}

}  // namespace kneerail
