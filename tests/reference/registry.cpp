#include "tests/reference/registry.h"

#include <algorithm>
#include <cctype>

namespace kneerail::reference {

namespace {

std::string in_small_letters(std::string_view text) {
  std::string small;
  for (const char letter : text) {
    small += static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
  }
  return small;
}

std::size_t number_length(std::string_view text) {
  std::size_t length = 0;
  const auto digits = [&] {
    while (length < text.size() && std::isdigit(static_cast<unsigned char>(text[length]))) ++length;
  };
  digits();
  if (length > 0 && length + 1 < text.size() && text[length] == '.' &&
      std::isdigit(static_cast<unsigned char>(text[length + 1]))) {
    ++length;
    digits();
  }
  return length;
}

}  // namespace

bool fits(std::string_view pattern, std::string_view words, std::vector<std::string>& captured) {
  captured.clear();
  while (!pattern.empty()) {
    if (pattern == "*") {
      captured.emplace_back(words);
      return true;
    }
    if (pattern.front() == '#') {
      const auto length = number_length(words);
      if (length == 0) return false;
      captured.emplace_back(words.substr(0, length));
      words.remove_prefix(length);
    } else {
      if (words.empty() || words.front() != pattern.front()) return false;
      words.remove_prefix(1);
    }
    pattern.remove_prefix(1);
  }
  return words.empty();
}

void Registry::add(std::string_view words, Function function) {
  entries_.push_back({std::string(words), std::move(function)});
}

Answer Registry::answer(std::string_view quantity, Question question) const {
  const std::string small = in_small_letters(quantity);
  Answer last = Unknown{"this quantity is not known"};
  for (const auto& entry : entries_) {
    if (!fits(entry.words, small, question.captured)) continue;
    last = entry.function(question);
    if (!std::holds_alternative<Unknown>(last)) return last;
  }
  return last;
}

std::vector<std::string> Registry::names() const {
  std::vector<std::string> names;
  for (const auto& entry : entries_) names.push_back(entry.words);
  std::ranges::sort(names);
  return names;
}

Registry everything() {
  Registry registry;
  add_corrosion(registry);
  add_structure(registry);
  add_statistics(registry);
  add_models(registry);
  add_chains(registry);
  add_records(registry);
  return registry;
}

}  // namespace kneerail::reference
