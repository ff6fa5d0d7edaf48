#include "schema/exchange/import_ids.h"

#include <algorithm>
#include <span>

#include "schema/digest.h"

namespace kneerail::exchange {

Uuid derived_id(std::string_view what, std::initializer_list<std::string_view> references,
                Date day) {
  Sha256 sum;
  sum.add("kneerail import 1").add(std::uint64_t{what.size()}).add(what);
  for (const auto reference : references) sum.add(std::uint64_t{reference.size()}).add(reference);
  const Digest digest = sum.finish();
  const std::int64_t noon_ms = day.days > 0 ? noon_utc(day).ms : 0;
  return uuid7(noon_ms, std::span(digest).first<10>());
}

Uuid id_of_reference(std::string_view what, std::string_view reference) {
  if (const auto own = uuid_from_text(reference)) return *own;
  return derived_id(what, {reference});
}

Uuid instrument_id(InstrumentKind kind, std::string_view reference) {
  constexpr std::string_view words[] = {"coating gauge", "torque wrench", "wall gauge",
                                        "load gauge", "rule"};
  if (reference.empty()) return {};
  return id_of_reference(words[static_cast<std::size_t>(kind) - 1], reference);
}

Uuid id_of_thing(std::string_view type_name, std::optional<InstrumentKind> instrument,
                 std::string_view reference) {
  if (instrument) return instrument_id(*instrument, reference);
  return id_of_reference(type_name, reference);
}

}  // namespace kneerail::exchange
