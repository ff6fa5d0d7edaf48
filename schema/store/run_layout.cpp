#include "schema/store/run_layout.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "schema/store/register_things.h"

namespace kneerail {
namespace {

constexpr std::string_view in_service =
    " held = 0 AND voided_by IS NULL AND NOT EXISTS (SELECT 1 FROM retirement r WHERE r.entity = "
    "entity.id)";

Finish finish_of_type(const Thing& type) {
  const auto material =
      type.number(component_type_field::material).value_or(static_cast<int>(Material::steel));
  const auto protection = type.number(component_type_field::protection)
                              .value_or(static_cast<int>(Protection::hot_dip_zinc));
  return finish_of(static_cast<Material>(material), static_cast<Protection>(protection));
}

class LayoutReader {
 public:
  LayoutReader(Database& tables, RunWork& work) : tables_(tables), work_(work) {}

  Result<> read() {
    using Step = Result<> (LayoutReader::*)();
    for (const Step step :
         {&LayoutReader::read_head, &LayoutReader::read_posts, &LayoutReader::read_bays,
          &LayoutReader::read_parts, &LayoutReader::read_lives}) {
      if (auto done = (this->*step)(); !done) return done;
    }
    return Done{};
  }

 private:
  Result<> read_head() {
    bool found = false;
    auto done =
        each_row(tables_, "SELECT name, parent, feed, rest FROM entity WHERE id = ?1 AND type = 4",
                 {work_.sheet.id}, [&](const Statement& row) -> Result<> {
                   found = true;
                   work_.sheet.name = row.text(0);
                   work_.sheet.zone = row.uuid(1);
                   work_.sheet.site = row.uuid(2);
                   const auto rest = map_in(row, 3);
                   if (!rest) return fail(rest.error());
                   work_.sheet.looked_at = text_in(*rest, run_field::looked_at_from);
                   work_.sheet.height_mm = number_in(*rest, run_field::required_height).value_or(0);
                   return Done{};
                 });
    if (!done) return done;
    if (!found) return fail(Fault::not_found, "This run is not in the register.");
    return each_row(tables_, "SELECT name FROM entity WHERE id = ?1", {work_.sheet.site},
                    [&](const Statement& row) -> Result<> {
                      work_.sheet.site_name = row.text(0);
                      return Done{};
                    });
  }

  Result<> read_posts() {
    const std::string sql =
        "SELECT id, label, chainage_mm, rest FROM entity WHERE parent = ?1 AND "
        "type = 5 AND" +
        std::string(in_service) + " ORDER BY ord, chainage_mm, id";
    return each_row(tables_, sql, {work_.sheet.id}, [&](const Statement& row) -> Result<> {
      const auto rest = map_in(row, 3);
      if (!rest) return fail(rest.error());
      SheetPost post;
      post.id = row.uuid(0);
      post.label = row.text(1);
      post.chainage_mm = row.is_null(2) ? 0 : row.number(2);
      post.height_mm = number_in(*rest, post_field::height).value_or(work_.sheet.height_mm);
      post.landmark = text_in(*rest, post_field::landmark);
      if (const auto base = number_in(*rest, post_field::base_kind))
        post.base = static_cast<BaseKind>(*base);
      work_.posts.emplace(post.id, static_cast<int>(work_.sheet.posts.size()));
      work_.sheet.posts.push_back(std::move(post));
      return Done{};
    });
  }

  Result<> read_bays() {
    const std::string sql = "SELECT id, rest FROM entity WHERE parent = ?1 AND type = 6 AND" +
                            std::string(in_service) + " ORDER BY id";
    auto done = each_row(tables_, sql, {work_.sheet.id}, [&](const Statement& row) -> Result<> {
      const auto rest = map_in(row, 1);
      if (!rest) return fail(rest.error());
      const auto from = place_of_post(id_in(*rest, bay_field::from_post));
      const auto to = place_of_post(id_in(*rest, bay_field::to_post));
      if (from < 0 || to < 0) return Done{};  // a post of it has not arrived
      SheetBay bay;
      bay.id = row.uuid(0);
      bay.from = std::min(from, to);
      bay.to = std::max(from, to);
      bay.kind = static_cast<BayKind>(number_in(*rest, bay_field::kind).value_or(1));
      work_.sheet.bays.push_back(bay);
      return Done{};
    });
    if (!done) return done;
    std::stable_sort(work_.sheet.bays.begin(), work_.sheet.bays.end(),
                     [](const SheetBay& a, const SheetBay& b) { return a.from < b.from; });
    for (std::size_t i = 0; i < work_.sheet.bays.size(); ++i)
      work_.bays.emplace(work_.sheet.bays[i].id, static_cast<int>(i));
    return Done{};
  }

