#include "mobile/demo/founding.h"

#include <string>

namespace kneerail::demo {

namespace {

namespace type {
constexpr int organisation = 1, site = 2, zone = 3, run = 4, post = 5, bay = 6, component = 7,
              component_type = 8, instrument = 9, person = 10, rule_set = 11, depot = 12;
}

constexpr int role_given = 60;
constexpr int competence = 64;
constexpr int create = 1;

Date first_day() {
  return date_from_civil(2018, 4, 3);
}

Uuid make(Making& making, const Uuid& feed, int type, const Uuid& parent, cbor::Map fields,
          const Origin& origin = {}) {
  const Uuid id = making.mint();
  making.write_as(id, create, feed, id, create_body(type, parent, std::move(fields), origin));
  return id;
}

Origin from_list(const std::string& reference) {
  return {MadeBy::import, reference};
}

Origin by_rule() {
  return {MadeBy::rule};
}

void set_number(cbor::Map& fields, int key, const TableRow& row, std::string_view column) {
  if (const auto value = row.number(column)) fields.set(key, *value);
}

/// The invented owner's limits, by the keys of the rule set.
cbor::Map limits() {
  using cbor::Array;
  using cbor::Map;
  Map limits{{1, 50}, {2, 300}};           // zinc gone at 5 um, first maintenance at 30 um
  limits.set(3, 800);                      // four fifths of the wall
  limits.set(4, 600);                      // six tenths of the torque
  limits.set(5, Map{{1, 250}, {2, 300}});  // 25 mm at 300 N
  limits.set(6, 5);                        // replace at grade 5
  limits.set(7, Array{Array{1, 3, 730}, Array{2, 4, 365}, Array{3, 5, 365}});  // class, category
  limits.set(8, Map{{1, 4}, {2, 30}});  // hours to made safe, days to ended
  limits.set(9, 24);                    // hours an instrument check holds
  limits.set(10, 200);                  // a fifth of the fittings at a visit
  limits.set(11, Map{{1, Array{Array{2, 600, 1100}, Array{3, 600, 1100}}},  // least rail height
                     {2, 2000},
                     {3, 100},
                     {4, 500}});                     // post spacing, gap below, gap between
  limits.set(12, 950);                               // chance of having the spare
  limits.set(13, Map{{2, 48}, {3, 24}, {6, 72}});    // hours after flood, impact, storm
  limits.set(14, Map{{1, 50}, {2, 100}, {3, 250}});  // chance: high, medium, low
  limits.set(15, 30);                                // discount rate
  limits.set(16, Map{{1, 45'000}, {2, 4'800}, {3, 90'000}});  // a visit, an hour, a day closed
  limits.set(17, Map{{1, 24}, {2, 72}, {3, 8}});              // hours between looks, by measure
  limits.set(18, Map{{1, 2}, {2, 3}});                        // carried grades, visits unseen
  limits.set(19, Map{{1, 1}, {2, 4}});                        // hours to told, told to looked at
  limits.set(20, Map{{1, 220}, {2, 300}, {3, 360}});          // N/m along the top, by load class
  return limits;
}

void people_and_instruments(Making& making) {
  const Uuid& home = making.organisation;
  for (const TableRow& row : table_rows("people")) {
    cbor::Map fields{{2, row.text("initials")}};
    // Numbers of a range that is kept free for plays and films (common practice, from memory).
    if (const auto sha = making.keep_particulars(row.text("name"), row.text("telephone")))
      fields.set(1, cbor::Bytes(sha->begin(), sha->end()));
    const Uuid id = make(making, home, type::person, making.organisation, std::move(fields),
                         {MadeBy::typing, row.text("initials")});
    making.people.emplace(row.text("code"), id);
    making.write(role_given, home, id, {{1, code("person", row.text("role"))}});
    if (row.text("role") == "inspector") {
      making.write(competence, home, id,
                   {{1, "Inspection of guard-rails, detailed"},
                    {2, first_day().days},
                    {3, date_from_civil(2028, 4, 3).days}});
    }
  }
  for (const TableRow& row : table_rows("instruments")) {
    cbor::Map fields{{1, code("instrument", row.text("kind"))}, {2, row.text("serial")}};
    set_number(fields, 3, row, "resolution");
    set_number(fields, 4, row, "stated_error");
    fields.set(6, cbor::Array{row.whole("low"), row.whole("high")});
    making.instruments.emplace(row.text("code"),
                               make(making, home, type::instrument, making.organisation,
                                    std::move(fields), from_list(row.text("serial"))));
  }
}

void component_types(Making& making) {
  Uuid screw;
  for (auto planned = making.plan.types.rbegin(); planned != making.plan.types.rend(); ++planned) {
    const TableRow& row = planned->row;
    cbor::Map fields{{1, code("what", row.text("what"))},
                     {2, code("material", row.text("material"))},
                     {3, code("protection", row.text("protection"))},
                     {11, row.text("name")},
                     {12, code("system", row.text("system"))}};
    set_number(fields, 4, row, "diameter_tenth_mm");
    set_number(fields, 5, row, "wall_tenth_mm");
    set_number(fields, 6, row, "torque_target_tenth_nm");
    set_number(fields, 7, row, "torque_lowest_tenth_nm");
    set_number(fields, 8, row, "nominal_tenth_um");
    set_number(fields, 9, row, "price_cents");
    set_number(fields, 10, row, "lead_days");
    if (row.number("screws").value_or(0) > 0) fields.set(13, screw);
    planned->id = make(making, making.organisation, type::component_type, making.organisation,
                       std::move(fields), from_list(planned->code));
    if (planned->code == "screw") screw = planned->id;
  }
}

void site(Making& making, PlannedSite& planned) {
  const TableRow& row = planned.row;
  planned.id = make(making, making.organisation, type::site, making.organisation,
                    {{1, planned.name},
                     {2, planned.code},
                     {3, cbor::Array{row.whole("lat_e7"), row.whole("lon_e7")}},
                     {4, row.text("address")},
                     {5, making.people.at("SW")},
                     {6, making.rule_set},
                     {9, making.depot},
                     {10, cbor::Array{making.people.at("RH")}}},
                    from_list(planned.code));
}

void zone(Making& making, PlannedZone& planned) {
  const TableRow& row = planned.row;
  const Uuid& home = making.plan.sites[static_cast<std::size_t>(planned.site)].id;
  cbor::Map fields{{1, row.text("name")},
                   {2, code("category", row.text("category"))},
                   {3, code("exposure", row.text("exposure"))},
                   {4, 1000 * row.whole("distance_to_sea_m")},
                   {8, 450}};
  constexpr int category = 1;
  constexpr int coupon = 4;
  set_number(fields, 7, row, "first_year_zinc_nm");
  fields.set(10, row.number("first_year_zinc_nm") ? coupon : category);
  planned.id = make(making, home, type::zone, home, std::move(fields), from_list(planned.code));
}

void run(Making& making, PlannedRun& planned, int order) {
  const TableRow& row = planned.row;
  const PlannedSite& at = making.plan.sites[static_cast<std::size_t>(planned.site)];
  const std::int64_t lat = at.row.whole("lat_e7") + 2'000 * order;
  const std::int64_t lon = at.row.whole("lon_e7") + 1'500 * order;
  const std::int64_t length_mm = (planned.posts - 1) * row.whole("spacing_mm");
  constexpr std::int64_t mm_per_e7_degree = 11;  // 11.1 mm of latitude
  const std::int64_t north = lat + length_mm / mm_per_e7_degree;
  planned.id =
      make(making, at.id, type::run, making.plan.zones[static_cast<std::size_t>(planned.zone)].id,
           {{1, row.text("name")},
            {2, planned.code},
            {3, cbor::Array{cbor::Array{lat, lon, 4'000}, cbor::Array{north, lon, 4'000}}},
            {4, row.text("looked_at")},
            {5, row.whole("height_mm")},
            {6, row.whole("use_class")},
            {7, row.whole("drop_mm")},
            {8, planned.seasonal},
            {9, order},
            {11, code("behind", row.text("behind"))},
            {12, code("below", row.text("below"))},
            {15, code("consequence", row.text("consequence"))}},
           from_list(planned.code));
}

Date in_service(const Making& making, const PlannedPart& part) {
  return making.plan.runs[static_cast<std::size_t>(part.run)].in_service;
}

void part(Making& making, PlannedPart& planned) {
  const Plan& plan = making.plan;
  const PlannedType& of_type = plan.types[static_cast<std::size_t>(planned.type)];
  const Uuid& parent = planned.bay < 0 ? plan.posts[static_cast<std::size_t>(planned.post)].id
                                       : plan.bays[static_cast<std::size_t>(planned.bay)].id;
  cbor::Map fields{{1, code("role", planned.role)},
                   {2, of_type.id},
                   {3, cbor::Array{planned.along_mm, planned.up_mm}},
                   {5, in_service(making, planned).days}};
  if (planned.screws > 0) fields.set(4, planned.screws);
  set_number(fields, 6, of_type.row, "nominal_tenth_um");
  if (planned.spots == 2) {
    fields.set(10, cbor::Array{code("face", "seaward"), code("face", "landward")});
  }
  if (planned.whole >= 0) fields.set(12, plan.parts[static_cast<std::size_t>(planned.whole)].id);
  planned.id = make(making, making.feed_of_run(planned.run), type::component, parent,
                    std::move(fields), by_rule());
}

void posts_and_bays(Making& making, int run_place) {
  Plan& plan = making.plan;
  const PlannedRun& at = plan.runs[static_cast<std::size_t>(run_place)];
  const Uuid& home = making.feed_of_run(run_place);
  const bool welded = at.finish == "paint";
  for (int i = at.first_post; i < at.first_post + at.posts; ++i) {
    PlannedPost& post = plan.posts[static_cast<std::size_t>(i)];
    const std::string number = std::to_string(post.number);
    post.id = make(making, home, type::post, at.id,
                   {{1, number},
                    {2, post.chainage_mm},
                    {3, i - at.first_post + 1},
                    {4, "SKM-" + at.code.substr(0, 2) + "-" + number},
                    {6, at.row.whole("height_mm")},
                    {7, code("base", welded ? "welded plate" : "base flange")}},
                   by_rule());
  }
  for (int i = at.first_bay; i < at.first_bay + at.posts - 1; ++i) {
    PlannedBay& bay = plan.bays[static_cast<std::size_t>(i)];
    constexpr int rails = 1;
    constexpr int gate = 3;
    bay.id = make(making, home, type::bay, at.id,
                  {{1, plan.posts[static_cast<std::size_t>(bay.from)].id},
                   {2, plan.posts[static_cast<std::size_t>(bay.from) + 1].id},
                   {3, bay.gate ? gate : rails},
                   {4, at.row.whole("rails")}},
                  by_rule());
  }
}

void the_organisation(Making& making) {
  making.organisation = making.mint();
  making.write_as(
      making.organisation, create, making.organisation, making.organisation,
      create_body(
          type::organisation, {},
          {{1, "Harbour Authority of Skerrymouth"}, {2, "EUR"}, {3, "en"}, {4, "Etc/UTC"}}));
  making.depot =
      make(making, making.organisation, type::depot, making.organisation, {{1, "Fish Quay depot"}});
  cbor::Map rules{{1, "Skerrymouth rules"}, {2, "3"}, {3, limits()}, {4, first_day().days}};
  rules.set(5, cbor::Array{"staff only", "walkers", "crowd"});
  making.rule_set =
      make(making, making.organisation, type::rule_set, making.organisation, std::move(rules));
}

}  // namespace

void found(Making& making) {
  making.move_to(first_day(), 9 * 60);
  the_organisation(making);
  people_and_instruments(making);
  making.save();
  making.written_by("RH");
  component_types(making);
  for (PlannedSite& planned : making.plan.sites) site(making, planned);
  making.save();
  for (PlannedZone& planned : making.plan.zones) zone(making, planned);
  for (int i = 0; i < static_cast<int>(making.plan.runs.size()); ++i) {
    run(making, making.plan.runs[static_cast<std::size_t>(i)], i + 1);
    posts_and_bays(making, i);
  }
  making.save();
  for (PlannedPart& planned : making.plan.parts) {
    part(making, planned);
    making.lives.push_back(planned.id);
    making.last_grades.push_back(0);
    making.read_thin.push_back(false);
    making.carried.push_back(0);
  }
  making.save();
}

}  // namespace kneerail::demo
