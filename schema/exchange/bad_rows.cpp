#include "schema/exchange/bad_rows.h"

#include <algorithm>
#include <utility>

namespace kneerail::exchange {

std::string to_text(const Bad& bad) {
  std::string text = bad.file + ", line " + std::to_string(bad.line);
  if (!bad.column.empty()) text += ", " + bad.column;
  if (!bad.value.empty()) text += " " + bad.value;
  return text + ": " + bad.reason;
}

void BadRows::add(Bad bad) {
  ++count_;
  if (std::find(files_.begin(), files_.end(), bad.file) == files_.end()) files_.push_back(bad.file);
  if (kept_.size() < kept_max) kept_.push_back(std::move(bad));
}

void BadRows::sort() {
  const auto place = [this](const Bad& bad) {
    return std::pair(std::find(files_.begin(), files_.end(), bad.file), bad.line);
  };
  std::stable_sort(kept_.begin(), kept_.end(),
                   [&](const Bad& a, const Bad& b) { return place(a) < place(b); });
}

}  // namespace kneerail::exchange
