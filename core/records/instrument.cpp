#include "core/records/instrument.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view what_words[] = {"zero", "check foil", "test block", "before use",
                                           "after use"};
// The widest of the instruments: a coating gauge in 0.1 µm, and its zero below 0.
constexpr FieldInfo one_reading = number(0, "reading", Unit::none, -500, 20'000);
constexpr FieldInfo check_fields[] = {
    id(1, "visit"),
    must(code(2, "what", what_words)),
    number(3, "reference value", Unit::none, -500, 20'000),
    must(list(4, "readings", 1, 30, one_reading)),
    must(truth(5, "in order")),
};

constexpr FieldInfo at_add_parts[] = {must(number(1, "at", Unit::none, -500, 20'000)),
                                      must(number(2, "add", Unit::none, -20'000, 20'000))};
constexpr FieldInfo one_at_add = tuple(0, "correction", at_add_parts);
constexpr FieldInfo calibration_fields[] = {
    must(day(1, "day")),
    must(day(2, "valid until")),
    text(3, "certificate", 80),
    digest(4, "certificate picture"),
    list(5, "corrections", 0, 100, one_at_add),
    list(6, "as found", 0, 100, one_at_add),
    truth(7, "adjusted"),
    day(8, "sent"),
    text(9, "by", 80),
};
constexpr FieldInfo doubt_fields[] = {
    must(instant(1, "from")),
    instant(2, "until"),
    must(text(3, "reason", 300)),
    number(4, "suggested shift", Unit::none, -20'000, 20'000),
};

// A zero reading is small, whatever the instrument.
std::string check_rule(const Record& record) {
  if (static_cast<CheckKind>(*rules::number(record, 2)) != CheckKind::zero) return {};
  for (const cbor::Value& one : *record.body.find(4)->array()) {
    if (*one.number() > 500) return "a zero reading is outside -50 to 50 µm";
  }
  return {};
}
std::string calibration_rule(const Record& record) {
  return rules::not_before(record, 2, 1, "the calibration ends before its day");
}
std::string doubt_rule(const Record& record) {
  return rules::not_before(record, 2, 1, "the doubt ends before it begins");
}

}  // namespace

constexpr KindInfo instrument_check_kind{.kind = 50,
                                         .name = "instrument check",
                                         .subject = "instrument",
                                         .fields = fields(check_fields),
                                         .time_key = key_seen_at,
                                         .rule = check_rule};
constexpr KindInfo calibration_kind{.kind = 51,
                                    .name = "calibration",
                                    .subject = "instrument",
                                    .feed = FeedOf::organisation,
                                    .fields = fields(calibration_fields),
                                    .rule = calibration_rule};
constexpr KindInfo instrument_in_doubt_kind{.kind = 52,
                                            .name = "instrument in doubt",
                                            .subject = "instrument",
                                            .feed = FeedOf::organisation,
                                            .fields = fields(doubt_fields),
                                            .rule = doubt_rule};

}  // namespace kneerail
