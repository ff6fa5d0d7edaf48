#include "tests/portfolio/world.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/forecast/preparation.h"
#include "tests/portfolio/gauges.h"
#include "tests/portfolio/physics.h"

namespace kneerail::portfolio_test {

namespace {

using namespace kneerail::forecast;

const Date as_of = date_from_civil(2026, 6, 30);
constexpr double days_a_year = 365.25;
constexpr double steel_over_zinc = 22;

Date years_before(double years) {
  return Date{as_of.days - static_cast<std::int32_t>(years * days_a_year)};
}

/// Names that sort in the order they are made.
std::string named(const char* letter, std::size_t number) {
  std::string out(letter);
  out += std::to_string(100000 + number);
  return out;
}

/// One batch of one run: what all its parts share.
struct Batch {
  std::string zone;
  std::string run;
  Category said = Category::c3;
  double rate_um_per_year = 0;
  double heavier = 1;                      ///< start over nominal
  std::array<double, 3> of_kind{1, 1, 1};  ///< tubes, fittings, base fixings
  Date built;
};

/// One part through its coatings.
struct Life {
  Coating coating;
  Wall wall;
  double nominal_um = 0;
  double rate_um_per_year = 0;
  Date zinc_gone;
  Truth truth;
};

class WorldMaker {
 public:
  WorldMaker(const Shape& shape, std::uint64_t seed) : shape_(shape), draw_(seed) {}

  World make() {
    world_.portfolio.as_of = as_of;
    const int staff = draw_.whole(2, 5);
    for (int i = 0; i < staff; ++i)
      inspectors_.push_back(inspector(draw_, named("i", static_cast<std::size_t>(i))));
    for (int site = 0; site < shape_.sites; ++site) add_site(site);
    return std::move(world_);
  }

 private:
  void add_site(int site) {
    const Weather weather(draw_);
    place_ = {&weather, corrosion::AttackPath(draw_.uniform(0.8, 1))};
    site_ = named("s", static_cast<std::size_t>(site));
    gauges_.clear();
    for (int i = 0; i < 2; ++i)
      gauges_.push_back(gauge(draw_, named("g", static_cast<std::size_t>(2 * site + i)),
                              shape_.drifting, years_before(shape_.visited_years), as_of));
    lives_.clear();
    first_part_ = world_.portfolio.parts.size();
    const double site_factor = draw_.factor(0.2);
    for (int zone = 0; zone < shape_.zones; ++zone) add_zone(site, zone, site_factor);
    const double usual = shape_.visit_years;
    for (double ago = shape_.visited_years * draw_.uniform(0.8, 1); ago > 0.1;
         ago -= usual * draw_.uniform(0.5, 1.5))
      visit(years_before(ago));
    close_lives();
  }

  void add_zone(int site, int zone, double site_factor) {
    const int truly = draw_.whole(shape_.class_low, shape_.class_high);
    int said = truly;
    if (draw_.happens(shape_.wrong_class)) said += draw_.happens(0.5) ? 1 : -1;
    Batch batch;
    batch.zone = named("z", static_cast<std::size_t>(site * shape_.zones + zone));
    batch.said = static_cast<Category>(std::clamp(said, 2, 5) - 1);
    const auto bounds = class_bounds(static_cast<Category>(truly - 1));
    // Within its class, in an air that lies evenly between the bounds.
    const double first_year_rate = std::exp(
        std::log(bounds.low_um) + draw_.uniform() * std::log(bounds.high_um / bounds.low_um));
    for (int run = 0; run < shape_.runs; ++run) {
      batch.run =
          named("r", static_cast<std::size_t>((site * shape_.zones + zone) * shape_.runs + run));
      batch.rate_um_per_year =
          first_year_rate * place_.path.first_year_to_mean() * site_factor * draw_.factor(0.15);
      batch.heavier = 1.15 + draw_.normal(0.08) * (draw_.happens(0.1) ? 4 : 1);
      for (double& kind : batch.of_kind) kind = 1 + draw_.normal(0.05);
      batch.built = years_before(draw_.uniform(shape_.age_low, shape_.age_high));
      for (int i = 0; i < shape_.parts; ++i) add_part(batch);
    }
  }

