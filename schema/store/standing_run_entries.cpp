#include <optional>
#include <utility>

#include "core/records/registers.h"
#include "schema/store/standing_run.h"

namespace kneerail {
namespace {

using layout::RunChange;

class Writing {
 public:
  Writing(const RunChange& change, const StandingSheet& sheet, Database& tables, const Uuid& who,
          const std::function<Uuid()>& mint)
      : change_(change), sheet_(sheet), tables_(tables), who_(who), mint_(mint) {}

  Result<std::vector<Entry>> write() {
    for (std::size_t i = 0; i < change_.posts.size(); ++i) add_post(i);
    for (std::size_t i = 0; i < change_.bays.size(); ++i) add_bay(i);
    for (const RunChange::Part& part : change_.parts) add_part(part);
    for (const RunChange::Moved& moved : change_.moved)
      set(moved.post, {{post_field::chainage, moved.chainage_mm}});
    for (const RunChange::Replaced& placed : change_.placed_anew)
      set(placed.part, {{component_field::place, cbor::Array{placed.along_mm, placed.up_mm}}});
    for (const RunChange::Kind& kind : change_.kinds)
      set(kind.bay,
          {{bay_field::kind, static_cast<int>(kind.kind)}, {bay_field::rails_count, kind.rails}});
    for (const Uuid& gone : change_.retired) set(gone, {{life_field(gone), retired}});
    if (trouble_) return fail(*trouble_);
    return std::move(entries_);
  }

 private:
  static constexpr int retired = static_cast<int>(LifeState::retired);

  /// The number of the field life_state, which each type has for itself.
  [[nodiscard]] int life_field(const Uuid& thing) const {
    for (const auto& post : sheet_.standing.posts)
      if (post.id == thing) return post_field::life_state;
    for (const auto& bay : sheet_.standing.bays)
      if (bay.id == thing) return bay_field::life_state;
    return component_field::life_state;
  }

  void create(const Uuid& id, EntityType type, const Uuid& parent, cbor::Map fields) {
    const Create made{type, parent, std::move(fields), std::nullopt, MadeBy::typing};
    entries_.push_back({sheet_.site, Create::kind, id, who_, to_body(made), id});
  }

  void set(const Uuid& thing, const cbor::Map& values) {
    Set made;
    for (const auto& [key, value] : values.pairs()) {
      const int field = static_cast<int>(*key.number());
      auto seen = seen_values(tables_, thing, field);
      if (!seen) {
        trouble_ = seen.error();
        return;
      }
      made.changes.push_back({field, value, std::move(*seen)});
    }
    entries_.push_back({sheet_.site, Set::kind, thing, who_, to_body(made), {}});
  }

  /// Height and base of the post that it is like, as the register has them.
  cbor::Map like(const Uuid& post) {
    cbor::Map fields;
    for (const int field : {int{post_field::height}, int{post_field::base_kind}}) {
      auto rows = tables_.prepare(
          "SELECT value FROM field_edit WHERE entity = ?1 AND field = ?2 AND superseded = 0 AND "
          "counts = 1 ORDER BY l DESC, c DESC LIMIT 1");
      if (!rows) {
        trouble_ = rows.error();
        return fields;
      }
      rows->bind(1, post).bind(2, std::int64_t{field});
      const auto there = rows->step();
      if (!there || !*there) continue;
      if (auto value = cbor::decode(rows->bytes(0))) fields.set(field, std::move(*value));
    }
    return fields;
  }

  void add_post(std::size_t place) {
    const RunChange::Post& post = change_.posts[place];
    posts_.push_back(mint_());
    cbor::Map fields = like(post.like);
    fields.set(post_field::label, post.label);
    fields.set(post_field::chainage, post.chainage_mm);
    fields.set(post_field::order, post.order);
    create(posts_.back(), EntityType::post, sheet_.run, std::move(fields));
  }

  [[nodiscard]] const Uuid& post_of(const RunChange::End& end) const {
    return end.made < 0 ? end.there : posts_[static_cast<std::size_t>(end.made)];
  }

  void add_bay(std::size_t place) {
    const RunChange::Bay& bay = change_.bays[place];
    bays_.push_back(mint_());
    create(bays_.back(), EntityType::bay, sheet_.run,
           {{bay_field::from_post, post_of(bay.from)},
            {bay_field::to_post, post_of(bay.to)},
            {bay_field::kind, static_cast<int>(bay.kind)},
            {bay_field::rails_count, bay.rails}});
  }

  void add_part(const RunChange::Part& part) {
    const Uuid& parent = part.post >= 0  ? posts_[static_cast<std::size_t>(part.post)]
                         : part.bay >= 0 ? bays_[static_cast<std::size_t>(part.bay)]
                                         : part.bay_there;
    cbor::Map fields{{component_field::role, static_cast<int>(part.role)},
                     {component_field::place, cbor::Array{part.along_mm, part.up_mm}}};
    const Uuid& type =
        part.type.is_zero() && part.role == Role::gate ? sheet_.gate_type : part.type;
    if (!type.is_zero()) fields.set(component_field::component_type, type);
    if (part.screws > 0) fields.set(component_field::screws_count, part.screws);
    create(mint_(), EntityType::component, parent, std::move(fields));
  }

  const RunChange& change_;
  const StandingSheet& sheet_;
  Database& tables_;
  const Uuid who_;
  const std::function<Uuid()>& mint_;
  std::vector<Uuid> posts_;
  std::vector<Uuid> bays_;
  std::vector<Entry> entries_;
  std::optional<Error> trouble_;
};

}  // namespace

Result<std::vector<Entry>> entries_of(const layout::RunChange& change, const StandingSheet& sheet,
                                      Database& tables, const Uuid& who,
                                      const std::function<Uuid()>& mint) {
  return Writing(change, sheet, tables, who, mint).write();
}

}  // namespace kneerail
