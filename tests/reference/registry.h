#pragma once

// Which words of a file of checks name which function of the program.

#include <string>
#include <string_view>
#include <vector>

#include "tests/reference/question.h"

namespace kneerail::reference {

using Function = std::function<Answer(const Question&)>;

class Registry {
 public:
  /// `words` is the quantity as it stands in the file, in small letters; "#" stands for a number
  /// and a "*" at the end for anything. Several functions may go by one name: the first whose
  /// answer is not Unknown holds.
  void add(std::string_view words, Function function);

  /// Unknown when the quantity is not known or its inputs do not suffice, with the reason.
  [[nodiscard]] Answer answer(std::string_view quantity, Question question) const;
  [[nodiscard]] std::vector<std::string> names() const;

 private:
  struct Entry {
    std::string words;
    Function function;
  };
  std::vector<Entry> entries_;
};

/// Whether words fit a pattern; what "#" and "*" stand for goes to `captured`.
bool fits(std::string_view pattern, std::string_view words, std::vector<std::string>& captured);

void add_corrosion(Registry& registry);
void add_structure(Registry& registry);
void add_statistics(Registry& registry);
void add_models(Registry& registry);
void add_chains(Registry& registry);
void add_records(Registry& registry);
Registry everything();

}  // namespace kneerail::reference
