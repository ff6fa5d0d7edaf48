#include "tests/support/made_portfolio.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/world.h"
#include "core/corrosion/attack.h"
#include "core/statistics/normal.h"

namespace kneerail::forecast {

namespace {

const Date as_of = date_from_civil(2026, 6, 30);
constexpr double class_rate = 2.970;  // middle of C4
constexpr int year_days = 365;

/// Names that sort in the order they are made.
std::string name(const char* letter, int number) {
  std::string out(letter);
  out += std::to_string(1000 + number);
  return out;
}

class Maker {
 public:
  explicit Maker(const Recipe& recipe) : recipe_(recipe), random_(recipe.seed) {}

  Made make() {
    made_.portfolio.as_of = as_of;
    made_.portfolio.parts.reserve(
        static_cast<std::size_t>(recipe_.sites * recipe_.zones * recipe_.runs * recipe_.parts));
    for (int site = 0; site < recipe_.sites; ++site) add_site(site);
    return std::move(made_);
  }

 private:
  double normal(double sd) {
    return sd * statistics::normal_quantile((random_.uniform() + 1e-12) / (1 + 2e-12));
  }

  void add_site(int site) {
    add_visits(site);
    const double effect = normal(0.25);
    for (int zone = 0; zone < recipe_.zones; ++zone) {
      const double zone_effect = effect + normal(0.2);
      for (int run = 0; run < recipe_.runs; ++run) {
        const double rate =
            std::log(class_rate * recipe_.rate_over_class) + zone_effect + normal(0.12);
        const double ratio = 1.14 + normal(0.08);
        const int place = (site * recipe_.zones + zone) * recipe_.runs + run;
        const int age_days = static_cast<int>(random_.between(5 * year_days, 22 * year_days));
        for (int i = 0; i < recipe_.parts; ++i) add_part(site, zone, place, rate, ratio, age_days);
      }
    }
  }

  void add_visits(int site) {
    first_visit_ = static_cast<std::int32_t>(made_.portfolio.visits.size());
    offsets_.clear();
    for (int day = 0; day < recipe_.days; ++day) {
      Visit visit;
      visit.id = name("v", first_visit_ + day);
      visit.site = name("s", site);
      visit.day = Date{as_of.days - year_days / 2 - (recipe_.days - 1 - day) * year_days};
      visit.coating_gauge = name("g", site);
      visit.inspector = "i1";
      const bool drifts = site == 0 && (day == 2 || day == 3);
      offsets_.push_back(normal(1.2) + (drifts ? recipe_.drift_um : 0));
      made_.offsets_um.push_back(offsets_.back());
      if (recipe_.foils && day % 2 == 0 && !drifts) {
        visit.foil_true_um = 50;
        visit.foil_read_um = 50 + offsets_.back() + normal(0.9);
      }
      made_.portfolio.visits.push_back(visit);
    }
  }

  void add_part(int site, int zone, int run, double ln_rate, double ratio, int age_days) {
    const auto place = static_cast<int>(made_.portfolio.parts.size());
    Part part;
    part.id = name("c", 10000 + place);
    part.site = name("s", site);
    part.zone = name("z", site * recipe_.zones + zone);
    part.run = name("r", run);
    part.kind = static_cast<PartKind>(place % 4);
    part.exposure = Exposure::open;
    part.category = Category::c4;
    part.prior_is_category = true;
    part.zinc_rate_um_per_year = class_rate;
    part.nominal_coating_um = 70;
    part.first_maintenance_um = 20;
    const Date installed{as_of.days - age_days};
    const bool unknown = random_.uniform() < recipe_.unknown_start;
    if (!unknown) part.installed = installed;
    Truth truth;
    truth.rate_um_per_year = std::exp(ln_rate + normal(0.3) - 0.045);
    truth.start_um = 70 * (ratio + normal(0.13));
    truth.swapped = site == 0 && static_cast<int>(swapped_) < recipe_.swaps && !unknown &&
                    age_days > 10 * year_days;
    made_.portfolio.parts.push_back(part);
    Date start = installed;
    if (truth.swapped) {
      ++swapped_;
      start = made_.portfolio.visits[static_cast<std::size_t>(first_visit_ + recipe_.days - 3)].day;
      start.days += year_days / 2;
    }
    add_readings(place, truth, installed, start);
    const double age = path_.age(truth.start_um / truth.rate_um_per_year);
    truth.exhausted_years = age - years_between(start, as_of);
    made_.truth.push_back(truth);
  }

