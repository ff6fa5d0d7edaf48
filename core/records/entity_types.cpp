#include "core/records/entities.h"
#include "core/records/rule_set.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view policy_words[] = {"as taken", "location removed",
                                             "people blurred, location removed"};
constexpr std::string_view does_words[] = {"three-way tee",
                                           "corner tee",
                                           "cross",
                                           "elbow",
                                           "adjustable swivel",
                                           "sleeve coupling",
                                           "base flange",
                                           "wall flange",
                                           "end cap",
                                           "clip-on for infill",
                                           "tube",
                                           "plate",
                                           "weld",
                                           "welded section",
                                           "set screw",
                                           "bolt"};
constexpr std::string_view protection_words[] = {"hot-dip zinc", "zinc plus paint",
                                                 "paint on steel", "anodised", "bare"};
constexpr std::string_view system_words[] = {"slip-on", "welded"};
constexpr std::string_view instrument_words[] = {"coating gauge", "torque wrench", "wall gauge",
                                                 "load gauge", "rule"};

constexpr FieldInfo organisation_fields[] = {
    text(organisation_field::name, "name", 120),
    text(organisation_field::currency, "currency", 3),
    text(organisation_field::language, "language", 35),
    text(organisation_field::time_zone, "time zone", 64),
    code(organisation_field::photograph_policy, "photograph policy", policy_words),
    digest(organisation_field::rate_map, "rate map"),
};

constexpr FieldInfo component_type_fields[] = {
    code(component_type_field::what_it_does, "what it does", does_words),
    code(component_type_field::material, "material", material_words),
    code(component_type_field::protection, "protection", protection_words),
    number(component_type_field::tube_diameter, "tube diameter", Unit::tenth_mm, 100, 3'000),
    number(component_type_field::tube_wall, "tube wall", Unit::tenth_mm, 5, 200),
    torque(component_type_field::torque_target, "torque target"),
    torque(component_type_field::torque_lowest, "torque lowest"),
    thickness(component_type_field::coating_nominal, "coating nominal"),
    money(component_type_field::price, "price"),
    number(component_type_field::lead_time, "lead time", Unit::days, 0, 3'650),
    text(component_type_field::owners_name, "owner's name", 80),
    code(component_type_field::system, "system", system_words),
    id(component_type_field::set_screw_type, "set screw type"),
    number(component_type_field::yield_strength, "yield strength", Unit::megapascal, 100, 1'000),
};

// In the unit of the instrument's kind, which another field says.
constexpr FieldInfo range_parts[] = {
    must(number(1, "low", Unit::none, -1'000'000, 1'000'000)),
    must(number(2, "high", Unit::none, -1'000'000, 1'000'000)),
};
constexpr FieldInfo instrument_fields[] = {
    code(instrument_field::kind, "kind", instrument_words),
    text(instrument_field::serial, "serial", 40),
    number(instrument_field::resolution, "resolution", Unit::none, 0, 100'000),
    number(instrument_field::stated_error, "stated error", Unit::none, 0, 100'000),
    code(instrument_field::life_state, "life state", life_state_words),
    tuple(instrument_field::range, "range", range_parts),
    number(instrument_field::zero_good_for, "a zero is good for", Unit::hours, 1, 8'760),
    day(instrument_field::away_since, "away since"),
};

constexpr FieldInfo person_fields[] = {
    digest(person_field::particulars, "particulars"),
    text(person_field::initials, "initials", 6),
    code(person_field::life_state, "life state", life_state_words),
};

constexpr FieldInfo one_class_name = text(0, "name of a use class", 40);
constexpr FieldInfo rule_set_fields[] = {
    text(rule_set_field::name, "name", 120),
    text(rule_set_field::version, "version", 40),
    limits_field(rule_set_field::limits),
    day(rule_set_field::in_force_from, "in force from"),
    list(rule_set_field::use_class_names, "names of use classes", 0, 9, one_class_name),
};

constexpr FieldInfo depot_fields[] = {
    text(depot_field::name, "name", 120),
    place(depot_field::place, "place"),
    code(depot_field::life_state, "life state", life_state_words),
};

}  // namespace

constexpr EntityInfo organisation_entity{1, "organisation", "", FeedOf::organisation,
                                         fields(organisation_fields)};
constexpr EntityInfo component_type_entity{8, "component type", "organisation",
                                           FeedOf::organisation, fields(component_type_fields)};
constexpr EntityInfo instrument_entity{9, "instrument", "organisation", FeedOf::organisation,
                                       fields(instrument_fields)};
constexpr EntityInfo person_entity{10, "person", "organisation", FeedOf::organisation,
                                   fields(person_fields)};
constexpr EntityInfo rule_set_entity{11, "rule set", "organisation", FeedOf::organisation,
                                     fields(rule_set_fields)};
constexpr EntityInfo depot_entity{12, "depot", "organisation", FeedOf::organisation,
                                  fields(depot_fields)};

}  // namespace kneerail
