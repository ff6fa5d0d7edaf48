#include "core/records/visit.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view event_words[] = {"ice",       "flood",    "impact",
                                            "crowd",     "other",    "storm",
                                            "near miss", "accident", "damage on purpose"};
constexpr std::string_view visit_words[] = {
    "routine", "detailed", "after an event", "after work", "before opening", "strike", "re-erect"};
constexpr std::string_view surface_words[] = {"dry", "damp", "wet", "ice"};

constexpr FieldInfo where_forms[] = {place(1, "place"), id(2, "component")};
constexpr FieldInfo one_where = one_of(0, "place or component", where_forms);
constexpr FieldInfo mark_parts[] = {
    must(place(1, "place")), must(number(2, "up from the deck", Unit::mm, -10'000, 100'000))};
constexpr FieldInfo event_fields[] = {
    must(code(1, "what", event_words)),
    must(instant(2, "from")),
    instant(3, "until"),
    list(4, "where", 0, 1'000, one_where),
    text(5, "note", 500),
    tuple(6, "mark", mark_parts),
    id(7, "told"),
};

constexpr FieldInfo condition_parts[] = {
    must(code(1, "surface", surface_words)),
    count(2, "wind", 0, 12),
    temperature(3, "air temperature"),
};
constexpr FieldInfo aboard_parts[] = {must(sequence(1, "of the site")),
                                      must(sequence(2, "of the organisation"))};
constexpr FieldInfo opened_fields[] = {
    must(code(1, "kind of visit", visit_words)),
    text(2, "name", 120),
    ids(3, "runs meant"),
    tuple(4, "conditions", condition_parts),
    id(5, "event"),
    tuple(6, "aboard", aboard_parts),
    text(7, "program version", 40),
};
constexpr FieldInfo joined_fields[] = {
    text(1, "task", 120),
    tuple(6, "aboard", aboard_parts),
    text(7, "program version", 40),
};
constexpr FieldInfo not_reached_fields[] = {
    must(id(1, "visit")),
    must(code(2, "reason", not_reached_words)),
    text(3, "note", 500),
};

constexpr FieldInfo one_count = sequence(0, "count");
constexpr FieldInfo sealed_fields[] = {
    must(sequence(1, "first sequence", 1)),
    must(sequence(2, "last sequence", 1)),
    must(digest(3, "chain digest")),
    must(table(4, "count by kind", one_count)),
    must(count(5, "not reached count", 0, 1'000'000)),
    digest(6, "signature picture"),
    must(bytes(7, "signature", 64)),
    must(bytes(8, "key id", 8)),
    text(9, "note", 500),
};
constexpr FieldInfo same_fields[] = {must(id(1, "other visit"))};

std::string event_rule(const Record& record) {
  return rules::not_before(record, 3, 2, "the event ends before it begins");
}
std::string sealed_rule(const Record& record) {
  return rules::not_before(record, 2, 1, "the last sequence is before the first");
}
std::string same_rule(const Record& record) {
  return rules::not_itself(record, 1, "a visit is not the same as itself");
}

}  // namespace

constexpr KindInfo event_kind{.kind = 9,
                              .name = "event",
                              .subject = "site or run",
                              .fields = fields(event_fields),
                              .time_key = key_seen_at,
                              .rule = event_rule};
constexpr KindInfo visit_opened_kind{.kind = 10,
                                     .name = "visit opened",
                                     .subject = "site",
                                     .fields = fields(opened_fields),
                                     .time_key = key_seen_at};
constexpr KindInfo visit_joined_kind{.kind = 11,
                                     .name = "visit joined",
                                     .subject = "visit",
                                     .fields = fields(joined_fields),
                                     .time_key = key_seen_at};
constexpr KindInfo not_reached_kind{.kind = 12,
                                    .name = "not reached",
                                    .subject = "component, post or run",
                                    .fields = fields(not_reached_fields),
                                    .time_key = key_seen_at};
constexpr KindInfo sealed_kind{.kind = 13,
                               .name = "sealed",
                               .subject = "visit",
                               .fields = fields(sealed_fields),
                               .time_key = key_seen_at,
                               .rule = sealed_rule};
constexpr KindInfo same_visit_kind{.kind = 14,
                                   .name = "same visit",
                                   .subject = "visit",
                                   .fields = fields(same_fields),
                                   .time_key = key_seen_at,
                                   .rule = same_rule};

}  // namespace kneerail
