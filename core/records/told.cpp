#include "core/records/told.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view by_words[] = {"public", "staff",    "contractor", "police or rescue",
                                         "maker",  "engineer", "other"};
constexpr std::string_view how_words[] = {"telephone", "mail", "in person", "form"};
constexpr std::string_view answer_words[] = {"looked: finding", "looked: nothing wrong",
                                             "same as an earlier one", "place not found",
                                             "written by mistake"};

constexpr FieldInfo told_fields[] = {
    must(instant(1, "at")),
    must(code(2, "by whom", by_words)),
    must(text(3, "what was said", 1'000)),
    code(4, "how", how_words),
    text(5, "where", 200),
    truth(6, "moves or missing"),
    digest(7, "picture"),
};
constexpr FieldInfo answered_fields[] = {
    must(code(1, "how", answer_words)),
    id(2, "finding or told"),
    id(3, "visit"),
    text(4, "note", 500),
};
constexpr FieldInfo read_fields[] = {must(ids(1, "records shown"))};

std::string told_rule(const Record& record) {
  return rules::has_words(record, 3) ? std::string() : "what was said is empty";
}
std::string answered_rule(const Record& record) {
  const auto how = static_cast<Answered>(*rules::number(record, 1));
  if (how == Answered::looked_finding && !record.body.has(2)) return "the finding is missing";
  if (how == Answered::same_as_an_earlier_one && !record.body.has(2))
    return "the earlier one is missing";
  return rules::not_itself(record, 2, "a told is not the same as itself");
}

}  // namespace

constexpr KindInfo told_kind{.kind = 38,
                             .name = "told",
                             .subject = "site, run, post or bay",
                             .fields = fields(told_fields),
                             .time_key = 1,
                             .rule = told_rule};
constexpr KindInfo told_answered_kind{.kind = 39,
                                      .name = "told, answered",
                                      .subject = "told",
                                      .fields = fields(answered_fields),
                                      .time_key = key_seen_at,
                                      .rule = answered_rule};
constexpr KindInfo read_by_kind{.kind = 58,
                                .name = "read by",
                                .subject = "finding, told, event, visit or report",
                                .fields = fields(read_fields),
                                .time_key = key_seen_at};

}  // namespace kneerail
