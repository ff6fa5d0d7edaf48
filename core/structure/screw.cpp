#include "core/structure/screw.h"

#include <array>
#include <utility>

namespace kneerail::structure {

double screw_force_kn(const ScrewTorque& screw) {
  return screw.torque_nm / (screw.nut_factor * screw.thread_mm);  // N m / mm = kN
}

double embedding_loss_kn(const Embedding& embedding) {
  return embedding.embedding_um / (embedding.screw_um_per_kn + embedding.part_um_per_kn);
}

std::optional<double> test_torque_45h_nm(std::string_view thread) {
  constexpr std::array<std::pair<std::string_view, double>, 8> table{{{"M5", 5},
                                                                      {"M6", 8.5},
                                                                      {"M8", 20},
                                                                      {"M10", 40},
                                                                      {"M12", 65},
                                                                      {"M16", 160},
                                                                      {"M20", 310},
                                                                      {"M24", 520}}};
  for (const auto& [name, torque_nm] : table) {
    if (name == thread) return torque_nm;
  }
  return std::nullopt;
}

}  // namespace kneerail::structure
