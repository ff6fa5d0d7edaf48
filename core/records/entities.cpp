#include "core/records/entities.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view side_words[] = {"left", "right", "both"};
constexpr std::string_view loss_from_words[] = {"category", "rate map", "air data", "coupon"};
constexpr std::string_view behind_words[] = {"walkers", "children", "crowd", "staff", "cyclists"};
constexpr std::string_view below_words[] = {"ground", "water", "road", "machinery"};
constexpr std::string_view consequence_words[] = {"high", "medium", "low"};
constexpr std::string_view base_words[] = {"base flange", "wall flange", "welded plate", "cast in",
                                           "socket"};
constexpr std::string_view bay_words[] = {"rails", "mesh infill", "gate", "open gap"};
constexpr std::string_view category_words[] = {"C1", "C2", "C3", "C4", "C5", "CX"};
constexpr std::string_view role_words[] = {
    "post tube",   "rail tube", "top rail", "mid-rail", "fitting",  "weld",
    "base fixing", "toe board", "infill",   "gate",     "cut edge", "welded section"};
constexpr std::string_view face_words[] = {"seaward", "landward", "up",
                                           "down",    "inside",   "all round"};

constexpr FieldInfo site_fields[] = {
    text(site_field::name, "name", 120),
    text(site_field::code, "code", 16),
    place(site_field::place, "place"),
    text(site_field::address, "address", 400),
    id(site_field::duty_holder, "duty holder"),
    id(site_field::rule_set, "rule set"),
    code(site_field::life_state, "life state", life_state_words),
    digest(site_field::drawing, "drawing"),
    id(site_field::depot, "depot"),
    ids(site_field::people_to_tell, "people to tell"),
};

