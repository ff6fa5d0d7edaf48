#pragma once

// A register of one site with a hundred components on posts, and readings of them without end.

#include <memory>
#include <vector>

#include "schema/store/register.h"

namespace kneerail::benchmark {

class SmallRegister {
 public:
  static Result<SmallRegister> make(const std::filesystem::path& folder);
  Register& store() { return *register_; }
  /// The next coating reading, three replicates.
  Entry next_reading();

 private:
  std::unique_ptr<Register> register_;
  Uuid site_;
  Uuid person_;
  Uuid gauge_;
  Uuid visit_;
  std::vector<Uuid> components_;
  std::int64_t made_ = 0;
};

}  // namespace kneerail::benchmark