  void add_readings(int place, const Truth& truth, Date installed, Date swapped) {
    for (int day = 0; day < recipe_.days; ++day) {
      const std::int32_t visit = first_visit_ + day;
      const Date on = made_.portfolio.visits[static_cast<std::size_t>(visit)].day;
      if (random_.uniform() >= recipe_.measured || on <= installed) continue;
      const Date start = on > swapped ? swapped : installed;
      const double left =
          truth.start_um - truth.rate_um_per_year * path_.effective_age(years_between(start, on));
      double mean = left > 0 ? left + offsets_[static_cast<std::size_t>(day)] + normal(2) : 3;
      if (recipe_.grades) {
        if (left <= 0 && random_.uniform() < 0.7) mean = 10 + 25 * random_.uniform();
        add_grade(place, visit, left / truth.start_um);
      }
      for (int replicate = 1; replicate <= 3; ++replicate) {
        Reading reading;
        reading.id = name("m", 100000 + static_cast<int>(made_.portfolio.readings.size()));
        reading.part = place;
        reading.visit = visit;
        reading.spot = 1;
        reading.replicate = static_cast<std::int16_t>(replicate);
        reading.value = std::max(0.5, mean + normal(left > 0 ? recipe_.replicate_sd_um : 0.7));
        made_.portfolio.readings.push_back(reading);
      }
    }
  }

  void add_grade(int place, std::int32_t visit, double share_left) {
    const double seen = share_left + normal(0.06);
    Reading reading;
    reading.id = name("m", 100000 + static_cast<int>(made_.portfolio.readings.size()));
    reading.part = place;
    reading.visit = visit;
    reading.quantity = Quantity::grade;
    reading.value = seen > 0.5 ? 1 : seen > 0.2 ? 2 : seen > 0.05 ? 3 : seen > -0.1 ? 4 : 5;
    made_.portfolio.readings.push_back(reading);
  }

  Recipe recipe_;
  SplitMix64 random_;
  Made made_;
  corrosion::AttackPath path_{0.9};
  std::int32_t first_visit_ = 0;
  std::vector<double> offsets_;
  int swapped_ = 0;
};

template <class T>
std::vector<std::int32_t> shuffle(std::vector<T>& values, SplitMix64& random) {
  std::vector<std::int32_t> from(values.size());
  for (std::size_t i = 0; i < from.size(); ++i) from[i] = static_cast<std::int32_t>(i);
  for (std::size_t i = from.size(); i > 1; --i) {
    const auto j = static_cast<std::size_t>(random.between(0, static_cast<std::int64_t>(i) - 1));
    std::swap(from[i - 1], from[j]);
    std::swap(values[i - 1], values[j]);
  }
  std::vector<std::int32_t> to(from.size());
  for (std::size_t i = 0; i < from.size(); ++i)
    to[static_cast<std::size_t>(from[i])] = static_cast<std::int32_t>(i);
  return to;
}

}  // namespace

Made made_portfolio(const Recipe& recipe) {
  return Maker(recipe).make();
}

Portfolio shuffled(const Portfolio& portfolio, std::uint64_t seed) {
  SplitMix64 random(seed);
  Portfolio out = portfolio;
  const auto part_to = shuffle(out.parts, random);
  const auto visit_to = shuffle(out.visits, random);
  shuffle(out.readings, random);
  shuffle(out.works, random);
  for (Reading& reading : out.readings) {
    reading.part = part_to[static_cast<std::size_t>(reading.part)];
    reading.visit = visit_to[static_cast<std::size_t>(reading.visit)];
  }
  for (Work& work : out.works) work.part = part_to[static_cast<std::size_t>(work.part)];
  return out;
}

}  // namespace kneerail::forecast
