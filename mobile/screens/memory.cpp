#include "mobile/screens/memory.h"

#include <cstdlib>

#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace kneerail {

void give_memory_back() {
#ifdef __GLIBC__
  constexpr int shared_heaps = 2;
  constexpr int own_mapping_bytes = 128 * 1024;  // larger pieces go back as soon as they are freed
  mallopt(M_ARENA_MAX, shared_heaps);
  mallopt(M_MMAP_THRESHOLD, own_mapping_bytes);
  mallopt(M_TRIM_THRESHOLD, own_mapping_bytes);
#endif
}

}  // namespace kneerail
