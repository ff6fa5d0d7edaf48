#include "tests/benchmark/section.h"

#include <malloc.h>

#include <algorithm>
#include <fstream>
#include <iostream>

#include "core/base/text.h"

namespace kneerail::benchmark {

double share_below(std::vector<double>& values, double share) {
  std::ranges::sort(values);
  const auto place = static_cast<std::size_t>(share * static_cast<double>(values.size()));
  return values.at(std::min(place, values.size() - 1));
}

void print(const Figure& figure) {
  const auto shown = [](double value) {
    return fixed(value, value < 10 ? 3 : value < 1000 ? 1 : 0);
  };
  const double ratio = figure.ours / figure.peer;
  std::cout << "  " << figure.what << ": " << shown(figure.ours) << " " << figure.unit << "; "
            << figure.peer_name << ": " << shown(figure.peer) << " " << figure.unit << "; ratio "
            << fixed(ratio, ratio < 0.1 ? 4 : 2) << std::endl;
}

double heap_bytes() {
  const auto heap = ::mallinfo2();
  return static_cast<double>(heap.uordblks + heap.hblkhd);
}

double memory_peak_mb(const std::string& process) {
  std::ifstream status("/proc/" + process + "/status");
  std::string line;
  while (std::getline(status, line)) {
    if (!line.starts_with("VmHWM:")) continue;
    const auto text = trimmed(std::string_view(line).substr(6));
    const auto kb = double_from_text(trimmed(text.substr(0, text.find(' '))));
    return kb.value_or(0) / 1024;
  }
  return 0;
}

}  // namespace kneerail::benchmark
