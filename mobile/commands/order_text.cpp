#include <algorithm>
#include <map>

#include "core/base/text.h"
#include "core/forecast/decisions/mean_words.h"
#include "core/forecast/words.h"
#include "mobile/commands/forecast_output.h"
#include "mobile/commands/order_output.h"
#include "mobile/commands/text_layout.h"

namespace kneerail::commands {

namespace {

using forecast::OrderLine;
using forecast::ReplacedCount;

constexpr double next_to_none = 0.1;

/// In lists of many: the owner's name alone.
std::string short_name(const DecisionInput& input, const std::string& type) {
  const auto found = input.figures.types.find(type);
  return found == input.figures.types.end() || found->second.name.empty() ? input.type_words(type)
                                                                          : found->second.name;
}

/// "12.4 (80 %: 8 to 17)".
std::string count_words(const ReplacedCount& count) {
  const std::string expected = count.expected < next_to_none ? std::string("under 0.1")
                                                             : forecast::mean_words(count.expected);
  return expected + " (80 %: " + range_words(count.p10, count.p90) + ")";
}

/// "; 2 are to be replaced now, 1 of them seen at the grade to replace at; besides, about 3 may be
/// past already, unseen".
std::string past_words(int past, int seen, double may_be_past) {
  std::string words;
  if (past > 0)
    words = "; " + std::to_string(past) + (past == 1 ? " is" : " are") + " to be replaced now";
  if (seen > 0) words += ", " + std::to_string(seen) + " of them seen at the grade to replace at";
  if (may_be_past >= next_to_none)
    words +=
        "; besides, about " + forecast::mean_words(may_be_past) + " may be past already, unseen";
  return words;
}

/// What the lines rest on where nobody looked.
void print_not_read(const DecisionInput& input, std::ostream& out) {
  if (!input.graded) print_wrapped("Nobody graded a part: grades replace nothing here.", "", out);
  if (!input.walls_read)
    print_wrapped("Nobody read a wall: walls go by their zinc and their zone.", "", out);
}

/// What of the list rests on less than the rest does, or is not in it.
void print_order_limits(const DecisionInput& input, const forecast::OrderList& list,
                        const std::string& without_answer, std::ostream& out) {
  if (list.may_be_past >= next_to_none)
    print_wrapped("What may be past already, unseen, is in no year: look at those parts.", "", out);
  if (list.not_answered > 0)
    print_wrapped(counted(list.not_answered, "part has", "parts have") +
                      " neither a wall nor a grade that can be reckoned, and no place here: " +
                      without_answer + ".",
                  "", out);
  for (const auto& [why, tubes] : list.by_grade_alone)
    print_wrapped(
        counted(tubes, "tube counts", "tubes count") + " by the grade alone (" + why + ").", "",
        out);
  if (list.bare > 0)
    print_wrapped(counted(list.bare, "tube of bare steel counts", "tubes of bare steel count") +
                      " together by zone, as wide as steel differs from its class: a wall "
                      "read on one of them does not narrow the others' band.",
                  "", out);
  print_not_read(input, out);
}

void print_years(const DecisionInput& input, const std::vector<ReplacedCount>& years,
                 std::ostream& out) {
  std::string words;
  for (std::size_t y = 0; y < years.size(); ++y) {
    const Civil from = civil(input.read.portfolio.as_of);
    const int year = from.year + static_cast<int>(y);
    const bool whole_year = from.month == 1 && from.day == 1;
    words += (y == 0 ? "" : ", ") + std::to_string(year) +
             (whole_year ? "" : "-" + std::to_string((year + 1) % 100)) + " " +
             count_words(years[y]);
  }
  print_wrapped(words + ".", "     ", out);
}

std::string where_words(const DecisionInput& input) {
  if (!input.read.site.empty()) return input.site_name(input.read.site);
  return counted(static_cast<std::int64_t>(input.read.places.sites.size()), "site", "sites");
}

void print_rank(std::size_t rank, const std::string& words, std::ostream& out) {
  const std::string number = std::to_string(rank) + ".";
  out << std::string(number.size() < 4 ? 4 - number.size() : 0, ' ') << number << " " << words
      << "\n";
}

}  // namespace

void print_order(const OrderView& view, std::ostream& out) {
  const auto& list = view.list;
  const int years = static_cast<int>(list.years.size());
  out << "Order list as of " << to_text(view.input.read.portfolio.as_of) << ": "
      << where_words(view.input) << ", " << counted(list.parts, "part", "parts") << ", "
      << counted(years, "year", "years") << ".\n";
  print_wrapped(
      "Expected replacements by the wall's limit or the grade to replace at, whichever is "
      "likelier; in brackets the band that holds them 8 times of 10. Parts of a zone go together, "
      "so it is wider than of parts by themselves.",
      "", out);
  out << "\n";
  std::size_t rank = 0;
  std::string others;
  std::string without_answer;
  for (const OrderLine& line : list.lines) {
    const std::string name = line.type.empty() ? kind_words_of(view.input, line.example)
                                               : view.input.type_words(line.type);
    const std::string short_one = line.type.empty() ? name : short_name(view.input, line.type);
    if (line.not_answered > 0)
      without_answer += (without_answer.empty() ? "" : "; ") + short_one + " " +
                        std::to_string(line.not_answered);
    if (line.parts == 0) continue;
    if (line.all.expected < next_to_none && line.may_be_past < next_to_none) {
      others += (others.empty() ? "" : "; ") + short_one;
      continue;
    }
    print_rank(++rank, name + ", " + counted(line.parts, "part", "parts"), out);
    const bool by_year = line.all.expected >= 1;
    print_wrapped("In all " + count_words(line.all) +
                      past_words(line.past, line.seen_past, line.may_be_past) +
                      (by_year ? ". By year:" : "."),
                  "     ", out);
    if (by_year) print_years(view.input, line.years, out);
  }
  if (!others.empty()) print_wrapped("Under 0.1 of each of these: " + others + ".", "  ", out);
  out << (list.lines.empty() ? "" : "\n");
  print_wrapped("All types together: " + count_words(list.all) +
                    past_words(list.past, 0, list.may_be_past) + ".",
                "", out);
  print_order_limits(view.input, list, without_answer, out);
}

namespace {

void print_spare(const DecisionInput& input, const forecast::SpareLine& line, std::ostream& out) {
  std::string head = input.type_words(line.type) + ": ";
  if (!line.hold) {
    print_wrapped(head + line.words + ".", "  ", out);
    return;
  }
  head += "hold " + std::to_string(*line.hold);
  if (line.shelf) head += ", " + std::to_string(*line.shelf) + " on the shelf";
  if (line.on_order > 0) head += ", " + std::to_string(line.on_order) + " on order";
  head += *line.order > 0 ? ", order " + std::to_string(*line.order) : ", order none";
  print_wrapped(head, "  ", out);
  print_wrapped(line.words + ".", "     ", out);
}

/// None to hold, none to replace, and nothing that would have to be said besides.
bool nothing_asked(const forecast::SpareLine& line) {
  return line.hold == 0 && line.past == 0 && line.not_answered == 0 && line.sure_sites == 0 &&
         line.may_be_past < next_to_none;
}

std::string depot_words(const DecisionInput& input, const std::string& depot) {
  const auto name = input.figures.depots.find(depot);
  if (name != input.figures.depots.end()) return name->second;
  return depot.empty() ? "Sites without a depot" : depot;
}

}  // namespace

void print_spares(const SparesView& view, std::ostream& out) {
  out << "Spares to hold as of " << to_text(view.input.read.portfolio.as_of)
      << ", for the owner's chance of having the part on the day\n";
  std::map<std::string, std::vector<const forecast::SpareLine*>> depots;
  int not_counted = 0;
  for (const forecast::SpareLine& line : view.lines) {
    depots[line.depot].push_back(&line);
    not_counted += line.shelf ? 0 : 1;
  }
  for (const auto& [depot, lines] : depots) {
    out << "\n" << depot_words(view.input, depot) << "\n";
    std::string none;
    for (const forecast::SpareLine* line : lines)
      if (nothing_asked(*line))
        none += (none.empty() ? "" : "; ") + short_name(view.input, line->type);
      else
        print_spare(view.input, *line, out);
    if (!none.empty()) print_wrapped("None to hold of these: " + none + ".", "  ", out);
  }
  out << "\n";
  if (view.lines.empty()) out << "No part says of which type it is.\n";
  if (not_counted > 0)
    print_wrapped("Shelves never counted, and taken for empty: " + std::to_string(not_counted) +
                      " of " + std::to_string(view.lines.size()) + ".",
                  "", out);
  print_not_read(view.input, out);
}

namespace {

void print_shares(const forecast::LifeCost& cost, const std::string& currency, std::ostream& out) {
  const auto& mean = cost.mean;
  std::string words;
  const auto add = [&](const char* what, double amount) {
    if (amount > 0)
      words += (words.empty() ? "" : ", ") + std::string(what) + " " + money_words(amount, "");
  };
  add("parts", mean.parts);
  add("labour", mean.labour);
  add("closures", mean.closures);
  add("visits", mean.visits);
  add("strikes", mean.strikes);
  const std::string replaced = cost.parts > 0 && cost.not_answered == cost.parts
                                   ? std::string()
                                   : " About " +
                                         std::to_string(static_cast<int>(cost.replacements + 0.5)) +
                                         " replacements.";
  if (!words.empty())
    print_wrapped(
        "Of it, " + (currency.empty() ? "" : "in " + currency + ": ") + words + "." + replaced,
        "     ", out);
}

std::string cost_words(const forecast::LifeCost& cost, const std::string& currency) {
  if (cost.mean.sum() <= 0) return "no cost that is known";
  const double as_now = cost.mean.visits + cost.mean.strikes;
  const auto amount = [&](double sum) { return money_words(std::max(0.0, sum - as_now), ""); };
  const std::string band = "80 %: " + amount(cost.p10) + " to " + amount(cost.p90);
  const std::string whole = money_words(cost.p50, currency);
  if (as_now <= 0) return whole + " (" + band + ")";
  // The band is of the replacements alone.
  const char* what = cost.mean.strikes <= 0  ? "visits"
                     : cost.mean.visits <= 0 ? "strikes"
                                             : "visits and strikes";
  return whole + " (replacements " + amount(cost.p50) + ", " + band + "; " + what +
         " as often as now)";
}

/// ", sheltered"; empty where nobody said.
std::string exposure_words(forecast::Exposure exposure) {
  switch (exposure) {
    case forecast::Exposure::open:
      return ", open";
    case forecast::Exposure::sheltered:
      return ", sheltered";
    case forecast::Exposure::spray:
      return ", in the spray";
    case forecast::Exposure::unknown:
      break;
  }
  return {};
}

std::string as_now_words(const forecast::LifeCost& cost) {
  if (cost.as_now == 0) return {};
  return "; " + counted(cost.as_now, "part is", "parts are") +
         " as now, having no zinc that is reckoned or no minimum of it";
}

void print_lives(const CostView& view, const SiteCost& site, std::ostream& out) {
  for (const forecast::FinishLife& life : site.lives) {
    const auto zone = view.input.read.places.names.find(life.zone);
    print_wrapped(kind_words_of(view.input, life.example) + " in " +
                      (zone == view.input.read.places.names.end() ? life.zone : zone->second) +
                      exposure_words(life.exposure) + ", " + counted(life.parts, "part", "parts") +
                      ": bare steel " + forecast::life_with_band(life.other.gone) + " with " +
                      fixed(life.other.nominal_um, 0) + " um, " +
                      forecast::life_with_band(life.as_now.gone) + " with the " +
                      fixed(life.as_now.nominal_um, 0) + " um of now.",
                  "     ", out);
  }
}

}  // namespace

void print_costs(const CostView& view, std::ostream& out) {
  const std::string& currency = view.input.figures.currency;
  out << "Whole-life cost as of " << to_text(view.input.read.portfolio.as_of)
      << ", as present value\n";
  for (const SiteCost& site : view.sites) {
    out << "\n"
        << view.input.site_name(site.cost.site) << ", " << counted(site.cost.parts, "part", "parts")
        << "\n";
    print_wrapped("As it stands: " + cost_words(site.cost, currency) + " " + site.cost.words + ".",
                  "  ", out);
    print_shares(site.cost, currency, out);
    if (!site.new_other) continue;
    print_wrapped(
        "All put up new today in the finish of now: " + cost_words(*site.new_as_now, currency) +
            "; in " + view.finish + ": " + cost_words(*site.new_other, currency) +
            ", beside the putting up itself" + as_now_words(*site.new_other) + ".",
        "  ", out);
    print_lives(view, site, out);
  }
  if (!view.input.graded || !view.input.walls_read) out << "\n";
  print_not_read(view.input, out);
  if (!view.finish.empty()) {
    out << "\n";
    print_wrapped(
        "What another finish does to the grades is not known: they go as with the finish "
        "of now. Only walls last longer under thicker zinc.",
        "", out);
  }
}

void print_visits(const VisitsView& view, std::ostream& out) {
  out << "Next visits as of " << to_text(view.input.read.portfolio.as_of) << "\n";
  const auto named = [&](std::string words, std::int32_t part) {
    if (part < 0) return with_names(words, view.input.read.places);
    const std::string& id = view.input.read.portfolio.parts[static_cast<std::size_t>(part)].id;
    if (const auto at = words.find(id); at != std::string::npos)
      words.replace(at, id.size(), place_words(view.input.read.places, id));
    return with_names(words, view.input.read.places);
  };
  for (const forecast::NextVisit& visit : view.visits) {
    out << "\n"
        << view.input.site_name(visit.site) << ": "
        << (visit.day ? to_text(*visit.day) : std::string("no day")) << "\n";
    const std::int32_t part = visit.proposals.empty() ? -1 : visit.proposals.front().part;
    print_wrapped(named(visit.words, part), "  ", out);
    for (std::size_t i = visit.day && visit.agreed == visit.day ? 0 : 1; i < visit.proposals.size();
         ++i) {
      const auto& other = visit.proposals[i];
      print_wrapped(to_text(other.day) + ": " + named(other.words, other.part) + ".", "     ", out);
    }
    for (const std::string& missing : visit.not_said) out << "     (" << missing << ")\n";
  }
}

std::string kind_words_of(const DecisionInput& input, std::int32_t part) {
  std::string words(kind_word(input.read.portfolio.parts[static_cast<std::size_t>(part)].kind));
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

}  // namespace kneerail::commands
