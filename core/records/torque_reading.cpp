#include "core/records/torque_reading.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view censoring_words[] = {"exact", "about", "at least", "at most",
                                                "not measurable"};  // from 0
constexpr std::string_view method_words[] = {"click, no movement", "click, moved", "breakaway read",
                                             "marked-line turn"};
constexpr std::string_view why_words[] = {"seized", "no screw", "head damaged", "out of reach"};
constexpr FieldInfo torque_fields[] = {
    must(id(1, "visit")),
    must(id(2, "instrument")),
    must(count(3, "screw", 1, 16)),
    torque(4, "as found"),
    must(code(5, "censoring", censoring_words, 0)),
    must(code(6, "method", method_words)),
    torque(7, "as left"),
    torque(8, "target at the time"),
    code(9, "why not measurable", why_words),
    torque(10, "wrench set at"),
};

std::string click_rule(Censoring censoring, TorqueMethod method, bool wrench_set) {
  const bool still = method == TorqueMethod::click_no_movement;
  const bool moved = method == TorqueMethod::click_moved;
  if (!still && !moved) return {};
  if (!wrench_set) return "a click needs the value the wrench was set at";
  if (censoring == Censoring::not_measurable) return {};
  if (still && censoring != Censoring::at_least)
    return "a click without movement is at least the set value, nothing closer";
  if (moved && censoring != Censoring::about && censoring != Censoring::at_most)
    return "a click that moved is about the value shown, or at most the set value";
  return {};
}

std::string rule(const Record& record) {
  const auto censoring = static_cast<Censoring>(*rules::number(record, 5));
  const auto method = static_cast<TorqueMethod>(*rules::number(record, 6));
  const bool found = record.body.has(4);
  if (censoring == Censoring::not_measurable) {
    if (found) return "what is not measurable has no torque as found";
  } else {
    if (!found) return "the torque as found is missing";
    if (record.body.has(9)) return "a torque that was measured is given a reason why not";
  }
  return click_rule(censoring, method, record.body.has(10));
}

void ask(const Record& record, std::vector<std::string>& questions) {
  const auto found = rules::number(record, 4);
  const auto left = rules::number(record, 7);
  const auto target = rules::number(record, 8);
  const auto set = rules::number(record, 10);
  const auto method = static_cast<TorqueMethod>(*rules::number(record, 6));
  if (found && set && method == TorqueMethod::click_moved && *found > *set)
    questions.push_back("A screw that moved at " + quantity_text(*found, Unit::tenth_nm) +
                        ", with the wrench set at " + quantity_text(*set, Unit::tenth_nm) +
                        ". Keep?");
  if (!target || *target == 0) return;
  for (const auto& value : {found, left}) {
    if (value && *value > 2 * *target)
      questions.push_back("A torque of " + quantity_text(*value, Unit::tenth_nm) +
                          " is over twice the target of " + quantity_text(*target, Unit::tenth_nm) +
                          ". Keep?");
  }
}

}  // namespace

constexpr KindInfo torque_reading_kind{.kind = 22,
                                       .name = "residual torque",
                                       .subject = "component",
                                       .fields = fields(torque_fields),
                                       .time_key = key_seen_at,
                                       .reading = true,
                                       .rule = rule,
                                       .ask = ask};

}  // namespace kneerail
