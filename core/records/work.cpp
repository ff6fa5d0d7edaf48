#include "core/records/work.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view action_words[] = {
    "re-torque", "touch-up",    "replace", "cut out and weld in", "re-galvanise", "repaint",
    "clean",     "re-fix base", "other"};

constexpr FieldInfo work_fields[] = {
    id(1, "visit"),
    must(code(2, "action", action_words)),
    id(3, "life before"),
    torque(4, "torque as left"),
    id(5, "instrument"),
    id(6, "new component type"),
    thickness(7, "new coating nominal"),
    text(8, "batch", 40),
    day(9, "day done"),
    text(10, "note", 500),
    money(11, "cost"),
    count(12, "screw", 1, 16),
    count(13, "people", 1, 50),
    number(14, "minutes", Unit::minutes, 0, 10'000),
    id(15, "finding"),
    id(16, "depot"),
    text(17, "done by", 80),
    list(18, "papers", 0, 50, one_digest),
    code(19, "same part", same_part_words),
    text(20, "old part kept at", 80),
};
constexpr FieldInfo same_fields[] = {must(id(1, "other work"))};

std::string same_rule(const Record& record) {
  return rules::not_itself(record, 1, "a work is not the same as itself");
}

void ask_work(const Record& record, std::vector<std::string>& questions) {
  const auto nominal = rules::number(record, 7);
  if (nominal && *nominal > 3'000)
    questions.push_back("A new coating of " + quantity_text(*nominal, Unit::tenth_um) +
                        " is thicker than 300 µm. Keep?");
}

}  // namespace

constexpr KindInfo work_done_kind{.kind = 40,
                                  .name = "work done",
                                  .subject = "component or run",
                                  .fields = fields(work_fields),
                                  .time_key = key_seen_at,
                                  .ask = ask_work};
constexpr KindInfo same_work_kind{.kind = 41,
                                  .name = "same work",
                                  .subject = "work",
                                  .fields = fields(same_fields),
                                  .time_key = key_seen_at,
                                  .rule = same_rule};

}  // namespace kneerail
