#pragma once

// Order lists, spares, life costs and next visits as a person reads them and as a program does.

#include <optional>
#include <ostream>
#include <string>
#include <string_view>
#include <vector>

#include "core/forecast/decisions/life_cost.h"
#include "core/forecast/decisions/next_visit.h"
#include "core/forecast/decisions/order_list.h"
#include "core/forecast/decisions/spares.h"
#include "core/forecast/decisions/what_if.h"
#include "mobile/commands/decision_input.h"

namespace kneerail::commands {

/// "post tube", of a part by its place in the portfolio.
std::string kind_words_of(const DecisionInput& input, std::int32_t part);
/// The code of a kind in files: "post_tube".
std::string_view kind_word(forecast::PartKind kind);
/// The first day of a year counted from the as-of date.
std::string year_start(const DecisionInput& input, std::size_t year);

struct OrderView {
  const DecisionInput& input;
  const forecast::OrderList& list;
};
void print_order(const OrderView& view, std::ostream& out);
void print_order_csv(const OrderView& view, std::ostream& out);
void print_order_json(const OrderView& view, std::ostream& out);

struct SparesView {
  const DecisionInput& input;
  const std::vector<forecast::SpareLine>& lines;
};
void print_spares(const SparesView& view, std::ostream& out);
void print_spares_csv(const SparesView& view, std::ostream& out);
void print_spares_json(const SparesView& view, std::ostream& out);

/// A site's cost; with another finish also both put up new, and how long its parts would last.
struct SiteCost {
  forecast::LifeCost cost;
  std::optional<forecast::LifeCost> new_as_now;
  std::optional<forecast::LifeCost> new_other;
  std::vector<forecast::FinishLife> lives;
};
struct CostView {
  const DecisionInput& input;
  const std::vector<SiteCost>& sites;
  std::string finish;  ///< as it was asked for; empty: none
};
void print_costs(const CostView& view, std::ostream& out);
void print_costs_csv(const CostView& view, std::ostream& out);
void print_costs_json(const CostView& view, std::ostream& out);

struct VisitsView {
  const DecisionInput& input;
  const std::vector<forecast::NextVisit>& visits;
};
void print_visits(const VisitsView& view, std::ostream& out);
void print_visits_csv(const VisitsView& view, std::ostream& out);
void print_visits_json(const VisitsView& view, std::ostream& out);

}  // namespace kneerail::commands
