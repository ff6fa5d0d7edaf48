#include "core/forecast/decisions/order_list.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "core/base/text.h"
#include "core/forecast/decisions/part_order.h"

namespace kneerail::forecast {

namespace {

using statistics::PoissonBinomial;

/// The counts of one line or of the whole: for each period a number in each draw.
class Counts {
 public:
  Counts(std::size_t periods, std::size_t draws)
      : periods_(periods), expected_(periods, 0.0), trials_(periods * draws) {}

  void add_past(int count, std::size_t period) {
    expected_[period] += count;
    for (std::size_t i = period; i < trials_.size(); i += periods_) trials_[i].add_sure(count);
  }

  /// `by`: chances at the starts of the periods and at the end of the last.
  void add(const DrawnChances& reached) {
    const std::size_t years = reached.by.size();
    add_to(reached.by.data(), [&](std::size_t p, double chance) { expected_[p] += chance; });
    for (std::size_t d = 0; d * periods_ < trials_.size(); ++d)
      add_to(&reached.drawn[d * years],
             [&](std::size_t p, double chance) { trials_[d * periods_ + p].add(chance); });
  }

  [[nodiscard]] ReplacedCount of(std::size_t period) const {
    std::vector<PoissonBinomial> own;
    for (std::size_t i = period; i < trials_.size(); i += periods_) own.push_back(trials_[i]);
    return {expected_[period], count_quantile(own, 0.1), count_quantile(own, 0.5),
            count_quantile(own, 0.9)};
  }

 private:
  /// Each year's chance of a part that has not reached it now; the last period is all years.
  template <class Add>
  void add_to(const double* by, const Add& add) {
    constexpr double surely_past = 1 - 1e-9;
    const double ahead = 1 - std::min(by[0], surely_past);
    for (std::size_t p = 0; p + 1 < periods_; ++p)
      add(p, std::clamp((by[p + 1] - by[p]) / ahead, 0.0, 1.0));
    add(periods_ - 1, std::clamp((by[periods_ - 1] - by[0]) / ahead, 0.0, 1.0));
  }

  std::size_t periods_;
  std::vector<double> expected_;
  std::vector<PoissonBinomial> trials_;  ///< a row of periods for each draw
};

struct Line {
  OrderLine made;
  Counts counts;
};

class OrderCounter {
 public:
  OrderCounter(const Replacements& replacements, const OrderQuestion& question)
      : replacements_(replacements),
        question_(question),
        periods_(static_cast<std::size_t>(question.years) + 1),
        whole_(periods_, static_cast<std::size_t>(replacements.draws())) {
    for (std::size_t y = 0; y < periods_; ++y) years_.push_back(static_cast<double>(y));
  }

  Result<OrderList> run() {
    constexpr std::size_t block = 256;
    const auto order = parts_in_order(replacements_.portfolio(), question_.site);
    std::vector<PartReplacement> made(block);
    for (std::size_t first = 0; first < order.size(); first += block) {
      const std::size_t count = std::min(block, order.size() - first);
      for_each_unit(static_cast<int>(count), question_.workers, [&](int i) {
        const auto place = static_cast<std::size_t>(i);
        made[place] = replacements_.of(order[first + place], years_);
      });
      if (question_.workers.stopped())
        return fail(Fault::cancelled, "Order list: stopped before its end. Nothing was changed.");
      for (std::size_t i = 0; i < count; ++i) add(order[first + i], made[i]);
    }
    return finished();
  }

 private:
  void add(std::int32_t part, const PartReplacement& made) {
    const Part& own = replacements_.portfolio().parts[static_cast<std::size_t>(part)];
    auto& line =
        lines_.try_emplace(key_of(own), Line{OrderLine{}, Counts(periods_, draws())}).first->second;
    if (line.made.parts + line.made.not_answered == 0) line.made.example = part;
    line.made.type = own.component_type;
    if (made.why == ReplacedFor::nothing) {
      ++line.made.not_answered;
      ++list_.not_answered;
      return;
    }
    ++line.made.parts;
    ++list_.parts;
    list_.bare += own.material == Material::bare_steel && made.why == ReplacedFor::wall ? 1 : 0;
    if (!made.wall_not_said.empty()) {
      ++line.made.by_grade_alone;
      ++list_.by_grade_alone[made.wall_not_said];
    }
    if (!made.past) {
      line.made.may_be_past += made.reached.by.front();
      list_.may_be_past += made.reached.by.front();
      line.counts.add(made.reached);
      whole_.add(made.reached);
      return;
    }
    ++line.made.past;
    ++list_.past;
    line.made.seen_past += made.seen_past ? 1 : 0;
    for (const std::size_t period : {std::size_t{0}, periods_ - 1}) {
      line.counts.add_past(1, period);
      whole_.add_past(1, period);
    }
  }

  using Key = std::tuple<std::string, int, std::string>;

  /// The component type; where none is said the kind, and of tubes the wall.
  static Key key_of(const Part& part) {
    if (!part.component_type.empty()) return {part.component_type, 0, {}};
    return {{},
            static_cast<int>(part.kind),
            part.wall_nominal_mm ? fixed(*part.wall_nominal_mm, 2) : std::string()};
  }

  [[nodiscard]] std::size_t draws() const {
    return static_cast<std::size_t>(replacements_.draws());
  }

  OrderList finished() {
    for (auto& [key, line] : lines_) {
      for (std::size_t p = 0; p + 1 < periods_; ++p) line.made.years.push_back(line.counts.of(p));
      line.made.all = line.counts.of(periods_ - 1);
      list_.lines.push_back(std::move(line.made));
    }
    for (std::size_t p = 0; p + 1 < periods_; ++p) list_.years.push_back(whole_.of(p));
    list_.all = whole_.of(periods_ - 1);
    std::stable_sort(list_.lines.begin(), list_.lines.end(),
                     [](const OrderLine& a, const OrderLine& b) {
                       return std::tuple(a.parts == 0, -a.all.expected) <
                              std::tuple(b.parts == 0, -b.all.expected);
                     });
    return std::move(list_);
  }

  const Replacements& replacements_;
  const OrderQuestion& question_;
  std::size_t periods_;  ///< the years, and all of them
  std::vector<double> years_;
  std::map<Key, Line> lines_;
  Counts whole_;
  OrderList list_;
};

}  // namespace

int count_quantile(const std::vector<PoissonBinomial>& trials, double level) {
  const auto enough = [&](int k) {
    double chance = 0;
    for (const PoissonBinomial& own : trials) chance += own.cdf(k);
    return chance >= level * static_cast<double>(trials.size());
  };
  int high = 1;
  if (enough(0)) return 0;
  while (!enough(high)) high *= 2;
  int low = high / 2;  // not enough
  while (high - low > 1) {
    const int middle = low + (high - low) / 2;
    (enough(middle) ? high : low) = middle;
  }
  return high;
}

Result<OrderList> order_list(const Replacements& replacements, const OrderQuestion& question) {
  constexpr int years_most = 50;
  if (question.years < 1 || question.years > years_most)
    return fail(Fault::invalid_input,
                "Order list: it reaches 1 to 50 years ahead. Nothing was reckoned.");
  return OrderCounter(replacements, question).run();
}

}  // namespace kneerail::forecast
