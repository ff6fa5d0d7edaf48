#pragma once

// Work spread over threads, one unit (a site) at a time. Each unit writes its own slot and nobody
// adds across units here, so the result does not depend on the number of threads.

#include <atomic>
#include <thread>
#include <vector>

namespace kneerail::forecast {

/// Calls `work(i)` for i in [0, count), each once; threads 0: as many as the machine has.
template <class Work>
void for_each_unit(int count, int threads, const Work& work) {
  if (threads <= 0) threads = static_cast<int>(std::thread::hardware_concurrency());
  if (threads > count) threads = count;
  if (threads <= 1) {
    for (int i = 0; i < count; ++i) work(i);
    return;
  }
  std::atomic<int> next{0};
  const auto run = [&] {
    for (int i = next++; i < count; i = next++) work(i);
  };
  std::vector<std::jthread> others;
  for (int i = 1; i < threads; ++i) others.emplace_back(run);
  run();
}

}  // namespace kneerail::forecast
