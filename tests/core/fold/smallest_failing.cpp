#include "tests/core/fold/smallest_failing.h"

#include <rapidcheck.h>

#include "tests/core/fold/records_at_hand.h"

namespace kneerail::fold::test {

namespace {

/// Chunks first, so that a hundred records are a few after a few tries.
bool leave_out_records(Arrivals& arrived, const std::function<bool(const Arrivals&)>& fails) {
  auto fewer = rc::shrink::removeChunks(arrived);
  while (auto some = fewer.next()) {
    if (some->empty() || !fails(*some)) continue;
    arrived = *std::move(some);
    return true;
  }
  return false;
}

bool leave_out_a_field(Arrivals& arrived, const std::function<bool(const Arrivals&)>& fails) {
  for (std::size_t i = 0; i < arrived.size(); ++i) {
    for (const auto& [key, value] : arrived[i].record.body.pairs()) {
      Arrivals less = arrived;
      // The same record may come twice, without and with its stamp.
      for (PlacedRecord& one : less) {
        if (one.record.id == arrived[i].record.id) one.record.body.erase(*key.number());
      }
      if (!fails(less)) continue;
      arrived = std::move(less);
      return true;
    }
  }
  return false;
}

std::string short_text(const Uuid& id) {
  return '#' + std::to_string((id.bytes[13] << 16) + (id.bytes[14] << 8) + id.bytes[15]);
}

std::string text_of(const cbor::Value& value) {
  if (const auto id = value.uuid()) return short_text(*id);
  if (value.number() != nullptr) return std::to_string(*value.number());
  if (value.truth() != nullptr) return *value.truth() ? "true" : "false";
  if (value.text() != nullptr) return '"' + *value.text() + '"';
  std::string text;
  if (value.array() != nullptr) {
    for (const cbor::Value& one : *value.array()) {
      text += (text.empty() ? "" : ", ") + text_of(one);
    }
    return '[' + text + ']';
  }
  if (value.map() == nullptr) return "bytes";
  for (const auto& [key, one] : value.map()->pairs()) {
    text += (text.empty() ? "" : ", ") + text_of(key) + ": " + text_of(one);
  }
  return '{' + text + '}';
}

/// "+2 h" after the morning the examples begin.
std::string hours(std::int64_t ms) {
  const std::int64_t since = ms - morning;
  const std::int64_t rest = since % hour;
  return std::to_string(since / hour) + " h" + (rest == 0 ? "" : ' ' + std::to_string(rest));
}

std::string text_of(const PlacedRecord& one) {
  const Record& record = one.record;
  std::string text = "kind " + std::to_string(record.kind) + ' ' + short_text(record.id) +
                     " about " + short_text(record.subject) + ' ' + text_of(record.body) + " by " +
                     short_text(record.who) + ", device " + short_text(one.device) + " seq " +
                     std::to_string(one.seq) + ", l " + hours(record.l) + " c " +
                     std::to_string(record.c) + " w " + std::to_string(record.w / hour) + " h g " +
                     std::to_string(record.g);
  if (!one.stamp) return text + ", unsent";
  return text + ", stamp " + std::to_string(one.stamp->hseq) + " at " + hours(one.stamp->recv) +
         (one.stamp->flags == 0 ? "" : ", held");
}

}  // namespace

Arrivals smallest_failing(Arrivals arrived, const std::function<bool(const Arrivals&)>& fails) {
  while (leave_out_records(arrived, fails) || leave_out_a_field(arrived, fails)) {
  }
  return arrived;
}

std::string text_of(const Arrivals& arrived) {
  std::string text;
  for (const PlacedRecord& one : arrived) text += text_of(one) + '\n';
  return text;
}

}  // namespace kneerail::fold::test