constexpr FieldInfo air_parts[] = {
    must(temperature(1, "temperature")),
    must(number(2, "humidity", Unit::tenth_percent, 0, 1'000)),
    must(number(3, "sulphur dioxide", Unit::tenth_mg_per_m2_day, 0, 100'000)),
    must(number(4, "chloride", Unit::tenth_mg_per_m2_day, 0, 100'000)),
};
constexpr FieldInfo zone_fields[] = {
    text(zone_field::name, "name", 120),
    code(zone_field::corrosivity_category, "corrosivity category", category_words),
    code(zone_field::exposure, "exposure", exposure_words, 0),
    number(zone_field::distance_to_sea, "distance to sea", Unit::mm_as_m, 0, 1'000'000'000),
    code(zone_field::wetted_side, "wetted side", side_words),
    code(zone_field::life_state, "life state", life_state_words),
    number(zone_field::first_year_zinc_loss, "first-year zinc loss", Unit::thousandth_um, 0,
           1'000'000),
    number(zone_field::zinc_loss_ln_sd, "zinc loss logarithmic spread", Unit::thousandth, 0, 3'000),
    number(zone_field::first_year_steel_loss, "first-year steel loss", Unit::thousandth_um, 0,
           1'000'000),
    code(zone_field::loss_from, "where the losses come from", loss_from_words),
    tuple(zone_field::air_data, "air data", air_parts),
};

constexpr FieldInfo point_parts[] = {
    must(number(1, "latitude", Unit::degree_e7, -900'000'000, 900'000'000)),
    must(number(2, "longitude", Unit::degree_e7, -1'800'000'000, 1'800'000'000)),
    must(number(3, "elevation", Unit::mm_as_m, -9'000'000, 9'000'000)),
};
constexpr FieldInfo one_point = tuple(0, "point", point_parts);
constexpr FieldInfo local_parts[] = {
    must(number(1, "x", Unit::mm_as_m, -10'000'000, 10'000'000)),
    must(number(2, "y", Unit::mm_as_m, -10'000'000, 10'000'000)),
    must(number(3, "z", Unit::mm_as_m, -9'000'000, 9'000'000)),
};
constexpr FieldInfo one_local = tuple(0, "point", local_parts);
constexpr FieldInfo local_line[] = {must(list(1, "points", 2, 2'000, one_local))};
constexpr FieldInfo polyline_forms[] = {list(1, "polyline", 2, 2'000, one_point),
                                        map(2, "polyline in a frame of its own", local_line)};
constexpr FieldInfo access_parts[] = {
    must(count(1, "weekday", 1, 7)),
    must(number(2, "from", Unit::minutes, 0, 1'440)),
    must(number(3, "to", Unit::minutes, 0, 1'440)),
};
constexpr FieldInfo one_access = tuple(0, "hours", access_parts);
constexpr FieldInfo run_fields[] = {
    text(run_field::name, "name", 120),
    text(run_field::code, "code", 16),
    one_of(run_field::polyline, "polyline", polyline_forms),
    text(run_field::looked_at_from, "which way it is looked at", 40),
    number(run_field::required_height, "required top-rail height", Unit::mm, 100, 5'000),
    count(run_field::use_class, "use class", 1, 9),
    number(run_field::drop_behind, "drop behind", Unit::mm_as_m, 0, 1'000'000),
    truth(run_field::seasonal, "seasonal"),
    number(run_field::order, "order", Unit::none, -two_to_53, two_to_53),
    code(run_field::life_state, "life state", life_state_words),
    code(run_field::who_is_behind, "who is behind it", behind_words),
    code(run_field::what_is_below, "what is below", below_words),
    list(run_field::hours_of_access, "hours of access", 0, 50, one_access),
    text(run_field::access_note, "access note", 200),
    code(run_field::consequence, "consequence", consequence_words),
    digest(run_field::drawing, "drawing"),
};

constexpr FieldInfo post_fields[] = {
    text(post_field::label, "label", 16),
    number(post_field::chainage, "chainage", Unit::mm_as_m, 0, 10'000'000),
    number(post_field::order, "order", Unit::none, -two_to_53, two_to_53),
    text(post_field::tag, "tag", 64),
    code(post_field::side, "side", side_words),
    number(post_field::height, "height", Unit::mm, 0, 10'000),
    code(post_field::base_kind, "base kind", base_words),
    code(post_field::life_state, "life state", life_state_words),
    place(post_field::place, "place"),
    text(post_field::landmark, "landmark", 40),
};

constexpr FieldInfo bay_fields[] = {
    id(bay_field::from_post, "from post"),
    id(bay_field::to_post, "to post"),
    code(bay_field::kind, "kind", bay_words),
    count(bay_field::rails_count, "rails count", 0, 20),
    code(bay_field::life_state, "life state", life_state_words),
    number(bay_field::drop_behind, "drop behind", Unit::mm_as_m, 0, 1'000'000),
    code(bay_field::who_is_behind, "who is behind it", behind_words),
    code(bay_field::what_is_below, "what is below", below_words),
};

constexpr FieldInfo one_face = code(0, "face", face_words);
constexpr FieldInfo component_fields[] = {
    code(component_field::role, "role", role_words),
    id(component_field::component_type, "component type"),
    place_on_part(component_field::place, "place"),
    count(component_field::screws_count, "screws count", 0, 16),
    day(component_field::date_in_service, "date in service"),
    thickness(component_field::coating_nominal, "coating nominal"),
    truth(component_field::accessible, "accessible"),
    code(component_field::life_state, "life state", life_state_words),
    text(component_field::tag, "tag", 64),
    list(component_field::spots, "spots", 0, 16, one_face),
    code(component_field::exposure, "exposure", exposure_words, 0),
    id(component_field::part_of, "part of"),
    wall(component_field::wall_limit, "wall limit"),
    id(component_field::moved_from, "moved from"),
};

}  // namespace

constexpr EntityInfo site_entity{2, "site", "organisation", FeedOf::organisation,
                                 fields(site_fields)};
constexpr EntityInfo zone_entity{3, "zone", "site", FeedOf::site, fields(zone_fields)};
constexpr EntityInfo run_entity{4, "run", "zone", FeedOf::site, fields(run_fields)};
constexpr EntityInfo post_entity{5, "post", "run", FeedOf::site, fields(post_fields)};
constexpr EntityInfo bay_entity{6, "bay", "run", FeedOf::site, fields(bay_fields)};
constexpr EntityInfo component_entity{7, "component", "post or bay", FeedOf::site,
                                      fields(component_fields)};

}  // namespace kneerail
