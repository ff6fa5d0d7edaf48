#include "core/forecast/decisions/life_cost.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <set>
#include <string>
#include <tuple>

#include "core/forecast/decisions/order_list.h"
#include "core/forecast/limit_report.h"
#include "core/forecast/predictive.h"
#include "tests/core/forecast/decisions/sharing_parts.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::forecast;
using kneerail::tests::Fitted;
using kneerail::tests::sharing_parts;

namespace {

Fitted fitted_site() {
  return Fitted(sharing_parts(test::seed_or(8), {.sites = 1, .zones = 2, .runs = 2, .parts = 16}));
}

OwnerFigures whole_figures(const std::string& site) {
  OwnerFigures figures;
  for (const char* type : {"tube", "fitting"}) {
    figures.types[type].price = 20;
    figures.types[type].hours_per_replacement = 4;
    figures.types[type].lead_time_days = 14;
  }
  SiteFigures& own = figures.sites[site];
  own.spare_chance = 0.95;
  own.discount_rate = 0.03;
  own.cost_of_visit = 450;
  own.cost_of_hour = 48;
  own.cost_of_closed_day = 900;
  own.years_between_visits = 1;
  return figures;
}

LifeCost cost_of(const Fitted& fitted, const OwnerFigures& figures, LifeCostQuestion question) {
  const Replacements replacements = fitted.replacements();
  question.site = fitted.portfolio.parts.front().site;
  const auto lines = spares(replacements, figures);
  REQUIRE(lines);
  auto cost = life_cost(replacements, figures, *lines, question);
  REQUIRE(cost);
  return *cost;
}

/// The words before what they say of parts past unseen.
std::string said(const LifeCost& cost) {
  return cost.words.substr(0, cost.words.find("; about "));
}

}  // namespace

TEST_CASE("a whole life costs what its figures say", "[core]") {
  const Fitted fitted = fitted_site();
  const auto figures = whole_figures(fitted.portfolio.parts.front().site);
  const LifeCost cost = cost_of(fitted, figures, {.years = 30});
  CHECK(cost.parts == 64);
  CHECK(cost.without.empty());
  CHECK(cost.words.rfind("over 30 years, at 3.0 % a year", 0) == 0);
  double a_year_each = 0;
  for (int y = 0; y < 30; ++y) a_year_each += std::pow(1.03, -y);
  CHECK(cost.mean.visits == Approx(450 * a_year_each));
  CHECK(cost.mean.strikes == 0);
  CHECK(cost.mean.labour == Approx(cost.mean.parts * 4 * 48 / 20).epsilon(1e-9));
  CHECK(cost.mean.closures >= cost.mean.parts * 900 * 0.5 / 20 - 1e-6);
  CHECK(cost.p10 < cost.p50);
  CHECK(cost.p50 < cost.p90);
  // At least as wide as chance makes it where every replacement stands alone.
  const double each = 20 + 4 * 48 + 900 * 0.5;
  const double alone = each * std::sqrt(cost.replacements * 0.4);
  CHECK(cost.p90 - cost.p10 > 2 * 1.28 * 0.9 * alone);
  CHECK(cost.p10 < cost.mean.sum());
  CHECK(cost.mean.sum() < cost.p90);
  CHECK(cost.mean.sum() > cost_of(fitted, figures, {.years = 20}).mean.sum());
}

TEST_CASE("without interest and with parts for one each the cost is the count", "[core]") {
  const Fitted fitted = fitted_site();
  OwnerFigures figures;
  for (const char* type : {"tube", "fitting"}) figures.types[type].price = 1;
  figures.sites[fitted.portfolio.parts.front().site].discount_rate = 0;
  const LifeCost cost = cost_of(fitted, figures, {.years = 5});
  CHECK(cost.mean.sum() == Approx(cost.replacements).epsilon(1e-9));
  const auto list = order_list(fitted.replacements(), {.years = 5});
  REQUIRE(list);
  // The list counts each part once; a replacement is seldom replaced itself in five years.
  CHECK(cost.replacements >= list->all.expected * 0.98);
  CHECK(cost.replacements <= list->all.expected * 1.1 + 0.05);
}

