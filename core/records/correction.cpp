#include "core/records/correction.h"

#include <algorithm>

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view decision_words[] = {"keep both", "look again at the next visit",
                                               "release a held record"};
constexpr FieldInfo decision_forms[] = {id(1, "the record that counts"),
                                        code(2, "decision", decision_words)};

constexpr FieldInfo any_value = any(0, "value");
constexpr FieldInfo correction_fields[] = {
    must(table(1, "values", any_value)),
    must(text(2, "reason", 300)),
    must(ids(3, "corrections seen")),
};
constexpr FieldInfo void_fields[] = {must(text(1, "reason", 300))};
constexpr FieldInfo settled_fields[] = {
    must(ids(1, "records in disagreement", 1)),
    must(one_of(2, "decision", decision_forms)),
    text(3, "note", 500),
};

std::string correction_rule(const Record& record) {
  if (record.body.find(1)->map()->empty()) return "no value is corrected";
  if (record.subject == record.id) return "a correction does not correct itself";
  return {};
}

std::string void_rule(const Record& record) {
  return record.subject == record.id ? "a void does not void itself" : std::string();
}

std::string settled_rule(const Record& record) {
  const auto chosen = record.body.find(2)->uuid();
  if (!chosen) return {};
  const cbor::Array& records = *record.body.find(1)->array();
  const bool among = std::any_of(records.begin(), records.end(),
                                 [&](const cbor::Value& one) { return one.uuid() == chosen; });
  return among ? std::string() : "the record that counts is not among those in disagreement";
}

}  // namespace

constexpr KindInfo correction_kind{.kind = 70,
                                   .name = "correction",
                                   .subject = "the record corrected",
                                   .feed = FeedOf::either,
                                   .fields = fields(correction_fields),
                                   .rule = correction_rule};
constexpr KindInfo voided_kind{.kind = 71,
                               .name = "void",
                               .subject = "the record voided",
                               .feed = FeedOf::either,
                               .fields = fields(void_fields),
                               .rule = void_rule};
constexpr KindInfo settled_kind{.kind = 72,
                                .name = "settled",
                                .subject = "entity or record",
                                .feed = FeedOf::either,
                                .fields = fields(settled_fields),
                                .rule = settled_rule};

}  // namespace kneerail
