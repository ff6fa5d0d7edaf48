#include "core/records/geometry.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view what_words[] = {"rail height", "post spacing", "gap below",
                                           "gap between", "opening"};
constexpr FieldInfo geometry_fields[] = {
    must(id(1, "visit")),
    must(code(2, "what", what_words)),
    must(number(3, "measure", Unit::mm, 0, 100'000)),
    number(4, "limit at the time", Unit::mm, 0, 100'000),
    id(5, "rule set"),
    id(6, "instrument"),
};

void ask(const Record& record, std::vector<std::string>& questions) {
  const auto what = static_cast<Measured>(*rules::number(record, 2));
  const std::int64_t mm = *rules::number(record, 3);
  if (what == Measured::rail_height && (mm < 500 || mm > 2'000))
    questions.push_back("A rail height of " + quantity_text(mm, Unit::mm) + ". Keep?");
  if (what == Measured::post_spacing && (mm < 200 || mm > 5'000))
    questions.push_back("A post spacing of " + quantity_text(mm, Unit::mm) + ". Keep?");
}

}  // namespace

constexpr KindInfo geometry_kind{.kind = 25,
                                 .name = "geometry",
                                 .subject = "run, bay or post",
                                 .fields = fields(geometry_fields),
                                 .time_key = key_seen_at,
                                 .reading = true,
                                 .ask = ask};

}  // namespace kneerail
