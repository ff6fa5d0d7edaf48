#pragma once

// What is wrong in a file that is brought in: which file, line and column, what stands there, why
// it cannot be taken, and what was probably meant.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace kneerail::exchange {

struct Bad {
  std::string file;
  std::int64_t line = 0;
  std::string column;  ///< empty: the row as a whole
  std::string value;
  std::string reason;  ///< one or two sentences, the likely slip last
};

/// "readings.csv, line 118, value 0.072: finer than 0.1 µm, ... Was 72 meant?"
std::string to_text(const Bad& bad);

/// Keeps the first thousand and counts all.
class BadRows {
 public:
  static constexpr std::size_t kept_max = 1000;

  void add(Bad bad);
  /// Ascending by file in order of first mention, then by line.
  void sort();

  [[nodiscard]] const std::vector<Bad>& kept() const { return kept_; }
  [[nodiscard]] std::int64_t count() const { return count_; }
  [[nodiscard]] bool none() const { return count_ == 0; }

 private:
  std::vector<Bad> kept_;
  std::vector<std::string> files_;
  std::int64_t count_ = 0;
};

}  // namespace kneerail::exchange
