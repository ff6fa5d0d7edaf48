#include <array>
#include <cstdio>
#include <nlohmann/json.hpp>
#include <sstream>

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/records/cbor.h"
#include "core/records/hybrid_clock.h"
#include "schema/exchange/csv.h"
#include "tests/reference/registry.h"

namespace kneerail::reference {

namespace {

using Json = nlohmann::json;

/// A JSON value in the subset that records are written in; nothing for a fraction or null.
std::optional<cbor::Value> to_cbor(const Json& json) {
  if (json.is_number_unsigned() && json.get<std::uint64_t>() > INT64_MAX) return std::nullopt;
  if (json.is_number_integer()) return cbor::Value(json.get<std::int64_t>());
  if (json.is_boolean()) return cbor::Value(json.get<bool>());
  if (json.is_string()) return cbor::Value(json.get<std::string>());
  if (json.is_array()) {
    cbor::Array array;
    for (const auto& item : json) {
      auto value = to_cbor(item);
      if (!value) return std::nullopt;
      array.push_back(std::move(*value));
    }
    return cbor::Value(std::move(array));
  }
  if (!json.is_object()) return std::nullopt;
  cbor::Map map;
  for (const auto& [key, item] : json.items()) {
    auto value = to_cbor(item);
    if (!value) return std::nullopt;
    map.set(cbor::Value(key), std::move(*value));
  }
  return cbor::Value(std::move(map));
}

Answer cbor_bytes(const Question& question) {
  const auto text = question.inputs.text("value");
  if (!text) return Unknown{"needs the input value"};
  const auto json = Json::parse(*text, nullptr, false);
  if (json.is_discarded()) return Unknown{"a value that is not JSON"};
  const auto value = to_cbor(json);
  if (!value) return Unknown{"records hold whole numbers; their subset has no fractions"};
  std::string hex;
  for (const auto byte : cbor::encode(*value)) {
    std::array<char, 3> digits{};
    std::snprintf(digits.data(), digits.size(), "%02x", static_cast<unsigned>(byte));
    hex += digits.data();
  }
  return hex;
}

std::optional<Uuid> uuid_of(const Question& question) {
  const auto text = question.inputs.text("uuid");
  return text ? uuid_from_text(*text) : std::nullopt;
}

Answer uuid_time(const Question& question) {
  const auto id = uuid_of(question);
  if (!id) return Unknown{"needs an identifier"};
  return static_cast<double>(id->unix_ms());
}

Answer uuid_fields(const Question& question) {
  const auto id = uuid_of(question);
  if (!id) return Unknown{"needs an identifier"};
  return std::to_string(id->bytes[6] >> 4) + "/" + std::to_string(id->bytes[8] >> 6);
}

Answer unix_time(const Question& question) {
  const auto text = question.inputs.text("text");
  const auto instant = text ? instant_from_text(*text) : std::nullopt;
  if (!instant) return Unknown{"needs an instant with its offset"};
  return static_cast<double>(instant->ms) / 1000;
}

Answer csv_field(const Question& question) {
  const auto raw = question.inputs.text("raw");
  if (!raw) return Unknown{"needs the input raw"};
  std::ostringstream out;
  csv::Writer(out).field(*raw);
  return out.str();
}

/// "l,c" after a send or receive event of the published clock.
Answer clock_after(const Question& question) {
  Needed need(question.inputs);
  const auto whole = [&](std::string_view key) {
    return static_cast<std::int64_t>(need.number(key));
  };
  const HybridTime clock{.l = whole("l"), .c = static_cast<int>(whole("c"))};
  const auto pt_ms = whole("pt");
  const auto op = question.inputs.text("op");
  HybridTime after;
  if (op == "send") {
    after = published_send(clock, pt_ms);
  } else if (op == "recv") {
    const HybridTime message{.l = whole("lm"), .c = static_cast<int>(whole("cm"))};
    after = published_receive(clock, message, pt_ms);
  } else {
    return Unknown{"needs the input op, send or recv"};
  }
  if (!need.complete()) return need.unknown();
  return std::to_string(after.l) + "," + std::to_string(after.c);
}

}  // namespace

void add_records(Registry& registry) {
  registry.add("cbor encoding", cbor_bytes);
  registry.add("unix_ts_ms*", uuid_time);
  registry.add("version and variant fields", uuid_fields);
  registry.add("unix time", unix_time);
  registry.add("rfc 4180 field", csv_field);
  registry.add("clock after the event (l,c)", clock_after);
}

}  // namespace kneerail::reference
