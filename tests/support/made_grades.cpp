#include "tests/support/made_grades.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/base/world.h"
#include "core/statistics/normal.h"

namespace kneerail::forecast {

namespace {

const Date as_of = date_from_civil(2026, 6, 30);
constexpr int days_between = 730;
constexpr int year_days = 365;

/// Names that sort in the order they are made.
std::string name(const char* letter, int number) {
  return letter + std::to_string(100000 + number);
}

/// One life: the days on which each grade is reached.
struct Life {
  Date start;
  std::array<double, 4> reached{};  ///< years from its start
  [[nodiscard]] int grade_on(Date day) const {
    const double age = years_between(start, day);
    return 1 +
           static_cast<int>(std::ranges::count_if(reached, [&](double at) { return at <= age; }));
  }
};

class Maker {
 public:
  explicit Maker(const GradeRecipe& recipe) : recipe_(recipe), random_(recipe.seed) {}

  MadeGrades make() {
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
    for (int day = 0; day < recipe_.days; ++day)
      for (std::size_t i = 0; i < recipe_.up.size(); ++i) {
        Visit visit;
        visit.id = name("v", static_cast<int>(made_.portfolio.visits.size()));
        visit.site = name("s", site);
        visit.day = {as_of.days - year_days / 2 - days_between * (recipe_.days - 1 - day)};
        visit.inspector = name("i", static_cast<int>(i));
        made_.portfolio.visits.push_back(visit);
      }
    const double effect = normal(recipe_.site_sd);
    for (int zone = 0; zone < recipe_.zones; ++zone) {
      const double both = effect + normal(recipe_.zone_sd);
      for (int i = 0; i < recipe_.parts; ++i) add_part(site, zone, both);
    }
  }

  Life life(Date start, double ln_speed) {
    Life made{start, {}};
    double age = 0;
    for (std::size_t k = 0; k < made.reached.size(); ++k) {
      age -= std::log(1 - random_.uniform()) / (recipe_.rates[k] * std::exp(ln_speed));
      made.reached[k] = age;
    }
    return made;
  }

  void add_part(int site, int zone, double effect) {
    Part part;
    const auto place = static_cast<std::int32_t>(made_.portfolio.parts.size());
    part.id = name("c", place);
    part.site = name("s", site);
    part.zone = name("z", site * recipe_.zones + zone);
    part.kind = random_.uniform() < 0.5 ? PartKind::fitting : PartKind::rail_tube;
    part.exposure = random_.uniform() < 0.3 ? Exposure::spray : Exposure::open;
    const double ln_speed =
        effect + normal(recipe_.part_sd) + (part.exposure == Exposure::spray ? recipe_.spray : 0);
    const Date start{as_of.days - static_cast<int>(random_.between(3 * year_days, 25 * year_days))};
    if (random_.uniform() >= recipe_.unknown_start) part.installed = start;
    std::vector<Life> lives{life(start, ln_speed)};
    if (random_.uniform() < recipe_.replaced) {
      Work work;
      work.part = place;
      work.action = Action::replace;
      work.day = {start.days + static_cast<int>(random_.between(1, as_of.days - start.days))};
      made_.portfolio.works.push_back(work);
      lives.push_back(life(work.day, ln_speed));
    }
    made_.portfolio.parts.push_back(part);
    add_looks(place, lives);
    GradeTruth truth;
    for (std::size_t k = 0; k < truth.years_to.size(); ++k)
      truth.years_to[k] = lives.back().reached[k] - years_between(lives.back().start, as_of);
    truth.now = lives.back().grade_on(as_of);
    truth.ln_speed = ln_speed;
    made_.truth.push_back(truth);
  }

  void add_looks(std::int32_t place, const std::vector<Life>& lives) {
    int last_seen = 0;
    const Life* seen_in = nullptr;
    for (int day = 0; day < recipe_.days; ++day) {
      const auto inspector = static_cast<std::size_t>(
          random_.between(0, static_cast<std::int64_t>(recipe_.up.size()) - 1));
      const auto visit = first_visit_ + day * static_cast<std::int32_t>(recipe_.up.size()) +
                         static_cast<std::int32_t>(inspector);
      const Date on = made_.portfolio.visits[static_cast<std::size_t>(visit)].day;
      if (on < lives.front().start || random_.uniform() >= recipe_.graded) continue;
      const Life& life = lives.size() > 1 && lives.back().start < on ? lives.back() : lives.front();
      Reading reading;
      reading.quantity = Quantity::grade;
      reading.id = name("r", static_cast<int>(made_.portfolio.readings.size()));
      reading.part = place;
      reading.visit = visit;
      reading.carried = seen_in == &life && random_.uniform() < recipe_.copied;
      if (!reading.carried) last_seen = said(life.grade_on(on), inspector);
      seen_in = &life;
      reading.value = last_seen;
      made_.portfolio.readings.push_back(reading);
    }
  }

  int said(int truth, std::size_t inspector) {
    const double u = random_.uniform();
    if (truth < 5 && u < recipe_.up[inspector]) return truth + 1;
    if (truth > 1 && u > 1 - recipe_.down[inspector]) return truth - 1;
    return truth;
  }

  GradeRecipe recipe_;
  SplitMix64 random_;
  MadeGrades made_;
  std::int32_t first_visit_ = 0;
};

}  // namespace

MadeGrades made_grades(const GradeRecipe& recipe) {
  return Maker(recipe).make();
}

}  // namespace kneerail::forecast