  void add_part(const Batch& batch) {
    constexpr std::array<double, 4> nominal{55, 55, 70, 85};
    Part part;
    const std::size_t place = world_.portfolio.parts.size();
    part.id = named("c", place);
    part.site = site_;
    part.zone = batch.zone;
    part.run = batch.run;
    const auto kind = place % 4;
    part.kind = static_cast<PartKind>(kind);
    part.category = batch.said;
    part.prior_is_category = true;
    part.zinc_rate_ln_sd = 0.45;
    part.nominal_coating_um = nominal[kind];
    part.first_maintenance_um = 20;
    part.reference_areas = draw_.whole(1, patches_most);
    Life life;
    life.nominal_um = nominal[kind];
    life.truth.wet = draw_.happens(shape_.wet * (kind == 3 ? 2 : 1));
    life.rate_um_per_year =
        batch.rate_um_per_year * draw_.factor(0.25) * (life.truth.wet ? draw_.uniform(1.8, 3) : 1);
    const double start = life.nominal_um * batch.heavier * batch.of_kind[kind < 2 ? 0 : kind - 1] *
                         (1 + draw_.normal(0.11));
    life.coating =
        coating(draw_, batch.built, std::max(start, 12.0), life.rate_um_per_year, shape_.face_sd);
    life.truth.unknown_start = draw_.happens(shape_.unknown_start);
    if (!life.truth.unknown_start)
      part.installed = Date{batch.built.days + (draw_.happens(0.05) ? draw_.whole(-700, 700) : 0)};
    if (kind < 2) add_wall(batch, part, life);
    if (draw_.happens(shape_.swapped)) swap(life);
    find_zinc_gone(life);
    world_.portfolio.parts.push_back(part);
    lives_.push_back(life);
  }

  void add_wall(const Batch& batch, Part& part, Life& life) {
    part.wall_nominal_mm = life.wall.nominal_mm = 3.2;
    part.wall_limit_mm = 0.8 * 3.2;
    part.steel_rate_um_per_year = steel_over_zinc * batch.rate_um_per_year * draw_.factor(0.3);
    life.wall.outside_um_per_year = steel_over_zinc * life.rate_um_per_year * draw_.factor(0.35);
    const bool open_inside = part.kind == PartKind::post_tube && draw_.happens(0.5);
    life.wall.inside_um_per_year =
        life.wall.outside_um_per_year * (open_inside ? draw_.uniform(0.3, 0.9) : 0.03);
    life.wall.inside_from = Date{batch.built.days + (open_inside ? draw_.whole(0, 5 * 365) : 0)};
  }

  /// Replaced without a record, between two visits of the last years.
  void swap(Life& life) {
    const Date day = years_before(draw_.uniform(0.5, 0.7 * shape_.visited_years));
    if (day <= life.coating.start) return;
    swaps_.push_back({world_.portfolio.parts.size(), day});
    life.truth.swapped = true;
  }

  void find_zinc_gone(Life& life) {
    life.zinc_gone = day_when_gone(life.coating.start,
                                   [&](Date day) { return mean_um(place_, life.coating, day); });
  }

  void renew(Life& life, Date day) {
    const double start = life.nominal_um * (1.15 + draw_.normal(0.12));
    const double face_sd = life.coating.face_sd;
    life.coating = coating(draw_, day, start, life.rate_um_per_year, face_sd);
    life.wall.inside_from = day;
    life.truth.visits = 0;
    life.truth.touched_up = false;
    find_zinc_gone(life);
  }

  /// Zinc paint over rust and zinc: another material, that may let go as a whole.
  void touch_up(Life& life, Date day) {
    const double start = std::max(30.0, 110 + draw_.normal(20));
    const double face_sd = life.coating.face_sd;
    life.coating =
        coating(draw_, day, start, 1.2 * life.rate_um_per_year * draw_.factor(0.5), face_sd);
    life.coating.paint = true;
    if (draw_.happens(0.4))
      life.coating.gives_way = Date{day.days + draw_.whole(2 * 365, 15 * 365)};
    life.truth.visits = 0;
    life.truth.touched_up = true;
    find_zinc_gone(life);
  }

