#include "core/forecast/all_limits.h"

#include <algorithm>
#include <atomic>
#include <catch2/catch.hpp>
#include <set>

#include "core/forecast/decisions/part_outlook.h"
#include "core/forecast/part_story.h"
#include "tests/support/made_portfolio.h"

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

/// Coatings of a made world, with grades, and with set screws that were checked on its first
/// visits.
Portfolio with_everything(std::uint64_t seed) {
  Portfolio portfolio = made_portfolio({.seed = seed, .runs = 2, .grades = true}).portfolio;
  for (Part& part : portfolio.parts) {
    if (part.kind != PartKind::fitting) continue;
    part.torque_target_nm = 40;
    part.torque_minimum_nm = 28;
    part.screws = 2;
  }
  const std::size_t readings = portfolio.readings.size();
  for (std::size_t i = 0; i < readings; ++i) {
    Reading torque = portfolio.readings[i];
    const Part& part = portfolio.parts[static_cast<std::size_t>(torque.part)];
    if (torque.quantity != Quantity::coating_um || part.kind != PartKind::fitting) continue;
    if (torque.replicate > 1) continue;
    torque.id += "-torque";
    torque.quantity = Quantity::torque_nm;
    torque.spot = static_cast<std::int16_t>(i % 2 + 1);
    torque.censoring = i % 3 == 0 ? Censoring::about : Censoring::at_least;
    torque.value = i % 3 == 0 ? 31 : 32;
    torque.wrench_set_nm = 32;
    portfolio.readings.push_back(torque);
  }
  return portfolio;
}

struct Fitted {
  FittedCoating coating;
  OtherModels others;
};

Fitted fitted(const Portfolio& portfolio) {
  auto coating = fit_any_coating(portfolio, {.threads = 1});
  REQUIRE(coating);
  auto others = fit_other_limits(portfolio, {.threads = 1});
  REQUIRE(others);
  return {std::move(*coating), std::move(*others)};
}

std::vector<LimitForecast> again_of(const Fitted& models, const Portfolio& one) {
  auto rows = all_limits_of_one_part(models.coating, &models.others, one);
  REQUIRE(rows);
  return std::move(*rows);
}

std::vector<LimitForecast> rows_of(const std::vector<LimitForecast>& all, std::int32_t part) {
  std::vector<LimitForecast> own;
  for (const LimitForecast& row : all)
    if (row.part == part) own.push_back(row);
  return own;
}

}  // namespace

TEST_CASE("one part again says of every limit what the whole said", "[core][forecast]") {
  const Portfolio portfolio = with_everything(31);
  const Fitted models = fitted(portfolio);
  const auto whole = forecast_all_limits(portfolio, {.threads = 1});
  REQUIRE(whole);
  const auto read = limits_read(whole->all.limits);
  CHECK(read.contains(Limit::torque_minimum));
  CHECK(read.contains(Limit::grade_5));
  std::set<Limit> compared;
  for (std::int32_t part = 0; part < 24; ++part) {
    const auto before = rows_of(whole->all.limits, part);
    const auto again = again_of(models, only_part(portfolio, part));
    REQUIRE(again.size() == before.size());
    for (std::size_t i = 0; i < before.size(); ++i) {
      const LimitForecast& one = again[i];
      INFO(to_text(before[i].limit) << " of part " << part);
      CHECK(one.limit == before[i].limit);
      CHECK(one.answered == before[i].answered);
      CHECK(one.words == before[i].words);
      for (std::size_t k = 0; k < one.p_by.size(); ++k)
        CHECK_THAT(one.p_by[k], Catch::WithinAbs(before[i].p_by[k], 0.01));
      compared.insert(one.limit);
    }
  }
  CHECK(compared.size() == 5);
}

TEST_CASE("a screw that moved under its minimum raises the chance at once", "[core][forecast]") {
  const Portfolio portfolio = with_everything(32);
  const Fitted models = fitted(portfolio);
  const auto fitting = std::ranges::find(portfolio.parts, PartKind::fitting, &Part::kind);
  Portfolio one =
      only_part(portfolio, static_cast<std::int32_t>(fitting - portfolio.parts.begin()));
  const auto torque = [&] {
    const auto rows = again_of(models, one);
    return *std::ranges::find(rows, Limit::torque_minimum, &LimitForecast::limit);
  };
  const LimitForecast before = torque();
  REQUIRE(before.answered);
  Reading moved;
  moved.id = "moved";
  moved.visit = static_cast<std::int32_t>(one.visits.size());
  one.visits.push_back(one.visits.back());
  one.visits.back().site = fitting->site;
  one.visits.back().day = Date{portfolio.as_of.days - 1};
  moved.quantity = Quantity::torque_nm;
  moved.spot = 1;
  moved.censoring = Censoring::about;
  moved.value = 24;
  one.readings.push_back(moved);
  const LimitForecast after = torque();
  CHECK(after.readings_used == before.readings_used + 1);
  CHECK(after.p_by[0] > 0.5);
  CHECK(before.p_by[0] < 0.3);
}

TEST_CASE("a part in a run the fit has not met says so of its screws", "[core][forecast]") {
  const Portfolio portfolio = with_everything(33);
  const Fitted models = fitted(portfolio);
  const auto fitting = std::ranges::find(portfolio.parts, PartKind::fitting, &Part::kind);
  Portfolio one =
      only_part(portfolio, static_cast<std::int32_t>(fitting - portfolio.parts.begin()));
  one.parts[0].run = "a run of today";
  const auto rows = again_of(models, one);
  const auto torque = std::ranges::find(rows, Limit::torque_minimum, &LimitForecast::limit);
  REQUIRE(torque != rows.end());
  CHECK_FALSE(torque->answered);
  CHECK(torque->words == "Run a run of today is not in the forecast yet: reckon it anew.");
  CHECK(std::ranges::find(rows, Limit::coating_exhausted, &LimitForecast::limit)->answered);
}

TEST_CASE("parts without a coating keep what grades and screws say", "[core][forecast]") {
  Portfolio portfolio = with_everything(34);
  for (Part& part : portfolio.parts) part.material = Material::stainless;
  const Fitted models = fitted(portfolio);
  CHECK_FALSE(models.coating.model);
  const auto whole = forecast_all_limits(portfolio, {.threads = 1});
  REQUIRE(whole);
  CHECK(std::ranges::find(whole->all.notes, models.coating.why_none) != whole->all.notes.end());
  CHECK(std::ranges::any_of(whole->all.limits, [](const LimitForecast& row) {
    return row.limit == Limit::grade_5 && row.answered;
  }));
  CHECK(std::ranges::any_of(
      again_of(models, only_part(portfolio, 0)),
      [](const LimitForecast& row) { return row.limit == Limit::grade_5 && row.answered; }));
}

TEST_CASE("fitting all limits ends when it is stopped", "[core][forecast]") {
  const Portfolio portfolio = with_everything(35);
  const std::atomic<bool> stop = true;
  const RunOptions stopped{.threads = 1, .stop = &stop};
  const auto faults = [](const auto& result) {
    REQUIRE_FALSE(result);
    return result.error().fault;
  };
  const Fitted models = fitted(portfolio);
  CHECK(faults(fit_any_coating(portfolio, stopped)) == Fault::cancelled);
  CHECK(faults(fit_other_limits(portfolio, stopped)) == Fault::cancelled);
  CHECK(faults(report_other_limits(models.coating, models.others, portfolio, stopped)) ==
        Fault::cancelled);
  CHECK(faults(forecast_all_limits(portfolio, stopped)) == Fault::cancelled);
}
