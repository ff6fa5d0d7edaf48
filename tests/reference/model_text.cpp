#include "tests/reference/model_text.h"

#include <algorithm>
#include <map>

#include "core/base/text.h"

namespace kneerail::reference {

namespace {

std::vector<std::string> terms(std::string_view text) {
  std::vector<std::string> found;
  std::string term;
  int depth = 0;
  for (const char letter : text) {
    if (letter == '(') ++depth;
    if (letter == ')') --depth;
    if (letter == '+' && depth == 0) {
      found.push_back(std::string(trimmed(term)));
      term.clear();
    } else {
      term += letter;
    }
  }
  found.push_back(std::string(trimmed(term)));
  return found;
}

std::vector<std::string> without_constant(std::vector<std::string> names) {
  std::erase(names, "1");
  return names;
}

Result<std::vector<double>> numbers_of(const Table& table, const std::string& name) {
  const auto column = table.column(name);
  if (!column) return fail(Fault::not_found, "the data have no column " + name);
  auto values = table.numbers(*column);
  if (!values)
    return fail(Fault::invalid_input, "column " + name + " holds something else than numbers");
  return std::move(*values);
}

Result<statistics::Design> design_of(const Table& table, const std::vector<std::string>& names) {
  if (names.empty()) {
    return statistics::Design{.rows = table.rows.size(),
                              .columns = 1,
                              .values = std::vector<double>(table.rows.size(), 1)};
  }
  std::vector<std::vector<double>> columns;
  for (const auto& name : names) {
    auto values = numbers_of(table, name);
    if (!values) return fail(values.error());
    columns.push_back(std::move(*values));
  }
  return statistics::with_constant(columns);
}

}  // namespace

Result<ModelText> model_from_text(std::string_view words) {
  const auto tilde = words.find('~');
  if (tilde == std::string_view::npos) return fail(Fault::invalid_input, "a model without ~");
  ModelText model;
  model.response = trimmed(words.substr(0, tilde));
  for (auto& term : terms(words.substr(tilde + 1))) {
    if (!term.starts_with('(')) {
      model.fixed.push_back(std::move(term));
      continue;
    }
    const auto bar = term.find('|');
    if (bar == std::string::npos || !term.ends_with(')') || !model.group.empty()) {
      return fail(Fault::invalid_input, "a model with groups that cannot be read");
    }
    model.random = without_constant(terms(std::string_view(term).substr(1, bar - 1)));
    model.group = trimmed(std::string_view(term).substr(bar + 1, term.size() - bar - 2));
  }
  model.fixed = without_constant(std::move(model.fixed));
  return model;
}

Result<Asked> asked_model(const Question& question) {
  const auto name = question.inputs.text("dataset");
  if (!name || name->find_first_of("/\\.") != std::string::npos) {
    return fail(Fault::invalid_input, "needs the input dataset");
  }
  auto table = read_table(question.data / (*name + ".csv"));
  if (!table) return fail(table.error());
  if (const auto words = question.inputs.text("model")) {
    auto model = model_from_text(*words);
    if (!model) return fail(model.error());
    return Asked{std::move(*table), std::move(*model)};
  }
  const auto& header = table->header;
  ModelText model{.response = header[0],
                  .fixed = {header.begin() + 1, header.end()},
                  .random = {},
                  .group = {}};
  if (header.size() == 3) {
    model.fixed = model.random = {header[1]};
    model.group = header[2];
  }
  return Asked{std::move(*table), std::move(model)};
}

Result<statistics::LeastSquares> least_squares_of(const Asked& asked) {
  if (!asked.model.group.empty()) {
    return fail(Fault::invalid_input, "least squares have no groups");
  }
  const auto y = numbers_of(asked.table, asked.model.response);
  if (!y) return fail(y.error());
  const auto design = design_of(asked.table, asked.model.fixed);
  if (!design) return fail(design.error());
  return statistics::least_squares(*design, *y);
}

Result<GroupedFit> mixed_fit_of(const Asked& asked, statistics::Criterion criterion) {
  const auto column = asked.table.column(asked.model.group);
  if (!column) return fail(Fault::not_found, "the data have no column of groups");
  auto y = numbers_of(asked.table, asked.model.response);
  if (!y) return fail(y.error());
  auto fixed = design_of(asked.table, asked.model.fixed);
  if (!fixed) return fail(fixed.error());
  auto random = design_of(asked.table, asked.model.random);
  if (!random) return fail(random.error());

  GroupedFit result;
  statistics::MixedData data{.y = std::move(*y),
                             .fixed = std::move(fixed->values),
                             .random = std::move(random->values),
                             .group = {},
                             .groups = 0};
  std::map<std::string, int> places;
  for (const auto& name : asked.table.texts(*column)) {
    const auto [place, is_new] = places.try_emplace(name, static_cast<int>(places.size()));
    if (is_new) result.group_names.push_back(name);
    data.group.push_back(place->second);
  }
  data.groups = static_cast<int>(places.size());
  auto fit = statistics::fit_mixed_model(data, criterion);
  if (!fit) return fail(fit.error());
  result.fit = std::move(*fit);
  return result;
}

}  // namespace kneerail::reference
