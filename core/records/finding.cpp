#include "core/records/finding.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view what_words[] = {
    "split", "loose",         "missing",         "rust",          "rust weeping",
    "bent",  "knocked",       "debris or scour", "spread",        "outside the rule",
    "moves", "paint flaking", "other",           "will not close"};
constexpr std::string_view ended_words[] = {"repaired", "replaced", "re-assessed",
                                            "raised by mistake"};
constexpr std::string_view on_words[] = {"seen and pushed after the work", "seen", "papers only"};
constexpr std::string_view next_words[] = {"watch", "measure next visit", "mend", "order",
                                           "ask an engineer"};
constexpr std::string_view put_off_words[] = {"money",   "part",     "access",
                                              "weather", "engineer", "other"};

constexpr FieldInfo finding_fields[] = {
    id(1, "visit"),
    must(code(2, "kind", what_words)),
    must(count(3, "grade", 1, 5)),
    must(truth(4, "hazard")),
    text(5, "text", 2'000),
    place_on_part(6, "place"),
    must(count(7, "number", 1, 1'000'000)),
    text(8, "why it can wait", 300),
    id(key_life, "life"),
};
constexpr FieldInfo ended_fields[] = {
    must(code(1, "how", ended_words)), id(2, "work"), text(3, "note", 500), must(ids(4, "hazards")),
    code(5, "on what", on_words),
};
constexpr FieldInfo next_fields[] = {
    must(code(1, "what", next_words)),
    day(2, "mend by"),
    text(3, "note", 500),
    ids(4, "by whom"),
    text(5, "by whom in words", 80),
    code(6, "put off because", put_off_words),
};
constexpr FieldInfo raised_fields[] = {id(1, "visit"), text(2, "note", 500)};

std::string ended_rule(const Record& record) {
  if (record.body.find(4)->array()->empty()) return {};
  if (!rules::has_words(record, 3)) return "a hazard is ended with a note";
  if (!record.body.has(5))
    return "a hazard is ended on something: seen and pushed, seen, or papers";
  return {};
}

void ask_finding(const Record& record, std::vector<std::string>& questions) {
  const auto what = static_cast<FindingKind>(*rules::number(record, 2));
  const auto grade = *rules::number(record, 3);
  const bool hazard = *record.body.find(4)->truth();
  if (grade == 5 && !hazard && !rules::has_words(record, 8))
    questions.emplace_back("Grade 5, and it can wait? Say why, or mark it as a hazard.");
  if (what == FindingKind::moves && grade < 5)
    questions.push_back("What moves under hand load is grade 5. Keep grade " +
                        std::to_string(grade) + "?");
  if (hazard && grade <= 2)
    questions.push_back("A hazard with grade " + std::to_string(grade) + ". Keep?");
}

}  // namespace

constexpr KindInfo finding_kind{.kind = 30,
                                .name = "finding",
                                .subject = "component, post, bay or run",
                                .fields = fields(finding_fields),
                                .time_key = key_seen_at,
                                .ask = ask_finding};
constexpr KindInfo finding_ended_kind{.kind = 34,
                                      .name = "finding ended",
                                      .subject = "finding",
                                      .fields = fields(ended_fields),
                                      .time_key = key_seen_at,
                                      .rule = ended_rule};
constexpr KindInfo next_step_kind{.kind = 35,
                                  .name = "next step",
                                  .subject = "finding",
                                  .fields = fields(next_fields),
                                  .time_key = key_seen_at};
constexpr KindInfo hazard_raised_kind{.kind = 36,
                                      .name = "hazard raised",
                                      .subject = "finding",
                                      .fields = fields(raised_fields),
                                      .time_key = key_seen_at};

}  // namespace kneerail
