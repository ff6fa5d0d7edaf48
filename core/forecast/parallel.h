#pragma once

// Work spread over threads, one unit (a site) at a time. Each unit writes its own slot and nobody
// adds across units here, so the result does not depend on the number of threads.

#include <atomic>
#include <thread>
#include <vector>

namespace kneerail::forecast {

/// Who does the work, and whether somebody no longer waits for it.
struct Workers {
  int threads = 0;                          ///< 0: as many as the machine has
  const std::atomic<bool>* stop = nullptr;  ///< true: leave off; looked at before each unit

  [[nodiscard]] bool stopped() const {
    return stop != nullptr && stop->load(std::memory_order_relaxed);
  }
};

/// Calls `work(i)` for i in [0, count), each once; some not at all once the workers are stopped.
template <class Work>
void for_each_unit(int count, const Workers& workers, const Work& work) {
  int threads = workers.threads;
  if (threads <= 0) threads = static_cast<int>(std::thread::hardware_concurrency());
  if (threads > count) threads = count;
  if (threads <= 1) {
    for (int i = 0; i < count && !workers.stopped(); ++i) work(i);
    return;
  }
  std::atomic<int> next{0};
  const auto run = [&] {
    for (int i = next++; i < count && !workers.stopped(); i = next++) work(i);
  };
  std::vector<std::jthread> others;
  for (int i = 1; i < threads; ++i) others.emplace_back(run);
  run();
}

}  // namespace kneerail::forecast
