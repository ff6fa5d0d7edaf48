#include "core/records/instrument_history.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace kneerail {
namespace {

bool covers(const KnownDoubt& doubt, Instant at) {
  return doubt.from <= at && (!doubt.until || at <= *doubt.until);
}

/// By value; of two additions at one value the one that stands later in the certificate.
void put_in_order(std::vector<AtAdd>& corrections) {
  std::stable_sort(corrections.begin(), corrections.end(),
                   [](const AtAdd& a, const AtAdd& b) { return a.at < b.at; });
  std::vector<AtAdd> once;
  for (const AtAdd& one : corrections) {
    if (!once.empty() && once.back().at == one.at) once.pop_back();
    once.push_back(one);
  }
  corrections = std::move(once);
}

double on_the_line(const std::vector<AtAdd>& corrections, double read) {
  if (corrections.empty()) return 0;
  const auto above = std::find_if(corrections.begin(), corrections.end(), [read](const AtAdd& one) {
    return static_cast<double>(one.at) >= read;
  });
  if (above == corrections.begin()) return static_cast<double>(above->add);
  if (above == corrections.end()) return static_cast<double>(corrections.back().add);
  const AtAdd& below = *(above - 1);
  const double share =
      (read - static_cast<double>(below.at)) / static_cast<double>(above->at - below.at);
  return static_cast<double>(below.add) + share * static_cast<double>(above->add - below.add);
}

}  // namespace

void InstrumentHistory::add(KnownCalibration calibration) {
  put_in_order(calibration.corrections);
  const auto key = [](const KnownCalibration& one) {
    return std::tie(one.day, one.written_ms, one.record);
  };
  const auto place = std::upper_bound(
      calibrations_.begin(), calibrations_.end(), calibration,
      [key](const KnownCalibration& a, const KnownCalibration& b) { return key(a) < key(b); });
  calibrations_.insert(place, std::move(calibration));
}

void InstrumentHistory::add(KnownDoubt doubt) {
  doubts_.push_back(doubt);
}

double InstrumentHistory::certificate_add(Date day, double read) const {
  const auto after = std::find_if(calibrations_.begin(), calibrations_.end(),
                                  [day](const KnownCalibration& one) { return one.day > day; });
  if (after == calibrations_.begin()) return 0;
  const KnownCalibration& last = *(after - 1);
  return day > last.valid_until ? 0 : on_the_line(last.corrections, read);
}

double InstrumentHistory::doubt_add(Instant at) const {
  std::int64_t sum = 0;
  for (const KnownDoubt& doubt : doubts_)
    if (covers(doubt, at)) sum += doubt.suggested_shift.value_or(0);
  return static_cast<double>(sum);
}

bool InstrumentHistory::in_doubt(Instant at) const {
  return std::any_of(doubts_.begin(), doubts_.end(), [at](const KnownDoubt& doubt) {
    return !doubt.suggested_shift && covers(doubt, at);
  });
}

double InstrumentHistory::put_right(const ReadAt& when, double read) const {
  const double right = read + certificate_add(when.day, read) + doubt_add(when.at);
  return read < 0 ? right : std::max(0.0, right);
}

std::int64_t InstrumentHistory::put_right(const ReadAt& when, std::int64_t read) const {
  return std::llround(put_right(when, static_cast<double>(read)));
}

}  // namespace kneerail
