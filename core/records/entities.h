#pragma once

// The things of the register: their types, the numbers of their fields and the codes of those
// fields. The tables are in entities.cpp (places) and entity_types.cpp (the organisation's things).

#include <string_view>

#include "core/records/codes.h"
#include "core/records/kinds.h"

namespace kneerail {

enum class EntityType {
  organisation = 1,
  site,
  zone,
  run,
  post,
  bay,
  component,
  component_type,
  instrument,
  person,
  rule_set,
  depot
};

namespace organisation_field {
enum : int { name = 1, currency, language, time_zone, photograph_policy, rate_map };
}
namespace site_field {
enum : int {
  name = 1,
  code,
  place,
  address,
  duty_holder,
  rule_set,
  life_state,
  drawing,
  depot,
  people_to_tell
};
}
namespace zone_field {
enum : int {
  name = 1,
  corrosivity_category,
  exposure,
  distance_to_sea,
  wetted_side,
  life_state,
  first_year_zinc_loss,
  zinc_loss_ln_sd,
  first_year_steel_loss,
  loss_from,
  air_data
};
}
namespace run_field {
/// polyline: [[latitude, longitude, elevation] ...], or {1: [[x, y, z] ...]} in mm where the run is
/// drawn in a frame of its own.
enum : int {
  name = 1,
  code,
  polyline,
  looked_at_from,
  required_height,
  use_class,
  drop_behind,
  seasonal,
  order,
  life_state,
  who_is_behind,
  what_is_below,
  hours_of_access,
  access_note,
  consequence,
  drawing
};
}  // namespace run_field
namespace post_field {
enum : int {
  label = 1,
  chainage,
  order,
  tag,
  side,
  height,
  base_kind,
  life_state,
  place,
  landmark
};
}
namespace bay_field {
enum : int {
  from_post = 1,
  to_post,
  kind,
  rails_count,
  life_state,
  drop_behind,
  who_is_behind,
  what_is_below
};
}
namespace component_field {
enum : int {
  role = 1,
  component_type,
  place,
  screws_count,
  date_in_service,
  coating_nominal,
  accessible,
  life_state,
  tag,
  spots,
  exposure,
  part_of,
  wall_limit,
  moved_from
};
}
namespace component_type_field {
enum : int {
  what_it_does = 1,
  material,
  protection,
  tube_diameter,
  tube_wall,
  torque_target,
  torque_lowest,
  coating_nominal,
  price,
  lead_time,
  owners_name,
  system,
  set_screw_type,
  yield_strength  ///< of a tube's steel, MPa
};
}
namespace instrument_field {
enum : int {
  kind = 1,
  serial,
  resolution,
  stated_error,
  life_state,
  range,
  zero_good_for,
  away_since
};
}
namespace person_field {
enum : int { particulars = 1, initials, life_state };
}
namespace rule_set_field {
enum : int { name = 1, version, limits, in_force_from, use_class_names };
}
namespace depot_field {
enum : int { name = 1, place, life_state };
}

/// How photographs of an organisation are kept.
enum class PhotographPolicy { as_taken = 1, location_removed, people_blurred };
/// Seen with rising chainage.
enum class Side { left = 1, right, both };
enum class LossFrom { category = 1, rate_map, air_data, coupon };
enum class WhoIsBehind { walkers = 1, children, crowd, staff, cyclists };
enum class WhatIsBelow { ground = 1, water, road, machinery };
enum class Consequence { high = 1, medium, low };
enum class BaseKind { base_flange = 1, wall_flange, welded_plate, cast_in, socket };
enum class BayKind { rails = 1, mesh_infill, gate, open_gap };
enum class Role {
  post_tube = 1,
  rail_tube,
  top_rail,
  mid_rail,
  fitting,
  weld,
  base_fixing,
  toe_board,
  infill,
  gate,
  cut_edge,
  welded_section
};
enum class Face { seaward = 1, landward, up, down, inside, all_round };
enum class WhatItDoes {
  three_way_tee = 1,
  corner_tee,
  cross,
  elbow,
  adjustable_swivel,
  sleeve_coupling,
  base_flange,
  wall_flange,
  end_cap,
  clip_on_for_infill,
  tube,
  plate,
  weld,
  welded_section,
  set_screw,
  bolt
};
enum class Protection { hot_dip_zinc = 1, zinc_plus_paint, paint_on_steel, anodised, bare };
enum class System { slip_on = 1, welded };
enum class InstrumentKind { coating_gauge = 1, torque_wrench, wall_gauge, load_gauge, rule };

/// Whether a wall fits in a tube: twice the wall is less than the diameter. Both in 0.1 mm.
constexpr bool wall_fits(std::int64_t diameter_tenth_mm, std::int64_t wall_tenth_mm) {
  return 2 * wall_tenth_mm < diameter_tenth_mm;
}

extern const EntityInfo organisation_entity;
extern const EntityInfo site_entity;
extern const EntityInfo zone_entity;
extern const EntityInfo run_entity;
extern const EntityInfo post_entity;
extern const EntityInfo bay_entity;
extern const EntityInfo component_entity;
extern const EntityInfo component_type_entity;
extern const EntityInfo instrument_entity;
extern const EntityInfo person_entity;
extern const EntityInfo rule_set_entity;
extern const EntityInfo depot_entity;

}  // namespace kneerail
