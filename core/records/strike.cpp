#include "core/records/strike.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view reason_words[] = {"season", "ice", "flood", "event", "access", "repair"};
constexpr std::string_view step_words[] = {"down", "back", "torque signed", "looked at"};
constexpr std::string_view how_words[] = {"clicked, did not move", "moved, tight now",
                                          "other value", "will not tighten"};

constexpr FieldInfo opened_fields[] = {
    must(code(1, "reason", reason_words)),
    day(2, "re-erect by"),
    code(3, "gap to be closed by", closed_by_words),
    must(ids(4, "components")),
};
constexpr FieldInfo step_fields[] = {
    must(id(1, "strike")),       must(code(2, "step", step_words)),
    torque(3, "torque as left"), id(4, "instrument"),
    count(5, "screw", 1, 16),    text(6, "stored at", 80),
    code(7, "how", how_words),   code(8, "same part", same_part_words),
};
constexpr FieldInfo hours_fields[] = {
    must(count(1, "people", 1, 50)),
    must(number(2, "minutes", Unit::minutes, 0, 10'000)),
    text(3, "task", 120),
    day(4, "day"),
};

}  // namespace

constexpr KindInfo strike_opened_kind{.kind = 45,
                                      .name = "strike opened",
                                      .subject = "run",
                                      .fields = fields(opened_fields),
                                      .time_key = key_seen_at};
constexpr KindInfo strike_step_kind{.kind = 46,
                                    .name = "strike step",
                                    .subject = "component or bay",
                                    .fields = fields(step_fields),
                                    .time_key = key_seen_at};
constexpr KindInfo strike_hours_kind{.kind = 48,
                                     .name = "strike hours",
                                     .subject = "strike",
                                     .fields = fields(hours_fields),
                                     .time_key = key_seen_at};

}  // namespace kneerail