TEST_CASE("a figure that nobody gave is named, never taken for nothing", "[core]") {
  const Fitted fitted = fitted_site();
  const std::string& site = fitted.portfolio.parts.front().site;
  struct Case {
    const char* name;
    std::function<void(OwnerFigures&, SiteFigures&)> change;
    const char* words;
  };
  const auto whole = "over 30 years, at 3.0 % a year";
  const std::vector<Case> cases{
      {"one price", [](auto& f, auto&) { f.types["tube"].price.reset(); },
       "; without the price for 1 of 2 types"},
      {"hours of all",
       [](auto& f, auto&) {
         for (auto& [name, type] : f.types) type.hours_per_replacement.reset();
       },
       "; without labour, closures"},
      {"an hour", [](auto&, auto& s) { s.cost_of_hour.reset(); }, "; without labour"},
      {"a closed day", [](auto&, auto& s) { s.cost_of_closed_day.reset(); }, "; without closures"},
      {"a lead time", [](auto& f, auto&) { f.types["tube"].lead_time_days.reset(); },
       "; without the wait for a spare for 1 of 2 types"},
      {"a visit", [](auto&, auto& s) { s.cost_of_visit.reset(); }, "; without visits"},
      {"hours of a strike", [](auto&, auto& s) { s.strikes_per_year = 1; }, "; without strikes"},
  };
  for (const Case& one : cases) {
    INFO(one.name);
    OwnerFigures figures = whole_figures(site);
    one.change(figures, figures.sites[site]);
    CHECK(said(cost_of(fitted, figures, {.years = 30})) == whole + std::string(one.words));
  }
  OwnerFigures figures = whole_figures(site);
  figures.sites[site].discount_rate.reset();
  CHECK(said(cost_of(fitted, figures, {.years = 30})) == "over 30 years; without discounting");
  CHECK(said(cost_of(fitted, {}, {.years = 30})) ==
        "over 30 years; without the price, labour, closures, visits, discounting");
}

TEST_CASE("thicker zinc lasts longer and costs no more to keep", "[core]") {
  const Fitted fitted = fitted_site();
  const std::string& site = fitted.portfolio.parts.front().site;
  const auto figures = whole_figures(site);
  const auto thick = Finish::named("140");
  REQUIRE(thick);
  const LifeCost now = cost_of(fitted, figures, {.years = 50, .from = LifeFrom::all_new});
  const LifeCost other =
      cost_of(fitted, figures, {.years = 50, .from = LifeFrom::all_new, .finish = &*thick});
  CHECK(now.as_now == 0);
  CHECK(other.as_now == 0);
  CHECK(other.replacements < now.replacements);
  CHECK(other.mean.sum() < now.mean.sum());
  const Replacements replacements = fitted.replacements();
  const auto lives = finish_lives(replacements, *fitted.coating, site, *thick);
  std::set<std::tuple<std::string, PartKind, Exposure>> kinds;
  for (const Part& part : fitted.portfolio.parts)
    kinds.insert({part.zone, part.kind, part.exposure});
  CHECK(lives.size() == kinds.size());
  for (const FinishLife& life : lives) {
    CHECK(life.as_now.nominal_um == 70);
    // No run of such parts goes earlier than the one that speaks for them.
    for (std::size_t i = 0; i < fitted.portfolio.parts.size(); ++i) {
      const Part& part = fitted.portfolio.parts[i];
      if (part.zone != life.zone || part.kind != life.kind || part.exposure != life.exposure)
        continue;
      const auto own = replacements.new_coating(static_cast<std::int32_t>(i), {});
      REQUIRE(own);
      CHECK(limit_quantiles(*own, {&fitted.coating->data.path, 0, true},
                            zinc_gone_um(fitted.portfolio, site))[3] >= life.as_now.gone[3]);
    }
    CHECK(life.other.nominal_um == 140);
    for (std::size_t i = 0; i < life.other.gone.size(); ++i) {
      CHECK(life.other.gone[i] > life.as_now.gone[i] * 1.9);
      if (i > 0) CHECK(life.other.gone[i] > life.other.gone[i - 1]);
    }
    REQUIRE(life.other.first_maintenance);
    CHECK((*life.other.first_maintenance)[3] < life.other.gone[3]);
  }
}

