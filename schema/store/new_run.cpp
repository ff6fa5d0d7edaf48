#include "schema/store/new_run.h"

#include <algorithm>
#include <unordered_set>
#include <utility>

#include "core/records/registers.h"
#include "schema/store/register_things.h"

namespace kneerail {
namespace {

using layout::LaidBay;
using layout::LaidPart;
using layout::LaidPost;
using layout::LaidRun;
using layout::LaidType;

LaidType type_of(const Thing& thing) {
  const auto code = [&](int field, auto otherwise) {
    const auto value = thing.number(field);
    return value ? static_cast<decltype(otherwise)>(*value) : otherwise;
  };
  LaidType type;
  type.does = code(component_type_field::what_it_does, WhatItDoes::plate);
  type.material = code(component_type_field::material, Material::steel);
  type.protection = code(component_type_field::protection, Protection::bare);
  type.system = code(component_type_field::system, System::slip_on);
  type.diameter_tenth_mm = thing.number(component_type_field::tube_diameter);
  type.wall_tenth_mm = thing.number(component_type_field::tube_wall);
  return type;
}

/// "three-way tee 48.3 mm": what an order list would say.
std::string words_of(const LaidType& type) {
  const auto one_decimal = [](std::int64_t tenths) {
    return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
  };
  std::string words = word_of_code(EntityType::component_type, component_type_field::what_it_does,
                                   static_cast<int>(type.does));
  if (type.diameter_tenth_mm) words += " " + one_decimal(*type.diameter_tenth_mm);
  if (type.wall_tenth_mm) words += " x " + one_decimal(*type.wall_tenth_mm);
  if (type.diameter_tenth_mm) words += " mm";
  return words + ", " +
         word_of_code(EntityType::component_type, component_type_field::protection,
                      static_cast<int>(type.protection));
}

class Writing {
 public:
  Writing(const NewRun& run, const LaidRun& laid, const RunSurroundings& around, const Uuid& who,
          const std::function<Uuid()>& mint)
      : run_(run), laid_(laid), around_(around), who_(who), mint_(mint) {}

  std::vector<Entry> entries() {
    for (const LaidType& type : laid_.types) types_.push_back(type_id(type));
    add_run();
    for (std::size_t i = 0; i < laid_.posts.size(); ++i) add_post(i);
    for (const LaidBay& bay : laid_.bays) add_bay(bay);
    for (std::size_t i = 0; i < laid_.parts.size(); ++i) parts_.push_back(mint_());
    for (std::size_t i = 0; i < laid_.parts.size(); ++i) add_part(i);
    return std::move(entries_);
  }

 private:
  void create(const Uuid& feed, const Uuid& id, EntityType type, const Uuid& parent,
              cbor::Map fields) {
    const Create made{type, parent, std::move(fields), std::nullopt, MadeBy::rule};
    entries_.push_back({feed, Create::kind, id, who_, to_body(made), id});
  }

  Uuid type_id(const LaidType& type) {
    for (const auto& [known, id] : around_.types)
      if (known == type) return id;
    const Uuid id = mint_();
    cbor::Map fields{{component_type_field::what_it_does, static_cast<int>(type.does)},
                     {component_type_field::material, static_cast<int>(type.material)},
                     {component_type_field::protection, static_cast<int>(type.protection)},
                     {component_type_field::owners_name, words_of(type)},
                     {component_type_field::system, static_cast<int>(type.system)}};
    if (type.diameter_tenth_mm)
      fields.set(component_type_field::tube_diameter, *type.diameter_tenth_mm);
    if (type.wall_tenth_mm) fields.set(component_type_field::tube_wall, *type.wall_tenth_mm);
    create(around_.organisation, id, EntityType::component_type, around_.organisation,
           std::move(fields));
    return id;
  }

  void add_run() {
    cbor::Map fields{{run_field::name, run_.name},
                     {run_field::required_height, run_.rule.height_mm},
                     {run_field::order, around_.last_order + 1}};
    if (run_.drop_mm) fields.set(run_field::drop_behind, *run_.drop_mm);
    if (run_.behind) fields.set(run_field::who_is_behind, static_cast<int>(*run_.behind));
    if (run_.below) fields.set(run_field::what_is_below, static_cast<int>(*run_.below));
    if (!laid_.line.empty()) {
      cbor::Array points;
      for (const auto& point : laid_.line)
        points.push_back(cbor::Array{point[0], point[1], point[2]});
      fields.set(run_field::polyline, cbor::Map{{1, std::move(points)}});
    }
    create(run_.site, run_.run, EntityType::run, run_.zone, std::move(fields));
  }

  void add_post(std::size_t place) {
    const LaidPost& post = laid_.posts[place];
    posts_.push_back(mint_());
    cbor::Map fields{{post_field::label, post.label},
                     {post_field::chainage, post.chainage_mm},
                     {post_field::order, static_cast<std::int64_t>(place) + 1},
                     {post_field::height, run_.rule.height_mm},
                     {post_field::base_kind, static_cast<int>(post.base)}};
    if (!post.landmark.empty()) fields.set(post_field::landmark, post.landmark);
    create(run_.site, posts_.back(), EntityType::post, run_.run, std::move(fields));
  }

