#include "tests/support/made_screws.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/base/world.h"
#include "core/statistics/normal.h"

namespace kneerail::forecast {

namespace {

const Date as_of = date_from_civil(2026, 6, 30);
constexpr int year_days = 365;
constexpr int days_between = 2 * year_days;
constexpr double free_below_nm = 5;

/// Names that sort in the order they are made.
std::string name(const char* letter, int number) {
  return letter + std::to_string(100000 + number);
}

/// One screw as it is, not as it is seen.
struct TrueScrew {
  Date start;
  double left_nm = 0;
  int strikes = 0;
};

class Maker {
 public:
  explicit Maker(const ScrewRecipe& recipe) : recipe_(recipe), random_(recipe.seed) {}

  MadeScrews make() {
    made_.portfolio.as_of = as_of;
    for (int site = 0; site < recipe_.sites; ++site) add_site(site);
    return std::move(made_);
  }

 private:
  double normal(double sd) {
    return sd * statistics::normal_quantile((random_.uniform() + 1e-12) / (1 + 2e-12));
  }

  void add_site(int site) {
    first_visit_ = static_cast<std::int32_t>(made_.portfolio.visits.size());
    for (int day = 0; day < recipe_.days; ++day) {
      Visit visit;
      visit.id = name("v", static_cast<int>(made_.portfolio.visits.size()));
      visit.site = name("s", site);
      visit.day = {as_of.days - year_days / 2 - days_between * (recipe_.days - 1 - day)};
      visit.inspector = "i1";
      visit.wrench = "t1";
      made_.portfolio.visits.push_back(visit);
    }
    const double effect = std::log(recipe_.middle_loss_nm) + normal(recipe_.site_sd);
    for (int zone = 0; zone < recipe_.zones; ++zone) {
      const double both = effect + normal(recipe_.zone_sd);
      for (int run = 0; run < recipe_.runs; ++run)
        for (int i = 0; i < recipe_.fittings; ++i) add_fitting(site, zone, run, both);
    }
  }

  void add_fitting(int site, int zone, int run, double middle) {
    Part part;
    place_ = static_cast<std::int32_t>(made_.portfolio.parts.size());
    part.id = name("c", place_);
    part.site = name("s", site);
    part.zone = name("z", site * recipe_.zones + zone);
    part.run = part.zone + "/" + std::to_string(run);
    part.torque_target_nm = recipe_.target_nm;
    part.torque_minimum_nm = recipe_.minimum_nm;
    part.screws = recipe_.screws;
    const Date start{as_of.days - static_cast<int>(random_.between(year_days, 20 * year_days))};
    if (random_.uniform() >= recipe_.unknown_start) part.installed = start;
    made_.portfolio.parts.push_back(part);
    const double ln_loss = middle + normal(recipe_.part_sd);
    std::vector<TrueScrew> screws(static_cast<std::size_t>(recipe_.screws));
    for (TrueScrew& screw : screws) tighten(screw, start);
    for (int day = 0; day < recipe_.days; ++day) check_day(first_visit_ + day, ln_loss, screws);
    made_.truth.push_back(truth_of(screws, ln_loss));
  }

  void tighten(TrueScrew& screw, Date day) {
    screw.start = day;
    screw.left_nm = recipe_.target_nm * (1 + normal(recipe_.as_left_sd));
  }

  [[nodiscard]] double loss_nm(const TrueScrew& screw, double ln_loss) const {
    return std::exp(ln_loss + recipe_.wear * screw.strikes);
  }

  void add_work(Date day, Action action, std::int16_t screw) {
    Work work;
    work.part = place_;
    work.day = day;
    work.action = action;
    work.as_left_nm = recipe_.target_nm;
    work.screw = screw;
    made_.portfolio.works.push_back(work);
  }

  void check_day(std::int32_t visit, double ln_loss, std::vector<TrueScrew>& screws) {
    const Date day = made_.portfolio.visits[static_cast<std::size_t>(visit)].day;
    if (day <= screws.front().start) return;
    if (random_.uniform() < recipe_.struck) {
      const Date struck{day.days - 100};
      if (struck > screws.front().start) {
        add_work(struck, Action::re_erect, 0);
        for (TrueScrew& screw : screws) {
          tighten(screw, struck);
          ++screw.strikes;
        }
      }
    }
    if (random_.uniform() >= recipe_.checked) return;
    for (std::size_t s = 0; s < screws.size(); ++s)
      check(visit, day, ln_loss, static_cast<std::int16_t>(s + 1), screws[s]);
  }

  void check(std::int32_t visit, Date day, double ln_loss, std::int16_t number, TrueScrew& screw) {
    const double torque_nm =
        std::max(0.0, screw.left_nm - loss_nm(screw, ln_loss) *
                                          std::log10(1.0 + (day.days - screw.start.days)));
    Reading reading;
    reading.quantity = Quantity::torque_nm;
    reading.id = name("r", static_cast<int>(made_.portfolio.readings.size()));
    reading.part = place_;
    reading.visit = visit;
    reading.spot = number;
    if (recipe_.wrench_recorded) reading.wrench_set_nm = recipe_.wrench_nm;
    if (torque_nm > recipe_.wrench_nm * (1 + normal(recipe_.wrench_sd))) {
      reading.censoring = Censoring::at_least;
      reading.value = recipe_.wrench_nm;
    } else if (torque_nm < free_below_nm) {
      reading.censoring = Censoring::at_most;
      reading.value = free_below_nm;
    } else {
      reading.censoring = Censoring::about;
      reading.value = std::round(torque_nm * (1 + normal(recipe_.moved_sd)));
    }
    made_.portfolio.readings.push_back(reading);
    if (reading.censoring == Censoring::at_least) return;
    add_work(day, Action::retorque, number);
    tighten(screw, day);
  }

  [[nodiscard]] ScrewTruth truth_of(const std::vector<TrueScrew>& screws, double ln_loss) const {
    ScrewTruth truth{1e9, std::exp(ln_loss)};
    for (const TrueScrew& screw : screws) {
      const double tenfolds = (screw.left_nm - recipe_.minimum_nm) / loss_nm(screw, ln_loss);
      const double days = std::pow(10.0, std::min(tenfolds, 12.0)) - 1;
      truth.years_under =
          std::min(truth.years_under, (days - (as_of.days - screw.start.days)) / days_per_year);
    }
    return truth;
  }

  ScrewRecipe recipe_;
  SplitMix64 random_;
  MadeScrews made_;
  std::int32_t first_visit_ = 0;
  std::int32_t place_ = 0;
};

}  // namespace

MadeScrews made_screws(const ScrewRecipe& recipe) {
  return Maker(recipe).make();
}

}  // namespace kneerail::forecast