TEST_CASE("parts in the spray have another finish's life of their own", "[core]") {
  Portfolio portfolio =
      sharing_parts(test::seed_or(8), {.sites = 1, .zones = 1, .runs = 2, .parts = 16});
  for (std::size_t i = 0; i < portfolio.parts.size(); ++i)
    portfolio.parts[i].exposure = i / 4 % 2 == 0 ? Exposure::spray : Exposure::sheltered;
  const Fitted fitted(std::move(portfolio));
  const auto thick = Finish::named("140");
  REQUIRE(thick);
  const auto lives = finish_lives(fitted.replacements(), *fitted.coating,
                                  fitted.portfolio.parts.front().site, *thick);
  std::size_t parts = 0;
  int compared = 0;
  constexpr std::size_t median = 3;
  for (const FinishLife& life : lives) {
    parts += static_cast<std::size_t>(life.parts);
    for (const FinishLife& other : lives) {
      if (life.exposure != Exposure::spray || other.exposure != Exposure::sheltered ||
          life.kind != other.kind)
        continue;
      CHECK(life.other.gone[median] < other.other.gone[median]);
      ++compared;
    }
  }
  CHECK(parts == fitted.portfolio.parts.size());
  CHECK(compared > 0);
}

TEST_CASE("a finish is a thickness or the standard's minimum", "[core][reference]") {
  Part post;
  post.kind = PartKind::post_tube;
  post.wall_nominal_mm = 3.2;
  const auto standard = Finish::named("iso1461");
  REQUIRE(standard);
  CHECK(standard->minimum_um(post) == 70);  // ISO 1461:2009, Table 3: steel over 3 to 6 mm
  Part fitting;
  fitting.kind = PartKind::fitting;
  CHECK(standard->minimum_um(fitting) == 70);  // castings under 6 mm
  post.wall_nominal_mm.reset();
  CHECK_FALSE(standard->minimum_um(post));
  CHECK(Finish::named("85")->minimum_um(post) == 85);
  for (const char* no : {"paint", "", "-5", "85um", "1e9"}) CHECK_FALSE(Finish::named(no));
}

TEST_CASE("with none held every replacement waits for its part", "[core]") {
  Portfolio portfolio =
      sharing_parts(test::seed_or(8), {.sites = 1, .zones = 2, .runs = 2, .parts = 16});
  for (Part& part : portfolio.parts) part.depot = "quay";
  const Fitted fitted(std::move(portfolio));
  auto figures = whole_figures(fitted.portfolio.parts.front().site);
  for (const char* type : {"tube", "fitting"}) figures.on_shelf[{"quay", type}] = 0;
  const LifeCost none = cost_of(fitted, figures, {.years = 30});
  CHECK(none.mean.closures == Approx(none.mean.parts / 20 * (0.5 + 14) * 900).epsilon(1e-9));
  for (const char* type : {"tube", "fitting"}) figures.on_shelf[{"quay", type}] = 50;
  const LifeCost many = cost_of(fitted, figures, {.years = 30});
  CHECK(many.mean.closures == Approx(many.mean.parts / 20 * 0.5 * 900).epsilon(1e-6));
}

TEST_CASE("a cost says of how many parts nothing is reckoned", "[core]") {
  const Fitted fitted = fitted_site();
  const std::string& site = fitted.portfolio.parts.front().site;
  const auto figures = whole_figures(site);
  const Replacements ungraded(fitted.portfolio, &*fitted.coating, nullptr);
  int fittings = 0;
  for (const Part& part : fitted.portfolio.parts)
    fittings += part.component_type == "fitting" ? 1 : 0;
  for (const LifeFrom from : {LifeFrom::as_it_stands, LifeFrom::all_new}) {
    const auto cost = life_cost(ungraded, figures, {}, {.site = site, .from = from});
    REQUIRE(cost);
    CHECK(cost->not_answered == fittings);
    CHECK(cost->words.find("; " + std::to_string(fittings) + " of 64 parts are not reckoned") !=
          std::string::npos);
  }
  const Replacements nothing(fitted.portfolio, nullptr, nullptr);
  const auto free = life_cost(nothing, figures, {}, {.site = site});
  REQUIRE(free);
  CHECK(free->words.find("64 of 64 parts are not reckoned") != std::string::npos);
}

TEST_CASE("parts that another finish means nothing for are counted as now", "[core]") {
  Portfolio portfolio =
      sharing_parts(test::seed_or(8), {.sites = 1, .zones = 2, .runs = 2, .parts = 16});
  int painted = 0;
  for (Part& part : portfolio.parts)
    if (part.component_type == "fitting" && painted < 3) {
      part.material = Material::painted_steel;
      ++painted;
    }
  const Fitted fitted(std::move(portfolio));
  const auto figures = whole_figures(fitted.portfolio.parts.front().site);
  const auto thick = Finish::named("140");
  REQUIRE(thick);
  CHECK(cost_of(fitted, figures, {.from = LifeFrom::all_new, .finish = &*thick}).as_now == 3);
}
