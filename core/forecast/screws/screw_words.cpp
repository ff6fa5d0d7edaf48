#include "core/forecast/screws/screw_words.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/forecast/screws/constants.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

std::string founded_on(const ScrewEvidence& evidence) {
  if (evidence.loose) return concat({"found loose on ", to_text(evidence.loose->day)});
  if (evidence.losses >= 2) return "own losses and zone";
  if (evidence.losses == 1) return "one loss measured; rate partly from its zone";
  if (evidence.last_click)
    return concat({"held ", torque_words(evidence.last_click->torque_nm), " on ",
                   to_text(evidence.last_click->day),
                   "; nothing moved, so its loss is known from one side only"});
  if (evidence.start_known) return "not checked; judged by its zone and age";
  return concat({"not checked, age unknown; judged by its zone; ",
                 chance_words(evidence.chance_now), " under its minimum today"});
}

void note_reading(const FoundTorque& reading, double minimum_nm, Date last_day,
                  ScrewEvidence& evidence) {
  if (reading.found == TorqueFound::clicked) {
    ++evidence.clicks;
    const auto& last = evidence.last_click;
    if (!last || reading.day > last->day ||
        (reading.day == last->day && reading.torque_nm > last->torque_nm))
      evidence.last_click = reading;
    return;
  }
  ++evidence.losses;
  if (reading.found == TorqueFound::free && reading.torque_nm < minimum_nm &&
      reading.day == last_day)
    evidence.loose = reading;
}

/// "18 % today, 21 % in 1, 24 % in 2 and 31 % in 5 years"; once where they are all the same words.
std::string chances_words(const ChancesByYear& chances) {
  const std::string now = chance_words(chances[0]);
  const std::string last = chance_words(chances[3]);
  if (now == last) return concat({now, " today and in 5 years"});
  return concat({now, " today, ", chance_words(chances[1]), " in 1, ", chance_words(chances[2]),
                 " in 2 and ", last, " in 5 years"});
}

std::string retorque_words(const ScrewForecast& row, const std::optional<double>& chance) {
  if (!chance) return "no date to do it again: no chance is set";
  if (row.target_too_low)
    return concat({"its target is too near its minimum: the chance is at once ",
                   chance_words(*chance), " or more"});
  if (!row.retorque_by)
    return concat({"the chance stays under ", chance_words(*chance), " for ",
                   fixed(screw_constant::longest_retorque_years, 0), " years"});
  return concat({"again by ", to_text(*row.retorque_by), ", when the chance reaches ",
                 chance_words(*chance)});
}

}  // namespace

std::string torque_words(double torque_nm) {
  const double tenths = std::round(torque_nm * 10);
  const bool whole = std::fmod(tenths, 10) == 0;
  return concat({fixed(tenths / 10, whole ? 0 : 1), " N·m"});
}

ScrewEvidence evidence_of(const ScrewSite& site, const Fitting& fitting, double minimum_nm) {
  ScrewEvidence evidence;
  evidence.zone_measured = site.zone_measured[static_cast<std::size_t>(fitting.zone)] != 0;
  std::optional<Date> last_day;
  const auto each = [&](const auto& use) {
    for (const Screw& screw : fitting.screws)
      for (const Tightening& tightening : screw.tightenings)
        for (const FoundTorque& reading : tightening.readings) use(reading);
  };
  each([&](const FoundTorque& reading) {
    if (!last_day || reading.day > *last_day) last_day = reading.day;
  });
  each([&](const FoundTorque& reading) { note_reading(reading, minimum_nm, *last_day, evidence); });
  for (const Screw& screw : fitting.screws)
    evidence.start_known = evidence.start_known && screw.tightenings.back().started;
  return evidence;
}

std::string screw_words(const ScrewEvidence& evidence) {
  std::string words = founded_on(evidence);
  if (!evidence.zone_measured) words += "; no loss measured in this zone; leans on the other zones";
  return words;
}

std::string screw_sentence(const ScrewForecast& row, const ScrewReason& reason) {
  std::string sentence =
      concat({row.screws == 1 ? "Chance of its screw" : "Chance of one of its screws", " under ",
              torque_words(reason.minimum_nm), ": ", chances_words(row.as_found), "."});
  if (row.median_years && *row.median_years > 0)
    sentence += concat({" As likely as not in about ", life_words(*row.median_years), "."});
  sentence += concat(
      {" Re-torqued to ", torque_words(reason.left_nm), " today: ", chance_words(row.as_left[3]),
       " in 5 years; ", retorque_words(row, reason.chance), ". Loses about ",
       fixed(row.loss_nm_per_tenfold[1], 1), " N·m with each tenfold of days (80 %: ",
       fixed(row.loss_nm_per_tenfold[0], 1), " to ", fixed(row.loss_nm_per_tenfold[2], 1), "). "});
  sentence += own_share_words(row.readings_used, row.own_share);
  for (const std::string& flag : row.flags) sentence += concat({" Note: ", flag, "."});
  return sentence;
}

std::vector<std::string> screw_flags(const ScrewModel& model, const Fitting& fitting,
                                     double minimum_nm) {
  std::vector<std::string> flags;
  int strikes = 0;
  std::optional<FoundTorque> low;
  for (const Screw& screw : fitting.screws) {
    const Tightening& current = screw.tightenings.back();
    strikes = std::max(strikes, current.strikes);
    if (current.readings.empty()) continue;
    const FoundTorque& last = current.readings.back();
    if (last.found != TorqueFound::clicked && last.torque_nm < minimum_nm &&
        (!low || last.torque_nm < low->torque_nm))
      low = last;
  }
  if (low)
    flags.push_back(concat({low->found == TorqueFound::free ? "found under " : "found at ",
                            torque_words(low->torque_nm), " on ", to_text(low->day),
                            ", under its minimum, and not tightened since"}));
  if (strikes > 0 && model.fit.own_sd[0] >= screw_constant::wear_known_sd)
    flags.push_back(concat({"struck ", strikes == 1 ? "once" : std::to_string(strikes) + " times",
                            "; wear assumed, not measured"}));
  return flags;
}

std::vector<std::string> screw_notes(const ScrewModel& model) {
  std::vector<std::string> notes{
      "Set screws: the chance leans on how such parts usually go; check them by interval"};
  if (model.data.without_setting > 0)
    notes.push_back(concat({"Set screws: the wrench setting is not recorded with ",
                            std::to_string(model.data.without_setting),
                            " readings at which a screw moved; the usual settings stand in for it. "
                            "Record it with every check"}));
  return notes;
}

}  // namespace kneerail::forecast