  void visit(Date day) {
    for (auto& [place, swapped] : swaps_)
      if (place >= first_part_ && swapped <= day && swapped.days != 0) {
        renew(lives_[place - first_part_], swapped);
        swapped = Date{1'000'000};
      }
    const auto first = world_.portfolio.visits.size();
    std::array<double, 2> day_offset{};
    std::array<const Inspector*, 2> by{};
    for (std::size_t k = 0; k < 2; ++k) {
      by[k] = &inspectors_[static_cast<std::size_t>(
          draw_.whole(0, static_cast<int>(inspectors_.size()) - 1))];
      day_offset[k] = day_um(draw_);
      add_visit(day, gauges_[k], *by[k], day_offset[k]);
    }
    for (std::size_t i = 0; i < lives_.size(); ++i) {
      const std::size_t place = first_part_ + i;
      const Part& part = world_.portfolio.parts[place];
      if (day <= std::max(lives_[i].coating.start, part.installed.value_or(Date{0}))) continue;
      const std::size_t k = (i / static_cast<std::size_t>(shape_.parts)) % 2;  // run by run
      look(lives_[i], place, first + k, gauges_[k], *by[k], day_offset[k]);
    }
  }

  void add_visit(Date day, const Gauge& gauge, const Inspector& by, double offset_um) {
    Visit visit;
    visit.id = named("v", world_.portfolio.visits.size());
    visit.site = site_;
    visit.day = day;
    visit.inspector = by.name;
    visit.coating_gauge = gauge.name;
    if (draw_.happens(0.4)) {
      visit.foil_true_um = 51;
      visit.foil_read_um =
          51 * (1 + gauge.gain) + gauge.offset_um(day, false) + offset_um + draw_.normal(0.9);
    }
    world_.portfolio.visits.push_back(visit);
  }

  void look(Life& life, std::size_t place, std::size_t visit, const Gauge& with,
            const Inspector& by, double day_offset_um) {
    const Date day = world_.portfolio.visits[visit].day;
    if (draw_.happens(shape_.measured)) {
      ++life.truth.visits;
      life.truth.drifting = with.drifting(day);
      const bool tube = place % 4 < 2;
      measure(life, place, visit,
              {0, 0, with.offset_um(day, tube) + day_offset_um + by.habit_um, with.gain});
      if (tube && draw_.happens(0.3))
        add_reading(place, visit, Quantity::wall_mm, 1, 1,
                    std::round(100 * (wall_mm(place_, life.wall, life.zinc_gone, day) +
                                      draw_.normal(0.05))) /
                        100);
    }
    if (!draw_.happens(shape_.graded)) return;
    const double share = rusted_share(place_, life.coating, day);
    const int grade = grade_seen(draw_, by, share,
                                 1 - mean_um(place_, life.coating, day) / life.coating.start_um);
    add_reading(place, visit, Quantity::grade, 0, 1, grade);
    mend(life, place, day, grade);
  }

  void measure(const Life& life, std::size_t place, std::size_t visit, Shown shown) {
    const Date day = world_.portfolio.visits[visit].day;
    const int areas = world_.portfolio.parts[place].reference_areas;
    const int spots = draw_.whole(1, areas);
    const int from = draw_.whole(0, areas - 1);  // now this place, now that
    const int replicates = draw_.whole(1, 3);
    for (int k = 0; k < spots; ++k) {
      const int spot = (from + k) % areas;
      shown.patch_um = patch_um(place_, life.coating, spot, day);
      shown.rate_um_per_year =
          life.coating.rate_um_per_year * life.coating.patch_face[static_cast<std::size_t>(spot)];
      const double about = shown_um(draw_, shown);
      for (int r = 1; r <= replicates; ++r)
        add_reading(place, visit, Quantity::coating_um, spot + 1, r,
                    typed_um(draw_, about + draw_.normal(1.5)));
      if (shown.patch_um <= 0 && draw_.happens(shape_.surface_said))
        for (int r = 0; r < replicates; ++r)
          (world_.portfolio.readings.end() - 1 - r)->surface = Surface::rust;
    }
  }