  void add_bay(const LaidBay& bay) {
    bays_.push_back(mint_());
    const auto from = static_cast<std::size_t>(bay.from);
    create(run_.site, bays_.back(), EntityType::bay, run_.run,
           {{bay_field::from_post, posts_[from]},
            {bay_field::to_post, posts_[from + 1]},
            {bay_field::kind, static_cast<int>(bay.kind)},
            {bay_field::rails_count, bay.rails}});
  }

  void add_part(std::size_t place) {
    const LaidPart& part = laid_.parts[place];
    const Uuid& parent = part.bay < 0 ? posts_[static_cast<std::size_t>(part.post)]
                                      : bays_[static_cast<std::size_t>(part.bay)];
    cbor::Map fields{{component_field::role, static_cast<int>(part.role)},
                     {component_field::component_type, types_[static_cast<std::size_t>(part.type)]},
                     {component_field::place, cbor::Array{part.along_mm, part.up_mm}}};
    if (part.screws > 0) fields.set(component_field::screws_count, part.screws);
    if (run_.rule.in_service)
      fields.set(component_field::date_in_service, std::int64_t{run_.rule.in_service->days});
    if (part.whole >= 0)
      fields.set(component_field::part_of, parts_[static_cast<std::size_t>(part.whole)]);
    create(run_.site, parts_[place], EntityType::component, parent, std::move(fields));
  }

  const NewRun& run_;
  const LaidRun& laid_;
  const RunSurroundings& around_;
  const Uuid who_;
  const std::function<Uuid()>& mint_;
  std::vector<Uuid> types_;
  std::vector<Uuid> posts_;
  std::vector<Uuid> bays_;
  std::vector<Uuid> parts_;
  std::vector<Entry> entries_;
};

Result<> check_surroundings(const NewRun& run, const LaidRun& laid, const RunSurroundings& around) {
  const auto refused = [](std::string sentence) {
    return fail(Fault::invalid_input, std::move(sentence));
  };
  if (run.name.empty())
    return refused("The run has no name yet. Touch its first key and type one.");
  if (std::find(around.runs.begin(), around.runs.end(), run.name) != around.runs.end())
    return refused("A run of this site is named " + run.name + " already. Type another name.");
  const bool zoned = std::any_of(around.zones.begin(), around.zones.end(),
                                 [&](const auto& zone) { return zone.id == run.zone; });
  if (!zoned) return refused("The run is in no zone yet. Touch its second key and choose one.");
  const std::unordered_set<std::string> taken(around.labels.begin(), around.labels.end());
  for (const LaidPost& post : laid.posts)
    if (taken.contains(post.label))
      return refused("Post " + post.label +
                     " is at this site already. Let the numbers begin elsewhere.");
  return Done{};
}

Result<std::vector<Thing>> children(Database& tables, EntityType type,
                                    const std::vector<Thing>& parents) {
  std::vector<Uuid> ids;
  for (const Thing& parent : parents) ids.push_back(parent.id);
  return things_under(tables, static_cast<int>(type), ids);
}

}  // namespace

Result<RunSurroundings> read_surroundings(Database& tables, const Uuid& site) {
  RunSurroundings around;
  auto sites = things_among(tables, static_cast<int>(EntityType::site), {site});
  if (!sites) return fail(sites.error());
  if (sites->empty()) return fail(Fault::not_found, "This site is not in the register.");
  around.organisation = sites->front().feed;
  around.site_name = sites->front().name;
  auto zones = children(tables, EntityType::zone, *sites);
  if (!zones) return fail(zones.error());
  for (const Thing& zone : *zones)
    around.zones.push_back(
        {zone.id, zone.name,
         static_cast<int>(zone.number(zone_field::corrosivity_category).value_or(0)),
         static_cast<Exposure>(zone.number(zone_field::exposure).value_or(0))});
  std::stable_sort(around.zones.begin(), around.zones.end(),
                   [](const auto& a, const auto& b) { return a.name < b.name; });
  auto runs = children(tables, EntityType::run, *zones);
  if (!runs) return fail(runs.error());
  for (const Thing& run : *runs) around.runs.push_back(run.name);
  auto orders = tables.prepare("SELECT max(ord) FROM entity WHERE feed = ?1 AND type = 4");
  if (!orders) return fail(orders.error());
  orders->bind(1, site);
  auto row = orders->step();
  if (!row) return fail(row.error());
  if (*row && !orders->is_null(0)) around.last_order = orders->number(0);
  auto labels = tables.prepare(
      "SELECT label FROM entity WHERE feed = ?1 AND type = 5 AND label IS NOT NULL AND held = 0 "
      "AND voided_by IS NULL");
  if (!labels) return fail(labels.error());
  labels->bind(1, site);
  for (;;) {
    auto more = labels->step();
    if (!more) return fail(more.error());
    if (!*more) break;
    around.labels.emplace_back(labels->text(0));
  }
  auto types = things_of_type(tables, static_cast<int>(EntityType::component_type));
  if (!types) return fail(types.error());
  for (const Thing& type : *types) around.types.emplace_back(type_of(type), type.id);
  return around;
}

Result<std::vector<Entry>> entries_of(const NewRun& run, const RunSurroundings& around,
                                      const Uuid& who, const std::function<Uuid()>& mint) {
  auto laid = layout::lay_out(run.rule);
  if (!laid) return fail(laid.error());
  if (auto fits = check_surroundings(run, *laid, around); !fits) return fail(fits.error());
  return Writing(run, *laid, around, who, mint).entries();
}

}  // namespace kneerail
