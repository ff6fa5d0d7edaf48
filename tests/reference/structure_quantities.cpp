#include "core/structure/line_load.h"
#include "core/structure/post.h"
#include "core/structure/screw.h"
#include "core/structure/section.h"
#include "core/structure/units.h"
#include "tests/reference/registry.h"

namespace kneerail::reference {

namespace {

using namespace structure;

Tube tube_of(Needed& need) {
  return {.outside_mm = need.number("D_mm"), .wall_mm = need.number("t_mm")};
}

/// A quantity of a new tube.
template <double (*property)(const Tube&)>
Answer of_tube(const Question& question) {
  Needed need(question.inputs);
  const Tube tube = tube_of(need);
  if (!need.complete()) return need.unknown();
  if (!is_tube(tube)) return Unknown{"not a tube"};
  return property(tube);
}

Answer mass(const Question& question) {
  Needed need(question.inputs);
  const Tube tube = tube_of(need);
  const auto density = question.captured_number(0);
  if (!need.complete()) return need.unknown();
  if (!density || !is_tube(tube)) return Unknown{"not a tube, or no density"};
  return mass_kg_per_m(tube, *density);
}

/// A quantity of what is left of a tube.
template <double (*property)(const Tube&)>
Answer after(const Question& question) {
  Needed need(question.inputs);
  const Tube tube = tube_of(need);
  const Loss loss{.outside_mm = need.number("loss_out_mm"), .inside_mm = need.number("loss_in_mm")};
  if (!need.complete()) return need.unknown();
  const auto left = after_loss(tube, loss);
  if (!left) return Unknown{"no wall is left"};
  return property(*left);
}

template <Modulus modulus>
Answer loss_at_fraction(const Question& question) {
  Needed need(question.inputs);
  const Tube tube = tube_of(need);
  const double fraction = need.number("fraction");
  if (!need.complete()) return need.unknown();
  const auto loss = outside_loss_at_mm(tube, modulus, fraction);
  if (!loss) return Unknown{"not a tube, or not a fraction"};
  return *loss;
}

Answer foot_moment(const Question& question) {
  Needed need(question.inputs);
  const Span span{.line_load_kn_per_m = need.number("q_kN_m"),
                  .spacing_m = need.number("spacing_m"),
                  .height_m = need.number("height_m")};
  if (!need.complete()) return need.unknown();
  return foot_moment_kn_m(span);
}

Answer plastic_moment(const Question& question) {
  Needed need(question.inputs);
  const Tube tube = tube_of(need);
  const double yield_mpa = need.number("fy_MPa");
  if (!need.complete()) return need.unknown();
  if (question.captured_number(0) != 1.0) return Unknown{"a partial factor other than 1"};
  return plastic_moment_kn_m(tube, yield_mpa);
}

Answer widest_spacing(const Question& question) {
  Needed need(question.inputs);
  const SpacingQuestion spacing{.tube = tube_of(need),
                                .yield_mpa = need.number("fy_MPa"),
                                .line_load_kn_per_m = need.number("q_kN_m"),
                                .height_m = need.number("height_m"),
                                .load_factor = need.number("gQ")};
  if (!need.complete()) return need.unknown();
  return widest_spacing_m(spacing);
}

Answer tip_deflection(const Question& question) {
  Needed need(question.inputs);
  const TipPush push{.force_kn = need.number("F_kN"),
                     .height_m = need.number("height_m"),
                     .tube = tube_of(need),
                     .modulus_gpa = need.number("E_GPa")};
  if (!need.complete()) return need.unknown();
  return tip_deflection_mm(push);
}

Answer screw_force(const Question& question) {
  Needed need(question.inputs);
  const ScrewTorque screw{.torque_nm = need.number("T_Nm"),
                          .nut_factor = need.number("K"),
                          .thread_mm = need.number("d_mm")};
  if (!need.complete()) return need.unknown();
  return screw_force_kn(screw);
}

Answer embedding(const Question& question) {
  Needed need(question.inputs);
  const Embedding loss{.embedding_um = need.number("fZ_um"),
                       .screw_um_per_kn = need.number("dS_um_per_kN"),
                       .part_um_per_kn = need.number("dP_um_per_kN")};
  if (!need.complete()) return need.unknown();
  return embedding_loss_kn(loss);
}

Answer test_torque(const Question& question) {
  const auto thread = question.inputs.text("thread");
  if (!thread) return Unknown{"needs the input thread"};
  const auto torque_nm = test_torque_45h_nm(*thread);
  if (!torque_nm) return Unknown{"a thread that the table does not hold"};
  return *torque_nm;
}

Answer line_load(const Question& question) {
  const auto words = question.inputs.text("occupancy");
  if (!words) return Unknown{"needs the input occupancy"};
  const auto occupancy = occupancy_from_text(*words);
  if (!occupancy) return Unknown{"an occupancy that the table does not hold"};
  return bs6180_line_load_kn_per_m(*occupancy);
}

/// From the unit the input names to the unit of the row.
Answer converted(const Question& question) {
  struct Conversion {
    std::string_view from;
    std::string_view to;
    double factor;
  };
  static const std::vector<Conversion> conversions{
      {"lbf", "N", newtons_per_pound_force},
      {"lbf_per_ft", "kN/m", newtons_per_pound_force / m_per_foot / 1000},
      {"in", "mm", mm_per_inch},
      {"N_m", "lbf.ft", 1 / newton_metres_per_pound_force_foot},
      {"lbf_ft", "N.m", newton_metres_per_pound_force_foot}};
  for (const auto& conversion : conversions) {
    const auto value = question.inputs.number(conversion.from);
    if (value && question.unit == conversion.to) return *value * conversion.factor;
  }
  return Unknown{"no conversion between these units"};
}

}  // namespace

void add_structure(Registry& registry) {
  registry.add("area", of_tube<area_mm2>);
  registry.add("second moment of area", of_tube<second_moment_mm4>);
  registry.add("elastic section modulus", of_tube<elastic_modulus_mm3>);
  registry.add("plastic section modulus", of_tube<plastic_modulus_mm3>);
  registry.add("mass per metre at # kg/dm3", mass);
  registry.add("elastic modulus after uniform loss", after<elastic_modulus_mm3>);
  registry.add("plastic modulus after uniform loss", after<plastic_modulus_mm3>);
  registry.add("outside loss at which wel falls to the given fraction",
               loss_at_fraction<Modulus::elastic>);
  registry.add("outside loss at which wpl falls to the given fraction",
               loss_at_fraction<Modulus::plastic>);
  registry.add("post base moment from a line load at rail height", foot_moment);
  registry.add("plastic moment resistance, gm0=#", plastic_moment);
  registry.add("largest post spacing for gq=#", widest_spacing);
  registry.add("elastic tip deflection of a rigidly fixed post", tip_deflection);
  registry.add("screw force from torque f=t/(k d)", screw_force);
  registry.add("force loss by embedding fz=fz/(ds+dp)", embedding);
  registry.add("45h proof (test) torque", test_torque);
  registry.add("horizontal line load", line_load);
  for (const auto* name :
       {"top-rail test load", "mid-rail test load", "guard line load", "top-rail height",
        "least top-rail height under load", "unit conversion"}) {
    registry.add(name, converted);
  }
}

}  // namespace kneerail::reference
