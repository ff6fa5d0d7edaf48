#include "tests/mobile/small_portfolio.h"

#include <cstdio>

namespace kneerail::test {

namespace {

constexpr int parts = 8;
constexpr int years[] = {2014, 2016, 2018, 2021, 2024};

std::string components() {
  std::string text =
      "component_id,site_id,zone_id,run_id,chainage_m,kind,material,exposure,"
      "corrosivity_category,zinc_rate_prior_um_per_yr,zinc_rate_prior_ln_sd,install_date,"
      "nominal_coating_um,first_maintenance_um,reference_areas,wall_nominal_mm,wall_limit_mm,"
      "steel_rate_prior_um_per_yr,torque_target_nm,torque_minimum_nm\n";
  for (int part = 1; part <= parts; ++part) {
    text += "c" + std::to_string(part) + ",s1,z1,r1," + std::to_string(2 * part) +
            ",fitting,zinc_coated_steel,open,C4,2.97,0.45,2008-05-01,70,20,1,,,,39,27\n";
  }
  return text;
}

std::string day_of(int visit) {
  return std::to_string(years[visit]) + "-05-01";
}

/// Screws of odd parts moved and were tightened again, those of even ones held.
bool moved(int part) {
  return part % 2 == 1;
}

std::string torque_reading(int id, int part, int visit) {
  const std::string value = moved(part) ? std::to_string(33 - part) + ",about" : "27,at_least";
  return std::to_string(id) + ",c" + std::to_string(part) + ",v" + std::to_string(visit + 1) +
         ",torque_nm,A,1," + value + "\n";
}

std::string retorques() {
  std::string text = "component_id,date,action,new_nominal_coating_um,as_left_nm\n";
  for (int visit = 0; visit < 5; ++visit)
    for (int part = 1; part <= parts; ++part)
      if (moved(part)) text += "c" + std::to_string(part) + "," + day_of(visit) + ",retorque,,39\n";
  return text;
}

std::string readings(const std::string& extra) {
  std::string text = "reading_id,component_id,visit_id,quantity,spot,replicate,value,censor\n";
  int id = 0;
  for (int visit = 0; visit < 5; ++visit) {
    for (int part = 1; part <= parts; ++part) {
      for (int replicate = 1; replicate <= 3; ++replicate) {
        const double age = years[visit] - 2008;
        const double value = 78 - (1.6 + 0.25 * part) * age + 0.9 * (replicate - 2) +
                             0.7 * ((part * 7 + visit * 5) % 3 - 1);
        char number[32];
        std::snprintf(number, sizeof number, "%.1f", value);
        text += std::to_string(++id) + ",c" + std::to_string(part) + ",v" +
                std::to_string(visit + 1) + ",coating_um,A," + std::to_string(replicate) + "," +
                number + ",exact\n";
      }
      text += torque_reading(++id, part, visit);
    }
  }
  return text + extra;
}

}  // namespace

void write_small_portfolio(const Folder& folder, const std::string& name,
                           const std::string& extra_reading) {
  folder.write(name + "/portfolio.csv", "key,value\nas_of_date,2026-06-30\n");
  folder.write(name + "/components.csv", components());
  std::string visits =
      "visit_id,site_id,date,inspector_id,coating_gauge_id,wall_gauge_id,wrench_id,foil_true_um,"
      "foil_read_um\n";
  for (int visit = 0; visit < 5; ++visit) {
    visits += "v" + std::to_string(visit + 1) + ",s1," + day_of(visit) + ",i1,g1,,t1,50,50.4\n";
  }
  folder.write(name + "/visits.csv", visits);
  folder.write(name + "/readings.csv", readings(extra_reading));
  folder.write(name + "/interventions.csv", retorques());
}

}  // namespace kneerail::test
