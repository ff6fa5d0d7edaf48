#pragma once

// The sections of the benchmark. Each prints its figures, every one beside a peer that was measured
// in the same run on the same disk, with the ratio. A figure whose peer is not installed says so.

#include <chrono>
#include <cstdint>
#include <ctime>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace kneerail::benchmark {

struct Plan {
  std::filesystem::path folder;     ///< of this run, on the disk to be measured
  std::filesystem::path portfolio;  ///< a folder of portfolio files for `hidden`; empty: invented
  std::uint64_t seed = 1;
  int saves = 2'000;
  int folded = 100'000;
  int imported = 1'000'000;
  int parts = 25'000;
  int peer_parts = 1'000;
  int scale_parts = 100'000;
};

Result<> measure_save(const Plan& plan);
Result<> measure_fold(const Plan& plan);
Result<> measure_import(const Plan& plan);
Result<> measure_forecast(const Plan& plan);
Result<> measure_grades(const Plan& plan);
Result<> measure_hidden(const Plan& plan);
Result<> measure_scale(const Plan& plan);

class Stopwatch {
 public:
  [[nodiscard]] double seconds() const {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start_).count();
  }

 private:
  std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
};

/// Processor time of this process, all threads: what the work costs on a busy machine too.
class ProcessorWatch {
 public:
  [[nodiscard]] double seconds() const {
    return static_cast<double>(std::clock() - start_) / CLOCKS_PER_SEC;
  }

 private:
  std::clock_t start_ = std::clock();
};

/// The value below which a share of the values lies. Sorts them.
double share_below(std::vector<double>& values, double share);

/// "  save, p50: 1.20 ms; bare SQLite insert of the same bytes: 0.80 ms; ratio 1.50"
struct Figure {
  std::string_view what;
  double ours;
  std::string_view peer_name;
  double peer;
  std::string_view unit;
};
void print(const Figure& figure);

/// Memory this process holds of the heap, bytes.
double heap_bytes();

/// Most memory a process ever held, MB (VmHWM), by its number; 0 where the system does not say.
double memory_peak_mb(const std::string& process = "self");

}  // namespace kneerail::benchmark
