#include "core/records/people.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view role_words[] = {"inspector", "lead", "duty holder", "administrator"};

constexpr FieldInfo given_fields[] = {must(code(1, "role", role_words)), ids(2, "sites"),
                                      day(3, "until")};
constexpr FieldInfo taken_fields[] = {must(ids(1, "givings", 1))};
constexpr FieldInfo competence_fields[] = {
    must(text(1, "for what", 120)),
    must(day(2, "from")),
    day(3, "valid until"),
    digest(4, "certificate"),
};

std::string competence_rule(const Record& record) {
  return rules::not_before(record, 3, 2, "the competence ends before it begins");
}

}  // namespace

constexpr KindInfo role_given_kind{.kind = 60,
                                   .name = "role given",
                                   .subject = "person",
                                   .feed = FeedOf::organisation,
                                   .fields = fields(given_fields)};
constexpr KindInfo role_taken_kind{.kind = 61,
                                   .name = "role taken",
                                   .subject = "person",
                                   .feed = FeedOf::organisation,
                                   .fields = fields(taken_fields)};
constexpr KindInfo competence_kind{.kind = 64,
                                   .name = "competence",
                                   .subject = "person",
                                   .feed = FeedOf::organisation,
                                   .fields = fields(competence_fields),
                                   .rule = competence_rule};

}  // namespace kneerail
