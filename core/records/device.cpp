#include "core/records/device.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view why_words[] = {"start", "jump", "hub contact"};

constexpr FieldInfo enrolled_fields[] = {
    must(id(1, "device")),
    must(bytes(2, "public key", 32)),
    must(text(3, "name", 60)),
};
constexpr FieldInfo revoked_fields[] = {
    must(id(1, "device")),
    must(text(2, "reason", 300)),
    must(list(3, "last sequence by feed", 0, 1'000, one_feed_sequence)),
};
// The wall clock is written as the device shows it, however wrong.
constexpr FieldInfo clock_fields[] = {
    must(count(1, "segment", 0, 65'535)),
    must(sequence(2, "boot")),
    must(number(3, "monotonic", Unit::ms, 0, two_to_53)),
    must(number(4, "wall", Unit::ms, -two_to_53, two_to_53)),
    must(code(5, "why", why_words)),
    instant(6, "hub time"),
    number(7, "uncertainty", Unit::ms, 0, two_to_53),
    text(8, "program version", 40),
};
constexpr FieldInfo continued_fields[] = {
    must(id(1, "old device")),
    must(sequence(2, "last common sequence")),
    must(digest(3, "digest there")),
};

std::string clock_rule(const Record& record) {
  if (static_cast<ClockWhy>(*rules::number(record, 5)) == ClockWhy::hub_contact &&
      !record.body.has(6))
    return "a hub contact without the hub's time";
  return {};
}

}  // namespace

constexpr KindInfo device_enrolled_kind{.kind = 62,
                                        .name = "device enrolled",
                                        .subject = "device",
                                        .feed = FeedOf::organisation,
                                        .fields = fields(enrolled_fields)};
constexpr KindInfo device_revoked_kind{.kind = 63,
                                       .name = "device revoked",
                                       .subject = "device",
                                       .feed = FeedOf::organisation,
                                       .fields = fields(revoked_fields)};
constexpr KindInfo clock_kind{.kind = 80,
                              .name = "clock",
                              .subject = "device",
                              .feed = FeedOf::either,
                              .fields = fields(clock_fields),
                              .rule = clock_rule};
constexpr KindInfo chain_continued_kind{.kind = 90,
                                        .name = "chain continued",
                                        .subject = "device",
                                        .feed = FeedOf::either,
                                        .fields = fields(continued_fields)};

}  // namespace kneerail
