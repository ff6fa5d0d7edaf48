#include <cmath>
#include <limits>

#include "core/base/text.h"
#include "core/corrosion/atmosphere.h"
#include "core/corrosion/attack.h"
#include "core/corrosion/category.h"
#include "core/corrosion/rust.h"
#include "core/corrosion/zinc_coating.h"
#include "tests/reference/registry.h"

namespace kneerail::reference {

namespace {

using namespace corrosion;

template <double (*loss)(const Atmosphere&)>
Answer first_year_loss(const Question& question) {
  Needed need(question.inputs);
  const Atmosphere air{.temperature_c = need.number("T_C"),
                       .humidity_pct = need.number("RH_pct"),
                       .so2_mg_per_m2_day = need.number("Pd"),
                       .chloride_mg_per_m2_day = need.number("Sd")};
  if (!need.complete()) return need.unknown();
  return loss(air);
}

std::optional<Metal> metal_from_text(const std::optional<std::string>& text) {
  if (text == "zinc") return Metal::zinc;
  if (text == "steel" || text == "carbon steel") return Metal::carbon_steel;
  if (text == "copper") return Metal::copper;
  if (text == "aluminium") return Metal::aluminium;
  return std::nullopt;
}

Answer category(const Question& question) {
  Needed need(question.inputs);
  const double rate_um = need.number("rcorr_um_yr");
  const auto metal = metal_from_text(question.inputs.text("metal"));
  if (!need.complete()) return need.unknown();
  if (!metal) return Unknown{"needs a metal that is known"};
  const auto found = category_of(*metal, rate_um);
  if (!found) return Unknown{"no categories in um for this metal"};
  return std::string(to_text(*found));
}

std::optional<CorrosivityCategory> category_from_text(const std::optional<std::string>& text) {
  for (int i = 0; i <= static_cast<int>(CorrosivityCategory::cx); ++i) {
    const auto category = static_cast<CorrosivityCategory>(i);
    if (text == to_text(category)) return category;
  }
  return std::nullopt;
}

Answer middle_of_category(const Question& question) {
  const auto metal = metal_from_text(question.inputs.text("metal"));
  const auto found = category_from_text(question.inputs.text("category"));
  if (!metal || !found) return Unknown{"needs a metal and a category"};
  const auto middle = middle_first_year_um(*metal, *found);
  if (!middle) return Unknown{"no categories in um for this metal"};
  return *middle;
}

Answer interval_ln_sd(const Question& question) {
  Needed need(question.inputs);
  const double low = need.number("low");
  const double high = need.number("high");
  need.demand(low > 0 && high >= low, "not an interval of factors");
  if (!need.complete()) return need.unknown();
  return ln_sd_of_interval(low, high);
}

double exponent(Needed& need) {
  const double b = need.number("b");
  need.demand(b > 0 && b <= 1, "an exponent that is not between 0 and 1");
  return b;
}

Answer bare_growth(const Question& question) {
  Needed need(question.inputs);
  const double exponent = need.number("b");
  const double years = need.number("t_yr");
  if (!need.complete()) return need.unknown();
  return power_growth(exponent, years);
}

Answer attack(const Question& question) {
  Needed need(question.inputs);
  const Exposed exposed{.first_year_rate_um = need.number("rcorr"),
                        .exponent = exponent(need),
                        .age_years = need.number("t_yr")};
  if (!need.complete()) return need.unknown();
  return attack_um(exposed);
}

Answer consumed(const Question& question) {
  Needed need(question.inputs);
  const Consumed coating{.thickness_um = need.number("D_um"),
                         .first_year_rate_um = need.number("rcorr"),
                         .exponent = exponent(need)};
  if (!need.complete()) return need.unknown();
  return years_to_consume(coating);
}

Answer mean_factor(const Question& question) {
  Needed need(question.inputs);
  const double b = exponent(need);
  if (!need.complete()) return need.unknown();
  return AttackPath(b).first_year_to_mean();
}

Answer effective_age(const Question& question) {
  Needed need(question.inputs);
  const double b = exponent(need);
  const double years = need.number("t_yr");
  if (!need.complete()) return need.unknown();
  return AttackPath(b).effective_age(years);
}

/// The two ends of ">3..6", ">=6", "<1.5", "4": a bound that is left out is moved by the least a
/// double can.
std::optional<std::pair<double, double>> ends(std::string_view text) {
  constexpr double unbounded = std::numeric_limits<double>::infinity();
  const auto number = [](std::string_view part) { return double_from_text(trimmed(part)); };
  const auto dots = text.find("..");
  if (dots != std::string_view::npos) {
    const auto low = ends(text.substr(0, dots));
    const auto high = number(text.substr(dots + 2));
    if (!low || !high) return std::nullopt;
    return std::pair{low->first, *high};
  }
  if (text.starts_with(">=") || text.starts_with("<=")) {
    const auto edge = number(text.substr(2));
    if (!edge) return std::nullopt;
    return text[0] == '>' ? std::pair{*edge, 1e3} : std::pair{1e-3, *edge};
  }
  if (text.starts_with('>') || text.starts_with('<')) {
    const auto edge = number(text.substr(1));
    if (!edge) return std::nullopt;
    return text[0] == '>' ? std::pair{std::nextafter(*edge, unbounded), 1e3}
                          : std::pair{1e-3, std::nextafter(*edge, -unbounded)};
  }
  const auto exact = number(text);
  if (!exact) return std::nullopt;
  return std::pair{*exact, *exact};
}

template <double LeastCoating::*which>
Answer least_coating_um(const Question& question) {
  const auto steel = question.inputs.text("steel_mm");
  const auto casting = question.inputs.text("casting_mm");
  if (steel.has_value() == casting.has_value()) return Unknown{"needs steel_mm or casting_mm"};
  const auto range = ends(steel ? *steel : *casting);
  if (!range) return Unknown{"a thickness of metal that cannot be read"};
  const Article article = steel ? Article::steel : Article::casting;
  const double thin = least_coating(article, range->first).*which;
  const double thick = least_coating(article, range->second).*which;
  if (thin != thick) return Unknown{"two rows of the table lie within this range"};
  return thin;
}

Answer areal_mass(const Question& question) {
  Needed need(question.inputs);
  const double um = need.number("um");
  const auto density = question.captured_number(0);
  if (!need.complete()) return need.unknown();
  if (!density) return Unknown{"needs a density"};
  return areal_mass_g_per_m2(um, *density);
}

Answer renovation(const Question& question) {
  Needed need(question.inputs);
  const double surface_m2 = need.number("surface_m2");
  const auto spots_cm2 = need.numbers("areas_cm2");
  if (!need.complete()) return need.unknown();
  return renovation_allowed(surface_m2, spots_cm2) ? "yes" : "no";
}

Answer constant_rate_life(const Question& question) {
  Needed need(question.inputs);
  const double um = need.number("um");
  const double rate = need.number("um_yr");
  if (!need.complete()) return need.unknown();
  return life_at_constant_rate_years(um, rate);
}

Answer printed_life(const Question& question) {
  auto life = constant_rate_life(question);
  if (auto* years = std::get_if<double>(&life)) *years = std::round(*years);
  return life;
}

Answer rust_grade(const Question& question) {
  Needed need(question.inputs);
  const double area = need.number("area_pct");
  if (!need.complete()) return need.unknown();
  const auto grade = d610_grade(area);
  if (!grade) return Unknown{"not a share of 100 %"};
  return static_cast<double>(*grade);
}

Answer picture_area(const Question& question) {
  const auto grade = question.inputs.text("grade");
  if (!grade || !grade->starts_with("Ri")) return Unknown{"needs a grade Ri 0 to Ri 5"};
  const auto number = int_from_text(trimmed(std::string_view(*grade).substr(2)));
  if (!number || *number < 0 || *number > 5) return Unknown{"needs a grade Ri 0 to Ri 5"};
  const auto area = ri_picture_area(static_cast<int>(*number));
  if (area->low != area->high) return fixed(area->low, 0) + "-" + fixed(area->high, 0);
  return area->low;
}

}  // namespace

void add_corrosion(Registry& registry) {
  registry.add("zinc first-year rate", first_year_loss<first_year_zinc_loss_um>);
  registry.add("carbon steel first-year rate", first_year_loss<first_year_steel_loss_um>);
  registry.add("aluminium first-year rate", first_year_loss<first_year_aluminium_loss_g_per_m2>);
  registry.add("corrosivity category", category);
  registry.add("corrosivity category (upper bound inclusive)", category);
  registry.add("middle of a corrosivity category", middle_of_category);
  registry.add("log-normal estimation interval*", interval_ln_sd);
  registry.add("t^b table value", bare_growth);
  registry.add("attack", attack);
  registry.add("attack, linear tail after # yr", attack);
  registry.add("time to consume coating (inverse of attack)", consumed);
  registry.add("first-year to 20-year mean factor", mean_factor);
  registry.add("effective age", effective_age);
  registry.add("minimum local coating thickness, not centrifuged",
               least_coating_um<&LeastCoating::local_um>);
  registry.add("minimum mean coating thickness, not centrifuged",
               least_coating_um<&LeastCoating::mean_um>);
  registry.add("areal mass from thickness at # g/cm3", areal_mass);
  registry.add("areal mass from thickness at the # g/cm3*", areal_mass);
  registry.add("renovation allowed?*", renovation);
  registry.add("coating life at constant rate", constant_rate_life);
  registry.add("life printed in years*", printed_life);
  registry.add("rust grade from rusted area", rust_grade);
  registry.add("rusted area of the reference picture", picture_area);
}

}  // namespace kneerail::reference
