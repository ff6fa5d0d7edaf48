#include "core/records/wall_reading.h"

#include <algorithm>

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr FieldInfo one_replicate = wall(0, "replicate");
constexpr FieldInfo wall_fields[] = {
    must(id(1, "visit")),
    must(id(2, "instrument")),
    must(list(3, "replicates", 1, 30, one_replicate)),
    must(count(4, "clock position", 0, clock_not_stated)),
    number(5, "sound velocity", Unit::metre_per_s, 1'000, 10'000),
    number(6, "height above base", Unit::mm, -10'000, 100'000),
    truth(7, "inside the hollow"),
};

// Rail tubes have walls up to about 10 mm; in steel, iron and aluminium sound runs at about 4,500
// to 6,400 m/s.
void ask(const Record& record, std::vector<std::string>& questions) {
  std::int64_t least = 5'000;
  std::int64_t most = 0;
  for (const cbor::Value& one : *record.body.find(3)->array()) {
    least = std::min(least, *one.number());
    most = std::max(most, *one.number());
  }
  if (most > 1'000)
    questions.push_back("A wall of " + quantity_text(most, Unit::hundredth_mm) +
                        " is thicker than 10 mm. Keep?");
  if (2 * least < most)
    questions.push_back("Replicates from " + quantity_text(least, Unit::hundredth_mm) + " to " +
                        quantity_text(most, Unit::hundredth_mm) + " on one spot. Keep?");
  const auto sound = rules::number(record, 5);
  if (sound && (*sound < 4'500 || *sound > 6'500))
    questions.push_back("A sound velocity of " + quantity_text(*sound, Unit::metre_per_s) +
                        " is not that of steel, iron or aluminium. Keep?");
}

}  // namespace

constexpr KindInfo wall_reading_kind{.kind = 23,
                                     .name = "wall thickness",
                                     .subject = "component",
                                     .fields = fields(wall_fields),
                                     .time_key = key_seen_at,
                                     .reading = true,
                                     .ask = ask};

}  // namespace kneerail