  void mend(Life& life, std::size_t place, Date day, int grade) {
    Work work;
    work.part = static_cast<std::int32_t>(place);
    work.day = Date{day.days + draw_.whole(20, 120)};
    if (work.day >= as_of) return;
    if (grade == 5 && draw_.happens(shape_.renewed)) {
      work.action = Action::replace;
      work.new_nominal_coating_um = life.nominal_um;
      renew(life, work.day);
    } else if (grade == 4 && draw_.happens(shape_.touched_up)) {
      work.action = Action::touch_up;
      touch_up(life, work.day);
    } else {
      return;
    }
    world_.portfolio.works.push_back(work);
  }

  void add_reading(std::size_t place, std::size_t visit, Quantity quantity, int spot, int replicate,
                   double value) {
    Reading reading;
    reading.id = named("m", world_.portfolio.readings.size());
    reading.part = static_cast<std::int32_t>(place);
    reading.visit = static_cast<std::int32_t>(visit);
    reading.quantity = quantity;
    reading.spot = static_cast<std::int16_t>(spot);
    reading.replicate = static_cast<std::int16_t>(replicate);
    reading.value = value;
    world_.portfolio.readings.push_back(reading);
  }

  static double years_to(Date day, Date from) {
    constexpr int days_most = 150 * 365;
    return day.days - from.days >= days_most ? never_years : years_between(as_of, day);
  }

  void close_lives() {
    for (Life& life : lives_) {
      const int areas =
          world_.portfolio.parts[first_part_ + static_cast<std::size_t>(&life - lives_.data())]
              .reference_areas;
      const Date places_gone = day_when_gone(life.coating.start, [&](Date day) {
        return places_um(place_, life.coating, areas, day);
      });
      life.truth.coating_years = years_to(places_gone, life.coating.start);
      const Date rusted = day_when_gone(life.coating.start, [&](Date day) {
        return grade_5_rusted - rusted_share(place_, life.coating, day);
      });
      life.truth.grade_5_years = years_to(rusted, life.coating.start);
      life.truth.wall_years = never_years;
      if (life.wall.nominal_mm > 0) {
        const Date gone = day_when_gone(life.coating.start, [&](Date day) {
          return wall_mm(place_, life.wall, life.zinc_gone, day) - 0.8 * life.wall.nominal_mm;
        });
        life.truth.wall_years = years_to(gone, life.coating.start);
      }
      world_.truth.push_back(life.truth);
    }
  }

  struct Swap {
    std::size_t place;
    Date day;
  };

  Shape shape_;
  Draw draw_;
  World world_;
  Place place_{nullptr, corrosion::AttackPath(0.9)};
  std::string site_;
  std::vector<Gauge> gauges_;
  std::vector<Inspector> inspectors_;
  std::vector<Swap> swaps_;
  std::vector<Life> lives_;
  std::size_t first_part_ = 0;
};

}  // namespace

World made_world(const Shape& shape, std::uint64_t seed) {
  return WorldMaker(shape, seed).make();
}

const std::array<Shape, 6>& shapes() {
  static const std::array<Shape, 6> all{{
      {.name = "inland", .class_low = 2, .class_high = 3, .age_low = 8, .age_high = 40},
      {.name = "coast", .class_low = 4, .class_high = 5, .age_low = 4, .age_high = 25, .wet = 0.12},
      {.name = "seldom", .visit_years = 5, .visited_years = 11, .measured = 0.35},
      {.name = "often", .class_low = 3, .visit_years = 1, .measured = 0.8, .face_sd = 0.15},
      {.name = "left alone",
       .class_low = 3,
       .age_low = 12,
       .age_high = 35,
       .surface_said = 0,
       .face_sd = 0.3,
       .renewed = 0.05,
       .touched_up = 0.03},
      {.name = "careless",
       .wrong_class = 0.3,
       .graded = 0.6,
       .unknown_start = 0.4,
       .drifting = 0.4,
       .swapped = 0.05},
  }};
  return all;
}

}  // namespace kneerail::portfolio_test
