#include "core/base/result.h"

#include <cstdio>
#include <cstdlib>

namespace kneerail {

void check(bool condition, const char* what) {
  if (condition) [[likely]]
    return;
  std::fprintf(
      stderr,
      "kneerail: internal fault: %s. Everything saved is on disk; start the program again.\n",
      what);
  std::abort();
}

}  // namespace kneerail
