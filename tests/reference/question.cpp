#include "tests/reference/question.h"

#include <algorithm>

#include "core/base/text.h"

namespace kneerail::reference {

namespace {

/// Where the part that starts at `from` ends: the next semicolon outside of JSON's quotes and
/// brackets. Only a value that starts like JSON is read so: a plain text may hold a lone quote.
std::size_t part_end(std::string_view text, std::size_t from) {
  const auto value = text.find('=', from);
  const bool json = value != std::string_view::npos && value + 1 < text.size() &&
                    std::string_view("[{\"").find(text[value + 1]) != std::string_view::npos;
  if (!json || value > text.find(';', from)) return std::min(text.find(';', from), text.size());
  int depth = 0;
  bool quoted = false;
  for (std::size_t at = value + 1; at < text.size(); ++at) {
    const char letter = text[at];
    if (quoted && letter == '\\') {
      ++at;
    } else if (letter == '"') {
      quoted = !quoted;
    } else if (!quoted && (letter == '[' || letter == '{')) {
      ++depth;
    } else if (!quoted && (letter == ']' || letter == '}')) {
      --depth;
    } else if (!quoted && depth == 0 && letter == ';') {
      return at;
    }
  }
  return text.size();
}

}  // namespace

Inputs::Inputs(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const auto end = part_end(text, at);
    const auto part = text.substr(at, end - at);
    const auto equals = part.find('=');
    if (equals == std::string_view::npos) {
      notes_.emplace_back(trimmed(part));
    } else {
      pairs_.emplace_back(trimmed(part.substr(0, equals)), part.substr(equals + 1));
    }
    at = end + 1;
  }
}

std::optional<std::string> Inputs::text(std::string_view key) const {
  for (const auto& [name, value] : pairs_) {
    if (name == key) return value;
  }
  return std::nullopt;
}

std::optional<double> Inputs::number(std::string_view key) const {
  const auto value = text(key);
  if (!value) return std::nullopt;
  const auto stroke = value->find('/');
  if (stroke == std::string::npos) return double_from_text(trimmed(*value));
  const auto over = double_from_text(trimmed(std::string_view(*value).substr(0, stroke)));
  const auto under = double_from_text(trimmed(std::string_view(*value).substr(stroke + 1)));
  if (!over || !under || *under == 0) return std::nullopt;
  return *over / *under;
}

std::optional<std::vector<double>> Inputs::numbers(std::string_view key) const {
  const auto value = text(key);
  if (!value) return std::nullopt;
  std::vector<double> list;
  std::string_view rest = *value;
  while (true) {
    const auto comma = std::min(rest.find(','), rest.size());
    const auto number = double_from_text(trimmed(rest.substr(0, comma)));
    if (!number) return std::nullopt;
    list.push_back(*number);
    if (comma == rest.size()) return list;
    rest.remove_prefix(comma + 1);
  }
}

bool Inputs::note(std::string_view words) const {
  return std::ranges::find(notes_, words) != notes_.end();
}

std::optional<double> Question::captured_number(std::size_t place) const {
  if (place >= captured.size()) return std::nullopt;
  return double_from_text(captured[place]);
}

double Needed::number(std::string_view key) {
  const auto value = inputs_.number(key);
  demand(value.has_value(), "needs the input " + std::string(key));
  return value.value_or(0);
}

std::vector<double> Needed::numbers(std::string_view key) {
  const auto value = inputs_.numbers(key);
  demand(value.has_value(), "needs the input " + std::string(key));
  return value.value_or(std::vector<double>{});
}

double Needed::probability(std::string_view key) {
  const double p = number(key);
  demand(p > 0 && p < 1, std::string(key) + " is not a probability");
  return p;
}

void Needed::demand(bool holds, std::string_view otherwise) {
  if (!holds && why_not_.empty()) why_not_ = otherwise;
}

}  // namespace kneerail::reference