  [[nodiscard]] int place_of_post(const std::optional<Uuid>& id) const {
    const auto found = id ? work_.posts.find(*id) : work_.posts.end();
    return found == work_.posts.end() ? -1 : found->second;
  }

  Result<> read_parts() {
    auto types = load_things(tables_, static_cast<int>(EntityType::component_type));
    if (!types) return fail(types.error());
    const std::string sql =
        "SELECT part.id, part.parent, part.role, part.component_type, "
        "part.coating_nominal_tenth_um, part.rest " +
        std::string(parts_of_run) +
        "WHERE place.parent = ?1 AND part.held = 0 AND part.voided_by IS NULL AND NOT EXISTS "
        "(SELECT 1 FROM retirement r WHERE r.entity = part.id)";
    auto done = each_row(tables_, sql, {work_.sheet.id}, [&](const Statement& row) -> Result<> {
      SheetPart part;
      part.id = row.uuid(0);
      part.life = part.id;
      if (!stand(part, row.uuid(1))) return Done{};
      part.role = static_cast<Role>(row.is_null(2) ? static_cast<int>(Role::fitting)
                                                   : static_cast<int>(row.number(2)));
      const auto rest = map_in(row, 5);
      if (!rest) return fail(rest.error());
      set_fields(part, *rest);
      if (const Thing* type = row.is_null(3) ? nullptr : types->find(row.uuid(3)))
        set_type(part, *type);
      if (!row.is_null(4)) part.coating_nominal_tenth_um = row.number(4);
      work_.sheet.parts.push_back(std::move(part));
      return Done{};
    });
    if (done) order_parts();
    return done;
  }

  /// At its post or in its bay; false where neither is there.
  bool stand(SheetPart& part, const Uuid& place) {
    if (const auto post = work_.posts.find(place); post != work_.posts.end()) {
      part.post = post->second;
      part.along_mm = work_.sheet.posts[static_cast<std::size_t>(part.post)].chainage_mm;
      return true;
    }
    const auto bay = work_.bays.find(place);
    if (bay == work_.bays.end()) return false;
    part.bay = bay->second;
    part.post = work_.sheet.bays[static_cast<std::size_t>(part.bay)].from;
    part.along_mm = work_.sheet.posts[static_cast<std::size_t>(part.post)].chainage_mm;
    return true;
  }

  static void set_fields(SheetPart& part, const cbor::Map& rest) {
    if (const auto* place = rest.find(component_field::place);
        place != nullptr && place->array() != nullptr && place->array()->size() == 2) {
      const auto* along = (*place->array())[0].number();
      const auto* up = (*place->array())[1].number();
      part.along_mm += along == nullptr ? 0 : *along;
      part.up_mm = up == nullptr ? 0 : *up;
    }
    part.screws = static_cast<int>(number_in(rest, component_field::screws_count).value_or(0));
    if (const auto* spots = rest.find(component_field::spots);
        spots != nullptr && spots->array() != nullptr)
      for (const auto& spot : *spots->array())
        if (spot.number() != nullptr) part.spots.push_back(static_cast<Face>(*spot.number()));
    if (part.spots.empty()) part.spots = {Face::all_round};
  }

  static void set_type(SheetPart& part, const Thing& type) {
    if (const auto does = type.number(component_type_field::what_it_does))
      part.does = static_cast<WhatItDoes>(*does);
    part.finish = finish_of_type(type);
    part.welded = type.number(component_type_field::system) == static_cast<int>(System::welded);
    part.diameter_tenth_mm =
        type.number(component_type_field::tube_diameter).value_or(part.diameter_tenth_mm);
    part.torque_target_tenth_nm = type.number(component_type_field::torque_target);
    part.torque_lowest_tenth_nm = type.number(component_type_field::torque_lowest);
    part.coating_nominal_tenth_um = type.number(component_type_field::coating_nominal);
    part.wall_nominal_tenth_mm = type.number(component_type_field::tube_wall);
  }

