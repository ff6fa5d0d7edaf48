// Each situation of a fitting's screws has its sentence.

#include "core/forecast/screws/screw_words.h"

#include <catch2/catch.hpp>

using namespace kneerail;
using namespace kneerail::forecast;

namespace {

FoundTorque found(TorqueFound how, double torque_nm) {
  return {date_from_civil(2025, 5, 14), how, torque_nm, {}};
}

struct Situation {
  const char* name;
  ScrewEvidence evidence;
  const char* words;
};

ScrewEvidence evidence(int clicks, int losses) {
  ScrewEvidence out;
  out.clicks = clicks;
  out.losses = losses;
  if (clicks > 0) out.last_click = found(TorqueFound::clicked, 24.5);
  return out;
}

std::vector<Situation> situations() {
  std::vector<Situation> all{
      {"no reading", evidence(0, 0), "not checked; judged by its zone and age"},
      {"no reading, no date", evidence(0, 0),
       "not checked, age unknown; judged by its zone; 23 % under its minimum today"},
      {"clicks only", evidence(3, 0),
       "held 24.5 N·m on 2025-05-14; nothing moved, so its loss is known from one side only"},
      {"one moved", evidence(2, 1), "one loss measured; rate partly from its zone"},
      {"two moved", evidence(0, 2), "own losses and zone"},
      {"turned freely", evidence(1, 3), "found loose on 2025-05-14"},
      {"nothing moved in the zone", evidence(0, 0),
       "not checked; judged by its zone and age; no loss measured in this zone; leans on the other "
       "zones"}};
  all[1].evidence.start_known = false;
  all[1].evidence.chance_now = 0.2345;
  all[5].evidence.loose = found(TorqueFound::free, 5);
  all[6].evidence.zone_measured = false;
  return all;
}

/// One fitting, with readings of one screw.
Fitting fitting_with(const std::vector<FoundTorque>& readings) {
  Fitting fitting;
  Screw screw;
  Tightening tightening;
  tightening.as_left_nm = 39;
  tightening.starts = {date_from_civil(2015, 1, 1)};
  tightening.readings = readings;
  screw.tightenings.push_back(tightening);
  fitting.screws.push_back(screw);
  return fitting;
}

ScrewSite one_zone() {
  ScrewSite site;
  site.zones = {"z1"};
  site.zone_measured = {1};
  return site;
}

}  // namespace

TEST_CASE("how well a set-screw chance is founded has a sentence for each situation",
          "[core][screw][words]") {
  for (const Situation& situation : situations()) {
    INFO(situation.name);
    CHECK(screw_words(situation.evidence) == situation.words);
  }
}

TEST_CASE("what was found says which situation it is", "[core][screw][words]") {
  const auto words = [](const std::vector<FoundTorque>& readings) {
    return screw_words(evidence_of(one_zone(), fitting_with(readings), 27));
  };
  const FoundTorque click = found(TorqueFound::clicked, 30);
  FoundTorque moved = found(TorqueFound::moved, 25);
  FoundTorque loose = found(TorqueFound::free, 5);
  CHECK(words({}) == "not checked; judged by its zone and age");
  CHECK(words({click}).starts_with("held 30 N·m on 2025-05-14; nothing moved"));
  CHECK(words({click, moved}) == "one loss measured; rate partly from its zone");
  CHECK(words({moved, moved}) == "own losses and zone");
  loose.day = date_from_civil(2026, 1, 2);
  CHECK(words({moved, loose}) == "found loose on 2026-01-02");
  moved.day = date_from_civil(2026, 3, 4);
  CHECK(words({loose, moved}) == "own losses and zone");
  // Moved under what the wrench was set at, no mark: a loss seen, not a loose screw.
  CHECK(words({found(TorqueFound::free, 30)}) == "one loss measured; rate partly from its zone");
}

TEST_CASE("the reason of a set-screw chance is a sentence made from its numbers",
          "[core][screw][words]") {
  ScrewForecast row;
  row.screws = 1;
  row.as_found = {0.18, 0.21, 0.24, 0.31};
  row.as_left = {0, 0.01, 0.04, 0.12};
  row.median_years = 7.6;
  row.retorque_by = date_from_civil(2029, 4, 12);
  row.readings_used = 3;
  row.own_share = 0.64;
  row.loss_nm_per_tenfold = {2.04, 3.1, 4.4};
  CHECK(screw_sentence(row, {27, 39, 0.1}) ==
        "Chance of its screw under 27 N·m: 18 % today, 21 % in 1, 24 % in 2 and 31 % in 5 years. "
        "As likely as not in about 7 years. Re-torqued to 39 N·m today: 12 % in 5 years; "
        "again by 2029-04-12, when the chance reaches 10 %. Loses about 3.1 N·m "
        "with each tenfold of days (80 %: 2.0 to 4.4). Own readings carry 64 %, its run, zone and "
        "site the rest.");
  row.median_years.reset();
  row.retorque_by.reset();
  row.readings_used = 0;
  row.screws = 2;
  row.as_found = {0.995, 0.996, 0.997, 0.998};
  row.flags = {"struck twice"};
  CHECK(screw_sentence(row, {27.5, 39, {}}) ==
        "Chance of one of its screws under 27.5 N·m: over 99 % today and in 5 years. Re-torqued to "
        "39 N·m today: 12 % in 5 years; no date to do it again: no chance is set. Loses about 3.1 "
        "N·m "
        "with each tenfold of days (80 %: 2.0 to 4.4). No reading of its own: all from its run, "
        "zone and site. Note: struck twice.");
  CHECK(screw_sentence(row, {27.5, 39, 0.1})
            .find("; the chance stays under 10 % for 100 years. Loses") != std::string::npos);
}

TEST_CASE("a target too near its minimum is said, not a date", "[core][screw][words]") {
  ScrewForecast row;
  row.screws = 1;
  row.as_left = {0.12, 0.3, 0.34, 0.4};
  row.target_too_low = true;
  const std::string sentence = screw_sentence(row, {27, 28, 0.1});
  CHECK(sentence.find("its target is too near its minimum: the chance is at once 10 % or more.") !=
        std::string::npos);
  CHECK(sentence.find("again by") == std::string::npos);
  CHECK(sentence.find("for 100 years") == std::string::npos);
}

TEST_CASE("a screw found too loose and not tightened is flagged, and so is assumed wear",
          "[core][screw][words]") {
  ScrewModel model;
  model.fit.own_sd = {0.05};
  Fitting fitting = fitting_with({found(TorqueFound::moved, 22)});
  CHECK(screw_flags(model, fitting, 27) ==
        std::vector<std::string>{
            "found at 22 N·m on 2025-05-14, under its minimum, and not tightened since"});
  CHECK(screw_flags(model, fitting, 20).empty());
  fitting.screws[0].tightenings[0].readings = {found(TorqueFound::free, 10)};
  CHECK(screw_flags(model, fitting, 27) ==
        std::vector<std::string>{
            "found under 10 N·m on 2025-05-14, under its minimum, and not tightened since"});
  fitting.screws[0].tightenings[0].readings.clear();
  fitting.screws[0].tightenings[0].strikes = 1;
  CHECK(screw_flags(model, fitting, 27) ==
        std::vector<std::string>{"struck once; wear assumed, not measured"});
  fitting.screws[0].tightenings[0].strikes = 3;
  CHECK(screw_flags(model, fitting, 27) ==
        std::vector<std::string>{"struck 3 times; wear assumed, not measured"});
  model.fit.own_sd = {0.01};
  CHECK(screw_flags(model, fitting, 27).empty());
}
