#pragma once

// One row of a file of checks, taken apart: which quantity, from which inputs, by which data. The
// answer is computed from these alone; no row is known by its id, whose end may at most name an
// entry of a matrix, as in "q12", where the inputs do not.

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/base/result.h"
#include "tests/reference/table.h"

namespace kneerail::reference {

/// "T_C=15;RH_pct=70;REML": keys with values, and notes that have no "=".
class Inputs {
 public:
  explicit Inputs(std::string_view text);
  [[nodiscard]] std::optional<std::string> text(std::string_view key) const;
  /// A number, or a ratio of two such as "1/1.5".
  [[nodiscard]] std::optional<double> number(std::string_view key) const;
  /// Numbers with commas between.
  [[nodiscard]] std::optional<std::vector<double>> numbers(std::string_view key) const;
  [[nodiscard]] bool note(std::string_view words) const;

 private:
  std::vector<std::pair<std::string, std::string>> pairs_;
  std::vector<std::string> notes_;
};

struct Unknown {
  std::string why;
};
using Answer = std::variant<double, std::string, Unknown>;

struct Question {
  Inputs inputs;
  std::string unit;
  std::filesystem::path data;
  std::vector<std::string> captured;  ///< what the quantity's "#" and "*" stand for, in order
  std::string id = {};

  /// A number captured from the quantity's words.
  [[nodiscard]] std::optional<double> captured_number(std::size_t place) const;
};

/// Collects numbers by name; says afterwards what was missing or cannot be.
class Needed {
 public:
  explicit Needed(const Inputs& inputs) : inputs_(inputs) {}
  double number(std::string_view key);
  std::vector<double> numbers(std::string_view key);
  /// A probability: a number between 0 and 1, neither of them itself.
  double probability(std::string_view key);
  /// What must hold of the numbers; `otherwise` says why there is no answer.
  void demand(bool holds, std::string_view otherwise);
  [[nodiscard]] bool complete() const { return why_not_.empty(); }
  [[nodiscard]] Unknown unknown() const { return {why_not_}; }

 private:
  const Inputs& inputs_;
  std::string why_not_;  ///< the first thing that was amiss
};

}  // namespace kneerail::reference
