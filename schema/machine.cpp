#include "schema/machine.h"

#include <ctime>

#include "core/base/result.h"

namespace kneerail {
namespace {

std::int64_t read_ms(clockid_t which) {
  timespec found{};
  check(clock_gettime(which, &found) == 0, "the machine has a clock");
  return std::int64_t{found.tv_sec} * 1000 + found.tv_nsec / 1'000'000;
}

}  // namespace

Instant MachineClock::now() {
  return {read_ms(CLOCK_REALTIME)};
}

std::int64_t MachineClock::monotonic_ms() {
  return read_ms(CLOCK_BOOTTIME);
}

}  // namespace kneerail
