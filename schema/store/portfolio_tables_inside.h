#pragma once

// Codes that the files of PortfolioTables share.

namespace kneerail {

enum ReadingKind : int { kind_grade = 20, kind_coating = 21, kind_torque = 22, kind_wall = 23 };

enum ThingType : int {
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

}  // namespace kneerail
