#include "core/forecast/whole/part_inputs.h"

#include <algorithm>
#include <map>
#include <vector>

#include "core/forecast/whole/kept_input.h"

namespace kneerail::forecast {

namespace {

/// Places of the items of each part, one after the other: those of part i from first[i].
struct ByPart {
  std::vector<std::size_t> first;
  std::vector<std::int32_t> place;
};

template <class Item>
ByPart by_part(const std::vector<Item>& items, std::size_t parts) {
  ByPart out;
  out.first.assign(parts + 1, 0);
  for (const Item& item : items) ++out.first[static_cast<std::size_t>(item.part) + 1];
  for (std::size_t i = 0; i < parts; ++i) out.first[i + 1] += out.first[i];
  out.place.resize(items.size());
  std::vector<std::size_t> next(out.first.begin(), out.first.end() - 1);
  for (std::size_t i = 0; i < items.size(); ++i)
    out.place[next[static_cast<std::size_t>(items[i].part)]++] = static_cast<std::int32_t>(i);
  return out;
}

class PartInputs {
 public:
  explicit PartInputs(const Portfolio& portfolio)
      : portfolio_(portfolio),
        readings_(by_part(portfolio.readings, portfolio.parts.size())),
        works_(by_part(portfolio.works, portfolio.parts.size())) {
    for (const SiteLimits& limits : portfolio.limits) limits_.emplace(limits.site, &limits);
  }

  void write(std::size_t part, std::string& bytes) {
    bytes.clear();
    ByteSink sink(bytes);
    const Part& own = portfolio_.parts[part];
    sink(own);
    if (const auto limits = limits_.find(own.site); limits != limits_.end()) sink(*limits->second);
    add_sorted(
        part, readings_,
        [&](ByteSink& to, std::int32_t place) {
          const Reading& reading = portfolio_.readings[static_cast<std::size_t>(place)];
          to(reading, portfolio_.visits[static_cast<std::size_t>(reading.visit)]);
        },
        bytes);
    add_sorted(
        part, works_,
        [&](ByteSink& to, std::int32_t place) {
          to(portfolio_.works[static_cast<std::size_t>(place)]);
        },
        bytes);
  }

 private:
  template <class Write>
  void add_sorted(std::size_t part, const ByPart& of, const Write& write, std::string& bytes) {
    const std::size_t count = of.first[part + 1] - of.first[part];
    if (items_.size() < count) items_.resize(count);
    for (std::size_t i = 0; i < count; ++i) {
      items_[i].clear();
      ByteSink sink(items_[i]);
      write(sink, of.place[of.first[part] + i]);
    }
    std::sort(items_.begin(), items_.begin() + static_cast<std::ptrdiff_t>(count));
    ByteSink sink(bytes);
    sink(static_cast<std::uint64_t>(count));
    for (std::size_t i = 0; i < count; ++i) bytes += items_[i];
  }

  const Portfolio& portfolio_;
  ByPart readings_;
  ByPart works_;
  std::map<std::string, const SiteLimits*> limits_;
  std::vector<std::string> items_;  ///< memory used again
};

}  // namespace

void each_part_input(const Portfolio& portfolio,
                     const std::function<void(std::int32_t, std::string_view)>& each) {
  std::vector<std::int32_t> order(portfolio.parts.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<std::int32_t>(i);
  std::sort(order.begin(), order.end(), [&](std::int32_t a, std::int32_t b) {
    return portfolio.parts[static_cast<std::size_t>(a)].id <
           portfolio.parts[static_cast<std::size_t>(b)].id;
  });
  PartInputs inputs(portfolio);
  std::string bytes;
  for (const std::int32_t part : order) {
    inputs.write(static_cast<std::size_t>(part), bytes);
    each(part, bytes);
  }
}

std::string common_input(const Portfolio& portfolio) {
  std::string bytes;
  ByteSink sink(bytes);
  sink(std::string(model_version()), portfolio.as_of, portfolio.settings);
  return bytes;
}

}  // namespace kneerail::forecast
