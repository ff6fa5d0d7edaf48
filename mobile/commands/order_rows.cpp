#include <cmath>

#include "core/base/text.h"
#include "mobile/commands/order_output.h"
#include "schema/exchange/csv.h"
#include "schema/exchange/portfolio_rows.h"

#include <nlohmann/json.hpp>

namespace kneerail::commands {

namespace {

using nlohmann::json;

constexpr int count_decimals = 4;
constexpr int money_decimals = 2;

std::string number_or_none(std::optional<int> value) {
  return value ? std::to_string(*value) : std::string();
}

/// What a type is called in the first columns of a row.
struct TypeNames {
  std::string name;
  std::string kind_and_size;
};

TypeNames names_of(const DecisionInput& input, const std::string& type) {
  const auto found = input.figures.types.find(type);
  if (found == input.figures.types.end()) return {};
  return {found->second.name, found->second.kind_and_size};
}

json json_of(const forecast::ReplacedCount& count) {
  return {{"expected", count.expected}, {"p10", count.p10}, {"p50", count.p50}, {"p90", count.p90}};
}

json years_json(const DecisionInput& input, const std::vector<forecast::ReplacedCount>& years) {
  json rows = json::array();
  for (std::size_t y = 0; y < years.size(); ++y) {
    json row = json_of(years[y]);
    row["from"] = year_start(input, y);
    row["to"] = year_start(input, y + 1);
    rows.push_back(std::move(row));
  }
  return rows;
}

json head_of(const DecisionInput& input) {
  return {{"as_of", to_text(input.read.portfolio.as_of)}, {"currency", input.figures.currency}};
}

json json_of(const forecast::LifeCost& cost) {
  return {{"years", cost.years},
          {"parts", cost.parts},
          {"not_answered", cost.not_answered},
          {"may_be_past", cost.may_be_past},
          {"parts_as_now", cost.as_now},
          {"replacements", cost.replacements},
          {"p10", cost.p10},
          {"p50", cost.p50},
          {"p90", cost.p90},
          {"mean",
           {{"parts", cost.mean.parts},
            {"labour", cost.mean.labour},
            {"closures", cost.mean.closures},
            {"visits", cost.mean.visits},
            {"strikes", cost.mean.strikes}}},
          {"without", cost.without},
          {"words", cost.words}};
}

/// JSON has no infinity: the unbounded is the text "inf".
json quantiles_json(const std::array<double, 7>& years) {
  json values = json::array();
  for (const double value : years)
    values.push_back(std::isfinite(value) ? json(value) : json("inf"));
  return values;
}

json json_of(const forecast::CoatingLife& life) {
  json made{{"nominal_um", life.nominal_um}, {"gone_years", quantiles_json(life.gone)}};
  if (life.first_maintenance)
    made["first_maintenance_years"] = quantiles_json(*life.first_maintenance);
  return made;
}

const char* exposure_word(forecast::Exposure exposure) {
  switch (exposure) {
    case forecast::Exposure::open:
      return "open";
    case forecast::Exposure::sheltered:
      return "sheltered";
    case forecast::Exposure::spray:
      return "spray";
    case forecast::Exposure::unknown:
      break;
  }
  return "";
}

const char* reason_word(forecast::VisitReason why) {
  switch (why) {
    case forecast::VisitReason::longest_interval:
      return "longest_interval";
    case forecast::VisitReason::event:
      return "event";
    case forecast::VisitReason::due_part:
      return "due_part";
    case forecast::VisitReason::faster_than_class:
      return "faster_than_class";
    case forecast::VisitReason::narrows_a_rate:
      return "narrows_a_rate";
  }
  return "";
}

void cost_row(const CostView& view, const char* what, const forecast::LifeCost& cost,
              csv::Writer& rows) {
  rows.free_text(cost.site).free_text(view.input.site_name(cost.site)).field(what);
  rows.field(std::to_string(cost.years)).field(view.input.figures.currency);
  for (const double amount : {cost.p10, cost.p50, cost.p90, cost.mean.parts, cost.mean.labour,
                              cost.mean.closures, cost.mean.visits, cost.mean.strikes})
    rows.field(fixed(amount, money_decimals));
  rows.field(fixed(cost.replacements, count_decimals));
  rows.field(std::to_string(cost.parts)).field(std::to_string(cost.not_answered));
  rows.field(fixed(cost.may_be_past, count_decimals)).free_text(cost.words).end_row();
}

}  // namespace

std::string_view kind_word(forecast::PartKind kind) {
  return exchange::word_of(exchange::kind_words(), static_cast<int>(kind));
}

std::string year_start(const DecisionInput& input, std::size_t year) {
  return to_text(Date{input.read.portfolio.as_of.days +
                      static_cast<std::int32_t>(static_cast<double>(year) * days_per_year)});
}

void print_order_csv(const OrderView& view, std::ostream& out) {
  csv::Writer rows(out);
  rows.row({"component_type", "name", "kind_and_size", "part_kind", "parts", "past",
            "seen_at_replace_grade", "may_be_past", "by_grade_alone", "not_answered", "from", "to",
            "expected", "p10", "p50", "p90"});
  for (const forecast::OrderLine& line : view.list.lines) {
    const TypeNames names = names_of(view.input, line.type);
    const auto row = [&](const forecast::ReplacedCount& count, std::size_t from, std::size_t to) {
      rows.free_text(line.type).free_text(names.name).free_text(names.kind_and_size);
      rows.field(
          kind_word(view.input.read.portfolio.parts[static_cast<std::size_t>(line.example)].kind));
      rows.field(std::to_string(line.parts)).field(std::to_string(line.past));
      rows.field(std::to_string(line.seen_past)).field(fixed(line.may_be_past, count_decimals));
      rows.field(std::to_string(line.by_grade_alone)).field(std::to_string(line.not_answered));
      rows.field(year_start(view.input, from)).field(year_start(view.input, to));
      if (line.parts == 0) {
        for (int i = 0; i < 4; ++i) rows.field("");
        rows.end_row();
        return;
      }
      rows.field(fixed(count.expected, count_decimals)).field(std::to_string(count.p10));
      rows.field(std::to_string(count.p50)).field(std::to_string(count.p90)).end_row();
    };
    for (std::size_t y = 0; y < line.years.size(); ++y) row(line.years[y], y, y + 1);
    row(line.all, 0, line.years.size());
  }
}

void print_order_json(const OrderView& view, std::ostream& out) {
  json all = head_of(view.input);
  all["parts"] = view.list.parts;
  all["past"] = view.list.past;
  all["not_answered"] = view.list.not_answered;
  all["may_be_past"] = view.list.may_be_past;
  all["by_grade_alone"] = view.list.by_grade_alone;
  all["bare_steel_tubes"] = view.list.bare;
  all["all"] = json_of(view.list.all);
  all["years"] = years_json(view.input, view.list.years);
  all["lines"] = json::array();
  for (const forecast::OrderLine& line : view.list.lines) {
    const TypeNames names = names_of(view.input, line.type);
    all["lines"].push_back({{"component_type", line.type},
                            {"name", names.name},
                            {"kind_and_size", names.kind_and_size},
                            {"parts", line.parts},
                            {"past", line.past},
                            {"seen_at_replace_grade", line.seen_past},
                            {"may_be_past", line.may_be_past},
                            {"by_grade_alone", line.by_grade_alone},
                            {"not_answered", line.not_answered},
                            {"all", json_of(line.all)},
                            {"years", years_json(view.input, line.years)}});
  }
  out << all.dump(1) << "\n";
}

void print_spares_csv(const SparesView& view, std::ostream& out) {
  csv::Writer rows(out);
  rows.row({"depot", "component_type", "name", "kind_and_size", "parts", "past", "may_be_past",
            "by_grade_alone", "not_answered", "expected", "by_strike", "hold", "enough", "on_shelf",
            "shelf_taken_for_empty", "on_order", "order", "words"});
  for (const forecast::SpareLine& line : view.lines) {
    const TypeNames names = names_of(view.input, line.type);
    rows.free_text(line.depot).free_text(line.type).free_text(names.name);
    rows.free_text(names.kind_and_size).field(std::to_string(line.parts));
    const bool reckoned = !line.means.empty();
    rows.field(reckoned ? std::to_string(line.past) : std::string());
    rows.field(reckoned ? fixed(line.may_be_past, count_decimals) : std::string());
    rows.field(reckoned ? std::to_string(line.by_grade_alone) : std::string());
    rows.field(reckoned ? std::to_string(line.not_answered) : std::string());
    rows.field(reckoned ? fixed(line.expected, count_decimals) : std::string());
    rows.field(reckoned ? fixed(line.by_strike, count_decimals) : std::string());
    rows.field(number_or_none(line.hold));
    rows.field(line.hold ? fixed(line.enough, count_decimals) : std::string());
    rows.field(number_or_none(line.shelf)).field(line.shelf ? "" : "1");
    rows.field(std::to_string(line.on_order));
    rows.field(number_or_none(line.order)).free_text(line.words).end_row();
  }
}

void print_spares_json(const SparesView& view, std::ostream& out) {
  json all = head_of(view.input);
  all["spares"] = json::array();
  for (const forecast::SpareLine& line : view.lines) {
    const TypeNames names = names_of(view.input, line.type);
    json row{{"depot", line.depot}, {"component_type", line.type},
             {"name", names.name},  {"kind_and_size", names.kind_and_size},
             {"parts", line.parts}, {"on_order", line.on_order},
             {"words", line.words}};
    if (!line.means.empty()) {
      row["past"] = line.past;
      row["may_be_past"] = line.may_be_past;
      row["by_grade_alone"] = line.by_grade_alone;
      row["not_answered"] = line.not_answered;
      row["expected"] = line.expected;
      row["by_strike"] = line.by_strike;
    }
    if (line.shelf) row["on_shelf"] = *line.shelf;
    if (line.hold) {
      row["hold"] = *line.hold;
      row["enough"] = line.enough;
      row["order"] = *line.order;
    }
    all["spares"].push_back(std::move(row));
  }
  out << all.dump(1) << "\n";
}

void print_costs_csv(const CostView& view, std::ostream& out) {
  csv::Writer rows(out);
  rows.row({"site_id", "site", "what", "years", "currency", "p10", "p50", "p90", "mean_parts",
            "mean_labour", "mean_closures", "mean_visits", "mean_strikes", "replacements", "parts",
            "not_answered", "may_be_past", "words"});
  for (const SiteCost& site : view.sites) {
    cost_row(view, "as_it_stands", site.cost, rows);
    if (site.new_as_now) cost_row(view, "all_new_as_now", *site.new_as_now, rows);
    if (site.new_other) cost_row(view, "all_new_other_finish", *site.new_other, rows);
  }
}

void print_costs_json(const CostView& view, std::ostream& out) {
  json all = head_of(view.input);
  if (!view.finish.empty()) all["finish"] = view.finish;
  all["sites"] = json::array();
  for (const SiteCost& site : view.sites) {
    json row{{"site_id", site.cost.site}, {"as_it_stands", json_of(site.cost)}};
    if (site.new_as_now) row["all_new_as_now"] = json_of(*site.new_as_now);
    if (site.new_other) row["all_new_other_finish"] = json_of(*site.new_other);
    for (const forecast::FinishLife& life : site.lives)
      row["lives"].push_back({{"zone", life.zone},
                              {"kind", kind_word(life.kind)},
                              {"exposure", exposure_word(life.exposure)},
                              {"parts", life.parts},
                              {"as_now", json_of(life.as_now)},
                              {"other", json_of(life.other)}});
    all["sites"].push_back(std::move(row));
  }
  out << all.dump(1) << "\n";
}

void print_visits_csv(const VisitsView& view, std::ostream& out) {
  csv::Writer rows(out);
  rows.row({"site_id", "site", "day", "agreed", "brought_forward", "proposed", "reason", "part",
            "words", "not_said"});
  for (const forecast::NextVisit& visit : view.visits) {
    const auto* first = visit.proposals.empty() ? nullptr : &visit.proposals.front();
    rows.free_text(visit.site).free_text(view.input.site_name(visit.site));
    rows.field(visit.day ? to_text(*visit.day) : std::string());
    rows.field(visit.agreed ? to_text(*visit.agreed) : std::string());
    rows.field(visit.brought_forward ? "1" : "");
    rows.field(first != nullptr ? to_text(first->day) : std::string());
    rows.field(first != nullptr ? reason_word(first->why) : "");
    rows.free_text(first != nullptr && first->part >= 0
                       ? view.input.read.portfolio.parts[static_cast<std::size_t>(first->part)].id
                       : std::string());
    std::string not_said;
    for (const std::string& missing : visit.not_said)
      not_said += (not_said.empty() ? "" : "; ") + missing;
    rows.free_text(visit.words).free_text(not_said).end_row();
  }
}

void print_visits_json(const VisitsView& view, std::ostream& out) {
  json all = head_of(view.input);
  all["visits"] = json::array();
  for (const forecast::NextVisit& visit : view.visits) {
    json row{{"site_id", visit.site},
             {"words", visit.words},
             {"brought_forward", visit.brought_forward},
             {"not_said", visit.not_said},
             {"proposals", json::array()}};
    if (visit.day) row["day"] = to_text(*visit.day);
    if (visit.agreed) row["agreed"] = to_text(*visit.agreed);
    for (const forecast::VisitProposal& proposal : visit.proposals) {
      json one{{"day", to_text(proposal.day)},
               {"reason", reason_word(proposal.why)},
               {"words", proposal.words}};
      if (proposal.part >= 0)
        one["component_id"] =
            view.input.read.portfolio.parts[static_cast<std::size_t>(proposal.part)].id;
      row["proposals"].push_back(std::move(one));
    }
    all["visits"].push_back(std::move(row));
  }
  out << all.dump(1) << "\n";
}

}  // namespace kneerail::commands