  /// By post; a post's own bottom up, then those of the bay after it.
  void order_parts() {
    std::sort(work_.sheet.parts.begin(), work_.sheet.parts.end(),
              [](const SheetPart& a, const SheetPart& b) {
                return std::tuple(a.post, a.bay >= 0, a.up_mm, a.along_mm, a.id) <
                       std::tuple(b.post, b.bay >= 0, b.up_mm, b.along_mm, b.id);
              });
    for (std::size_t i = 0; i < work_.sheet.parts.size(); ++i) {
      work_.parts.emplace(work_.sheet.parts[i].id, i);
      auto& post = work_.sheet.posts[static_cast<std::size_t>(work_.sheet.parts[i].post)];
      if (post.parts++ == 0) post.first_part = static_cast<int>(i);
    }
  }

  Result<> read_lives() {
    const std::string sql = "SELECT l.component, l.life, l.coating_nominal_tenth_um " +
                            std::string(parts_of_run) +
                            "JOIN life AS l ON l.component = part.id AND l.ended_t IS NULL "
                            "WHERE place.parent = ?1";
    return each_row(tables_, sql, {work_.sheet.id}, [&](const Statement& row) -> Result<> {
      if (SheetPart* part = work_.part_of(row.uuid(0))) {
        part->life = row.uuid(1);
        if (!row.is_null(2)) part->coating_nominal_tenth_um = row.number(2);
      }
      return Done{};
    });
  }

  Database& tables_;
  RunWork& work_;
};

}  // namespace

Finish finish_of(Material material, Protection protection) {
  if (material == Material::aluminium) return Finish::aluminium;
  if (material == Material::stainless_steel) return Finish::stainless;
  switch (protection) {
    case Protection::zinc_plus_paint:
      return Finish::zinc_and_paint;
    case Protection::paint_on_steel:
      return Finish::paint;
    case Protection::bare:
      return Finish::bare_steel;
    default:
      return Finish::zinc;
  }
}

Result<> each_row(Database& tables, std::string_view sql, const std::vector<Uuid>& given,
                  const std::function<Result<>(const Statement&)>& take) {
  auto rows = tables.prepare(sql);
  if (!rows) return fail(rows.error());
  for (std::size_t i = 0; i < given.size(); ++i) rows->bind(static_cast<int>(i) + 1, given[i]);
  for (;;) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return Done{};
    if (auto done = take(*rows); !done) return done;
  }
}

Result<cbor::Map> map_in(const Statement& row, int column) {
  if (row.is_null(column)) return cbor::Map();
  auto value = cbor::decode(row.bytes(column));
  if (!value) return fail(value.error());
  return value->map() == nullptr ? cbor::Map() : *value->map();
}

std::optional<std::int64_t> number_in(const cbor::Map& map, int key) {
  const auto* value = map.find(key);
  if (value == nullptr || value->number() == nullptr) return std::nullopt;
  return *value->number();
}

std::vector<std::int64_t> numbers_in(const Statement& row, int column) {
  std::vector<std::int64_t> numbers;
  const auto value = cbor::decode(row.bytes(column));
  if (!value || value->array() == nullptr) return numbers;
  for (const auto& each : *value->array())
    if (each.number() != nullptr) numbers.push_back(*each.number());
  return numbers;
}

std::string text_in(const cbor::Map& map, int key) {
  const auto* value = map.find(key);
  return value == nullptr || value->text() == nullptr ? std::string() : *value->text();
}

std::optional<Uuid> id_in(const cbor::Map& map, int key) {
  const auto* value = map.find(key);
  return value == nullptr ? std::nullopt : value->uuid();
}

Result<> read_layout(Database& tables, RunWork& work) {
  return LayoutReader(tables, work).read();
}

}  // namespace kneerail
