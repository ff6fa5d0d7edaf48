#include "core/records/coating_reading.h"

#include <algorithm>

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view layer_words[] = {"all layers together", "zinc alone", "paint alone"};
constexpr std::string_view probe_words[] = {"bright zinc", "dull zinc", "rust", "paint"};
constexpr FieldInfo one_replicate = thickness(0, "replicate");
constexpr FieldInfo coating_fields[] = {
    must(id(1, "visit")),
    must(id(2, "instrument")),
    must(list(3, "replicates", 1, 30, one_replicate)),
    must(count(4, "spot", 1, 16)),
    code(5, "base metal", material_words),
    temperature(6, "surface temperature"),
    code(7, "layer", layer_words),
    code(8, "under the probe", probe_words),
};

// Hot-dip zinc on tube and fitting is seldom over 300 µm, and replicates on one spot seldom lie
// further apart than half their middle.
constexpr std::int64_t thick_tenth_um = 3'000;

void ask(const Record& record, std::vector<std::string>& questions) {
  std::vector<std::int64_t> values;
  for (const cbor::Value& one : *record.body.find(3)->array()) values.push_back(*one.number());
  std::sort(values.begin(), values.end());
  if (values.back() > thick_tenth_um)
    questions.push_back("A coating of " + quantity_text(values.back(), Unit::tenth_um) +
                        " is thicker than 300 µm. Keep?");
  const std::int64_t middle = values[values.size() / 2];
  if (values.back() - values.front() > std::max<std::int64_t>(middle, 200))
    questions.push_back("Replicates from " + quantity_text(values.front(), Unit::tenth_um) +
                        " to " + quantity_text(values.back(), Unit::tenth_um) +
                        " on one spot. Keep?");
}

}  // namespace

constexpr KindInfo coating_reading_kind{.kind = 21,
                                        .name = "coating thickness",
                                        .subject = "component",
                                        .fields = fields(coating_fields),
                                        .time_key = key_seen_at,
                                        .reading = true,
                                        .ask = ask};

}  // namespace kneerail
