// Chains of states seen now and then: intensities, likelihood and chances of a fitted data set.

#include <algorithm>
#include <cmath>

#include "core/forecast/grade/grade_chain.h"
#include "core/statistics/panel_chain.h"
#include "tests/reference/registry.h"
#include "tests/reference/table.h"

namespace kneerail::reference {

namespace {

using namespace statistics;

/// Where a number stands in a matrix; from 1.
struct Entry {
  int from = 0;
  int to = 0;
};

/// The inputs "from" and "to"; where they are not given, the two digits a row's id ends with, as in
/// "q12".
std::optional<Entry> entry_of(const Question& question) {
  const auto from = question.inputs.number("from");
  const auto to = question.inputs.number("to");
  if (from && to) return Entry{static_cast<int>(*from), static_cast<int>(*to)};
  const std::string& id = question.id;
  if (id.size() < 2) return std::nullopt;
  const auto digit = [&](std::size_t back) { return id[id.size() - back]; };
  for (const std::size_t back : {std::size_t{1}, std::size_t{2}})
    if (digit(back) < '1' || digit(back) > '9') return std::nullopt;
  return Entry{digit(2) - '0', digit(1) - '0'};
}

std::optional<std::size_t> first_column(const Table& table,
                                        std::initializer_list<std::string_view> names) {
  for (const std::string_view name : names)
    if (const auto place = table.column(name)) return place;
  return std::nullopt;
}

/// Which steps there can be. "states 1-2-3-4 progressive": each to the next; "death time exact":
/// each to its neighbours and to the last. Without either note the data tell: where nobody ever
/// goes back, each to the next.
std::vector<ChainStep> steps_of(const Question& question, const PanelData& data) {
  const bool back =
      std::ranges::any_of(data.pairs, [](const PanelPair& pair) { return pair.to < pair.from; });
  const bool death = question.inputs.note("death time exact") || back;
  std::vector<ChainStep> steps;
  for (int state = 1; state < data.states; ++state) {
    if (death && state > 1) steps.push_back({state, state - 1});
    steps.push_back({state, state + 1});
    if (death && state + 1 < data.states) steps.push_back({state, data.states});
  }
  return steps;
}

/// Columns subject, time and state, rows of a subject together and in order of time.
Result<PanelData> panel_of(const Question& question) {
  const auto name = question.inputs.text("dataset");
  if (!name) return fail(Fault::invalid_input, "needs the input dataset");
  const auto table = read_table(question.data / (*name + ".csv"));
  if (!table) return fail(table.error());
  const auto subject = first_column(*table, {"PTNUM", "ptnum", "subject"});
  const auto time = first_column(*table, {"years", "months", "time"});
  const auto state = first_column(*table, {"state"});
  if (!subject || !time || !state)
    return fail(Fault::invalid_input, "the data lack a subject, a time or a state");
  const auto subjects = table->texts(*subject);
  const auto times = table->numbers(*time);
  const auto states = table->numbers(*state);
  if (!times || !states) return fail(Fault::invalid_input, "a time or a state is no number");
  PanelData data;
  if (!states->empty()) data.states = static_cast<int>(std::ranges::max(*states));
  const bool exact = question.inputs.note("death time exact");
  int number = 0;
  for (std::size_t i = 1; i < subjects.size(); ++i) {
    if (subjects[i] != subjects[i - 1]) {
      ++number;
      continue;
    }
    const int to = static_cast<int>((*states)[i]);
    data.pairs.push_back(
        {number, static_cast<int>((*states)[i - 1]), to, (*times)[i] - (*times)[i - 1],
         exact && to == data.states ? Arrival::exactly_then : Arrival::some_time_before});
  }
  data.steps = steps_of(question, data);
  return data;
}

/// A part of the fitted chain.
template <class Part>
Function of_chain(Part part) {
  return [part](const Question& question) -> Answer {
    const auto data = panel_of(question);
    if (!data) return Unknown{data.error().message};
    const auto fit = fit_panel_chain(*data);
    if (!fit) return Unknown{fit.error().message};
    return part(*data, *fit, question);
  };
}

Answer intensity(const PanelData& data, const PanelFit& fit, const Question& question) {
  const auto entry = entry_of(question);
  if (!entry) return Unknown{"needs the inputs from and to"};
  for (std::size_t m = 0; m < data.steps.size(); ++m)
    if (data.steps[m].from == entry->from && data.steps[m].to == entry->to) return fit.rates[m];
  return Unknown{"the chain has no such step"};
}

Answer chance(const PanelData& data, const PanelFit& fit, const Question& question) {
  const auto entry = entry_of(question);
  const auto time = question.captured_number(0);
  if (!entry || !time) return Unknown{"needs the inputs from and to"};
  if (*time < 0 || entry->from < 1 || entry->to < 1 ||
      std::max(entry->from, entry->to) > data.states)
    return Unknown{"the chain has no such state"};
  const auto P = panel_chances(data.states, data.steps, fit.rates, *time);
  return P[static_cast<std::size_t>((entry->from - 1) * data.states + entry->to - 1)];
}

/// Looks of each subject at a hidden grade, new at time 0; nobody replaced without a record.
forecast::GradeData looks_of(const PanelData& data) {
  forecast::GradeData grades;
  grades.inspectors = {""};
  const PanelPair* before = nullptr;
  double age = 0;
  for (const PanelPair& pair : data.pairs) {
    const bool next = before == nullptr || before->subject != pair.subject;
    age = (next ? 0 : age) + pair.years;
    before = &pair;
    if (next) {
      forecast::GradeSegment& segment = grades.segments.emplace_back();
      segment.first = static_cast<std::int32_t>(grades.looks.size());
      segment.ln_ages = {std::log(age)};
    }
    ++grades.segments.back().count;
    grades.looks.push_back({.day = {},
                            .inspector = 0,
                            .seen = static_cast<std::int8_t>(pair.to),
                            .fresh = true,
                            .ln_years = std::log(pair.years),
                            .unbroken = 1});
  }
  return grades;
}

/// -2 ln likelihood of grades seen with errors, at given rates and errors.
Answer hidden_criterion(const Question& question) {
  Needed need(question.inputs);
  const auto rates = need.numbers("q");
  const forecast::GradeErrors errors{need.number("up"), need.number("down")};
  need.demand(rates.size() == 4 && std::ranges::min(rates) > 0, "needs four rates above 0");
  if (!need.complete()) return need.unknown();
  const auto data = panel_of(question);
  if (!data) return Unknown{data.error().message};
  const forecast::GradeData grades = looks_of(*data);
  const forecast::ChainTable table({rates[0], rates[1], rates[2], rates[3]});
  const forecast::GradeEmissions emissions(std::span(&errors, 1));
  const forecast::GradeChain chain(grades, table, emissions);
  double criterion = 0;
  for (const auto& segment : grades.segments)
    criterion -= 2 * chain.forward(segment, 0).ln_likelihood;
  return criterion;
}

}  // namespace

void add_chains(Registry& registry) {
  registry.add("-2 log-likelihood of grades seen with errors", hidden_criterion);
  registry.add("transition intensity", of_chain(intensity));
  registry.add("progressive-chain intensity", of_chain(intensity));
  registry.add("-2 log-likelihood",
               of_chain([](const PanelData&, const PanelFit& fit, const Question&) -> Answer {
                 return fit.minus_two_ln_likelihood;
               }));
  registry.add("transition probability over # yr", of_chain(chance));
  registry.add("transition probability over # time units", of_chain(chance));
}

}  // namespace kneerail::reference
