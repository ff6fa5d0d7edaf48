#include "core/records/made_safe.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view measure_words[] = {"closed off", "propped", "taped",       "struck",
                                              "reported",   "guarded", "closed below"};
constexpr std::string_view stands_words[] = {"in place", "put back", "gone", "not seen"};
constexpr std::string_view why_words[] = {"storm",    "event", "work",   "crowd",
                                          "accident", "order", "strike", "other"};
constexpr std::string_view opened_words[] = {"pushed and looked", "looked", "not looked",
                                             "closed by mistake"};

constexpr FieldInfo one_measure = code(0, "measure", measure_words);
constexpr FieldInfo safe_fields[] = {
    must(list(1, "measures", 1, 7, one_measure)),
    ids(2, "told to"),
    instant(3, "when"),
    text(4, "note", 500),
    text(5, "told to in words", 120),
    instant(6, "look again by"),
};
constexpr FieldInfo look_fields[] = {
    must(code(1, "how", stands_words)),
    instant(2, "look again by"),
    text(3, "note", 500),
};
constexpr FieldInfo closed_fields[] = {
    must(code(1, "why", why_words)),
    must(instant(2, "from")),
    instant(3, "until"),
    must(code(4, "by what", closed_by_words)),
    instant(5, "look again by"),
    id(6, "event, work, told or strike"),
};
constexpr FieldInfo opened_fields[] = {
    must(code(1, "on what", opened_words)),
    id(2, "visit"),
    text(3, "note", 500),
};

std::string closed_rule(const Record& record) {
  if (static_cast<WhyClosed>(*rules::number(record, 1)) == WhyClosed::strike && !record.body.has(6))
    return "a closure for a strike names the strike";
  return rules::not_before(record, 3, 2, "the closure ends before it begins");
}

void ask_safe(const Record& record, std::vector<std::string>& questions) {
  for (const cbor::Value& one : *record.body.find(1)->array()) {
    switch (static_cast<Measure>(*one.number())) {
      case Measure::closed_off:
      case Measure::propped:
      case Measure::struck:
      case Measure::guarded:
        return;
      default:
        break;
    }
  }
  questions.emplace_back(
      "Taped, reported or closed below holds nobody back: it will show as not made safe. Keep?");
}

}  // namespace

constexpr KindInfo made_safe_kind{.kind = 33,
                                  .name = "made safe",
                                  .subject = "finding",
                                  .fields = fields(safe_fields),
                                  .time_key = 3,
                                  .ask = ask_safe};
constexpr KindInfo closure_look_kind{.kind = 37,
                                     .name = "closure looked at",
                                     .subject = "finding or closure",
                                     .fields = fields(look_fields),
                                     .time_key = key_seen_at};
constexpr KindInfo closed_kind{.kind = 42,
                               .name = "closed to people",
                               .subject = "run or bay",
                               .fields = fields(closed_fields),
                               .time_key = 2,
                               .rule = closed_rule};
constexpr KindInfo opened_kind{.kind = 47,
                               .name = "opened to people",
                               .subject = "strike or closure",
                               .fields = fields(opened_fields),
                               .time_key = key_seen_at};

}  // namespace kneerail
