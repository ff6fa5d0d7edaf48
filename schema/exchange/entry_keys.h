#pragma once

// Keys of the record bodies and of the register's fields that exchange writes and reads, by name.

namespace kneerail::exchange {

enum EntityType : int {
  type_organisation = 1,
  type_site = 2,
  type_zone = 3,
  type_run = 4,
  type_post = 5,
  type_bay = 6,
  type_component = 7,
  type_component_type = 8,
  type_instrument = 9,
  type_person = 10,
  type_rule_set = 11,
  type_depot = 12
};

enum Kind : int {
  kind_create = 1,
  kind_visit = 10,
  kind_visit_joined = 11,
  kind_same_visit = 14,
  kind_grade = 20,
  kind_coating = 21,
  kind_torque = 22,
  kind_wall = 23,
  kind_work = 40,
  kind_strike_step = 46,
  kind_instrument_check = 50
};

enum Create : int { create_type = 1, create_parent, create_fields, create_reference, create_by };
constexpr int made_by_import = 2;
constexpr int copied_from_paper = 1;

}  // namespace kneerail::exchange
